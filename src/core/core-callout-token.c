/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-callout-token.h"

#include <string.h>

/* Every sign that stands for a token of its own. */
static const struct {
  gunichar sign;
  TmTokenKind kind;
  const char *text;
} signs[] = {
  { 0x00d8, TM_TOKEN_DIAMETER, "" },  /* Ø */
  { 0x00f8, TM_TOKEN_DIAMETER, "" },  /* ø */
  { 0x2300, TM_TOKEN_DIAMETER, "" },  /* ⌀ */
  { 0x2205, TM_TOKEN_DIAMETER, "" },  /* ∅ */
  { 0x03a6, TM_TOKEN_DIAMETER, "" },  /* Φ */
  { 0x03c6, TM_TOKEN_DIAMETER, "" },  /* φ */
  { 0x00b1, TM_TOKEN_PLUSMINUS, "" }, /* ± */
  { '+', TM_TOKEN_PLUS, "" },
  { '-', TM_TOKEN_MINUS, "" },
  { 0x2010, TM_TOKEN_MINUS, "" }, /* hyphen */
  { 0x2011, TM_TOKEN_MINUS, "" }, /* hyphen that does not break */
  { 0x2012, TM_TOKEN_MINUS, "" }, /* figure dash */
  { 0x2013, TM_TOKEN_MINUS, "" }, /* en dash */
  { 0x2212, TM_TOKEN_MINUS, "" }, /* minus */
  { '/', TM_TOKEN_SLASH, "" },
  { 0x00d7, TM_TOKEN_TIMES, "" },  /* × */
  { 0x00b0, TM_TOKEN_DEGREE, "" }, /* degree */
  { 0x00ba, TM_TOKEN_DEGREE, "" }, /* ordinal, typed for a degree */
  { '\'', TM_TOKEN_SINGLE, "" },
  { 0x2032, TM_TOKEN_SINGLE, "" },
  { 0x2019, TM_TOKEN_SINGLE, "" },
  { '"', TM_TOKEN_DOUBLE, "" },
  { 0x2033, TM_TOKEN_DOUBLE, "" },
  { 0x201d, TM_TOKEN_DOUBLE, "" },
  { '(', TM_TOKEN_OPEN, "" },
  { ')', TM_TOKEN_CLOSE, "" },
  { 0x2264, TM_TOKEN_AT_MOST, "" },
  { 0x2265, TM_TOKEN_AT_LEAST, "" },
  { '#', TM_TOKEN_HASH, "" },
  { 0x21a7, TM_TOKEN_DEPTH, "" }, /* ↧ */
  { 0x221a, TM_TOKEN_ROOT, "" },
  { 0x2316, TM_TOKEN_GEOMETRY, "position" },
  { 0x23e4, TM_TOKEN_GEOMETRY, "straightness" },
  { 0x23e5, TM_TOKEN_GEOMETRY, "flatness" },
  { 0x25b1, TM_TOKEN_GEOMETRY, "flatness" }, /* ▱ */
  { 0x25cb, TM_TOKEN_GEOMETRY, "circularity" },
  { 0x232d, TM_TOKEN_GEOMETRY, "cylindricity" },
  { 0x2312, TM_TOKEN_GEOMETRY, "line profile" },
  { 0x2313, TM_TOKEN_GEOMETRY, "surface profile" },
  { 0x27c2, TM_TOKEN_GEOMETRY, "perpendicularity" },
  { 0x22a5, TM_TOKEN_GEOMETRY, "perpendicularity" }, /* ⊥ */
  { 0x23ca, TM_TOKEN_GEOMETRY, "perpendicularity" }, /* ⏊ */
  { 0x2225, TM_TOKEN_GEOMETRY, "parallelism" },
  { 0x2afd, TM_TOKEN_GEOMETRY, "parallelism" }, /* ⫽ */
  { 0x2220, TM_TOKEN_GEOMETRY, "angularity" },
  { 0x25ce, TM_TOKEN_GEOMETRY, "concentricity" },
  { 0x232f, TM_TOKEN_GEOMETRY, "symmetry" },
  { 0x2197, TM_TOKEN_GEOMETRY, "runout" },
  { 0x2330, TM_TOKEN_GEOMETRY, "total runout" },
};

/* One pass over the text. */
typedef struct {
  TmTokens *tokens;
  const char *at;
  gboolean spaced;
  gboolean full;
} Cutter;

static TmToken *
add_token (Cutter *cutter, TmTokenKind kind, const char *text, gsize length)
{
  TmToken *token;

  if (cutter->tokens->n >= TM_TOKENS_MAX - 1)
    {
      cutter->full = TRUE;
      return NULL;
    }
  token = &cutter->tokens->tokens[cutter->tokens->n++];
  token->spaced = cutter->spaced;
  token->kind = length < TM_TOKEN_TEXT ? kind : TM_TOKEN_OTHER;
  length = MIN (length, TM_TOKEN_TEXT - 1);
  memcpy (token->text, text, length);
  token->text[length] = '\0';
  cutter->spaced = FALSE;
  return token;
}

/* "|" stands between the boxes of a tolerance frame. */
static gboolean
is_gap (gunichar c)
{
  return c == '\t' || c == '\n' || c == '\r' || c == '|' || c == 0x2502 || g_unichar_isspace (c);
}

static gboolean
is_mark (char c)
{
  return c == '.' || c == ',';
}

static gboolean
starts_number (const char *at)
{
  return g_ascii_isdigit (at[0]) || (is_mark (at[0]) && g_ascii_isdigit (at[1]));
}

/* A number holds one decimal mark at most; one that holds more is no number. */
static void
cut_number (Cutter *cutter)
{
  char text[TM_TOKEN_TEXT + 1];
  gsize n = 0, marks = 0;
  const char *at = cutter->at;

  for (; g_ascii_isdigit (*at) || is_mark (*at); at++)
    {
      marks += is_mark (*at);
      if (n < TM_TOKEN_TEXT)
        text[n++] = is_mark (*at) ? '.' : *at;
    }
  add_token (cutter, marks > 1 ? TM_TOKEN_OTHER : TM_TOKEN_NUMBER, text, n);
  cutter->at = at;
}

/* The length in bytes of one letter of a word at @at, 0 when there is none; µ counts as u. */
static gsize
measure_letter (const char *at, char *letter)
{
  gunichar c = g_utf8_get_char (at);

  if (c < 0x80 && g_ascii_isalpha ((char)c))
    {
      *letter = (char)c;
      return 1;
    }
  if (c == 0x00b5 || c == 0x03bc)
    {
      *letter = 'u';
      return 2;
    }
  return 0;
}

static gboolean
follows_number (const Cutter *cutter)
{
  return cutter->tokens->n > 0 && !cutter->spaced
         && cutter->tokens->tokens[cutter->tokens->n - 1].kind == TM_TOKEN_NUMBER;
}

/* An x right behind a number is a times sign even when letters follow: "4xM8".  The point behind
 * an abbreviation ("max.") goes with it. */
static void
cut_word (Cutter *cutter)
{
  char text[TM_TOKEN_TEXT + 1] = "";
  gsize n = 0, step;
  char letter;
  gboolean after_number = follows_number (cutter);

  while ((step = measure_letter (cutter->at, &letter)) > 0)
    {
      cutter->at += step;
      if (n < TM_TOKEN_TEXT)
        text[n++] = letter;
      if (n == 1 && after_number && g_ascii_tolower (letter) == 'x')
        break;
    }
  if (n == 1 && g_ascii_tolower (text[0]) == 'x')
    add_token (cutter, TM_TOKEN_TIMES, text, n);
  else
    add_token (cutter, TM_TOKEN_WORD, text, n);
  if (*cutter->at == '.' && !g_ascii_isdigit (cutter->at[1]) && n > 1)
    cutter->at++;
}

/* "+/-", "+-", "+ / -", "//", "↗↗" and "(M)" are one sign each. */
static gboolean
cut_compound (Cutter *cutter)
{
  static const struct {
    const char *spelling;
    TmTokenKind kind;
    const char *text;
  } compounds[] = {
    { "+/-", TM_TOKEN_PLUSMINUS, "" },
    { "+-", TM_TOKEN_PLUSMINUS, "" },
    { "+/−", TM_TOKEN_PLUSMINUS, "" },
    { "+ / -", TM_TOKEN_PLUSMINUS, "" },
    { "//", TM_TOKEN_GEOMETRY, "parallelism" },
    { "↗↗", TM_TOKEN_GEOMETRY, "total runout" },
    { "(M)", TM_TOKEN_CIRCLED, "M" },
    { "(L)", TM_TOKEN_CIRCLED, "L" },
    { "(E)", TM_TOKEN_CIRCLED, "E" },
    { "(S)", TM_TOKEN_CIRCLED, "S" },
    { "<=", TM_TOKEN_AT_MOST, "" },
    { ">=", TM_TOKEN_AT_LEAST, "" },
    { "''", TM_TOKEN_DOUBLE, "" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (compounds); i++)
    if (g_str_has_prefix (cutter->at, compounds[i].spelling))
      {
        add_token (cutter, compounds[i].kind, compounds[i].text, strlen (compounds[i].text));
        cutter->at += strlen (compounds[i].spelling);
        return TRUE;
      }
  return FALSE;
}

static void
cut_sign (Cutter *cutter)
{
  gunichar c = g_utf8_get_char (cutter->at);
  char circled = (char)('A' + (c - 0x24b6));

  cutter->at = g_utf8_next_char (cutter->at);
  if (c >= 0x24b6 && c <= 0x24cf) /* Ⓐ … Ⓩ */
    {
      add_token (cutter, TM_TOKEN_CIRCLED, &circled, 1);
      return;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (signs); i++)
    if (signs[i].sign == c)
      {
        add_token (cutter, signs[i].kind, signs[i].text, strlen (signs[i].text));
        return;
      }
  add_token (cutter, TM_TOKEN_OTHER, "", 0);
}

gboolean
tm_tokens_cut (const char *text, TmTokens *tokens)
{
  Cutter cutter = { .tokens = tokens, .at = text };
  char letter;

  memset (tokens, 0, sizeof *tokens);
  while (*cutter.at != '\0' && !cutter.full)
    {
      if (is_gap (g_utf8_get_char (cutter.at)))
        {
          cutter.spaced = TRUE;
          cutter.at = g_utf8_next_char (cutter.at);
        }
      else if (starts_number (cutter.at))
        cut_number (&cutter);
      else if (measure_letter (cutter.at, &letter) > 0)
        cut_word (&cutter);
      else if (!cut_compound (&cutter))
        cut_sign (&cutter);
    }
  tokens->tokens[tokens->n++].spaced = cutter.spaced;
  return !cutter.full;
}

const TmToken *
tm_tokens_peek (const TmTokens *tokens, guint ahead)
{
  return &tokens->tokens[MIN (tokens->at + ahead, tokens->n - 1)];
}

gboolean
tm_tokens_take (TmTokens *tokens, TmTokenKind kind)
{
  if (kind == TM_TOKEN_END || tm_tokens_peek (tokens, 0)->kind != kind)
    return FALSE;
  tokens->at++;
  return TRUE;
}

gboolean
tm_tokens_take_word (TmTokens *tokens, const char *word)
{
  return tm_token_is_word (tm_tokens_peek (tokens, 0), word) && tm_tokens_take (tokens, TM_TOKEN_WORD);
}

gboolean
tm_tokens_take_any (TmTokens *tokens, const char *const *words)
{
  for (gsize i = 0; words[i] != NULL; i++)
    if (tm_tokens_take_word (tokens, words[i]))
      return TRUE;
  return FALSE;
}

gboolean
tm_tokens_at_end (const TmTokens *tokens)
{
  return tm_tokens_peek (tokens, 0)->kind == TM_TOKEN_END;
}

void
tm_tokens_remove (TmTokens *tokens, guint index)
{
  g_assert (index + 1 < tokens->n);
  memmove (&tokens->tokens[index], &tokens->tokens[index + 1],
           (tokens->n - index - 1) * sizeof tokens->tokens[0]);
  tokens->n--;
}

gboolean
tm_token_is_word (const TmToken *token, const char *word)
{
  return token->kind == TM_TOKEN_WORD && g_ascii_strcasecmp (token->text, word) == 0;
}

gboolean
tm_token_is_whole (const TmToken *token)
{
  return token->kind == TM_TOKEN_NUMBER && strchr (token->text, '.') == NULL;
}
