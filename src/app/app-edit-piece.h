/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-piece: what is decided of pieces that are held back.
 */

#pragma once

#include "app-edit.h"

G_BEGIN_DECLS

typedef struct {
  TmPiece *piece;
  const char *disposition; /* "hold", "measure", "release", "scrap" or "" */
  const char *note;
} TmDisposition;

/* All of them, or none; the texts need not be interned.  On FALSE the job is as before, with one line in
 * @error. */
gboolean tm_edit_dispose (TmDocument *document, const TmDisposition *choice, guint n, GError **error);

/* The words of the record for a disposition, "" first, and what the screen says for each; NULL after the
 * last. */
const char *tm_disposition_word (guint which);
const char *tm_disposition_text (guint which);
/* Which of them @word is; one past the last for a word of a file that is none of ours. */
guint tm_disposition_which (const char *word);

G_END_DECLS
