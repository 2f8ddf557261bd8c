/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gap: from a line of "what is missing" in the report to the place where it is mended.
 */

#pragma once

#include "app-window.h"
#include "report-content.h"

G_BEGIN_DECLS

void tm_gap_go (TmWindow *window, const TmGap *gap);

G_END_DECLS
