/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-check-report: what contradicts itself in what a job's report says besides the sizes.
 */

#include "cli-check-report.h"

#include <glib/gi18n-lib.h>

#include "exchange-job.h"
#include "report-drawing.h"
#include "report-signed.h"

/* -------- Nonconformances -------- */

static gboolean
is_reading_of (const TmJob *job, const TmNonconformance *note, const char *id)
{
  const TmReading *reading = tm_job_find_reading (job, id);

  return reading != NULL && g_str_equal (reading->row.feature->balloon, note->feature);
}

static void
check_place (const TmNonconformance *note, const TmFeature *feature, GPtrArray *faults)
{
  if (note->place > feature->places)
    g_ptr_array_add (
        faults, g_strdup_printf (_ ("nonconformance %s: feature %s has %u places, and none number %u; name "
                                    "another place"),
                                 note->number, feature->balloon, feature->places, note->place));
}

static gboolean
has_counting_row (const GPtrArray *rows)
{
  for (guint i = 0; rows != NULL && i < rows->len; i++)
    if (tm_row_counts (g_ptr_array_index (rows, i)))
      return TRUE;
  return FALSE;
}

/* A piece that was measured there, and not since it was reworked: at this place. */
static gboolean
is_left_unmeasured (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  const GPtrArray *readings = tm_job_readings_at (job, piece, feature, place);
  const GPtrArray *trials = tm_job_pin_trials_at (job, piece, feature, place);

  return (readings != NULL || trials != NULL) && !has_counting_row (readings) && !has_counting_row (trials);
}

static void
check_measured (const TmJob *job, const TmNonconformance *note, const TmPiece *piece,
                const TmFeature *feature, GPtrArray *faults)
{
  for (guint place = 1; place <= feature->places; place++)
    {
      if ((note->place != 0 && note->place != place)
          || (*note->piece != '\0' && !g_str_equal (note->piece, piece->serial))
          || !is_left_unmeasured (job, piece, feature, place))
        continue;
      g_ptr_array_add (faults,
                       g_strdup_printf (_ ("nonconformance %s: feature %s of piece %s was reworked and not "
                                           "measured since; measure it again"),
                                        note->number, feature->balloon, piece->serial));
      return;
    }
}

static void
check_rework (const TmJob *job, const TmNonconformance *note, const TmFeature *feature, GPtrArray *faults)
{
  const char *after = note->rework_after;

  if (*note->rework_at == '\0')
    return;
  if (!g_str_equal (note->disposition, "rework") && !g_str_equal (note->disposition, "repair"))
    g_ptr_array_add (faults,
                     g_strdup_printf (_ ("nonconformance %s: a rework was done, but its disposition is "
                                         "“%s”; it is rework or repair"),
                                      note->number, note->disposition));
  if (*after != '\0' && !g_str_equal (after, "none") && !is_reading_of (job, note, after))
    g_ptr_array_add (faults, g_strdup_printf (_ ("nonconformance %s: rework_after “%s” is no reading of its "
                                                 "feature; name the newest one before the rework"),
                                              note->number, after));
  for (guint i = 0; i < job->pieces->len; i++)
    check_measured (job, note, g_ptr_array_index (job->pieces, i), feature, faults);
}

static void
check_nonconformance (const TmJob *job, const TmNonconformance *note, GPtrArray *faults)
{
  const TmFeature *feature = tm_job_find_feature (job, note->feature);

  if (feature == NULL)
    return;
  check_place (note, feature, faults);
  check_rework (job, note, feature, faults);
}

/* -------- Kind of first article -------- */

static void
check_affected (const TmJob *job, GPtrArray *faults)
{
  for (guint i = 0; i < job->features->len && job->first_article != TM_FIRST_ARTICLE_PARTIAL; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      if (feature->affected)
        g_ptr_array_add (faults, g_strdup_printf (_ ("feature %s: it is marked as affected, but the first "
                                                     "article is not partial; make it partial, or take the "
                                                     "mark away"),
                                                  feature->balloon));
    }
}

static void
check_article (const TmJob *job, GPtrArray *faults)
{
  if (job->article == TM_ARTICLE_DETAIL && job->sub_parts->len > 0)
    g_ptr_array_add (faults,
                     g_strdup (_ ("sub_parts: parts are listed, but the article is a detail part; say "
                                  "that it is an assembly, or take them out")));
}

/* -------- Drawings -------- */

/* Each is tried as a report would show it. */
static void
check_drawings (const TmJob *job, GPtrArray *faults)
{
  for (guint i = 0; i < job->drawings->len; i++)
    {
      const TmDrawing *drawing = g_ptr_array_index (job->drawings, i);
      g_autoptr (GError) error = NULL;
      const char *media;

      if (drawing->content == NULL)
        continue;
      media = tm_report_drawing_media (drawing->content, drawing->page, &error);
      if (media == NULL)
        g_ptr_array_add (faults, g_strdup_printf (_ ("drawing %s: %s"), drawing->name, error->message));
      else if (!g_str_equal (media, drawing->media))
        g_ptr_array_add (faults,
                         g_strdup_printf (_ ("drawing %s: its media says %s, but it is %s; correct that"),
                                          drawing->name, drawing->media, media));
    }
}

/* -------- Balloons -------- */

/* Once one balloon stands on a drawing each feature needs one: the package's drawing is read by them. */
static void
check_balloons (const TmJob *job, GPtrArray *faults)
{
  g_autoptr (GHashTable) marked = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < job->balloon_marks->len; i++)
    g_hash_table_add (marked,
                      (gpointer)((const TmBalloonMark *)g_ptr_array_index (job->balloon_marks, i))->feature);
  for (guint i = 0; i < job->features->len && job->balloon_marks->len > 0; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      if (!g_hash_table_contains (marked, feature->balloon))
        g_ptr_array_add (
            faults,
            g_strdup_printf (_ ("feature %s: its balloon stands on no drawing; place it"), feature->balloon));
    }
}

/* -------- Signatures -------- */

static void
check_signatures (const TmJob *job, GPtrArray *faults)
{
  g_autofree char *digest = job->signatures->len > 0 ? tm_job_digest (job) : NULL;
  const TmSignature *superseded = tm_job_superseded (job, digest);

  if (superseded != NULL)
    g_ptr_array_add (
        faults, g_strdup_printf (_ ("signature of %s, %s: superseded, the record has changed since; have "
                                    "the report signed again"),
                                 superseded->by, superseded->at));
}

void
tm_check_report (const TmJob *job, GPtrArray *faults)
{
  check_affected (job, faults);
  check_article (job, faults);
  check_drawings (job, faults);
  check_balloons (job, faults);
  check_signatures (job, faults);
  for (guint i = 0; i < job->nonconformances->len; i++)
    check_nonconformance (job, g_ptr_array_index (job->nonconformances, i), faults);
}
