/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-put.h"

static void
append_escaped (GString *out, guchar byte)
{
  switch (byte)
    {
    case '"':
      g_string_append (out, "\\\"");
      break;
    case '\\':
      g_string_append (out, "\\\\");
      break;
    case '\n':
      g_string_append (out, "\\n");
      break;
    case '\r':
      g_string_append (out, "\\r");
      break;
    case '\t':
      g_string_append (out, "\\t");
      break;
    default:
      g_string_append_printf (out, "\\u%04x", (guint)byte);
    }
}

static void
append_string (GString *out, const char *text)
{
  g_string_append_c (out, '"');
  while (*text != '\0')
    {
      const char *plain = text;

      while ((guchar)*text >= 0x20 && *text != '"' && *text != '\\')
        text++;
      g_string_append_len (out, plain, text - plain);
      if (*text != '\0')
        append_escaped (out, (guchar)*text++);
    }
  g_string_append_c (out, '"');
}

/* A text of the model; one that somehow is no UTF-8 must not spoil the whole file. */
static void
append_text (GString *out, const char *text)
{
  g_autofree char *valid = NULL;

  if (!g_utf8_validate (text, -1, NULL))
    text = valid = g_utf8_make_valid (text, -1);
  append_string (out, text);
}

static void
put_separator (TmJsonObject *object)
{
  if (object->started)
    g_string_append (object->out, object->separator);
  object->started = TRUE;
}

static void
put_key (TmJsonObject *object, guint member)
{
  put_separator (object);
  g_string_append_c (object->out, '"');
  g_string_append (object->out, object->shape[member].key);
  g_string_append (object->out, "\": ");
}

void
tm_put_always (TmJsonObject *object, guint member, const char *text)
{
  put_key (object, member);
  append_text (object->out, text);
}

void
tm_put_text (TmJsonObject *object, guint member, const char *text)
{
  if (*text != '\0')
    tm_put_always (object, member, text);
}

void
tm_put_whole (TmJsonObject *object, guint member, guint value)
{
  put_key (object, member);
  g_string_append_printf (object->out, "%u", value);
}

void
tm_put_truth (TmJsonObject *object, guint member, gboolean value)
{
  put_key (object, member);
  g_string_append (object->out, value ? "true" : "false");
}

void
tm_put_extra (TmJsonObject *object, const char *extra)
{
  if (*extra == '\0')
    return;
  put_separator (object);
  g_string_append (object->out, extra);
}

gboolean
tm_is_exact (const TmQuantity *quantity, TmQuantity *again, char **text)
{
  g_autofree char *written
      = tm_count_format_exact (quantity->count, (TmUnit)quantity->unit, quantity->decimals);

  *again = TM_QUANTITY_NONE;
  if (tm_quantity_read (written, (TmUnit)quantity->unit, again) != TM_READ_OK
      || again->count != quantity->count)
    return FALSE;
  *text = g_steal_pointer (&written);
  return TRUE;
}

/* A length that its unit cannot express in decimals (the micrometres of a tolerance table, in an
 * inch feature) is written in millimetres, which express every picometre.  Other dimensions round
 * to what their unit can express: 9 counts of an angle, 3e-5 of an arc second. */
static char *
format_otherwise (const TmQuantity *quantity, TmUnit unit)
{
  TmQuantity other = *quantity;

  if (tm_unit_dimension ((TmUnit)quantity->unit) == TM_DIMENSION_LENGTH)
    other.unit = TM_UNIT_MM;
  else
    other.count = quantity->count / 9 * 9;
  other.decimals = 0;
  if (other.unit == unit)
    return tm_count_format_exact (other.count, (TmUnit)other.unit, 0);
  {
    g_autofree char *number = tm_count_format_exact (other.count, (TmUnit)other.unit, 0);

    return g_strconcat (number, " ", tm_unit_word ((TmUnit)other.unit), NULL);
  }
}

void
tm_put_quantity (TmJsonObject *object, guint member, const TmQuantity *quantity, TmUnit unit)
{
  g_autofree char *text = NULL;
  TmQuantity again;

  if (!quantity->given)
    return;
  put_key (object, member);
  if (!tm_is_exact (quantity, &again, &text))
    text = format_otherwise (quantity, unit);
  else if (quantity->unit != unit)
    {
      append_string (object->out, text);
      g_string_truncate (object->out, object->out->len - 1);
      g_string_append_printf (object->out, " %s\"", tm_unit_word ((TmUnit)quantity->unit));
      return;
    }
  append_string (object->out, text);
}

TmJsonObject
tm_open_inner (TmJsonObject *object, guint member)
{
  put_key (object, member);
  g_string_append_c (object->out, '{');
  return (TmJsonObject) { object->out, object->shape[member].inside, ", ", FALSE };
}

void
tm_close_inner (TmJsonObject *inner, const char *extra)
{
  tm_put_extra (inner, extra);
  g_string_append_c (inner->out, '}');
}

void
tm_put_list (TmJsonObject *object, guint member, const GPtrArray *texts)
{
  if (texts->len == 0)
    return;
  put_key (object, member);
  g_string_append_c (object->out, '[');
  for (guint i = 0; i < texts->len; i++)
    {
      g_string_append (object->out, i > 0 ? ", " : "");
      append_text (object->out, g_ptr_array_index (texts, i));
    }
  g_string_append_c (object->out, ']');
}
