/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-private: what the files of the book share with each other and with the book's own tests.
 */

#pragma once

#include <sqlite3.h>

#include "book-ahead.h"
#include "book-field.h"
#include "book-hash.h"
#include "book-store.h"

G_BEGIN_DECLS

/* As on a network folder: the rollback journal, whatever the file system says. */
#define TM_BOOK_OPEN_ROLLBACK (1u << 8)

/* How long another program may hold the book before BUSY, in milliseconds. */
#define TM_BOOK_BUSY_MS 3000

/* Pages in the write-ahead log at which recording folds it in by itself. */
#define TM_BOOK_CHECKPOINT_PAGES 4000
/* So many KiB of pages stay in memory. */
#define TM_BOOK_CACHE_SQL "PRAGMA cache_size = -16384"

/* Rows between two calls of a progress function. */
#define TM_BOOK_STRIDE 4096

struct _TmBook {
  sqlite3 *db;
  char *path; /* as it was given: for messages */
  char *real; /* with links followed */
  gboolean read_only;
  gboolean rollback;      /* the rollback journal instead of the write-ahead log */
  GHashTable *statements; /* SQL text -> prepared statement */
  sqlite3_stmt *extend;   /* of the journal; borrowed from statements, as the next ones */
  sqlite3_stmt *inserts[TM_N_BOOK_KINDS];
  TmChain chain;        /* head of the journal, right only inside a transaction */
  gint64 sealed;        /* chain.seq when the transaction began */
  GPtrArray *recorders; /* what tm_book_recorder() handed out */
  TmCells cells;        /* scratch of the row being written */
  GString *payload;     /* scratch */
};

/* --- book-error.c */

/* Sets @error from the SQLite result @rc; always returns FALSE. */
gboolean tm_book_fail (TmBook *book, int rc, GError **error);
/* As tm_book_fail() before there is a TmBook; @db may be NULL. */
gboolean tm_book_fail_at (const char *path, sqlite3 *db, int rc, GError **error);

/* --- book-statement.c */

/* A prepared statement, reset and with nothing bound, owned by @book. */
sqlite3_stmt *tm_book_prepare (TmBook *book, const char *sql, GError **error);
/* Runs a statement that gives no rows, and resets it. */
gboolean tm_book_run (TmBook *book, sqlite3_stmt *statement, GError **error);
gboolean tm_book_exec (TmBook *book, const char *sql, GError **error);
/* Steps: TRUE with a row.  FALSE at the end (@error untouched) or on an error. */
gboolean tm_book_step (TmBook *book, sqlite3_stmt *statement, GError **error);
void tm_bind_text (sqlite3_stmt *statement, int index, const char *text);
/* Text of a column, never NULL, owned by the statement until it is stepped. */
const char *tm_column_text (sqlite3_stmt *statement, int column);
/* One integer asked for with a statement that is already bound; @fallback when there is no row. */
gboolean tm_book_ask (TmBook *book, sqlite3_stmt *statement, gint64 fallback, gint64 *out, GError **error);

/* --- book-journal.c */

/* Opens an immediate transaction and reads the head of the chain. */
gboolean tm_book_begin (TmBook *book, GError **error);
/* Seals the chain and commits; on failure everything is rolled back. */
gboolean tm_book_commit (TmBook *book, GError **error);
void tm_book_rollback (TmBook *book);
/* Commits when @done, else rolls back; returns whether it was committed. */
gboolean tm_book_end (TmBook *book, gboolean done, GError **error);
/* Appends one fact to the journal and its row to the table of @kind.  @version is NULL for kinds
 * that have no versions.  @job is the job's number, 0 for a new job's own row.
 * Returns: the sequence number, 0 on an error. */
gint64 tm_book_append (TmBook *book, TmBookKind kind, gint64 job, const TmVersion *version, gconstpointer row,
                       GError **error);
/* The same for a row of a kind without versions whose fact is made: the one that follows the chain's head. */
gint64 tm_book_append_made (TmBook *book, TmBookKind kind, gint64 job, gconstpointer row, const TmFact *fact,
                            GError **error);

/* --- book-load.c */

/* A new row of a list of the job, with nothing in it. */
gpointer tm_book_new_row (TmBookKind kind) G_GNUC_WARN_UNUSED_RESULT;
void tm_book_free_row (TmBookKind kind, gpointer row);
/* Adds @row to its list of @job, which takes it only on TM_ADD_OK. */
TmAddStatus tm_book_add_row (TmJob *job, TmBookKind kind, gpointer row);
/* The row on which @statement, a tm_kind_select_sql(), stands, into the reader's job. */
gboolean tm_book_load_row (TmBook *book, TmBookKind kind, TmReader *reader, sqlite3_stmt *statement,
                           GError **error);
/* All rows that are left of @statement. */
gboolean tm_book_load_rows (TmBook *book, TmBookKind kind, sqlite3_stmt *statement, TmJob *job,
                            GError **error);
/* The newest rows of a kind: definitions in their rank, the record in the order recorded. */
sqlite3_stmt *tm_book_select_kind (TmBook *book, TmBookKind kind, gint64 number, GError **error);

/* The row of the record that a withdrawal names; NULL when it is not there. */
TmEntryRow *tm_book_find_target (const TmJob *job, const char *target, const char *id);

/* The number of the job with @id; 0 with NO_SUCH_JOB when there is none. */
gint64 tm_book_job_number (TmBook *book, const char *id, GError **error);
/* Everything but readings, trials, cuts and withdrawals. */
TmJob *tm_book_load_definitions (TmBook *book, gint64 number, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Calls @progress with @done of @total every TM_BOOK_STRIDE rows; FALSE with CANCELLED. */
gboolean tm_book_tick (TmBook *book, TmBookProgress progress, gpointer data, guint64 done, guint64 total,
                       GError **error);

/* --- book-content.c */

/* Inside a transaction: keeps the bytes of @drawing in job @number, unless they are there. */
gboolean tm_book_keep_drawing (TmBook *book, gint64 number, const TmDrawing *drawing, GError **error);
/* The bytes of all drawings of @job; one whose bytes are gone is left without. */
gboolean tm_book_load_drawings (TmBook *book, gint64 number, TmJob *job, GError **error);

/* Inside a transaction: keeps the shop's logo, unless it is there. */
gboolean tm_book_keep_logo (TmBook *book, const char *digest, GBytes *logo, GError **error);
GBytes *tm_book_read_logo (TmBook *book, const char *digest, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- book-signed.c */

/* Whether the newest fact of the job @number, kept files left out, is a signature: its report is signed, and
 * nothing has changed since. */
gboolean tm_book_is_frozen (TmBook *book, gint64 number, gboolean *frozen, GError **error);

/* --- book-place.c */

/* Whether @magic, as statfs() gives it, is a file system on which the write-ahead log's shared
 * memory does not work: a network folder, or one that a program serves. */
gboolean tm_place_magic_is_network (guint32 magic);
gboolean tm_place_is_network (const char *path);
gboolean tm_place_is_writable (const char *path);
/* Makes the names in the folder of @path durable. */
void tm_place_sync_folder (const char *path);

/* --- book-job.c */

/* The content of a row, without what only the book knows, as a text in place of what @out held. */
void tm_book_write_content (TmCells *cells, TmBookKind kind, gconstpointer row, GString *out);
/* Whether two jobs hold the same, in the same order. */
gboolean tm_book_same_content (TmBook *book, const TmJob *a, const TmJob *b);

/* --- book-definitions.c */

/* What stays the same of a row from version to version: its name, or for rows that have none its
 * number in the order written. */
char *tm_book_key (TmBookKind kind, gconstpointer row, guint number) G_GNUC_WARN_UNUSED_RESULT;

/* As tm_book_save_definitions() for one list of the job with @number, inside a transaction. */
gboolean tm_book_save_list (TmBook *book, gint64 number, TmBookKind kind, const TmJob *job, const char *by,
                            const char *at, GError **error);

/* --- book-rank.c */

/* Distance between the ranks of rows written together. */
#define TM_RANK_STEP ((gint64)1 << 20)

/* @ranks holds the rank that each row of a list has in the book, 0 for a new row, in the order
 * wanted.  Rows out of order and new rows get ranks between their neighbours; as few as possible
 * change.  Where there is no room every row is ranked anew. */
void tm_rank_assign (gint64 *ranks, guint n);

/* --- book-verify.c */

/* tm_book_verify() with progress; returning FALSE from @progress gives CANCELLED. */
GPtrArray *tm_book_verify_progress (TmBook *book, guint64 *n_checked, TmBookProgress progress, gpointer data,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
