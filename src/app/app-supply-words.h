/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-supply-words: a material, special process or test, and a part of an assembly, in words.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

const char *tm_words_supply_kind (TmSupplyKind kind);
const char *tm_words_approval (TmApproval approval);

/* What is known of it beside its name: "raw material · EN 10204-3.1 · certificate 4711". */
char *tm_words_supply (const TmSupply *supply) G_GNUC_WARN_UNUSED_RESULT;
char *tm_words_sub_part (const TmSubPart *part) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
