/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-schema: the tables of the book, and how an older book becomes a present one.
 */

#pragma once

#include "book-private.h"

G_BEGIN_DECLS

/* In the file's header, so that `file` and we can tell a book from any other database: "TMbk". */
#define TM_BOOK_APPLICATION_ID 0x544d626b

/* What a book is made of. */
typedef struct {
  const char *const
      *steps;    /* step n (from 0) brings a book from version n to n + 1; once released it never changes */
  guint n_steps; /* the present version */
  const char *tables; /* makes a new book of that version in one go; NULL: by all the steps */
} TmSchema;

extern const TmSchema tm_schema;
extern const char tm_schema_tables[];

/* Whether @db is a book, or will be a new one, and not a newer one; writes nothing. */
gboolean tm_schema_check (sqlite3 *db, const char *path, const TmSchema *schema, GError **error);

/* Brings @db to the present version of @schema in one immediate transaction, or leaves it as it was.  A
 * database without any table is a new book; one of another program is NOT_A_BOOK; a newer one is
 * NEWER.  @may_write FALSE: only looks; an older book is then READ_ONLY. */
gboolean tm_schema_migrate (sqlite3 *db, const char *path, const TmSchema *schema, gboolean may_write,
                            GError **error);

G_END_DECLS
