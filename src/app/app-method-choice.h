/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-method-choice: which gauge or method reads the present feature.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_METHOD_CHOICE (tm_method_choice_get_type ())
G_DECLARE_FINAL_TYPE (TmMethodChoice, tm_method_choice, TM, METHOD_CHOICE, GtkBox)

/* "chosen" (const char *name): the person picked another; "" = the feature's own. */
GtkWidget *tm_method_choice_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Lists what there is for the present feature.  Returns whether there is anything to choose. */
gboolean tm_method_choice_list (TmMethodChoice *self, TmDocument *document);

G_END_DECLS
