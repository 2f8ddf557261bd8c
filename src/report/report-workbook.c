/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-workbook.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <locale.h>
#include <unistd.h>

#include "plot-words.h"
#include "report-file-check.h"
#include "report-language.h"
#include "report-sheets.h"
#include "report-target.h"

#if !defined(LXW_VERSION_ID) || LXW_VERSION_ID < 114
#error "libxlsxwriter 1.1.4 or later is needed"
#endif

/* From this many readings on, rows leave memory as they are written. */
#define MANY_READINGS 20000

/* -------- Sheets -------- */

static void
set_properties (TmWorkbook *workbook)
{
  const TmJob *job = workbook->job;
  g_autofree char *name
      = g_strdup_printf (_ ("First-article report, %s revision %s"), job->part_number, job->revision);
  g_autofree char *title = tm_cell_text (name);
  g_autofree char *subject = tm_cell_text (job->part_name);
  g_autofree char *customer = tm_cell_text (job->customer);
  g_autofree char *comments = g_strdup_printf (_ ("Written by Tenthmark %s"), TM_VERSION);
  lxw_doc_properties properties = { 0 };

  properties.title = title;
  properties.subject = subject;
  properties.keywords = customer;
  properties.comments = comments;
  tm_workbook_check (workbook, workbook_set_properties (workbook->book, &properties));
}

/* Each sheet's share of the work is about its share of the rows; pictures weigh more. */
static void
write_sheets (TmWorkbook *workbook)
{
  static const struct {
    void (*write) (TmWorkbook *workbook);
    double share;
  } sheets[] = {
    { tm_sheet_write_part, 0.02 },
    { tm_sheet_write_materials, 0.01 },
    { tm_sheet_write_characteristics, 0.15 },
    { tm_sheet_write_readings, 0.26 },
    { tm_sheet_write_pins, 0.02 },
    { tm_sheet_write_cuts, 0.02 },
    { tm_sheet_write_fit, 0.01 },
    { tm_sheet_write_press, 0.01 },
    { tm_sheet_write_gauges, 0.02 },
    { tm_sheet_write_uncertainty, 0.02 },
    { tm_sheet_write_studies, 0.01 },
    { tm_sheet_write_pictures, 0.17 },
    { tm_sheet_write_runs, 0.08 },
    { tm_sheet_write_batch, 0.05 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (sheets) && !tm_workbook_stopped (workbook); i++)
    {
      workbook->share = sheets[i].share;
      if (workbook->progress != NULL && !workbook->progress (workbook->done, workbook->data))
        workbook->cancelled = TRUE;
      else
        sheets[i].write (workbook);
      workbook->done += sheets[i].share;
    }
}

/* -------- The file -------- */

/* Packs the file.  Takes the workbook in any case. */
static gboolean
pack (TmWorkbook *workbook, GError **error)
{
  const lxw_error status = workbook_close (workbook->book);

  workbook->book = NULL;
  tm_workbook_check (workbook, status);
  if (workbook->error == NULL)
    return TRUE;
  g_propagate_error (error, workbook->error);
  return FALSE;
}

static gboolean
fill (const TmReportContent *content, const char *made, const TmReportForm *form, TmReportProgress progress,
      gpointer data, GError **error)
{
  lxw_workbook_options options = { .constant_memory = content->job->readings->len > MANY_READINGS };
  TmWorkbook workbook
      = { .content = content, .job = content->job, .paper = form->paper, .progress = progress, .data = data };

  workbook.book = workbook_new_opt (made, &options);
  if (workbook.book == NULL)
    {
      tm_target_fail (made, ENOMEM, error);
      return FALSE;
    }
  if (form->second_language != NULL && *form->second_language != '\0')
    {
      tm_language_words (form->second_language, TM_DECIMAL_POINT, &workbook.second);
      workbook.has_second = TRUE;
    }
  tm_styles_init (&workbook.styles, workbook.book, form->dates);
  set_properties (&workbook);
  write_sheets (&workbook);
  if (!tm_workbook_stopped (&workbook) && (progress == NULL || progress (0.85, data)))
    return pack (&workbook, error);
  lxw_workbook_free (workbook.book);
  if (workbook.error != NULL)
    g_propagate_error (error, workbook.error);
  else
    g_set_error_literal (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANCELLED,
                         _ ("The report was cancelled; nothing was written"));
  return FALSE;
}

/* Moves a finished workbook from @made to the target's place. */
static gboolean
take_place (TmTarget *target, const char *made, GError **error)
{
  g_autoptr (GError) damage = NULL;
  g_autoptr (GMappedFile) file = NULL;

  if (!tm_file_check_workbook (made, &damage) || (file = g_mapped_file_new (made, FALSE, &damage)) == NULL)
    {
      g_set_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANNOT_WRITE,
                   _ ("The temporary folder %s cannot hold the workbook: %s; make room there"),
                   g_get_tmp_dir (), damage->message);
      return FALSE;
    }
  return tm_target_write (target, g_mapped_file_get_contents (file), g_mapped_file_get_length (file), error)
         && tm_target_take_place (target, error);
}

/* The library makes its file among the temporary ones: what goes wrong at the target is then ours to
 * say, in one line. */
static gboolean
make_and_place (const TmReportContent *content, TmTarget *target, const TmReportForm *form,
                TmReportProgress progress, gpointer data, GError **error)
{
  g_autofree char *made = g_build_filename (g_get_tmp_dir (), "tenthmark-report-XXXXXX", NULL);
  const int fd = g_mkstemp_full (made, O_RDWR | O_CLOEXEC, 0600);
  gboolean done;

  if (fd < 0)
    {
      tm_target_fail (made, errno, error);
      return FALSE;
    }
  close (fd);
  done = fill (content, made, form, progress, data, error) && take_place (target, made, error);
  (void)g_unlink (made);
  return done;
}

/* The library prints its numbers by the locale of the thread, and a sheet's numbers have a point.
 * Words stay in the user's language. */
static locale_t
use_decimal_point (locale_t *own)
{
  *own = newlocale (LC_NUMERIC_MASK, "C", duplocale (LC_GLOBAL_LOCALE));
  return *own != (locale_t)0 ? uselocale (*own) : uselocale ((locale_t)0);
}

static void
restore_locale (locale_t before, locale_t own)
{
  uselocale (before);
  if (own != (locale_t)0)
    freelocale (own);
}

gboolean
tm_workbook_write (const TmReportContent *content, const char *path, const TmReportForm *form,
                   TmReportProgress progress, gpointer data, GError **error)
{
  TmTarget target = { .fd = -1 };
  locale_t own, before;
  TmWords words;
  const TmWords *words_before;
  gboolean done;

  g_return_val_if_fail (content != NULL && path != NULL && form != NULL, FALSE);
  if (!tm_report_form_check (form, error))
    return FALSE;
  /* A sheet's numbers are written and read back with a point, whatever the pages print. */
  tm_language_words (form->language, TM_DECIMAL_POINT, &words);
  words_before = tm_words_use (&words);
  before = use_decimal_point (&own);
  done = tm_target_open (&target, path, error)
         && make_and_place (content, &target, form, progress, data, error);
  tm_target_close (&target, done);
  restore_locale (before, own);
  tm_words_use (words_before);
  if (done && progress != NULL)
    (void)progress (1.0, data);
  return done;
}
