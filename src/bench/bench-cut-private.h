/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-cut-private: what planning and recording a cut share.
 */

#pragma once

#include "bench-cut.h"

G_BEGIN_DECLS

/* The tool in force where a cut can be made; NULL with TM_BENCH_ERROR_NOWHERE or _ENTRY. */
const TmTool *tm_bench_check_cut (const TmBench *bench, GError **error);

/* A length on the dial, zero or more, in @unit unless it says its own; FALSE with TM_BENCH_ERROR_ENTRY. */
gboolean tm_bench_read_dial (const TmFeature *feature, const char *text, TmUnit unit, TmQuantity *out,
                             GError **error);

G_END_DECLS
