/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-form-view: the form of a place as a picture with its words for a screen reader: the section along
 * the axis, or the clock view.
 */

#pragma once

#include <gtk/gtk.h>

#include "core-judge.h"

G_BEGIN_DECLS

#define TM_TYPE_FORM_VIEW (tm_form_view_get_type ())
G_DECLARE_FINAL_TYPE (TmFormView, tm_form_view, TM, FORM_VIEW, GtkWidget)

typedef enum { TM_FORM_SECTION, TM_FORM_CLOCK } TmFormPicture;

GtkWidget *tm_form_view_new (TmFormPicture picture) G_GNUC_WARN_UNUSED_RESULT;

/* Shows the form of the place that @judgement is of; neither is kept.  @judgement may be NULL.
 * Returns: FALSE when there is nothing to show. */
gboolean tm_form_view_show (TmFormView *self, const TmJob *job, const TmJudgement *judgement);

/* The picture in words; "" when there is nothing to show. */
const char *tm_form_view_words (TmFormView *self);

G_END_DECLS
