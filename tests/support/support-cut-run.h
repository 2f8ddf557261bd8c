/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * support-cut-run: simulated runs of cuts, from a rough bore to a finished one or to scrap.  The true
 * response, scatter, bias and taper of each run are drawn from stated distributions and known to the test
 * alone; the program plans from the readings, and so do two plain rules of a careful hand.
 */

#pragma once

#include <glib.h>

/* One kind of bore, gauge and machine; lengths in µm. */
typedef struct {
  const char *name;
  double band;   /* of the limits */
  double shared; /* standard uncertainty that all readings have in common */
  double own;    /* of one reading */
  guint n_stations;
  double taper;      /* true size from mouth to bottom, standard deviation */
  double graduation; /* of the dial, in diameter */
  double metal; /* least and most metal left at the start, to the middle of the band: 0.5 and 1.5 of it */
  double scatter_by;  /* true s_e over that of the prior: 1, or 2 where the prior is wrong */
  double response_by; /* true mean of b less 1, in standard deviations of the prior */
  guint known;        /* cuts of the tool that were recorded before, each of 100 µm */
} SupportCutCase;

typedef enum {
  SUPPORT_CUT_PLAN, /* what the program says, until it says no more */
  SUPPORT_CUT_ALL,  /* dial all that is left to the middle of the band, until a reading of each station is in
                     */
  SUPPORT_CUT_HALF, /* dial half of what is left, until the mean reading is within a tenth of the band of it
                     */
} SupportCutPolicy;

/* How @runs runs ended. */
typedef struct {
  guint runs;
  guint cuts;
  guint in;
  guint gone;
  guint left;    /* stopped with metal left */
  guint endless; /* not ended after many cuts; they count as left too */
  double spent;  /* sum of the risk that the plan counted as spent */
} SupportCutTally;

/* @seed: the same truths for every policy. */
void support_cut_run (const SupportCutCase *given, SupportCutPolicy policy, double risk, guint runs,
                      guint32 seed, SupportCutTally *out);
