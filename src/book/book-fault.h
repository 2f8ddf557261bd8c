/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-fault: what verification finds, in words that name the reading.
 */

#pragma once

#include "book-private.h"

G_BEGIN_DECLS

/* A book with more faults than this is not worth listing further. */
#define TM_BOOK_MAX_FAULTS 1000

typedef struct {
  TmBook *book;
  GPtrArray *list;   /* TmBookFault */
  guint64 unlisted;  /* those beyond TM_BOOK_MAX_FAULTS */
  GHashTable *parts; /* job number -> part number */
} TmFaults;

void tm_faults_init (TmFaults *faults, TmBook *book);
/* Returns the list, with a last entry about those that are not listed. */
GPtrArray *tm_faults_finish (TmFaults *faults) G_GNUC_WARN_UNUSED_RESULT;

/* @where and @how are taken over. */
void tm_faults_add (TmFaults *faults, const char *what, char *where, char *how);

/* "part X, piece 001, feature 1, reading 12" for a fact or a row with this payload. */
char *tm_faults_where (TmFaults *faults, gint64 job, TmBookKind kind,
                       const char *payload) G_GNUC_WARN_UNUSED_RESULT;

/* "value is 25.013 in the table, 25.012 in the journal; …" */
char *tm_faults_difference (TmBookKind kind, const char *table,
                            const char *journal) G_GNUC_WARN_UNUSED_RESULT;

/* The value of @column in @payload with its escapes undone; NULL when it is not there. */
char *tm_payload_get (const char *payload, const char *column) G_GNUC_WARN_UNUSED_RESULT;

/* --- book-content.c */

/* Adds kept files whose bytes were changed. */
gboolean tm_book_check_contents (TmBook *book, TmFaults *faults, GError **error);

G_END_DECLS
