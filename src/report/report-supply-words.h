/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-supply-words: what pages and workbook call a material, a special process, a functional test.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* "raw material", "special process", "functional test", marked for translation. */
const char *tm_report_supply_word (TmSupplyKind kind);

/* "yes", "no", "not needed" or "", marked for translation; context "approval". */
const char *tm_report_approval_word (TmApproval approval);

G_END_DECLS
