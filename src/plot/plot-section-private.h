/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-section-private: what a section and a clock view hold between their making, their drawing and
 * their words.
 */

#pragma once

#include "plot-axis.h"
#include "plot-clock.h"
#include "plot-mark.h"
#include "plot-section.h"

G_BEGIN_DECLS

/* Shares of the picture: how far a wall is drawn from the middle, and how much room its differences
 * get.  They fix the enlargement whatever the picture's size. */
#define TM_SECTION_WALL 0.30 /* of the width */
#define TM_SECTION_ROOM 0.26
#define TM_CLOCK_WALL   0.58 /* of the ring's largest radius */
#define TM_CLOCK_ROOM   0.56

/* One size on a picture of form.  Counts. */
typedef struct {
  double at;
  double uncertainty; /* expanded; NAN when unknown */
  TmVerdict verdict;
  char *number; /* printed, without its unit */
} TmFormSize;

/* Everything that both pictures show of the limits, and the scale that sizes are drawn by. */
typedef struct {
  char *title;
  TmUnit unit;
  gboolean outside; /* a shaft: the metal lies inside the line */
  TmLimits limits;
  char *lower_text, *upper_text;
  TmAxis axis;
  guint enlarged; /* how many times differences are drawn too large; 0: not said */
} TmFormScale;

/* @low and @high: of all sizes and whiskers; @reference: a size of the place; @share: room over wall. */
void tm_form_scale_init (TmFormScale *scale, const TmJudgement *judgement, double low, double high,
                         double reference, double share);
void tm_form_scale_clear (TmFormScale *scale);

/* Of the station @index.  tm_form_size_clear() it. */
TmFormSize tm_form_size (const TmJob *job, const TmJudgement *judgement, guint index);
void tm_form_size_clear (TmFormSize *size);
void tm_form_size_stretch (const TmFormSize *size, double *low, double *high);

/* Where a size was read, and its index in the judgement's sizes. */
typedef struct {
  TmStation station;
  guint index;
} TmFormSpot;

/* By depth: without one first, then mouth, lengths, middle, bottom. */
int tm_form_compare_depths (const TmStation *one, const TmStation *other);

/* Sizes that have what is needed, TmFormSpot by depth; g_array_unref() it. */
typedef enum { TM_SPOT_DEPTH, TM_SPOT_HOUR } TmSpotNeed;
GArray *tm_form_spots (const TmJudgement *judgement, TmSpotNeed need);

/* ": limits 25.000 to 25.021 mm". */
void tm_form_describe_limits (const TmFormScale *scale, GString *out);
/* "25.012 mm, in". */
void tm_form_describe_size (const TmFormScale *scale, const TmFormSize *size, GString *out);
/* "differences drawn 500 times too large", or NULL. */
char *tm_form_enlarged_words (const TmFormScale *scale);

/* -------- Section -------- */

typedef struct {
  char *label;
  TmStation station;
  double down; /* 0 at the shallowest, 1 at the deepest */
  guint n;     /* sizes at this depth */
  TmFormSize smallest, largest;
} TmLevel;

struct _TmSectionPlot {
  TmFormScale scale;
  GArray *levels; /* TmLevel, shallowest first */
  char *taper;    /* in words, or NULL */
  int opens;      /* 1: larger at the bottom, -1: at the mouth, 0: neither */
};

/* -------- Clock -------- */

typedef struct {
  guint hour;
  TmFormSize size;
} TmDirection;

typedef struct {
  char *label;        /* the depth; "" when stations have none */
  GArray *directions; /* TmDirection, in the order read */
  guint n_diameters;  /* directions distinct modulo 180° */
  double spread;      /* largest - smallest diameter */
  char *spread_text;
  gboolean has_oval;
  double mean, a, b; /* of the oval: counts, mean absolute */
  double major;      /* degrees from 12 o'clock, clockwise */
  char *oval_text;   /* "oval 0.004 mm, largest across 2 and 8 o'clock"; NULL without one */
  char *lines[2];    /* the same, short, to stand under the ring */
} TmDial;

/* Its spread and its oval in words; free it. */
char *tm_dial_words (const TmDial *dial);

struct _TmClockPlot {
  TmFormScale scale;
  GArray *dials;     /* TmDial, mouth first */
  const char *blind; /* what the gauges cannot see, translated, or NULL */
};

G_END_DECLS
