/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What goes with a feature: its mate, the press fit with it, and the rows of "mates", those that were
 * measured.
 */

#include "exchange-job-read.h"

#include <glib/gi18n-lib.h>

#define MAX_PLACES 1000

/* Refuses an object of a feature that has no size. */
static gboolean
check_has_size (TmMember member, const TmFeature *feature, GError **error)
{
  return tm_unit_dimension (feature->unit) == TM_DIMENSION_LENGTH
         || tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                            _ ("only a feature with a size has a mate; take it out"));
}

/* The clearance that is wanted: negative is interference. */
static gboolean
take_wanted (const TmJsonRow *row, TmFeature *feature, GError **error)
{
  TmMember least = TM_INNER (row, FEATURE_MATE, MATE_WANTED_LEAST);
  TmMember most = TM_INNER (row, FEATURE_MATE, MATE_WANTED_MOST);
  TmMate *mate = &feature->mate;

  if (!tm_take_quantity (least, feature->unit, &mate->wanted_least, error)
      || !tm_take_quantity (most, feature->unit, &mate->wanted_most, error))
    return FALSE;
  return !mate->wanted_least.given || !mate->wanted_most.given
         || mate->wanted_least.count <= mate->wanted_most.count
         || tm_member_fail (least, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                            _ ("lies above \"wanted_most\"; swap them (an interference is negative)"));
}

gboolean
tm_take_mate (TmJob *job, const TmJsonRow *row, TmFeature *feature, GError **error)
{
  TmMate *mate = &feature->mate;
  TmUnit unit = feature->unit;

  if (!row->slots[FEATURE_MATE].given)
    return TRUE;
  if (unit == TM_UNIT_NONE)
    return tm_member_fail (TM_OWN (row, FEATURE_MATE), TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("only a feature with a size has a mate; take it out"));
  mate->given = TRUE;
  mate->extra = tm_job_intern (job, tm_json_inner_extra (row, FEATURE_MATE));
  mate->kind = feature->kind == TM_KIND_SHAFT ? TM_KIND_BORE : TM_KIND_SHAFT;
  if (!TM_TAKE_WORD (TM_INNER (row, FEATURE_MATE, MATE_KIND), tm_kind_from_word, TM_KIND_LIST, &mate->kind,
                     error)
      || !tm_take_quantity (TM_INNER (row, FEATURE_MATE, MATE_LOWER), unit, &mate->lower, error)
      || !tm_take_quantity (TM_INNER (row, FEATURE_MATE, MATE_UPPER), unit, &mate->upper, error))
    return FALSE;
  if (mate->lower.given && mate->upper.given && mate->lower.count > mate->upper.count)
    return tm_member_fail (TM_INNER (row, FEATURE_MATE, MATE_LOWER), TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("the lower limit lies above the upper one; swap them"));
  return take_wanted (row, feature, error);
}

static gboolean
take_ring (const TmJsonRow *row, TmFeature *feature, GError **error)
{
  TmMember inside = TM_INNER (row, FEATURE_PRESS, PRESS_SHAFT_INSIDE);
  TmPress *press = &feature->press;
  TmUnit unit = feature->unit;

  if (!tm_take_length_above_zero (TM_INNER (row, FEATURE_PRESS, PRESS_LENGTH), unit, &press->length, error)
      || !tm_take_length_above_zero (TM_INNER (row, FEATURE_PRESS, PRESS_HUB_OUTSIDE), unit,
                                     &press->hub_outside, error)
      || !tm_take_not_negative (inside, unit, &press->shaft_inside, error)
      || !tm_take_not_negative (TM_INNER (row, FEATURE_PRESS, PRESS_GAP), unit, &press->gap, error))
    return FALSE;
  return !press->hub_outside.given || !press->shaft_inside.given
         || press->shaft_inside.count < press->hub_outside.count
         || tm_member_fail (
             inside, TM_EXCHANGE_ERROR_BAD_VALUE, error,
             _ ("the bore of the inner part is not smaller than \"hub_outside\"; correct one"));
}

static gboolean
take_contact (TmJob *job, const TmJsonRow *row, TmFeature *feature, GError **error)
{
  TmMember least = TM_INNER (row, FEATURE_PRESS, PRESS_FRICTION_LEAST);
  TmMember most = TM_INNER (row, FEATURE_PRESS, PRESS_FRICTION_MOST);
  TmUnit rough = tm_kind_unit (TM_KIND_ROUGHNESS, feature->unit);
  TmPress *press = &feature->press;

  if (!tm_take_not_negative (least, TM_UNIT_HARDNESS, &press->friction_least, error)
      || !tm_take_not_negative (most, TM_UNIT_HARDNESS, &press->friction_most, error)
      || !tm_take_not_negative (TM_INNER (row, FEATURE_PRESS, PRESS_HUB_ROUGHNESS), rough,
                                &press->hub_roughness, error)
      || !tm_take_not_negative (TM_INNER (row, FEATURE_PRESS, PRESS_SHAFT_ROUGHNESS), rough,
                                &press->shaft_roughness, error))
    return FALSE;
  return !press->friction_least.given || !press->friction_most.given
         || press->friction_least.count <= press->friction_most.count
         || tm_member_fail (least, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                            _ ("lies above \"friction_most\"; swap them"));
}

gboolean
tm_take_press (TmJob *job, const TmJsonRow *row, TmFeature *feature, GError **error)
{
  TmPress *press = &feature->press;

  if (!row->slots[FEATURE_PRESS].given)
    return TRUE;
  if (!check_has_size (TM_OWN (row, FEATURE_PRESS), feature, error))
    return FALSE;
  press->extra = tm_job_intern (job, tm_json_inner_extra (row, FEATURE_PRESS));
  return tm_take_name (TM_INNER (row, FEATURE_PRESS, PRESS_HUB_MATERIAL), job, FALSE, &press->hub_material,
                       error)
         && tm_take_name (TM_INNER (row, FEATURE_PRESS, PRESS_SHAFT_MATERIAL), job, FALSE,
                          &press->shaft_material, error)
         && take_ring (row, feature, error) && take_contact (job, row, feature, error);
}

/* The feature that a measured mate goes with, which must have a size. */
static const TmFeature *
take_owner (TmJob *job, const TmJsonRow *row, TmMateSize *mate, GError **error)
{
  TmMember member = TM_OWN (row, MATE_SIZE_FEATURE);
  const TmFeature *feature;

  if (!tm_take_name (member, job, TRUE, &mate->feature, error))
    return NULL;
  feature = tm_job_find_feature (job, mate->feature);
  if (feature == NULL)
    tm_read_add_fail (member, TM_ADD_NO_FEATURE, error);
  else if (!check_has_size (member, feature, error))
    return NULL;
  return feature;
}

static gboolean
take_sizes (const TmJsonRow *row, TmUnit unit, TmMateSize *mate, GError **error)
{
  TmMember smallest = TM_OWN (row, MATE_SIZE_SMALLEST);
  TmMember largest = TM_OWN (row, MATE_SIZE_LARGEST);

  if (!tm_member_is_given (smallest))
    return tm_member_fail (smallest, TM_EXCHANGE_ERROR_MISSING, error,
                           _ ("missing; write the size that was measured"));
  if (!tm_take_length_above_zero (smallest, unit, &mate->smallest, error)
      || !tm_take_length_above_zero (largest, unit, &mate->largest, error)
      || !tm_take_not_negative (TM_OWN (row, MATE_SIZE_UNCERTAINTY), unit, &mate->uncertainty, error))
    return FALSE;
  return !mate->largest.given || mate->smallest.count <= mate->largest.count
         || tm_member_fail (smallest, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                            _ ("lies above \"largest\"; swap them"));
}

static gboolean
take_mate_place (const TmJsonRow *row, TmMateSize *mate, GError **error)
{
  guint place = 1;

  if (!tm_take_whole (TM_OWN (row, MATE_SIZE_PLACE), 1, MAX_PLACES, &place, error))
    return FALSE;
  if (row->slots[MATE_SIZE_PLACE].given)
    mate->place = tm_quantity_new (place, TM_UNIT_COUNT, 0);
  return TRUE;
}

static gboolean
take_mate_size (TmJob *job, const TmJsonRow *row, TmMateSize *mate, GError **error)
{
  const TmFeature *feature = take_owner (job, row, mate, error);

  if (feature == NULL)
    return FALSE;
  tm_take_text (TM_OWN (row, MATE_SIZE_NOTE), job, &mate->note);
  mate->extra = tm_job_intern (job, row->extra->str);
  return tm_take_name (TM_OWN (row, MATE_SIZE_SERIAL), job, TRUE, &mate->serial, error)
         && take_sizes (row, feature->unit, mate, error)
         && tm_take_name (TM_OWN (row, MATE_SIZE_PIECE), job, FALSE, &mate->piece, error)
         && take_mate_place (row, mate, error)
         && tm_take_name (TM_OWN (row, MATE_SIZE_BY), job, FALSE, &mate->by, error)
         && tm_take_moment (TM_OWN (row, MATE_SIZE_AT), job, &mate->at, error);
}

gboolean
tm_read_mate_size_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmMateSize *mate = tm_mate_size_new ();
  TmAddStatus status;

  if (take_mate_size (job, row, mate, error))
    {
      status = tm_job_add_mate_size (job, mate);
      if (status == TM_ADD_OK)
        return TRUE;
      tm_read_add_fail (TM_OWN (row, MATE_SIZE_SERIAL), status, error);
    }
  tm_mate_size_free (mate);
  return FALSE;
}
