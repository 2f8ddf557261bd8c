/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-preview.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-report-actions.h"

struct _TmReportPreview {
  GtkBox parent_instance;

  TmReportView *view;
  GtkWidget *tools;
  GtkDropDown *sections;
  GtkEntry *page;
  GtkLabel *n_pages;
  GtkLabel *factor;
  GtkWidget *whole_width, *whole_page;
  GtkStack *stack; /* "pages", "problem" */
  GtkLabel *problem;
  GtkProgressBar *progress;
  const GArray *listed; /* TmPaperSection, of the paper shown */
  gboolean following;   /* what is chosen follows the pages, not the other way round */
};

G_DEFINE_FINAL_TYPE (TmReportPreview, tm_report_preview, GTK_TYPE_BOX)

/* -------- Sections -------- */

/* Letters, at most in the list. */
#define LEAST_WIDTH  10
#define LISTED_WIDTH 60

static void
setup_section_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars (GTK_LABEL (label), LEAST_WIDTH);
  gtk_label_set_max_width_chars (GTK_LABEL (label), LISTED_WIDTH);
  gtk_list_item_set_child (item, label);
}

static void
bind_section_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)),
                      gtk_string_object_get_string (gtk_list_item_get_item (item)));
}

static void
list_sections (TmReportPreview *self, TmReportPaper *paper)
{
  g_autoptr (GtkStringList) titles = gtk_string_list_new (NULL);

  self->listed = paper != NULL ? tm_report_paper_sections (paper) : NULL;
  for (guint i = 0; self->listed != NULL && i < self->listed->len; i++)
    gtk_string_list_append (titles, g_array_index (self->listed, TmPaperSection, i).title);
  self->following = TRUE;
  gtk_drop_down_set_model (self->sections, G_LIST_MODEL (titles));
  self->following = FALSE;
  gtk_widget_set_sensitive (GTK_WIDGET (self->sections), self->listed != NULL && self->listed->len > 0);
}

static void
section_cb (TmReportPreview *self)
{
  const guint chosen = gtk_drop_down_get_selected (self->sections);

  if (self->following || self->listed == NULL || chosen >= self->listed->len)
    return;
  tm_report_view_show_page (self->view, g_array_index (self->listed, TmPaperSection, chosen).page);
}

/* The last one that begins on the page or before it; but one that was chosen and begins there stays. */
static guint
find_section (TmReportPreview *self, guint page)
{
  const guint chosen = gtk_drop_down_get_selected (self->sections);
  guint found = 0;

  if (chosen < self->listed->len && g_array_index (self->listed, TmPaperSection, chosen).page == page)
    return chosen;
  for (guint i = 0; i < self->listed->len; i++)
    if (g_array_index (self->listed, TmPaperSection, i).page <= page)
      found = i;
  return found;
}

/* -------- What is looked at -------- */

static void
write_page (TmReportPreview *self)
{
  g_autofree char *page = tm_report_view_paper (self->view) != NULL
                              ? g_strdup_printf ("%u", tm_report_view_page (self->view) + 1)
                              : g_strdup ("");

  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (self->page)), page))
    gtk_editable_set_text (GTK_EDITABLE (self->page), page);
}

static void
moved_cb (TmReportPreview *self)
{
  const TmZoom zoom = tm_report_view_zoom (self->view);
  g_autofree char *factor = g_strdup_printf (_ ("%.0f %%"), tm_report_view_factor (self->view) * 100);

  gtk_label_set_text (self->factor, factor);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->whole_width), zoom == TM_ZOOM_WIDTH);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->whole_page), zoom == TM_ZOOM_PAGE);
  /* What is being typed stays. */
  if (gtk_widget_get_focus_child (GTK_WIDGET (self->page)) == NULL)
    write_page (self);
  if (self->listed == NULL || self->listed->len == 0)
    return;
  self->following = TRUE;
  gtk_drop_down_set_selected (self->sections, find_section (self, tm_report_view_page (self->view)));
  self->following = FALSE;
}

/* A number beyond the last page means the last; what is no number is put back. */
static void
page_activated_cb (TmReportPreview *self)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->page))));
  TmReportPaper *paper = tm_report_view_paper (self->view);
  guint64 page = 0;

  if (paper != NULL && g_ascii_string_to_unsigned (text, 10, 1, G_MAXUINT, &page, NULL))
    {
      tm_report_view_show_page (self->view, (guint)MIN (page, tm_report_paper_n_pages (paper)) - 1);
      gtk_widget_grab_focus (GTK_WIDGET (self->view));
    }
  write_page (self);
}

static void
page_left_cb (TmReportPreview *self)
{
  write_page (self);
}

/* -------- Making -------- */

static GtkWidget *
add_icon_button (GtkWidget *box, const char *icon, const char *name, const char *tip, const char *action)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_set_tooltip_text (button, tip);
  tm_name_widget (button, name);
  tm_access_hide_decoration (button);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

/* Their state follows the view; the action alone changes it. */
static GtkWidget *
add_toggle (GtkWidget *box, const char *label, const char *tip, const char *action)
{
  GtkWidget *button = tm_report_actions_toggle (label, tip, action);

  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static GtkWidget *
build_zoom (TmReportPreview *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *fits = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  add_icon_button (box, "list-remove-symbolic", _ ("Smaller"), _ ("Smaller (Ctrl+−)"), "report.zoom-out");
  self->factor = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_width_chars (self->factor, 6);
  gtk_widget_add_css_class (GTK_WIDGET (self->factor), "numeric");
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->factor));
  add_icon_button (box, "list-add-symbolic", _ ("Larger"), _ ("Larger (Ctrl++)"), "report.zoom-in");
  gtk_widget_add_css_class (fits, "linked");
  self->whole_width
      = add_toggle (fits, _ ("Width"), _ ("As wide as there is room (Ctrl+8)"), "report.zoom-width");
  self->whole_page = add_toggle (fits, _ ("Whole page"), _ ("A whole page (Ctrl+9)"), "report.zoom-page");
  gtk_box_append (GTK_BOX (box), fits);
  return box;
}

static GtkWidget *
build_page_number (TmReportPreview *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->page = GTK_ENTRY (gtk_entry_new ());
  gtk_editable_set_width_chars (GTK_EDITABLE (self->page), 4);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->page), 4);
  gtk_entry_set_input_purpose (self->page, GTK_INPUT_PURPOSE_DIGITS);
  gtk_entry_set_alignment (self->page, 1);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->page), _ ("Go to a page (Ctrl+G)"));
  tm_name_widget (GTK_WIDGET (self->page), _ ("Page"));
  g_signal_connect_swapped (self->page, "activate", G_CALLBACK (page_activated_cb), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (page_left_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->page), focus);
  self->n_pages = GTK_LABEL (gtk_label_new (NULL));
  gtk_widget_add_css_class (GTK_WIDGET (self->n_pages), "numeric");
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->page));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->n_pages));
  return box;
}

static GtkWidget *
build_sections (TmReportPreview *self)
{
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();

  self->sections = GTK_DROP_DOWN (gtk_drop_down_new (NULL, NULL));
  g_signal_connect (factory, "setup", G_CALLBACK (setup_section_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_section_cb), NULL);
  gtk_drop_down_set_factory (self->sections, factory);
  /* It takes what room there is, so that nothing beside it moves when another section is shown. */
  gtk_widget_set_hexpand (GTK_WIDGET (self->sections), TRUE);
  tm_access_name_drop_down (self->sections, _ ("Section"));
  g_signal_connect_swapped (self->sections, "notify::selected", G_CALLBACK (section_cb), self);
  return GTK_WIDGET (self->sections);
}

static void
build_tools (TmReportPreview *self)
{
  self->tools = g_object_ref_sink (gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12));
  gtk_box_append (GTK_BOX (self->tools), build_sections (self));
  gtk_box_append (GTK_BOX (self->tools), build_page_number (self));
  gtk_box_append (GTK_BOX (self->tools), build_zoom (self));
}

static GtkWidget *
build_pages (TmReportPreview *self)
{
  GtkWidget *overlay = gtk_overlay_new ();
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->view = TM_REPORT_VIEW (tm_report_view_new ());
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (self->view));
  self->progress = GTK_PROGRESS_BAR (gtk_progress_bar_new ());
  gtk_widget_add_css_class (GTK_WIDGET (self->progress), "osd");
  gtk_widget_set_valign (GTK_WIDGET (self->progress), GTK_ALIGN_START);
  gtk_widget_set_visible (GTK_WIDGET (self->progress), FALSE);
  tm_name_widget (GTK_WIDGET (self->progress), _ ("Laying out the pages"));
  gtk_overlay_set_child (GTK_OVERLAY (overlay), scroller);
  gtk_overlay_add_overlay (GTK_OVERLAY (overlay), GTK_WIDGET (self->progress));
  g_signal_connect_swapped (self->view, "moved", G_CALLBACK (moved_cb), self);
  return overlay;
}

static void
tm_report_preview_dispose (GObject *object)
{
  TmReportPreview *self = TM_REPORT_PREVIEW (object);

  if (self->view != NULL)
    g_signal_handlers_disconnect_by_data (self->view, self);
  if (self->sections != NULL)
    g_signal_handlers_disconnect_by_data (self->sections, self);
  self->view = NULL;
  self->sections = NULL;
  g_clear_object (&self->tools);
  G_OBJECT_CLASS (tm_report_preview_parent_class)->dispose (object);
}

static void
tm_report_preview_class_init (TmReportPreviewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_report_preview_dispose;
}

static void
tm_report_preview_init (TmReportPreview *self)
{
  self->stack = GTK_STACK (gtk_stack_new ());
  self->problem = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_wrap (self->problem, TRUE);
  gtk_label_set_max_width_chars (self->problem, 60);
  gtk_widget_add_css_class (GTK_WIDGET (self->problem), "tm-report-problem");
  build_tools (self);
  gtk_stack_add_named (self->stack, build_pages (self), "pages");
  gtk_stack_add_named (self->stack, GTK_WIDGET (self->problem), "problem");
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->stack));
  tm_report_preview_set_problem (self, NULL);
}

GtkWidget *
tm_report_preview_new (void)
{
  return g_object_new (TM_TYPE_REPORT_PREVIEW, NULL);
}

TmReportView *
tm_report_preview_view (TmReportPreview *self)
{
  g_return_val_if_fail (TM_IS_REPORT_PREVIEW (self), NULL);

  return self->view;
}

GtkWidget *
tm_report_preview_tools (TmReportPreview *self)
{
  g_return_val_if_fail (TM_IS_REPORT_PREVIEW (self), NULL);

  return self->tools;
}

void
tm_report_preview_set_paper (TmReportPreview *self, TmReportPaper *paper)
{
  g_autofree char *of = NULL;

  g_return_if_fail (TM_IS_REPORT_PREVIEW (self));

  if (paper != NULL)
    /* Translators: stands after the number of the page that is looked at. */
    of = g_strdup_printf (_ ("of %u"), tm_report_paper_n_pages (paper));
  list_sections (self, paper);
  gtk_label_set_text (self->n_pages, of != NULL ? of : "");
  gtk_widget_set_sensitive (self->tools, paper != NULL);
  tm_report_view_set_paper (self->view, paper);
  tm_report_preview_set_problem (self, NULL);
}

void
tm_report_preview_set_progress (TmReportPreview *self, double fraction)
{
  g_return_if_fail (TM_IS_REPORT_PREVIEW (self));

  gtk_widget_set_visible (GTK_WIDGET (self->progress), fraction >= 0);
  gtk_progress_bar_set_fraction (self->progress, MAX (fraction, 0));
}

void
tm_report_preview_set_problem (TmReportPreview *self, const char *problem)
{
  g_return_if_fail (TM_IS_REPORT_PREVIEW (self));

  gtk_label_set_text (self->problem, problem != NULL ? problem : "");
  tm_access_show_page (self->stack, problem != NULL ? "problem" : "pages");
}

const char *
tm_report_preview_problem (TmReportPreview *self)
{
  g_return_val_if_fail (TM_IS_REPORT_PREVIEW (self), NULL);

  return gtk_widget_get_visible (GTK_WIDGET (self->problem)) ? gtk_label_get_text (self->problem) : NULL;
}

void
tm_report_preview_ask_page (TmReportPreview *self)
{
  g_return_if_fail (TM_IS_REPORT_PREVIEW (self));

  gtk_widget_grab_focus (GTK_WIDGET (self->page));
}
