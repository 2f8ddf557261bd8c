/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One row of "features": what the file says, settled with what its requirement text says.
 *
 * The requirement fills what the file leaves open.  Limits that both state must agree.  A kind in
 * the file makes the requirement's more particular (a diameter becomes a bore); a requirement that
 * reads as a note, or as something judged by pass or fail, leaves the file's own limits standing.
 */

#include "exchange-job-read.h"

#include "core-run-rules.h"
#include "core-station.h"

#include <glib/gi18n-lib.h>

#define MAX_PLACES     1000
#define MAX_GROUP_SIZE 1000
#define MAX_BASELINE   1000000

typedef struct {
  TmJob *job;
  const TmJsonRow *row;
  TmFeature *feature;
  TmCallout callout;
  gboolean reads; /* the requirement states something measured */
  gboolean kind_given;
} Draft;

static gboolean
has_limits (const TmJsonRow *row)
{
  return tm_member_is_given (TM_OWN (row, FEATURE_LOWER)) || tm_member_is_given (TM_OWN (row, FEATURE_UPPER));
}

static gboolean
take_texts (Draft *draft, GError **error)
{
  const TmJsonRow *row = draft->row;
  TmFeature *feature = draft->feature;
  TmJob *job = draft->job;

  tm_take_text (TM_OWN (row, FEATURE_NAME), job, &feature->name);
  tm_take_text (TM_OWN (row, FEATURE_REQUIREMENT), job, &feature->requirement);
  tm_take_text (TM_OWN (row, FEATURE_SHEET), job, &feature->sheet);
  tm_take_text (TM_OWN (row, FEATURE_ZONE), job, &feature->zone);
  tm_take_text (TM_OWN (row, FEATURE_TOOLING), job, &feature->tooling);
  tm_take_text (TM_OWN (row, FEATURE_COMMENT), job, &feature->comment);
  feature->affected = row->slots[FEATURE_AFFECTED].truth;
  feature->extra = tm_job_intern (job, row->extra->str);
  return tm_take_name (TM_OWN (row, FEATURE_BALLOON), job, TRUE, &feature->balloon, error)
         && tm_take_name (TM_OWN (row, FEATURE_SIZE_FEATURE), job, FALSE, &feature->size_feature, error)
         && tm_take_name (TM_OWN (row, FEATURE_METHOD), job, FALSE, &feature->method, error)
         && tm_take_name (TM_OWN (row, FEATURE_TOOL), job, FALSE, &feature->tool, error);
}

/* Sets the unit that the file names; TM_UNIT_NONE when it names none. */
static gboolean
take_unit (Draft *draft, GError **error)
{
  TmMember member = TM_OWN (draft->row, FEATURE_UNIT);
  TmUnit unit = TM_UNIT_NONE;

  if (tm_member_is_given (member)
      && (!tm_unit_from_word (tm_member_text (member), &unit) || unit == TM_UNIT_THOU || unit == TM_UNIT_TENTH
          || unit == TM_UNIT_CELSIUS))
    return tm_member_fail_word (member, "mm, in, um, uin, deg, points, count", error);
  draft->feature->unit = unit;
  return TRUE;
}

static gboolean
take_kind (Draft *draft, GError **error)
{
  TmMember member = TM_OWN (draft->row, FEATURE_KIND);
  TmFeature *feature = draft->feature;
  const TmCallout *callout = &draft->callout;

  draft->kind_given = tm_member_is_given (member);
  if (draft->kind_given)
    return TM_TAKE_WORD (member, tm_kind_from_word, TM_KIND_LIST, &feature->kind, error);
  if (callout->status == TM_CALLOUT_OK)
    feature->kind = callout->kind;
  else if (!has_limits (draft->row))
    feature->kind = TM_KIND_NOTE;
  else if (tm_unit_dimension (feature->unit) == TM_DIMENSION_ANGLE)
    feature->kind = TM_KIND_ANGLE;
  else if (tm_unit_dimension (feature->unit) == TM_DIMENSION_HARDNESS)
    feature->kind = TM_KIND_HARDNESS;
  else
    feature->kind = TM_KIND_LENGTH;
  return TRUE;
}

/* Refuses a kind that says something else than the requirement. */
static gboolean
check_kind (Draft *draft, GError **error)
{
  const TmFeature *feature = draft->feature;
  g_autofree char *quoted = NULL;

  draft->reads = draft->callout.status == TM_CALLOUT_OK && !tm_kind_is_attribute (draft->callout.kind)
                 && !tm_kind_is_attribute (feature->kind);
  if (!draft->reads || tm_kinds_agree (feature->kind, draft->callout.kind))
    return TRUE;
  quoted = tm_exchange_quote (feature->requirement);
  return tm_member_fail (TM_OWN (draft->row, FEATURE_KIND), TM_EXCHANGE_ERROR_DISAGREES, error,
                         _ ("the file says %s, but the requirement %s reads as %s; correct one of them"),
                         tm_kind_word (feature->kind), quoted, tm_kind_word (draft->callout.kind));
}

/* At a roughness "mm" and "in" say which system the drawing uses: its numbers are µm or µin.  Nobody
 * means a roughness of 1.6 mm. */
static void
narrow_unit (TmFeature *feature)
{
  if (feature->kind == TM_KIND_ROUGHNESS && (feature->unit == TM_UNIT_MM || feature->unit == TM_UNIT_IN))
    feature->unit = tm_kind_unit (feature->kind, feature->unit);
}

/* Fills in the unit that the file did not name, and checks that it goes with the kind. */
static gboolean
settle_unit (Draft *draft, GError **error)
{
  TmFeature *feature = draft->feature;
  TmUnit expected
      = draft->reads ? (TmUnit)draft->callout.unit : tm_kind_unit (feature->kind, draft->job->unit);

  if (feature->unit == TM_UNIT_NONE && tm_kind_is_attribute (feature->kind) && has_limits (draft->row))
    feature->unit = draft->job->unit;
  narrow_unit (feature);
  if (feature->unit == TM_UNIT_NONE)
    feature->unit = expected;
  if (tm_kind_is_attribute (feature->kind)
      || tm_unit_dimension (feature->unit)
             == tm_unit_dimension (tm_kind_unit (feature->kind, draft->job->unit)))
    return TRUE;
  return tm_member_fail (TM_OWN (draft->row, FEATURE_UNIT), TM_EXCHANGE_ERROR_BAD_VALUE, error,
                         _ ("“%s” is no unit for kind %s; write %s"), tm_unit_word (feature->unit),
                         tm_kind_word (feature->kind), tm_unit_word (expected));
}

/* "25.000 to 25.021", for a message. */
static char *
format_limits (const TmQuantity *lower, const TmQuantity *upper, TmUnit unit)
{
  g_autofree char *low = lower->given ? tm_quantity_format_in (lower, unit) : g_strdup (_ ("no lower limit"));
  g_autofree char *high
      = upper->given ? tm_quantity_format_in (upper, unit) : g_strdup (_ ("no upper limit"));

  return g_strdup_printf (_ ("%s to %s"), low, high);
}

static gboolean
fail_disagrees (const Draft *draft, guint member, GError **error)
{
  const TmFeature *feature = draft->feature;
  const TmCallout *callout = &draft->callout;
  g_autofree char *quoted = tm_exchange_quote (feature->requirement);
  g_autofree char *read = NULL;
  g_autofree char *given = NULL;

  if (member == FEATURE_NOMINAL)
    {
      read = tm_quantity_format_in (&callout->nominal, feature->unit);
      given = tm_quantity_format_in (&feature->nominal, feature->unit);
    }
  else
    {
      read = format_limits (&callout->lower, &callout->upper, feature->unit);
      given = format_limits (&feature->lower, &feature->upper, feature->unit);
    }
  return tm_member_fail (TM_OWN (draft->row, member), TM_EXCHANGE_ERROR_DISAGREES, error,
                         _ ("the requirement %s gives %s, the file gives %s; correct one of them"), quoted,
                         read, given);
}

/* Where file and requirement both state a value they must agree; where one does, it stands. */
static gboolean
values_agree (const TmQuantity *given, const TmQuantity *read)
{
  return !given->given || (read->given && read->count == given->count);
}

/* A lower limit of zero says nothing where zero is the physical bound. */
static gboolean
lower_agrees (const TmFeature *feature, const TmQuantity *read)
{
  return values_agree (&feature->lower, read)
         || (!read->given && feature->lower.count == 0 && tm_kind_is_zero_bounded (feature->kind));
}

static void
fill (TmQuantity *target, const TmQuantity *read)
{
  if (!target->given)
    *target = *read;
}

/* A bare number states no limits: the general tolerance does, and limits of the file's own come
 * before it. */
static gboolean
is_general (const Draft *draft)
{
  const TmFeature *feature = draft->feature;
  TmCallout alone = tm_callout_read (feature->requirement, tm_callout_unit (draft->job, feature->unit), NULL);

  return alone.status != TM_CALLOUT_OK && (feature->lower.given || feature->upper.given);
}

/* A bare number under a general tolerance may have limits of its own, even ones that differ. */
static gboolean
limits_agree (const Draft *draft, GError **error)
{
  const TmFeature *feature = draft->feature;
  const TmCallout *callout = &draft->callout;

  if (!lower_agrees (feature, &callout->lower))
    return is_general (draft) || fail_disagrees (draft, FEATURE_LOWER, error);
  if (!values_agree (&feature->upper, &callout->upper))
    return is_general (draft) || fail_disagrees (draft, FEATURE_UPPER, error);
  return TRUE;
}

static gboolean
settle_limits (Draft *draft, GError **error)
{
  TmFeature *feature = draft->feature;
  const TmCallout *callout = &draft->callout;

  if (!draft->reads)
    return TRUE;
  if (!limits_agree (draft, error))
    return FALSE;
  if (callout->nominal.given && !values_agree (&feature->nominal, &callout->nominal))
    return fail_disagrees (draft, FEATURE_NOMINAL, error);
  fill (&feature->nominal, &callout->nominal);
  fill (&feature->lower, &callout->lower);
  fill (&feature->upper, &callout->upper);
  return TRUE;
}

static gboolean
check_limits (const Draft *draft, GError **error)
{
  const TmFeature *feature = draft->feature;
  gboolean stated = feature->lower.given || feature->upper.given || *feature->requirement != '\0';
  gboolean attribute = draft->kind_given && tm_kind_is_attribute (feature->kind);

  if (!stated && !attribute)
    return tm_member_fail (TM_OWN (draft->row, -1), TM_EXCHANGE_ERROR_MISSING, error,
                           _ ("has neither a requirement nor limits; give it one of them"));
  if (feature->lower.given && feature->upper.given && feature->lower.count > feature->upper.count)
    {
      g_autofree char *limits = format_limits (&feature->lower, &feature->upper, feature->unit);

      return tm_member_fail (TM_OWN (draft->row, FEATURE_LOWER), TM_EXCHANGE_ERROR_BAD_VALUE, error,
                             _ ("the lower limit lies above the upper one (%s); swap them"), limits);
    }
  return TRUE;
}

static gboolean
take_limits (Draft *draft, GError **error)
{
  const TmJsonRow *row = draft->row;
  TmFeature *feature = draft->feature;

  if (feature->unit == TM_UNIT_NONE)
    return (!tm_member_is_given (TM_OWN (row, FEATURE_NOMINAL))
            || tm_member_fail (TM_OWN (row, FEATURE_NOMINAL), TM_EXCHANGE_ERROR_BAD_VALUE, error,
                               _ ("has no unit; add \"unit\"")))
           && check_limits (draft, error);
  return tm_take_quantity (TM_OWN (row, FEATURE_NOMINAL), feature->unit, &feature->nominal, error)
         && tm_take_quantity (TM_OWN (row, FEATURE_LOWER), feature->unit, &feature->lower, error)
         && tm_take_quantity (TM_OWN (row, FEATURE_UPPER), feature->unit, &feature->upper, error)
         && settle_limits (draft, error) && check_limits (draft, error);
}

/* What only the requirement says, and what it says unless the file does. */
static void
take_geometry (Draft *draft)
{
  const TmCallout *callout = &draft->callout;
  TmFeature *feature = draft->feature;
  g_autoptr (GString) datums = g_string_new (NULL);

  if (callout->status != TM_CALLOUT_OK)
    return;
  feature->places = MAX (callout->places, 1);
  feature->envelope = callout->envelope;
  if (!draft->kind_given && callout->cut != tm_feature_cut (feature))
    feature->cut = callout->cut;
  feature->zone_diameter = callout->zone_diameter;
  feature->modifier = callout->modifier;
  for (guint i = 0; i < callout->n_datums; i++)
    g_string_append_printf (datums, "%s%s", i > 0 ? " " : "", callout->datums[i]);
  feature->datums = tm_job_intern (draft->job, datums->str);
}

/* "each", "first", or "every N" with N from 1. */
static gboolean
is_check (const char *text)
{
  guint64 every;

  return *text == '\0' || g_str_equal (text, "each") || g_str_equal (text, "first")
         || (g_str_has_prefix (text, "every ")
             && g_ascii_string_to_unsigned (text + strlen ("every "), 10, 1, 1000000, &every, NULL));
}

static gboolean
take_choices (Draft *draft, GError **error)
{
  const TmJsonRow *row = draft->row;
  TmFeature *feature = draft->feature;
  TmMember designator = TM_OWN (row, FEATURE_CLASS);
  TmMember check = TM_OWN (row, FEATURE_CHECK);

  if (row->slots[FEATURE_ENVELOPE].given)
    feature->envelope = row->slots[FEATURE_ENVELOPE].truth;
  tm_take_text (designator, draft->job, &feature->designator);
  tm_take_text (check, draft->job, &feature->check);
  if (*feature->designator != '\0' && !g_str_equal (feature->designator, "critical")
      && !g_str_equal (feature->designator, "key"))
    return tm_member_fail_word (designator, "critical, key", error);
  if (!is_check (feature->check))
    return tm_member_fail_word (check, "each, first, every 5", error);
  return TM_TAKE_WORD (TM_OWN (row, FEATURE_CUT), tm_cut_from_word, "grows, shrinks", &feature->cut, error)
         && tm_take_whole (TM_OWN (row, FEATURE_PLACES), 1, MAX_PLACES, &feature->places, error)
         && tm_take_whole (TM_OWN (row, FEATURE_GROUP_SIZE), 1, MAX_GROUP_SIZE, &feature->group_size, error);
}

static gboolean
take_stations (Draft *draft, GError **error)
{
  TmFeature *feature = draft->feature;
  TmUnit unit = tm_callout_unit (draft->job, feature->unit);
  TmStation station;

  for (guint i = 0; i < tm_json_list_length (draft->row, FEATURE_STATIONS); i++)
    {
      const char *text = tm_json_list_text (draft->row, FEATURE_STATIONS, i);
      g_autofree char *quoted = tm_exchange_quote (text);
      TmMember member = TM_OWN (draft->row, FEATURE_STATIONS);

      if (*text == '\0' || !tm_station_read (text, unit, &station))
        return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                               _ ("%s is no station; write it like mouth/12, 12.5/3 or bottom"), quoted);
      if (g_ptr_array_find_with_equal_func (feature->stations, text, g_str_equal, NULL))
        return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                               _ ("%s stands twice; keep one of them"), quoted);
      g_ptr_array_add (feature->stations, (gpointer)tm_job_intern (draft->job, text));
    }
  return TRUE;
}

/* Which value counts, and how much form the two-point size leaves unseen. */
static gboolean
take_counts (Draft *draft, GError **error)
{
  TmFeature *feature = draft->feature;
  TmMember form = TM_OWN (draft->row, FEATURE_FORM_UNSEEN);

  if (!TM_TAKE_WORD (TM_OWN (draft->row, FEATURE_COUNTS), tm_counts_from_word, "combined", &feature->counts,
                     error))
    return FALSE;
  if (tm_member_is_given (form) && tm_unit_dimension (feature->unit) != TM_DIMENSION_LENGTH)
    return tm_member_fail (form, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("only a feature with a size has form unseen; take it out"));
  return tm_take_not_negative (form, feature->unit, &feature->form_unseen, error);
}

/* The words of all run rules, for a refusal. */
static char *
list_rules (void)
{
  g_autoptr (GString) words = g_string_new (NULL);

  for (TmRunRule rule = 0; rule < TM_N_RUN_RULES; rule++)
    g_string_append_printf (words, "%s%s", rule > 0 ? ", " : "", tm_run_rule_word (rule));
  return g_string_free (g_steal_pointer (&words), FALSE);
}

/* How the feature's control chart is drawn. */
static gboolean
take_chart (Draft *draft, GError **error)
{
  TmFeature *feature = draft->feature;
  TmMember rules = TM_OWN (draft->row, FEATURE_CHART_RULES);
  g_auto (GStrv) words = g_strsplit (tm_member_text (rules), " ", -1);

  for (guint i = 0; words[i] != NULL; i++)
    {
      g_autofree char *quoted = tm_exchange_quote (words[i]);
      g_autofree char *known = NULL;
      TmRunRule rule;

      if (*words[i] == '\0' || tm_run_rule_from_word (words[i], &rule))
        continue;
      known = list_rules ();
      return tm_member_fail (rules, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                             _ ("%s is no run rule; write some of %s, with blanks between"), quoted, known);
    }
  tm_take_text (rules, draft->job, &feature->chart_rules);
  return tm_take_whole (TM_OWN (draft->row, FEATURE_CHART_BASELINE), 0, MAX_BASELINE,
                        &feature->chart_baseline, error);
}

static gboolean
take_requirement (Draft *draft, GError **error)
{
  TmFeature *feature = draft->feature;

  if (!take_unit (draft, error))
    return FALSE;
  draft->callout.status = TM_CALLOUT_EMPTY;
  if (*feature->requirement != '\0')
    draft->callout = tm_callout_read (feature->requirement, tm_callout_unit (draft->job, feature->unit),
                                      draft->job->general_tolerance);
  if (!take_kind (draft, error) || !check_kind (draft, error) || !settle_unit (draft, error))
    return FALSE;
  take_geometry (draft);
  return take_limits (draft, error);
}

TmFeature *
tm_read_feature (TmJob *job, const TmJsonRow *row, TmCalloutStatus *read, GError **error)
{
  Draft draft = { .job = job, .row = row, .feature = tm_feature_new () };
  gboolean done
      = take_texts (&draft, error) && take_requirement (&draft, error) && take_choices (&draft, error)
        && take_stations (&draft, error) && take_counts (&draft, error) && take_chart (&draft, error)
        && tm_take_mate (job, row, draft.feature, error) && tm_take_press (job, row, draft.feature, error);

  if (read != NULL)
    *read = draft.callout.status;
  if (!done)
    g_clear_pointer (&draft.feature, tm_feature_free);
  return draft.feature;
}

gboolean
tm_read_feature_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmFeature *feature = tm_read_feature (job, row, NULL, error);
  TmAddStatus status;

  if (feature == NULL)
    return FALSE;
  status = tm_job_add_feature (job, feature);
  if (status == TM_ADD_OK)
    return TRUE;
  tm_read_add_fail (TM_OWN (row, FEATURE_BALLOON), status, error);
  tm_feature_free (feature);
  return FALSE;
}
