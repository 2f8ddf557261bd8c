/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-material-choice: a material from the shop's entries and from the tables.
 *
 * "chosen" (const char *name): the person picks one; "" is the first of the list, none of its own.
 */

#pragma once

#include <gtk/gtk.h>

#include "core-model.h"

G_BEGIN_DECLS

#define TM_TYPE_MATERIAL_CHOICE (tm_material_choice_get_type ())
G_DECLARE_FINAL_TYPE (TmMaterialChoice, tm_material_choice, TM, MATERIAL_CHOICE, GtkBox)

/* @title stands before it and is read out. */
GtkWidget *tm_material_choice_new (const char *title) G_GNUC_WARN_UNUSED_RESULT;

/* Lists what @job and the tables have, with @none for no name; @chosen is the name that is selected, one that
 * nobody knows too. */
void tm_material_choice_show (TmMaterialChoice *self, const TmJob *job, const char *none, const char *chosen);

G_END_DECLS
