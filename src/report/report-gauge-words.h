/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-gauge-words: what workbook and pages say of one gauge.
 */

#pragma once

#include "report-content.h"

G_BEGIN_DECLS

/* Whether the gauge was in calibration when it was used: "yes", "no", "overdue: why it was used"…; free it.
 */
char *tm_report_gauge_cover (const TmReportContent *content, const TmGauge *gauge) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
