/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-callout.h"

#include "core-callout-reader.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define MAX_TEXT 400 /* bytes; a longer text is a note */

static const char *const status_texts[TM_N_CALLOUT_STATUSES] = {
  [TM_CALLOUT_OK] = "",
  [TM_CALLOUT_EMPTY] = N_ ("there is no requirement"),
  [TM_CALLOUT_NOT_READ]
  = N_ ("not a requirement that is read, so it is kept as a note; write it like Ø25 H7, "
        "25.000/25.021 or 1.250 ±.005"),
  [TM_CALLOUT_CLASS_UNKNOWN]
  = N_ ("ISO 286 does not define this tolerance class for this size; write the limits"),
  [TM_CALLOUT_NO_GENERAL] = N_ ("a number without tolerance, and the job states no general tolerance"),
  [TM_CALLOUT_GENERAL_UNKNOWN]
  = N_ ("the job's general tolerance is not one that is read; write it like ISO 2768-m "
        "or .X .1, .XX .01, .XXX .005"),
  [TM_CALLOUT_GENERAL_RANGE]
  = N_ ("the job's general tolerance does not cover this number; write its tolerance"),
  [TM_CALLOUT_LIMITS_CROSSED] = N_ ("the lower limit is not below the upper limit"),
  [TM_CALLOUT_TOO_FINE] = N_ ("a number finer than the program counts (1 pm); write fewer digits"),
  [TM_CALLOUT_UNIT_WRONG]
  = N_ ("a unit that does not fit here; ISO 286 classes are for millimetres: 25 mm H7"),
};

static TmCallout
make_note (TmCalloutStatus status)
{
  return (TmCallout) { .status = status, .kind = TM_KIND_NOTE, .places = 1 };
}

static TmCalloutStatus
read_form (TmCalloutReader *reader)
{
  tm_callout_take_places (reader);
  if (tm_callout_is_geometry (&reader->tokens))
    return tm_callout_read_geometry (reader);
  if (tm_callout_is_thread (&reader->tokens, reader->unit))
    return tm_callout_read_thread (reader);
  if (tm_callout_is_roughness (&reader->tokens))
    return tm_callout_read_roughness (reader);
  if (tm_callout_is_hardness (&reader->tokens))
    return tm_callout_read_hardness (reader);
  return tm_callout_read_size (reader);
}

TmCallout
tm_callout_read (const char *text, TmUnit unit, const char *general)
{
  TmCalloutReader reader = { .unit = unit, .general = general, .out = { .places = 1 } };

  g_return_val_if_fail (unit == TM_UNIT_MM || unit == TM_UNIT_IN, make_note (TM_CALLOUT_NOT_READ));

  if (text == NULL || text[strspn (text, " \t\r\n")] == '\0')
    return make_note (TM_CALLOUT_EMPTY);
  if (strlen (text) > MAX_TEXT || !g_utf8_validate (text, -1, NULL) || !tm_tokens_cut (text, &reader.tokens))
    return make_note (TM_CALLOUT_NOT_READ);
  reader.out.status = read_form (&reader);
  return reader.out.status == TM_CALLOUT_OK ? reader.out : make_note (reader.out.status);
}

static gboolean
is_radius (const TmTokens *tokens)
{
  static const char *const words[] = { "R", "SR", "CR" };

  if (tm_tokens_peek (tokens, 1)->kind != TM_TOKEN_NUMBER)
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    if (tm_token_is_word (tm_tokens_peek (tokens, 0), words[i]))
      return TRUE;
  return FALSE;
}

const char *
tm_callout_characteristic (const char *text)
{
  TmCalloutReader reader = { .unit = TM_UNIT_MM };

  if (strlen (text) > MAX_TEXT || !g_utf8_validate (text, -1, NULL) || !tm_tokens_cut (text, &reader.tokens))
    return "";
  tm_callout_take_places (&reader);
  if (is_radius (&reader.tokens))
    return "radius";
  return tm_callout_geometry_word (&reader.tokens);
}

const char *
tm_callout_status_text (TmCalloutStatus status)
{
  g_return_val_if_fail (status < TM_N_CALLOUT_STATUSES, "");
  return status_texts[status];
}

static const char *
join_datums (TmJob *job, const TmCallout *callout)
{
  g_autoptr (GString) joined = g_string_new (NULL);

  for (guint i = 0; i < callout->n_datums; i++)
    {
      if (i > 0)
        g_string_append_c (joined, ' ');
      g_string_append (joined, callout->datums[i]);
    }
  return tm_job_intern (job, joined->str);
}

TmCalloutStatus
tm_callout_apply (TmJob *job, TmFeature *feature)
{
  TmCallout callout;

  g_return_val_if_fail (job != NULL && feature != NULL, TM_CALLOUT_EMPTY);

  callout = tm_callout_read (feature->requirement, job->unit, job->general_tolerance);
  if (callout.status == TM_CALLOUT_EMPTY)
    return callout.status;
  feature->kind = callout.kind;
  feature->unit = callout.unit;
  feature->nominal = callout.nominal;
  feature->lower = callout.lower;
  feature->upper = callout.upper;
  feature->cut = callout.cut;
  feature->places = callout.places;
  feature->envelope = callout.envelope;
  feature->zone_diameter = callout.zone_diameter;
  feature->modifier = callout.modifier;
  feature->datums = join_datums (job, &callout);
  return callout.status;
}

TmUnit
tm_callout_unit (const TmJob *job, TmUnit feature_unit)
{
  g_return_val_if_fail (job != NULL, feature_unit);

  return feature_unit == TM_UNIT_MM || feature_unit == TM_UNIT_IN ? feature_unit : job->unit;
}

TmUnit
tm_kind_unit (TmKind kind, TmUnit system)
{
  if (tm_kind_is_attribute (kind))
    return TM_UNIT_NONE;
  if (kind == TM_KIND_ANGLE)
    return TM_UNIT_DEGREE;
  if (kind == TM_KIND_HARDNESS)
    return TM_UNIT_HARDNESS;
  if (kind == TM_KIND_ROUGHNESS)
    return system == TM_UNIT_IN ? TM_UNIT_UIN : TM_UNIT_UM;
  return system;
}

gboolean
tm_kinds_agree (TmKind given, TmKind read)
{
  if ((given == TM_KIND_BORE && read == TM_KIND_SHAFT) || (given == TM_KIND_SHAFT && read == TM_KIND_BORE))
    return FALSE;
  return tm_unit_dimension (tm_kind_unit (given, TM_UNIT_MM))
         == tm_unit_dimension (tm_kind_unit (read, TM_UNIT_MM));
}
