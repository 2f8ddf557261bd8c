/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-take: the values of one row's members, checked, with errors that name the member.
 *
 * Every function that returns gboolean returns FALSE with @error set when the value is refused; a
 * member that was not given, or is "", leaves the target alone.
 */

#pragma once

#include "exchange-json.h"

G_BEGIN_DECLS

/* One member of a row, or of an object inside it. */
typedef struct {
  const TmJsonRow *row;
  int member; /* < 0: the row itself */
  int object; /* the member that it lies in; < 0: the row's own */
} TmMember;

#define TM_OWN(row, member)           ((TmMember) { (row), (int)(member), -1 })
#define TM_INNER(row, object, member) ((TmMember) { (row), (int)(member), (int)(object) })

const char *tm_member_text (TmMember member);
gboolean tm_member_is_given (TmMember member); /* and not "" */

/* Sets @error at the member; always FALSE. */
gboolean tm_member_fail (TmMember member, TmExchangeError code, GError **error, const char *format, ...)
    G_GNUC_PRINTF (4, 5);

/* A text that stays in the job. */
void tm_take_text (TmMember member, TmJob *job, const char **out);

/* A text that names something; refused when @required and empty. */
gboolean tm_take_name (TmMember member, TmJob *job, gboolean required, const char **out, GError **error);

gboolean tm_take_quantity (TmMember member, TmUnit unit, TmQuantity *out, GError **error);

/* As tm_take_quantity() for a gauge or method, which may measure angles or hardness: then the text
 * names that unit ("0.1 deg"). */
gboolean tm_take_spread (TmMember member, TmUnit unit, TmQuantity *out, GError **error);

/* As tm_take_quantity() and tm_take_spread(), for what means nothing below zero. */
gboolean tm_take_not_negative (TmMember member, TmUnit unit, TmQuantity *out, GError **error);
gboolean tm_take_spread_not_negative (TmMember member, TmUnit unit, TmQuantity *out, GError **error);

/* As tm_take_quantity() for a plain number that must be above zero; @like: an example. */
gboolean tm_take_above_zero (TmMember member, TmUnit unit, const char *like, TmQuantity *out, GError **error);

/* A calendar date YYYY-MM-DD. */
gboolean tm_take_date (TmMember member, TmJob *job, const char **out, GError **error);

/* A moment in UTC, YYYY-MM-DDThh:mm:ssZ. */
gboolean tm_take_moment (TmMember member, TmJob *job, const char **out, GError **error);

/* Refuses a member whose text is none of @words ("a, b, c"); always FALSE. */
gboolean tm_member_fail_word (TmMember member, const char *words, GError **error);

/* A length that must be above zero, named as it is. */
gboolean tm_take_length_above_zero (TmMember member, TmUnit unit, TmQuantity *out, GError **error);

/* A whole number from @least to @most. */
gboolean tm_take_whole (TmMember member, guint least, guint most, guint *out, GError **error);

/* Takes the word of an enumeration. */
#define TM_TAKE_WORD(member_, from_word, words, out, error)                   \
  (!tm_member_is_given (member_) || from_word (tm_member_text (member_), out) \
   || tm_member_fail_word (member_, words, error))

G_END_DECLS
