/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-glyphs: signs of a report that no installed font can draw: they print as boxes.
 */

#pragma once

#include "report-document.h"

G_BEGIN_DECLS

/* One line that names the first such sign, the text that it stands in and the mend; free it.  NULL: all can
 * be drawn.  Each sign is looked for once, whatever the length of the document.  What pictures write is not
 * looked at, but for their captions. */
char *tm_report_missing_glyphs (const TmReportDocument *document) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
