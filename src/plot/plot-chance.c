/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-chance.h"

#include <glib/gi18n-lib.h>
#include <math.h>

char *
tm_chance_text (double chance)
{
  long tenths;

  if (!isfinite (chance))
    return NULL;
  if (chance < 0.001)
    return g_strdup_printf (_ ("under %s %%"), "0.1");
  if (chance > 0.999)
    return g_strdup_printf (_ ("over %s %%"), "99.9");
  tenths = lround (chance * 1000.0);
  if ((tenths < 100 || tenths > 900) && tenths % 10 != 0)
    return g_strdup_printf (_ ("%ld.%ld %%"), tenths / 10, tenths % 10);
  return g_strdup_printf (_ ("%ld %%"), (tenths + 5) / 10);
}
