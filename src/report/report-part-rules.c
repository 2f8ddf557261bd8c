/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-rules: how it was judged, in plain paragraphs.
 */

#include <glib/gi18n-lib.h>

#include "report-part.h"
#include "report-words.h"

static char *
say_rule (gconstpointer job)
{
  return tm_report_rule (job);
}

void
tm_part_rules (TmParts *parts)
{
  tm_part_section (parts, N_ ("How it was judged"), "judged", FALSE);
  tm_part_say (parts, say_rule, parts->job, FALSE);
  tm_part_say_text (
      parts,
      N_ ("The uncertainty beside a result is the expanded one (JCGM 100): for a coverage of 95 %, with the "
          "factor "
          "that the degrees of freedom ask for. It takes in what the method's budget names: limit of "
          "error and resolution of the gauges, what their certificates state, repeatability, and "
          "temperature. "
          "Limits are absolute: a size is compared with them exactly as it was read, and only what is "
          "printed "
          "is rounded."),
      FALSE);
}
