/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-hold-print.h"

#include <glib/gi18n-lib.h>

#include "plot-theme.h"

/* Points. */
#define TITLE_SIZE  14
#define TEXT_SIZE   10
#define LINE_HEIGHT 17.0
#define HEAD_HEIGHT 96.0
#define FOOT_HEIGHT 56.0

typedef struct {
  const char *title;
  double at; /* share of the width where it begins */
  double share;
} Column;

/* Translated when they are drawn. */
static const Column columns[] = {
  { N_ ("Piece"), 0.00, 0.17 },       { N_ ("Measured"), 0.17, 0.12 }, { N_ ("Chance out"), 0.29, 0.14 },
  { N_ ("Disposition"), 0.43, 0.17 }, { N_ ("Note"), 0.60, 0.40 },
};

static guint
lines_on_page (double height)
{
  const double room = height - HEAD_HEIGHT - FOOT_HEIGHT;

  return room > 2 * LINE_HEIGHT ? (guint)(room / LINE_HEIGHT) - 1 : 1;
}

guint
tm_hold_print_pages (const TmHoldList *list, double height)
{
  const guint lines = lines_on_page (height);

  return MAX (1, (list->lines->len + lines - 1) / lines);
}

/* One line of text that ends in an ellipsis where @width is too narrow. */
static void
draw_text (cairo_t *cr, const char *text, double x, double y, double width, double size, gboolean bold)
{
  g_autoptr (PangoLayout) layout = pango_cairo_create_layout (cr);
  g_autoptr (PangoFontDescription) font = pango_font_description_from_string (tm_theme_paper ()->font);

  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_font_description_set_weight (font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_layout_set_text (layout, text, -1);
  pango_layout_set_width (layout, (int)(MAX (width, 1) * PANGO_SCALE));
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  cairo_move_to (cr, x, y);
  pango_cairo_show_layout (cr, layout);
}

static void
draw_rule (cairo_t *cr, double y, double width, double thickness)
{
  cairo_set_line_width (cr, thickness);
  cairo_move_to (cr, 0, y);
  cairo_line_to (cr, width, y);
  cairo_stroke (cr);
}

static void
draw_head (const TmHoldList *list, cairo_t *cr, double width)
{
  g_autofree char *summary = tm_hold_list_summary (list);

  draw_text (cr, _ ("Pieces held back"), 0, 0, width, TITLE_SIZE, TRUE);
  draw_text (cr, list->job, 0, 22, width, TEXT_SIZE, FALSE);
  draw_text (cr, list->feature, 0, 36, width, TEXT_SIZE, FALSE);
  draw_text (cr, summary, 0, 50, width, TEXT_SIZE, FALSE);
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    draw_text (cr, _ (columns[i].title), columns[i].at * width, HEAD_HEIGHT - 18,
               columns[i].share * width - 6, TEXT_SIZE, TRUE);
  draw_rule (cr, HEAD_HEIGHT - 3, width, 0.8);
}

static void
draw_line (const TmHoldLine *line, const TmPiece *piece, cairo_t *cr, double y, double width)
{
  g_autofree char *chance = line->held ? tm_words_chance_out (line->out) : g_strdup ("");
  const char *cells[] = { line->serial,
                          !line->held      ? ""
                          : line->measured ? _ ("yes")
                                           : _ ("no"),
                          chance, piece != NULL ? tm_words_disposition (piece) : "",
                          piece != NULL ? piece->disposition_note : "" };

  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    draw_text (cr, cells[i], columns[i].at * width, y, columns[i].share * width - 6, TEXT_SIZE, FALSE);
  draw_rule (cr, y + LINE_HEIGHT - 2, width, 0.2);
}

static void
draw_foot (cairo_t *cr, double width, double height, guint page, guint n_pages)
{
  g_autofree char *number = g_strdup_printf (_ ("Page %u of %u"), page + 1, n_pages);

  draw_text (cr, _ ("Decided by"), 0, height - 36, width * 0.5, TEXT_SIZE, FALSE);
  draw_text (cr, _ ("Date"), width * 0.6, height - 36, width * 0.4, TEXT_SIZE, FALSE);
  draw_rule (cr, height - 22, width, 0.4);
  draw_text (cr, number, 0, height - 16, width, TEXT_SIZE, FALSE);
}

void
tm_hold_print_draw (const TmHoldList *list, const TmJob *job, cairo_t *cr, double width, double height,
                    guint page)
{
  const guint lines = lines_on_page (height);
  const guint end = MIN (list->lines->len, (page + 1) * lines);

  cairo_set_source_rgb (cr, 0, 0, 0);
  draw_head (list, cr, width);
  for (guint i = page * lines; i < end; i++)
    {
      const TmHoldLine *line = g_ptr_array_index (list->lines, i);

      draw_line (line, tm_job_find_piece (job, line->serial), cr,
                 HEAD_HEIGHT + 2 + (i - page * lines) * LINE_HEIGHT, width);
    }
  draw_foot (cr, width, height, page, tm_hold_print_pages (list, height));
}

typedef struct {
  const TmHoldList *list;
  const TmJob *job;
} Printed;

static void
begin_cb (GtkPrintOperation *operation, GtkPrintContext *context, const Printed *printed)
{
  gtk_print_operation_set_n_pages (
      operation, (int)tm_hold_print_pages (printed->list, gtk_print_context_get_height (context)));
}

static void
page_cb (GtkPrintOperation *operation, GtkPrintContext *context, int page, const Printed *printed)
{
  tm_hold_print_draw (printed->list, printed->job, gtk_print_context_get_cairo_context (context),
                      gtk_print_context_get_width (context), gtk_print_context_get_height (context),
                      (guint)page);
}

gboolean
tm_hold_print_run (GtkWindow *parent, const TmHoldList *list, const TmJob *job, const char *path,
                   GError **error)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  Printed printed = { list, job };
  GtkPrintOperationAction action = GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG;

  gtk_print_operation_set_job_name (operation, _ ("Pieces held back"));
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  if (path != NULL)
    {
      gtk_print_operation_set_export_filename (operation, path);
      action = GTK_PRINT_OPERATION_ACTION_EXPORT;
    }
  g_signal_connect (operation, "begin-print", G_CALLBACK (begin_cb), &printed);
  g_signal_connect (operation, "draw-page", G_CALLBACK (page_cb), &printed);
  return gtk_print_operation_run (operation, action, parent, error) != GTK_PRINT_OPERATION_RESULT_ERROR;
}
