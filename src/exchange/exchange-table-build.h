/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-table-build: rows of a feature list, wherever they came from, into features; private to this
 * folder.  A row is laid out as a row of the job file's "features" and goes through the same reader, so
 * that all take the same values and refuse the same ones.
 */

#pragma once

#include "exchange-job-read.h"
#include "exchange-table.h"

G_BEGIN_DECLS

/* What the rows are read with: one row of the reader, filled anew for each. */
typedef struct {
  TmJob *job;
  TmJsonRow row;
  GHashTable *taken; /* balloons of the rows before */
  guint next_number; /* for a row that states none */
} TmTableBuilder;

void tm_table_builder_init (TmTableBuilder *builder, TmJob *job);
void tm_table_builder_clear (TmTableBuilder *builder);

/* Notes that @balloon is in use, so that no row without a number gets it. */
void tm_table_builder_note (TmTableBuilder *builder, const char *balloon);

/* Starts a row, and sets a member of it (one of exchange-job-members.h); the latter returns NULL, or why
 * @text cannot be taken.  An empty text sets nothing. */
void tm_table_builder_start (TmTableBuilder *builder);
char *tm_table_builder_set (TmTableBuilder *builder, guint member,
                            const char *text) G_GNUC_WARN_UNUSED_RESULT;

/* Makes the feature of the row into @out, or says in out->problem why there is none. */
void tm_table_builder_finish (TmTableBuilder *builder, TmTableRow *out);

/* An empty preview, and its rows. */
TmTablePreview *tm_table_preview_new (void);
void tm_table_preview_add (TmTablePreview *preview, TmTableRow *row);

G_END_DECLS
