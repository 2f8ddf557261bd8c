/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-workbook.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <locale.h>
#include <unistd.h>

#include "plot-words.h"
#include "report-file-check.h"
#include "report-language.h"
#include "report-sheets.h"
#include "report-signed.h"
#include "report-target.h"
#include "report-workbook-pack.h"

#if !defined(LXW_VERSION_ID) || LXW_VERSION_ID < 114
#error "libxlsxwriter 1.1.4 or later is needed"
#endif

/* From this many readings on, rows leave memory as they are written. */
#define MANY_READINGS 20000

/* -------- Sheets -------- */

/* "2026-05-04T09:12:33Z" as seconds since 1970; 0, which the library takes as now, where it is none. */
static time_t
read_made (const char *made)
{
  g_autoptr (GDateTime) at = made != NULL ? g_date_time_new_from_iso8601 (made, NULL) : NULL;

  return at != NULL ? (time_t)g_date_time_to_unix (at) : 0;
}

/* Who signed last, else the organisation. */
static const char *
find_author (const TmJob *job)
{
  const GPtrArray *signatures = job->signatures;

  return signatures->len > 0 ? tm_report_signer (job, g_ptr_array_index (signatures, signatures->len - 1))
                             : job->organisation;
}

static void
set_properties (TmWorkbook *workbook)
{
  const TmJob *job = workbook->job;
  g_autofree char *name
      = g_strdup_printf (_ ("First-article report, %s revision %s"), job->part_number, job->revision);
  g_autofree char *title = tm_cell_text (name);
  g_autofree char *subject = tm_cell_text (job->part_name);
  g_autofree char *customer = tm_cell_text (job->customer);
  g_autofree char *author = tm_cell_text (find_author (job));
  g_autofree char *company = tm_cell_text (job->organisation);
  g_autofree char *comments = g_strdup_printf (_ ("Written by Tenthmark %s"), TM_VERSION);
  lxw_doc_properties properties = { 0 };

  properties.title = title;
  properties.subject = subject;
  properties.author = author;
  properties.company = company;
  properties.keywords = customer;
  properties.comments = comments;
  properties.created = read_made (workbook->facts.made);
  tm_workbook_check (workbook, workbook_set_properties (workbook->book, &properties));
}

/* Each sheet's share of the work is about its share of the rows; pictures and batches weigh more.  The order
 * is that of the pages; what these do not have stands behind. */
static void
write_sheets (TmWorkbook *workbook)
{
  static const struct {
    void (*write) (TmWorkbook *workbook);
    double share;
  } sheets[] = {
    { tm_sheet_write_part, 0.01 },
    { tm_sheet_write_materials, 0.01 },
    { tm_sheet_write_characteristics, 0.11 },
    { tm_sheet_write_pictures, 0.15 },
    { tm_sheet_write_batch, 0.15 },
    { tm_sheet_write_fit, 0.01 },
    { tm_sheet_write_press, 0.01 },
    { tm_sheet_write_pins, 0.01 },
    { tm_sheet_write_gauges, 0.01 },
    { tm_sheet_write_judged, 0.0 },
    { tm_sheet_write_signatures, 0.0 },
    { tm_sheet_write_check, 0.01 },
    { tm_sheet_write_readings, 0.20 },
    { tm_sheet_write_uncertainty, 0.02 },
    { tm_sheet_write_studies, 0.01 },
    { tm_sheet_write_cuts, 0.01 },
    { tm_sheet_write_runs, 0.08 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (sheets) && tm_workbook_tell (workbook, workbook->done); i++)
    {
      workbook->share = sheets[i].share;
      sheets[i].write (workbook);
      workbook->done += sheets[i].share;
    }
}

/* -------- The file -------- */

/* What the rows of a sheet come to in the file, packed: about. */
#define BYTES_A_CELL 6.0

#define WRITTEN 0.80 /* of the work, before the file is packed */
#define PACKED  0.99

#define STEP ((gsize)1 << 20) /* bytes */

static gboolean
watch_cb (gsize bytes, gpointer data)
{
  TmWorkbook *workbook = data;
  const double expected
      = BYTES_A_CELL * (double)workbook->n_cells + (double)workbook->picture_bytes + 20000.0;

  return tm_workbook_goes_on (workbook, WRITTEN + (PACKED - WRITTEN) * MIN (1.0, (double)bytes / expected));
}

/* Packs the file.  Takes the workbook in any case. */
static void
pack (TmWorkbook *workbook, const char *made)
{
  lxw_error status = LXW_NO_ERROR;
  const TmPackEnd end
      = tm_workbook_pack (g_steal_pointer (&workbook->book), made, watch_cb, workbook, &status);

  if (end == TM_PACK_FAILED)
    tm_workbook_check (workbook, status);
}

static void
write_book (TmWorkbook *workbook, const TmReportForm *form, const char *made)
{
  tm_styles_init (&workbook->styles, workbook->book, form->dates, workbook->template);
  set_properties (workbook);
  write_sheets (workbook);
  if (tm_workbook_tell (workbook, WRITTEN))
    pack (workbook, made);
  else
    tm_workbook_drop (g_steal_pointer (&workbook->book));
}

static void
set_cancelled (GError **error)
{
  g_set_error_literal (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANCELLED,
                       _ ("The report was cancelled; nothing was written"));
}

static gboolean
fill (TmWorkbook *workbook, const char *folder, const char *made, const TmReportForm *form, GError **error)
{
  lxw_workbook_options options
      = { .constant_memory = workbook->job->readings->len > MANY_READINGS, .tmpdir = (char *)folder };

  workbook->book = workbook_new_opt (made, &options);
  if (workbook->book == NULL)
    {
      tm_target_fail (made, ENOMEM, error);
      return FALSE;
    }
  if (form->second_language != NULL && *form->second_language != '\0')
    {
      tm_language_words (form->second_language, TM_DECIMAL_POINT, &workbook->second);
      workbook->has_second = TRUE;
    }
  write_book (workbook, form, made);
  if (workbook->error != NULL)
    g_propagate_error (error, g_steal_pointer (&workbook->error));
  else if (workbook->cancelled)
    set_cancelled (error);
  else
    return TRUE;
  return FALSE;
}

static gboolean
goes_on_cb (gpointer data)
{
  return tm_workbook_goes_on (data, PACKED);
}

/* In steps that each reach the disk soon, so that none is long. */
static gboolean
copy (TmWorkbook *workbook, TmTarget *target, GMappedFile *file, GError **error)
{
  const gsize length = g_mapped_file_get_length (file);
  const char *bytes = g_mapped_file_get_contents (file);

  for (gsize at = 0; at < length; at += STEP)
    {
      if (!tm_workbook_goes_on (workbook, PACKED))
        {
          set_cancelled (error);
          return FALSE;
        }
      if (!tm_target_write (target, bytes + at, MIN (STEP, length - at), error))
        return FALSE;
      (void)fdatasync (target->fd);
    }
  return TRUE;
}

/* Moves a finished workbook from @made to the target's place. */
static gboolean
take_place (TmWorkbook *workbook, TmTarget *target, const char *made, GError **error)
{
  const TmFileWatch watch = { goes_on_cb, workbook };
  g_autoptr (GError) damage = NULL;
  g_autoptr (GMappedFile) file = NULL;

  if (tm_file_check_workbook (made, &watch, &damage)
      && (file = g_mapped_file_new (made, FALSE, &damage)) != NULL)
    return copy (workbook, target, file, error) && tm_target_take_place (target, error);
  if (workbook->cancelled)
    set_cancelled (error);
  else
    g_set_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANNOT_WRITE,
                 _ ("The temporary folder %s cannot hold the workbook: %s; make room there"),
                 g_get_tmp_dir (), damage->message);
  return FALSE;
}

/* The library makes its file among the temporary ones: what goes wrong at the target is then ours to
 * say, in one line.  A folder of its own holds whatever it leaves open. */
static gboolean
make_and_place (TmWorkbook *workbook, TmTarget *target, const TmReportForm *form, GError **error)
{
  g_autofree char *folder = g_build_filename (g_get_tmp_dir (), "tenthmark-report-XXXXXX", NULL);
  g_autofree char *made = NULL;
  gboolean done;

  if (g_mkdtemp_full (folder, 0700) == NULL)
    {
      tm_target_fail (folder, errno, error);
      return FALSE;
    }
  made = g_build_filename (folder, "report.xlsx", NULL);
  done = fill (workbook, folder, made, form, error) && take_place (workbook, target, made, error);
  (void)g_unlink (made);
  (void)g_rmdir (folder);
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
                   const TmWorkbookFacts *facts, TmReportProgress progress, gpointer data, GError **error)
{
  TmWorkbook workbook = { .progress = progress, .data = data };
  TmTarget target = { .fd = -1 };
  locale_t own, before;
  TmWords words;
  const TmWords *words_before;
  gboolean done;

  g_return_val_if_fail (content != NULL && path != NULL && form != NULL, FALSE);
  if (!tm_report_form_check (form, error))
    return FALSE;
  workbook.texts = g_string_chunk_new (1024);
  workbook.content = content;
  workbook.job = content->job;
  workbook.paper = form->paper;
  workbook.form = form;
  workbook.template = form->template;
  if (facts != NULL)
    workbook.facts = *facts;
  if (workbook.facts.digest == NULL)
    workbook.facts.digest = content->digest;
  /* A sheet's numbers are written and read back with a point, whatever the pages print. */
  tm_language_words (form->language, TM_DECIMAL_POINT, &words);
  words_before = tm_words_use (&words);
  before = use_decimal_point (&own);
  done = tm_target_open (&target, path, error) && make_and_place (&workbook, &target, form, error);
  tm_target_close (&target, done);
  g_string_chunk_free (workbook.texts);
  restore_locale (before, own);
  tm_words_use (words_before);
  if (done && progress != NULL)
    (void)progress (1.0, data);
  return done;
}
