/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-fit: what a picture of a fit holds, and the same in words.
 */

#include "plot-fit.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "plot-chance.h"
#include "plot-clearance.h"
#include "plot-fit-private.h"
#include "plot-range.h"

/* Zero is on the axis when it lies no farther from the rest than so many times its width. */
#define ZERO_REACH 1.5
#define MARGIN     0.08

/* Digits of a fit: the micrometre, or the ten-thousandth of an inch, and one more where it is needed. */
static guint
get_decimals (TmUnit unit)
{
  return unit == TM_UNIT_IN ? 4 : 3;
}

static guint
choose_decimals (TmUnit unit, gint64 one, gint64 other)
{
  const guint decimals = get_decimals (unit) + 1;
  g_autofree char *first = tm_count_format (one, unit, decimals);
  g_autofree char *second = tm_count_format (other, unit, decimals);

  return g_str_has_suffix (first, "0") && g_str_has_suffix (second, "0") ? decimals - 1 : decimals;
}

/* An end of a range, rounded away from the other to the last digit that is printed: as the words of the fit
 * have it. */
static gint64
round_out (double value, TmUnit unit, gboolean up)
{
  const double step = (double)tm_unit_counts (unit) * pow (10.0, -(double)(get_decimals (unit) + 1));
  const double steps = value / step, slack = 1e-4;

  return llround ((up ? ceil (steps - slack) : floor (steps + slack)) * step);
}

static gboolean
is_count (double value)
{
  return isfinite (value) && fabs (value) < (double)TM_COUNT_MAX;
}

static TmFitStands
find_stands (const TmFitCheck *check, const TmFitWant *want)
{
  if (!want->has_least && !want->has_most)
    return TM_FIT_STANDS_FREE;
  if (tm_fit_is_within (check, want))
    return TM_FIT_STANDS_IN;
  if ((want->has_least && check->most < (double)want->least)
      || (want->has_most && check->least > (double)want->most))
    return TM_FIT_STANDS_OUT;
  return TM_FIT_STANDS_CLOSE;
}

/* By limits a chance of 0 or 1 is what the range shows already. */
static void
add_chances (TmFitRow *row, const TmFitCheck *check, const TmFitWant *want)
{
  g_autofree char *within = tm_chance_text (check->within), *loose = tm_chance_text (check->loose),
                  *tight = tm_chance_text (check->tight);

  if (row->by_limits || row->stands == TM_FIT_STANDS_FREE || within == NULL)
    return;
  row->chance = g_strdup_printf (_ ("%s within what is wanted"), within);
  if (want->has_most && want->has_least && loose != NULL && tight != NULL)
    row->doubts = g_strdup_printf (_ ("%s too loose, %s too tight"), loose, tight);
  else if (want->has_most && loose != NULL)
    row->doubts = g_strdup_printf (_ ("%s too loose"), loose);
  else if (want->has_least && tight != NULL)
    row->doubts = g_strdup_printf (_ ("%s too tight"), tight);
}

static void
add_row (TmFitSight *sight, const TmFitPicture *picture, const char *label, const TmFitCheck *check,
         gboolean by_limits)
{
  TmFitRow *row = &sight->rows[sight->n_rows];
  gint64 least, most;

  if (!is_count (check->least) || !is_count (check->most) || check->least > check->most)
    return;
  least = round_out (check->least, picture->unit, FALSE);
  most = round_out (check->most, picture->unit, TRUE);
  *row = (TmFitRow) { .label = label,
                      .least = check->least,
                      .most = check->most,
                      .expanded = is_count (check->expanded) ? MAX (0.0, check->expanded) : 0.0,
                      .by_limits = by_limits,
                      .stands = find_stands (check, &picture->want) };
  row->words = tm_clearance_words (TRUE, least, TRUE, most, picture->unit,
                                   choose_decimals (picture->unit, least, most));
  add_chances (row, check, &picture->want);
  sight->n_rows++;
}

static void
add_want (TmFitSight *sight, const TmFitPicture *picture)
{
  const TmFitWant *want = &picture->want;
  const guint decimals
      = choose_decimals (picture->unit, want->has_least ? want->least : 0, want->has_most ? want->most : 0);

  sight->want = *want;
  if (want->has_least)
    sight->want_least = tm_count_format (ABS (want->least), picture->unit, decimals);
  if (want->has_most)
    sight->want_most = tm_count_format (ABS (want->most), picture->unit, decimals);
  if (want->has_least || want->has_most)
    sight->want_words = tm_clearance_words (want->has_least, want->least, want->has_most, want->most,
                                            picture->unit, decimals);
}

static void
choose_axis (TmFitSight *sight, TmUnit unit)
{
  double low = NAN, high = NAN, span;

  for (guint i = 0; i < sight->n_rows; i++)
    {
      tm_range_stretch (&low, &high, sight->rows[i].least - sight->rows[i].expanded);
      tm_range_stretch (&low, &high, sight->rows[i].most + sight->rows[i].expanded);
    }
  if (sight->want.has_least)
    tm_range_stretch (&low, &high, (double)sight->want.least);
  if (sight->want.has_most)
    tm_range_stretch (&low, &high, (double)sight->want.most);
  sight->has_axis = isfinite (low);
  if (!sight->has_axis)
    return;
  span = MAX (high - low, 2.0 * (double)tm_unit_counts (unit) * pow (10.0, -(double)get_decimals (unit)));
  if (low <= ZERO_REACH * span && high >= -ZERO_REACH * span)
    tm_range_stretch (&low, &high, 0.0);
  span = MAX (span, high - low);
  sight->axis = tm_axis_new (low - MARGIN * span, high + MARGIN * span, unit);
  sight->has_zero = sight->axis.low <= 0 && sight->axis.high >= 0;
}

void
tm_fit_sight_fill (TmFitSight *sight, const TmFitPicture *picture)
{
  *sight = (TmFitSight) { 0 };
  if (tm_unit_counts (picture->unit) <= 0)
    return;
  add_want (sight, picture);
  if (picture->has_limits)
    add_row (sight, picture, C_ ("fit", "by limits"), &picture->limits, TRUE);
  if (picture->has_measured)
    add_row (sight, picture, C_ ("fit", "as measured"), &picture->measured, FALSE);
  if (picture->has_warm)
    add_row (sight, picture, C_ ("fit", "at temperature"), &picture->warm, FALSE);
  choose_axis (sight, picture->unit);
}

void
tm_fit_sight_clear (TmFitSight *sight)
{
  for (guint i = 0; i < sight->n_rows; i++)
    {
      g_free (sight->rows[i].words);
      g_free (sight->rows[i].chance);
      g_free (sight->rows[i].doubts);
    }
  g_free (sight->want_least);
  g_free (sight->want_most);
  g_free (sight->want_words);
  *sight = (TmFitSight) { 0 };
}

/* -------- Words -------- */

static void
describe_row (const TmFitRow *row, TmUnit unit, GString *out)
{
  g_string_append_printf (out, ". %s: %s", row->label, row->words);
  if (row->expanded > 0)
    {
      g_autofree char *spread
          = tm_count_format_bound (llround (row->expanded), unit, get_decimals (unit) + 1, TRUE);
      g_string_append (out, ", ");
      g_string_append_printf (out, _ ("each end ± %s %s"), spread, tm_unit_symbol (unit));
    }
  if (row->chance != NULL)
    g_string_append_printf (out, "; %s", row->chance);
  if (row->doubts != NULL)
    g_string_append_printf (out, ", %s", row->doubts);
  if (row->by_limits && row->stands == TM_FIT_STANDS_IN)
    g_string_append_printf (out, ", %s", _ ("all within what is wanted"));
  else if (row->by_limits && row->stands == TM_FIT_STANDS_CLOSE)
    g_string_append_printf (out, ", %s", _ ("not all within what is wanted"));
  else if (row->by_limits && row->stands == TM_FIT_STANDS_OUT)
    g_string_append_printf (out, ", %s", _ ("none of it within what is wanted"));
}

char *
tm_fit_plot_describe (const TmFitPicture *picture)
{
  g_auto (TmFitSight) sight = { 0 };
  GString *out;

  g_return_val_if_fail (picture != NULL, NULL);
  tm_fit_sight_fill (&sight, picture);
  if (sight.n_rows == 0 && sight.want_words == NULL)
    return g_strdup (_ ("No fit to show yet"));
  out = g_string_new (NULL);
  if (sight.want_words != NULL)
    g_string_append_printf (out, _ ("Fit: %s wanted"), sight.want_words);
  else
    g_string_append (out, _ ("Fit: no clearance is asked for"));
  for (guint i = 0; i < sight.n_rows; i++)
    describe_row (&sight.rows[i], picture->unit, out);
  g_string_append_c (out, '.');
  return g_string_free (out, FALSE);
}
