/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * support-csv: reference tables of tests/data, one row after the other.
 *
 * Lines that begin with # are comments; the first other line names the columns.  No quoting.
 */

#pragma once

#include <glib.h>
#include <string.h>

G_BEGIN_DECLS

typedef struct {
  GPtrArray *rows; /* GStrv */
  char **names;
} SupportCsv;

static inline SupportCsv *
support_csv_load (const char *file)
{
  g_autofree char *path = g_build_filename (g_getenv ("TM_TEST_DATA"), file, NULL);
  g_autofree char *bytes = NULL;
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) lines = NULL;
  SupportCsv *csv = g_new0 (SupportCsv, 1);

  g_file_get_contents (path, &bytes, NULL, &error);
  g_assert_no_error (error);
  csv->rows = g_ptr_array_new_with_free_func ((GDestroyNotify)g_strfreev);
  lines = g_strsplit (bytes, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      char **cells;

      if (lines[i][0] == '#' || lines[i][0] == '\0')
        continue;
      cells = g_strsplit (g_strchomp (lines[i]), ",", -1);
      if (csv->names == NULL)
        csv->names = cells;
      else
        g_ptr_array_add (csv->rows, cells);
    }
  return csv;
}

static inline void
support_csv_free (SupportCsv *csv)
{
  g_ptr_array_unref (csv->rows);
  g_strfreev (csv->names);
  g_free (csv);
}
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SupportCsv, support_csv_free)

/* The text in column @name of row @row; the column must exist. */
static inline const char *
support_csv_get (const SupportCsv *csv, guint row, const char *name)
{
  char **cells = g_ptr_array_index (csv->rows, row);

  for (guint i = 0; csv->names[i] != NULL; i++)
    if (strcmp (csv->names[i], name) == 0)
      {
        g_assert_cmpuint (i, <, g_strv_length (cells));
        return cells[i];
      }
  g_assert_not_reached ();
}

G_END_DECLS
