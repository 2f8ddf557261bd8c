/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* 1 in = 25.4 mm exactly (international inch, 1959). */
#define PM_PER_MM G_GINT64_CONSTANT (1000000000)
#define PM_PER_IN G_GINT64_CONSTANT (25400000000)

typedef struct {
  TmDimension dimension;
  gint64 counts;
  const char *word;
  const char *symbol;
} UnitFacts;

static const UnitFacts unit_facts[TM_N_UNITS] = {
  [TM_UNIT_NONE] = { TM_DIMENSION_NONE, 0, "", "" },
  [TM_UNIT_MM] = { TM_DIMENSION_LENGTH, PM_PER_MM, "mm", "mm" },
  [TM_UNIT_IN] = { TM_DIMENSION_LENGTH, PM_PER_IN, "in", "in" },
  [TM_UNIT_UM] = { TM_DIMENSION_LENGTH, PM_PER_MM / 1000, "um", "µm" },
  [TM_UNIT_UIN] = { TM_DIMENSION_LENGTH, PM_PER_IN / 1000000, "uin", "µin" },
  [TM_UNIT_THOU] = { TM_DIMENSION_LENGTH, PM_PER_IN / 1000, "thou", "thou" },
  [TM_UNIT_TENTH] = { TM_DIMENSION_LENGTH, PM_PER_IN / 10000, "tenths", "tenths" },
  [TM_UNIT_DEGREE] = { TM_DIMENSION_ANGLE, G_GINT64_CONSTANT (3600000000), "deg", "°" },
  [TM_UNIT_HARDNESS] = { TM_DIMENSION_HARDNESS, 1000000, "points", "" },
  [TM_UNIT_COUNT] = { TM_DIMENSION_COUNT, 1, "count", "" },
  [TM_UNIT_CELSIUS] = { TM_DIMENSION_TEMPERATURE, 1000000, "C", "°C" },
};

static const struct {
  const char *word;
  TmUnit unit;
} unit_spellings[] = {
  { "mm", TM_UNIT_MM },
  { "in", TM_UNIT_IN },
  { "inch", TM_UNIT_IN },
  { "inches", TM_UNIT_IN },
  { "\"", TM_UNIT_IN },
  { "″", TM_UNIT_IN },
  { "”", TM_UNIT_IN },
  { "um", TM_UNIT_UM },
  { "µm", TM_UNIT_UM },
  { "μm", TM_UNIT_UM },
  { "micron", TM_UNIT_UM },
  { "microns", TM_UNIT_UM },
  { "uin", TM_UNIT_UIN },
  { "µin", TM_UNIT_UIN },
  { "μin", TM_UNIT_UIN },
  { "thou", TM_UNIT_THOU },
  { "mil", TM_UNIT_THOU },
  { "mils", TM_UNIT_THOU },
  { "tenth", TM_UNIT_TENTH },
  { "tenths", TM_UNIT_TENTH },
  { "deg", TM_UNIT_DEGREE },
  { "°", TM_UNIT_DEGREE },
  { "degree", TM_UNIT_DEGREE },
  { "degrees", TM_UNIT_DEGREE },
  { "points", TM_UNIT_HARDNESS },
  { "count", TM_UNIT_COUNT },
  { "C", TM_UNIT_CELSIUS },
  { "°C", TM_UNIT_CELSIUS },
};

static const char *const read_status_texts[TM_N_READ_STATUSES] = {
  [TM_READ_OK] = "",
  [TM_READ_EMPTY] = N_ ("there is no number"),
  [TM_READ_NOT_A_NUMBER] = N_ ("not a decimal number; write it like 25.012"),
  [TM_READ_THOUSANDS] = N_ ("more than one decimal mark; leave out thousands separators"),
  [TM_READ_TOO_FINE] = N_ ("finer than the program counts (1 pm); write fewer digits"),
  [TM_READ_TOO_LARGE] = N_ ("too large to be a measured value"),
  [TM_READ_UNIT_UNKNOWN] = N_ ("the word after the number is no unit; use mm, in, um, thou or tenths"),
  [TM_READ_UNIT_WRONG] = N_ ("this unit does not fit what is measured here"),
};

/* The pieces of a decimal text, before any unit is applied. */
typedef struct {
  gboolean negative;
  TmWide digits;   /* all digits as one whole number */
  guint decimals;  /* of them, after the point */
  const char *end; /* first byte not read */
} Decimal;

TmDimension
tm_unit_dimension (TmUnit unit)
{
  g_return_val_if_fail (unit < TM_N_UNITS, TM_DIMENSION_NONE);

  return unit_facts[unit].dimension;
}

gint64
tm_unit_counts (TmUnit unit)
{
  g_return_val_if_fail (unit < TM_N_UNITS, 0);

  return unit_facts[unit].counts;
}

const char *
tm_unit_word (TmUnit unit)
{
  g_return_val_if_fail (unit < TM_N_UNITS, "");

  return unit_facts[unit].word;
}

const char *
tm_unit_symbol (TmUnit unit)
{
  g_return_val_if_fail (unit < TM_N_UNITS, "");

  return unit_facts[unit].symbol;
}

gboolean
tm_unit_from_word (const char *word, TmUnit *unit)
{
  g_return_val_if_fail (word != NULL && unit != NULL, FALSE);

  for (gsize i = 0; i < G_N_ELEMENTS (unit_spellings); i++)
    {
      if (g_ascii_strcasecmp (word, unit_spellings[i].word) == 0)
        {
          *unit = unit_spellings[i].unit;
          return TRUE;
        }
    }
  return FALSE;
}

TmUnit
tm_unit_small (TmUnit unit)
{
  if (unit == TM_UNIT_MM)
    return TM_UNIT_UM;
  if (unit == TM_UNIT_IN)
    return TM_UNIT_TENTH;
  return unit;
}

static const char *
skip_spaces (const char *text)
{
  while (g_ascii_isspace (*text))
    text++;
  return text;
}

static const char *
read_sign (const char *text, gboolean *negative)
{
  static const char minus_sign[] = "\xe2\x88\x92"; /* U+2212 */

  *negative = FALSE;
  if (*text == '+')
    return text + 1;
  if (*text == '-')
    {
      *negative = TRUE;
      return text + 1;
    }
  if (strncmp (text, minus_sign, sizeof minus_sign - 1) == 0)
    {
      *negative = TRUE;
      return text + sizeof minus_sign - 1;
    }
  return text;
}

/* The largest digit string that any legal value needs: 19 digits of count and TM_MAX_DECIMALS of
 * trailing zeros.  Beyond that only zeros may come. */
static TmReadStatus
read_digits (const char *text, Decimal *out)
{
  const TmWide full = (TmWide)TM_COUNT_MAX * 1000000000;
  gboolean seen_digit = FALSE;
  gboolean seen_point = FALSE;

  out->digits = 0;
  out->decimals = 0;
  for (; *text != '\0'; text++)
    {
      if (*text == '.' || *text == ',')
        {
          if (seen_point)
            return TM_READ_THOUSANDS;
          seen_point = TRUE;
        }
      else if (g_ascii_isdigit (*text))
        {
          seen_digit = TRUE;
          out->digits = out->digits * 10 + (*text - '0');
          if (out->digits > full)
            return seen_point ? TM_READ_TOO_FINE : TM_READ_TOO_LARGE;
          if (seen_point && ++out->decimals > TM_MAX_DECIMALS)
            return TM_READ_TOO_FINE;
        }
      else
        {
          break;
        }
    }
  out->end = text;
  return seen_digit ? TM_READ_OK : TM_READ_NOT_A_NUMBER;
}

static gint64
power_of_ten (guint exponent)
{
  gint64 power = 1;

  while (exponent-- > 0)
    power *= 10;
  return power;
}

/* digits × counts / 10^decimals, which must come out whole. */
static TmReadStatus
scale_decimal (const Decimal *decimal, TmUnit unit, TmQuantity *out)
{
  gint64 divisor = power_of_ten (decimal->decimals);
  TmWide scaled;

  if (__builtin_mul_overflow (decimal->digits, (TmWide)unit_facts[unit].counts, &scaled))
    return TM_READ_TOO_LARGE;
  if (scaled % divisor != 0)
    return TM_READ_TOO_FINE;
  scaled /= divisor;
  if (scaled > TM_COUNT_MAX)
    return TM_READ_TOO_LARGE;
  *out = tm_quantity_new (decimal->negative ? -(gint64)scaled : (gint64)scaled, unit, decimal->decimals);
  return TM_READ_OK;
}

/* Finds the unit that follows a number; @rest starts after any spaces. */
static TmReadStatus
read_unit (const char *rest, TmUnit *unit)
{
  g_autofree char *word = g_strchomp (g_strdup (rest));
  TmUnit found;

  if (*word == '\0')
    return TM_READ_OK;
  if (g_ascii_isdigit (*word) || *word == '.' || *word == ',')
    return TM_READ_THOUSANDS;
  if (!tm_unit_from_word (word, &found))
    return TM_READ_UNIT_UNKNOWN;
  if (unit_facts[found].dimension != unit_facts[*unit].dimension)
    return TM_READ_UNIT_WRONG;
  *unit = found;
  return TM_READ_OK;
}

TmReadStatus
tm_quantity_read (const char *text, TmUnit unit, TmQuantity *out)
{
  Decimal decimal;
  TmReadStatus status;

  g_return_val_if_fail (text != NULL && out != NULL, TM_READ_NOT_A_NUMBER);
  g_return_val_if_fail (unit > TM_UNIT_NONE && unit < TM_N_UNITS, TM_READ_UNIT_WRONG);

  text = skip_spaces (text);
  if (*text == '\0')
    return TM_READ_EMPTY;
  text = read_sign (text, &decimal.negative);
  status = read_digits (text, &decimal);
  if (status == TM_READ_OK)
    status = read_unit (skip_spaces (decimal.end), &unit);
  if (status == TM_READ_OK)
    status = scale_decimal (&decimal, unit, out);
  return status;
}

const char *
tm_read_status_text (TmReadStatus status)
{
  g_return_val_if_fail (status < TM_N_READ_STATUSES, "");

  return read_status_texts[status];
}

TmQuantity
tm_quantity_new (gint64 count, TmUnit unit, guint decimals)
{
  return (TmQuantity) { count, (guint8)unit, (guint8)MIN (decimals, TM_MAX_DECIMALS), TRUE };
}

char *
tm_quantity_format (const TmQuantity *quantity)
{
  g_return_val_if_fail (quantity != NULL, g_strdup (""));

  if (!quantity->given)
    return g_strdup ("");
  return tm_count_format (quantity->count, quantity->unit, quantity->decimals);
}

char *
tm_quantity_format_in (const TmQuantity *quantity, TmUnit unit)
{
  g_autofree char *number = tm_quantity_format (quantity);

  if (!quantity->given || quantity->unit == unit)
    return g_steal_pointer (&number);
  return g_strconcat (number, " ", tm_unit_word (quantity->unit), NULL);
}

/* Division with the remainder rounded half to even; @divisor > 0, @dividend >= 0. */
static TmWide
divide_half_even (TmWide dividend, TmWide divisor)
{
  TmWide quotient = dividend / divisor;
  TmWide twice = (dividend % divisor) * 2;

  if (twice > divisor || (twice == divisor && quotient % 2 != 0))
    quotient++;
  return quotient;
}

/* @digits as a decimal number whose last @decimals digits follow the point. */
static char *
place_point (TmWide digits, guint decimals, gboolean negative)
{
  char buffer[64];
  char *cursor = buffer + sizeof buffer;

  *--cursor = '\0';
  for (guint n = 0; n <= decimals || digits > 0; n++)
    {
      if (n == decimals && decimals > 0)
        *--cursor = '.';
      *--cursor = (char)('0' + (int)(digits % 10));
      digits /= 10;
    }
  if (negative)
    *--cursor = '-';
  return g_strdup (cursor);
}

char *
tm_mean_format (TmWide sum, guint n, TmUnit unit, guint decimals)
{
  gboolean negative = sum < 0;
  TmWide magnitude = negative ? -sum : sum;
  TmWide digits;

  g_return_val_if_fail (n >= 1 && decimals <= TM_MAX_DECIMALS, g_strdup (""));
  g_return_val_if_fail (unit > TM_UNIT_NONE && unit < TM_N_UNITS, g_strdup (""));

  digits = divide_half_even (magnitude * power_of_ten (decimals), (TmWide)unit_facts[unit].counts * n);
  return place_point (digits, decimals, negative && digits > 0);
}

char *
tm_count_format (gint64 count, TmUnit unit, guint decimals)
{
  return tm_mean_format (count, 1, unit, decimals);
}

char *
tm_count_format_exact (gint64 count, TmUnit unit, guint min_decimals)
{
  guint decimals = MIN (min_decimals, TM_MAX_DECIMALS);

  g_return_val_if_fail (unit > TM_UNIT_NONE && unit < TM_N_UNITS, g_strdup (""));

  while (decimals < TM_MAX_DECIMALS
         && ((TmWide)count * power_of_ten (decimals)) % unit_facts[unit].counts != 0)
    decimals++;
  return tm_count_format (count, unit, decimals);
}

char *
tm_count_format_bound (gint64 count, TmUnit unit, guint decimals, gboolean up)
{
  guint n = MIN (decimals, TM_MAX_DECIMALS);
  TmWide scaled, digits;

  g_return_val_if_fail (unit > TM_UNIT_NONE && unit < TM_N_UNITS, g_strdup (""));

  scaled = (TmWide)count * power_of_ten (n);
  digits = scaled / unit_facts[unit].counts; /* toward zero */
  if (scaled % unit_facts[unit].counts != 0)
    digits += up ? scaled > 0 : -(scaled < 0);
  return place_point (digits < 0 ? -digits : digits, n, digits < 0);
}

int
tm_mean_compare (TmWide sum, guint n, gint64 limit)
{
  TmWide scaled = (TmWide)limit * n;

  return (sum > scaled) - (sum < scaled);
}

double
tm_count_to_double (gint64 count, TmUnit unit)
{
  g_return_val_if_fail (unit > TM_UNIT_NONE && unit < TM_N_UNITS, 0.0);

  return (double)count / (double)unit_facts[unit].counts;
}

gint64
tm_count_from_double (double value, TmUnit unit)
{
  double counts;

  g_return_val_if_fail (unit > TM_UNIT_NONE && unit < TM_N_UNITS, 0);

  counts = value * (double)unit_facts[unit].counts;
  if (isnan (counts))
    return 0;
  if (counts >= (double)TM_COUNT_MAX)
    return TM_COUNT_MAX;
  if (counts <= -(double)TM_COUNT_MAX)
    return -TM_COUNT_MAX;
  return llround (counts);
}
