/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-home-columns: the columns of the list of jobs.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

void tm_home_add_columns (GtkColumnView *view);

G_END_DECLS
