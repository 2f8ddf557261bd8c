/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-template-preview: the first page of a report as a template makes it look, drawn small by the same code
 * that prints it: of the open job, or of an example where none is open or it is large.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_TEMPLATE_PREVIEW (tm_template_preview_get_type ())
G_DECLARE_FINAL_TYPE (TmTemplatePreview, tm_template_preview, TM, TEMPLATE_PREVIEW, GtkWidget)

/* @document may be NULL. */
GtkWidget *tm_template_preview_new (TmDocument *document) G_GNUC_WARN_UNUSED_RESULT;

/* Shows @template, of which it keeps a copy, a moment after the last call. */
void tm_template_preview_show (TmTemplatePreview *self, const TmTemplate *template);

G_END_DECLS
