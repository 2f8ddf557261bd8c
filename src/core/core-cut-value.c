/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-cut-value: what the cut after this one could still gain, once the next reading is there.
 *
 * What the next reading will say is not known, but how well the size will then be known is: the covariance
 * after it does not depend on its value.  Given s_e, the mean size x, the response b and the bias m of the
 * next reading are followed through the cut by c and the reading y = x + m + ε; the station furthest on
 * stands for all of them (their distances are small beside what a cut moves, and the band is narrowed by
 * them).  Then the next cut c' leaves an error of variance V + 2 c' cov(x, b) + c'² var(b) + s_e² about the
 * aim, and the aim is the middle of the band, or as near to it as the risk allows.
 */

#include <gsl/gsl_cdf.h>
#include <math.h>

#include "core-cut-private.h"

/* How far the next cuts will have taught s_e by the time they need to know it: between the mixture (0) and
 * s_e known (1).  From 0.3 to 0.7 simulated runs end alike, within a few of a hundred. */
#define LEARNED 0.5

static double
get_below (double x)
{
  return erfc (-x * M_SQRT1_2) / 2;
}

static double
get_density (double x)
{
  return exp (-x * x / 2) / sqrt (2 * G_PI);
}

/* -------- Drawing it out of the belief -------- */

static double
get_covariance (const TmCutBelief *belief, const TmCutNode *node, guint row, guint column)
{
  return node->covariance[row * belief->n + column];
}

static void
fill_node (const TmCutBelief *belief, const TmCutWish *wish, const TmCutNode *node, const TmCutSpread *spread,
           TmCutSequelNode *out)
{
  guint n = belief->n_read, most = 0, m = TM_CUT_AT_METHOD (wish->next_method);
  gboolean has_m = wish->next_method < TM_CUT_METHODS && belief->method_shared[wish->next_method] >= 0;

  out->scatter = node->scatter;
  out->weight = node->weight;
  out->b = node->mean[TM_CUT_AT_RESPONSE];
  out->b_b = get_covariance (belief, node, TM_CUT_AT_RESPONSE, TM_CUT_AT_RESPONSE);
  out->m_m = has_m ? get_covariance (belief, node, m, m) : wish->next_shared * wish->next_shared;
  out->b_m = has_m ? get_covariance (belief, node, TM_CUT_AT_RESPONSE, m) : 0;
  out->x_x = out->x_b = out->x_m = 0;
  for (guint a = 0; a < n; a++)
    {
      guint k = TM_CUT_AT_STATION (belief->read_stations[a]);

      most = spread->mean[a] > spread->mean[most] ? a : most;
      out->x_b += get_covariance (belief, node, k, TM_CUT_AT_RESPONSE) / n;
      out->x_m += has_m ? get_covariance (belief, node, k, m) / n : 0;
      for (guint b = 0; b < n; b++)
        out->x_x += get_covariance (belief, node, k, TM_CUT_AT_STATION (belief->read_stations[b]))
                    / ((double)n * n);
    }
  out->furthest = spread->mean[most];
  out->own = n > 1 ? spread->own[most] : 0;
}

static double
find_distance (const TmCutSpread *spread)
{
  double least = INFINITY, most = -INFINITY;

  for (guint a = 0; a < spread->n; a++)
    {
      least = MIN (least, spread->mean[a]);
      most = MAX (most, spread->mean[a]);
    }
  return most - least;
}

void
tm_cut_sequel_init (TmCutSequel *sequel, const TmCutBelief *belief, const TmCutWish *wish,
                    const TmCutTarget *target, double inward)
{
  TmCutLimits limits = tm_cut_target_limits (target);
  gboolean by_mate = limits.near > target->drawing.near || limits.far < target->drawing.far;
  double distance = 0;

  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      TmCutSpread spread;

      tm_cut_spread_after (belief, j, 0, NULL, &spread);
      fill_node (belief, wish, &belief->nodes[j], &spread, &sequel->nodes[j]);
      distance += belief->nodes[j].weight * find_distance (&spread);
    }
  sequel->n_stations = belief->n_read;
  sequel->near = limits.near + inward + distance;
  sequel->far = limits.far - inward;
  sequel->end = limits.far;
  sequel->mate_variance = by_mate ? target->mate_u * target->mate_u : 0;
  sequel->least = wish->least;
  sequel->further = wish->further;
  sequel->next_own = wish->next_own;
}

/* -------- After this cut and the next reading -------- */

typedef struct {
  double weight, mean, sd; /* of the station furthest on after this cut, as seen now */
  double x_x, x_b, b_b;    /* once it is read */
  double own_variance;
  double scatter;
} Ahead;

static void
look_ahead (const TmCutSequel *sequel, const TmCutSequelNode *node, double c, Ahead *out)
{
  double s2 = c > 0 ? node->scatter * node->scatter : 0, own2 = node->own * node->own;
  double x_x = node->x_x + 2 * c * node->x_b + c * c * node->b_b + s2;
  double x_b = node->x_b + c * node->b_b, x_m = node->x_m + c * node->b_m;
  double noise = sequel->next_own * sequel->next_own;
  double spread = x_x + 2 * x_m + node->m_m + noise / sequel->n_stations + 1;
  double by_x = x_x + x_m, by_b = x_b + node->b_m;

  out->weight = node->weight;
  out->mean = node->furthest + c * node->b;
  out->sd = sqrt (MAX (x_x + own2, 1));
  out->x_x = MAX (0, x_x - by_x * by_x / spread);
  out->x_b = x_b - by_x * by_b / spread;
  out->b_b = MAX (0, node->b_b - by_b * by_b / spread);
  out->own_variance = own2 > 0 ? own2 * noise / (own2 + noise + 1) : 0;
  out->scatter = node->scatter;
}

/* The part of it that has metal left: share, mean and standard deviation of the station furthest on. */
static double
find_left_part (const Ahead *ahead, double near, double *mean, double *sd)
{
  double share = 0, sum = 0, square = 0;

  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      double z = (near - ahead[j].mean) / ahead[j].sd;
      double below = get_below (z), weight = ahead[j].weight * below;
      double ratio, at, variance;

      if (below < 1e-12)
        continue;
      ratio = get_density (z) / below;
      at = ahead[j].mean - ahead[j].sd * ratio;
      variance = ahead[j].sd * ahead[j].sd * MAX (0, 1 - z * ratio - ratio * ratio);
      share += weight;
      sum += weight * at;
      square += weight * (variance + (at - near) * (at - near));
    }
  if (!(share > 0))
    return 0;
  *mean = sum / share;
  *sd = sqrt (MAX (0, square / share - (*mean - near) * (*mean - near)));
  return share;
}

/* -------- The next cut -------- */

typedef struct {
  double weight[TM_CUT_NODES], sd[TM_CUT_NODES];
} Errors;

static void
find_errors (const TmCutSequel *sequel, const Ahead *ahead, double change, Errors *out)
{
  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      const Ahead *a = &ahead[j];
      double variance = a->x_x + 2 * change * a->x_b + change * change * a->b_b + a->scatter * a->scatter
                        + a->own_variance + sequel->mate_variance;

      out->weight[j] = a->weight;
      out->sd[j] = sqrt (MAX (variance, 1));
    }
}

static double
get_share_beyond (const Errors *errors, double room)
{
  double sum = 0;

  for (guint j = 0; j < TM_CUT_NODES; j++)
    sum += errors->weight[j] * get_below (-room / errors->sd[j]);
  return sum;
}

/* The room to the end at which the share beyond it is @risk: Newton's steps on its logarithm, which is nearly
 * as bent as a parabola, from @room. */
static double
find_room (const Errors *errors, double risk, double room)
{
  if (risk >= 0.5)
    return 0;
  for (guint i = 0; i < 30; i++)
    {
      double beyond = 0, density = 0, by;

      for (guint j = 0; j < TM_CUT_NODES; j++)
        {
          beyond += errors->weight[j] * get_below (-room / errors->sd[j]);
          density += errors->weight[j] * get_density (room / errors->sd[j]) / errors->sd[j];
        }
      if (!(beyond > 0) || !(density > 0))
        break;
      by = log (beyond / risk) * beyond / density;
      room = MAX (0, room + by);
      if (fabs (by) < 2e-3 * room)
        break;
    }
  return room;
}

static double
get_share_of (const Errors *errors, guint n, const TmCutSequel *sequel, double room)
{
  double above = room - (sequel->end - sequel->far), width = sequel->end - room - sequel->near, sum = 0;

  for (guint j = 0; j < n; j++)
    sum += errors->weight[j]
           * MAX (0, 1 - get_below (-above / errors->sd[j]) - get_below (-width / errors->sd[j]));
  return sum;
}

/* Room to the end that is best for being in: the middle, unless the risk asks for more. */
static double
get_best_room (const TmCutSequel *sequel, double at_least)
{
  return MAX (sequel->end - (sequel->near + sequel->far) / 2, at_least);
}

/* If s_e were known: the same for each node by itself.  Every cut tells of s_e, so the truth lies between
 * this and the mixture. */
static double
get_share_if_known (const Errors *errors, const TmCutSequel *sequel, double risk)
{
  double sum = 0, z = risk < 0.5 ? -gsl_cdf_ugaussian_Pinv (risk) : 0;

  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      const Errors one = { { errors->weight[j] }, { errors->sd[j] } };

      sum += get_share_of (&one, 1, sequel, get_best_room (sequel, z * errors->sd[j]));
    }
  return sum;
}

/* @n cuts one after the other, each with its part of the risk, and each brought in with the same chance. */
static double
repeat_cuts (double in, double gone, guint n)
{
  double left = CLAMP (1 - in - gone, 0, 1), all = 0, still = 1;

  for (guint i = 0; i < n; i++)
    {
      all += still * in;
      still *= left;
    }
  return all;
}

/* The station furthest on is read at @from: the share brought in by the best next cuts. */
static double
find_next_in (const TmCutSequel *sequel, const Ahead *ahead, double from, double risk, double *change)
{
  double c = MAX (0, (sequel->near + sequel->far) / 2 - from), room = 0, at_least = 0, in;
  double each = risk / MAX (sequel->further, 1);
  Errors errors;

  for (guint i = 0; i < 2; i++)
    {
      find_errors (sequel, ahead, c, &errors);
      at_least = find_room (&errors, each, at_least);
      room = get_best_room (sequel, at_least);
      c = sequel->end - room - from;
    }
  *change = MAX (c, 0);
  if (c < sequel->least)
    {
      room = sequel->end - from - sequel->least;
      if (get_share_beyond (&errors, room) > risk)
        return 0;
      *change = sequel->least;
      return get_share_of (&errors, TM_CUT_NODES, sequel, room);
    }
  in = (1 - LEARNED) * get_share_of (&errors, TM_CUT_NODES, sequel, room)
       + LEARNED * get_share_if_known (&errors, sequel, each);
  return repeat_cuts (in, each, sequel->further);
}

double
tm_cut_sequel_value (const TmCutSequel *sequel, double change, double risk, double *second)
{
  Ahead ahead[TM_CUT_NODES];
  double mean, sd, next, low, high;

  if (second)
    *second = 0;
  if (!(risk > 0) || isinf (sequel->near) || sequel->near >= sequel->far)
    return 0;
  if (isinf (sequel->end)) /* one cut that is deep enough does all; there is nothing to leave metal for */
    return 0;
  for (guint j = 0; j < TM_CUT_NODES; j++)
    look_ahead (sequel, &sequel->nodes[j], change, &ahead[j]);
  if (!(find_left_part (ahead, sequel->near, &mean, &sd) > 0))
    return 0;
  low = find_next_in (sequel, ahead, mean - sd, risk, &next);
  high = find_next_in (sequel, ahead, MIN (mean + sd, sequel->near), risk, &next);
  if (second)
    find_next_in (sequel, ahead, mean, risk, second);
  return (low + high) / 2;
}
