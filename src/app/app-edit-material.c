/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-material.h"

#include "app-edit-named.h"

static TmShopMaterial *
copy_material (const TmShopMaterial *material)
{
  return g_memdup2 (material, sizeof *material);
}

TM_DEFINE_NAMED_KIND (materials, material, copy_material, tm_shop_material_free)

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
