/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-words-print: sentences with numbers in them, printed with the decimal mark of this thread's words.
 *
 * printf() takes its mark from the locale, which has to be installed.  So a format is printed piece by piece,
 * each with one conversion, and only what a floating-point number came to is changed: a text that has a point
 * keeps it.
 */

#include <string.h>

#include "plot-words.h"

#undef g_strdup_printf
#undef g_strdup_vprintf
#undef g_string_append_printf
#undef g_string_append_vprintf

/* The pieces are no literals, but parts of one that the compiler has checked at its call. */
#pragma GCC diagnostic ignored "-Wformat-nonliteral"

typedef enum { SIZE_INT, SIZE_LONG, SIZE_LONG_LONG } Size;

/* One conversion, "%+.3f", or what stands between two. */
typedef struct {
  char *text;
  char type; /* '\0': no conversion */
  Size size;
  guint stars; /* widths and precisions that are arguments */
} Piece;

static const char *
skip_flags (const char *at, Piece *piece)
{
  for (; *at != '\0' && strchr ("-+ #0123456789.*'", *at) != NULL; at++)
    piece->stars += *at == '*';
  return at;
}

static const char *
skip_size (const char *at, Piece *piece)
{
  if (*at == 'l')
    piece->size = at[1] == 'l' ? SIZE_LONG_LONG : SIZE_LONG;
  else if (*at == 'z' || *at == 'j' || *at == 't')
    piece->size = SIZE_LONG;
  while (*at != '\0' && strchr ("hlzjt", *at) != NULL)
    at++;
  return at;
}

/* The piece that begins at @format.  Returns: where the next one begins. */
static const char *
cut_piece (const char *format, Piece *piece)
{
  const char *at = format;

  *piece = (Piece) { 0 };
  while (*at != '\0' && (*at != '%' || at[1] == '%'))
    at += *at == '%' ? 2 : 1;
  if (at == format)
    {
      at = skip_size (skip_flags (at + 1, piece), piece);
      piece->type = *at;
      at += *at != '\0';
    }
  piece->text = g_strndup (format, (gsize)(at - format));
  return at;
}

static gboolean
is_float (const Piece *piece)
{
  return piece->type != '\0' && strchr ("fFeEgG", piece->type) != NULL;
}

/* The piece with one argument, after those that its stars take. */
#define PRINT(piece, stars, value)                                              \
  ((piece)->stars == 0   ? g_strdup_printf ((piece)->text, (value))             \
   : (piece)->stars == 1 ? g_strdup_printf ((piece)->text, (stars)[0], (value)) \
                         : g_strdup_printf ((piece)->text, (stars)[0], (stars)[1], (value)))

static char *
print_piece (const Piece *piece, va_list *list)
{
  int stars[2] = { 0, 0 };

  if (piece->type == '\0')
    return g_strdup_printf (piece->text, 0);
  for (guint i = 0; i < MIN (piece->stars, 2u); i++)
    stars[i] = va_arg (*list, int);
  if (is_float (piece))
    return PRINT (piece, stars, va_arg (*list, double));
  if (piece->type == 's' || piece->type == 'p')
    return PRINT (piece, stars, va_arg (*list, const void *));
  if (piece->size == SIZE_LONG_LONG)
    return PRINT (piece, stars, va_arg (*list, long long));
  if (piece->size == SIZE_LONG)
    return PRINT (piece, stars, va_arg (*list, long));
  return PRINT (piece, stars, va_arg (*list, int));
}

static char *
print_pieces (const char *format, va_list *list)
{
  GString *out = g_string_new (NULL);

  while (*format != '\0')
    {
      Piece piece;
      g_autofree char *text = NULL;

      format = cut_piece (format, &piece);
      text = print_piece (&piece, list);
      if (is_float (&piece))
        tm_words_number (text);
      g_string_append (out, text);
      g_free (piece.text);
    }
  return g_string_free (out, FALSE);
}

char *
tm_words_vprint (const char *format, va_list list)
{
  char comma[] = ".";
  va_list own;
  char *text;

  tm_words_number (comma);
  if (*comma == '.')
    return g_strdup_vprintf (format, list);
  va_copy (own, list);
  text = print_pieces (format, &own);
  va_end (own);
  return text;
}

char *
tm_words_print (const char *format, ...)
{
  va_list list;
  char *text;

  va_start (list, format);
  text = tm_words_vprint (format, list);
  va_end (list);
  return text;
}

void
tm_words_vappend (GString *out, const char *format, va_list list)
{
  g_autofree char *text = tm_words_vprint (format, list);

  g_string_append (out, text);
}

void
tm_words_append (GString *out, const char *format, ...)
{
  va_list list;

  va_start (list, format);
  tm_words_vappend (out, format, list);
  va_end (list);
}
