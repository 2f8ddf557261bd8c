/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The analysis of variance of a crossed gauge study with every effect random (Searle, Casella and
 * McCulloch, Variance Components, 1992; for gauge studies Burdick, Borror and Montgomery, 2003).
 */

#include "core-study.h"

#include <float.h>
#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <math.h>

#include "core-study-interval.h"
#include "core-study-range.h"

#define POOL_ABOVE 0.25

typedef struct {
  const double *values;
  guint p, o, r; /* pieces, people, repeats */
  double *cells; /* means, relative to the first value, [piece · people + person] */
  double *pieces;
  double *people;
  double mean;
  double noise; /* squares below this are rounding of the arithmetic, not of the gauge */
} Means;

/* How far the mean lies above the first value: nothing when all are equal. */
static double
find_rise (const double *values, guint n, guint step)
{
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += values[i * step] - values[0];
  return sum / n;
}

static double
find_mean (const double *values, guint n, guint step)
{
  return values[0] + find_rise (values, n, step);
}

static void
means_init (Means *means, const double *values, guint p, guint o, guint r)
{
  double largest = 0;

  *means = (Means) { values, p, o, r, g_new (double, p *o), g_new (double, p), g_new (double, o), 0, 0 };
  for (guint i = 0; i < p * o * r; i++)
    largest = MAX (largest, fabs (values[i]));
  for (guint i = 0; i < p * o; i++)
    means->cells[i] = (values[i * r] - values[0]) + find_rise (values + i * r, r, 1);
  for (guint i = 0; i < p; i++)
    means->pieces[i] = find_mean (means->cells + i * o, o, 1);
  for (guint i = 0; i < o; i++)
    means->people[i] = find_mean (means->cells + i, p, o);
  means->mean = find_mean (means->pieces, p, 1);
  means->noise = 8 * DBL_EPSILON * largest;
}

static void
means_clear (Means *means)
{
  g_free (means->cells);
  g_free (means->pieces);
  g_free (means->people);
}

static double
square (const Means *means, double deviation)
{
  return fabs (deviation) <= means->noise ? 0 : deviation * deviation;
}

static double
sum_error (const Means *means)
{
  double sum = 0;

  for (guint i = 0; i < means->p * means->o; i++)
    for (guint k = 0; k < means->r; k++)
      sum += square (means, means->values[i * means->r + k] - means->values[0] - means->cells[i]);
  return sum;
}

static double
sum_interaction (const Means *means)
{
  double sum = 0;

  for (guint i = 0; i < means->p; i++)
    for (guint j = 0; j < means->o; j++)
      sum += square (means,
                     means->cells[i * means->o + j] - means->pieces[i] - means->people[j] + means->mean);
  return sum * means->r;
}

static double
sum_main (const Means *means, const double *level, guint n, guint each)
{
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += square (means, level[i] - means->mean);
  return sum * each;
}

/* The mean squares, and by how many degrees of freedom each is known. */
typedef struct {
  double p, o, r;
  TmSquare pieces, people, interaction, error; /* factor 1 */
} Table;

static TmSquare
make_square (double sum, double dof)
{
  return (TmSquare) { 1, dof > 0 ? sum / dof : NAN, dof };
}

static Table
make_table (const double *values, guint p, guint o, guint r)
{
  Table table = { p, o, r, { 0 }, { 0 }, { 0 }, { 0 } };
  Means means;

  means_init (&means, values, p, o, r);
  table.pieces = make_square (sum_main (&means, means.pieces, p, o * r), p - 1);
  table.people = make_square (sum_main (&means, means.people, o, p * r), o - 1);
  table.interaction = make_square (sum_interaction (&means), (p - 1.0) * (o - 1.0));
  table.error = make_square (sum_error (&means), (double)p * o * (r - 1.0));
  means_clear (&means);
  return table;
}

static TmSquare
scale (TmSquare square, double factor)
{
  square.factor = factor;
  return square;
}

/* P(F > MS_po / MS_e) when people and pieces do not interact. */
static double
find_p_interaction (const Table *table)
{
  if (table->interaction.ms <= 0)
    return 1;
  if (table->error.ms <= 0)
    return 0;
  return gsl_cdf_fdist_Q (table->interaction.ms / table->error.ms, table->interaction.dof, table->error.dof);
}

/* From now on interaction and repeatability are one. */
static void
pool (Table *table)
{
  const double dof = table->interaction.dof + table->error.dof;
  const double sum = table->interaction.ms * table->interaction.dof + table->error.ms * table->error.dof;

  table->error = make_square (sum, dof);
  table->interaction = table->error;
}

static const TmStudyPart unknown = { NAN, NAN, NAN };

/* @variance as estimated, held inside the interval of the untruncated sum. */
static TmStudyPart
make_part (double variance, const TmSquare *squares, guint n)
{
  TmStudyPart part = { sqrt (MAX (0, variance)), 0, 0 };
  double low, high;

  tm_squares_interval (squares, n, &low, &high);
  part.low = MIN (sqrt (low), part.sd);
  part.high = MAX (sqrt (high), part.sd);
  return part;
}

/* (@above - @below) / @count: the component that lifts one mean square over the other. */
static TmStudyPart
make_difference (const TmSquare *above, const TmSquare *below, double count)
{
  const TmSquare squares[] = { scale (*above, 1 / count), scale (*below, -1 / count) };

  return make_part ((above->ms - below->ms) / count, squares, 2);
}

static double
sum_squares (double a, double b, double c)
{
  return a * a + b * b + c * c;
}

/* Sums of mean squares that give the same variance, in the full model. */
static void
add_sums (const Table *t, TmStudyResult *out)
{
  const double grr = sum_squares (out->ev.sd, out->av.sd, out->interaction.sd);
  const double crossed = out->pooled ? 0 : t->p - 1;
  const double repeat = out->pooled ? t->p * t->r - 1 : t->p * (t->r - 1);
  const double crossed_all = out->pooled ? 0 : t->p * t->o - t->p - t->o;
  const double repeat_all = out->pooled ? t->p * t->o * t->r - t->p - t->o : t->p * t->o * (t->r - 1);
  const double n = t->p * t->r, all = n * t->o;
  const TmSquare measuring[]
      = { scale (t->people, 1 / n), scale (t->interaction, crossed / n), scale (t->error, repeat / n) };
  const TmSquare total[] = { scale (t->pieces, t->p / all), scale (t->people, t->o / all),
                             scale (t->interaction, crossed_all / all), scale (t->error, repeat_all / all) };

  out->grr = make_part (grr, measuring, 3);
  out->tv = make_part (grr + out->pv.sd * out->pv.sd, total, 4);
}

/* What people add in all, from the mean squares that carry it. */
static void
add_between (const Table *t, TmStudyResult *out)
{
  const double n = t->p * t->r;
  const gboolean has_people = out->av.sd > 0, has_crossed = out->interaction.sd > 0;
  TmSquare squares[3];

  out->between = hypot (out->av.sd, out->interaction.sd);
  out->between_dof = NAN;
  if (!has_people && !has_crossed)
    return;
  squares[0] = scale (t->people, has_people ? 1 / n : 0);
  squares[1] = scale (t->interaction, (has_crossed ? 1 / t->r : 0) - (has_people ? 1 / n : 0));
  squares[2] = scale (t->error, has_crossed ? -1 / t->r : 0);
  out->between_dof = tm_squares_dof (squares, 3);
}

static void
analyse_people (Table *t, TmStudyResult *out)
{
  out->p_interaction = find_p_interaction (t);
  out->pooled = out->p_interaction > POOL_ABOVE;
  out->interaction = make_difference (&t->interaction, &t->error, t->r);
  if (out->pooled)
    {
      out->interaction.sd = out->interaction.low = 0; /* what it may still be keeps its upper bound */
      pool (t);
    }
  out->ev = make_part (t->error.ms, &t->error, 1);
  out->av = make_difference (&t->people, &t->interaction, t->p * t->r);
  out->pv = make_difference (&t->pieces, &t->interaction, t->o * t->r);
  add_sums (t, out);
  add_between (t, out);
}

/* One way: pieces over repeats.  What another person would add stays unknown. */
static void
analyse_one_person (const Table *t, TmStudyResult *out)
{
  const TmSquare total[] = { scale (t->pieces, 1 / t->r), scale (t->error, (t->r - 1) / t->r) };

  out->p_interaction = out->between = out->between_dof = NAN;
  out->av = out->interaction = unknown;
  out->ev = out->grr = make_part (t->error.ms, &t->error, 1);
  out->pv = make_difference (&t->pieces, &t->error, t->r);
  out->tv = make_part (sum_squares (out->ev.sd, out->pv.sd, 0), total, 2);
}

double
tm_study_band_share (double sd, double band)
{
  return band > 0 ? 100 * 6 * sd / band : NAN;
}

static void
add_shares (double band, TmStudyResult *out)
{
  const double grr = out->grr.sd;

  out->percent_study = out->tv.sd > 0 ? 100 * grr / out->tv.sd : NAN;
  out->percent_band = tm_study_band_share (grr, band);
  out->ndc = grr > 0 ? (guint)CLAMP (floor (G_SQRT2 * out->pv.sd / grr), 1, G_MAXINT) : 0;
}

/* Sets what cannot be analysed; TRUE when nothing hinders it. */
static gboolean
check_cells (const double *values, TmStudyResult *out)
{
  const guint per_piece = out->people * out->repeats;
  double low = INFINITY, high = -INFINITY;

  for (guint i = 0; i < out->pieces * per_piece; i++)
    {
      low = MIN (low, values[i]);
      high = MAX (high, values[i]);
      if (isfinite (values[i]) || out->n_missing++ > 0)
        continue;
      out->missing_piece = i / per_piece;
      out->missing_person = i % per_piece / out->repeats;
      out->missing_trial = i % out->repeats;
    }
  if (out->n_missing > 0)
    out->status = TM_STUDY_MISSING;
  else if (!(high > low))
    out->status = TM_STUDY_NO_SPREAD;
  else
    out->status = out->people == 1 ? TM_STUDY_ONE_PERSON : TM_STUDY_OK;
  return out->status == TM_STUDY_OK || out->status == TM_STUDY_ONE_PERSON;
}

static void
set_unknown (TmStudyResult *out)
{
  out->p_interaction = out->ev_dof = out->between = out->between_dof = NAN;
  out->ms_error = out->ms_interaction = out->ms_people = out->ms_pieces = NAN;
  out->percent_study = out->percent_band = NAN;
  out->ev = out->av = out->interaction = out->grr = out->pv = out->tv = unknown;
  out->range = (TmStudyRange) { NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN };
}

void
tm_study_analyse (const double *values, guint pieces, guint people, guint repeats, double band,
                  TmStudyResult *out)
{
  Table table;

  g_return_if_fail (out != NULL);

  *out = (TmStudyResult) {
    .status = TM_STUDY_TOO_SMALL, .pieces = pieces, .people = people, .repeats = repeats
  };
  set_unknown (out);
  if (pieces < 2 || people < 1 || repeats < 2 || !check_cells (values, out))
    return;
  table = make_table (values, pieces, people, repeats);
  out->ms_error = table.error.ms;
  out->ms_interaction = table.interaction.ms;
  out->ms_people = table.people.ms;
  out->ms_pieces = table.pieces.ms;
  if (people == 1)
    analyse_one_person (&table, out);
  else
    analyse_people (&table, out);
  out->ev_dof = table.error.dof;
  add_shares (band, out);
  tm_study_range (values, pieces, people, repeats, &out->range);
}

const char *
tm_study_status_text (TmStudyStatus status)
{
  static const char *const texts[] = {
    [TM_STUDY_OK] = N_ ("The study is complete."),
    [TM_STUDY_ONE_PERSON]
    = N_ ("One person: repeatability only; what another person would add is not known."),
    [TM_STUDY_MISSING]
    = N_ ("Readings are missing: every person takes every piece the same number of times."),
    [TM_STUDY_TOO_SMALL] = N_ ("A study needs at least two pieces, one person and two repeats."),
    [TM_STUDY_NO_SPREAD] = N_ (
        "Every value is equal: the step of the gauge hides what there is; read finer, or take other pieces."),
  };

  G_STATIC_ASSERT (G_N_ELEMENTS (texts) == TM_N_STUDY_STATUSES);
  g_return_val_if_fail (status < TM_N_STUDY_STATUSES, "");
  return texts[status];
}
