/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-qif: QIF 3.0 (ANSI/DMSC QIF 3.0, ISO 23952:2020): a first-article record written for other
 * programs, and the characteristics of such a file read as a feature list.
 *
 * Writing streams; reading streams, opens nothing else, takes no document type, and keeps of each
 * characteristic only what a feature needs.
 */

#pragma once

#include "exchange-table.h"

G_BEGIN_DECLS

/* What the job does not know of its report. */
typedef struct {
  const char *created;       /* UTC, "YYYY-MM-DDThh:mm:ssZ": the same time gives the same bytes */
  const char *organization;  /* who inspected; NULL or "": left out */
  const char *report_number; /* NULL or "": left out */
} TmQifFacts;

/* Takes the next bytes; FALSE, with @error set, stops. */
typedef gboolean (*TmQifSink) (const char *bytes, gsize length, gpointer data, GError **error);

/* Writes @job: part and drawing, characteristics with limits and balloons (one item for each place, "5.1",
 * "5.2"…), gauges with calibration, and for each piece and place the size that counts as the report prints
 * it, with its standard uncertainty.  Lengths stand in the unit of their feature, exactly.
 *
 * Verdicts: in is PASS, out is FAIL, too close to call is INDETERMINATE, not measured is NOT_ANALYZED; a
 * piece is PASS only when everything that is due on it is in, and UNKNOWN while anything is open.
 *
 * What QIF has no place for stands in attributes: the sizes by station, expanded uncertainty and coverage
 * factor, the reason of a verdict, material, decision rule, digest of the record.
 *
 * Refused (DISAGREES) where two characteristics would get one designator.  @progress may be NULL. */
gboolean tm_qif_write (const TmJob *job, const TmQifFacts *facts, TmQifSink sink, gpointer sink_data,
                       TmExchangeProgress progress, gpointer progress_data, GError **error);

/* As tm_qif_write(), into memory; NULL with @error. */
GString *tm_qif_write_string (const TmJob *job, const TmQifFacts *facts,
                              GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* As tm_qif_write(), to @path: a temporary file beside it, then renamed, so that no part is left. */
gboolean tm_qif_write_file (const TmJob *job, const TmQifFacts *facts, const char *path,
                            TmExchangeProgress progress, gpointer progress_data, GError **error);

/* TRUE when @data looks like XML rather than a table: its first character that is no blank is "<". */
gboolean tm_qif_is_likely (const char *data, gsize length);

/* Reads the characteristics of a QIF 3.0 file as features for @job, one row for each characteristic item
 * (for each nominal where there are no items), in the order of the file.  Items of one nominal whose
 * designators are X.1, X.2… become one feature X with that many places.
 *
 * A characteristic of a kind that the program does not judge, without limits, or with limits that its own
 * nominal lies far outside of becomes a note whose text is kept, with row->remark saying why.  Lengths keep
 * their unit where it is millimetre or inch, else become millimetres; a value finer than can be held (1 pm;
 * in inches 0.00000001) is rounded once, half to even, after its deviation was added.  A file without units
 * is read in the job's, and preview->remark says so.  @place names the source in errors. */
TmTablePreview *tm_qif_read_features (const char *data, gsize length, const char *place, TmJob *job,
                                      GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
