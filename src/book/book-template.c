/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-template: the shop's report template, version by version.
 *
 * It belongs to no job: its facts stand in the journal under job 0, in one transaction each time.
 */

#include "book-private.h"

#include <glib/gi18n-lib.h>

/* -------- Writing -------- */

static char *
list_hidden (const TmTemplate *template)
{
  GString *words = g_string_new (NULL);

  for (guint i = 0; i < TM_N_TEMPLATE_COLUMNS; i++)
    if (!tm_template_shows (template, i))
      g_string_append_printf (words, "%s%s", words->len > 0 ? "\n" : "", tm_template_column_word (i));
  return g_string_free (words, FALSE);
}

static gboolean
append_fields (TmBook *book, gint64 number, const TmTemplate *template, GError **error)
{
  for (guint i = 0; i < template->fields->len; i++)
    {
      const TmTemplateField *field = g_ptr_array_index (template->fields, i);
      const TmBookTemplateField row = { number, field->name, field->required };

      if (tm_book_append (book, TM_BOOK_TEMPLATE_FIELD, 0, NULL, &row, error) == 0)
        return FALSE;
    }
  return TRUE;
}

static gboolean
append_texts (TmBook *book, gint64 number, const TmTemplate *template, GError **error)
{
  for (guint i = 0; i < template->statements->len; i++)
    {
      const TmTemplateStatement *statement = g_ptr_array_index (template->statements, i);

      for (guint j = 0; j < statement->texts->len; j++)
        {
          const TmStatementText *text = g_ptr_array_index (statement->texts, j);
          const TmBookTemplateText row = { number, i + 1, statement->place, text->language, text->text };

          if (tm_book_append (book, TM_BOOK_TEMPLATE_TEXT, 0, NULL, &row, error) == 0)
            return FALSE;
        }
    }
  return TRUE;
}

/* Inside a transaction. */
static gboolean
append_template (TmBook *book, const TmTemplate *template, const char *by, const char *at, GError **error)
{
  g_autofree char *hidden = list_hidden (template);
  g_autofree char *accent = template->has_accent ? tm_colour_format (template->accent) : g_strdup ("");
  g_autofree char *ground = template->has_ground ? tm_colour_format (template->ground) : g_strdup ("");
  const TmBookTemplate row = { .by = by,
                               .at = at,
                               .name = template->name,
                               .address = template->address,
                               .accent = accent,
                               .hidden = hidden,
                               .logo = template->logo_digest,
                               .logo_media = template->logo_media,
                               .ground = ground };
  gint64 number;

  if (template->logo != NULL && !tm_book_keep_logo (book, template->logo_digest, template->logo, error))
    return FALSE;
  number = tm_book_append (book, TM_BOOK_TEMPLATE, 0, NULL, &row, error);
  return number > 0 && append_fields (book, number, template, error)
         && append_texts (book, number, template, error);
}

/* -------- Reading -------- */

/* The texts of a row live in @scratch's job until they are copied. */
typedef struct {
  TmBook *book;
  TmJob *scratch;
  TmTemplate *template;
} Loading;

static gboolean
refuse (Loading *loading, TmBookKind kind, const char *what, GError **error)
{
  g_set_error (
      error, TM_BOOK_ERROR, TM_BOOK_ERROR_DAMAGED,
      _ ("“%s” is damaged: table %s: %s means nothing; verify the book, and go on with the newest backup"),
      loading->book->path, tm_kind_info (kind)->table, what);
  return FALSE;
}

static gboolean
read_row (Loading *loading, TmBookKind kind, sqlite3_stmt *statement, gpointer row, GError **error)
{
  TmReader reader = { .job = loading->scratch };
  const char *wrong;

  tm_cells_from_row (&loading->book->cells, statement);
  wrong = tm_cells_to_struct (&loading->book->cells, kind, &reader, NULL, row);
  return wrong == NULL || refuse (loading, kind, wrong, error);
}

static gboolean
take_hidden (Loading *loading, const char *hidden, GError **error)
{
  g_auto (GStrv) words = g_strsplit (hidden, "\n", -1);

  for (guint i = 0; words[i] != NULL; i++)
    {
      const TmTemplateColumn column = tm_template_column_find (words[i]);

      if (column == TM_N_TEMPLATE_COLUMNS)
        return refuse (loading, TM_BOOK_TEMPLATE, "hidden", error);
      loading->template->hidden |= 1u << column;
    }
  return TRUE;
}

static gboolean
take_logo (Loading *loading, const TmBookTemplate *row, GError **error)
{
  g_autoptr (GBytes) logo = NULL;

  if (*row->logo == '\0')
    return TRUE;
  logo = tm_book_read_logo (loading->book, row->logo, error);
  if (logo == NULL)
    return FALSE;
  tm_template_set_logo (loading->template, logo, row->logo_media);
  return g_str_equal (loading->template->logo_digest, row->logo)
         || refuse (loading, TM_BOOK_TEMPLATE, "logo", error);
}

static gboolean
take_colours (Loading *loading, const TmBookTemplate *row, GError **error)
{
  TmTemplate *template = loading->template;

  template->has_accent = *row->accent != '\0';
  if (template->has_accent && !tm_colour_read (row->accent, &template->accent))
    return refuse (loading, TM_BOOK_TEMPLATE, "accent", error);
  template->has_ground = *row->ground != '\0';
  return !template->has_ground || tm_colour_read (row->ground, &template->ground)
         || refuse (loading, TM_BOOK_TEMPLATE, "ground", error);
}

static gboolean
take_template (Loading *loading, sqlite3_stmt *statement, GError **error)
{
  TmTemplate *template = loading->template;
  TmBookTemplate row = { 0 };

  if (!read_row (loading, TM_BOOK_TEMPLATE, statement, &row, error))
    return FALSE;
  tm_template_set_text (&template->name, row.name);
  tm_template_set_text (&template->address, row.address);
  return take_colours (loading, &row, error)
         && (*row.hidden == '\0' || take_hidden (loading, row.hidden, error))
         && take_logo (loading, &row, error);
}

static gboolean
take_field (Loading *loading, sqlite3_stmt *statement, GError **error)
{
  TmBookTemplateField row = { 0 };

  if (!read_row (loading, TM_BOOK_TEMPLATE_FIELD, statement, &row, error))
    return FALSE;
  tm_template_add_field (loading->template, row.name, row.required);
  return TRUE;
}

/* The texts of one statement stand one after the other. */
static gboolean
take_text (Loading *loading, sqlite3_stmt *statement, GError **error)
{
  GPtrArray *statements = loading->template->statements;
  TmBookTemplateText row = { 0 };
  TmTemplateStatement *into;

  if (!read_row (loading, TM_BOOK_TEMPLATE_TEXT, statement, &row, error))
    return FALSE;
  if (row.statement == statements->len + 1)
    into = tm_template_add_statement (loading->template, row.place);
  else if (row.statement == statements->len && row.statement > 0)
    into = g_ptr_array_index (statements, row.statement - 1);
  else
    return refuse (loading, TM_BOOK_TEMPLATE_TEXT, "statement", error);
  tm_template_statement_add_text (into, row.language, row.text);
  return TRUE;
}

typedef gboolean (*TakeRow) (Loading *loading, sqlite3_stmt *statement, GError **error);

/* Every row of @kind that @where, with one number to it, names. */
static gboolean
load_rows (Loading *loading, TmBookKind kind, const char *where, gint64 number, TakeRow take, GError **error)
{
  g_autofree char *select = tm_kind_select_sql (kind);
  g_autofree char *sql = g_strdup_printf ("%s WHERE %s ORDER BY seq", select, where);
  sqlite3_stmt *statement = tm_book_prepare (loading->book, sql, error);
  GError *failure = NULL;

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, number);
  while (tm_book_step (loading->book, statement, &failure))
    {
      if (take (loading, statement, &failure))
        continue;
      sqlite3_reset (statement);
      break;
    }
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

static gboolean
load_template (Loading *loading, gint64 number, GError **error)
{
  return load_rows (loading, TM_BOOK_TEMPLATE, "seq = ?", number, take_template, error)
         && load_rows (loading, TM_BOOK_TEMPLATE_FIELD, "template = ?", number, take_field, error)
         && load_rows (loading, TM_BOOK_TEMPLATE_TEXT, "template = ?", number, take_text, error);
}

static TmTemplate *
read_version (TmBook *book, gint64 number, GError **error)
{
  g_autoptr (TmJob) scratch = tm_job_new ();
  g_autoptr (TmTemplate) template = tm_template_new ();
  Loading loading = { book, scratch, template };

  return load_template (&loading, number, error) ? g_steal_pointer (&template) : NULL;
}

static TmTemplate *
read_newest (TmBook *book, GError **error)
{
  sqlite3_stmt *statement = tm_book_prepare (book, "SELECT max (seq) FROM template", error);
  gint64 number = 0;

  if (statement == NULL || !tm_book_ask (book, statement, 0, &number, error))
    return NULL;
  return read_version (book, number, error);
}

/* All of it in one read transaction: another program may be saving a new version at this moment. */
TmTemplate *
tm_book_template (TmBook *book, GError **error)
{
  TmTemplate *template;
  gboolean outermost;

  g_return_val_if_fail (book != NULL, NULL);

  outermost = sqlite3_get_autocommit (book->db) != 0;
  if (outermost && !tm_book_exec (book, "BEGIN", error))
    return NULL;
  template = read_newest (book, error);
  if (outermost)
    tm_book_rollback (book);
  return template;
}

/* A version never changes, so that no transaction has to hold it together. */
TmTemplate *
tm_book_template_version (TmBook *book, gint64 number, GError **error)
{
  g_return_val_if_fail (book != NULL, NULL);

  return read_version (book, number, error);
}

/* -------- Versions -------- */

void
tm_book_template_version_free (TmBookTemplateVersion *version)
{
  if (version == NULL)
    return;
  g_free (version->by);
  g_free (version->at);
  g_free (version->name);
  g_free (version);
}

/* With whether it says nothing at all, in the last column. */
#define VERSIONS                                                                                          \
  "SELECT seq, changed_by, changed_at, name,"                                                             \
  " name || address || accent || hidden || logo || ground = ''"                                           \
  " AND NOT EXISTS (SELECT 1 FROM template_field WHERE template = t.seq)"                                 \
  " AND NOT EXISTS (SELECT 1 FROM template_text WHERE template = t.seq) FROM template AS t ORDER BY seq " \
  "DESC"

static TmBookTemplateVersion *
make_version (sqlite3_stmt *statement)
{
  TmBookTemplateVersion *version = g_new0 (TmBookTemplateVersion, 1);

  version->number = sqlite3_column_int64 (statement, 0);
  version->by = g_strdup (tm_column_text (statement, 1));
  version->at = g_strdup (tm_column_text (statement, 2));
  version->name = g_strdup (tm_column_text (statement, 3));
  version->is_empty = sqlite3_column_int (statement, 4) != 0;
  return version;
}

GPtrArray *
tm_book_template_versions (TmBook *book, GError **error)
{
  g_autoptr (GPtrArray) versions = NULL;
  sqlite3_stmt *statement;
  GError *failure = NULL;

  g_return_val_if_fail (book != NULL, NULL);

  statement = tm_book_prepare (book, VERSIONS, error);
  if (statement == NULL)
    return NULL;
  versions = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_book_template_version_free);
  while (tm_book_step (book, statement, &failure))
    g_ptr_array_add (versions, make_version (statement));
  if (failure == NULL)
    return g_steal_pointer (&versions);
  g_propagate_error (error, failure);
  return NULL;
}

/* -------- Saving -------- */

static gboolean
check (TmBook *book, const TmTemplate *template, GError **error)
{
  const TmTemplateStatus status = tm_template_check (template, NULL);

  if (status == TM_TEMPLATE_OK)
    return TRUE;
  g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED, _ ("“%s” does not take the report template: %s"),
               book->path, _ (tm_template_status_text (status)));
  return FALSE;
}

static gboolean
save_change (TmBook *book, const TmTemplate *template, const char *by, const char *at, GError **error)
{
  g_autoptr (TmTemplate) newest = read_newest (book, error);

  if (newest == NULL)
    return FALSE;
  return tm_template_equal (newest, template) || append_template (book, template, by, at, error);
}

gboolean
tm_book_save_template (TmBook *book, const TmTemplate *template, const char *by, const char *at,
                       GError **error)
{
  g_autoptr (TmTemplate) wanted = NULL;

  g_return_val_if_fail (book != NULL && by != NULL && at != NULL, FALSE);

  wanted = template != NULL ? tm_template_copy (template) : tm_template_new ();
  return check (book, wanted, error) && tm_book_begin (book, error)
         && tm_book_end (book, save_change (book, wanted, by, at, error), error);
}
