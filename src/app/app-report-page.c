/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-page.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-pointer-list.h"
#include "app-report-sign.h"
#include "app-report-table.h"
#include "app-report-work.h"
#include "app-toast.h"
#include "app-words.h"

/* Above this many lines the content is gathered off the main loop. */
#define GATHER_HERE_LINES 3000

struct _TmReportPage {
  GtkBox parent_instance;

  TmDocument *document;
  TmReportCopy report; /* its job is NULL when the content borrows from the document's */
  gboolean stale;
  gboolean gathering;

  GtkLabel *title;
  GtkLabel *about;
  GtkLabel *summary;
  GtkLabel *missing;
  GtkStack *missing_stack; /* "none", "list" */
  TmPointerList *gaps;
  TmPointerList *lines;
  GtkWidget *table;
  TmReportSign *sign;
  GtkFileChooserNative *chooser;
};

enum { SIGNAL_GO_TO, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmReportPage, tm_report_page, GTK_TYPE_BOX)

static void
drop_content (TmReportPage *self)
{
  tm_pointer_list_set_array (self->gaps, NULL);
  tm_pointer_list_set_array (self->lines, NULL);
  tm_report_copy_clear (&self->report);
}

/* "full first article, piece 001" */
static char *
describe_scope (const TmJob *job, const TmReportContent *content)
{
  const char *kind = job->first_article == TM_FIRST_ARTICLE_PARTIAL ? _ ("partial first article")
                                                                    : _ ("full first article");
  g_autoptr (GPtrArray) serials = g_ptr_array_new ();
  for (guint i = 0; i < job->pieces->len; i++)
    {
      const TmPiece *piece = g_ptr_array_index (job->pieces, i);
      if (piece->first_article)
        g_ptr_array_add (serials, (gpointer)piece->serial);
    }
  if (serials->len == 0)
    return g_strdup_printf (ngettext ("%s, %u piece", "%s, %u pieces", job->pieces->len), kind,
                            job->pieces->len);
  g_ptr_array_add (serials, NULL);
  g_autofree char *list = g_strjoinv (", ", (char **)serials->pdata);
  return g_strdup_printf (ngettext ("%s, piece %s", "%s, pieces %s", serials->len - 1), kind, list);
}

static char *
describe_counts (const TmReportContent *content)
{
  return g_strdup_printf (_ ("%u in  ·  %u out  ·  %u too close  ·  %u not measured"), content->n_in,
                          content->n_out, content->n_too_close, content->n_not_measured);
}

static char *
describe_missing (guint n_gaps)
{
  if (n_gaps == 0)
    return g_strdup (_ ("Nothing is missing"));
  return g_strdup_printf (ngettext ("%u thing is missing", "%u things are missing", n_gaps), n_gaps);
}

static void
show_gaps (TmReportPage *self)
{
  const GPtrArray *gaps = self->report.content->gaps;
  g_autofree char *missing = describe_missing (gaps->len);

  gtk_label_set_text (self->missing, missing);
  tm_access_show_page (self->missing_stack, gaps->len > 0 ? "list" : "none");
  tm_pointer_list_set_array (self->gaps, self->report.content->gaps);
}

/* Whether what was signed is still what the record says is known now. */
static void
signed_checked_cb (TmReportPage *self)
{
  if (self->report.content == NULL)
    return;
  tm_pointer_list_set_array (self->gaps, NULL);
  tm_report_sign_complete (self->sign, self->report.content);
  show_gaps (self);
}

static void
show_content (TmReportPage *self)
{
  const TmReportContent *content = self->report.content;
  const TmJob *job = content->job;
  g_autofree char *title = tm_words_job_title (job->part_number, job->part_name, job->revision);
  g_autofree char *about = describe_scope (job, content);
  g_autofree char *summary = describe_counts (content);
  tm_report_sign_complete (self->sign, self->report.content);
  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->about, about);
  gtk_label_set_text (self->summary, summary);
  show_gaps (self);
  tm_report_table_show_pieces (self->table, job->pieces->len > 1);
  tm_pointer_list_set_array (self->lines, content->lines);
}

static guint64
count_lines (const TmJob *job)
{
  guint64 n_places = 0;
  guint64 n_pieces = 0;
  for (guint i = 0; i < job->features->len; i++)
    n_places += ((const TmFeature *)g_ptr_array_index (job->features, i))->places;
  for (guint i = 0; i < job->pieces->len; i++)
    n_pieces += ((const TmPiece *)g_ptr_array_index (job->pieces, i))->first_article ? 1 : 0;
  return n_places * (n_pieces > 0 ? n_pieces : job->pieces->len);
}

static void refresh (TmReportPage *self);

static void
gathered_cb (GtkWidget *parent, TmReportCopy *copy, const GError *error)
{
  TmReportPage *self = TM_REPORT_PAGE (parent);
  self->gathering = FALSE;
  if (self->document == NULL)
    return;
  if (error != NULL)
    tm_window_show_error (parent, error->message);
  /* Something was recorded, or another job was opened, while this was gathered. */
  if (self->stale)
    {
      if (gtk_widget_get_mapped (parent))
        refresh (self);
      return;
    }
  if (copy->content == NULL)
    {
      /* Failed or cancelled: gathered again when the page is next looked at. */
      self->stale = TRUE;
      return;
    }
  drop_content (self);
  self->report = *copy;
  *copy = (TmReportCopy) { 0 };
  show_content (self);
}

static void
refresh (TmReportPage *self)
{
  if (!self->stale || self->document == NULL || self->gathering)
    return;
  self->stale = FALSE;
  drop_content (self);
  if (count_lines (tm_document_job (self->document)) > GATHER_HERE_LINES)
    {
      self->gathering = TRUE;
      tm_report_gather (GTK_WIDGET (self), self->document, gathered_cb);
      return;
    }
  self->report.content = tm_report_content_new (tm_document_job (self->document));
  tm_report_content_set_template (self->report.content, tm_document_template (self->document));
  show_content (self);
}

static void
changed_cb (TmReportPage *self)
{
  self->stale = TRUE;
  /* The content borrows from the job, which has just changed under it. */
  drop_content (self);
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    refresh (self);
}

/* The gap of a copy of the job is put in terms of the document's own. */
static void
go_to (TmReportPage *self, const TmGap *gap)
{
  const TmJob *job = tm_document_job (self->document);
  TmGap ours = *gap;
  if (gap->piece != NULL)
    ours.piece = tm_job_find_piece (job, gap->piece->serial);
  if (gap->feature != NULL)
    ours.feature = tm_job_find_feature (job, gap->feature->balloon);
  g_autofree char *station = g_strdup (gap->station != NULL ? gap->station : "");
  g_autofree char *field = g_strdup (gap->field != NULL ? gap->field : "");
  ours.station = station;
  ours.field = field;
  g_signal_emit (self, signals[SIGNAL_GO_TO], 0, &ours);
}

static void
gap_activated_cb (GtkListView *view, guint position, TmReportPage *self)
{
  g_autoptr (TmPointerItem) item = g_list_model_get_item (G_LIST_MODEL (self->gaps), position);
  if (item != NULL)
    go_to (self, tm_pointer_item_get (item));
}

static void
open_cb (AdwToast *toast, TmReportPage *self)
{
  const char *path = g_object_get_data (G_OBJECT (toast), "path");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *uri = g_file_get_uri (file);
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  gtk_show_uri (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, uri, GDK_CURRENT_TIME);
}

static void
say_written (TmReportPage *self, const char *path)
{
  GtkWidget *overlay = gtk_widget_get_ancestor (GTK_WIDGET (self), ADW_TYPE_TOAST_OVERLAY);
  g_autofree char *shown = g_filename_display_name (path);
  g_autofree char *text = g_strdup_printf (_ ("Written: %s"), shown);
  g_autofree char *markup = g_markup_escape_text (text, -1);
  if (overlay == NULL)
    return;
  AdwToast *toast = adw_toast_new (markup);
  adw_toast_set_button_label (toast, _ ("_Open"));
  adw_toast_set_timeout (toast, 10);
  g_object_set_data_full (G_OBJECT (toast), "path", g_strdup (path), g_free);
  g_signal_connect_object (toast, "button-clicked", G_CALLBACK (open_cb), self, 0);
  adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (overlay), toast);
}

static void
written_cb (GtkWidget *parent, const char *path, const GError *error)
{
  if (error != NULL)
    tm_window_show_error (parent, error->message);
  else if (path == NULL)
    tm_window_toast (parent, _ ("Cancelled; nothing was written"));
  else
    {
      tm_window_clear_error (parent);
      say_written (TM_REPORT_PAGE (parent), path);
    }
}

/* A typed name without the ending gets it, so that what is written is what was asked for. */
static char *
find_chosen_path (GtkFileChooserNative *chooser)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));
  const char *ending = g_object_get_data (G_OBJECT (chooser), "ending");
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  if (path == NULL || g_str_has_suffix (path, ending))
    return g_steal_pointer (&path);
  return g_strconcat (path, ending, NULL);
}

static void
chosen_cb (GtkFileChooserNative *chooser, int response, TmReportPage *self)
{
  g_autofree char *path = response == GTK_RESPONSE_ACCEPT ? find_chosen_path (chooser) : NULL;
  g_clear_object (&self->chooser);
  if (path != NULL && self->document != NULL)
    tm_report_write (GTK_WIDGET (self), self->document, path, written_cb);
}

static char *
suggest_name (const TmJob *job, const char *ending)
{
  g_autofree char *name
      = *job->revision != '\0'
            /* Translators: a file name: part number, revision. */
            ? g_strdup_printf (_ ("%s rev %s first article%s"), job->part_number, job->revision, ending)
            : g_strdup_printf (_ ("%s first article%s"), job->part_number, ending);
  return g_strdup (g_strdelimit (name, "/\\:*?\"<>|", '-'));
}

static void
choose_file (TmReportPage *self, const char *title, const char *ending, const char *kind)
{
  if (self->document == NULL)
    return;
  g_autofree char *name = suggest_name (tm_document_job (self->document), ending);
  g_autofree char *pattern = g_strconcat ("*", ending, NULL);
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  gtk_file_filter_set_name (filter, kind);
  gtk_file_filter_add_pattern (filter, pattern);
  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (title, GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL,
                                               GTK_FILE_CHOOSER_ACTION_SAVE, NULL, NULL);
  g_object_set_data_full (G_OBJECT (self->chooser), "ending", g_strdup (ending), g_free);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), filter);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (chosen_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
export_workbook_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  choose_file (TM_REPORT_PAGE (widget), _ ("Export the report as a workbook"), ".xlsx", _ ("Workbook"));
}

static void
export_table_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  choose_file (TM_REPORT_PAGE (widget), _ ("Export the characteristics as CSV"), ".csv",
               _ ("Comma-separated values"));
}

/* @parameter: the path, for a caller that has chosen one already. */
static void
write_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmReportPage *self = TM_REPORT_PAGE (widget);
  if (self->document != NULL)
    tm_report_write (widget, self->document, g_variant_get_string (parameter, NULL), written_cb);
}

static void
sign_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_report_sign_begin (TM_REPORT_PAGE (widget)->sign);
}

static void
tm_report_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (tm_report_page_parent_class)->map (widget);
  refresh (TM_REPORT_PAGE (widget));
}

static void
tm_report_page_dispose (GObject *object)
{
  TmReportPage *self = TM_REPORT_PAGE (object);
  g_clear_object (&self->chooser);
  tm_report_page_set_document (self, NULL);
  G_OBJECT_CLASS (tm_report_page_parent_class)->dispose (object);
}

static void
tm_report_page_finalize (GObject *object)
{
  TmReportPage *self = TM_REPORT_PAGE (object);
  g_clear_object (&self->gaps);
  g_clear_object (&self->lines);
  G_OBJECT_CLASS (tm_report_page_parent_class)->finalize (object);
}

static void
tm_report_page_class_init (TmReportPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  object_class->dispose = tm_report_page_dispose;
  object_class->finalize = tm_report_page_finalize;
  widget_class->map = tm_report_page_map;
  signals[SIGNAL_GO_TO] = g_signal_new ("go-to", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                        NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  gtk_widget_class_install_action (widget_class, "report.export-workbook", NULL, export_workbook_action);
  gtk_widget_class_install_action (widget_class, "report.export-table", NULL, export_table_action);
  gtk_widget_class_install_action (widget_class, "report.write", "s", write_action);
  gtk_widget_class_install_action (widget_class, "report.sign", NULL, sign_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_s, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "report.sign", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_e, GDK_CONTROL_MASK, "report.export-workbook",
                                       NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_e, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "report.export-table", NULL);
}

static GtkLabel *
add_label (GtkWidget *box, const char *css_class)
{
  GtkLabel *label = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (label, 0);
  gtk_label_set_ellipsize (label, PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (GTK_WIDGET (label), css_class);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (label));
  return label;
}

static void
setup_gap_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, gpointer data)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *label = gtk_label_new (NULL);
  GtkWidget *icon = gtk_image_new_from_icon_name ("go-next-symbolic");
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (icon, "dim-label");
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), icon);
  gtk_widget_add_css_class (box, "tm-gap");
  tm_access_hide_decoration (box);
  gtk_list_item_set_child (list_item, box);
}

static void
bind_gap_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, gpointer data)
{
  GtkWidget *label = gtk_widget_get_first_child (gtk_list_item_get_child (list_item));
  g_autofree char *text = tm_gap_describe (tm_pointer_item_get (gtk_list_item_get_item (list_item)));
  gtk_label_set_text (GTK_LABEL (label), text);
  tm_access_name_row (label, text);
}

static GtkWidget *
build_gap_view (TmReportPage *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkNoSelection *selection = gtk_no_selection_new (g_object_ref (G_LIST_MODEL (self->gaps)));
  GtkWidget *view = gtk_list_view_new (GTK_SELECTION_MODEL (selection), factory);
  GtkWidget *scroller = gtk_scrolled_window_new ();
  g_signal_connect (factory, "setup", G_CALLBACK (setup_gap_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_gap_cb), NULL);
  gtk_list_view_set_single_click_activate (GTK_LIST_VIEW (view), TRUE);
  g_signal_connect (view, "activate", G_CALLBACK (gap_activated_cb), self);
  gtk_widget_add_css_class (view, "navigation-sidebar");
  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("What is missing"),
                                  -1);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), view);
  gtk_widget_set_vexpand (scroller, TRUE);
  return scroller;
}

static GtkWidget *
build_missing (TmReportPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *none = gtk_label_new (_ ("Every characteristic has its result, its gauge and its reference. The "
                                      "report can go out."));
  gtk_widget_add_css_class (box, "tm-missing");
  self->sign = TM_REPORT_SIGN (tm_report_sign_new ());
  g_signal_connect_swapped (self->sign, "checked", G_CALLBACK (signed_checked_cb), self);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->sign));
  self->missing = add_label (box, "tm-missing-title");
  gtk_label_set_wrap (GTK_LABEL (none), TRUE);
  gtk_label_set_xalign (GTK_LABEL (none), 0);
  gtk_widget_set_valign (none, GTK_ALIGN_START);
  gtk_widget_add_css_class (none, "tm-nothing-missing");
  self->missing_stack = GTK_STACK (gtk_stack_new ());
  gtk_stack_add_named (self->missing_stack, none, "none");
  gtk_stack_add_named (self->missing_stack, build_gap_view (self), "list");
  gtk_widget_set_vexpand (GTK_WIDGET (self->missing_stack), TRUE);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->missing_stack));
  return box;
}

static GtkWidget *
build_export_buttons (void)
{
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *table = tm_button_new (_ ("Export _CSV…"));
  GtkWidget *workbook = tm_button_new (_ ("Export _workbook…"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (table), "report.export-table");
  gtk_widget_set_tooltip_text (table, _ ("Write the characteristics as a CSV table (Ctrl+Shift+E)"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (workbook), "report.export-workbook");
  gtk_widget_set_tooltip_text (workbook, _ ("Write the first-article workbook (Ctrl+E)"));
  gtk_widget_add_css_class (workbook, "suggested-action");
  gtk_widget_set_valign (buttons, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (buttons), table);
  gtk_box_append (GTK_BOX (buttons), workbook);
  return buttons;
}

static GtkWidget *
build_report (TmReportPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *scroller = gtk_scrolled_window_new ();
  self->title = add_label (words, "tm-report-title");
  self->about = add_label (words, "dim-label");
  self->summary = add_label (words, "tm-report-summary");
  gtk_widget_set_hexpand (words, TRUE);
  gtk_widget_add_css_class (head, "tm-report-head");
  gtk_box_append (GTK_BOX (head), words);
  gtk_box_append (GTK_BOX (head), build_export_buttons ());
  self->table = tm_report_table_new (G_LIST_MODEL (self->lines));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->table);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (box), head);
  gtk_box_append (GTK_BOX (box), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (box), scroller);
  gtk_widget_set_hexpand (box, TRUE);
  return box;
}

static void
tm_report_page_init (TmReportPage *self)
{
  self->gaps = tm_pointer_list_new ();
  self->lines = tm_pointer_list_new ();
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-report");
  gtk_box_append (GTK_BOX (self), build_missing (self));
  gtk_box_append (GTK_BOX (self), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (self), build_report (self));
}

GtkWidget *
tm_report_page_new (void)
{
  return g_object_new (TM_TYPE_REPORT_PAGE, NULL);
}

void
tm_report_page_set_document (TmReportPage *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_REPORT_PAGE (self));

  if (self->document == document)
    return;
  drop_content (self);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  self->stale = TRUE;
  /* First, so that what it knew is forgotten before this page asks. */
  tm_report_sign_set_document (self->sign, document);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "recorded", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (changed_cb), self);
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    refresh (self);
}

guint
tm_report_page_count_gaps (TmReportPage *self)
{
  g_return_val_if_fail (TM_IS_REPORT_PAGE (self), 0);

  refresh (self);
  return g_list_model_get_n_items (G_LIST_MODEL (self->gaps));
}

void
tm_report_page_activate_gap (TmReportPage *self, guint position)
{
  g_return_if_fail (TM_IS_REPORT_PAGE (self));

  gap_activated_cb (NULL, position, self);
}
