/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-book-recall: tenthmark-cli book recall, what was measured with a gauge that was found bad.
 */

#include <glib/gi18n-lib.h>
#include <stdio.h>

#include "cli-book.h"
#include "cli-json.h"
#include "cli-verbs.h"
#include "exchange-job.h"
#include "exchange-recall.h"

/* A recall and what it found. */
typedef struct {
  const TmBookCall *call;
  GPtrArray *jobs; /* TmJob */
  GPtrArray *rows; /* GArray of TmRecallRow, one for each job */
  TmUnit unit;     /* of the gauge */
  TmQuantity error;
  guint n_jobs; /* with rows */
  guint n_rows;
  guint n_changed;
} Recall;

static gboolean
is_date (const char *text)
{
  g_autofree char *moment = g_strconcat (text, "T00:00:00Z", NULL);

  return tm_job_is_moment (moment);
}

/* The gauge as one of the jobs, or else the register, has it. */
static const TmGauge *
find_gauge (const Recall *recall, const TmJob *shop)
{
  for (guint i = 0; i < recall->jobs->len; i++)
    {
      const TmGauge *gauge = tm_job_find_gauge (g_ptr_array_index (recall->jobs, i), recall->call->tag);

      if (gauge != NULL)
        return gauge;
    }
  return tm_job_find_gauge (shop, recall->call->tag);
}

/* FALSE after an error line. */
static gboolean
read_error (Recall *recall)
{
  const char *text = recall->call->error;
  TmReadStatus status;

  if (text == NULL)
    return TRUE;
  status = tm_quantity_read (text, recall->unit, &recall->error);
  if (status != TM_READ_OK)
    tm_fail (_ ("book recall: --error “%s”: %s"), text, _ (tm_read_status_text (status)));
  return status == TM_READ_OK;
}

static gboolean
ask_book (Recall *recall, TmBook *book)
{
  g_autoptr (TmJob) shop = NULL;
  const TmGauge *gauge;
  GError *error = NULL;

  recall->jobs = tm_book_recall (book, recall->call->tag, recall->call->good_until, NULL, NULL, &error);
  shop = recall->jobs != NULL ? tm_book_gauge_register (book, &error) : NULL;
  if (shop == NULL)
    {
      tm_fail_error (error);
      return FALSE;
    }
  gauge = find_gauge (recall, shop);
  if (gauge == NULL)
    {
      tm_fail (_ ("book recall: there is no gauge “%s” in %s; look at the tag"), recall->call->tag,
               tm_book_path (book));
      return FALSE;
    }
  recall->unit = gauge->unit;
  return read_error (recall);
}

static void
judge_jobs (Recall *recall)
{
  for (guint i = 0; i < recall->jobs->len; i++)
    {
      GArray *rows = tm_recall (g_ptr_array_index (recall->jobs, i), recall->call->tag,
                                recall->call->good_until, recall->error.given ? &recall->error : NULL);

      g_ptr_array_add (recall->rows, rows);
      recall->n_jobs += rows->len > 0 ? 1 : 0;
      recall->n_rows += rows->len;
      recall->n_changed += tm_recall_count_changes (rows);
    }
}

static const TmEntryRow *
get_entry (const TmRecallRow *row)
{
  return row->reading != NULL ? &row->reading->row : &row->trial->row;
}

static guint
get_place (const TmRecallRow *row)
{
  return row->reading != NULL ? row->reading->place : row->trial->place;
}

static void
put_row (yajl_gen gen, const TmJob *job, const TmRecallRow *row)
{
  const TmEntryRow *entry = get_entry (row);
  g_autofree char *value = tm_recall_value_text (row);

  yajl_gen_map_open (gen);
  tm_print_text (gen, "job", job->id);
  tm_print_text (gen, "part_number", job->part_number);
  tm_print_text (gen, "revision", job->revision);
  tm_print_text (gen, "piece", entry->piece->serial);
  tm_print_text (gen, "feature", entry->feature->balloon);
  tm_print_integer (gen, "place", get_place (row));
  tm_print_text (gen, "station", row->reading != NULL ? row->reading->station : NULL);
  tm_print_text (gen, row->reading != NULL ? "reading" : "pin_trial", entry->id);
  tm_print_text (gen, "value", value);
  tm_print_unit (gen, entry->feature->unit);
  tm_print_text (gen, "at", *entry->at != '\0' ? entry->at : NULL);
  tm_print_text (gen, "by", entry->by);
  tm_print_text (gen, "method", tm_recall_method_text (row));
  tm_print_text (gen, "verdict_before", tm_verdict_word (row->before));
  tm_print_text (gen, "side_before",
                 row->side_before != TM_SIDE_NONE ? tm_side_word (row->side_before) : NULL);
  tm_print_text (gen, "verdict_after", tm_verdict_word (row->after));
  tm_print_text (gen, "side_after", row->side_after != TM_SIDE_NONE ? tm_side_word (row->side_after) : NULL);
  tm_print_flag (gen, "changes", tm_recall_changes (row));
  yajl_gen_map_close (gen);
}

static void
print_json (const Recall *recall)
{
  yajl_gen gen = tm_print_begin ();

  yajl_gen_map_open (gen);
  tm_print_text (gen, "tag", recall->call->tag);
  tm_print_text (gen, "good_until", recall->call->good_until);
  tm_print_quantity (gen, "error", &recall->error, recall->unit);
  tm_print_unit (gen, recall->unit);
  tm_print_integer (gen, "jobs", recall->n_jobs);
  tm_print_integer (gen, "changed", recall->n_changed);
  tm_print_text (gen, "file", recall->call->out);
  tm_print_key (gen, "readings");
  yajl_gen_array_open (gen);
  for (guint i = 0; i < recall->jobs->len; i++)
    {
      const GArray *rows = g_ptr_array_index (recall->rows, i);

      for (guint r = 0; r < rows->len; r++)
        put_row (gen, g_ptr_array_index (recall->jobs, i), &g_array_index (rows, TmRecallRow, r));
    }
  yajl_gen_array_close (gen);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

/* "out, metal gone". */
static char *
name_verdict (TmVerdict verdict, TmSide side)
{
  const char *word = g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word (verdict));

  if (side == TM_SIDE_NONE)
    return g_strdup (word);
  return g_strconcat (word, ", ", g_dpgettext2 (GETTEXT_PACKAGE, "side", tm_side_word (side)), NULL);
}

/* The verdict of the place, and what it would be. */
static char *
describe_verdicts (const TmRecallRow *row)
{
  g_autofree char *before = name_verdict (row->before, row->side_before);
  g_autofree char *after = name_verdict (row->after, row->side_after);

  if (!tm_recall_changes (row))
    return g_steal_pointer (&before);
  return g_strdup_printf (_ ("%s; would be %s"), before, after);
}

/* "place 1, mouth/12". */
static char *
describe_place (const TmRecallRow *row)
{
  if (row->reading == NULL || *row->reading->station == '\0')
    return g_strdup_printf (_ ("place %u"), get_place (row));
  return g_strdup_printf (_ ("place %u, %s"), get_place (row), row->reading->station);
}

static void
print_row (const TmJob *job, const TmRecallRow *row)
{
  const TmEntryRow *entry = get_entry (row);
  g_autofree char *value = tm_recall_value_text (row);
  g_autofree char *place = describe_place (row);
  g_autofree char *verdicts = describe_verdicts (row);

  printf (_ ("part %s, piece %s, feature %s, %s: %s by %s, %s: %s\n"), job->part_number, entry->piece->serial,
          entry->feature->balloon, place, value, tm_recall_method_text (row),
          *entry->at != '\0' ? entry->at : _ ("no time"), verdicts);
}

static void
print_summary (const Recall *recall)
{
  printf (_ ("Taken with %s after %s: %u, in jobs: %u\n"), recall->call->tag, recall->call->good_until,
          recall->n_rows, recall->n_jobs);
  if (recall->error.given)
    printf (_ ("Verdicts that would change with the error taken out: %u\n"), recall->n_changed);
}

static void
print_text (const Recall *recall)
{
  for (guint i = 0; recall->call->out == NULL && i < recall->jobs->len; i++)
    {
      const GArray *rows = g_ptr_array_index (recall->rows, i);

      for (guint r = 0; r < rows->len; r++)
        print_row (g_ptr_array_index (recall->jobs, i), &g_array_index (rows, TmRecallRow, r));
    }
  if (recall->call->out != NULL)
    printf (_ ("Wrote %s\n"), recall->call->out);
  print_summary (recall);
}

/* FALSE after an error line. */
static gboolean
write_table (const Recall *recall)
{
  g_autoptr (GString) table = g_string_new (NULL);
  GError *error = NULL;

  if (recall->call->out == NULL)
    return TRUE;
  tm_recall_table_begin (table);
  for (guint i = 0; i < recall->jobs->len; i++)
    tm_recall_table_add (table, g_ptr_array_index (recall->jobs, i), g_ptr_array_index (recall->rows, i));
  if (g_file_set_contents_full (recall->call->out, table->str, (gssize)table->len,
                                G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0666, &error))
    return TRUE;
  g_prefix_error (&error, _ ("%s: cannot be written; choose another folder or free some space: "),
                  recall->call->out);
  tm_fail_error (error);
  return FALSE;
}

static gboolean
check_call (const TmBookCall *call)
{
  if (call->tag == NULL || *call->tag == '\0')
    tm_fail (_ ("book recall: say which gauge with --tag TAG"));
  else if (call->good_until == NULL)
    tm_fail (_ ("book recall: say when it was last known to be good with --good-until DATE"));
  else if (!is_date (call->good_until))
    tm_fail (_ ("book recall: --good-until “%s” is no date of the calendar; write it like 2026-03-01"),
             call->good_until);
  else
    return TRUE;
  return FALSE;
}

static gboolean
run_recall (Recall *recall)
{
  g_autoptr (TmBook) book = tm_book_call_open (recall->call, TM_BOOK_OPEN_READ_ONLY);

  if (book == NULL || !ask_book (recall, book))
    return FALSE;
  judge_jobs (recall);
  return write_table (recall);
}

int
tm_book_call_recall (const TmBookCall *call)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  Recall recall = { .call = call, .rows = rows };
  gboolean done;

  if (!check_call (call))
    return 2;
  done = run_recall (&recall);
  if (done && call->json)
    print_json (&recall);
  else if (done)
    print_text (&recall);
  g_clear_pointer (&recall.jobs, g_ptr_array_unref);
  return done ? 0 : 2;
}
