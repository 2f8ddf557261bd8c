/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-entry-forms: the value that each form of a reading stands for.
 */

#include <string.h>

#include "core-entry-forms.h"
#include "core-near.h"

/* 2^11: finer fractions than any rule or drill list has, and few enough decimals to be exact. */
#define MAX_DENOMINATOR 2048

static TmEntryStatus
convert_status (TmReadStatus status)
{
  switch (status)
    {
    case TM_READ_OK:
      return TM_ENTRY_OK;
    case TM_READ_EMPTY:
      return TM_ENTRY_EMPTY;
    case TM_READ_THOUSANDS:
      return TM_ENTRY_THOUSANDS;
    case TM_READ_TOO_FINE:
      return TM_ENTRY_TOO_FINE;
    case TM_READ_TOO_LARGE:
      return TM_ENTRY_TOO_LARGE;
    case TM_READ_UNIT_UNKNOWN:
      return TM_ENTRY_UNIT_UNKNOWN;
    case TM_READ_UNIT_WRONG:
      return TM_ENTRY_UNIT_WRONG;
    case TM_READ_NOT_A_NUMBER:
    case TM_N_READ_STATUSES:
    default:
      return TM_ENTRY_NOT_A_NUMBER;
    }
}

/* The fewest decimals of @unit, at least @least, that write @count exactly; FALSE when none do. */
static gboolean
find_exact_decimals (gint64 count, TmUnit unit, guint least, guint *decimals)
{
  TmWide scaled = count;
  gint64 counts = tm_unit_counts (unit);

  for (guint d = 0; d <= TM_MAX_DECIMALS; d++, scaled *= 10)
    {
      if (d >= least && scaled % counts == 0)
        {
          *decimals = d;
          return TRUE;
        }
    }
  return FALSE;
}

/* @count in @unit, or in millimetres where @unit cannot write it: every count that comes from
 * millimetres or inches has an end in millimetres. */
static TmQuantity
write_exact (gint64 count, TmUnit unit, guint least)
{
  guint decimals;

  if (find_exact_decimals (count, unit, least, &decimals))
    return tm_quantity_new (count, unit, decimals);
  if (tm_unit_dimension (unit) == TM_DIMENSION_LENGTH
      && find_exact_decimals (count, TM_UNIT_MM, 0, &decimals))
    return tm_quantity_new (count, TM_UNIT_MM, decimals);
  return tm_quantity_new (count, unit, TM_MAX_DECIMALS);
}

/* How many decimals further left the point of @unit lies in its big unit. */
static guint
find_shift (TmUnit unit, TmUnit *big)
{
  *big = unit == TM_UNIT_UM ? TM_UNIT_MM : TM_UNIT_IN;
  if (unit == TM_UNIT_UM || unit == TM_UNIT_THOU)
    return 3;
  if (unit == TM_UNIT_TENTH)
    return 4;
  return unit == TM_UNIT_UIN ? 6 : 0;
}

/* A size of a feature in mm or in is kept in mm or in; roughness stays in what it was typed in. */
static TmQuantity
keep_in_big_unit (TmQuantity quantity, const TmFeature *feature)
{
  TmUnit big;
  guint shift = find_shift (quantity.unit, &big);

  if (shift == 0 || (feature->unit != TM_UNIT_MM && feature->unit != TM_UNIT_IN))
    return quantity;
  return tm_quantity_new (quantity.count, big, quantity.decimals + shift);
}

static gboolean
is_size (const TmFeature *feature)
{
  return (feature->unit == TM_UNIT_MM || feature->unit == TM_UNIT_IN)
         && !tm_kind_is_zero_bounded (feature->kind);
}

/* Angles may lie on either side of zero, and so may a length whose limits do. */
static gboolean
may_be_negative (const TmFeature *feature)
{
  return feature->kind == TM_KIND_ANGLE
         || (feature->kind == TM_KIND_LENGTH && feature->lower.given && feature->lower.count < 0);
}

static void
accept_value (TmEntry *entry, TmEntryForm form, TmQuantity value)
{
  entry->status = TM_ENTRY_OK;
  entry->form = form;
  entry->value = value;
}

static void
add_candidate (TmEntry *entry, TmQuantity candidate)
{
  if (entry->n_candidates < TM_ENTRY_MAX_CANDIDATES)
    entry->candidates[entry->n_candidates++] = candidate;
}

void
tm_entry_form_with_unit (const TmEntryText *text, TmUnit unit, const TmFeature *feature, TmEntry *entry)
{
  TmQuantity value;

  entry->status = convert_status (tm_quantity_read (text->number, unit, &value));
  if (entry->status == TM_ENTRY_OK)
    accept_value (entry, TM_ENTRY_FORM_WITH_UNIT, keep_in_big_unit (value, feature));
}

/* Reads digits of at most seven places; larger is as good as infinite for a fraction. */
static guint
read_small (const char *digits)
{
  guint value = 0;

  while (*digits == '0')
    digits++;
  if (strlen (digits) > 7)
    return G_MAXUINT;
  for (; *digits != '\0'; digits++)
    value = value * 10 + (guint)(*digits - '0');
  return value;
}

void
tm_entry_form_fraction (const TmEntryText *text, TmUnit unit, const TmFeature *feature, TmEntry *entry)
{
  guint whole = read_small (text->number);
  guint numerator = read_small (text->numerator);
  guint denominator = read_small (text->denominator);
  gint64 inch = tm_unit_counts (TM_UNIT_IN);
  guint decimals;

  entry->status = TM_ENTRY_BAD_FRACTION;
  if (unit != TM_UNIT_IN || feature->unit != TM_UNIT_IN || text->sign != 0 || denominator == 0)
    return;
  if (text->number[0] != '\0' && (numerator == 0 || numerator >= denominator))
    return;
  if (whole == G_MAXUINT || numerator == G_MAXUINT)
    {
      entry->status = TM_ENTRY_TOO_LARGE;
      return;
    }
  entry->status = TM_ENTRY_TOO_FINE;
  if (denominator > MAX_DENOMINATOR || (inch * numerator) % denominator != 0)
    return;
  if (find_exact_decimals (inch * numerator / denominator, TM_UNIT_IN, 0, &decimals))
    accept_value (entry, TM_ENTRY_FORM_FRACTION,
                  tm_quantity_new (inch * whole + inch * numerator / denominator, TM_UNIT_IN, decimals));
}

/* Nominal plus or minus @deviation, in the feature's unit. */
static TmEntryStatus
deviate (const TmEntryText *text, TmQuantity deviation, const TmFeature *feature, TmQuantity *value)
{
  gint64 count = text->sign == '-' ? -deviation.count : deviation.count;
  TmQuantity big = keep_in_big_unit (deviation, feature);
  guint least = feature->nominal.decimals;

  if (big.unit == feature->unit)
    least = MAX (least, big.decimals);
  count += feature->nominal.count;
  if (ABS (count) > TM_COUNT_MAX)
    return TM_ENTRY_TOO_LARGE;
  if (count < 0 && !may_be_negative (feature))
    return TM_ENTRY_NEGATIVE;
  *value = write_exact (count, feature->unit, least);
  return TM_ENTRY_OK;
}

/* Whether a signed number without a unit may have meant inches or millimetres rather than tenths or
 * micrometres: nobody reads hundredths of a micrometre at a bench, so "-.0005" means inches. */
static gboolean
deviation_is_doubtful (const TmEntryText *text, const TmQuantity *small, const TmQuantity *large,
                       const TmFeature *feature)
{
  TmNear near = tm_near_of_feature (feature);
  TmQuantity value;

  if (small->decimals == 0 || small->count == 0)
    return FALSE;
  if (small->decimals > 1 || small->count < tm_unit_counts (small->unit))
    return TRUE;
  return deviate (text, *large, feature, &value) == TM_ENTRY_OK && tm_near_contains (&near, value.count);
}

static void
refuse_doubtful (const TmEntryText *text, TmQuantity small, TmQuantity large, const TmFeature *feature,
                 TmEntry *entry)
{
  TmQuantity value;

  entry->status = TM_ENTRY_SHORTHAND_MANY;
  entry->form = TM_ENTRY_FORM_DEVIATION;
  if (deviate (text, small, feature, &value) == TM_ENTRY_OK)
    add_candidate (entry, value);
  if (deviate (text, large, feature, &value) == TM_ENTRY_OK)
    add_candidate (entry, value);
}

void
tm_entry_form_deviation (const TmEntryText *text, TmUnit unit, const TmFeature *feature, TmEntry *entry)
{
  TmUnit small_unit = text->unit[0] != '\0' ? unit : tm_unit_small (feature->unit);
  TmQuantity small, large, value;

  if (!feature->nominal.given)
    {
      entry->status = TM_ENTRY_NO_NOMINAL;
      return;
    }
  entry->status = convert_status (tm_quantity_read (text->number, unit, &large));
  if (entry->status != TM_ENTRY_OK)
    return;
  if (tm_quantity_read (text->number, small_unit, &small) != TM_READ_OK)
    {
      /* So fine that only the larger unit can have been meant. */
      refuse_doubtful (text, large, large, feature, entry);
      entry->n_candidates = MIN (entry->n_candidates, 1);
      return;
    }
  if (small_unit != unit && deviation_is_doubtful (text, &small, &large, feature))
    {
      refuse_doubtful (text, small, large, feature, entry);
      return;
    }
  entry->status = deviate (text, small, feature, &value);
  if (entry->status == TM_ENTRY_OK)
    accept_value (entry, TM_ENTRY_FORM_DEVIATION, value);
}

static const TmUnit shorthand_units[] = { TM_UNIT_THOU, TM_UNIT_TENTH, TM_UNIT_UM };

/* Fills @found with each exact meaning of bare digits in a small unit that @contains. */
static guint
find_meanings (const TmEntryText *text, const TmFeature *feature, const TmNear *near,
               gboolean (*contains) (const TmNear *, gint64), TmQuantity found[3])
{
  guint n = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (shorthand_units); i++)
    {
      TmQuantity value;

      if (tm_quantity_read (text->number, shorthand_units[i], &value) == TM_READ_OK
          && contains (near, value.count))
        found[n++] = keep_in_big_unit (value, feature);
    }
  return n;
}

static void
refuse_bare (const TmEntryText *text, const TmQuantity *plain, const TmFeature *feature, const TmNear *near,
             TmEntryStatus status, TmEntry *entry)
{
  TmQuantity found[3];
  guint n = find_meanings (text, feature, near, tm_near_is_plausible, found);

  entry->status = status;
  entry->form = TM_ENTRY_FORM_SHORTHAND;
  add_candidate (entry, *plain);
  for (guint i = 0; i < n; i++)
    add_candidate (entry, found[i]);
}

/* "012" without a mark: nobody writes twelve so, but many write the end of 25.012 so. */
static gboolean
looks_like_last_digits (const char *number)
{
  return number[0] == '0' && g_ascii_isdigit (number[1]) && strpbrk (number, ".,") == NULL;
}

/* See tm_entry_read(): as written, or in exactly one small unit, or refused. */
static void
read_bare_size (const TmEntryText *text, const TmQuantity *plain, const TmFeature *feature, TmEntry *entry)
{
  TmNear near = tm_near_of_feature (feature);
  gboolean plausible = tm_near_is_plausible (&near, plain->count);
  gboolean last_digits = looks_like_last_digits (text->number);
  TmQuantity about[3];
  TmQuantity found[3];
  guint n, n_about;

  if (!near.known || (tm_near_contains (&near, plain->count) && !last_digits))
    {
      accept_value (entry, TM_ENTRY_FORM_PLAIN, *plain);
      return;
    }
  n = find_meanings (text, feature, &near, tm_near_contains, found);
  n_about = find_meanings (text, feature, &near, tm_near_is_about, about);
  if (last_digits)
    refuse_bare (text, plain, feature, &near, TM_ENTRY_SHORTHAND_MANY, entry);
  else if (n == 0 && plausible)
    accept_value (entry, TM_ENTRY_FORM_PLAIN, *plain);
  else if (n == 1 && n_about == 1 && !plausible)
    accept_value (entry, TM_ENTRY_FORM_SHORTHAND, found[0]);
  else
    refuse_bare (text, plain, feature, &near, n == 0 ? TM_ENTRY_SHORTHAND_NONE : TM_ENTRY_SHORTHAND_MANY,
                 entry);
}

void
tm_entry_form_bare (const TmEntryText *text, const TmFeature *feature, TmEntry *entry)
{
  TmQuantity plain;

  entry->status = convert_status (tm_quantity_read (text->number, feature->unit, &plain));
  if (entry->status != TM_ENTRY_OK)
    return;
  if (is_size (feature))
    read_bare_size (text, &plain, feature, entry);
  else
    accept_value (entry, TM_ENTRY_FORM_PLAIN, plain);
}
