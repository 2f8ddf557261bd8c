/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-recall-list.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-entry-words.h"
#include "app-feature-words.h"
#include "app-pointer-list.h"
#include "app-tip.h"
#include "app-words.h"
#include "exchange-recall.h"

static void
free_line (TmRecallLine *line)
{
  g_free (line->job);
  g_free (line->piece);
  g_free (line->feature);
  g_free (line->value);
  g_free (line->time);
  g_free (line->before);
  g_free (line->after);
  g_free (line);
}

void
tm_recall_list_free (TmRecallList *list)
{
  g_ptr_array_unref (list->lines);
  g_string_free (list->table, TRUE);
  g_free (list);
}

/* "out, metal gone" */
static char *
describe_verdict (TmVerdict verdict, TmSide side)
{
  const char *word = g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word (verdict));

  if (side == TM_SIDE_NONE)
    return g_strdup (word);
  return g_strdup_printf ("%s, %s", word, g_dpgettext2 (GETTEXT_PACKAGE, "side", tm_side_word (side)));
}

static char *
describe_trial (const TmPinTrial *trial)
{
  g_autofree char *size = tm_words_quantity (&trial->size);

  return g_strdup_printf (trial->went ? _ ("pin %s went") : _ ("pin %s did not go"), size);
}

/* "1 · Ø25 H7, mouth 12" */
static char *
describe_spot (const TmFeature *feature, guint place, const char *station)
{
  g_autofree char *name = tm_words_feature (feature);
  g_autofree char *spot = tm_words_spot (feature, place, station);

  return *spot != '\0' ? g_strdup_printf ("%s, %s", name, spot) : g_steal_pointer (&name);
}

static TmRecallLine *
new_line (const TmJob *job, const TmRecallRow *row, gboolean with_error)
{
  TmRecallLine *line = g_new0 (TmRecallLine, 1);
  const TmEntryRow *entry = row->reading != NULL ? &row->reading->row : &row->trial->row;
  guint place = row->reading != NULL ? row->reading->place : row->trial->place;
  const char *station = row->reading != NULL ? row->reading->station : "";

  line->job = tm_words_job_title (job->part_number, job->part_name, job->revision);
  line->piece = g_strdup (entry->piece->serial);
  line->feature = describe_spot (entry->feature, place, station);
  line->value = row->reading != NULL ? tm_words_reading (row->reading) : describe_trial (row->trial);
  line->time = tm_words_time (entry->at);
  line->before = describe_verdict (row->before, row->side_before);
  /* Without an error nothing was taken out. */
  line->after = with_error ? describe_verdict (row->after, row->side_after) : g_strdup ("");
  line->changes = tm_recall_changes (row);
  return line;
}

static void
add_job (TmRecallList *list, GPtrArray *others, const TmJob *job, const GArray *rows)
{
  for (guint i = 0; i < rows->len; i++)
    {
      const TmRecallRow *row = &g_array_index (rows, TmRecallRow, i);

      g_ptr_array_add (tm_recall_changes (row) ? list->lines : others, new_line (job, row, list->with_error));
    }
  list->n_jobs += rows->len > 0 ? 1 : 0;
  list->n_changes += tm_recall_count_changes (rows);
}

TmRecallList *
tm_recall_list_new (const GPtrArray *jobs, const char *tag, const char *good_until, const TmQuantity *error)
{
  TmRecallList *list = g_new0 (TmRecallList, 1);
  GPtrArray *others = g_ptr_array_new ();

  list->lines = g_ptr_array_new_with_free_func ((GDestroyNotify)free_line);
  list->table = g_string_new (NULL);
  tm_recall_table_begin (list->table);
  list->with_error = error != NULL && error->given;
  for (guint i = 0; i < jobs->len; i++)
    {
      const TmJob *job = g_ptr_array_index (jobs, i);
      g_autoptr (GArray) rows = tm_recall (job, tag, good_until, list->with_error ? error : NULL);

      add_job (list, others, job, rows);
      tm_recall_table_add (list->table, job, rows);
    }
  g_ptr_array_extend_and_steal (list->lines, others);
  return list;
}

char *
tm_recall_list_summary (const TmRecallList *list)
{
  guint n = list->lines->len;
  g_autofree char *jobs = g_strdup_printf (ngettext ("%u job", "%u jobs", list->n_jobs), list->n_jobs);
  g_autofree char *readings = NULL;
  g_autofree char *changes = NULL;

  if (n == 0)
    return g_strdup (_ ("Nothing was measured with it since."));
  /* Translators: "38 readings in 3 jobs". */
  readings = g_strdup_printf (ngettext ("%u reading in %s", "%u readings in %s", n), n, jobs);
  if (!list->with_error)
    return g_steal_pointer (&readings);
  changes = g_strdup_printf (
      ngettext ("%u verdict would change", "%u verdicts would change", list->n_changes), list->n_changes);
  return g_strdup_printf ("%s; %s", readings, changes);
}

/* -------- The table -------- */

typedef struct {
  const char *title;
  gsize text; /* offset of a char * in the line */
  int width;  /* pixels */
  gboolean expand;
} Column;

static const Column columns[] = {
  { N_ ("Job"), G_STRUCT_OFFSET (TmRecallLine, job), 120, TRUE },
  { N_ ("Piece"), G_STRUCT_OFFSET (TmRecallLine, piece), 80, FALSE },
  { N_ ("Feature"), G_STRUCT_OFFSET (TmRecallLine, feature), 120, TRUE },
  { N_ ("Reading"), G_STRUCT_OFFSET (TmRecallLine, value), 110, FALSE },
  { N_ ("Time"), G_STRUCT_OFFSET (TmRecallLine, time), 150, FALSE },
  { N_ ("Verdict"), G_STRUCT_OFFSET (TmRecallLine, before), 120, FALSE },
  { N_ ("With the error taken out"), G_STRUCT_OFFSET (TmRecallLine, after), 180, FALSE },
};

static const char *
get_text (const TmRecallLine *line, const Column *column)
{
  return G_STRUCT_MEMBER (const char *, line, column->text);
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, const Column *column)
{
  GtkWidget *cell = gtk_inscription_new (NULL);

  gtk_inscription_set_xalign (GTK_INSCRIPTION (cell), 0.0f);
  gtk_inscription_set_text_overflow (GTK_INSCRIPTION (cell), GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_END);
  gtk_widget_add_css_class (cell, "numeric");
  tm_tip_own_text (cell);
  gtk_list_item_set_child (list_item, cell);
}

static void
name_row (GtkWidget *cell, const TmRecallLine *line)
{
  g_autofree char *name
      = line->changes ? g_strdup_printf (_ ("%s, piece %s, %s: %s, %s, would be %s"), line->job, line->piece,
                                         line->feature, line->value, line->before, line->after)
                      : g_strdup_printf (_ ("%s, piece %s, %s: %s, %s"), line->job, line->piece,
                                         line->feature, line->value, line->before);

  tm_access_name_row (cell, name);
}

/* A verdict that would change has a mark before it, as well as weight. */
static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, const Column *column)
{
  GtkWidget *cell = gtk_list_item_get_child (list_item);
  const TmRecallLine *line = tm_pointer_item_get (gtk_list_item_get_item (list_item));
  gboolean marked = line->changes && column == &columns[G_N_ELEMENTS (columns) - 1];
  g_autofree char *text = g_strconcat (marked ? "▲ " : "", get_text (line, column), NULL);
  g_autofree char *spoken
      = g_strdup_printf ("%s: %s", g_dgettext (GETTEXT_PACKAGE, column->title), get_text (line, column));

  gtk_inscription_set_text (GTK_INSCRIPTION (cell), text);
  tm_name_widget (cell, spoken);
  if (marked)
    gtk_widget_add_css_class (cell, "tm-overdue");
  else
    gtk_widget_remove_css_class (cell, "tm-overdue");
  if (column == &columns[0])
    name_row (cell, line);
}

void
tm_recall_add_columns (GtkColumnView *view)
{
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
      g_autoptr (GtkColumnViewColumn) column
          = gtk_column_view_column_new (g_dgettext (GETTEXT_PACKAGE, columns[i].title), factory);

      g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), (gpointer)&columns[i]);
      g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), (gpointer)&columns[i]);
      gtk_column_view_column_set_resizable (column, TRUE);
      gtk_column_view_column_set_expand (column, columns[i].expand);
      if (!columns[i].expand)
        gtk_column_view_column_set_fixed_width (column, columns[i].width);
      gtk_column_view_append_column (view, column);
    }
}
