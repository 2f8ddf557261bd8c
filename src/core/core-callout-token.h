/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-callout-token: a requirement's text, cut into tokens.  Private to the callout reader.
 *
 * The many spellings of one sign (Ø ø ⌀, ± +/-, – − -, × x X) come out as one token; what is not
 * known comes out as TM_TOKEN_OTHER, which no form takes, so that the text stays a note.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  TM_TOKEN_END,
  TM_TOKEN_NUMBER,    /* text: unsigned decimal, with a point */
  TM_TOKEN_WORD,      /* text: ASCII letters as written; µ is u */
  TM_TOKEN_TIMES,     /* text: "x", "X", or "" for × */
  TM_TOKEN_DIAMETER,  /* Ø */
  TM_TOKEN_PLUSMINUS, /* ± */
  TM_TOKEN_PLUS,
  TM_TOKEN_MINUS,
  TM_TOKEN_SLASH,
  TM_TOKEN_DEGREE,
  TM_TOKEN_SINGLE, /* ' : minute of arc */
  TM_TOKEN_DOUBLE, /* " : inch, second of arc */
  TM_TOKEN_OPEN,
  TM_TOKEN_CLOSE,
  TM_TOKEN_AT_MOST,
  TM_TOKEN_AT_LEAST,
  TM_TOKEN_HASH,     /* # : numbered thread */
  TM_TOKEN_DEPTH,    /* ↧ */
  TM_TOKEN_ROOT,     /* √ : the roughness sign, as far as a keyboard has it */
  TM_TOKEN_CIRCLED,  /* text: the letter of Ⓜ, Ⓛ, Ⓔ…, also of "(M)" */
  TM_TOKEN_GEOMETRY, /* text: the word of the characteristic */
  TM_TOKEN_OTHER,
} TmTokenKind;

#define TM_TOKEN_TEXT 24
#define TM_TOKENS_MAX 48

typedef struct {
  TmTokenKind kind;
  gboolean spaced; /* a space stands before it */
  char text[TM_TOKEN_TEXT];
} TmToken;

/* Tokens of one text and how far they have been taken; the last is always TM_TOKEN_END. */
typedef struct {
  guint n;
  guint at;
  TmToken tokens[TM_TOKENS_MAX];
} TmTokens;

/* Cuts @text, which is UTF-8.  Returns: FALSE when it is longer than any requirement. */
gboolean tm_tokens_cut (const char *text, TmTokens *tokens);

/* The token @ahead of the next one; the end beyond the end. */
const TmToken *tm_tokens_peek (const TmTokens *tokens, guint ahead);

/* Takes the next token when it is of @kind. */
gboolean tm_tokens_take (TmTokens *tokens, TmTokenKind kind);

/* Takes the next token when it is the word @word, whatever its case. */
gboolean tm_tokens_take_word (TmTokens *tokens, const char *word);

/* Takes the next token when it is one of the NULL-terminated @words, whatever their case. */
gboolean tm_tokens_take_any (TmTokens *tokens, const char *const *words);

/* Nothing is left to take. */
gboolean tm_tokens_at_end (const TmTokens *tokens);

/* Removes the token @index. */
void tm_tokens_remove (TmTokens *tokens, guint index);

/* Whether @token is the word @word, whatever its case. */
gboolean tm_token_is_word (const TmToken *token, const char *word);

/* A number written without a decimal mark. */
gboolean tm_token_is_whole (const TmToken *token);

G_END_DECLS
