/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-signature: a signature joins the record.  On FALSE nothing has changed, with one line for the
 * person in @error.
 */

#pragma once

#include "app-edit.h"

G_BEGIN_DECLS

/* @row's texts are copied.  @mark is the newest fact of the book when what is signed was read
 * (tm_book_mark()); REFUSED where the job has changed since: somebody would sign what nobody has seen. */
gboolean tm_edit_add_signature (TmDocument *document, const TmSignature *row, gint64 mark, GError **error);

G_END_DECLS
