/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Changes to the gauges of a job and to what hangs on them.  Needs no display.
 */

#include "edit-support.h"

/* The fixture's job with a micrometer that has a history, and a pin set. */
static TmJob *
make_job (void)
{
  TmJob *job = ui_make_job ();
  const char *const tags[] = { "OM-1", "PS-1" };
  TmCalibration *calibration = tm_calibration_new ();
  TmCheck *check = tm_check_new ();
  TmPinSize *pin = tm_pin_size_new ();

  for (guint i = 0; i < G_N_ELEMENTS (tags); i++)
    {
      TmGauge *gauge = tm_gauge_new ();

      gauge->tag = tags[i];
      gauge->unit = TM_UNIT_MM;
      gauge->calibrated = i == 0 ? "2026-01-05" : "";
      gauge->due = i == 0 ? "2027-01-05" : "";
      g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
    }
  calibration->gauge = check->gauge = "OM-1";
  calibration->date = "2026-01-05";
  calibration->due = "2027-01-05";
  g_assert_cmpint (tm_job_add_calibration (job, calibration), ==, TM_ADD_OK);
  check->at = "2026-01-06T08:00:00Z";
  tm_quantity_read ("25", TM_UNIT_MM, &check->standard);
  tm_quantity_read ("25", TM_UNIT_MM, &check->reading);
  g_assert_cmpint (tm_job_add_check (job, check), ==, TM_ADD_OK);
  pin->gauge = "PS-1";
  tm_quantity_read ("6", TM_UNIT_MM, &pin->size);
  tm_quantity_read ("6.0004", TM_UNIT_MM, &pin->measured);
  g_assert_cmpint (tm_job_add_pin_size (job, pin), ==, TM_ADD_OK);
  return job;
}

static TmCalibration *
make_calibration (TmDocument *document, const char *date, const char *due, const char *outcome)
{
  TmJob *job = tm_document_job (document);
  TmCalibration *calibration = tm_calibration_new ();

  calibration->gauge = "OM-1";
  calibration->date = tm_job_intern (job, date);
  calibration->due = tm_job_intern (job, due);
  calibration->outcome = tm_job_intern (job, outcome);
  calibration->certificate = tm_job_intern (job, "C-2");
  return calibration;
}

static gboolean
do_add_calibration (TmDocument *document, GError **error)
{
  return tm_edit_add_calibration (document, make_calibration (document, "2026-06-01", "2027-06-01", "good"),
                                  error);
}

static gboolean
do_remove_calibration (TmDocument *document, GError **error)
{
  return tm_edit_remove_calibration (document,
                                     g_ptr_array_index (tm_document_job (document)->calibrations, 0), error);
}

static TmCheck *
make_check (const char *standard, const char *reading)
{
  TmCheck *check = tm_check_new ();

  check->gauge = "OM-1";
  check->at = "2026-06-01T08:00:00Z";
  g_assert_cmpint (tm_quantity_read (standard, TM_UNIT_MM, &check->standard), ==, TM_READ_OK);
  g_assert_cmpint (tm_quantity_read (reading, TM_UNIT_MM, &check->reading), ==, TM_READ_OK);
  return check;
}

static gboolean
do_add_check (TmDocument *document, GError **error)
{
  return tm_edit_add_check (document, make_check ("25", "25.001"), error);
}

static gboolean
do_remove_check (TmDocument *document, GError **error)
{
  return tm_edit_remove_check (document, g_ptr_array_index (tm_document_job (document)->checks, 0), error);
}

static TmPinSize *
make_pin (const char *size, const char *measured)
{
  TmPinSize *pin = tm_pin_size_new ();

  pin->gauge = "PS-1";
  g_assert_cmpint (tm_quantity_read (size, TM_UNIT_MM, &pin->size), ==, TM_READ_OK);
  g_assert_cmpint (tm_quantity_read (measured, TM_UNIT_MM, &pin->measured), ==, TM_READ_OK);
  return pin;
}

static gboolean
do_add_pin (TmDocument *document, GError **error)
{
  return tm_edit_add_pin_size (document, make_pin ("6.02", "6.0193"), error);
}

static gboolean
do_remove_pin (TmDocument *document, GError **error)
{
  return tm_edit_remove_pin_size (document, g_ptr_array_index (tm_document_job (document)->pin_sizes, 0),
                                  error);
}

static gboolean
do_remove_gauge (TmDocument *document, GError **error)
{
  return tm_edit_remove_gauge (document, "OM-1", error);
}

/* The gauges of another job, one of them under a method with a gauge that is here already. */
static TmJob *
make_other_job (void)
{
  TmJob *job = ui_make_job ();
  TmGauge *gauge = tm_gauge_new ();
  TmMethod *method = tm_method_new ();
  TmCheck *check = make_check ("25", "25.001");

  gauge->tag = tm_job_intern (job, "TG-9");
  gauge->kind = tm_job_intern (job, "telescoping gauge");
  gauge->unit = TM_UNIT_MM;
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
  check->gauge = gauge->tag;
  g_assert_cmpint (tm_job_add_check (job, check), ==, TM_ADD_OK);
  method->name = tm_job_intern (job, "TG-9 and BM-2");
  g_ptr_array_add (method->gauges, (gpointer)gauge->tag);
  g_ptr_array_add (method->gauges, (gpointer)tm_job_intern (job, "BM-2"));
  g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
  return job;
}

static gboolean
do_take_gauges (TmDocument *document, GError **error)
{
  static const char *const tags[] = { "TG-9", "BM-2", "nobody", NULL };
  g_autoptr (TmJob) other = make_other_job ();
  guint n_gauges = 0, n_methods = 0;
  gboolean taken = tm_edit_take_gauges (document, other, tags, &n_gauges, &n_methods, error);

  g_assert_cmpuint (n_gauges, ==, 1);
  g_assert_cmpuint (n_methods, ==, 1);
  return taken;
}

static const Edit edits[] = {
  { "remove-gauge", make_job, do_remove_gauge },
  { "take-gauges", make_job, do_take_gauges },
  { "add-calibration", make_job, do_add_calibration },
  { "remove-calibration", make_job, do_remove_calibration },
  { "add-check", make_job, do_add_check },
  { "remove-check", make_job, do_remove_check },
  { "add-pin", make_job, do_add_pin },
  { "remove-pin", make_job, do_remove_pin },
};

/* A range that leaves out a pin whose size was measured, or a standard that the gauge was tried on, would
 * make a job that cannot be read again. */
static void
test_gauge_outgrown (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmDocument *document = fixture->document;
  TmJob *job = tm_document_job (document);
  TmGauge *pins = tm_edit_copy_gauge (tm_job_find_gauge (job, "PS-1"));
  TmGauge *micrometer = tm_edit_copy_gauge (tm_job_find_gauge (job, "OM-1"));
  TmGauge *wide = tm_edit_copy_gauge (tm_job_find_gauge (job, "PS-1"));
  g_autoptr (GError) pin = NULL;
  g_autoptr (GError) standard = NULL;
  g_autoptr (GError) error = NULL;

  tm_quantity_read ("7", TM_UNIT_MM, &pins->range_from);
  g_assert_false (tm_edit_put_gauge (document, "PS-1", pins, &pin));
  g_assert_error (pin, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED);
  g_assert_true (g_str_has_prefix (pin->message, "PS-1: "));
  tm_quantity_read ("20", TM_UNIT_MM, &micrometer->range_to);
  g_assert_false (tm_edit_put_gauge (document, "OM-1", micrometer, &standard));
  g_assert_true (g_str_has_prefix (standard->message, "OM-1: "));
  assert_kept (fixture);
  tm_quantity_read ("5", TM_UNIT_MM, &wide->range_from);
  g_assert_true (tm_edit_put_gauge (document, "PS-1", wide, &error));
  g_assert_no_error (error);
  ui_fixture_free (fixture);
}

/* What core finds wrong is refused with the gauge's tag, and nothing of it is kept. */
static void
test_gauge_faults (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmDocument *document = fixture->document;
  TmJob *job = tm_document_job (document);
  TmCalibration *negative = make_calibration (document, "2026-06-01", "", "good");
  TmGauge *zero = tm_edit_copy_gauge (tm_job_find_gauge (job, "OM-1"));
  g_autoptr (GError) due = NULL;
  g_autoptr (GError) below = NULL;
  g_autoptr (GError) taken = NULL;
  g_autoptr (GError) resolution = NULL;

  g_assert_false (
      tm_edit_add_calibration (document, make_calibration (document, "2026-06-01", "2026-05-31", ""), &due));
  g_assert_error (due, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED);
  g_assert_true (g_str_has_prefix (due->message, "OM-1: The due date is before"));
  negative->uncertainty = tm_quantity_new (-1, TM_UNIT_MM, 12);
  g_assert_false (tm_edit_add_calibration (document, negative, &below));
  g_assert_true (g_str_has_prefix (below->message, "OM-1: "));
  g_assert_false (
      tm_edit_add_calibration (document, make_calibration (document, "2026-01-05", "", ""), &taken));
  g_assert_nonnull (strstr (taken->message, "2026-01-05"));
  zero->resolution = tm_quantity_new (0, TM_UNIT_MM, 3);
  g_assert_false (tm_edit_put_gauge (document, "OM-1", zero, &resolution));
  g_assert_nonnull (strstr (resolution->message, "resolution is zero"));
  g_assert_cmpuint (job->calibrations->len, ==, 1);
  assert_kept (fixture);
  ui_fixture_free (fixture);
}

/* The gauge's own dates follow its newest good calibration, and go back with it. */
static void
test_dates_follow (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmDocument *document = fixture->document;
  TmJob *job = tm_document_job (document);
  const TmGauge *gauge = tm_job_find_gauge (job, "OM-1");

  g_assert_true (
      tm_edit_add_calibration (document, make_calibration (document, "2025-01-05", "2026-01-05", ""), NULL));
  g_assert_cmpstr (gauge->calibrated, ==, "2026-01-05");
  g_assert_true (do_add_calibration (document, NULL));
  g_assert_cmpstr (gauge->calibrated, ==, "2026-06-01");
  g_assert_cmpstr (gauge->due, ==, "2027-06-01");
  g_assert_cmpstr (gauge->certificate, ==, "C-2");
  g_assert_true (
      tm_edit_add_calibration (document, make_calibration (document, "2026-07-01", "", "bad"), NULL));
  g_assert_cmpstr (gauge->calibrated, ==, "2026-06-01");
  g_assert_cmpint (tm_gauge_due (job, gauge, "2026-07-01"), ==, TM_DUE_OVERDUE);
  g_assert_true (tm_edit_remove_calibration (document, g_ptr_array_index (job->calibrations, 2), NULL));
  g_assert_cmpstr (gauge->calibrated, ==, "2026-01-05");
  g_assert_cmpstr (gauge->due, ==, "2027-01-05");
  assert_kept (fixture);
  ui_fixture_free (fixture);
}

/* What the gauge itself said before is in its history when a newer calibration takes its place. */
static void
test_own_dates_kept (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmDocument *document = fixture->document;
  TmJob *job = tm_document_job (document);
  const TmGauge *gauge = tm_job_find_gauge (job, "OM-1");
  guint n;

  g_ptr_array_set_size (job->calibrations, 0);
  n = job->calibrations->len;
  g_assert_cmpstr (gauge->calibrated, ==, "2026-01-05");
  /* An older one takes no place, so nothing is kept. */
  g_assert_true (
      tm_edit_add_calibration (document, make_calibration (document, "2025-01-05", "2026-01-05", ""), NULL));
  g_assert_cmpuint (job->calibrations->len, ==, n + 1);
  g_assert_true (do_add_calibration (document, NULL));
  g_assert_cmpuint (job->calibrations->len, ==, n + 3);
  g_assert_cmpstr (tm_calibration_at (job, "OM-1", "2026-05-31")->date, ==, "2026-01-05");
  for (guint i = 0; i < job->calibrations->len; i++)
    {
      TmCalibration *each = g_ptr_array_index (job->calibrations, i);

      if (g_str_equal (each->date, "2026-06-01"))
        g_assert_true (tm_edit_remove_calibration (document, each, NULL));
    }
  g_assert_cmpstr (gauge->calibrated, ==, "2026-01-05");
  g_assert_cmpstr (gauge->due, ==, "2027-01-05");
  assert_kept (fixture);
  ui_fixture_free (fixture);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_edits (edits, G_N_ELEMENTS (edits));
  g_test_add_func ("/edit/gauge-faults", test_gauge_faults);
  g_test_add_func ("/edit/gauge-outgrown", test_gauge_outgrown);
  g_test_add_func ("/edit/dates-follow", test_dates_follow);
  g_test_add_func ("/edit/own-dates-kept", test_own_dates_kept);
  return g_test_run ();
}
