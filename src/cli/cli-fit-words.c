/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-fit-words: the options of tenthmark-cli fit, read.
 */

#include <glib/gi18n-lib.h>

#include "cli-fit.h"
#include "cli-options.h"

gboolean
tm_fit_read_number (const char *option, const char *text, TmUnit unit, TmQuantity *out)
{
  TmReadStatus status;

  *out = TM_QUANTITY_NONE;
  if (text == NULL)
    return TRUE;
  status = tm_quantity_read (text, unit, out);
  if (status != TM_READ_OK)
    return tm_fail (_ ("fit: --%s “%s”: %s"), option, text, _ (tm_read_status_text (status))) == 0;
  return TRUE;
}

gboolean
tm_fit_read_temp (const char *option, const char *text, double *out)
{
  TmQuantity temp;

  if (!tm_fit_read_number (option, text, TM_UNIT_CELSIUS, &temp))
    return FALSE;
  if (!temp.given)
    return TRUE;
  *out = tm_count_to_double (temp.count, TM_UNIT_CELSIUS);
  if (*out >= TM_FIT_TEMPERATURE_LEAST && *out <= TM_FIT_TEMPERATURE_MOST)
    return TRUE;
  return tm_fail (_ ("fit: --%s “%s”: %s"), option, text,
                  g_dpgettext2 (GETTEXT_PACKAGE, "fit status", tm_fit_status_word (TM_FIT_BAD_TEMPERATURE)))
         == 0;
}

gboolean
tm_fit_read_want (const TmFitWords *words, TmUnit unit, TmFitWant *out)
{
  TmQuantity least, most;

  if (!tm_fit_read_number ("want-least", words->want_least, unit, &least)
      || !tm_fit_read_number ("want-most", words->want_most, unit, &most))
    return FALSE;
  if (least.given)
    {
      out->has_least = TRUE;
      out->least = least.count;
    }
  if (most.given)
    {
      out->has_most = TRUE;
      out->most = most.count;
    }
  if (!out->has_least || !out->has_most || out->least <= out->most)
    return TRUE;
  return tm_fail (_ ("fit: %s"),
                  g_dpgettext2 (GETTEXT_PACKAGE, "fit status", tm_fit_status_word (TM_FIT_BAD_WANT)))
         == 0;
}
