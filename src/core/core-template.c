/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-template.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define BLACK 0x000000u
#define WHITE 0xffffffu

/* -------- Words -------- */

typedef struct {
  const char *word;
  const char *title;
} ColumnWords;

static const ColumnWords column_words[TM_N_TEMPLATE_COLUMNS] = {
  [TM_TEMPLATE_WHERE] = { "where", N_ ("Sheet, zone") },
  [TM_TEMPLATE_CLASS] = { "class", N_ ("Class") },
  [TM_TEMPLATE_NOMINAL] = { "nominal", N_ ("Nominal") },
  [TM_TEMPLATE_DEVIATION] = { "deviation", N_ ("Deviation from nominal") },
  [TM_TEMPLATE_UNCERTAINTY] = { "uncertainty", N_ ("Uncertainty ± (95 %)") },
  [TM_TEMPLATE_SIDE] = { "side", N_ ("Side") },
  [TM_TEMPLATE_GAUGE] = { "gauge", N_ ("Gauge") },
  [TM_TEMPLATE_DUE] = { "calibration due", N_ ("Calibration due") },
  [TM_TEMPLATE_COUNTS] = { "what counts", N_ ("What counts") },
};

const char *
tm_template_column_word (TmTemplateColumn column)
{
  g_return_val_if_fail (column < TM_N_TEMPLATE_COLUMNS, "");

  return column_words[column].word;
}

const char *
tm_template_column_title (TmTemplateColumn column)
{
  g_return_val_if_fail (column < TM_N_TEMPLATE_COLUMNS, "");

  return column_words[column].title;
}

TmTemplateColumn
tm_template_column_find (const char *word)
{
  for (guint i = 0; i < TM_N_TEMPLATE_COLUMNS; i++)
    if (g_str_equal (column_words[i].word, word))
      return i;
  return TM_N_TEMPLATE_COLUMNS;
}

gboolean
tm_template_column_is_fixed (const char *word)
{
  static const char *const fixed[]
      = { "balloon", "requirement", "piece",   "place",   "unit",           "lower limit", "upper limit",
          "limits",  "result",      "verdict", "tooling", "nonconformance", "comment",     NULL };

  return g_strv_contains (fixed, word);
}

static const char *const place_words[TM_N_STATEMENT_PLACES]
    = { [TM_STATEMENT_AFTER_COVER] = "after cover", [TM_STATEMENT_BEFORE_SIGNATURES] = "before signatures" };

const char *
tm_statement_place_word (TmStatementPlace place)
{
  g_return_val_if_fail (place < TM_N_STATEMENT_PLACES, "");

  return place_words[place];
}

TmStatementPlace
tm_statement_place_find (const char *word)
{
  for (guint i = 0; i < TM_N_STATEMENT_PLACES; i++)
    if (g_str_equal (place_words[i], word))
      return i;
  return TM_N_STATEMENT_PLACES;
}

/* -------- Making and copying -------- */

static void
free_field (TmTemplateField *field)
{
  g_free (field->name);
  g_free (field);
}

static void
free_text (TmStatementText *text)
{
  g_free (text->language);
  g_free (text->text);
  g_free (text);
}

static void
free_statement (TmTemplateStatement *statement)
{
  g_ptr_array_unref (statement->texts);
  g_free (statement);
}

TmTemplate *
tm_template_new (void)
{
  TmTemplate *template = g_new0 (TmTemplate, 1);

  template->name = g_strdup ("");
  template->address = g_strdup ("");
  template->logo_media = g_strdup ("");
  template->logo_digest = g_strdup ("");
  template->fields = g_ptr_array_new_with_free_func ((GDestroyNotify)free_field);
  template->statements = g_ptr_array_new_with_free_func ((GDestroyNotify)free_statement);
  return template;
}

void
tm_template_free (TmTemplate *template)
{
  if (template == NULL)
    return;
  g_free (template->name);
  g_free (template->address);
  g_clear_pointer (&template->logo, g_bytes_unref);
  g_free (template->logo_media);
  g_free (template->logo_digest);
  g_ptr_array_unref (template->fields);
  g_ptr_array_unref (template->statements);
  g_free (template);
}

void
tm_template_set_text (char **slot, const char *text)
{
  char *copy = g_strdup (text != NULL ? text : "");

  g_free (*slot);
  *slot = copy;
}

void
tm_template_set_logo (TmTemplate *template, GBytes *logo, const char *media)
{
  GBytes *kept = logo != NULL ? g_bytes_ref (logo) : NULL;

  g_clear_pointer (&template->logo, g_bytes_unref);
  template->logo = kept;
  tm_template_set_text (&template->logo_media, kept != NULL ? media : "");
  g_free (template->logo_digest);
  template->logo_digest
      = kept != NULL ? g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, kept) : g_strdup ("");
}

TmTemplateField *
tm_template_add_field (TmTemplate *template, const char *name, gboolean required)
{
  TmTemplateField *field = g_new0 (TmTemplateField, 1);

  field->name = g_strdup (name);
  field->required = required;
  g_ptr_array_add (template->fields, field);
  return field;
}

TmTemplateStatement *
tm_template_add_statement (TmTemplate *template, TmStatementPlace place)
{
  TmTemplateStatement *statement = g_new0 (TmTemplateStatement, 1);

  statement->place = place;
  statement->texts = g_ptr_array_new_with_free_func ((GDestroyNotify)free_text);
  g_ptr_array_add (template->statements, statement);
  return statement;
}

void
tm_template_statement_add_text (TmTemplateStatement *statement, const char *language, const char *text)
{
  TmStatementText *row = g_new0 (TmStatementText, 1);

  row->language = g_strdup (language);
  row->text = g_strdup (text);
  g_ptr_array_add (statement->texts, row);
}

static void
copy_statement (TmTemplate *into, const TmTemplateStatement *statement)
{
  TmTemplateStatement *copy = tm_template_add_statement (into, statement->place);

  for (guint i = 0; i < statement->texts->len; i++)
    {
      const TmStatementText *text = g_ptr_array_index (statement->texts, i);

      tm_template_statement_add_text (copy, text->language, text->text);
    }
}

TmTemplate *
tm_template_copy (const TmTemplate *template)
{
  TmTemplate *copy;

  if (template == NULL)
    return NULL;
  copy = tm_template_new ();
  tm_template_set_text (&copy->name, template->name);
  tm_template_set_text (&copy->address, template->address);
  copy->has_accent = template->has_accent;
  copy->accent = template->accent;
  copy->has_ground = template->has_ground;
  copy->ground = template->ground;
  copy->logo = template->logo != NULL ? g_bytes_ref (template->logo) : NULL;
  tm_template_set_text (&copy->logo_media, template->logo_media);
  tm_template_set_text (&copy->logo_digest, template->logo_digest);
  copy->hidden = template->hidden;
  for (guint i = 0; i < template->fields->len; i++)
    {
      const TmTemplateField *field = g_ptr_array_index (template->fields, i);

      tm_template_add_field (copy, field->name, field->required);
    }
  for (guint i = 0; i < template->statements->len; i++)
    copy_statement (copy, g_ptr_array_index (template->statements, i));
  return copy;
}

/* -------- Comparing -------- */

static gboolean
has_same_fields (const TmTemplate *a, const TmTemplate *b)
{
  if (a->fields->len != b->fields->len)
    return FALSE;
  for (guint i = 0; i < a->fields->len; i++)
    {
      const TmTemplateField *one = g_ptr_array_index (a->fields, i);
      const TmTemplateField *other = g_ptr_array_index (b->fields, i);

      if (!g_str_equal (one->name, other->name) || one->required != other->required)
        return FALSE;
    }
  return TRUE;
}

static gboolean
is_same_statement (const TmTemplateStatement *a, const TmTemplateStatement *b)
{
  if (a->place != b->place || a->texts->len != b->texts->len)
    return FALSE;
  for (guint i = 0; i < a->texts->len; i++)
    {
      const TmStatementText *one = g_ptr_array_index (a->texts, i);
      const TmStatementText *other = g_ptr_array_index (b->texts, i);

      if (!g_str_equal (one->language, other->language) || !g_str_equal (one->text, other->text))
        return FALSE;
    }
  return TRUE;
}

static gboolean
has_same_statements (const TmTemplate *a, const TmTemplate *b)
{
  if (a->statements->len != b->statements->len)
    return FALSE;
  for (guint i = 0; i < a->statements->len; i++)
    if (!is_same_statement (g_ptr_array_index (a->statements, i), g_ptr_array_index (b->statements, i)))
      return FALSE;
  return TRUE;
}

gboolean
tm_template_equal (const TmTemplate *a, const TmTemplate *b)
{
  return g_str_equal (a->name, b->name) && g_str_equal (a->address, b->address)
         && a->has_accent == b->has_accent && (!a->has_accent || a->accent == b->accent)
         && a->has_ground == b->has_ground && (!a->has_ground || a->ground == b->ground)
         && g_str_equal (a->logo_media, b->logo_media) && g_str_equal (a->logo_digest, b->logo_digest)
         && a->hidden == b->hidden && has_same_fields (a, b) && has_same_statements (a, b);
}

gboolean
tm_template_is_empty (const TmTemplate *template)
{
  g_autoptr (TmTemplate) blank = NULL;

  if (template == NULL)
    return TRUE;
  blank = tm_template_new ();
  return tm_template_equal (template, blank);
}

/* -------- Asking -------- */

gboolean
tm_template_shows (const TmTemplate *template, TmTemplateColumn column)
{
  return template == NULL || (template->hidden & (1u << column)) == 0;
}

const TmTemplateField *
tm_template_find_field (const TmTemplate *template, const char *name)
{
  for (guint i = 0; template != NULL && i < template->fields->len; i++)
    {
      const TmTemplateField *field = g_ptr_array_index (template->fields, i);

      if (g_str_equal (field->name, name))
        return field;
    }
  return NULL;
}

static const char *
find_text (const TmTemplateStatement *statement, const char *language)
{
  for (guint i = 0; i < statement->texts->len; i++)
    {
      const TmStatementText *text = g_ptr_array_index (statement->texts, i);

      if (g_str_equal (text->language, language))
        return text->text;
    }
  return NULL;
}

const char *
tm_statement_text (const TmTemplateStatement *statement, const char *language)
{
  const char *text = find_text (statement, language);
  g_autofree char *broader = g_strndup (language, strcspn (language, "_@."));

  if (text == NULL)
    text = find_text (statement, broader);
  if (text == NULL)
    text = find_text (statement, "");
  if (text == NULL && statement->texts->len > 0)
    text = ((const TmStatementText *)g_ptr_array_index (statement->texts, 0))->text;
  return text;
}

/* -------- Colour -------- */

gboolean
tm_colour_read (const char *text, guint32 *colour)
{
  guint32 sum = 0;

  if (text[0] != '#' || strlen (text) != 7)
    return FALSE;
  for (guint i = 1; i < 7; i++)
    {
      if (!g_ascii_isxdigit (text[i]))
        return FALSE;
      sum = sum * 16 + (guint32)g_ascii_xdigit_value (text[i]);
    }
  *colour = sum;
  return TRUE;
}

char *
tm_colour_format (guint32 colour)
{
  return g_strdup_printf ("#%06x", colour & WHITE);
}

/* One channel, linear: the transfer function of sRGB (IEC 61966-2-1). */
static double
make_linear (guint32 channel)
{
  const double value = channel / 255.0;

  return value <= 0.04045 ? value / 12.92 : pow ((value + 0.055) / 1.055, 2.4);
}

static double
find_luminance (guint32 colour)
{
  return 0.2126 * make_linear ((colour >> 16) & 0xff) + 0.7152 * make_linear ((colour >> 8) & 0xff)
         + 0.0722 * make_linear (colour & 0xff);
}

double
tm_colour_contrast (guint32 a, guint32 b)
{
  const double one = find_luminance (a), other = find_luminance (b);

  return (MAX (one, other) + 0.05) / (MIN (one, other) + 0.05);
}

/* The two are 21:1 apart, so that the better one has at least the square root of that. */
guint32
tm_colour_text_on (guint32 ground)
{
  return tm_colour_contrast (ground, WHITE) > tm_colour_contrast (ground, BLACK) ? WHITE : BLACK;
}

gboolean
tm_template_accent_reads (const TmTemplate *template)
{
  return template != NULL && template->has_accent
         && tm_colour_contrast (template->accent, WHITE) >= TM_COLOUR_READABLE;
}

/* -------- Checking -------- */

static gboolean
is_blank (const char *text)
{
  for (; *text != '\0'; text = g_utf8_next_char (text))
    if (!g_unichar_isspace (g_utf8_get_char (text)))
      return FALSE;
  return TRUE;
}

static gboolean
is_longer (const char *text, guint letters)
{
  return g_utf8_strlen (text, -1) > (glong)letters;
}

static guint
count_lines (const char *text)
{
  guint n = 1;

  for (; *text != '\0'; text++)
    n += *text == '\n';
  return n;
}

gboolean
tm_language_code_is_formed (const char *code)
{
  const gsize language = strspn (code, "abcdefghijklmnopqrstuvwxyz");
  const char *rest = code + language;

  if (language < 2 || language > 3)
    return FALSE;
  if (*rest == '_')
    {
      const gsize territory = strspn (rest + 1, "ABCDEFGHIJKLMNOPQRSTUVWXYZ");

      if (territory != 2)
        return FALSE;
      rest += 3;
    }
  if (*rest == '@')
    {
      const gsize variant = strspn (rest + 1, "abcdefghijklmnopqrstuvwxyz");

      if (variant == 0 || variant > 16)
        return FALSE;
      rest += variant + 1;
    }
  return *rest == '\0';
}

static TmTemplateStatus
check_logo (const TmTemplate *template)
{
  static const char *const media[] = { "image/png", "image/jpeg", "image/svg+xml", NULL };
  g_autofree char *digest = NULL;

  if (template->logo == NULL)
    return *template->logo_digest == '\0' && *template->logo_media == '\0' ? TM_TEMPLATE_OK
                                                                           : TM_TEMPLATE_LOGO_CHANGED;
  if (g_bytes_get_size (template->logo) > TM_TEMPLATE_MAX_LOGO)
    return TM_TEMPLATE_LOGO_LARGE;
  if (g_bytes_get_size (template->logo) == 0 || !g_strv_contains (media, template->logo_media))
    return TM_TEMPLATE_LOGO_MEDIA;
  digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, template->logo);
  return g_str_equal (digest, template->logo_digest) ? TM_TEMPLATE_OK : TM_TEMPLATE_LOGO_CHANGED;
}

static TmTemplateStatus
check_field (const TmTemplate *template, guint at)
{
  const TmTemplateField *field = g_ptr_array_index (template->fields, at);

  if (at >= TM_TEMPLATE_MAX_FIELDS)
    return TM_TEMPLATE_FIELDS_MANY;
  if (is_blank (field->name))
    return TM_TEMPLATE_FIELD_UNNAMED;
  if (is_longer (field->name, TM_TEMPLATE_MAX_NAME) || count_lines (field->name) > 1)
    return TM_TEMPLATE_FIELD_LONG;
  return tm_template_find_field (template, field->name) == field ? TM_TEMPLATE_OK : TM_TEMPLATE_FIELD_TWICE;
}

static TmTemplateStatus
check_statement_text (const TmTemplateStatement *statement, const TmStatementText *text)
{
  if (is_blank (text->text))
    return TM_TEMPLATE_STATEMENT_EMPTY;
  if (is_longer (text->text, TM_TEMPLATE_MAX_STATEMENT))
    return TM_TEMPLATE_STATEMENT_LONG;
  if (*text->language != '\0' && !tm_language_code_is_formed (text->language))
    return TM_TEMPLATE_STATEMENT_LANGUAGE;
  return find_text (statement, text->language) == text->text ? TM_TEMPLATE_OK : TM_TEMPLATE_STATEMENT_TWICE;
}

static TmTemplateStatus
check_statement (const TmTemplate *template, guint at)
{
  const TmTemplateStatement *statement = g_ptr_array_index (template->statements, at);
  TmTemplateStatus status = TM_TEMPLATE_OK;

  if (at >= TM_TEMPLATE_MAX_STATEMENTS || statement->texts->len > TM_TEMPLATE_MAX_TEXTS)
    return TM_TEMPLATE_STATEMENTS_MANY;
  if (statement->texts->len == 0)
    return TM_TEMPLATE_STATEMENT_EMPTY;
  for (guint i = 0; i < statement->texts->len && status == TM_TEMPLATE_OK; i++)
    status = check_statement_text (statement, g_ptr_array_index (statement->texts, i));
  return status;
}

static TmTemplateStatus
check_head (const TmTemplate *template)
{
  if (is_longer (template->name, TM_TEMPLATE_MAX_NAME))
    return TM_TEMPLATE_NAME_LONG;
  if (count_lines (template->name) > 1)
    return TM_TEMPLATE_NAME_LINES;
  if (is_longer (template->address, TM_TEMPLATE_MAX_ADDRESS)
      || count_lines (template->address) > TM_TEMPLATE_MAX_LINES)
    return TM_TEMPLATE_ADDRESS_LONG;
  return check_logo (template);
}

TmTemplateStatus
tm_template_check (const TmTemplate *template, guint *row)
{
  TmTemplateStatus status = check_head (template);
  guint at = 0;

  for (guint i = 0; i < template->fields->len && status == TM_TEMPLATE_OK; i++)
    {
      at = i;
      status = check_field (template, i);
    }
  for (guint i = 0; i < template->statements->len && status == TM_TEMPLATE_OK; i++)
    {
      at = i;
      status = check_statement (template, i);
    }
  if (row != NULL)
    *row = status != TM_TEMPLATE_OK ? at : 0;
  return status;
}

const char *
tm_template_status_text (TmTemplateStatus status)
{
  static const char *const texts[TM_N_TEMPLATE_STATUSES] = {
    [TM_TEMPLATE_OK] = "",
    [TM_TEMPLATE_NAME_LONG] = N_ ("the shop's name is longer than 200 letters; shorten it"),
    [TM_TEMPLATE_NAME_LINES] = N_ ("the shop's name has several lines; put them into the address"),
    [TM_TEMPLATE_ADDRESS_LONG] = N_ ("the address is longer than 1000 letters or 12 lines; shorten it"),
    [TM_TEMPLATE_LOGO_LARGE] = N_ ("the logo is larger than 2 MiB; save it smaller"),
    [TM_TEMPLATE_LOGO_MEDIA] = N_ ("the logo is no PNG, JPEG or SVG picture; save it as one of these"),
    [TM_TEMPLATE_LOGO_CHANGED]
    = N_ ("the logo's bytes do not give its SHA-256; choose the logo's file again"),
    [TM_TEMPLATE_FIELD_UNNAMED] = N_ ("a field has no name; name it or take it out"),
    [TM_TEMPLATE_FIELD_LONG] = N_ ("the name of a field is longer than 200 letters or one line; shorten it"),
    [TM_TEMPLATE_FIELD_TWICE] = N_ ("two fields have the same name; rename one of them"),
    [TM_TEMPLATE_FIELDS_MANY] = N_ ("there are more than 40 fields; take some out"),
    [TM_TEMPLATE_STATEMENT_EMPTY] = N_ ("a statement has no text; write it or take it out"),
    [TM_TEMPLATE_STATEMENT_LONG] = N_ ("a statement is longer than 4000 letters; shorten it"),
    [TM_TEMPLATE_STATEMENT_LANGUAGE]
    = N_ ("the language of a statement is no code such as “de” or “pt_BR”; write one, or leave it empty"),
    [TM_TEMPLATE_STATEMENT_TWICE] = N_ ("a statement has two texts for one language; take one of them out"),
    [TM_TEMPLATE_STATEMENTS_MANY]
    = N_ ("there are more than 20 statements, or more than 10 languages of one; take some out"),
  };

  g_return_val_if_fail (status < TM_N_TEMPLATE_STATUSES, "");

  return texts[status];
}
