/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-suitability-list.h"

#include <glib/gi18n-lib.h>

#include "app-budget-words.h"
#include "app-dialog.h"
#include "app-gauge-words.h"
#include "app-list-row.h"
#include "app-suitability-words.h"
#include "app-tip.h"

/* Characters, the same in every row, so that the columns line up. */
#define NAME_CHARS   24
#define REMARK_CHARS 18

enum { METHOD, WORD, EXPANDED, GUARD, SHARE, REMARKS, N_COLUMNS };

typedef struct {
  const char *title;
  int width; /* pixels at least */
  float xalign;
} Column;

static const Column columns[N_COLUMNS] = {
  [METHOD] = { N_ ("Method"), -1, 0 },
  [WORD] = { N_ ("In a word"), 150, 0 },
  [EXPANDED] = { N_ ("Expanded"), 80, 1 },
  [GUARD] = { N_ ("Guard"), 72, 1 },
  [SHARE] = { N_ ("Share of the band"), 132, 0 },
  [REMARKS] = { N_ ("Remarks"), -1, 0 },
};

struct _TmSuitabilityList {
  GtkBox parent_instance;

  GtkSizeGroup *sizes[N_COLUMNS];
  GtkWidget *head;
  GtkListBox *rows;
};

G_DEFINE_FINAL_TYPE (TmSuitabilityList, tm_suitability_list, GTK_TYPE_BOX)

static GtkWidget *
new_label (guint which, const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), columns[which].xalign);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (label, "numeric");
  tm_tip_own_text (label);
  return label;
}

static GtkWidget *
place (TmSuitabilityList *self, guint which, GtkWidget *cell)
{
  gtk_widget_set_size_request (cell, columns[which].width, -1);
  gtk_widget_set_hexpand (cell, which == REMARKS);
  gtk_size_group_add_widget (self->sizes[which], cell);
  return cell;
}

/* The name, its gauges under it. */
static GtkWidget *
new_name (const TmSuitability *row, gboolean assigned)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  g_autofree char *gauges = row->method != NULL
                                ? tm_words_method_gauges (row->method)
                                : g_strdup (row->gauge != NULL ? tm_words_gauge_kind (row->gauge->kind) : "");
  g_autofree char *under = !assigned         ? g_strdup (gauges)
                           : *gauges == '\0' ? g_strdup (_ ("assigned"))
                                             : g_strdup_printf (_ ("assigned · %s"), gauges);
  GtkWidget *labels[] = { new_label (METHOD, row->name), new_label (METHOD, under) };

  gtk_widget_add_css_class (labels[1], "dim-label");
  for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
    {
      gtk_label_set_width_chars (GTK_LABEL (labels[i]), NAME_CHARS);
      gtk_label_set_max_width_chars (GTK_LABEL (labels[i]), NAME_CHARS);
      gtk_box_append (GTK_BOX (box), labels[i]);
    }
  return box;
}

/* A thin bar and the number; the row's sentence says it. */
static GtkWidget *
new_share (const TmSuitability *row)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *bar
      = g_object_new (GTK_TYPE_PROGRESS_BAR, "accessible-role", GTK_ACCESSIBLE_ROLE_PRESENTATION, NULL);
  g_autofree char *share
      = row->outlook.settles == TM_SETTLES_CANNOT ? g_strdup (_ ("all of it")) : tm_words_share (row->share);
  GtkWidget *number = new_label (SHARE, share);

  if (!row->known || *share == '\0')
    {
      g_object_ref_sink (bar);
      g_object_unref (bar);
    }
  else
    {
      gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (bar), CLAMP (row->share, 0, 1));
      gtk_widget_set_valign (bar, GTK_ALIGN_CENTER);
      gtk_widget_add_css_class (bar, "tm-share");
      gtk_box_append (GTK_BOX (box), bar);
    }
  gtk_label_set_text (GTK_LABEL (number), row->known ? share : "");
  gtk_box_append (GTK_BOX (box), number);
  return box;
}

static GtkWidget *
new_remarks (const TmSuitability *row)
{
  g_autofree char *remarks = tm_words_suitability_remarks (row);
  GtkWidget *label = new_label (REMARKS, remarks);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_lines (GTK_LABEL (label), 3);
  gtk_label_set_width_chars (GTK_LABEL (label), REMARK_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (label), REMARK_CHARS);
  gtk_widget_add_css_class (label, "dim-label");
  return label;
}

static GtkWidget *
new_figure (const TmFeature *feature, const TmSuitability *row, guint which)
{
  g_autofree char *text = row->known ? tm_words_total (feature, &row->outlook,
                                                       which == EXPANDED ? TM_TOTAL_EXPANDED : TM_TOTAL_GUARD)
                                     : g_strdup ("");

  return new_label (which, text);
}

static GtkWidget *
new_row (TmSuitabilityList *self, const TmFeature *feature, const TmSuitability *suitability)
{
  gboolean assigned = g_str_equal (feature->method, suitability->name);
  g_autofree char *sentence = tm_words_suitability (feature, suitability, assigned);
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *word = new_label (WORD, tm_words_suitability_word (feature, suitability));

  if (tm_suitability_cannot (suitability))
    gtk_widget_add_css_class (word, "tm-cannot");
  gtk_box_append (GTK_BOX (box), place (self, METHOD, new_name (suitability, assigned)));
  gtk_box_append (GTK_BOX (box), place (self, WORD, word));
  gtk_box_append (GTK_BOX (box), place (self, EXPANDED, new_figure (feature, suitability, EXPANDED)));
  gtk_box_append (GTK_BOX (box), place (self, GUARD, new_figure (feature, suitability, GUARD)));
  gtk_box_append (GTK_BOX (box), place (self, SHARE, new_share (suitability)));
  gtk_box_append (GTK_BOX (box), place (self, REMARKS, new_remarks (suitability)));
  gtk_widget_add_css_class (box, "tm-budget-line");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  g_object_set_data_full (G_OBJECT (row), "key", g_strdup (suitability->name), g_free);
  tm_name_widget (row, sentence);
  return row;
}

void
tm_suitability_list_show (TmSuitabilityList *self, const TmJob *job, const TmFeature *feature)
{
  g_autofree char *now = tm_now_utc ();
  g_autoptr (GArray) rows = NULL;
  gboolean focused;

  g_return_if_fail (TM_IS_SUITABILITY_LIST (self));

  focused = tm_list_clear (self->rows);
  if (feature != NULL && !tm_kind_is_attribute (feature->kind))
    rows = tm_suitability (job, feature, now);
  gtk_widget_set_visible (self->head, rows != NULL && rows->len > 0);
  for (guint i = 0; rows != NULL && i < rows->len; i++)
    gtk_list_box_append (self->rows, new_row (self, feature, &g_array_index (rows, TmSuitability, i)));
  if (feature != NULL)
    tm_list_select (self->rows, feature->method, focused);
}

GtkListBox *
tm_suitability_list_rows (TmSuitabilityList *self)
{
  g_return_val_if_fail (TM_IS_SUITABILITY_LIST (self), NULL);

  return self->rows;
}

static void
tm_suitability_list_dispose (GObject *object)
{
  TmSuitabilityList *self = TM_SUITABILITY_LIST (object);

  for (guint i = 0; i < N_COLUMNS; i++)
    g_clear_object (&self->sizes[i]);
  G_OBJECT_CLASS (tm_suitability_list_parent_class)->dispose (object);
}

static void
tm_suitability_list_class_init (TmSuitabilityListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_suitability_list_dispose;
}

static void
tm_suitability_list_init (TmSuitabilityList *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  self->head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  gtk_widget_add_css_class (self->head, "tm-budget-head");
  for (guint i = 0; i < N_COLUMNS; i++)
    {
      self->sizes[i] = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
      gtk_box_append (GTK_BOX (self->head),
                      place (self, i, new_label (i, g_dgettext (GETTEXT_PACKAGE, columns[i].title))));
    }
  self->rows = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_activate_on_single_click (self->rows, FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (self->rows), "tm-budget");
  tm_list_tab_leaves (self->rows);
  tm_name_widget (GTK_WIDGET (self->rows), _ ("How each method settles it"));
  gtk_box_append (GTK_BOX (self), self->head);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->rows));
}

GtkWidget *
tm_suitability_list_new (void)
{
  return g_object_new (TM_TYPE_SUITABILITY_LIST, NULL);
}
