/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-tool-view.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-edit-tool.h"
#include "app-feature-drop.h"
#include "app-feature-words.h"
#include "app-form.h"
#include "app-gauge-section.h"
#include "app-list-row.h"
#include "app-side-list.h"
#include "app-toast.h"
#include "app-tool-dialog.h"
#include "app-tool-words.h"
#include "app-view-parts.h"
#include "app-words.h"
#include "app-work.h"
#include "book-store.h"
#include "core-cut-work.h"

/* Pixels. */
#define COLUMN_WIDTH 880

/* Cuts shown: the newest. */
#define CUTS_SHOWN 12

struct _TmToolView {
  GtkBox parent_instance;

  TmSideList tools; /* by name */
  GtkStack *stack;  /* "empty" or "tool" */
  GtkLabel *title, *about, *habits;
  TmGaugeSection features, cuts;
  GtkDropDown *feature;
  GPtrArray *balloons; /* char *, of the features that the drop-down lists */
  GtkWidget *give;
  GtkLabel *response;
};

G_DEFINE_FINAL_TYPE (TmToolView, tm_tool_view, GTK_TYPE_BOX)

static const TmTool *
chosen_tool (TmToolView *self)
{
  return self->tools.document != NULL && self->tools.key != NULL
             ? tm_job_find_tool (tm_document_job (self->tools.document), self->tools.key)
             : NULL;
}

/* -------- The list -------- */

static void
fill_list (TmToolView *self, const TmJob *job)
{
  gboolean focused = tm_side_list_begin (&self->tools);

  for (guint i = 0; i < job->tools->len; i++)
    {
      const TmTool *tool = g_ptr_array_index (job->tools, i);
      g_autofree char *about = tm_words_tool (tool);
      g_autofree char *sentence = g_strdup_printf ("%s: %s", tool->name, about);

      gtk_list_box_append (self->tools.list, tm_list_row_new (tool->name, about, "", sentence, tool->name));
    }
  tm_side_list_end (&self->tools, focused);
}

/* The one chosen before, else the first. */
static void
choose_something (TmToolView *self, const TmJob *job)
{
  const TmTool *first = job->tools->len > 0 ? g_ptr_array_index (job->tools, 0) : NULL;

  if (self->tools.key == NULL || tm_job_find_tool (job, self->tools.key) == NULL)
    tm_side_list_set_key (&self->tools, first != NULL ? first->name : NULL);
}

/* -------- The features that it cuts -------- */

static void
set_feature_tool (TmToolView *self, const char *balloon, const char *name)
{
  g_autoptr (GError) error = NULL;

  if (!tm_edit_set_feature_tool (self->tools.document, balloon, name, &error))
    tm_window_show_error (GTK_WIDGET (self), error->message);
}

static void
take_off_cb (GtkButton *button, TmToolView *self)
{
  TmFeature *feature = g_object_get_data (G_OBJECT (button), "row");

  set_feature_tool (self, feature->balloon, NULL);
}

static void
give_cb (TmToolView *self)
{
  guint chosen = gtk_drop_down_get_selected (self->feature);

  if (self->tools.document == NULL || self->tools.key == NULL || chosen >= self->balloons->len)
    return;
  set_feature_tool (self, g_ptr_array_index (self->balloons, chosen), self->tools.key);
}

static void
add_feature_row (TmToolView *self, TmFeature *feature)
{
  g_autofree char *title = tm_words_feature (feature);
  g_autofree char *limits = tm_words_limits (feature);
  g_autofree char *remove = g_strdup_printf (_ ("Take feature %s off this tool"), feature->balloon);

  tm_gauge_section_add_row (&self->features, title, limits, remove, feature, G_CALLBACK (take_off_cb), self);
}

/* Features that are cut to size: those of this tool as rows, the others to be chosen from. */
static void
show_features (TmToolView *self, const TmJob *job, const TmTool *tool)
{
  g_autoptr (GtkStringList) words = gtk_string_list_new (NULL);

  tm_gauge_section_drop_rows (&self->features);
  g_ptr_array_set_size (self->balloons, 0);
  for (guint i = 0; i < job->features->len; i++)
    {
      TmFeature *feature = g_ptr_array_index (job->features, i);
      g_autofree char *title = tm_words_feature (feature);

      if (g_str_equal (feature->tool, tool->name))
        add_feature_row (self, feature);
      else if (tm_feature_is_cut_to_size (feature))
        {
          g_ptr_array_add (self->balloons, g_strdup (feature->balloon));
          gtk_string_list_append (words, title);
        }
    }
  if (self->features.rows->len == 0)
    tm_gauge_section_say_none (&self->features, _ ("It is given to no feature of this job yet."));
  gtk_drop_down_set_model (self->feature, G_LIST_MODEL (words));
  gtk_widget_set_visible (GTK_WIDGET (self->feature), self->balloons->len > 0);
  gtk_widget_set_visible (self->give, self->balloons->len > 0);
}

/* -------- How it has cut -------- */

static void
show_cuts (TmToolView *self, const TmTool *tool)
{
  g_autoptr (GArray) answers = tm_tool_answers (self->tools.document, tool->name);
  g_autofree char *response = tm_words_tool_response (answers, tool->unit);

  gtk_label_set_text (self->response, response);
  tm_gauge_section_drop_rows (&self->cuts);
  for (guint i = answers->len; i > 0 && i + CUTS_SHOWN > answers->len; i--)
    {
      const TmToolAnswer *answer = &g_array_index (answers, TmToolAnswer, i - 1);
      g_autofree char *words = tm_words_tool_answer (&answer->answer, tool->unit);

      tm_gauge_section_add_row (&self->cuts, words, *answer->job != '\0' ? answer->job : _ ("this job"), NULL,
                                NULL, NULL, NULL);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->cuts.group), answers->len > 0);
}

static void
show_tool (TmToolView *self)
{
  const TmTool *tool = chosen_tool (self);
  g_autofree char *about = tool != NULL ? tm_words_tool (tool) : NULL;
  g_autofree char *habits = tool != NULL ? tm_words_tool_habits (tool) : NULL;

  tm_access_show_page (self->stack, tool != NULL ? "tool" : "empty");
  if (tool == NULL)
    return;
  gtk_label_set_text (self->title, tool->name);
  gtk_label_set_text (self->about, about);
  gtk_label_set_text (self->habits, habits);
  gtk_widget_set_visible (GTK_WIDGET (self->habits), *habits != '\0');
  show_features (self, tm_document_job (self->tools.document), tool);
  show_cuts (self, tool);
}

static void
show (GtkWidget *view)
{
  show_tool (TM_TOOL_VIEW (view));
}

static void
refresh (GtkWidget *view)
{
  TmToolView *self = TM_TOOL_VIEW (view);
  const TmJob *job = tm_document_job (self->tools.document);

  choose_something (self, job);
  fill_list (self, job);
  show_tool (self);
}

/* -------- Actions -------- */

static void
saved_cb (GtkWidget *widget, const char *name)
{
  tm_tool_view_choose (TM_TOOL_VIEW (widget), name);
}

static void
add_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmToolView *self = TM_TOOL_VIEW (widget);

  if (self->tools.document != NULL)
    tm_tool_dialog_present (widget, self->tools.document, NULL, saved_cb);
}

static void
change_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmToolView *self = TM_TOOL_VIEW (widget);

  if (chosen_tool (self) != NULL)
    tm_tool_dialog_present (widget, self->tools.document, self->tools.key, saved_cb);
}

/* On the worker: the newest of everything that the book's jobs own. */
static gpointer
run_look (TmWork *work, gpointer path, GError **error)
{
  g_autoptr (TmBook) book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, error);

  return book != NULL ? tm_book_gauge_register (book, error) : NULL;
}

static void
looked_cb (GtkWidget *widget, gpointer result, const GError *look_error, gpointer data)
{
  TmToolView *self = TM_TOOL_VIEW (widget);
  g_autoptr (TmJob) others = result;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  guint n = 0;

  if (look_error != NULL)
    tm_window_show_error (widget, look_error->message);
  if (others == NULL || self->tools.document == NULL)
    return;
  if (!tm_edit_take_tools (self->tools.document, others, &n, &error))
    {
      tm_window_show_error (widget, error->message);
      return;
    }
  text = n > 0
             ? g_strdup_printf (ngettext ("Took %u tool from the book", "Took %u tools from the book", n), n)
             : g_strdup (_ ("The other jobs of the book have no tool that is not here"));
  tm_window_toast (widget, text);
}

static void
free_others (gpointer job)
{
  tm_job_free (job);
}

static void
take_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmToolView *self = TM_TOOL_VIEW (widget);

  if (self->tools.document != NULL)
    tm_work_run (widget, _ ("Looking through the book"), run_look, looked_cb,
                 g_strdup (tm_book_path (tm_document_book (self->tools.document))), g_free, free_others);
}

static void
row_activated_cb (TmToolView *self)
{
  change_action (GTK_WIDGET (self), NULL, NULL);
}

void
tm_tool_view_choose (TmToolView *self, const char *name)
{
  g_return_if_fail (TM_IS_TOOL_VIEW (self));

  tm_side_list_set_key (&self->tools, name);
  if (self->tools.document != NULL)
    refresh (GTK_WIDGET (self));
}

void
tm_tool_view_set_document (TmToolView *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_TOOL_VIEW (self));

  tm_gauge_section_drop_rows (&self->features);
  tm_gauge_section_drop_rows (&self->cuts);
  tm_side_list_set_document (&self->tools, document);
}

void
tm_tool_view_enter (TmToolView *self)
{
  g_return_if_fail (TM_IS_TOOL_VIEW (self));

  /* What was cut at the Bench meanwhile counts. */
  if (self->tools.document != NULL)
    refresh (GTK_WIDGET (self));
  tm_side_list_enter (&self->tools);
}

GtkListBox *
tm_tool_view_tools (TmToolView *self)
{
  g_return_val_if_fail (TM_IS_TOOL_VIEW (self), NULL);

  return self->tools.list;
}

const char *
tm_tool_view_response (TmToolView *self)
{
  g_return_val_if_fail (TM_IS_TOOL_VIEW (self), NULL);

  return gtk_label_get_text (self->response);
}

/* -------- Building -------- */

static GtkWidget *
build_left (TmToolView *self)
{
  GtkWidget *head = tm_view_title_new (_ ("Tools"));
  GtkWidget *take = tm_view_button_new (_ ("Take from the _book"), "tool.take",
                                        _ ("Every tool of the shop’s other jobs that this one has not"));

  gtk_box_append (GTK_BOX (head),
                  tm_view_button_new (_ ("_Add a tool…"), "tool.add",
                                      _ ("A boring bar, a turning tool, a cutter, with its dial (Ctrl+I)")));
  gtk_widget_add_css_class (take, "flat");
  gtk_widget_set_margin_start (take, 12);
  gtk_widget_set_margin_end (take, 12);
  gtk_widget_set_margin_bottom (take, 12);
  tm_side_list_init (&self->tools, GTK_WIDGET (self), _ ("Cutting tools"), refresh, show);
  tm_side_list_activates (&self->tools, G_CALLBACK (row_activated_cb));
  return tm_side_list_put (&self->tools, head, take);
}

static GtkWidget *
build_head (TmToolView *self)
{
  GtkWidget *head = tm_view_head_new (&self->title, &self->about);

  gtk_box_append (GTK_BOX (head),
                  tm_view_button_new (_ ("_Change…"), "tool.change", _ ("Its dial and its habits")));
  return head;
}

static void
build_features (TmToolView *self, GtkBox *into)
{
  GtkWidget *choose = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  self->balloons = g_ptr_array_new_with_free_func (g_free);
  self->feature = tm_feature_drop_new (_ ("Feature to give the tool to"));
  self->give = tm_button_new (_ ("_Give it"));
  gtk_widget_set_tooltip_text (self->give, _ ("This tool cuts the feature chosen on the left"));
  g_signal_connect_swapped (self->give, "clicked", G_CALLBACK (give_cb), self);
  gtk_widget_set_valign (choose, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (choose), GTK_WIDGET (self->feature));
  gtk_box_append (GTK_BOX (choose), self->give);
  tm_gauge_section_build (&self->features, into, _ ("Features that it cuts"), NULL);
  adw_preferences_group_set_header_suffix (self->features.group, choose);
}

static GtkWidget *
build_column (TmToolView *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  GtkWidget *says = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->habits = tm_view_label_new ("tm-lines", TRUE);
  gtk_box_append (GTK_BOX (column), GTK_WIDGET (self->habits));
  build_features (self, GTK_BOX (column));
  tm_form_group (GTK_BOX (says), _ ("How it has cut"),
                 _ ("Learned from what was dialled and what was then read; this is what the next cut is "
                    "planned with."));
  self->response = tm_view_label_new ("tm-answer", TRUE);
  gtk_box_append (GTK_BOX (says), GTK_WIDGET (self->response));
  gtk_box_append (GTK_BOX (column), says);
  tm_gauge_section_build (&self->cuts, GTK_BOX (column), _ ("Its last cuts"), NULL);
  gtk_widget_add_css_class (column, "tm-dialog");
  return column;
}

static GtkWidget *
build_right (TmToolView *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *clamp = adw_clamp_new ();

  adw_clamp_set_maximum_size (ADW_CLAMP (clamp), COLUMN_WIDTH);
  adw_clamp_set_tightening_threshold (ADW_CLAMP (clamp), COLUMN_WIDTH);
  adw_clamp_set_child (ADW_CLAMP (clamp), build_column (self));
  gtk_box_append (GTK_BOX (box), build_head (self));
  gtk_box_append (GTK_BOX (box), tm_view_scroller_new (clamp));
  return box;
}

static GtkWidget *
build_empty (void)
{
  GtkWidget *page = adw_status_page_new ();
  GtkWidget *add = tm_view_button_new (_ ("Add a _tool…"), "tool.add", NULL);

  gtk_widget_set_halign (add, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (add, "suggested-action");
  gtk_widget_add_css_class (add, "tm-wide");
  adw_status_page_set_title (ADW_STATUS_PAGE (page), _ ("No cutting tools yet"));
  adw_status_page_set_description (
      ADW_STATUS_PAGE (page),
      _ ("A tool is what cuts a feature and the dial that moves it. With its graduation the Bench says how "
         "much to dial; from the cuts on record it learns how the tool answers."));
  adw_status_page_set_child (ADW_STATUS_PAGE (page), add);
  return page;
}

static void
tm_tool_view_dispose (GObject *object)
{
  TmToolView *self = TM_TOOL_VIEW (object);

  tm_side_list_clear (&self->tools);
  G_OBJECT_CLASS (tm_tool_view_parent_class)->dispose (object);
}

static void
tm_tool_view_finalize (GObject *object)
{
  TmToolView *self = TM_TOOL_VIEW (object);

  g_clear_pointer (&self->balloons, g_ptr_array_unref);
  g_clear_pointer (&self->features.rows, g_ptr_array_unref);
  g_clear_pointer (&self->cuts.rows, g_ptr_array_unref);
  G_OBJECT_CLASS (tm_tool_view_parent_class)->finalize (object);
}

static void
tm_tool_view_class_init (TmToolViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_tool_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = tm_tool_view_finalize;
  gtk_widget_class_install_action (widget_class, "tool.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "tool.change", NULL, change_action);
  gtk_widget_class_install_action (widget_class, "tool.take", NULL, take_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_i, GDK_CONTROL_MASK, "tool.add", NULL);
}

static void
tm_tool_view_init (TmToolView *self)
{
  self->stack = GTK_STACK (gtk_stack_new ());
  gtk_widget_set_hexpand (GTK_WIDGET (self->stack), TRUE);
  gtk_box_append (GTK_BOX (self), build_left (self));
  gtk_box_append (GTK_BOX (self), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_stack_add_named (self->stack, build_empty (), "empty");
  gtk_stack_add_named (self->stack, build_right (self), "tool");
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->stack));
  tm_access_show_page (self->stack, "empty");
}

GtkWidget *
tm_tool_view_new (void)
{
  return g_object_new (TM_TYPE_TOOL_VIEW, NULL);
}
