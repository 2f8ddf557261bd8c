/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>

#include "core-cut.h"

const char *
tm_cut_status_word (TmCutStatus status)
{
  static const char *const words[TM_N_CUT_STATUSES] = {
    [TM_CUT_OK] = NC_ ("cut status", "cut"),
    [TM_CUT_PROVE] = NC_ ("cut status", "proving cut"),
    [TM_CUT_NOTHING_LEFT] = NC_ ("cut status", "nothing to gain"),
    [TM_CUT_METAL_GONE] = NC_ ("cut status", "metal gone"),
    [TM_CUT_TOO_COARSE] = NC_ ("cut status", "too coarse"),
    [TM_CUT_UNDER_LEAST] = NC_ ("cut status", "less than the tool takes"),
    [TM_CUT_UNEVEN] = NC_ ("cut status", "uneven beyond the band"),
    [TM_CUT_BAD_BAND] = NC_ ("cut status", "no size fits"),
    [TM_CUT_NOT_READ] = NC_ ("cut status", "not read"),
    [TM_CUT_NO_LIMITS] = NC_ ("cut status", "no limits"),
    [TM_CUT_NO_SIDE] = NC_ ("cut status", "inside or outside unknown"),
    [TM_CUT_NO_METHOD] = NC_ ("cut status", "no method"),
    [TM_CUT_NO_DIAL] = NC_ ("cut status", "no dial"),
    [TM_CUT_NO_MATE] = NC_ ("cut status", "no mate"),
    [TM_CUT_NOT_A_SIZE] = NC_ ("cut status", "not cut to size"),
  };

  g_return_val_if_fail (status < TM_N_CUT_STATUSES, "");
  return words[status];
}
