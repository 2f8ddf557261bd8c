/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The Materials view: the tables' figures with their sources, the shop's own beside them; added, changed,
 * removed and refused.
 */

#include "app-edit-material.h"
#include "app-list-row.h"
#include "app-material-view.h"
#include "app-material-words.h"
#include "app-resources.h"
#include "edit-support.h"
#include "methods-support.h"

typedef struct {
  UiFixture *fixture;
  GtkWidget *window;
  TmMaterialView *view;
  TmJob *job;
} Page;

static Page *
open_page (TmJob *job)
{
  Page *page = g_new0 (Page, 1);

  page->fixture = ui_fixture_new (job);
  page->job = job;
  page->view = TM_MATERIAL_VIEW (tm_material_view_new ());
  page->window = ui_window_new (page->view);
  tm_material_view_set_document (page->view, page->fixture->document);
  ui_present (page->window);
  return page;
}

static void
close_page (Page *page)
{
  ui_close (page->window);
  ui_fixture_free (page->fixture);
  g_free (page);
}

static GtkWidget *
open_dialog (Page *page, const char *action)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page->view), action, NULL));
  g_assert_nonnull (dialog_over (page->window));
  return dialog_over (page->window);
}

static char *
say_figure (const char *name, const TmJob *job, guint which)
{
  TmElastic material, table;
  g_autoptr (GPtrArray) lines = NULL;

  g_assert_true (tm_elastic_find (job, name, &material));
  lines = tm_words_material (&material, tm_elastic_find (NULL, name, &table) ? &table : NULL);
  g_assert_cmpuint (lines->len, ==, 5);
  return g_strdup (((TmMaterialLine *)g_ptr_array_index (lines, which))->sentence);
}

/* Each figure is one sentence with value, range and source. */
static void
test_words (void)
{
  g_autofree char *modulus = say_figure ("nylon", NULL, 0);
  g_autofree char *cold = say_figure ("4140", NULL, 4);
  g_autofree char *unknown = say_figure ("steel", NULL, 2);
  TmElastic nylon;
  g_auto (GStrv) notes = NULL;

  g_assert_cmpstr (
      modulus, ==,
      "Modulus of elasticity: 2.7 GPa, in the tables 1.59 to 3.79, Dowling, Mechanical Behavior of "
      "Materials, table 5.2; Callister, Materials Science and Engineering, table B.2");
  g_assert_cmpstr (cold, ==, "Expansion in deep cooling: 8.5e-6/°C, DIN 7190, for cooling (from memory)");
  g_assert_cmpstr (unknown, ==, "Yield strength: not known");
  g_assert_true (tm_elastic_find (NULL, "nylon", &nylon));
  notes = tm_words_material_notes (&nylon);
  g_assert_cmpuint (g_strv_length (notes), ==, 4);
  g_assert_true (g_str_has_prefix (notes[2], "Plastic relaxes"));
  g_assert_nonnull (strstr (notes[3], "moisture"));
}

/* What the shop states stands beside the tables, in the book too; what it leaves out is theirs. */
static void
test_add (void)
{
  Page *page = open_page (make_methods_job ());
  GtkWidget *dialog = open_dialog (page, "material.add");
  g_autoptr (TmJob) kept = NULL;
  g_autofree char *yield = NULL;
  g_autofree char *modulus = NULL;
  const TmShopMaterial *material;

  type_in (dialog, "Name", "steel 4140");
  type_in (dialog, "Yield", "655");
  type_in (dialog, "Source", "mill certificate");
  press (dialog, "Save");
  g_assert_null (dialog_over (page->window));
  kept = ui_load_again (page->fixture);
  material = tm_job_find_material (kept, "steel 4140");
  g_assert_nonnull (material);
  g_assert_cmpfloat (tm_count_to_double (material->yield.count, TM_UNIT_HARDNESS), ==, 655);
  g_assert_false (material->modulus.given);
  g_assert_true (tm_list_select (tm_material_view_materials (page->view), "ssteel 4140", FALSE));
  yield = say_figure ("steel 4140", page->job, 2);
  modulus = say_figure ("steel 4140", page->job, 0);
  g_assert_cmpstr (yield, ==, "Yield strength: 655 MPa, in the tables 417 to 1570, mill certificate");
  g_assert_true (g_str_has_prefix (modulus, "Modulus of elasticity: 207 GPa, Callister"));
  close_page (page);
}

/* From a row of the tables: its name is there already. */
static void
test_make_own_and_remove (void)
{
  Page *page = open_page (make_methods_job ());
  GtkWidget *dialog;

  tm_material_view_choose (page->view, "PEEK");
  dialog = open_dialog (page, "material.change");
  type_in (dialog, "Modulus", "3.9");
  type_in (dialog, "Source", "supplier");
  press (dialog, "Save");
  g_assert_true (tm_job_find_material (page->job, "PEEK")->plastic);
  dialog = open_dialog (page, "material.change");
  type_in (dialog, "Modulus", "4.0");
  press (dialog, "Save");
  g_assert_cmpuint (page->job->materials->len, ==, 1);
  g_assert_cmpfloat (
      tm_count_to_double (tm_job_find_material (page->job, "PEEK")->modulus.count, TM_UNIT_HARDNESS), ==,
      4.0);
  dialog = open_dialog (page, "material.change");
  press (dialog, "Remove");
  g_assert_null (tm_job_find_material (page->job, "PEEK"));
  g_assert_null (dialog_over (page->window));
  close_page (page);
}

/* One wrong field, one line; nothing is saved and what was typed stays. */
static void
test_refused (void)
{
  static const struct {
    const char *name, *modulus, *poisson, *yield, *expansion, *source, *says;
  } cases[] = {
    { "", "200", "", "", "", "s", "Name: it needs one." },
    { "m", "", "", "", "", "s", "State at least one figure." },
    { "m", "-200", "", "", "", "s", "cannot be below zero" },
    { "m", "0", "", "", "", "s", "must be above zero" },
    { "m", "207000", "", "", "", "s", "give GPa" },
    { "m", "many", "", "", "", "s", "“many”" },
    { "m", "nan", "", "", "", "s", "“nan”" },
    { "m", "200", "0.6", "", "", "s", "between -1 and 0.5" },
    { "m", "200", "-1", "", "", "s", "between -1 and 0.5" },
    { "m", "200", "0.3", "60000", "", "s", "1000 psi" },
    { "m", "200", "0.3", "300", "0.0000115", "s", "millionths" },
    { "m", "200", "0.3", "300", "11500", "s", "millionths" },
    { "m", "200", "0.3", "300", "11.5", "", "Source of the figures: it needs one." },
  };
  Page *page = open_page (make_methods_job ());
  GtkWidget *dialog = open_dialog (page, "material.add");

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      type_in (dialog, "Name", cases[i].name);
      type_in (dialog, "Modulus", cases[i].modulus);
      type_in (dialog, "Poisson", cases[i].poisson);
      type_in (dialog, "Yield", cases[i].yield);
      type_in (dialog, "Expansion, 1e-6", cases[i].expansion);
      type_in (dialog, "Source", cases[i].source);
      press (dialog, "Save");
      assert_says (problem_in (dialog), cases[i].says);
      g_assert_cmpuint (page->job->materials->len, ==, 0);
    }
  gtk_window_close (GTK_WINDOW (dialog));
  close_page (page);
}

/* A material that a press names stays. */
static void
test_in_use (void)
{
  Page *page = open_page (make_methods_job ());
  TmFeature *feature = g_ptr_array_index (page->job->features, 0);
  GtkWidget *dialog = open_dialog (page, "material.add");

  type_in (dialog, "Name", "arm stock");
  type_in (dialog, "Modulus", "70.5");
  type_in (dialog, "Source", "certificate");
  press (dialog, "Save");
  feature->press.hub_material = tm_job_intern (page->job, "arm stock");
  dialog = open_dialog (page, "material.change");
  press (dialog, "Remove");
  assert_says (problem_in (dialog), "arm stock: ");
  g_assert_nonnull (tm_job_find_material (page->job, "arm stock"));
  gtk_window_close (GTK_WINDOW (dialog));
  close_page (page);
}

/* -------- The edits by themselves -------- */

static TmShopMaterial *
new_material (TmJob *job, const char *name, const char *modulus)
{
  TmShopMaterial *material = tm_shop_material_new ();

  material->name = tm_job_intern (job, name);
  material->source = tm_job_intern (job, "certificate");
  g_assert_cmpint (tm_quantity_read (modulus, TM_UNIT_HARDNESS, &material->modulus), ==, TM_READ_OK);
  return material;
}

/* Two materials, so that one that comes back must come back to its place. */
static TmJob *
make_job (void)
{
  TmJob *job = make_methods_job ();

  g_assert_cmpint (tm_job_add_material (job, new_material (job, "arm stock", "70.5")), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_material (job, new_material (job, "bush mix", "1.9")), ==, TM_ADD_OK);
  return job;
}

static gboolean
do_add (TmDocument *document, GError **error)
{
  return tm_edit_put_material (document, NULL, new_material (tm_document_job (document), "shaft bar", "205"),
                               error);
}

static gboolean
do_replace (TmDocument *document, GError **error)
{
  return tm_edit_put_material (document, "arm stock",
                               new_material (tm_document_job (document), "arm plate", "71"), error);
}

static gboolean
do_remove (TmDocument *document, GError **error)
{
  return tm_edit_remove_material (document, "arm stock", error);
}

static const Edit edits[] = {
  { "add-material", make_job, do_add },
  { "replace-material", make_job, do_replace },
  { "remove-material", make_job, do_remove },
};

int
main (int argc, char *argv[])
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_resources_register (tm_resources_get_resource ());
  g_test_add_func ("/materials/words", test_words);
  g_test_add_func ("/materials/add", test_add);
  g_test_add_func ("/materials/make-own-and-remove", test_make_own_and_remove);
  g_test_add_func ("/materials/refused", test_refused);
  g_test_add_func ("/materials/in-use", test_in_use);
  add_edits (edits, G_N_ELEMENTS (edits));
  return g_test_run ();
}
