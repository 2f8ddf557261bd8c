/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-grid-draw: what of the grid is in sight.
 */

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app-band-view.h"
#include "app-batch-grid-private.h"
#include "app-feature-words.h"

/* Pixels. */
#define LEAST_HEAD    150
#define MOST_HEAD     260
#define BALLOON_GAP   8
#define SERIAL_GAP    10
#define ROW_RADIUS    6
#define MOST_MEASURED 400 /* heads that decide the width */
/* Layouts kept; more are made anew, so that a long way through a large job holds no more than it shows. */
#define MOST_KEPT 600

double
tm_batch_grid_scroll (TmBatchGrid *self, GtkOrientation orientation)
{
  return floor (tm_scrolled_value (TM_SCROLLED (self), orientation));
}

void
tm_batch_grid_forget_layouts (TmBatchGrid *self)
{
  g_hash_table_remove_all (self->heads);
  g_hash_table_remove_all (self->serials);
  g_clear_object (&self->corner);
}

/* "1  Ø25 H7 bore", the balloon bold where its row is chosen. */
static char *
find_head_text (const TmFeature *feature)
{
  g_autofree char *requirement = tm_words_requirement (feature);

  if (*feature->name == '\0' || g_str_equal (feature->name, requirement))
    return g_strdup_printf ("%s  %s", feature->balloon, requirement);
  return g_strdup_printf ("%s  %s %s", feature->balloon, requirement, feature->name);
}

static PangoLayout *
find_layout (TmBatchGrid *self, GHashTable *kept, gconstpointer key, char *(*text_of) (const void *))
{
  PangoLayout *layout = g_hash_table_lookup (kept, key);

  if (layout == NULL)
    {
      g_autofree char *text = text_of (key);

      if (g_hash_table_size (kept) >= MOST_KEPT)
        g_hash_table_remove_all (kept);
      layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
      g_hash_table_insert (kept, (gpointer)key, layout);
    }
  return layout;
}

static char *
head_text_cb (const void *feature)
{
  return find_head_text (feature);
}

static char *
serial_text_cb (const void *piece)
{
  return g_strdup (((const TmPiece *)piece)->serial);
}

static PangoLayout *
find_head (TmBatchGrid *self, const TmFeature *feature)
{
  PangoLayout *layout = find_layout (self, self->heads, feature, head_text_cb);

  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  pango_layout_set_width (layout, (self->head_width - TM_GRID_LEFT - TM_GRID_GAP) * PANGO_SCALE);
  return layout;
}

void
tm_batch_grid_measure_heads (TmBatchGrid *self)
{
  guint n = MIN (tm_batch_cells_n_rows (self->cells), MOST_MEASURED);
  int widest = LEAST_HEAD;

  for (guint i = 0; i < n && widest < MOST_HEAD; i++)
    {
      PangoLayout *layout
          = find_layout (self, self->heads, tm_batch_cells_feature (self->cells, i), head_text_cb);
      int width;

      pango_layout_set_width (layout, -1);
      pango_layout_get_pixel_size (layout, &width, NULL);
      widest = MAX (widest, width + 2);
    }
  self->head_width = TM_GRID_LEFT + MIN (widest, MOST_HEAD) + TM_GRID_GAP;
}

/* Text of the widget's own colour with its middle at @y. */
static void
put_layout (GtkWidget *widget, GtkSnapshot *snapshot, PangoLayout *layout, double x, double y,
            gboolean strong)
{
  GtkStyleContext *context = gtk_widget_get_style_context (widget);
  PangoAttrList *attributes = strong ? pango_attr_list_new () : NULL;
  GdkRGBA colour;
  int height;

  gtk_style_context_get_color (context, &colour);
  if (strong)
    pango_attr_list_insert (attributes, pango_attr_weight_new (PANGO_WEIGHT_BOLD));
  else
    colour.alpha *= 0.75f;
  pango_layout_set_attributes (layout, attributes);
  if (attributes != NULL)
    pango_attr_list_unref (attributes);
  pango_layout_get_pixel_size (layout, NULL, &height);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float)x, (float)round (y - height / 2.0)));
  gtk_snapshot_append_layout (snapshot, layout, &colour);
  gtk_snapshot_restore (snapshot);
}

/* -------- Cells -------- */

typedef struct {
  TmTileSpan span;
  int x, y; /* of the first cell of all */
} Sight;

static Sight
find_sight (TmBatchGrid *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self)), height = gtk_widget_get_height (GTK_WIDGET (self));
  int across = (int)tm_batch_grid_scroll (self, GTK_ORIENTATION_HORIZONTAL);
  int down = (int)tm_batch_grid_scroll (self, GTK_ORIENTATION_VERTICAL);
  Sight sight = { .x = self->head_width - across, .y = TM_GRID_HEAD - down };
  TmTileSpan *span = &sight.span;

  span->from_column = across / TM_GRID_STEP_X;
  span->from_row = down / TM_GRID_STEP_Y;
  span->to_column = MIN ((width - sight.x + TM_GRID_STEP_X - 1) / TM_GRID_STEP_X,
                         (gint)tm_batch_cells_n_columns (self->cells));
  span->to_row = MIN ((height - sight.y + TM_GRID_STEP_Y - 1) / TM_GRID_STEP_Y,
                      (gint)tm_batch_cells_n_rows (self->cells));
  return sight;
}

static int
find_x (const Sight *sight, gint column)
{
  return sight->x + column * TM_GRID_STEP_X;
}

static int
find_y (const Sight *sight, gint row)
{
  return sight->y + row * TM_GRID_STEP_Y;
}

/* Over its picture in the tile, with the frame that tells where the focus is. */
static void
draw_focus (TmBatchGrid *self, GtkSnapshot *snapshot, const Sight *sight)
{
  gint row = tm_batch_cells_row_of (self->cells, self->feature);
  gint column = tm_batch_cells_column_of (self->cells, self->piece);
  const TmGridCell *cell
      = row >= 0 && column >= 0 ? tm_batch_cells_get (self->cells, (guint)column, (guint)row) : NULL;
  int x = find_x (sight, column), y = find_y (sight, row);
  cairo_t *cr;

  if (cell == NULL || column < sight->span.from_column || column >= sight->span.to_column
      || row < sight->span.from_row || row >= sight->span.to_row)
    return;
  cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT ((float)x - 2, (float)y - 2, TM_GRID_CELL_X + 4, TM_GRID_CELL_Y + 4));
  tm_grid_cell_draw (cell, cr, x, y, TM_GRID_CELL_X, TM_GRID_CELL_Y, TRUE, tm_app_theme ());
  cairo_destroy (cr);
}

/* The first cell in sight may be half under the head. */
static void
draw_cells (TmBatchGrid *self, GtkSnapshot *snapshot, const Sight *sight)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self)), height = gtk_widget_get_height (GTK_WIDGET (self));

  tm_batch_tiles_prepare (self->tiles, gtk_widget_get_scale_factor (GTK_WIDGET (self)), tm_app_theme ());
  gtk_snapshot_push_clip (snapshot, &GRAPHENE_RECT_INIT ((float)self->head_width - 2, TM_GRID_HEAD - 2,
                                                         (float)(width - self->head_width + 2),
                                                         (float)(height - TM_GRID_HEAD + 2)));
  tm_batch_tiles_append (self->tiles, self->cells, &sight->span, sight->x, sight->y, snapshot);
  draw_focus (self, snapshot, sight);
  gtk_snapshot_pop (snapshot);
}

/* -------- Heads -------- */

static void
draw_row_ground (TmBatchGrid *self, GtkSnapshot *snapshot, double y)
{
  GdkRGBA ground;
  GskRoundedRect round_rect;
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (
      TM_GRID_LEFT - 16, (float)y - 1, (float)(self->head_width - TM_GRID_LEFT + 16 - TM_GRID_GAP / 2),
      TM_GRID_CELL_Y + 2);

  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (self)), &ground);
  ground.alpha *= 0.09f;
  gsk_rounded_rect_init_from_rect (&round_rect, &bounds, ROW_RADIUS);
  gtk_snapshot_push_rounded_clip (snapshot, &round_rect);
  gtk_snapshot_append_color (snapshot, &ground, &bounds);
  gtk_snapshot_pop (snapshot);
}

static void
draw_row_heads (TmBatchGrid *self, GtkSnapshot *snapshot, const Sight *sight)
{
  int height = gtk_widget_get_height (GTK_WIDGET (self));

  gtk_snapshot_push_clip (snapshot, &GRAPHENE_RECT_INIT (0, TM_GRID_HEAD - 2, (float)self->head_width,
                                                         (float)MAX (height - TM_GRID_HEAD + 2, 1)));
  for (gint j = sight->span.from_row; j < sight->span.to_row; j++)
    {
      TmFeature *feature = tm_batch_cells_feature (self->cells, (guint)j);
      double y = find_y (sight, j);

      if (feature == self->feature)
        draw_row_ground (self, snapshot, y);
      put_layout (GTK_WIDGET (self), snapshot, find_head (self, feature), TM_GRID_LEFT,
                  y + TM_GRID_CELL_Y / 2.0, feature == self->feature);
    }
  gtk_snapshot_pop (snapshot);
}

static int
find_serial_width (TmBatchGrid *self, gint column)
{
  int width;

  pango_layout_get_pixel_size (
      find_layout (self, self->serials, tm_batch_cells_piece (self->cells, (guint)column), serial_text_cb),
      &width, NULL);
  return width;
}

static void
draw_serial (TmBatchGrid *self, GtkSnapshot *snapshot, gint column, int x, gboolean strong)
{
  TmPiece *piece = tm_batch_cells_piece (self->cells, (guint)column);
  PangoLayout *layout = find_layout (self, self->serials, piece, serial_text_cb);

  put_layout (GTK_WIDGET (self), snapshot, layout, x + 2, TM_GRID_HEAD / 2.0, strong);
}

/* As many columns from one serial to the next as those at both ends of the sight need: 5, 10… */
static gint
find_serial_step (TmBatchGrid *self, const Sight *sight)
{
  static const gint steps[] = { 5, 10, 20, 50 };
  int widest = 0;

  if (sight->span.to_column > sight->span.from_column)
    widest = MAX (find_serial_width (self, sight->span.from_column),
                  find_serial_width (self, sight->span.to_column - 1));
  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i] * TM_GRID_STEP_X >= widest + SERIAL_GAP)
      return steps[i];
  return steps[G_N_ELEMENTS (steps) - 1];
}

/* How far the serial of the piece that has the focus moves to the left, to be seen whole at the edge. */
static int
find_serial_shift (TmBatchGrid *self, const Sight *sight, gint focus)
{
  int x = find_x (sight, focus), width = gtk_widget_get_width (GTK_WIDGET (self));

  return CLAMP (x + find_serial_width (self, focus) + SERIAL_GAP - width, 0, MAX (x - self->head_width, 0));
}

/* The serial of the piece that has the focus always shows, and those that it would run into do not. */
static void
draw_column_heads (TmBatchGrid *self, GtkSnapshot *snapshot, const Sight *sight)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  gint step = find_serial_step (self, sight);
  gint focus = tm_batch_cells_column_of (self->cells, self->piece);
  int strong_width = focus >= 0 ? find_serial_width (self, focus) + SERIAL_GAP : 0;
  gboolean seen = focus >= sight->span.from_column && focus < sight->span.to_column;
  int shift = seen ? find_serial_shift (self, sight, focus) : 0;
  gint taken = 0; /* where the last serial ended */

  gtk_snapshot_push_clip (snapshot,
                          &GRAPHENE_RECT_INIT ((float)self->head_width, 0,
                                               (float)MAX (width - self->head_width, 1), TM_GRID_HEAD));
  for (gint i = sight->span.from_column - sight->span.from_column % step; i < sight->span.to_column;
       i += step)
    {
      double before = (i - focus) * TM_GRID_STEP_X;

      if (focus >= 0 && before > -(find_serial_width (self, i) + SERIAL_GAP + shift) && before < strong_width)
        continue;
      if (i * TM_GRID_STEP_X < taken)
        continue;
      taken = i * TM_GRID_STEP_X + find_serial_width (self, i) + SERIAL_GAP;
      draw_serial (self, snapshot, i, find_x (sight, i), FALSE);
    }
  if (seen)
    draw_serial (self, snapshot, focus, find_x (sight, focus) - shift, TRUE);
  gtk_snapshot_pop (snapshot);
}

static void
draw_corner (TmBatchGrid *self, GtkSnapshot *snapshot)
{
  if (self->corner == NULL)
    self->corner = gtk_widget_create_pango_layout (GTK_WIDGET (self), _ ("Share of band used"));
  pango_layout_set_ellipsize (self->corner, PANGO_ELLIPSIZE_END);
  pango_layout_set_width (self->corner, (self->head_width - TM_GRID_LEFT - TM_GRID_GAP) * PANGO_SCALE);
  put_layout (GTK_WIDGET (self), snapshot, self->corner, TM_GRID_LEFT, TM_GRID_HEAD / 2.0, FALSE);
}

void
tm_batch_grid_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TmBatchGrid *self = TM_BATCH_GRID (widget);
  Sight sight;

  if (gtk_widget_get_width (widget) <= self->head_width || gtk_widget_get_height (widget) <= TM_GRID_HEAD)
    return;
  sight = find_sight (self);
  tm_batch_cells_see (self->cells, (guint)sight.span.from_column,
                      (guint)MAX (sight.span.to_column, sight.span.from_column));
  draw_cells (self, snapshot, &sight);
  draw_corner (self, snapshot);
  draw_row_heads (self, snapshot, &sight);
  draw_column_heads (self, snapshot, &sight);
}
