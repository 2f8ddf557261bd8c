/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-find: looking things up in a job.
 */

#include "core-model.h"

#include "core-cut-order.h"
#include "core-index.h"

TmPerson *
tm_job_find_person (const TmJob *job, const char *initials)
{
  g_return_val_if_fail (job != NULL, NULL);

  return tm_index_find (job->index, TM_INDEX_PERSON, initials);
}

TmGauge *
tm_job_find_gauge (const TmJob *job, const char *tag)
{
  g_return_val_if_fail (job != NULL, NULL);

  return tm_index_find (job->index, TM_INDEX_GAUGE, tag);
}

TmMethod *
tm_job_find_method (const TmJob *job, const char *name)
{
  g_return_val_if_fail (job != NULL, NULL);

  return tm_index_find (job->index, TM_INDEX_METHOD, name);
}

TmFeature *
tm_job_find_feature (const TmJob *job, const char *balloon)
{
  g_return_val_if_fail (job != NULL, NULL);

  return tm_index_find (job->index, TM_INDEX_FEATURE, balloon);
}

TmPiece *
tm_job_find_piece (const TmJob *job, const char *serial)
{
  g_return_val_if_fail (job != NULL, NULL);

  return tm_index_find (job->index, TM_INDEX_PIECE, serial);
}

TmReading *
tm_job_find_reading (const TmJob *job, const char *id)
{
  g_return_val_if_fail (job != NULL, NULL);

  return tm_index_find (job->index, TM_INDEX_READING, id);
}

TmPinTrial *
tm_job_find_pin_trial (const TmJob *job, const char *id)
{
  g_return_val_if_fail (job != NULL, NULL);

  return tm_index_find (job->index, TM_INDEX_PIN_TRIAL, id);
}

TmCutRow *
tm_job_find_cut (const TmJob *job, const char *id)
{
  g_return_val_if_fail (job != NULL, NULL);

  return tm_index_find (job->index, TM_INDEX_CUT, id);
}

TmTool *
tm_job_find_tool (const TmJob *job, const char *name)
{
  g_return_val_if_fail (job != NULL, NULL);

  return tm_index_find (job->index, TM_INDEX_TOOL, name);
}

TmShopMaterial *
tm_job_find_material (const TmJob *job, const char *name)
{
  g_return_val_if_fail (job != NULL, NULL);

  return tm_index_find (job->index, TM_INDEX_MATERIAL, name);
}

TmMateSize *
tm_job_find_mate_size (const TmJob *job, const char *balloon, const char *serial)
{
  g_return_val_if_fail (job != NULL && balloon != NULL && serial != NULL, NULL);

  for (guint i = 0; i < job->mate_sizes->len; i++)
    {
      TmMateSize *mate = g_ptr_array_index (job->mate_sizes, i);

      if (g_str_equal (mate->feature, balloon) && g_str_equal (mate->serial, serial))
        return mate;
    }
  return NULL;
}

const GPtrArray *
tm_job_cuts_at (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  g_return_val_if_fail (job != NULL, NULL);

  return tm_index_cuts_at (job->index, piece, feature, place);
}

/* Where in the record the cut was made: a correction is written down later. */
static guint
find_cut_position (const TmJob *job, const TmCutRow *cut)
{
  guint position = 0;

  g_ptr_array_find (job->cuts, tm_cut_order_first (job, cut), &position);
  return position;
}

TmCutRow *
tm_job_last_cut (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  const GPtrArray *cuts = tm_job_cuts_at (job, piece, feature, place);
  TmCutRow *last = NULL;

  for (guint i = cuts != NULL ? cuts->len : 0; i > 0; i--)
    {
      TmCutRow *cut = g_ptr_array_index (cuts, i - 1);

      if (!tm_row_stands (&cut->row))
        continue;
      if (last == NULL || find_cut_position (job, cut) > find_cut_position (job, last))
        last = cut;
      /* Those before it in the list were made before it. */
      if (*cut->row.replaces == '\0')
        break;
    }
  return last;
}

const GPtrArray *
tm_job_readings_at (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  g_return_val_if_fail (job != NULL, NULL);

  return tm_index_readings_at (job->index, piece, feature, place);
}

const GPtrArray *
tm_job_pin_trials_at (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  g_return_val_if_fail (job != NULL, NULL);

  return tm_index_pin_trials_at (job->index, piece, feature, place);
}

TmStudy *
tm_job_find_study (const TmJob *job, const char *name)
{
  g_return_val_if_fail (job != NULL, NULL);

  return tm_index_find (job->index, TM_INDEX_STUDY, name);
}

TmNonconformance *
tm_job_nonconformance_of (const TmJob *job, const TmPiece *piece, const TmFeature *feature)
{
  g_return_val_if_fail (job != NULL && feature != NULL, NULL);

  for (guint i = 0; i < job->nonconformances->len; i++)
    {
      TmNonconformance *found = g_ptr_array_index (job->nonconformances, i);
      gboolean every_piece = *found->piece == '\0';

      if (!g_str_equal (found->feature, feature->balloon))
        continue;
      if (every_piece || (piece != NULL && g_str_equal (found->piece, piece->serial)))
        return found;
    }
  return NULL;
}

TmNonconformance *
tm_job_nonconformance_at (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  g_return_val_if_fail (job != NULL && piece != NULL && feature != NULL, NULL);

  for (guint i = job->nonconformances->len; i > 0; i--)
    {
      TmNonconformance *found = g_ptr_array_index (job->nonconformances, i - 1);

      if (g_str_equal (found->feature, feature->balloon) && (found->place == 0 || found->place == place)
          && (*found->piece == '\0' || g_str_equal (found->piece, piece->serial)))
        return found;
    }
  return NULL;
}

TmDrawing *
tm_job_find_drawing (const TmJob *job, const char *name)
{
  g_return_val_if_fail (job != NULL && name != NULL, NULL);

  for (guint i = 0; i < job->drawings->len; i++)
    {
      TmDrawing *drawing = g_ptr_array_index (job->drawings, i);

      if (g_str_equal (drawing->name, name))
        return drawing;
    }
  return NULL;
}

const char *
tm_job_drawing_revision (const TmJob *job)
{
  g_return_val_if_fail (job != NULL, "");

  return *job->drawing_revision != '\0' ? job->drawing_revision : job->revision;
}

gboolean
tm_job_feature_is_asked (const TmJob *job, const TmFeature *feature)
{
  g_return_val_if_fail (job != NULL && feature != NULL, TRUE);

  if (job->first_article == TM_FIRST_ARTICLE_FULL || feature->affected)
    return TRUE;
  for (guint i = 0; i < job->features->len; i++)
    {
      if (((const TmFeature *)g_ptr_array_index (job->features, i))->affected)
        return FALSE;
    }
  return TRUE;
}

gboolean
tm_job_has_first_article (const TmJob *job)
{
  g_return_val_if_fail (job != NULL, FALSE);

  for (guint i = 0; i < job->pieces->len; i++)
    {
      const TmPiece *piece = g_ptr_array_index (job->pieces, i);

      if (piece->first_article)
        return TRUE;
    }
  return FALSE;
}

gboolean
tm_row_stands (const TmEntryRow *row)
{
  g_return_val_if_fail (row != NULL, FALSE);

  return row->replaced_by == NULL && row->withdrawn == NULL;
}

gboolean
tm_row_counts (const TmEntryRow *row)
{
  g_return_val_if_fail (row != NULL, FALSE);

  return tm_row_stands (row) && !row->before_cut && !row->before_rework;
}

TmCut
tm_feature_cut (const TmFeature *feature)
{
  g_return_val_if_fail (feature != NULL, TM_CUT_UNKNOWN);

  if (feature->cut != TM_CUT_UNKNOWN)
    return feature->cut;
  if (feature->kind == TM_KIND_BORE || feature->kind == TM_KIND_DEPTH)
    return TM_CUT_GROWS;
  return feature->kind == TM_KIND_SHAFT ? TM_CUT_SHRINKS : TM_CUT_UNKNOWN;
}
