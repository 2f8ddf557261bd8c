/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-qif-decimal.h"

static gboolean
is_blank (char c)
{
  return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

/* Takes a sign; TRUE for minus. */
static gboolean
take_sign (const char **at)
{
  gboolean minus = **at == '-';

  if (minus || **at == '+')
    (*at)++;
  return minus;
}

/* Appends the digits at @at; returns how many, leading zeros of a whole not counted. */
static guint
take_digits (const char **at, guint most, TmWide *digits, gboolean *any)
{
  guint n = 0;

  for (; g_ascii_isdigit (**at); (*at)++)
    {
      *any = TRUE;
      if (n < most)
        *digits = *digits * 10 + (**at - '0');
      n += *digits != 0 || most == TM_DECIMAL_PLACES;
    }
  return n;
}

gboolean
tm_decimal_read (const char *text, TmDecimal *out)
{
  const char *at = text;
  gboolean any = FALSE;
  gboolean minus;
  guint whole, places = 0;

  *out = (TmDecimal) { 0, 0 };
  while (is_blank (*at))
    at++;
  minus = take_sign (&at);
  whole = take_digits (&at, TM_DECIMAL_WHOLE, &out->digits, &any);
  if (*at == '.')
    {
      at++;
      places = take_digits (&at, TM_DECIMAL_PLACES, &out->digits, &any);
    }
  while (is_blank (*at))
    at++;
  out->places = places;
  if (minus)
    out->digits = -out->digits;
  return any && *at == '\0' && whole <= TM_DECIMAL_WHOLE && places <= TM_DECIMAL_PLACES;
}

/* FALSE when it does not fit. */
static gboolean
widen (TmDecimal *decimal, guint places)
{
  for (; decimal->places < places; decimal->places++)
    if (__builtin_mul_overflow (decimal->digits, (TmWide)10, &decimal->digits))
      return FALSE;
  return TRUE;
}

gboolean
tm_decimal_add (const TmDecimal *a, const TmDecimal *b, TmDecimal *out)
{
  TmDecimal first = *a, second = *b;
  guint places = MAX (a->places, b->places);

  if (!widen (&first, places) || !widen (&second, places))
    return FALSE;
  out->places = places;
  return !__builtin_add_overflow (first.digits, second.digits, &out->digits);
}

/* Drops zeros at the end, down to @least places. */
static void
trim (TmDecimal *decimal, guint least)
{
  for (; decimal->places > least && decimal->digits % 10 == 0; decimal->places--)
    decimal->digits /= 10;
}

gboolean
tm_decimal_multiply (const TmDecimal *a, const TmDecimal *b, TmDecimal *out)
{
  TmDecimal first = *a, second = *b;

  trim (&first, 0);
  trim (&second, 0);
  out->places = first.places + second.places;
  return !__builtin_mul_overflow (first.digits, second.digits, &out->digits);
}

int
tm_decimal_compare (const TmDecimal *a, const TmDecimal *b)
{
  TmDecimal first = *a, second = *b;

  /* What does not fit at the finer scale is the larger one by far. */
  if (!widen (&first, second.places))
    return first.digits > 0 ? 1 : -1;
  if (!widen (&second, first.places))
    return second.digits > 0 ? -1 : 1;
  return (first.digits > second.digits) - (first.digits < second.digits);
}

/* Half to even, to @places. */
static void
round_to (TmDecimal *decimal, guint places)
{
  TmWide scale = 1, kept, rest;

  for (guint i = places; i < decimal->places; i++)
    scale *= 10;
  kept = decimal->digits / scale;
  rest = decimal->digits % scale;
  if (rest < 0)
    rest = -rest;
  if (rest * 2 > scale || (rest * 2 == scale && kept % 2 != 0))
    kept += decimal->digits < 0 ? -1 : 1;
  decimal->digits = kept;
  decimal->places = places;
}

static char *
print (const TmDecimal *decimal)
{
  g_autoptr (GString) out = g_string_new (NULL);
  TmWide rest = decimal->digits < 0 ? -decimal->digits : decimal->digits;

  for (guint i = 0; rest > 0 || i <= decimal->places; i++)
    {
      if (i == decimal->places && decimal->places > 0)
        g_string_prepend_c (out, '.');
      g_string_prepend_c (out, (char)('0' + (int)(rest % 10)));
      rest /= 10;
    }
  if (decimal->digits < 0)
    g_string_prepend_c (out, '-');
  return g_string_free (g_steal_pointer (&out), FALSE);
}

char *
tm_decimal_format (const TmDecimal *decimal, guint least, guint most)
{
  TmDecimal rounded = *decimal;

  trim (&rounded, 0);
  if (rounded.places > most)
    {
      round_to (&rounded, most);
      trim (&rounded, 0);
    }
  if (least <= most)
    widen (&rounded, least);
  return print (&rounded);
}
