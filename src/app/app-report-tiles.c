/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-tiles.h"

#include <math.h>

/* Pixels of a tile's side: a page of less is drawn at once. */
#define SIDE       1024
#define WHOLE_SIDE 2048
#define MOST_BYTES ((gsize)64 * 1024 * 1024)

/* Letters are set to whole pixels of what they are drawn on: small ones would stand apart unevenly, so they
 * are drawn larger and made smaller. */
#define FINER   2
#define FINE_AT 2.0 /* pixels to the point, from which that is no longer seen */

typedef struct {
  guint page, column, row;
} Place;

typedef struct {
  GskRenderNode *node; /* paints it; kept, so that a renderer may keep what it made of it */
  int width, height;
  gsize bytes;
  guint look; /* when it was last looked at */
} Tile;

/* Tiles of one paper at one scale. */
typedef struct {
  GHashTable *tiles; /* name -> Tile */
  double scale;
  int side; /* pixels */
} Sheets;

struct _TmReportTiles {
  GObject parent_instance;

  TmReportPaper *paper; /* or NULL */
  Sheets now, before;
  gsize bytes;    /* of both */
  guint look;     /* counts the looks */
  guint painting; /* counts papers and scales: a tile of another is not kept */
  GArray *wanted; /* Place */
  gboolean busy;
  Place drawing; /* while busy, for the present painting: */
  guint drawing_painting;
};

enum { SIGNAL_DRAWN, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmReportTiles, tm_report_tiles, G_TYPE_OBJECT)

/* -------- Keeping -------- */

static gpointer
name_place (const Place *place)
{
  return GSIZE_TO_POINTER (((gsize)place->page << 16 | (gsize)place->row << 8 | place->column) + 1);
}

static void
free_tile (gpointer data)
{
  Tile *tile = data;

  gsk_render_node_unref (tile->node);
  g_free (tile);
}

static gsize
count_bytes (GHashTable *tiles)
{
  GHashTableIter iter;
  gpointer tile;
  gsize bytes = 0;

  g_hash_table_iter_init (&iter, tiles);
  while (g_hash_table_iter_next (&iter, NULL, &tile))
    bytes += ((const Tile *)tile)->bytes;
  return bytes;
}

static void
let_go_before (TmReportTiles *self)
{
  self->bytes -= count_bytes (self->before.tiles);
  g_hash_table_remove_all (self->before.tiles);
}

/* The one that was looked at longest ago; one that is looked at now stays. */
static gpointer
find_oldest (TmReportTiles *self)
{
  GHashTableIter iter;
  gpointer name, value, oldest = NULL;
  guint age = 0;

  g_hash_table_iter_init (&iter, self->now.tiles);
  while (g_hash_table_iter_next (&iter, &name, &value))
    if (self->look - ((const Tile *)value)->look > age)
      {
        age = self->look - ((const Tile *)value)->look;
        oldest = name;
      }
  return oldest;
}

static void
keep_bound (TmReportTiles *self)
{
  if (self->bytes > MOST_BYTES)
    let_go_before (self);
  while (self->bytes > MOST_BYTES)
    {
      gpointer oldest = find_oldest (self);

      if (oldest == NULL)
        return;
      self->bytes -= ((const Tile *)g_hash_table_lookup (self->now.tiles, oldest))->bytes;
      g_hash_table_remove (self->now.tiles, oldest);
    }
}

/* -------- Drawing, on a thread -------- */

typedef struct {
  TmReportPaper *paper;
  Place place;
  double scale;
  int side, width, height;
  guint painting;
} Order;

static void
free_order (gpointer data)
{
  Order *order = data;

  tm_report_paper_unref (order->paper);
  g_free (order);
}

static cairo_surface_t *
draw_tile (const Order *order, int finer)
{
  cairo_surface_t *surface
      = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, order->width * finer, order->height * finer);
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_translate (cr, -order->side * finer * (double)order->place.column,
                   -order->side * finer * (double)order->place.row);
  cairo_scale (cr, order->scale * finer, order->scale * finer);
  tm_report_paper_draw_upright (order->paper, order->place.page, cr);
  cairo_destroy (cr);
  return surface;
}

/* Takes @surface. */
static cairo_surface_t *
make_smaller (cairo_surface_t *surface, const Order *order, int finer)
{
  cairo_surface_t *smaller = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, order->width, order->height);
  cairo_t *cr = cairo_create (smaller);

  cairo_scale (cr, 1.0 / finer, 1.0 / finer);
  cairo_set_source_surface (cr, surface, 0, 0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_GOOD);
  cairo_pattern_set_extend (cairo_get_source (cr), CAIRO_EXTEND_PAD);
  cairo_paint (cr);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return smaller;
}

static void
draw_cb (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Order *order = data;
  cairo_surface_t *surface;

  if (order->scale < FINE_AT)
    surface = make_smaller (draw_tile (order, FINER), order, FINER);
  else
    surface = draw_tile (order, 1);
  cairo_surface_flush (surface);
  g_task_return_pointer (task, surface, (GDestroyNotify)cairo_surface_destroy);
}

/* -------- Drawing, on the main loop -------- */

static void draw_next (TmReportTiles *self);

static Tile *
make_tile (TmReportTiles *self, cairo_surface_t *picture, const Order *order)
{
  Tile *tile = g_new0 (Tile, 1);
  cairo_t *cr;

  *tile = (Tile) { .width = order->width, .height = order->height, .look = self->look };
  tile->bytes = (gsize)order->width * (gsize)order->height * 4;
  tile->node = gsk_cairo_node_new (&GRAPHENE_RECT_INIT (0, 0, (float)order->width, (float)order->height));
  cr = gsk_cairo_node_get_draw_context (tile->node);
  cairo_set_source_surface (cr, picture, 0, 0);
  cairo_set_operator (cr, CAIRO_OPERATOR_SOURCE);
  cairo_paint (cr);
  cairo_destroy (cr);
  return tile;
}

static void
drawn_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  TmReportTiles *self = TM_REPORT_TILES (source);
  const Order *order = g_task_get_task_data (G_TASK (result));
  cairo_surface_t *picture = g_task_propagate_pointer (G_TASK (result), NULL);

  self->busy = FALSE;
  if (order->painting == self->painting)
    {
      Tile *tile = make_tile (self, picture, order);

      self->bytes += tile->bytes;
      g_hash_table_insert (self->now.tiles, name_place (&order->place), tile);
      keep_bound (self);
    }
  cairo_surface_destroy (picture);
  draw_next (self);
  g_signal_emit (self, signals[SIGNAL_DRAWN], 0);
}

/* Pixels to the point of one page. */
static double
get_scale (TmReportTiles *self, guint page)
{
  double across, down, wide, high;

  if (self->paper == NULL || page >= tm_report_paper_n_pages (self->paper))
    return self->now.scale;
  tm_report_paper_size (self->paper, &across, &down);
  tm_report_paper_page_size (self->paper, page, &wide, &high);
  return self->now.scale * MIN (1.0, across / wide);
}

static void
draw_next (TmReportTiles *self)
{
  g_autoptr (GTask) task = NULL;
  Order *order;
  int width, height;

  if (self->busy || self->wanted->len == 0 || self->paper == NULL)
    return;
  tm_report_tiles_page_size (self, g_array_index (self->wanted, Place, 0).page, &width, &height);
  order = g_new0 (Order, 1);
  order->paper = tm_report_paper_ref (self->paper);
  order->place = g_array_index (self->wanted, Place, 0);
  order->scale = get_scale (self, order->place.page);
  order->side = self->now.side;
  order->width = MIN (order->side, width - (int)order->place.column * order->side);
  order->height = MIN (order->side, height - (int)order->place.row * order->side);
  order->painting = self->painting;
  self->drawing = order->place;
  self->drawing_painting = self->painting;
  g_array_remove_index (self->wanted, 0);
  self->busy = TRUE;
  task = g_task_new (self, NULL, drawn_cb, NULL);
  g_task_set_task_data (task, order, free_order);
  g_task_run_in_thread (task, draw_cb);
}

/* -------- Looking -------- */

void
tm_report_tiles_page_size (TmReportTiles *self, guint page, int *width, int *height)
{
  const double scale = get_scale (self, page);
  double across = 0, down = 0;

  g_return_if_fail (TM_IS_REPORT_TILES (self));

  if (self->paper != NULL && page < tm_report_paper_n_pages (self->paper))
    tm_report_paper_page_size (self->paper, page, &across, &down);
  *width = MAX ((int)lround (across * scale), 1);
  *height = MAX ((int)lround (down * scale), 1);
}

void
tm_report_tiles_set (TmReportTiles *self, TmReportPaper *paper, double scale)
{
  const Sheets empty = self->before;
  int width, height;

  g_return_if_fail (TM_IS_REPORT_TILES (self));
  g_return_if_fail (scale > 0);

  if (paper == self->paper && scale == self->now.scale)
    return;
  /* What is there stands in for what comes, unless there is nothing: then what stood in goes on. */
  if (paper != NULL && g_hash_table_size (self->now.tiles) > 0)
    {
      let_go_before (self);
      self->before = self->now;
      self->now = empty;
    }
  if (paper == NULL)
    {
      let_go_before (self);
      g_hash_table_remove_all (self->now.tiles);
      self->bytes = 0;
    }
  if (paper != NULL)
    tm_report_paper_ref (paper);
  g_clear_pointer (&self->paper, tm_report_paper_unref);
  self->paper = paper;
  self->now.scale = scale;
  /* One that lies on its side is smaller. */
  tm_report_tiles_page_size (self, 0, &width, &height);
  self->now.side = MAX (width, height) <= WHOLE_SIDE ? WHOLE_SIDE : SIDE;
  self->painting++;
  g_array_set_size (self->wanted, 0);
}

void
tm_report_tiles_begin (TmReportTiles *self)
{
  g_return_if_fail (TM_IS_REPORT_TILES (self));

  self->look++;
  g_array_set_size (self->wanted, 0);
}

void
tm_report_tiles_end (TmReportTiles *self)
{
  g_return_if_fail (TM_IS_REPORT_TILES (self));

  if (self->wanted->len == 0 && !self->busy)
    let_go_before (self);
  draw_next (self);
}

static gboolean
is_under_way (TmReportTiles *self, const Place *place)
{
  return self->busy && self->drawing_painting == self->painting && self->drawing.page == place->page
         && self->drawing.column == place->column && self->drawing.row == place->row;
}

static Tile *
look_at (TmReportTiles *self, const Place *place)
{
  Tile *tile = g_hash_table_lookup (self->now.tiles, name_place (place));

  if (tile != NULL)
    tile->look = self->look;
  else if (!is_under_way (self, place))
    g_array_append_val (self->wanted, *place);
  return tile;
}

static void
put_tile (GtkSnapshot *snapshot, const Tile *tile, const Place *place, int side, double zoom)
{
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float)(side * zoom * place->column),
                                                          (float)(side * zoom * place->row)));
  if (zoom != 1.0)
    gtk_snapshot_scale (snapshot, (float)zoom, (float)zoom);
  gtk_snapshot_append_node (snapshot, tile->node);
  gtk_snapshot_restore (snapshot);
}

/* The page as it was drawn before, at the size that it has now. */
static void
put_before (TmReportTiles *self, GtkSnapshot *snapshot, guint page)
{
  const double zoom = self->before.scale > 0 ? self->now.scale / self->before.scale : 1.0;
  GHashTableIter iter;
  gpointer name, tile;

  g_hash_table_iter_init (&iter, self->before.tiles);
  while (g_hash_table_iter_next (&iter, &name, &tile))
    {
      const gsize code = GPOINTER_TO_SIZE (name) - 1;
      const Place place = { (guint)(code >> 16), (guint)(code & 0xff), (guint)(code >> 8 & 0xff) };

      if (place.page == page)
        put_tile (snapshot, tile, &place, self->before.side, zoom);
    }
}

void
tm_report_tiles_paint (TmReportTiles *self, GtkSnapshot *snapshot, guint page, const graphene_rect_t *seen)
{
  const int side = self->now.side;
  const guint from_column = (guint)MAX (floor (seen->origin.x / (float)side), 0.0);
  const guint from_row = (guint)MAX (floor (seen->origin.y / (float)side), 0.0);
  const float right = seen->origin.x + seen->size.width, bottom = seen->origin.y + seen->size.height;
  int width, height;

  g_return_if_fail (TM_IS_REPORT_TILES (self));

  tm_report_tiles_page_size (self, page, &width, &height);
  gtk_snapshot_push_clip (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  gtk_snapshot_append_color (snapshot, &(GdkRGBA) { 1, 1, 1, 1 },
                             &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  put_before (self, snapshot, page);
  for (guint row = from_row; (float)((int)row * side) < MIN (bottom, (float)height); row++)
    for (guint column = from_column; (float)((int)column * side) < MIN (right, (float)width); column++)
      {
        const Place place = { page, column, row };
        const Tile *tile = look_at (self, &place);

        if (tile != NULL)
          put_tile (snapshot, tile, &place, self->now.side, 1.0);
      }
  gtk_snapshot_pop (snapshot);
}

void
tm_report_tiles_want (TmReportTiles *self, guint page)
{
  int width, height;

  g_return_if_fail (TM_IS_REPORT_TILES (self));

  tm_report_tiles_page_size (self, page, &width, &height);
  for (guint row = 0; (int)row * self->now.side < height; row++)
    for (guint column = 0; (int)column * self->now.side < width; column++)
      (void)look_at (self, &(Place) { page, column, row });
}

gboolean
tm_report_tiles_is_idle (TmReportTiles *self)
{
  g_return_val_if_fail (TM_IS_REPORT_TILES (self), FALSE);

  return !self->busy && self->wanted->len == 0;
}

gsize
tm_report_tiles_bytes (TmReportTiles *self)
{
  g_return_val_if_fail (TM_IS_REPORT_TILES (self), 0);

  return self->bytes;
}

gsize
tm_report_tiles_most_bytes (void)
{
  return MOST_BYTES;
}

/* -------- The object -------- */

static void
tm_report_tiles_finalize (GObject *object)
{
  TmReportTiles *self = TM_REPORT_TILES (object);

  g_clear_pointer (&self->paper, tm_report_paper_unref);
  g_hash_table_unref (self->now.tiles);
  g_hash_table_unref (self->before.tiles);
  g_array_unref (self->wanted);
  G_OBJECT_CLASS (tm_report_tiles_parent_class)->finalize (object);
}

static void
tm_report_tiles_class_init (TmReportTilesClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_report_tiles_finalize;
  signals[SIGNAL_DRAWN] = g_signal_new ("drawn", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                        NULL, G_TYPE_NONE, 0);
}

static void
tm_report_tiles_init (TmReportTiles *self)
{
  self->now = (Sheets) { g_hash_table_new_full (NULL, NULL, NULL, free_tile), 1.0, SIDE };
  self->before = (Sheets) { g_hash_table_new_full (NULL, NULL, NULL, free_tile), 1.0, SIDE };
  self->wanted = g_array_new (FALSE, FALSE, sizeof (Place));
}

TmReportTiles *
tm_report_tiles_new (void)
{
  return g_object_new (TM_TYPE_REPORT_TILES, NULL);
}
