/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-feature-list.h"

#include <glib/gi18n-lib.h>

#include "app-feature-item.h"
#include "app-feature-row.h"

/* Rows judged in one idle turn: small, so that a keystroke never waits behind them. */
#define IDLE_CHUNK 4
/* Rows either side of the selected one that are judged as they appear, before a first layout. */
#define NEAR_ROWS 24

struct _TmFeatureList {
  GtkBox parent_instance;

  TmDocument *document;
  GListStore *items; /* TmFeatureItem, in the job's order */
  GtkSingleSelection *selection;
  GHashTable *positions; /* TmFeature -> position + 1 */
  GPtrArray *rows;       /* TmFeatureRow: bound now; borrowed */
  const TmPiece *piece;  /* shown now */
  guint piece_index;
  guint n_due;
  guint n_measured;
  guint idle_id;
  gboolean following;

  GtkWidget *header;
  GtkWidget *title;
  GtkLabel *count;
  GtkWidget *scroller;
  GtkWidget *view;
};

enum { SIGNAL_CHOSEN, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmFeatureList, tm_feature_list, GTK_TYPE_BOX)

static gboolean
is_stale (TmFeatureList *self, TmFeatureRow *row)
{
  return !tm_feature_item_is_fresh (tm_feature_row_item (row), self->piece);
}

static void
judge_row (TmFeatureList *self, TmFeatureRow *row)
{
  TmFeatureItem *item = tm_feature_row_item (row);
  if (!tm_feature_item_is_fresh (item, self->piece))
    tm_feature_item_judge (item, tm_document_job (self->document), self->piece, self->piece_index);
  tm_feature_row_update (row);
}

static gboolean
is_in_sight (TmFeatureList *self, TmFeatureRow *row)
{
  graphene_rect_t bounds;
  if (!gtk_widget_compute_bounds (GTK_WIDGET (row), self->scroller, &bounds) || bounds.size.height <= 0)
    return FALSE;
  return bounds.origin.y < (float)gtk_widget_get_height (self->scroller)
         && bounds.origin.y + bounds.size.height > 0;
}

static gboolean
judge_some_cb (gpointer data)
{
  TmFeatureList *self = data;
  guint n_judged = 0;
  for (guint i = 0; i < self->rows->len; i++)
    {
      TmFeatureRow *row = g_ptr_array_index (self->rows, i);
      if (!is_stale (self, row))
        continue;
      if (n_judged == IDLE_CHUNK)
        return G_SOURCE_CONTINUE;
      judge_row (self, row);
      n_judged++;
    }
  self->idle_id = 0;
  return G_SOURCE_REMOVE;
}

static void
judge_rest_when_idle (TmFeatureList *self)
{
  if (self->idle_id == 0)
    self->idle_id = g_idle_add_full (G_PRIORITY_LOW, judge_some_cb, self, NULL);
}

static void
judge_in_sight (TmFeatureList *self)
{
  gboolean rest = FALSE;
  for (guint i = 0; i < self->rows->len; i++)
    {
      TmFeatureRow *row = g_ptr_array_index (self->rows, i);
      if (!is_stale (self, row))
        continue;
      if (is_in_sight (self, row))
        judge_row (self, row);
      else
        rest = TRUE;
    }
  if (rest)
    judge_rest_when_idle (self);
}

static void
show_count (TmFeatureList *self)
{
  g_autofree char *text = g_strdup_printf (_ ("%u of %u measured"), self->n_measured, self->n_due);
  gtk_label_set_text (self->count, self->n_due > 0 ? text : "");
}

static void
count_measured (TmFeatureList *self)
{
  const TmJob *job = tm_document_job (self->document);
  self->n_due = self->n_measured = 0;
  for (guint i = 0; self->piece != NULL && i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);
      gboolean measured = tm_feature_is_measured (job, self->piece, feature);
      if (measured || tm_job_feature_is_due (job, feature, self->piece, self->piece_index))
        self->n_due++;
      if (measured)
        self->n_measured++;
    }
  show_count (self);
}

static void
setup_row_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, TmFeatureList *self)
{
  gtk_list_item_set_child (list_item, tm_feature_row_new ());
}

static void
bind_row_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, TmFeatureList *self)
{
  TmFeatureRow *row = TM_FEATURE_ROW (gtk_list_item_get_child (list_item));
  TmFeatureItem *item = gtk_list_item_get_item (list_item);
  guint selected = gtk_single_selection_get_selected (self->selection);
  guint position = gtk_list_item_get_position (list_item);
  tm_feature_row_set_item (row, item);
  g_ptr_array_add (self->rows, row);
  if (selected == GTK_INVALID_LIST_POSITION)
    selected = 0;
  if (tm_feature_item_is_fresh (item, self->piece)
      || (position + NEAR_ROWS >= selected && position <= selected + NEAR_ROWS))
    judge_row (self, row);
  else
    judge_rest_when_idle (self);
}

static void
unbind_row_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, TmFeatureList *self)
{
  TmFeatureRow *row = TM_FEATURE_ROW (gtk_list_item_get_child (list_item));
  g_ptr_array_remove_fast (self->rows, row);
  tm_feature_row_set_item (row, NULL);
}

static void
selected_cb (GtkSingleSelection *selection, GParamSpec *pspec, TmFeatureList *self)
{
  TmFeatureItem *item = gtk_single_selection_get_selected_item (selection);
  if (self->following || item == NULL)
    return;
  g_signal_emit (self, signals[SIGNAL_CHOSEN], 0, tm_feature_item_feature (item));
}

static void
scrolled_cb (GtkAdjustment *adjustment, TmFeatureList *self)
{
  judge_rest_when_idle (self);
}

static void
tm_feature_list_dispose (GObject *object)
{
  TmFeatureList *self = TM_FEATURE_LIST (object);
  g_clear_handle_id (&self->idle_id, g_source_remove);
  if (self->view != NULL)
    gtk_list_view_set_model (GTK_LIST_VIEW (self->view), NULL);
  self->view = NULL;
  g_clear_object (&self->document);
  G_OBJECT_CLASS (tm_feature_list_parent_class)->dispose (object);
}

static void
tm_feature_list_finalize (GObject *object)
{
  TmFeatureList *self = TM_FEATURE_LIST (object);
  g_clear_object (&self->items);
  g_clear_object (&self->selection);
  g_clear_pointer (&self->positions, g_hash_table_unref);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  G_OBJECT_CLASS (tm_feature_list_parent_class)->finalize (object);
}

static void
tm_feature_list_class_init (TmFeatureListClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  object_class->dispose = tm_feature_list_dispose;
  object_class->finalize = tm_feature_list_finalize;
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                         NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
}

static void
build_header (TmFeatureList *self)
{
  self->header = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gtk_widget_add_css_class (self->header, "tm-list-header");
  self->title = gtk_label_new (_ ("Features"));
  gtk_widget_add_css_class (self->title, "dim-label");
  gtk_label_set_ellipsize (GTK_LABEL (self->title), PANGO_ELLIPSIZE_END);
  gtk_label_set_xalign (GTK_LABEL (self->title), 0);
  gtk_widget_set_hexpand (self->title, TRUE);
  gtk_box_append (GTK_BOX (self->header), self->title);
  self->count = GTK_LABEL (gtk_label_new (NULL));
  gtk_widget_add_css_class (GTK_WIDGET (self->count), "dim-label");
  gtk_widget_add_css_class (GTK_WIDGET (self->count), "numeric");
  gtk_box_append (GTK_BOX (self->header), GTK_WIDGET (self->count));
  gtk_box_append (GTK_BOX (self), self->header);
}

static void
build_view (TmFeatureList *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_signal_connect (factory, "setup", G_CALLBACK (setup_row_cb), self);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_row_cb), self);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_row_cb), self);
  self->view = gtk_list_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)), factory);
  gtk_widget_add_css_class (self->view, "navigation-sidebar");
  gtk_widget_add_css_class (self->view, "tm-feature-list");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Features"),
                                  -1);
  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), self->view);
  gtk_widget_set_vexpand (self->scroller, TRUE);
  gtk_box_append (GTK_BOX (self), self->scroller);
  g_signal_connect (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller)),
                    "value-changed", G_CALLBACK (scrolled_cb), self);
}

static void
tm_feature_list_init (TmFeatureList *self)
{
  self->items = g_list_store_new (TM_TYPE_FEATURE_ITEM);
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->items)));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  self->positions = g_hash_table_new (NULL, NULL);
  self->rows = g_ptr_array_new ();
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-features");
  /* The column keeps its width though its rows fill it. */
  gtk_widget_set_hexpand (GTK_WIDGET (self), FALSE);
  build_header (self);
  build_view (self);
  g_signal_connect (self->selection, "notify::selected", G_CALLBACK (selected_cb), self);
}

GtkWidget *
tm_feature_list_new (void)
{
  return g_object_new (TM_TYPE_FEATURE_LIST, NULL);
}

void
tm_feature_list_set_menu (TmFeatureList *self, GtkWidget *button)
{
  g_return_if_fail (TM_IS_FEATURE_LIST (self));

  gtk_box_append (GTK_BOX (self->header), button);
}

static guint
find_piece_index (const TmJob *job, const TmPiece *piece)
{
  guint index = 0;
  return piece != NULL && g_ptr_array_find (job->pieces, piece, &index) ? index : 0;
}

static void
follow_piece (TmFeatureList *self, const TmPiece *piece)
{
  self->piece = piece;
  self->piece_index = find_piece_index (tm_document_job (self->document), piece);
  count_measured (self);
  judge_in_sight (self);
}

void
tm_feature_list_set_titled (TmFeatureList *self, gboolean titled)
{
  g_return_if_fail (TM_IS_FEATURE_LIST (self));

  gtk_widget_set_visible (self->title, titled);
  gtk_label_set_xalign (self->count, 0);
  gtk_widget_set_hexpand (GTK_WIDGET (self->count), !titled);
}

void
tm_feature_list_reload (TmFeatureList *self)
{
  g_return_if_fail (TM_IS_FEATURE_LIST (self));

  g_autoptr (GPtrArray) items = g_ptr_array_new_with_free_func (g_object_unref);
  self->following = TRUE;
  g_hash_table_remove_all (self->positions);
  if (self->document != NULL)
    {
      const TmJob *job = tm_document_job (self->document);
      self->piece = tm_bench_spot (tm_document_bench (self->document))->piece;
      self->piece_index = find_piece_index (job, self->piece);
      for (guint i = 0; i < job->features->len; i++)
        {
          TmFeature *feature = g_ptr_array_index (job->features, i);
          g_ptr_array_add (items, tm_feature_item_new (feature));
          g_hash_table_insert (self->positions, feature, GUINT_TO_POINTER (i + 1));
        }
    }
  g_list_store_splice (self->items, 0, g_list_model_get_n_items (G_LIST_MODEL (self->items)), items->pdata,
                       items->len);
  self->following = FALSE;
  if (self->document == NULL)
    return;
  count_measured (self);
  tm_feature_list_follow (self);
}

void
tm_feature_list_set_document (TmFeatureList *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_FEATURE_LIST (self));

  g_set_object (&self->document, document);
  tm_feature_list_reload (self);
}

void
tm_feature_list_reveal (TmFeatureList *self)
{
  g_return_if_fail (TM_IS_FEATURE_LIST (self));

  guint position = gtk_single_selection_get_selected (self->selection);
  if (position != GTK_INVALID_LIST_POSITION)
    gtk_widget_activate_action (self->view, "list.scroll-to-item", "u", position);
}

static void
show_position (TmFeatureList *self, guint position)
{
  self->following = TRUE;
  gtk_single_selection_set_selected (self->selection, position);
  self->following = FALSE;
  tm_feature_list_reveal (self);
}

void
tm_feature_list_follow (TmFeatureList *self)
{
  g_return_if_fail (TM_IS_FEATURE_LIST (self));

  const TmSpot *spot = tm_bench_spot (tm_document_bench (self->document));
  guint found = GPOINTER_TO_UINT (g_hash_table_lookup (self->positions, spot->feature));
  guint position = found > 0 ? found - 1 : GTK_INVALID_LIST_POSITION;
  if (spot->piece != self->piece)
    follow_piece (self, spot->piece);
  if (position != gtk_single_selection_get_selected (self->selection))
    show_position (self, position);
}

static TmFeatureRow *
find_row (TmFeatureList *self, const TmFeature *feature)
{
  for (guint i = 0; i < self->rows->len; i++)
    {
      TmFeatureRow *row = g_ptr_array_index (self->rows, i);
      if (tm_feature_item_feature (tm_feature_row_item (row)) == feature)
        return row;
    }
  return NULL;
}

static void
touch_one (TmFeatureList *self, const TmFeature *feature)
{
  guint found = GPOINTER_TO_UINT (g_hash_table_lookup (self->positions, feature));
  if (found == 0)
    return;
  g_autoptr (TmFeatureItem) item = g_list_model_get_item (G_LIST_MODEL (self->items), found - 1);
  TmFeatureRow *row = find_row (self, feature);
  tm_feature_item_invalidate (item);
  if (row != NULL)
    judge_row (self, row);
}

void
tm_feature_list_touch (TmFeatureList *self, const TmFeature *feature)
{
  g_return_if_fail (TM_IS_FEATURE_LIST (self));

  const TmJob *job = tm_document_job (self->document);
  touch_one (self, feature);
  /* A size gives its bonus to the positions that name it. */
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *other = g_ptr_array_index (job->features, i);
      if (*other->size_feature != '\0' && g_str_equal (other->size_feature, feature->balloon))
        touch_one (self, other);
    }
  count_measured (self);
}

guint
tm_feature_list_count_judged (TmFeatureList *self)
{
  g_return_val_if_fail (TM_IS_FEATURE_LIST (self), 0);

  guint n_judged = 0;
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->items)); i++)
    {
      g_autoptr (TmFeatureItem) item = g_list_model_get_item (G_LIST_MODEL (self->items), i);
      n_judged += tm_feature_item_is_fresh (item, self->piece) ? 1 : 0;
    }
  return n_judged;
}
