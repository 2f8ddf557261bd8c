/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-document: one open job: the model, the bench session over it, and the book it lives in.
 *
 * Pages watch it through its signals and ask it to change; it writes to the book first and changes
 * the model only when that is kept.
 *
 *   "definitions-changed" ()  features, pieces, gauges, methods, people or facts have changed
 *   "recorded" (TmEntryRow *) a reading, pin trial or cut joined the record, or one was corrected or
 *                             withdrawn (then the row concerned)
 *   "moved" ()                the bench session is at another spot, or its text has changed
 */

#pragma once

#include <glib-object.h>

#include "bench-cut.h"
#include "bench-session.h"
#include "book-store.h"
#include "core-model.h"

G_BEGIN_DECLS

#define TM_TYPE_DOCUMENT (tm_document_get_type ())
G_DECLARE_FINAL_TYPE (TmDocument, tm_document, TM, DOCUMENT, GObject)

/* Takes ownership of @job; @book is borrowed and outlives every document. */
TmDocument *tm_document_new (TmBook *book, TmJob *job);

TmJob *tm_document_job (TmDocument *self);
TmBook *tm_document_book (TmDocument *self);
TmBench *tm_document_bench (TmDocument *self);

/* Saves the definitions as they now stand in the model to the book and emits
 * "definitions-changed".  On FALSE the caller must undo its change to the model. */
gboolean tm_document_save_definitions (TmDocument *self, GError **error);

/* The template of the shop's reports, as the book had it when the job was opened or when it was last saved
 * here; an empty one where there is none.  Borrowed until the next of these calls. */
const TmTemplate *tm_document_template (TmDocument *self);
/* Reads it out of the book again, and emits "definitions-changed".  On FALSE it is empty. */
gboolean tm_document_load_template (TmDocument *self, GError **error);

/* To be called after a change was undone that put other rows, saying the same, in the place of removed ones:
 * emits "definitions-changed", so that nobody keeps the old addresses. */
void tm_document_restored (TmDocument *self);

/* To be called just after @piece or @feature (either may be NULL) was removed from the job, with its
 * old address, which is only compared: a bench session that stood there starts afresh.  The session
 * may be another one after this: ask for tm_document_bench() each time. */
void tm_document_leave (TmDocument *self, const TmPiece *piece, const TmFeature *feature);

/* Bench calls that emit the signals and take the time from the clock. */
void tm_document_set_text (TmDocument *self, const char *text);
gboolean tm_document_go (TmDocument *self, TmPiece *piece, TmFeature *feature, guint place,
                         const char *station);
TmSubmit tm_document_submit (TmDocument *self, GError **error);
TmSubmit tm_document_submit_offsets (TmDocument *self, const char *dx, const char *dy, GError **error);
TmSubmit tm_document_submit_pin (TmDocument *self, const char *text, GError **error);
gboolean tm_document_withdraw_pin (TmDocument *self, const TmPinTrial *trial, const char *reason,
                                   GError **error);
/* A cut at the present place: see tm_bench_submit_cut(). */
TmSubmit tm_document_submit_cut (TmDocument *self, const char *text, guint passes, const char *note,
                                 GError **error);
gboolean tm_document_correct_cut (TmDocument *self, const TmCutRow *cut, const char *text, guint passes,
                                  const char *reason, GError **error);
gboolean tm_document_withdraw_cut (TmDocument *self, const TmCutRow *cut, const char *reason, GError **error);
gboolean tm_document_correct (TmDocument *self, const TmReading *reading, const char *text,
                              const char *reason, GError **error);
gboolean tm_document_withdraw (TmDocument *self, const TmReading *reading, const char *reason,
                               GError **error);

/* Now, as the record writes it: UTC "YYYY-MM-DDThh:mm:ssZ". */
char *tm_now_utc (void) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
