/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-summary: tenthmark-cli summary, the plain statistics of a column of numbers.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "cli-json.h"
#include "cli-verbs.h"
#include "core-statistics.h"

/* Reads one line; FALSE after an error line.  Blank lines, lines that begin with # and a heading in
 * line 1 are passed over; a decimal comma is read as a point. */
static gboolean
read_line (const char *path, guint number, char *line, GArray *values)
{
  char *end;
  double value;

  g_strstrip (line);
  if (*line == '\0' || *line == '#')
    return TRUE;
  g_strdelimit (line, ",", '.');
  value = g_ascii_strtod (line, &end);
  if (number == 1 && end == line)
    return TRUE;
  if (end == line || *end != '\0' || !isfinite (value))
    {
      tm_fail (_ ("%s, line %u: “%s” is not a number; give one number to a line"), path, number, line);
      return FALSE;
    }
  g_array_append_val (values, value);
  return TRUE;
}

static GArray *
read_column (const char *path)
{
  g_autoptr (GArray) values = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;

  if (!g_file_get_contents (path, &text, NULL, &error))
    {
      tm_fail (_ ("%s: cannot be read: %s"), path, error->message);
      return NULL;
    }
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      if (!read_line (path, i + 1, lines[i], values))
        return NULL;
    }
  if (values->len == 0)
    {
      tm_fail (_ ("%s: it holds no number; give one number to a line"), path);
      return NULL;
    }
  return g_steal_pointer (&values);
}

static void
print_number (const char *label, double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  printf ("%s %s\n", label, isfinite (value) ? g_ascii_dtostr (text, sizeof text, value) : "—");
}

static void
print_summary (const TmSummary *summary, gboolean json)
{
  yajl_gen gen;

  if (!json)
    {
      printf (_ ("count %" G_GSIZE_FORMAT "\n"), summary->count);
      print_number (_ ("mean"), summary->mean);
      print_number (_ ("standard deviation"), summary->standard_deviation);
      print_number (_ ("lag-1 autocorrelation"), summary->lag1);
      print_number (_ ("minimum"), summary->minimum);
      print_number (_ ("maximum"), summary->maximum);
      return;
    }
  gen = tm_print_begin ();
  yajl_gen_map_open (gen);
  tm_print_integer (gen, "count", (gint64)summary->count);
  tm_print_number (gen, "mean", summary->mean);
  tm_print_number (gen, "standard_deviation", summary->standard_deviation);
  tm_print_number (gen, "lag1", summary->lag1);
  tm_print_number (gen, "minimum", summary->minimum);
  tm_print_number (gen, "maximum", summary->maximum);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

int
tm_verb_summary (int n_words, char **words)
{
  const TmVerb *verb = tm_verb_find ("summary");
  gboolean json = FALSE;
  const TmOption options[] = {
    { "json", NULL, N_ ("print JSON"), NULL, &json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);
  g_autoptr (GArray) values = NULL;
  const char *path;
  TmSummary summary;

  if (operands == NULL)
    return status;
  path = tm_only_operand (verb, operands);
  values = path != NULL ? read_column (path) : NULL;
  if (values == NULL)
    return 2;
  tm_summary ((const double *)(gpointer)values->data, values->len, &summary);
  print_summary (&summary, json);
  return 0;
}
