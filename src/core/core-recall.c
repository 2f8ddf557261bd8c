/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-recall.h"

#include <string.h>

#define DATE_LENGTH 10 /* YYYY-MM-DD */

/* One place of a feature of a piece, judged once for all its rows. */
typedef struct {
  const TmPiece *piece;
  const TmFeature *feature;
  guint place;
  TmVerdict before, after;
  TmSide side_before, side_after;
} Place;

typedef struct {
  const TmQuantity *error; /* or NULL */
  TmJudgeOptions options;
} Recall;

gboolean
tm_method_uses_gauge (const TmJob *job, const char *name, const char *tag)
{
  const TmMethod *method;

  g_return_val_if_fail (job != NULL && tag != NULL, FALSE);

  if (name == NULL || *name == '\0')
    return FALSE;
  method = tm_job_find_method (job, name);
  if (method == NULL)
    return g_str_equal (name, tag);
  for (guint i = 0; i < method->gauges->len; i++)
    if (g_str_equal (g_ptr_array_index (method->gauges, i), tag))
      return TRUE;
  return FALSE;
}

/* A row without a time is taken in: nobody can say that it is older. */
static gboolean
is_after (const TmEntryRow *row, const char *good_until)
{
  return *good_until == '\0' || strlen (row->at) < DATE_LENGTH
         || strncmp (row->at, good_until, DATE_LENGTH) > 0;
}

static guint
hash_place (gconstpointer key)
{
  const Place *place = key;

  return g_direct_hash (place->piece) * 31 + g_direct_hash (place->feature) * 17 + place->place;
}

static gboolean
equal_place (gconstpointer a, gconstpointer b)
{
  const Place *one = a, *other = b;

  return one->piece == other->piece && one->feature == other->feature && one->place == other->place;
}

static void
judge_place (const TmJob *job, const TmJudgeOptions *options, Place *place)
{
  g_auto (TmJudgement) before = { 0 }, after = { 0 };

  tm_judge (job, place->piece, place->feature, place->place, &before);
  place->before = place->after = before.verdict;
  place->side_before = place->side_after = before.side;
  if (options == NULL)
    return;
  tm_judge_with (job, place->piece, place->feature, place->place, options, &after);
  place->after = after.verdict;
  place->side_after = after.side;
}

/* The error is taken out only of what it can be an error of. */
static gboolean
applies (const TmFeature *feature, const TmQuantity *error)
{
  return error != NULL && error->given
         && tm_unit_dimension ((TmUnit)error->unit) == tm_unit_dimension (feature->unit);
}

static const Place *
find_place (GHashTable *places, const TmJob *job, const TmEntryRow *row, guint number, const Recall *recall)
{
  Place key = { .piece = row->piece, .feature = row->feature, .place = number };
  Place *place = g_hash_table_lookup (places, &key);

  if (place == NULL)
    {
      place = g_memdup2 (&key, sizeof key);
      judge_place (job, applies (row->feature, recall->error) ? &recall->options : NULL, place);
      g_hash_table_add (places, place);
    }
  return place;
}

static void
add_row (GArray *rows, const Place *place, const TmReading *reading, const TmPinTrial *trial)
{
  TmRecallRow row = { reading, trial, place->before, place->after, place->side_before, place->side_after };

  g_array_append_val (rows, row);
}

static gboolean
took_reading (const TmJob *job, const TmReading *reading, const char *tag)
{
  const char *name = *reading->method != '\0' ? reading->method : reading->row.feature->method;

  return tm_method_uses_gauge (job, name, tag);
}

/* The day after @date, or "" where it is none. */
static char *
find_next_day (const char *date)
{
  guint year, month, day;
  GDate next;

  if (strlen (date) < DATE_LENGTH)
    return g_strdup ("");
  year = (guint)g_ascii_strtoull (date, NULL, 10);
  month = (guint)g_ascii_strtoull (date + 5, NULL, 10);
  day = (guint)g_ascii_strtoull (date + 8, NULL, 10);
  if (!g_date_valid_dmy ((GDateDay)day, (GDateMonth)month, (GDateYear)year))
    return g_strdup ("");
  g_date_clear (&next, 1);
  g_date_set_dmy (&next, (GDateDay)day, (GDateMonth)month, (GDateYear)year);
  g_date_add_days (&next, 1);
  return g_strdup_printf ("%04d-%02d-%02d", g_date_get_year (&next), g_date_get_month (&next),
                          g_date_get_day (&next));
}

GArray *
tm_recall (const TmJob *job, const char *tag, const char *good_until, const TmQuantity *error)
{
  GArray *rows = g_array_new (FALSE, FALSE, sizeof (TmRecallRow));
  g_autoptr (GHashTable) places = g_hash_table_new_full (hash_place, equal_place, g_free, NULL);
  g_autofree char *since = NULL;
  Recall recall;

  g_return_val_if_fail (job != NULL && tag != NULL && good_until != NULL, rows);

  since = find_next_day (good_until);
  recall = (Recall) { error, { tag, since, error != NULL ? error->count : 0 } };
  for (guint i = 0; i < job->readings->len; i++)
    {
      const TmReading *each = g_ptr_array_index (job->readings, i);

      if (tm_row_counts (&each->row) && is_after (&each->row, good_until) && took_reading (job, each, tag))
        add_row (rows, find_place (places, job, &each->row, each->place, &recall), each, NULL);
    }
  for (guint i = 0; i < job->pin_trials->len; i++)
    {
      const TmPinTrial *each = g_ptr_array_index (job->pin_trials, i);

      if (tm_row_counts (&each->row) && is_after (&each->row, good_until) && g_str_equal (each->gauge, tag))
        add_row (rows, find_place (places, job, &each->row, each->place, &recall), NULL, each);
    }
  return rows;
}

gboolean
tm_recall_changes (const TmRecallRow *row)
{
  g_return_val_if_fail (row != NULL, FALSE);

  return row->before != row->after || row->side_before != row->side_after;
}

static Place
get_place (const TmRecallRow *row)
{
  const TmEntryRow *entry = row->reading != NULL ? &row->reading->row : &row->trial->row;
  guint place = row->reading != NULL ? row->reading->place : row->trial->place;

  return (Place) { .piece = entry->piece, .feature = entry->feature, .place = place };
}

guint
tm_recall_count_changes (const GArray *rows)
{
  g_autoptr (GHashTable) places = g_hash_table_new_full (hash_place, equal_place, g_free, NULL);

  g_return_val_if_fail (rows != NULL, 0);

  for (guint i = 0; i < rows->len; i++)
    {
      const TmRecallRow *row = &g_array_index (rows, TmRecallRow, i);
      Place place = get_place (row);

      if (tm_recall_changes (row))
        g_hash_table_add (places, g_memdup2 (&place, sizeof place));
    }
  return g_hash_table_size (places);
}
