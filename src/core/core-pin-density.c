/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-pin-density.h"

#include <gsl/gsl_integration.h>
#include <gsl/gsl_math.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#include "core-uncertainty.h"

#define POINTS 12
/* How far an open side is followed, in u: nothing is left of a normal there; a t with few degrees of
 * freedom has under a millionth of its variance beyond. */
#define NORMAL_REACH 10.0
#define T_REACH      1e6
#define Z_975        1.959963984540054

/* -------- The density, up to a factor -------- */

static double
get_t_density (double x, double dof)
{
  return isinf (dof) ? gsl_ran_ugaussian_pdf (x) : gsl_ran_tdist_pdf (x, MAX (1, floor (dof)));
}

/* P(from < t < to), from the tail that loses no digits. */
static double
get_t_share (double from, double to, double dof)
{
  if (from > 0)
    return tm_t_below (-from, dof) - tm_t_below (-to, dof);
  return tm_t_below (to, dof) - tm_t_below (from, dof);
}

static double
get_size_density (const TmPinDensity *self, double d)
{
  double x = (self->size - d) / self->u;

  if (!self->has_size)
    return 1;
  if (self->form < self->u * 1e-6)
    return get_t_density (x, self->dof);
  return get_t_share (x - self->form / self->u, x, self->dof) * self->u / self->form;
}

/* The share of the pin's possible sizes that its trials allow at @d. */
static double
get_pin_share (const TmPinFactor *pin, double clearance, double d)
{
  double from = pin->stopped ? MAX (pin->low, d - clearance) : pin->low;
  double to = pin->went ? MIN (pin->high, d) : pin->high;

  if (pin->high > pin->low)
    return to > from ? (to - from) / (pin->high - pin->low) : 0;
  return to >= from;
}

static double
get_density (const TmPinDensity *self, double d)
{
  double product = get_size_density (self, d);

  for (guint i = 0; i < self->n && product > 0; i++)
    product *= get_pin_share (&self->factors[i], self->clearance, d);
  return product;
}

/* -------- Panels between the points where it bends -------- */

/* A point of the quadrature with the mass that it stands for. */
typedef struct {
  double at, mass;
} Node;

typedef struct {
  const TmPinDensity *density;
  gsl_integration_glfixed_table *table;
  double from, to; /* support */
  GArray *bends;   /* double, sorted, from first to last */
  double *below;   /* mass below each bend */
  Node *nodes;     /* POINTS for each panel */
} Panels;

static void
add_bend (Panels *self, double at)
{
  if (at > self->from && at < self->to)
    g_array_append_val (self->bends, at);
}

static void
add_size_bends (Panels *self)
{
  const TmPinDensity *density = self->density;
  double reach = isinf (density->dof) ? NORMAL_REACH : T_REACH;

  add_bend (self, density->size);
  add_bend (self, density->size - density->form);
  for (double step = 1; step <= reach; step *= 2)
    {
      add_bend (self, density->size + step * density->u);
      add_bend (self, density->size - step * density->u);
      add_bend (self, density->size - density->form + step * density->u);
      add_bend (self, density->size - density->form - step * density->u);
    }
}

static void
add_pin_bends (Panels *self, const TmPinFactor *pin)
{
  add_bend (self, pin->low);
  add_bend (self, pin->high);
  if (pin->stopped && self->density->clearance > 0)
    {
      add_bend (self, pin->low + self->density->clearance);
      add_bend (self, pin->high + self->density->clearance);
    }
}

static int
compare_bends (gconstpointer a, gconstpointer b)
{
  const double *one = a, *other = b;

  return (*one > *other) - (*one < *other);
}

/* The mass between two points; @nodes (may be NULL) gets where it lies. */
static double
integrate (const Panels *self, double from, double to, Node *nodes)
{
  double sum = 0;

  for (gsize i = 0; i < POINTS; i++)
    {
      double at, weight;

      gsl_integration_glfixed_point (from, to, i, &at, &weight, self->table);
      weight *= get_density (self->density, at);
      sum += weight;
      if (nodes != NULL)
        nodes[i] = (Node) { at, weight };
    }
  return sum;
}

static void
find_support (Panels *self)
{
  const TmPinDensity *density = self->density;
  double reach = density->u * (isinf (density->dof) ? NORMAL_REACH : T_REACH);

  self->from = density->from;
  self->to = density->to;
  if (!density->has_size)
    return;
  self->from = MAX (self->from, density->size - density->form - reach);
  self->to = MIN (self->to, density->size + reach);
}

static double
get_bend (const Panels *self, guint index)
{
  return g_array_index (self->bends, double, index);
}

static gboolean
open_panels (Panels *self, const TmPinDensity *density)
{
  *self = (Panels) { .density = density };
  find_support (self);
  if (!(self->to > self->from))
    return FALSE;
  self->table = gsl_integration_glfixed_table_alloc (POINTS);
  self->bends = g_array_new (FALSE, FALSE, sizeof (double));
  g_array_append_val (self->bends, self->from);
  g_array_append_val (self->bends, self->to);
  add_bend (self, density->lower);
  add_bend (self, density->upper);
  if (density->has_size)
    add_size_bends (self);
  for (guint i = 0; i < density->n; i++)
    add_pin_bends (self, &density->factors[i]);
  g_array_sort (self->bends, compare_bends);
  self->below = g_new0 (double, self->bends->len);
  self->nodes = g_new (Node, self->bends->len * POINTS);
  for (guint i = 1; i < self->bends->len; i++)
    self->below[i]
        = self->below[i - 1]
          + integrate (self, get_bend (self, i - 1), get_bend (self, i), &self->nodes[(i - 1) * POINTS]);
  return TRUE;
}

static void
close_panels (Panels *self)
{
  if (self->table)
    gsl_integration_glfixed_table_free (self->table);
  if (self->bends)
    g_array_unref (self->bends);
  g_free (self->below);
  g_free (self->nodes);
}

static double
get_mass (const Panels *self)
{
  return self->below[self->bends->len - 1];
}

/* -------- What is read off -------- */

static double
get_moment (const Panels *self, double about, int power)
{
  double sum = 0;

  for (guint i = 0; i < (self->bends->len - 1) * POINTS; i++)
    sum += self->nodes[i].mass * gsl_pow_int (self->nodes[i].at - about, power);
  return sum / get_mass (self);
}

/* Newton's steps, halving wherever one leaves the panel. */
static double
find_quantile (const Panels *self, double probability)
{
  double wanted = probability * get_mass (self), from, to, start, x;
  guint panel = 1;

  while (panel < self->bends->len - 1 && self->below[panel] < wanted)
    panel++;
  start = from = get_bend (self, panel - 1);
  to = get_bend (self, panel);
  x = (from + to) / 2;
  for (guint i = 0; i < 60 && to - from > 1e-12 * (fabs (from) + fabs (to)); i++)
    {
      double excess = self->below[panel - 1] + integrate (self, start, x, NULL) - wanted;
      double next = x - excess / get_density (self->density, x);

      *(excess > 0 ? &to : &from) = x;
      if (fabs (next - x) <= 1e-9 * (to - start))
        return x;
      x = next > from && next < to ? next : (from + to) / 2;
    }
  return x;
}

/* The share between @from and @to, which are bends or lie outside them all. */
static double
find_share (const Panels *self, double from, double to)
{
  double share = 0;

  for (guint i = 1; i < self->bends->len; i++)
    if (get_bend (self, i - 1) >= from && get_bend (self, i) <= to)
      share += self->below[i] - self->below[i - 1];
  return MIN (1, share / get_mass (self));
}

static void
find_moments (const Panels *self, TmPinSummary *out)
{
  double middle = (out->low95 + out->high95) / 2;

  out->mean = middle + get_moment (self, middle, 1);
  out->sd = sqrt (get_moment (self, out->mean, 2));
}

gboolean
tm_pin_density_summarise (const TmPinDensity *density, TmPinSummary *out)
{
  Panels panels;
  gboolean is_closed = isfinite (density->from) && isfinite (density->to);
  gboolean found = open_panels (&panels, density) && get_mass (&panels) > 0 && isfinite (get_mass (&panels));

  if (found)
    {
      out->low95 = find_quantile (&panels, 0.025);
      out->high95 = find_quantile (&panels, 0.975);
      out->inside = find_share (&panels, density->lower, density->upper);
      out->below = find_share (&panels, -INFINITY, density->lower);
      out->above = find_share (&panels, density->upper, INFINITY);
    }
  if (found && (is_closed || density->dof >= 3))
    find_moments (&panels, out);
  else if (found)
    {
      out->mean = find_quantile (&panels, 0.5);
      out->sd = (out->high95 - out->low95) / 2 / Z_975;
    }
  close_panels (&panels);
  return found;
}
