/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-type.h"

#include <pango/pangocairo.h>
#include <string.h>

#include "plot-theme.h"

#define FIRST_LETTER  32 /* of those whose width is known without shaping */
#define LAST_LETTER   126
#define MOST_SHAPED   20000 /* texts kept; then all are let go */
#define NEARLY        0.985 /* of a width: letters pulled together or pushed apart stay within it */
#define LEAST_WIDTH   4.0
#define LEFT_TO_RIGHT "\xe2\x80\x8e" /* U+200E */

static const struct {
  double size; /* points */
  gboolean bold;
} styles[TM_N_TYPE_STYLES] = {
  [TM_TYPE_TITLE] = { 20.0, TRUE },  [TM_TYPE_SUBTITLE] = { 11.0, FALSE }, [TM_TYPE_SECTION] = { 13.0, TRUE },
  [TM_TYPE_HEADING] = { 9.5, TRUE }, [TM_TYPE_BODY] = { 9.0, FALSE },      [TM_TYPE_NOTE] = { 8.0, FALSE },
  [TM_TYPE_LABEL] = { 7.0, FALSE },  [TM_TYPE_FACT] = { 9.5, FALSE },      [TM_TYPE_HEAD] = { 7.0, TRUE },
  [TM_TYPE_CELL] = { 8.0, FALSE },   [TM_TYPE_STRONG] = { 8.0, TRUE },     [TM_TYPE_MARGIN] = { 7.5, FALSE },
};

typedef struct {
  double letters[LAST_LETTER - FIRST_LETTER + 1];
  double line;
} Metrics;

/* What one text is shaped for. */
typedef struct {
  const char *text;
  int width; /* Pango units */
  guint8 style, setting;
} Key;

struct _TmType {
  PangoContext *context;
  PangoAttrList *attributes;
  PangoFontDescription *fonts[TM_N_TYPE_STYLES];
  Metrics metrics[TM_N_TYPE_STYLES];
  GHashTable *shaped; /* Key, PangoLayout */
};

static guint
hash_key (gconstpointer data)
{
  const Key *key = data;

  return g_direct_hash (key->text) * 31u + (guint)key->width * 7u + key->style * 4u + key->setting;
}

static gboolean
equal_keys (gconstpointer a, gconstpointer b)
{
  const Key *one = a, *other = b;

  return one->text == other->text && one->width == other->width && one->style == other->style
         && one->setting == other->setting;
}

/* -------- Layouts -------- */

static gboolean
has_letters (const char *from, const char *to)
{
  for (; from < to; from = g_utf8_next_char (from))
    if (g_unichar_isalpha (g_utf8_get_char (from)))
      return TRUE;
  return FALSE;
}

/* A line without letters, "62 ±0.1", would run the way of the line beside it: under a right-to-left name it
 * would read backwards.  A mark before it keeps it as it was written. */
static char *
settle_direction (const char *text)
{
  GString *settled = g_string_new (NULL);

  while (*text != '\0')
    {
      const gsize length = strcspn (text, "\n");

      if (length > 0 && !has_letters (text, text + length))
        g_string_append (settled, LEFT_TO_RIGHT);
      g_string_append_len (settled, text, (gssize)length);
      text += length;
      if (*text == '\n')
        g_string_append_c (settled, *text++);
    }
  return g_string_free (settled, FALSE);
}

static PangoLayout *
make_layout (TmType *type, TmTypeStyle style, const char *text)
{
  PangoLayout *layout = pango_layout_new (type->context);
  g_autofree char *settled = strchr (text, '\n') != NULL ? settle_direction (text) : NULL;

  pango_layout_set_font_description (layout, type->fonts[style]);
  pango_layout_set_attributes (layout, type->attributes);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_text (layout, settled != NULL ? settled : text, -1);
  return layout;
}

static PangoAlignment
get_alignment (TmTypeSetting setting)
{
  return setting == TM_SET_START    ? PANGO_ALIGN_LEFT
         : setting == TM_SET_CENTRE ? PANGO_ALIGN_CENTER
                                    : PANGO_ALIGN_RIGHT;
}

/* Borrowed until the next call. */
static PangoLayout *
shape (TmType *type, TmTypeStyle style, const char *text, double width, TmTypeSetting setting)
{
  const Key key = { text, (int)(MAX (width, LEAST_WIDTH) * PANGO_SCALE), (guint8)style, (guint8)setting };
  PangoLayout *layout = g_hash_table_lookup (type->shaped, &key);

  if (layout != NULL)
    return layout;
  if (g_hash_table_size (type->shaped) >= MOST_SHAPED)
    g_hash_table_remove_all (type->shaped);
  layout = make_layout (type, style, text);
  pango_layout_set_width (layout, key.width);
  pango_layout_set_alignment (layout, get_alignment (setting));
  g_hash_table_insert (type->shaped, g_memdup2 (&key, sizeof key), layout);
  return layout;
}

static double
measure_layout (PangoLayout *layout, double *height)
{
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  if (height != NULL)
    *height = (double)logical.height / PANGO_SCALE;
  return (double)logical.width / PANGO_SCALE;
}

/* -------- Making -------- */

static void
fill_metrics (TmType *type, TmTypeStyle style)
{
  Metrics *metrics = &type->metrics[style];

  for (int letter = FIRST_LETTER; letter <= LAST_LETTER; letter++)
    {
      const char text[] = { (char)letter, '\0' };
      g_autoptr (PangoLayout) layout = make_layout (type, style, text);

      metrics->letters[letter - FIRST_LETTER] = measure_layout (layout, &metrics->line);
    }
}

/* Without hinting letters stand alike at every scale and on every surface. */
static void
set_options (PangoContext *context)
{
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  pango_context_set_round_glyph_positions (context, FALSE);
}

TmType *
tm_type_new (void)
{
  TmType *type = g_new0 (TmType, 1);
  g_autoptr (PangoFontMap) map = pango_cairo_font_map_new ();

  type->context = pango_font_map_create_context (map);
  set_options (type->context);
  type->attributes = pango_attr_list_new ();
  pango_attr_list_insert (type->attributes, pango_attr_font_features_new ("tnum=1"));
  /* A word that is broken where it is too long gets no hyphen that was never in it. */
  pango_attr_list_insert (type->attributes, pango_attr_insert_hyphens_new (FALSE));
  type->shaped = g_hash_table_new_full (hash_key, equal_keys, g_free, g_object_unref);
  for (guint style = 0; style < TM_N_TYPE_STYLES; style++)
    {
      PangoFontDescription *font = pango_font_description_from_string (tm_theme_paper ()->font);

      pango_font_description_set_absolute_size (font, styles[style].size * PANGO_SCALE);
      pango_font_description_set_weight (font, styles[style].bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
      type->fonts[style] = font;
      fill_metrics (type, style);
    }
  return type;
}

void
tm_type_free (TmType *type)
{
  if (type == NULL)
    return;
  g_hash_table_unref (type->shaped);
  for (guint style = 0; style < TM_N_TYPE_STYLES; style++)
    pango_font_description_free (type->fonts[style]);
  pango_attr_list_unref (type->attributes);
  g_object_unref (type->context);
  g_free (type);
}

/* -------- Measuring -------- */

/* The width of Latin text by its letters alone; FALSE where a text holds others. */
static gboolean
add_letters (const Metrics *metrics, const char *text, double *width, double *word)
{
  double run = 0.0;

  *width = *word = 0.0;
  for (const char *at = text; *at != '\0'; at++)
    {
      double letter;

      if (*at < FIRST_LETTER || *at > LAST_LETTER)
        return FALSE;
      letter = metrics->letters[*at - FIRST_LETTER];
      *width += letter;
      run = *at == ' ' ? 0.0 : run + letter;
      *word = MAX (*word, run);
    }
  *width /= NEARLY;
  *word /= NEARLY;
  return TRUE;
}

double
tm_type_line (const TmType *type, TmTypeStyle style)
{
  return type->metrics[style].line;
}

double
tm_type_width (TmType *type, TmTypeStyle style, const char *text)
{
  double width, word;

  if (!add_letters (&type->metrics[style], text, &width, &word))
    {
      g_autoptr (PangoLayout) layout = make_layout (type, style, text);

      width = measure_layout (layout, NULL) / NEARLY;
    }
  return width;
}

double
tm_type_word (TmType *type, TmTypeStyle style, const char *text)
{
  double width, word, widest = 0.0;
  g_auto (GStrv) words = NULL;

  if (add_letters (&type->metrics[style], text, &width, &word))
    return word;
  words = g_strsplit_set (text, " \n\t", -1);
  for (guint i = 0; words[i] != NULL; i++)
    widest = MAX (widest, tm_type_width (type, style, words[i]));
  return widest;
}

static double
find_highest (PangoLayout *layout)
{
  PangoLayoutIter *iter = pango_layout_get_iter (layout);
  int highest = 0;

  do
    {
      PangoRectangle logical;

      pango_layout_iter_get_line_extents (iter, NULL, &logical);
      highest = MAX (highest, logical.height);
    }
  while (pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);
  return (double)highest / PANGO_SCALE;
}

TmTypeExtent
tm_type_measure (TmType *type, TmTypeStyle style, const char *text, double width)
{
  const double line = type->metrics[style].line;
  TmTypeExtent extent = { 0 };
  double whole, word;
  PangoLayout *layout;

  if (*text == '\0')
    return extent;
  if (add_letters (&type->metrics[style], text, &whole, &word) && whole <= width)
    return (TmTypeExtent) { 1, line, line };
  layout = shape (type, style, text, width, TM_SET_START);
  measure_layout (layout, &extent.height);
  extent.lines = (guint)pango_layout_get_line_count (layout);
  extent.highest = find_highest (layout);
  return extent;
}

/* -------- Drawing -------- */

/* The lines from @from on, each where it would stand if the first of them were at @y. */
static void
draw_lines (cairo_t *cr, PangoLayout *layout, double x, double y, guint from, guint n)
{
  PangoLayoutIter *iter = pango_layout_get_iter (layout);
  double top = 0.0;
  guint i = 0;

  do
    {
      PangoRectangle logical;

      pango_layout_iter_get_line_extents (iter, NULL, &logical);
      if (i == from)
        top = (double)logical.y / PANGO_SCALE;
      if (i >= from && (n == 0 || i - from < n))
        {
          cairo_move_to (cr, x + (double)logical.x / PANGO_SCALE,
                         y - top + (double)pango_layout_iter_get_baseline (iter) / PANGO_SCALE);
          pango_cairo_show_layout_line (cr, pango_layout_iter_get_line_readonly (iter));
        }
      i++;
    }
  while (pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);
}

void
tm_type_draw (TmType *type, cairo_t *cr, TmTypeStyle style, const char *text, double x, double y,
              double width, TmTypeSetting setting, guint from, guint n)
{
  PangoLayout *layout;

  if (*text == '\0')
    return;
  layout = shape (type, style, text, width, setting);
  if (from == 0 && n == 0)
    {
      cairo_move_to (cr, x, y);
      pango_cairo_show_layout (cr, layout);
      cairo_new_path (cr);
    }
  else
    draw_lines (cr, layout, x, y, from, n);
}

void
tm_type_draw_once (TmType *type, cairo_t *cr, TmTypeStyle style, const char *text, double x, double y,
                   double width, TmTypeSetting setting)
{
  g_autoptr (PangoLayout) layout = make_layout (type, style, text);

  pango_layout_set_width (layout, (int)(width * PANGO_SCALE));
  pango_layout_set_alignment (layout, get_alignment (setting));
  cairo_move_to (cr, x, y);
  pango_cairo_show_layout (cr, layout);
  cairo_new_path (cr);
}
