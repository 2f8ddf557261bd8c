/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-fit-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "app-words.h"
#include "plot-chance.h"

/* A chance from which on it is said without "may" (core: TM_FIT_PROVEN). */
#define SURE TM_FIT_PROVEN

/* -------- Lengths between two sizes -------- */

/* Micrometres below a millimetre, tenths below a hundredth of an inch; else the unit itself. */
static TmUnit
choose_unit (double counts, TmUnit unit)
{
  double most = (double)tm_unit_counts (unit) / (unit == TM_UNIT_IN ? 100 : 1);
  return fabs (counts) < most ? tm_unit_small (unit) : unit;
}

static void
cut_zeros (char *number)
{
  char *end = number + strlen (number);
  if (strchr (number, '.') == NULL)
    return;
  while (end[-1] == '0')
    end--;
  if (end[-1] == '.')
    end--;
  *end = '\0';
}

/* "14.2" of a length that is not below zero: to a tenth of the small unit, outward. */
static char *
format_number (double counts, TmUnit shown, gboolean up)
{
  guint decimals = shown == TM_UNIT_IN ? 5 : shown == TM_UNIT_MM ? 4 : 1;
  char *number = tm_count_format_bound ((gint64)(up ? ceil (counts) : floor (counts)), shown, decimals, up);
  cut_zeros (number);
  return number;
}

static char *
format_length (double counts, TmUnit unit, gboolean up)
{
  TmUnit shown = choose_unit (counts, unit);
  g_autofree char *number = format_number (counts, shown, up);
  return g_strdup_printf ("%s %s", number, tm_unit_symbol (shown));
}

/* "2 to 14 µm", both in the unit of the larger. */
static char *
format_ends (double least, double most, TmUnit unit)
{
  TmUnit shown = choose_unit (most, unit);
  g_autofree char *low = format_number (least, shown, FALSE);
  g_autofree char *high = format_number (most, shown, TRUE);
  if (g_str_equal (low, high))
    return g_strdup_printf ("%s %s", low, tm_unit_symbol (shown));
  /* Translators: two lengths and their unit. */
  return g_strdup_printf (_ ("%s to %s %s"), low, high, tm_unit_symbol (shown));
}

/* Two digits, upward. */
static char *
format_spread (double counts, TmUnit unit)
{
  TmUnit shown = choose_unit (counts, unit);
  double tens = floor (log10 (counts / (double)tm_unit_counts (shown)));
  g_autofree char *number
      = tm_count_format_bound ((gint64)ceil (counts), shown, (guint)CLAMP (1 - tens, 0, 4), TRUE);
  return g_strdup_printf ("%s %s", number, tm_unit_symbol (shown));
}

/* What lies below zero is interference. */
static char *
describe_range (double least, double most, TmUnit unit)
{
  if (least >= 0)
    {
      g_autofree char *ends = format_ends (least, most, unit);
      return g_strdup_printf (_ ("clearance %s"), ends);
    }
  if (most <= 0)
    {
      g_autofree char *ends = format_ends (-most, -least, unit);
      return g_strdup_printf (_ ("interference %s"), ends);
    }
  g_autofree char *low = format_length (-least, unit, TRUE);
  g_autofree char *high = format_length (most, unit, TRUE);
  return g_strdup_printf (_ ("interference %s to clearance %s"), low, high);
}

static gboolean
is_finite_range (const TmFitCheck *check)
{
  return isfinite (check->least) && isfinite (check->most) && fabs (check->least) < (double)TM_COUNT_MAX
         && fabs (check->most) < (double)TM_COUNT_MAX;
}

static gboolean
is_any (const TmFitWant *want)
{
  return !want->has_least && !want->has_most;
}

char *
tm_words_fit_range (const TmFitCheck *check, TmUnit unit)
{
  if (!is_finite_range (check))
    return g_strdup ("");
  g_autofree char *range = describe_range (check->least, check->most, unit);
  if (!(check->expanded > 0) || !isfinite (check->expanded))
    return g_steal_pointer (&range);
  g_autofree char *spread = format_spread (check->expanded, unit);
  /* Translators: a range of clearance, then its uncertainty. */
  return g_strdup_printf (_ ("%s, ± %s"), range, spread);
}

char *
tm_words_fit_want (const TmFitWant *want, TmUnit unit)
{
  if (is_any (want))
    return g_strdup ("");
  if (want->has_least && want->has_most)
    {
      g_autofree char *range = describe_range ((double)want->least, (double)want->most, unit);
      return g_strdup_printf (_ ("wanted: %s"), range);
    }
  gint64 end = want->has_least ? want->least : want->most;
  g_autofree char *length = format_length (fabs ((double)end), unit, end >= 0);
  if (end >= 0)
    return g_strdup_printf (want->has_least ? _ ("wanted: clearance of %s or more")
                                            : _ ("wanted: clearance of %s or less"),
                            length);
  return g_strdup_printf (want->has_least ? _ ("wanted: interference of %s or less")
                                          : _ ("wanted: interference of %s or more"),
                          length);
}

/* -------- Chances -------- */

/* By limits: what is true of every pair, else nothing. */
static const char *
find_certain_words (const TmFitCheck *check)
{
  if (check->within >= 1)
    return _ ("all of it inside");
  if (check->tight >= 1)
    return _ ("all of it too tight");
  return check->loose >= 1 ? _ ("all of it too loose") : "";
}

char *
tm_words_fit_chances (const TmFitCheck *check, const TmFitWant *want)
{
  if (is_any (want) || isnan (check->u))
    return g_strdup ("");
  if (check->u <= 0)
    return g_strdup (find_certain_words (check));
  g_autofree char *within = tm_chance_text (check->within);
  g_autofree char *loose = tm_chance_text (check->loose);
  g_autofree char *tight = tm_chance_text (check->tight);
  if (within == NULL || loose == NULL || tight == NULL)
    return g_strdup ("");
  if (!want->has_least)
    return g_strdup_printf (_ ("inside %s, too loose %s"), within, loose);
  if (!want->has_most)
    return g_strdup_printf (_ ("inside %s, too tight %s"), within, tight);
  /* Translators: three percentages. */
  return g_strdup_printf (_ ("inside %s, too loose %s, too tight %s"), within, loose, tight);
}

char *
tm_words_fit_inside (const TmFitCheck *check, const TmFitWant *want)
{
  if (is_any (want) || isnan (check->u))
    return g_strdup ("");
  if (check->u <= 0)
    return g_strdup (find_certain_words (check));
  g_autofree char *within = tm_chance_text (check->within);
  return within != NULL ? g_strdup_printf (_ ("inside %s"), within) : g_strdup ("");
}

/* -------- What it says -------- */

/* Against what is wanted: @may: the parts, or the uncertainty, can make it so; @is: it is so. */
static const char *
find_ends_words (gboolean may_tight, gboolean is_tight, gboolean may_loose, gboolean is_loose)
{
  if (is_tight && is_loose)
    return _ ("Too tight at one end, too loose at the other");
  if (is_tight)
    return _ ("Too tight");
  if (is_loose)
    return _ ("Too loose");
  if (may_tight && may_loose)
    return _ ("May be too tight or too loose");
  return may_tight ? _ ("May be too tight") : _ ("May be too loose");
}

static const char *
find_want_words (const TmFitCheck *check, const TmFitWant *want)
{
  if (tm_fit_is_within (check, want))
    return isnan (check->u) ? _ ("Inside the wanted range as read") : _ ("Inside the wanted range");
  if (isnan (check->u))
    return _ ("Outside the wanted range as read");
  if (check->u <= 0)
    return find_ends_words (!(check->tight <= 0), check->tight >= 1, !(check->loose <= 0), check->loose >= 1);
  return find_ends_words (check->tight > 1 - SURE || check->tight >= check->loose, check->tight >= SURE,
                          check->loose > 1 - SURE || check->loose >= check->tight, check->loose >= SURE);
}

/* Where nothing is wanted in particular: the fits of ISO 286. */
static const char *
find_kind_words (const TmFitCheck *check)
{
  gboolean clear = check->u > 0 ? check->clearance >= SURE : check->least >= 0;
  gboolean press = check->u > 0 ? check->interference >= SURE : check->most < 0;
  if (clear)
    return _ ("A clearance fit");
  return press ? _ ("An interference fit") : _ ("A transition fit: it may have room or press");
}

char *
tm_words_fit_says (TmFitStatus status, const TmFitCheck *check, const TmFitWant *want)
{
  if (status != TM_FIT_OK && status != TM_FIT_NO_METHOD)
    {
      g_autofree char *word = tm_words_fit_status (status);
      return tm_words_start_upper (word);
    }
  if (!is_finite_range (check))
    return g_strdup ("");
  return g_strdup (is_any (want) ? find_kind_words (check) : find_want_words (check, want));
}

/* Of exact sizes, and of such whose uncertainty is unknown. */
static const char *
find_plain_nature (const TmFitCheck *check)
{
  if (check->least > 0)
    return _ ("It goes in without force");
  return check->most < 0 ? _ ("It presses all over") : _ ("It may have room or press");
}

char *
tm_words_fit_nature (const TmFitCheck *check)
{
  if (!is_finite_range (check))
    return g_strdup ("");
  if (!(check->u > 0))
    return g_strdup (find_plain_nature (check));
  g_autofree char *clear = tm_chance_text (check->clearance);
  g_autofree char *press = tm_chance_text (check->interference);
  if (clear == NULL || press == NULL)
    return g_strdup ("");
  if (check->interference < 0.001)
    return g_strdup_printf (_ ("It goes in without force: %s"), clear);
  if (check->clearance < 0.001)
    return g_strdup_printf (_ ("It presses all over: %s"), press);
  /* Translators: two percentages. */
  return g_strdup_printf (_ ("It goes in without force: %s; it presses all over: %s"), clear, press);
}

char *
tm_words_fit_status (TmFitStatus status)
{
  const char *word = tm_fit_status_word (status);
  return g_strdup (*word != '\0' ? g_dpgettext2 (GETTEXT_PACKAGE, "fit status", word) : "");
}

/* -------- Batches -------- */

static guint
count_pairs (const TmPairing *pairing)
{
  guint n = 0;
  for (guint i = 0; i < pairing->n_pairs; i++)
    n += pairing->pairs[i].shaft != TM_ASSIGN_NONE;
  return n;
}

char *
tm_words_pairing (const TmPairing *pairing)
{
  guint n = count_pairs (pairing);
  if (n == 0)
    return g_strdup ("");
  return g_strdup_printf (ngettext ("Expected outside: %.1f of %u pair; in the order they came: %.1f",
                                    "Expected outside: %.1f of %u pairs; in the order they came: %.1f", n),
                          pairing->expected_outside, n, pairing->first_come);
}

char *
tm_words_mate_size (const TmMateSize *mate, TmUnit unit)
{
  if (!mate->smallest.given)
    return g_strdup ("");
  guint decimals = MAX (mate->smallest.decimals, mate->largest.decimals);
  g_autofree char *smallest
      = tm_count_format_exact (mate->smallest.count, unit, mate->smallest.unit == unit ? decimals : 0);
  g_autofree char *largest
      = tm_count_format_exact (mate->largest.given ? mate->largest.count : mate->smallest.count, unit,
                               mate->smallest.unit == unit ? decimals : 0);
  g_autofree char *size = g_str_equal (smallest, largest)
                              ? g_strdup_printf ("%s %s", smallest, tm_unit_symbol (unit))
                              : g_strdup_printf (_ ("%s to %s %s"), smallest, largest, tm_unit_symbol (unit));
  if (!mate->uncertainty.given || mate->uncertainty.count <= 0)
    return g_steal_pointer (&size);
  g_autofree char *spread = format_length ((double)mate->uncertainty.count, unit, TRUE);
  return g_strdup_printf ("%s ± %s", size, spread);
}
