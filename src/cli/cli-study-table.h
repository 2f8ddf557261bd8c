/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-study-table: a file with one reading of a gauge study to a line.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The readings as tm_study_analyse() wants them, and what the file calls the pieces, people and trials. */
typedef struct {
  GPtrArray *pieces, *people, *trials; /* char *, in the order of appearance; trials that are all whole
                                        * numbers by their number */
  double *values;                      /* NAN: no such line, or no value in it */
} TmStudyTable;

void tm_study_table_clear (TmStudyTable *table);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmStudyTable, tm_study_table_clear)

/* Columns by their heading, in any order and letter case: piece or part; person, appraiser or operator
 * (without one: one person); trial or repeat (without one: as they come); value or reading.  Lines that
 * begin with # are comments.  FALSE after an error line. */
gboolean tm_study_table_read (const char *path, TmStudyTable *out) G_GNUC_WARN_UNUSED_RESULT;

/* A plain decimal, with a point or a comma; FALSE when @text is none. */
gboolean tm_study_number_read (const char *text, double *out);

G_END_DECLS
