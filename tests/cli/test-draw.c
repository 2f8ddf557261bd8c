/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * tenthmark-cli draw: drawings and balloons of a job file.
 */

#include "cli-support.h"

static const char square[] = "<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='80mm'>"
                             "<rect x='20' y='20' width='90' height='70' fill='none' stroke='black'/></svg>";

static char *
write_file (const char *name, const char *bytes, gssize length)
{
  char *path = g_build_filename (folder, name, NULL);

  g_assert_true (g_file_set_contents (path, bytes, length, NULL));
  return path;
}

static char *
read_all (const char *path)
{
  char *bytes = NULL;

  g_assert_true (g_file_get_contents (path, &bytes, NULL, NULL));
  return bytes;
}

static void
test_kept (void)
{
  g_autofree char *path = write_job ("draw.tmjob", bore_job), *svg = write_file ("part.svg", square, -1);
  g_autofree char *digest = g_compute_checksum_for_string (G_CHECKSUM_SHA256, square, -1);
  g_auto (Call) added = { 0 }, put = { 0 }, listed = { 0 };
  yajl_val tree, drawing;

  run (&added, "draw", path, "--add", svg, "--sheet", "1 of 2", NULL);
  g_assert_cmpstr (added.err, ==, "");
  g_assert_cmpint (added.status, ==, 0);
  g_assert_cmpstr (added.out, ==, "part: image/svg+xml, page 1, 0 balloons\n");
  run (&put, "draw", path, "--feature", "1", "--at", "0.25,0.5", "--to", "0.4,0.4", NULL);
  g_assert_cmpstr (put.err, ==, "");
  run (&listed, "draw", path, "--json", NULL);
  tree = parse (&listed);
  drawing = tree->u.array.values[0];
  g_assert_cmpstr (YAJL_GET_STRING (member (drawing, "digest")), ==, digest);
  g_assert_cmpint (YAJL_GET_INTEGER (member (drawing, "balloons")), ==, 1);
  g_assert_cmpint (YAJL_GET_INTEGER (member (drawing, "bytes")), ==, (gint64)strlen (square));
  g_assert_cmpstr (YAJL_GET_STRING (member (drawing, "sheet")), ==, "1 of 2");
  yajl_tree_free (tree);
}

/* A second balloon of the same place moves the first; taking the drawing out leaves the file as it was. */
static void
test_moved_and_removed (void)
{
  g_autofree char *path = write_job ("move.tmjob", bore_job), *svg = write_file ("part.svg", square, -1);
  g_autofree char *before = NULL, *after = NULL;
  g_auto (Call) same = { 0 }, added = { 0 }, put = { 0 }, moved = { 0 }, removed = { 0 };

  run (&same, "record", path, "--piece", "001", "--feature", "1", "--by", "XY", "25.010", NULL);
  before = read_all (path);
  run (&added, "draw", path, "--add", svg, "--name", "front", NULL);
  run (&put, "draw", path, "--feature", "1", "--at", "0.25,0.5", NULL);
  run (&moved, "draw", path, "--feature", "1", "--at", "0.75,0.5", NULL);
  g_assert_cmpstr (moved.out, ==, "front: image/svg+xml, page 1, 1 balloon\n");
  run (&removed, "draw", path, "--remove", "front", NULL);
  g_assert_cmpint (removed.status, ==, 0);
  after = read_all (path);
  g_assert_cmpstr (after, ==, before);
}

/* The next revision's drawing takes the place of the old one; its balloons stay. */
static void
test_replaced (void)
{
  g_autofree char *path = write_job ("replace.tmjob", bore_job), *svg = write_file ("part.svg", square, -1);
  g_autofree char *text = g_strconcat (square, "<!-- C -->", NULL);
  g_autofree char *next = write_file ("next.svg", text, -1);
  g_autofree char *digest = g_compute_checksum_for_string (G_CHECKSUM_SHA256, text, -1);
  g_auto (Call) added = { 0 }, again = { 0 }, replaced = { 0 }, none = { 0 };
  yajl_val tree, drawing;

  run (&added, "draw", path, "--add", svg, "--sheet", "2", "--feature", "1", "--at", "0.25,0.5", NULL);
  run (&again, "draw", path, "--add", next, "--name", "part", NULL);
  assert_refused (&again, "--replace");
  run (&none, "draw", path, "--add", next, "--replace", NULL);
  assert_refused (&none, "no drawing “next”; tenthmark-cli draw");
  run (&replaced, "draw", path, "--add", next, "--name", "part", "--replace", "--json", NULL);
  tree = parse (&replaced);
  drawing = tree->u.array.values[0];
  g_assert_cmpstr (YAJL_GET_STRING (member (drawing, "digest")), ==, digest);
  g_assert_cmpstr (YAJL_GET_STRING (member (drawing, "sheet")), ==, "2");
  g_assert_cmpint (YAJL_GET_INTEGER (member (drawing, "balloons")), ==, 1);
  yajl_tree_free (tree);
}

static void
test_refused (void)
{
  g_autofree char *path = write_job ("refuse.tmjob", bore_job), *svg = write_file ("part.svg", square, -1);
  g_autofree char *before = read_all (path), *after = NULL;
  g_autofree char *zip = write_file ("drawing.pdf", "PK\3\4nothing of a drawing", -1);
  g_autofree char *cut = write_file ("cut.pdf", "%PDF-1.4\n1 0 obj\n<< /Type /Catalog", -1);
  g_auto (Call) damaged = { 0 }, directory = { 0 };
  g_auto (Call) none = { 0 }, other = { 0 }, page = { 0 }, balloon = { 0 }, point = { 0 }, gone = { 0 };

  run (&none, "draw", path, "--add", "no-such-file.png", NULL);
  assert_refused (&none, "no-such-file.png");
  g_assert_nonnull (strstr (none.err, "check the name"));
  run (&directory, "draw", path, "--add", folder, NULL);
  assert_refused (&directory, "is no file");
  run (&other, "draw", path, "--add", zip, NULL);
  assert_refused (&other, "no PNG, JPEG, SVG or PDF");
  run (&damaged, "draw", path, "--add", cut, NULL);
  assert_refused (&damaged, "cut.pdf: the PDF is damaged");
  run (&page, "draw", path, "--add", svg, "--page", "2", NULL);
  assert_refused (&page, "no page 2");
  run (&balloon, "draw", path, "--feature", "1", "--at", "0.5,0.5", NULL);
  assert_refused (&balloon, "--name");
  run (&point, "draw", path, "--add", svg, "--feature", "1", "--at", "1.5,0.5", NULL);
  assert_refused (&point, "1.5,0.5");
  run (&gone, "draw", path, "--remove", "back", NULL);
  assert_refused (&gone, "no drawing “back”; tenthmark-cli draw");
  after = read_all (path);
  g_assert_cmpstr (after, ==, before);
}

static void
add_tests (void)
{
  g_test_add_func ("/draw/kept", test_kept);
  g_test_add_func ("/draw/moved-and-removed", test_moved_and_removed);
  g_test_add_func ("/draw/replaced", test_replaced);
  g_test_add_func ("/draw/refused", test_refused);
}
int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
