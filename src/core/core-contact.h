/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-contact: how a method's gauge touches the part.
 */

#pragma once

#include "core-gauge-kind.h"

G_BEGIN_DECLS

/* The kind of the gauge that touches the part: the first of a method, or a gauge used alone.  NULL when
 * @name names neither, or a gauge of a kind nobody knows. */
const TmGaugeKind *tm_method_touching (const TmJob *job, const char *name);

/* How it touches; TM_CONTACT_OTHER when its kind is not known. */
TmContact tm_method_contact (const TmJob *job, const char *name);

G_END_DECLS
