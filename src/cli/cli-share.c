/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "cli-share.h"

#include <glib/gi18n-lib.h>
#include <math.h>

char *
tm_format_share (double share, guint decimals)
{
  const int digits = (int)decimals;
  const double least = pow (10, -digits); /* percent */

  if (share > 0 && 100 * share < least)
    return g_strdup_printf (_ ("under %.*f %%"), digits, least);
  if (share < 1 && 100 * (1 - share) < least)
    return g_strdup_printf (_ ("over %.*f %%"), digits, 100 - least);
  return g_strdup_printf ("%.*f %%", digits, 100 * share);
}
