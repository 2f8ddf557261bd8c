/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-job-write: the parts of the writer that this folder shares.
 */

#pragma once

#include "exchange-job.h"

G_BEGIN_DECLS

/* The canonical bytes of @job with its signatures left out: what a signature signs. */
GString *tm_job_write_unsigned (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;

/* What @job defines, without what belongs to the pieces that were made; drawings by their digest only. */
GString *tm_job_write_definitions (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
