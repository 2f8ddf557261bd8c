/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-template-fields: the list of fields that each job fills: named, required or not, moved, taken out.
 */

#pragma once

#include <adwaita.h>

#include "core-template.h"

G_BEGIN_DECLS

typedef struct _TmTemplateFields TmTemplateFields;

/* Adds the group to @into; @changed is called with @data after each change. */
TmTemplateFields *tm_template_fields_new (GtkBox *into, GCallback changed,
                                          gpointer data) G_GNUC_WARN_UNUSED_RESULT;
void tm_template_fields_free (TmTemplateFields *fields);

void tm_template_fields_show (TmTemplateFields *fields, const TmTemplate *template);
/* Puts the rows in the place of those that @template has. */
void tm_template_fields_read (TmTemplateFields *fields, TmTemplate *template);
/* The cursor into the row at @at. */
void tm_template_fields_focus (TmTemplateFields *fields, guint at);

G_END_DECLS
