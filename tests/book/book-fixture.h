/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-fixture: a folder that goes away again, invented jobs, and a dump of a job that owes nothing
 * to the code of the book.
 */

#pragma once

#include "book-store.h"

#include <sqlite3.h>

G_BEGIN_DECLS

G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmReading, tm_reading_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmPinTrial, tm_pin_trial_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmCutRow, tm_cut_row_free)

typedef struct {
  char *folder;
  char *path; /* of the book in it */
} Place;

void place_set_up (Place *place, gconstpointer data);
void place_tear_down (Place *place, gconstpointer data);

/* A job that uses every member of the model, with an id of its own. */
TmJob *make_rich_job (const char *id);

/* As it was before versions 2, 3, 4 and 5 of the book: none of the members and lists that came with that. */
TmJob *make_old_job (const char *id);
TmJob *make_later_job (const char *id);
TmJob *make_tooled_job (const char *id);
TmJob *make_batch_job (const char *id);

/* A job with one feature (4 places) and @n_pieces pieces, nothing read. */
TmJob *make_bench_job (const char *id, guint n_pieces);

/* A reading of place 1 that is not added; its texts are static or interned in @job. */
TmReading *make_reading (TmJob *job, const char *id, const char *serial, const char *value);

/* A pin of class X, minus, that did not go at place 1, likewise. */
TmPinTrial *make_trial (TmJob *job, const char *id, const char *serial, const char *size);

/* A cut of 0.02 mm by @tool at place 1, likewise. */
TmCutRow *make_cut (TmJob *job, const char *id, const char *serial, const char *tool);

/* Every member of every struct, a line each. */
char *dump_job (const TmJob *job);

void assert_same_job (const TmJob *a, const TmJob *b);

/* Opens, verifies, closes; fails the test with the first fault when there is one. */
void assert_clean (const char *path);

/* Opens and adds; fails the test on an error. */
void put_job (const char *path, const TmJob *job);

/* Opens and saves the template of support-template.h. */
void put_template (const char *path);

TmJob *take_job (const char *path, const char *id);

/* Runs SQL on the file behind the book's back, foreign keys and triggers as SQLite has them. */
void tamper (const char *path, const char *sql);

gint64 ask_file (const char *path, const char *sql);

/* Every "_no_change" trigger of a table, so that it can be edited: what an intruder would do. */
#define OPEN_TABLE(table_) \
  "DROP TRIGGER " table_ "_stays; DROP TRIGGER " table_ "_remains; DROP TRIGGER " table_ "_follows;"

G_END_DECLS
