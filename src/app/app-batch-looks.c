/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-looks.h"

#include <math.h>

/* From nothing used to half as much again as there is. */
#define LEVELS 96
#define MOST   1.5

struct _TmBatchLooks {
  GHashTable *pictures; /* look -> cairo_surface_t */
  int width, height, scale;
  const TmTheme *theme;
};

TmBatchLooks *
tm_batch_looks_new (void)
{
  TmBatchLooks *looks = g_new0 (TmBatchLooks, 1);

  looks->pictures = g_hash_table_new_full (NULL, NULL, NULL, (GDestroyNotify)cairo_surface_destroy);
  return looks;
}

void
tm_batch_looks_free (TmBatchLooks *looks)
{
  g_hash_table_unref (looks->pictures);
  g_free (looks);
}

gboolean
tm_batch_looks_prepare (TmBatchLooks *looks, int width, int height, int scale, const TmTheme *theme)
{
  if (looks->width == width && looks->height == height && looks->scale == scale && looks->theme == theme)
    return FALSE;
  g_hash_table_remove_all (looks->pictures);
  looks->width = width;
  looks->height = height;
  looks->scale = scale;
  looks->theme = theme;
  return TRUE;
}

/* 0 is for a share that is not known. */
static guint
find_level (const TmGridCell *cell)
{
  return isfinite (cell->used) ? 1 + (guint)lround (CLAMP (cell->used / MOST, 0, 1) * LEVELS) : 0;
}

static cairo_surface_t *
draw_look (TmBatchLooks *looks, const TmGridCell *cell, guint level)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, looks->width * looks->scale,
                                                         looks->height * looks->scale);
  TmGridCell look = *cell;
  cairo_t *cr;

  if (level > 0)
    look.used = (gfloat)((level - 1) * MOST / LEVELS);
  cairo_surface_set_device_scale (surface, looks->scale, looks->scale);
  cr = cairo_create (surface);
  tm_grid_cell_draw (&look, cr, 0, 0, looks->width, looks->height, FALSE, looks->theme);
  cairo_destroy (cr);
  return surface;
}

void
tm_batch_looks_put (TmBatchLooks *looks, const TmGridCell *cell, cairo_t *cr, int x, int y)
{
  guint level = find_level (cell);
  guint look = 1
               + (level | (guint)cell->verdict << 8 | (guint)cell->side << 12 | (guint)cell->point << 16
                  | (cell->due ? 1u << 20 : 0));
  cairo_surface_t *picture = g_hash_table_lookup (looks->pictures, GUINT_TO_POINTER (look));

  if (picture == NULL)
    {
      picture = draw_look (looks, cell, level);
      g_hash_table_insert (looks->pictures, GUINT_TO_POINTER (look), picture);
    }
  cairo_set_source_surface (cr, picture, x, y);
  cairo_paint (cr);
}
