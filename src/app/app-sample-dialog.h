/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-sample-dialog: how many pieces to measure: the plan of a feature, the sample of a lot, and between
 * which sizes nearly all pieces lie.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "app-sample-words.h"

G_BEGIN_DECLS

/* @spread (may be NULL) is copied. */
GtkWindow *tm_sample_dialog_present (GtkWidget *any_child, TmDocument *document, const TmFeature *feature,
                                     const TmSpread *spread);

G_END_DECLS
