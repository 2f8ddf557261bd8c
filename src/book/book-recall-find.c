/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "book-recall.h"

/* --- names and their versions */

static guint
hash_name (gconstpointer key)
{
  const TmRecallName *name = key;

  return g_int64_hash (&name->job) * 31 + g_str_hash (name->name);
}

static gboolean
equal_name (gconstpointer a, gconstpointer b)
{
  const TmRecallName *one = a, *other = b;

  return one->job == other->job && g_str_equal (one->name, other->name);
}

static void
free_name (gpointer data)
{
  TmRecallName *name = data;

  g_free (name->name);
  g_free (name);
}

static void
clear_version (gpointer data)
{
  TmRecallVersion *version = data;

  g_free (version->since);
  g_free (version->name);
}

static GHashTable *
new_table (void)
{
  return g_hash_table_new_full (hash_name, equal_name, free_name, (GDestroyNotify)g_array_unref);
}

void
tm_recall_query_init (TmRecallQuery *query, TmBook *book, const char *tag, const char *good_until)
{
  *query = (TmRecallQuery) { .book = book, .tag = tag };
  query->after = *good_until != '\0' ? g_strconcat (good_until, "T23:59:59Z", NULL) : g_strdup ("");
  query->methods = new_table ();
  query->features = new_table ();
  query->jobs
      = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, (GDestroyNotify)g_hash_table_unref);
}

void
tm_recall_query_clear (TmRecallQuery *query)
{
  g_clear_pointer (&query->after, g_free);
  g_clear_pointer (&query->methods, g_hash_table_unref);
  g_clear_pointer (&query->features, g_hash_table_unref);
  g_clear_pointer (&query->jobs, g_hash_table_unref);
}

static void
add_version (GHashTable *table, gint64 job, const char *name, const TmRecallVersion *version)
{
  TmRecallName key = { job, (char *)name };
  GArray *versions = g_hash_table_lookup (table, &key);

  if (versions == NULL)
    {
      TmRecallName *kept = g_new (TmRecallName, 1);

      *kept = (TmRecallName) { job, g_strdup (name) };
      versions = g_array_new (FALSE, FALSE, sizeof (TmRecallVersion));
      g_array_set_clear_func (versions, clear_version);
      g_hash_table_insert (table, kept, versions);
    }
  g_array_append_val (versions, *version);
}

const GArray *
tm_recall_versions (GHashTable *table, gint64 job, const char *name)
{
  TmRecallName key = { job, (char *)name };

  return g_hash_table_lookup (table, &key);
}

const TmRecallVersion *
tm_recall_in_force (const GArray *versions, const char *at)
{
  const TmRecallVersion *found = &g_array_index (versions, TmRecallVersion, 0);

  for (guint i = 0; i < versions->len; i++)
    {
      const TmRecallVersion *version = &g_array_index (versions, TmRecallVersion, i);

      if (*at == '\0' ? version->uses : strcmp (version->since, at) <= 0)
        found = version;
    }
  return found;
}

/* Runs @statement to its end, calling @take with each row. */
static gboolean
for_each_row (TmRecallQuery *query, sqlite3_stmt *statement, void (*take) (TmRecallQuery *, sqlite3_stmt *),
              GError **error)
{
  GError *failure = NULL;

  while (tm_book_step (query->book, statement, &failure))
    take (query, statement);
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

/* A list column has a line for each text, escaped as book-field.h says. */
static char *
make_needle (const char *tag)
{
  GString *needle = g_string_new ("\n");

  for (; *tag != '\0'; tag++)
    {
      if (*tag == '\\' || *tag == '\n')
        g_string_append (needle, *tag == '\n' ? "\\n" : "\\\\");
      else
        g_string_append_c (needle, *tag);
    }
  g_string_append_c (needle, '\n');
  return g_string_free (needle, FALSE);
}

static void
take_method (TmRecallQuery *query, sqlite3_stmt *statement)
{
  TmRecallVersion version = { g_strdup (tm_column_text (statement, 2)), NULL,
                              sqlite3_column_int64 (statement, 4), sqlite3_column_int (statement, 3) != 0 };

  add_version (query->methods, sqlite3_column_int64 (statement, 0), tm_column_text (statement, 1), &version);
}

#define USES "instr (char (10) || gauges, ?1) > 0"

static gboolean
find_methods (TmRecallQuery *query, GError **error)
{
  g_autofree char *needle = make_needle (query->tag);
  sqlite3_stmt *statement = tm_book_prepare (query->book,
                                             "SELECT job, key, changed_at, removed = 0 AND " USES
                                             ", seq FROM method WHERE (job, key) IN"
                                             " (SELECT job, key FROM method WHERE " USES ") ORDER BY seq",
                                             error);

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_text (statement, 1, needle, -1, SQLITE_TRANSIENT);
  return for_each_row (query, statement, take_method, error);
}

/* The gauge's own tag and the name of each method that ever used it, in any job. */
static GHashTable *
collect_names (const TmRecallQuery *query)
{
  GHashTable *names = g_hash_table_new (g_str_hash, g_str_equal);
  GHashTableIter iterator;
  gpointer key;

  g_hash_table_add (names, (gpointer)query->tag);
  g_hash_table_iter_init (&iterator, query->methods);
  while (g_hash_table_iter_next (&iterator, &key, NULL))
    g_hash_table_add (names, ((const TmRecallName *)key)->name);
  return names;
}

/* Whether @name of @job stood for the gauge at @at. */
static gboolean
stood_for (const TmRecallQuery *query, gint64 job, const char *name, const char *at)
{
  const GArray *versions = tm_recall_versions (query->methods, job, name);

  if (versions != NULL)
    return tm_recall_in_force (versions, at)->uses;
  return g_str_equal (name, query->tag);
}

static void
take_feature (TmRecallQuery *query, sqlite3_stmt *statement)
{
  gint64 job = sqlite3_column_int64 (statement, 0);
  const char *method = tm_column_text (statement, 3);
  TmRecallVersion version
      = { g_strdup (tm_column_text (statement, 2)), g_strdup (method), 0,
          g_str_equal (method, query->tag) || tm_recall_versions (query->methods, job, method) != NULL };

  add_version (query->features, job, tm_column_text (statement, 1), &version);
}

/* The features that were ever to be measured by one of @names: a reading need not name its method. */
static gboolean
find_features (TmRecallQuery *query, GHashTable *names, GError **error)
{
  g_autoptr (GString) sql = g_string_new (
      "SELECT job, key, changed_at, method FROM feature WHERE (job, key) IN (SELECT job, key FROM feature"
      " WHERE method IN (?");
  GHashTableIter iterator;
  gpointer name;
  sqlite3_stmt *statement;
  int index = 0;

  for (guint i = 1; i < g_hash_table_size (names); i++)
    g_string_append (sql, ", ?");
  g_string_append (sql, ")) ORDER BY seq");
  statement = tm_book_prepare (query->book, sql->str, error);
  if (statement == NULL)
    return FALSE;
  g_hash_table_iter_init (&iterator, names);
  while (g_hash_table_iter_next (&iterator, &name, NULL))
    sqlite3_bind_text (statement, ++index, name, -1, SQLITE_STATIC);
  return for_each_row (query, statement, take_feature, error);
}

/* --- readings and trials */

static void
add_spot (TmRecallQuery *query, gint64 job, const char *piece, const char *feature)
{
  GHashTable *spots = g_hash_table_lookup (query->jobs, &job);

  if (spots == NULL)
    {
      spots = tm_part_spots_new ();
      g_hash_table_insert (query->jobs, g_memdup2 (&job, sizeof job), spots);
    }
  tm_part_add_spot (spots, piece, feature);
}

static void
take_named (TmRecallQuery *query, sqlite3_stmt *statement)
{
  gint64 job = sqlite3_column_int64 (statement, 0);

  if (stood_for (query, job, tm_column_text (statement, 4), tm_column_text (statement, 3)))
    add_spot (query, job, tm_column_text (statement, 1), tm_column_text (statement, 2));
}

/* The method is that of the feature, at the time. */
static void
take_unnamed (TmRecallQuery *query, sqlite3_stmt *statement)
{
  gint64 job = sqlite3_column_int64 (statement, 0);
  const char *feature = tm_column_text (statement, 2);
  const char *at = tm_column_text (statement, 3);
  const GArray *versions = tm_recall_versions (query->features, job, feature);

  if (versions != NULL && stood_for (query, job, tm_recall_in_force (versions, at)->name, at))
    add_spot (query, job, tm_column_text (statement, 1), feature);
}

static void
take_trial (TmRecallQuery *query, sqlite3_stmt *statement)
{
  add_spot (query, sqlite3_column_int64 (statement, 0), tm_column_text (statement, 1),
            tm_column_text (statement, 2));
}

/* Two halves, so that each is found by the index on method and time.  A row without a time is taken in:
 * nobody can say that it is older. */
#define SINCE(table_, column_)                                                                       \
  "SELECT job, piece, feature, taken_at, " column_ " FROM " table_ " WHERE " column_                 \
  " = ?1 AND taken_at > ?2 UNION ALL SELECT job, piece, feature, taken_at, " column_ " FROM " table_ \
  " WHERE " column_ " = ?1 AND taken_at = '' AND ?2 <> ''"

static gboolean
find_rows (TmRecallQuery *query, const char *sql, const char *name,
           void (*take) (TmRecallQuery *, sqlite3_stmt *), GError **error)
{
  sqlite3_stmt *statement = tm_book_prepare (query->book, sql, error);

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_text (statement, 1, name, -1, SQLITE_STATIC);
  sqlite3_bind_text (statement, 2, query->after, -1, SQLITE_STATIC);
  return for_each_row (query, statement, take, error);
}

gboolean
tm_recall_find (TmRecallQuery *query, GError **error)
{
  static const char readings[] = SINCE ("reading", "method");
  g_autoptr (GHashTable) names = NULL;
  GHashTableIter iterator;
  gpointer name;

  if (!find_methods (query, error))
    return FALSE;
  names = collect_names (query);
  if (!find_features (query, names, error))
    return FALSE;
  g_hash_table_iter_init (&iterator, names);
  while (g_hash_table_iter_next (&iterator, &name, NULL))
    {
      if (!find_rows (query, readings, name, take_named, error))
        return FALSE;
    }
  return (g_hash_table_size (query->features) == 0 || find_rows (query, readings, "", take_unnamed, error))
         && find_rows (query, SINCE ("pin_trial", "gauge"), query->tag, take_trial, error);
}
