/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-job: the job file (.tmjob, JSON), bytes in, core model out, and back.
 *
 * Reading streams, never recurses, holds at most 96 MiB and 32 levels, and either gives a whole job
 * or none.  Members that this version does not know are kept byte for byte and counted.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

#define TM_EXCHANGE_ERROR (tm_exchange_error_quark ())
GQuark tm_exchange_error_quark (void);

typedef enum {
  TM_EXCHANGE_ERROR_TOO_LARGE,
  TM_EXCHANGE_ERROR_TOO_DEEP,
  TM_EXCHANGE_ERROR_NOT_JSON,  /* or truncated */
  TM_EXCHANGE_ERROR_NOT_A_JOB, /* JSON of another kind */
  TM_EXCHANGE_ERROR_NEWER,     /* a version this program does not read */
  TM_EXCHANGE_ERROR_BAD_VALUE, /* a member of the wrong type, or a value that means nothing */
  TM_EXCHANGE_ERROR_MISSING,   /* a required member */
  TM_EXCHANGE_ERROR_DISAGREES, /* requirement and explicit limits */
  TM_EXCHANGE_ERROR_NOT_TEXT,  /* a table that is not UTF-8 */
  TM_EXCHANGE_ERROR_NO_COLUMN, /* a table without a column that is needed */
  TM_EXCHANGE_ERROR_CANCELLED,
  TM_EXCHANGE_ERROR_IO,
  TM_EXCHANGE_ERROR_NOT_XML, /* or truncated */
  TM_EXCHANGE_ERROR_NOT_QIF, /* XML of another kind */
  TM_EXCHANGE_ERROR_NOT_A_TEMPLATE,
} TmExchangeError;

#define TM_EXCHANGE_MAX_BYTES (96u * 1024u * 1024u)

/* What is worth telling about a job that was read; texts are paths such as "features[3].colour". */
typedef struct {
  GPtrArray *unknown; /* char *: members kept though not known, at most the first 100 */
  guint n_unknown;    /* all of them */
} TmJobNotes;
void tm_job_notes_clear (TmJobNotes *notes);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmJobNotes, tm_job_notes_clear)

/* Called now and then with 0..1; returning FALSE cancels. */
typedef gboolean (*TmExchangeProgress) (double fraction, gpointer data);

/* Reads a job from bytes.  @place names the source in errors (a file name).  @notes may be NULL.
 * A job without an id gets one derived from the content. */
TmJob *tm_job_from_bytes (const char *data, gsize length, const char *place, TmJobNotes *notes,
                          TmExchangeProgress progress, gpointer user_data,
                          GError **error) G_GNUC_WARN_UNUSED_RESULT;

TmJob *tm_job_from_file (const char *path, TmJobNotes *notes, TmExchangeProgress progress, gpointer user_data,
                         GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The canonical bytes: what is empty is omitted; the same job always gives the same bytes. */
GString *tm_job_to_string (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;

/* Writes the canonical bytes to @path: a temporary file beside it, synced, then renamed, so that
 * the old file or the whole new one is there, never a part. */
gboolean tm_job_to_file (const TmJob *job, const char *path, GError **error);

/* A job with what @job defines (facts, people, gauges, methods with their studies, tools, materials,
 * features, drawings with their balloons) and nothing of its record: no pieces, measured mates, readings,
 * trials, cuts, events, nonconformances or signatures.  Bytes of drawings are shared.  NULL with an error
 * when it is larger than a job may be. */
TmJob *tm_job_copy_definitions (const TmJob *job, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* TRUE for a time as a job file writes it, UTC "YYYY-MM-DDThh:mm:ssZ": what it could not read back
 * must not be put into a row. */
gboolean tm_job_is_moment (const char *text);

/* What a signature signs: the SHA-256, as 64 hexadecimal digits, of the canonical bytes with the
 * signatures left out. */
char *tm_job_digest (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
