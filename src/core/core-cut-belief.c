/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-cut-belief: the state of a run of cuts and its filter (metrology: Next cut).
 *
 * Given the scatter s_e of the cutter, the state x = (b, m_1.., X_1..) of response, biases of the methods and
 * sizes at the stations is normal with mean μ and covariance P.
 *   A reading     y = h·x + ε, var ε = r:  S = h'P h + r,  μ += P h (y - h·μ)/S,  P -= P h h'P/S
 *   A cut by c    X_k += b c + e, one e for all stations, var e = s_e²
 * the Kalman filter (R. E. Kalman, J. Basic Eng. 82, 1960), exact because c is known.  The predictive density
 * N(y; h·μ, S) of each reading weighs the nodes of the grid of s_e.  A station's first reading is no
 * evidence: its size had no prior.  It sets X_k = y - m - ε exactly, rather than through some large variance.
 */

#include <math.h>
#include <string.h>

#include "core-cut-private.h"

/* A reading is never known better than to one count: a variance of nothing would divide by nothing. */
#define LEAST_VARIANCE 1.0

/* -------- Making -------- */

static void
place_numbers (TmCutBelief *belief)
{
  gsize size = belief->n + (gsize)belief->n * belief->n;

  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      belief->nodes[j].mean = belief->numbers + j * size;
      belief->nodes[j].covariance = belief->nodes[j].mean + belief->n;
    }
}

static gsize
count_numbers (const TmCutBelief *belief)
{
  return TM_CUT_NODES * (belief->n + (gsize)belief->n * belief->n);
}

/* Weights from their logarithms, so that they add up to 1. */
static void
weigh_nodes (TmCutBelief *belief)
{
  double most = -INFINITY, sum = 0;

  for (guint j = 0; j < TM_CUT_NODES; j++)
    most = MAX (most, belief->nodes[j].log_weight);
  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      belief->nodes[j].log_weight -= most;
      belief->nodes[j].weight = exp (belief->nodes[j].log_weight);
      sum += belief->nodes[j].weight;
    }
  for (guint j = 0; j < TM_CUT_NODES; j++)
    belief->nodes[j].weight /= sum;
}

static void
start_nodes (TmCutBelief *belief)
{
  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      TmCutNode *node = &belief->nodes[j];
      double t = TM_CUT_NODE_STEP * ((double)j - (TM_CUT_NODES - 1) / 2.0);

      node->scatter = belief->scatter_median * pow (belief->scatter_factor, t);
      node->log_weight = -t * t / 2;
      node->mean[TM_CUT_AT_RESPONSE] = 1;
      node->covariance[TM_CUT_AT_RESPONSE] = belief->response_sd * belief->response_sd;
    }
  weigh_nodes (belief);
}

TmCutBelief *
tm_cut_belief_new (guint n_stations, gboolean grows)
{
  TmCutBelief *belief;

  g_return_val_if_fail (n_stations > 0 && n_stations <= TM_CUT_MOST_STATIONS, NULL);
  belief = g_new0 (TmCutBelief, 1);
  belief->grows = grows;
  belief->n_stations = n_stations;
  belief->n = TM_CUT_AT_STATION (n_stations);
  belief->numbers = g_new0 (double, count_numbers (belief));
  belief->response_sd = TM_CUT_RESPONSE_SD;
  belief->scatter_median = TM_CUT_SCATTER_MEDIAN;
  belief->scatter_factor = TM_CUT_SCATTER_FACTOR;
  for (guint m = 0; m < TM_CUT_METHODS; m++)
    belief->method_shared[m] = -1;
  place_numbers (belief);
  start_nodes (belief);
  return belief;
}

TmCutBelief *
tm_cut_belief_copy (const TmCutBelief *belief)
{
  TmCutBelief *copy;

  g_return_val_if_fail (belief != NULL, NULL);
  copy = g_memdup2 (belief, sizeof *belief);
  copy->numbers = g_memdup2 (belief->numbers, count_numbers (belief) * sizeof (double));
  place_numbers (copy);
  return copy;
}

void
tm_cut_belief_free (TmCutBelief *belief)
{
  if (belief == NULL)
    return;
  g_free (belief->numbers);
  g_free (belief);
}

void
tm_cut_belief_set_prior (TmCutBelief *belief, double response_sd, double scatter_median,
                         double scatter_factor)
{
  g_return_if_fail (belief != NULL && !belief->started);
  g_return_if_fail (isfinite (response_sd) && response_sd >= 0);
  g_return_if_fail (isfinite (scatter_median) && scatter_median > 0);
  g_return_if_fail (isfinite (scatter_factor) && scatter_factor > 1);
  belief->response_sd = response_sd;
  belief->scatter_median = scatter_median;
  belief->scatter_factor = scatter_factor;
  start_nodes (belief);
}

gboolean
tm_cut_belief_has_size (const TmCutBelief *belief)
{
  return belief->n_read > 0;
}

/* -------- The filter -------- */

/* What is observed: the sum of one or two places of the state, times @factor. */
typedef struct {
  guint first, second;
  gboolean has_second;
  double factor;
} Observed;

/* One node; its logarithm of the predictive density joins the weight. */
static void
observe_node (const TmCutBelief *belief, TmCutNode *node, const Observed *what, double value, double variance)
{
  double gain[TM_CUT_AT_STATION (TM_CUT_MOST_STATIONS)];
  double expected = node->mean[what->first], spread, off;
  guint n = belief->n;

  for (guint i = 0; i < n; i++)
    {
      gain[i] = node->covariance[i * n + what->first];
      if (what->has_second)
        gain[i] += node->covariance[i * n + what->second];
      gain[i] *= what->factor;
    }
  spread = gain[what->first];
  if (what->has_second)
    {
      expected += node->mean[what->second];
      spread += gain[what->second];
    }
  spread = MAX (0, spread * what->factor) + variance;
  off = value - expected * what->factor;
  for (guint i = 0; i < n; i++)
    node->mean[i] += gain[i] * off / spread;
  for (guint i = 0; i < n; i++)
    for (guint k = 0; gain[i] != 0 && k < n; k++)
      node->covariance[i * n + k] -= gain[i] * gain[k] / spread;
  for (guint i = 0; i < n; i++)
    node->covariance[i * n + i] = MAX (0, node->covariance[i * n + i]);
  node->log_weight -= (log (spread) + off * off / spread) / 2;
}

void
tm_cut_belief_learn (TmCutBelief *belief, const TmCutAnswer *answer)
{
  g_return_if_fail (belief != NULL && answer != NULL);
  g_return_if_fail (isfinite (answer->dialled) && isfinite (answer->achieved) && isfinite (answer->u));
  belief->started = TRUE;
  belief->n_answers++;
  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      TmCutNode *node = &belief->nodes[j];
      const Observed what = { TM_CUT_AT_RESPONSE, 0, FALSE, answer->dialled };

      observe_node (belief, node, &what, answer->achieved,
                    node->scatter * node->scatter + answer->u * answer->u + LEAST_VARIANCE);
    }
  weigh_nodes (belief);
}

/* X_k = y - m - ε, where nothing was known of X_k. */
static void
start_station (const TmCutBelief *belief, TmCutNode *node, guint at, guint at_method, gboolean has_method,
               double value, double variance)
{
  guint n = belief->n;

  node->mean[at] = value - (has_method ? node->mean[at_method] : 0);
  for (guint i = 0; i < n; i++)
    node->covariance[i * n + at] = node->covariance[at * n + i]
        = has_method ? -node->covariance[i * n + at_method] : 0;
  node->covariance[at * n + at] = variance + (has_method ? node->covariance[at_method * n + at_method] : 0);
}

/* The bias of @method joins the state with its first reading.  FALSE: there is no room for it. */
static gboolean
start_method (TmCutBelief *belief, guint method, double shared)
{
  if (method >= TM_CUT_METHODS)
    return FALSE;
  if (belief->method_shared[method] >= 0)
    return TRUE;
  belief->method_shared[method] = shared;
  for (guint j = 0; j < TM_CUT_NODES; j++)
    belief->nodes[j].covariance[TM_CUT_AT_METHOD (method) * (belief->n + 1)] = shared * shared;
  return TRUE;
}

/* A bias that has no place in the state, or the part by which it is wider than when it was first read, is
 * taken as the reading's own. */
static double
find_own_variance (const TmCutBelief *belief, guint method, gboolean has_method, double own, double shared)
{
  double excess = shared * shared;

  if (has_method)
    excess = MAX (0, excess - belief->method_shared[method] * belief->method_shared[method]);
  return own * own + excess + LEAST_VARIANCE;
}

void
tm_cut_belief_read (TmCutBelief *belief, guint station, guint method, double size, double own, double shared)
{
  gboolean has_method, is_first;
  double variance, value;

  g_return_if_fail (belief != NULL && station < belief->n_stations);
  g_return_if_fail (isfinite (size) && isfinite (own) && isfinite (shared) && own >= 0 && shared >= 0);
  belief->started = TRUE;
  has_method = start_method (belief, method, shared);
  variance = find_own_variance (belief, method, has_method, own, shared);
  value = belief->grows ? size : -size;
  is_first = !belief->is_read[station];
  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      const Observed what = { TM_CUT_AT_STATION (station), TM_CUT_AT_METHOD (method), has_method, 1 };

      if (is_first)
        start_station (belief, &belief->nodes[j], what.first, what.second, has_method, value, variance);
      else
        observe_node (belief, &belief->nodes[j], &what, value, variance);
    }
  if (is_first)
    {
      belief->is_read[station] = TRUE;
      belief->read_stations[belief->n_read++] = station;
    }
  else
    {
      belief->n_answers += belief->n_open;
      belief->n_open = 0;
    }
  weigh_nodes (belief);
}

/* X_k += f·change + e at every station that has a size; f is b, or 1 where the response has no part in it. */
static void
move_node (const TmCutBelief *belief, TmCutNode *node, double change, gboolean by_response, double variance)
{
  guint n = belief->n;
  double moved[TM_CUT_AT_STATION (TM_CUT_MOST_STATIONS)];
  double factor = by_response ? node->mean[TM_CUT_AT_RESPONSE] : 1;

  memcpy (moved, node->covariance, n * sizeof *moved); /* the row of b */
  for (guint a = 0; a < belief->n_read; a++)
    {
      guint at = TM_CUT_AT_STATION (belief->read_stations[a]);

      node->mean[at] += factor * change;
      for (guint i = 0; by_response && i < n; i++)
        node->covariance[at * n + i] += change * moved[i];
    }
  for (guint a = 0; a < belief->n_read; a++)
    {
      guint at = TM_CUT_AT_STATION (belief->read_stations[a]);

      for (guint i = 0; by_response && i < n; i++)
        node->covariance[i * n + at] += change * node->covariance[i * n + TM_CUT_AT_RESPONSE];
    }
  for (guint a = 0; a < belief->n_read; a++)
    for (guint c = 0; c < belief->n_read; c++)
      node->covariance[TM_CUT_AT_STATION (belief->read_stations[a]) * n
                       + TM_CUT_AT_STATION (belief->read_stations[c])]
          += variance;
}

void
tm_cut_belief_cut (TmCutBelief *belief, double change)
{
  g_return_if_fail (belief != NULL && isfinite (change) && change >= 0);
  belief->started = TRUE;
  belief->n_open += change > 0 && belief->n_read > 0;
  if (change > 0)
    for (guint j = 0; j < TM_CUT_NODES; j++)
      move_node (belief, &belief->nodes[j], change, TRUE,
                 belief->nodes[j].scatter * belief->nodes[j].scatter);
}

void
tm_cut_belief_move (TmCutBelief *belief, double change, double sd)
{
  g_return_if_fail (belief != NULL && isfinite (change) && isfinite (sd));
  belief->started = TRUE;
  for (guint j = 0; j < TM_CUT_NODES; j++)
    move_node (belief, &belief->nodes[j], change, FALSE, sd * sd);
}

/* -------- What is known -------- */

/* Mean and standard deviation of a place of the state over all nodes. */
static void
mix (const TmCutBelief *belief, guint at, double *mean, double *sd)
{
  double sum = 0, square = 0;

  for (guint j = 0; j < TM_CUT_NODES; j++)
    sum += belief->nodes[j].weight * belief->nodes[j].mean[at];
  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      const TmCutNode *node = &belief->nodes[j];
      double off = node->mean[at] - sum;

      square += node->weight * (node->covariance[at * (belief->n + 1)] + off * off);
    }
  *mean = sum;
  *sd = sqrt (MAX (0, square));
}

/* The s_e below which a share @p of the weight lies; each node stands for the step about it. */
static double
find_scatter (const TmCutBelief *belief, double p)
{
  double below = 0, t = 0;

  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      double weight = belief->nodes[j].weight;

      t = (double)j - 0.5;
      if (below + weight >= p)
        {
          t += weight > 0 ? (p - below) / weight : 0;
          break;
        }
      below += weight;
    }
  return belief->scatter_median
         * pow (belief->scatter_factor, TM_CUT_NODE_STEP * (t - (TM_CUT_NODES - 1) / 2.0));
}

void
tm_cut_belief_response (const TmCutBelief *belief, TmCutResponse *out)
{
  g_return_if_fail (belief != NULL && out != NULL);
  mix (belief, TM_CUT_AT_RESPONSE, &out->factor, &out->factor_sd);
  out->scatter = find_scatter (belief, 0.5);
  out->scatter_low = find_scatter (belief, 0.025);
  out->scatter_high = find_scatter (belief, 0.975);
  out->n_answers = belief->n_answers;
}

void
tm_cut_belief_size (const TmCutBelief *belief, guint station, double *size, double *u)
{
  g_return_if_fail (belief != NULL && station < belief->n_stations && size != NULL && u != NULL);
  *size = *u = NAN;
  if (!belief->is_read[station])
    return;
  mix (belief, TM_CUT_AT_STATION (station), size, u);
  if (!belief->grows)
    *size = -*size;
}
