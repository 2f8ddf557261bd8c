/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-book-signed: tenthmark-cli book signed, which reports were signed, and their files as they were signed.
 */

#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <string.h>

#include "cli-book.h"
#include "cli-json.h"
#include "cli-verbs.h"
#include "exchange-job.h"
#include "report-signed.h"

/* Digits of a digest that name a file. */
#define LEAST_DIGITS 8

typedef struct {
  TmBook *book;
  yajl_gen gen;         /* NULL: in words */
  GString *text;        /* the words: printed once all was read */
  GError *error;        /* why the book could not say whether it keeps a file; the first */
  const char *ending;   /* of the file that is wanted; NULL: any */
  const char *wanted;   /* the first digits of its digest, in either case; NULL: of the newest signature */
  char *job_id, *found; /* the file */
  guint n_found;
} Signed;

/* -------- The list -------- */

/* A book that cannot be read does not say that it keeps nothing. */
static gboolean
is_kept (Signed *is, const TmJob *job, const char *digest)
{
  gboolean kept = FALSE;

  if (*digest == '\0' || is->error != NULL)
    return FALSE;
  return tm_book_keeps_content (is->book, job->id, digest, &kept, &is->error) && kept;
}

static void
put_file (Signed *is, const TmJob *job, const char *key, const char *digest)
{
  tm_print_key (is->gen, key);
  yajl_gen_map_open (is->gen);
  tm_print_text (is->gen, "digest", *digest != '\0' ? digest : NULL);
  tm_print_flag (is->gen, "kept", is_kept (is, job, digest));
  yajl_gen_map_close (is->gen);
}

static void
put_signature (Signed *is, const TmJob *job, const TmSignature *signature, gboolean holds)
{
  yajl_gen_map_open (is->gen);
  tm_print_text (is->gen, "job", job->id);
  tm_print_text (is->gen, "part_number", job->part_number);
  tm_print_text (is->gen, "revision", job->revision);
  tm_print_text (is->gen, "report", signature->report);
  tm_print_text (is->gen, "by", signature->by);
  tm_print_text (is->gen, "role", signature->role);
  tm_print_text (is->gen, "at", signature->at);
  tm_print_text (is->gen, "digest", signature->digest);
  tm_print_flag (is->gen, "superseded", !holds);
  put_file (is, job, "pages", signature->pages);
  put_file (is, job, "workbook", signature->workbook);
  yajl_gen_map_close (is->gen);
}

static void
print_file (Signed *is, const TmJob *job, const char *kind, const char *digest)
{
  if (*digest != '\0')
    g_string_append_printf (is->text, "  %s  %s%s\n", digest, kind,
                            is_kept (is, job, digest) ? "" : _ (", not kept in this book"));
}

static void
print_signature (Signed *is, const TmJob *job, const TmSignature *signature, gboolean holds)
{
  g_string_append_printf (is->text,
                          holds ? _ ("%s, revision %s, report %s: %s, %s, %s\n")
                                : _ ("%s, revision %s, report %s: %s, %s, %s; superseded\n"),
                          job->part_number, *job->revision != '\0' ? job->revision : "—",
                          *signature->report != '\0' ? signature->report : "—", signature->role,
                          signature->by, signature->at);
  print_file (is, job, _ ("pages"), signature->pages);
  print_file (is, job, _ ("workbook"), signature->workbook);
}

static void
list_signatures (Signed *is, const TmJob *job)
{
  g_autofree char *digest = tm_job_digest (job);

  for (guint i = 0; i < job->signatures->len; i++)
    {
      const TmSignature *signature = g_ptr_array_index (job->signatures, i);
      gboolean holds = tm_signature_state (signature, digest) == TM_SIGNED_HOLDS;

      if (is->gen != NULL)
        put_signature (is, job, signature, holds);
      else
        print_signature (is, job, signature, holds);
    }
}

/* -------- One file -------- */

static void
take_file (Signed *is, const TmJob *job, const char *digest)
{
  if (*digest == '\0' || g_ascii_strncasecmp (digest, is->wanted, strlen (is->wanted)) != 0
      || g_strcmp0 (is->found, digest) == 0)
    return;
  is->n_found++;
  g_free (is->found);
  g_free (is->job_id);
  is->found = g_strdup (digest);
  is->job_id = g_strdup (job->id);
}

/* The file of the newest signature that the name's ending asks for; else any that begins as wanted. */
static void
look_through (Signed *is, const TmJob *job)
{
  for (guint i = job->signatures->len; i > 0; i--)
    {
      const TmSignature *signature = g_ptr_array_index (job->signatures, i - 1);

      if (is->ending == NULL || g_str_equal (is->ending, ".pdf"))
        take_file (is, job, signature->pages);
      if (is->ending == NULL || g_str_equal (is->ending, ".xlsx"))
        take_file (is, job, signature->workbook);
      if (is->ending != NULL)
        return;
    }
}

static int
write_file (const Signed *is, const char *out)
{
  GError *error = NULL;
  g_autoptr (GBytes) bytes = tm_book_read_content (is->book, is->job_id, is->found, &error);
  gconstpointer data = bytes != NULL ? g_bytes_get_data (bytes, NULL) : NULL;

  if (bytes == NULL)
    return tm_fail_error (error);
  if (!g_file_set_contents_full (out, data, (gssize)g_bytes_get_size (bytes),
                                 G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0666, &error))
    {
      g_prefix_error (&error, _ ("%s: cannot be written; choose another folder or free some space: "), out);
      return tm_fail_error (error);
    }
  if (is->gen == NULL)
    {
      printf (_ ("Wrote %s\n"), out);
      return 0;
    }
  yajl_gen_map_open (is->gen);
  tm_print_text (is->gen, "file", out);
  tm_print_text (is->gen, "digest", is->found);
  yajl_gen_map_close (is->gen);
  return 0;
}

static int
hand_out (const Signed *is, const char *out)
{
  if (is->n_found == 1)
    return write_file (is, out);
  if (is->n_found > 1)
    return tm_fail (_ ("book signed: several kept files begin with “%s”; give more digits"), is->wanted);
  if (is->ending != NULL)
    return tm_fail (_ ("book signed: the job has no signed report to write to %s; see book signed"), out);
  return tm_fail (_ ("book signed: no signed report has a file “%s”; see book signed"), is->wanted);
}

/* -------- The call -------- */

/* Which of the known endings a file's name has; NULL: none. */
static const char *
find_ending (const char *out)
{
  if (g_str_has_suffix (out, ".pdf"))
    return ".pdf";
  return g_str_has_suffix (out, ".xlsx") ? ".xlsx" : NULL;
}

/* The exit status: 0, or 2 after an error line. */
static int
read_call (const TmBookCall *call, Signed *is)
{
  if (call->n_operands > 1)
    return tm_fail (_ ("book signed: it takes at most one job, by id or part number"));
  if (call->out == NULL)
    return call->digest == NULL ? 0 : tm_fail (_ ("book signed: say where to write the file with --out"));
  is->wanted = call->digest != NULL ? call->digest : "";
  is->ending = call->digest == NULL ? find_ending (call->out) : NULL;
  if (call->digest != NULL && strlen (call->digest) < LEAST_DIGITS)
    return tm_fail (_ ("book signed: give at least %d digits of --digest"), LEAST_DIGITS);
  if (call->digest == NULL && (is->ending == NULL || call->n_operands == 0))
    return tm_fail (_ ("book signed: name a job and a file that ends in .pdf or .xlsx, or the file to write "
                       "with --digest"));
  return 0;
}

static GPtrArray *
find_jobs (const TmBookCall *call, TmBook *book)
{
  GPtrArray *ids;
  GError *error = NULL;
  char *id;

  if (call->n_operands == 0)
    {
      ids = tm_book_signed_jobs (book, &error);
      if (ids == NULL)
        tm_fail_error (error);
      return ids;
    }
  id = tm_book_call_find_job (book, "book signed", call->operands[0]);
  if (id == NULL)
    return NULL;
  ids = g_ptr_array_new_with_free_func (g_free);
  g_ptr_array_add (ids, id);
  return ids;
}

static int
go_through (const TmBookCall *call, Signed *is, const GPtrArray *ids)
{
  for (guint i = 0; i < ids->len; i++)
    {
      GError *error = NULL;
      g_autoptr (TmJob) job = tm_book_load_job (is->book, g_ptr_array_index (ids, i), NULL, NULL, &error);

      if (job == NULL)
        return tm_fail_error (error);
      if (call->out != NULL)
        look_through (is, job);
      else
        list_signatures (is, job);
    }
  if (call->out != NULL)
    return hand_out (is, call->out);
  return is->error != NULL ? tm_fail_error (g_steal_pointer (&is->error)) : 0;
}

/* Nothing is printed of what could not be read to its end. */
static void
finish (const TmBookCall *call, Signed *is, int status)
{
  if (is->gen != NULL && call->out == NULL)
    yajl_gen_array_close (is->gen);
  if (is->gen != NULL && status == 0)
    tm_print_end (is->gen);
  else if (is->gen != NULL)
    yajl_gen_free (is->gen);
  if (status == 0)
    fputs (is->text->str, stdout);
  g_clear_error (&is->error);
  g_string_free (is->text, TRUE);
  g_free (is->job_id);
  g_free (is->found);
}

int
tm_book_call_signed (const TmBookCall *call)
{
  g_autoptr (TmBook) book = NULL;
  g_autoptr (GPtrArray) ids = NULL;
  Signed is = { 0 };
  int status;

  if (read_call (call, &is) != 0)
    return 2;
  is.book = book = tm_book_call_open (call, TM_BOOK_OPEN_READ_ONLY);
  ids = book != NULL ? find_jobs (call, book) : NULL;
  if (ids == NULL)
    return 2;
  is.gen = call->json ? tm_print_begin () : NULL;
  is.text = g_string_new (NULL);
  if (is.gen != NULL && call->out == NULL)
    yajl_gen_array_open (is.gen);
  status = go_through (call, &is, ids);
  finish (call, &is, status);
  return status;
}
