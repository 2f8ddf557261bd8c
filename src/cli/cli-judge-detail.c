/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "cli-judge-detail.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-json.h"
#include "core-combine.h"
#include "core-judge-budget.h"

/* Sizes are told to this share of the unit. */
#define SIZE_DECIMALS 9

static const TmLocalSize *
get_deciding (const TmJudgement *judgement)
{
  if (judgement->deciding >= judgement->sizes.n_stations || tm_kind_is_attribute (judgement->feature->kind))
    return NULL;
  return &judgement->sizes.stations[judgement->deciding];
}

/* @reference + @offset, counts. */
static char *
format_sum (gint64 reference, double offset, TmUnit unit)
{
  return isfinite (offset) ? tm_mean_format ((TmWide)reference + llround (offset), 1, unit, SIZE_DECIMALS)
                           : NULL;
}

static void
put_sum (yajl_gen gen, const char *key, gint64 reference, double offset, TmUnit unit)
{
  g_autofree char *text = format_sum (reference, offset, unit);

  tm_print_text (gen, key, text);
}

/* -------- Raw value -------- */

static void
put_raw (yajl_gen gen, const TmJudgement *judgement)
{
  const TmLocalSize *size = get_deciding (judgement);
  TmUnit unit = judgement->feature->unit;
  g_autofree char *raw = NULL;

  if (size != NULL && size->raw_sum % size->n == 0)
    raw = tm_count_format_exact ((gint64)(size->raw_sum / size->n), unit,
                                 size->unit == unit ? size->decimals : 0);
  else if (size != NULL)
    raw = tm_mean_format (size->raw_sum, size->n, unit, SIZE_DECIMALS);
  tm_print_text (gen, "raw_size", raw);
  tm_print_counts (gen, "correction", size != NULL ? judgement->correction : (double)NAN, unit);
  tm_print_counts (gen, "standard_uncertainty", judgement->u, unit);
  tm_print_text (gen, "counted", tm_counted_word (judgement->counted));
}

/* -------- Budget -------- */

static void
put_line (yajl_gen gen, const TmComponent *line, TmUnit unit)
{
  yajl_gen_map_open (gen);
  tm_print_text (gen, "component", tm_component_word (line->kind));
  tm_print_text (gen, "subject", line->subject);
  tm_print_counts (gen, "value", line->value, unit);
  tm_print_text (gen, "distribution", tm_distribution_word (line->distribution));
  tm_print_number (gen, "divisor", tm_component_divisor (line));
  tm_print_number (gen, "sensitivity", line->sensitivity);
  tm_print_counts (gen, "contribution", tm_component_share (line), unit);
  tm_print_number (gen, "dof", line->dof);
  tm_print_text (gen, "source", line->source);
  tm_print_flag (gen, "assumed", line->assumed);
  yajl_gen_map_close (gen);
}

static void
put_budget (yajl_gen gen, const TmJob *job, const TmJudgement *judgement)
{
  TmComponent lines[TM_METHOD_MAX_LINES];
  guint n = tm_judgement_lines (job, judgement, lines);

  tm_print_key (gen, "budget");
  yajl_gen_array_open (gen);
  for (guint i = 0; i < n; i++)
    put_line (gen, &lines[i], judgement->feature->unit);
  yajl_gen_array_close (gen);
}

/* -------- Methods put together -------- */

/* At the station that decides; FALSE where one method alone was used. */
static gboolean
combine (const TmJob *job, const TmJudgement *judgement, TmCombined *out)
{
  const TmLocalSize *size = get_deciding (judgement);

  if (size == NULL || !size->several_methods)
    return FALSE;
  tm_combine (job, judgement->piece, judgement->feature, judgement->place, size->station, out);
  return TRUE;
}

static void
put_part (yajl_gen gen, const TmCombined *combined, const TmCombinePart *part, TmUnit unit)
{
  yajl_gen_map_open (gen);
  tm_print_text (gen, "method", part->method_name);
  tm_print_integer (gen, "readings", part->n);
  put_sum (gen, "size", combined->reference, part->size, unit);
  tm_print_counts (gen, "standard_uncertainty", part->u, unit);
  tm_print_counts (gen, "expanded_uncertainty", part->expanded, unit);
  tm_print_number (gen, "dof", part->dof);
  tm_print_number (gen, "weight", part->weight);
  tm_print_number (gen, "apart", part->apart);
  tm_print_text (gen, "settles",
                 *tm_settles_word (part->settles) != '\0' ? tm_settles_word (part->settles) : NULL);
  yajl_gen_map_close (gen);
}

static void
put_combined (yajl_gen gen, const TmJob *job, const TmJudgement *judgement)
{
  TmUnit unit = judgement->feature->unit;
  g_auto (TmCombined) combined = { 0 };

  if (!combine (job, judgement, &combined))
    {
      tm_print_null (gen, "combined");
      return;
    }
  tm_print_key (gen, "combined");
  yajl_gen_map_open (gen);
  put_sum (gen, "size", combined.reference, combined.size, unit);
  tm_print_counts (gen, "standard_uncertainty", combined.u, unit);
  tm_print_counts (gen, "expanded_uncertainty", combined.expanded, unit);
  tm_print_number (gen, "dof", combined.dof);
  tm_print_number (gen, "coverage_factor", combined.coverage);
  tm_print_number (gen, "chi2", combined.chi2);
  tm_print_number (gen, "p", combined.p);
  tm_print_number (gen, "birge", combined.birge);
  tm_print_flag (gen, "disagree", combined.disagree);
  tm_print_text (gen, "apart", combined.apart >= 0 ? combined.parts[combined.apart].method_name : NULL);
  tm_print_flag (gen, "best_alone", combined.best_alone);
  tm_print_key (gen, "parts");
  yajl_gen_array_open (gen);
  for (guint i = 0; i < combined.n_parts; i++)
    put_part (gen, &combined, &combined.parts[i], unit);
  yajl_gen_array_close (gen);
  yajl_gen_map_close (gen);
}

/* -------- Pins -------- */

static gboolean
find_pins (const TmJob *job, const TmJudgement *judgement, TmPinEvidence *out)
{
  return tm_pin_evidence (job, judgement->piece, judgement->feature, judgement->place,
                          judgement->counted != TM_COUNTED_PINS, out);
}

static void
put_bound (yajl_gen gen, const char *key, gboolean has, gint64 bound, TmUnit unit)
{
  g_autofree char *text = has ? tm_count_format_exact (bound, unit, 0) : NULL;

  tm_print_text (gen, key, text);
}

static void
put_pins (yajl_gen gen, const TmJob *job, const TmJudgement *judgement)
{
  TmUnit unit = judgement->feature->unit;
  g_auto (TmPinEvidence) evidence = { 0 };
  const TmPinResult *pins = &evidence.result;

  if (!find_pins (job, judgement, &evidence))
    {
      tm_print_null (gen, "pins");
      return;
    }
  tm_print_key (gen, "pins");
  yajl_gen_map_open (gen);
  put_bound (gen, "low", pins->has_low, pins->low, unit);
  put_bound (gen, "high", pins->has_high, pins->high, unit);
  tm_print_flag (gen, "proves_band", pins->proves_band);
  put_bound (gen, "open_below", pins->open_below >= 0, pins->open_below, unit);
  put_bound (gen, "open_above", pins->open_above >= 0, pins->open_above, unit);
  tm_print_flag (gen, "contradiction", pins->contradiction);
  put_sum (gen, "estimate", pins->reference, pins->has_estimate ? pins->estimate : (double)NAN, unit);
  tm_print_counts (gen, "uncertainty", pins->has_estimate ? pins->u : (double)NAN, unit);
  tm_print_number (gen, "probability_in", pins->probability_in);
  tm_print_counts (gen, "form", evidence.form, unit);
  tm_print_flag (gen, "form_assumed", evidence.form_assumed);
  yajl_gen_map_close (gen);
}

void
tm_put_judgement_detail (yajl_gen gen, const TmJob *job, const TmJudgement *judgement, gboolean budget)
{
  put_raw (gen, judgement);
  if (budget)
    put_budget (gen, job, judgement);
  put_combined (gen, job, judgement);
  put_pins (gen, job, judgement);
}

/* -------- In words -------- */

static char *
format_spread (const TmJudgement *judgement, double counts)
{
  g_autofree char *text = tm_judgement_spread_text (judgement, counts);

  return g_strdup_printf ("%s %s", text, tm_unit_symbol (judgement->feature->unit));
}

static void
print_line (const TmJudgement *judgement, const TmComponent *line)
{
  g_autofree char *value = format_spread (judgement, line->value);
  g_autofree char *share = format_spread (judgement, tm_component_share (line));
  char dof[G_ASCII_DTOSTR_BUF_SIZE] = "∞";

  if (isfinite (line->dof))
    g_ascii_formatd (dof, sizeof dof, "%.4g", line->dof);
  /* Translators: component, of what, its value, its distribution, what it gives to u, degrees of freedom. */
  printf (_ ("        %s, %s: %s %s, gives %s, dof %s"),
          g_dpgettext2 (GETTEXT_PACKAGE, "component", tm_component_word (line->kind)),
          line->subject != NULL ? line->subject : "—", value,
          g_dpgettext2 (GETTEXT_PACKAGE, "distribution", tm_distribution_word (line->distribution)), share,
          dof);
  printf ("%s%s\n", line->source != NULL ? "; " : "", line->source != NULL ? _ (line->source) : "");
}

static void
print_correction (const TmJudgement *judgement)
{
  const TmLocalSize *size = get_deciding (judgement);
  TmUnit unit = judgement->feature->unit;
  g_autofree char *raw = NULL, *change = NULL;

  if (size == NULL || !(fabs (judgement->correction) > 0))
    return;
  raw = tm_mean_format (size->raw_sum, size->n, unit, MIN (size->decimals + 1U, TM_MAX_DECIMALS));
  change
      = tm_count_format (llround (judgement->correction), unit, MIN (size->decimals + 3U, TM_MAX_DECIMALS));
  printf (_ ("        raw %s %s, corrected by %s %s\n"), raw, tm_unit_symbol (unit), change,
          tm_unit_symbol (unit));
}

static void
print_parts (const TmJob *job, const TmJudgement *judgement)
{
  TmUnit unit = judgement->feature->unit;
  g_auto (TmCombined) combined = { 0 };

  if (!combine (job, judgement, &combined))
    return;
  for (guint i = 0; i < combined.n_parts; i++)
    {
      const TmCombinePart *part = &combined.parts[i];
      g_autofree char *size = format_sum (combined.reference, part->size, unit);
      g_autofree char *spread = format_spread (judgement, part->expanded);

      printf (_ ("        %s: %s ± %s, weight %.2f\n"), part->method_name, size, spread, part->weight);
    }
}

static void
print_pins (const TmJob *job, const TmJudgement *judgement)
{
  TmUnit unit = judgement->feature->unit;
  g_auto (TmPinEvidence) evidence = { 0 };
  const TmPinResult *pins = &evidence.result;
  g_autofree char *low = NULL, *high = NULL;

  if (!find_pins (job, judgement, &evidence))
    return;
  low = pins->has_low ? tm_count_format_exact (pins->low, unit, 0) : g_strdup ("—");
  high = pins->has_high ? tm_count_format_exact (pins->high, unit, 0) : g_strdup ("—");
  printf (_ ("        pins: mating size from %s to under %s %s\n"), low, high, tm_unit_symbol (unit));
}

void
tm_print_judgement_detail (const TmJob *job, const TmJudgement *judgement)
{
  TmComponent lines[TM_METHOD_MAX_LINES];
  guint n = tm_judgement_lines (job, judgement, lines);

  print_correction (judgement);
  if (n > 0 && judgement->counted == TM_COUNTED_COMBINED)
    printf (_ ("        of %s by itself:\n"), get_deciding (judgement)->method_name);
  for (guint i = 0; i < n; i++)
    print_line (judgement, &lines[i]);
  print_parts (job, judgement);
  print_pins (job, judgement);
}
