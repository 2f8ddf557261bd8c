/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * `book template` and `report --template` as their users call them.
 */

#include "cli-support.h"

static const char template_text[]
    = "{\n \"format\": \"tenthmark-template\",\n \"version\": 1,\n \"template\": {\n  \"name\": \"Example "
      "Shop\",\n"
      "  \"accent\": \"#1a5f7a\",\n  \"ground\": \"#dfe8c4\",\n  \"hidden\": [\"uncertainty\"]\n },\n "
      "\"fields\": [\n"
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
  g_assert_nonnull (strstr (shown.out, "Heads and lines: #1a5f7a\nGround of table heads: #dfe8c4\n"));
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

/* What it requires is missed, and what it states is printed; one that cannot be used is refused before
 * anything is written. */
static void
test_report (void)
{
  g_autofree char *job = write_job ("bore.tmjob", bore_job);
  g_autofree char *file = write_job ("shop.tmtemplate", template_text);
  g_autofree char *broken = write_job (
      "broken.tmtemplate", "{\"format\": \"tenthmark-template\", \"version\": 1, \"template\": {\"logo\": "
                           "{\"media\": \"image/png\", \"content\": \"eA==\"}}}");
  g_autofree char *out = g_build_filename (folder, "bore.pdf", NULL);
  g_auto (Call) with = { 0 }, without = { 0 }, refused = { 0 }, not_kept = { 0 };

  run (&with, "report", job, "--out", out, "--template", file, NULL);
  g_assert_cmpint (with.status, ==, 0);
  g_assert_nonnull (strstr (with.out, "missing: The shop's field “Heat number” is empty"));
  run (&without, "report", job, "--out", out, NULL);
  g_assert_null (strstr (without.out, "Heat number"));
  g_unlink (out);
  run (&refused, "report", job, "--out", out, "--template", broken, NULL);
  assert_refused (&refused, "broken.tmtemplate: The logo cannot be used: ");
  g_assert_false (g_file_test (out, G_FILE_TEST_EXISTS));
  run (&not_kept, "book", "template", "--book", out, "--set", broken, NULL);
  assert_refused (&not_kept, "broken.tmtemplate: The logo cannot be used: ");
  g_assert_false (g_file_test (out, G_FILE_TEST_EXISTS));
}

static void
add_tests (void)
{
  g_test_add_func ("/cli/template/book", test_book);
  g_test_add_func ("/cli/template/book-wrong", test_book_wrong);
  g_test_add_func ("/cli/template/report", test_report);
}

int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
