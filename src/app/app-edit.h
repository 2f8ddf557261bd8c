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
#include "core-gauge.h"
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
/* In a partial first article that has affected features a new feature, and one whose requirement becomes
 * another, is marked as affected: its baseline report cannot speak of it. */
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

/* Calibrations, checks on the standard, measured pins of a gauge: what core-gauge finds wrong with one is
 * refused with its line.  A good calibration that is the newest of its gauge moves the dates and the
 * certificate on the gauge itself along, and taking it away moves them back to the one before. */
gboolean tm_edit_add_calibration (TmDocument *document, TmCalibration *calibration, GError **error);
gboolean tm_edit_remove_calibration (TmDocument *document, TmCalibration *calibration, GError **error);
gboolean tm_edit_add_check (TmDocument *document, TmCheck *check, GError **error);
gboolean tm_edit_remove_check (TmDocument *document, TmCheck *check, GError **error);
gboolean tm_edit_add_pin_size (TmDocument *document, TmPinSize *pin, GError **error);
gboolean tm_edit_remove_pin_size (TmDocument *document, TmPinSize *pin, GError **error);

/* Brings the gauges with these @tags (NULL-terminated), with their calibrations, checks and pin sizes, and
 * the methods of @from all of whose gauges the job then has, with their budget lines, into the job.  Tags
 * and names that the job has already are left as they are.  @n_gauges and @n_methods (may be NULL) get
 * how many came. */
gboolean tm_edit_take_gauges (TmDocument *document, const TmJob *from, const char *const *tags,
                              guint *n_gauges, guint *n_methods, GError **error);

/* Says in one line what is wrong with the gauge @tag or what hangs on it; always FALSE. */
gboolean tm_edit_refuse_fault (const char *tag, TmGaugeFault fault, GError **error);

/* Puts what @row says, a struct of @size bytes, into @old, a row of @list, one of the job's; NULL adds it
 * after the others.  Takes @row, which is freed by @free_row.  The caller has looked whether the job can have
 * it. */
gboolean tm_edit_put_row (TmDocument *document, GPtrArray *list, gpointer old, gpointer row, gsize size,
                          GDestroyNotify free_row, GError **error);

/* Takes @row out of @list, one of the job's that no other row hangs on; when the book does not keep that it
 * is back in its place, at its old address.  @free_row frees it. */
gboolean tm_edit_remove_row (TmDocument *document, GPtrArray *list, gpointer row, GDestroyNotify free_row,
                             GError **error);

/* The rows of @before, copies made when @list was as it is to be again, in the place of those that there are.
 * Takes @before. */
void tm_edit_give_back (GPtrArray *list, GPtrArray *before);

/* The row just added at the end of @list belongs at @at. */
void tm_edit_move_last (GPtrArray *list, guint at);

/* @old NULL adds. */
gboolean tm_edit_put_budget_line (TmDocument *document, TmBudgetLine *old, TmBudgetLine *line,
                                  GError **error);
gboolean tm_edit_remove_budget_line (TmDocument *document, TmBudgetLine *line, GError **error);

/* Says in one line why the job does not take what is called @name; always FALSE. */
gboolean tm_edit_refuse (const char *name, TmAddStatus status, GError **error);

/* Copies that share the job's texts. */
TmFeature *tm_edit_copy_feature (const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;
TmGauge *tm_edit_copy_gauge (const TmGauge *gauge) G_GNUC_WARN_UNUSED_RESULT;
TmMethod *tm_edit_copy_method (const TmMethod *method) G_GNUC_WARN_UNUSED_RESULT;
TmBudgetLine *tm_edit_copy_budget_line (const TmBudgetLine *line) G_GNUC_WARN_UNUSED_RESULT;

/* The balloon number after the largest whole number in use; the serial after the last piece's,
 * counted on in its last digits ("A-009" gives "A-010"). */
char *tm_edit_next_balloon (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;
char *tm_edit_next_serial (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
