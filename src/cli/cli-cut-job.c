/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-cut-job: the next cut at a place of a job's piece, from its record.
 */

#include <glib/gi18n-lib.h>
#include <string.h>

#include "cli-cut.h"
#include "cli-verbs.h"

typedef struct {
  TmFeature *feature;
  TmPiece *piece;
  guint place;
  TmTool *tool;
  TmCutAsk ask;
  gint64 dial; /* negative: not stated */
} Place;

/* As stated, else the feature's, else that of the last cut there, else the job's only one. */
static gboolean
find_tool (const TmJob *job, const char *path, const char *name, Place *out)
{
  const TmCutRow *last = tm_job_last_cut (job, out->piece, out->feature, out->place);

  if (name == NULL && out->feature->tool[0] != '\0')
    name = out->feature->tool;
  else if (name == NULL && last != NULL && last->tool[0] != '\0')
    name = last->tool;
  else if (name == NULL && job->tools->len == 1)
    name = ((const TmTool *)g_ptr_array_index (job->tools, 0))->name;
  if (name == NULL)
    return tm_fail (_ ("cut: say with which tool of the job: --tool T")) == 0;
  out->tool = tm_job_find_tool (job, name);
  if (out->tool == NULL)
    return tm_fail (_ ("%s: there is no tool “%s”; name one of the job's"), path, name) == 0;
  return TRUE;
}

static gboolean
find_mate (const TmJob *job, const char *path, const char *serial, Place *out)
{
  if (serial == NULL)
    return TRUE;
  out->ask.mate = tm_job_find_mate_size (job, out->feature->balloon, serial);
  if (out->ask.mate == NULL)
    return tm_fail (_ ("%s: feature %s has no measured mate “%s”; add it, or leave --mate out to aim at the "
                       "drawing's limits"),
                    path, out->feature->balloon, serial)
           == 0;
  return TRUE;
}

static gboolean
find_method (const TmJob *job, const char *path, const char *name, Place *out)
{
  out->ask.method = name;
  if (name == NULL || tm_job_find_method (job, name) != NULL || tm_job_find_gauge (job, name) != NULL)
    return TRUE;
  return tm_fail (_ ("%s: there is no method or gauge “%s”"), path, name) == 0;
}

static gboolean
find_what (const TmJob *job, const char *path, const TmCutWhich *which, Place *out)
{
  if (!tm_pick_feature (job, path, which->feature, &out->feature)
      || !tm_pick_piece (job, path, which->piece, &out->piece))
    return FALSE;
  if (out->feature == NULL || out->piece == NULL)
    return tm_fail (_ ("cut: say of which piece and feature of the job: --piece S --feature N")) == 0;
  out->ask.risk = which->risk;
  out->ask.aim = job->cut_aim;
  out->dial = -1;
  return tm_pick_place ("cut", out->feature, which->place, &out->place)
         && find_tool (job, path, which->tool, out) && find_mate (job, path, which->mate, out)
         && find_method (job, path, which->method, out)
         && (which->aim == NULL || tm_cut_read_aim (which->aim, &out->ask.aim))
         && (which->dial == NULL || tm_cut_read_dial (which->dial, out->tool->unit, &out->dial));
}

/* What the tool did elsewhere in this job. */
static void
plan_place (const TmJob *job, const Place *place, TmCutAdvice *out)
{
  g_autoptr (GArray) answers
      = tm_cut_newest_answers (job, place->tool->name, place->piece, place->feature, place->place);
  g_autoptr (TmCutWork) work
      = tm_cut_work_new (job, place->piece, place->feature, place->place, place->tool,
                         (const TmCutAnswer *)(gconstpointer)answers->data, answers->len);

  if (place->dial >= 0)
    tm_cut_work_try (work, &place->ask, place->dial, out);
  else
    tm_cut_work_plan (work, &place->ask, out);
}

gboolean
tm_cut_take_job (const TmJob *job, const char *path, const TmCutWhich *which, TmCutCase *out)
{
  Place place = { 0 };

  if (!find_what (job, path, which, &place))
    return FALSE;
  plan_place (job, &place, &out->advice);
  out->is_tried = place.dial >= 0;
  out->unit = place.feature->unit;
  out->dial_unit = place.tool->unit;
  out->reads = place.tool->reads;
  out->feature = place.feature->balloon;
  out->piece = place.piece->serial;
  out->place = place.place;
  out->tool = place.tool->name;
  return TRUE;
}
