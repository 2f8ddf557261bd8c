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

/* Beyond this many standard deviations a normal tail (2e-9) is left out. */
#define REACH 6.0
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

/* Gauss-Legendre, 24 points: the positive half of the abscissas and their weights (Abramowitz & Stegun,
 * Handbook of Mathematical Functions, table 25.4; held against GSL's in the tests). */
#define HALF_POINTS 12
static const double abscissa[HALF_POINTS]
    = { 0.0640568928626056, 0.1911188674736163, 0.3150426796961634, 0.4337935076260451,
        0.5454214713888396, 0.6480936519369755, 0.7401241915785544, 0.8200019859739029,
        0.8864155270044011, 0.9382745520027328, 0.9747285559713095, 0.9951872199970213 };
static const double point_weight[HALF_POINTS]
    = { 0.1279381953467522, 0.1258374563468283, 0.1216704729278034, 0.1155056680537256,
        0.1074442701159656, 0.0976186521041139, 0.0861901615319533, 0.0733464814110803,
        0.0592985849154368, 0.0442774388174198, 0.0285313886289337, 0.0123412297999872 };

/* What is integrated: the share of stations' products that is beyond far, short of near, or inside. */
typedef enum { PART_GONE, PART_LEFT, PART_IN } Part;

static double
get_product (const TmCutSpread *spread, const TmCutLimits *limits, Part part, double z)
{
  double product = 1;

  for (guint k = 0; k < spread->n && product > 0; k++)
    {
      double at = spread->mean[k] + spread->common[k] * z;
      double above = (limits->far - at) / spread->own[k];
      double below = (limits->near - at) / spread->own[k];
      double inside = 1;

      if (part != PART_LEFT && above < REACH)
        inside -= get_below (-above);
      if (part != PART_GONE && below > -REACH)
        inside -= get_below (below);
      product *= MAX (0, inside);
    }
  return part == PART_IN ? product : 1 - product;
}

static double
integrate (const TmCutSpread *spread, const TmCutLimits *limits, Part part, double from, double to)
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

        sum += point_weight[i] * exp (-z * z / 2) * get_product (spread, limits, part, z);
      }
  return sum * half / sqrt (2 * G_PI);
}

/* Over which z the share beyond far rises from nothing to one, and the share short of near falls to nothing.
 */
typedef struct {
  double gone_from, gone_to, left_from, left_to;
} Slopes;

static Slopes
find_slopes (const TmCutSpread *spread, const TmCutLimits *limits)
{
  Slopes slopes = { INFINITY, INFINITY, -INFINITY, -INFINITY };

  for (guint k = 0; k < spread->n; k++)
    {
      double reach = REACH * spread->own[k], g = spread->common[k];
      double above = limits->far - spread->mean[k], below = limits->near - spread->mean[k];

      slopes.gone_from = MIN (slopes.gone_from, (above - reach) / g);
      slopes.gone_to = MIN (slopes.gone_to, (above + reach) / g);
      slopes.left_from = MAX (slopes.left_from, (below - reach) / g);
      slopes.left_to = MAX (slopes.left_to, (below + reach) / g);
    }
  return slopes;
}

static double
find_gone (const TmCutSpread *spread, const TmCutLimits *limits, const Slopes *slopes)
{
  return integrate (spread, limits, PART_GONE, slopes->gone_from, slopes->gone_to)
         + get_below (-slopes->gone_to);
}

/* None gone, and some short of near.  Where the two slopes lie apart there is a room between them in which
 * all are inside; where they overlap what is inside has to be integrated itself. */
static double
find_left (const TmCutSpread *spread, const TmCutLimits *limits, const Slopes *slopes, double gone)
{
  double middle, in;

  if (slopes->left_to <= slopes->gone_from)
    return integrate (spread, limits, PART_LEFT, slopes->left_from, slopes->left_to)
           + get_below (slopes->left_from);
  if (slopes->left_from >= slopes->gone_to)
    return 1 - gone;
  middle = (MAX (slopes->left_from, -REACH) + MIN (slopes->gone_to, REACH)) / 2;
  in = integrate (spread, limits, PART_IN, slopes->left_from, middle)
       + integrate (spread, limits, PART_IN, middle, slopes->gone_to);
  return MAX (0, 1 - gone - in);
}

void
tm_cut_spread_chances (const TmCutSpread *spread, const TmCutLimits *limits, double *gone, double *left)
{
  Slopes slopes;

  if (spread->n == 1)
    {
      double sd = hypot (spread->common[0], spread->own[0]);

      *gone = get_below ((spread->mean[0] - limits->far) / sd);
      if (left)
        *left = MIN (get_below ((limits->near - spread->mean[0]) / sd), 1 - *gone);
      return;
    }
  slopes = find_slopes (spread, limits);
  *gone = CLAMP (find_gone (spread, limits, &slopes), 0, 1);
  if (left)
    *left = CLAMP (find_left (spread, limits, &slopes, *gone), 0, 1 - *gone);
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
#define LEAST_WEIGHT 1e-7

/* Where the spread lies against one pair of limits. */
static void
add_shares (const TmCutSpread *spread, const TmCutLimits *limits, double inward, gboolean only_gone,
            double weight, TmCutShares *out)
{
  double gone, left;

  tm_cut_spread_chances (spread, limits, &gone, only_gone || inward > 0 ? NULL : &left);
  out->gone += weight * gone;
  if (only_gone)
    return;
  if (inward > 0)
    {
      TmCutLimits worth = { limits->near + inward, limits->far - inward };
      double over;

      tm_cut_spread_chances (spread, &worth, &over, &left);
      left = MIN (left, 1 - gone);
      out->in += weight * MAX (0, 1 - over - left);
    }
  else
    out->in += weight * MAX (0, 1 - gone - left);
  out->left += weight * left;
}

/* Twelve points of the mate's error by their cumulative shares: midpoints of a normal's quantiles would be
 * coarse in the tails, so Gauss-Legendre over six standard deviations either side. */
static void
add_over_mate (const TmCutSpread *spread, const TmCutTarget *target, double inward, gboolean only_gone,
               double weight, TmCutShares *out)
{
  TmCutLimits limits;

  if (!(target->mate_u > 0))
    {
      limits = shift_limits (target, 0);
      add_shares (spread, &limits, inward, only_gone, weight, out);
      return;
    }
  for (guint i = 0; i < HALF_POINTS; i++)
    for (int side = -1; side <= 1; side += 2)
      {
        double z = side * REACH * abscissa[i];
        double share = point_weight[i] * REACH * exp (-z * z / 2) / sqrt (2 * G_PI);

        limits = shift_limits (target, z * target->mate_u);
        add_shares (spread, &limits, inward, only_gone, weight * share, out);
      }
}

static void
sum_shares (const TmCutBelief *belief, const TmCutTarget *target, double change, const TmCutNext *next,
            double inward, gboolean only_gone, TmCutShares *out)
{
  TmCutSpread spread;

  *out = (TmCutShares) { 0, 0, 0 };
  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      if (belief->nodes[j].weight < LEAST_WEIGHT)
        continue;
      tm_cut_spread_after (belief, j, change, next, &spread);
      add_over_mate (&spread, target, inward, only_gone, belief->nodes[j].weight, out);
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
  sum_shares (belief, target, change, NULL, inward, FALSE, out);
}

double
tm_cut_share_gone (const TmCutBelief *belief, const TmCutTarget *target, double change)
{
  TmCutShares shares;

  sum_shares (belief, target, change, NULL, 0, TRUE, &shares);
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
  sum_shares (belief, &inner, change, next, 0, FALSE, &shares);
  return shares.in;
}
