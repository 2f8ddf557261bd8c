/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-part: a job with its definitions and, of its record, only some features of some pieces; private to
 * this folder.
 */

#pragma once

#include "book-private.h"

G_BEGIN_DECLS

/* A feature of a piece as one text, in place of what @out held. */
void tm_part_spot (GString *out, const char *piece, const char *feature);

/* A set of such texts. */
GHashTable *tm_part_spots_new (void) G_GNUC_WARN_UNUSED_RESULT;
void tm_part_add_spot (GHashTable *spots, const char *piece, const char *feature);

/* The job @number with the readings, trials, cuts and withdrawals of @spots, which is widened by the
 * features whose size they use. */
TmJob *tm_book_load_part (TmBook *book, gint64 number, GHashTable *spots,
                          GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
