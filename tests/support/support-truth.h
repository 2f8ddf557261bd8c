/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * support-truth: simulated bores whose true size, the bias and repeatability of whose methods and the
 * errors of whose pins are known to the test alone.  A job with one bore gets the readings and trials
 * that a bench would have taken; what the program then states is held against the truth.
 *
 * Each bore is another shop: every method has a repeatability of its own (0.5 to 3 µm), known only by a
 * standard deviation of few or many degrees of freedom; gauges err anywhere within their limits.
 */

#pragma once

#include <glib.h>

typedef struct {
  guint repeats;          /* 1..5, of each method */
  guint dof_from, dof_to; /* of the pooled repeatability; 0: there is none, the repeats' own counts */
  gboolean only_repeats;  /* the gauges themselves are without error: what is left is Student's t alone */
} TmTruthCase;

typedef struct _TmTruth TmTruth;

TmTruth *tm_truth_new (guint32 seed);
void tm_truth_free (TmTruth *truth);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmTruth, tm_truth_free)

/* The share of @n bores whose true size lies within the stated 95 % interval: of one method; of three
 * methods put together, two of which share a micrometer; of those and pins, for the mating size. */
double tm_truth_cover_one (TmTruth *truth, const TmTruthCase *given, guint n);
double tm_truth_cover_combined (TmTruth *truth, const TmTruthCase *given, guint n);
double tm_truth_cover_pins (TmTruth *truth, const TmTruthCase *given, guint n);

typedef enum {
  TM_RULE_GUARDED,
  TM_RULE_PLAIN,    /* the guard taken away: in when the reading is */
  TM_RULE_COMBINED, /* guarded, of three methods */
  TM_RULE_PINS,     /* guarded, of three methods and pins */
} TmTruthRule;

/* The share of @n bores that are judged in although they truly lie at a limit, or at or beyond one
 * (@beyond). */
double tm_truth_wrongly_in (TmTruth *truth, const TmTruthCase *given, guint n, TmTruthRule rule,
                            gboolean beyond);
