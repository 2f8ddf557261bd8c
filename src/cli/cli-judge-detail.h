/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-judge-detail: what a judgement rests on: the raw value, the budget line by line, the methods put
 * together, the pins.
 */

#pragma once

#include <yajl/yajl_gen.h>

#include "core-judge.h"

G_BEGIN_DECLS

/* Members of the open object; the lines only with @budget: they make the document three times as long. */
void tm_put_judgement_detail (yajl_gen gen, const TmJob *job, const TmJudgement *judgement, gboolean budget);

/* The same in words, on lines of their own. */
void tm_print_judgement_detail (const TmJob *job, const TmJudgement *judgement);

G_END_DECLS
