/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-recall-dialog: what a gauge has measured, over all jobs of the book, since it was last known good,
 * and which verdicts would change with its error taken out.
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"
#include "app-recall-list.h"

G_BEGIN_DECLS

#define TM_TYPE_RECALL_DIALOG (tm_recall_dialog_get_type ())
G_DECLARE_FINAL_TYPE (TmRecallDialog, tm_recall_dialog, TM, RECALL_DIALOG, AdwWindow)

/* @found_bad: the date of the calibration at which the gauge was found bad, or "": then the newest.  The
 * day it was last known good and the error are those of the calibrations, to be changed. */
TmRecallDialog *tm_recall_dialog_present (GtkWidget *any_child, TmDocument *document, const char *tag,
                                          const char *found_bad);

/* Types into the fields and asks for the list; what it gives, NULL while the book is searched; what the
 * line above it says.  For tests. */
void tm_recall_dialog_ask (TmRecallDialog *self, const char *good_until, const char *error);
const TmRecallList *tm_recall_dialog_list (TmRecallDialog *self);
const char *tm_recall_dialog_says (TmRecallDialog *self);

/* Writes the list to @path. */
void tm_recall_dialog_write (TmRecallDialog *self, const char *path);

G_END_DECLS
