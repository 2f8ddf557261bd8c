/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a reading proves, in the workbook: corrected values, the gauges' history, what pins prove, the
 * budgets and the studies, read back from the file's XML.
 */

#include "report-support.h"

#include <glib/gstdio.h>

#include "report-workbook.h"
#include "zip-support.h"

#define CHARACTERISTICS "Characteristics"
#define READINGS        "Readings"
#define PINS            "Pin trials"
/* Without pin trials: */
#define GAUGES      "Gauges"
#define UNCERTAINTY "Uncertainty"
#define STUDIES     "Gauge studies"

typedef struct {
  char *folder;
  char *path;
  TmJob *job; /* of make_whole_job() */
} Place;

static void
set_up (Place *place, gconstpointer data)
{
  place->folder = g_dir_make_tmp ("tenthmark-evidence-XXXXXX", NULL);
  place->path = g_build_filename (place->folder, "report.xlsx", NULL);
  place->job = make_whole_job ();
}

static void
tear_down (Place *place, gconstpointer data)
{
  (void)g_unlink (place->path);
  g_assert_cmpint (g_rmdir (place->folder), ==, 0);
  g_free (place->folder);
  g_free (place->path);
  tm_job_free (place->job);
}

static char *
write_sheet (Place *place, const char *name)
{
  g_autoptr (TmReportContent) content = tm_report_content_new (place->job);
  g_autoptr (GError) error = NULL;

  tm_workbook_write (content, place->path, &(TmReportForm) { .paper = TM_PAPER_A4 }, NULL, NULL, NULL,
                     &error);
  g_assert_no_error (error);
  return zip_sheet (place->path, name);
}

static void
assert_cell (const Place *place, const char *sheet, const char *cell, const char *expected)
{
  g_autofree char *text = cell_string (place->path, sheet, cell);

  g_assert_cmpstr (text, ==, expected);
}

static TmReading *
first_reading (Place *place)
{
  return g_ptr_array_index (place->job->readings, 0);
}

/* ISO 1 with 23.6e-6 and 11.5e-6 / °C: 100.0000 indicated with part and gauge at 25 °C is
 * 100 (1 + 11.5e-6·5) / (1 + 23.6e-6·5) = 99.99395, to the digits printed. */
static void
test_corrected (Place *place, gconstpointer data)
{
  TmFeature *length = add_feature (place->job, "2", TM_KIND_LENGTH, "100", "99.9", "100.1", "micrometer");
  TmReading *reading
      = add_reading (place->job, g_ptr_array_index (place->job->pieces, 0), length, "", "100.0000");
  g_autofree char *sheet = NULL;

  place->job->expansion = quantity ("23.6", TM_UNIT_HARDNESS);
  tm_job_find_gauge (place->job, "M-1")->expansion = quantity ("11.5", TM_UNIT_HARDNESS);
  reading->part_temp = reading->gauge_temp = quantity ("25", TM_UNIT_CELSIUS);
  reading->overdue_reason = "the other one is away";
  sheet = write_sheet (place, READINGS);
  assert_cell (place, sheet, "Q4", "Corrected value");
  g_assert_true (cell_number (sheet, "F6") == 100.0);
  g_assert_cmpfloat_with_epsilon (cell_number (sheet, "Q6"), 99.99395, 5e-6);
  assert_cell (place, sheet, "U6", "the other one is away");
  /* nothing to correct: the cell is empty */
  g_assert_null (strstr (sheet, "<c r=\"Q5\" s=\"12\"><v>"));
}

static TmPinTrial *
add_trial (TmJob *job, const char *size, gboolean went)
{
  TmPinTrial *trial = tm_pin_trial_new ();

  trial->row.piece = g_ptr_array_index (job->pieces, 0);
  trial->row.feature = g_ptr_array_index (job->features, 0);
  trial->row.at = "2026-05-04T09:12:33Z";
  trial->size = quantity (size, TM_UNIT_MM);
  trial->pin_class = "X";
  trial->sign = went ? TM_PIN_PLUS : TM_PIN_MINUS;
  trial->went = went;
  g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
  return trial;
}

/* A plus pin that went is at least its mark; a minus pin that did not is at most its mark, and needs 1 µm
 * to enter.  A pin's own size takes the place of its class. */
static void
test_pins (Place *place, gconstpointer data)
{
  g_autofree char *sheet = NULL;
  TmPinTrial *measured;

  add_trial (place->job, "25.002", TRUE);
  add_trial (place->job, "25.018", FALSE);
  measured = add_trial (place->job, "25.003", TRUE);
  measured->measured = quantity ("25.0034", TM_UNIT_MM);
  measured->gauge = "PS-1";
  measured = add_trial (place->job, "25.004", TRUE);
  measured->pin_class = "";
  tm_job_withdraw (place->job, &measured->row, "AB", "2026-05-04T10:00:00Z", "no class on it");
  sheet = write_sheet (place, PINS);
  assert_cell (place, sheet, "L5", "at least 25.002 mm");
  assert_cell (place, sheet, "L6", "under 25.019 mm");
  assert_cell (place, sheet, "L7", "at least 25.0034 mm");
  assert_cell (place, sheet, "J7", "PS-1");
  g_assert_true (cell_number (sheet, "D5") == 1.0);
  assert_cell (place, sheet, "O8", "withdrawn");
}

/* A reading that counts with an overdue gauge and says why: its sheet carries the reason; the calibration
 * that was in force is marked, and the check shows the drift. */
static void
test_gauge_history (Place *place, gconstpointer data)
{
  TmGauge *gauge = tm_job_find_gauge (place->job, "M-1");
  g_autofree char *sheet = NULL;

  gauge->serial = "4711";
  gauge->range_from = quantity ("0", TM_UNIT_MM);
  gauge->range_to = quantity ("30", TM_UNIT_MM);
  gauge->calibrated = gauge->due = "";
  for (guint i = 0; i < 2; i++)
    {
      TmCalibration *calibration = tm_calibration_new ();

      calibration->gauge = "M-1";
      calibration->date = i == 0 ? "2024-02-01" : "2025-02-01";
      calibration->due = i == 0 ? "2025-02-01" : "2026-02-01";
      calibration->uncertainty = quantity ("0.0008", TM_UNIT_MM);
      g_assert_cmpint (tm_job_add_calibration (place->job, calibration), ==, TM_ADD_OK);
    }
  {
    TmCheck *check = tm_check_new ();

    check->gauge = "M-1";
    check->standard = quantity ("25.000", TM_UNIT_MM);
    check->reading = quantity ("25.001", TM_UNIT_MM);
    check->at = "2026-05-04T07:00:00Z";
    g_assert_cmpint (tm_job_add_check (place->job, check), ==, TM_ADD_OK);
  }
  first_reading (place)->overdue_reason = "the other one is away";
  sheet = write_sheet (place, GAUGES);
  assert_cell (place, sheet, "C5", "4711");
  g_assert_true (cell_number (sheet, "F5") == 30.0);
  assert_cell (place, sheet, "L5", "overdue: the other one is away");
  assert_cell (place, sheet, "A7", "Calibrations");
  assert_cell (place, sheet, "H9", "no");
  assert_cell (place, sheet, "H10", "yes");
  g_assert_true (cell_number (sheet, "E10") == 0.0008);
  assert_cell (place, sheet, "A12", "Checks on the standard");
  g_assert_cmpfloat_with_epsilon (cell_number (sheet, "G14"), 0.001, 1e-12);
}

/* Resolution 0.001 and limit of error 0.002 mm: half a step over sqrt 3, and the limit over sqrt 3
 * (JCGM 100, 4.3.7). */
static void
test_uncertainty (Place *place, gconstpointer data)
{
  g_autofree char *sheet = write_sheet (place, UNCERTAINTY);
  g_autofree char *first = NULL;
  g_autofree char *title = cell_string (place->path, sheet, "A4");

  g_assert_nonnull (strstr (title, "micrometer on feature 1"));
  assert_cell (place, sheet, "A6", "resolution");
  assert_cell (place, sheet, "B6", "M-1");
  g_assert_true (cell_number (sheet, "E6") == 0.0005);
  first = sheet_cell (sheet, "H6");
  g_assert_nonnull (strstr (first, "<f>ABS(G6)*E6/F6</f>"));
  g_assert_cmpfloat_with_epsilon (cell_number (sheet, "H6"), 0.000288675, 1e-8);
  assert_cell (place, sheet, "A7", "limit of error");
  g_assert_cmpfloat_with_epsilon (cell_number (sheet, "H7"), 0.00115470, 1e-8);
  g_assert_nonnull (strstr (sheet, "SQRT(SUMSQ(H6:H"));
}

static void
test_combined (Place *place, gconstpointer data)
{
  TmFeature *bore = g_ptr_array_index (place->job->features, 0);
  g_autofree char *sheet = NULL;
  g_autofree char *characteristics = NULL;
  g_autofree char *strings = NULL;

  bore->counts = TM_COUNTS_COMBINED;
  add_gauge (place->job, "M-2", "0.001", "0.004", "2027-01-05");
  add_method (place->job, "other", "M-2", NULL);
  add_reading (place->job, g_ptr_array_index (place->job->pieces, 0), bore, "", "25.011")->method = "other";
  sheet = write_sheet (place, UNCERTAINTY);
  strings = zip_read (place->path, "xl/sharedStrings.xml");
  g_assert_nonnull (strstr (strings, "micrometer on feature 1"));
  g_assert_nonnull (strstr (strings, "other on feature 1"));
  g_assert_nonnull (strstr (strings, "put together; unit: mm"));
  g_assert_nonnull (strstr (strings, "agree within their uncertainties"));
  characteristics = zip_sheet (place->path, CHARACTERISTICS);
  assert_cell (place, characteristics, "T5", "combined");
}

static void
test_assigned (Place *place, gconstpointer data)
{
  g_autofree char *sheet = write_sheet (place, CHARACTERISTICS);

  assert_cell (place, sheet, "T4", "What counts");
  assert_cell (place, sheet, "T5", "assigned method");
}

/* Two pieces, one person, twice each, 0.002 apart: s² = 0.002² / 2, so 0.0014142. */
static void
test_study (Place *place, gconstpointer data)
{
  static const char *const values[] = { "25.000", "25.002", "25.010", "25.012" };
  TmStudy *study = tm_study_new ();
  g_autofree char *sheet = NULL;

  study->name = "repeat";
  study->method = "micrometer";
  g_ptr_array_add (study->pieces, (gpointer) "a");
  g_ptr_array_add (study->pieces, (gpointer) "b");
  g_ptr_array_add (study->people, (gpointer) "AB");
  study->repeats = tm_quantity_new (2, TM_UNIT_COUNT, 0);
  g_assert_cmpint (tm_job_add_study (place->job, study), ==, TM_ADD_OK);
  for (guint i = 0; i < 4; i++)
    {
      TmStudyReading *reading = tm_study_reading_new ();

      reading->study = "repeat";
      reading->piece = i < 2 ? "a" : "b";
      reading->person = "AB";
      reading->trial = tm_quantity_new (1 + i % 2, TM_UNIT_COUNT, 0);
      reading->value = quantity (values[i], TM_UNIT_MM);
      g_assert_cmpint (tm_job_add_study_reading (place->job, reading), ==, TM_ADD_OK);
    }
  sheet = write_sheet (place, STUDIES);
  g_assert_nonnull (strstr (sheet, "<v>0.00141421"));
  g_assert_nonnull (strstr (sheet, "<v>25.012</v>"));
  /* one cell less: it is not analysed, and the readings stand all the same */
  g_free (g_steal_pointer (&sheet));
  study->repeats = tm_quantity_new (3, TM_UNIT_COUNT, 0);
  sheet = write_sheet (place, STUDIES);
  g_assert_null (strstr (sheet, "<v>0.00141421"));
  g_assert_nonnull (strstr (sheet, "<v>25.012</v>"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name_, function_) g_test_add ("/evidence/" name_, Place, NULL, set_up, function_, tear_down)
  ADD ("corrected", test_corrected);
  ADD ("pins", test_pins);
  ADD ("gauge-history", test_gauge_history);
  ADD ("uncertainty", test_uncertainty);
  ADD ("combined", test_combined);
  ADD ("assigned", test_assigned);
  ADD ("study", test_study);
  return g_test_run ();
}
