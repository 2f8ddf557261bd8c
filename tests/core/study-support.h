/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * study-support: the values of a gauge study from a table of tests/data.
 */

#pragma once

#include <math.h>

#include "support-csv.h"

G_BEGIN_DECLS

static inline guint
support_study_level (const char *text)
{
  return g_ascii_isdigit (*text) ? (guint)g_ascii_strtoull (text, NULL, 10) - 1 : (guint)(*text - 'A');
}

/* In the order of tm_study_analyse(); free with g_free().  Pieces are numbered from 1, people lettered from
 * A. */
static inline double *
support_study_load (const char *file, const char *piece, const char *person, guint people, guint repeats)
{
  g_autoptr (SupportCsv) csv = support_csv_load (file);
  double *values = g_new (double, csv->rows->len);

  for (guint i = 0; i < csv->rows->len; i++)
    values[i] = NAN;
  for (guint i = 0; i < csv->rows->len; i++)
    {
      const guint cell = support_study_level (support_csv_get (csv, i, piece)) * people
                         + support_study_level (support_csv_get (csv, i, person));
      const guint trial = support_study_level (support_csv_get (csv, i, "trial"));

      g_assert_cmpuint (cell * repeats + trial, <, csv->rows->len);
      values[cell * repeats + trial] = g_ascii_strtod (support_csv_get (csv, i, "value"), NULL);
    }
  return values;
}

G_END_DECLS
