/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * support-random-job: any job that the model takes, so that a test needs no example of every member.
 */

#pragma once

#include "core-model.h"

/* A job with some of everything; the same for the same state of @rand. */
TmJob *tm_test_random_job (GRand *rand) G_GNUC_WARN_UNUSED_RESULT;
