/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-rule-words: what workbook and pages say of how it was judged, besides the job's rule.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What the uncertainty beside a result is, and how sizes are compared with limits; marked for translation. */
const char *tm_report_uncertainty_words (void);

G_END_DECLS
