/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-cut-chances: where the stations will be after a cut, and the chances of metal gone and metal left.
 *
 * Given s_e the sizes at the stations are jointly normal.  What they share (bias, response, scatter of the
 * cutter) is drawn out as one common part, X_k = μ_k + g_k z + d_k z_k: with g_j g_k as near to the
 * covariance of X_j and X_k as one common part can be.  It is exact where all stations were read alike, which
 * is the rule; where they were not it is held against simulated draws in the tests.  Then
 *   P(none gone) = ∫ Π Φ((F - μ_k - g_k z)/d_k) φ(z) dz
 * and likewise for the near limit, by Gauss-Legendre only where the product is neither nothing nor one, so
 * that a steep product (d_k far smaller than g_k) costs no accuracy.
 */

#include <math.h>

#include "core-cut-private.h"

/* Beyond this many standard deviations a normal tail (3e-7) is left out. */
#define REACH 5.0
/* A station that lies further back than another by twice this many of their own standard deviations is never
 * the first of them to pass a limit: leaving it out costs a share of 1e-5 of the chance. */
#define APART 3.0
/* Parts below these, of one count, are taken as these, so that nothing is divided by nothing. */
#define LEAST_OWN    1e-3
#define LEAST_COMMON 1e-6
/* Sweeps that fit the common part: what they change after this many is far below a share of 1e-3. */
#define SWEEPS 6

/* P(Z <= x). */
static double
get_below (double x)
{
  return erfc (-x * M_SQRT1_2) / 2;
}

/* -------- Sizes -------- */

/* Mean and variance of the mean size after @change, given s_e. */
static double
find_mean_size (const TmCutBelief *belief, const TmCutNode *node, double change, double *variance)
{
  const double *of_b = node->covariance;
  double mean = change * node->mean[TM_CUT_AT_RESPONSE], n = belief->n_read;

  *variance = change > 0 ? change * change * of_b[0] + node->scatter * node->scatter : 0;
  for (guint a = 0; a < belief->n_read; a++)
    {
      guint k = TM_CUT_AT_STATION (belief->read_stations[a]);

      mean += node->mean[k] / n;
      *variance += 2 * change * of_b[k] / n;
      for (guint b = 0; b < belief->n_read; b++)
        *variance += node->covariance[k * belief->n + TM_CUT_AT_STATION (belief->read_stations[b])] / (n * n);
    }
  return mean;
}

static void
mix_mean_size (const TmCutBelief *belief, double change, double *mean, double *sd)
{
  double means[TM_CUT_NODES], variances[TM_CUT_NODES], square = 0;

  *mean = 0;
  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      means[j] = find_mean_size (belief, &belief->nodes[j], change, &variances[j]);
      *mean += belief->nodes[j].weight * means[j];
    }
  for (guint j = 0; j < TM_CUT_NODES; j++)
    square += belief->nodes[j].weight * (variances[j] + (means[j] - *mean) * (means[j] - *mean));
  *sd = sqrt (MAX (0, square));
  if (!belief->grows)
    *mean = -*mean;
}

void
tm_cut_say_sizes (const TmCutBelief *belief, double change, TmCutPlan *out)
{
  double moved, low = INFINITY, high = -INFINITY;

  if (belief->n_read == 0)
    return;
  mix_mean_size (belief, 0, &out->size, &out->size_u);
  mix_mean_size (belief, change, &out->predicted, &out->predicted_u);
  moved = out->predicted - out->size;
  for (guint a = 0; a < belief->n_read; a++)
    {
      double size, u;

      tm_cut_belief_size (belief, belief->read_stations[a], &size, &u);
      low = MIN (low, size + moved);
      high = MAX (high, size + moved);
    }
  out->predicted_low = low;
  out->predicted_high = high;
}

/* -------- The common part -------- */

typedef struct {
  guint n;
  double covariance[TM_CUT_MOST_STATIONS][TM_CUT_MOST_STATIONS];
} Joint;

static void
fill_joint (const TmCutBelief *belief, guint at_node, double change, const TmCutNext *next, Joint *joint,
            TmCutSpread *out)
{
  const TmCutNode *node = &belief->nodes[at_node];
  const double *of_b = node->covariance; /* its row */
  const double *of_m = NULL;
  guint n = belief->n, m = 0;
  double all = change > 0 ? change * change * of_b[0] + node->scatter * node->scatter : 0;

  if (next != NULL && next->method < TM_CUT_METHODS && belief->method_shared[next->method] >= 0)
    {
      m = TM_CUT_AT_METHOD (next->method);
      of_m = &node->covariance[m * n];
      all += of_m[m] + 2 * change * of_b[m];
    }
  else if (next != NULL)
    all += next->shared * next->shared;
  joint->n = out->n = belief->n_read;
  for (guint a = 0; a < joint->n; a++)
    {
      guint k = TM_CUT_AT_STATION (belief->read_stations[a]);

      out->mean[a] = node->mean[k] + change * node->mean[TM_CUT_AT_RESPONSE] + (of_m ? node->mean[m] : 0);
      for (guint b = 0; b <= a; b++)
        {
          guint l = TM_CUT_AT_STATION (belief->read_stations[b]);
          double sum = node->covariance[k * n + l] + change * (of_b[k] + of_b[l]) + all;

          if (of_m)
            sum += of_m[k] + of_m[l];
          if (next != NULL && a == b)
            sum += next->own * next->own;
          joint->covariance[a][b] = joint->covariance[b][a] = sum;
        }
    }
}

static double
find_mean_correlation (const Joint *joint, const double *sd)
{
  double sum = 0;

  for (guint a = 1; a < joint->n; a++)
    for (guint b = 0; b < a; b++)
      sum += joint->covariance[a][b] / (sd[a] * sd[b]);
  return CLAMP (sum / (joint->n * (joint->n - 1) / 2.0), 0, 1);
}

/* Least squares over what lies off the diagonal, one g_k after the other. */
static void
fit_common (const Joint *joint, const double *sd, double *g)
{
  double squares = 0;

  for (guint a = 0; a < joint->n; a++)
    squares += g[a] * g[a];
  for (guint sweep = 0; sweep < SWEEPS; sweep++)
    for (guint a = 0; a < joint->n; a++)
      {
        double sum = 0, others = squares - g[a] * g[a], fitted;

        for (guint b = 0; b < joint->n; b++)
          sum += b == a ? 0 : joint->covariance[a][b] * g[b];
        fitted = others > 0 ? CLAMP (sum / others, 0, sd[a]) : 0;
        squares = others + fitted * fitted;
        g[a] = fitted;
      }
}

void
tm_cut_spread_after (const TmCutBelief *belief, guint node, double change, const TmCutNext *next,
                     TmCutSpread *out)
{
  Joint joint;
  double sd[TM_CUT_MOST_STATIONS], correlation;

  fill_joint (belief, node, change, next, &joint, out);
  for (guint a = 0; a < joint.n; a++)
    sd[a] = sqrt (MAX (joint.covariance[a][a], LEAST_OWN * LEAST_OWN));
  if (joint.n == 1)
    {
      out->common[0] = LEAST_COMMON;
      out->own[0] = sd[0];
      return;
    }
  correlation = find_mean_correlation (&joint, sd);
  for (guint a = 0; a < joint.n; a++)
    out->common[a] = sd[a] * sqrt (correlation);
  if (joint.n > 2)
    fit_common (&joint, sd, out->common);
  for (guint a = 0; a < joint.n; a++)
    {
      double own = sd[a] * sd[a] - out->common[a] * out->common[a];

      out->own[a] = MAX (sqrt (MAX (0, own)), LEAST_OWN);
      out->common[a] = MAX (out->common[a], LEAST_COMMON);
    }
}

/* -------- Chances of one spread -------- */

/* Gauss-Legendre, 16 points: the positive half of the abscissas and their weights (Abramowitz & Stegun,
 * Handbook of Mathematical Functions, table 25.4; held against GSL's in the tests).  With REACH they give
 * chances from 1e-5 on to a share of 4e-4. */
#define HALF_POINTS 8
static const double abscissa[HALF_POINTS]
    = { 0.0950125098376374, 0.2816035507792589, 0.4580167776572274, 0.6178762444026438,
        0.7554044083550030, 0.8656312023878318, 0.9445750230732326, 0.9894009349916499 };
static const double point_weight[HALF_POINTS]
    = { 0.1894506104550685, 0.1826034150449236, 0.1691565193950025, 0.1495959888165767,
        0.1246289712555339, 0.0951585116824928, 0.0622535239386479, 0.0271524594117541 };

/* One side of one station: which z takes it over the limit, and over how wide a slope. */
typedef struct {
  double middle, width; /* (limit - mean)/common, own/common */
} Edge;

/* The stations that can be the first to pass the far limit, or the last to reach the near one. */
typedef struct {
  guint n;
  Edge edges[TM_CUT_MOST_STATIONS];
  double from, to; /* over which z the product of all of them rises or falls */
} Edges;

static void
find_edges (const TmCutSpread *spread, double limit, gboolean is_far, Edges *out)
{
  double sign = is_far ? 1 : -1, first_from = INFINITY, first_to = INFINITY, nearest = INFINITY;

  for (guint k = 0; k < spread->n; k++)
    {
      double middle = sign * (limit - spread->mean[k]) / spread->common[k];
      double width = spread->own[k] / spread->common[k];

      out->edges[k] = (Edge) { middle, width };
      first_from = MIN (first_from, middle - REACH * width);
      first_to = MIN (first_to, middle + REACH * width);
      nearest = MIN (nearest, middle + APART * width);
    }
  out->n = 0;
  for (guint k = 0; k < spread->n; k++)
    {
      Edge edge = out->edges[k];

      if (edge.middle - APART * edge.width <= nearest)
        out->edges[out->n++] = (Edge) { sign * edge.middle, edge.width };
    }
  out->from = is_far ? first_from : -first_to;
  out->to = is_far ? first_to : -first_from;
}

/* Π over the edges: none beyond the far limit, or all beyond the near one. */
static double
get_product (const Edges *edges, gboolean is_far, double z)
{
  double product = 1;

  for (guint k = 0; k < edges->n; k++)
    {
      double at = (edges->edges[k].middle - z) / edges->edges[k].width;

      at = is_far ? at : -at;
      if (at < REACH)
        product *= get_below (at);
    }
  return product;
}

/* Every station between both limits. */
typedef struct {
  const TmCutSpread *spread;
  const TmCutLimits *limits;
} Inside;

static double
get_inside (const Inside *inside, double z)
{
  const TmCutSpread *spread = inside->spread;
  double product = 1;

  for (guint k = 0; k < spread->n && product > 0; k++)
    {
      double at = spread->mean[k] + spread->common[k] * z;
      double above = (inside->limits->far - at) / spread->own[k];
      double below = (inside->limits->near - at) / spread->own[k];
      double share = 1;

      if (above < REACH)
        share -= get_below (-above);
      if (below > -REACH)
        share -= get_below (below);
      product *= MAX (0, share);
    }
  return product;
}

typedef double (*Integrand) (gconstpointer data, double z);

static double
integrate (Integrand integrand, gconstpointer data, double from, double to)
{
  double middle, half, sum = 0;

  from = CLAMP (from, -REACH, REACH);
  to = CLAMP (to, -REACH, REACH);
  middle = (from + to) / 2;
  half = (to - from) / 2;
  if (!(half > 0))
    return 0;
  for (guint i = 0; i < HALF_POINTS; i++)
    for (int side = -1; side <= 1; side += 2)
      {
        double z = middle + side * half * abscissa[i];

        sum += point_weight[i] * exp (-z * z / 2) * integrand (data, z);
      }
  return sum * half / sqrt (2 * G_PI);
}

static double
far_integrand_cb (gconstpointer data, double z)
{
  return 1 - get_product (data, TRUE, z);
}

static double
near_integrand_cb (gconstpointer data, double z)
{
  return 1 - get_product (data, FALSE, z);
}

static double
inside_integrand_cb (gconstpointer data, double z)
{
  return get_inside (data, z);
}

/* One station alone: its own part and the common one are one normal error. */
static double
get_one (const Edges *edges)
{
  return edges->edges[0].middle / hypot (1, edges->edges[0].width);
}

static double
find_gone (const Edges *far)
{
  if (far->n == 1)
    return get_below (-get_one (far));
  return integrate (far_integrand_cb, far, far->from, far->to) + get_below (-far->to);
}

/* None gone, and some short of near.  Where the two slopes lie apart there is a room between them in which
 * all are inside; where they overlap what is inside has to be integrated itself. */
static double
find_left (const TmCutSpread *spread, const TmCutLimits *limits, const Edges *far, double gone)
{
  const Inside inside = { spread, limits };
  double middle, in;
  Edges near;

  find_edges (spread, limits->near, FALSE, &near);
  if (near.to <= far->from && near.n == 1)
    return get_below (get_one (&near));
  if (near.to <= far->from)
    return integrate (near_integrand_cb, &near, near.from, near.to) + get_below (near.from);
  if (near.from >= far->to)
    return 1 - gone;
  middle = (MAX (near.from, -REACH) + MIN (far->to, REACH)) / 2;
  in = integrate (inside_integrand_cb, &inside, near.from, middle)
       + integrate (inside_integrand_cb, &inside, middle, far->to);
  return MAX (0, 1 - gone - in);
}

/* As if the station furthest on were alone against the far limit, and the one furthest back against the near
 * one: what a search can do with. */
static void
find_rough (const TmCutSpread *spread, const TmCutLimits *limits, double *gone, double *left)
{
  double far = INFINITY, near = -INFINITY;

  for (guint k = 0; k < spread->n; k++)
    {
      double sd = hypot (spread->common[k], spread->own[k]);

      far = MIN (far, (limits->far - spread->mean[k]) / sd);
      near = MAX (near, (limits->near - spread->mean[k]) / sd);
    }
  *gone = get_below (-far);
  if (left)
    *left = MIN (get_below (near), 1 - *gone);
}

void
tm_cut_spread_chances (const TmCutSpread *spread, const TmCutLimits *limits, double *gone, double *left)
{
  Edges far;

  if (spread->n == 1)
    {
      double sd = hypot (spread->common[0], spread->own[0]);

      *gone = get_below ((spread->mean[0] - limits->far) / sd);
      if (left)
        *left = MIN (get_below ((limits->near - spread->mean[0]) / sd), 1 - *gone);
      return;
    }
  find_edges (spread, limits->far, TRUE, &far);
  *gone = CLAMP (find_gone (&far), 0, 1);
  if (left)
    *left = CLAMP (find_left (spread, limits, &far, *gone), 0, 1 - *gone);
}

/* -------- Over all s_e, and the error of the mate -------- */

static void
turn_limits (const TmCutBelief *belief, double lower, double upper, TmCutLimits *out)
{
  *out = belief->grows ? (TmCutLimits) { lower, upper } : (TmCutLimits) { -upper, -lower };
  if (isnan (out->near))
    out->near = -INFINITY;
  if (isnan (out->far))
    out->far = INFINITY;
}

TmCutTarget
tm_cut_target (const TmCutBelief *belief, const TmCutBand *band)
{
  TmCutTarget target;

  turn_limits (belief, band->lower, band->upper, &target.drawing);
  turn_limits (belief, band->mate_lower, band->mate_upper, &target.mate);
  target.mate_u = band->mate_u;
  if ((isinf (target.mate.near) && isinf (target.mate.far)) || !(target.mate_u > 0))
    target.mate_u = 0;
  return target;
}

static TmCutLimits
shift_limits (const TmCutTarget *target, double by)
{
  return (TmCutLimits) { MAX (target->drawing.near, target->mate.near + by),
                         MIN (target->drawing.far, target->mate.far + by) };
}

TmCutLimits
tm_cut_target_limits (const TmCutTarget *target)
{
  return shift_limits (target, 0);
}

/* Weights below this leave the smallest risk that anyone accepts as it is. */
#define LEAST_WEIGHT 1e-6

/* How much of the shares is wanted, and how well. */
typedef enum { WANT_ALL, WANT_GONE, WANT_ROUGH, WANT_ROUGH_GONE } Want;

static void
find_chances (const TmCutSpread *spread, const TmCutLimits *limits, Want want, double *gone, double *left)
{
  gboolean only_gone = want == WANT_GONE || want == WANT_ROUGH_GONE;

  if (want == WANT_ROUGH || want == WANT_ROUGH_GONE)
    find_rough (spread, limits, gone, only_gone ? NULL : left);
  else
    tm_cut_spread_chances (spread, limits, gone, only_gone ? NULL : left);
}

/* Where the spread lies against one pair of limits. */
static void
add_shares (const TmCutSpread *spread, const TmCutLimits *limits, double inward, Want want, double weight,
            TmCutShares *out)
{
  double gone, left;

  find_chances (spread, limits, want, &gone, &left);
  out->gone += weight * gone;
  if (want == WANT_GONE || want == WANT_ROUGH_GONE)
    return;
  if (inward > 0)
    {
      TmCutLimits worth = { limits->near + inward, limits->far - inward };
      double over;

      find_chances (spread, &worth, want, &over, &left);
      left = MIN (left, 1 - gone);
      out->in += weight * MAX (0, 1 - over - left);
    }
  else
    out->in += weight * MAX (0, 1 - gone - left);
  out->left += weight * left;
}

/* The mate's error shifts both of its limits: Gauss-Legendre over REACH standard deviations either side. */
static void
add_over_mate (const TmCutSpread *spread, const TmCutTarget *target, double inward, Want want, double weight,
               TmCutShares *out)
{
  TmCutLimits limits;

  if (!(target->mate_u > 0))
    {
      limits = shift_limits (target, 0);
      add_shares (spread, &limits, inward, want, weight, out);
      return;
    }
  for (guint i = 0; i < HALF_POINTS; i++)
    for (int side = -1; side <= 1; side += 2)
      {
        double z = side * REACH * abscissa[i];
        double share = point_weight[i] * REACH * exp (-z * z / 2) / sqrt (2 * G_PI);

        limits = shift_limits (target, z * target->mate_u);
        add_shares (spread, &limits, inward, want, weight * share, out);
      }
}

static void
sum_shares (const TmCutBelief *belief, const TmCutTarget *target, double change, const TmCutNext *next,
            double inward, Want want, TmCutShares *out)
{
  TmCutSpread spread;

  *out = (TmCutShares) { 0, 0, 0 };
  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      if (belief->nodes[j].weight < LEAST_WEIGHT)
        continue;
      tm_cut_spread_after (belief, j, change, next, &spread);
      add_over_mate (&spread, target, inward, want, belief->nodes[j].weight, out);
    }
  out->gone = CLAMP (out->gone, 0, 1);
  out->left = CLAMP (out->left, 0, 1 - out->gone);
  /* What the quadratures and the nodes left out do not give to any of them would be in. */
  out->in = inward > 0 ? CLAMP (out->in, 0, 1 - out->gone - out->left) : 1 - out->gone - out->left;
}

void
tm_cut_shares (const TmCutBelief *belief, const TmCutTarget *target, double change, double inward,
               TmCutShares *out)
{
  sum_shares (belief, target, change, NULL, inward, WANT_ALL, out);
}

void
tm_cut_rough_shares (const TmCutBelief *belief, const TmCutTarget *target, double change, double inward,
                     TmCutShares *out)
{
  sum_shares (belief, target, change, NULL, inward, WANT_ROUGH, out);
}

double
tm_cut_rough_gone (const TmCutBelief *belief, const TmCutTarget *target, double change)
{
  TmCutShares shares;

  sum_shares (belief, target, change, NULL, 0, WANT_ROUGH_GONE, &shares);
  return shares.gone;
}

double
tm_cut_share_gone (const TmCutBelief *belief, const TmCutTarget *target, double change)
{
  TmCutShares shares;

  sum_shares (belief, target, change, NULL, 0, WANT_GONE, &shares);
  return shares.gone;
}

double
tm_cut_share_proven (const TmCutBelief *belief, const TmCutTarget *target, double change,
                     const TmCutNext *next, double guard)
{
  TmCutTarget inner = *target;
  TmCutShares shares;

  inner.drawing.near += guard;
  inner.drawing.far -= guard;
  inner.mate.near += guard;
  inner.mate.far -= guard;
  if (!(inner.drawing.near <= inner.drawing.far))
    return 0;
  sum_shares (belief, &inner, change, next, 0, WANT_ALL, &shares);
  return shares.in;
}
