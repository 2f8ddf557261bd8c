/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-table.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-feature-words.h"
#include "app-pointer-list.h"
#include "app-tip.h"
#include "app-words.h"

typedef char *(*DescribeLine) (const TmReportLine *line);

typedef struct {
  const char *title;
  DescribeLine describe;
  int width;       /* pixels */
  gboolean expand; /* takes what is left */
  gboolean number; /* set right */
} Column;

static char *
describe_balloon (const TmReportLine *line)
{
  return g_strdup (line->feature->balloon);
}

static char *
describe_piece (const TmReportLine *line)
{
  return g_strdup (line->piece != NULL ? line->piece->serial : "");
}

static char *
describe_requirement (const TmReportLine *line)
{
  g_autofree char *callout = tm_words_requirement (line->feature);
  if (line->feature->places <= 1)
    return g_steal_pointer (&callout);
  /* Translators: the place comes first, so that a long requirement cannot push it out of sight. */
  return g_strdup_printf (_ ("place %u: %s"), line->place, callout);
}

static char *
describe_limits (const TmReportLine *line)
{
  return tm_words_limits (line->feature);
}

/* "25.018", "pass", or "". */
static char *
describe_result (const TmReportLine *line)
{
  return tm_judgement_size_text (&line->judgement);
}

/* "in", "out, metal left", "too close", "not measured". */
static char *
describe_verdict (const TmReportLine *line)
{
  const TmJudgement *judgement = &line->judgement;
  const char *verdict = g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word (judgement->verdict));
  if (judgement->side == TM_SIDE_NONE)
    return g_strdup (verdict);
  return g_strdup_printf ("%s, %s", verdict,
                          g_dpgettext2 (GETTEXT_PACKAGE, "side", tm_side_word (judgement->side)));
}

static char *
describe_gauge (const TmReportLine *line)
{
  const TmJudgement *judgement = &line->judgement;
  return g_strdup (judgement->gauge != NULL ? judgement->gauge->tag : judgement->method_name);
}

static char *
describe_reference (const TmReportLine *line)
{
  return g_strdup (line->nonconformance != NULL ? line->nonconformance->number : "");
}

static const Column columns[] = {
  { N_ ("No."), describe_balloon, 76, FALSE, FALSE },
  { N_ ("Piece"), describe_piece, 76, FALSE, FALSE },
  { N_ ("Requirement"), describe_requirement, -1, TRUE, FALSE },
  { N_ ("Limits"), describe_limits, 170, FALSE, FALSE },
  { N_ ("Result"), describe_result, 100, FALSE, TRUE },
  { N_ ("Verdict"), describe_verdict, 130, FALSE, FALSE },
  { N_ ("Gauge"), describe_gauge, 86, FALSE, FALSE },
  { N_ ("Nonconf."), describe_reference, 96, FALSE, FALSE },
};

#define PIECE_COLUMN 1

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, const Column *column)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), column->number ? 1 : 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (label, "numeric");
  tm_tip_own_text (label);
  gtk_list_item_set_child (list_item, label);
}

/* "1 · Ø25 H7, 25.012: in", "6 · 4X Ø6.6 ±0.1, place 2, 6.61: in" */
static void
name_row (GtkWidget *cell, const TmReportLine *line)
{
  g_autofree char *whole = tm_words_feature (line->feature);
  g_autofree char *feature = line->feature->places > 1
                                 ? g_strdup_printf (_ ("%s, place %u"), whole, line->place)
                                 : g_steal_pointer (&whole);
  g_autofree char *result = describe_result (line);
  g_autofree char *verdict = describe_verdict (line);
  g_autofree char *name = g_strdup_printf ("%s, %s: %s", feature, result, verdict);
  tm_access_name_row (cell, name);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, const Column *column)
{
  GtkWidget *label = gtk_list_item_get_child (list_item);
  g_autofree char *text = column->describe (tm_pointer_item_get (gtk_list_item_get_item (list_item)));
  gtk_label_set_text (GTK_LABEL (label), text);
  if (column == &columns[0])
    name_row (label, tm_pointer_item_get (gtk_list_item_get_item (list_item)));
}

static void
add_column (GtkColumnView *view, const Column *column)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), (gpointer)column);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), (gpointer)column);
  g_autoptr (GtkColumnViewColumn) added
      = gtk_column_view_column_new (g_dgettext (GETTEXT_PACKAGE, column->title), factory);
  gtk_column_view_column_set_fixed_width (added, column->width);
  gtk_column_view_column_set_expand (added, column->expand);
  gtk_column_view_column_set_resizable (added, TRUE);
  gtk_column_view_append_column (view, added);
}

GtkWidget *
tm_report_table_new (GListModel *lines)
{
  GtkNoSelection *selection = gtk_no_selection_new (g_object_ref (lines));
  GtkWidget *view = gtk_column_view_new (GTK_SELECTION_MODEL (selection));
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    add_column (GTK_COLUMN_VIEW (view), &columns[i]);
  gtk_widget_add_css_class (view, "tm-table");
  tm_access_name_column_view (GTK_COLUMN_VIEW (view), _ ("Characteristics"));
  return view;
}

void
tm_report_table_show_pieces (GtkWidget *table, gboolean show)
{
  GListModel *all = gtk_column_view_get_columns (GTK_COLUMN_VIEW (table));
  g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (all, PIECE_COLUMN);
  gtk_column_view_column_set_visible (column, show);
}
