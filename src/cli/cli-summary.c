/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-summary: tenthmark-cli summary, the plain statistics of a column of numbers.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-column.h"
#include "cli-json.h"
#include "cli-verbs.h"
#include "core-statistics.h"

static const double *
get_numbers (const GArray *array)
{
  return (const double *)(gpointer)array->data;
}

/* The spread does not depend on where the numbers begin: it is taken from their distances. */
static void
summarise (const TmColumn *column, TmSummary *out)
{
  TmSummary spread;

  tm_summary (get_numbers (column->values), column->values->len, out);
  if (column->offsets->len == 0)
    return;
  tm_summary (get_numbers (column->offsets), column->offsets->len, &spread);
  out->mean = column->mean;
  out->standard_deviation = spread.standard_deviation;
  out->lag1 = spread.lag1;
}

static void
print_number (const char *label, double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  tm_number_format (value, text, sizeof text);
  printf ("%s %s\n", label, isfinite (value) ? text : "—");
}

static void
print_summary (const TmSummary *summary, gboolean json)
{
  yajl_gen gen;

  if (!json)
    {
      printf (_ ("count %zu\n"), summary->count);
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
  g_auto (TmColumn) column = { NULL };
  const char *path;
  TmSummary summary;

  if (operands == NULL)
    return status;
  path = tm_only_operand (verb, operands);
  if (path == NULL || !tm_column_read (path, &column))
    return 2;
  summarise (&column, &summary);
  print_summary (&summary, json);
  return 0;
}
