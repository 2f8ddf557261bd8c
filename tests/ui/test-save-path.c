/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A name without its ending gets it, and no file is written over that nobody was asked about.
 */

#include <glib/gstdio.h>

#include "app-edit.h"
#include "app-save-path.h"

static void
check_end (const char *path, const char *expected)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *ended = tm_save_path_end (path, ".pdf", &error);

  g_assert_no_error (error);
  g_assert_cmpstr (ended, ==, expected);
}

static void
test_end (void)
{
  check_end ("/nowhere/report", "/nowhere/report.pdf");
  check_end ("/nowhere/report.pdf", "/nowhere/report.pdf");
  check_end ("/nowhere/REPORT.PDF", "/nowhere/REPORT.PDF");
  check_end ("/nowhere/report.v2", "/nowhere/report.v2.pdf");
}

static void
test_there (void)
{
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-path-XXXXXX", NULL);
  g_autofree char *bare = g_build_filename (folder, "report", NULL);
  g_autofree char *whole = g_strconcat (bare, ".pdf", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents (whole, "kept", -1, NULL));
  g_assert_null (tm_save_path_end (bare, ".pdf", &error));
  g_assert_error (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED);
  g_assert_true (g_str_has_prefix (error->message, "report.pdf: "));
  g_assert_null (strchr (error->message, '\n'));
  /* By its whole name it was asked about. */
  check_end (whole, whole);
  g_assert_cmpint (g_unlink (whole), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/save-path/end", test_end);
  g_test_add_func ("/save-path/there", test_there);
  return g_test_run ();
}
