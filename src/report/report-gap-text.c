/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-gap-text: a gap in one line: the thing, the place, the mend.
 */

#include <glib/gi18n-lib.h>

#include "report-name-list.h"
#include "report-words.h"

static const char *
get_serial (const TmGap *gap)
{
  return gap->piece != NULL ? gap->piece->serial : "";
}

static guint
count_pieces (const TmGap *gap)
{
  return gap->pieces != NULL ? gap->pieces->len : 1;
}

static char *
name_pieces (const TmGap *gap)
{
  return gap->pieces != NULL ? tm_report_serials (gap->pieces) : g_strdup (get_serial (gap));
}

/* Without places where it is about all of them. */
static char *
name_feature (const TmGap *gap)
{
  g_autofree char *whole = NULL;
  g_autofree char *places = NULL;

  if (gap->feature == NULL)
    return g_strdup ("");
  if (gap->places == NULL)
    return tm_report_feature_short_name (gap->feature, gap->place);
  whole = tm_report_feature_short_name (gap->feature, 0);
  if (gap->places->len == gap->feature->places)
    return g_steal_pointer (&whole);
  places = tm_report_places (gap->places);
  /* Translators: a feature, and of its places several: "2 (4X Ø6.5), places 1–3". */
  return g_strdup_printf (_ ("%s, places %s"), whole, places);
}

static gboolean
lacks_limits (const TmFeature *feature)
{
  return feature != NULL && !tm_kind_is_attribute (feature->kind) && !feature->lower.given
         && !feature->upper.given;
}

static char *
describe_job_gap (const TmGap *gap)
{
  if (gap->kind == TM_GAP_NO_FEATURES)
    return g_strdup (_ ("The job has no features: add each requirement of the drawing."));
  if (gap->kind == TM_GAP_NO_PIECE)
    return g_strdup (_ ("No piece is marked as first article: mark the piece that the report is about."));
  if (gap->kind == TM_GAP_PARTIAL_REASON)
    return g_strdup_printf (_ ("The report is partial, but its %s is empty: fill it in on the job page."),
                            tm_report_fact_name (gap->field));
  return g_strdup_printf (_ ("The job's %s is empty: fill it in on the job page."),
                          tm_report_fact_name (gap->field));
}

/* What the report says besides sizes. */
static char *
describe_report_gap (const TmGap *gap)
{
  if (gap->kind == TM_GAP_DRAWING_REVISION)
    return g_strdup (_ ("The drawing's revision is not that of the part: measure by the part's drawing, or "
                        "correct the revision."));
  if (gap->kind == TM_GAP_NO_MATERIAL)
    return g_strdup (_ ("No raw material is listed: add it with its specification and certificate."));
  if (gap->kind == TM_GAP_SUPPLY_PROOF)
    return g_strdup_printf (_ ("%s has no certificate or acceptance report: enter its number."), gap->field);
  if (gap->kind == TM_GAP_SUPPLY_APPROVAL)
    return g_strdup_printf (
        _ ("Special process %s: the customer's approval of its source is not recorded: say "
           "whether it is given or not needed."),
        gap->field);
  if (gap->kind == TM_GAP_NO_SUB_PARTS)
    return g_strdup (_ ("The report is about an assembly, but none of its parts is listed: add them."));
  return g_strdup_printf (_ ("Part %s of the assembly names no first-article report: enter its identifier."),
                          gap->field);
}

/* Of the report as a whole. */
static char *
describe_signed_gap (const TmGap *gap)
{
  if (gap->kind == TM_GAP_SAME_IDENTIFIER)
    return g_strdup_printf (_ ("Job %s has the same report identifier: give this report one of its own."),
                            gap->field);
  if (gap->kind == TM_GAP_UNSIGNED)
    return g_strdup (_ ("The report is not signed: sign it."));
  return g_strdup_printf (_ ("The record has changed since %s signed the report on %.10s: sign it again."),
                          gap->signature->by, gap->signature->at);
}

static char *
describe_field_gap (const TmGap *gap)
{
  return g_strdup_printf (_ ("The shop's field “%s” is empty: fill it in among the facts of the report."),
                          gap->field);
}

static char *
describe_drawing_gap (const TmGap *gap, const char *feature)
{
  if (gap->kind == TM_GAP_NO_BALLOON)
    return g_strdup_printf (_ ("Feature %s has no balloon on the drawing: place it."), feature);
  return g_strdup (_ ("No drawing is kept with the job: add it, and place a balloon for each feature."));
}

static char *
describe_gauge_gap (const TmGap *gap, const char *feature)
{
  if (gap->kind == TM_GAP_GAUGE_UNKNOWN)
    return g_strdup_printf (_ ("Gauge %s, used on feature %s of piece %s, is not registered: add it to the "
                               "job's gauges."),
                            gap->field, feature, get_serial (gap));
  return g_strdup_printf (_ ("Gauge %s was not in calibration when it read feature %s of piece %s: enter its "
                             "due date, state why it was used, or measure again with another."),
                          gap->field, feature, get_serial (gap));
}

/* What is said against the evidence itself. */
static char *
describe_contradiction (const TmGap *gap, const char *feature)
{
  const guint n = count_pieces (gap);
  g_autofree char *pieces = name_pieces (gap);

  if (gap->kind == TM_GAP_PINS_CONTRADICT)
    return g_strdup_printf (ngettext ("The pins tried in feature %s of piece %s cannot all be true: try them "
                                      "again, and withdraw what was wrong.",
                                      "The pins tried in feature %s of pieces %s cannot all be true: try "
                                      "them again, and withdraw what was wrong.",
                                      n),
                            feature, pieces);
  return g_strdup_printf (ngettext ("The methods used on feature %s of piece %s disagree beyond their "
                                    "uncertainties: find which is wrong, and measure again.",
                                    "The methods used on feature %s of pieces %s disagree beyond their "
                                    "uncertainties: find which is wrong, and measure again.",
                                    n),
                          feature, pieces);
}

static char *
describe_assumed (const TmGap *gap, const char *feature)
{
  if (*gap->field == '\0')
    return g_strdup_printf (_ ("The result of feature %s of piece %s rests on an assumed uncertainty: make a "
                               "study, or enter what the certificate states."),
                            feature, get_serial (gap));
  return g_strdup_printf (_ ("Method %s, first used on feature %s of piece %s, rests on an assumed "
                             "uncertainty: make a study, or enter what the certificate states."),
                          gap->field, feature, get_serial (gap));
}

static char *
describe_station_gap (const TmGap *gap, const char *feature, const char *pieces)
{
  const guint n = count_pieces (gap);
  g_autofree char *stations = NULL;

  if (gap->stations == NULL)
    return g_strdup_printf (ngettext ("Feature %s of piece %s was not read at station %s: read it there.",
                                      "Feature %s of pieces %s was not read at station %s: read it there.",
                                      n),
                            feature, pieces, gap->station);
  stations = tm_report_names (gap->stations);
  return g_strdup_printf (ngettext ("Feature %s of piece %s was not read at stations %s: read it there.",
                                    "Feature %s of pieces %s was not read at stations %s: read it there.", n),
                          feature, pieces, stations);
}

static char *
describe_nonconformance_gap (const TmGap *gap, const char *feature, const char *pieces)
{
  const guint n = count_pieces (gap);

  if (gap->kind == TM_GAP_NO_REFERENCE)
    return g_strdup_printf (
        ngettext ("Feature %s of piece %s is out: enter its nonconformance number.",
                  "Feature %s of pieces %s is out: enter the nonconformance number of each.", n),
        feature, pieces);
  if (gap->kind == TM_GAP_NO_DISPOSITION)
    return g_strdup_printf (
        ngettext ("Nonconformance %s of feature %s, piece %s, has no disposition: record what was decided.",
                  "Nonconformance %s of feature %s, pieces %s, has no disposition: record what was decided.",
                  n),
        gap->field, feature, pieces);
  return g_strdup_printf (ngettext ("Feature %s of piece %s is to be reworked or repaired: record it when it "
                                    "is done, and measure it again.",
                                    "Feature %s of pieces %s is to be reworked or repaired: record it when "
                                    "it is done, and measure it again.",
                                    n),
                          feature, pieces);
}

static char *
describe_not_measured (const TmGap *gap, const char *feature, const char *pieces)
{
  const guint n = count_pieces (gap);

  if (lacks_limits (gap->feature))
    return g_strdup_printf (
        ngettext ("Feature %s has no limits to hold piece %s against: enter its requirement or its limits.",
                  "Feature %s has no limits to hold pieces %s against: enter its requirement or its limits.",
                  n),
        feature, pieces);
  if (g_str_equal (gap->field, "rework"))
    return g_strdup_printf (
        ngettext ("Feature %s of piece %s was reworked after it was last read: measure it again.",
                  "Feature %s of pieces %s was reworked after it was last read: measure it again.", n),
        feature, pieces);
  if (g_str_equal (gap->field, "cut"))
    return g_strdup_printf (
        ngettext ("Feature %s of piece %s was cut after it was last read: measure it again.",
                  "Feature %s of pieces %s was cut after it was last read: measure it again.", n),
        feature, pieces);
  return g_strdup_printf (ngettext ("Feature %s of piece %s is not measured: measure it.",
                                    "Feature %s of pieces %s is not measured: measure it.", n),
                          feature, pieces);
}

static char *
describe_line_gap (const TmGap *gap, const char *feature)
{
  const guint n = count_pieces (gap);
  g_autofree char *pieces = name_pieces (gap);

  if (gap->kind == TM_GAP_STATION_MISSING)
    return describe_station_gap (gap, feature, pieces);
  if (gap->kind == TM_GAP_TOO_CLOSE)
    return g_strdup_printf (ngettext ("Feature %s of piece %s is too close to call: measure it better, or "
                                      "record what was decided.",
                                      "Feature %s of pieces %s is too close to call: measure it better, or "
                                      "record what was decided.",
                                      n),
                            feature, pieces);
  if (gap->kind == TM_GAP_NO_METHOD)
    return g_strdup_printf (ngettext ("Feature %s of piece %s was read by no known method: name the gauge.",
                                      "Feature %s of pieces %s was read by no known method: name the gauge.",
                                      n),
                            feature, pieces);
  if (gap->kind == TM_GAP_NO_TOOLING)
    return g_strdup_printf (ngettext ("Feature %s of piece %s has a result, but neither gauge nor tooling: "
                                      "name what it was checked with.",
                                      "Feature %s of pieces %s has a result, but neither gauge nor tooling: "
                                      "name what it was checked with.",
                                      n),
                            feature, pieces);
  if (gap->kind == TM_GAP_NOT_MEASURED)
    return describe_not_measured (gap, feature, pieces);
  return describe_nonconformance_gap (gap, feature, pieces);
}

char *
tm_gap_describe (const TmGap *gap)
{
  g_autofree char *feature = NULL;

  g_return_val_if_fail (gap != NULL, NULL);
  feature = name_feature (gap);
  switch (gap->kind)
    {
    case TM_GAP_NO_FEATURES:
    case TM_GAP_NO_PIECE:
    case TM_GAP_FACT_MISSING:
    case TM_GAP_PARTIAL_REASON:
      return describe_job_gap (gap);
    case TM_GAP_NO_DRAWING:
    case TM_GAP_NO_BALLOON:
      return describe_drawing_gap (gap, feature);
    case TM_GAP_DRAWING_REVISION:
    case TM_GAP_NO_MATERIAL:
    case TM_GAP_SUPPLY_PROOF:
    case TM_GAP_SUPPLY_APPROVAL:
    case TM_GAP_NO_SUB_PARTS:
    case TM_GAP_SUB_PART_REPORT:
      return describe_report_gap (gap);
    case TM_GAP_SAME_IDENTIFIER:
    case TM_GAP_UNSIGNED:
    case TM_GAP_SUPERSEDED:
      return describe_signed_gap (gap);
    case TM_GAP_FIELD_MISSING:
      return describe_field_gap (gap);
    case TM_GAP_GAUGE_UNKNOWN:
    case TM_GAP_GAUGE_OVERDUE:
      return describe_gauge_gap (gap, feature);
    case TM_GAP_PINS_CONTRADICT:
    case TM_GAP_METHODS_DISAGREE:
      return describe_contradiction (gap, feature);
    case TM_GAP_ASSUMED:
      return describe_assumed (gap, feature);
    case TM_GAP_NOT_MEASURED:
    case TM_GAP_STATION_MISSING:
    case TM_GAP_TOO_CLOSE:
    case TM_GAP_NO_METHOD:
    case TM_GAP_NO_REFERENCE:
    case TM_GAP_NO_TOOLING:
    case TM_GAP_NO_DISPOSITION:
    case TM_GAP_REWORK_OPEN:
    case TM_N_GAPS:
    default:
      return describe_line_gap (gap, feature);
    }
}
