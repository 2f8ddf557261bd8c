/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows of "tools" and "materials".
 */

#include "exchange-job-read.h"

#include <glib/gi18n-lib.h>

#define MAX_PASSES 1000

static gboolean
take_tool_unit (const TmJob *job, const TmJsonRow *row, TmTool *tool, GError **error)
{
  TmMember unit = TM_OWN (row, TOOL_UNIT);

  tool->unit = job->unit;
  if (!TM_TAKE_WORD (unit, tm_unit_from_word, "mm, in", &tool->unit, error))
    return FALSE;
  return tool->unit == TM_UNIT_MM || tool->unit == TM_UNIT_IN || tm_member_fail_word (unit, "mm, in", error);
}

static gboolean
take_passes (const TmJsonRow *row, TmTool *tool, GError **error)
{
  guint passes = 0;

  if (!tm_take_whole (TM_OWN (row, TOOL_SPRING_PASSES), 0, MAX_PASSES, &passes, error))
    return FALSE;
  if (row->slots[TOOL_SPRING_PASSES].given)
    tool->spring_passes = tm_quantity_new (passes, TM_UNIT_COUNT, 0);
  return TRUE;
}

static gboolean
take_tool (TmJob *job, const TmJsonRow *row, TmTool *tool, GError **error)
{
  tm_take_text (TM_OWN (row, TOOL_NOTE), job, &tool->note);
  tool->extra = tm_job_intern (job, row->extra->str);
  return tm_take_name (TM_OWN (row, TOOL_NAME), job, TRUE, &tool->name, error)
         && take_tool_unit (job, row, tool, error)
         && TM_TAKE_WORD (TM_OWN (row, TOOL_READS), tm_reads_from_word, "diameter, radius", &tool->reads,
                          error)
         && tm_take_length_above_zero (TM_OWN (row, TOOL_GRADUATION), tool->unit, &tool->graduation, error)
         && tm_take_not_negative (TM_OWN (row, TOOL_LEAST_CUT), tool->unit, &tool->least_cut, error)
         && tm_take_not_negative (TM_OWN (row, TOOL_BACKLASH), tool->unit, &tool->backlash, error)
         && take_passes (row, tool, error)
         && tm_take_length_above_zero (TM_OWN (row, TOOL_OFFSET_STEP), tool->unit, &tool->offset_step, error);
}

gboolean
tm_read_tool_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmTool *tool = tm_tool_new ();
  TmAddStatus status;

  if (take_tool (job, row, tool, error))
    {
      status = tm_job_add_tool (job, tool);
      if (status == TM_ADD_OK)
        return TRUE;
      tm_read_add_fail (TM_OWN (row, TOOL_NAME), status, error);
    }
  tm_tool_free (tool);
  return FALSE;
}

/* Poisson's ratio of an isotropic solid lies between -1 and 0.5: otherwise it would give way without
 * being pushed (elementary elasticity). */
static gboolean
take_poisson (const TmJsonRow *row, TmShopMaterial *material, GError **error)
{
  TmMember member = TM_OWN (row, MATERIAL_POISSON);
  gint64 one = tm_unit_counts (TM_UNIT_HARDNESS);

  if (!tm_take_quantity (member, TM_UNIT_HARDNESS, &material->poisson, error))
    return FALSE;
  return !material->poisson.given || (material->poisson.count > -one && material->poisson.count <= one / 2)
         || tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                            _ ("lies between -1 and 0.5; write it like 0.3"));
}

static gboolean
take_material (TmJob *job, const TmJsonRow *row, TmShopMaterial *material, GError **error)
{
  const TmUnit plain = TM_UNIT_HARDNESS;

  tm_take_text (TM_OWN (row, MATERIAL_SOURCE), job, &material->source);
  material->plastic = row->slots[MATERIAL_PLASTIC].truth;
  material->extra = tm_job_intern (job, row->extra->str);
  return tm_take_name (TM_OWN (row, MATERIAL_NAME), job, TRUE, &material->name, error)
         && tm_take_above_zero (TM_OWN (row, MATERIAL_MODULUS), plain, "210", &material->modulus, error)
         && take_poisson (row, material, error)
         && tm_take_above_zero (TM_OWN (row, MATERIAL_YIELD), plain, "250", &material->yield, error)
         && tm_take_quantity (TM_OWN (row, MATERIAL_EXPANSION), plain, &material->expansion, error)
         && tm_take_quantity (TM_OWN (row, MATERIAL_COLD), plain, &material->cold, error);
}

gboolean
tm_read_material_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmShopMaterial *material = tm_shop_material_new ();
  TmAddStatus status;

  if (take_material (job, row, material, error))
    {
      status = tm_job_add_material (job, material);
      if (status == TM_ADD_OK)
        return TRUE;
      tm_read_add_fail (TM_OWN (row, MATERIAL_NAME), status, error);
    }
  tm_shop_material_free (material);
  return FALSE;
}
