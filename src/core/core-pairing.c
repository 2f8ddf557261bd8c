/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which bush to which bore: the chance of a fit outside the wanted range is what a pair costs.
 */

#include "core-pairing.h"

#include <math.h>

/* All that the second wish, nearness to the middle, may cost in expected fits outside. */
#define MIDDLE_WEIGHT 1e-9

typedef struct {
  const TmFitPart *bores, *shafts;
  guint n_bores, n_shafts;
  const TmFitWant *want;
} Parts;

/* -------- What a pair costs -------- */

/* Where both are exact the whole range is within or it is not. */
static double
get_outside (const TmFitCheck *check, const TmFitWant *want)
{
  if (check->u > 0)
    return CLAMP (1 - check->within, 0, 1);
  return tm_fit_is_within (check, want) ? 0 : 1;
}

/* How far the pair lies from where it is best. */
static double
get_off (const TmFitCheck *check, const TmFitWant *want)
{
  double middle = (check->least + check->most) / 2;

  if (want->has_least && want->has_most)
    return fabs (middle - ((double)want->least + (double)want->most) / 2);
  return want->has_least ? MAX (0, (double)want->least - middle) : MAX (0, middle - (double)want->most);
}

/* Adds to each cost its share of the second wish, by the square: one pair far off is worse than two that
 * are half as far. */
static void
add_wish (double *cost, const double *off, gsize n, guint n_pairs)
{
  double most = 0;

  for (gsize i = 0; i < n; i++)
    most = MAX (most, off[i]);
  for (gsize i = 0; most > 0 && i < n; i++)
    cost[i] += MIDDLE_WEIGHT / n_pairs * (off[i] / most) * (off[i] / most);
}

/* Every part was checked before. */
static double *
make_costs (const Parts *parts)
{
  gsize n = (gsize)parts->n_bores * parts->n_shafts;
  double *cost = g_new (double, n);
  g_autofree double *off = g_new (double, n);

  for (gsize i = 0; i < n; i++)
    {
      TmFitCheck check;

      tm_fit_check (&parts->bores[i / parts->n_shafts], &parts->shafts[i % parts->n_shafts], parts->want,
                    &check);
      cost[i] = get_outside (&check, parts->want);
      off[i] = get_off (&check, parts->want);
    }
  add_wish (cost, off, n, MIN (parts->n_bores, parts->n_shafts));
  return cost;
}

/* -------- What cannot be paired -------- */

static TmFitStatus
check_part (const TmFitPart *part, const TmFitWant *want)
{
  TmFitCheck ignored;

  return tm_fit_check (part, part, want, &ignored);
}

static TmFitStatus
check_parts (const Parts *parts, guint *culprit)
{
  for (guint i = 0; i < parts->n_bores + parts->n_shafts; i++)
    {
      const TmFitPart *part = i < parts->n_bores ? &parts->bores[i] : &parts->shafts[i - parts->n_bores];
      TmFitStatus status = check_part (part, parts->want);

      if (status == TM_FIT_BAD_WANT)
        return status;
      *culprit = i;
      if (status != TM_FIT_OK)
        return status;
    }
  *culprit = TM_ASSIGN_NONE;
  return TM_FIT_OK;
}

/* -------- Pairing -------- */

static TmPair
make_pair (const Parts *parts, guint bore, guint shaft)
{
  TmPair pair = { bore, shaft, NAN, { NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN } };

  if (shaft == TM_ASSIGN_NONE)
    return pair;
  tm_fit_check (&parts->bores[bore], &parts->shafts[shaft], parts->want, &pair.check);
  pair.outside = get_outside (&pair.check, parts->want);
  return pair;
}

static double
sum_first_come (const Parts *parts)
{
  double sum = 0;

  for (guint i = 0; i < MIN (parts->n_bores, parts->n_shafts); i++)
    sum += make_pair (parts, i, i).outside;
  return sum;
}

static void
pair_all (const Parts *parts, TmPairing *out)
{
  g_autofree double *cost = make_costs (parts);
  g_autofree guint *shaft_of = g_new (guint, parts->n_bores);

  tm_assign (cost, parts->n_bores, parts->n_shafts, shaft_of);
  out->n_pairs = parts->n_bores;
  out->pairs = g_new (TmPair, parts->n_bores);
  for (guint i = 0; i < parts->n_bores; i++)
    {
      out->pairs[i] = make_pair (parts, i, shaft_of[i]);
      if (shaft_of[i] != TM_ASSIGN_NONE)
        out->expected_outside += out->pairs[i].outside;
    }
  out->first_come = sum_first_come (parts);
}

TmFitStatus
tm_pair_fits (const TmFitPart *bores, guint n_bores, const TmFitPart *shafts, guint n_shafts,
              const TmFitWant *want, TmPairing *out, guint *culprit)
{
  Parts parts = { bores, shafts, n_bores, n_shafts, want };
  guint ignored;
  TmFitStatus status;

  if (culprit == NULL)
    culprit = &ignored;
  *culprit = TM_ASSIGN_NONE;
  g_return_val_if_fail (out != NULL && want != NULL, TM_FIT_NO_WANT);
  *out = (TmPairing) { NULL };
  g_return_val_if_fail ((bores != NULL || n_bores == 0) && (shafts != NULL || n_shafts == 0),
                        TM_FIT_NOT_MEASURED);
  if (!want->has_least && !want->has_most)
    return TM_FIT_NO_WANT;
  if (n_bores > TM_PAIR_MOST || n_shafts > TM_PAIR_MOST)
    return TM_FIT_TOO_MANY;
  status = check_parts (&parts, culprit);
  if (status == TM_FIT_OK && n_bores > 0)
    pair_all (&parts, out);
  return status;
}

void
tm_pairing_clear (TmPairing *pairing)
{
  g_clear_pointer (&pairing->pairs, g_free);
  pairing->n_pairs = 0;
}
