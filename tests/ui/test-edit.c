/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Changes to a job's definitions: each is in the book when it is in the model, and neither when the
 * book does not keep it.  Needs no display.
 */

#include "edit-support.h"

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

/* The fixture's job with methods that have budget lines. */
static TmJob *
make_job (void)
{
  TmJob *job = ui_make_job ();

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

static const Edit edits[] = {
  { "facts", make_job, do_facts },
  { "general-tolerance", make_job, do_tolerance },
  { "add-feature", make_job, do_add_feature },
  { "replace-feature", make_job, do_replace_feature },
  { "remove-feature", make_job, do_remove_feature },
  { "add-table", make_job, do_add_table },
  { "add-piece", make_job, do_add_piece },
  { "mark-piece", make_job, do_mark_piece },
  { "remove-piece", make_job, do_remove_piece },
  { "add-gauge", make_job, do_add_gauge },
  { "change-gauge", make_job, do_change_gauge },
  { "add-method", make_job, do_add_method },
  { "remove-method", make_job, do_remove_method },
  { "add-line", make_job, do_add_line },
  { "change-line", make_job, do_change_line },
  { "remove-line", make_job, do_remove_line },
  { "add-person", make_job, do_add_person },
  { "remove-person", make_job, do_remove_person },
};

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

/* What is new or becomes another requirement is not spoken of by the baseline report. */
static void
test_by_reference (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmDocument *document = fixture->document;
  TmJob *job = tm_document_job (document);
  TmFeature *renamed, *changed;

  job->first_article = TM_FIRST_ARTICLE_PARTIAL;
  g_assert_true (tm_edit_add_feature (document, make_feature (document, "5", "40 ±0.1"), NULL));
  g_assert_false (tm_job_find_feature (job, "5")->affected);
  tm_job_find_feature (job, "1")->affected = TRUE;
  g_assert_true (tm_edit_add_feature (document, make_feature (document, "6", "41 ±0.1"), NULL));
  g_assert_true (tm_job_find_feature (job, "6")->affected);
  renamed = tm_edit_copy_feature (tm_job_find_feature (job, "5"));
  renamed->name = "another name";
  g_assert_true (tm_edit_replace_feature (document, "5", renamed, NULL));
  g_assert_false (tm_job_find_feature (job, "5")->affected);
  changed = make_feature (document, "5", "40 ±0.2");
  g_assert_true (tm_edit_replace_feature (document, "5", changed, NULL));
  g_assert_true (tm_job_find_feature (job, "5")->affected);
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
  add_edits (edits, G_N_ELEMENTS (edits));
  g_test_add_func ("/edit/refused", test_refused);
  g_test_add_func ("/edit/bench-leaves", test_bench_leaves);
  g_test_add_func ("/edit/general-tolerance", test_general_tolerance);
  g_test_add_func ("/edit/by-reference", test_by_reference);
  g_test_add_func ("/edit/next-serial", test_next_serial);
  g_test_add_func ("/edit/next-balloon", test_next_balloon);
  return g_test_run ();
}
