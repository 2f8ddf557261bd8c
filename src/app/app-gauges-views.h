/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gauges-views: the views of the Gauges page, in the order of its switch.
 */

#pragma once

#include "app-pages.h"

G_BEGIN_DECLS

const TmPageKind *tm_gauges_views (guint *n_views);

/* A button that goes to the register: for a view that has nothing to show before there are gauges. */
GtkWidget *tm_gauges_open_register_new (void) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
