/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-drawing-list.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-edit-drawing.h"
#include "app-feature-words.h"
#include "app-job-item.h"

struct _TmDrawingList {
  GtkBox parent_instance;

  TmDocument *document;
  GListStore *items; /* TmJobItem */
  GtkSingleSelection *selection;
  GHashTable *placed; /* balloon numbers with a mark: a set of borrowed texts */
  guint n_placed;
  gboolean following;

  GtkLabel *count;
  GtkWidget *view;
};

enum { SIGNAL_CHOSEN, SIGNAL_ACTIVATED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmDrawingList, tm_drawing_list, GTK_TYPE_BOX)

/* -------- Rows -------- */

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
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, TmDrawingList *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkLabel *number = add_label (row, "tm-balloon-number");
  GtkLabel *requirement = add_label (row, "tm-balloon-requirement");
  GtkLabel *where = add_label (row, "dim-label");

  gtk_label_set_width_chars (number, 3);
  gtk_label_set_max_width_chars (number, 6);
  gtk_widget_set_hexpand (GTK_WIDGET (requirement), TRUE);
  gtk_label_set_ellipsize (where, PANGO_ELLIPSIZE_NONE);
  gtk_list_item_set_child (list_item, row);
}

static void
fill_row (TmDrawingList *self, GtkWidget *row, const TmFeature *feature)
{
  GtkWidget *number = gtk_widget_get_first_child (row);
  GtkWidget *requirement = gtk_widget_get_next_sibling (number);
  GtkWidget *where = gtk_widget_get_next_sibling (requirement);
  gboolean placed = g_hash_table_contains (self->placed, feature->balloon);
  /* Translators: of a balloon: whether it stands on the drawing. */
  const char *word = placed ? _ ("placed") : _ ("not yet");
  g_autofree char *text = tm_words_requirement (feature);
  g_autofree char *line = tm_words_feature (feature);
  g_autofree char *sentence = g_strdup_printf ("%s, %s", line, word);

  gtk_label_set_text (GTK_LABEL (number), feature->balloon);
  gtk_label_set_text (GTK_LABEL (requirement), text);
  gtk_label_set_text (GTK_LABEL (where), word);
  gtk_widget_set_tooltip_text (row, line);
  tm_access_name_row (number, sentence);
}

static void
changed_cb (TmJobItem *item, GtkWidget *row)
{
  TmDrawingList *self = TM_DRAWING_LIST (gtk_widget_get_ancestor (row, TM_TYPE_DRAWING_LIST));

  if (self != NULL)
    fill_row (self, row, tm_job_item_feature (item));
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, TmDrawingList *self)
{
  TmJobItem *item = gtk_list_item_get_item (list_item);
  GtkWidget *row = gtk_list_item_get_child (list_item);

  fill_row (self, row, tm_job_item_feature (item));
  g_signal_connect (item, "changed", G_CALLBACK (changed_cb), row);
}

static void
unbind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, TmDrawingList *self)
{
  g_signal_handlers_disconnect_by_data (gtk_list_item_get_item (list_item),
                                        gtk_list_item_get_child (list_item));
}

/* -------- The list -------- */

static void
selected_cb (TmDrawingList *self)
{
  if (!self->following)
    g_signal_emit (self, signals[SIGNAL_CHOSEN], 0);
}

static void
activated_cb (GtkListView *view, guint position, TmDrawingList *self)
{
  gtk_single_selection_set_selected (self->selection, position);
  g_signal_emit (self, signals[SIGNAL_ACTIVATED], 0);
}

static void
take_placed (TmDrawingList *self, const TmJob *job)
{
  g_hash_table_remove_all (self->placed);
  for (guint i = 0; i < job->balloon_marks->len; i++)
    g_hash_table_add (self->placed,
                      (gpointer)((const TmBalloonMark *)g_ptr_array_index (job->balloon_marks, i))->feature);
  self->n_placed = 0;
  for (guint i = 0; i < job->features->len; i++)
    if (g_hash_table_contains (self->placed,
                               ((const TmFeature *)g_ptr_array_index (job->features, i))->balloon))
      self->n_placed++;
}

static void
show_count (TmDrawingList *self)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (self->items));
  g_autofree char *text = n > 0 ? g_strdup_printf (_ ("%u of %u placed"), self->n_placed, n) : g_strdup ("");

  gtk_label_set_text (self->count, text);
}

static void
definitions_changed_cb (TmDrawingList *self)
{
  const TmJob *job = tm_document_job (self->document);

  self->following = TRUE;
  take_placed (self, job);
  tm_job_items_refresh (self->items, job);
  show_count (self);
  self->following = FALSE;
}

static void
tm_drawing_list_dispose (GObject *object)
{
  TmDrawingList *self = TM_DRAWING_LIST (object);

  tm_drawing_list_set_document (self, NULL);
  if (self->view != NULL)
    gtk_list_view_set_model (GTK_LIST_VIEW (self->view), NULL);
  self->view = NULL;
  g_clear_object (&self->selection);
  g_clear_object (&self->items);
  G_OBJECT_CLASS (tm_drawing_list_parent_class)->dispose (object);
}

static void
tm_drawing_list_finalize (GObject *object)
{
  g_hash_table_unref (TM_DRAWING_LIST (object)->placed);
  G_OBJECT_CLASS (tm_drawing_list_parent_class)->finalize (object);
}

static void
tm_drawing_list_class_init (TmDrawingListClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  object_class->dispose = tm_drawing_list_dispose;
  object_class->finalize = tm_drawing_list_finalize;
  signals[SIGNAL_CHOSEN]
      = g_signal_new ("chosen", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_ACTIVATED]
      = g_signal_new ("activated", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static GtkWidget *
build_head (TmDrawingList *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkLabel *title = add_label (head, "heading");

  gtk_label_set_text (title, _ ("Balloons"));
  gtk_widget_set_hexpand (GTK_WIDGET (title), TRUE);
  self->count = add_label (head, "dim-label");
  gtk_widget_add_css_class (GTK_WIDGET (self->count), "numeric");
  gtk_widget_add_css_class (head, "tm-list-header");
  return head;
}

static GtkWidget *
build_view (TmDrawingList *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkWidget *scroller = gtk_scrolled_window_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), self);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), self);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_cb), self);
  self->view = gtk_list_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)), factory);
  g_signal_connect (self->view, "activate", G_CALLBACK (activated_cb), self);
  gtk_widget_add_css_class (self->view, "navigation-sidebar");
  gtk_widget_add_css_class (self->view, "tm-drawing-list");
  tm_name_widget (self->view, _ ("Balloons"));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->view);
  gtk_widget_set_vexpand (scroller, TRUE);
  return scroller;
}

static void
tm_drawing_list_init (TmDrawingList *self)
{
  self->items = g_list_store_new (TM_TYPE_JOB_ITEM);
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->items)));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  self->placed = g_hash_table_new (g_str_hash, g_str_equal);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_append (GTK_BOX (self), build_head (self));
  gtk_box_append (GTK_BOX (self), build_view (self));
  g_signal_connect_swapped (self->selection, "notify::selected", G_CALLBACK (selected_cb), self);
}

GtkWidget *
tm_drawing_list_new (void)
{
  return g_object_new (TM_TYPE_DRAWING_LIST, NULL);
}

void
tm_drawing_list_set_document (TmDrawingList *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_DRAWING_LIST (self));

  if (self->document == document)
    return;
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  self->following = TRUE;
  g_list_store_remove_all (self->items);
  self->following = FALSE;
  g_hash_table_remove_all (self->placed);
  g_set_object (&self->document, document);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
  definitions_changed_cb (self);
}

const char *
tm_drawing_list_chosen (TmDrawingList *self)
{
  TmJobItem *item;

  g_return_val_if_fail (TM_IS_DRAWING_LIST (self), NULL);

  item = gtk_single_selection_get_selected_item (self->selection);
  return item != NULL ? tm_job_item_feature (item)->balloon : NULL;
}

static guint
find_position (TmDrawingList *self, const char *balloon)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (self->items));

  for (guint i = 0; balloon != NULL && i < n; i++)
    {
      g_autoptr (TmJobItem) item = g_list_model_get_item (G_LIST_MODEL (self->items), i);

      if (g_str_equal (tm_job_item_feature (item)->balloon, balloon))
        return i;
    }
  return GTK_INVALID_LIST_POSITION;
}

void
tm_drawing_list_choose (TmDrawingList *self, const char *balloon)
{
  guint at;

  g_return_if_fail (TM_IS_DRAWING_LIST (self));

  at = find_position (self, balloon);
  self->following = TRUE;
  gtk_single_selection_set_selected (self->selection, at);
  self->following = FALSE;
  if (at != GTK_INVALID_LIST_POSITION)
    gtk_widget_activate_action (self->view, "list.scroll-to-item", "u", at);
}

guint
tm_drawing_list_count (TmDrawingList *self, guint *n_placed)
{
  g_return_val_if_fail (TM_IS_DRAWING_LIST (self), 0);

  if (n_placed != NULL)
    *n_placed = self->n_placed;
  return g_list_model_get_n_items (G_LIST_MODEL (self->items));
}
