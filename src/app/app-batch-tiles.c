/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-tiles.h"

#include <math.h>

/* From nothing used to half as much again as there is. */
#define LEVELS 96
#define MOST   1.5

/* Room round a cell for the edge of what it draws. */
#define MARGIN 1

struct _TmBatchTiles {
  GHashTable *pictures; /* look -> cairo_surface_t */
  int width, height, scale;
  const TmTheme *theme;
};

TmBatchTiles *
tm_batch_tiles_new (void)
{
  TmBatchTiles *tiles = g_new0 (TmBatchTiles, 1);

  tiles->pictures = g_hash_table_new_full (NULL, NULL, NULL, (GDestroyNotify)cairo_surface_destroy);
  return tiles;
}

void
tm_batch_tiles_free (TmBatchTiles *tiles)
{
  g_hash_table_unref (tiles->pictures);
  g_free (tiles);
}

void
tm_batch_tiles_prepare (TmBatchTiles *tiles, int width, int height, int scale, const TmTheme *theme)
{
  if (tiles->width == width && tiles->height == height && tiles->scale == scale && tiles->theme == theme)
    return;
  g_hash_table_remove_all (tiles->pictures);
  tiles->width = width;
  tiles->height = height;
  tiles->scale = scale;
  tiles->theme = theme;
}

/* 0 is for a share that is not known. */
static guint
find_level (const TmGridCell *cell)
{
  return isfinite (cell->used) ? 1 + (guint)lround (CLAMP (cell->used / MOST, 0, 1) * LEVELS) : 0;
}

static cairo_surface_t *
draw_look (TmBatchTiles *tiles, const TmGridCell *cell, guint level)
{
  cairo_surface_t *surface
      = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (tiles->width + 2 * MARGIN) * tiles->scale,
                                    (tiles->height + 2 * MARGIN) * tiles->scale);
  TmGridCell look = *cell;
  cairo_t *cr;

  if (level > 0)
    look.used = (gfloat)((level - 1) * MOST / LEVELS);
  cairo_surface_set_device_scale (surface, tiles->scale, tiles->scale);
  cr = cairo_create (surface);
  tm_grid_cell_draw (&look, cr, MARGIN, MARGIN, tiles->width, tiles->height, FALSE, tiles->theme);
  cairo_destroy (cr);
  return surface;
}

void
tm_batch_tiles_put (TmBatchTiles *tiles, const TmGridCell *cell, cairo_t *cr, int x, int y)
{
  guint level = find_level (cell);
  guint look = 1
               + (level | (guint)cell->verdict << 8 | (guint)cell->side << 12 | (guint)cell->point << 16
                  | (cell->due ? 1u << 20 : 0));
  cairo_surface_t *picture = g_hash_table_lookup (tiles->pictures, GUINT_TO_POINTER (look));

  if (picture == NULL)
    {
      picture = draw_look (tiles, cell, level);
      g_hash_table_insert (tiles->pictures, GUINT_TO_POINTER (look), picture);
    }
  cairo_set_source_surface (cr, picture, x - MARGIN, y - MARGIN);
  cairo_paint (cr);
}
