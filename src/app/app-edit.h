/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit: changes to what a job defines (facts, features, pieces, people, gauges, methods).
 *
 * Each function changes the model, writes it to the book, and when the book does not keep it puts
 * the model back as it was: on FALSE nothing has changed and @error is one line for the person.
 * Texts in the structs handed in must be interned in the document's job.  A struct handed in is
 * taken over, on FALSE as well.
 */

#pragma once

#include "app-document.h"
#include "exchange-table.h"

G_BEGIN_DECLS

#define TM_EDIT_ERROR (tm_edit_error_quark ())
GQuark tm_edit_error_quark (void);

/* The code is the TmAddStatus. */
typedef enum { TM_EDIT_ERROR_REFUSED } TmEditError;

/* Changes facts of the job (its texts, unit, standard, decision, first article): nothing else. */
typedef void (*TmFactsChange) (TmJob *job, gpointer data);
gboolean tm_edit_facts (TmDocument *document, TmFactsChange change, gpointer data, GError **error);

/* Changes the general tolerance; features whose callout is read under it are read again, so that
 * callout and limits keep agreeing. */
gboolean tm_edit_general_tolerance (TmDocument *document, const char *text, GError **error);
/* How many features would get other limits. */
guint tm_edit_general_tolerance_count (TmDocument *document, const char *text);

/* Each makes the change in the job and saves it in the book; when the job refuses it
 * (TM_EDIT_ERROR_REFUSED) or the book cannot keep it, the job is as before.  A row that is handed in is
 * taken in any case. */
gboolean tm_edit_add_feature (TmDocument *document, TmFeature *feature, GError **error);
gboolean tm_edit_replace_feature (TmDocument *document, const char *balloon, TmFeature *with, GError **error);
gboolean tm_edit_remove_feature (TmDocument *document, const char *balloon, GError **error);
/* All addable rows, or none. */
gboolean tm_edit_add_table (TmDocument *document, TmTablePreview *preview, guint *n_added, GError **error);

gboolean tm_edit_add_piece (TmDocument *document, const char *serial, gboolean first_article, GError **error);
gboolean tm_edit_mark_first_article (TmDocument *document, TmPiece *piece, gboolean first_article,
                                     GError **error);
gboolean tm_edit_remove_piece (TmDocument *document, const char *serial, GError **error);

gboolean tm_edit_add_person (TmDocument *document, const char *initials, const char *name, GError **error);
gboolean tm_edit_remove_person (TmDocument *document, const char *initials, GError **error);

/* @tag or @name of the row to be replaced; NULL adds. */
gboolean tm_edit_put_gauge (TmDocument *document, const char *tag, TmGauge *gauge, GError **error);
gboolean tm_edit_put_method (TmDocument *document, const char *name, TmMethod *method, GError **error);
gboolean tm_edit_remove_gauge (TmDocument *document, const char *tag, GError **error);
gboolean tm_edit_remove_method (TmDocument *document, const char *name, GError **error);

/* Says in one line why the job does not take what is called @name; always FALSE. */
gboolean tm_edit_refuse (const char *name, TmAddStatus status, GError **error);

/* Copies that share the job's texts. */
TmFeature *tm_edit_copy_feature (const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;
TmGauge *tm_edit_copy_gauge (const TmGauge *gauge) G_GNUC_WARN_UNUSED_RESULT;
TmMethod *tm_edit_copy_method (const TmMethod *method) G_GNUC_WARN_UNUSED_RESULT;

/* The balloon number after the largest whole number in use; the serial after the last piece's,
 * counted on in its last digits ("A-009" gives "A-010"). */
char *tm_edit_next_balloon (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;
char *tm_edit_next_serial (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
