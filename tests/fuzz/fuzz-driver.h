/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * fuzz-driver: runs a fuzz target by count, the same inputs every time, with no fuzzing engine.
 *
 * A target defines fuzz_seeds and LLVMFuzzerTestOneInput(); under an engine it is built without
 * this driver.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* NULL-terminated texts of which every input is a mutation. */
extern const char *const fuzz_seeds[];

int LLVMFuzzerTestOneInput (const guint8 *data, gsize size);

G_END_DECLS
