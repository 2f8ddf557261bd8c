/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-store: the shop's book, one SQLite file that only ever grows.
 *
 * A TmBook is used from one thread at a time; open a second one on the same path for a worker.
 * Every function that records returns only after the transaction is on the disk.  Every error is in
 * TM_BOOK_ERROR and its message is one line: the thing, the place (the path), the mend.
 */

#pragma once

#include "core-model.h"
#include "core-recorder.h"
#include "core-template.h"

G_BEGIN_DECLS

#define TM_BOOK_ERROR (tm_book_error_quark ())
GQuark tm_book_error_quark (void);

typedef enum {
  TM_BOOK_ERROR_CANNOT_OPEN, /* missing folder, no permission, not a regular file */
  TM_BOOK_ERROR_NOT_A_BOOK,  /* another kind of file */
  TM_BOOK_ERROR_NEWER,       /* written by a later version */
  TM_BOOK_ERROR_READ_ONLY,
  TM_BOOK_ERROR_BUSY, /* another program holds the book and did not let go in time */
  TM_BOOK_ERROR_FULL, /* the disk is full */
  TM_BOOK_ERROR_DAMAGED,
  TM_BOOK_ERROR_NO_SUCH_JOB,
  TM_BOOK_ERROR_NO_SUCH_FILE,
  TM_BOOK_ERROR_SAME_ID, /* a job with this id and other content is already there */
  TM_BOOK_ERROR_REFUSED, /* the record itself forbids it: a withdrawn target, a name in use… */
  TM_BOOK_ERROR_CANCELLED,
  TM_BOOK_ERROR_FAILED,
} TmBookError;

typedef enum {
  TM_BOOK_OPEN_NORMAL = 0,         /* create when missing, migrate when older */
  TM_BOOK_OPEN_READ_ONLY = 1 << 0, /* never writes, not even a journal */
} TmBookOpenFlags;

typedef struct _TmBook TmBook;

/* A row of the job list: texts owned by the entry. */
typedef struct {
  char *id;
  char *part_number;
  char *part_name;
  char *revision;
  char *customer;
  char *order;
  guint n_features;
  guint n_pieces;
  guint n_readings;
  char *last_at; /* time of the newest fact, UTC, or "" */
} TmBookEntry;

void tm_book_entry_free (TmBookEntry *entry);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmBookEntry, tm_book_entry_free)

/* Opens the book at @path, and makes it when it is not there.  A file that cannot be written, or
 * TM_BOOK_OPEN_READ_ONLY, gives a book that can only be read.  NULL with a TM_BOOK_ERROR.  A book is
 * used by one thread at a time; each thread opens its own. */
TmBook *tm_book_open (const char *path, TmBookOpenFlags flags, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Folds in what it can of the log, and frees @book with the recorders it gave; NULL does nothing. */
void tm_book_close (TmBook *book);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmBook, tm_book_close)

/* The path it was opened by, owned by @book. */
const char *tm_book_path (const TmBook *book);
gboolean tm_book_is_read_only (const TmBook *book);

/* Folds the write-ahead log into the file; called when idle. */
gboolean tm_book_checkpoint (TmBook *book, GError **error);

/* TmBookEntry rows, the most recently touched first. */
GPtrArray *tm_book_list (TmBook *book, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Called now and then during long work with 0..1; returning FALSE cancels it. */
typedef gboolean (*TmBookProgress) (double fraction, gpointer data);

/* Adds a whole job in one transaction.  @job->id must be set.  The same id with the same content is
 * done already (TRUE, @added FALSE); with other content TM_BOOK_ERROR_SAME_ID, naming both. */
gboolean tm_book_add_job (TmBook *book, const TmJob *job, TmBookProgress progress, gpointer data,
                          gboolean *added, GError **error);

/* The whole job, in the order recorded. */
TmJob *tm_book_load_job (TmBook *book, const char *id, TmBookProgress progress, gpointer data,
                         GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Writes what changed in a job's definitions (facts, people, gauges, methods, tools, materials,
 * features, pieces, mates, events, nonconformances, drawings with their balloons, signatures) as new journal
 * rows: @job is the wanted state.  Readings, trials and cuts are not looked at. */
gboolean tm_book_save_definitions (TmBook *book, const TmJob *job, const char *by, const char *at,
                                   GError **error);

/* One durable transaction each. */
gboolean tm_book_record_reading (TmBook *book, const char *job_id, const TmReading *reading, GError **error);
gboolean tm_book_record_pin_trial (TmBook *book, const char *job_id, const TmPinTrial *trial, GError **error);
gboolean tm_book_record_cut (TmBook *book, const char *job_id, const TmCutRow *cut, GError **error);
gboolean tm_book_withdraw_reading (TmBook *book, const char *job_id, const char *reading_id,
                                   const TmWithdrawal *withdrawal, GError **error);

gboolean tm_book_withdraw_pin_trial (TmBook *book, const char *job_id, const char *trial_id,
                                     const TmWithdrawal *withdrawal, GError **error);
gboolean tm_book_withdraw_cut (TmBook *book, const char *job_id, const char *cut_id,
                               const TmWithdrawal *withdrawal, GError **error);

/* Every gauge of the book with its calibrations, checks, pin sizes, and the methods (with their budget
 * lines) whose gauges are all there, every tool and every material of the shop's own: the newest version over
 * all jobs of each tag and name.  A TmJob with nothing else in it. */
TmJob *tm_book_gauge_register (TmBook *book, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Makes the gauge @tag as it stands in @from, with its calibrations, checks and pin sizes, so in every other
 * job of the book that has that tag, in one transaction; a job that was signed and has not changed since
 * stays as it was signed.  @n_jobs gets how many jobs changed. */
gboolean tm_book_spread_gauge (TmBook *book, const TmJob *from, const char *tag, const char *by,
                               const char *at, guint *n_jobs, GError **error);

/* For a recall: each job in which a reading or trial was taken with gauge @tag (alone, or in a method, now
 * or in an earlier version of it) after the day @good_until, holding its definitions and, of the record,
 * only the places concerned (and those whose size they use).  TmJob array, newest job first. */
GPtrArray *tm_book_recall (TmBook *book, const char *tag, const char *good_until, TmBookProgress progress,
                           gpointer data, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Each job but @except_job in which the tool @name made a cut, holding its definitions and, of the record,
 * only the features concerned of the pieces concerned: what tm_cut_answers() needs.  TmJob array, ordered by
 * the tool's last cut in it, oldest first; at most the @most newest. */
GPtrArray *tm_book_tool_jobs (TmBook *book, const char *name, const char *except_job, guint most,
                              GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Keeps @bytes (a signed report) with the job, there for good once this has returned.
 * Returns: their SHA-256, in hex; NULL with an error: REFUSED when they are empty or over
 * TM_BOOK_CONTENT_MAX. */
#define TM_BOOK_CONTENT_MAX (64u * 1048576u)
char *tm_book_keep_content (TmBook *book, const char *job_id, GBytes *bytes,
                            GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* What the job keeps under @digest, byte for byte; DAMAGED when it is not what was put in, NO_SUCH_FILE when
 * it keeps no such file (the job came out of a job file, which carries the digests of signed reports but not
 * their bytes). */
GBytes *tm_book_read_content (TmBook *book, const char *job_id, const char *digest,
                              GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* A version of the shop's report template: texts owned by it. */
typedef struct {
  gint64 number;     /* of its fact in the journal */
  char *by, *at;     /* who and when, UTC */
  char *name;        /* of the shop, as that version has it; or "" */
  gboolean is_empty; /* it took the template away */
} TmBookTemplateVersion;

void tm_book_template_version_free (TmBookTemplateVersion *version);

/* The template of the shop's reports, the newest version; an empty one where there is none. */
TmTemplate *tm_book_template (TmBook *book, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Makes @template the one that holds, as a new version that says who and when (UTC), unless it is the same;
 * NULL or an empty one takes it away.  Every version stays.  REFUSED, with what is wrong, for one that
 * tm_template_check() finds wrong. */
gboolean tm_book_save_template (TmBook *book, const TmTemplate *template, const char *by, const char *at,
                                GError **error);
/* Every version that the book has, the newest, which holds, first; NULL on an error. */
GPtrArray *tm_book_template_versions (TmBook *book, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* What the version @number of that list says.  Saved again it is a new version. */
TmTemplate *tm_book_template_version (TmBook *book, gint64 number, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Whether the job keeps bytes of that SHA-256, into @kept. */
gboolean tm_book_keeps_content (TmBook *book, const char *job_id, const char *digest, gboolean *kept,
                                GError **error);

/* The number of the newest fact of the book, into @mark; and whether there is a newer one of the job since
 * then, kept files left out, into @changed. */
gboolean tm_book_mark (TmBook *book, gint64 *mark, GError **error);
gboolean tm_book_changed_since (TmBook *book, const char *job_id, gint64 mark, gboolean *changed,
                                GError **error);

/* The jobs but @except_job (NULL: of all) whose report identifier, as it is now, is @identifier, spaces
 * around it and case apart: TmBookEntry array, the counts left at 0; none for an empty identifier. */
GPtrArray *tm_book_find_report (TmBook *book, const char *identifier, const char *except_job,
                                GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The ids of the jobs that were signed (char *), the one that was signed last first. */
GPtrArray *tm_book_signed_jobs (TmBook *book, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* A recorder that writes to @book under @job_id; both must outlive it.  @job_id is borrowed. */
TmRecorder tm_book_recorder (TmBook *book, const char *job_id);

/* What verification found; empty: clean. Each text names the row: job, piece, feature, reading. */
typedef struct {
  char *what;  /* "reading", "feature", "journal", "file"… */
  char *where; /* "part X, piece 001, feature 1, reading 12" */
  char *how;   /* "value is 25.013 in the table, 25.012 in the journal"… */
} TmBookFault;
void tm_book_fault_free (TmBookFault *fault);

/* Checks the file, the hash chain, and every table row against its journal row. */
GPtrArray *tm_book_verify (TmBook *book, guint64 *n_checked, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The number of facts in the book and the SHA-256 of the newest, in hex ("" for an empty book), which
 * depends on every fact before it.  Written down outside the book (in a report, beside a backup) it
 * is what shows a book that was rewritten as a whole, which verification alone cannot see. */
char *tm_book_head (TmBook *book, guint64 *n_facts, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* A consistent copy at @path, verified before it is given its name; refuses an existing file. */
gboolean tm_book_backup (TmBook *book, const char *path, GError **error);

G_END_DECLS
