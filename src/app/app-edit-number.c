/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-number: the next balloon number and the next piece's serial; features that are read
 * again under another general tolerance.
 */

#include <glib/gi18n-lib.h>

#include "app-edit.h"
#include "core-callout.h"
#include "core-revision.h"

char *
tm_edit_next_balloon (const TmJob *job)
{
  guint64 largest = 0;

  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);
      guint64 number;

      if (g_ascii_string_to_unsigned (feature->balloon, 10, 1, G_MAXUINT32, &number, NULL))
        largest = MAX (largest, number);
    }
  return g_strdup_printf ("%" G_GUINT64_FORMAT, largest + 1);
}

/* @serial with its last digits counted on by one, as wide as they were. */
static char *
count_on (const char *serial)
{
  gsize end = strlen (serial);
  gsize start = end;
  g_autofree char *head = NULL;
  guint64 number;

  while (start > 0 && end - start < 18 && g_ascii_isdigit (serial[start - 1]))
    start--;
  head = g_strndup (serial, start);
  if (start == end || !g_ascii_string_to_unsigned (serial + start, 10, 0, G_MAXINT64, &number, NULL))
    return g_strdup_printf ("%s-2", serial);
  return g_strdup_printf ("%s%0*" G_GUINT64_FORMAT, head, (int)(end - start), number + 1);
}

char *
tm_edit_next_serial (const TmJob *job)
{
  const TmPiece *last;
  char *serial;

  if (job->pieces->len == 0)
    return g_strdup ("001");
  last = g_ptr_array_index (job->pieces, job->pieces->len - 1);
  serial = count_on (last->serial);
  while (tm_job_find_piece (job, serial) != NULL)
    {
      char *next = count_on (serial);

      g_free (serial);
      serial = next;
    }
  return serial;
}

static gboolean
same_quantity (const TmQuantity *a, const TmQuantity *b)
{
  return a->given == b->given && a->count == b->count && a->unit == b->unit && a->decimals == b->decimals;
}

/* Whether @feature is read otherwise under the general tolerance @text than under the job's. */
static gboolean
reads_otherwise (const TmJob *job, const TmFeature *feature, const char *text)
{
  TmUnit unit = tm_callout_unit (job, feature->unit);
  TmCallout now, then;

  if (*feature->requirement == '\0')
    return FALSE;
  now = tm_callout_read (feature->requirement, unit, job->general_tolerance);
  then = tm_callout_read (feature->requirement, unit, text);
  return now.kind != then.kind || !same_quantity (&now.lower, &then.lower)
         || !same_quantity (&now.upper, &then.upper);
}

guint
tm_edit_general_tolerance_count (TmDocument *document, const char *text)
{
  const TmJob *job = tm_document_job (document);
  guint n = 0;

  for (guint i = 0; i < job->features->len; i++)
    n += reads_otherwise (job, g_ptr_array_index (job->features, i), text) ? 1 : 0;
  return n;
}

/* Reads @feature again under the job's general tolerance; a way of the metal that the machinist
 * had said stays. */
static void
read_again (TmJob *job, TmFeature *feature)
{
  TmCut cut = feature->cut;
  guint places = feature->places;

  tm_callout_apply (job, feature);
  feature->affected |= tm_job_is_by_reference (job);
  if (cut != TM_CUT_UNKNOWN)
    feature->cut = cut;
  feature->places = MAX (feature->places, places);
}

static void
restore_features (TmJob *job, GPtrArray *before)
{
  for (guint i = 0; i < before->len; i++)
    {
      TmFeature *feature = g_ptr_array_index (before, i);

      if (tm_job_replace_feature (job, feature->balloon, feature) != TM_ADD_OK)
        tm_feature_free (feature);
    }
}

gboolean
tm_edit_general_tolerance (TmDocument *document, const char *text, GError **error)
{
  TmJob *job = tm_document_job (document);
  g_autoptr (GPtrArray) before = g_ptr_array_new ();
  g_autoptr (GPtrArray) changed = g_ptr_array_new ();
  const char *old = job->general_tolerance;

  for (guint i = 0; i < job->features->len; i++)
    if (reads_otherwise (job, g_ptr_array_index (job->features, i), text))
      g_ptr_array_add (changed, g_ptr_array_index (job->features, i));
  job->general_tolerance = tm_job_intern (job, text);
  for (guint i = 0; i < changed->len; i++)
    {
      g_ptr_array_add (before, tm_edit_copy_feature (g_ptr_array_index (changed, i)));
      read_again (job, g_ptr_array_index (changed, i));
    }
  if (tm_document_save_definitions (document, error))
    {
      g_ptr_array_set_free_func (before, (GDestroyNotify)tm_feature_free);
      return TRUE;
    }
  job->general_tolerance = old;
  restore_features (job, before);
  return FALSE;
}
