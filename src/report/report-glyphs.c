/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-glyphs.h"

#include <glib/gi18n-lib.h>
#include <pango/pangocairo.h>

#include "plot-theme.h"
#include "plot-words.h"
#include "report-words.h"

#define LONGEST_TEXT 60 /* letters of the text that is named */

typedef struct {
  PangoLayout *layout;
  GHashTable *seen; /* signs beyond ASCII, as GUINT_TO_POINTER */
  guint n_missing;
  gunichar first;
  const char *text; /* where that stands; the document's */
} Search;

/* -------- One sign -------- */

static PangoLayout *
make_layout (void)
{
  g_autoptr (PangoFontMap) map = pango_cairo_font_map_new ();
  PangoContext *context = pango_font_map_create_context (map);
  PangoFontDescription *font = pango_font_description_from_string (tm_theme_paper ()->font);
  PangoLayout *layout = pango_layout_new (context);

  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  g_object_unref (context);
  return layout;
}

static gboolean
has_glyph (const Search *search, gunichar sign)
{
  char text[7] = "";

  text[g_unichar_to_utf8 (sign, text)] = '\0';
  pango_layout_set_text (search->layout, text, -1);
  return pango_layout_get_unknown_glyphs_count (search->layout) == 0;
}

static void
look_at_sign (Search *search, gunichar sign, const char *text)
{
  if (!g_hash_table_add (search->seen, GUINT_TO_POINTER (sign)) || has_glyph (search, sign))
    return;
  if (search->n_missing++ == 0)
    {
      search->first = sign;
      search->text = text;
    }
}

/* -------- All texts -------- */

static gboolean
is_plain (unsigned char byte)
{
  return (byte >= 0x20 && byte < 0x7F) || byte == '\n' || byte == '\t' || byte == '\r';
}

static void
look_at_text (Search *search, const char *text)
{
  const char *at = text;

  while (at != NULL && *at != '\0')
    if (is_plain ((unsigned char)*at))
      at++;
    else
      {
        look_at_sign (search, g_utf8_get_char (at), text);
        at = g_utf8_next_char (at);
      }
}

static void
look_at_block (Search *search, const TmReportBlock *block)
{
  look_at_text (search, block->text);
  look_at_text (search, block->beside);
  for (guint i = 0; block->columns != NULL && i < block->n_columns; i++)
    look_at_text (search, block->columns[i].title);
  for (guint i = 0; block->cells != NULL && i < block->cells->len; i++)
    {
      const TmReportCell *cell = &g_array_index (block->cells, TmReportCell, i);

      look_at_text (search, cell->label);
      look_at_text (search, cell->text);
    }
}

static void
look_at_all (Search *search, const TmReportDocument *document)
{
  const char *const margins[]
      = { document->title, document->subtitle,  document->head_left,   document->head_right,
          document->foot,  document->shop.name, document->shop.address };

  for (gsize i = 0; i < G_N_ELEMENTS (margins); i++)
    look_at_text (search, margins[i]);
  for (guint i = 0; i < document->sections->len; i++)
    {
      const TmReportSection *section = g_ptr_array_index (document->sections, i);

      look_at_text (search, section->title);
      for (guint k = 0; k < section->blocks->len; k++)
        look_at_block (search, g_ptr_array_index (section->blocks, k));
    }
}

char *
tm_report_missing_glyphs (const TmReportDocument *document)
{
  g_autoptr (PangoLayout) layout = make_layout ();
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
  Search search = { .layout = layout, .seen = seen };
  g_autofree char *line = NULL;
  g_autofree char *text = NULL;

  g_return_val_if_fail (document != NULL, NULL);
  look_at_all (&search, document);
  if (search.n_missing == 0)
    return NULL;
  /* The text may be of several lines. */
  line = g_strdelimit (g_strdup (search.text), "\n\t\r", ' ');
  text = tm_report_shorten (line, LONGEST_TEXT);
  if (search.n_missing == 1)
    return g_strdup_printf (
        _ ("“%s”: no installed font has its sign U+%04X, which prints as a box; install a "
           "font that has it or write it another way"),
        text, search.first);
  return g_strdup_printf (
      ngettext ("“%s”: no installed font has its sign U+%04X nor %u other of the report: "
                "they print as boxes; install a font that has them or write them "
                "another way",
                "“%s”: no installed font has its sign U+%04X nor %u others of the report: "
                "they print as boxes; install a font that has them or write them "
                "another way",
                search.n_missing - 1),
      text, search.first, search.n_missing - 1);
}
