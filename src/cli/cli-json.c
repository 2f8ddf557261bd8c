/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "cli-json.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

yajl_gen
tm_print_begin (void)
{
  yajl_gen gen = yajl_gen_alloc (NULL);

  yajl_gen_config (gen, yajl_gen_beautify, 1);
  yajl_gen_config (gen, yajl_gen_indent_string, " ");
  return gen;
}

void
tm_print_flush (yajl_gen gen)
{
  const unsigned char *bytes;
  size_t length;

  yajl_gen_get_buf (gen, &bytes, &length);
  fwrite (bytes, 1, length, stdout);
  yajl_gen_clear (gen);
}

void
tm_print_end (yajl_gen gen)
{
  tm_print_flush (gen);
  yajl_gen_free (gen);
}

static void
put_text (yajl_gen gen, const char *text)
{
  g_autofree char *valid = g_utf8_validate (text, -1, NULL) ? NULL : g_utf8_make_valid (text, -1);
  const char *put = valid != NULL ? valid : text;

  yajl_gen_string (gen, (const unsigned char *)put, strlen (put));
}

void
tm_print_key (yajl_gen gen, const char *key)
{
  yajl_gen_string (gen, (const unsigned char *)key, strlen (key));
}

void
tm_print_item (yajl_gen gen, const char *text)
{
  put_text (gen, text);
}

void
tm_print_text (yajl_gen gen, const char *key, const char *value)
{
  tm_print_key (gen, key);
  if (value == NULL)
    yajl_gen_null (gen);
  else
    put_text (gen, value);
}

void
tm_print_number (yajl_gen gen, const char *key, double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  tm_print_key (gen, key);
  if (!isfinite (value))
    {
      yajl_gen_null (gen);
      return;
    }
  /* yajl's own number printing follows the locale's decimal mark. */
  tm_number_format (value, text, sizeof text);
  yajl_gen_number (gen, text, strlen (text));
}

/* Fifteen digits where they give the value back, so that 1.2 is not shown as 1.1999999999999999556. */
void
tm_number_format (double value, char *text, int length)
{
  char *end;

  /* Most numbers of a list of judgements are a whole one, and the same. */
  if (fabs (value) < 1e15 && !(fabs (value - trunc (value)) > 0) && !signbit (value))
    {
      g_snprintf (text, (gulong)length, "%" G_GINT64_FORMAT, (gint64)value);
      return;
    }
  g_ascii_formatd (text, length, "%.15g", value);
  if (fabs (g_ascii_strtod (text, &end) - value) > 0)
    g_ascii_dtostr (text, length, value);
}

void
tm_print_unit (yajl_gen gen, TmUnit unit)
{
  tm_print_text (gen, "unit", unit != TM_UNIT_NONE ? tm_unit_word (unit) : NULL);
}

void
tm_print_integer (yajl_gen gen, const char *key, gint64 value)
{
  tm_print_key (gen, key);
  yajl_gen_integer (gen, value);
}

void
tm_print_flag (yajl_gen gen, const char *key, gboolean value)
{
  tm_print_key (gen, key);
  yajl_gen_bool (gen, value);
}

void
tm_print_null (yajl_gen gen, const char *key)
{
  tm_print_key (gen, key);
  yajl_gen_null (gen);
}

void
tm_print_quantity (yajl_gen gen, const char *key, const TmQuantity *value, TmUnit unit)
{
  g_autofree char *text = NULL;

  if (value->given && unit != TM_UNIT_NONE)
    text = value->unit == unit ? tm_quantity_format (value) : tm_count_format_exact (value->count, unit, 0);
  tm_print_text (gen, key, text);
}

void
tm_print_counts (yajl_gen gen, const char *key, double counts, TmUnit unit)
{
  g_autofree char *text = NULL;

  if (isfinite (counts) && fabs (counts) < (double)TM_COUNT_MAX && unit != TM_UNIT_NONE)
    text = tm_count_format_exact (llround (counts), unit, 0);
  tm_print_text (gen, key, text);
}
