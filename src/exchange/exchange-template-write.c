/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A template into the template file.
 */

#include "exchange-template.h"

#include "exchange-file.h"
#include "exchange-put.h"
#include "exchange-template-members.h"

static void
put_hidden (TmJsonObject *object, const TmTemplate *template)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  for (guint i = 0; i < TM_N_TEMPLATE_COLUMNS; i++)
    if (!tm_template_shows (template, i))
      g_ptr_array_add (words, (gpointer)tm_template_column_word (i));
  tm_put_list (object, TEMPLATE_HIDDEN, words);
}

static void
put_logo (TmJsonObject *object, const TmTemplate *template)
{
  g_autofree char *content = NULL;
  TmJsonObject inner;
  gconstpointer data;
  gsize length;

  if (template->logo == NULL)
    return;
  data = g_bytes_get_data (template->logo, &length);
  content = g_base64_encode (data, length);
  inner = tm_open_inner (object, TEMPLATE_LOGO);
  tm_put_text (&inner, LOGO_MEDIA, template->logo_media);
  tm_put_text (&inner, LOGO_DIGEST, template->logo_digest);
  tm_put_text (&inner, LOGO_CONTENT, content);
  tm_close_inner (&inner, "");
}

static void
put_template (GString *out, const TmTemplate *template)
{
  TmJsonObject object = { out, tm_template_sections[IN_TEMPLATE].inside, ",\n  ", FALSE };
  g_autofree char *accent = template->has_accent ? tm_colour_format (template->accent) : g_strdup ("");
  g_autofree char *ground = template->has_ground ? tm_colour_format (template->ground) : g_strdup ("");

  g_string_append_printf (out, ",\n \"%s\": {\n  ", tm_template_sections[IN_TEMPLATE].key);
  tm_put_always (&object, TEMPLATE_NAME, template->name);
  tm_put_text (&object, TEMPLATE_ADDRESS, template->address);
  tm_put_text (&object, TEMPLATE_ACCENT, accent);
  tm_put_text (&object, TEMPLATE_GROUND, ground);
  put_hidden (&object, template);
  put_logo (&object, template);
  g_string_append (out, "\n }");
}

static TmJsonObject
begin_row (GString *out, guint section, gboolean first)
{
  if (first)
    g_string_append_printf (out, ",\n \"%s\": [", tm_template_sections[section].key);
  g_string_append (out, first ? "\n  {" : ",\n  {");
  return (TmJsonObject) { out, tm_template_sections[section].inside, ", ", FALSE };
}

static void
put_fields (GString *out, const TmTemplate *template)
{
  for (guint i = 0; i < template->fields->len; i++)
    {
      const TmTemplateField *field = g_ptr_array_index (template->fields, i);
      TmJsonObject object = begin_row (out, IN_TEMPLATE_FIELDS, i == 0);

      tm_put_always (&object, FIELD_NAME, field->name);
      if (field->required)
        tm_put_truth (&object, FIELD_REQUIRED, TRUE);
      g_string_append_c (out, '}');
    }
  if (template->fields->len > 0)
    g_string_append (out, "\n ]");
}

static void
put_statement (GString *out, const TmTemplateStatement *statement, gboolean first)
{
  for (guint i = 0; i < statement->texts->len; i++)
    {
      const TmStatementText *text = g_ptr_array_index (statement->texts, i);
      TmJsonObject object = begin_row (out, IN_TEMPLATE_STATEMENTS, first && i == 0);

      if (i == 0)
        tm_put_text (&object, STATEMENT_PLACE, tm_statement_place_word (statement->place));
      tm_put_text (&object, STATEMENT_LANGUAGE, text->language);
      tm_put_always (&object, STATEMENT_TEXT, text->text);
      g_string_append_c (out, '}');
    }
}

GString *
tm_template_to_string (const TmTemplate *template)
{
  GString *out = g_string_new (NULL);

  g_string_append_printf (out, "{\n \"%s\": \"%s\",\n \"%s\": %d",
                          tm_template_sections[IN_TEMPLATE_FORMAT].key, TM_TEMPLATE_FORMAT,
                          tm_template_sections[IN_TEMPLATE_VERSION].key, TM_TEMPLATE_VERSION);
  put_template (out, template);
  put_fields (out, template);
  for (guint i = 0; i < template->statements->len; i++)
    put_statement (out, g_ptr_array_index (template->statements, i), i == 0);
  g_string_append (out, template->statements->len > 0 ? "\n ]\n}\n" : "\n}\n");
  return out;
}

static gboolean
fill_cb (int fd, gpointer data, GError **error)
{
  const GString *bytes = data;

  return tm_file_put (fd, bytes->str, bytes->len);
}

gboolean
tm_template_to_file (const TmTemplate *template, const char *path, GError **error)
{
  g_autoptr (GString) bytes = tm_template_to_string (template);

  return tm_file_replace (path, fill_cb, bytes, error);
}
