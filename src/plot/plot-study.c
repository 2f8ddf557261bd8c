/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-study.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-study-private.h"

#define SIX 6.0 /* standard deviations: 99.7 % of a normal distribution, as the band is compared with */

char *
tm_study_number (double value, TmUnit unit)
{
  double digits;

  if (!isfinite (value))
    return g_strdup ("—");
  if (!(fabs (value) > 0))
    return g_strdup ("0");
  digits = 2 - floor (log10 (fabs (value) * (1 + 1e-9))); /* 0.001 may be a little less in a double */
  return tm_count_format (tm_count_from_double (value, unit), unit, (guint)CLAMP (digits, 0, 8));
}

static gboolean
is_complete (const TmStudyPlot *plot)
{
  return plot->status == TM_STUDY_OK || plot->status == TM_STUDY_ONE_PERSON;
}

static void
set_bar (TmStudyBar *bar, const char *label, const TmStudyPart *part, gboolean of_pieces)
{
  *bar = (TmStudyBar) { label, SIX * part->sd, SIX * part->low, SIX * part->high, of_pieces };
}

static void
set_bars (TmStudyPlot *plot, const TmStudyResult *result)
{
  set_bar (&plot->bars[0], _ ("repeatability"), &result->ev, FALSE);
  set_bar (&plot->bars[1], _ ("people"), &result->av, FALSE);
  set_bar (&plot->bars[2], _ ("people with pieces"), &result->interaction, FALSE);
  set_bar (&plot->bars[3], _ ("gauge, in all"), &result->grr, FALSE);
  set_bar (&plot->bars[4], _ ("pieces"), &result->pv, TRUE);
}

static GPtrArray *
copy_texts (const GPtrArray *texts)
{
  GPtrArray *copy = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < texts->len; i++)
    g_ptr_array_add (copy, g_strdup (g_ptr_array_index (texts, i)));
  return copy;
}

/* Takes the mean of each piece from its readings. */
static void
take_readings (TmStudyPlot *plot, const TmJob *job, const TmStudy *study)
{
  const guint n = plot->people * plot->repeats;

  plot->away = tm_study_values (job, study);
  for (guint i = 0; i < plot->pieces; i++)
    {
      double *of_piece = plot->away + i * n, mean = of_piece[0];

      for (guint k = 1; k < n; k++)
        mean += (of_piece[k] - of_piece[0]) / n;
      for (guint k = 0; k < n; k++)
        {
          of_piece[k] -= mean;
          plot->reach = MAX (plot->reach, fabs (of_piece[k]));
        }
    }
}

TmStudyPlot *
tm_study_plot_new (const TmJob *job, const TmStudy *study, const TmStudyResult *result)
{
  TmStudyPlot *plot;

  g_return_val_if_fail (job != NULL && study != NULL && result != NULL, NULL);
  plot = g_new0 (TmStudyPlot, 1);
  plot->unit = study->unit;
  plot->status = result->status;
  plot->band = tm_study_band (job, study);
  plot->percent_band = result->percent_band;
  plot->pieces = result->pieces;
  plot->people = result->people;
  plot->repeats = result->repeats;
  plot->piece_names = copy_texts (study->pieces);
  plot->people_names = copy_texts (study->people);
  set_bars (plot, result);
  if (is_complete (plot))
    take_readings (plot, job, study);
  return plot;
}

void
tm_study_plot_free (TmStudyPlot *plot)
{
  if (plot == NULL)
    return;
  g_free (plot->away);
  g_ptr_array_unref (plot->piece_names);
  g_ptr_array_unref (plot->people_names);
  g_free (plot);
}

static void
describe_bar (const TmStudyPlot *plot, const TmStudyBar *bar, GString *out)
{
  g_autofree char *size = tm_study_number (bar->size, plot->unit);
  g_autofree char *low = tm_study_number (bar->low, plot->unit);
  g_autofree char *high = tm_study_number (bar->high, plot->unit);

  if (isnan (bar->size))
    g_string_append_printf (out, _ ("%s: not known"), bar->label);
  else
    g_string_append_printf (out, _ ("%s: %s, between %s and %s"), bar->label, size, low, high);
  g_string_append (out, ". ");
}

char *
tm_study_plot_describe_parts (const TmStudyPlot *plot)
{
  GString *out;

  g_return_val_if_fail (plot != NULL, NULL);
  if (!is_complete (plot))
    return g_strdup (_ (tm_study_status_text (plot->status)));
  out = g_string_new (NULL);
  g_string_append_printf (out, _ ("What each part spreads, six standard deviations, in %s"),
                          tm_unit_symbol (plot->unit));
  g_string_append (out, ". ");
  for (guint i = 0; i < TM_N_STUDY_PARTS; i++)
    describe_bar (plot, &plot->bars[i], out);
  if (plot->band > 0)
    {
      g_autofree char *band = tm_study_number (plot->band, plot->unit);
      g_string_append_printf (out, _ ("The band is %s wide; the gauge in all takes %.0f %% of it."), band,
                              plot->percent_band);
    }
  else
    g_string_append (out, _ ("There is no band to compare with."));
  return g_string_free (out, FALSE);
}

static double
find_person_mean (const TmStudyPlot *plot, guint person)
{
  double sum = 0;

  for (guint i = 0; i < plot->pieces; i++)
    for (guint k = 0; k < plot->repeats; k++)
      sum += plot->away[(i * plot->people + person) * plot->repeats + k];
  return sum / plot->pieces / plot->repeats;
}

static double
find_spread (const TmStudyPlot *plot, guint cell)
{
  double low = INFINITY, high = -INFINITY;

  for (guint k = 0; k < plot->repeats; k++)
    {
      low = MIN (low, plot->away[cell * plot->repeats + k]);
      high = MAX (high, plot->away[cell * plot->repeats + k]);
    }
  return high - low;
}

/* How far each person lies from the mean of all. */
static void
describe_people (const TmStudyPlot *plot, GString *out)
{
  for (guint i = 0; i < plot->people && plot->people > 1; i++)
    {
      const double mean = find_person_mean (plot, i);
      g_autofree char *text = tm_study_number (fabs (mean), plot->unit);

      g_string_append_c (out, ' ');
      g_string_append_printf (out,
                              mean > 0 ? _ ("%s reads %s %s above the mean of all.")
                                       : _ ("%s reads %s %s below the mean of all."),
                              (const char *)g_ptr_array_index (plot->people_names, i), text,
                              tm_unit_symbol (plot->unit));
    }
}

static void
describe_widest (const TmStudyPlot *plot, GString *out)
{
  g_autofree char *text = NULL;
  guint widest = 0;

  for (guint i = 1; i < plot->pieces * plot->people; i++)
    if (find_spread (plot, i) > find_spread (plot, widest))
      widest = i;
  text = tm_study_number (find_spread (plot, widest), plot->unit);
  g_string_append_c (out, ' ');
  g_string_append_printf (out, _ ("Repeats differ most on piece %s by %s: by %s %s."),
                          (const char *)g_ptr_array_index (plot->piece_names, widest / plot->people),
                          (const char *)g_ptr_array_index (plot->people_names, widest % plot->people), text,
                          tm_unit_symbol (plot->unit));
}

char *
tm_study_plot_describe_pieces (const TmStudyPlot *plot)
{
  GString *out;

  g_return_val_if_fail (plot != NULL, NULL);
  if (!is_complete (plot))
    return g_strdup (_ (tm_study_status_text (plot->status)));
  out = g_string_new (NULL);
  g_string_append_printf (out, _ ("Readings less the mean of their piece: pieces %u, people %u, repeats %u."),
                          plot->pieces, plot->people, plot->repeats);
  describe_people (plot, out);
  describe_widest (plot, out);
  return g_string_free (out, FALSE);
}
