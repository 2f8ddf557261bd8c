/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * pdf-support: reads a PDF back with the tools of poppler, for the tests of pages.
 */

#pragma once

#include <gio/gio.h>
#include <glib/gstdio.h>
#include <string.h>

/* What a tool says of @path; the words up to NULL come before it. */
static inline char *
pdf_ask (const char *path, const char *last, const char *tool, ...)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  va_list list;
  char *out = NULL;
  int status;

  va_start (list, tool);
  for (const char *word = tool; word != NULL; word = va_arg (list, const char *))
    g_ptr_array_add (words, (gpointer)word);
  va_end (list);
  g_ptr_array_add (words, (gpointer)path);
  if (last != NULL)
    g_ptr_array_add (words, (gpointer)last);
  g_ptr_array_add (words, NULL);
  g_spawn_sync (NULL, (char **)words->pdata, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &out, NULL, &status,
                &error);
  g_assert_no_error (error);
  g_assert_true (g_spawn_check_wait_status (status, NULL));
  return out;
}

/* All its text, as laid out, a form feed after each page. */
static inline char *
pdf_text (const char *path)
{
  return pdf_ask (path, "-", "pdftotext", "-layout", NULL);
}

static inline guint
pdf_pages (const char *path)
{
  g_autofree char *info = pdf_ask (path, NULL, "pdfinfo", NULL);
  const char *at = strstr (info, "Pages:");

  g_assert_nonnull (at);
  return (guint)g_ascii_strtoull (at + strlen ("Pages:"), NULL, 10);
}

static inline guint
count_text (const char *text, const char *wanted)
{
  guint n = 0;

  for (const char *at = strstr (text, wanted); at != NULL; at = strstr (at + 1, wanted))
    n++;
  return n;
}

static inline double
read_attribute (const char *line, const char *name)
{
  const char *at = strstr (line, name);

  g_assert_nonnull (at);
  return g_ascii_strtod (at + strlen (name), NULL);
}

/* Every word of every page lies at least @margin points inside the paper. */
static inline void
assert_inside (const char *path, double margin)
{
  g_autofree char *boxes = pdf_ask (path, "-", "pdftotext", "-bbox", NULL);
  g_auto (GStrv) lines = g_strsplit (boxes, "\n", -1);
  double width = 0, height = 0;

  for (guint i = 0; lines[i] != NULL; i++)
    {
      if (strstr (lines[i], "<page ") != NULL)
        {
          width = read_attribute (lines[i], "width=\"");
          height = read_attribute (lines[i], "height=\"");
        }
      if (strstr (lines[i], "<word ") == NULL)
        continue;
      if (read_attribute (lines[i], "xMin=\"") < margin || read_attribute (lines[i], "yMin=\"") < margin
          || read_attribute (lines[i], "xMax=\"") > width - margin
          || read_attribute (lines[i], "yMax=\"") > height - margin)
        g_error ("outside: %s", lines[i]);
    }
}

/* The tools are there, or the test is skipped. */
static inline gboolean
has_pdf_tools (void)
{
  g_autofree char *tool = g_find_program_in_path ("pdftotext");

  if (tool == NULL)
    g_test_skip ("poppler-utils is not installed");
  return tool != NULL;
}
