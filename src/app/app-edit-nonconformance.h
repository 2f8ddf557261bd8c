/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-nonconformance: changes to the nonconformances of a job, and a rework that was done.
 *
 * As in app-edit.h: each change is in the book before the function returns TRUE, and on FALSE the job is as
 * before, with one line for the person in @error.  What is handed in is taken in any case.
 */

#pragma once

#include "app-edit.h"

G_BEGIN_DECLS

/* @old NULL adds, after the others.  What was read before its rework, where that was done, no longer counts
 * afterwards, and counts again where it was taken back. */
gboolean tm_edit_put_nonconformance (TmDocument *document, TmNonconformance *old, TmNonconformance *row,
                                     GError **error);

/* Says in @row that its feature has been reworked or repaired, by @by, now: after the newest reading that
 * there is of its piece and feature; and takes that back. */
void tm_edit_mark_reworked (TmJob *job, TmNonconformance *row, const char *by);
void tm_edit_unmark_reworked (TmJob *job, TmNonconformance *row);

/* A copy that shares the job's texts. */
TmNonconformance *tm_edit_copy_nonconformance (const TmNonconformance *row) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
