/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Changes to a job's definitions: each is in the book when it is in the model, and neither when the
 * book does not keep it.  Needs no display.
 */

#include "app-edit.h"
#include "exchange-job.h"
#include "ui-fixture.h"

static char *
bytes_of (TmJob *job)
{
  return g_string_free (tm_job_to_string (job), FALSE);
}

/* The job in the book is the job in the model. */
static void
assert_kept (UiFixture *fixture)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) loaded
      = tm_book_load_job (fixture->book, tm_document_job (fixture->document)->id, NULL, NULL, &error);
  g_autofree char *in_model = bytes_of (tm_document_job (fixture->document));
  g_autofree char *in_book = NULL;

  g_assert_no_error (error);
  in_book = bytes_of (loaded);
  g_assert_cmpstr (in_book, ==, in_model);
}

static TmBudgetLine *
make_line (const char *method, const char *name, const char *value)
{
  TmBudgetLine *line = tm_budget_line_new ();

  line->method = method;
  line->name = name;
  line->distribution = "rectangular";
  tm_quantity_read (value, TM_UNIT_MM, &line->value);
  return line;
}

/* Two methods, the lines of one between those of the other. */
static void
add_methods (TmJob *job)
{
  static const char *const names[] = { "bored", "turned" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      TmMethod *method = tm_method_new ();

      method->name = names[i];
      g_ptr_array_add (method->gauges, (gpointer)tm_job_intern (job, "BM-2"));
      g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
    }
  for (guint i = 0; i < 4; i++)
    g_assert_cmpint (tm_job_add_budget_line (job, make_line (names[i % 2], i < 2 ? "ring" : "jaws", "0.001")),
                     ==, TM_ADD_OK);
}

/* The fixture's job with a micrometer that has a history, a pin set, and methods with budget lines. */
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
  add_methods (job);
  return job;
}

static TmFeature *
make_feature (TmDocument *document, const char *balloon, const char *requirement)
{
  TmJob *job = tm_document_job (document);
  TmFeature *feature = tm_feature_new ();

  feature->balloon = tm_job_intern (job, balloon);
  feature->requirement = tm_job_intern (job, requirement);
  feature->unit = job->unit;
  tm_callout_apply (job, feature);
  return feature;
}

static void
change_part (TmJob *job, gpointer data)
{
  job->part_name = tm_job_intern (job, data);
}

static gboolean
do_facts (TmDocument *document, GError **error)
{
  return tm_edit_facts (document, change_part, (gpointer) "Side cover", error);
}

static gboolean
do_tolerance (TmDocument *document, GError **error)
{
  return tm_edit_general_tolerance (document, "ISO 2768-m", error);
}

static gboolean
do_add_feature (TmDocument *document, GError **error)
{
  return tm_edit_add_feature (document, make_feature (document, "9", "40"), error);
}

static gboolean
do_replace_feature (TmDocument *document, GError **error)
{
  return tm_edit_replace_feature (document, "2", make_feature (document, "12", "Ø8 H8"), error);
}

static gboolean
do_remove_feature (TmDocument *document, GError **error)
{
  return tm_edit_remove_feature (document, "1", error);
}

static gboolean
do_add_table (TmDocument *document, GError **error)
{
  static const char rows[] = "21,Ø10 H7,dowel\n22,12 max,height\n";
  g_autoptr (TmTablePreview) preview
      = tm_table_preview (rows, strlen (rows), "rows", tm_document_job (document), NULL);
  guint n;

  g_assert_nonnull (preview);
  return tm_edit_add_table (document, preview, &n, error);
}

static gboolean
do_add_piece (TmDocument *document, GError **error)
{
  return tm_edit_add_piece (document, "003", FALSE, error);
}

static gboolean
do_mark_piece (TmDocument *document, GError **error)
{
  return tm_edit_mark_first_article (document, g_ptr_array_index (tm_document_job (document)->pieces, 1),
                                     TRUE, error);
}

static gboolean
do_remove_piece (TmDocument *document, GError **error)
{
  return tm_edit_remove_piece (document, "001", error);
}

static gboolean
do_add_gauge (TmDocument *document, GError **error)
{
  TmGauge *gauge = tm_gauge_new ();

  gauge->tag = tm_job_intern (tm_document_job (document), "TG-1");
  gauge->unit = TM_UNIT_MM;
  return tm_edit_put_gauge (document, NULL, gauge, error);
}

static gboolean
do_change_gauge (TmDocument *document, GError **error)
{
  TmGauge *gauge = tm_edit_copy_gauge (tm_job_find_gauge (tm_document_job (document), "BM-2"));

  gauge->certificate = tm_job_intern (tm_document_job (document), "C-77");
  return tm_edit_put_gauge (document, "BM-2", gauge, error);
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

static gboolean
do_add_method (TmDocument *document, GError **error)
{
  TmMethod *method = tm_method_new ();

  method->name = tm_job_intern (tm_document_job (document), "transfer");
  g_ptr_array_add (method->gauges, (gpointer)tm_job_intern (tm_document_job (document), "BM-2"));
  return tm_edit_put_method (document, NULL, method, error);
}

static gboolean
do_remove_method (TmDocument *document, GError **error)
{
  return tm_edit_remove_method (document, "bored", error);
}

static TmBudgetLine *
first_line (TmDocument *document)
{
  return g_ptr_array_index (tm_document_job (document)->budget_lines, 0);
}

static gboolean
do_add_line (TmDocument *document, GError **error)
{
  return tm_edit_put_budget_line (document, NULL, make_line ("turned", "chuck", "0.002"), error);
}

static gboolean
do_change_line (TmDocument *document, GError **error)
{
  return tm_edit_put_budget_line (document, first_line (document), make_line ("bored", "ring 2", "0.002"),
                                  error);
}

static gboolean
do_remove_line (TmDocument *document, GError **error)
{
  return tm_edit_remove_budget_line (document, first_line (document), error);
}

static gboolean
do_add_person (TmDocument *document, GError **error)
{
  return tm_edit_add_person (document, "EF", "Eva Falk", error);
}

static gboolean
do_remove_person (TmDocument *document, GError **error)
{
  return tm_edit_remove_person (document, "CD", error);
}

typedef struct {
  const char *name;
  gboolean (*run) (TmDocument *document, GError **error);
} Edit;

static const Edit edits[] = {
  { "facts", do_facts },
  { "general-tolerance", do_tolerance },
  { "add-feature", do_add_feature },
  { "replace-feature", do_replace_feature },
  { "remove-feature", do_remove_feature },
  { "add-table", do_add_table },
  { "add-piece", do_add_piece },
  { "mark-piece", do_mark_piece },
  { "remove-piece", do_remove_piece },
  { "add-gauge", do_add_gauge },
  { "change-gauge", do_change_gauge },
  { "remove-gauge", do_remove_gauge },
  { "take-gauges", do_take_gauges },
  { "add-calibration", do_add_calibration },
  { "remove-calibration", do_remove_calibration },
  { "add-check", do_add_check },
  { "remove-check", do_remove_check },
  { "add-pin", do_add_pin },
  { "remove-pin", do_remove_pin },
  { "add-method", do_add_method },
  { "remove-method", do_remove_method },
  { "add-line", do_add_line },
  { "change-line", do_change_line },
  { "remove-line", do_remove_line },
  { "add-person", do_add_person },
  { "remove-person", do_remove_person },
};

static void
count_cb (guint *n)
{
  (*n)++;
}

static void
test_kept (gconstpointer data)
{
  const Edit *edit = data;
  UiFixture *fixture = ui_fixture_new (make_job ());
  g_autofree char *before = bytes_of (tm_document_job (fixture->document));
  g_autofree char *after = NULL;
  g_autoptr (GError) error = NULL;
  guint n_changes = 0;

  g_signal_connect_swapped (fixture->document, "definitions-changed", G_CALLBACK (count_cb), &n_changes);
  g_assert_true (edit->run (fixture->document, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (n_changes, ==, 1);
  after = bytes_of (tm_document_job (fixture->document));
  g_assert_cmpstr (after, !=, before);
  assert_kept (fixture);
  ui_fixture_free (fixture);
}

/* A book that does not write leaves the model as it was, byte for byte. */
static void
test_undone (gconstpointer data)
{
  const Edit *edit = data;
  UiFixture *fixture = ui_fixture_new (make_job ());
  g_autofree char *id = g_strdup (tm_document_job (fixture->document)->id);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GError) refused = NULL;
  guint n_changes = 0;

  g_assert_finalize_object (fixture->document);
  tm_book_close (fixture->book);
  fixture->book = tm_book_open (fixture->path, TM_BOOK_OPEN_READ_ONLY, &error);
  g_assert_no_error (error);
  fixture->document
      = tm_document_new (fixture->book, tm_book_load_job (fixture->book, id, NULL, NULL, &error));
  g_assert_no_error (error);
  g_signal_connect_swapped (fixture->document, "definitions-changed", G_CALLBACK (count_cb), &n_changes);

  before = bytes_of (tm_document_job (fixture->document));
  g_assert_false (edit->run (fixture->document, &refused));
  g_assert_error (refused, TM_BOOK_ERROR, TM_BOOK_ERROR_READ_ONLY);
  after = bytes_of (tm_document_job (fixture->document));
  g_assert_cmpstr (after, ==, before);
  g_assert_cmpuint (n_changes, ==, 0);
  ui_fixture_free (fixture);
}

/* The job's own refusals are one line that begins with the name. */
static void
test_refused (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmDocument *document = fixture->document;
  g_autoptr (GError) taken = NULL;
  g_autoptr (GError) in_use = NULL;
  g_autoptr (GError) piece = NULL;

  g_assert_false (tm_edit_add_feature (document, make_feature (document, "1", "40 ±0.1"), &taken));
  g_assert_error (taken, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED);
  g_assert_true (g_str_has_prefix (taken->message, "1: "));
  g_assert_null (strchr (taken->message, '\n'));
  g_assert_false (tm_edit_remove_gauge (document, "BM-2", &in_use));
  g_assert_error (in_use, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED);
  g_assert_false (tm_edit_add_piece (document, "001", FALSE, &piece));
  g_assert_error (piece, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED);
  assert_kept (fixture);
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

/* The bench never stands at what was removed. */
static void
test_bench_leaves (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmDocument *document = fixture->document;
  TmJob *job = tm_document_job (document);
  const TmSpot *spot;

  while (job->features->len > 0)
    {
      const TmFeature *first = g_ptr_array_index (job->features, 0);

      spot = tm_bench_spot (tm_document_bench (document));
      g_assert_true (spot->feature == first);
      g_assert_true (tm_edit_remove_feature (document, first->balloon, NULL));
    }
  spot = tm_bench_spot (tm_document_bench (document));
  g_assert_null (spot->feature);
  g_assert_true (tm_edit_add_feature (document, make_feature (document, "1", "Ø25 H7"), NULL));
  spot = tm_bench_spot (tm_document_bench (document));
  g_assert_true (spot->feature == g_ptr_array_index (job->features, 0));
  g_assert_true (tm_edit_remove_piece (document, "001", NULL));
  spot = tm_bench_spot (tm_document_bench (document));
  g_assert_cmpstr (spot->piece->serial, ==, "002");
  ui_fixture_free (fixture);
}

/* ISO 2768-1 table 1: 40 mm is ±0.15 fine and ±0.3 medium. */
static void
test_general_tolerance (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmDocument *document = fixture->document;
  TmJob *job = tm_document_job (document);
  const TmFeature *feature;
  g_autofree char *lower = NULL;

  g_assert_true (tm_edit_general_tolerance (document, "ISO 2768-f", NULL));
  g_assert_true (tm_edit_add_feature (document, make_feature (document, "5", "40"), NULL));
  g_assert_cmpuint (tm_edit_general_tolerance_count (document, "ISO 2768-f"), ==, 0);
  g_assert_cmpuint (tm_edit_general_tolerance_count (document, "ISO 2768-m"), ==, 1);
  g_assert_true (tm_edit_general_tolerance (document, "ISO 2768-m", NULL));
  feature = tm_job_find_feature (job, "5");
  lower = tm_count_format (feature->lower.count, TM_UNIT_MM, 2);
  g_assert_cmpstr (lower, ==, "39.70");
  assert_kept (fixture);
  ui_fixture_free (fixture);
}

static void
test_next_serial (void)
{
  static const char *const cases[][2] = {
    { "001", "002" },   { "009", "010" },     { "999", "1000" },
    { "A-09", "A-10" }, { "SN7X", "SN7X-2" }, { "7", "8" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = tm_job_new ();
      g_autofree char *first = tm_edit_next_serial (job);
      g_autofree char *next = NULL;

      g_assert_cmpstr (first, ==, "001");
      ui_add_piece (job, cases[i][0]);
      next = tm_edit_next_serial (job);
      g_assert_cmpstr (next, ==, cases[i][1]);
    }
}

static void
test_next_balloon (void)
{
  g_autoptr (TmJob) job = ui_make_job ();
  g_autofree char *next = tm_edit_next_balloon (job);
  g_autofree char *after = NULL;

  g_assert_cmpstr (next, ==, "5");
  ui_add_feature (job, "12a", "40 ±0.1", "");
  ui_add_feature (job, "31", "41 ±0.1", "");
  after = tm_edit_next_balloon (job);
  g_assert_cmpstr (after, ==, "32");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (edits); i++)
    {
      g_autofree char *kept = g_strdup_printf ("/edit/kept/%s", edits[i].name);
      g_autofree char *undone = g_strdup_printf ("/edit/undone/%s", edits[i].name);

      g_test_add_data_func (kept, &edits[i], test_kept);
      g_test_add_data_func (undone, &edits[i], test_undone);
    }
  g_test_add_func ("/edit/refused", test_refused);
  g_test_add_func ("/edit/gauge-faults", test_gauge_faults);
  g_test_add_func ("/edit/dates-follow", test_dates_follow);
  g_test_add_func ("/edit/bench-leaves", test_bench_leaves);
  g_test_add_func ("/edit/general-tolerance", test_general_tolerance);
  g_test_add_func ("/edit/next-serial", test_next_serial);
  g_test_add_func ("/edit/next-balloon", test_next_balloon);
  return g_test_run ();
}
