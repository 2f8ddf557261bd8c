/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-fit-private: what the picture of a fit works out before it draws.
 */

#pragma once

#include "plot-axis.h"
#include "plot-fit.h"

G_BEGIN_DECLS

#define TM_FIT_MOST_ROWS 3

/* How a range stands to what is wanted. */
typedef enum {
  TM_FIT_STANDS_FREE,  /* nothing is wanted */
  TM_FIT_STANDS_IN,    /* within it */
  TM_FIT_STANDS_CLOSE, /* partly, or not surely */
  TM_FIT_STANDS_OUT,   /* none of it */
} TmFitStands;

typedef struct {
  const char *label; /* translated */
  double least, most;
  double expanded; /* of both ends; 0: none, or unknown */
  TmFitStands stands;
  char *words;  /* "press 0.004 to 0.023 mm" */
  char *chance; /* "97 % within what is wanted", or NULL */
  char *doubts; /* "2 % too loose, under 0.1 % too tight", or NULL */
  gboolean by_limits;
} TmFitRow;

typedef struct {
  TmFitRow rows[TM_FIT_MOST_ROWS];
  guint n_rows;
  TmFitWant want;
  char *want_least, *want_most; /* numbers without sign; NULL where there is none */
  char *want_words;             /* "press 0.010 to 0.030 mm", or NULL */
  TmAxis axis;
  gboolean has_axis;
  gboolean has_zero; /* it lies on the axis */
} TmFitSight;

void tm_fit_sight_fill (TmFitSight *sight, const TmFitPicture *picture);
void tm_fit_sight_clear (TmFitSight *sight);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmFitSight, tm_fit_sight_clear)

G_END_DECLS
