/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-fit: a hole and a shaft of one nominal size, from their ISO 286 classes.
 */

#include "core-callout-band.h"
#include "core-callout.h"

#include <string.h>

#define MAX_TEXT 100

/* "Ø25 mm", in millimetres: the only unit that ISO 286 has. */
static gboolean
take_nominal (TmTokens *tokens, gint64 *count, TmCalloutStatus *status)
{
  TmCalloutNumber number;
  gboolean diameter = tm_tokens_take (tokens, TM_TOKEN_DIAMETER) || tm_tokens_take_word (tokens, "dia");

  if (!tm_band_take_number (tokens, TM_UNIT_MM, FALSE, &number))
    {
      if (diameter)
        *status = TM_CALLOUT_NOT_READ;
      return FALSE;
    }
  *status = TM_CALLOUT_UNIT_WRONG;
  if (tm_band_family (number.unit) == TM_UNIT_MM || number.unit == TM_UNIT_NONE)
    *status = tm_band_count (&number, TM_UNIT_MM, count);
  return TRUE;
}

static TmCalloutStatus
take_class (TmTokens *tokens, TmIso286Class *out)
{
  gboolean known;

  if (!tm_band_take_class (tokens, out, &known))
    return TM_CALLOUT_NOT_READ;
  return known ? TM_CALLOUT_OK : TM_CALLOUT_CLASS_UNKNOWN;
}

/* "25 H7/p6" or "25 H7 / 25 p6". */
static TmCalloutStatus
read_fit (TmTokens *tokens, gint64 *nominal, TmIso286Class classes[2])
{
  TmCalloutStatus status = TM_CALLOUT_OK;
  gint64 second;

  if (!take_nominal (tokens, nominal, &status))
    return TM_CALLOUT_NOT_READ;
  if (status == TM_CALLOUT_OK)
    status = take_class (tokens, &classes[0]);
  if (status != TM_CALLOUT_OK)
    return status;
  if (!tm_tokens_take (tokens, TM_TOKEN_SLASH) && !tm_tokens_take (tokens, TM_TOKEN_MINUS))
    return TM_CALLOUT_NOT_READ;
  if (take_nominal (tokens, &second, &status) && status == TM_CALLOUT_OK && second != *nominal)
    return TM_CALLOUT_NOT_READ;
  if (status == TM_CALLOUT_OK)
    status = take_class (tokens, &classes[1]);
  if (status != TM_CALLOUT_OK)
    return status;
  return tm_tokens_at_end (tokens) && classes[0].hole != classes[1].hole ? TM_CALLOUT_OK
                                                                         : TM_CALLOUT_NOT_READ;
}

static TmCalloutStatus
work_out (gint64 nominal, const TmIso286Class classes[2], TmFit *fit)
{
  const TmIso286Class *hole = &classes[classes[0].hole ? 0 : 1];
  const TmIso286Class *shaft = &classes[classes[0].hole ? 1 : 0];
  gint64 ei, es, shaft_lower, shaft_upper;

  if (!tm_iso286_deviations (nominal, hole, &ei, &es)
      || !tm_iso286_deviations (nominal, shaft, &shaft_lower, &shaft_upper))
    return TM_CALLOUT_CLASS_UNKNOWN;
  fit->nominal = nominal;
  fit->hole_lower = nominal + ei;
  fit->hole_upper = nominal + es;
  fit->shaft_lower = nominal + shaft_lower;
  fit->shaft_upper = nominal + shaft_upper;
  fit->clearance_min = fit->hole_lower - fit->shaft_upper;
  fit->clearance_max = fit->hole_upper - fit->shaft_lower;
  return TM_CALLOUT_OK;
}

TmFit
tm_fit_read (const char *text)
{
  TmFit fit = { .status = TM_CALLOUT_EMPTY };
  TmTokens tokens;
  TmIso286Class classes[2];
  gint64 nominal;

  if (text == NULL || text[strspn (text, " \t\r\n")] == '\0')
    return fit;
  fit.status = TM_CALLOUT_NOT_READ;
  if (strlen (text) > MAX_TEXT || !g_utf8_validate (text, -1, NULL) || !tm_tokens_cut (text, &tokens))
    return fit;
  fit.status = read_fit (&tokens, &nominal, classes);
  if (fit.status == TM_CALLOUT_OK)
    fit.status = work_out (nominal, classes, &fit);
  return fit;
}
