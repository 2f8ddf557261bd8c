/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-event: changes to what happened between the pieces of a job: tools, offsets, lots, notes.
 *
 * As in app-edit.h: each change is in the book before the function returns TRUE, and on FALSE the job is as
 * before, with one line for the person in @error.  What is handed in is taken in any case.
 */

#pragma once

#include "app-edit.h"

G_BEGIN_DECLS

/* @old NULL adds, after the others.  Refused: no kind, a piece, feature or tool that the job has not, an
 * offset without a number other than zero. */
gboolean tm_edit_put_event (TmDocument *document, TmEvent *old, TmEvent *event, GError **error);
gboolean tm_edit_remove_event (TmDocument *document, TmEvent *event, GError **error);

/* A copy that shares the job's texts. */
TmEvent *tm_edit_copy_event (const TmEvent *event) G_GNUC_WARN_UNUSED_RESULT;

/* The unit that the amount of @event is written in: of its feature, else of the job. */
TmUnit tm_event_unit (const TmJob *job, const TmEvent *event);

G_END_DECLS
