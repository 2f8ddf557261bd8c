/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-entry-words.h"

#include <glib/gi18n-lib.h>

#include "app-feature-words.h"
#include "app-reading-words.h"
#include "app-words.h"
#include "core-station.h"

/* The digits that a value of @feature is shown with: those typed, and those of its limits. */
static char *
format_value (const TmQuantity *value, const TmFeature *feature)
{
  guint decimals = MAX (feature->lower.decimals, feature->upper.decimals);
  if (value->unit == feature->unit)
    decimals = MAX (decimals, value->decimals);
  return tm_count_format_exact (value->count, feature->unit, decimals);
}

static char *
format_value_with_unit (const TmQuantity *value, const TmFeature *feature)
{
  guint decimals = value->unit == feature->unit ? value->decimals : 0;
  return tm_words_count (feature, value->count,
                         MAX (decimals, MAX (feature->lower.decimals, feature->upper.decimals)));
}

/* The small unit that makes @plain, digits in the feature's unit, into @meant; its own when none does. */
static TmUnit
find_unit (const TmQuantity *plain, const TmQuantity *meant)
{
  static const TmUnit small[] = { TM_UNIT_THOU, TM_UNIT_TENTH, TM_UNIT_UM };
  double ratio = plain->count != 0 ? (double)meant->count / (double)plain->count : 1.0;

  for (gsize i = 0; i < G_N_ELEMENTS (small); i++)
    {
      double wanted = (double)tm_unit_counts (small[i]) / (double)tm_unit_counts (plain->unit);
      if (ABS (ratio / wanted - 1.0) < 1e-9)
        return small[i];
    }
  return plain->unit;
}

/* "7492 tenths (19.030)": the digits as typed, with the unit to write and the size it gives. */
static char *
describe_meaning (const TmEntry *entry, guint i, const TmFeature *feature, guint decimals)
{
  const TmQuantity *plain = &entry->candidates[0];
  const TmQuantity *meant = &entry->candidates[i];
  TmUnit unit = i == 0 ? plain->unit : find_unit (plain, meant);
  g_autofree char *digits = tm_count_format (plain->count, plain->unit, plain->decimals);
  g_autofree char *size = tm_count_format (meant->count, feature->unit, decimals);

  if (i == 0)
    return g_strdup_printf ("%s %s", digits, tm_unit_symbol (unit));
  return g_strdup_printf ("%s %s (%s)", digits, tm_unit_symbol (unit), size);
}

/* Sizes are shown to the digits of the limits, those a deviation leads to with one more: what tells
 * them apart may be that fine. */
static char *
list_candidates (const TmEntry *entry, const TmFeature *feature)
{
  GString *list = g_string_new (NULL);
  guint decimals = MAX (feature->lower.decimals, feature->upper.decimals);
  for (guint i = 0; i < entry->n_candidates; i++)
    {
      g_autofree char *text = entry->form == TM_ENTRY_FORM_SHORTHAND
                                  ? describe_meaning (entry, i, feature, decimals)
                                  : tm_count_format (entry->candidates[i].count, feature->unit, decimals + 1);
      if (i > 0)
        g_string_append (list, i + 1 == entry->n_candidates ? _ (" or ") : ", ");
      g_string_append (list, text);
    }
  return g_string_free (list, FALSE);
}

static const char *
find_outcome_word (TmOutcome outcome)
{
  return outcome == TM_OUTCOME_PASS ? C_ ("outcome", "pass") : C_ ("outcome", "fail");
}

char *
tm_words_entry (const TmEntry *entry, const TmFeature *feature)
{
  if (entry->status == TM_ENTRY_EMPTY || feature == NULL)
    return g_strdup ("");
  if (entry->status == TM_ENTRY_OK && entry->form == TM_ENTRY_FORM_OUTCOME)
    return g_strdup_printf (_ ("reads as %s"), find_outcome_word (entry->outcome));
  if (entry->status == TM_ENTRY_OK)
    {
      g_autofree char *value = format_value_with_unit (&entry->value, feature);
      return g_strdup_printf (_ ("reads as %s"), value);
    }
  if (entry->n_candidates > 0)
    {
      g_autofree char *candidates = list_candidates (entry, feature);
      if (entry->status == TM_ENTRY_SHORTHAND_NONE)
        return g_strdup_printf (_ ("far from this size: %s? Write the unit"), candidates);
      /* Translators: bare digits that could be shorthand for the sizes listed. */
      return g_strdup_printf (_ ("%s? Write the unit"), candidates);
    }
  return g_strdup (g_dgettext (GETTEXT_PACKAGE, tm_entry_status_text (entry->status)));
}

/* "60.01 is outside what BM-2 reaches, 25 to 50 mm." */
static char *
describe_out_of_reach (const char *value, const TmGauge *gauge)
{
  g_autofree char *from = tm_quantity_format_in (&gauge->range_from, gauge->unit);
  g_autofree char *to = tm_quantity_format_in (&gauge->range_to, gauge->unit);
  const char *unit = tm_unit_symbol (gauge->unit);
  if (*from != '\0' && *to != '\0')
    return g_strdup_printf (
        _ ("%s is outside what %s reaches, %s to %s %s. Enter again to record it, or correct it."), value,
        gauge->tag, from, to, unit);
  return g_strdup_printf (*to != '\0'
                              ? _ ("%s is outside what %s reaches, up to %s %s. Enter again to record it, "
                                   "or correct it.")
                              : _ ("%s is outside what %s reaches, from %s %s. Enter again to record it, "
                                   "or correct it."),
                          value, gauge->tag, *to != '\0' ? to : from, unit);
}

char *
tm_words_slip (const TmSlipCheck *question, const TmEntry *entry, const TmFeature *feature,
               const TmGauge *gauge)
{
  if (question->slip == TM_SLIP_NONE || feature == NULL)
    return g_strdup ("");
  g_autofree char *value = format_value (&entry->value, feature);
  g_autofree char *likelier = format_value (&question->likelier, feature);
  switch (question->slip)
    {
    case TM_SLIP_THIMBLE_TURN:
      return g_strdup_printf (_ ("%s is one thimble turn from %s. Enter again to record it, or correct it."),
                              value, likelier);
    case TM_SLIP_DIGIT_SWAP:
      return g_strdup_printf (
          _ ("%s is %s with two digits swapped. Enter again to record it, or correct it."), value, likelier);
    case TM_SLIP_FAR_OUT:
      return g_strdup_printf (
          _ ("%s is far from the limits and from all read so far. Enter again to record it, or correct it."),
          value);
    case TM_SLIP_OTHER_SYSTEM:
      return g_strdup_printf (
          _ ("%s fits only in the other system of units. Enter again to record it, or correct it."), value);
    case TM_SLIP_OUT_OF_REACH:
      return describe_out_of_reach (value, gauge);
    case TM_SLIP_NONE:
    case TM_N_SLIPS:
    default:
      return g_strdup ("");
    }
}

gboolean
tm_words_read_offset (const char *text, const TmFeature *feature, TmQuantity *out, char **why)
{
  TmReadStatus status = tm_quantity_read (text, feature->unit, out);
  if (why != NULL)
    *why
        = status == TM_READ_OK ? NULL : g_strdup (g_dgettext (GETTEXT_PACKAGE, tm_read_status_text (status)));
  return status == TM_READ_OK;
}

char *
tm_words_offsets (const TmQuantity *dx, const TmQuantity *dy, const TmFeature *feature)
{
  TmReading reading = { .dx = *dx, .dy = *dy };
  guint decimals = MAX (dx->decimals, dy->decimals);
  g_autofree char *value = tm_count_format (tm_position_deviation (&reading), feature->unit, decimals);
  return g_strdup_printf (_ ("reads as %s%s %s"), feature->zone_diameter ? "Ø" : "", value,
                          tm_unit_symbol (feature->unit));
}

char *
tm_words_reading (const TmReading *reading)
{
  const TmFeature *feature = reading->row.feature;
  if (reading->outcome != TM_OUTCOME_NONE)
    return g_strdup (find_outcome_word (reading->outcome));
  if (reading->value.given)
    return format_value_with_unit (&reading->value, feature);
  g_autofree char *dx = format_value (&reading->dx, feature);
  g_autofree char *dy = format_value (&reading->dy, feature);
  /* Translators: offsets from true position, then the unit. */
  return g_strdup_printf (_ ("dx %s, dy %s %s"), dx, dy, tm_unit_symbol (feature->unit));
}

char *
tm_words_recorded (const TmReading *reading, const TmJudgement *judgement)
{
  const TmFeature *feature = reading->row.feature;
  g_autofree char *value = tm_words_reading (reading);
  g_autofree char *spot = tm_words_spot (feature, reading->place, reading->station);
  g_autofree char *where = *spot != '\0' ? g_steal_pointer (&spot) : tm_words_requirement (feature);
  g_autofree char *proves = tm_words_state (judgement->verdict, judgement->side, TRUE,
                                            judgement->sizes.n_stations, feature->stations->len);
  /* Translators: a value, where it was read, what it proves. */
  return g_strdup_printf (_ ("Recorded %s, %s: %s"), value, where, proves);
}
