/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-bench-page: the Bench: measure one piece. The features on the left, the reading entry and the
 * band plot in the centre, what it proves on the right.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_BENCH_PAGE (tm_bench_page_get_type ())
G_DECLARE_FINAL_TYPE (TmBenchPage, tm_bench_page, TM, BENCH_PAGE, GtkBox)

GtkWidget *tm_bench_page_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* @document may be NULL: no job is open. */
void tm_bench_page_set_document (TmBenchPage *self, TmDocument *document);

G_END_DECLS
