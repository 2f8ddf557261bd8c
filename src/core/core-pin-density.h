/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-pin-density: the density of a bore's mating size D, from a size that was read and from pins.
 *
 * The readings say y = D + f + error: error Student's t (normal for infinite degrees of freedom) of
 * scale u, f rectangular 0…F.  A pin of true size s, rectangular in low…high, that went says s <= D;
 * one that did not go says D < s + c.  The density is the product of what they say.  All lengths are
 * counts relative to one reference.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* One pin and all its trials, which share its one true size. */
typedef struct {
  double low, high;
  gboolean went, stopped;
} TmPinFactor;

typedef struct {
  const TmPinFactor *factors;
  guint n;
  double clearance; /* c >= 0 */
  gboolean has_size;
  double size, u, dof, form; /* u > 0, form = F >= 0 */
  double from, to;           /* the certain bounds; -INFINITY, INFINITY where open: then there is a size */
  double lower, upper;       /* limits; infinite where there is none */
} TmPinDensity;

typedef struct {
  double mean, sd;
  double low95, high95; /* central 95 % */
  double inside;        /* P(lower <= D <= upper) */
  double below, above;  /* P(D < lower), P(D > upper) */
} TmPinSummary;

/* By Gauss-Legendre quadrature between the points where the density bends.  With two or fewer degrees
 * of freedom and a side open the density has no standard deviation: the median and the 95 % interval's
 * half width over 1.96 stand in.  FALSE when nothing is left of the density. */
gboolean tm_pin_density_summarise (const TmPinDensity *density, TmPinSummary *out);

G_END_DECLS
