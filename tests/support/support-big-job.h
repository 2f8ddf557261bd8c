/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * support-big-job: a large job of invented data, the same every time, for tests and benchmarks.
 */

#pragma once

#include "core-model.h"

/* A millimetre job with @n_features features (mostly bores of 25 H7 with two stations and a dial
 * bore gauge; each tenth judged by pass or fail) and @n_readings readings, spread over as many pieces
 * as that takes, in measuring order piece by piece. */
TmJob *tm_test_big_job (guint n_features, guint n_readings) G_GNUC_WARN_UNUSED_RESULT;
