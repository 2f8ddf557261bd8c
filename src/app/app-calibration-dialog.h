/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-calibration-dialog: one calibration of a gauge, entered.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* Called with @parent after a calibration of @tag on @date was kept whose outcome is bad. */
typedef void (*TmFoundBad) (GtkWidget *parent, TmDocument *document, const char *tag, const char *date);

/* Returns: the dialog. */
GtkWidget *tm_calibration_dialog_present (GtkWidget *any_child, TmDocument *document, const char *tag,
                                          TmFoundBad found_bad);

G_END_DECLS
