/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-qif: QIF 3.0 (ANSI/DMSC QIF 3.0, ISO 23952:2020): a first-article record written for other
 * programs.
 */

#pragma once

#include "exchange-job.h"

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

G_END_DECLS
