/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-book: what the actions of `book` share.
 */

#pragma once

#include "book-store.h"

G_BEGIN_DECLS

/* A call of `book`: its options, and its operands after the word that says what to do; all borrowed. */
typedef struct {
  const char *book_path;
  const char *out;
  const char *tag;
  const char *good_until;
  const char *error;
  const char *digest;
  const char *set;
  gboolean json;
  char **operands;
  guint n_operands;
} TmBookCall;

/* The book that the call is about; NULL after an error line. */
TmBook *tm_book_call_open (const TmBookCall *call, TmBookOpenFlags flags) G_GNUC_WARN_UNUSED_RESULT;

/* The id of the one job in @book whose id or part number is @wanted; NULL after an error line, which begins
 * with @action ("book export"). */
char *tm_book_call_find_job (TmBook *book, const char *action, const char *wanted) G_GNUC_WARN_UNUSED_RESULT;

/* book signed: the signed reports, or one of them handed out again.  Returns the exit status. */
int tm_book_call_signed (const TmBookCall *call);

/* book recall: what was measured with a gauge since it was known to be good.  Returns the exit status. */
int tm_book_call_recall (const TmBookCall *call);

/* book template: the shop's report template, into the book or out of it.  Returns the exit status. */
int tm_book_call_template (const TmBookCall *call);

G_END_DECLS
