/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The template file: what goes out comes back, and a wrong one is refused whole, in one line that names the
 * file, the place and the mend.
 */

#include "exchange-template.h"
#include "support-template.h"
#include "wrong-support.h"

#include <glib/gstdio.h>

#define NO_TEMPLATE TM_EXCHANGE_ERROR_NOT_A_TEMPLATE
#define HEAD        "{\"format\": \"tenthmark-template\", \"version\": 1"
#define FIELDS      HEAD ", \"template\": {}, \"fields\": ["
#define STATEMENTS  HEAD ", \"statements\": ["

static const Wrong documents[] = {
  { "", NO_JSON, "", "open one" },
  { "[1]", NO_TEMPLATE, "", "exported as a template" },
  { "{}", NO_TEMPLATE, "", "exported as a template" },
  { "{\"format\": \"tenthmark-job\", \"version\": 1}", NO_TEMPLATE, "format", "exported as a template" },
  { "{\"format\": \"tenthmark-template\", \"version\": 2}", TM_EXCHANGE_ERROR_NEWER, "version", "update" },
  { "{\"format\": \"tenthmark-template\", \"version\": 0}", BAD, "version", "write 1" },
  { "{\"format\": \"tenthmark-template\"}", MISSING, "version", "add it" },
  { HEAD, NO_JSON, "line 1", "fetch it again" },
  { HEAD "} x", NO_JSON, "line 1", "take it out" },
  { HEAD ", \"colours\": 1}", BAD, "colours", "take it out" },
  { HEAD ", \"template\": {\"font\": \"x\"}}", BAD, "template.font", "take it out" },
  { HEAD ", \"template\": {\"name\": 5}}", BAD, "template.name", "quotation marks" },
  { HEAD ", \"template\": {\"name\": \"a\\nb\"}}", BAD, "template", "into the address" },
  { HEAD ", \"template\": {\"accent\": \"red\"}}", BAD, "template.accent", "#1a5f7a" },
  { HEAD ", \"template\": {\"ground\": \"#12345g\"}}", BAD, "template.ground", "#1a5f7a" },
  { HEAD ", \"template\": {\"hidden\": [\"class\", \"colour\"]}}", BAD, "template.hidden", "no column" },
  { HEAD ", \"template\": {\"hidden\": [\"verdict\"]}}", BAD, "template.hidden", "always shown" },
  { HEAD ", \"template\": {\"hidden\": [\"balloon\"]}}", BAD, "template.hidden", "always shown" },
  { HEAD ", \"template\": {\"hidden\": [\"requirement\"]}}", BAD, "template.hidden", "always shown" },
  { HEAD ", \"template\": {\"hidden\": [\"result\"]}}", BAD, "template.hidden", "always shown" },
  { HEAD ", \"template\": {\"logo\": {\"media\": \"image/png\"}}}", BAD, "template.logo.content", "base64" },
  { HEAD ", \"template\": {\"logo\": {\"media\": \"image/png\", \"content\": \"a b\"}}}", BAD,
    "template.logo.content", "base64" },
  { HEAD ", \"template\": {\"logo\": {\"media\": \"image/gif\", \"content\": \"eA==\"}}}", BAD, "template",
    "PNG" },
  { HEAD ", \"template\": {\"logo\": {\"media\": \"image/png\", \"content\": \"eA==\", \"digest\": \"00\"}}}",
    BAD, "template.logo.digest", "altered" },
  { FIELDS "{\"name\": \"a\"}, {\"name\": \"a\"}]}", BAD, "fields[1]", "rename" },
  { FIELDS "{\"required\": true}]}", BAD, "fields[0]", "name it" },
  { FIELDS "{\"name\": \"a\", \"required\": \"yes\"}]}", BAD, "fields[0].required", "true or false" },
  { FIELDS "{\"name\": \"a\", \"width\": \"4\"}]}", BAD, "fields[0].width", "take it out" },
  { STATEMENTS "{\"text\": \"a\"}]}", BAD, "statements[0].place", "after cover" },
  { STATEMENTS "{\"place\": \"foot\", \"text\": \"a\"}]}", BAD, "statements[0].place", "after cover" },
  { STATEMENTS "{\"place\": \"after cover\"}]}", BAD, "statements", "write it" },
  { STATEMENTS "{\"place\": \"after cover\", \"language\": \"German\", \"text\": \"a\"}]}", BAD, "statements",
    "pt_BR" },
  { STATEMENTS "{\"place\": \"after cover\", \"text\": \"a\"}, {\"text\": \"b\"}]}", BAD, "statements",
    "one language" },
};

static void
test_wrong (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (documents); i++)
    {
      const Wrong *wrong = &documents[i];
      g_autoptr (GError) error = NULL;
      TmTemplate *template
          = tm_template_from_bytes (wrong->text, strlen (wrong->text), "shop.tmtemplate", &error);

      g_test_message ("%s", wrong->text);
      g_assert_null (template);
      g_test_message ("%s", error->message);
      g_assert_error (error, TM_EXCHANGE_ERROR, (gint)wrong->code);
      g_assert_null (strpbrk (error->message, "\n\r\t"));
      g_assert_true (g_str_has_prefix (error->message, "shop.tmtemplate: "));
      g_assert_nonnull (strstr (error->message, wrong->place));
      g_assert_nonnull (strstr (error->message, wrong->mend));
    }
}

/* More rows than there may be stop the reading there and then. */
static void
test_many (void)
{
  static const struct {
    const char *start, *row;
  } cases[] = { { FIELDS "{\"name\": \"first\"}", ", {\"name\": \"x\"}" },
                { STATEMENTS "{\"place\": \"after cover\", \"text\": \"a\"}",
                  ", {\"place\": \"after cover\", \"text\": \"a\"}" },
                { STATEMENTS "{\"place\": \"after cover\", \"text\": \"a\"}", ", {\"text\": \"a\"}" } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GString) text = g_string_new (cases[i].start);
      g_autoptr (GError) error = NULL;

      for (guint n = 0; n < 1000; n++)
        g_string_append (text, cases[i].row);
      g_string_append (text, "]}");
      g_assert_null (tm_template_from_bytes (text->str, text->len, "f", &error));
      g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_BAD_VALUE);
      g_assert_nonnull (strstr (error->message, "more than"));
    }
}

static void
test_again (void)
{
  g_autoptr (TmTemplate) template = tm_test_template ();
  g_autoptr (GString) text = tm_template_to_string (template);
  g_autoptr (TmTemplate) back = NULL;
  g_autoptr (GString) again = NULL;
  GError *error = NULL;

  back = tm_template_from_bytes (text->str, text->len, "f", &error);
  g_assert_no_error (error);
  g_assert_true (tm_template_equal (template, back));
  g_assert_true (g_bytes_equal (template->logo, back->logo));
  again = tm_template_to_string (back);
  g_assert_cmpstr (text->str, ==, again->str);
}

static void
test_blank (void)
{
  g_autoptr (TmTemplate) blank = tm_template_new ();
  g_autoptr (GString) text = tm_template_to_string (blank);
  g_autoptr (TmTemplate) back = tm_template_from_bytes (text->str, text->len, "f", NULL);
  g_autoptr (TmTemplate) bare = tm_template_from_bytes (HEAD "}", strlen (HEAD "}"), "f", NULL);

  g_assert_true (tm_template_is_empty (back));
  g_assert_true (tm_template_is_empty (bare));
}

/* The sections in any order, as in a job file. */
static void
test_order (void)
{
  static const char text[] = "{\"fields\": [{\"name\": \"Heat number\", \"required\": true}],"
                             " \"template\": {\"name\": \"Shop\"}, \"version\": 1,"
                             " \"format\": \"tenthmark-template\"}";
  g_autoptr (TmTemplate) template = NULL;
  GError *error = NULL;

  template = tm_template_from_bytes (text, strlen (text), "f", &error);
  g_assert_no_error (error);
  g_assert_cmpstr (template->name, ==, "Shop");
  g_assert_cmpuint (template->fields->len, ==, 1);
  g_assert_true (tm_template_find_field (template, "Heat number")->required);
}

static void
test_file (void)
{
  g_autoptr (TmTemplate) template = tm_test_template ();
  g_autoptr (TmTemplate) back = NULL;
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-template-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "shop.tmtemplate", NULL);
  g_autofree char *large = g_malloc0 (TM_TEMPLATE_FILE_MAX + 1);
  GError *error = NULL;

  g_assert_null (tm_template_from_file (path, &error));
  g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_IO);
  g_assert_nonnull (strstr (error->message, path));
  g_clear_error (&error);
  g_assert_true (tm_template_to_file (template, path, &error));
  g_assert_no_error (error);
  back = tm_template_from_file (path, &error);
  g_assert_no_error (error);
  g_assert_true (tm_template_equal (template, back));
  g_assert_true (g_file_set_contents (path, large, TM_TEMPLATE_FILE_MAX + 1, NULL));
  g_assert_null (tm_template_from_file (path, &error));
  g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_TOO_LARGE);
  g_assert_nonnull (strstr (error->message, "8 MiB"));
  g_clear_error (&error);
  g_unlink (path);
  g_rmdir (folder);
}

static void
fill_statements (TmTemplate *template)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < TM_TEMPLATE_MAX_STATEMENT; i++)
    g_string_append (text, "𝔸");
  for (guint i = 0; i < TM_TEMPLATE_MAX_STATEMENTS; i++)
    {
      TmTemplateStatement *statement = tm_template_add_statement (template, TM_STATEMENT_AFTER_COVER);

      for (guint j = 0; j < TM_TEMPLATE_MAX_TEXTS; j++)
        {
          const char code[] = { 'a', (char)('a' + j), '\0' };

          tm_template_statement_add_text (statement, code, text->str);
        }
    }
}

/* What the checks allow can be taken to another bench. */
static void
test_largest (void)
{
  g_autoptr (TmTemplate) template = tm_template_new ();
  g_autoptr (TmTemplate) back = NULL;
  g_autoptr (GBytes) logo = g_bytes_new_take (g_malloc0 (TM_TEMPLATE_MAX_LOGO), TM_TEMPLATE_MAX_LOGO);
  g_autoptr (GString) bytes = NULL;
  GError *error = NULL;

  tm_template_set_logo (template, logo, "image/png");
  fill_statements (template);
  g_assert_cmpint (tm_template_check (template, NULL), ==, TM_TEMPLATE_OK);
  bytes = tm_template_to_string (template);
  back = tm_template_from_bytes (bytes->str, bytes->len, "largest", &error);
  g_assert_no_error (error);
  g_assert_true (tm_template_equal (template, back));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/template/wrong", test_wrong);
  g_test_add_func ("/exchange/template/many", test_many);
  g_test_add_func ("/exchange/template/again", test_again);
  g_test_add_func ("/exchange/template/blank", test_blank);
  g_test_add_func ("/exchange/template/order", test_order);
  g_test_add_func ("/exchange/template/file", test_file);
  g_test_add_func ("/exchange/template/largest", test_largest);
  return g_test_run ();
}
