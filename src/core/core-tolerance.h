/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-tolerance: statistical tolerance intervals of a normal process, and zero-acceptance samples of a lot.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* k such that with @confidence at least @coverage of a normal process lies below mean + k s (one-sided), or
 * within mean ± k s (two-sided), of @n values with both parameters unknown (ISO 16269-6): by the noncentral t
 * distribution, and exact by quadrature.  Relative error under 1e-7 up to a confidence of 0.99999, of any n.
 * One-sided it may be below zero.  NAN for n < 2, a share not between 0 and 1, or a factor over 1e15. */
double tm_tolerance_one_sided (gsize n, double coverage, double confidence);
double tm_tolerance_two_sided (gsize n, double coverage, double confidence);

/* Pieces of a lot that are bad when a share @share (between 0 and 1) is, rounded up. */
guint tm_lot_bad (guint lot, double share);
/* The smallest sample of a lot of @lot pieces that finds no bad one with a chance of at most @risk when a
 * share @share of the lot, rounded up, is bad (hypergeometric).  The whole lot where no smaller one does; 0
 * for an empty lot. */
guint tm_lot_sample (guint lot, double share, double risk);
/* The chance that a sample of @n finds none of @bad bad ones in a lot of @lot. */
double tm_lot_chance (guint lot, guint bad, guint n);

G_END_DECLS
