/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-feature-dialog: one feature, all of it, for change.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

void tm_feature_dialog_present (GtkWidget *any_child, TmDocument *document, TmFeature *feature);

G_END_DECLS
