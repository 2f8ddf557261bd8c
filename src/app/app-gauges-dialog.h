/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gauges-dialog: the gauges and methods of a job, listed and edited.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

void tm_gauges_dialog_present (GtkWidget *any_child, TmDocument *document);

G_END_DECLS
