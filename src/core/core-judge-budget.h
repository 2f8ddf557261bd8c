/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-judge-budget: the budget that a judgement rests on, line by line.
 */

#pragma once

#include "core-judge.h"
#include "core-method.h"

G_BEGIN_DECLS

/* The lines of the station that decides, as it was judged; @lines has room for TM_METHOD_MAX_LINES.
 * Returns: how many; 0 where nothing is known.  Where several methods count together the lines are those
 * of the station's own method: core-combine has the parts. */
guint tm_judgement_lines (const TmJob *job, const TmJudgement *judgement, TmComponent *lines);

G_END_DECLS
