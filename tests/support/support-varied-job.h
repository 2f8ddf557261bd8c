/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * support-varied-job: jobs for what writes a job for other programs: every kind, unit and sidedness, several
 * places, odd names, facts missing or long, whatever a record may hold.
 */

#pragma once

#include "core-model.h"

/* A random job with features, pieces, people, nonconformances and signatures added to it; the same for the
 * same @seed. */
TmJob *tm_test_varied_job (guint32 seed) G_GNUC_WARN_UNUSED_RESULT;
