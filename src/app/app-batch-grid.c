/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-grid.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-batch-grid-private.h"
#include "app-batch-words.h"
#include "app-dialog.h"

enum { SIGNAL_CHOSEN, SIGNAL_JUMP, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmBatchGrid, tm_batch_grid, TM_TYPE_SCROLLED)

/* -------- Scrolling -------- */

static int
find_room (TmBatchGrid *self, GtkOrientation orientation)
{
  return orientation == GTK_ORIENTATION_HORIZONTAL
             ? MAX (gtk_widget_get_width (GTK_WIDGET (self)) - self->head_width, 1)
             : MAX (gtk_widget_get_height (GTK_WIDGET (self)) - TM_GRID_HEAD, 1);
}

static void
configure (TmBatchGrid *self, GtkOrientation orientation)
{
  gboolean across = orientation == GTK_ORIENTATION_HORIZONTAL;
  double step = across ? TM_GRID_STEP_X : TM_GRID_STEP_Y;
  double room = find_room (self, orientation);
  guint n = across ? tm_batch_cells_n_columns (self->cells) : tm_batch_cells_n_rows (self->cells);

  tm_scrolled_configure (TM_SCROLLED (self), orientation, tm_scrolled_value (TM_SCROLLED (self), orientation),
                         n * step + (across ? TM_GRID_LEFT / 2 : TM_GRID_FOOT), room, step,
                         MAX (room - step, step));
}

/* Scrolls no further than brings the cell into sight, with one more beside it. */
static void
bring (TmBatchGrid *self, GtkOrientation orientation, gint at)
{
  double step = orientation == GTK_ORIENTATION_HORIZONTAL ? TM_GRID_STEP_X : TM_GRID_STEP_Y;

  if (at >= 0)
    gtk_adjustment_clamp_page (tm_scrolled_adjustment (TM_SCROLLED (self), orientation),
                               MAX (at - 1, 0) * step, (at + 2) * step);
}

static void
bring_focus (TmBatchGrid *self)
{
  bring (self, GTK_ORIENTATION_HORIZONTAL, tm_batch_cells_column_of (self->cells, self->piece));
  bring (self, GTK_ORIENTATION_VERTICAL, tm_batch_cells_row_of (self->cells, self->feature));
}

static void
tm_batch_grid_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  TmBatchGrid *self = TM_BATCH_GRID (widget);

  configure (self, GTK_ORIENTATION_HORIZONTAL);
  configure (self, GTK_ORIENTATION_VERTICAL);
  if (self->show_focus)
    bring_focus (self);
  self->show_focus = FALSE;
}

/* -------- The focus -------- */

static void
say_focus (TmBatchGrid *self)
{
  gint column = tm_batch_cells_column_of (self->cells, self->piece);
  gint row = tm_batch_cells_row_of (self->cells, self->feature);
  g_autofree char *words = NULL;

  if (column >= 0 && row >= 0)
    words = tm_words_batch_cell (self->piece, self->feature,
                                 tm_batch_cells_get (self->cells, (guint)column, (guint)row));
  if (words == NULL)
    words = g_strdup (_ ("Pieces and features: nothing to show yet"));
  /* While cells are judged elsewhere nothing is said anew. */
  if (g_strcmp0 (words, self->said) == 0)
    return;
  tm_name_widget (GTK_WIDGET (self), words);
  g_free (self->said);
  self->said = g_steal_pointer (&words);
}

static void
choose (TmBatchGrid *self, gint column, gint row)
{
  gint n_columns = (gint)tm_batch_cells_n_columns (self->cells);
  gint n_rows = (gint)tm_batch_cells_n_rows (self->cells);

  if (n_columns == 0 || n_rows == 0)
    return;
  self->piece = tm_batch_cells_piece (self->cells, (guint)CLAMP (column, 0, n_columns - 1));
  self->feature = tm_batch_cells_feature (self->cells, (guint)CLAMP (row, 0, n_rows - 1));
  bring_focus (self);
  say_focus (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[SIGNAL_CHOSEN], 0);
}

/* After the cells changed the focus may be on what is gone. */
static void
cells_changed_cb (TmBatchGrid *self)
{
  gboolean found = tm_batch_cells_column_of (self->cells, self->piece) >= 0
                   && tm_batch_cells_row_of (self->cells, self->feature) >= 0;
  gboolean any = tm_batch_cells_n_columns (self->cells) > 0 && tm_batch_cells_n_rows (self->cells) > 0;

  if (!any)
    {
      self->piece = NULL;
      self->feature = NULL;
    }
  else if (!found)
    {
      if (tm_batch_cells_column_of (self->cells, self->piece) < 0)
        self->piece = tm_batch_cells_piece (self->cells, 0);
      if (tm_batch_cells_row_of (self->cells, self->feature) < 0)
        self->feature = tm_batch_cells_feature (self->cells, 0);
    }
  if (self->generation != tm_batch_cells_generation (self->cells))
    {
      self->generation = tm_batch_cells_generation (self->cells);
      tm_batch_grid_forget_layouts (self);
      tm_batch_grid_measure_heads (self);
      gtk_widget_queue_resize (GTK_WIDGET (self));
    }
  tm_batch_tiles_forget (self->tiles);
  configure (self, GTK_ORIENTATION_HORIZONTAL);
  configure (self, GTK_ORIENTATION_VERTICAL);
  say_focus (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  if (any && !found)
    g_signal_emit (self, signals[SIGNAL_CHOSEN], 0);
}

void
tm_batch_grid_go (TmBatchGrid *self, const TmPiece *piece, const TmFeature *feature)
{
  gint column, row;

  g_return_if_fail (TM_IS_BATCH_GRID (self));

  column = tm_batch_cells_column_of (self->cells, piece);
  row = tm_batch_cells_row_of (self->cells, feature);
  if (column >= 0)
    self->piece = tm_batch_cells_piece (self->cells, (guint)column);
  if (row >= 0)
    self->feature = tm_batch_cells_feature (self->cells, (guint)row);
  self->show_focus = TRUE;
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
  say_focus (self);
}

/* -------- Keys -------- */

typedef enum { STEP_ONE, STEP_PAGE, STEP_ALL } Step;

/* @arguments: which way across, which way down, by how much. */
static gboolean
key_cb (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  TmBatchGrid *self = TM_BATCH_GRID (widget);
  gint column = tm_batch_cells_column_of (self->cells, self->piece);
  gint row = tm_batch_cells_row_of (self->cells, self->feature);
  gint across, down, by;
  gint page = MAX (find_room (self, GTK_ORIENTATION_VERTICAL) / TM_GRID_STEP_Y - 1, 1);

  g_variant_get (arguments, "(iii)", &across, &down, &by);
  if (column < 0 || row < 0)
    return FALSE;
  by = by == STEP_ALL ? 1000000 : by == STEP_PAGE ? page : 1;
  if (gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL)
    across = -across;
  choose (self, column + across * by, row + down * by);
  return TRUE;
}

static gboolean
enter_cb (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  if (tm_batch_grid_piece (TM_BATCH_GRID (widget)) == NULL)
    return FALSE;
  g_signal_emit (widget, signals[SIGNAL_JUMP], 0);
  return TRUE;
}

static void
add_keys (GtkWidgetClass *widget_class)
{
  static const struct {
    guint key, pad;
    GdkModifierType with;
    gint across, down;
    Step by;
  } keys[] = {
    { GDK_KEY_Left, GDK_KEY_KP_Left, 0, -1, 0, STEP_ONE },
    { GDK_KEY_Right, GDK_KEY_KP_Right, 0, 1, 0, STEP_ONE },
    { GDK_KEY_Up, GDK_KEY_KP_Up, 0, 0, -1, STEP_ONE },
    { GDK_KEY_Down, GDK_KEY_KP_Down, 0, 0, 1, STEP_ONE },
    { GDK_KEY_Home, GDK_KEY_KP_Home, 0, -1, 0, STEP_ALL },
    { GDK_KEY_End, GDK_KEY_KP_End, 0, 1, 0, STEP_ALL },
    { GDK_KEY_Home, GDK_KEY_KP_Home, GDK_CONTROL_MASK, -1, -1, STEP_ALL },
    { GDK_KEY_End, GDK_KEY_KP_End, GDK_CONTROL_MASK, 1, 1, STEP_ALL },
    { GDK_KEY_Page_Up, GDK_KEY_KP_Page_Up, 0, 0, -1, STEP_PAGE },
    { GDK_KEY_Page_Down, GDK_KEY_KP_Page_Down, 0, 0, 1, STEP_PAGE },
  };
  static const guint enters[] = { GDK_KEY_Return, GDK_KEY_KP_Enter, GDK_KEY_ISO_Enter };

  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      gtk_widget_class_add_binding (widget_class, keys[i].key, keys[i].with, key_cb, "(iii)", keys[i].across,
                                    keys[i].down, keys[i].by);
      gtk_widget_class_add_binding (widget_class, keys[i].pad, keys[i].with, key_cb, "(iii)", keys[i].across,
                                    keys[i].down, keys[i].by);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (enters); i++)
    gtk_widget_class_add_binding (widget_class, enters[i], 0, enter_cb, NULL);
}

/* -------- The pointer -------- */

gboolean
tm_batch_grid_cell_at (TmBatchGrid *self, double x, double y, gint *column, gint *row)
{
  double across, down;

  g_return_val_if_fail (TM_IS_BATCH_GRID (self), FALSE);

  across = x - self->head_width + tm_batch_grid_scroll (self, GTK_ORIENTATION_HORIZONTAL);
  down = y - TM_GRID_HEAD + tm_batch_grid_scroll (self, GTK_ORIENTATION_VERTICAL);
  *column = x < self->head_width ? -1 : (gint)(across / TM_GRID_STEP_X);
  *row = y < TM_GRID_HEAD ? -1 : (gint)(down / TM_GRID_STEP_Y);
  return *column < (gint)tm_batch_cells_n_columns (self->cells)
         && *row < (gint)tm_batch_cells_n_rows (self->cells) && (*column >= 0 || *row >= 0);
}

/* A head chooses its row or column, and leaves the other as it is. */
static void
pressed_cb (GtkGestureClick *click, int n_press, double x, double y, TmBatchGrid *self)
{
  gint column, row;
  gboolean cell;

  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (!tm_batch_grid_cell_at (self, x, y, &column, &row))
    return;
  cell = column >= 0 && row >= 0;
  choose (self, column >= 0 ? column : tm_batch_cells_column_of (self->cells, self->piece),
          row >= 0 ? row : tm_batch_cells_row_of (self->cells, self->feature));
  if (n_press == 2 && cell)
    g_signal_emit (self, signals[SIGNAL_JUMP], 0);
}

/* The words of the cell under the pointer; over a head the whole of what may be cut off. */
static gboolean
tm_batch_grid_query_tooltip (GtkWidget *widget, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  TmBatchGrid *self = TM_BATCH_GRID (widget);
  g_autofree char *words = NULL;
  gint column, row;

  if (keyboard || !tm_batch_grid_cell_at (self, x, y, &column, &row))
    return FALSE;
  words = tm_words_batch_cell (
      column >= 0 ? tm_batch_cells_piece (self->cells, (guint)column) : NULL,
      row >= 0 ? tm_batch_cells_feature (self->cells, (guint)row) : NULL,
      column >= 0 && row >= 0 ? tm_batch_cells_get (self->cells, (guint)column, (guint)row) : NULL);
  gtk_tooltip_set_text (tooltip, words);
  return TRUE;
}

/* -------- The widget -------- */

static void
tm_batch_grid_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                       int *natural, int *minimum_baseline, int *natural_baseline)
{
  TmBatchGrid *self = TM_BATCH_GRID (widget);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = self->head_width + 4 * TM_GRID_STEP_X;
      *natural = self->head_width + MIN ((int)tm_batch_cells_n_columns (self->cells), 40) * TM_GRID_STEP_X;
      *natural = MAX (*natural, *minimum);
    }
  else
    {
      *minimum = tm_batch_grid_height_of (self, 2);
      *natural = MAX (tm_batch_grid_height_of (self, tm_batch_cells_n_rows (self->cells)), *minimum);
    }
}

static void
tm_batch_grid_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (tm_batch_grid_parent_class)->css_changed (widget, change);
  tm_batch_grid_forget_layouts (TM_BATCH_GRID (widget));
  if (TM_BATCH_GRID (widget)->cells != NULL)
    tm_batch_grid_measure_heads (TM_BATCH_GRID (widget));
}

static void
tm_batch_grid_dispose (GObject *object)
{
  TmBatchGrid *self = TM_BATCH_GRID (object);

  if (self->cells != NULL)
    g_signal_handlers_disconnect_by_data (self->cells, self);
  G_OBJECT_CLASS (tm_batch_grid_parent_class)->dispose (object);
}

static void
tm_batch_grid_finalize (GObject *object)
{
  TmBatchGrid *self = TM_BATCH_GRID (object);

  g_clear_object (&self->cells);
  g_free (self->said);
  tm_batch_grid_forget_layouts (self);
  g_hash_table_unref (self->heads);
  g_hash_table_unref (self->serials);
  tm_batch_tiles_free (self->tiles);
  G_OBJECT_CLASS (tm_batch_grid_parent_class)->finalize (object);
}

static void
tm_batch_grid_class_init (TmBatchGridClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  object_class->dispose = tm_batch_grid_dispose;
  object_class->finalize = tm_batch_grid_finalize;
  widget_class->snapshot = tm_batch_grid_snapshot;
  widget_class->measure = tm_batch_grid_measure;
  widget_class->size_allocate = tm_batch_grid_size_allocate;
  widget_class->css_changed = tm_batch_grid_css_changed;
  widget_class->query_tooltip = tm_batch_grid_query_tooltip;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "batchgrid");
  signals[SIGNAL_CHOSEN]
      = g_signal_new ("chosen", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_JUMP] = g_signal_new ("jump", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  add_keys (widget_class);
}

static void
tm_batch_grid_init (TmBatchGrid *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  self->heads = g_hash_table_new_full (NULL, NULL, NULL, g_object_unref);
  self->serials = g_hash_table_new_full (NULL, NULL, NULL, g_object_unref);
  self->tiles = tm_batch_tiles_new (
      &(TmTileSizes) { TM_GRID_STEP_X, TM_GRID_STEP_Y, TM_GRID_CELL_X, TM_GRID_CELL_Y });
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
      _ ("Arrows walk from piece to piece and feature to feature; Enter measures it"), -1);
  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  g_signal_connect_object (adw_style_manager_get_default (), "notify::dark",
                           G_CALLBACK (gtk_widget_queue_draw), self, G_CONNECT_SWAPPED);
}

GtkWidget *
tm_batch_grid_new (TmBatchCells *cells)
{
  TmBatchGrid *self;

  g_return_val_if_fail (TM_IS_BATCH_CELLS (cells), NULL);

  self = g_object_new (TM_TYPE_BATCH_GRID, NULL);
  self->cells = g_object_ref (cells);
  g_signal_connect_swapped (cells, "changed", G_CALLBACK (cells_changed_cb), self);
  cells_changed_cb (self);
  return GTK_WIDGET (self);
}

TmPiece *
tm_batch_grid_piece (TmBatchGrid *self)
{
  g_return_val_if_fail (TM_IS_BATCH_GRID (self), NULL);

  return self->piece;
}

TmFeature *
tm_batch_grid_feature (TmBatchGrid *self)
{
  g_return_val_if_fail (TM_IS_BATCH_GRID (self), NULL);

  return self->feature;
}

int
tm_batch_grid_height_of (TmBatchGrid *self, guint n_rows)
{
  return TM_GRID_HEAD + (int)n_rows * TM_GRID_STEP_Y + TM_GRID_FOOT;
}
