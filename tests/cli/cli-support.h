/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-support: runs the command line as its users call it, with no locale set, in a folder of its
 * own.
 */

#pragma once

#include <gio/gio.h>
#include <glib/gstdio.h>
#include <string.h>
#include <yajl/yajl_tree.h>

/* What one call gave. */
typedef struct {
  int status;
  char *out;
  char *err;
} Call;

static inline void
clear_call (Call *call)
{
  g_free (call->out);
  g_free (call->err);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Call, clear_call)

static char *folder; /* made for this run and removed after it */

static inline char **
make_environment (void)
{
  char **environment = g_get_environ ();

  environment = g_environ_unsetenv (environment, "LANG");
  environment = g_environ_unsetenv (environment, "LC_ALL");
  environment = g_environ_unsetenv (environment, "LANGUAGE");
  return g_environ_setenv (environment, "XDG_DATA_HOME", folder, TRUE);
}

/* Runs tenthmark-cli with the words up to NULL. */
static inline void
run (Call *call, const char *first, ...)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  g_auto (GStrv) environment = make_environment ();
  g_autoptr (GError) error = NULL;
  va_list arguments;
  int wait_status;

  g_ptr_array_add (words, (gpointer)g_getenv ("TM_CLI"));
  va_start (arguments, first);
  for (const char *word = first; word != NULL; word = va_arg (arguments, const char *))
    g_ptr_array_add (words, (gpointer)word);
  va_end (arguments);
  g_ptr_array_add (words, NULL);
  g_spawn_sync (folder, (char **)words->pdata, environment, G_SPAWN_DEFAULT, NULL, NULL, &call->out,
                &call->err, &wait_status, &error);
  g_assert_no_error (error);
  g_assert_true (WIFEXITED (wait_status));
  call->status = WEXITSTATUS (wait_status);
}

static inline yajl_val
parse (const Call *call)
{
  char problem[256];
  yajl_val tree = yajl_tree_parse (call->out, problem, sizeof problem);

  if (tree == NULL)
    g_error ("not JSON: %s\n%s", problem, call->out);
  return tree;
}

static inline yajl_val
member (yajl_val object, const char *key)
{
  const char *path[] = { key, NULL };
  yajl_val value = yajl_tree_get (object, path, yajl_t_any);

  if (value == NULL)
    g_error ("no member “%s”", key);
  return value;
}

static inline void
assert_text (yajl_val object, const char *key, const char *expected)
{
  yajl_val value = member (object, key);

  if (expected == NULL)
    g_assert_true (YAJL_IS_NULL (value));
  else
    g_assert_cmpstr (YAJL_GET_STRING (value), ==, expected);
}

/* Refused in one line on standard error that holds every wanted text, and status 2. */
static inline void
assert_refused (const Call *call, const char *wanted)
{
  g_assert_cmpint (call->status, ==, 2);
  g_assert_cmpstr (call->out, ==, "");
  g_assert_nonnull (strstr (call->err, wanted));
  g_assert_cmpuint (strlen (call->err), ==, (gsize)(strchr (call->err, '\n') - call->err) + 1);
}

static inline char *
write_job (const char *name, const char *content)
{
  char *path = g_build_filename (folder, name, NULL);

  g_assert_true (g_file_set_contents (path, content, -1, NULL));
  return path;
}

G_GNUC_UNUSED static const char bore_job[]
    = "{\"format\": \"tenthmark-job\", \"version\": 1,"
      " \"job\": {\"part_number\": \"T-1\", \"unit\": \"mm\", \"decision\": \"guarded\"},"
      " \"gauges\": [{\"tag\": \"BM-1\", \"kind\": \"bore micrometer\", \"unit\": \"mm\", \"resolution\": "
      "\"0.001\","
      "  \"error_limit\": \"0.002\", \"calibrated\": \"2026-03-01\", \"due\": \"2027-03-01\"}],"
      " \"methods\": [{\"name\": \"bore micrometer\", \"gauges\": [\"BM-1\"]}],"
      " \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\", \"method\": \"bore micrometer\"},"
      "  {\"balloon\": \"2\", \"requirement\": \"62 ±0.1\"}],"
      " \"pieces\": [{\"serial\": \"001\"}]}";

static inline void
remove_folder (void)
{
  const char *name;
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_unlink (path);
    }
  g_rmdir (folder);
  g_free (folder);
}

/* One run of the tests of @argv in a folder that is gone after it; @add registers them. */
static inline int
run_cli_tests (int argc, char *argv[], void (*add) (void))
{
  int status;

  g_test_init (&argc, &argv, NULL);
  folder = g_dir_make_tmp ("tenthmark-cli-XXXXXX", NULL);
  add ();
  status = g_test_run ();
  remove_folder ();
  return status;
}
