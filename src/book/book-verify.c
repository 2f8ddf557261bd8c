/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-verify: is the book what was recorded?
 *
 * One walk over the journal in order, with a cursor on the seals and one on each table, all in the
 * order of the sequence number: the chain is computed again, and each row is compared with its fact.
 *
 * What this cannot find: somebody who rewrites the journal, its hashes, the seals, SQLite's own
 * counter and the tables all to match, with a program, makes another whole book.  Against that
 * stands the head (tm_book_head()) written down elsewhere: in a report, a backup, a message.
 */

#include "book-fault.h"
#include "book-schema.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>
#include <string.h>

typedef struct {
  sqlite3_stmt *statement; /* NULL: at its end, or not readable */
  gboolean unreadable;
  gint64 seq;
} Cursor;

typedef struct {
  TmBook *book;
  TmFaults faults;
  Cursor rows[TM_N_BOOK_KINDS];
  Cursor seal;
  gint64 seal_n;
  TmChain chain;        /* of the journal row before */
  gint64 blamed;        /* journal row already said not to give its hash */
  gint64 last_job;      /* of the journal row before, for its name */
  TmBookKind last_kind; /* TM_N_BOOK_KINDS: not known */
  GString *last_payload;
  GString *text; /* payload of a table row */
  guint64 n;
} Verify;

static char *
name_row (gint64 seq)
{
  return g_strdup_printf (_ ("journal row %" PRId64), seq);
}

/* --- cursors */

static void
advance (Verify *verify, Cursor *cursor, GError **error)
{
  GError *failure = NULL;

  if (cursor->statement == NULL)
    return;
  if (tm_book_step (verify->book, cursor->statement, &failure))
    {
      cursor->seq = sqlite3_column_int64 (cursor->statement, 0);
      return;
    }
  cursor->statement = NULL;
  if (failure != NULL)
    g_propagate_error (error, failure);
}

static gboolean
open_cursors (Verify *verify, GError **error)
{
  GError *failure = NULL;

  for (guint kind = 0; kind < TM_N_BOOK_KINDS && failure == NULL; kind++)
    {
      g_autofree char *select = tm_kind_select_sql (kind);
      g_autofree char *sql = g_strconcat (select, " ORDER BY seq", NULL);

      verify->rows[kind].statement = tm_book_prepare (verify->book, sql, NULL);
      verify->rows[kind].unreadable = verify->rows[kind].statement == NULL;
      if (verify->rows[kind].unreadable)
        tm_faults_add (
            &verify->faults, "file", g_strdup (tm_kind_info (kind)->table),
            g_strdup_printf (_ ("the table cannot be read: %s"), sqlite3_errmsg (verify->book->db)));
      advance (verify, &verify->rows[kind], &failure);
    }
  verify->seal.statement = tm_book_prepare (verify->book, "SELECT seq, hash, n FROM seal ORDER BY n", NULL);
  if (failure == NULL)
    advance (verify, &verify->seal, &failure);
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

static void
close_cursors (Verify *verify)
{
  for (guint kind = 0; kind < TM_N_BOOK_KINDS; kind++)
    {
      if (verify->rows[kind].statement != NULL)
        sqlite3_reset (verify->rows[kind].statement);
    }
  if (verify->seal.statement != NULL)
    sqlite3_reset (verify->seal.statement);
}

/* --- a table row against its fact */

static void
read_table_row (Verify *verify, TmBookKind kind)
{
  tm_cells_from_row (&verify->book->cells, verify->rows[kind].statement);
  g_string_truncate (verify->text, 0);
  tm_cells_payload (&verify->book->cells, kind, verify->text);
}

static gboolean
report_inserted (Verify *verify, TmBookKind kind, GError **error)
{
  Cursor *cursor = &verify->rows[kind];
  GError *failure = NULL;

  read_table_row (verify, kind);
  tm_faults_add (
      &verify->faults, tm_kind_info (kind)->table,
      tm_faults_where (&verify->faults, sqlite3_column_int64 (cursor->statement, 1), kind, verify->text->str),
      g_strdup_printf (_ ("row %" PRId64 " is in the table but not in the journal: one was put in or the "
                          "other taken out behind the program's back"),
                       cursor->seq));
  advance (verify, cursor, &failure);
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

static void
compare_row (Verify *verify, TmBookKind kind, gint64 job, const char *payload)
{
  gint64 table_job = sqlite3_column_int64 (verify->rows[kind].statement, 1);

  read_table_row (verify, kind);
  if (table_job != job)
    tm_faults_add (
        &verify->faults, tm_kind_info (kind)->table, tm_faults_where (&verify->faults, job, kind, payload),
        g_strdup_printf (_ ("job is %" PRId64 " in the table, %" PRId64 " in the journal"), table_job, job));
  if (strcmp (verify->text->str, payload) != 0)
    tm_faults_add (&verify->faults, tm_kind_info (kind)->table,
                   tm_faults_where (&verify->faults, job, kind, payload),
                   tm_faults_difference (kind, verify->text->str, payload));
}

static gboolean
check_table (Verify *verify, TmBookKind kind, gint64 seq, gint64 job, const char *payload, GError **error)
{
  Cursor *cursor = &verify->rows[kind];
  GError *failure = NULL;

  while (cursor->statement != NULL && cursor->seq < seq)
    {
      if (!report_inserted (verify, kind, error))
        return FALSE;
    }
  if (cursor->statement == NULL || cursor->seq > seq)
    {
      if (!cursor->unreadable)
        tm_faults_add (
            &verify->faults, tm_kind_info (kind)->table,
            tm_faults_where (&verify->faults, job, kind, payload),
            g_strdup_printf (_ ("journal row %" PRId64 " has it, the table does not: it was deleted"), seq));
      return TRUE;
    }
  compare_row (verify, kind, job, payload);
  advance (verify, cursor, &failure);
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

/* --- the chain */

/* "part X, piece 001, feature 1, reading 12" of the journal row before. */
static char *
name_last (Verify *verify)
{
  if (verify->last_kind == TM_N_BOOK_KINDS)
    return name_row (verify->chain.seq);
  return tm_faults_where (&verify->faults, verify->last_job, verify->last_kind, verify->last_payload->str);
}

static void
check_link (Verify *verify, gint64 seq, const guint8 *prev)
{
  if (seq != verify->chain.seq + 1)
    {
      tm_faults_add (&verify->faults, "journal", name_row (verify->chain.seq + 1),
                     g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%" PRId64 " row is missing here",
                                                   "%" PRId64 " rows are missing here",
                                                   (gulong)(seq - verify->chain.seq - 1)),
                                      seq - verify->chain.seq - 1));
      return;
    }
  if (memcmp (prev, verify->chain.hash, TM_HASH_BYTES) == 0 || verify->blamed == verify->chain.seq)
    return;
  tm_faults_add (&verify->faults, "journal", verify->chain.seq > 0 ? name_last (verify) : name_row (seq),
                 g_strdup_printf (_ ("journal row %" PRId64 " does not give the hash that row %" PRId64
                                     " carries: one of them was changed"),
                                  verify->chain.seq, seq));
}

static gboolean
next_seal (Verify *verify, GError **error)
{
  GError *failure = NULL;
  gint64 n = sqlite3_column_int64 (verify->seal.statement, 2);

  if (n != verify->seal_n + 1)
    tm_faults_add (&verify->faults, "journal", g_strdup_printf (_ ("seal %" PRId64), verify->seal_n + 1),
                   g_strdup (_ ("it is missing: it was deleted")));
  verify->seal_n = n;
  advance (verify, &verify->seal, &failure);
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

/* The seals up to the newest journal row, whose hash is in the chain. */
static gboolean
check_seals (Verify *verify, GError **error)
{
  while (verify->seal.statement != NULL && verify->seal.seq <= verify->chain.seq)
    {
      gboolean right
          = sqlite3_column_bytes (verify->seal.statement, 1) == TM_HASH_BYTES
            && memcmp (sqlite3_column_blob (verify->seal.statement, 1), verify->chain.hash, TM_HASH_BYTES)
                   == 0;

      if (verify->seal.seq == verify->chain.seq && !right)
        {
          verify->blamed = verify->chain.seq;
          tm_faults_add (&verify->faults, "journal", name_last (verify),
                         g_strdup_printf (_ ("journal row %" PRId64
                                             " does not give the hash that was sealed: it was changed"),
                                          verify->chain.seq));
        }
      if (!next_seal (verify, error))
        return FALSE;
    }
  return TRUE;
}

static TmBookKind
find_kind (const char *word)
{
  guint kind = 0;

  while (kind < TM_N_BOOK_KINDS && strcmp (tm_kind_info (kind)->table, word) != 0)
    kind++;
  return kind;
}

static gboolean
check_fact (Verify *verify, sqlite3_stmt *journal, GError **error)
{
  static const guint8 no_hash[TM_HASH_BYTES];
  gint64 seq = sqlite3_column_int64 (journal, 0);
  gint64 job = sqlite3_column_int64 (journal, 1);
  const char *word = tm_column_text (journal, 2);
  const char *payload = tm_column_text (journal, 3);
  gsize length = (gsize)sqlite3_column_bytes (journal, 3);
  gboolean whole = sqlite3_column_bytes (journal, 4) == TM_HASH_BYTES;
  const guint8 *prev = whole ? sqlite3_column_blob (journal, 4) : no_hash;
  TmBookKind kind = find_kind (word);

  check_link (verify, seq, prev);
  tm_hash_fact (prev, seq, job, word, payload, length, verify->chain.hash);
  verify->chain.seq = seq;
  verify->last_job = job;
  verify->last_kind = kind;
  g_string_assign (verify->last_payload, payload);
  if (!check_seals (verify, error))
    return FALSE;
  if (kind < TM_N_BOOK_KINDS)
    return check_table (verify, kind, seq, job, payload, error);
  tm_faults_add (&verify->faults, "journal", name_row (seq),
                 g_strdup_printf (_ ("“%s” is no kind of fact: it was changed"), word));
  return TRUE;
}

static gboolean
walk_journal (Verify *verify, TmBookProgress progress, gpointer data, GError **error)
{
  sqlite3_stmt *journal = tm_book_prepare (
      verify->book,
      "SELECT seq, job, kind, payload, prev, (SELECT count (*) FROM journal) FROM journal ORDER BY seq",
      error);
  GError *failure = NULL;

  if (journal == NULL)
    return FALSE;
  while (tm_book_step (verify->book, journal, &failure))
    {
      guint64 total = (guint64)sqlite3_column_int64 (journal, 5);

      if (check_fact (verify, journal, &failure)
          && tm_book_tick (verify->book, progress, data, ++verify->n, total, &failure))
        continue;
      sqlite3_reset (journal);
      break;
    }
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

/* --- what is left when the journal is at its end */

/* How many seals SQLite's own counter remembers. */
static gint64
count_seals (Verify *verify)
{
  sqlite3_stmt *statement
      = tm_book_prepare (verify->book, "SELECT seq FROM sqlite_sequence WHERE name = 'seal'", NULL);
  gint64 count = 0;

  if (statement == NULL || !tm_book_ask (verify->book, statement, 0, &count, NULL))
    return 0;
  return count;
}

static gboolean
check_tail (Verify *verify, GError **error)
{
  gint64 sealed = verify->seal.statement != NULL ? verify->seal.seq : 0;
  gint64 remembered;

  while (verify->seal.statement != NULL)
    {
      sealed = MAX (sealed, verify->seal.seq);
      if (!next_seal (verify, error))
        return FALSE;
    }
  if (sealed > verify->chain.seq)
    tm_faults_add (&verify->faults, "journal", name_row (verify->chain.seq + 1),
                   g_strdup_printf (_ ("the end is cut off: facts sealed: %" PRId64 ", facts left: %" PRId64),
                                    sealed, verify->chain.seq));
  remembered = count_seals (verify);
  if (remembered > verify->seal_n)
    tm_faults_add (
        &verify->faults, "journal", g_strdup_printf (_ ("seal %" PRId64), verify->seal_n + 1),
        g_strdup_printf (_ ("the end is cut off: transactions counted: %" PRId64 ", transactions left: "
                            "%" PRId64),
                         remembered, verify->seal_n));
  return TRUE;
}

/* Every transaction ends with a seal: rows after the last one came another way. */
static gboolean
check_sealed (Verify *verify, GError **error)
{
  sqlite3_stmt *statement = tm_book_prepare (verify->book, "SELECT coalesce (max (seq), 0) FROM seal", error);
  gint64 sealed = 0;

  if (statement == NULL || !tm_book_ask (verify->book, statement, 0, &sealed, error))
    return FALSE;
  if (sealed < verify->chain.seq)
    tm_faults_add (&verify->faults, "journal", name_last (verify),
                   g_strdup_printf (_ ("journal rows after %" PRId64
                                       " have no seal: they were put in behind the program's back"),
                                    sealed));
  return TRUE;
}

static gboolean
drain_tables (Verify *verify, GError **error)
{
  for (guint kind = 0; kind < TM_N_BOOK_KINDS; kind++)
    {
      while (verify->rows[kind].statement != NULL)
        {
          if (!report_inserted (verify, kind, error))
            return FALSE;
        }
    }
  return TRUE;
}

/* --- the file and its schema */

/* SQLite tells of a page that it had no memory for among the damage, but that says nothing about the book. */
static gboolean
is_memory_short (const char *text)
{
  static const char mark[] = "error code=";
  const char *code = strstr (text, mark);

  return code != NULL && (g_ascii_strtoull (code + strlen (mark), NULL, 10) & 0xff) == SQLITE_NOMEM;
}

/* One line of what SQLite tells in several, without its heading. */
static char *
join_lines (const char *text)
{
  static const char heading[] = "*** in database main ***\n";
  g_auto (GStrv) lines
      = g_strsplit (g_str_has_prefix (text, heading) ? text + strlen (heading) : text, "\n", -1);

  return g_strjoinv ("; ", lines);
}

static gboolean
check_pages (Verify *verify, GError **error)
{
  sqlite3_stmt *statement = tm_book_prepare (verify->book, "PRAGMA integrity_check (20)", error);
  GError *failure = NULL;

  if (statement == NULL)
    return FALSE;
  while (tm_book_step (verify->book, statement, &failure))
    {
      const char *text = tm_column_text (statement, 0);

      if (is_memory_short (text))
        {
          tm_book_fail_at (verify->book->path, NULL, SQLITE_NOMEM, error);
          sqlite3_reset (statement);
          return FALSE;
        }
      if (!g_str_equal (text, "ok"))
        tm_faults_add (&verify->faults, "file", g_strdup (verify->book->path), join_lines (text));
    }
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

/* The name and text of every table, index, trigger and view. */
static GHashTable *
read_schema (sqlite3 *db)
{
  g_autoptr (GHashTable) schema = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  sqlite3_stmt *statement = NULL;

  if (sqlite3_prepare_v2 (db,
                          "SELECT type || ' ' || name, coalesce (sql, '') FROM sqlite_schema"
                          " WHERE name NOT LIKE 'sqlite\\_%' ESCAPE '\\'",
                          -1, &statement, NULL)
      != SQLITE_OK)
    return g_steal_pointer (&schema);
  while (sqlite3_step (statement) == SQLITE_ROW)
    g_hash_table_insert (schema, g_strdup (tm_column_text (statement, 0)),
                         g_strdup (tm_column_text (statement, 1)));
  sqlite3_finalize (statement);
  return g_steal_pointer (&schema);
}

static void
compare_schemas (Verify *verify, GHashTable *wanted, GHashTable *found)
{
  GHashTableIter iterator;
  gpointer name;
  gpointer text;

  g_hash_table_iter_init (&iterator, wanted);
  while (g_hash_table_iter_next (&iterator, &name, &text))
    {
      const char *other = g_hash_table_lookup (found, name);

      if (other == NULL)
        tm_faults_add (&verify->faults, "schema", g_strdup (name),
                       g_strdup (_ ("it is missing: it was removed")));
      else if (strcmp (other, text) != 0)
        tm_faults_add (&verify->faults, "schema", g_strdup (name), g_strdup (_ ("it was changed")));
    }
  g_hash_table_iter_init (&iterator, found);
  while (g_hash_table_iter_next (&iterator, &name, &text))
    {
      if (!g_hash_table_contains (wanted, name))
        tm_faults_add (&verify->faults, "schema", g_strdup (name), g_strdup (_ ("it is not part of a book")));
    }
}

static GHashTable *
make_schema (GError **error)
{
  GHashTable *schema = NULL;
  sqlite3 *empty = NULL;
  int rc = sqlite3_open_v2 (":memory:", &empty,
                            SQLITE_OPEN_READWRITE | SQLITE_OPEN_MEMORY | SQLITE_OPEN_NOMUTEX, NULL);

  if (rc != SQLITE_OK)
    tm_book_fail_at (":memory:", empty, rc, error);
  else if (tm_schema_migrate (empty, ":memory:", &tm_schema, TRUE, error))
    schema = read_schema (empty);
  sqlite3_close (empty);
  return schema;
}

/* The schema of a new, empty book; made once, since it never changes while we run. */
static GHashTable *
take_schema (GError **error)
{
  static GMutex lock;
  static GHashTable *made;
  GHashTable *schema;

  g_mutex_lock (&lock);
  if (made == NULL)
    made = make_schema (error);
  schema = made;
  g_mutex_unlock (&lock);
  return schema;
}

/* Against a new book: a trigger that is gone means that the record was open to change. */
static gboolean
check_schema (Verify *verify, GError **error)
{
  g_autoptr (GHashTable) found = read_schema (verify->book->db);
  GHashTable *wanted = take_schema (error);

  if (wanted != NULL)
    compare_schemas (verify, wanted, found);
  return wanted != NULL;
}

static gboolean
verify_all (Verify *verify, TmBookProgress progress, gpointer data, GError **error)
{
  return check_pages (verify, error) && check_schema (verify, error)
         && tm_book_check_contents (verify->book, &verify->faults, error) && open_cursors (verify, error)
         && walk_journal (verify, progress, data, error) && check_tail (verify, error)
         && check_sealed (verify, error) && drain_tables (verify, error);
}

/* A file that SQLite itself calls damaged is an answer, not a failure to find one. */
static gboolean
take_damage (Verify *verify, GError **failure)
{
  if (!g_error_matches (*failure, TM_BOOK_ERROR, TM_BOOK_ERROR_DAMAGED))
    return FALSE;
  tm_faults_add (&verify->faults, "file", g_strdup (verify->book->path), g_strdup ((*failure)->message));
  g_clear_error (failure);
  return TRUE;
}

GPtrArray *
tm_book_verify_progress (TmBook *book, guint64 *n_checked, TmBookProgress progress, gpointer data,
                         GError **error)
{
  Verify verify = { .book = book, .last_kind = TM_N_BOOK_KINDS };
  g_autoptr (GPtrArray) list = NULL;
  GError *failure = NULL;

  tm_faults_init (&verify.faults, book);
  verify.last_payload = g_string_new (NULL);
  verify.text = g_string_new (NULL);
  if (tm_book_exec (book, "BEGIN", &failure))
    {
      if (!verify_all (&verify, progress, data, &failure) && failure != NULL)
        take_damage (&verify, &failure);
      close_cursors (&verify);
      tm_book_rollback (book);
    }
  g_string_free (verify.last_payload, TRUE);
  g_string_free (verify.text, TRUE);
  list = tm_faults_finish (&verify.faults);
  if (n_checked != NULL)
    *n_checked = verify.n;
  if (failure == NULL)
    return g_steal_pointer (&list);
  g_propagate_error (error, failure);
  return NULL;
}

GPtrArray *
tm_book_verify (TmBook *book, guint64 *n_checked, GError **error)
{
  g_return_val_if_fail (book != NULL, NULL);

  return tm_book_verify_progress (book, n_checked, NULL, NULL, error);
}

char *
tm_book_head (TmBook *book, guint64 *n_facts, GError **error)
{
  sqlite3_stmt *statement;
  GError *failure = NULL;
  char *hex = NULL;

  g_return_val_if_fail (book != NULL, NULL);

  statement = tm_book_prepare (book, "SELECT seq, hash FROM seal ORDER BY n DESC LIMIT 1", error);
  if (statement == NULL)
    return NULL;
  if (n_facts != NULL)
    *n_facts = 0;
  if (tm_book_step (book, statement, &failure))
    {
      if (n_facts != NULL)
        *n_facts = (guint64)sqlite3_column_int64 (statement, 0);
      if (sqlite3_column_bytes (statement, 1) == TM_HASH_BYTES)
        hex = tm_hash_to_hex (sqlite3_column_blob (statement, 1));
      sqlite3_reset (statement);
    }
  if (failure == NULL)
    return hex != NULL ? hex : g_strdup ("");
  g_propagate_error (error, failure);
  return NULL;
}
