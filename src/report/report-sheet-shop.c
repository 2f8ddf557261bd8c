/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-sheet-shop.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report-picture.h"
#include "report-sheet-words.h"
#include "report-template.h"

/* Screen pixels, 96 to the inch: beside title and subtitle. */
#define MOST_WIDTH  300.0
#define MOST_HEIGHT 52.0
/* Pixels drawn for each of them, so that it prints sharp. */
#define SCALE 2.5
/* Letters of a name that stands in one line. */
#define LONGEST_LINE 80

static GBytes *
draw_logo (TmDrawingPage *logo)
{
  const double width = tm_drawing_page_width (logo), height = tm_drawing_page_height (logo);
  const double scale = SCALE * MIN (MOST_WIDTH / width, MOST_HEIGHT / height);
  cairo_surface_t *surface = cairo_image_surface_create (
      CAIRO_FORMAT_RGB24, MAX (1, (int)ceil (scale * width)), MAX (1, (int)ceil (scale * height)));
  cairo_t *cr = cairo_create (surface);
  GBytes *png;

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, scale, scale);
  tm_drawing_page_draw (logo, cr);
  cairo_destroy (cr);
  png = tm_picture_to_png (surface);
  cairo_surface_destroy (surface);
  return png;
}

static void
insert_logo (TmSheet *sheet, guint column)
{
  const TmTemplate *template = sheet->workbook->template;
  g_autoptr (TmDrawingPage) logo = tm_report_template_logo (template);
  g_autoptr (GBytes) png = logo != NULL ? draw_logo (logo) : NULL;
  g_autofree char *words = tm_cell_text (*template->name != '\0' ? template->name : _ ("Logo of the shop"));
  lxw_image_options options = { .x_scale = 1.0 / SCALE, .y_scale = 1.0 / SCALE, .description = words };
  const unsigned char *data;
  gsize length;

  if (png == NULL)
    return;
  data = g_bytes_get_data (png, &length);
  options.object_position = LXW_OBJECT_MOVE_DONT_SIZE;
  sheet->workbook->picture_bytes += length;
  tm_workbook_check (sheet->workbook, worksheet_insert_image_buffer_opt (sheet->sheet, 0, (lxw_col_t)column,
                                                                         data, length, &options));
}

void
tm_sheet_write_shop (TmSheet *sheet, guint n_columns, guint column)
{
  const TmTemplate *template = sheet->workbook->template;

  if (template == NULL)
    return;
  insert_logo (sheet, column);
  if (g_utf8_strlen (template->name, -1) > LONGEST_LINE)
    tm_sheet_paragraph (sheet, n_columns, template->name);
  else if (*template->name != '\0')
    {
      tm_sheet_text (sheet, 0, template->name, TM_STYLE_SECTION);
      tm_sheet_down (sheet);
    }
  if (*template->address != '\0')
    tm_sheet_paragraph (sheet, n_columns, template->address);
  if (*template->name != '\0' || *template->address != '\0')
    tm_sheet_down (sheet);
}

void
tm_sheet_write_statements (TmSheet *sheet, TmStatementPlace place, guint n_columns)
{
  const TmTemplate *template = sheet->workbook->template;

  if (!tm_report_has_statements (template, place))
    return;
  tm_sheet_section (sheet, N_ ("Statements of the shop"));
  for (guint i = 0; i < template->statements->len; i++)
    {
      const TmTemplateStatement *statement = g_ptr_array_index (template->statements, i);
      g_autofree char *text = tm_report_statement (statement, sheet->workbook->form);

      if (statement->place == place && *text != '\0')
        tm_sheet_paragraph (sheet, n_columns, text);
    }
}
