/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Changes to measured mates, to the wanted clearance and to what a press is known by.  Needs no display.
 */

#include "app-edit-mate.h"
#include "app-edit-press.h"
#include "edit-support.h"

static TmQuantity
read_mm (const char *text)
{
  TmQuantity quantity;

  g_assert_cmpint (tm_quantity_read (text, TM_UNIT_MM, &quantity), ==, TM_READ_OK);
  return quantity;
}

static TmMateSize *
make_mate (const char *serial, const char *smallest, const char *largest)
{
  TmMateSize *mate = tm_mate_size_new ();

  mate->feature = "1";
  mate->serial = serial;
  mate->smallest = read_mm (smallest);
  mate->largest = read_mm (largest);
  mate->uncertainty = read_mm ("0.002");
  return mate;
}

/* The fixture's job with a mate for its bore and three of them measured. */
static TmJob *
make_job (void)
{
  TmJob *job = ui_make_job ();
  TmFeature *bore = tm_job_find_feature (job, "1");
  const char *const serials[] = { "B-1", "B-2", "B-3" };

  bore->mate.given = TRUE;
  bore->mate.kind = TM_KIND_SHAFT;
  bore->mate.lower = read_mm ("25.022");
  bore->mate.upper = read_mm ("25.035");
  bore->press.length = read_mm ("20");
  for (guint i = 0; i < G_N_ELEMENTS (serials); i++)
    g_assert_cmpint (tm_job_add_mate_size (job, make_mate (serials[i], "25.025", "25.027")), ==, TM_ADD_OK);
  return job;
}

static TmMateSize *
find_mate (TmDocument *document, const char *serial)
{
  TmMateSize *mate = tm_job_find_mate_size (tm_document_job (document), "1", serial);

  g_assert_nonnull (mate);
  return mate;
}

static gboolean
do_add_mate (TmDocument *document, GError **error)
{
  return tm_edit_put_mate_size (document, NULL, make_mate ("B-4", "25.030", "25.031"), error);
}

static gboolean
do_change_mate (TmDocument *document, GError **error)
{
  TmMateSize *mate = tm_edit_copy_mate_size (find_mate (document, "B-2"));

  mate->serial = "B-2a";
  mate->largest = read_mm ("25.029");
  return tm_edit_put_mate_size (document, find_mate (document, "B-2"), mate, error);
}

static gboolean
do_remove_mate (TmDocument *document, GError **error)
{
  return tm_edit_remove_mate_size (document, find_mate (document, "B-1"), error);
}

static gboolean
do_want (TmDocument *document, GError **error)
{
  return tm_edit_wanted_clearance (document, tm_job_find_feature (tm_document_job (document), "1"),
                                   read_mm ("-0.035"), read_mm ("-0.001"), error);
}

static gboolean
do_pair (TmDocument *document, GError **error)
{
  TmMeantFor choice[]
      = { { find_mate (document, "B-3"), "001", 1 }, { find_mate (document, "B-1"), "002", 2 } };

  return tm_edit_mean_mates_for (document, choice, G_N_ELEMENTS (choice), error);
}

static gboolean
do_press (TmDocument *document, GError **error)
{
  TmFeature *feature = tm_job_find_feature (tm_document_job (document), "1");
  TmPress press = feature->press;

  press.hub_outside = read_mm ("60");
  press.hub_material = tm_job_intern (tm_document_job (document), "grey cast iron");
  return tm_edit_put_press (document, feature, &press, error);
}

static const Edit edits[] = {
  { "add-mate", make_job, do_add_mate },
  { "change-mate", make_job, do_change_mate },
  { "remove-mate", make_job, do_remove_mate },
  { "wanted-clearance", make_job, do_want },
  { "pairing", make_job, do_pair },
  { "press", make_job, do_press },
};

/* A refusal leaves the job as it was, to the byte. */
static void
check_refused (TmDocument *document, gboolean done, const GError *error, const char *before,
               const char *named)
{
  g_autofree char *after = bytes_of (tm_document_job (document));

  g_assert_false (done);
  g_assert_error (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, named));
  g_assert_null (strchr (error->message, '\n'));
  g_assert_cmpstr (after, ==, before);
}

static void
test_refuses (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmDocument *document = fixture->document;
  g_autofree char *before = bytes_of (tm_document_job (document));
  g_autoptr (GError) taken = NULL;
  g_autoptr (GError) renamed = NULL;
  g_autoptr (GError) nameless = NULL;
  g_autoptr (GError) crossed = NULL;
  TmMateSize *mate;
  gboolean done;

  done = tm_edit_put_mate_size (document, NULL, make_mate ("B-1", "25", "25"), &taken);
  check_refused (document, done, taken, before, "B-1");
  mate = tm_edit_copy_mate_size (find_mate (document, "B-1"));
  mate->serial = "B-2";
  done = tm_edit_put_mate_size (document, find_mate (document, "B-1"), mate, &renamed);
  check_refused (document, done, renamed, before, "B-2");
  done = tm_edit_put_mate_size (document, NULL, make_mate ("", "25", "25"), &nameless);
  check_refused (document, done, nameless, before, "");
  done = tm_edit_wanted_clearance (document, tm_job_find_feature (tm_document_job (document), "1"),
                                   read_mm ("0.001"), read_mm ("-0.035"), &crossed);
  check_refused (document, done, crossed, before, "least");
  ui_fixture_free (fixture);
}

/* Figures that no job file may hold together. */
static void
test_contradictions (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmDocument *document = fixture->document;
  TmFeature *feature = tm_job_find_feature (tm_document_job (document), "1");
  g_autofree char *before = bytes_of (tm_document_job (document));
  g_autoptr (GError) friction = NULL;
  g_autoptr (GError) inside = NULL;
  TmPress press = feature->press;
  gboolean done;

  press.friction_least = tm_quantity_new (200000, TM_UNIT_HARDNESS, 1);
  press.friction_most = tm_quantity_new (100000, TM_UNIT_HARDNESS, 1);
  done = tm_edit_put_press (document, feature, &press, &friction);
  check_refused (document, done, friction, before, "friction");
  press = feature->press;
  press.hub_outside = press.shaft_inside = read_mm ("40");
  done = tm_edit_put_press (document, feature, &press, &inside);
  check_refused (document, done, inside, before, "inside");
  ui_fixture_free (fixture);
}

/* A mate that keeps its own serial is not taken by itself. */
static void
test_keeps_serial (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmMateSize *old = find_mate (fixture->document, "B-2");
  TmMateSize *mate = tm_edit_copy_mate_size (old);
  g_autoptr (GError) error = NULL;

  mate->smallest = read_mm ("25.024");
  g_assert_true (tm_edit_put_mate_size (fixture->document, old, mate, &error));
  g_assert_no_error (error);
  g_assert_true (find_mate (fixture->document, "B-2") == old);
  g_assert_cmpint (old->smallest.count, ==, G_GINT64_CONSTANT (25024000000));
  ui_fixture_free (fixture);
}

typedef struct {
  TmPressFigure which;
  const char *text;
  gint64 count; /* -1: refused, -2: absent */
} Reading;

/* One micrometre is a million picometres; plain numbers count millionths. */
static const Reading readings[] = {
  { TM_PRESS_LENGTH, "20", G_GINT64_CONSTANT (20000000000) },
  { TM_PRESS_LENGTH, "1.5 in", G_GINT64_CONSTANT (38100000000) },
  { TM_PRESS_LENGTH, "", -2 },
  { TM_PRESS_LENGTH, "0", -1 },
  { TM_PRESS_LENGTH, "-3", -1 },
  { TM_PRESS_LENGTH, "wide", -1 },
  { TM_PRESS_LENGTH, "nan", -1 },
  { TM_PRESS_LENGTH, "inf", -1 },
  { TM_PRESS_HUB_OUTSIDE, "0", -1 },
  { TM_PRESS_SHAFT_INSIDE, "0", 0 },
  { TM_PRESS_SHAFT_INSIDE, "-1", -1 },
  { TM_PRESS_FRICTION_LEAST, "0.08", 80000 },
  { TM_PRESS_FRICTION_MOST, "0,16", 160000 },
  { TM_PRESS_FRICTION_MOST, "-0.1", -1 },
  { TM_PRESS_FRICTION_MOST, "2.5", -1 },
  { TM_PRESS_HUB_ROUGHNESS, "6.3", G_GINT64_CONSTANT (6300000) },
  { TM_PRESS_SHAFT_ROUGHNESS, "-1", -1 },
  { TM_PRESS_GAP, "0.05", G_GINT64_CONSTANT (50000000) },
  { TM_PRESS_GAP, "-0.05", -1 },
};

static void
test_figures (void)
{
  g_autoptr (TmJob) job = make_job ();
  const TmFeature *feature = tm_job_find_feature (job, "1");

  for (guint i = 0; i < G_N_ELEMENTS (readings); i++)
    {
      const Reading *row = &readings[i];
      TmQuantity out = tm_quantity_new (7, TM_UNIT_MM, 0);
      g_autofree char *problem = NULL;
      const gboolean ok = tm_press_figure_read (job, feature, row->which, row->text, &out, &problem);

      g_test_message ("%s: “%s”", tm_press_figure_title (row->which), row->text);
      g_assert_cmpint (ok, ==, row->count != -1);
      if (row->count >= 0)
        g_assert_cmpint (out.count, ==, row->count);
      if (row->count == -2)
        g_assert_false (out.given);
      if (row->count != -1)
        continue;
      g_assert_cmpint (out.count, ==, 7);
      g_assert_true (g_str_has_prefix (problem, tm_press_figure_title (row->which)));
      g_assert_null (strchr (problem, '\n'));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_edits (edits, G_N_ELEMENTS (edits));
  g_test_add_func ("/edit/mate/refuses", test_refuses);
  g_test_add_func ("/edit/mate/keeps-serial", test_keeps_serial);
  g_test_add_func ("/edit/press/contradictions", test_contradictions);
  g_test_add_func ("/edit/press/figures", test_figures);
  return g_test_run ();
}
