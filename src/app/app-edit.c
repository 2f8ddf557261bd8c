/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "core-callout.h"
#include "core-revision.h"

G_DEFINE_QUARK (tm - edit - error - quark, tm_edit_error)

gboolean
tm_edit_refuse (const char *name, TmAddStatus status, GError **error)
{
  const char *why = g_dgettext (GETTEXT_PACKAGE, tm_add_status_text (status));

  g_set_error (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED, "%s: %s", name, why);
  return FALSE;
}

gboolean
tm_edit_refuse_fault (const char *tag, TmGaugeFault fault, GError **error)
{
  const char *why = g_dgettext (GETTEXT_PACKAGE, tm_gauge_fault_text (fault));

  g_set_error (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED, "%s: %s", tag, why);
  return FALSE;
}

TmFeature *
tm_edit_copy_feature (const TmFeature *feature)
{
  TmFeature *copy = g_memdup2 (feature, sizeof *feature);

  copy->stations = g_ptr_array_copy (feature->stations, NULL, NULL);
  return copy;
}

TmGauge *
tm_edit_copy_gauge (const TmGauge *gauge)
{
  return g_memdup2 (gauge, sizeof *gauge);
}

TmMethod *
tm_edit_copy_method (const TmMethod *method)
{
  TmMethod *copy = g_memdup2 (method, sizeof *method);

  copy->gauges = g_ptr_array_copy (method->gauges, NULL, NULL);
  return copy;
}

gboolean
tm_edit_facts (TmDocument *document, TmFactsChange change, gpointer data, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmJob before = *job;

  change (job, data);
  if (tm_document_save_definitions (document, error))
    return TRUE;
  *job = before;
  return FALSE;
}

gboolean
tm_edit_add_feature (TmDocument *document, TmFeature *feature, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmAddStatus status;

  /* No baseline report speaks of what is new. */
  feature->affected |= tm_job_is_by_reference (job);
  status = tm_job_add_feature (job, feature);

  if (status != TM_ADD_OK)
    {
      tm_edit_refuse (feature->balloon, status, error);
      tm_feature_free (feature);
      return FALSE;
    }
  if (tm_document_save_definitions (document, error))
    return TRUE;
  tm_job_remove_feature (job, feature->balloon);
  tm_document_leave (document, NULL, feature);
  return FALSE;
}

void
tm_edit_give_back (GPtrArray *list, GPtrArray *before)
{
  g_ptr_array_set_size (list, 0);
  g_ptr_array_extend_and_steal (list, before);
}

static gpointer
copy_mark (gconstpointer row, gpointer data)
{
  return g_memdup2 (row, sizeof (TmBalloonMark));
}

gboolean
tm_edit_replace_feature (TmDocument *document, const char *balloon, TmFeature *with, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmFeature *feature = tm_job_find_feature (job, balloon);
  TmFeature *before = feature != NULL ? tm_edit_copy_feature (feature) : NULL;
  g_autoptr (GPtrArray) marks = g_ptr_array_copy (job->balloon_marks, copy_mark, NULL);
  const char *new_balloon = with->balloon;
  TmAddStatus status;

  if (feature != NULL && tm_job_is_by_reference (job) && tm_feature_requires_other (feature, with))
    with->affected = TRUE;
  status = tm_job_replace_feature (job, balloon, with);

  if (status != TM_ADD_OK)
    {
      tm_edit_refuse (new_balloon, status, error);
      tm_feature_free (with);
      g_clear_pointer (&before, tm_feature_free);
      return FALSE;
    }
  if (tm_document_save_definitions (document, error))
    {
      tm_feature_free (before);
      return TRUE;
    }
  tm_job_replace_feature (job, new_balloon, before);
  if (marks->len == job->balloon_marks->len)
    return FALSE;
  tm_edit_give_back (job->balloon_marks, g_steal_pointer (&marks));
  tm_document_restored (document);
  return FALSE;
}

void
tm_edit_move_last (GPtrArray *list, guint at)
{
  gpointer row = g_ptr_array_steal_index (list, list->len - 1);

  g_ptr_array_insert (list, (int)at, row);
}

static gpointer
copy_mate (gconstpointer row, gpointer data)
{
  return g_memdup2 (row, sizeof (TmMateSize));
}

/* What hangs on a feature goes with it, and comes back with it. */
gboolean
tm_edit_remove_feature (TmDocument *document, const char *balloon, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmFeature *feature = tm_job_find_feature (job, balloon);
  TmFeature *before = feature != NULL ? tm_edit_copy_feature (feature) : NULL;
  g_autoptr (GPtrArray) marks = g_ptr_array_copy (job->balloon_marks, copy_mark, NULL);
  g_autoptr (GPtrArray) mates = g_ptr_array_copy (job->mate_sizes, copy_mate, NULL);
  TmAddStatus status;
  guint at = 0;

  g_ptr_array_find (job->features, feature, &at);
  status = tm_job_remove_feature (job, balloon);
  if (status != TM_ADD_OK)
    {
      g_clear_pointer (&before, tm_feature_free);
      return tm_edit_refuse (balloon, status, error);
    }
  tm_document_leave (document, NULL, feature);
  if (tm_document_save_definitions (document, error))
    {
      tm_feature_free (before);
      return TRUE;
    }
  tm_job_add_feature (job, before);
  tm_edit_move_last (job->features, at);
  tm_edit_give_back (job->balloon_marks, g_steal_pointer (&marks));
  tm_edit_give_back (job->mate_sizes, g_steal_pointer (&mates));
  tm_document_restored (document);
  return FALSE;
}

static gboolean
add_row (TmDocument *document, GPtrArray *list, gpointer row, GError **error)
{
  g_ptr_array_add (list, row);
  if (tm_document_save_definitions (document, error))
    return TRUE;
  g_ptr_array_remove (list, row);
  return FALSE;
}

gboolean
tm_edit_put_row (TmDocument *document, GPtrArray *list, gpointer old, gpointer row, gsize size,
                 GDestroyNotify free_row, GError **error)
{
  g_autofree gpointer before = NULL;

  if (old == NULL)
    return add_row (document, list, row, error);
  before = g_memdup2 (old, size);
  memcpy (old, row, size);
  free_row (row);
  if (tm_document_save_definitions (document, error))
    return TRUE;
  memcpy (old, before, size);
  return FALSE;
}

gboolean
tm_edit_remove_row (TmDocument *document, GPtrArray *list, gpointer row, GDestroyNotify free_row,
                    GError **error)
{
  guint at;

  g_return_val_if_fail (g_ptr_array_find (list, row, &at), FALSE);

  g_ptr_array_steal_index (list, at);
  if (!tm_document_save_definitions (document, error))
    {
      g_ptr_array_insert (list, (int)at, row);
      return FALSE;
    }
  free_row (row);
  return TRUE;
}

/* Those added after the first @n: no baseline report speaks of them. */
static void
mark_features_after (TmJob *job, guint n)
{
  if (!tm_job_is_by_reference (job))
    return;
  for (guint i = n; i < job->features->len; i++)
    ((TmFeature *)g_ptr_array_index (job->features, i))->affected = TRUE;
}

/* Takes away the features added after the first @n. */
static void
drop_features_after (TmDocument *document, guint n)
{
  TmJob *job = tm_document_job (document);

  while (job->features->len > n)
    {
      TmFeature *last = g_ptr_array_index (job->features, job->features->len - 1);

      tm_job_remove_feature (job, last->balloon);
      tm_document_leave (document, NULL, last);
    }
}

gboolean
tm_edit_add_table (TmDocument *document, TmTablePreview *preview, guint *n_added, GError **error)
{
  TmJob *job = tm_document_job (document);
  guint n_before = job->features->len;

  *n_added = tm_table_apply (preview, job);
  if (*n_added == 0)
    {
      g_set_error_literal (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED, _ ("None of the rows can be added."));
      return FALSE;
    }
  mark_features_after (job, n_before);
  if (tm_document_save_definitions (document, error))
    return TRUE;
  drop_features_after (document, n_before);
  *n_added = 0;
  return FALSE;
}

static TmPiece *
make_piece (TmJob *job, const char *serial, gboolean first_article)
{
  TmPiece *piece = tm_piece_new ();

  piece->serial = tm_job_intern (job, serial);
  piece->first_article = first_article;
  return piece;
}

gboolean
tm_edit_add_piece (TmDocument *document, const char *serial, gboolean first_article, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmPiece *piece = make_piece (job, serial, first_article);
  TmAddStatus status = tm_job_add_piece (job, piece);

  if (status != TM_ADD_OK)
    {
      tm_piece_free (piece);
      return tm_edit_refuse (serial, status, error);
    }
  if (tm_document_save_definitions (document, error))
    return TRUE;
  tm_job_remove_piece (job, serial);
  tm_document_leave (document, piece, NULL);
  return FALSE;
}

gboolean
tm_edit_mark_first_article (TmDocument *document, TmPiece *piece, gboolean first_article, GError **error)
{
  gboolean before = piece->first_article;

  piece->first_article = first_article;
  if (tm_document_save_definitions (document, error))
    return TRUE;
  piece->first_article = before;
  return FALSE;
}

gboolean
tm_edit_remove_piece (TmDocument *document, const char *serial, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmPiece *piece = tm_job_find_piece (job, serial);
  TmPiece *before = piece != NULL ? g_memdup2 (piece, sizeof *piece) : NULL;
  TmAddStatus status;
  guint at = 0;

  g_ptr_array_find (job->pieces, piece, &at);
  status = tm_job_remove_piece (job, serial);
  if (status != TM_ADD_OK)
    {
      g_clear_pointer (&before, tm_piece_free);
      return tm_edit_refuse (serial, status, error);
    }
  tm_document_leave (document, piece, NULL);
  if (tm_document_save_definitions (document, error))
    {
      tm_piece_free (before);
      return TRUE;
    }
  tm_job_add_piece (job, before);
  tm_edit_move_last (job->pieces, at);
  tm_document_restored (document);
  return FALSE;
}

gboolean
tm_edit_add_person (TmDocument *document, const char *initials, const char *name, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmPerson *person = tm_person_new ();
  TmAddStatus status;

  person->initials = tm_job_intern (job, initials);
  person->name = tm_job_intern (job, name);
  status = tm_job_add_person (job, person);
  if (status != TM_ADD_OK)
    {
      tm_person_free (person);
      return tm_edit_refuse (initials, status, error);
    }
  if (tm_document_save_definitions (document, error))
    return TRUE;
  tm_job_remove_person (job, initials);
  return FALSE;
}

gboolean
tm_edit_remove_person (TmDocument *document, const char *initials, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmPerson *person = tm_job_find_person (job, initials);
  TmPerson *before = person != NULL ? g_memdup2 (person, sizeof *person) : NULL;
  TmAddStatus status;
  guint at = 0;

  g_ptr_array_find (job->people, person, &at);
  status = tm_job_remove_person (job, initials);
  if (status != TM_ADD_OK)
    {
      g_clear_pointer (&before, tm_person_free);
      return tm_edit_refuse (initials, status, error);
    }
  if (tm_document_save_definitions (document, error))
    {
      tm_person_free (before);
      return TRUE;
    }
  tm_job_add_person (job, before);
  tm_edit_move_last (job->people, at);
  tm_document_restored (document);
  return FALSE;
}
