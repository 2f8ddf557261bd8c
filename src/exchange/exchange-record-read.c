/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows of the record: "readings", "pin_trials" and "cuts".
 */

#include "exchange-job-read.h"

#include "core-station.h"

#include <glib/gi18n-lib.h>

#define MAX_PASSES 1000

static gboolean
fail_unknown (TmMember member, const char *what, GError **error)
{
  g_autofree char *quoted = tm_exchange_quote (tm_member_text (member));

  return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error, "%s: %s", quoted, what);
}

static gboolean
take_piece_and_feature (const TmJob *job, const TmJsonRow *row, TmEntryRow *out, GError **error)
{
  TmMember piece = TM_OWN (row, ROW_PIECE);
  TmMember feature = TM_OWN (row, ROW_FEATURE);

  if (!tm_member_is_given (piece))
    return tm_member_fail (piece, TM_EXCHANGE_ERROR_MISSING, error, _ ("missing; name the piece"));
  if (!tm_member_is_given (feature))
    return tm_member_fail (feature, TM_EXCHANGE_ERROR_MISSING, error,
                           _ ("missing; name the feature by its balloon"));
  out->piece = tm_job_find_piece (job, tm_member_text (piece));
  if (out->piece == NULL)
    return fail_unknown (piece, _ ("there is no such piece; add it to \"pieces\" or correct the serial"),
                         error);
  out->feature = tm_job_find_feature (job, tm_member_text (feature));
  if (out->feature == NULL)
    return fail_unknown (
        feature, _ ("there is no such feature; add it to \"features\" or correct the balloon"), error);
  return TRUE;
}

/* Takes what all rows of the record share. */
static gboolean
take_entry (TmJob *job, const TmJsonRow *row, const TmRowMembers *members, TmEntryRow *out, GError **error)
{
  out->extra = tm_job_intern (job, row->extra->str);
  tm_take_text (TM_OWN (row, members->reason), job, &out->reason);
  return tm_take_name (TM_OWN (row, ROW_ID), job, FALSE, &out->id, error)
         && take_piece_and_feature (job, row, out, error)
         && tm_take_name (TM_OWN (row, members->by), job, FALSE, &out->by, error)
         && tm_take_moment (TM_OWN (row, members->at), job, &out->at, error)
         && tm_take_name (TM_OWN (row, members->replaces), job, FALSE, &out->replaces, error);
}

/* The member to blame when the model refuses a row. */
static guint
find_culprit (TmAddStatus status, const TmRowMembers *members)
{
  switch (status)
    {
    case TM_ADD_BAD_PLACE:
      return READING_PLACE;
    case TM_ADD_NO_TARGET:
    case TM_ADD_TARGET_GONE:
      return members->replaces;
    case TM_ADD_NO_REASON:
      return members->reason;
    case TM_ADD_OK:
    case TM_ADD_NO_NAME:
    case TM_ADD_TAKEN:
    case TM_ADD_NO_PIECE:
    case TM_ADD_IN_USE:
    case TM_ADD_NO_GAUGE:
    case TM_ADD_NO_METHOD:
    case TM_ADD_NO_FEATURE:
    case TM_ADD_NO_DRAWING:
    case TM_ADD_NO_STUDY:
    case TM_N_ADD_STATUSES:
    default:
      return ROW_ID;
    }
}

/* Notes the withdrawal that the file states on @entry, which has just joined the job. */
static gboolean
take_withdrawal (TmJob *job, const TmJsonRow *row, const TmRowMembers *members, TmEntryRow *entry,
                 GError **error)
{
  const char *by = "";
  const char *at = "";
  const guint object = members->withdrawn;
  const char *reason = tm_json_inner_text (row, object, WITHDRAWN_REASON);

  if (!row->slots[object].given)
    return TRUE;
  if (*reason == '\0')
    return tm_member_fail (TM_INNER (row, object, WITHDRAWN_REASON), TM_EXCHANGE_ERROR_MISSING, error,
                           _ ("a withdrawal needs its reason; write it"));
  if (!tm_take_name (TM_INNER (row, object, WITHDRAWN_BY), job, FALSE, &by, error)
      || !tm_take_moment (TM_INNER (row, object, WITHDRAWN_AT), job, &at, error))
    return FALSE;
  tm_job_withdraw (job, entry, by, at, reason);
  entry->withdrawn->extra = tm_job_intern (job, tm_json_inner_extra (row, object));
  return TRUE;
}

/* All rows of the record have their place as the same member. */
static gboolean
take_place (const TmJsonRow *row, const TmFeature *feature, guint *place, GError **error)
{
  guint places = feature->places;

  if (row->slots[READING_PLACE].given)
    *place = row->slots[READING_PLACE].whole;
  return (*place >= 1 && *place <= places)
         || tm_member_fail (TM_OWN (row, READING_PLACE), TM_EXCHANGE_ERROR_BAD_VALUE, error,
                            ngettext ("%u: the feature has %u place; correct the number, or \"places\"",
                                      "%u: the feature has %u places; correct the number, or \"places\"",
                                      places),
                            *place, places);
}
G_STATIC_ASSERT ((int)READING_PLACE == (int)TRIAL_PLACE);
G_STATIC_ASSERT ((int)READING_PLACE == (int)CUT_PLACE);

static gboolean
take_station (TmJob *job, const TmJsonRow *row, TmReading *reading, GError **error)
{
  TmMember station = TM_OWN (row, READING_STATION);
  TmUnit unit = tm_callout_unit (job, reading->row.feature->unit);
  TmStation unused;

  if (tm_member_is_given (station) && !tm_station_read (tm_member_text (station), unit, &unused))
    return fail_unknown (station, _ ("this is no station; write it like mouth/12, 12.5/3 or bottom"), error);
  tm_take_text (station, job, &reading->station);
  return TRUE;
}

/* Pass or fail. */
static gboolean
take_outcome (const TmJsonRow *row, TmReading *reading, GError **error)
{
  const char *text = tm_json_text (row, READING_VALUE);

  if (g_str_equal (text, "pass"))
    reading->outcome = TM_OUTCOME_PASS;
  else if (g_str_equal (text, "fail"))
    reading->outcome = TM_OUTCOME_FAIL;
  else
    return fail_unknown (TM_OWN (row, READING_VALUE),
                         _ ("this feature is judged by pass or fail; write one of the two"), error);
  return TRUE;
}

/* The offsets of a position come in pairs. */
static gboolean
take_offsets (const TmJsonRow *row, TmReading *reading, GError **error)
{
  TmUnit unit = reading->row.feature->unit;
  TmMember dx = TM_OWN (row, READING_DX);
  TmMember dy = TM_OWN (row, READING_DY);

  if (!tm_member_is_given (dx) && !tm_member_is_given (dy))
    return TRUE;
  if (reading->row.feature->kind != TM_KIND_POSITION)
    return tm_member_fail (tm_member_is_given (dx) ? dx : dy, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("only a position has offsets; take them out"));
  if (!tm_member_is_given (dx) || !tm_member_is_given (dy))
    return tm_member_fail (tm_member_is_given (dx) ? dy : dx, TM_EXCHANGE_ERROR_MISSING, error,
                           _ ("a position has two offsets; write both"));
  return tm_take_quantity (dx, unit, &reading->dx, error) && tm_take_quantity (dy, unit, &reading->dy, error);
}

static gboolean
take_value (const TmJsonRow *row, TmReading *reading, GError **error)
{
  TmMember value = TM_OWN (row, READING_VALUE);

  if (tm_member_is_given (value) && tm_kind_is_attribute (reading->row.feature->kind))
    return take_outcome (row, reading, error);
  if (!take_offsets (row, reading, error))
    return FALSE;
  if (tm_member_is_given (value))
    return tm_take_quantity (value, reading->row.feature->unit, &reading->value, error);
  if (!reading->dx.given)
    return tm_member_fail (value, TM_EXCHANGE_ERROR_MISSING, error, _ ("missing; write what was read"));
  return TRUE;
}

static gboolean
take_reading (TmJob *job, const TmJsonRow *row, TmReading *reading, GError **error)
{
  if (!take_entry (job, row, &tm_reading_row_members, &reading->row, error)
      || !take_place (row, reading->row.feature, &reading->place, error)
      || !take_station (job, row, reading, error) || !take_value (row, reading, error))
    return FALSE;
  tm_take_text (TM_OWN (row, READING_TYPED), job, &reading->typed);
  tm_take_text (TM_OWN (row, READING_OVERDUE_REASON), job, &reading->overdue_reason);
  return tm_take_name (TM_OWN (row, READING_METHOD), job, FALSE, &reading->method, error)
         && tm_take_quantity (TM_OWN (row, READING_PART_TEMP), TM_UNIT_CELSIUS, &reading->part_temp, error)
         && tm_take_quantity (TM_OWN (row, READING_GAUGE_TEMP), TM_UNIT_CELSIUS, &reading->gauge_temp, error);
}

gboolean
tm_read_reading_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  const TmRowMembers *members = &tm_reading_row_members;
  TmReading *reading = tm_reading_new ();
  TmAddStatus status;

  if (take_reading (job, row, reading, error))
    {
      status = tm_job_add_reading (job, reading);
      if (status == TM_ADD_OK)
        return take_withdrawal (job, row, members, &reading->row, error);
      tm_read_add_fail (TM_OWN (row, find_culprit (status, members)), status, error);
    }
  tm_reading_free (reading);
  return FALSE;
}

static gboolean
is_pin_class (const char *text)
{
  static const char *const classes[] = { "", "XXX", "XX", "X", "Y", "Z", "ZZ", NULL };

  return g_strv_contains (classes, text);
}

/* Takes a length that must be there. */
static gboolean
take_size (TmMember member, const TmEntryRow *row, TmQuantity *out, GError **error)
{
  if (!tm_member_is_given (member))
    return tm_member_fail (member, TM_EXCHANGE_ERROR_MISSING, error, _ ("missing; write the size"));
  if (tm_unit_dimension (row->feature->unit) != TM_DIMENSION_LENGTH)
    return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("this feature has no size; name one that has"));
  return tm_take_quantity (member, row->feature->unit, out, error);
}

/* The pin itself: which one of which set, and its class and sign. */
static gboolean
take_pin (TmJob *job, const TmJsonRow *row, TmPinTrial *trial, GError **error)
{
  TmMember pin_class = TM_OWN (row, TRIAL_CLASS);

  if (!take_size (TM_OWN (row, TRIAL_SIZE), &trial->row, &trial->size, error)
      || !tm_take_quantity (TM_OWN (row, TRIAL_MEASURED), trial->row.feature->unit, &trial->measured, error))
    return FALSE;
  if (!is_pin_class (tm_member_text (pin_class)))
    return tm_member_fail_word (pin_class, "XXX, XX, X, Y, Z, ZZ", error);
  tm_take_text (pin_class, job, &trial->pin_class);
  return TM_TAKE_WORD (TM_OWN (row, TRIAL_SIGN), tm_pin_sign_from_word, "minus, plus", &trial->sign, error)
         && tm_take_name (TM_OWN (row, TRIAL_GAUGE), job, FALSE, &trial->gauge, error);
}

static gboolean
take_trial (TmJob *job, const TmJsonRow *row, TmPinTrial *trial, GError **error)
{
  if (!take_entry (job, row, &tm_trial_row_members, &trial->row, error)
      || !take_place (row, trial->row.feature, &trial->place, error) || !take_pin (job, row, trial, error))
    return FALSE;
  if (!row->slots[TRIAL_WENT].given)
    return tm_member_fail (TM_OWN (row, TRIAL_WENT), TM_EXCHANGE_ERROR_MISSING, error,
                           _ ("missing; write true when the pin went, false when not"));
  trial->went = row->slots[TRIAL_WENT].truth;
  tm_take_text (TM_OWN (row, TRIAL_OVERDUE_REASON), job, &trial->overdue_reason);
  return TRUE;
}

gboolean
tm_read_trial_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  const TmRowMembers *members = &tm_trial_row_members;
  TmPinTrial *trial = tm_pin_trial_new ();
  TmAddStatus status;

  if (take_trial (job, row, trial, error))
    {
      status = tm_job_add_pin_trial (job, trial);
      if (status == TM_ADD_OK)
        return take_withdrawal (job, row, members, &trial->row, error);
      tm_read_add_fail (TM_OWN (row, find_culprit (status, members)), status, error);
    }
  tm_pin_trial_free (trial);
  return FALSE;
}

/* Which reading was the newest when the cut was made: one of its own place. */
static gboolean
take_after (TmJob *job, const TmJsonRow *row, TmCutRow *cut, GError **error)
{
  TmMember after = TM_OWN (row, CUT_AFTER);
  const TmReading *reading = tm_job_find_reading (job, tm_member_text (after));

  tm_take_text (after, job, &cut->after);
  if (!tm_member_is_given (after) || g_str_equal (cut->after, "none"))
    return TRUE;
  if (reading == NULL)
    return fail_unknown (after, _ ("there is no such reading; name one by its id, or write none"), error);
  return (reading->row.piece == cut->row.piece && reading->row.feature == cut->row.feature
          && reading->place == cut->place)
         || fail_unknown (after, _ ("this reading is of another place than the cut; correct one of them"),
                          error);
}

static gboolean
take_cut (TmJob *job, const TmJsonRow *row, TmCutRow *cut, GError **error)
{
  if (!take_entry (job, row, &tm_cut_row_members, &cut->row, error)
      || !take_place (row, cut->row.feature, &cut->place, error))
    return FALSE;
  tm_take_text (TM_OWN (row, CUT_NOTE), job, &cut->note);
  return take_size (TM_OWN (row, CUT_DIALLED), &cut->row, &cut->dialled, error)
         && TM_TAKE_WORD (TM_OWN (row, CUT_READS), tm_reads_from_word, "diameter, radius", &cut->reads, error)
         && tm_take_whole (TM_OWN (row, CUT_PASSES), 0, MAX_PASSES, &cut->passes, error)
         && tm_take_name (TM_OWN (row, CUT_TOOL), job, FALSE, &cut->tool, error)
         && take_after (job, row, cut, error);
}

gboolean
tm_read_cut_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  const TmRowMembers *members = &tm_cut_row_members;
  TmCutRow *cut = tm_cut_row_new ();
  TmAddStatus status;

  if (take_cut (job, row, cut, error))
    {
      status = tm_job_add_cut (job, cut);
      if (status == TM_ADD_OK)
        return take_withdrawal (job, row, members, &cut->row, error);
      tm_read_add_fail (TM_OWN (row, find_culprit (status, members)), status, error);
    }
  tm_cut_row_free (cut);
  return FALSE;
}
