/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-style.h"

#include <string.h>

#define FONT "Arial"
#define SIZE 9.0

/* Greys and tints of the program's palette, light enough to print under black text. */
#define HEAD_FILL  0xE8EDF2
#define HAND_FILL  0xFFF8E1
#define LINE       0xC4C4C4
#define DIM        0x555555
#define IN_FILL    0xDCEAF5
#define OUT_FILL   0xF8DDCB
#define CLOSE_FILL 0xFBEBCB
#define NONE_FILL  0xECECEC

/* The default font gives the unit of column widths; its digits are as wide as those the writing
 * library reckons with when it places pictures. */
static void
set_default_font (lxw_workbook *book)
{
  lxw_format *first = STAILQ_FIRST (book->formats);

  if (first == NULL)
    return;
  format_set_font_name (first, FONT);
  format_set_font_size (first, 10.0);
}

/* Words carry the meaning; what needs an eye is bold as well, for those who see no colour. */
static void
add_verdict (TmStyles *styles, TmVerdict verdict, lxw_color_t fill, gboolean bold)
{
  lxw_format *format = workbook_add_format (styles->book);

  format_set_bg_color (format, fill);
  if (bold)
    format_set_bold (format);
  styles->verdicts[verdict] = format;
}

void
tm_styles_init (TmStyles *styles, lxw_workbook *book, TmDateForm dates, const TmTemplate *template)
{
  memset (styles, 0, sizeof *styles);
  styles->book = book;
  styles->dates = dates;
  styles->template = template;
  set_default_font (book);
  add_verdict (styles, TM_VERDICT_IN, IN_FILL, FALSE);
  add_verdict (styles, TM_VERDICT_OUT, OUT_FILL, TRUE);
  add_verdict (styles, TM_VERDICT_TOO_CLOSE, CLOSE_FILL, TRUE);
  add_verdict (styles, TM_VERDICT_NOT_MEASURED, NONE_FILL, FALSE);
}

static void
set_border (lxw_format *format)
{
  format_set_border (format, LXW_BORDER_THIN);
  format_set_border_color (format, LINE);
}

static void
set_table_cell (lxw_format *format, uint8_t align, gboolean wrap)
{
  set_border (format);
  format_set_align (format, LXW_ALIGN_VERTICAL_TOP);
  format_set_align (format, align);
  if (wrap)
    format_set_text_wrap (format);
}

/* To the writing library 0 is no colour. */
static lxw_color_t
make_colour (guint32 rgb)
{
  return rgb == 0 ? LXW_COLOR_BLACK : rgb;
}

static void
set_ground (lxw_format *format, const TmTemplate *template)
{
  if (template == NULL || !template->has_ground)
    {
      format_set_bg_color (format, HEAD_FILL);
      return;
    }
  format_set_bg_color (format, make_colour (template->ground));
  format_set_font_color (format, make_colour (tm_colour_text_on (template->ground)));
}

static void
set_heading (lxw_format *format, TmStyle style, const TmTemplate *template)
{
  format_set_bold (format);
  if (style == TM_STYLE_TITLE)
    format_set_font_size (format, 15.0);
  if (style == TM_STYLE_SECTION)
    format_set_font_size (format, 11.0);
  if (style == TM_STYLE_HEAD)
    {
      set_table_cell (format, LXW_ALIGN_CENTER, TRUE);
      format_set_align (format, LXW_ALIGN_VERTICAL_CENTER);
      set_ground (format, template);
    }
}

static void
set_number (lxw_format *format, TmStyle style, guint decimals)
{
  g_autofree char *digits = g_strnfill (decimals, '0');
  g_autofree char *number = g_strdup_printf ("0%s%s", decimals > 0 ? "." : "", digits);
  g_autofree char *with_sign = g_strdup_printf ("+%s;-%s;%s", number, number, number);

  set_table_cell (format, LXW_ALIGN_RIGHT, FALSE);
  format_set_indent (format, 1);
  format_set_num_format (format, style == TM_STYLE_SIGNED ? with_sign : number);
}

static void
set_date (lxw_format *format, TmStyle style, TmDateForm dates)
{
  static const char *const forms[]
      = { [TM_DATE_ISO] = "yyyy-mm-dd", [TM_DATE_DMY] = "dd.mm.yyyy", [TM_DATE_MDY] = "mm/dd/yyyy" };
  g_autofree char *timed = g_strconcat (forms[dates], " hh:mm:ss", NULL);

  set_table_cell (format, LXW_ALIGN_CENTER, FALSE);
  format_set_num_format (format, style == TM_STYLE_DATE ? forms[dates] : timed);
}

static void
set_words (lxw_format *format, TmStyle style)
{
  if (style == TM_STYLE_SUBTITLE)
    format_set_font_color (format, DIM);
  if (style == TM_STYLE_PARAGRAPH)
    {
      format_set_text_wrap (format);
      format_set_align (format, LXW_ALIGN_VERTICAL_TOP);
    }
  if (style == TM_STYLE_TEXT || style == TM_STYLE_STRONG || style == TM_STYLE_LABEL
      || style == TM_STYLE_BY_HAND)
    {
      set_table_cell (format, LXW_ALIGN_LEFT, TRUE);
      format_set_indent (format, 1);
    }
  if (style == TM_STYLE_CENTRE || style == TM_STYLE_COUNT)
    set_table_cell (format, LXW_ALIGN_CENTER, TRUE);
  if (style == TM_STYLE_STRONG || style == TM_STYLE_COUNT)
    format_set_bold (format);
  if (style == TM_STYLE_LABEL)
    format_set_bg_color (format, HEAD_FILL);
  if (style == TM_STYLE_BY_HAND)
    format_set_bg_color (format, HAND_FILL);
}

static lxw_format *
make_format (TmStyles *styles, TmStyle style, guint decimals)
{
  lxw_format *format = workbook_add_format (styles->book);

  format_set_font_name (format, FONT);
  format_set_font_size (format, SIZE);
  if (style <= TM_STYLE_HEAD && style != TM_STYLE_SUBTITLE)
    set_heading (format, style, styles->template);
  else if (style == TM_STYLE_NUMBER || style == TM_STYLE_SIGNED)
    set_number (format, style, decimals);
  else if (style == TM_STYLE_DATE || style == TM_STYLE_TIME)
    set_date (format, style, styles->dates);
  else
    set_words (format, style);
  return format;
}

lxw_format *
tm_styles_get (TmStyles *styles, TmStyle style, guint decimals)
{
  const guint digits = MIN (decimals, TM_STYLE_MAX_DECIMALS);

  if (styles->formats[style][digits] == NULL)
    styles->formats[style][digits] = make_format (styles, style, digits);
  return styles->formats[style][digits];
}
