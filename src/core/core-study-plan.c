/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The cells of a gauge study: which comes when, and what stands in each.
 */

#include "core-study.h"

#include <math.h>

#include "core-station.h"

/* SplitMix64 (Vigna, public domain, 2015): the same numbers on every machine. */
static guint64
draw (guint64 *state)
{
  guint64 z = *state += G_GUINT64_CONSTANT (0x9E3779B97F4A7C15);

  z = (z ^ (z >> 30)) * G_GUINT64_CONSTANT (0xBF58476D1CE4E5B9);
  z = (z ^ (z >> 27)) * G_GUINT64_CONSTANT (0x94D049BB133111EB);
  return z ^ (z >> 31);
}

/* 0..@n - 1, each as likely as the other. */
static guint
draw_below (guint64 *state, guint n)
{
  const guint64 whole = G_MAXUINT64 - G_MAXUINT64 % n;
  guint64 drawn;

  do
    drawn = draw (state);
  while (drawn >= whole);
  return (guint)(drawn % n);
}

/* Fisher and Yates, in Durstenfeld's form. */
static guint *
shuffle (guint n, guint64 seed)
{
  guint *order = g_new (guint, n);

  for (guint i = 0; i < n; i++)
    order[i] = i;
  for (guint i = n; i > 1; i--)
    {
      const guint j = draw_below (&seed, i), kept = order[i - 1];

      order[i - 1] = order[j];
      order[j] = kept;
    }
  return order;
}

/* Runs of one study differ although their seeds are neighbours. */
static guint64
seed_run (const TmStudy *study, guint run)
{
  guint64 state = (guint64)study->seed.count;

  state = draw (&state) + run;
  return draw (&state);
}

static guint
count_repeats (const TmStudy *study)
{
  return (guint)CLAMP (study->repeats.count, 0, G_MAXINT);
}

guint
tm_study_n_cells (const TmStudy *study)
{
  const double n = (double)study->pieces->len * study->people->len * count_repeats (study);

  return n <= TM_STUDY_MOST_CELLS ? (guint)n : 0;
}

TmStudyCell
tm_study_cell (const TmStudy *study, guint n)
{
  const guint pieces = study->pieces->len, run = n / pieces;
  g_autofree guint *order = shuffle (pieces, seed_run (study, run));

  return (TmStudyCell) { order[n % pieces], run % study->people->len, run / study->people->len };
}

static GHashTable *
index_texts (const GPtrArray *texts)
{
  GHashTable *places = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < texts->len; i++)
    g_hash_table_insert (places, g_ptr_array_index (texts, i), GUINT_TO_POINTER (i + 1));
  return places;
}

static guint
find_cell (const TmStudy *study, const TmStudyReading *reading, GHashTable *pieces, GHashTable *people)
{
  const guint piece = GPOINTER_TO_UINT (g_hash_table_lookup (pieces, reading->piece));
  const guint person = GPOINTER_TO_UINT (g_hash_table_lookup (people, reading->person));

  if (piece == 0 || person == 0 || reading->trial.count < 1 || reading->trial.count > study->repeats.count)
    return G_MAXUINT;
  return ((piece - 1) * study->people->len + person - 1) * count_repeats (study) + (guint)reading->trial.count
         - 1;
}

double *
tm_study_values (const TmJob *job, const TmStudy *study)
{
  const guint n = tm_study_n_cells (study);
  double *values = g_new (double, MAX (1, n));
  g_autoptr (GHashTable) pieces = index_texts (study->pieces);
  g_autoptr (GHashTable) people = index_texts (study->people);

  for (guint i = 0; i < n; i++)
    values[i] = NAN;
  for (guint i = 0; i < job->study_readings->len; i++)
    {
      const TmStudyReading *reading = g_ptr_array_index (job->study_readings, i);
      const guint cell = g_str_equal (reading->study, study->name) && reading->value.given
                             ? find_cell (study, reading, pieces, people)
                             : G_MAXUINT;

      if (cell < n)
        values[cell] = tm_count_to_double (reading->value.count, study->unit);
    }
  return values;
}

double
tm_study_band (const TmJob *job, const TmStudy *study)
{
  const TmFeature *feature = tm_job_find_feature (job, study->feature);
  TmLimits limits;

  if (study->band.given)
    return tm_count_to_double (study->band.count, study->unit);
  if (feature == NULL || tm_unit_dimension (feature->unit) != tm_unit_dimension (study->unit))
    return 0;
  limits = tm_feature_limits (feature);
  return tm_count_to_double (tm_limits_band (&limits), study->unit);
}

static guint
find_place (const TmStudy *study, TmStudyCell cell)
{
  return (cell.piece * study->people->len + cell.person) * count_repeats (study) + cell.trial;
}

gboolean
tm_study_next (const TmJob *job, const TmStudy *study, TmStudyCell *cell, guint *n)
{
  g_autofree double *values = tm_study_values (job, study);

  for (guint i = 0; i < tm_study_n_cells (study); i++)
    {
      *cell = tm_study_cell (study, i);
      *n = i;
      if (isnan (values[find_place (study, *cell)]))
        return TRUE;
    }
  return FALSE;
}

guint
tm_study_n_done (const TmJob *job, const TmStudy *study)
{
  g_autofree double *values = tm_study_values (job, study);
  guint n = 0;

  for (guint i = 0; i < tm_study_n_cells (study); i++)
    n += !isnan (values[i]);
  return n;
}

void
tm_study_result (const TmJob *job, const TmStudy *study, TmStudyResult *out)
{
  g_autofree double *values = tm_study_values (job, study);

  const guint repeats = tm_study_n_cells (study) > 0 ? count_repeats (study) : 0;

  tm_study_analyse (values, study->pieces->len, study->people->len, repeats, tm_study_band (job, study), out);
}
