/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-fit-answer: a fit, printed.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-fit.h"
#include "cli-json.h"
#include "cli-share.h"
#include "core-press.h"

void
tm_fit_answer_clear (TmFitAnswer *answer)
{
  g_clear_pointer (&answer->culprit, g_free);
}

gboolean
tm_fit_answer_has_range (const TmFitAnswer *answer)
{
  return answer->status == TM_FIT_OK || answer->status == TM_FIT_NO_METHOD;
}

gboolean
tm_fit_answer_is_good (const TmFitAnswer *answer)
{
  return tm_fit_answer_has_range (answer) && tm_fit_is_within (&answer->check, &answer->want);
}

char *
tm_fit_answer_reason (const TmFitAnswer *answer)
{
  const char *word = tm_fit_status_word (answer->status);

  if (*word == '\0')
    return NULL;
  word = g_dpgettext2 (GETTEXT_PACKAGE, "fit status", word);
  /* Translators: what it is about, then what is wrong with it. */
  return answer->culprit != NULL ? g_strdup_printf (_ ("%s: %s"), answer->culprit, word) : g_strdup (word);
}

/* -------- Digits -------- */

/* Finer than any fit is known. */
static guint
get_decimals (TmUnit unit)
{
  return unit == TM_UNIT_IN ? 6 : 5;
}

/* Exact where that is short, else outward: @up for the end that is more. */
static char *
format_end (double counts, TmUnit unit, gboolean up)
{
  gint64 count = (gint64)(up ? ceil (counts) : floor (counts));
  gint64 step = tm_unit_counts (unit);
  gint64 rest;

  for (guint i = 0; i < get_decimals (unit); i++)
    step /= 10;
  rest = count % step;
  if (rest < 0)
    rest += step;
  if (rest > 0)
    count += up ? step - rest : -rest;
  return tm_count_format_exact (count, unit, unit == TM_UNIT_IN ? 4 : 3);
}

/* -------- JSON -------- */

void
tm_fit_put_check (yajl_gen gen, const TmFitCheck *check, TmUnit unit)
{
  tm_print_counts (gen, "clearance_min", check->least, unit);
  tm_print_counts (gen, "clearance_max", check->most, unit);
  tm_print_counts (gen, "expanded_uncertainty", check->expanded, unit);
  tm_print_number (gen, "probability_loose", check->loose);
  tm_print_number (gen, "probability_tight", check->tight);
  tm_print_number (gen, "probability_within", check->within);
  tm_print_number (gen, "probability_clearance", check->clearance);
  tm_print_number (gen, "probability_interference", check->interference);
}

static void
put_part (yajl_gen gen, const char *key, const TmFitPart *part, TmUnit unit)
{
  tm_print_key (gen, key);
  yajl_gen_map_open (gen);
  tm_print_counts (gen, "smallest", (double)part->smallest, unit);
  tm_print_counts (gen, "largest", (double)part->largest, unit);
  tm_print_counts (gen, "standard_uncertainty", part->u, unit);
  tm_print_number (gen, "temperature", part->temp);
  tm_print_number (gen, "expansion", part->alpha);
  yajl_gen_map_close (gen);
}

static void
put_members (yajl_gen gen, const TmFitAnswer *answer, TmUnit unit)
{
  g_autofree char *reason = tm_fit_answer_reason (answer);

  if (answer->has_parts)
    {
      put_part (gen, "bore", &answer->bore, unit);
      put_part (gen, "shaft", &answer->shaft, unit);
    }
  else
    {
      tm_print_null (gen, "bore");
      tm_print_null (gen, "shaft");
    }
  tm_fit_put_check (gen, &answer->check, unit);
  tm_print_flag (gen, "within", tm_fit_answer_is_good (answer));
  tm_print_text (gen, "reason", reason);
}

void
tm_fit_put_answer (yajl_gen gen, const char *key, const TmFitAnswer *answer, TmUnit unit)
{
  if (key == NULL)
    {
      put_members (gen, answer, unit);
      return;
    }
  tm_print_key (gen, key);
  yajl_gen_map_open (gen);
  put_members (gen, answer, unit);
  yajl_gen_map_close (gen);
}

void
tm_fit_put_want (yajl_gen gen, const TmFitWant *want, TmUnit unit)
{
  tm_print_key (gen, "wanted");
  yajl_gen_map_open (gen);
  tm_print_counts (gen, "least", want->has_least ? (double)want->least : (double)NAN, unit);
  tm_print_counts (gen, "most", want->has_most ? (double)want->most : (double)NAN, unit);
  yajl_gen_map_close (gen);
}

/* -------- Words -------- */

/* Two digits, upward. */
static char *
format_spread (double counts, TmUnit unit)
{
  double tens = floor (log10 (counts / (double)tm_unit_counts (unit)));

  return tm_count_format_bound ((gint64)ceil (counts), unit,
                                (guint)CLAMP (1 - tens, 0, get_decimals (unit) + 1), TRUE);
}

/* "a to b mm", or "a mm" where both are the same. */
static char *
describe_ends (double least, double most, TmUnit unit)
{
  g_autofree char *low = format_end (least, unit, FALSE);
  g_autofree char *high = format_end (most, unit, TRUE);
  const char *symbol = tm_unit_symbol (unit);

  return g_str_equal (low, high) ? g_strdup_printf ("%s %s", low, symbol)
                                 : g_strdup_printf (_ ("%s to %s %s"), low, high, symbol);
}

/* What lies below zero is interference. */
static char *
describe_clearance (double least, double most, TmUnit unit)
{
  g_autofree char *ends = most < 0 ? describe_ends (-most, -least, unit) : describe_ends (least, most, unit);

  if (most < 0)
    return g_strdup_printf (_ ("interference %s"), ends);
  return g_strdup_printf (least < 0 ? _ ("clearance %s (below zero: interference)") : _ ("clearance %s"),
                          ends);
}

char *
tm_fit_describe_range (const TmFitCheck *check, TmUnit unit)
{
  g_autofree char *range = describe_clearance (check->least, check->most, unit);
  g_autofree char *spread = check->u > 0 ? format_spread (check->expanded, unit) : NULL;

  /* Translators: a range with its unit, then its uncertainty in the same unit. */
  return spread != NULL ? g_strdup_printf (_ ("%s ± %s"), range, spread) : g_steal_pointer (&range);
}

/* A size as it is, to the last digit. */
static void
print_part (gboolean is_bore, const TmFitPart *part, TmUnit unit)
{
  guint decimals = unit == TM_UNIT_IN ? 4 : 3;
  g_autofree char *smallest = tm_count_format_exact (part->smallest, unit, decimals);
  g_autofree char *largest = tm_count_format_exact (part->largest, unit, decimals);
  const char *symbol = tm_unit_symbol (unit);
  g_autofree char *size = part->smallest == part->largest
                              ? g_strdup_printf ("%s %s", smallest, symbol)
                              : g_strdup_printf (_ ("%s to %s %s"), smallest, largest, symbol);

  printf (is_bore ? _ ("  bore %s\n") : _ ("  shaft %s\n"), size);
}

static void
print_shares (const TmFitCheck *check)
{
  g_autofree char *within = tm_format_share (check->within, 1);
  g_autofree char *loose = tm_format_share (check->loose, 1);
  g_autofree char *tight = tm_format_share (check->tight, 1);

  /* Translators: each is a percentage. */
  printf (_ ("  inside what is wanted %s, too loose %s, too tight %s\n"), within, loose, tight);
}

static void
print_chances (const TmFitAnswer *answer)
{
  const TmFitCheck *check = &answer->check;

  if (!answer->want.has_least && !answer->want.has_most)
    return;
  if (isfinite (check->within) && isfinite (check->loose) && isfinite (check->tight))
    print_shares (check);
  else if (tm_fit_answer_is_good (answer))
    printf ("%s\n", _ ("  all of it is inside what is wanted"));
  else
    printf ("%s\n", _ ("  part of it is outside what is wanted"));
}

void
tm_fit_print_answer (const char *title, const TmFitAnswer *answer, TmUnit unit)
{
  g_autofree char *reason = tm_fit_answer_reason (answer);
  g_autofree char *range = NULL;

  printf ("%s\n", title);
  if (answer->has_parts)
    {
      print_part (TRUE, &answer->bore, unit);
      print_part (FALSE, &answer->shaft, unit);
    }
  if (tm_fit_answer_has_range (answer))
    {
      range = tm_fit_describe_range (&answer->check, unit);
      printf ("  %s\n", range);
      print_chances (answer);
    }
  if (reason != NULL)
    printf ("  %s\n", reason);
}

static void
print_open_want (const TmFitWant *want, TmUnit unit)
{
  gint64 end = want->has_least ? want->least : want->most;
  g_autofree char *length = tm_count_format_exact (ABS (end), unit, unit == TM_UNIT_IN ? 4 : 3);
  const char *symbol = tm_unit_symbol (unit);

  if (end >= 0)
    printf (want->has_least ? _ ("wanted: clearance of %s %s or more\n")
                            : _ ("wanted: clearance of %s %s or less\n"),
            length, symbol);
  else
    printf (want->has_least ? _ ("wanted: interference of %s %s or less\n")
                            : _ ("wanted: interference of %s %s or more\n"),
            length, symbol);
}

void
tm_fit_print_want (const TmFitWant *want, TmUnit unit)
{
  if (want->has_least && want->has_most)
    {
      g_autofree char *range = describe_clearance ((double)want->least, (double)want->most, unit);

      printf (_ ("wanted: %s\n"), range);
    }
  else if (want->has_least || want->has_most)
    {
      print_open_want (want, unit);
    }
}

static void
print_caution (TmPressCaution caution)
{
  printf ("%s\n", g_dpgettext2 (GETTEXT_PACKAGE, "press caution", tm_press_caution_word (caution)));
}

void
tm_fit_print_caution (void)
{
  print_caution (TM_PRESS_CAUTION_GUARD);
  print_caution (TM_PRESS_CAUTION_ESTIMATE);
}
