/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The shop's template: what it says, what is wrong with one, and which colours can be read.
 */

#include "core-template.h"

#include <string.h>

static TmTemplate *
make_template (void)
{
  static const char svg[] = "<svg xmlns='http://www.w3.org/2000/svg' width='4' height='2'/>";
  g_autoptr (GBytes) logo = g_bytes_new_static (svg, sizeof svg - 1);
  TmTemplate *template = tm_template_new ();
  TmTemplateStatement *statement;

  tm_template_set_text (&template->name, "Example Precision");
  tm_template_set_text (&template->address, "1 Mill Lane\nExampletown");
  template->has_accent = TRUE;
  template->accent = 0x1a5f7a;
  template->has_ground = TRUE;
  template->ground = 0xdfe8c4;
  tm_template_set_logo (template, logo, "image/svg+xml");
  template->hidden = 1u << TM_TEMPLATE_CLASS;
  tm_template_add_field (template, "Heat number", TRUE);
  tm_template_add_field (template, "Packed by", FALSE);
  statement = tm_template_add_statement (template, TM_STATEMENT_BEFORE_SIGNATURES);
  tm_template_statement_add_text (statement, "", "All parts were made here.");
  tm_template_statement_add_text (statement, "de", "Alle Teile wurden hier gefertigt.");
  return template;
}

static void
assert_status (const TmTemplate *template, TmTemplateStatus wanted, guint wanted_row)
{
  guint row = 99;

  g_assert_cmpint (tm_template_check (template, &row), ==, wanted);
  g_assert_cmpuint (row, ==, wanted_row);
}

static void
test_copy (void)
{
  g_autoptr (TmTemplate) template = make_template ();
  g_autoptr (TmTemplate) copy = tm_template_copy (template);
  g_autoptr (TmTemplate) blank = tm_template_new ();

  g_assert_true (tm_template_equal (template, copy));
  g_assert_true (copy->name != template->name);
  tm_template_set_text (&copy->name, copy->name + 8);
  g_assert_cmpstr (copy->name, ==, "Precision");
  g_assert_false (tm_template_equal (template, copy));
  g_assert_null (tm_template_copy (NULL));
  g_assert_true (tm_template_is_empty (NULL));
  g_assert_true (tm_template_is_empty (blank));
  g_assert_false (tm_template_is_empty (template));
  /* A colour that is not used is no difference. */
  blank->accent = blank->ground = 7;
  g_assert_true (tm_template_is_empty (blank));
}

/* Each member by itself makes two templates differ. */
static void
test_differences (void)
{
  g_autoptr (TmTemplate) template = make_template ();

  for (guint i = 0; i < 11; i++)
    {
      g_autoptr (TmTemplate) other = tm_template_copy (template);
      TmTemplateStatement *statement = g_ptr_array_index (other->statements, 0);

      switch (i)
        {
        case 0:
          tm_template_set_text (&other->address, "");
          break;
        case 1:
          other->accent++;
          break;
        case 2:
          other->has_accent = FALSE;
          break;
        case 3:
          tm_template_set_logo (other, NULL, NULL);
          g_assert_cmpstr (other->logo_digest, ==, "");
          break;
        case 4:
          other->hidden = 0;
          break;
        case 5:
          ((TmTemplateField *)g_ptr_array_index (other->fields, 1))->required = TRUE;
          break;
        case 6:
          g_ptr_array_remove_index (other->fields, 0);
          break;
        case 7:
          statement->place = TM_STATEMENT_AFTER_COVER;
          break;
        case 8:
          other->ground++;
          break;
        case 9:
          other->has_ground = FALSE;
          break;
        default:
          tm_template_statement_add_text (statement, "fr", "Ici.");
        }
      g_assert_false (tm_template_equal (template, other));
      assert_status (other, TM_TEMPLATE_OK, 0);
    }
}

/* WCAG 2.1: black on white is 21:1; the lightest grey that reaches 4.5:1 on white is #767676 (from
 * memory: it is printed in many guides to it).  Two decimals, as guides print them. */
static void
test_contrast (void)
{
  g_assert_cmpfloat_with_epsilon (tm_colour_contrast (0x000000, 0xffffff), 21.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (tm_colour_contrast (0xffffff, 0xffffff), 1.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (tm_colour_contrast (0xffffff, 0x767676), 4.54, 0.005);
  g_assert_cmpfloat_with_epsilon (tm_colour_contrast (0xff0000, 0xffffff), 4.0, 0.005);
  g_assert_cmpfloat (tm_colour_contrast (0x767676, 0xffffff), >=, TM_COLOUR_READABLE);
  g_assert_cmpfloat (tm_colour_contrast (0x777777, 0xffffff), <, TM_COLOUR_READABLE);
}

/* WCAG 2.1: white on #767676 is 4.54:1 (as above), so that black on it is 21 / 4.54 = 4.62:1; one grey darker
 * white is the better one.  Whatever the ground, the better one is at least the root of 21:1, 4.58:1. */
static void
test_text_on (void)
{
  g_assert_cmphex (tm_colour_text_on (0x000000), ==, 0xffffff);
  g_assert_cmphex (tm_colour_text_on (0xffffff), ==, 0x000000);
  g_assert_cmphex (tm_colour_text_on (0x767676), ==, 0x000000);
  g_assert_cmphex (tm_colour_text_on (0x757575), ==, 0xffffff);
  for (guint32 red = 0; red < 256; red += 15)
    for (guint32 green = 0; green < 256; green += 15)
      for (guint32 blue = 0; blue < 256; blue += 15)
        {
          const guint32 ground = red << 16 | green << 8 | blue;

          g_assert_cmpfloat (tm_colour_contrast (ground, tm_colour_text_on (ground)), >=, 4.58);
        }
}

static void
test_accent_reads (void)
{
  g_autoptr (TmTemplate) template = make_template ();

  g_assert_true (tm_template_accent_reads (template));
  template->accent = 0xffe000;
  g_assert_false (tm_template_accent_reads (template));
  template->accent = 0x000000;
  template->has_accent = FALSE;
  g_assert_false (tm_template_accent_reads (template));
  g_assert_false (tm_template_accent_reads (NULL));
}

static void
test_colour_text (void)
{
  static const char *const wrong[]
      = { "", "#", "1a5f7a", "#1a5f7", "#1a5f7a0", "#1a5f7g", "# a5f7a", "#+1a5f7" };
  guint32 colour = 5;
  g_autofree char *text = tm_colour_format (0x00a5f0);

  g_assert_cmpstr (text, ==, "#00a5f0");
  g_assert_true (tm_colour_read ("#1A5f7a", &colour));
  g_assert_cmphex (colour, ==, 0x1a5f7a);
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    g_assert_false (tm_colour_read (wrong[i], &colour));
  g_assert_cmphex (colour, ==, 0x1a5f7a);
}

static void
test_columns (void)
{
  g_autoptr (TmTemplate) template = make_template ();

  g_assert_false (tm_template_shows (template, TM_TEMPLATE_CLASS));
  g_assert_true (tm_template_shows (template, TM_TEMPLATE_GAUGE));
  g_assert_true (tm_template_shows (NULL, TM_TEMPLATE_CLASS));
  for (guint i = 0; i < TM_N_TEMPLATE_COLUMNS; i++)
    {
      g_assert_cmpuint (tm_template_column_find (tm_template_column_word (i)), ==, i);
      g_assert_false (tm_template_column_is_fixed (tm_template_column_word (i)));
      g_assert_cmpstr (tm_template_column_title (i), !=, "");
    }
  g_assert_true (tm_template_column_is_fixed ("verdict"));
  g_assert_cmpint (tm_template_column_find ("verdict"), ==, TM_N_TEMPLATE_COLUMNS);
  g_assert_cmpint (tm_statement_place_find ("after cover"), ==, TM_STATEMENT_AFTER_COVER);
  g_assert_cmpint (tm_statement_place_find ("nowhere"), ==, TM_N_STATEMENT_PLACES);
}

static void
test_statement_languages (void)
{
  g_autoptr (TmTemplate) template = make_template ();
  TmTemplateStatement *statement = g_ptr_array_index (template->statements, 0);

  g_assert_cmpstr (tm_statement_text (statement, "de"), ==, "Alle Teile wurden hier gefertigt.");
  g_assert_cmpstr (tm_statement_text (statement, "de_AT"), ==, "Alle Teile wurden hier gefertigt.");
  g_assert_cmpstr (tm_statement_text (statement, "fr"), ==, "All parts were made here.");
  g_assert_cmpstr (tm_statement_text (statement, ""), ==, "All parts were made here.");
  /* Without one for any language the first stands in. */
  g_ptr_array_remove_index (statement->texts, 0);
  g_assert_cmpstr (tm_statement_text (statement, "fr"), ==, "Alle Teile wurden hier gefertigt.");
  g_ptr_array_remove_index (statement->texts, 0);
  g_assert_null (tm_statement_text (statement, "fr"));
}

static void
test_language_codes (void)
{
  static const char *const right[] = { "de", "pt_BR", "sr@latin", "uz_UZ@cyrillic", "haw" };
  static const char *const wrong[]
      = { "", "d", "DE", "deutsch", "de-AT", "de_", "de_at", "de_ATX", "de@", "../de" };

  for (gsize i = 0; i < G_N_ELEMENTS (right); i++)
    g_assert_true (tm_language_code_is_formed (right[i]));
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    g_assert_false (tm_language_code_is_formed (wrong[i]));
}

static void
test_wrong_head (void)
{
  g_autoptr (TmTemplate) template = make_template ();
  g_autofree char *long_name = g_strnfill (201, 'x');
  g_autofree char *many_lines = g_strnfill (12, '\n');

  assert_status (template, TM_TEMPLATE_OK, 0);
  tm_template_set_text (&template->name, long_name);
  assert_status (template, TM_TEMPLATE_NAME_LONG, 0);
  tm_template_set_text (&template->name, long_name + 1);
  assert_status (template, TM_TEMPLATE_OK, 0);
  tm_template_set_text (&template->name, "one\ntwo");
  assert_status (template, TM_TEMPLATE_NAME_LINES, 0);
  tm_template_set_text (&template->name, "");
  tm_template_set_text (&template->address, many_lines);
  assert_status (template, TM_TEMPLATE_ADDRESS_LONG, 0);
  tm_template_set_text (&template->address, many_lines + 1);
  assert_status (template, TM_TEMPLATE_OK, 0);
}

static void
test_wrong_logo (void)
{
  g_autoptr (TmTemplate) template = make_template ();
  g_autoptr (GBytes) large
      = g_bytes_new_take (g_malloc0 (TM_TEMPLATE_MAX_LOGO + 1), TM_TEMPLATE_MAX_LOGO + 1);
  g_autoptr (GBytes) largest = g_bytes_new_from_bytes (large, 0, TM_TEMPLATE_MAX_LOGO);

  tm_template_set_logo (template, large, "image/png");
  assert_status (template, TM_TEMPLATE_LOGO_LARGE, 0);
  tm_template_set_logo (template, largest, "image/png");
  assert_status (template, TM_TEMPLATE_OK, 0);
  tm_template_set_logo (template, largest, "application/pdf");
  assert_status (template, TM_TEMPLATE_LOGO_MEDIA, 0);
  tm_template_set_logo (template, largest, "image/png");
  template->logo_digest[0] = template->logo_digest[0] == '0' ? '1' : '0';
  assert_status (template, TM_TEMPLATE_LOGO_CHANGED, 0);
  tm_template_set_logo (template, NULL, NULL);
  tm_template_set_text (&template->logo_media, "image/png");
  assert_status (template, TM_TEMPLATE_LOGO_CHANGED, 0);
}

static void
test_wrong_fields (void)
{
  g_autoptr (TmTemplate) template = make_template ();
  TmTemplateField *field = tm_template_add_field (template, "Heat number", FALSE);

  assert_status (template, TM_TEMPLATE_FIELD_TWICE, 2);
  tm_template_set_text (&field->name, " \t");
  assert_status (template, TM_TEMPLATE_FIELD_UNNAMED, 2);
  tm_template_set_text (&field->name, "two\nlines");
  assert_status (template, TM_TEMPLATE_FIELD_LONG, 2);
  tm_template_set_text (&field->name, "third");
  while (template->fields->len < TM_TEMPLATE_MAX_FIELDS)
    {
      g_autofree char *name = g_strdup_printf ("field %u", template->fields->len);

      tm_template_add_field (template, name, FALSE);
    }
  assert_status (template, TM_TEMPLATE_OK, 0);
  tm_template_add_field (template, "one too many", FALSE);
  assert_status (template, TM_TEMPLATE_FIELDS_MANY, TM_TEMPLATE_MAX_FIELDS);
}

static void
test_wrong_statements (void)
{
  g_autoptr (TmTemplate) template = make_template ();
  TmTemplateStatement *statement = tm_template_add_statement (template, TM_STATEMENT_AFTER_COVER);
  g_autofree char *long_text = g_strnfill (4001, 'x');

  assert_status (template, TM_TEMPLATE_STATEMENT_EMPTY, 1);
  tm_template_statement_add_text (statement, "", "\n ");
  assert_status (template, TM_TEMPLATE_STATEMENT_EMPTY, 1);
  g_ptr_array_set_size (statement->texts, 0);
  tm_template_statement_add_text (statement, "German", "x");
  assert_status (template, TM_TEMPLATE_STATEMENT_LANGUAGE, 1);
  g_ptr_array_set_size (statement->texts, 0);
  tm_template_statement_add_text (statement, "de", "x");
  tm_template_statement_add_text (statement, "de", "y");
  assert_status (template, TM_TEMPLATE_STATEMENT_TWICE, 1);
  g_ptr_array_set_size (statement->texts, 0);
  tm_template_statement_add_text (statement, "", long_text);
  assert_status (template, TM_TEMPLATE_STATEMENT_LONG, 1);
  g_ptr_array_set_size (statement->texts, 0);
  tm_template_statement_add_text (statement, "", long_text + 1);
  assert_status (template, TM_TEMPLATE_OK, 0);
  while (template->statements->len <= TM_TEMPLATE_MAX_STATEMENTS)
    tm_template_statement_add_text (tm_template_add_statement (template, TM_STATEMENT_AFTER_COVER), "", "x");
  assert_status (template, TM_TEMPLATE_STATEMENTS_MANY, TM_TEMPLATE_MAX_STATEMENTS);
}

static void
test_status_texts (void)
{
  for (guint i = TM_TEMPLATE_OK + 1; i < TM_N_TEMPLATE_STATUSES; i++)
    {
      const char *text = tm_template_status_text (i);

      g_assert_nonnull (text);
      g_assert_nonnull (strstr (text, "; "));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/template/copy", test_copy);
  g_test_add_func ("/template/differences", test_differences);
  g_test_add_func ("/template/colour/contrast", test_contrast);
  g_test_add_func ("/template/colour/accent", test_accent_reads);
  g_test_add_func ("/template/colour/text-on", test_text_on);
  g_test_add_func ("/template/colour/text", test_colour_text);
  g_test_add_func ("/template/columns", test_columns);
  g_test_add_func ("/template/statement/languages", test_statement_languages);
  g_test_add_func ("/template/statement/codes", test_language_codes);
  g_test_add_func ("/template/wrong/head", test_wrong_head);
  g_test_add_func ("/template/wrong/logo", test_wrong_logo);
  g_test_add_func ("/template/wrong/fields", test_wrong_fields);
  g_test_add_func ("/template/wrong/statements", test_wrong_statements);
  g_test_add_func ("/template/wrong/texts", test_status_texts);
  return g_test_run ();
}
