/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The dialog of the shop's report template: what is typed is kept in the book and seen by the open job, what
 * is wrong is said and loses nothing, files come in and go out.
 */

#include <adwaita.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-resources.h"
#include "app-template-dialog.h"
#include "app-template-preview.h"
#include "app-template-words.h"
#include "exchange-template.h"
#include "support-template.h"
#include "ui-fixture.h"

typedef struct {
  UiFixture *fixture;
  GtkWidget *window; /* under the dialog */
  GtkWindow *dialog;
} Page;

static Page *
open_dialog (const TmTemplate *template, gboolean with_document)
{
  Page *page = g_new0 (Page, 1);
  g_autoptr (GError) error = NULL;

  page->fixture = ui_fixture_new (ui_make_job ());
  g_assert_true (tm_book_save_template (page->fixture->book, template, "RW", "2026-05-04T09:12:33Z", &error));
  g_assert_no_error (error);
  page->window = gtk_window_new ();
  ui_present (page->window);
  page->dialog = tm_template_dialog_present (page->window, page->fixture->book,
                                             with_document ? page->fixture->document : NULL);
  g_assert_nonnull (page->dialog);
  ui_wait_until (gtk_widget_get_mapped (GTK_WIDGET (page->dialog)));
  return page;
}

static void
close_page (Page *page)
{
  if (tm_dialog_over (GTK_WINDOW (page->window)) != NULL)
    gtk_window_destroy (page->dialog);
  ui_close (page->window);
  ui_fixture_free (page->fixture);
  g_free (page);
}

/* -------- Finding -------- */

typedef gboolean (*IsIt) (GtkWidget *widget, gconstpointer data);

/* The @nth in the order shown, from 0; @nth counts down. */
static GtkWidget *
find (GtkWidget *from, IsIt is_it, gconstpointer data, guint *nth)
{
  if (is_it (from, data) && (*nth)-- == 0)
    return from;
  for (GtkWidget *child = gtk_widget_get_first_child (from); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find (child, is_it, data, nth);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
is_row (GtkWidget *widget, gconstpointer title)
{
  return ADW_IS_PREFERENCES_ROW (widget)
         && g_strcmp0 (adw_preferences_row_get_title (ADW_PREFERENCES_ROW (widget)), title) == 0;
}

static gboolean
is_button (GtkWidget *widget, gconstpointer text)
{
  return GTK_IS_BUTTON (widget) && GTK_IS_LABEL (gtk_button_get_child (GTK_BUTTON (widget)))
         && g_str_equal (tm_button_text (widget), text);
}

static gboolean
has_tip (GtkWidget *widget, gconstpointer tip)
{
  return GTK_IS_BUTTON (widget) && g_strcmp0 (gtk_widget_get_tooltip_text (widget), tip) == 0;
}

static gboolean
is_area (GtkWidget *widget, gconstpointer data)
{
  return GTK_IS_TEXT_VIEW (widget);
}

static gboolean
is_check (GtkWidget *widget, gconstpointer data)
{
  return GTK_IS_CHECK_BUTTON (widget);
}

static gboolean
is_group (GtkWidget *widget, gconstpointer title)
{
  return ADW_IS_PREFERENCES_GROUP (widget)
         && g_strcmp0 (adw_preferences_group_get_title (ADW_PREFERENCES_GROUP (widget)), title) == 0;
}

static gboolean
is_preview (GtkWidget *widget, gconstpointer data)
{
  return TM_IS_TEMPLATE_PREVIEW (widget);
}

static gboolean
is_problem (GtkWidget *widget, gconstpointer data)
{
  return gtk_widget_has_css_class (widget, "tm-problem");
}

static GtkWidget *
get (Page *page, IsIt is_it, gconstpointer data, guint nth)
{
  GtkWidget *found = find (GTK_WIDGET (page->dialog), is_it, data, &nth);

  g_assert_nonnull (found);
  return found;
}

static void
type_row (Page *page, const char *title, guint nth, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (get (page, is_row, title, nth)), text);
}

static void
type_area (Page *page, guint nth, const char *text)
{
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (get (page, is_area, NULL, nth))), text,
                            -1);
}

static void
click (Page *page, const char *text)
{
  g_signal_emit_by_name (get (page, is_button, text, 0), "clicked");
}

static const char *
get_problem (Page *page)
{
  GtkWidget *line = get (page, is_problem, NULL, 0);

  return gtk_widget_get_visible (line) ? gtk_label_get_text (GTK_LABEL (line)) : "";
}

static void
wait_until_closed (Page *page)
{
  ui_wait_until (tm_dialog_over (GTK_WINDOW (page->window)) == NULL);
}

static TmTemplate *
get_kept (Page *page)
{
  GError *error = NULL;
  TmTemplate *kept = tm_book_template (page->fixture->book, &error);

  g_assert_no_error (error);
  return kept;
}

static void
count_cb (guint *n)
{
  (*n)++;
}

/* -------- The cases -------- */

/* Opened and saved, a template is the one that it was, member by member. */
static void
test_same (void)
{
  g_autoptr (TmTemplate) wanted = tm_test_template ();
  g_autoptr (TmTemplate) kept = NULL;
  Page *page = open_dialog (wanted, TRUE);

  click (page, "Save");
  wait_until_closed (page);
  kept = get_kept (page);
  g_assert_true (tm_template_equal (kept, wanted));
  close_page (page);
}

/* From nothing, everything that can be typed. */
static void
test_typed (void)
{
  Page *page = open_dialog (NULL, TRUE);
  g_autoptr (TmTemplate) kept = NULL;
  const TmTemplateStatement *statement;
  guint n_changes = 0;

  g_signal_connect_swapped (page->fixture->document, "definitions-changed", G_CALLBACK (count_cb),
                            &n_changes);
  type_row (page, "Name of the shop", 0, " A & B <Works> ");
  type_area (page, 0, "1 Mill Lane\nTown\n\n");
  type_row (page, "Colour, like #1a5f7a (empty: black)", 0, "#A01E28");
  type_row (page, "Ground, like #1a5f7a (empty: as usual)", 0, "#DFE8C4");
  gtk_check_button_set_active (GTK_CHECK_BUTTON (get (page, is_check, NULL, TM_TEMPLATE_CLASS)), FALSE);
  click (page, "Add a field");
  type_row (page, "Name of the field", 0, "Heat number");
  gtk_check_button_set_active (GTK_CHECK_BUTTON (get (page, is_check, NULL, TM_N_TEMPLATE_COLUMNS)), TRUE);
  click (page, "Add a statement");
  type_area (page, 1, "We made it.");
  click (page, "Add a statement");
  adw_combo_row_set_selected (ADW_COMBO_ROW (get (page, is_row, "Where it stands", 1)), 2);
  type_row (page, "Language code: de, en… (empty: any)", 1, "de");
  type_area (page, 2, "Wir haben es gemacht.");
  click (page, "Save");
  wait_until_closed (page);
  kept = get_kept (page);
  g_assert_cmpstr (kept->name, ==, "A & B <Works>");
  g_assert_cmpstr (kept->address, ==, "1 Mill Lane\nTown");
  g_assert_cmphex (kept->accent, ==, 0xa01e28);
  g_assert_true (kept->has_ground);
  g_assert_cmphex (kept->ground, ==, 0xdfe8c4);
  g_assert_cmpuint (kept->hidden, ==, 1u << TM_TEMPLATE_CLASS);
  g_assert_true (tm_template_find_field (kept, "Heat number")->required);
  g_assert_cmpuint (kept->statements->len, ==, 1);
  statement = g_ptr_array_index (kept->statements, 0);
  g_assert_cmpint (statement->place, ==, TM_STATEMENT_BEFORE_SIGNATURES);
  g_assert_cmpstr (tm_statement_text (statement, "de"), ==, "Wir haben es gemacht.");
  g_assert_cmpstr (tm_statement_text (statement, "en"), ==, "We made it.");
  /* The open job's pages know. */
  g_assert_cmpuint (n_changes, ==, 1);
  g_assert_true (tm_template_equal (tm_document_template (page->fixture->document), kept));
  close_page (page);
}

/* Fields move, and are taken out; so are statements. */
static void
test_lists (void)
{
  g_autoptr (TmTemplate) start = tm_test_template ();
  g_autoptr (TmTemplate) kept = NULL;
  Page *page = open_dialog (start, FALSE);

  g_signal_emit_by_name (get (page, has_tip, "Move this field up", 0), "clicked");
  g_signal_emit_by_name (get (page, has_tip, "Move this field down", 0), "clicked");
  click (page, "Add a field");
  type_row (page, "Name of the field", 2, "Third");
  g_signal_emit_by_name (get (page, has_tip, "Move this field up", 2), "clicked");
  g_signal_emit_by_name (get (page, has_tip, "Take this field out", 0), "clicked");
  g_signal_emit_by_name (get (page, has_tip, "Take this statement out", 0), "clicked");
  click (page, "Save");
  wait_until_closed (page);
  kept = get_kept (page);
  g_assert_cmpuint (kept->fields->len, ==, 2);
  g_assert_cmpstr (((TmTemplateField *)g_ptr_array_index (kept->fields, 0))->name, ==, "Third");
  g_assert_cmpstr (((TmTemplateField *)g_ptr_array_index (kept->fields, 1))->name, ==, "Heat number");
  /* What said the first statement again in German stands by itself now. */
  g_assert_cmpuint (kept->statements->len, ==, 2);
  close_page (page);
}

typedef struct {
  const char *row;
  const char *text;
  const char *says;
} Wrong;

/* Said in a line, with nothing kept and nothing lost. */
static void
test_wrong (void)
{
  static const Wrong cases[] = {
    { "Colour, like #1a5f7a (empty: black)", "red", "like #1a5f7a" },
    { "Name of the field", "Packed by", "Field 2: two fields have the same name" },
    { "Name of the field", "", "Field 1: a field has no name" },
    { "Language code: de, en… (empty: any)", "German", "Statement 1: the language" },
  };
  g_autoptr (TmTemplate) start = tm_test_template ();

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      Page *page = open_dialog (start, TRUE);
      g_autoptr (TmTemplate) kept = NULL;

      type_row (page, cases[i].row, 0, cases[i].text);
      click (page, "Save");
      g_assert_true (tm_dialog_over (GTK_WINDOW (page->window)) == page->dialog);
      g_assert_nonnull (strstr (get_problem (page), cases[i].says));
      g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (get (page, is_row, cases[i].row, 0))), ==,
                       cases[i].text);
      kept = get_kept (page);
      g_assert_true (tm_template_equal (kept, start));
      close_page (page);
    }
}

/* A book that does not write says so; the dialog stays with what was typed. */
static void
test_not_kept (void)
{
  Page *page = g_new0 (Page, 1);
  g_autoptr (GError) error = NULL;

  page->fixture = ui_fixture_new (ui_make_job ());
  g_assert_finalize_object (page->fixture->document);
  tm_book_close (page->fixture->book);
  page->fixture->book = tm_book_open (page->fixture->path, TM_BOOK_OPEN_READ_ONLY, &error);
  g_assert_no_error (error);
  page->fixture->document = tm_document_new (
      page->fixture->book,
      tm_book_load_job (page->fixture->book, "11111111-2222-4333-8444-555555555555", NULL, NULL, &error));
  page->window = gtk_window_new ();
  gtk_window_present (GTK_WINDOW (page->window));
  page->dialog = tm_template_dialog_present (page->window, page->fixture->book, page->fixture->document);
  ui_wait_until (gtk_widget_get_mapped (GTK_WIDGET (page->dialog)));
  type_row (page, "Name of the shop", 0, "Shop");
  click (page, "Save");
  g_assert_true (tm_dialog_over (GTK_WINDOW (page->window)) == page->dialog);
  g_assert_nonnull (strstr (get_problem (page), page->fixture->path));
  g_assert_true (tm_template_is_empty (tm_document_template (page->fixture->document)));
  close_page (page);
}

static void
test_remove (void)
{
  g_autoptr (TmTemplate) start = tm_test_template ();
  g_autoptr (TmTemplate) kept = NULL;
  Page *page = open_dialog (start, TRUE);

  g_assert_true (gtk_widget_get_visible (get (page, is_button, "Remove", 0)));
  click (page, "Remove");
  wait_until_closed (page);
  kept = get_kept (page);
  g_assert_true (tm_template_is_empty (kept));
  close_page (page);
}

/* -------- Files -------- */

static char *
put_file (Page *page, const char *name, const char *bytes)
{
  char *path = g_build_filename (page->fixture->folder, name, NULL);

  g_assert_true (g_file_set_contents (path, bytes, -1, NULL));
  return path;
}

static const char *
get_logo_line (Page *page)
{
  return adw_action_row_get_subtitle (ADW_ACTION_ROW (get (page, is_row, "Logo", 0)));
}

/* A logo that can be drawn is taken; what is none is said, and the one of before stays. */
static void
test_logo (void)
{
  Page *page = open_dialog (NULL, TRUE);
  g_autofree char *right
      = put_file (page, "logo.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"9\" height=\"3\"/>");
  g_autofree char *wrong = put_file (page, "logo.png", "no picture");
  g_autoptr (TmTemplate) kept = NULL;

  g_assert_cmpstr (get_logo_line (page), ==, "none");
  tm_template_dialog_take_logo (page->dialog, right);
  ui_wait_until (g_str_equal (get_logo_line (page), "SVG picture, 1 KiB"));
  tm_template_dialog_take_logo (page->dialog, wrong);
  ui_wait_until (strstr (get_logo_line (page), "logo.png: ") != NULL);
  click (page, "Save");
  wait_until_closed (page);
  kept = get_kept (page);
  g_assert_cmpstr (kept->logo_media, ==, "image/svg+xml");
  close_page (page);
}

static void
test_files (void)
{
  g_autoptr (TmTemplate) start = tm_test_template ();
  g_autoptr (TmTemplate) back = NULL;
  g_autoptr (TmTemplate) kept = NULL;
  Page *page = open_dialog (start, TRUE);
  g_autofree char *out = g_build_filename (page->fixture->folder, "out.tmtemplate", NULL);
  g_autofree char *other = put_file (page, "other.tmtemplate",
                                     "{\"format\": \"tenthmark-template\", \"version\": 1, \"template\": "
                                     "{\"name\": \"Other\"}}");
  g_autofree char *wrong = put_file (page, "wrong.tmtemplate", "{}");

  tm_template_dialog_write_file (page->dialog, out);
  g_assert_cmpstr (get_problem (page), ==, "");
  back = tm_template_from_file (out, NULL);
  g_assert_true (tm_template_equal (back, start));
  tm_template_dialog_take_file (page->dialog, wrong);
  g_assert_nonnull (strstr (get_problem (page), "wrong.tmtemplate: "));
  tm_template_dialog_take_file (page->dialog, other);
  g_assert_cmpstr (get_problem (page), ==, "");
  click (page, "Save");
  wait_until_closed (page);
  kept = get_kept (page);
  g_assert_cmpstr (kept->name, ==, "Other");
  g_assert_cmpuint (kept->fields->len, ==, 0);
  close_page (page);
}

/* -------- Preview and words -------- */

/* Something of the accent is seen once it has settled. */
static guint
count_accent (GtkWidget *preview)
{
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  const int width = gtk_widget_get_width (preview), height = gtk_widget_get_height (preview);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);
  GskRenderNode *node;
  guint n = 0;

  GTK_WIDGET_GET_CLASS (preview)->snapshot (preview, snapshot);
  node = gtk_snapshot_free_to_node (snapshot);
  if (node != NULL)
    gsk_render_node_draw (node, cr);
  g_clear_pointer (&node, gsk_render_node_unref);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  for (int y = 0; y < height; y++)
    {
      const guint32 *row = (const guint32 *)(gpointer)(cairo_image_surface_get_data (surface)
                                                       + y * cairo_image_surface_get_stride (surface));

      for (int x = 0; x < width; x++)
        n += (row[x] & 0xffffff) == 0x1a5f7a;
    }
  cairo_surface_destroy (surface);
  return n;
}

static void
test_preview (void)
{
  g_autoptr (TmTemplate) start = tm_test_template ();

  for (guint i = 0; i < 2; i++)
    {
      Page *page = open_dialog (start, i == 0);
      GtkWidget *preview = get (page, is_preview, NULL, 0);

      ui_wait_until (count_accent (preview) > 200);
      type_row (page, "Colour, like #1a5f7a (empty: black)", 0, "");
      click (page, "Remove the logo");
      ui_wait_until (count_accent (preview) == 0);
      close_page (page);
    }
}

static void
test_words (void)
{
  static const struct {
    guint32 accent;
    const char *says;
  } cases[] = { { 0x000000, "21.0 to 1: heads and lines" },
                { 0x767676, "4.5 to 1: heads and lines" },
                { 0x777777, "4.4 to 1, and text needs 4.5: only lines" },
                { 0xffffff, "1.0 to 1, and text needs 4.5: only lines" } };
  g_autoptr (TmTemplate) template = tm_template_new ();
  g_autofree char *none = tm_words_accent (template);

  g_assert_nonnull (strstr (none, "black"));
  template->has_accent = TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *words = NULL;

      template->accent = cases[i].accent;
      words = tm_words_accent (template);
      g_assert_nonnull (strstr (words, cases[i].says));
    }
}

static void
test_colour_line (void)
{
  g_autoptr (TmTemplate) start = tm_test_template ();
  Page *page = open_dialog (start, TRUE);
  AdwPreferencesGroup *group = ADW_PREFERENCES_GROUP (get (page, is_group, "Colour of heads and lines", 0));

  g_assert_nonnull (strstr (adw_preferences_group_get_description (group), "heads and lines"));
  type_row (page, "Colour, like #1a5f7a (empty: black)", 0, "#ffe000");
  g_assert_nonnull (strstr (adw_preferences_group_get_description (group), "only lines"));
  close_page (page);
}

/* WCAG 2.1: black on white and white on black are 21:1; black on #767676 is 21 / 4.54 = 4.6 to 1. */
static void
test_ground_words (void)
{
  static const struct {
    guint32 ground;
    const char *says;
  } cases[] = { { 0x000000, "white on it: contrast 21.0 to 1" },
                { 0xffffff, "black on it: contrast 21.0 to 1" },
                { 0x767676, "black on it: contrast 4.6 to 1" } };
  g_autoptr (TmTemplate) template = tm_template_new ();
  g_autofree char *none = tm_words_ground (template);

  g_assert_nonnull (strstr (none, "Without a colour"));
  template->has_ground = TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *words = NULL;

      template->ground = cases[i].ground;
      words = tm_words_ground (template);
      g_assert_nonnull (strstr (words, cases[i].says));
    }
}

/* A ground that is no colour is said and stays typed; nothing is kept. */
static void
test_ground_wrong (void)
{
  g_autoptr (TmTemplate) start = tm_test_template ();
  g_autoptr (TmTemplate) kept = NULL;
  Page *page = open_dialog (start, TRUE);
  const char *row = "Ground, like #1a5f7a (empty: as usual)";

  type_row (page, row, 0, "green");
  click (page, "Save");
  g_assert_nonnull (strstr (get_problem (page), "“green” is none"));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (get (page, is_row, row, 0))), ==, "green");
  kept = get_kept (page);
  g_assert_true (tm_template_equal (kept, start));
  close_page (page);
}

static gboolean
is_versions (GtkWidget *widget, gconstpointer data)
{
  return GTK_IS_LIST_BOX (widget) && gtk_widget_has_css_class (widget, "tm-choices");
}

static GtkListBox *
open_versions (Page *page, GtkWindow **window)
{
  guint nth = 0;

  click (page, "Earlier versions…");
  *window = tm_dialog_over (page->dialog);
  g_assert_nonnull (*window);
  return GTK_LIST_BOX (find (GTK_WIDGET (*window), is_versions, NULL, &nth));
}

/* The version before is chosen; taken, it stands in the form, what was typed can be had back, and nothing is
 * recorded before it is saved: then it is one more version. */
static void
test_versions (void)
{
  g_autoptr (TmTemplate) first = tm_test_template ();
  g_autoptr (TmTemplate) second = tm_template_copy (first);
  g_autoptr (TmTemplate) kept = NULL;
  g_autoptr (GPtrArray) versions = NULL;
  Page *page = open_dialog (first, TRUE);
  GtkListBox *list;
  GtkWindow *window;

  tm_template_set_text (&second->name, "Second");
  g_assert_true (tm_book_save_template (page->fixture->book, second, "KM", "2026-06-01T10:00:00Z", NULL));
  type_row (page, "Name of the shop", 0, "Typed");
  list = open_versions (page, &window);
  g_assert_nonnull (gtk_list_box_get_row_at_index (list, 1));
  g_assert_null (gtk_list_box_get_row_at_index (list, 2));
  g_assert_cmpint (gtk_list_box_row_get_index (gtk_list_box_get_selected_row (list)), ==, 1);
  g_signal_emit_by_name (list, "row-activated", gtk_list_box_get_selected_row (list));
  ui_wait_until (tm_dialog_over (page->dialog) == NULL);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (get (page, is_row, "Name of the shop", 0))), ==,
                   first->name);
  click (page, "Back to what was typed");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (get (page, is_row, "Name of the shop", 0))), ==,
                   "Typed");
  list = open_versions (page, &window);
  g_signal_emit_by_name (list, "row-activated", gtk_list_box_get_selected_row (list));
  kept = get_kept (page);
  g_assert_true (tm_template_equal (kept, second));
  g_clear_pointer (&kept, tm_template_free);
  click (page, "Save");
  wait_until_closed (page);
  kept = get_kept (page);
  g_assert_true (tm_template_equal (kept, first));
  versions = tm_book_template_versions (page->fixture->book, NULL);
  g_assert_cmpuint (versions->len, ==, 3);
  close_page (page);
}

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_resources_register (tm_resources_get_resource ());
  g_test_add_func ("/template/same", test_same);
  g_test_add_func ("/template/typed", test_typed);
  g_test_add_func ("/template/lists", test_lists);
  g_test_add_func ("/template/wrong", test_wrong);
  g_test_add_func ("/template/not-kept", test_not_kept);
  g_test_add_func ("/template/remove", test_remove);
  g_test_add_func ("/template/logo", test_logo);
  g_test_add_func ("/template/files", test_files);
  g_test_add_func ("/template/preview", test_preview);
  g_test_add_func ("/template/words", test_words);
  g_test_add_func ("/template/colour-line", test_colour_line);
  g_test_add_func ("/template/ground-words", test_ground_words);
  g_test_add_func ("/template/ground-wrong", test_ground_wrong);
  g_test_add_func ("/template/versions", test_versions);
  return g_test_run ();
}
