/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-template-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define WHITE 0xffffffu

/* Never better than it is: 4.49 is not 4.5. */
static double
round_down (double ratio)
{
  return floor (ratio * 10.0) / 10.0;
}

char *
tm_words_accent (const TmTemplate *template)
{
  double ratio;

  if (!template->has_accent)
    return g_strdup (_ ("Without a colour heads and lines are black."));
  ratio = round_down (tm_colour_contrast (template->accent, WHITE));
  if (tm_template_accent_reads (template))
    return g_strdup_printf (
        _ ("Contrast with white paper %.1f to 1: heads and lines are printed in this colour."), ratio);
  return g_strdup_printf (
      _ ("Contrast with white paper %.1f to 1, and text needs %.1f: only lines are printed "
         "in this colour, heads are black."),
      ratio, TM_COLOUR_READABLE);
}

char *
tm_words_ground (const TmTemplate *template)
{
  guint32 text;
  double ratio;

  if (!template->has_ground)
    return g_strdup (
        _ ("Without a colour the heads of tables are black on white, in the workbook on a light grey."));
  text = tm_colour_text_on (template->ground);
  ratio = round_down (tm_colour_contrast (template->ground, text));
  return g_strdup_printf (text == WHITE
                              ? _ ("The heads of tables are printed white on it: contrast %.1f to 1.")
                              : _ ("The heads of tables are printed black on it: contrast %.1f to 1."),
                          ratio);
}

static const char *
word_media (const char *media)
{
  return g_str_equal (media, "image/png") ? "PNG" : g_str_equal (media, "image/jpeg") ? "JPEG" : "SVG";
}

char *
tm_words_logo (const TmTemplate *template)
{
  gsize length;

  if (template->logo == NULL)
    return g_strdup (_ ("none"));
  length = g_bytes_get_size (template->logo);
  return g_strdup_printf (_ ("%s picture, %u KiB"), word_media (template->logo_media),
                          (guint)((length + 1023) / 1024));
}

char *
tm_words_template_problem (TmTemplateStatus status, guint row)
{
  const char *text = g_dgettext (GETTEXT_PACKAGE, tm_template_status_text (status));

  if (status >= TM_TEMPLATE_STATEMENT_EMPTY)
    return g_strdup_printf (_ ("Statement %u: %s"), row + 1, text);
  if (status >= TM_TEMPLATE_FIELD_UNNAMED)
    return g_strdup_printf (_ ("Field %u: %s"), row + 1, text);
  return g_strdup (text);
}
