/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-template-form: the rows of the shop's report template.
 */

#pragma once

#include <adwaita.h>

#include "core-template.h"

G_BEGIN_DECLS

typedef struct _TmTemplateForm TmTemplateForm;

/* Adds the rows to @into; @changed is called with @data after each change. */
TmTemplateForm *tm_template_form_new (GtkBox *into, GCallback changed,
                                      gpointer data) G_GNUC_WARN_UNUSED_RESULT;
void tm_template_form_free (TmTemplateForm *form);

/* Puts @template into the rows. */
void tm_template_form_show (TmTemplateForm *form, const TmTemplate *template);

/* What the rows say just now, right or wrong: for a preview.  Owned by the form, until the next call. */
const TmTemplate *tm_template_form_peek (TmTemplateForm *form);

/* The same when it is right; else NULL with a line in @problem, and the cursor where it is wrong. */
const TmTemplate *tm_template_form_read (TmTemplateForm *form, char **problem);

/* Takes the logo of the file at @path; what goes wrong is said in its row. */
void tm_template_form_take_logo (TmTemplateForm *form, const char *path);

G_END_DECLS
