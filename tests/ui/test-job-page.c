/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The Job page: features typed as callouts, pieces, facts; a list of a thousand features stays in
 * step.
 */

#include <adwaita.h>

#include "app-dialog.h"
#include "app-edit.h"
#include "app-feature-form.h"
#include "app-job-features.h"
#include "app-job-item.h"
#include "app-job-page.h"
#include "app-job-pieces.h"
#include "app-resources.h"
#include "app-table-dialog.h"
#include "ui-fixture.h"

typedef struct {
  UiFixture *fixture;
  GtkWidget *window;
  TmJobPage *page;
  TmJobFeatures *features;
  TmJobPieces *pieces;
  TmJob *job;
} Page;

static gpointer
child_of (gpointer widget, GType type, const char *name)
{
  GObject *child = gtk_widget_get_template_child (GTK_WIDGET (widget), type, name);

  g_assert_nonnull (child);
  return child;
}

static Page *
open_page (TmJob *job)
{
  Page *page = g_new0 (Page, 1);

  page->fixture = ui_fixture_new (job);
  page->job = job;
  page->page = TM_JOB_PAGE (tm_job_page_new ());
  page->window = ui_window_new (page->page);
  tm_job_page_set_document (page->page, page->fixture->document);
  page->features = child_of (page->page, TM_TYPE_JOB_PAGE, "features");
  page->pieces = child_of (page->page, TM_TYPE_JOB_PAGE, "pieces");
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

static GtkEditable *
callout_entry (Page *page)
{
  return child_of (page->features, TM_TYPE_JOB_FEATURES, "callout_entry");
}

static void
press_enter (GtkEditable *entry)
{
  g_signal_emit_by_name (entry, "activate");
}

static const char *
reads_as (Page *page)
{
  return gtk_label_get_text (child_of (page->features, TM_TYPE_JOB_FEATURES, "reads_label"));
}

static GListModel *
rows (Page *page)
{
  GtkColumnView *view = child_of (page->features, TM_TYPE_JOB_FEATURES, "view");

  return G_LIST_MODEL (gtk_column_view_get_model (view));
}

static void
test_add_features (void)
{
  static const struct {
    const char *callout;
    const char *reads;
    TmKind kind;
  } cases[] = {
    { "Ø25 H7", "25.000 … 25.021 mm", TM_KIND_BORE }, { "12 max", "12 mm max", TM_KIND_LENGTH },
    { "4X Ø6.5 ±0.1", "4 places", TM_KIND_DIAMETER }, { "Ra 1.6", "roughness", TM_KIND_ROUGHNESS },
    { "break all edges", "note", TM_KIND_NOTE },
  };
  Page *page = open_page (ui_make_job ());
  guint n_before = page->job->features->len;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const TmFeature *feature;

      gtk_editable_set_text (callout_entry (page), cases[i].callout);
      g_assert_nonnull (strstr (reads_as (page), cases[i].reads));
      press_enter (callout_entry (page));
      g_assert_cmpuint (page->job->features->len, ==, n_before + i + 1);
      feature = g_ptr_array_index (page->job->features, n_before + i);
      g_assert_cmpstr (feature->requirement, ==, cases[i].callout);
      g_assert_cmpint (feature->kind, ==, cases[i].kind);
      g_assert_cmpstr (gtk_editable_get_text (callout_entry (page)), ==, "");
    }
  g_assert_cmpuint (g_list_model_get_n_items (rows (page)), ==, page->job->features->len);
  close_page (page);
}

/* A plain diameter is inside or outside only when the machinist says so. */
static void
test_inside_outside (void)
{
  static const TmKind kinds[] = { TM_KIND_DIAMETER, TM_KIND_BORE, TM_KIND_SHAFT };
  static const TmCut cuts[] = { TM_CUT_UNKNOWN, TM_CUT_GROWS, TM_CUT_SHRINKS };
  Page *page = open_page (ui_make_job ());

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      const TmFeature *feature;

      gtk_editable_set_text (callout_entry (page), "Ø6.5 ±0.1");
      gtk_drop_down_set_selected (child_of (page->features, TM_TYPE_JOB_FEATURES, "way_drop"), i);
      press_enter (callout_entry (page));
      feature = g_ptr_array_index (page->job->features, page->job->features->len - 1);
      g_assert_cmpint (feature->kind, ==, kinds[i]);
      g_assert_cmpint (tm_feature_cut (feature), ==, cuts[i]);
    }
  gtk_drop_down_set_selected (child_of (page->features, TM_TYPE_JOB_FEATURES, "way_drop"), 0);
  gtk_editable_set_text (callout_entry (page), "OD 6.5 ±0.1");
  press_enter (callout_entry (page));
  g_assert_cmpint (((TmFeature *)g_ptr_array_index (page->job->features, page->job->features->len - 1))->kind,
                   ==, TM_KIND_SHAFT);
  close_page (page);
}

/* What is refused stays typed. */
static void
test_taken_balloon (void)
{
  Page *page = open_page (ui_make_job ());
  guint n_before = page->job->features->len;

  gtk_editable_set_text (child_of (page->features, TM_TYPE_JOB_FEATURES, "balloon_entry"), "1");
  gtk_editable_set_text (callout_entry (page), "40 ±0.1");
  press_enter (callout_entry (page));
  g_assert_cmpuint (page->job->features->len, ==, n_before);
  g_assert_cmpstr (gtk_editable_get_text (callout_entry (page)), ==, "40 ±0.1");
  close_page (page);
}

static void
test_remove_feature (void)
{
  Page *page = open_page (ui_make_job ());
  GtkSingleSelection *selection = GTK_SINGLE_SELECTION (rows (page));
  guint n_before = page->job->features->len;

  gtk_single_selection_set_selected (selection, 1);
  gtk_widget_activate_action (GTK_WIDGET (page->features), "features.remove", NULL);
  g_assert_cmpuint (page->job->features->len, ==, n_before - 1);
  g_assert_null (tm_job_find_feature (page->job, "2"));
  g_assert_cmpuint (g_list_model_get_n_items (rows (page)), ==, n_before - 1);
  close_page (page);
}

static void
test_pieces (void)
{
  Page *page = open_page (ui_make_job ());
  GtkEditable *entry = child_of (page->pieces, TM_TYPE_JOB_PIECES, "serial_entry");

  g_assert_cmpstr (gtk_editable_get_text (entry), ==, "003");
  press_enter (entry);
  g_assert_nonnull (tm_job_find_piece (page->job, "003"));
  g_assert_cmpstr (gtk_editable_get_text (entry), ==, "004");
  gtk_editable_set_text (entry, "002");
  press_enter (entry);
  g_assert_cmpuint (page->job->pieces->len, ==, 3);
  g_assert_cmpstr (gtk_editable_get_text (entry), ==, "002");
  close_page (page);
}

/* A row that stays keeps its object, so that selection and scrolling stay. */
static void
test_rows_stay (void)
{
  TmJob *job = ui_make_job ();
  Page *page;
  g_autoptr (TmJobItem) first = NULL;
  g_autoptr (TmJobItem) again = NULL;
  g_autoptr (TmJobItem) last = NULL;
  g_autoptr (TmJobItem) last_again = NULL;

  for (guint i = 0; i < 996; i++)
    {
      g_autofree char *balloon = g_strdup_printf ("%u", 100 + i);

      ui_add_feature (job, balloon, "40 ±0.1", "");
    }
  page = open_page (job);
  g_assert_cmpuint (g_list_model_get_n_items (rows (page)), ==, 1000);
  first = g_list_model_get_item (rows (page), 0);
  last = g_list_model_get_item (rows (page), 999);
  g_assert_true (tm_edit_remove_feature (page->fixture->document, "500", NULL));
  again = g_list_model_get_item (rows (page), 0);
  last_again = g_list_model_get_item (rows (page), 998);
  g_assert_true (again == first);
  g_assert_true (last_again == last);
  for (guint i = 0; i < 999; i++)
    {
      g_autoptr (TmJobItem) item = g_list_model_get_item (rows (page), i);

      g_assert_true (tm_job_item_feature (item) == g_ptr_array_index (job->features, i));
    }
  close_page (page);
}

/* Filling the form and reading it back changes nothing. */
static void
test_form_round_trip (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmJob *job = tm_document_job (fixture->document);
  GtkWidget *box = g_object_ref_sink (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0));
  TmFeatureForm form = { 0 };

  tm_feature_form_build (&form, GTK_BOX (box));
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);
      g_autofree char *problem = NULL;
      TmFeature *read;

      tm_feature_form_fill (&form, job, feature);
      read = tm_feature_form_read (&form, job, feature, &problem);
      g_assert_cmpstr (problem, ==, NULL);
      g_assert_cmpstr (read->balloon, ==, feature->balloon);
      g_assert_cmpint (read->kind, ==, feature->kind);
      g_assert_cmpint (read->unit, ==, feature->unit);
      g_assert_cmpint (read->lower.count, ==, feature->lower.count);
      g_assert_cmpint (read->upper.count, ==, feature->upper.count);
      g_assert_cmpuint (read->stations->len, ==, feature->stations->len);
      g_assert_cmpuint (read->places, ==, feature->places);
      g_assert_cmpstr (read->method, ==, feature->method);
      tm_feature_free (read);
    }
  g_object_unref (box);
  ui_fixture_free (fixture);
}

/* What the report says of a feature; whether it is affected is asked only of a first article that is not
 * full, and is kept meanwhile. */
static void
test_form_report (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmJob *job = tm_document_job (fixture->document);
  GtkWidget *box = g_object_ref_sink (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0));
  const TmFeature *feature = g_ptr_array_index (job->features, 0);
  TmFeatureForm form = { 0 };
  g_autofree char *problem = NULL;
  TmFeature *read, *again;

  tm_feature_form_build (&form, GTK_BOX (box));
  job->first_article = TM_FIRST_ARTICLE_PARTIAL;
  tm_feature_form_fill (&form, job, feature);
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (form.affected)));
  adw_combo_row_set_selected (form.affected, 1);
  gtk_editable_set_text (GTK_EDITABLE (form.tooling), " plug PG-7 ");
  gtk_editable_set_text (GTK_EDITABLE (form.comment), "see note 3");
  read = tm_feature_form_read (&form, job, feature, &problem);
  g_assert_nonnull (read);
  g_assert_true (read->affected);
  g_assert_cmpstr (read->tooling, ==, "plug PG-7");
  g_assert_cmpstr (read->comment, ==, "see note 3");
  job->first_article = TM_FIRST_ARTICLE_FULL;
  tm_feature_form_fill (&form, job, read);
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (form.affected)));
  again = tm_feature_form_read (&form, job, read, &problem);
  g_assert_true (again->affected);
  g_assert_cmpstr (again->tooling, ==, "plug PG-7");
  tm_feature_free (again);
  tm_feature_free (read);
  g_object_unref (box);
  ui_fixture_free (fixture);
}

/* One wrong field is named, and nothing is read. */
static void
test_form_refuses (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmJob *job = tm_document_job (fixture->document);
  GtkWidget *box = g_object_ref_sink (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0));
  const TmFeature *feature = g_ptr_array_index (job->features, 0);
  TmFeatureForm form = { 0 };
  struct {
    AdwEntryRow **row;
    const char *text;
  } cases[] = { { &form.balloon, " " },
                { &form.stations, "mouth/12, mouth/13" },
                { &form.stations, "top" },
                { &form.places, "0" },
                { &form.size_feature, "nowhere" } };

  tm_feature_form_build (&form, GTK_BOX (box));
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *problem = NULL;

      tm_feature_form_fill (&form, job, feature);
      gtk_editable_set_text (GTK_EDITABLE (*cases[i].row), cases[i].text);
      g_assert_null (tm_feature_form_read (&form, job, feature, &problem));
      g_assert_nonnull (problem);
      g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (*cases[i].row), "error"));
    }
  g_object_unref (box);
  ui_fixture_free (fixture);
}

static const char qif_text[]
    = "<QIFDocument xmlns='http://qifstandards.org/xsd/qif3' versionQIF='3.0.0' idMax='9'><Characteristics>"
      "<CharacteristicDefinitions n='2'><WidthCharacteristicDefinition "
      "id='1'><Tolerance><MaxValue>0.1</MaxValue>"
      "<DefinedAsLimit>false</DefinedAsLimit></Tolerance></WidthCharacteristicDefinition>"
      "<WeldFilletCharacteristicDefinition id='2'/></CharacteristicDefinitions><CharacteristicNominals n='2'>"
      "<WidthCharacteristicNominal id='3'><CharacteristicDefinitionId>1</CharacteristicDefinitionId>"
      "<TargetValue>12.0</TargetValue><Name>71</Name></WidthCharacteristicNominal>"
      "<WeldFilletCharacteristicNominal "
      "id='4'><CharacteristicDefinitionId>2</CharacteristicDefinitionId><Name>72</Name>"
      "</WeldFilletCharacteristicNominal></CharacteristicNominals></Characteristics></QIFDocument>";

static GListModel *
table_rows (GtkWindow *dialog)
{
  GType type = G_OBJECT_TYPE (dialog);
  GtkColumnView *view = GTK_COLUMN_VIEW (gtk_widget_get_template_child (GTK_WIDGET (dialog), type, "view"));

  return G_LIST_MODEL (gtk_column_view_get_model (view));
}

static const char *
label_of (GtkWindow *dialog, const char *name)
{
  return gtk_label_get_text (
      GTK_LABEL (gtk_widget_get_template_child (GTK_WIDGET (dialog), G_OBJECT_TYPE (dialog), name)));
}

/* A QIF file is shown row by row as a table is, and added; one that is none says so and leaves the rows. */
static void
test_qif_file (void)
{
  Page *page = open_page (ui_make_job ());
  guint n_before = page->job->features->len;
  g_autofree char *path = g_build_filename (page->fixture->folder, "part.qif", NULL);
  g_autofree char *bad_path = g_build_filename (page->fixture->folder, "bad.qif", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GFile) bad = g_file_new_for_path (bad_path);
  GtkWindow *dialog;
  const TmFeature *feature;

  g_assert_true (g_file_set_contents (path, qif_text, -1, NULL));
  g_assert_true (g_file_set_contents (bad_path, "<!DOCTYPE a []><a/>", -1, NULL));
  tm_table_dialog_present (GTK_WIDGET (page->page), page->fixture->document);
  ui_wait_until (tm_dialog_over (GTK_WINDOW (page->window)) != NULL);
  dialog = tm_dialog_over (GTK_WINDOW (page->window));
  tm_table_dialog_load (dialog, file);
  ui_wait_until (g_list_model_get_n_items (table_rows (dialog)) == 2);
  g_assert_nonnull (strstr (label_of (dialog, "summary_label"), "part.qif: 2 of 2"));
  g_assert_nonnull (strstr (label_of (dialog, "summary_label"), "no units"));
  tm_table_dialog_load (dialog, bad);
  ui_wait_until (strstr (label_of (dialog, "problem_label"), "document type") != NULL);
  g_assert_cmpuint (g_list_model_get_n_items (table_rows (dialog)), ==, 2);
  g_signal_emit_by_name (
      gtk_widget_get_template_child (GTK_WIDGET (dialog), G_OBJECT_TYPE (dialog), "add_button"), "clicked");
  ui_wait_until (page->job->features->len == n_before + 2);
  feature = tm_job_find_feature (page->job, "71");
  g_assert_cmpint (feature->upper.count, ==, G_GINT64_CONSTANT (12100000000));
  g_assert_cmpint (tm_job_find_feature (page->job, "72")->kind, ==, TM_KIND_NOTE);
  g_unlink (path);
  g_unlink (bad_path);
  close_page (page);
}

/* The dialog over the page, and the row of it that has the cursor. */
static GtkWindow *
open_feature_dialog (Page *page, TmFeatureRow row)
{
  GtkWindow *dialog;

  tm_job_page_change_feature (page->page, tm_job_find_feature (page->job, "1"), row);
  dialog = tm_dialog_over (GTK_WINDOW (page->window));
  g_assert_nonnull (dialog);
  ui_wait_until (gtk_widget_get_mapped (GTK_WIDGET (dialog)));
  return dialog;
}

static GtkWidget *
row_with_cursor (GtkWindow *dialog)
{
  return gtk_widget_get_ancestor (gtk_window_get_focus (dialog), ADW_TYPE_PREFERENCES_ROW);
}

static AdwEntryRow *
find_entry_row (GtkWidget *within, const char *title)
{
  if (ADW_IS_ENTRY_ROW (within)
      && g_str_equal (adw_preferences_row_get_title (ADW_PREFERENCES_ROW (within)), title))
    return ADW_ENTRY_ROW (within);
  for (GtkWidget *child = gtk_widget_get_first_child (within); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      AdwEntryRow *found = find_entry_row (child, title);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
is_in_sight (GtkWidget *row)
{
  GtkWidget *viewport = gtk_widget_get_ancestor (row, GTK_TYPE_VIEWPORT);
  graphene_rect_t at;

  return gtk_widget_get_height (row) > 0 && gtk_widget_compute_bounds (row, viewport, &at) && at.origin.y >= 0
         && at.origin.y + at.size.height <= (float)gtk_widget_get_height (viewport);
}

/* Whoever is sent to a feature to mend something stands where it is mended. */
static void
test_change_at_row (void)
{
  static const struct {
    TmFeatureRow row;
    const char *title;
  } cases[] = {
    { TM_FEATURE_ROW_CALLOUT, "Callout, as the drawing has it" },
    { TM_FEATURE_ROW_METHOD, "Method or gauge" },
    { TM_FEATURE_ROW_TOOLING, "Qualified tooling that checks it" },
    { TM_FEATURE_ROW_MATE, "Mate" },
  };
  Page *page = open_page (ui_make_job ());

  G_STATIC_ASSERT (G_N_ELEMENTS (cases) == TM_N_FEATURE_ROWS);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      GtkWindow *dialog = open_feature_dialog (page, cases[i].row);

      g_assert_cmpstr (adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row_with_cursor (dialog))), ==,
                       cases[i].title);
      ui_wait_until (is_in_sight (row_with_cursor (dialog)));
      ui_close (dialog);
    }
  close_page (page);
}

/* Enter saves from the last rows of the form as well. */
static void
test_enter_in_wanted (void)
{
  Page *page = open_page (ui_make_job ());
  TmMate *mate = &tm_job_find_feature (page->job, "1")->mate;
  GtkWindow *dialog;
  AdwEntryRow *row;

  mate->given = TRUE;
  mate->kind = TM_KIND_SHAFT;
  tm_quantity_read ("24.980", TM_UNIT_MM, &mate->lower);
  tm_quantity_read ("24.993", TM_UNIT_MM, &mate->upper);
  dialog = open_feature_dialog (page, TM_FEATURE_ROW_MATE);
  row = find_entry_row (GTK_WIDGET (dialog), "Wanted clearance, least");
  g_assert_nonnull (row);
  gtk_editable_set_text (GTK_EDITABLE (row), "0.012");
  g_signal_emit_by_name (row, "entry-activated");
  ui_wait_until (tm_dialog_over (GTK_WINDOW (page->window)) == NULL);
  g_assert_cmpint (tm_job_find_feature (page->job, "1")->mate.wanted_least.count, ==,
                   G_GINT64_CONSTANT (12000000));
  close_page (page);
}

int
main (int argc, char *argv[])
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_resources_register (tm_resources_get_resource ());
  g_test_add_func ("/job-page/add-features", test_add_features);
  g_test_add_func ("/job-page/inside-outside", test_inside_outside);
  g_test_add_func ("/job-page/taken-balloon", test_taken_balloon);
  g_test_add_func ("/job-page/remove-feature", test_remove_feature);
  g_test_add_func ("/job-page/pieces", test_pieces);
  g_test_add_func ("/job-page/rows-stay", test_rows_stay);
  g_test_add_func ("/job-page/form-round-trip", test_form_round_trip);
  g_test_add_func ("/job-page/form-report", test_form_report);
  g_test_add_func ("/job-page/form-refuses", test_form_refuses);
  g_test_add_func ("/job-page/qif-file", test_qif_file);
  g_test_add_func ("/job-page/change-at-row", test_change_at_row);
  g_test_add_func ("/job-page/enter-in-wanted", test_enter_in_wanted);
  return g_test_run ();
}
