/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The sheets of cuts, fits and presses: their cells, and that they are there only when there is something to
 * say.
 */

#include "report-support.h"

#include <glib/gstdio.h>

#include "report-workbook.h"
#include "zip-support.h"

/* Part, materials, characteristics and readings come before them. */
#define READINGS "Readings"
#define CUTS     "Cuts"
#define FIT      "Fit"
#define PRESS    "Press"

static char *
write_job (const TmJob *job)
{
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  g_autoptr (GError) error = NULL;
  char *path = NULL;
  int fd = g_file_open_tmp ("tenthmark-cuts-XXXXXX.xlsx", &path, NULL);

  g_assert_cmpint (fd, >=, 0);
  g_close (fd, NULL);
  g_assert_true (
      tm_workbook_write (content, path, &(TmReportForm) { .paper = TM_PAPER_A4 }, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
  return path;
}

static void
assert_text (const char *path, const char *part, const char *cell, const char *text)
{
  g_autofree char *sheet = zip_sheet (path, part);
  g_autofree char *found = cell_string (path, sheet, cell);

  g_assert_cmpstr (found, ==, text);
}

/* To a thousandth of a count: doubles that went through a division. */
static void
assert_number (const char *path, const char *part, const char *cell, double value)
{
  g_autofree char *sheet = zip_sheet (path, part);

  g_assert_cmpfloat_with_epsilon (cell_number (sheet, cell), value, 1e-9);
}

static void
assert_blank (const char *path, const char *part, const char *cell)
{
  g_autofree char *sheet = zip_sheet (path, part);
  g_autofree char *xml = sheet_cell (sheet, cell);

  g_assert_true (xml == NULL || strstr (xml, "<v>") == NULL);
}

static gboolean
has_sheet (const char *path, const char *name)
{
  g_autofree char *workbook = zip_read (path, "xl/workbook.xml");
  g_autofree char *entry = g_strdup_printf ("<sheet name=\"%s\"", name);

  return strstr (workbook, entry) != NULL;
}

/* The reading of the whole job before a cut, the cut, and the reading after it. */
static void
add_cut (TmJob *job, const char *dialled, const char *after)
{
  TmCutRow *cut = tm_cut_row_new ();

  cut->row.piece = tm_job_find_piece (job, "001");
  cut->row.feature = tm_job_find_feature (job, "1");
  cut->row.by = "AB";
  cut->row.at = "2026-05-04T09:20:00Z";
  cut->dialled = quantity (dialled, TM_UNIT_MM);
  cut->reads = TM_READS_RADIUS;
  cut->passes = 2;
  cut->tool = "boring bar";
  cut->after = after;
  cut->note = "=dry";
  g_assert_cmpint (tm_job_add_cut (job, cut), ==, TM_ADD_OK);
}

static TmJob *
make_cut_job (void)
{
  TmJob *job = make_whole_job ();
  TmPiece *piece = tm_job_find_piece (job, "001");
  TmFeature *bore = tm_job_find_feature (job, "1");

  tm_job_find_method (job, "micrometer")->repeatability = quantity ("0.001", TM_UNIT_MM);
  ((TmReading *)g_ptr_array_index (job->readings, 0))->value = quantity ("24.910", TM_UNIT_MM);
  add_cut (job, "0.05", "1");
  add_reading (job, piece, bore, "", "25.001");
  add_cut (job, "0.004", "2");
  add_reading (job, piece, bore, "", "25.010");
  add_cut (job, "0.01", "3");
  tm_job_withdraw (job, &((TmCutRow *)g_ptr_array_index (job->cuts, 2))->row, "AB", "2026-05-04T09:30:00Z",
                   "not made");
  return job;
}

static void
test_cuts (void)
{
  g_autoptr (TmJob) job = make_cut_job ();
  g_autofree char *path = write_job (job);

  g_assert_true (has_sheet (path, "Cuts"));
  g_assert_false (has_sheet (path, "Fit"));
  assert_text (path, CUTS, "G5", "boring bar");
  assert_text (path, CUTS, "H5", "radius");
  assert_number (path, CUTS, "I5", 0.05);
  assert_number (path, CUTS, "K5", 2);
  assert_number (path, CUTS, "L5", 0.1);   /* on the diameter */
  assert_number (path, CUTS, "M5", 0.091); /* 25.001 - 24.910 */
  assert_number (path, CUTS, "M6", 0.009);
  assert_text (path, CUTS, "P5", "=dry");
  assert_text (path, CUTS, "Q5", "counts");
  /* the one that was not made changed nothing */
  assert_blank (path, CUTS, "M7");
  assert_text (path, CUTS, "Q7", "withdrawn");
  /* and of the readings only the last is of the bore as it is now */
  assert_text (path, READINGS, "R5", "before a cut");
  assert_text (path, READINGS, "R6", "before a cut");
  assert_text (path, READINGS, "R7", "counts");
  g_unlink (path);
}

/* The radius means nothing to a depth: what was dialled is the change. */
static void
test_depth (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *path = NULL;

  tm_job_find_feature (job, "1")->kind = TM_KIND_DEPTH;
  add_cut (job, "0.05", "1");
  path = write_job (job);
  assert_number (path, CUTS, "L5", 0.05);
  g_unlink (path);
}

/* A cut that no reading has closed says so, and gives no number. */
static void
test_open_cut (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *path = NULL;

  add_cut (job, "0.05", "1");
  path = write_job (job);
  assert_blank (path, CUTS, "M5");
  assert_blank (path, CUTS, "N5");
  assert_text (path, CUTS, "O5", "not read on both sides of it");
  g_unlink (path);
}

static void
add_mate (TmJob *job, const char *serial, const char *smallest, const char *piece)
{
  TmMateSize *mate = tm_mate_size_new ();

  mate->feature = "1";
  mate->serial = serial;
  mate->smallest = quantity (smallest, TM_UNIT_MM);
  mate->largest = quantity ("25.026", TM_UNIT_MM);
  mate->uncertainty = quantity ("0.002", TM_UNIT_MM);
  mate->piece = piece;
  g_assert_cmpint (tm_job_add_mate_size (job, mate), ==, TM_ADD_OK);
}

static TmJob *
make_fit_job (void)
{
  TmJob *job = make_cut_job ();
  TmFeature *bore = tm_job_find_feature (job, "1");

  bore->mate.given = TRUE;
  bore->mate.kind = TM_KIND_SHAFT;
  bore->mate.lower = quantity ("25.022", TM_UNIT_MM);
  bore->mate.upper = quantity ("25.035", TM_UNIT_MM);
  add_mate (job, "B1", "25.024", "001");
  add_mate (job, "B2", "25.025", "");
  return job;
}

static void
test_fit (void)
{
  g_autoptr (TmJob) job = make_fit_job ();
  g_autofree char *path = write_job (job);

  g_assert_false (has_sheet (path, "Press"));
  /* 25 H7 with 25 p6 (ISO 286-2): 25.000 - 25.035 and 25.021 - 25.022 */
  assert_text (path, FIT, "E5", "by limits");
  assert_number (path, FIT, "K5", -0.035);
  assert_number (path, FIT, "L5", -0.001);
  assert_text (path, FIT, "S5", "interference fit");
  assert_blank (path, FIT, "R5"); /* nothing is wanted, so there is no chance of it */
  assert_text (path, FIT, "C6", "001");
  assert_text (path, FIT, "E6", "B1");
  assert_number (path, FIT, "G6", 25.010); /* the reading that counts, not those before the cuts */
  assert_number (path, FIT, "K6", -0.016);
  assert_number (path, FIT, "L6", -0.014);
  assert_text (path, FIT, "S7", "meant for no piece yet");
  assert_number (path, FIT, "I7", 25.025);
  assert_blank (path, FIT, "K7");
  g_unlink (path);
}

/* What is wanted is held against both. */
static void
test_wanted (void)
{
  g_autoptr (TmJob) job = make_fit_job ();
  TmFeature *bore = tm_job_find_feature (job, "1");
  g_autofree char *path = NULL;

  bore->mate.wanted_least = quantity ("-0.030", TM_UNIT_MM);
  bore->mate.wanted_most = quantity ("-0.005", TM_UNIT_MM);
  path = write_job (job);
  assert_text (path, FIT, "S5", "not every pair as wanted");
  assert_text (path, FIT, "S6", "as wanted");
  assert_number (path, FIT, "N6", -0.030);
  assert_blank (path, FIT, "P5"); /* by limits nobody knows where in the range a pair will be */
  g_unlink (path);
  g_clear_pointer (&path, g_free);
  /* what was read is not proven without its uncertainty */
  ((TmMateSize *)g_ptr_array_index (job->mate_sizes, 0))->uncertainty = TM_QUANTITY_NONE;
  path = write_job (job);
  assert_text (path, FIT, "S6", "as wanted by what was read; uncertainty unknown");
  assert_blank (path, FIT, "M6");
  assert_blank (path, FIT, "R6");
  g_unlink (path);
}

static void
state_press (TmJob *job)
{
  TmFeature *bore = tm_job_find_feature (job, "1");
  TmShopMaterial *steel = tm_shop_material_new ();

  steel->name = "our steel";
  steel->modulus = quantity ("210", TM_UNIT_HARDNESS);
  steel->poisson = quantity ("0.3", TM_UNIT_HARDNESS);
  steel->yield = quantity ("400", TM_UNIT_HARDNESS);
  g_assert_cmpint (tm_job_add_material (job, steel), ==, TM_ADD_OK);
  bore->press.length = quantity ("20", TM_UNIT_MM);
  bore->press.hub_outside = quantity ("50", TM_UNIT_MM);
  bore->press.hub_material = bore->press.shaft_material = "our steel";
  bore->press.friction_least = quantity ("0.1", TM_UNIT_HARDNESS);
  bore->press.friction_most = quantity ("0.2", TM_UNIT_HARDNESS);
}

/* One material and a solid shaft: p = E δ / (2 d) · (1 - d²/D²) (S. Timoshenko, Strength of Materials II, on
 * shrink fits), so at δ = 0.035 mm it is 210 000 · 0.035 / 50 · 0.75 = 110.25 MPa.  Pressing takes µ p π d L.
 */
static void
test_press (void)
{
  g_autoptr (TmJob) job = make_fit_job ();
  g_autofree char *path = NULL;
  g_autofree char *words = NULL;

  state_press (job);
  path = write_job (job);
  g_assert_true (has_sheet (path, "Press"));
  assert_number (path, PRESS, "G5", 0.001);
  assert_number (path, PRESS, "H5", 0.035);
  assert_number (path, PRESS, "J5", 110.25);
  assert_number (path, PRESS, "P5", 0.2 * 110.25 * G_PI * 25 * 20 / 1000);
  assert_text (path, PRESS, "E6", "B1");
  assert_blank (path, PRESS, "N5"); /* a solid shaft has no bore that closes */
  words = zip_read (path, "xl/sharedStrings.xml");
  g_assert_nonnull (strstr (words, "An estimate for planning"));
  g_unlink (path);
}

/* What cannot be reckoned is one line, and no number. */
static void
test_press_wrong (void)
{
  g_autoptr (TmJob) job = make_fit_job ();
  g_autofree char *path = NULL;
  g_autofree char *sheet = NULL;

  state_press (job);
  tm_job_find_feature (job, "1")->press.hub_outside = quantity ("20", TM_UNIT_MM);
  path = write_job (job);
  assert_blank (path, PRESS, "J5");
  sheet = zip_sheet (path, PRESS);
  g_assert_null (strstr (sheet, "nan"));
  g_assert_null (strstr (sheet, "inf"));
  g_unlink (path);
}

static void
test_nothing_to_say (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *path = write_job (job);

  g_assert_false (has_sheet (path, "Cuts"));
  g_assert_false (has_sheet (path, "Fit"));
  g_assert_false (has_sheet (path, "Press"));
  g_unlink (path);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/report/cuts/cuts", test_cuts);
  g_test_add_func ("/report/cuts/depth", test_depth);
  g_test_add_func ("/report/cuts/open", test_open_cut);
  g_test_add_func ("/report/cuts/fit", test_fit);
  g_test_add_func ("/report/cuts/wanted", test_wanted);
  g_test_add_func ("/report/cuts/press", test_press);
  g_test_add_func ("/report/cuts/press-wrong", test_press_wrong);
  g_test_add_func ("/report/cuts/nothing-to-say", test_nothing_to_say);
  return g_test_run ();
}
