/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-words: the language that pictures and reports speak on this thread.
 *
 * A report speaks the customer's language while the window goes on in the user's, and is made on a thread of
 * its own; gettext knows one language for the whole program and wants its locale installed.  So the texts of
 * src/plot and src/report are looked up here: this header comes before each of their files and puts its
 * functions in place of gettext's, whose words stay what xgettext reads.  With no words in use on a thread it
 * is gettext all the same.
 */

#pragma once

#include <glib.h>
#include <glib/gi18n-lib.h>

#include "core-judge.h"
#include "core-quantity.h"

G_BEGIN_DECLS

/* A language.  Each function gives a text that lives as long as @data, @text itself where it knows none;
 * @context may be NULL. */
typedef struct _TmWords TmWords;
struct _TmWords {
  const char *(*text) (gpointer data, const char *context, const char *text); /* NULL: gettext's language */
  const char *(*plural) (gpointer data, const char *one, const char *many, gulong n);
  gpointer data;
  gboolean decimal_comma; /* numbers are printed with a comma */
};

/* From now on on this thread; NULL: gettext and a decimal point.  @words is borrowed.  Returns: what was in
 * use, to be put back. */
const TmWords *tm_words_use (const TmWords *words);

const char *tm_words_text (const char *context, const char *text) G_GNUC_FORMAT (2);
const char *tm_words_plural (const char *one, const char *many, gulong n) G_GNUC_FORMAT (1) G_GNUC_FORMAT (2);

/* Puts the decimal mark of this thread's words into a number that was printed with a point: into @number
 * itself, which is given back. */
char *tm_words_number (char *number);

/* printf() with the decimal mark of this thread's words. */
char *tm_words_print (const char *format, ...) G_GNUC_PRINTF (1, 2) G_GNUC_WARN_UNUSED_RESULT;
char *tm_words_vprint (const char *format, va_list list) G_GNUC_PRINTF (1, 0) G_GNUC_WARN_UNUSED_RESULT;
void tm_words_append (GString *out, const char *format, ...) G_GNUC_PRINTF (2, 3);
void tm_words_vappend (GString *out, const char *format, va_list list) G_GNUC_PRINTF (2, 0);

#undef _
#define _(text) tm_words_text (NULL, (text))
#undef C_
#define C_(context, text) tm_words_text ((context), (text))
#undef ngettext
#define ngettext(one, many, n)              tm_words_plural ((one), (many), (n))
#define g_dngettext(domain, one, many, n)   tm_words_plural ((one), (many), (n))
#define g_dpgettext2(domain, context, text) tm_words_text ((context), (text))
#define g_dgettext(domain, text)            tm_words_text (NULL, (text))

#define g_strdup_printf         tm_words_print
#define g_strdup_vprintf        tm_words_vprint
#define g_string_append_printf  tm_words_append
#define g_string_append_vprintf tm_words_vappend

/* What core prints for people to read. */
#define tm_quantity_format(...)       tm_words_number (tm_quantity_format (__VA_ARGS__))
#define tm_quantity_format_in(...)    tm_words_number (tm_quantity_format_in (__VA_ARGS__))
#define tm_count_format(...)          tm_words_number (tm_count_format (__VA_ARGS__))
#define tm_count_format_exact(...)    tm_words_number (tm_count_format_exact (__VA_ARGS__))
#define tm_count_format_bound(...)    tm_words_number (tm_count_format_bound (__VA_ARGS__))
#define tm_mean_format(...)           tm_words_number (tm_mean_format (__VA_ARGS__))
#define tm_judgement_size_text(...)   tm_words_number (tm_judgement_size_text (__VA_ARGS__))
#define tm_judgement_spread_text(...) tm_words_number (tm_judgement_spread_text (__VA_ARGS__))

G_END_DECLS
