/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-press-words: what a press fit comes to, in words and in the rows of a table.  All texts translated; a
 * figure that is not known has no row.  No widgets.
 */

#pragma once

#include "core-press.h"

G_BEGIN_DECLS

/* The columns: at the least, the middle and the most interference. */
enum { TM_PRESS_LEAST, TM_PRESS_MIDDLE, TM_PRESS_MOST, TM_N_PRESS_COLUMNS };

typedef struct {
  char *title;
  char *cells[TM_N_PRESS_COLUMNS];
  char *sentence; /* the row read out */
  gboolean over;  /* beyond what the material bears */
} TmPressRow;

void tm_press_row_free (TmPressRow *row);

/* Lengths, stresses and forces for people who measure in @unit, MM or IN.  Returns: (transfer full) rows of
 * TmPressRow; none where the status is an error. */
GPtrArray *tm_words_press_rows (const TmPressInput *input, const TmPressAnswer *answer,
                                TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;

/* The one line that matters most: what is wrong and its mend, what would yield, or what it holds. */
char *tm_words_press_says (const TmPressAnswer *answer, TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;

/* What belongs to the figures, one sentence each, NULL-terminated: dropping in, what is to be stated, where
 * the figures of the materials come from.  @hub and @shaft: their materials, NULL when none is known. */
char **tm_words_press_notes (const TmPressInput *input, const TmPressAnswer *answer, const TmElastic *hub,
                             const TmElastic *shaft, TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;

/* "steel: E 207 GPa, yield not known; Callister…"; "" for NULL. */
char *tm_words_elastic (const TmElastic *material, TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;

/* What has to be minded, one sentence each, NULL-terminated: that of this press, or (@always) of every one.
 * @plastic: the hub or the shaft is one. */
char **tm_words_press_cautions (const TmPressAnswer *answer, gboolean plastic,
                                gboolean always) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
