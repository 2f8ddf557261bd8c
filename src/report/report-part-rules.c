/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-rules: how it was judged, in plain paragraphs.
 */

#include <glib/gi18n-lib.h>

#include "report-part.h"
#include "report-rule-words.h"
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
  tm_part_say_text (parts, tm_report_uncertainty_words (), FALSE);
}
