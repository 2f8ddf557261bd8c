/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-recall-list: what a recall found in the jobs of the book, as lines of words.
 */

#pragma once

#include <gtk/gtk.h>

#include "core-recall.h"

G_BEGIN_DECLS

/* Texts owned by the line. */
typedef struct {
  char *job;
  char *piece;
  char *feature;
  char *value; /* the reading, or the pin and whether it went */
  char *time;
  char *before;
  char *after; /* "" where no error was given */
  gboolean changes;
} TmRecallLine;

typedef struct {
  GPtrArray *lines; /* TmRecallLine: those whose verdict changes first, else in the order of the jobs and of
                     * the record */
  GString *table;   /* the same as a table for a spreadsheet */
  guint n_jobs;     /* that have a line */
  guint n_changes;  /* places whose verdict would change */
  gboolean with_error;
} TmRecallList;

/* @jobs: TmJob, as the book gives them; borrowed only for the call.  @error may be NULL or absent. */
TmRecallList *tm_recall_list_new (const GPtrArray *jobs, const char *tag, const char *good_until,
                                  const TmQuantity *error) G_GNUC_WARN_UNUSED_RESULT;
void tm_recall_list_free (TmRecallList *list);

/* "38 readings in 3 jobs; 2 verdicts would change" */
char *tm_recall_list_summary (const TmRecallList *list) G_GNUC_WARN_UNUSED_RESULT;

/* Job, piece, feature, reading, time, verdict, and with the error taken out. */
void tm_recall_add_columns (GtkColumnView *view);

G_END_DECLS
