/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-table: feature lists from CSV files and from blocks pasted out of a spreadsheet, and
 * tables written for one.
 */

#pragma once

#include "core-callout.h"
#include "core-model.h"
#include "exchange-job.h"

G_BEGIN_DECLS

/* One row as it was understood; nothing is added to a job until the caller says so. */
typedef struct {
  guint line;           /* of the source, from 1 */
  TmFeature *feature;   /* ready to add; its texts belong to the preview's job; NULL once added */
  TmCalloutStatus read; /* not OK: the feature is a note and this says why */
  char *problem;        /* NULL, or why the row cannot be added (a balloon taken…) */
  char *remark;         /* NULL, or what was not taken as the source has it, or why it is a note */
} TmTableRow;

typedef struct {
  GPtrArray *rows; /* TmTableRow */
  guint n_addable;
  GPtrArray *unused; /* char *: headings of columns that were not used */
  char *remark;      /* NULL, or what was assumed of the whole source */
} TmTablePreview;

void tm_table_preview_free (TmTablePreview *preview);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmTablePreview, tm_table_preview_free)

/* Reads @text (CSV with , or ; or tab, quotes per RFC 4180; UTF-8, with or without a byte order
 * mark) as features for @job.  A header row names the columns (balloon / no / number, requirement /
 * callout, name / description, lower, upper, nominal, unit, kind, sheet, zone, class, places);
 * without one: number, requirement, name.  @place names the source in errors. */
TmTablePreview *tm_table_preview (const char *text, gsize length, const char *place, TmJob *job,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Adds every addable row, in order: all or, when one is refused, none. Returns how many. */
guint tm_table_apply (TmTablePreview *preview, TmJob *job);

/* The record of @job as one CSV (RFC 4180, UTF-8 with a byte order mark: a reader of one's own takes it as
 * "utf-8-sig").  Each row is of one kind, which its first column says:
 *
 *   result          what counts for one piece, feature and place, as the report has it
 *   reading         one reading as it was recorded, in the unit that it was typed in, also a corrected or
 *                   withdrawn one (column Stands); so are
 *   pin trial       its size, and whether the pin went, and
 *   cut             what was dialled, and with which tool
 *   event           between two pieces
 *   piece           what was decided on one that was held back
 *   nonconformance  with its disposition
 *
 * The rows of a place stand under its result, events and nonconformances at the end.  Numbers are exact. Text
 * that a spreadsheet would take for a formula gets an apostrophe before it, so that it stays text; a plain
 * number never does. */
GString *tm_table_report (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
