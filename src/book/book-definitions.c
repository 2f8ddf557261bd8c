/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-definitions: what changed in a job's definitions, as new versions of their rows.
 *
 * The wanted state is compared with the newest versions, content against content; what is the same
 * writes nothing.  A row that is gone gets a last version that says "removed".
 */

#include "book-private.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

/* The newest version of a row in the book. */
typedef struct {
  char *key;
  gint64 rank;
  char *content;
  gboolean matched;
} Present;

/* A row as it shall be. */
typedef struct {
  gconstpointer row;
  char *key;
  char *content;
  Present *present; /* NULL: new */
} Wanted;

typedef struct {
  TmBook *book;
  gint64 number;
  TmVersion version; /* who and when, for every row written */
  TmBookKind kind;
  GPtrArray *present;
  GPtrArray *wanted;
} Save;

static void
free_present (gpointer data)
{
  Present *present = data;

  g_free (present->key);
  g_free (present->content);
  g_free (present);
}

static void
free_wanted (gpointer data)
{
  Wanted *wanted = data;

  g_free (wanted->key);
  g_free (wanted->content);
  g_free (wanted);
}

/* NULL for rows that have no name of their own. */
static const char *
find_name (TmBookKind kind, gconstpointer row)
{
  switch ((guint)kind)
    {
    case TM_BOOK_PERSON:
      return ((const TmPerson *)row)->initials;
    case TM_BOOK_GAUGE:
      return ((const TmGauge *)row)->tag;
    case TM_BOOK_METHOD:
      return ((const TmMethod *)row)->name;
    case TM_BOOK_FEATURE:
      return ((const TmFeature *)row)->balloon;
    case TM_BOOK_PIECE:
      return ((const TmPiece *)row)->serial;
    case TM_BOOK_TOOL:
      return ((const TmTool *)row)->name;
    case TM_BOOK_MATERIAL:
      return ((const TmShopMaterial *)row)->name;
    case TM_BOOK_STUDY:
      return ((const TmStudy *)row)->name;
    case TM_BOOK_DRAWING:
      return ((const TmDrawing *)row)->name;
    default:
      return NULL;
    }
}

static gboolean
is_nameless (TmBookKind kind)
{
  switch ((guint)kind)
    {
    case TM_BOOK_PERSON:
    case TM_BOOK_GAUGE:
    case TM_BOOK_METHOD:
    case TM_BOOK_FEATURE:
    case TM_BOOK_PIECE:
    case TM_BOOK_TOOL:
    case TM_BOOK_MATERIAL:
    case TM_BOOK_STUDY:
    case TM_BOOK_DRAWING:
      return FALSE;
    default:
      return TRUE;
    }
}

char *
tm_book_key (TmBookKind kind, gconstpointer row, guint number)
{
  const char *name = find_name (kind, row);

  return name != NULL ? g_strdup (name) : g_strdup_printf ("%u", number);
}

static gboolean
read_present (Save *save, GError **error)
{
  sqlite3_stmt *statement = tm_book_select_kind (save->book, save->kind, save->number, error);
  g_autoptr (GString) content = g_string_new (NULL);
  GError *failure = NULL;

  if (statement == NULL)
    return FALSE;
  while (tm_book_step (save->book, statement, &failure))
    {
      Present *present = g_new0 (Present, 1);

      tm_cells_from_row (&save->book->cells, statement);
      g_string_truncate (content, 0);
      tm_cells_content (&save->book->cells, save->kind, content);
      present->key = g_strdup (tm_column_text (statement, 2));
      present->rank = sqlite3_column_int64 (statement, 3);
      present->content = g_strndup (content->str, content->len);
      g_ptr_array_add (save->present, present);
    }
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

static void
read_wanted (Save *save, const TmJob *job)
{
  const GPtrArray *list = G_STRUCT_MEMBER (GPtrArray *, job, tm_kind_info (save->kind)->list);
  g_autoptr (GString) content = g_string_new (NULL);

  for (guint i = 0; i < list->len; i++)
    {
      Wanted *wanted = g_new0 (Wanted, 1);

      wanted->row = g_ptr_array_index (list, i);
      wanted->key = g_strdup (find_name (save->kind, wanted->row));
      tm_book_write_content (&save->book->cells, save->kind, wanted->row, content);
      wanted->content = g_strndup (content->str, content->len);
      g_ptr_array_add (save->wanted, wanted);
    }
}

static void
match (Wanted *wanted, Present *present)
{
  wanted->present = present;
  present->matched = TRUE;
  if (wanted->key == NULL)
    wanted->key = g_strdup (present->key);
}

/* Pairs rows by the text that @name gives; of equal ones the first with the first. */
static void
match_by (Save *save, const char *(*name_present) (const Present *),
          const char *(*name_wanted) (const Wanted *))
{
  g_autoptr (GHashTable) queues
      = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, (GDestroyNotify)g_queue_free);

  for (guint i = 0; i < save->present->len; i++)
    {
      Present *present = g_ptr_array_index (save->present, i);
      GQueue *queue = g_hash_table_lookup (queues, name_present (present));

      if (present->matched)
        continue;
      if (queue == NULL)
        g_hash_table_insert (queues, (gpointer)name_present (present), queue = g_queue_new ());
      g_queue_push_tail (queue, present);
    }
  for (guint i = 0; i < save->wanted->len; i++)
    {
      Wanted *wanted = g_ptr_array_index (save->wanted, i);
      GQueue *queue = wanted->present == NULL ? g_hash_table_lookup (queues, name_wanted (wanted)) : NULL;

      if (queue != NULL && !g_queue_is_empty (queue))
        match (wanted, g_queue_pop_head (queue));
    }
}

static const char *
present_key (const Present *present)
{
  return present->key;
}

static const char *
wanted_key (const Wanted *wanted)
{
  return wanted->key;
}

static const char *
present_content (const Present *present)
{
  return present->content;
}

static const char *
wanted_content (const Wanted *wanted)
{
  return wanted->content;
}

/* Rows that have no name of their own are the same when their content is.  Of what is left, old
 * and new are paired in order: that is a row that was edited. */
static void
match_nameless (Save *save)
{
  guint next = 0;

  match_by (save, present_content, wanted_content);
  for (guint i = 0; i < save->wanted->len; i++)
    {
      Wanted *wanted = g_ptr_array_index (save->wanted, i);

      if (wanted->present != NULL)
        continue;
      while (next < save->present->len && ((Present *)g_ptr_array_index (save->present, next))->matched)
        next++;
      if (next < save->present->len)
        match (wanted, g_ptr_array_index (save->present, next));
    }
}

static gboolean
number_new (Save *save, GError **error)
{
  g_autofree char *sql = g_strdup_printf ("SELECT max (CAST (key AS INTEGER)) FROM %s WHERE job = ?",
                                          tm_kind_info (save->kind)->table);
  sqlite3_stmt *statement = tm_book_prepare (save->book, sql, error);
  gint64 last = 0;

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, save->number);
  if (!tm_book_ask (save->book, statement, 0, &last, error))
    return FALSE;
  for (guint i = 0; i < save->wanted->len; i++)
    {
      Wanted *wanted = g_ptr_array_index (save->wanted, i);

      if (wanted->key == NULL)
        wanted->key = g_strdup_printf ("%" PRId64, ++last);
    }
  return TRUE;
}

/* --- what the record hangs on must stay */

/* The texts in the first column of @sql, which is bound to the job as often as it asks. */
static GHashTable *
read_names (Save *save, const char *sql, GError **error)
{
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  sqlite3_stmt *statement = tm_book_prepare (save->book, sql, error);
  GError *failure = NULL;

  if (statement == NULL)
    return NULL;
  for (int i = 1; i <= sqlite3_bind_parameter_count (statement); i++)
    sqlite3_bind_int64 (statement, i, save->number);
  while (tm_book_step (save->book, statement, &failure))
    g_hash_table_add (names, g_strdup (tm_column_text (statement, 0)));
  if (failure == NULL)
    return g_steal_pointer (&names);
  g_propagate_error (error, failure);
  return NULL;
}

static const char *
use_sql (TmBookKind kind)
{
  switch ((guint)kind)
    {
    case TM_BOOK_PIECE:
      return "SELECT piece FROM reading WHERE job = ? UNION SELECT piece FROM pin_trial WHERE job = ?"
             " UNION SELECT piece FROM cut WHERE job = ?";
    case TM_BOOK_FEATURE:
      return "SELECT feature FROM reading WHERE job = ? UNION SELECT feature FROM pin_trial WHERE job = ?"
             " UNION SELECT feature FROM cut WHERE job = ?";
    case TM_BOOK_GAUGE:
    case TM_BOOK_METHOD:
      return "SELECT method FROM reading WHERE job = ? UNION SELECT gauge FROM pin_trial WHERE job = ?";
    case TM_BOOK_TOOL:
      return "SELECT tool FROM cut WHERE job = ?";
    default:
      return NULL;
    }
}

static gboolean
refuse_removal (Save *save, const char *key, GError **error)
{
  g_autofree char *name = tm_kind_name (save->kind, key);

  g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED,
               _ ("%s cannot be removed from “%s”: the record names it; keep it in the list"), name,
               save->book->path);
  return FALSE;
}

static gboolean
check_removals (Save *save, GError **error)
{
  g_autoptr (GHashTable) used = NULL;

  for (guint i = 0; i < save->present->len; i++)
    {
      const Present *present = g_ptr_array_index (save->present, i);

      if (present->matched)
        continue;
      if (save->kind == TM_BOOK_SIGNATURE)
        return refuse_removal (save, present->key, error);
      if (use_sql (save->kind) == NULL)
        return TRUE;
      if (used == NULL)
        used = read_names (save, use_sql (save->kind), error);
      if (used == NULL)
        return FALSE;
      if (g_hash_table_contains (used, present->key))
        return refuse_removal (save, present->key, error);
    }
  return TRUE;
}

/* Signatures are added and never edited. */
static gboolean
check_signatures (Save *save, GError **error)
{
  for (guint i = 0; i < save->wanted->len; i++)
    {
      const Wanted *wanted = g_ptr_array_index (save->wanted, i);

      if (wanted->present != NULL && !g_str_equal (wanted->present->content, wanted->content))
        return refuse_removal (save, wanted->present->key, error);
    }
  return TRUE;
}

static gboolean
ask_highest_place (Save *save, const char *balloon, gint64 *place, GError **error)
{
  sqlite3_stmt *statement = tm_book_prepare (
      save->book,
      "SELECT max (coalesce ((SELECT max (place) FROM reading WHERE job = ?1 AND feature = ?2), 0),"
      " coalesce ((SELECT max (place) FROM pin_trial WHERE job = ?1 AND feature = ?2), 0),"
      " coalesce ((SELECT max (place) FROM cut WHERE job = ?1 AND feature = ?2), 0))",
      error);

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, save->number);
  tm_bind_text (statement, 2, balloon);
  return tm_book_ask (save->book, statement, 0, place, error);
}

/* The number of places in a feature's content. */
static guint64
places_in (const char *content)
{
  const char *found = g_strstr_len (content, -1, "\nplaces=");

  return found != NULL ? g_ascii_strtoull (found + strlen ("\nplaces="), NULL, 10) : 0;
}

/* A feature keeps the places at which it was read. */
static gboolean
check_places (Save *save, GError **error)
{
  for (guint i = 0; i < save->wanted->len; i++)
    {
      const Wanted *wanted = g_ptr_array_index (save->wanted, i);
      const TmFeature *feature = wanted->row;
      gint64 highest = 0;

      if (wanted->present == NULL || feature->places >= places_in (wanted->present->content))
        continue;
      if (!ask_highest_place (save, feature->balloon, &highest, error))
        return FALSE;
      if (highest <= (gint64)feature->places)
        continue;
      g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED,
                   _ ("feature %s in “%s” cannot have so few places (%u): place %" PRId64
                      " was read; give it that many"),
                   feature->balloon, save->book->path, feature->places, highest);
      return FALSE;
    }
  return TRUE;
}

static gboolean
check_kind (Save *save, GError **error)
{
  if (save->kind == TM_BOOK_SIGNATURE && !check_signatures (save, error))
    return FALSE;
  if (save->kind == TM_BOOK_FEATURE && !check_places (save, error))
    return FALSE;
  return check_removals (save, error);
}

/* --- writing */

static gboolean
write_removals (Save *save, GError **error)
{
  for (guint i = 0; i < save->present->len; i++)
    {
      const Present *present = g_ptr_array_index (save->present, i);
      TmVersion version = { present->key, present->rank, TRUE, save->version.by, save->version.at };
      gpointer blank;
      gboolean done;

      if (present->matched)
        continue;
      blank = tm_book_new_row (save->kind);
      done = tm_book_append (save->book, save->kind, save->number, &version, blank, error) > 0;
      tm_book_free_row (save->kind, blank);
      if (!done)
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_versions (Save *save, GError **error)
{
  g_autofree gint64 *ranks = g_new (gint64, save->wanted->len + 1);

  for (guint i = 0; i < save->wanted->len; i++)
    {
      const Wanted *wanted = g_ptr_array_index (save->wanted, i);

      ranks[i] = wanted->present != NULL ? wanted->present->rank : 0;
    }
  tm_rank_assign (ranks, save->wanted->len);
  for (guint i = 0; i < save->wanted->len; i++)
    {
      const Wanted *wanted = g_ptr_array_index (save->wanted, i);
      TmVersion version = { wanted->key, ranks[i], FALSE, save->version.by, save->version.at };

      if (wanted->present != NULL && wanted->present->rank == ranks[i]
          && g_str_equal (wanted->present->content, wanted->content))
        continue;
      if (tm_book_append (save->book, save->kind, save->number, &version, wanted->row, error) == 0)
        return FALSE;
    }
  return TRUE;
}

static gboolean
save_kind (Save *save, TmBookKind kind, const TmJob *job, GError **error)
{
  save->kind = kind;
  g_ptr_array_set_size (save->present, 0);
  g_ptr_array_set_size (save->wanted, 0);
  if (!read_present (save, error))
    return FALSE;
  read_wanted (save, job);
  if (is_nameless (kind))
    {
      match_nameless (save);
      if (!number_new (save, error))
        return FALSE;
    }
  else
    match_by (save, present_key, wanted_key);
  return check_kind (save, error) && write_removals (save, error) && write_versions (save, error);
}

static gboolean
save_facts (Save *save, const TmJob *job, GError **error)
{
  g_autoptr (GString) content = g_string_new (NULL);
  TmVersion version = { "", 0, FALSE, save->version.by, save->version.at };

  save->kind = TM_BOOK_FACTS;
  if (!read_present (save, error))
    return FALSE;
  tm_book_write_content (&save->book->cells, TM_BOOK_FACTS, job, content);
  if (save->present->len > 0
      && g_str_equal (((Present *)g_ptr_array_index (save->present, 0))->content, content->str))
    return TRUE;
  return tm_book_append (save->book, TM_BOOK_FACTS, save->number, &version, job, error) > 0;
}

static gboolean
save_all (Save *save, const TmJob *job, GError **error)
{
  save->number = tm_book_job_number (save->book, job->id, error);
  if (save->number == 0 || !save_facts (save, job, error))
    return FALSE;
  for (TmBookKind kind = TM_BOOK_FIRST_LIST; kind <= TM_BOOK_LAST_LIST; kind++)
    {
      if (!save_kind (save, kind, job, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
tm_book_save_list (TmBook *book, gint64 number, TmBookKind kind, const TmJob *job, const char *by,
                   const char *at, GError **error)
{
  g_autoptr (GPtrArray) present = g_ptr_array_new_with_free_func (free_present);
  g_autoptr (GPtrArray) wanted = g_ptr_array_new_with_free_func (free_wanted);
  Save save = { .book = book, .number = number, .present = present, .wanted = wanted };

  save.version.by = by;
  save.version.at = at;
  return save_kind (&save, kind, job, error);
}

gboolean
tm_book_save_definitions (TmBook *book, const TmJob *job, const char *by, const char *at, GError **error)
{
  g_autoptr (GPtrArray) present = g_ptr_array_new_with_free_func (free_present);
  g_autoptr (GPtrArray) wanted = g_ptr_array_new_with_free_func (free_wanted);
  Save save = { .book = book, .present = present, .wanted = wanted };

  g_return_val_if_fail (book != NULL && job != NULL, FALSE);

  save.version.by = by != NULL ? by : "";
  save.version.at = at != NULL ? at : "";
  if (!tm_book_begin (book, error))
    return FALSE;
  return tm_book_end (book, save_all (&save, job, error), error);
}
