/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-files: the long work on jobs: a job file into the book, a job out of the book, a job out of
 * the book into a file.  Each runs on a worker thread with a book of its own on the same path.
 */

#pragma once

#include <gtk/gtk.h>

#include "core-model.h"

G_BEGIN_DECLS

typedef enum {
  TM_FILES_DONE,
  TM_FILES_CANCELLED,
  TM_FILES_FAILED,
  TM_FILES_OTHER_IN_BOOK, /* a job with the file's id and other content is in the book: see id */
} TmFilesStatus;

typedef struct {
  TmFilesStatus status;
  TmJob *job;          /* opening: the job, to be stolen; else NULL */
  char *id;            /* its id */
  gboolean added;      /* a file: it was not in the book before */
  guint n_unknown;     /* a file: members kept though not known */
  char *first_unknown; /* the first of them, or NULL */
  char *message;       /* FAILED and OTHER_IN_BOOK: one line for the person */
  char *path;          /* of the file, or NULL */
} TmFilesResult;

void tm_files_result_free (TmFilesResult *result);

/* Called on the main loop; @result belongs to the caller of the callback. */
typedef void (*TmFilesDone) (GtkWidget *parent, TmFilesResult *result);

/* Each does its work on another thread behind a window that can cancel it, with a book of its own, and
 * then calls @done once: adds the job file @path to the book and hands the job over; loads the job @id;
 * writes the job @id to the file @path. */
void tm_files_import (GtkWidget *parent, const char *book_path, const char *path, TmFilesDone done);
void tm_files_load (GtkWidget *parent, const char *book_path, const char *id, const char *title,
                    TmFilesDone done);
void tm_files_export (GtkWidget *parent, const char *book_path, const char *id, const char *path,
                      TmFilesDone done);

/* char * paths of the sample job files, sorted. */
GPtrArray *tm_files_samples (void) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
