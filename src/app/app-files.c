/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-files.h"

#include <glib/gi18n-lib.h>

#include "app-work.h"
#include "book-store.h"
#include "exchange-job.h"

typedef struct {
  char *book_path;
  char *path; /* of the file, or NULL */
  char *id;   /* of the job, or NULL */
  TmFilesDone done;

  /* Which part of the whole the present step is. */
  TmWork *work;
  double from;
  double to;
} FileWork;

static void
free_file_work (gpointer data)
{
  FileWork *files = data;

  g_free (files->book_path);
  g_free (files->path);
  g_free (files->id);
  g_free (files);
}

void
tm_files_result_free (TmFilesResult *result)
{
  g_clear_pointer (&result->job, tm_job_free);
  g_free (result->id);
  g_free (result->first_unknown);
  g_free (result->message);
  g_free (result->path);
  g_free (result);
}

static gboolean
step_progress (double fraction, gpointer data)
{
  FileWork *files = data;

  return tm_work_progress (files->from + fraction * (files->to - files->from), files->work);
}

static void
start_step (FileWork *files, double from, double to)
{
  files->from = from;
  files->to = to;
}

static TmFilesResult *
new_result (FileWork *files, TmJob *job)
{
  TmFilesResult *result = g_new0 (TmFilesResult, 1);

  result->status = TM_FILES_DONE;
  result->job = job;
  result->id = g_strdup (job != NULL ? job->id : files->id);
  result->path = g_strdup (files->path);
  return result;
}

/* Puts @job into the book.  NULL with @error when that fails for any reason but another job under
 * the same id. */
static TmFilesResult *
add_to_book (FileWork *files, TmJob *job, GError **error)
{
  g_autoptr (TmBook) book = tm_book_open (files->book_path, TM_BOOK_OPEN_NORMAL, error);
  g_autoptr (GError) refused = NULL;
  gboolean added = FALSE;
  TmFilesResult *result;

  if (book == NULL)
    return NULL;
  if (tm_book_add_job (book, job, step_progress, files, &added, &refused))
    {
      result = new_result (files, job);
      result->added = added;
      return result;
    }
  if (!g_error_matches (refused, TM_BOOK_ERROR, TM_BOOK_ERROR_SAME_ID))
    {
      g_propagate_error (error, g_steal_pointer (&refused));
      return NULL;
    }
  result = new_result (files, job);
  result->status = TM_FILES_OTHER_IN_BOOK;
  result->message = g_strdup (refused->message);
  return result;
}

static gpointer
run_import (TmWork *work, gpointer data, GError **error)
{
  FileWork *files = data;
  g_autoptr (TmJob) job = NULL;
  g_auto (TmJobNotes) notes = { 0 };
  TmFilesResult *result;

  files->work = work;
  start_step (files, 0.0, 0.5);
  job = tm_job_from_file (files->path, &notes, step_progress, files, error);
  if (job == NULL)
    return NULL;
  start_step (files, 0.5, 1.0);
  result = add_to_book (files, job, error);
  if (result == NULL)
    return NULL;
  job = NULL;
  result->n_unknown = notes.n_unknown;
  if (notes.n_unknown > 0)
    result->first_unknown = g_strdup (g_ptr_array_index (notes.unknown, 0));
  return result;
}

static TmJob *
load_from_book (FileWork *files, GError **error)
{
  g_autoptr (TmBook) book = tm_book_open (files->book_path, TM_BOOK_OPEN_NORMAL, error);

  if (book == NULL)
    return NULL;
  return tm_book_load_job (book, files->id, step_progress, files, error);
}

static gpointer
run_load (TmWork *work, gpointer data, GError **error)
{
  FileWork *files = data;
  TmJob *job;

  files->work = work;
  start_step (files, 0.0, 1.0);
  job = load_from_book (files, error);
  return job != NULL ? new_result (files, job) : NULL;
}

static gpointer
run_export (TmWork *work, gpointer data, GError **error)
{
  FileWork *files = data;
  g_autoptr (TmJob) job = NULL;

  files->work = work;
  start_step (files, 0.0, 0.7);
  job = load_from_book (files, error);
  if (job == NULL || !tm_work_progress (0.7, work) || !tm_job_to_file (job, files->path, error))
    return NULL;
  return new_result (files, NULL);
}

static void
finished (GtkWidget *parent, gpointer value, const GError *error, gpointer data)
{
  FileWork *files = data;
  TmFilesResult *result = value;

  if (result == NULL)
    {
      result = g_new0 (TmFilesResult, 1);
      result->status = error != NULL ? TM_FILES_FAILED : TM_FILES_CANCELLED;
      result->message = error != NULL ? g_strdup (error->message) : NULL;
      result->path = g_strdup (files->path);
      result->id = g_strdup (files->id);
    }
  files->done (parent, result);
}

static void
start (GtkWidget *parent, const char *title, TmWorkFunc run, FileWork *files)
{
  tm_work_run (parent, title, run, finished, files, free_file_work, (GDestroyNotify)tm_files_result_free);
}

static FileWork *
new_file_work (const char *book_path, const char *path, const char *id, TmFilesDone done)
{
  FileWork *files = g_new0 (FileWork, 1);

  files->book_path = g_strdup (book_path);
  files->path = g_strdup (path);
  files->id = g_strdup (id);
  files->done = done;
  return files;
}

void
tm_files_import (GtkWidget *parent, const char *book_path, const char *path, TmFilesDone done)
{
  g_autofree char *name = g_filename_display_basename (path);
  g_autofree char *title = g_strdup_printf (_ ("Opening %s"), name);

  start (parent, title, run_import, new_file_work (book_path, path, NULL, done));
}

void
tm_files_load (GtkWidget *parent, const char *book_path, const char *id, const char *title, TmFilesDone done)
{
  g_autofree char *line = g_strdup_printf (_ ("Opening %s"), title);

  start (parent, line, run_load, new_file_work (book_path, NULL, id, done));
}

void
tm_files_export (GtkWidget *parent, const char *book_path, const char *id, const char *path, TmFilesDone done)
{
  g_autofree char *name = g_filename_display_basename (path);
  g_autofree char *title = g_strdup_printf (_ ("Writing %s"), name);

  start (parent, title, run_export, new_file_work (book_path, path, id, done));
}

/* NULL when the samples are not installed. */
static char *
find_sample_folder (void)
{
  const char *given = g_getenv ("TM_SAMPLE_JOBS");
  const char *folder = given != NULL && *given != '\0' ? given : TM_SAMPLE_DIR;

  return g_file_test (folder, G_FILE_TEST_IS_DIR) ? g_strdup (folder) : NULL;
}

static int
compare_paths (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *)a, *(const char *const *)b);
}

GPtrArray *
tm_files_samples (void)
{
  GPtrArray *paths = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *folder = find_sample_folder ();
  g_autoptr (GDir) dir = folder != NULL ? g_dir_open (folder, 0, NULL) : NULL;
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".tmjob"))
      g_ptr_array_add (paths, g_build_filename (folder, name, NULL));
  g_ptr_array_sort (paths, compare_paths);
  return paths;
}
