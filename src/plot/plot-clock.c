/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core-form.h"
#include "plot-label.h"
#include "plot-section-private.h"
#include "plot-size.h"

#define SHARE       (TM_CLOCK_ROOM / TM_CLOCK_WALL)
#define N_DIAMETERS 6

static void
clear_direction_cb (gpointer data)
{
  tm_form_size_clear (&((TmDirection *)data)->size);
}

static void
clear_dial_cb (gpointer data)
{
  TmDial *dial = data;

  g_free (dial->label);
  g_array_unref (dial->directions);
  g_free (dial->spread_text);
  g_free (dial->oval_text);
  g_free (dial->lines[0]);
  g_free (dial->lines[1]);
}

/* -------- What was read -------- */

static char *
make_label (const char *station, TmUnit unit)
{
  g_autofree char *depth = g_strndup (station, strcspn (station, "/"));

  return *depth != '\0' ? tm_station_label (depth, unit) : g_strdup ("");
}

static void
start_dial (GArray *dials, const TmJudgement *judgement, const TmFormSpot *spot)
{
  TmDial dial = { 0 };

  dial.label = make_label (judgement->sizes.stations[spot->index].station, judgement->feature->unit);
  dial.directions = g_array_new (FALSE, FALSE, sizeof (TmDirection));
  g_array_set_clear_func (dial.directions, clear_direction_cb);
  g_array_append_val (dials, dial);
}

/* Readings of one diameter are averaged first, as core-form does. */
static void
measure_dial (TmDial *dial, const TmJudgement *judgement)
{
  double sum[N_DIAMETERS] = { 0 }, smallest = INFINITY, largest = -INFINITY;
  guint n[N_DIAMETERS] = { 0 };
  const double origin = g_array_index (dial->directions, TmDirection, 0).size.at;

  for (guint i = 0; i < dial->directions->len; i++)
    {
      const TmDirection *direction = &g_array_index (dial->directions, TmDirection, i);
      sum[direction->hour % N_DIAMETERS] += direction->size.at - origin;
      n[direction->hour % N_DIAMETERS]++;
    }
  for (guint i = 0; i < N_DIAMETERS; i++)
    if (n[i] > 0)
      {
        smallest = MIN (smallest, sum[i] / n[i]);
        largest = MAX (largest, sum[i] / n[i]);
        dial->n_diameters++;
      }
  dial->spread = largest - smallest;
  dial->spread_text = tm_form_number (judgement, dial->spread);
}

static GArray *
list_dials (const TmJob *job, const TmJudgement *judgement)
{
  GArray *dials = g_array_new (FALSE, FALSE, sizeof (TmDial));
  g_autoptr (GArray) spots = tm_form_spots (judgement, TM_SPOT_HOUR);
  const TmStation *at = NULL;

  g_array_set_clear_func (dials, clear_dial_cb);
  for (guint i = 0; i < spots->len; i++)
    {
      const TmFormSpot *spot = &g_array_index (spots, TmFormSpot, i);
      TmDirection direction = { spot->station.hour, tm_form_size (job, judgement, spot->index) };

      if (at == NULL || tm_form_compare_depths (at, &spot->station) != 0)
        start_dial (dials, judgement, spot);
      at = &spot->station;
      g_array_append_val (g_array_index (dials, TmDial, dials->len - 1).directions, direction);
    }
  for (guint i = dials->len; i-- > 0;)
    {
      measure_dial (&g_array_index (dials, TmDial, i), judgement);
      if (g_array_index (dials, TmDial, i).n_diameters < 2)
        g_array_remove_index (dials, i);
    }
  return dials;
}

/* -------- The oval -------- */

/* The clock hour nearest to a direction; a diameter points to two, of which this is the one from 12
 * to 5. */
static guint
find_hour (double degrees)
{
  const guint hour = (guint)lround (degrees / 30) % N_DIAMETERS;

  return hour == 0 ? 12 : hour;
}

static void
take_oval (TmDial *dial, const TmOval *oval, const TmJudgement *judgement)
{
  g_autofree char *number = tm_form_number (judgement, oval->ovality);
  const guint hour = find_hour (oval->direction);

  dial->has_oval = TRUE;
  dial->mean = (double)oval->reference + oval->mean;
  dial->a = oval->a;
  dial->b = oval->b;
  dial->major = oval->direction;
  if (llround (oval->ovality) == 0)
    {
      dial->oval_text = g_strdup (_ ("no oval seen"));
      return;
    }
  /* Translators: how oval a section is, and the two opposite clock hours it is largest across. */
  dial->oval_text = g_strdup_printf (_ ("oval %s, largest across %u and %u o'clock"), number, hour,
                                     hour == 12 ? 6 : hour + 6);
  /* Translators: the same, short: the clock hours follow the size. */
  dial->lines[1] = g_strdup_printf (_ ("oval %s at %u–%u"), number, hour, hour == 12 ? 6 : hour + 6);
}

/* What stands under the ring. */
static void
write_lines (TmDial *dial)
{
  dial->lines[0] = g_strdup_printf (_ ("spread %s"), dial->spread_text);
  if (dial->lines[1] == NULL)
    dial->lines[1] = g_strdup (dial->n_diameters == 2    ? _ ("two directions")
                               : dial->oval_text != NULL ? dial->oval_text
                                                         : "");
}

static void
add_ovals (const GArray *dials, const TmJob *job, const TmJudgement *judgement)
{
  g_autoptr (GArray) ovals = tm_form_ovals (job, judgement->feature, &judgement->sizes);

  for (guint i = 0; i < ovals->len; i++)
    {
      const TmOval *oval = &g_array_index (ovals, TmOval, i);
      g_autofree char *label = make_label (oval->depth, judgement->feature->unit);

      for (guint d = 0; d < dials->len; d++)
        {
          TmDial *dial = &g_array_index (dials, TmDial, d);
          if (!dial->has_oval && strcmp (dial->label, label) == 0)
            {
              take_oval (dial, oval, judgement);
              break;
            }
        }
    }
  for (guint d = 0; d < dials->len; d++)
    write_lines (&g_array_index (dials, TmDial, d));
}

static void
choose_scale (TmClockPlot *plot, const TmJudgement *judgement)
{
  double low = NAN, high = NAN, reference = 0;

  for (guint i = 0; i < plot->dials->len; i++)
    {
      const GArray *directions = g_array_index (plot->dials, TmDial, i).directions;

      for (guint k = 0; k < directions->len; k++)
        {
          const TmFormSize *size = &g_array_index (directions, TmDirection, k).size;
          tm_form_size_stretch (size, &low, &high);
          reference = size->at;
        }
    }
  tm_form_scale_init (&plot->scale, judgement, low, high, reference, SHARE);
}

TmClockPlot *
tm_clock_plot_new (const TmJob *job, const TmJudgement *judgement)
{
  g_autoptr (GArray) dials = NULL;
  TmClockPlot *plot;
  TmBlind blind;

  g_return_val_if_fail (job != NULL && judgement != NULL && judgement->feature != NULL, NULL);
  if (!tm_feature_is_diameter (judgement->feature))
    return NULL;
  dials = list_dials (job, judgement);
  if (dials->len == 0)
    return NULL;
  add_ovals (dials, job, judgement);
  plot = g_new0 (TmClockPlot, 1);
  plot->dials = g_steal_pointer (&dials);
  blind = tm_form_blind (job, judgement->feature, &judgement->sizes);
  if (blind != TM_BLIND_NONE)
    plot->blind = g_dgettext (GETTEXT_PACKAGE, tm_blind_text (blind));
  choose_scale (plot, judgement);
  return plot;
}

void
tm_clock_plot_free (TmClockPlot *plot)
{
  if (plot == NULL)
    return;
  tm_form_scale_clear (&plot->scale);
  g_array_unref (plot->dials);
  g_free (plot);
}

/* -------- Words -------- */

char *
tm_dial_words (const TmDial *dial)
{
  if (dial->n_diameters == 2)
    return g_strdup_printf (_ ("spread of diameters %s; two directions may miss an oval between them"),
                            dial->spread_text);
  if (dial->oval_text == NULL)
    return g_strdup_printf (_ ("spread of diameters %s"), dial->spread_text);
  return g_strdup_printf (_ ("spread of diameters %s; %s"), dial->spread_text, dial->oval_text);
}

static void
describe_dial (const TmClockPlot *plot, const TmDial *dial, GString *out)
{
  g_autofree char *words = tm_dial_words (dial);

  g_string_append (out, ". ");
  if (*dial->label != '\0')
    g_string_append_printf (out, "%s: ", dial->label);
  for (guint i = 0; i < dial->directions->len; i++)
    {
      const TmDirection *direction = &g_array_index (dial->directions, TmDirection, i);

      if (i > 0)
        g_string_append (out, "; ");
      /* Translators: a clock hour, before the size read in that direction. */
      g_string_append_printf (out, _ ("hour %u"), direction->hour);
      g_string_append_c (out, ' ');
      tm_form_describe_size (&plot->scale, &direction->size, out);
    }
  g_string_append_printf (out, "; %s", words);
}

char *
tm_clock_plot_describe (const TmClockPlot *plot)
{
  GString *out;
  g_autofree char *enlarged = NULL;
  gboolean oval = FALSE;

  g_return_val_if_fail (plot != NULL, NULL);
  out = g_string_new (NULL);
  g_string_append_printf (out, _ ("Clock view of %s"), plot->scale.title);
  tm_form_describe_limits (&plot->scale, out);
  for (guint i = 0; i < plot->dials->len; i++)
    {
      describe_dial (plot, &g_array_index (plot->dials, TmDial, i), out);
      oval = oval || g_array_index (plot->dials, TmDial, i).has_oval;
    }
  if (oval)
    g_string_append_printf (out, ". %s", _ ("The circularity deviation of an oval is half of it"));
  enlarged = tm_form_enlarged_words (&plot->scale);
  if (enlarged != NULL)
    g_string_append_printf (out, ". %s", enlarged);
  g_string_append (out, ".");
  if (plot->blind != NULL)
    g_string_append_printf (out, " %s", plot->blind);
  return g_string_free (out, FALSE);
}
