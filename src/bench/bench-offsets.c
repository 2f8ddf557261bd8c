/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-offsets: the two offsets of a position reading, as typed.
 */

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bench-private.h"

static gboolean
read_offset (const TmFeature *feature, const char *axis, const char *text, TmQuantity *out, GError **error)
{
  g_autofree char *shown = NULL;
  TmReadStatus status = TM_READ_NOT_A_NUMBER;

  if (text == NULL)
    text = "";
  if (feature->unit != TM_UNIT_NONE)
    status = tm_quantity_read (text, feature->unit, out);
  if (status == TM_READ_OK)
    return TRUE;
  shown = tm_bench_show_text (text);
  g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY, _ ("Feature %s, %s: “%s”: %s."), feature->balloon,
               axis, shown, _ (tm_read_status_text (status)));
  return FALSE;
}

gboolean
tm_bench_read_offsets (const TmFeature *feature, const char *dx_text, const char *dy_text, TmReading *into,
                       GError **error)
{
  if (feature->kind != TM_KIND_POSITION)
    {
      g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY,
                   _ ("Feature %s is no position; type one reading."), feature->balloon);
      return FALSE;
    }
  return read_offset (feature, "dx", dx_text, &into->dx, error)
         && read_offset (feature, "dy", dy_text, &into->dy, error);
}

gboolean
tm_bench_read_offset_pair (const TmFeature *feature, const char *text, TmReading *into, GError **error)
{
  const char *typed = text != NULL ? text : "";
  /* With a semicolon each side may carry its unit, as it may where the offsets are first typed. */
  g_auto (GStrv) parts = g_strsplit_set (typed, strchr (typed, ';') != NULL ? ";" : " \t\r\n", -1);
  const char *found[2] = { NULL, NULL };
  guint n = 0;

  for (guint i = 0; parts[i] != NULL; i++)
    {
      if (*parts[i] == '\0')
        continue;
      if (n < 2)
        found[n] = parts[i];
      n++;
    }
  if (n != 2)
    {
      g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY,
                   _ ("Feature %s: write both offsets, like 0.012; -0.005."), feature->balloon);
      return FALSE;
    }
  return tm_bench_read_offsets (feature, found[0], found[1], into, error);
}
