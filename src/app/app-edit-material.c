/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-material.h"

#include "app-edit-named.h"

static gpointer
find_material (const TmJob *job, const char *name)
{
  return tm_job_find_material (job, name);
}

static gpointer
copy_material (gconstpointer row)
{
  return g_memdup2 (row, sizeof (TmShopMaterial));
}

static TmAddStatus
add_material (TmJob *job, gpointer row)
{
  return tm_job_add_material (job, row);
}

static TmAddStatus
replace_material (TmJob *job, const char *name, gpointer row)
{
  return tm_job_replace_material (job, name, row);
}

static void
free_material (gpointer row)
{
  tm_shop_material_free (row);
}

static const TmNamedKind materials = {
  find_material, copy_material, add_material, replace_material, tm_job_remove_material, free_material,
};

gboolean
tm_edit_put_material (TmDocument *document, const char *name, TmShopMaterial *material, GError **error)
{
  return tm_edit_put_named (document, &materials, name, material, error);
}

gboolean
tm_edit_remove_material (TmDocument *document, const char *name, GError **error)
{
  return tm_edit_remove_named (document, &materials, tm_document_job (document)->materials, name, error);
}
