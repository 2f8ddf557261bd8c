/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-gauge: changes to the gauges and methods of a job.
 */

#include "app-edit.h"

static gboolean
add_gauge (TmDocument *document, TmGauge *gauge, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmAddStatus status = tm_job_add_gauge (job, gauge);

  if (status != TM_ADD_OK)
    {
      tm_edit_refuse (gauge->tag, status, error);
      tm_gauge_free (gauge);
      return FALSE;
    }
  if (tm_document_save_definitions (document, error))
    return TRUE;
  tm_job_remove_gauge (job, gauge->tag);
  return FALSE;
}

gboolean
tm_edit_put_gauge (TmDocument *document, const char *tag, TmGauge *gauge, GError **error)
{
  TmJob *job = tm_document_job (document);
  const char *new_tag = gauge->tag;
  TmGauge *old, *before;
  TmAddStatus status;

  if (tag == NULL)
    return add_gauge (document, gauge, error);
  old = tm_job_find_gauge (job, tag);
  before = old != NULL ? tm_edit_copy_gauge (old) : NULL;
  status = tm_job_replace_gauge (job, tag, gauge);
  if (status != TM_ADD_OK)
    {
      tm_gauge_free (gauge);
      g_clear_pointer (&before, tm_gauge_free);
      return tm_edit_refuse (new_tag, status, error);
    }
  if (tm_document_save_definitions (document, error))
    {
      tm_gauge_free (before);
      return TRUE;
    }
  tm_job_replace_gauge (job, new_tag, before);
  return FALSE;
}

static gboolean
add_method (TmDocument *document, TmMethod *method, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmAddStatus status = tm_job_add_method (job, method);

  if (status != TM_ADD_OK)
    {
      tm_edit_refuse (method->name, status, error);
      tm_method_free (method);
      return FALSE;
    }
  if (tm_document_save_definitions (document, error))
    return TRUE;
  tm_job_remove_method (job, method->name);
  return FALSE;
}

gboolean
tm_edit_put_method (TmDocument *document, const char *name, TmMethod *method, GError **error)
{
  TmJob *job = tm_document_job (document);
  const char *new_name = method->name;
  TmMethod *old, *before;
  TmAddStatus status;

  if (name == NULL)
    return add_method (document, method, error);
  old = tm_job_find_method (job, name);
  before = old != NULL ? tm_edit_copy_method (old) : NULL;
  status = tm_job_replace_method (job, name, method);
  if (status != TM_ADD_OK)
    {
      tm_method_free (method);
      g_clear_pointer (&before, tm_method_free);
      return tm_edit_refuse (new_name, status, error);
    }
  if (tm_document_save_definitions (document, error))
    {
      tm_method_free (before);
      return TRUE;
    }
  tm_job_replace_method (job, new_name, before);
  return FALSE;
}

gboolean
tm_edit_remove_gauge (TmDocument *document, const char *tag, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmGauge *gauge = tm_job_find_gauge (job, tag);
  TmGauge *before = gauge != NULL ? tm_edit_copy_gauge (gauge) : NULL;
  TmAddStatus status = tm_job_remove_gauge (job, tag);

  if (status == TM_ADD_OK && tm_document_save_definitions (document, error))
    {
      tm_gauge_free (before);
      return TRUE;
    }
  if (status == TM_ADD_OK)
    {
      tm_job_add_gauge (job, before);
      return FALSE;
    }
  g_clear_pointer (&before, tm_gauge_free);
  return tm_edit_refuse (tag, status, error);
}

gboolean
tm_edit_remove_method (TmDocument *document, const char *name, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmMethod *method = tm_job_find_method (job, name);
  TmMethod *before = method != NULL ? tm_edit_copy_method (method) : NULL;
  TmAddStatus status = tm_job_remove_method (job, name);

  if (status == TM_ADD_OK && tm_document_save_definitions (document, error))
    {
      tm_method_free (before);
      return TRUE;
    }
  if (status == TM_ADD_OK)
    {
      tm_job_add_method (job, before);
      return FALSE;
    }
  g_clear_pointer (&before, tm_method_free);
  return tm_edit_refuse (name, status, error);
}
