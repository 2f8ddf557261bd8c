/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * support-fits: invented batches of measured bores and bushes, and matrices of costs, for the tests and the
 * benchmark of pairing.
 */

#pragma once

#include <math.h>

#include "core-pairing.h"

#define SUPPORT_MICRON 1000000.0 /* counts */

static inline double
support_normal (GRand *rand)
{
  return sqrt (-2 * log (1 - g_rand_double (rand))) * cos (2 * G_PI * g_rand_double (rand));
}

/* @n parts about 25 mm, @off µm from it: sizes of standard deviation @spread µm, a form of up to @form µm,
 * read with @u µm. */
static inline TmFitPart *
support_parts (GRand *rand, guint n, double off, double spread, double form, double u)
{
  TmFitPart *parts = g_new0 (TmFitPart, n);

  for (guint i = 0; i < n; i++)
    {
      double size = 25e9 + (off + spread * support_normal (rand)) * SUPPORT_MICRON;

      parts[i].smallest = (gint64)size;
      parts[i].largest = (gint64)(size + form * SUPPORT_MICRON * g_rand_double (rand));
      parts[i].u = u * SUPPORT_MICRON;
      parts[i].alpha = NAN;
      parts[i].temp = 20;
    }
  return parts;
}

/* Batches of bores and bushes, µm: well centred; bushes 4 µm too large on the whole; bores spread wide;
 * bushes far too large. */
typedef struct {
  double off, bore_spread, bush_spread;
} SupportBatch;
static const SupportBatch support_batches[] = { { 25, 3, 3 }, { 29, 3, 3 }, { 25, 6, 3 }, { 33, 4, 4 } };

static inline void
support_batch (GRand *rand, const SupportBatch *batch, guint n, TmFitPart **bores, TmFitPart **bushes)
{
  *bores = support_parts (rand, n, 0, batch->bore_spread, 1, 0.8);
  *bushes = support_parts (rand, n, batch->off, batch->bush_spread, 1, 0.8);
}

/* P(fit outside what is wanted) of each bore with each bush. */
static inline double *
support_costs (const TmFitPart *bores, guint n_bores, const TmFitPart *bushes, guint n_bushes,
               const TmFitWant *want)
{
  double *cost = g_new (double, (gsize)n_bores *n_bushes);

  for (guint i = 0; i < n_bores; i++)
    for (guint j = 0; j < n_bushes; j++)
      {
        TmFitCheck check;

        g_assert_cmpint (tm_fit_check (&bores[i], &bushes[j], want, &check), ==, TM_FIT_OK);
        cost[(gsize)i * n_bushes + j] = 1 - check.within;
      }
  return cost;
}

typedef enum {
  SUPPORT_COSTS_RANDOM,   /* even from 0 to 1 */
  SUPPORT_COSTS_WHOLE,    /* whole numbers of a small range: many assignments cost the same */
  SUPPORT_COSTS_EQUAL,    /* all the same */
  SUPPORT_COSTS_PRODUCT,  /* row times column: the longest ways of all for shortest paths */
  SUPPORT_COSTS_NEGATIVE, /* of either sign */
  SUPPORT_COSTS_SORTED,   /* the distance of two sizes on a line: every order without crossings is as good */
  SUPPORT_COSTS_CERTAIN,  /* 0 or 1, one in five 0 */
  SUPPORT_N_COSTS
} SupportCosts;

static const char *const support_costs_names[SUPPORT_N_COSTS]
    = { "random", "whole numbers", "all equal", "products", "either sign", "distances", "0 or 1" };

static inline double
support_cost (GRand *rand, SupportCosts kind, guint row, guint column)
{
  switch (kind)
    {
    case SUPPORT_COSTS_WHOLE:
      return g_rand_int_range (rand, 0, 10);
    case SUPPORT_COSTS_EQUAL:
      return 0.25;
    case SUPPORT_COSTS_PRODUCT:
      return (row + 1.0) * (column + 1.0);
    case SUPPORT_COSTS_NEGATIVE:
      return g_rand_double_range (rand, -1, 1);
    case SUPPORT_COSTS_SORTED:
      return fabs (row * 1.5 - column);
    case SUPPORT_COSTS_CERTAIN:
      return g_rand_int_range (rand, 0, 5) > 0;
    case SUPPORT_COSTS_RANDOM:
    case SUPPORT_N_COSTS:
    default:
      return g_rand_double (rand);
    }
}

static inline double *
support_matrix (GRand *rand, SupportCosts kind, guint n_rows, guint n_columns)
{
  double *cost = g_new (double, (gsize)n_rows *n_columns);

  for (guint i = 0; i < n_rows; i++)
    for (guint j = 0; j < n_columns; j++)
      cost[(gsize)i * n_columns + j] = support_cost (rand, kind, i, j);
  return cost;
}
