/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-run-private: what a run chart holds between its making and its drawing.
 */

#pragma once

#include "plot-frame.h"
#include "plot-run.h"

G_BEGIN_DECLS

/* One place of one piece, counts. */
typedef struct {
  guint piece; /* index */
  guint place; /* 1.. */
  double mean, smallest, largest;
  TmVerdict verdict; /* OUT when a station lies beyond a limit, else IN */
  TmPoint point;
} TmRunPoint;

struct _TmRunPlot {
  char *title;
  TmUnit unit;
  TmLimits limits;
  char *lower_text, *upper_text;
  guint decimals; /* of the limits */
  guint fineness; /* most decimals of any reading */
  guint places;
  double guard; /* 0: none known */
  gboolean has_target;
  double target;
  GPtrArray *serials; /* char *, one for each piece */
  GArray *points;     /* TmRunPoint, by piece */
  GArray *events;     /* TmFrameEvent, by piece */
  TmAxis axis;
  gboolean has_axis;
};

G_END_DECLS
