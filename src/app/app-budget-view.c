/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-budget-view.h"

#include <glib/gi18n-lib.h>

#include "app-budget-words.h"
#include "app-dialog.h"
#include "app-line-dialog.h"
#include "app-list-row.h"
#include "app-tip.h"

enum { WHAT, STATED, DISTRIBUTION, DIVISOR, STANDARD, DOF, SHARE, SOURCE, N_COLUMNS };

/* Pixels. */
#define COLUMN_SPACING 10
/* Characters of the columns that hold texts. */
#define TEXT_CHARS 18

typedef struct {
  const char *title;
  int width; /* pixels at least */
  float xalign;
  gboolean expand;
} Column;

static const Column columns[N_COLUMNS] = {
  [WHAT] = { N_ ("Line"), -1, 0, FALSE },
  [STATED] = { N_ ("As stated"), 76, 1, FALSE },
  [DISTRIBUTION] = { N_ ("Distribution"), 84, 0, FALSE },
  [DIVISOR] = { N_ ("Divisor"), 52, 1, FALSE },
  [STANDARD] = { N_ ("Standard"), 72, 1, FALSE },
  /* Translators: degrees of freedom. */
  [DOF] = { N_ ("Freedom"), 58, 1, FALSE },
  [SHARE] = { N_ ("Share"), 132, 0, FALSE },
  [SOURCE] = { N_ ("Source"), -1, 0, TRUE },
};

struct _TmBudgetView {
  GtkBox parent_instance;

  TmDocument *document;
  char *method_name;
  GtkSizeGroup *sizes[N_COLUMNS];
  GtkWidget *head;
  GtkListBox *list;
};

G_DEFINE_FINAL_TYPE (TmBudgetView, tm_budget_view, GTK_TYPE_BOX)

static GtkWidget *
new_cell (TmBudgetView *self, guint which, const char *text)
{
  const Column *column = &columns[which];
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), column->xalign);
  /* The same least and natural width in every row, so that the columns line up. */
  if (which == WHAT || which == SOURCE)
    {
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_label_set_lines (GTK_LABEL (label), 2);
      gtk_label_set_width_chars (GTK_LABEL (label), TEXT_CHARS);
      gtk_label_set_max_width_chars (GTK_LABEL (label), TEXT_CHARS);
    }
  gtk_widget_set_size_request (label, column->width, -1);
  gtk_widget_set_hexpand (label, column->expand);
  gtk_widget_add_css_class (label, "numeric");
  tm_tip_own_text (label);
  gtk_size_group_add_widget (self->sizes[which], label);
  return label;
}

/* A thin bar and the number; the row's sentence says it. */
static GtkWidget *
new_share (TmBudgetView *self, const TmBudgetRow *row)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *bar
      = g_object_new (GTK_TYPE_PROGRESS_BAR, "accessible-role", GTK_ACCESSIBLE_ROLE_PRESENTATION, NULL);
  GtkWidget *number = gtk_label_new (row->percent);

  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (bar), CLAMP (row->share, 0, 1));
  gtk_widget_set_size_request (bar, 56, -1);
  gtk_widget_set_valign (bar, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (bar, "tm-share");
  gtk_widget_add_css_class (number, "numeric");
  gtk_box_append (GTK_BOX (box), bar);
  gtk_box_append (GTK_BOX (box), number);
  gtk_widget_set_size_request (box, columns[SHARE].width, -1);
  gtk_size_group_add_widget (self->sizes[SHARE], box);
  return box;
}

static GtkWidget *
new_line (TmBudgetView *self, const TmBudgetRow *row)
{
  const char *texts[N_COLUMNS] = { row->what, row->stated, row->distribution, row->divisor, row->standard,
                                   row->dof,  NULL,        row->source };
  GtkWidget *list_row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, COLUMN_SPACING);

  for (guint i = 0; i < N_COLUMNS; i++)
    {
      GtkWidget *cell = i == SHARE ? new_share (self, row) : new_cell (self, i, texts[i]);

      if (i == SOURCE)
        gtk_widget_add_css_class (cell, row->assumed ? "tm-set-apart" : "dim-label");
      gtk_box_append (GTK_BOX (box), cell);
    }
  gtk_widget_add_css_class (box, "tm-budget-line");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (list_row), box);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (list_row), row->line != NULL);
  if (row->line != NULL)
    gtk_widget_set_tooltip_text (list_row, _ ("Enter changes this line"));
  g_object_set_data (G_OBJECT (list_row), "line", row->line);
  tm_name_widget (list_row, row->sentence);
  return list_row;
}

static GtkWidget *
new_text_row (const char *text, const char *css_class)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, "tm-budget-line");
  gtk_widget_add_css_class (label, "numeric");
  gtk_widget_add_css_class (label, css_class);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), label);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  tm_name_widget (row, text);
  return row;
}

/* The name above, the value below. */
static GtkWidget *
new_total (const char *name, const char *value)
{
  GtkWidget *pair = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  const char *texts[] = { name, value };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      GtkWidget *label = gtk_label_new (texts[i]);

      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_widget_add_css_class (label, i == 0 ? "dim-label" : "tm-total");
      gtk_box_append (GTK_BOX (pair), label);
    }
  return pair;
}

/* Read out as "Together: Combined 2.9 µm, …". */
static GtkWidget *
new_totals (const TmFeature *feature, const TmOutlook *outlook)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);
  g_autoptr (GString) sentence = g_string_new (_ ("Together"));

  for (guint i = 0; i < TM_N_TOTALS; i++)
    {
      const char *name = tm_words_total_name ((TmTotal)i);
      g_autofree char *value = tm_words_total (feature, outlook, (TmTotal)i);

      if (*value == '\0')
        continue;
      /* The word stands at the head of the view; here it is only read out. */
      if (i != TM_TOTAL_WORD)
        gtk_box_append (GTK_BOX (box), new_total (name, value));
      g_string_append_printf (sentence, "%s %s %s", i == 0 ? ":" : ",", name, value);
    }
  gtk_widget_add_css_class (box, "tm-totals");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  tm_name_widget (row, sentence->str);
  return row;
}

static void
add_lines (TmBudgetView *self, const TmJob *job, const TmFeature *feature)
{
  g_autoptr (GPtrArray) rows = tm_words_budget (job, feature, self->method_name);
  g_autofree char *none = tm_words_no_budget (job, feature, self->method_name);
  TmOutlook outlook;

  gtk_widget_set_visible (self->head, rows->len > 0);
  for (guint i = 0; i < rows->len; i++)
    gtk_list_box_append (self->list, new_line (self, g_ptr_array_index (rows, i)));
  if (rows->len > 0 && tm_judge_outlook (job, feature, self->method_name, &outlook))
    gtk_list_box_append (self->list, new_totals (feature, &outlook));
  if (*none != '\0')
    gtk_list_box_append (self->list, new_text_row (none, "body"));
}

static void
add_left_out (TmBudgetView *self, const TmJob *job, const TmFeature *feature)
{
  g_auto (GStrv) lines = tm_words_left_out (job, feature, self->method_name);

  for (guint i = 0; lines[i] != NULL; i++)
    gtk_list_box_append (self->list, new_text_row (lines[i], "dim-label"));
}

void
tm_budget_view_show (TmBudgetView *self, TmDocument *document, const TmFeature *feature,
                     const char *method_name)
{
  gboolean focused;

  g_return_if_fail (TM_IS_BUDGET_VIEW (self));

  g_set_object (&self->document, document);
  g_free (self->method_name);
  self->method_name = g_strdup (method_name);
  focused = tm_list_clear (self->list);
  gtk_widget_set_visible (GTK_WIDGET (self), document != NULL && feature != NULL && method_name != NULL);
  if (document == NULL || feature == NULL || method_name == NULL)
    return;
  add_lines (self, tm_document_job (document), feature);
  add_left_out (self, tm_document_job (document), feature);
  if (focused)
    gtk_widget_child_focus (GTK_WIDGET (self->list), GTK_DIR_TAB_FORWARD);
}

GtkListBox *
tm_budget_view_list (TmBudgetView *self)
{
  g_return_val_if_fail (TM_IS_BUDGET_VIEW (self), NULL);

  return self->list;
}

static void
row_activated_cb (TmBudgetView *self, GtkListBoxRow *row)
{
  TmBudgetLine *line = g_object_get_data (G_OBJECT (row), "line");

  if (line != NULL && self->document != NULL)
    tm_line_dialog_present (GTK_WIDGET (self), self->document, self->method_name, line);
}

static void
tm_budget_view_dispose (GObject *object)
{
  TmBudgetView *self = TM_BUDGET_VIEW (object);

  g_clear_object (&self->document);
  for (guint i = 0; i < N_COLUMNS; i++)
    g_clear_object (&self->sizes[i]);
  g_clear_pointer (&self->method_name, g_free);
  G_OBJECT_CLASS (tm_budget_view_parent_class)->dispose (object);
}

static void
tm_budget_view_class_init (TmBudgetViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_budget_view_dispose;
}

static void
build_head (TmBudgetView *self)
{
  self->head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, COLUMN_SPACING);
  gtk_widget_add_css_class (self->head, "tm-budget-head");
  for (guint i = 0; i < N_COLUMNS; i++)
    {
      self->sizes[i] = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
      gtk_box_append (GTK_BOX (self->head),
                      new_cell (self, i, g_dgettext (GETTEXT_PACKAGE, columns[i].title)));
    }
  gtk_box_append (GTK_BOX (self), self->head);
}

static void
tm_budget_view_init (TmBudgetView *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  build_head (self);
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "tm-budget");
  tm_list_tab_leaves (self->list);
  tm_name_widget (GTK_WIDGET (self->list), _ ("Uncertainty budget"));
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (row_activated_cb), self);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->list));
}

GtkWidget *
tm_budget_view_new (void)
{
  return g_object_new (TM_TYPE_BUDGET_VIEW, NULL);
}
