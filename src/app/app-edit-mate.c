/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-mate.h"

#include <glib/gi18n-lib.h>

TmMateSize *
tm_edit_copy_mate_size (const TmMateSize *mate)
{
  return g_memdup2 (mate, sizeof *mate);
}

static gboolean
add_mate (TmDocument *document, TmMateSize *mate, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmAddStatus status = tm_job_add_mate_size (job, mate);

  if (status != TM_ADD_OK)
    {
      tm_edit_refuse (mate->serial, status, error);
      tm_mate_size_free (mate);
      return FALSE;
    }
  if (tm_document_save_definitions (document, error))
    return TRUE;
  tm_job_remove_mate_size (job, mate);
  return FALSE;
}

/* What the job would refuse in a row of that feature and serial, were it added beside @old. */
static TmAddStatus
check_change (const TmJob *job, const TmMateSize *old, const TmMateSize *mate)
{
  const TmMateSize *found = tm_job_find_mate_size (job, mate->feature, mate->serial);

  if (*mate->serial == '\0')
    return TM_ADD_NO_NAME;
  if (tm_job_find_feature (job, mate->feature) == NULL)
    return TM_ADD_NO_FEATURE;
  return found != NULL && found != old ? TM_ADD_TAKEN : TM_ADD_OK;
}

static void
free_mate (gpointer row)
{
  tm_mate_size_free (row);
}

gboolean
tm_edit_put_mate_size (TmDocument *document, TmMateSize *old, TmMateSize *mate, GError **error)
{
  TmAddStatus status;

  if (old == NULL)
    return add_mate (document, mate, error);
  status = check_change (tm_document_job (document), old, mate);
  if (status != TM_ADD_OK)
    {
      tm_edit_refuse (mate->serial, status, error);
      tm_mate_size_free (mate);
      return FALSE;
    }
  return tm_edit_put_row (document, tm_document_job (document)->mate_sizes, old, mate, sizeof *mate,
                          free_mate, error);
}

gboolean
tm_edit_remove_mate_size (TmDocument *document, TmMateSize *mate, GError **error)
{
  return tm_edit_remove_row (document, tm_document_job (document)->mate_sizes, mate, free_mate, error);
}

gboolean
tm_edit_wanted_clearance (TmDocument *document, TmFeature *feature, TmQuantity least, TmQuantity most,
                          GError **error)
{
  const TmMate before = feature->mate;

  if (least.given && most.given && least.count > most.count)
    {
      g_set_error_literal (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED,
                           _ ("The least clearance lies above the most; an interference is written below "
                              "zero, the greater one as the least."));
      return FALSE;
    }
  feature->mate.wanted_least = least;
  feature->mate.wanted_most = most;
  if (tm_document_save_definitions (document, error))
    return TRUE;
  feature->mate = before;
  return FALSE;
}

gboolean
tm_edit_mean_mates_for (TmDocument *document, const TmMeantFor *choice, guint n, GError **error)
{
  g_autofree TmMateSize *before = g_new (TmMateSize, MAX (n, 1));

  for (guint i = 0; i < n; i++)
    {
      TmMateSize *mate = choice[i].mate;

      before[i] = *mate;
      mate->piece = choice[i].piece;
      mate->place = *choice[i].piece != '\0' && choice[i].place > 1
                        ? tm_quantity_new (choice[i].place, TM_UNIT_COUNT, 0)
                        : TM_QUANTITY_NONE;
    }
  if (tm_document_save_definitions (document, error))
    return TRUE;
  for (guint i = n; i > 0; i--)
    *choice[i - 1].mate = before[i - 1];
  return FALSE;
}
