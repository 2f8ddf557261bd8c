/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-template-statements: the statements of the shop: where each stands, and its text in one or more
 * languages.  What is in another language stands under the statement that it says again.
 */

#pragma once

#include <adwaita.h>

#include "core-template.h"

G_BEGIN_DECLS

typedef struct _TmTemplateStatements TmTemplateStatements;

/* As tm_template_fields_new(). */
TmTemplateStatements *tm_template_statements_new (GtkBox *into, GCallback changed,
                                                  gpointer data) G_GNUC_WARN_UNUSED_RESULT;
void tm_template_statements_free (TmTemplateStatements *statements);

void tm_template_statements_show (TmTemplateStatements *statements, const TmTemplate *template);
void tm_template_statements_read (TmTemplateStatements *statements, TmTemplate *template);
/* The cursor into the text of the statement at @at. */
void tm_template_statements_focus (TmTemplateStatements *statements, guint at);

G_END_DECLS
