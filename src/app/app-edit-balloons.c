/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-balloons: features numbered anew as their balloons come on the drawings.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-edit-drawing.h"
#include "core-revision.h"

typedef struct {
  TmFeature *feature;
  const char *old;
  const char *number;
  const char *size_feature; /* as it was */
} Numbering;

/* -------- The order -------- */

/* Where the round begins, measured from three o'clock: a little before the upper left corner, so that a
 * balloon in that corner is the first one, whichever side of the diagonal it stands on. */
#define FIRST_TURN (-0.875 * G_PI)

/* How far around the middle of the page, clockwise: 0..2 pi. */
static double
find_turn (const TmBalloonMark *mark)
{
  TmMarkSpot spot = tm_mark_spot (mark);
  double turn = atan2 (spot.y - 0.5, spot.x - 0.5) - FIRST_TURN;

  return turn < 0 ? turn + 2 * G_PI : turn;
}

static int
compare_turns (gconstpointer a, gconstpointer b)
{
  double one = find_turn (*(TmBalloonMark *const *)a), other = find_turn (*(TmBalloonMark *const *)b);

  return (one > other) - (one < other);
}

static void
take_feature (GPtrArray *order, TmFeature *feature)
{
  if (feature != NULL && !g_ptr_array_find (order, feature, NULL))
    g_ptr_array_add (order, feature);
}

static void
take_drawing (const TmJob *job, const TmDrawing *drawing, GPtrArray *order)
{
  g_autoptr (GPtrArray) marks = g_ptr_array_new ();

  for (guint i = 0; i < job->balloon_marks->len; i++)
    {
      TmBalloonMark *mark = g_ptr_array_index (job->balloon_marks, i);

      if (g_str_equal (mark->drawing, drawing->name))
        g_ptr_array_add (marks, mark);
    }
  g_ptr_array_sort (marks, compare_turns);
  for (guint i = 0; i < marks->len; i++)
    take_feature (order, tm_job_find_feature (job, ((TmBalloonMark *)g_ptr_array_index (marks, i))->feature));
}

/* TmFeature, in the order that they are to have. */
static GPtrArray *
find_order (const TmJob *job)
{
  GPtrArray *order = g_ptr_array_new ();

  for (guint i = 0; i < job->drawings->len; i++)
    take_drawing (job, g_ptr_array_index (job->drawings, i), order);
  for (guint i = 0; i < job->features->len; i++)
    take_feature (order, g_ptr_array_index (job->features, i));
  return order;
}

/* -------- Whether it may be -------- */

/* Each row of the record begins with its TmEntryRow. */
static gboolean
is_recorded (const TmJob *job, const TmFeature *feature)
{
  const GPtrArray *records[] = { job->readings, job->pin_trials, job->cuts };

  for (gsize r = 0; r < G_N_ELEMENTS (records); r++)
    for (guint i = 0; i < records[r]->len; i++)
      if (((const TmEntryRow *)g_ptr_array_index (records[r], i))->feature == feature)
        return TRUE;
  for (guint i = 0; i < job->nonconformances->len; i++)
    if (g_str_equal (((TmNonconformance *)g_ptr_array_index (job->nonconformances, i))->feature,
                     feature->balloon))
      return TRUE;
  return FALSE;
}

static gboolean
may_number (const TmJob *job, const GArray *numberings, GError **error)
{
  for (guint i = 0; i < numberings->len; i++)
    {
      const Numbering *one = &g_array_index (numberings, Numbering, i);

      if (g_str_equal (one->old, one->number))
        continue;
      if (tm_job_is_by_reference (job) && !one->feature->affected)
        {
          g_set_error (
              error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED,
              _ ("Feature %s would become %s, but the baseline report speaks of it by its number; in "
                 "a partial first article mark it as affected, or keep the numbers."),
              one->old, one->number);
          return FALSE;
        }
      if (!is_recorded (job, one->feature))
        continue;
      g_set_error (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED,
                   _ ("Feature %s would become %s, but it has been measured under its number; numbers stay "
                      "once something is recorded."),
                   one->old, one->number);
      return FALSE;
    }
  return TRUE;
}

/* -------- Numbering -------- */

static GArray *
make_numberings (TmJob *job, const GPtrArray *order)
{
  GArray *numberings = g_array_new (FALSE, FALSE, sizeof (Numbering));

  for (guint i = 0; i < order->len; i++)
    {
      TmFeature *feature = g_ptr_array_index (order, i);
      g_autofree char *number = g_strdup_printf ("%u", i + 1);
      Numbering one = { feature, feature->balloon, tm_job_intern (job, number), feature->size_feature };

      g_array_append_val (numberings, one);
    }
  return numberings;
}

static void
set_balloon (TmJob *job, TmFeature *feature, const char *balloon)
{
  TmFeature *with = tm_edit_copy_feature (feature);
  TmAddStatus status;

  with->balloon = balloon;
  status = tm_job_replace_feature (job, feature->balloon, with);
  if (status != TM_ADD_OK)
    tm_feature_free (with);
  g_assert (status == TM_ADD_OK);
}

static const char *
find_number (const GArray *numberings, const char *old)
{
  for (guint i = 0; i < numberings->len; i++)
    {
      const Numbering *one = &g_array_index (numberings, Numbering, i);

      if (g_str_equal (one->old, old))
        return one->number;
    }
  return old;
}

/* Numbers change places, so each goes by way of a name that no feature has. */
static void
set_all (TmJob *job, const GArray *numberings, gboolean back)
{
  for (guint i = 0; i < numberings->len; i++)
    g_array_index (numberings, Numbering, i).feature->size_feature = "";
  for (guint i = 0; i < numberings->len; i++)
    {
      g_autofree char *between = g_strdup_printf ("\x1f%u", i);

      if (!g_str_equal (g_array_index (numberings, Numbering, i).old,
                        g_array_index (numberings, Numbering, i).number))
        set_balloon (job, g_array_index (numberings, Numbering, i).feature, tm_job_intern (job, between));
    }
  for (guint i = 0; i < numberings->len; i++)
    {
      const Numbering *one = &g_array_index (numberings, Numbering, i);

      if (!g_str_equal (one->old, one->number))
        set_balloon (job, one->feature, back ? one->old : one->number);
      one->feature->size_feature = back ? one->size_feature : find_number (numberings, one->size_feature);
    }
}

static void
put_in_order (GPtrArray *list, const GPtrArray *rows)
{
  while (list->len > 0)
    g_ptr_array_steal_index (list, list->len - 1);
  for (guint i = 0; i < rows->len; i++)
    g_ptr_array_add (list, g_ptr_array_index (rows, i));
}

gboolean
tm_edit_number_balloons (TmDocument *document, GError **error)
{
  TmJob *job = tm_document_job (document);
  g_autoptr (GPtrArray) order = find_order (job);
  g_autoptr (GPtrArray) before = g_ptr_array_new ();
  g_autoptr (GArray) numberings = make_numberings (job, order);

  if (!may_number (job, numberings, error))
    return FALSE;
  for (guint i = 0; i < job->features->len; i++)
    g_ptr_array_add (before, g_ptr_array_index (job->features, i));
  set_all (job, numberings, FALSE);
  put_in_order (job->features, order);
  if (tm_document_save_definitions (document, error))
    return TRUE;
  set_all (job, numberings, TRUE);
  put_in_order (job->features, before);
  return FALSE;
}
