/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core-form.h"
#include "plot-label.h"
#include "plot-range.h"
#include "plot-section-private.h"
#include "plot-size.h"

#define SHARE (TM_SECTION_ROOM / TM_SECTION_WALL)

static void
clear_level_cb (gpointer data)
{
  TmLevel *level = data;

  g_free (level->label);
  tm_form_size_clear (&level->smallest);
  tm_form_size_clear (&level->largest);
}

static void
start_level (GArray *levels, const TmJob *job, const TmJudgement *judgement, const TmFormSpot *spot)
{
  const char *text = judgement->sizes.stations[spot->index].station;
  g_autofree char *depth = g_strndup (text, strcspn (text, "/"));
  TmLevel level = { .station = spot->station, .n = 1 };

  level.label = tm_station_label (depth, judgement->feature->unit);
  level.smallest = tm_form_size (job, judgement, spot->index);
  level.largest = tm_form_size (job, judgement, spot->index);
  g_array_append_val (levels, level);
}

static void
join_level (TmLevel *level, const TmJob *job, const TmJudgement *judgement, guint index)
{
  TmFormSize size = tm_form_size (job, judgement, index);
  TmFormSize *beaten = NULL;

  level->n++;
  if (size.at < level->smallest.at)
    beaten = &level->smallest;
  else if (size.at > level->largest.at)
    beaten = &level->largest;
  if (beaten == NULL)
    {
      tm_form_size_clear (&size);
      return;
    }
  tm_form_size_clear (beaten);
  *beaten = size;
}

/* Lengths alone stand in proportion; depths in words, and a mix, in equal steps. */
static void
place_levels (GArray *levels)
{
  const guint last = levels->len - 1;
  const TmLevel *first = &g_array_index (levels, TmLevel, 0), *end = &g_array_index (levels, TmLevel, last);
  const gboolean lengths = first->station.depth == TM_DEPTH_LENGTH && end->station.depth == TM_DEPTH_LENGTH;
  const double from = (double)first->station.at.count, to = (double)end->station.at.count;

  for (guint i = 0; i <= last; i++)
    {
      TmLevel *level = &g_array_index (levels, TmLevel, i);
      level->down
          = lengths ? ((double)level->station.at.count - from) / (to - from) : (double)i / (double)last;
    }
}

static GArray *
list_levels (const TmJob *job, const TmJudgement *judgement)
{
  GArray *levels = g_array_new (FALSE, FALSE, sizeof (TmLevel));
  g_autoptr (GArray) spots = tm_form_spots (judgement, TM_SPOT_DEPTH);

  g_array_set_clear_func (levels, clear_level_cb);
  for (guint i = 0; i < spots->len; i++)
    {
      const TmFormSpot *spot = &g_array_index (spots, TmFormSpot, i);
      TmLevel *last = levels->len > 0 ? &g_array_index (levels, TmLevel, levels->len - 1) : NULL;

      if (last != NULL && tm_form_compare_depths (&last->station, &spot->station) == 0)
        join_level (last, job, judgement, spot->index);
      else
        start_level (levels, job, judgement, spot);
    }
  return levels;
}

/* To two digits: more would claim what no reading holds. */
static double
round_ratio (double ratio)
{
  const double step = pow (10, floor (log10 (ratio)) - 1);

  return round (ratio / step) * step;
}

/* "taper 0.006 mm, opens to the bottom, 1 in 3300". */
static char *
make_taper (const TmJudgement *judgement)
{
  g_autofree char *words = tm_taper_words (judgement);
  double slope;

  if (words == NULL || fabs (judgement->taper) < 0.5
      || !tm_form_taper_slope (judgement->feature, &judgement->sizes, &slope) || slope == 0)
    return g_steal_pointer (&words);
  /* Translators: a taper in words, then as so much on a length: 1 in 3300. */
  return g_strdup_printf (_ ("%s, 1 in %.0f"), words, round_ratio (1 / fabs (slope)));
}

static void
choose_scale (TmSectionPlot *plot, const TmJudgement *judgement)
{
  const TmLevel *first = &g_array_index (plot->levels, TmLevel, 0);
  double low = NAN, high = NAN;

  for (guint i = 0; i < plot->levels->len; i++)
    {
      const TmLevel *level = &g_array_index (plot->levels, TmLevel, i);
      tm_form_size_stretch (&level->smallest, &low, &high);
      tm_form_size_stretch (&level->largest, &low, &high);
    }
  tm_form_scale_init (&plot->scale, judgement, low, high, first->smallest.at, SHARE);
}

TmSectionPlot *
tm_section_plot_new (const TmJob *job, const TmJudgement *judgement)
{
  g_autoptr (GArray) levels = NULL;
  TmSectionPlot *plot;

  g_return_val_if_fail (job != NULL && judgement != NULL && judgement->feature != NULL, NULL);
  if (!tm_feature_is_diameter (judgement->feature))
    return NULL;
  levels = list_levels (job, judgement);
  if (levels->len < 2)
    return NULL;
  place_levels (levels);
  plot = g_new0 (TmSectionPlot, 1);
  plot->levels = g_steal_pointer (&levels);
  plot->taper = make_taper (judgement);
  if (judgement->has_taper && fabs (judgement->taper) >= 0.5)
    plot->opens = judgement->taper < 0 ? 1 : -1;
  choose_scale (plot, judgement);
  return plot;
}

void
tm_section_plot_free (TmSectionPlot *plot)
{
  if (plot == NULL)
    return;
  tm_form_scale_clear (&plot->scale);
  g_array_unref (plot->levels);
  g_free (plot->taper);
  g_free (plot);
}

static char *
name_size (const TmSectionPlot *plot, const TmFormSize *size)
{
  GString *text = g_string_new (NULL);

  tm_form_describe_size (&plot->scale, size, text);
  return g_string_free (text, FALSE);
}

static void
describe_level (const TmSectionPlot *plot, const TmLevel *level, GString *out)
{
  g_autofree char *smallest = name_size (plot, &level->smallest);
  g_autofree char *largest = name_size (plot, &level->largest);

  g_string_append_printf (out, ". %s: ", level->label);
  if (level->smallest.at < level->largest.at)
    g_string_append_printf (out, _ ("smallest %s; largest %s"), smallest, largest);
  else
    g_string_append (out, smallest);
}

char *
tm_section_plot_describe (const TmSectionPlot *plot)
{
  GString *out;
  g_autofree char *enlarged = NULL;

  g_return_val_if_fail (plot != NULL, NULL);
  out = g_string_new (NULL);
  g_string_append_printf (out, _ ("Section of %s"), plot->scale.title);
  tm_form_describe_limits (&plot->scale, out);
  for (guint i = 0; i < plot->levels->len; i++)
    describe_level (plot, &g_array_index (plot->levels, TmLevel, i), out);
  enlarged = tm_form_enlarged_words (&plot->scale);
  if (plot->taper != NULL)
    g_string_append_printf (out, ". %s", plot->taper);
  if (enlarged != NULL)
    g_string_append_printf (out, ". %s", enlarged);
  g_string_append_c (out, '.');
  return g_string_free (out, FALSE);
}
