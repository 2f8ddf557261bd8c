/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-resolution: whether a gauge's step is fine enough for the band, and for the spread it is to show.
 */

#include <math.h>
#include <string.h>

#include "core-method.h"

/* A step of more than this share of the band is coarse (common practice: the rule of ten). */
#define COARSE_SHARE 0.1
/* Readings that take fewer values than this show the step, not the part (common practice). */
#define FEW_VALUES 5
/* From this many readings on it can be said. */
#define ENOUGH_READINGS 10

gboolean
tm_resolution_is_coarse (const TmMethodUse *use, const TmLimits *limits)
{
  gint64 band = tm_limits_band (limits);

  return band > 0 && use->resolution > COARSE_SHARE * (double)band * (1 + 1e-12);
}

static gboolean
is_reading_of (const TmReading *reading, const TmFeature *feature, const char *method_name)
{
  const char *method = reading->method[0] != '\0' ? reading->method : feature->method;

  return reading->row.feature == feature && tm_row_counts (&reading->row) && reading->value.given
         && strcmp (method, method_name) == 0;
}

gboolean
tm_method_shows_few_values (const TmJob *job, const TmFeature *feature, const char *method_name,
                            guint *n_values)
{
  g_autoptr (GHashTable) values = g_hash_table_new (g_int64_hash, g_int64_equal);
  guint n_readings = 0;

  for (guint i = 0; i < job->readings->len; i++)
    {
      TmReading *reading = g_ptr_array_index (job->readings, i);

      if (!is_reading_of (reading, feature, method_name))
        continue;
      n_readings++;
      g_hash_table_add (values, &reading->value.count);
    }
  if (n_values)
    *n_values = g_hash_table_size (values);
  return n_readings >= ENOUGH_READINGS && g_hash_table_size (values) < FEW_VALUES;
}
