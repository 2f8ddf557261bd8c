/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The template file into a template.
 */

#include "exchange-template.h"

#include <glib/gi18n-lib.h>

#include "exchange-base64.h"
#include "exchange-file.h"
#include "exchange-take.h"
#include "exchange-template-members.h"

typedef struct {
  TmTemplate *template;
  char *unknown; /* path of the first member that is not known; or NULL */
} Reading;

static void
missing_cb (const char *source, guint section, GError **error)
{
  if (section == IN_TEMPLATE_FORMAT)
    tm_exchange_fail (error, TM_EXCHANGE_ERROR_NOT_A_TEMPLATE, source, NULL,
                      _ ("this is JSON, but no report template (it has no \"format\"); open a file that was "
                         "exported as a template"));
  else
    tm_exchange_fail (error, TM_EXCHANGE_ERROR_MISSING, source, NULL,
                      _ ("the member \"%s\" is missing; add it, or export the template again"),
                      tm_template_sections[section].key);
}

static void
restart_cb (gpointer data)
{
  Reading *reading = data;

  tm_template_free (reading->template);
  reading->template = tm_template_new ();
  g_clear_pointer (&reading->unknown, g_free);
}

static void
unknown_cb (const char *path, gpointer data)
{
  Reading *reading = data;

  if (reading->unknown == NULL)
    reading->unknown = g_strdup (path);
}

static gboolean
check_format (const TmJsonRow *row, GError **error)
{
  g_autofree char *quoted = tm_exchange_quote (tm_json_text (row, 0));

  if (g_str_equal (tm_json_text (row, 0), TM_TEMPLATE_FORMAT))
    return TRUE;
  tm_exchange_fail (error, TM_EXCHANGE_ERROR_NOT_A_TEMPLATE, row->source, "format",
                    _ ("%s is no report template (“%s”); open a file that was exported as a template"),
                    quoted, TM_TEMPLATE_FORMAT);
  return FALSE;
}

static gboolean
check_version (const TmJsonRow *row, GError **error)
{
  const guint version = row->slots[0].whole;

  if (version == TM_TEMPLATE_VERSION)
    return TRUE;
  if (version > TM_TEMPLATE_VERSION)
    tm_exchange_fail (error, TM_EXCHANGE_ERROR_NEWER, row->source, "version",
                      _ ("%u is newer than this program reads (%d); update the program"), version,
                      TM_TEMPLATE_VERSION);
  else
    tm_exchange_fail (error, TM_EXCHANGE_ERROR_BAD_VALUE, row->source, "version",
                      _ ("there is no version %u; write %d"), version, TM_TEMPLATE_VERSION);
  return FALSE;
}

static gboolean
take_colour (const TmMember member, gboolean *has, guint32 *colour, GError **error)
{
  *has = tm_member_is_given (member);
  if (!*has || tm_colour_read (tm_member_text (member), colour))
    return TRUE;
  return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                         _ ("is no colour; write it like #1a5f7a"));
}

static gboolean
take_hidden (TmTemplate *template, const TmJsonRow *row, GError **error)
{
  for (guint i = 0; i < tm_json_list_length (row, TEMPLATE_HIDDEN); i++)
    {
      const char *word = tm_json_list_text (row, TEMPLATE_HIDDEN, i);
      const TmTemplateColumn column = tm_template_column_find (word);
      g_autofree char *quoted = tm_exchange_quote (word);

      if (column < TM_N_TEMPLATE_COLUMNS)
        template->hidden |= 1u << column;
      else if (tm_template_column_is_fixed (word))
        return tm_member_fail (TM_OWN (row, TEMPLATE_HIDDEN), TM_EXCHANGE_ERROR_BAD_VALUE, error,
                               _ ("the column %s is always shown; take it out of this list"), quoted);
      else
        return tm_member_fail (TM_OWN (row, TEMPLATE_HIDDEN), TM_EXCHANGE_ERROR_BAD_VALUE, error,
                               _ ("there is no column %s; take it out of this list"), quoted);
    }
  return TRUE;
}

static gboolean
take_logo (TmTemplate *template, const TmJsonRow *row, GError **error)
{
  const TmMember content = TM_INNER (row, TEMPLATE_LOGO, LOGO_CONTENT);
  const TmMember digest = TM_INNER (row, TEMPLATE_LOGO, LOGO_DIGEST);
  g_autoptr (GBytes) bytes = NULL;

  if (!row->slots[TEMPLATE_LOGO].given)
    return TRUE;
  bytes = tm_base64_read (tm_member_text (content));
  if (bytes == NULL)
    return tm_member_fail (content, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("is no base64; write the file's bytes so, without line ends"));
  tm_template_set_logo (template, bytes, tm_member_text (TM_INNER (row, TEMPLATE_LOGO, LOGO_MEDIA)));
  if (tm_member_is_given (digest) && !g_str_equal (tm_member_text (digest), template->logo_digest))
    return tm_member_fail (digest, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("is not that of \"content\"; one of them was altered"));
  return TRUE;
}

static gboolean
read_template (TmTemplate *template, const TmJsonRow *row, GError **error)
{
  tm_template_set_text (&template->name, tm_json_text (row, TEMPLATE_NAME));
  tm_template_set_text (&template->address, tm_json_text (row, TEMPLATE_ADDRESS));
  return take_colour (TM_OWN (row, TEMPLATE_ACCENT), &template->has_accent, &template->accent, error)
         && take_colour (TM_OWN (row, TEMPLATE_GROUND), &template->has_ground, &template->ground, error)
         && take_hidden (template, row, error) && take_logo (template, row, error);
}

static gboolean
read_field (TmTemplate *template, const TmJsonRow *row, GError **error)
{
  if (template->fields->len >= TM_TEMPLATE_MAX_FIELDS)
    return tm_member_fail (TM_OWN (row, -1), TM_EXCHANGE_ERROR_BAD_VALUE, error, "%s",
                           _ (tm_template_status_text (TM_TEMPLATE_FIELDS_MANY)));
  tm_template_add_field (template, tm_json_text (row, FIELD_NAME), row->slots[FIELD_REQUIRED].truth);
  return TRUE;
}

static TmTemplateStatement *
find_statement (TmTemplate *template, const TmJsonRow *row, GError **error)
{
  const TmMember member = TM_OWN (row, STATEMENT_PLACE);
  const TmStatementPlace place = tm_statement_place_find (tm_member_text (member));

  if (!tm_member_is_given (member) && template->statements->len > 0)
    return g_ptr_array_index (template->statements, template->statements->len - 1);
  if (place == TM_N_STATEMENT_PLACES)
    {
      tm_member_fail_word (member, "after cover, before signatures", error);
      return NULL;
    }
  return tm_template_add_statement (template, place);
}

static gboolean
read_statement (TmTemplate *template, const TmJsonRow *row, GError **error)
{
  TmTemplateStatement *statement = find_statement (template, row, error);

  if (statement == NULL)
    return FALSE;
  if (template->statements->len > TM_TEMPLATE_MAX_STATEMENTS
      || statement->texts->len >= TM_TEMPLATE_MAX_TEXTS)
    return tm_member_fail (TM_OWN (row, -1), TM_EXCHANGE_ERROR_BAD_VALUE, error, "%s",
                           _ (tm_template_status_text (TM_TEMPLATE_STATEMENTS_MANY)));
  tm_template_statement_add_text (statement, tm_json_text (row, STATEMENT_LANGUAGE),
                                  tm_json_text (row, STATEMENT_TEXT));
  return TRUE;
}

static gboolean
take_cb (const TmJsonRow *row, guint section, gpointer data, GError **error)
{
  TmTemplate *template = ((Reading *)data)->template;

  switch (section)
    {
    case IN_TEMPLATE_FORMAT:
      return check_format (row, error);
    case IN_TEMPLATE_VERSION:
      return check_version (row, error);
    case IN_TEMPLATE:
      return read_template (template, row, error);
    case IN_TEMPLATE_FIELDS:
      return read_field (template, row, error);
    case IN_TEMPLATE_STATEMENTS:
    default:
      return read_statement (template, row, error);
    }
}

/* Where what tm_template_check() found stands in the file; free it. */
static char *
find_place (TmTemplateStatus status, guint row)
{
  if (status >= TM_TEMPLATE_STATEMENT_EMPTY)
    return g_strdup_printf ("statements, %u", row + 1);
  if (status >= TM_TEMPLATE_FIELD_UNNAMED)
    return g_strdup_printf ("fields[%u]", row);
  return g_strdup ("template");
}

static gboolean
check_whole (const Reading *reading, const char *place, GError **error)
{
  guint row = 0;
  const TmTemplateStatus status = tm_template_check (reading->template, &row);
  g_autofree char *at = find_place (status, row);

  if (reading->unknown != NULL)
    tm_exchange_fail (error, TM_EXCHANGE_ERROR_BAD_VALUE, place, reading->unknown,
                      _ ("no template has this; take it out, or update the program"));
  else if (status != TM_TEMPLATE_OK)
    tm_exchange_fail (error, TM_EXCHANGE_ERROR_BAD_VALUE, place, at, "%s",
                      _ (tm_template_status_text (status)));
  return reading->unknown == NULL && status == TM_TEMPLATE_OK;
}

static gboolean
read_whole (Reading *reading, const char *data, gsize length, const char *place, GError **error)
{
  g_autoptr (GString) extra = g_string_new (NULL);
  const TmJsonReader reader = { .sections = tm_template_sections,
                                .n_required = IN_TEMPLATE_VERSION + 1,
                                .take = take_cb,
                                .missing = missing_cb,
                                .restart = restart_cb,
                                .unknown = unknown_cb,
                                .data = reading,
                                .stranger = _ ("this is JSON, but no report template; open a file that was "
                                               "exported as a template") };

  if (length > TM_TEMPLATE_FILE_MAX)
    {
      tm_exchange_fail (error, TM_EXCHANGE_ERROR_TOO_LARGE, place, NULL,
                        _ ("larger than a template file may be (8 MiB); use a smaller logo"));
      return FALSE;
    }
  return tm_json_read (&reader, data, length, place, extra, error) && check_whole (reading, place, error);
}

TmTemplate *
tm_template_from_bytes (const char *data, gsize length, const char *place, GError **error)
{
  Reading reading = { tm_template_new (), NULL };

  if (!read_whole (&reading, data, length, place, error))
    g_clear_pointer (&reading.template, tm_template_free);
  g_free (reading.unknown);
  return reading.template;
}

TmTemplate *
tm_template_from_file (const char *path, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);
  g_autoptr (GString) bytes
      = tm_file_load (path, TM_TEMPLATE_FILE_MAX,
                      _ ("larger than a template file may be (8 MiB); use a smaller logo"), error);

  return bytes != NULL ? tm_template_from_bytes (bytes->str, bytes->len, shown, error) : NULL;
}
