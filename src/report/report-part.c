/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-part.h"

#include <math.h>
#include <string.h>

/* -------- Words -------- */

static const char *
join (TmParts *parts, const char *first, const char *second, const char *between)
{
  g_autofree char *both = NULL;

  if (second == NULL || *second == '\0' || g_str_equal (first, second))
    return tm_report_text (parts->document, first);
  both = g_strconcat (first, between, second, NULL);
  return tm_report_text (parts->document, both);
}

static const char *
translate (const char *context, const char *text)
{
  return *text != '\0' ? tm_words_text (context, text) : "";
}

const char *
tm_part_label (TmParts *parts, const char *context, const char *text)
{
  const char *first = translate (context, text), *second = NULL;

  if (parts->n_words > 1)
    {
      const TmWords *before = tm_words_use (&parts->words[1]);

      second = translate (context, text);
      tm_words_use (before);
    }
  return join (parts, first, second, " / ");
}

static char *
say_in (TmParts *parts, guint language, TmSentence sentence, gconstpointer data)
{
  const TmWords *before = tm_words_use (&parts->words[language]);
  char *text = sentence (data);

  tm_words_use (before);
  return text;
}

char *
tm_part_both (TmParts *parts, TmSentence sentence, gconstpointer data)
{
  g_autofree char *first = say_in (parts, 0, sentence, data);
  g_autofree char *second = parts->n_words > 1 ? say_in (parts, 1, sentence, data) : NULL;

  if (first == NULL)
    return g_strdup ("");
  return g_strdup (join (parts, first, second, "\n"));
}

void
tm_part_say (TmParts *parts, TmSentence sentence, gconstpointer data, gboolean dim)
{
  g_autofree char *first = say_in (parts, 0, sentence, data);
  g_autofree char *second = parts->n_words > 1 ? say_in (parts, 1, sentence, data) : NULL;

  tm_report_add_paragraphs (parts->document, first, second, dim);
}

static char *
say_text (gconstpointer data)
{
  return g_strdup (translate (NULL, data));
}

void
tm_part_say_text (TmParts *parts, const char *text, gboolean dim)
{
  tm_part_say (parts, say_text, text, dim);
}

/* -------- Cells and facts -------- */

void
tm_part_word_cell (TmParts *parts, const char *context, const char *word)
{
  tm_report_add_cell (parts->document, tm_part_label (parts, context, word));
}

void
tm_part_fact (TmParts *parts, const char *label, const char *value)
{
  if (value != NULL && *value != '\0')
    tm_report_add_fact (parts->document, tm_part_label (parts, NULL, label), value);
}

void
tm_part_number_cell (TmParts *parts, double value, guint decimals)
{
  char format[16], text[G_ASCII_DTOSTR_BUF_SIZE + 32];

  if (!isfinite (value))
    {
      tm_report_add_cell (parts->document, "");
      return;
    }
  g_snprintf (format, sizeof format, "%%.%uf", MIN (decimals, 12u));
  tm_report_add_cell (parts->document, tm_words_number (g_ascii_formatd (text, sizeof text, format, value)));
}

void
tm_part_quantity_cell (TmParts *parts, const TmQuantity *quantity, TmUnit unit)
{
  g_autofree char *text = NULL;

  if (quantity->given)
    text = quantity->unit == unit ? tm_words_number (tm_quantity_format (quantity))
                                  : tm_count_format_exact (quantity->count, unit, 0);
  tm_report_add_cell (parts->document, text);
}

void
tm_part_date_cell (TmParts *parts, const char *date)
{
  g_autofree char *text = tm_report_date (parts->form->dates, date);

  tm_report_add_cell (parts->document, text);
}

void
tm_part_table (TmParts *parts, const TmReportColumn *columns, guint n)
{
  TmReportColumn own[TM_DOCUMENT_COLUMNS];

  memcpy (own, columns, n * sizeof *columns);
  for (guint i = 0; i < n; i++)
    own[i].title = tm_part_label (parts, NULL, columns[i].title);
  tm_report_begin_table (parts->document, own, n);
}

void
tm_part_section (TmParts *parts, const char *title, const char *name, gboolean starts_page)
{
  tm_report_add_section (parts->document, tm_part_label (parts, NULL, title), name, starts_page);
}

char *
tm_part_plot_name (const TmParts *parts, guint line)
{
  guint low = 0, high = parts->plotted->len;

  while (low < high)
    {
      const guint middle = (low + high) / 2;

      if (g_array_index (parts->plotted, guint, middle) < line)
        low = middle + 1;
      else
        high = middle;
    }
  if (low == parts->plotted->len || g_array_index (parts->plotted, guint, low) != line)
    return NULL;
  return g_strdup_printf ("plot-%u", line);
}

gboolean
tm_part_goes_on (TmParts *parts, double fraction)
{
  if (!parts->cancelled && parts->progress != NULL && !parts->progress (fraction, parts->data))
    parts->cancelled = TRUE;
  return !parts->cancelled;
}
