/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-page.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-report-actions.h"
#include "app-report-fold.h"
#include "app-report-gaps.h"
#include "app-report-page-private.h"
#include "app-report-table.h"
#include "app-tip.h"
#include "app-toast.h"
#include "app-words.h"

/* Above this many lines the content is gathered off the main loop, with the pages. */
#define GATHER_HERE_LINES 3000

#define PROGRESS_MS    100
#define QUIET_PROGRESS 3 /* times that, before progress is shown: most pages are there sooner */

enum { SIGNAL_GO_TO, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmReportPage, tm_report_page, GTK_TYPE_BOX)

/* -------- What is shown -------- */

static const char *
describe_kind (const TmJob *job)
{
  switch (job->first_article)
    {
    case TM_FIRST_ARTICLE_PARTIAL:
      return _ ("partial first article");
    case TM_FIRST_ARTICLE_AGAIN:
      return _ ("re-inspection");
    case TM_FIRST_ARTICLE_FULL:
    case TM_N_FIRST_ARTICLES:
    default:
      return _ ("full first article");
    }
}

/* "full first article, piece 001" */
static char *
describe_scope (const TmJob *job)
{
  const char *kind = describe_kind (job);
  g_autoptr (GPtrArray) serials = g_ptr_array_new ();
  g_autofree char *list = NULL;

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
  list = g_strjoinv (", ", (char **)serials->pdata);
  return g_strdup_printf (ngettext ("%s, piece %s", "%s, pieces %s", serials->len - 1), kind, list);
}

static char *
describe_counts (const TmReportContent *content)
{
  return g_strdup_printf (_ ("%u in  ·  %u out  ·  %u too close  ·  %u not measured"), content->n_in,
                          content->n_out, content->n_too_close, content->n_not_measured);
}

static gboolean
has_focus (TmReportPage *self, GtkWidget *part)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  return focus != NULL && gtk_widget_is_ancestor (focus, part);
}

static gboolean
shows_table (TmReportPage *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (self->views), "table") == 0;
}

/* Into the pages, or the table where that is looked at: what is not shown would swallow the keys. */
static void
focus_view (TmReportPage *self)
{
  if (!shows_table (self))
    gtk_widget_grab_focus (GTK_WIDGET (tm_report_preview_view (self->preview)));
  else if (!gtk_widget_child_focus (self->table, GTK_DIR_TAB_FORWARD))
    gtk_widget_grab_focus (self->table_button);
}

/* Rows go with the content, and with them the focus, which comes back to those that take their place. */
static void
give_focus_back (TmReportPage *self)
{
  if (self->lost_focus == self->table)
    gtk_widget_child_focus (self->table, GTK_DIR_TAB_FORWARD);
  else if (self->lost_focus != NULL)
    tm_report_page_enter (self);
  self->lost_focus = NULL;
}

static void
drop_content (TmReportPage *self)
{
  if (has_focus (self, GTK_WIDGET (self->gaps)))
    self->lost_focus = GTK_WIDGET (self->gaps);
  else if (has_focus (self, self->table))
    self->lost_focus = self->table;
  tm_report_gaps_set (self->gaps, NULL);
  tm_pointer_list_set_array (self->lines, NULL);
  self->table_lines = NULL;
  g_clear_pointer (&self->content, tm_report_content_free);
}

/* Rows of a table take their time: they are made when it is looked at. */
static void
fill_table (TmReportPage *self)
{
  tm_pointer_list_set_array (self->lines, shows_table (self) ? self->table_lines : NULL);
}

static void
show_content (TmReportPage *self, TmReportContent *content)
{
  const TmJob *job = content->job;
  g_autofree char *title = tm_words_job_title (job->part_number, job->part_name, job->revision);
  g_autofree char *about = describe_scope (job);
  g_autofree char *summary = describe_counts (content);

  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->about, about);
  gtk_label_set_text (self->summary, summary);
  tm_report_table_show_pieces (self->table, job->pieces->len > 1);
  tm_report_gaps_set (self->gaps, content->gaps);
  self->table_lines = content->lines;
  fill_table (self);
  give_focus_back (self);
}

/* Whether what was signed is still what the record says is known now. Pages find that out by themselves. */
static void
signed_checked_cb (TmReportPage *self)
{
  const gboolean inside = has_focus (self, GTK_WIDGET (self->gaps));

  if (self->content == NULL)
    return;
  tm_report_gaps_set (self->gaps, NULL);
  tm_report_sign_complete (self->sign, self->content);
  tm_report_gaps_set (self->gaps, self->content->gaps);
  if (inside)
    tm_report_page_enter (self);
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

/* -------- Laying out -------- */

static void refresh (TmReportPage *self);

static gboolean
progress_cb (gpointer data)
{
  TmReportPage *self = data;

  if (++self->n_progress > QUIET_PROGRESS)
    tm_report_preview_set_progress (self->preview, tm_report_layout_fraction (self->layout));
  return G_SOURCE_CONTINUE;
}

static void
end_layout (TmReportPage *self)
{
  g_clear_handle_id (&self->progress_id, g_source_remove);
  g_clear_pointer (&self->layout, tm_report_layout_unref);
  tm_report_preview_set_progress (self->preview, -1);
}

/* Where the lists are of the copy that the pages are drawn from, they go on before it goes. */
static void
show_paper (TmReportPage *self, TmReportPaper *paper)
{
  if (self->content == NULL)
    drop_content (self);
  if (self->content == NULL)
    show_content (self, tm_report_paper_content (paper));
  tm_report_preview_set_paper (self->preview, paper);
}

static void
laid_out_cb (GObject *owner, TmReportPaper *paper, const GError *error)
{
  TmReportPage *self = TM_REPORT_PAGE (owner);
  g_autoptr (TmReportPaper) owned = paper;

  end_layout (self);
  if (self->document == NULL)
    return;
  /* Something was recorded, chosen, or another job was opened, while these were laid out. */
  if (self->stale != TM_STALE_NOTHING)
    {
      if (gtk_widget_get_mapped (GTK_WIDGET (self)))
        refresh (self);
      return;
    }
  if (paper != NULL)
    show_paper (self, paper);
  else if (error != NULL)
    tm_report_preview_set_problem (self->preview, error->message);
  /* Tried again when the page is next looked at. */
  if (paper == NULL)
    self->stale = TM_STALE_RECORD;
}

static void
refresh (TmReportPage *self)
{
  const gboolean form_only = self->stale == TM_STALE_FORM;

  if (self->document == NULL || self->stale == TM_STALE_NOTHING)
    return;
  if (!form_only && self->content == NULL
      && count_lines (tm_document_job (self->document)) <= GATHER_HERE_LINES)
    {
      self->content = tm_report_content_new (tm_document_job (self->document));
      tm_report_content_set_template (self->content, tm_document_template (self->document));
      tm_report_sign_complete (self->sign, self->content);
      show_content (self, self->content);
    }
  /* One at a time: a large job is held twice already. */
  if (self->layout != NULL)
    return;
  self->stale = TM_STALE_NOTHING;
  self->layout = tm_report_layout_begin (
      G_OBJECT (self), self->document,
      form_only ? tm_report_view_paper (tm_report_preview_view (self->preview)) : NULL, laid_out_cb);
  self->n_progress = 0;
  self->progress_id = g_timeout_add (PROGRESS_MS, progress_cb, self);
}

static void
make_stale (TmReportPage *self, TmStale stale)
{
  self->stale = MAX (self->stale, stale);
  if (self->layout != NULL)
    tm_report_layout_cancel (self->layout);
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    refresh (self);
}

static void
changed_cb (TmReportPage *self)
{
  /* The content borrows from the job, which has just changed under it. */
  if (self->content != NULL)
    drop_content (self);
  make_stale (self, TM_STALE_RECORD);
}

/* What was laid out of the record as it is must not be lost to a mere change of form: the pages are of the
 * record that the paper on show is of only where no other layout was under way. */
void
tm_report_page_form_changed (GtkWidget *page)
{
  TmReportPage *self = TM_REPORT_PAGE (page);
  const gboolean current
      = self->layout == NULL && tm_report_view_paper (tm_report_preview_view (self->preview)) != NULL;

  make_stale (self, current ? TM_STALE_FORM : TM_STALE_RECORD);
}

/* -------- Jumps -------- */

/* The gap of a copy of the job is put in terms of the document's own; it leads to the first of its pieces. */
static void
go_to_cb (TmReportPage *self, const TmGap *gap)
{
  const TmJob *job = tm_document_job (self->document);
  TmGap ours = *gap;
  g_autofree char *station = g_strdup (gap->station != NULL ? gap->station : "");
  g_autofree char *field = g_strdup (gap->field != NULL ? gap->field : "");

  if (gap->piece != NULL)
    ours.piece = tm_job_find_piece (job, gap->piece->serial);
  if (gap->feature != NULL)
    ours.feature = tm_job_find_feature (job, gap->feature->balloon);
  ours.station = station;
  ours.field = field;
  ours.pieces = NULL;
  ours.places = NULL;
  ours.stations = NULL;
  tm_report_fold_open (self->fold, FALSE);
  g_signal_emit (self, signals[SIGNAL_GO_TO], 0, &ours);
}

/* -------- Views -------- */

void
tm_report_page_show_view (TmReportPage *self, const char *name)
{
  const gboolean pages = g_str_equal (name, "pages");

  tm_access_show_page (self->views, name);
  fill_table (self);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->pages_button), pages);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->table_button), !pages);
  gtk_widget_set_visible (tm_report_preview_tools (self->preview), pages);
}

/* As soon as it is there: what does not show yet takes no focus. */
static gboolean
focus_missing_cb (GtkWidget *page, GdkFrameClock *clock, gpointer data)
{
  TmReportPage *self = TM_REPORT_PAGE (page);

  if (!tm_report_fold_is_open (self->fold))
    return G_SOURCE_REMOVE;
  if (!gtk_widget_get_mapped (self->side))
    return G_SOURCE_CONTINUE;
  if (!gtk_widget_child_focus (GTK_WIDGET (self->gaps), GTK_DIR_TAB_FORWARD))
    gtk_widget_child_focus (self->side, GTK_DIR_TAB_FORWARD);
  return G_SOURCE_REMOVE;
}

/* From the pages, or the table, to what is missing, and back. */
void
tm_report_page_show_missing (TmReportPage *self)
{
  const gboolean back = tm_report_fold_is_open (self->fold) && has_focus (self, self->side);

  tm_report_fold_open (self->fold, !back);
  if (back)
    focus_view (self);
  else if (focus_missing_cb (GTK_WIDGET (self), NULL, NULL) == G_SOURCE_CONTINUE)
    gtk_widget_add_tick_callback (GTK_WIDGET (self), focus_missing_cb, NULL, NULL);
}

/* -------- Making -------- */

static GtkLabel *
add_label (GtkWidget *box, const char *css_class)
{
  GtkLabel *label = GTK_LABEL (gtk_label_new (NULL));

  gtk_label_set_xalign (label, 0);
  gtk_label_set_ellipsize (label, PANGO_ELLIPSIZE_END);
  tm_tip_own_text (GTK_WIDGET (label));
  gtk_widget_add_css_class (GTK_WIDGET (label), css_class);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (label));
  return label;
}

static GtkWidget *
build_side (TmReportPage *self)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_add_css_class (side, "tm-missing");
  self->sign = TM_REPORT_SIGN (tm_report_sign_new ());
  g_signal_connect_swapped (self->sign, "checked", G_CALLBACK (signed_checked_cb), self);
  gtk_box_append (GTK_BOX (side), GTK_WIDGET (self->sign));
  self->gaps = TM_REPORT_GAPS (tm_report_gaps_new ());
  g_signal_connect_swapped (self->gaps, "activated", G_CALLBACK (go_to_cb), self);
  gtk_widget_set_vexpand (GTK_WIDGET (self->gaps), TRUE);
  gtk_box_append (GTK_BOX (side), GTK_WIDGET (self->gaps));
  gtk_widget_set_hexpand (side, FALSE);
  return side;
}

/* Beside one another what the report is about and the counts have no room either. */
static void
room_cb (TmReportPage *self)
{
  const gboolean room = tm_report_fold_has_room (self->fold);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self->under),
                                  room ? GTK_ORIENTATION_HORIZONTAL : GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self->under), room ? 18 : 2);
}

static GtkWidget *
build_head (TmReportPage *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *under = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  self->under = under;
  self->title = add_label (words, "tm-report-title");
  self->about = add_label (under, "dim-label");
  self->summary = add_label (under, "tm-report-summary");
  /* Of the two the counts are told whole. */
  gtk_label_set_ellipsize (self->summary, PANGO_ELLIPSIZE_NONE);
  gtk_box_append (GTK_BOX (words), under);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_widget_add_css_class (head, "tm-report-head");
  gtk_box_append (GTK_BOX (head), tm_report_fold_button_new (self->fold, tm_report_gaps_title (self->gaps),
                                                             "report.show-missing",
                                                             _ ("What is missing, and the signatures (F9)")));
  gtk_box_append (GTK_BOX (head), words);
  gtk_box_append (GTK_BOX (head), tm_report_actions_buttons ());
  room_cb (self);
  return head;
}

static GtkWidget *
build_tools (TmReportPage *self)
{
  GtkWidget *tools = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *views = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_add_css_class (views, "linked");
  gtk_widget_add_css_class (tools, "tm-report-tools");
  self->pages_button = tm_report_actions_toggle (_ ("Pages"), _ ("The pages as they will print (Ctrl+1)"),
                                                 "report.show-pages");
  self->table_button = tm_report_actions_toggle (_ ("Table"), _ ("The characteristics as a table (Ctrl+2)"),
                                                 "report.show-table");
  gtk_box_append (GTK_BOX (views), self->pages_button);
  gtk_box_append (GTK_BOX (views), self->table_button);
  gtk_box_append (GTK_BOX (tools), views);
  gtk_box_append (GTK_BOX (tools), tm_report_preview_tools (self->preview));
  return tools;
}

static GtkWidget *
build_views (TmReportPage *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->table = tm_report_table_new (G_LIST_MODEL (self->lines));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->table);
  self->views = GTK_STACK (gtk_stack_new ());
  gtk_stack_add_named (self->views, GTK_WIDGET (self->preview), "pages");
  gtk_stack_add_named (self->views, scroller, "table");
  gtk_widget_set_vexpand (GTK_WIDGET (self->views), TRUE);
  return GTK_WIDGET (self->views);
}

/* Whoever had the focus in what goes away goes on with what is beside it. */
static void
fold_cb (TmReportPage *self)
{
  if (!tm_report_fold_is_open (self->fold) && has_focus (self, self->side))
    focus_view (self);
}

static void
tm_report_page_init (TmReportPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->lines = tm_pointer_list_new ();
  self->preview = TM_REPORT_PREVIEW (tm_report_preview_new ());
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-report");
  self->side = build_side (self);
  self->fold = tm_report_fold_new (self->side, box);
  g_signal_connect_swapped (self->fold, "notify::reveal-flap", G_CALLBACK (fold_cb), self);
  g_signal_connect_swapped (self->fold, "notify::folded", G_CALLBACK (room_cb), self);
  gtk_box_append (GTK_BOX (box), build_head (self));
  gtk_box_append (GTK_BOX (box), build_tools (self));
  gtk_box_append (GTK_BOX (box), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (box), build_views (self));
  gtk_widget_set_hexpand (box, TRUE);
  gtk_box_append (GTK_BOX (self), self->fold);
  tm_report_page_show_view (self, "pages");
}

/* -------- The widget -------- */

static void
tm_report_page_map (GtkWidget *widget)
{
  TmReportPage *self = TM_REPORT_PAGE (widget);

  GTK_WIDGET_CLASS (tm_report_page_parent_class)->map (widget);
  tm_report_sign_set_looked_at (self->sign, TRUE);
  refresh (self);
}

static void
tm_report_page_unmap (GtkWidget *widget)
{
  tm_report_sign_set_looked_at (TM_REPORT_PAGE (widget)->sign, FALSE);
  GTK_WIDGET_CLASS (tm_report_page_parent_class)->unmap (widget);
}

static void
tm_report_page_dispose (GObject *object)
{
  TmReportPage *self = TM_REPORT_PAGE (object);

  if (self->preview != NULL)
    {
      tm_report_page_set_document (self, NULL);
      if (self->layout != NULL)
        end_layout (self);
    }
  self->preview = NULL;
  G_OBJECT_CLASS (tm_report_page_parent_class)->dispose (object);
}

static void
tm_report_page_finalize (GObject *object)
{
  g_clear_object (&TM_REPORT_PAGE (object)->lines);
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
  widget_class->unmap = tm_report_page_unmap;
  signals[SIGNAL_GO_TO] = g_signal_new ("go-to", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                        NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  tm_report_actions_install (widget_class);
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
  tm_report_preview_set_paper (self->preview, NULL);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  /* First, so that what it knew is forgotten before this page asks. */
  tm_report_sign_set_document (self->sign, document);
  if (document != NULL)
    {
      g_signal_connect_swapped (document, "recorded", G_CALLBACK (changed_cb), self);
      g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (changed_cb), self);
    }
  make_stale (self, TM_STALE_RECORD);
}

void
tm_report_page_enter (TmReportPage *self)
{
  g_return_if_fail (TM_IS_REPORT_PAGE (self));

  refresh (self);
  if (!tm_report_fold_is_open (self->fold)
      || !gtk_widget_child_focus (GTK_WIDGET (self->gaps), GTK_DIR_TAB_FORWARD))
    focus_view (self);
}

guint
tm_report_page_count_gaps (TmReportPage *self)
{
  g_return_val_if_fail (TM_IS_REPORT_PAGE (self), 0);

  refresh (self);
  return tm_report_gaps_count (self->gaps);
}

void
tm_report_page_activate_gap (TmReportPage *self, guint position)
{
  g_return_if_fail (TM_IS_REPORT_PAGE (self));

  tm_report_gaps_activate (self->gaps, position);
}

TmReportPreview *
tm_report_page_preview (TmReportPage *self)
{
  g_return_val_if_fail (TM_IS_REPORT_PAGE (self), NULL);

  return self->preview;
}

gboolean
tm_report_page_is_settled (TmReportPage *self)
{
  g_return_val_if_fail (TM_IS_REPORT_PAGE (self), FALSE);

  return self->stale == TM_STALE_NOTHING && self->layout == NULL;
}
