/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-recall.h"

#include "exchange-csv.h"

#include <glib/gi18n-lib.h>

static const char *const columns[] = {
  N_ ("Job"),         N_ ("Part number"),
  N_ ("Revision"),    N_ ("Piece"),
  N_ ("Feature"),     N_ ("Name"),
  N_ ("Place"),       N_ ("Station"),
  N_ ("Taken as"),    N_ ("Number"),
  N_ ("Value"),       N_ ("Unit"),
  N_ ("When"),        N_ ("By"),
  N_ ("Method"),      N_ ("Verdict before"),
  N_ ("Side before"), N_ ("Verdict after"),
  N_ ("Side after"),  N_ ("Changes"),
};

void
tm_recall_table_begin (GString *out)
{
  g_return_if_fail (out != NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    tm_csv_put_text (out, _ (columns[i]));
  tm_csv_end_line (out);
}

static const TmEntryRow *
get_entry (const TmRecallRow *row)
{
  return row->reading != NULL ? &row->reading->row : &row->trial->row;
}

static char *
format_trial (const TmPinTrial *trial)
{
  g_autofree char *size = tm_quantity_format_in (&trial->size, trial->row.feature->unit);

  return g_strdup_printf (trial->went ? _ ("%s %s %s: went") : _ ("%s %s %s: did not go"), size,
                          trial->pin_class, tm_pin_sign_word (trial->sign));
}

char *
tm_recall_value_text (const TmRecallRow *row)
{
  const TmReading *reading;
  g_autofree char *dx = NULL;
  g_autofree char *dy = NULL;
  TmUnit unit;

  g_return_val_if_fail (row != NULL, NULL);

  reading = row->reading;
  if (reading == NULL)
    return format_trial (row->trial);
  unit = reading->row.feature->unit;
  if (reading->outcome != TM_OUTCOME_NONE)
    return g_strdup (_ (tm_outcome_word (reading->outcome)));
  if (reading->value.given)
    return tm_quantity_format_in (&reading->value, unit);
  dx = tm_quantity_format_in (&reading->dx, unit);
  dy = tm_quantity_format_in (&reading->dy, unit);
  return g_strconcat (dx, " / ", dy, NULL);
}

const char *
tm_recall_method_text (const TmRecallRow *row)
{
  g_return_val_if_fail (row != NULL, "");

  if (row->reading == NULL)
    return row->trial->gauge;
  return *row->reading->method != '\0' ? row->reading->method : row->reading->row.feature->method;
}

static void
put_verdict (GString *out, TmVerdict verdict, TmSide side)
{
  tm_csv_put_text (out, g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word (verdict)));
  tm_csv_put_text (out,
                   side != TM_SIDE_NONE ? g_dpgettext2 (GETTEXT_PACKAGE, "side", tm_side_word (side)) : "");
}

static void
put_spot (GString *out, const TmJob *job, const TmRecallRow *row)
{
  const TmEntryRow *entry = get_entry (row);
  guint place = row->reading != NULL ? row->reading->place : row->trial->place;
  g_autofree char *number = g_strdup_printf ("%u", place);

  tm_csv_put_text (out, job->id);
  tm_csv_put_text (out, job->part_number);
  tm_csv_put_text (out, job->revision);
  tm_csv_put_text (out, entry->piece->serial);
  tm_csv_put_text (out, entry->feature->balloon);
  tm_csv_put_text (out, entry->feature->name);
  tm_csv_put_number (out, number);
  tm_csv_put_text (out, row->reading != NULL ? row->reading->station : "");
}

static void
put_value (GString *out, const TmRecallRow *row)
{
  g_autofree char *value = tm_recall_value_text (row);

  if (row->reading != NULL && row->reading->value.given)
    tm_csv_put_number (out, value);
  else
    tm_csv_put_text (out, value);
}

static void
put_row (GString *out, const TmJob *job, const TmRecallRow *row)
{
  const TmEntryRow *entry = get_entry (row);

  put_spot (out, job, row);
  tm_csv_put_text (out, row->reading != NULL ? _ ("reading") : _ ("pin trial"));
  tm_csv_put_text (out, entry->id);
  put_value (out, row);
  tm_csv_put_text (out, tm_unit_word (entry->feature->unit));
  tm_csv_put_text (out, entry->at);
  tm_csv_put_text (out, entry->by);
  tm_csv_put_text (out, tm_recall_method_text (row));
  put_verdict (out, row->before, row->side_before);
  put_verdict (out, row->after, row->side_after);
  tm_csv_put_text (out, tm_recall_changes (row) ? _ ("yes") : _ ("no"));
  tm_csv_end_line (out);
}

void
tm_recall_table_add (GString *out, const TmJob *job, const GArray *rows)
{
  g_return_if_fail (out != NULL && job != NULL && rows != NULL);

  for (guint i = 0; i < rows->len; i++)
    put_row (out, job, &g_array_index (rows, TmRecallRow, i));
}
