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

/* A first-article table of @job as CSV (RFC 4180, UTF-8): one line per feature, place and piece;
 * text that a spreadsheet would take for a formula is written so that it stays text. */
GString *tm_table_report (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
