/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-list: the jobs of the book, for the home page and the command line.
 */

#include "book-private.h"

/* The newest fact of each table is found by its index on the job: no table is read through.  A
 * reading that was corrected or withdrawn does not count. */
static const char list_sql[]
    = "SELECT j.id, f.part_number, f.part_name, f.revision, f.customer, f.order_number,"
      " (SELECT count (*) FROM current_feature AS c WHERE c.job = j.seq),"
      " (SELECT count (*) FROM current_piece AS c WHERE c.job = j.seq),"
      " (SELECT count (*) FROM reading AS r WHERE r.job = j.seq)"
      " - (SELECT count (*) FROM reading AS r WHERE r.job = j.seq AND r.replaces <> '')"
      " - (SELECT count (*) FROM withdrawal AS w WHERE w.job = j.seq AND w.target = 'reading'),"
      " max (f.changed_at,"
      "  coalesce ((SELECT taken_at FROM reading AS r WHERE r.job = j.seq ORDER BY seq DESC LIMIT 1), ''),"
      "  coalesce ((SELECT taken_at FROM pin_trial AS r WHERE r.job = j.seq ORDER BY seq DESC LIMIT 1), ''),"
      "  coalesce ((SELECT taken_at FROM cut AS r WHERE r.job = j.seq ORDER BY seq DESC LIMIT 1), ''),"
      "  coalesce ((SELECT max (done_at) FROM withdrawal AS w WHERE w.job = j.seq), ''),"
      "  coalesce ((SELECT max (changed_at) FROM feature AS v WHERE v.job = j.seq), ''),"
      "  coalesce ((SELECT max (changed_at) FROM piece AS v WHERE v.job = j.seq), '')),"
      " max (f.seq,"
      "  coalesce ((SELECT max (seq) FROM reading AS r WHERE r.job = j.seq), 0),"
      "  coalesce ((SELECT max (seq) FROM pin_trial AS r WHERE r.job = j.seq), 0),"
      "  coalesce ((SELECT max (seq) FROM cut AS r WHERE r.job = j.seq), 0),"
      "  coalesce ((SELECT max (seq) FROM withdrawal AS w WHERE w.job = j.seq), 0),"
      "  coalesce ((SELECT max (seq) FROM feature AS v WHERE v.job = j.seq), 0),"
      "  coalesce ((SELECT max (seq) FROM piece AS v WHERE v.job = j.seq), 0)) AS touched"
      " FROM job AS j JOIN current_facts AS f ON f.job = j.seq"
      " ORDER BY touched DESC";

void
tm_book_entry_free (TmBookEntry *entry)
{
  if (entry == NULL)
    return;
  g_free (entry->id);
  g_free (entry->part_number);
  g_free (entry->part_name);
  g_free (entry->revision);
  g_free (entry->customer);
  g_free (entry->order);
  g_free (entry->last_at);
  g_free (entry);
}

static TmBookEntry *
read_entry (sqlite3_stmt *statement)
{
  TmBookEntry *entry = g_new0 (TmBookEntry, 1);

  entry->id = g_strdup (tm_column_text (statement, 0));
  entry->part_number = g_strdup (tm_column_text (statement, 1));
  entry->part_name = g_strdup (tm_column_text (statement, 2));
  entry->revision = g_strdup (tm_column_text (statement, 3));
  entry->customer = g_strdup (tm_column_text (statement, 4));
  entry->order = g_strdup (tm_column_text (statement, 5));
  entry->n_features = (guint)sqlite3_column_int (statement, 6);
  entry->n_pieces = (guint)sqlite3_column_int (statement, 7);
  entry->n_readings = (guint)sqlite3_column_int (statement, 8);
  entry->last_at = g_strdup (tm_column_text (statement, 9));
  return entry;
}

GPtrArray *
tm_book_list (TmBook *book, GError **error)
{
  g_autoptr (GPtrArray) entries = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_book_entry_free);
  GError *failure = NULL;
  sqlite3_stmt *statement;

  g_return_val_if_fail (book != NULL, NULL);

  statement = tm_book_prepare (book, list_sql, error);
  if (statement == NULL)
    return NULL;
  while (tm_book_step (book, statement, &failure))
    g_ptr_array_add (entries, read_entry (statement));
  if (failure != NULL)
    {
      g_propagate_error (error, failure);
      return NULL;
    }
  return g_steal_pointer (&entries);
}
