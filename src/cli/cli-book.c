/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-book: tenthmark-cli book list|add|export|verify|backup; recall stands in cli-book-recall.c, signed in
 * cli-book-signed.c, template in cli-book-template.c.
 */

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "cli-book.h"
#include "cli-json.h"
#include "cli-verbs.h"
#include "exchange-job.h"

/* The user's own book, where the window keeps it too. */
static char *
default_book (void)
{
  return g_build_filename (g_get_user_data_dir (), "tenthmark", "book.tmbook", NULL);
}

/* Whether the user's own book can be opened: writing makes its folder, reading needs the file.
 * FALSE after an error line. */
static gboolean
prepare_own_book (const char *path, TmBookOpenFlags flags)
{
  g_autofree char *folder = g_path_get_dirname (path);

  if (flags != TM_BOOK_OPEN_NORMAL)
    {
      if (g_file_test (path, G_FILE_TEST_EXISTS))
        return TRUE;
      tm_fail (_ ("%s: there is no book yet; add a job with book add, or name a book with --book"), path);
      return FALSE;
    }
  if (g_mkdir_with_parents (folder, 0700) == 0)
    return TRUE;
  tm_fail (_ ("%s: the folder cannot be made (%s); name a book elsewhere with --book"), folder,
           g_strerror (errno));
  return FALSE;
}

TmBook *
tm_book_call_open (const TmBookCall *call, TmBookOpenFlags flags)
{
  g_autofree char *own = default_book ();
  const char *path = call->book_path != NULL ? call->book_path : own;
  GError *error = NULL;
  TmBook *book;

  if (call->book_path == NULL && !prepare_own_book (own, flags))
    return NULL;
  book = tm_book_open (path, flags, &error);
  if (book == NULL)
    tm_fail_error (error);
  return book;
}

static void
put_entry (yajl_gen gen, const TmBookEntry *entry)
{
  yajl_gen_map_open (gen);
  tm_print_text (gen, "id", entry->id);
  tm_print_text (gen, "part_number", entry->part_number);
  tm_print_text (gen, "part_name", entry->part_name);
  tm_print_text (gen, "revision", entry->revision);
  tm_print_text (gen, "customer", entry->customer);
  tm_print_text (gen, "order", entry->order);
  tm_print_integer (gen, "features", entry->n_features);
  tm_print_integer (gen, "pieces", entry->n_pieces);
  tm_print_integer (gen, "readings", entry->n_readings);
  tm_print_text (gen, "last_at", *entry->last_at != '\0' ? entry->last_at : NULL);
  yajl_gen_map_close (gen);
}

static int
list_jobs (const TmBookCall *call)
{
  g_autoptr (TmBook) book = tm_book_call_open (call, TM_BOOK_OPEN_READ_ONLY);
  g_autoptr (GPtrArray) entries = NULL;
  GError *error = NULL;
  yajl_gen gen = NULL;

  if (book == NULL)
    return 2;
  entries = tm_book_list (book, &error);
  if (entries == NULL)
    return tm_fail_error (error);
  if (call->json)
    {
      gen = tm_print_begin ();
      yajl_gen_array_open (gen);
    }
  for (guint i = 0; i < entries->len; i++)
    {
      const TmBookEntry *entry = g_ptr_array_index (entries, i);

      if (call->json)
        put_entry (gen, entry);
      else
        printf (_ ("%s  %s, revision %s: features %u, pieces %u, readings %u\n"), entry->id,
                entry->part_number, *entry->revision ? entry->revision : "—", entry->n_features,
                entry->n_pieces, entry->n_readings);
    }
  if (call->json)
    {
      yajl_gen_array_close (gen);
      tm_print_end (gen);
    }
  return 0;
}

static int
add_file (TmBook *book, const char *path, yajl_gen gen)
{
  g_autoptr (TmJob) job = tm_load_job (path);
  GError *error = NULL;
  gboolean added = FALSE;

  if (job == NULL)
    return 2;
  if (!tm_book_add_job (book, job, NULL, NULL, &added, &error))
    {
      g_prefix_error (&error, "%s: ", path);
      return tm_fail_error (error);
    }
  if (gen == NULL)
    {
      printf (added ? _ ("%s: added as %s\n") : _ ("%s: already in the book as %s\n"), path, job->id);
      return 0;
    }
  yajl_gen_map_open (gen);
  tm_print_text (gen, "file", path);
  tm_print_text (gen, "id", job->id);
  tm_print_flag (gen, "added", added);
  yajl_gen_map_close (gen);
  return 0;
}

static int
add_jobs (const TmBookCall *call)
{
  g_autoptr (TmBook) book = NULL;
  yajl_gen gen;
  int status = 0;

  if (call->n_operands == 0)
    return tm_fail (_ ("book add: it takes one or more job files"));
  book = tm_book_call_open (call, TM_BOOK_OPEN_NORMAL);
  if (book == NULL)
    return 2;
  gen = call->json ? tm_print_begin () : NULL;
  if (gen != NULL)
    yajl_gen_array_open (gen);
  for (guint i = 0; status == 0 && i < call->n_operands; i++)
    status = add_file (book, call->operands[i], gen);
  if (gen != NULL)
    {
      yajl_gen_array_close (gen);
      tm_print_end (gen);
    }
  return status;
}

char *
tm_book_call_find_job (TmBook *book, const char *action, const char *wanted)
{
  GError *error = NULL;
  g_autoptr (GPtrArray) entries = tm_book_list (book, &error);
  g_autofree char *found = NULL;

  if (entries == NULL)
    {
      tm_fail_error (error);
      return NULL;
    }
  for (guint i = 0; i < entries->len; i++)
    {
      const TmBookEntry *entry = g_ptr_array_index (entries, i);

      if (strcmp (entry->id, wanted) == 0)
        return g_strdup (wanted);
      if (strcmp (entry->part_number, wanted) != 0)
        continue;
      if (found != NULL)
        {
          tm_fail (_ ("%s: several jobs have part number “%s”; name one by its id, see book list"), action,
                   wanted);
          return NULL;
        }
      found = g_strdup (entry->id);
    }
  if (found == NULL)
    tm_fail (_ ("%s: there is no job “%s” in %s; see book list"), action, wanted, tm_book_path (book));
  return g_steal_pointer (&found);
}

static int
write_job (const TmJob *job, const char *out)
{
  GError *error = NULL;
  GString *bytes;

  if (out != NULL)
    return tm_job_to_file (job, out, &error) ? 0 : tm_fail_error (error);
  bytes = tm_job_to_string (job);
  fwrite (bytes->str, 1, bytes->len, stdout);
  g_string_free (bytes, TRUE);
  return 0;
}

static int
export_job (const TmBookCall *call)
{
  g_autoptr (TmBook) book = NULL;
  g_autoptr (TmJob) job = NULL;
  g_autofree char *id = NULL;
  GError *error = NULL;

  if (call->n_operands != 1)
    return tm_fail (_ ("book export: it takes one job, by id or part number"));
  book = tm_book_call_open (call, TM_BOOK_OPEN_READ_ONLY);
  id = book != NULL ? tm_book_call_find_job (book, "book export", call->operands[0]) : NULL;
  if (id == NULL)
    return 2;
  job = tm_book_load_job (book, id, NULL, NULL, &error);
  if (job == NULL)
    return tm_fail_error (error);
  return write_job (job, call->out);
}

static void
put_fault (yajl_gen gen, const TmBookFault *fault)
{
  yajl_gen_map_open (gen);
  tm_print_text (gen, "what", fault->what);
  tm_print_text (gen, "where", fault->where);
  tm_print_text (gen, "how", fault->how);
  yajl_gen_map_close (gen);
}

/* @head, written down outside the book, is what shows a book that was rewritten as a whole. */
static void
print_faults (const GPtrArray *faults, guint64 n_checked, const char *head, gboolean json)
{
  yajl_gen gen;

  if (!json)
    {
      for (guint i = 0; i < faults->len; i++)
        {
          const TmBookFault *fault = g_ptr_array_index (faults, i);

          printf ("%s: %s: %s\n", fault->what, fault->where, fault->how);
        }
      if (faults->len == 0)
        printf (g_dngettext (GETTEXT_PACKAGE, "The book is whole: %" PRIu64 " fact checked.\n",
                             "The book is whole: %" PRIu64 " facts checked.\n", (gulong)n_checked),
                n_checked);
      printf (_ ("Newest fact: %s\n"), head);
      return;
    }
  gen = tm_print_begin ();
  yajl_gen_map_open (gen);
  tm_print_integer (gen, "checked", (gint64)n_checked);
  tm_print_text (gen, "head", head);
  tm_print_key (gen, "faults");
  yajl_gen_array_open (gen);
  for (guint i = 0; i < faults->len; i++)
    put_fault (gen, g_ptr_array_index (faults, i));
  yajl_gen_array_close (gen);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

static int
verify_book (const TmBookCall *call)
{
  g_autoptr (TmBook) book = tm_book_call_open (call, TM_BOOK_OPEN_READ_ONLY);
  g_autoptr (GPtrArray) faults = NULL;
  g_autofree char *head = NULL;
  GError *error = NULL;
  guint64 n_checked = 0;

  if (book == NULL)
    return 2;
  faults = tm_book_verify (book, &n_checked, &error);
  head = faults != NULL ? tm_book_head (book, NULL, &error) : NULL;
  if (head == NULL)
    return tm_fail_error (error);
  print_faults (faults, n_checked, head, call->json);
  return faults->len == 0 ? 0 : 1;
}

static int
back_up_book (const TmBookCall *call)
{
  g_autoptr (TmBook) book = NULL;
  GError *error = NULL;
  yajl_gen gen;

  if (call->n_operands != 1)
    return tm_fail (_ ("book backup: it takes the file to write"));
  book = tm_book_call_open (call, TM_BOOK_OPEN_READ_ONLY);
  if (book == NULL)
    return 2;
  if (!tm_book_backup (book, call->operands[0], &error))
    return tm_fail_error (error);
  if (!call->json)
    {
      printf (_ ("Wrote %s\n"), call->operands[0]);
      return 0;
    }
  gen = tm_print_begin ();
  yajl_gen_map_open (gen);
  tm_print_text (gen, "file", call->operands[0]);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
  return 0;
}

static const struct {
  const char *word;
  int (*run) (const TmBookCall *call);
  gboolean bare; /* takes no operand */
} actions[] = {
  { "list", list_jobs, TRUE },
  { "add", add_jobs, FALSE },
  { "export", export_job, FALSE },
  { "verify", verify_book, TRUE },
  { "backup", back_up_book, FALSE },
  { "recall", tm_book_call_recall, TRUE },
  { "signed", tm_book_call_signed, FALSE },
  { "template", tm_book_call_template, TRUE },
};

static int
run_action (gsize action, const TmBookCall *call)
{
  if (actions[action].bare && call->n_operands > 0)
    return tm_fail (_ ("book %s: it takes nothing more, but “%s” follows; name another book with --book"),
                    actions[action].word, call->operands[0]);
  return actions[action].run (call);
}

int
tm_verb_book (int n_words, char **words)
{
  const TmVerb *verb = tm_verb_find ("book");
  TmBookCall call = { NULL };
  const TmOption options[] = {
    { "book", "PATH", N_ ("which book; else the user's own"), &call.book_path, NULL },
    { "out", "FILE",
      N_ ("export, recall, template: where to write the job file, the list or the template; else standard "
          "output"),
      &call.out, NULL },
    { "digest", "SHA-256", N_ ("signed: the kept file to write to --out; its first 8 digits will do"),
      &call.digest, NULL },
    { "set", "FILE", N_ ("template: the template file that the reports follow from now on"), &call.set,
      NULL },
    { "tag", "TAG", N_ ("recall: the gauge that was found bad"), &call.tag, NULL },
    { "good-until", "DATE", N_ ("recall: the last day it was known to be good, like 2026-03-01"),
      &call.good_until, NULL },
    { "error", "E", N_ ("recall: how much it was found to read too large, in the gauge's unit"), &call.error,
      NULL },
    { "json", NULL, N_ ("print JSON"), NULL, &call.json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);

  if (operands == NULL)
    return status;
  if (operands->len == 0)
    return tm_fail (_ ("book: say what to do: %s; see tenthmark-cli book --help"), verb->operands);
  call.operands = (char **)operands->pdata + 1;
  call.n_operands = operands->len - 1;
  for (gsize i = 0; i < G_N_ELEMENTS (actions); i++)
    {
      if (strcmp (actions[i].word, g_ptr_array_index (operands, 0)) == 0)
        return run_action (i, &call);
    }
  return tm_fail (_ ("book: “%s” is none of %s"), (const char *)g_ptr_array_index (operands, 0),
                  verb->operands);
}
