/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "cli-column.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "cli-options.h"

#define MAX_DIGITS 18 /* of one number: fits 64 bits, and with as many decimals more 128 */

__extension__ typedef __int128 Wide;

/* A decimal as written: digits / 10^decimals. */
typedef struct {
  gint64 digits;
  guint decimals;
} Decimal;

typedef struct {
  const char *path;
  TmColumn *column;
  GArray *decimals; /* Decimal, one for each value while all of them are plain */
} Reader;

void
tm_column_clear (TmColumn *column)
{
  g_clear_pointer (&column->values, g_array_unref);
  g_clear_pointer (&column->offsets, g_array_unref);
}

/* FALSE for a number with an exponent, or with more digits than are held. */
static gboolean
read_decimal (const char *text, Decimal *out)
{
  gboolean negative = *text == '-', fraction = FALSE;
  guint n = 0;

  *out = (Decimal) { 0 };
  for (text += *text == '-' || *text == '+'; *text != '\0'; text++)
    {
      if (*text == '.')
        {
          fraction = TRUE;
          continue;
        }
      if (!g_ascii_isdigit (*text) || ++n > MAX_DIGITS)
        return FALSE;
      out->digits = out->digits * 10 + (*text - '0');
      out->decimals += fraction;
    }
  if (negative)
    out->digits = -out->digits;
  return TRUE;
}

/* g_ascii_strtod() would also take hexadecimal and "nan". */
static gboolean
read_value (const char *text, double *out)
{
  char *end;

  if (text[strspn (text, "0123456789.+-eE")] != '\0')
    return FALSE;
  *out = g_ascii_strtod (text, &end);
  return end != text && *end == '\0' && isfinite (*out);
}

static void
keep (Reader *self, const char *text, double value)
{
  Decimal decimal;

  g_array_append_val (self->column->values, value);
  if (self->decimals == NULL)
    return;
  if (read_decimal (text, &decimal))
    g_array_append_val (self->decimals, decimal);
  else
    g_clear_pointer (&self->decimals, g_array_unref);
}

static gboolean
is_heading (const char *line)
{
  return strchr ("0123456789.+-", *line) == NULL;
}

/* FALSE after an error line. */
static gboolean
read_line (Reader *self, guint number, char *line)
{
  double value;

  g_strstrip (line);
  if (*line == '\0' || *line == '#')
    return TRUE;
  g_strdelimit (line, ",", '.');
  if (read_value (line, &value))
    {
      keep (self, line, value);
      return TRUE;
    }
  if (number == 1 && is_heading (line))
    return TRUE;
  tm_fail (_ ("%s, line %u: “%s” is not a number; give one number to a line"), self->path, number, line);
  return FALSE;
}

/* The text of the file without a byte order mark; NULL after an error line. */
static char *
read_text (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  gsize length;

  if (!g_file_get_contents (path, &text, &length, &error))
    {
      tm_fail (_ ("%s: cannot be read: %s"), path, error->message);
      return NULL;
    }
  if (strlen (text) != length)
    {
      tm_fail (_ ("%s: it is no text (it holds a byte 0x00); give one number to a line"), path);
      return NULL;
    }
  return g_strdup (g_str_has_prefix (text, "\xEF\xBB\xBF") ? text + 3 : text);
}

static Wide
scale (const Decimal *decimal, guint decimals)
{
  Wide scaled = decimal->digits;

  for (guint i = decimal->decimals; i < decimals; i++)
    scaled *= 10;
  return scaled;
}

static guint
find_most_decimals (const GArray *decimals)
{
  guint most = 0;

  for (guint i = 0; i < decimals->len; i++)
    most = MAX (most, g_array_index (decimals, Decimal, i).decimals);
  return most;
}

static void
take_offsets (const GArray *decimals, TmColumn *out)
{
  guint most = find_most_decimals (decimals);
  Wide origin = scale (&g_array_index (decimals, Decimal, 0), most);
  long double unit = powl (10, most), sum = 0;

  for (guint i = 0; i < decimals->len; i++)
    {
      Wide distance = scale (&g_array_index (decimals, Decimal, i), most) - origin;
      double offset = (double)distance / (double)unit;

      sum += (long double)distance;
      g_array_append_val (out->offsets, offset);
    }
  out->mean = (double)(((long double)origin + sum / decimals->len) / unit);
}

static gboolean
read_lines (Reader *self, char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    if (!read_line (self, i + 1, lines[i]))
      return FALSE;
  if (self->column->values->len > 0)
    return TRUE;
  tm_fail (_ ("%s: it holds no number; give one number to a line"), self->path);
  return FALSE;
}

gboolean
tm_column_read (const char *path, TmColumn *out)
{
  g_autofree char *text = read_text (path);
  Reader reader = { path, out, NULL };
  gboolean done;

  *out = (TmColumn) { g_array_new (FALSE, FALSE, sizeof (double)),
                      g_array_new (FALSE, FALSE, sizeof (double)), NAN };
  if (text == NULL)
    return FALSE;
  reader.decimals = g_array_new (FALSE, FALSE, sizeof (Decimal));
  done = read_lines (&reader, text);
  if (done && reader.decimals != NULL)
    take_offsets (reader.decimals, out);
  g_clear_pointer (&reader.decimals, g_array_unref);
  return done;
}
