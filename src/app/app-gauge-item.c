/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauge-item.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-gauge-words.h"
#include "app-tip.h"
#include "app-words.h"

enum { TEXT_TAG, TEXT_KIND, TEXT_RANGE, TEXT_RESOLUTION, TEXT_LIMIT, TEXT_STATE, N_TEXTS };

struct _TmGaugeItem {
  GObject parent_instance;

  char *texts[N_TEXTS];
  char *found; /* folded: what a search looks through */
  TmDue due;
};

G_DEFINE_FINAL_TYPE (TmGaugeItem, tm_gauge_item, G_TYPE_OBJECT)

static void
tm_gauge_item_finalize (GObject *object)
{
  TmGaugeItem *self = TM_GAUGE_ITEM (object);

  for (guint i = 0; i < N_TEXTS; i++)
    g_free (self->texts[i]);
  g_free (self->found);
  G_OBJECT_CLASS (tm_gauge_item_parent_class)->finalize (object);
}

static void
tm_gauge_item_class_init (TmGaugeItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_gauge_item_finalize;
}

static void
tm_gauge_item_init (TmGaugeItem *self)
{
}

TmGaugeItem *
tm_gauge_item_new (const TmJob *job, const TmGauge *gauge, const char *today)
{
  TmGaugeItem *self = g_object_new (TM_TYPE_GAUGE_ITEM, NULL);
  g_autofree char *all = NULL;

  self->due = tm_gauge_due (job, gauge, today);
  self->texts[TEXT_TAG] = g_strdup (gauge->tag);
  self->texts[TEXT_KIND] = g_strdup (tm_words_gauge_kind (gauge->kind));
  self->texts[TEXT_RANGE] = tm_words_gauge_range (gauge);
  self->texts[TEXT_RESOLUTION] = tm_words_quantity (&gauge->resolution);
  /* What is made to a class has its limit by that. */
  self->texts[TEXT_LIMIT]
      = gauge->error_limit.given ? tm_words_limit (&gauge->error_limit) : tm_words_gauge_class (gauge);
  self->texts[TEXT_STATE] = tm_words_gauge_state (job, gauge, today);
  all = g_strjoin (" ", gauge->tag, self->texts[TEXT_KIND], gauge->kind, self->texts[TEXT_RANGE],
                   self->texts[TEXT_LIMIT], self->texts[TEXT_STATE], gauge->serial, gauge->owner,
                   gauge->place, gauge->certificate, NULL);
  self->found = g_utf8_casefold (all, -1);
  return self;
}

static gboolean
says_the_same (TmGaugeItem *a, TmGaugeItem *b)
{
  for (guint i = 0; i < N_TEXTS; i++)
    if (!g_str_equal (a->texts[i], b->texts[i]))
      return FALSE;
  return a->due == b->due && g_str_equal (a->found, b->found);
}

static gboolean
is_kept (GListStore *store, guint at, TmGaugeItem *fresh)
{
  g_autoptr (TmGaugeItem) old = g_list_model_get_item (G_LIST_MODEL (store), at);

  return says_the_same (old, fresh);
}

void
tm_gauge_items_refresh (GListStore *store, const TmJob *job, const char *today)
{
  g_autoptr (GPtrArray) fresh = g_ptr_array_new_with_free_func (g_object_unref);
  guint n_old = g_list_model_get_n_items (G_LIST_MODEL (store));
  guint n_new = job->gauges->len, head = 0, tail = 0;

  for (guint i = 0; i < n_new; i++)
    g_ptr_array_add (fresh, tm_gauge_item_new (job, g_ptr_array_index (job->gauges, i), today));
  while (head < MIN (n_old, n_new) && is_kept (store, head, g_ptr_array_index (fresh, head)))
    head++;
  while (tail < MIN (n_old, n_new) - head
         && is_kept (store, n_old - 1 - tail, g_ptr_array_index (fresh, n_new - 1 - tail)))
    tail++;
  if (n_old > head + tail || n_new > head + tail)
    g_list_store_splice (store, head, n_old - head - tail, fresh->pdata + head, n_new - head - tail);
}

const char *
tm_gauge_item_tag (TmGaugeItem *self)
{
  g_return_val_if_fail (TM_IS_GAUGE_ITEM (self), "");

  return self->texts[TEXT_TAG];
}

TmDue
tm_gauge_item_due (TmGaugeItem *self)
{
  g_return_val_if_fail (TM_IS_GAUGE_ITEM (self), TM_DUE_UNKNOWN);

  return self->due;
}

gboolean
tm_gauge_item_matches (TmGaugeItem *self, const char *search)
{
  g_autofree char *folded = g_utf8_casefold (search, -1);
  g_auto (GStrv) words = g_strsplit (folded, " ", -1);

  g_return_val_if_fail (TM_IS_GAUGE_ITEM (self), FALSE);

  for (guint i = 0; words[i] != NULL; i++)
    if (strstr (self->found, words[i]) == NULL)
      return FALSE;
  return TRUE;
}

static int
find_urgency (TmDue due)
{
  return due == TM_DUE_OVERDUE ? 0 : due == TM_DUE_SOON ? 1 : 2;
}

int
tm_gauge_item_compare (gconstpointer a, gconstpointer b, gpointer data)
{
  TmGaugeItem *one = (TmGaugeItem *)a, *other = (TmGaugeItem *)b;
  int urgency = find_urgency (one->due) - find_urgency (other->due);

  return urgency != 0 ? urgency : g_utf8_collate (one->texts[TEXT_TAG], other->texts[TEXT_TAG]);
}

typedef struct {
  const char *title;
  guint text;
  int width; /* pixels */
  gboolean expand;
} Column;

static const Column columns[] = {
  { N_ ("Tag"), TEXT_TAG, 102, FALSE },     { N_ ("Kind"), TEXT_KIND, 120, TRUE },
  { N_ ("Range"), TEXT_RANGE, 214, FALSE }, { N_ ("Reads"), TEXT_RESOLUTION, 92, FALSE },
  { N_ ("Error"), TEXT_LIMIT, 94, FALSE },  { N_ ("Calibration"), TEXT_STATE, 240, FALSE },
};

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, const Column *column)
{
  GtkWidget *cell = gtk_inscription_new (NULL);

  gtk_inscription_set_xalign (GTK_INSCRIPTION (cell), 0.0f);
  gtk_inscription_set_text_overflow (GTK_INSCRIPTION (cell), GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_END);
  gtk_widget_set_size_request (cell, column->expand ? column->width : -1, -1);
  gtk_widget_add_css_class (cell, "numeric");
  tm_tip_own_text (cell);
  gtk_list_item_set_child (list_item, cell);
}

/* "BM-2, three-point bore micrometer: overdue since 2 Mar 2026" */
static void
name_row (GtkWidget *cell, TmGaugeItem *item)
{
  g_autofree char *name = g_strdup_printf ("%s, %s: %s", item->texts[TEXT_TAG], item->texts[TEXT_KIND],
                                           item->texts[TEXT_STATE]);

  tm_access_name_row (cell, name);
}

static void
mark_due (GtkWidget *cell, TmDue due)
{
  gtk_widget_remove_css_class (cell, "tm-overdue");
  gtk_widget_remove_css_class (cell, "tm-soon");
  if (due == TM_DUE_OVERDUE)
    gtk_widget_add_css_class (cell, "tm-overdue");
  else if (due == TM_DUE_SOON)
    gtk_widget_add_css_class (cell, "tm-soon");
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, const Column *column)
{
  GtkWidget *cell = gtk_list_item_get_child (list_item);
  TmGaugeItem *item = gtk_list_item_get_item (list_item);
  const char *text = item->texts[column->text];
  const char *mark = column->text == TEXT_STATE ? tm_words_due_mark (item->due) : "";
  g_autofree char *shown = g_strconcat (mark, text, NULL);
  g_autofree char *spoken = g_strdup_printf ("%s: %s", g_dgettext (GETTEXT_PACKAGE, column->title), text);

  gtk_inscription_set_text (GTK_INSCRIPTION (cell), shown);
  tm_name_widget (cell, spoken);
  if (column->text == TEXT_STATE)
    mark_due (cell, item->due);
  if (column->text == TEXT_TAG)
    name_row (cell, item);
}

static int
compare_texts (gconstpointer a, gconstpointer b, gpointer data)
{
  const Column *column = data;
  TmGaugeItem *one = (TmGaugeItem *)a, *other = (TmGaugeItem *)b;

  if (column->text == TEXT_STATE)
    return find_urgency (one->due) - find_urgency (other->due);
  return g_utf8_collate (one->texts[column->text], other->texts[column->text]);
}

static void
add_column (GtkColumnView *view, const Column *kind)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) column
      = gtk_column_view_column_new (g_dgettext (GETTEXT_PACKAGE, kind->title), factory);

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), (gpointer)kind);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), (gpointer)kind);
  gtk_column_view_column_set_resizable (column, TRUE);
  gtk_column_view_column_set_expand (column, kind->expand);
  if (!kind->expand)
    gtk_column_view_column_set_fixed_width (column, kind->width);
  if (kind->text == TEXT_TAG || kind->text == TEXT_KIND || kind->text == TEXT_STATE)
    {
      g_autoptr (GtkSorter) sorter = GTK_SORTER (gtk_custom_sorter_new (compare_texts, (gpointer)kind, NULL));

      gtk_column_view_column_set_sorter (column, sorter);
    }
  gtk_column_view_append_column (view, column);
}

void
tm_gauge_add_columns (GtkColumnView *view)
{
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    add_column (view, &columns[i]);
}
