/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-press-job: the press fit of a feature of a job with its mate.
 */

#include <glib/gi18n-lib.h>

#include "cli-press.h"
#include "cli-verbs.h"

/* What is looked at: @piece and @mate NULL are taken by their limits. */
typedef struct {
  TmFeature *feature;
  TmPiece *piece;
  const TmMateSize *mate;
  guint place;
} Pair;

static gboolean
find_mate (const TmJob *job, const char *path, const char *serial, Pair *pair)
{
  if (serial != NULL)
    {
      pair->mate = tm_job_find_mate_size (job, pair->feature->balloon, serial);
      if (pair->mate == NULL)
        return tm_fail (
                   _ ("%s: feature %s has no measured mate “%s”; add it, or leave --mate out to take the "
                      "mate by its limits"),
                   path, pair->feature->balloon, serial)
               == 0;
    }
  else if (pair->piece != NULL)
    {
      pair->mate = tm_fit_find_mate (job, pair->piece, pair->feature, pair->place);
    }
  return TRUE;
}

static gboolean
find_pair (const TmJob *job, const char *path, const TmPressWhich *which, Pair *pair)
{
  if (!tm_pick_feature (job, path, which->feature, &pair->feature)
      || !tm_pick_piece (job, path, which->piece, &pair->piece))
    return FALSE;
  if (pair->feature == NULL)
    return tm_fail (_ ("press: say for which feature of the job: --feature N")) == 0;
  return tm_pick_place ("press", pair->feature, which->place, &pair->place)
         && find_mate (job, path, which->mate, pair);
}

static TmFitStatus
check_pair (const TmJob *job, const Pair *pair, TmFitCheck *out)
{
  TmFitStatus status = TM_FIT_OK;
  gboolean is_bore = tm_fit_feature_is_bore (pair->feature, &status);
  TmFitPart own, mate;

  if (status != TM_FIT_OK)
    return status;
  status = pair->piece != NULL ? tm_fit_part_as_measured (job, pair->piece, pair->feature, pair->place, &own)
                               : tm_fit_part_by_limits (pair->feature, &own);
  if (status != TM_FIT_OK && status != TM_FIT_NO_METHOD)
    return status;
  status = pair->mate != NULL ? tm_fit_mate_as_measured (pair->mate, &mate)
                              : tm_fit_mate_by_limits (pair->feature, &mate);
  if (status != TM_FIT_OK && status != TM_FIT_NO_METHOD)
    return status;
  return tm_fit_check (is_bore ? &own : &mate, is_bore ? &mate : &own, NULL, out);
}

gboolean
tm_press_take_job (const TmJob *job, const char *path, const TmPressWhich *which, TmPressCase *out)
{
  Pair pair = { 0 };
  TmFitCheck check;
  TmFitStatus status;

  if (!find_pair (job, path, which, &pair))
    return FALSE;
  status = check_pair (job, &pair, &check);
  if (status != TM_FIT_OK && status != TM_FIT_NO_METHOD)
    return tm_fail (_ ("%s: feature %s: %s"), path, pair.feature->balloon,
                    g_dpgettext2 (GETTEXT_PACKAGE, "fit status", tm_fit_status_word (status)))
           == 0;
  tm_press_input_of (job, pair.feature, &out->input);
  tm_press_take_fit (&out->input, &check);
  if (!tm_press_material (job, pair.feature, TRUE, &out->hub))
    out->hub.name = "";
  if (!tm_press_material (job, pair.feature, FALSE, &out->shaft))
    out->shaft.name = "";
  out->unit = pair.feature->unit;
  out->feature = pair.feature->balloon;
  out->piece = pair.piece != NULL ? pair.piece->serial : NULL;
  out->mate = pair.mate != NULL ? pair.mate->serial : NULL;
  return TRUE;
}
