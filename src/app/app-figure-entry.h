/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-figure-entry: a figure to be typed, with its name before it, its unit after it, and under it the line
 * that says what is wrong with it.
 *
 * "left" (): Enter was pressed or the cursor went elsewhere, and the text is another than the one filled in,
 * or was wrong.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TM_TYPE_FIGURE_ENTRY (tm_figure_entry_get_type ())
G_DECLARE_FINAL_TYPE (TmFigureEntry, tm_figure_entry, TM, FIGURE_ENTRY, GtkBox)

/* @title is shown, @spoken is read out (NULL: the same); "" shows none. */
GtkWidget *tm_figure_entry_new (const char *title, const char *spoken) G_GNUC_WARN_UNUSED_RESULT;

/* "mm", "µm", "°C"; "" for a plain number. */
void tm_figure_entry_set_unit (TmFigureEntry *self, const char *unit);

/* What stands in the entry while it is empty: what is taken then. */
void tm_figure_entry_set_placeholder (TmFigureEntry *self, const char *text);

/* Shows @text, unless the entry is being typed in or is wrong: then what was typed stays. */
void tm_figure_entry_fill (TmFigureEntry *self, const char *text);
/* Shows @text in any case, and takes away a line about what was wrong. */
void tm_figure_entry_reset (TmFigureEntry *self, const char *text);

/* What was typed, without spaces around it. */
char *tm_figure_entry_text (TmFigureEntry *self) G_GNUC_WARN_UNUSED_RESULT;

/* One line under the entry, which is marked; NULL takes both away. */
void tm_figure_entry_set_problem (TmFigureEntry *self, const char *problem);
const char *tm_figure_entry_problem (TmFigureEntry *self);

/* Marks the entry alone: what is wrong is said elsewhere. */
void tm_figure_entry_mark (TmFigureEntry *self, gboolean wrong);

void tm_figure_entry_focus (TmFigureEntry *self);
GtkEditable *tm_figure_entry_editable (TmFigureEntry *self);

G_END_DECLS
