/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-reading-entry: where a reading is typed: one large entry with what it reads as beside it; for
 * a position the two offsets as well; for a pass/fail feature two buttons; under it the question
 * that a slip raises.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_READING_ENTRY (tm_reading_entry_get_type ())
G_DECLARE_FINAL_TYPE (TmReadingEntry, tm_reading_entry, TM, READING_ENTRY, GtkBox)

/* "submit" () is emitted on Enter in the last entry and by the pass and fail buttons;
 * "typed" () when an offset has changed (the value goes through the document);
 * "pin-tried" (const char *trial) when one key has said what the pin in the entry did. */
GtkWidget *tm_reading_entry_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Borrowed until another, or NULL, is set. */
void tm_reading_entry_set_document (TmReadingEntry *self, TmDocument *document);

/* Shows the session's text, what it reads as, and its question; suits the present feature. */
void tm_reading_entry_refresh (TmReadingEntry *self);

/* Puts the cursor where the next reading is typed. */
void tm_reading_entry_focus (TmReadingEntry *self);

/* Selects what was typed and not taken: it stays to be seen or mended, and typing replaces it, as a
 * gauge that types like a keyboard does. */
void tm_reading_entry_select (TmReadingEntry *self);

/* TRUE while the offsets, not the value, hold what is typed; *@dx and *@dy are borrowed. */
gboolean tm_reading_entry_offsets (TmReadingEntry *self, const char **dx, const char **dy);

/* The value that is typed now, for the plot: FALSE when there is none that reads. */
gboolean tm_reading_entry_value (TmReadingEntry *self, TmQuantity *out);

/* TRUE while any of the entries holds text that somebody typed: a pin that is offered is none. */
gboolean tm_reading_entry_has_text (TmReadingEntry *self);

/* Empties the offsets after they were recorded. */
void tm_reading_entry_clear_offsets (TmReadingEntry *self);

/* Whether the entry takes pins rather than readings, and whether what it holds is a pin trial (in either
 * case: a reading's text that ends in + or -). */
gboolean tm_reading_entry_takes_pins (TmReadingEntry *self);
gboolean tm_reading_entry_holds_pin (TmReadingEntry *self);

/* Goes over to pins, with the next one to try where nothing else is typed, or back to readings.  Another
 * feature goes back by itself. */
void tm_reading_entry_set_pins (TmReadingEntry *self, gboolean pins);

/* Says what the pin in the entry did; FALSE when the entry holds no pin, or one that says so already. */
gboolean tm_reading_entry_try_pin (TmReadingEntry *self, gboolean went);

/* The main entry; for tests. */
GtkWidget *tm_reading_entry_editable (TmReadingEntry *self);

G_END_DECLS
