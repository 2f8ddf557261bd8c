/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-fit-state.h"

#define PLAIN_TEMPERATURE 20.0 /* °C, ISO 1 */

gboolean
tm_feature_takes_mate (const TmFeature *feature)
{
  switch (feature->kind)
    {
    case TM_KIND_BORE:
    case TM_KIND_SHAFT:
    case TM_KIND_DIAMETER:
    case TM_KIND_LENGTH:
      return tm_unit_dimension (feature->unit) == TM_DIMENSION_LENGTH;
    case TM_KIND_DEPTH:
    case TM_KIND_ANGLE:
    case TM_KIND_POSITION:
    case TM_KIND_FORM:
    case TM_KIND_ROUGHNESS:
    case TM_KIND_HARDNESS:
    case TM_KIND_THREAD:
    case TM_KIND_ATTRIBUTE:
    case TM_KIND_NOTE:
    case TM_N_KINDS:
    default:
      return FALSE;
    }
}

static gboolean
is_meant_for (const TmMateSize *mate, const TmPiece *piece, guint place)
{
  return g_str_equal (mate->piece, piece->serial) && tm_fit_mate_place (mate) == place;
}

static TmMateSize *
choose_mate (const TmJob *job, const TmSpot *spot, const char *serial)
{
  TmMateSize *first = NULL, *meant = NULL;

  for (guint i = 0; i < job->mate_sizes->len; i++)
    {
      TmMateSize *mate = g_ptr_array_index (job->mate_sizes, i);

      if (!g_str_equal (mate->feature, spot->feature->balloon))
        continue;
      if (serial != NULL && g_str_equal (mate->serial, serial))
        return mate;
      if (first == NULL)
        first = mate;
      if (meant == NULL && is_meant_for (mate, spot->piece, spot->place))
        meant = mate;
    }
  return meant != NULL ? meant : first;
}

/* The side that decides which of the two is the bore. */
static TmFitStatus
check_parts (const TmFitState *state, const TmFitPart *part, const TmFitPart *mate, TmFitCheck *out)
{
  return state->bore ? tm_fit_check (part, mate, &state->want, out)
                     : tm_fit_check (mate, part, &state->want, out);
}

/* What is missing of the two decides, before what the check itself says. */
static TmFitStatus
combine (TmFitStatus part, TmFitStatus mate, TmFitStatus check)
{
  if (part != TM_FIT_OK && part != TM_FIT_NO_METHOD)
    return part;
  if (mate != TM_FIT_OK && mate != TM_FIT_NO_METHOD)
    return mate;
  if (check != TM_FIT_OK)
    return check;
  return part != TM_FIT_OK ? part : mate;
}

static gboolean
has_range (TmFitStatus status)
{
  return status == TM_FIT_OK || status == TM_FIT_NO_METHOD;
}

typedef struct {
  TmFitPart part, mate;
  TmFitStatus status; /* of both together, before they are checked */
} Parts;

/* An expansion that nobody knows is said by the check. */
static TmFitStatus
check_warm (const TmFitState *state, const TmJob *job, Parts parts, double part_temp, double mate_temp,
            TmFitCheck *out)
{
  tm_fit_part_warm (job, state->feature, FALSE, part_temp, &parts.part);
  tm_fit_part_warm (job, state->feature, TRUE, mate_temp, &parts.mate);
  return combine (parts.status, TM_FIT_OK, check_parts (state, &parts.part, &parts.mate, out));
}

static Parts
take_limits (const TmFitState *state)
{
  Parts parts = { 0 };

  parts.status = combine (tm_fit_part_by_limits (state->feature, &parts.part),
                          tm_fit_mate_by_limits (state->feature, &parts.mate), TM_FIT_OK);
  return parts;
}

static Parts
take_measured (const TmJob *job, const TmFitState *state, const TmMateSize *mate)
{
  Parts parts = { 0 };
  const TmFitStatus of_part
      = tm_fit_part_as_measured (job, state->piece, state->feature, state->place, &parts.part);
  const TmFitStatus of_mate
      = mate != NULL ? tm_fit_mate_as_measured (mate, &parts.mate) : TM_FIT_NOT_MEASURED;

  parts.status = combine (of_part, of_mate, TM_FIT_OK);
  return parts;
}

static TmFitStatus
check (const TmFitState *state, Parts *parts, TmFitCheck *out)
{
  if (!has_range (parts->status))
    return parts->status;
  return combine (parts->status, TM_FIT_OK, check_parts (state, &parts->part, &parts->mate, out));
}

static gboolean
start_state (TmDocument *document, TmFitState *out)
{
  const TmSpot *spot = tm_bench_spot (tm_document_bench (document));

  *out = (TmFitState) { .piece = spot->piece, .feature = spot->feature, .place = spot->place };
  if (spot->piece == NULL || spot->feature == NULL)
    return FALSE;
  out->side = TM_FIT_OK;
  out->bore = tm_fit_feature_is_bore (spot->feature, &out->side);
  out->want = tm_fit_wanted (spot->feature);
  return TRUE;
}

void
tm_fit_state_of (TmDocument *document, const char *serial, double part_temp, double mate_temp,
                 TmFitState *out)
{
  const TmJob *job = tm_document_job (document);
  Parts limits, measured;

  if (!start_state (document, out))
    return;
  out->mate = choose_mate (job, tm_bench_spot (tm_document_bench (document)), serial);
  out->warm_asked = part_temp < PLAIN_TEMPERATURE || part_temp > PLAIN_TEMPERATURE
                    || mate_temp < PLAIN_TEMPERATURE || mate_temp > PLAIN_TEMPERATURE;
  if (out->side != TM_FIT_OK)
    {
      out->limits_status = out->measured_status = out->warm_status = out->side;
      return;
    }
  limits = take_limits (out);
  measured = take_measured (job, out, out->mate);
  out->limits_status = check (out, &limits, &out->limits);
  out->measured_status = check (out, &measured, &out->measured);
  if (out->warm_asked && tm_fit_state_best (out) != NULL)
    out->warm_status = check_warm (out, job, tm_fit_state_is_measured (out) ? measured : limits, part_temp,
                                   mate_temp, &out->warm);
}

gboolean
tm_fit_state_has_meant (TmDocument *document)
{
  const TmJob *job = tm_document_job (document);
  const TmSpot *spot = tm_bench_spot (tm_document_bench (document));

  for (guint i = 0; spot->piece != NULL && spot->feature != NULL && i < job->mate_sizes->len; i++)
    {
      const TmMateSize *mate = g_ptr_array_index (job->mate_sizes, i);

      if (g_str_equal (mate->feature, spot->feature->balloon)
          && is_meant_for (mate, spot->piece, spot->place))
        return TRUE;
    }
  return FALSE;
}

gboolean
tm_fit_state_is_measured (const TmFitState *state)
{
  return state->piece != NULL && has_range (state->measured_status);
}

const TmFitCheck *
tm_fit_state_best (const TmFitState *state)
{
  if (tm_fit_state_is_measured (state))
    return &state->measured;
  return state->piece != NULL && state->limits_status == TM_FIT_OK ? &state->limits : NULL;
}

TmFitStatus
tm_fit_state_with (TmDocument *document, TmMateSize *mate, TmFitCheck *out)
{
  TmFitState state;
  Parts parts;

  if (!start_state (document, &state))
    return TM_FIT_NOT_MEASURED;
  if (state.side != TM_FIT_OK)
    return state.side;
  parts = take_measured (tm_document_job (document), &state, mate);
  return check (&state, &parts, out);
}

void
tm_fit_state_press (TmDocument *document, const TmFitState *state, TmPressInput *out)
{
  const TmFitCheck *best = tm_fit_state_best (state);

  tm_press_input_of (tm_document_job (document), state->feature, out);
  if (best != NULL)
    tm_press_take_fit (out, best);
}
