/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-tiles.h"

#include "app-batch-looks.h"

typedef struct {
  cairo_surface_t *picture;
  GskRenderNode *node; /* paints it; kept, so that a renderer may keep what it made of it */
} Tile;

struct _TmBatchTiles {
  TmTileSizes sizes;
  TmBatchLooks *looks;
  GHashTable *tiles; /* name -> Tile */
  int scale;
  const TmTheme *theme;
  guint n_drawn;
};

static void
free_tile (Tile *tile)
{
  gsk_render_node_unref (tile->node);
  cairo_surface_destroy (tile->picture);
  g_free (tile);
}

TmBatchTiles *
tm_batch_tiles_new (const TmTileSizes *sizes)
{
  TmBatchTiles *tiles = g_new0 (TmBatchTiles, 1);

  tiles->sizes = *sizes;
  tiles->looks = tm_batch_looks_new ();
  tiles->tiles = g_hash_table_new_full (NULL, NULL, NULL, (GDestroyNotify)free_tile);
  return tiles;
}

void
tm_batch_tiles_free (TmBatchTiles *tiles)
{
  tm_batch_looks_free (tiles->looks);
  g_hash_table_unref (tiles->tiles);
  g_free (tiles);
}

void
tm_batch_tiles_forget (TmBatchTiles *tiles)
{
  g_hash_table_remove_all (tiles->tiles);
}

void
tm_batch_tiles_prepare (TmBatchTiles *tiles, int scale, const TmTheme *theme)
{
  tiles->scale = scale;
  tiles->theme = theme;
  if (tm_batch_looks_prepare (tiles->looks, tiles->sizes.cell_x, tiles->sizes.cell_y, scale, theme))
    tm_batch_tiles_forget (tiles);
}

/* -------- One tile -------- */

/* A tile is known by its column and row, counted in tiles from 1. */
static gpointer
name_tile (gint column, gint row)
{
  return GSIZE_TO_POINTER ((gsize)(guint)(column + 1) << 16 | (guint)(row + 1));
}

static void
put_cells (TmBatchTiles *tiles, TmBatchCells *cells, gint column, gint row, cairo_t *cr)
{
  gint to_column = MIN ((column + 1) * TM_TILE_COLUMNS, (gint)tm_batch_cells_n_columns (cells));
  gint to_row = MIN ((row + 1) * TM_TILE_ROWS, (gint)tm_batch_cells_n_rows (cells));

  for (gint i = column * TM_TILE_COLUMNS; i < to_column; i++)
    for (gint j = row * TM_TILE_ROWS; j < to_row; j++)
      {
        const TmGridCell *cell = tm_batch_cells_get (cells, (guint)i, (guint)j);

        if (cell != NULL)
          tm_batch_looks_put (tiles->looks, cell, cr, (i - column * TM_TILE_COLUMNS) * tiles->sizes.step_x,
                              (j - row * TM_TILE_ROWS) * tiles->sizes.step_y);
      }
}

static Tile *
draw_tile (TmBatchTiles *tiles, TmBatchCells *cells, gint column, gint row)
{
  const int width = TM_TILE_COLUMNS * tiles->sizes.step_x, height = TM_TILE_ROWS * tiles->sizes.step_y;
  Tile *tile = g_new0 (Tile, 1);
  cairo_t *cr;

  tile->picture
      = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width * tiles->scale, height * tiles->scale);
  cairo_surface_set_device_scale (tile->picture, tiles->scale, tiles->scale);
  cr = cairo_create (tile->picture);
  put_cells (tiles, cells, column, row, cr);
  cairo_destroy (cr);
  tile->node = gsk_cairo_node_new (&GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  cr = gsk_cairo_node_get_draw_context (tile->node);
  cairo_set_source_surface (cr, tile->picture, 0, 0);
  cairo_set_operator (cr, CAIRO_OPERATOR_SOURCE);
  cairo_paint (cr);
  cairo_destroy (cr);
  tiles->n_drawn++;
  return tile;
}

static Tile *
find_tile (TmBatchTiles *tiles, TmBatchCells *cells, gint column, gint row)
{
  Tile *tile = g_hash_table_lookup (tiles->tiles, name_tile (column, row));

  if (tile == NULL)
    {
      tile = draw_tile (tiles, cells, column, row);
      g_hash_table_insert (tiles->tiles, name_tile (column, row), tile);
    }
  return tile;
}

/* -------- Those in sight -------- */

typedef struct {
  gint from_column, to_column; /* of tiles; the last ones are not included */
  gint from_row, to_row;
} Sight;

static Sight
find_sight (const TmTileSpan *span)
{
  return (Sight) {
    .from_column = span->from_column / TM_TILE_COLUMNS,
    .to_column = (span->to_column + TM_TILE_COLUMNS - 1) / TM_TILE_COLUMNS,
    .from_row = span->from_row / TM_TILE_ROWS,
    .to_row = (span->to_row + TM_TILE_ROWS - 1) / TM_TILE_ROWS,
  };
}

static gboolean
is_far_cb (gpointer name, gpointer tile, gpointer data)
{
  const Sight *sight = data;
  gint column = (gint)(GPOINTER_TO_SIZE (name) >> 16) - 1, row = (gint)(GPOINTER_TO_SIZE (name) & 0xffff) - 1;

  return column < sight->from_column - 1 || column > sight->to_column || row < sight->from_row - 1
         || row > sight->to_row;
}

/* A way through a large job holds no more than what is in sight and one tile round it. */
static void
drop_far (TmBatchTiles *tiles, Sight *sight)
{
  guint across = (guint)(sight->to_column - sight->from_column + 2);
  guint down = (guint)(sight->to_row - sight->from_row + 2);

  if (g_hash_table_size (tiles->tiles) > across * down)
    g_hash_table_foreach_remove (tiles->tiles, is_far_cb, sight);
}

void
tm_batch_tiles_append (TmBatchTiles *tiles, TmBatchCells *cells, const TmTileSpan *span, int x, int y,
                       GtkSnapshot *snapshot)
{
  const int width = TM_TILE_COLUMNS * tiles->sizes.step_x, height = TM_TILE_ROWS * tiles->sizes.step_y;
  Sight sight = find_sight (span);

  for (gint i = sight.from_column; i < sight.to_column; i++)
    for (gint j = sight.from_row; j < sight.to_row; j++)
      {
        gtk_snapshot_save (snapshot);
        gtk_snapshot_translate (snapshot,
                                &GRAPHENE_POINT_INIT ((float)(x + i * width), (float)(y + j * height)));
        gtk_snapshot_append_node (snapshot, find_tile (tiles, cells, i, j)->node);
        gtk_snapshot_restore (snapshot);
      }
  drop_far (tiles, &sight);
}

guint
tm_batch_tiles_n_drawn (TmBatchTiles *tiles)
{
  return tiles->n_drawn;
}
