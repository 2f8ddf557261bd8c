/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gauges-views: the views of the Gauges page, in the order of its switch.
 */

#pragma once

#include "app-pages.h"

G_BEGIN_DECLS

const TmPageKind *tm_gauges_views (guint *n_views);

G_END_DECLS
