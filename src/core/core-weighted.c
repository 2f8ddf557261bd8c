/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-weighted.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_eigen.h>
#include <gsl/gsl_matrix.h>
#include <math.h>

#include "core-uncertainty.h"

/* Below this many degrees of freedom the weights themselves are too uncertain to be taken as known. */
#define FEW_DOF 10
/* Values further apart than their uncertainties explain in 19 of 20 cases. */
#define DISAGREE_P 0.05
/* A covariance with a smaller ratio of its eigenvalues has no usable inverse. */
#define SINGULAR 1e-12

typedef struct {
  const TmWeightedValue *values;
  guint n;
  double unit;         /* the least u_i: everything below is in it */
  gsl_matrix *inverse; /* of the covariance; NULL when singular */
} Solver;

/* -------- The inverse of the covariance -------- */

static guint
find_best (const TmWeightedValue *values, guint n)
{
  guint best = 0;

  for (guint i = 1; i < n; i++)
    if (values[i].u < values[best].u)
      best = i;
  return best;
}

static gsl_matrix *
copy_covariance (const Solver *self, const double *covariance)
{
  gsl_matrix *matrix = gsl_matrix_calloc (self->n, self->n);
  double scale = self->unit * self->unit;

  for (guint i = 0; i < self->n; i++)
    for (guint j = 0; j < self->n; j++)
      if (i == j)
        gsl_matrix_set (matrix, i, j, self->values[i].u * self->values[i].u / scale);
      else if (covariance != NULL)
        gsl_matrix_set (matrix, i, j, covariance[i * self->n + j] / scale);
  return matrix;
}

/* Σ_k q_k q_kᵀ / λ_k. */
static gsl_matrix *
invert_spectrum (const gsl_vector *values, const gsl_matrix *vectors)
{
  gsize n = values->size;
  gsl_matrix *inverse = gsl_matrix_calloc (n, n);

  for (gsize i = 0; i < n; i++)
    for (gsize j = 0; j < n; j++)
      {
        double sum = 0;

        for (gsize k = 0; k < n; k++)
          sum += gsl_matrix_get (vectors, i, k) * gsl_matrix_get (vectors, j, k) / gsl_vector_get (values, k);
        gsl_matrix_set (inverse, i, j, sum);
      }
  return inverse;
}

/* By eigenvalues, so that a singular covariance is seen rather than refused. */
static gsl_matrix *
invert_covariance (const Solver *self, const double *covariance)
{
  gsl_matrix *matrix = copy_covariance (self, covariance);
  gsl_matrix *vectors = gsl_matrix_alloc (self->n, self->n);
  gsl_vector *values = gsl_vector_alloc (self->n);
  gsl_eigen_symmv_workspace *work = gsl_eigen_symmv_alloc (self->n);
  gsl_matrix *inverse = NULL;

  gsl_eigen_symmv (matrix, values, vectors, work);
  if (gsl_vector_min (values) > SINGULAR * gsl_vector_max (values))
    inverse = invert_spectrum (values, vectors);
  gsl_eigen_symmv_free (work);
  gsl_vector_free (values);
  gsl_matrix_free (vectors);
  gsl_matrix_free (matrix);
  return inverse;
}

/* Independent values need no decomposition. */
static gsl_matrix *
invert_diagonal (const Solver *self)
{
  gsl_matrix *inverse = gsl_matrix_calloc (self->n, self->n);

  for (guint i = 0; i < self->n; i++)
    {
      double ratio = self->unit / self->values[i].u;

      gsl_matrix_set (inverse, i, i, ratio * ratio);
    }
  return inverse;
}

/* -------- Weights -------- */

static double
sum_row (const gsl_matrix *matrix, gsize row)
{
  double sum = 0;

  for (gsize j = 0; j < matrix->size2; j++)
    sum += gsl_matrix_get (matrix, row, j);
  return sum;
}

/* FALSE when one is negative, or when there is no inverse to take them from. */
static gboolean
find_weights (const Solver *self, double *weights, TmWeighted *out)
{
  double total = 0;
  gboolean fair = self->inverse != NULL;

  for (guint i = 0; fair && i < self->n; i++)
    total += weights[i] = sum_row (self->inverse, i);
  for (guint i = 0; fair && i < self->n; i++)
    {
      weights[i] /= total;
      fair = fair && weights[i] >= -SINGULAR;
    }
  if (fair)
    out->u_known = self->unit / sqrt (total);
  return fair;
}

static void
take_best (const Solver *self, double *weights, TmWeighted *out)
{
  for (guint i = 0; i < self->n; i++)
    weights[i] = i == out->best;
  out->best_alone = TRUE;
  out->u_known = self->values[out->best].u;
}

/* -------- What follows from them -------- */

static void
find_mean (const Solver *self, const double *weights, TmWeighted *out)
{
  double origin = self->values[0].value, sum = 0;

  for (guint i = 0; i < self->n; i++)
    sum += weights[i] * (self->values[i].value - origin);
  out->mean = origin + sum;
}

/* Σ_ij d_i V⁻¹_ij d_j about the mean of least squares, which is not the one that counts where the best value
 * counts alone. */
static double
find_chi2 (const Solver *self, const TmWeighted *out)
{
  double squares = 0, sum = 0, total = 0;

  for (guint i = 0; i < self->n; i++)
    {
      const double deviation = (self->values[i].value - out->mean) / self->unit;
      const double row = sum_row (self->inverse, i);

      for (guint j = 0; j < self->n; j++)
        squares += deviation * gsl_matrix_get (self->inverse, i, j) * (self->values[j].value - out->mean)
                   / self->unit;
      sum += row * deviation;
      total += row;
    }
  return MAX (0, squares - sum * sum / total);
}

static void
find_agreement (const Solver *self, TmWeighted *out)
{
  out->chi2 = out->p = out->birge = NAN;
  if (self->n < 2 || self->inverse == NULL)
    return;
  out->chi2 = find_chi2 (self, out);
  out->p = gsl_cdf_chisq_Q (out->chi2, self->n - 1);
  out->birge = sqrt (out->chi2 / (self->n - 1));
  out->disagree = out->birge > 1 && out->p < DISAGREE_P;
}

static double
find_apart (const TmWeightedValue *value, const TmWeighted *out)
{
  double variance = value->u * value->u - out->u_known * out->u_known;

  return variance > 1e-9 * value->u * value->u ? fabs (value->value - out->mean) / sqrt (variance) : NAN;
}

static void
name_apart (const Solver *self, double *apart, TmWeighted *out)
{
  double largest = 0;

  out->apart = -1;
  for (guint i = 0; i < self->n; i++)
    {
      double distance = find_apart (&self->values[i], out);

      if (apart != NULL)
        apart[i] = distance;
      if (self->n >= 3 && out->disagree && distance > largest)
        {
          largest = distance;
          out->apart = (int)i;
        }
    }
}

static double
find_meier (const Solver *self, const double *weights)
{
  double sum = 0;
  gboolean few = FALSE;

  for (guint i = 0; i < self->n; i++)
    {
      sum += weights[i] * (1 - weights[i]) / self->values[i].dof;
      few = few || self->values[i].dof < FEW_DOF;
    }
  return few ? 1 + 4 * sum : 1;
}

/* u⁴ / Σ (w_i u_i)⁴ / ν_i (JCGM 100, G.2b). */
static double
find_dof (const Solver *self, const double *weights, const TmWeighted *out)
{
  double sum = 0;

  for (guint i = 0; i < self->n; i++)
    {
      double ratio = weights[i] * self->values[i].u / out->u_known;

      sum += ratio * ratio * ratio * ratio / self->values[i].dof;
    }
  return sum > 0 ? 1 / sum : INFINITY;
}

void
tm_weighted_set_dof (TmWeighted *weighted, double dof)
{
  weighted->dof = dof;
  weighted->coverage = tm_t_quantile (0.975, dof);
  weighted->expanded = weighted->coverage * weighted->u;
}

void
tm_weighted_mean (const TmWeightedValue *values, guint n, const double *covariance, double *weights,
                  double *apart, TmWeighted *out)
{
  Solver self = { .values = values, .n = n };

  g_return_if_fail (values != NULL && n > 0 && weights != NULL && out != NULL);
  *out = (TmWeighted) { .best = find_best (values, n) };
  self.unit = values[out->best].u;
  self.inverse = covariance != NULL ? invert_covariance (&self, covariance) : invert_diagonal (&self);
  if (!find_weights (&self, weights, out))
    take_best (&self, weights, out);
  find_mean (&self, weights, out);
  find_agreement (&self, out);
  name_apart (&self, apart, out);
  out->u = out->u_known * sqrt (find_meier (&self, weights)) * (out->disagree ? out->birge : 1);
  tm_weighted_set_dof (out, find_dof (&self, weights, out));
  g_clear_pointer (&self.inverse, gsl_matrix_free);
}
