/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The second half of core-callout-band: from numbers as written to limits in counts.
 */

#include "core-callout-band.h"

#include <string.h>

#define ODD_DECIMALS   6 /* of a value that no number of digits gives exactly */
#define CLASS_DECIMALS 3 /* ISO 286 tables are in micrometres */

TmUnit
tm_band_family (TmUnit unit)
{
  switch (unit)
    {
    case TM_UNIT_MM:
    case TM_UNIT_UM:
      return TM_UNIT_MM;
    case TM_UNIT_IN:
    case TM_UNIT_UIN:
    case TM_UNIT_THOU:
    case TM_UNIT_TENTH:
      return TM_UNIT_IN;
    case TM_UNIT_NONE:
    case TM_UNIT_DEGREE:
    case TM_UNIT_HARDNESS:
    case TM_UNIT_COUNT:
    case TM_UNIT_CELSIUS:
    case TM_N_UNITS:
    default:
      return unit;
    }
}

guint
tm_band_exact_decimals (gint64 count, TmUnit unit)
{
  TmWide scaled = count;
  gint64 counts = tm_unit_counts (unit);

  for (guint decimals = 0; decimals <= TM_MAX_DECIMALS; decimals++, scaled *= 10)
    if (scaled % counts == 0)
      return decimals;
  return ODD_DECIMALS;
}

guint
tm_band_written_decimals (const TmCalloutNumber *number)
{
  const char *point = strchr (number->text, '.');

  if (number->counted)
    return number->decimals;
  return point != NULL ? (guint)strlen (point + 1) : 0;
}

TmCalloutStatus
tm_band_count (const TmCalloutNumber *number, TmUnit unit, gint64 *count)
{
  TmQuantity quantity;
  TmReadStatus status;

  if (number->counted)
    {
      *count = number->count;
      return TM_CALLOUT_OK;
    }
  status = tm_quantity_read (number->text, number->unit != TM_UNIT_NONE ? number->unit : unit, &quantity);
  if (status == TM_READ_OK)
    *count = quantity.count;
  if (status == TM_READ_TOO_FINE)
    return TM_CALLOUT_TOO_FINE;
  return status == TM_READ_OK ? TM_CALLOUT_OK : TM_CALLOUT_NOT_READ;
}

/* Joins the unit that @number states to what the others stated. */
static gboolean
join_family (const TmCalloutNumber *number, TmUnit *family)
{
  TmUnit stated = tm_band_family (number->unit);

  if (stated == TM_UNIT_NONE)
    return TRUE;
  if (*family != TM_UNIT_NONE && *family != stated)
    return FALSE;
  *family = stated;
  return TRUE;
}

static gboolean
has_pair (const TmBand *band)
{
  return band->form == TM_BAND_DEVIATIONS || band->form == TM_BAND_LIMITS || band->confirmed;
}

static gboolean
has_nominal (const TmBand *band)
{
  return band->form != TM_BAND_LIMITS;
}

/* All numbers must be of one family: a nominal in inches with a tolerance in millimetres is more
 * likely a slip than meant. */
static gboolean
find_unit (const TmBand *band, const TmBandRules *rules, TmUnit *unit)
{
  TmUnit family = TM_UNIT_NONE;

  if (has_nominal (band) && !join_family (&band->nominal, &family))
    return FALSE;
  for (guint i = 0; i < 2 && has_pair (band); i++)
    if (!join_family (&band->pair.number[i], &family))
      return FALSE;
  if (family != TM_UNIT_NONE && rules->unit == TM_UNIT_HARDNESS)
    return FALSE;
  *unit = family != TM_UNIT_NONE ? family : rules->unit;
  return TRUE;
}

/* A number without unit takes that of its partner, else that of the nominal, else the whole's:
 * "25 +5/-10 µm". */
static TmCalloutStatus
count_pair (const TmBand *band, TmUnit unit, gint64 out[2])
{
  const TmBandPair *pair = &band->pair;
  gint64 count;

  for (guint i = 0; i < 2; i++)
    {
      TmUnit bare = pair->number[1 - i].unit;
      TmCalloutStatus status;

      if (bare == TM_UNIT_NONE && has_nominal (band))
        bare = band->nominal.unit;
      status = tm_band_count (&pair->number[i], bare != TM_UNIT_NONE ? bare : unit, &count);
      if (status != TM_CALLOUT_OK)
        return status;
      out[i] = pair->sign[i] * count;
    }
  return TM_CALLOUT_OK;
}

static void
sort_pair (gint64 pair[2])
{
  gint64 first = pair[0];

  if (pair[0] <= pair[1])
    return;
  pair[0] = pair[1];
  pair[1] = first;
}

/* As many digits as were written in the band's own unit, and as are needed to be exact. */
static guint
find_decimals (const TmBand *band, TmUnit unit, gint64 lower, gint64 upper)
{
  guint decimals = MAX (tm_band_exact_decimals (lower, unit), tm_band_exact_decimals (upper, unit));

  if (band->form == TM_BAND_CLASS)
    decimals = MAX (decimals, CLASS_DECIMALS);
  for (guint i = 0; i < 3; i++)
    {
      const TmCalloutNumber *number = i < 2 ? &band->pair.number[i] : &band->nominal;
      TmUnit stated = number->unit != TM_UNIT_NONE ? number->unit : unit;

      if ((i < 2 ? has_pair (band) : has_nominal (band)) && stated == unit && !number->counted)
        decimals = MAX (decimals, tm_band_written_decimals (number));
    }
  return MIN (decimals, TM_MAX_DECIMALS);
}

/* Thirds of a degree have no decimal form, and a limit must be the number that is printed and kept
 * in a file: it is then taken to the millionth of a degree, inward. */
static gint64
snap_limit (gint64 count, TmUnit unit, gboolean up)
{
  gint64 step = tm_unit_counts (TM_UNIT_DEGREE) / 1000000;
  guint decimals = tm_band_exact_decimals (count, unit);

  if (unit != TM_UNIT_DEGREE || decimals != ODD_DECIMALS || count % step == 0)
    return count;
  return (count / step + (up ? 1 : 0)) * step;
}

static TmCalloutStatus
set_pair (const TmBand *band, gint64 lower, gint64 upper, TmBandLimits *limits)
{
  guint decimals;

  lower = snap_limit (lower, limits->unit, TRUE);
  upper = snap_limit (upper, limits->unit, FALSE);
  if (lower >= upper)
    return TM_CALLOUT_LIMITS_CROSSED;
  if (upper > TM_COUNT_MAX || lower < -TM_COUNT_MAX)
    return TM_CALLOUT_NOT_READ;
  decimals = find_decimals (band, limits->unit, lower, upper);
  limits->lower = tm_quantity_new (lower, limits->unit, decimals);
  limits->upper = tm_quantity_new (upper, limits->unit, decimals);
  return TM_CALLOUT_OK;
}

static TmQuantity
make_quantity (const TmCalloutNumber *number, gint64 count, TmUnit unit)
{
  gboolean as_written = !number->counted && (number->unit == TM_UNIT_NONE || number->unit == unit);

  return tm_quantity_new (
      count, unit, as_written ? tm_band_written_decimals (number) : tm_band_exact_decimals (count, unit));
}

/* Limits or deviations written behind a class must be those of the class. */
static TmCalloutStatus
check_confirmation (const TmBand *band, gint64 nominal, const TmBandLimits *limits)
{
  gint64 pair[2];
  gint64 base = band->confirmed_limits ? 0 : nominal;

  if (!band->confirmed)
    return TM_CALLOUT_OK;
  if (count_pair (band, limits->unit, pair) != TM_CALLOUT_OK)
    return TM_CALLOUT_NOT_READ;
  sort_pair (pair);
  return limits->lower.count == base + pair[0] && limits->upper.count == base + pair[1] ? TM_CALLOUT_OK
                                                                                        : TM_CALLOUT_NOT_READ;
}

/* ISO 286 counts in millimetres; an inch size with a class is not guessed at. */
static TmCalloutStatus
resolve_class (const TmBand *band, gint64 nominal, TmBandLimits *limits)
{
  gint64 lower, upper;
  TmCalloutStatus status;

  if (limits->unit != TM_UNIT_MM)
    return TM_CALLOUT_UNIT_WRONG;
  if (!tm_iso286_deviations (nominal, &band->tolerance_class, &lower, &upper))
    return TM_CALLOUT_CLASS_UNKNOWN;
  status = set_pair (band, nominal + lower, nominal + upper, limits);
  return status == TM_CALLOUT_OK ? check_confirmation (band, nominal, limits) : status;
}

static TmCalloutStatus
resolve_pair (const TmBand *band, gint64 nominal, TmBandLimits *limits)
{
  gint64 pair[2];
  TmCalloutStatus status = count_pair (band, limits->unit, pair);

  if (status != TM_CALLOUT_OK)
    return status;
  if (!band->ordered)
    sort_pair (pair);
  return set_pair (band, nominal + pair[0], nominal + pair[1], limits);
}

TmCalloutStatus
tm_band_resolve (const TmBand *band, const TmBandRules *rules, TmBandLimits *limits)
{
  gint64 nominal = 0;
  TmCalloutStatus status;

  memset (limits, 0, sizeof *limits);
  if (!find_unit (band, rules, &limits->unit))
    return TM_CALLOUT_UNIT_WRONG;
  if (band->form == TM_BAND_LIMITS)
    return resolve_pair (band, 0, limits);
  status = tm_band_count (&band->nominal, limits->unit, &nominal);
  if (status != TM_CALLOUT_OK)
    return status;
  limits->nominal = make_quantity (&band->nominal, snap_limit (nominal, limits->unit, FALSE), limits->unit);
  if (band->form == TM_BAND_MAX)
    limits->upper = make_quantity (&band->nominal, snap_limit (nominal, limits->unit, FALSE), limits->unit);
  if (band->form == TM_BAND_MIN)
    limits->lower = make_quantity (&band->nominal, snap_limit (nominal, limits->unit, TRUE), limits->unit);
  if (band->form == TM_BAND_MAX || band->form == TM_BAND_MIN)
    limits->nominal = TM_QUANTITY_NONE;
  if (band->form == TM_BAND_CLASS)
    return resolve_class (band, nominal, limits);
  return band->form == TM_BAND_DEVIATIONS ? resolve_pair (band, nominal, limits) : TM_CALLOUT_OK;
}
