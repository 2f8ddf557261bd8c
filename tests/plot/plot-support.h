/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-support: small jobs with invented data, and a picture whose pixels can be asked for.
 */

#pragma once

#include <cairo.h>
#include <math.h>
#include <string.h>

#include "plot-band.h"
#include "plot-run.h"

static inline TmQuantity
quantity (const char *text, TmUnit unit)
{
  TmQuantity result = TM_QUANTITY_NONE;

  if (text != NULL && *text != '\0')
    g_assert_cmpint (tm_quantity_read (text, unit, &result), ==, TM_READ_OK);
  return result;
}

/* A micrometer whose guard is about 3.3 µm, in a job of one piece. */
static inline TmJob *
make_job (void)
{
  TmJob *job = tm_job_new ();
  TmGauge *gauge = tm_gauge_new ();
  TmMethod *method = tm_method_new ();
  TmPiece *piece = tm_piece_new ();

  job->unit = TM_UNIT_MM;
  gauge->tag = "BM-2";
  gauge->unit = TM_UNIT_MM;
  gauge->resolution = quantity ("0.001", TM_UNIT_MM);
  gauge->error_limit = quantity ("0.0034", TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
  method->name = "bore micrometer";
  g_ptr_array_add (method->gauges, (gpointer) "BM-2");
  g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
  piece->serial = "001";
  g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
  return job;
}

static inline TmPiece *
first_piece (const TmJob *job)
{
  return g_ptr_array_index (job->pieces, 0);
}

/* @stations are separated by spaces; NULL: none. */
static inline TmFeature *
add_feature (TmJob *job, TmKind kind, const char *lower, const char *upper, const char *stations)
{
  TmFeature *feature = tm_feature_new ();
  g_auto (GStrv) each = g_strsplit (stations != NULL ? stations : "", " ", -1);
  g_autofree char *balloon = g_strdup_printf ("%u", job->features->len + 1);

  feature->balloon = tm_job_intern (job, balloon);
  feature->kind = kind;
  feature->unit = tm_kind_is_attribute (kind) ? TM_UNIT_NONE : TM_UNIT_MM;
  feature->lower = quantity (lower, TM_UNIT_MM);
  feature->upper = quantity (upper, TM_UNIT_MM);
  feature->method = "bore micrometer";
  feature->places = 1;
  for (guint i = 0; each[i] != NULL; i++)
    g_ptr_array_add (feature->stations, (gpointer)tm_job_intern (job, each[i]));
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
  return feature;
}

static inline TmReading *
add_reading_of (TmJob *job, TmPiece *piece, TmFeature *feature, const char *station, const char *value)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = piece;
  reading->row.feature = feature;
  reading->place = 1;
  reading->station = tm_job_intern (job, station);
  if (strcmp (value, "pass") == 0)
    reading->outcome = TM_OUTCOME_PASS;
  else if (strcmp (value, "fail") == 0)
    reading->outcome = TM_OUTCOME_FAIL;
  else
    reading->value = quantity (value, feature->unit);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  return reading;
}

static inline TmReading *
add_reading (TmJob *job, TmFeature *feature, const char *station, const char *value)
{
  return add_reading_of (job, first_piece (job), feature, station, value);
}

static inline TmBandPlot *
make_plot (const TmJob *job, const TmFeature *feature)
{
  g_auto (TmJudgement) judgement = { 0 };

  tm_judge (job, first_piece (job), feature, 1, &judgement);
  return tm_band_plot_new (job, &judgement, NULL);
}

/* -------- Pictures -------- */

typedef struct {
  cairo_surface_t *surface;
  cairo_t *cr;
  int width, height;
} Picture;

static inline Picture
make_picture (int width, int height, const TmTheme *theme)
{
  Picture picture = { cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height), NULL, width, height };

  picture.cr = cairo_create (picture.surface);
  cairo_set_source_rgb (picture.cr, theme->surface.red, theme->surface.green, theme->surface.blue);
  cairo_paint (picture.cr);
  return picture;
}

static inline void
clear_picture (Picture *picture)
{
  g_assert_cmpint (cairo_status (picture->cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (picture->cr);
  cairo_surface_destroy (picture->surface);
}

static inline guint32
get_pixel (const Picture *picture, int x, int y)
{
  guint32 pixel;

  cairo_surface_flush (picture->surface);
  g_assert_true (x >= 0 && x < picture->width && y >= 0 && y < picture->height);
  memcpy (&pixel,
          cairo_image_surface_get_data (picture->surface)
              + y * cairo_image_surface_get_stride (picture->surface) + x * 4,
          4);
  return pixel & 0xffffff;
}

/* Within @tolerance of the colour in each channel, of 255. */
static inline gboolean
is_colour (guint32 pixel, const TmColour *colour, double tolerance)
{
  return fabs ((double)(pixel >> 16 & 0xff) - colour->red * 255.0) <= tolerance
         && fabs ((double)(pixel >> 8 & 0xff) - colour->green * 255.0) <= tolerance
         && fabs ((double)(pixel & 0xff) - colour->blue * 255.0) <= tolerance;
}

/* Pixels of that colour in columns @from…@to - 1. */
static inline guint
count_colour (const Picture *picture, const TmColour *colour, int from, int to)
{
  guint n = 0;

  for (int y = 0; y < picture->height; y++)
    for (int x = from; x < to; x++)
      n += is_colour (get_pixel (picture, x, y), colour, 6.0);
  return n;
}

static inline gboolean
is_blank (const Picture *picture)
{
  const guint32 first = get_pixel (picture, 0, 0);

  for (int y = 0; y < picture->height; y++)
    for (int x = 0; x < picture->width; x++)
      if (get_pixel (picture, x, y) != first)
        return FALSE;
  return TRUE;
}
