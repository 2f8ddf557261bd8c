/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-pin-text: the text of a pin trial taken apart from its end.
 */

#include <string.h>

#include "bench-pin-text.h"

#include "core-pins.h"

/* Longer words first: "no go" ends in "go". */
static const struct {
  const char *word;
  gboolean went;
} outcome_words[] = {
  { "did not go", FALSE }, { "no-go", FALSE }, { "no go", FALSE }, { "nogo", FALSE },
  { "went", TRUE },        { "go", TRUE },     { "n", FALSE },     { "g", TRUE },
};

guint
tm_pin_class_rank (const char *pin_class)
{
  guint rank = 0;

  while (tm_pin_class_nth (rank) != NULL && g_ascii_strcasecmp (tm_pin_class_nth (rank), pin_class) != 0)
    rank++;
  return rank;
}

/* The text in plain signs and small letters, without blanks at its ends; "" when it is longer than
 * any pin trial. */
static void
spell_plain (const char *text, char *out, gsize size)
{
  g_autofree char *valid = g_utf8_make_valid (text != NULL ? text : "", -1);
  g_auto (GStrv) parts = g_strsplit (valid, "\u2212", -1);
  g_autofree char *joined = g_strjoinv ("-", parts);
  g_autofree char *lower = g_ascii_strdown (joined, -1);

  g_strdelimit (lower, "\t\r\n", ' ');
  g_strstrip (lower);
  g_strlcpy (out, strlen (lower) < size ? lower : "", size);
}

/* Takes @word off the end of @text, where it stands by itself; blanks before it too. */
static gboolean
take_word (char *text, const char *word)
{
  gsize n = strlen (text), n_word = strlen (word);

  if (n < n_word || strcmp (text + n - n_word, word) != 0)
    return FALSE;
  if (n > n_word && g_ascii_isalpha (text[n - n_word - 1]))
    return FALSE;
  text[n - n_word] = '\0';
  g_strchomp (text);
  return TRUE;
}

/* Takes a + or - off the end. */
static gboolean
take_mark (char *text, gboolean *plus)
{
  gsize n = strlen (text);

  if (n == 0 || (text[n - 1] != '+' && text[n - 1] != '-'))
    return FALSE;
  *plus = text[n - 1] == '+';
  text[n - 1] = '\0';
  g_strchomp (text);
  return TRUE;
}

static void
take_outcome (char *text, TmPinText *out)
{
  out->has_outcome = take_mark (text, &out->went);
  for (gsize i = 0; i < G_N_ELEMENTS (outcome_words) && !out->has_outcome; i++)
    {
      out->has_outcome = take_word (text, outcome_words[i].word);
      out->went = outcome_words[i].went;
    }
}

/* Takes the class off the end, with the word or hyphen before it: "12.006 class x", "12.006-x". */
static gboolean
take_class (char *text, TmPinText *out)
{
  const char *name;

  for (guint i = 0; (name = tm_pin_class_nth (i)) != NULL; i++)
    {
      g_autofree char *word = g_ascii_strdown (name, -1);
      gboolean plus;

      if (!take_word (text, word))
        continue;
      out->pin_class = name;
      if (!take_word (text, "class") && g_str_has_suffix (text, "-"))
        take_mark (text, &plus);
      return TRUE;
    }
  return FALSE;
}

/* A mark is a sign only after a class: "12.006+" says how it went. */
static void
take_class_and_sign (char *text, TmPinText *out)
{
  char before[64];
  gboolean plus = take_word (text, "plus");

  out->has_sign = plus || take_word (text, "minus");
  if (out->has_sign)
    {
      out->sign = plus ? TM_PIN_PLUS : TM_PIN_MINUS;
      take_class (text, out);
      return;
    }
  g_strlcpy (before, text, sizeof before);
  if (take_mark (text, &plus) && take_class (text, out))
    {
      out->has_sign = TRUE;
      out->sign = plus ? TM_PIN_PLUS : TM_PIN_MINUS;
      return;
    }
  g_strlcpy (text, before, sizeof before);
  take_class (text, out);
}

void
tm_pin_text_read (const char *text, TmPinText *out)
{
  g_return_if_fail (out != NULL);

  *out = (TmPinText) { .size = "" };
  spell_plain (text, out->size, sizeof out->size);
  take_outcome (out->size, out);
  take_class_and_sign (out->size, out);
}
