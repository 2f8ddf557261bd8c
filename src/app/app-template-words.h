/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-template-words: what the form of the report template says of a colour and of a logo.
 */

#pragma once

#include "core-template.h"

G_BEGIN_DECLS

/* How well the colour can be read on paper, and so what is printed in it; free it. */
char *tm_words_accent (const TmTemplate *template) G_GNUC_WARN_UNUSED_RESULT;

/* What stands on the ground of table heads, and how well it can be read; free it. */
char *tm_words_ground (const TmTemplate *template) G_GNUC_WARN_UNUSED_RESULT;

/* "PNG picture, 12 KiB" or "none"; free it. */
char *tm_words_logo (const TmTemplate *template) G_GNUC_WARN_UNUSED_RESULT;

/* What is wrong, with which field or statement; free it. */
char *tm_words_template_problem (TmTemplateStatus status, guint row) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
