/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-method: what a reading's method name stands for, and the uncertainty budget that follows.
 *
 * The budget, line by line, of a single reading: for each gauge of the method its resolution, its limit
 * of error or in its place the certificate of the calibration in force, its drift since the last check
 * on the standard, its transfer feel; then the lines that a person or a study wrote for the method;
 * then temperature; and repeatability last.  A study's repeatability stands in place of a feel that is
 * only assumed; a written line for feel or temperature stands in place of what the program works out.
 */

#pragma once

#include "core-model.h"
#include "core-station.h"
#include "core-uncertainty.h"

G_BEGIN_DECLS

/* Lines beyond this many are put together into one, "further lines". */
#define TM_METHOD_MAX_COMPONENTS 24
/* Lines that tm_method_lines() may give: a bonus's size joins them. */
#define TM_METHOD_MAX_LINES (TM_METHOD_MAX_COMPONENTS + 2)

typedef struct {
  const char *name;       /* "" when none was named */
  const TmMethod *method; /* NULL for a bare gauge and for an unknown name */
  const TmGauge *gauge;   /* the gauge that reads: the method's last; NULL when unknown */
  double resolution;      /* of that gauge, counts; NAN when not stated */
  gboolean known;         /* the budget has something in it and nothing named is missing */
  guint n_components;
  /* Of a single reading, in counts, sensitivity 1.  Repeatability stands last when there is any. */
  TmComponent components[TM_METHOD_MAX_COMPONENTS];
  gboolean has_repeatability;
} TmMethodUse;

/* When and how a reading is taken. */
typedef struct {
  const char *at;        /* a date or a moment: which calibration and which check were in force; NULL or
                          * "": the newest */
  gboolean temperatures; /* part and gauge were both taken */
  double part_temp;      /* °C, when they were */
  double gauge_temp;
  gint64 size; /* that temperature acts on, counts; 0: the feature's own length */
} TmUseWhen;

/* Looks @name up as a method, else as the tag of a gauge used alone.  The simple form is for a reading
 * not yet taken: the newest calibration and check, no temperature taken. */
TmMethodUse tm_method_use (const TmJob *job, const TmFeature *feature, const char *name);
TmMethodUse tm_method_use_at (const TmJob *job, const TmFeature *feature, const char *name,
                              const TmUseWhen *when);

/* As @reading was taken; NULL gives the simple form. */
TmUseWhen tm_use_when (const TmReading *reading);

/* The lines of the budget of one size, with its repeatability (of the mean of its repeats: value
 * already divided by their root) last before @extra (may be NULL), and with the sensitivities that
 * apply.  @lines has room for TM_METHOD_MAX_LINES.  Returns: how many; 0 when the method is unknown. */
guint tm_method_lines (const TmMethodUse *use, const TmLocalSize *size, const TmComponent *extra,
                       TmComponent *lines);

/* The uncertainty of the size at one station: repeatability of the mean of its repeats, by the
 * method's pooled standard deviation where it has one, else by the repeats' own (with their few
 * degrees of freedom).  Beside other parts the latter is what Welch and Satterthwaite's formula holds
 * least well: of two repeats the 95 % interval holds 88 to 93 % of the truths where the scatter is the
 * larger part, of three 93 to 94 %, 95 % and more where it is the smaller (simulated); a judgement on such
 * repeats says that it rests on few readings.  Two offsets from true position make a deviation of twice their
 * length, so a radial size has sensitivity 2.  @extra (may be NULL) joins the budget: a bonus's size. */
TmUncertainty tm_method_uncertainty (const TmMethodUse *use, const TmLocalSize *size,
                                     const TmComponent *extra);

/* TRUE when lines that nobody has measured here make up a tenth or more of the variance. */
gboolean tm_method_rests_on_assumed (const TmMethodUse *use);

/* A method's resolution is coarser than a tenth of the band. */
gboolean tm_resolution_is_coarse (const TmMethodUse *use, const TmLimits *limits);

/* TRUE when ten or more readings of @feature by @method_name that count take fewer than five values: the
 * spread that they show is the gauge's step, not the part.  @n_values (may be NULL) gets how many. */
gboolean tm_method_shows_few_values (const TmJob *job, const TmFeature *feature, const char *method_name,
                                     guint *n_values);

G_END_DECLS
