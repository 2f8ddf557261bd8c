/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-mate-dialog: a measured mate is added, changed or removed.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* @mate, of @feature, is changed; NULL adds one, by who measures now.  Once it is saved, the action
 * "fit.choose-mate" is activated from @any_child with its serial. */
GtkWindow *tm_mate_dialog_present (GtkWidget *any_child, TmDocument *document, const TmFeature *feature,
                                   TmMateSize *mate);

G_END_DECLS
