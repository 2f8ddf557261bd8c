/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * `book template` and `report --template` as their users call them.
 */

#include "cli-support.h"

static const char template_text[]
    = "{\n \"format\": \"tenthmark-template\",\n \"version\": 1,\n \"template\": {\n  \"name\": \"Example "
      "Shop\",\n"
      "  \"accent\": \"#1a5f7a\",\n  \"hidden\": [\"uncertainty\"]\n },\n \"fields\": [\n"
      "  {\"name\": \"Heat number\", \"required\": true}\n ],\n \"statements\": [\n"
      "  {\"place\": \"after cover\", \"text\": \"Made here.\"}\n ]\n}\n";

static char *
read_file (const char *path)
{
  char *text = NULL;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  return text;
}

/* In by --set, out by --out, the same bytes; the book's other facts go on. */
static void
test_book (void)
{
  g_autofree char *file = write_job ("shop.tmtemplate", template_text);
  g_autofree char *book = g_build_filename (folder, "template.tmbook", NULL);
  g_autofree char *out = g_build_filename (folder, "again.tmtemplate", NULL);
  g_autofree char *again = NULL;
  g_auto (Call) set = { 0 }, shown = { 0 }, json = { 0 }, written = { 0 }, verified = { 0 };

  run (&set, "book", "template", "--book", book, "--set", file, NULL);
  g_assert_cmpstr (set.err, ==, "");
  g_assert_cmpint (set.status, ==, 0);
  run (&shown, "book", "template", "--book", book, NULL);
  g_assert_nonnull (strstr (shown.out, "Shop: Example Shop\n"));
  g_assert_nonnull (strstr (shown.out, "Column left out: Uncertainty"));
  g_assert_nonnull (strstr (shown.out, "Field, required: Heat number\n"));
  g_assert_nonnull (strstr (shown.out, "1 statement\n"));
  run (&json, "book", "template", "--book", book, "--json", NULL);
  g_assert_cmpstr (json.out, ==, template_text);
  run (&written, "book", "template", "--book", book, "--out", out, NULL);
  g_assert_cmpint (written.status, ==, 0);
  again = read_file (out);
  g_assert_cmpstr (again, ==, template_text);
  run (&verified, "book", "verify", "--book", book, NULL);
  g_assert_cmpint (verified.status, ==, 0);
}

static void
test_book_wrong (void)
{
  g_autofree char *file
      = write_job ("wrong.tmtemplate", "{\"format\": \"tenthmark-template\", \"version\": 1, \"x\": 1}");
  g_autofree char *book = g_build_filename (folder, "wrong.tmbook", NULL);
  g_autofree char *blank = NULL;
  g_auto (Call) wrong = { 0 }, missing = { 0 }, both = { 0 }, bare = { 0 }, made = { 0 }, none = { 0 };

  run (&wrong, "book", "template", "--book", book, "--set", file, NULL);
  assert_refused (&wrong, "wrong.tmtemplate: x: ");
  g_assert_false (g_file_test (book, G_FILE_TEST_EXISTS));
  run (&missing, "book", "template", "--book", book, "--set", "no-such-file", NULL);
  assert_refused (&missing, "no-such-file");
  run (&both, "book", "template", "--book", book, "--set", file, "--out", "x", NULL);
  assert_refused (&both, "--set and --out");
  run (&bare, "book", "template", "--book", book, "more", NULL);
  assert_refused (&bare, "more");
  blank = write_job ("blank.tmtemplate", "{\"format\": \"tenthmark-template\", \"version\": 1}");
  run (&made, "book", "template", "--book", book, "--set", blank, NULL);
  g_assert_cmpint (made.status, ==, 0);
  run (&none, "book", "template", "--book", book, NULL);
  g_assert_nonnull (strstr (none.out, "no report template"));
}

static void
add_tests (void)
{
  g_test_add_func ("/cli/template/book", test_book);
  g_test_add_func ("/cli/template/book-wrong", test_book_wrong);
}

int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
