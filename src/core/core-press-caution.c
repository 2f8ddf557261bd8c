/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-press-caution: what has to be minded where pressing and shrinking are spoken of.
 */

#include "core-press.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Hardened steel begins to lose its hardness: common practice. */
#define TEMPER_FROM 200

static const char *const words[TM_N_PRESS_CAUTIONS] = {
  [TM_PRESS_CAUTION_MAY_BE_LOOSE]
  = NC_ ("press caution", "At the least interference nothing is pressed: such a pair holds nothing."),
  [TM_PRESS_CAUTION_OVER_YIELD]
  = NC_ ("press caution", "Stress beyond yield: the elastic figures end there; the part stays stretched or "
                          "crushed, and holds less than is said here."),
  [TM_PRESS_CAUTION_YIELD_UNKNOWN]
  = NC_ ("press caution", "A yield strength is unknown: whether that part stays elastic is not checked."),
  [TM_PRESS_CAUTION_THIN] = NC_ (
      "press caution", "The hub's wall is under a tenth of the diameter: it can burst, or stay stretched."),
  [TM_PRESS_CAUTION_RELAXES]
  = NC_ ("press caution",
         "Plastic relaxes: under a steady press its pressure falls over hours and weeks, the sooner the "
         "warmer. The figures are those of the first moment; what it holds later is less."),
  [TM_PRESS_CAUTION_MOISTURE]
  = NC_ ("press caution", "Plastic takes up moisture, nylon most: it swells and softens, and the bore goes "
                          "on closing. Gauge the bore after pressing in, not before."),
  [TM_PRESS_CAUTION_COLD_ASSUMED]
  = NC_ ("press caution", "Shrinking by cold is reckoned with the expansion near 20 °C; a cold part shrinks "
                          "less per degree, so it has to be colder than is said here."),
  [TM_PRESS_CAUTION_NOT_HOT_ENOUGH]
  = NC_ ("press caution", "No heat that parts stand opens the hub that far: cool the shaft, or do both."),
  [TM_PRESS_CAUTION_NOT_COLD_ENOUGH]
  = NC_ ("press caution", "No cold shrinks the shaft that far: heat the hub, or do both."),
  [TM_PRESS_CAUTION_TEMPER]
  = NC_ ("press caution", "From about 200 °C hardened steel loses hardness, and plastic and seals are gone "
                          "before that."),
  [TM_PRESS_CAUTION_GUARD]
  = NC_ ("press caution",
         "Pressing and shrinking: guards closed, eyes protected; hot and cold parts burn the skin, thin "
         "sections can burst."),
  [TM_PRESS_CAUTION_ESTIMATE]
  = NC_ ("press caution", "An estimate for planning: the drawing, the customer's requirements, local codes "
                          "and a qualified engineer decide."),
};

const char *
tm_press_caution_word (TmPressCaution caution)
{
  g_return_val_if_fail (caution < TM_N_PRESS_CAUTIONS, "");
  return words[caution];
}

static gboolean
is_over_yield (const TmPressAnswer *answer)
{
  return answer->most.hub_use > 1 || answer->most.shaft_use > 1;
}

gboolean
tm_press_caution_applies (TmPressCaution caution, const TmPressAnswer *answer, gboolean plastic)
{
  switch (caution)
    {
    case TM_PRESS_CAUTION_MAY_BE_LOOSE:
      return answer->most.effective > 0 && answer->least.effective <= 0;
    case TM_PRESS_CAUTION_OVER_YIELD:
      return is_over_yield (answer);
    case TM_PRESS_CAUTION_YIELD_UNKNOWN:
      return !isnan (answer->most.pressure)
             && (isnan (answer->most.hub_use) || isnan (answer->most.shaft_use));
    case TM_PRESS_CAUTION_THIN:
      return answer->thin_hub;
    case TM_PRESS_CAUTION_RELAXES:
    case TM_PRESS_CAUTION_MOISTURE:
      return plastic;
    case TM_PRESS_CAUTION_COLD_ASSUMED:
      return answer->cold_assumed && !isnan (answer->cool_shaft_to);
    case TM_PRESS_CAUTION_NOT_HOT_ENOUGH:
      return !answer->hot_enough;
    case TM_PRESS_CAUTION_NOT_COLD_ENOUGH:
      return !answer->cold_enough;
    case TM_PRESS_CAUTION_TEMPER:
      return answer->heat_hub_to > TEMPER_FROM;
    case TM_PRESS_CAUTION_GUARD:
    case TM_PRESS_CAUTION_ESTIMATE:
      return TRUE;
    case TM_N_PRESS_CAUTIONS:
    default:
      return FALSE;
    }
}
