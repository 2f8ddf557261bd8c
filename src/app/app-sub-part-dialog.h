/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-sub-part-dialog: a part of an assembly, with its own report, is added, changed or removed.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* @part, of the job, is changed; NULL adds one. */
GtkWindow *tm_sub_part_dialog_present (GtkWidget *any_child, TmDocument *document, TmSubPart *part);

G_END_DECLS
