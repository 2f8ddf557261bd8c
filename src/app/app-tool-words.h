/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-tool-words: what the screens say of a cutting tool and of how it has cut. All texts translated.
 */

#pragma once

#include "app-document.h"
#include "core-cut.h"

G_BEGIN_DECLS

/* "dial in 0.01 mm, reads the diameter"; "no graduation" where there is none. */
char *tm_words_tool (const TmTool *tool) G_GNUC_WARN_UNUSED_RESULT;

/* Each other thing that is known of it on a line: least cut, backlash, spring passes, note; "" for nothing.
 */
char *tm_words_tool_habits (const TmTool *tool) G_GNUC_WARN_UNUSED_RESULT;

/* A cut of the past and the job that it was made in. */
typedef struct {
  char *job; /* part number; "" for the job at hand */
  TmCutAnswer answer;
} TmToolAnswer;

/* Every closed cut of the tool @name in the newest other jobs of the book, oldest first, then in the job at
 * hand.  Free with g_array_unref(). */
GArray *tm_tool_answers (TmDocument *document, const char *name) G_GNUC_WARN_UNUSED_RESULT;

/* "Takes 97 % of what is dialled, give or take 4 %": what these cuts teach, from nothing on. */
char *tm_words_tool_response (const GArray *answers, TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;

/* "asked 0.150, got 0.148 mm: 99 %" */
char *tm_words_tool_answer (const TmCutAnswer *answer, TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
