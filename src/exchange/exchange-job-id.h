/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-job-id: the identity of a job that came without one.
 */

#pragma once

#include "exchange-job.h"

G_BEGIN_DECLS

/* Gives @job, when it has no id, one derived from its content: the SHA-256 of its canonical bytes
 * in the form of a UUID (RFC 9562, version 8: custom). */
void tm_job_derive_id (TmJob *job);

G_END_DECLS
