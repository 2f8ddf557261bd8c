/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Ranges are differences of whole counts; only warmth and chance are floating point.
 */

#include "core-fit-check.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <math.h>

/* Beyond this no solid expands, 1e-6 / °C: it keeps every size above zero down to absolute zero. */
#define ALPHA_MOST 1000.0

static const char *const status_words[TM_N_FIT_STATUSES] = {
  [TM_FIT_OK] = "",
  [TM_FIT_NOT_MEASURED] = NC_ ("fit status", "not measured; read every station of it first"),
  [TM_FIT_NO_LIMITS] = NC_ ("fit status", "it has not both limits; give a smallest and a largest size"),
  [TM_FIT_NO_MATE] = NC_ ("fit status", "it has no mate; state what goes with it"),
  [TM_FIT_NO_SIDE]
  = NC_ ("fit status", "which of the two is the bore is not known; say which way its metal goes"),
  [TM_FIT_NO_METHOD]
  = NC_ ("fit status", "its uncertainty is unknown, so no chance can be told; state how it was measured"),
  [TM_FIT_BAD_TEMPERATURE]
  = NC_ ("fit status", "no part is at that temperature; give degrees Celsius from -273.15 to 1000"),
  [TM_FIT_BAD_WANT] = NC_ (
      "fit status", "the least wanted clearance is above the most; exchange them (interference is negative)"),
  [TM_FIT_BAD_PART]
  = NC_ ("fit status", "its sizes cannot be; the smallest must be above zero and not above the largest"),
  [TM_FIT_NO_EXPANSION]
  = NC_ ("fit status", "how much it grows with temperature is not known; state its material"),
  [TM_FIT_NO_WANT] = NC_ ("fit status", "no clearance is wanted; state the least, the most, or both"),
  [TM_FIT_TOO_MANY] = NC_ ("fit status", "more than 1000 parts of a kind; pair them in batches"),
};

const char *
tm_fit_status_word (TmFitStatus status)
{
  g_return_val_if_fail ((guint)status < TM_N_FIT_STATUSES, "");

  return status_words[status];
}

/* -------- What can be checked -------- */

static gboolean
is_away (const TmFitPart *part)
{
  return fabs (part->temp - 20) > 0;
}

static TmFitStatus
check_part (const TmFitPart *part)
{
  if (part->smallest <= 0 || part->smallest > part->largest || part->largest > TM_COUNT_MAX || part->u < 0)
    return TM_FIT_BAD_PART;
  if (!(part->temp >= TM_FIT_TEMPERATURE_LEAST && part->temp <= TM_FIT_TEMPERATURE_MOST))
    return TM_FIT_BAD_TEMPERATURE;
  if (is_away (part)
      && !(fabs (part->alpha) <= ALPHA_MOST && part->alpha_half_width >= 0
           && part->alpha_half_width <= ALPHA_MOST))
    return TM_FIT_NO_EXPANSION;
  return TM_FIT_OK;
}

static TmFitStatus
check_input (const TmFitPart *bore, const TmFitPart *shaft, const TmFitWant *want)
{
  TmFitStatus status = check_part (bore);

  if (status == TM_FIT_OK)
    status = check_part (shaft);
  if (status == TM_FIT_OK && want->has_least && want->has_most && want->least > want->most)
    status = TM_FIT_BAD_WANT;
  return status;
}

/* -------- The range -------- */

/* How much larger @size is at the part's temperature than at 20 °C. */
static double
grow (const TmFitPart *part, gint64 size)
{
  return is_away (part) ? (double)size * part->alpha * 1e-6 * (part->temp - 20) : 0;
}

static double
get_clearance (const TmFitPart *bore, gint64 bore_size, const TmFitPart *shaft, gint64 shaft_size)
{
  return (double)(bore_size - shaft_size) + grow (bore, bore_size) - grow (shaft, shaft_size);
}

/* What is not known of the part's size where it is: measured, and by its expansion. */
static double
get_own_u (const TmFitPart *part)
{
  double by_alpha = is_away (part)
                        ? (double)part->largest * part->alpha_half_width * 1e-6 * (part->temp - 20) / sqrt (3)
                        : 0;

  return hypot (part->u, by_alpha);
}

static double
get_u (const TmFitPart *bore, const TmFitPart *shaft)
{
  if (!isfinite (bore->u) || !isfinite (shaft->u))
    return NAN;
  if (bore->u <= 0 && shaft->u <= 0)
    return 0;
  return hypot (get_own_u (bore), get_own_u (shaft));
}

/* -------- The chances -------- */

/* By limits: 1 when all are, 0 when none is, and nobody knows between. */
static double
get_share (gboolean none, gboolean all)
{
  if (none)
    return 0;
  return all ? 1 : (double)NAN;
}

static void
take_chances_by_limits (const TmFitWant *want, TmFitCheck *out)
{
  double most = (double)want->most, least = (double)want->least;
  gboolean all_loose = want->has_most && out->least > most;
  gboolean all_tight = want->has_least && out->most < least;

  out->loose = get_share (!want->has_most || out->most <= most, all_loose);
  out->tight = get_share (!want->has_least || out->least >= least, all_tight);
  out->within = get_share (all_loose || all_tight, out->loose <= 0 && out->tight <= 0);
  out->clearance = get_share (out->most <= 0, out->least > 0);
  out->interference = get_share (out->least >= 0, out->most < 0);
}

/* P(from < z < to), from the tail that keeps its digits. */
static double
get_between (double from, double to)
{
  if (!(from < to))
    return 0;
  return from > 0 ? gsl_cdf_ugaussian_Q (from) - gsl_cdf_ugaussian_Q (to)
                  : gsl_cdf_ugaussian_P (to) - gsl_cdf_ugaussian_P (from);
}

/* The error z·u moves both ends: below `from` the tight end is out, above `to` the loose one.  Where sizes
 * spread wider than what is wanted, `from` is above `to`: one end is out whatever the error. */
static void
take_chances (const TmFitWant *want, TmFitCheck *out)
{
  double from = want->has_least ? ((double)want->least - out->least) / out->u : -INFINITY;
  double to = want->has_most ? ((double)want->most - out->most) / out->u : INFINITY;

  out->loose = want->has_most ? gsl_cdf_ugaussian_Q (to) : 0;
  out->tight = want->has_least ? gsl_cdf_ugaussian_P (from) : 0;
  out->within = get_between (from, to);
  out->clearance = gsl_cdf_ugaussian_P (out->least / out->u);
  out->interference = gsl_cdf_ugaussian_Q (out->most / out->u);
}

TmFitStatus
tm_fit_check (const TmFitPart *bore, const TmFitPart *shaft, const TmFitWant *want, TmFitCheck *out)
{
  static const TmFitWant any = { FALSE };
  TmFitStatus status;

  g_return_val_if_fail (bore != NULL && shaft != NULL && out != NULL, TM_FIT_BAD_PART);
  *out = (TmFitCheck) { NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN };
  if (want == NULL)
    want = &any;
  status = check_input (bore, shaft, want);
  if (status != TM_FIT_OK)
    return status;
  out->least = get_clearance (bore, bore->smallest, shaft, shaft->largest);
  out->most = get_clearance (bore, bore->largest, shaft, shaft->smallest);
  out->u = get_u (bore, shaft);
  out->expanded = 2 * out->u;
  if (isnan (out->u))
    return TM_FIT_NO_METHOD;
  if (out->u > 0)
    take_chances (want, out);
  else
    take_chances_by_limits (want, out);
  return TM_FIT_OK;
}

gboolean
tm_fit_is_within (const TmFitCheck *check, const TmFitWant *want)
{
  g_return_val_if_fail (check != NULL && want != NULL, FALSE);

  if (check->u > 0)
    return check->within >= TM_FIT_PROVEN;
  if (isnan (check->least) || isnan (check->most))
    return FALSE;
  return !(want->has_least && check->least < (double)want->least)
         && !(want->has_most && check->most > (double)want->most);
}
