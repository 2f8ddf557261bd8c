/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-rule-words.h"

#include <glib/gi18n-lib.h>

const char *
tm_report_uncertainty_words (void)
{
  return N_ (
      "The uncertainty beside a result is the expanded one (JCGM 100): for a coverage of 95 %, with the "
      "factor "
      "that the degrees of freedom ask for. It takes in what the method's budget names: limit of "
      "error and resolution of the gauges, what their certificates state, repeatability, and temperature. "
      "Limits are absolute: a size is compared with them exactly as it was read, and only what is printed "
      "is rounded.");
}
