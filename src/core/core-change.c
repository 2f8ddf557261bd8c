/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-change: how rows join a job, are replaced, removed, corrected and withdrawn.
 */

#include "core-model.h"

#include "core-cut-order.h"
#include "core-dependents.h"
#include "core-index.h"
#include "core-rework.h"

static gboolean
is_blank (const char *text)
{
  return text == NULL || *text == '\0';
}

/* Adds a row that has a unique name. */
static TmAddStatus
add_named (TmJob *job, GPtrArray *list, TmIndexKind kind, const char *name, gpointer row)
{
  if (is_blank (name))
    return TM_ADD_NO_NAME;
  if (tm_index_find (job->index, kind, name) != NULL)
    return TM_ADD_TAKEN;
  g_ptr_array_add (list, row);
  tm_index_insert (job->index, kind, name, row);
  return TM_ADD_OK;
}

TmAddStatus
tm_job_add_person (TmJob *job, TmPerson *person)
{
  g_return_val_if_fail (job != NULL && person != NULL, TM_ADD_NO_NAME);

  return add_named (job, job->people, TM_INDEX_PERSON, person->initials, person);
}

TmAddStatus
tm_job_add_gauge (TmJob *job, TmGauge *gauge)
{
  g_return_val_if_fail (job != NULL && gauge != NULL, TM_ADD_NO_NAME);

  return add_named (job, job->gauges, TM_INDEX_GAUGE, gauge->tag, gauge);
}

TmAddStatus
tm_job_add_method (TmJob *job, TmMethod *method)
{
  g_return_val_if_fail (job != NULL && method != NULL, TM_ADD_NO_NAME);

  return add_named (job, job->methods, TM_INDEX_METHOD, method->name, method);
}

TmAddStatus
tm_job_add_feature (TmJob *job, TmFeature *feature)
{
  g_return_val_if_fail (job != NULL && feature != NULL, TM_ADD_NO_NAME);

  return add_named (job, job->features, TM_INDEX_FEATURE, feature->balloon, feature);
}

TmAddStatus
tm_job_add_piece (TmJob *job, TmPiece *piece)
{
  g_return_val_if_fail (job != NULL && piece != NULL, TM_ADD_NO_NAME);

  return add_named (job, job->pieces, TM_INDEX_PIECE, piece->serial, piece);
}

/* Numbers a row that came without an id. */
static void
name_row (TmJob *job, TmIndexKind kind, TmEntryRow *row)
{
  char number[24];

  if (!is_blank (row->id))
    return;
  g_snprintf (number, sizeof number, "%" G_GUINT64_FORMAT, tm_index_next_id (job->index, kind));
  row->id = tm_job_intern (job, number);
}

/* Finds the row that @row corrects; NULL in @target when it corrects none. */
static TmAddStatus
find_target (const TmJob *job, TmIndexKind kind, const TmEntryRow *row, TmEntryRow **target)
{
  *target = NULL;
  if (is_blank (row->replaces))
    return TM_ADD_OK;
  *target = tm_index_find (job->index, kind, row->replaces);
  if (*target == NULL || (*target)->piece != row->piece || (*target)->feature != row->feature)
    return TM_ADD_NO_TARGET;
  if (!tm_row_stands (*target))
    return TM_ADD_TARGET_GONE;
  return is_blank (row->reason) ? TM_ADD_NO_REASON : TM_ADD_OK;
}

/* Adds a row of the record.  Every such struct begins with its TmEntryRow. */
static TmAddStatus
add_row (TmJob *job, GPtrArray *list, TmIndexKind kind, TmEntryRow *row)
{
  TmEntryRow *target;
  TmAddStatus status;

  if (row->piece == NULL || row->feature == NULL)
    return TM_ADD_NO_PIECE;
  status = find_target (job, kind, row, &target);
  if (status != TM_ADD_OK)
    return status;
  name_row (job, kind, row);
  status = add_named (job, list, kind, row->id, row);
  if (status != TM_ADD_OK)
    return status;
  if (target != NULL)
    target->replaced_by = row;
  row->order = list->len - 1;
  tm_index_use (job->index, row->piece);
  tm_index_use (job->index, row->feature);
  return TM_ADD_OK;
}

TmAddStatus
tm_job_add_reading (TmJob *job, TmReading *reading)
{
  TmAddStatus status;

  g_return_val_if_fail (job != NULL && reading != NULL, TM_ADD_NO_NAME);

  if (reading->row.feature != NULL && (reading->place < 1 || reading->place > reading->row.feature->places))
    return TM_ADD_BAD_PLACE;
  status = add_row (job, job->readings, TM_INDEX_READING, &reading->row);
  if (status == TM_ADD_OK)
    {
      tm_index_add_reading (job->index, reading);
      tm_cut_order_mark_reading (job, reading);
      tm_rework_mark_reading (job, reading);
    }
  return status;
}

TmAddStatus
tm_job_add_pin_trial (TmJob *job, TmPinTrial *trial)
{
  TmAddStatus status;

  g_return_val_if_fail (job != NULL && trial != NULL, TM_ADD_NO_NAME);

  if (trial->row.feature != NULL && (trial->place < 1 || trial->place > trial->row.feature->places))
    return TM_ADD_BAD_PLACE;
  status = add_row (job, job->pin_trials, TM_INDEX_PIN_TRIAL, &trial->row);
  if (status == TM_ADD_OK)
    {
      tm_index_add_pin_trial (job->index, trial);
      tm_cut_order_mark_trial (job, trial);
      tm_rework_mark_trial (job, trial);
    }
  return status;
}

TmAddStatus
tm_job_add_cut (TmJob *job, TmCutRow *cut)
{
  const TmCutRow *corrected;
  TmAddStatus status;

  g_return_val_if_fail (job != NULL && cut != NULL, TM_ADD_NO_NAME);

  if (cut->row.feature != NULL && (cut->place < 1 || cut->place > cut->row.feature->places))
    return TM_ADD_BAD_PLACE;
  status = add_row (job, job->cuts, TM_INDEX_CUT, &cut->row);
  if (status == TM_ADD_OK)
    {
      tm_index_add_cut (job->index, cut);
      corrected = tm_job_find_cut (job, cut->row.replaces);
      if (corrected != NULL)
        tm_cut_order_mark_place (job, cut->row.piece, cut->row.feature, corrected->place);
      tm_cut_order_mark_cut (job, cut);
    }
  return status;
}

void
tm_job_add_event (TmJob *job, TmEvent *event)
{
  g_return_if_fail (job != NULL && event != NULL);

  g_ptr_array_add (job->events, event);
}

void
tm_job_add_nonconformance (TmJob *job, TmNonconformance *nonconformance)
{
  g_return_if_fail (job != NULL && nonconformance != NULL);

  g_ptr_array_add (job->nonconformances, nonconformance);
  tm_job_mark_rework (job, nonconformance);
}

void
tm_job_add_signature (TmJob *job, TmSignature *signature)
{
  g_return_if_fail (job != NULL && signature != NULL);

  g_ptr_array_add (job->signatures, signature);
}

void
tm_job_add_supply (TmJob *job, TmSupply *supply)
{
  g_return_if_fail (job != NULL && supply != NULL);

  g_ptr_array_add (job->supplies, supply);
}

void
tm_job_add_sub_part (TmJob *job, TmSubPart *part)
{
  g_return_if_fail (job != NULL && part != NULL);

  g_ptr_array_add (job->sub_parts, part);
}

void
tm_job_add_report_field (TmJob *job, TmReportField *field)
{
  g_return_if_fail (job != NULL && field != NULL);

  g_ptr_array_add (job->report_fields, field);
}

TmAddStatus
tm_job_add_tool (TmJob *job, TmTool *tool)
{
  g_return_val_if_fail (job != NULL && tool != NULL, TM_ADD_NO_NAME);

  return add_named (job, job->tools, TM_INDEX_TOOL, tool->name, tool);
}

TmAddStatus
tm_job_add_material (TmJob *job, TmShopMaterial *material)
{
  g_return_val_if_fail (job != NULL && material != NULL, TM_ADD_NO_NAME);

  return add_named (job, job->materials, TM_INDEX_MATERIAL, material->name, material);
}

/* A method (or a gauge named as one) is in use when a feature or a reading names it. */
static gboolean
method_is_used (const TmJob *job, const char *name)
{
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      if (g_str_equal (feature->method, name))
        return TRUE;
    }
  for (guint i = 0; i < job->readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (job->readings, i);

      if (g_str_equal (reading->method, name))
        return TRUE;
    }
  for (guint i = 0; i < job->studies->len; i++)
    {
      const TmStudy *study = g_ptr_array_index (job->studies, i);

      if (g_str_equal (study->method, name))
        return TRUE;
    }
  return FALSE;
}

/* A gauge is in use when a method, a pin trial or a reading names it. */
static gboolean
gauge_is_used (const TmJob *job, const char *tag)
{
  for (guint i = 0; i < job->methods->len; i++)
    {
      const TmMethod *method = g_ptr_array_index (job->methods, i);

      if (g_ptr_array_find_with_equal_func (method->gauges, tag, g_str_equal, NULL))
        return TRUE;
    }
  for (guint i = 0; i < job->pin_trials->len; i++)
    {
      const TmPinTrial *trial = g_ptr_array_index (job->pin_trials, i);

      if (g_str_equal (trial->gauge, tag))
        return TRUE;
    }
  return method_is_used (job, tag);
}

static gboolean
tool_is_used (const TmJob *job, const char *name)
{
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      if (g_str_equal (feature->tool, name))
        return TRUE;
    }
  for (guint i = 0; i < job->cuts->len; i++)
    {
      const TmCutRow *cut = g_ptr_array_index (job->cuts, i);

      if (g_str_equal (cut->tool, name))
        return TRUE;
    }
  return FALSE;
}

static gboolean
material_is_used (const TmJob *job, const char *name)
{
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      if (g_str_equal (feature->press.hub_material, name)
          || g_str_equal (feature->press.shaft_material, name))
        return TRUE;
    }
  return FALSE;
}

/* Whether another feature takes its size from @balloon. */
static gboolean
feature_is_named (const TmJob *job, const char *balloon)
{
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      if (g_str_equal (feature->size_feature, balloon))
        return TRUE;
    }
  return FALSE;
}

/* Whether the row @old may take the name @name. */
static TmAddStatus
check_rename (const TmJob *job, TmIndexKind kind, gpointer old, const char *name)
{
  gpointer holder;

  if (old == NULL)
    return TM_ADD_NO_TARGET;
  if (is_blank (name))
    return TM_ADD_NO_NAME;
  holder = tm_index_find (job->index, kind, name);
  return holder == NULL || holder == old ? TM_ADD_OK : TM_ADD_TAKEN;
}

/* Puts @with in the place of @old, whose name was @name and will be @new_name. */
static void
put_in_place (TmJob *job, GPtrArray *list, TmIndexKind kind, const char *name, const char *new_name,
              gpointer old, gpointer with)
{
  guint at;

  g_ptr_array_find (list, old, &at);
  tm_index_remove (job->index, kind, name);
  tm_index_insert (job->index, kind, new_name, with);
  g_ptr_array_index (list, at) = with;
}

TmAddStatus
tm_job_replace_gauge (TmJob *job, const char *tag, TmGauge *with)
{
  TmGauge *old = tm_job_find_gauge (job, tag);
  TmAddStatus status = check_rename (job, TM_INDEX_GAUGE, old, with->tag);

  if (status == TM_ADD_OK && !g_str_equal (old->tag, with->tag) && gauge_is_used (job, old->tag))
    status = TM_ADD_IN_USE;
  if (status != TM_ADD_OK)
    return status;
  tm_follow_gauge (job, old->tag, with->tag);
  put_in_place (job, job->gauges, TM_INDEX_GAUGE, old->tag, with->tag, old, with);
  tm_gauge_free (old);
  return TM_ADD_OK;
}

TmAddStatus
tm_job_replace_method (TmJob *job, const char *name, TmMethod *with)
{
  TmMethod *old = tm_job_find_method (job, name);
  TmAddStatus status = check_rename (job, TM_INDEX_METHOD, old, with->name);

  if (status == TM_ADD_OK && !g_str_equal (old->name, with->name) && method_is_used (job, old->name))
    status = TM_ADD_IN_USE;
  if (status != TM_ADD_OK)
    return status;
  tm_follow_method (job, old->name, with->name);
  put_in_place (job, job->methods, TM_INDEX_METHOD, old->name, with->name, old, with);
  tm_method_free (old);
  return TM_ADD_OK;
}

TmAddStatus
tm_job_replace_tool (TmJob *job, const char *name, TmTool *with)
{
  TmTool *old = tm_job_find_tool (job, name);
  TmAddStatus status = check_rename (job, TM_INDEX_TOOL, old, with->name);

  if (status == TM_ADD_OK && !g_str_equal (old->name, with->name) && tool_is_used (job, old->name))
    status = TM_ADD_IN_USE;
  if (status != TM_ADD_OK)
    return status;
  put_in_place (job, job->tools, TM_INDEX_TOOL, old->name, with->name, old, with);
  tm_tool_free (old);
  return TM_ADD_OK;
}

TmAddStatus
tm_job_replace_material (TmJob *job, const char *name, TmShopMaterial *with)
{
  TmShopMaterial *old = tm_job_find_material (job, name);
  TmAddStatus status = check_rename (job, TM_INDEX_MATERIAL, old, with->name);

  if (status == TM_ADD_OK && !g_str_equal (old->name, with->name) && material_is_used (job, old->name))
    status = TM_ADD_IN_USE;
  if (status != TM_ADD_OK)
    return status;
  put_in_place (job, job->materials, TM_INDEX_MATERIAL, old->name, with->name, old, with);
  tm_shop_material_free (old);
  return TM_ADD_OK;
}

/* The highest place that a reading or a pin trial of @feature names. */
static guint
highest_place_read (const TmJob *job, const TmFeature *feature)
{
  guint highest = 0;

  for (guint i = 0; i < job->cuts->len; i++)
    {
      const TmCutRow *cut = g_ptr_array_index (job->cuts, i);

      if (cut->row.feature == feature)
        highest = MAX (highest, cut->place);
    }

  for (guint i = 0; i < job->pin_trials->len; i++)
    {
      const TmPinTrial *trial = g_ptr_array_index (job->pin_trials, i);

      if (trial->row.feature == feature)
        highest = MAX (highest, trial->place);
    }

  for (guint i = 0; i < job->readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (job->readings, i);

      if (reading->row.feature == feature)
        highest = MAX (highest, reading->place);
    }
  return highest;
}

TmAddStatus
tm_job_replace_feature (TmJob *job, const char *balloon, TmFeature *with)
{
  TmFeature *old = tm_job_find_feature (job, balloon);
  TmAddStatus status = check_rename (job, TM_INDEX_FEATURE, old, with->balloon);
  gboolean used = old != NULL && tm_index_uses (job->index, old) > 0;
  TmFeature swap;

  if (status != TM_ADD_OK)
    return status;
  if (!g_str_equal (old->balloon, with->balloon) && (used || feature_is_named (job, old->balloon)))
    return TM_ADD_IN_USE;
  if (used && highest_place_read (job, old) > with->places)
    return TM_ADD_BAD_PLACE;
  tm_follow_feature (job, old->balloon, with->balloon);
  tm_index_remove (job->index, TM_INDEX_FEATURE, old->balloon);
  swap = *old;
  *old = *with;
  *with = swap;
  tm_index_insert (job->index, TM_INDEX_FEATURE, old->balloon, old);
  tm_follow_places (job, old);
  tm_feature_free (with);
  return TM_ADD_OK;
}

/* Takes a row out of its list; the list frees it. */
static TmAddStatus
remove_row (TmJob *job, GPtrArray *list, TmIndexKind kind, const char *name, gboolean used)
{
  gpointer row = tm_index_find (job->index, kind, name);

  if (row == NULL)
    return TM_ADD_NO_TARGET;
  if (used || tm_index_uses (job->index, row) > 0)
    return TM_ADD_IN_USE;
  tm_index_remove (job->index, kind, name);
  g_ptr_array_remove (list, row);
  return TM_ADD_OK;
}

static gboolean
row_names_person (const TmEntryRow *row, const char *initials)
{
  return g_str_equal (row->by, initials)
         || (row->withdrawn != NULL && g_str_equal (row->withdrawn->by, initials));
}

/* A person is in use when a row of the record was made or withdrawn by them.  Every struct of the
 * record begins with its TmEntryRow. */
static gboolean
person_is_used (const TmJob *job, const char *initials)
{
  const GPtrArray *records[] = { job->readings, job->pin_trials, job->cuts };

  for (gsize i = 0; i < G_N_ELEMENTS (records); i++)
    {
      for (guint at = 0; at < records[i]->len; at++)
        {
          if (row_names_person (g_ptr_array_index (records[i], at), initials))
            return TRUE;
        }
    }
  return FALSE;
}

TmAddStatus
tm_job_remove_person (TmJob *job, const char *initials)
{
  return remove_row (job, job->people, TM_INDEX_PERSON, initials, person_is_used (job, initials));
}

TmAddStatus
tm_job_remove_gauge (TmJob *job, const char *tag)
{
  TmAddStatus status = remove_row (job, job->gauges, TM_INDEX_GAUGE, tag, gauge_is_used (job, tag));

  if (status == TM_ADD_OK)
    tm_follow_gauge (job, tag, NULL);
  return status;
}

TmAddStatus
tm_job_remove_method (TmJob *job, const char *name)
{
  TmAddStatus status = remove_row (job, job->methods, TM_INDEX_METHOD, name, method_is_used (job, name));

  if (status == TM_ADD_OK)
    tm_follow_method (job, name, NULL);
  return status;
}

TmAddStatus
tm_job_remove_tool (TmJob *job, const char *name)
{
  return remove_row (job, job->tools, TM_INDEX_TOOL, name, tool_is_used (job, name));
}

TmAddStatus
tm_job_remove_material (TmJob *job, const char *name)
{
  return remove_row (job, job->materials, TM_INDEX_MATERIAL, name, material_is_used (job, name));
}

TmAddStatus
tm_job_remove_feature (TmJob *job, const char *balloon)
{
  TmAddStatus status
      = remove_row (job, job->features, TM_INDEX_FEATURE, balloon, feature_is_named (job, balloon));

  if (status == TM_ADD_OK)
    tm_follow_feature (job, balloon, NULL);
  return status;
}

TmAddStatus
tm_job_remove_piece (TmJob *job, const char *serial)
{
  return remove_row (job, job->pieces, TM_INDEX_PIECE, serial, FALSE);
}

TmAddStatus
tm_job_withdraw (TmJob *job, TmEntryRow *row, const char *by, const char *at, const char *reason)
{
  TmCutRow *cut;

  g_return_val_if_fail (job != NULL && row != NULL, TM_ADD_NO_TARGET);

  if (!tm_row_stands (row))
    return TM_ADD_TARGET_GONE;
  if (is_blank (reason))
    return TM_ADD_NO_REASON;
  row->withdrawn = g_new0 (TmWithdrawal, 1);
  row->withdrawn->by = tm_job_intern (job, by);
  row->withdrawn->at = tm_job_intern (job, at);
  row->withdrawn->reason = tm_job_intern (job, reason);
  row->withdrawn->extra = tm_job_intern (job, NULL);
  cut = tm_job_find_cut (job, row->id);
  if (cut != NULL && &cut->row == row)
    tm_cut_order_mark_place (job, row->piece, row->feature, cut->place);
  return TM_ADD_OK;
}
