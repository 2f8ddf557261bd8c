/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-drawing-list.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-drawing-row.h"
#include "app-edit-drawing.h"
#include "app-feature-words.h"
#include "plot-balloon.h"

/* Pixels: for a finger too. */
#define ARROW_WIDTH 28

struct _TmDrawingList {
  GtkBox parent_instance;

  TmDocument *document;
  GListStore *items; /* TmDrawingRow */
  GtkSingleSelection *selection;
  GHashTable *placed;   /* balloon number -> GHashTable: the set of its places that have a mark */
  GHashTable *unfolded; /* a set of TmFeature, borrowed: those whose places are listed */
  guint n_features, n_placed;
  gboolean any_places; /* a feature has several, so that rows have room for the arrow */
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

static TmDrawingList *
get_list (GtkWidget *row)
{
  return TM_DRAWING_LIST (gtk_widget_get_ancestor (row, TM_TYPE_DRAWING_LIST));
}

static void
refresh (TmDrawingList *self)
{
  self->following = TRUE;
  tm_drawing_rows_refresh (self->items, tm_document_job (self->document), self->unfolded);
  self->following = FALSE;
}

/* The place that was chosen goes with those that are folded away, and the feature is chosen instead. */
static void
fold (TmDrawingList *self, const TmFeature *feature, gboolean unfolds)
{
  const char *chosen = tm_drawing_list_chosen (self);
  const gboolean goes
      = !unfolds && tm_drawing_list_place (self) > 0 && g_strcmp0 (chosen, feature->balloon) == 0;

  if (feature->places <= 1 || g_hash_table_contains (self->unfolded, feature) == unfolds)
    return;
  if (unfolds)
    g_hash_table_add (self->unfolded, (gpointer)feature);
  else
    g_hash_table_remove (self->unfolded, feature);
  refresh (self);
  if (!goes)
    return;
  tm_drawing_list_choose (self, feature->balloon, 0);
  g_signal_emit (self, signals[SIGNAL_CHOSEN], 0);
}

static void
arrow_cb (GtkGestureClick *click, int n_press, double x, double y, GtkListItem *list_item)
{
  TmDrawingRow *row = gtk_list_item_get_item (list_item);
  TmDrawingList *self = row != NULL ? get_list (gtk_list_item_get_child (list_item)) : NULL;

  if (self == NULL || tm_drawing_row_place (row) > 0 || tm_drawing_row_feature (row)->places <= 1)
    return;
  gtk_gesture_set_state (GTK_GESTURE (click), GTK_EVENT_SEQUENCE_CLAIMED);
  fold (self, tm_drawing_row_feature (row),
        !g_hash_table_contains (self->unfolded, tm_drawing_row_feature (row)));
}

/* With the pointer; the arrow keys do the same. */
static void
add_arrow (GtkWidget *box, GtkListItem *list_item)
{
  GtkWidget *arrow = gtk_image_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_widget_set_size_request (arrow, ARROW_WIDTH, -1);
  g_signal_connect (click, "pressed", G_CALLBACK (arrow_cb), list_item);
  gtk_widget_add_controller (arrow, GTK_EVENT_CONTROLLER (click));
  gtk_box_append (GTK_BOX (box), arrow);
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, TmDrawingList *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkLabel *number = add_label (row, "tm-balloon-number");
  GtkLabel *requirement = add_label (row, "tm-balloon-requirement");
  GtkLabel *where = add_label (row, "dim-label");

  add_arrow (row, list_item);
  gtk_label_set_width_chars (number, 3);
  gtk_label_set_max_width_chars (number, 6);
  gtk_widget_set_hexpand (GTK_WIDGET (requirement), TRUE);
  gtk_label_set_ellipsize (where, PANGO_ELLIPSIZE_NONE);
  tm_access_hide_decoration (row);
  gtk_list_item_set_child (list_item, row);
}

/* Whether what the row is about stands on the drawing. */
static char *
describe_where (TmDrawingList *self, const TmFeature *feature, guint place)
{
  GHashTable *places = g_hash_table_lookup (self->placed, feature->balloon);
  const gboolean whole = places != NULL && g_hash_table_contains (places, GUINT_TO_POINTER (0));
  const guint n = places != NULL ? g_hash_table_size (places) : 0;

  if (place > 0 && whole && !g_hash_table_contains (places, GUINT_TO_POINTER (place)))
    /* Translators: of one place of a feature: a balloon that stands for all of them does for it. */
    return g_strdup_printf (_ ("by balloon %s"), feature->balloon);
  if (place == 0 && !whole && n > 0 && n < feature->places)
    /* Translators: of the places of a feature: so many have a balloon of their own. */
    return g_strdup_printf (_ ("%u of %u"), n, feature->places);
  /* Translators: of a balloon: whether it stands on the drawing. */
  return g_strdup (n > 0 && (place == 0 || g_hash_table_contains (places, GUINT_TO_POINTER (place)))
                       ? _ ("placed")
                       : _ ("not yet"));
}

/* What a reader is told of the places: that there are some, and whether they are listed below. */
static char *
describe_folding (TmDrawingList *self, const TmFeature *feature)
{
  if (feature->places <= 1)
    return g_strdup ("");
  return g_strdup_printf (g_hash_table_contains (self->unfolded, feature) ? _ (", its %u places below")
                                                                          : _ (", %u places"),
                          feature->places);
}

static void
show_arrow (TmDrawingList *self, GtkWidget *arrow, const TmFeature *feature, guint place)
{
  const gboolean unfolded = g_hash_table_contains (self->unfolded, feature);
  const gboolean any = place == 0 && feature->places > 1;

  gtk_widget_set_visible (arrow, self->any_places);
  gtk_image_set_from_icon_name (GTK_IMAGE (arrow), !any       ? NULL
                                                   : unfolded ? "pan-down-symbolic"
                                                              : "pan-end-symbolic");
  gtk_widget_set_tooltip_text (arrow, !any       ? NULL
                                      : unfolded ? _ ("Put its places away (Left arrow)")
                                                 : _ ("A balloon for each of its places (Right arrow)"));
}

static void
fill_row (TmDrawingList *self, GtkWidget *row, TmDrawingRow *item)
{
  const TmFeature *feature = tm_drawing_row_feature (item);
  const guint place = tm_drawing_row_place (item);
  GtkWidget *number = gtk_widget_get_first_child (row);
  GtkWidget *requirement = gtk_widget_get_next_sibling (number);
  GtkWidget *where = gtk_widget_get_next_sibling (requirement);
  g_autofree char *balloon = tm_balloon_text (feature, place);
  g_autofree char *word = describe_where (self, feature, place);
  g_autofree char *text = place > 0 ? tm_words_spot (feature, place, "") : tm_words_requirement (feature);
  g_autofree char *line = place > 0 ? g_strdup_printf ("%s · %s", balloon, text) : tm_words_feature (feature);
  g_autofree char *folding = place > 0 ? g_strdup ("") : describe_folding (self, feature);
  g_autofree char *sentence = g_strdup_printf ("%s, %s%s", line, word, folding);

  gtk_label_set_text (GTK_LABEL (number), balloon);
  gtk_label_set_text (GTK_LABEL (requirement), text);
  gtk_label_set_text (GTK_LABEL (where), word);
  show_arrow (self, gtk_widget_get_next_sibling (where), feature, place);
  gtk_widget_set_tooltip_text (row, line);
  tm_access_name_row (number, sentence);
}

static void
changed_cb (TmDrawingRow *item, GtkWidget *row)
{
  TmDrawingList *self = get_list (row);

  if (self != NULL)
    fill_row (self, row, item);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, TmDrawingList *self)
{
  TmDrawingRow *item = gtk_list_item_get_item (list_item);
  GtkWidget *row = gtk_list_item_get_child (list_item);

  g_object_set_data (G_OBJECT (row), "row", item);
  fill_row (self, row, item);
  g_signal_connect (item, "changed", G_CALLBACK (changed_cb), row);
}

static void
unbind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, TmDrawingList *self)
{
  g_object_set_data (G_OBJECT (gtk_list_item_get_child (list_item)), "row", NULL);
  g_signal_handlers_disconnect_by_data (gtk_list_item_get_item (list_item),
                                        gtk_list_item_get_child (list_item));
}

/* The list itself would take the row that had the keyboard last.  FALSE: the one chosen is not in sight. */
static gboolean
focus_chosen (TmDrawingList *self)
{
  gpointer chosen = gtk_single_selection_get_selected_item (self->selection);

  for (GtkWidget *line = gtk_widget_get_first_child (self->view); line != NULL && chosen != NULL;
       line = gtk_widget_get_next_sibling (line))
    {
      GtkWidget *row = gtk_widget_get_first_child (line);

      if (row != NULL && g_object_get_data (G_OBJECT (row), "row") == chosen)
        return gtk_widget_grab_focus (line);
    }
  return FALSE;
}

/* Right unfolds the feature chosen, Left folds it, from one of its places too. */
static gboolean
pressed_cb (GtkEventControllerKey *keys, guint keyval, guint keycode, GdkModifierType state,
            TmDrawingList *self)
{
  TmDrawingRow *row = gtk_single_selection_get_selected_item (self->selection);
  const gboolean right = keyval == GDK_KEY_Right || keyval == GDK_KEY_KP_Right;
  const gboolean left = keyval == GDK_KEY_Left || keyval == GDK_KEY_KP_Left;

  if (row == NULL || (!right && !left) || (state & gtk_accelerator_get_default_mod_mask ()) != 0)
    return FALSE;
  fold (self, tm_drawing_row_feature (row), right);
  focus_chosen (self);
  return TRUE;
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
take_mark (TmDrawingList *self, const TmBalloonMark *mark)
{
  GHashTable *places = g_hash_table_lookup (self->placed, mark->feature);

  if (places == NULL)
    {
      places = g_hash_table_new (NULL, NULL);
      g_hash_table_insert (self->placed, (gpointer)mark->feature, places);
    }
  g_hash_table_add (places, GUINT_TO_POINTER (mark->place));
}

static void
take_placed (TmDrawingList *self, const TmJob *job)
{
  g_hash_table_remove_all (self->placed);
  for (guint i = 0; i < job->balloon_marks->len; i++)
    take_mark (self, g_ptr_array_index (job->balloon_marks, i));
  self->n_features = job->features->len;
  self->n_placed = 0;
  self->any_places = FALSE;
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      self->any_places |= feature->places > 1;
      if (g_hash_table_contains (self->placed, feature->balloon))
        self->n_placed++;
    }
}

static void
show_count (TmDrawingList *self)
{
  g_autofree char *text = self->n_features > 0
                              ? g_strdup_printf (_ ("%u of %u placed"), self->n_placed, self->n_features)
                              : g_strdup ("");

  gtk_label_set_text (self->count, text);
}

static void
definitions_changed_cb (TmDrawingList *self)
{
  const TmJob *job = tm_document_job (self->document);

  take_placed (self, job);
  refresh (self);
  show_count (self);
}

static gboolean
tm_drawing_list_focus (GtkWidget *widget, GtkDirectionType direction)
{
  gboolean enters = gtk_widget_get_focus_child (widget) == NULL
                    && (direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD);

  return (enters && focus_chosen (TM_DRAWING_LIST (widget)))
         || GTK_WIDGET_CLASS (tm_drawing_list_parent_class)->focus (widget, direction);
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
  g_hash_table_unref (TM_DRAWING_LIST (object)->unfolded);
  G_OBJECT_CLASS (tm_drawing_list_parent_class)->finalize (object);
}

static void
tm_drawing_list_class_init (TmDrawingListClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  object_class->dispose = tm_drawing_list_dispose;
  object_class->finalize = tm_drawing_list_finalize;
  GTK_WIDGET_CLASS (klass)->focus = tm_drawing_list_focus;
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
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), self);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), self);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_cb), self);
  self->view = gtk_list_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)), factory);
  g_signal_connect (self->view, "activate", G_CALLBACK (activated_cb), self);
  /* Before the list itself, to which these keys mean nothing in a single column. */
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (self->view, keys);
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
  self->items = g_list_store_new (TM_TYPE_DRAWING_ROW);
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->items)));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  self->placed = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, (GDestroyNotify)g_hash_table_unref);
  self->unfolded = g_hash_table_new (NULL, NULL);
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
  g_hash_table_remove_all (self->unfolded);
  self->n_features = self->n_placed = 0;
  g_set_object (&self->document, document);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
  definitions_changed_cb (self);
}

const char *
tm_drawing_list_chosen (TmDrawingList *self)
{
  TmDrawingRow *row;

  g_return_val_if_fail (TM_IS_DRAWING_LIST (self), NULL);

  row = gtk_single_selection_get_selected_item (self->selection);
  return row != NULL ? tm_drawing_row_feature (row)->balloon : NULL;
}

guint
tm_drawing_list_place (TmDrawingList *self)
{
  TmDrawingRow *row;

  g_return_val_if_fail (TM_IS_DRAWING_LIST (self), 0);

  row = gtk_single_selection_get_selected_item (self->selection);
  return row != NULL ? tm_drawing_row_place (row) : 0;
}

void
tm_drawing_list_choose (TmDrawingList *self, const char *balloon, guint place)
{
  const TmFeature *feature;
  guint at;

  g_return_if_fail (TM_IS_DRAWING_LIST (self));

  feature = self->document != NULL && balloon != NULL
                ? tm_job_find_feature (tm_document_job (self->document), balloon)
                : NULL;
  if (feature == NULL || feature->places <= 1)
    place = 0;
  if (place > 0)
    fold (self, feature, TRUE);
  at = tm_drawing_rows_find (self->items, balloon, place);
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
  return self->n_features;
}
