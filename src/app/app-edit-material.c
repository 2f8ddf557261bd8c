/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-material.h"

static TmShopMaterial *
copy_material (const TmJob *job, const char *name)
{
  const TmShopMaterial *material = tm_job_find_material (job, name);

  return material != NULL ? g_memdup2 (material, sizeof *material) : NULL;
}

static gboolean
add_material (TmDocument *document, TmShopMaterial *material, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmAddStatus status = tm_job_add_material (job, material);

  if (status != TM_ADD_OK)
    {
      tm_edit_refuse (material->name, status, error);
      tm_shop_material_free (material);
      return FALSE;
    }
  if (tm_document_save_definitions (document, error))
    return TRUE;
  tm_job_remove_material (job, material->name);
  return FALSE;
}

static gboolean
replace_material (TmDocument *document, const char *name, TmShopMaterial *material, GError **error)
{
  TmJob *job = tm_document_job (document);
  const char *new_name = material->name;
  TmShopMaterial *before = copy_material (job, name);
  TmAddStatus status = tm_job_replace_material (job, name, material);

  if (status != TM_ADD_OK)
    {
      tm_shop_material_free (material);
      g_clear_pointer (&before, tm_shop_material_free);
      return tm_edit_refuse (new_name, status, error);
    }
  if (tm_document_save_definitions (document, error))
    {
      tm_shop_material_free (before);
      return TRUE;
    }
  tm_job_replace_material (job, new_name, before);
  tm_document_restored (document);
  return FALSE;
}

gboolean
tm_edit_put_material (TmDocument *document, const char *name, TmShopMaterial *material, GError **error)
{
  return name == NULL ? add_material (document, material, error)
                      : replace_material (document, name, material, error);
}

gboolean
tm_edit_remove_material (TmDocument *document, const char *name, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmShopMaterial *before = copy_material (job, name);
  TmAddStatus status;
  guint at = 0;

  g_ptr_array_find (job->materials, tm_job_find_material (job, name), &at);
  status = tm_job_remove_material (job, name);
  if (status == TM_ADD_OK && !tm_document_save_definitions (document, error))
    {
      tm_job_add_material (job, before);
      tm_edit_move_last (job->materials, at);
      tm_document_restored (document);
      return FALSE;
    }
  g_clear_pointer (&before, tm_shop_material_free);
  return status == TM_ADD_OK || tm_edit_refuse (name, status, error);
}
