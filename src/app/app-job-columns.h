/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-job-columns: the columns of the Job page's list of features.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

void tm_job_add_columns (GtkColumnView *view);

G_END_DECLS
