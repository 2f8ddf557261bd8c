/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-hold-print.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-theme.h"

/* Points. */
#define TITLE_SIZE  14
#define TEXT_SIZE   10
#define ROW_GAP     4.0 /* between the text of a row and the rule under it */
#define COLUMN_GAP  6.0
#define FOOT_HEIGHT 56.0

/* Shaping their texts takes some milliseconds. */
#define LINES_AT_ONCE 40

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

/* What is drawn on; without @draw it is only measured. */
typedef struct {
  cairo_t *cr;
  gboolean draw;
  double width;
} Paper;

/* -------- Text -------- */

/* Wrapped within @width, for nobody can ask paper for the rest; its height in whole points. */
static double
put_text (const Paper *paper, const char *text, double x, double y, double width, double size, gboolean bold)
{
  g_autoptr (PangoLayout) layout = pango_cairo_create_layout (paper->cr);
  g_autoptr (PangoFontDescription) font = pango_font_description_from_string (tm_theme_paper ()->font);
  int height;

  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_font_description_set_weight (font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_layout_set_text (layout, text, -1);
  pango_layout_set_width (layout, (int)(MAX (width, 1) * PANGO_SCALE));
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_get_size (layout, NULL, &height);
  if (paper->draw)
    {
      cairo_move_to (paper->cr, x, y);
      pango_cairo_show_layout (paper->cr, layout);
    }
  return ceil ((double)height / PANGO_SCALE);
}

static void
put_rule (const Paper *paper, double y, double thickness)
{
  if (!paper->draw)
    return;
  cairo_set_line_width (paper->cr, thickness);
  cairo_move_to (paper->cr, 0, y);
  cairo_line_to (paper->cr, paper->width, y);
  cairo_stroke (paper->cr);
}

/* Cells side by side over a rule; the height of all. */
static double
put_cells (const Paper *paper, const char *const cells[], double y, gboolean bold, double thickness)
{
  double height = 0;

  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      const double tall = put_text (paper, cells[i], columns[i].at * paper->width, y,
                                    columns[i].share * paper->width - COLUMN_GAP, TEXT_SIZE, bold);

      height = MAX (height, tall);
    }
  put_rule (paper, y + height + ROW_GAP / 2, thickness);
  return height + ROW_GAP;
}

/* -------- Parts of a page -------- */

/* Its height. */
static double
put_head (const Paper *paper, const TmHoldList *list)
{
  g_autofree char *summary = tm_hold_list_summary (list);
  const char *lines[] = { list->job, list->feature, summary };
  const char *titles[G_N_ELEMENTS (columns)];
  double y = put_text (paper, _ ("Pieces held back"), 0, 0, paper->width, TITLE_SIZE, TRUE) + ROW_GAP;

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    if (*lines[i] != '\0')
      y += put_text (paper, lines[i], 0, y, paper->width, TEXT_SIZE, FALSE);
  y += 2 * ROW_GAP;
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    titles[i] = _ (columns[i].title);
  return y + put_cells (paper, titles, y, TRUE, 0.8) + ROW_GAP;
}

/* Its height. */
static double
put_line (const Paper *paper, const TmHoldLine *line, const TmPiece *piece, double y)
{
  g_autofree char *chance = line->held ? tm_words_chance_out (line->out) : g_strdup ("");
  const char *cells[] = { line->serial,
                          !line->held      ? ""
                          : line->measured ? _ ("yes")
                                           : _ ("no"),
                          chance, piece != NULL ? tm_words_disposition (piece) : "",
                          piece != NULL ? piece->disposition_note : "" };

  return put_cells (paper, cells, y, FALSE, 0.2);
}

static void
put_foot (const Paper *paper, double height, guint page, guint n_pages)
{
  g_autofree char *number = g_strdup_printf (_ ("Page %u of %u"), page + 1, n_pages);

  put_text (paper, _ ("Decided by"), 0, height - 36, paper->width * 0.5, TEXT_SIZE, FALSE);
  put_text (paper, _ ("Date"), paper->width * 0.6, height - 36, paper->width * 0.4, TEXT_SIZE, FALSE);
  put_rule (paper, height - 22, 0.4);
  put_text (paper, number, 0, height - 16, paper->width, TEXT_SIZE, FALSE);
}

/* -------- Pages -------- */

static const TmHoldLine *
get_line (const TmHoldList *list, guint at)
{
  return g_ptr_array_index (list->lines, at);
}

/* How far the lines have been put on pages. */
typedef struct {
  Paper paper;
  double height;
  double top;     /* where lines begin on a page */
  double y;       /* where the next one goes */
  guint next;     /* line */
  GArray *starts; /* guint: with what line each page begins */
} Pagination;

static void
begin_pages (Pagination *pagination, const TmHoldList *list, cairo_t *cr, double width, double height)
{
  const guint start = 0;

  *pagination = (Pagination) { .paper = { cr, FALSE, width }, .height = height };
  pagination->top = pagination->y = put_head (&pagination->paper, list);
  pagination->starts = g_array_new (FALSE, FALSE, sizeof (guint));
  g_array_append_val (pagination->starts, start);
}

/* Puts up to @n more lines on pages; TRUE once all are. */
static gboolean
fill_pages (Pagination *pagination, const TmHoldList *list, const TmJob *job, guint n)
{
  for (; n > 0 && pagination->next < list->lines->len; n--, pagination->next++)
    {
      const TmHoldLine *line = get_line (list, pagination->next);
      const double tall = put_line (&pagination->paper, line, tm_job_find_piece (job, line->serial), 0);

      /* What is taller than a page has one of its own. */
      if (pagination->y + tall > pagination->height - FOOT_HEIGHT && pagination->y > pagination->top)
        {
          g_array_append_val (pagination->starts, pagination->next);
          pagination->y = pagination->top;
        }
      pagination->y += tall;
    }
  return pagination->next == list->lines->len;
}

GArray *
tm_hold_print_paginate (const TmHoldList *list, const TmJob *job, cairo_t *cr, double width, double height)
{
  Pagination pagination;

  begin_pages (&pagination, list, cr, width, height);
  fill_pages (&pagination, list, job, list->lines->len);
  return pagination.starts;
}

void
tm_hold_print_draw (const TmHoldList *list, const TmJob *job, const GArray *starts, cairo_t *cr, double width,
                    double height, guint page)
{
  const Paper paper = { cr, TRUE, width };
  const guint end = page + 1 < starts->len ? g_array_index (starts, guint, page + 1) : list->lines->len;
  double y;

  g_return_if_fail (page < starts->len);

  cairo_set_source_rgb (cr, 0, 0, 0);
  y = put_head (&paper, list);
  for (guint i = g_array_index (starts, guint, page); i < end; i++)
    {
      const TmHoldLine *line = get_line (list, i);

      y += put_line (&paper, line, tm_job_find_piece (job, line->serial), y);
    }
  put_foot (&paper, height, page, starts->len);
}

typedef struct {
  const TmHoldList *list;
  const TmJob *job;
  Pagination pages;
} Printed;

static void
begin_cb (GtkPrintOperation *operation, GtkPrintContext *context, Printed *printed)
{
  g_clear_pointer (&printed->pages.starts, g_array_unref);
  begin_pages (&printed->pages, printed->list, gtk_print_context_get_cairo_context (context),
               gtk_print_context_get_width (context), gtk_print_context_get_height (context));
}

/* Asked again and again, with the main loop between, until all lines have their page. */
static gboolean
paginate_cb (GtkPrintOperation *operation, GtkPrintContext *context, Printed *printed)
{
  if (!fill_pages (&printed->pages, printed->list, printed->job, LINES_AT_ONCE))
    return FALSE;
  gtk_print_operation_set_n_pages (operation, (int)printed->pages.starts->len);
  return TRUE;
}

static void
page_cb (GtkPrintOperation *operation, GtkPrintContext *context, int page, const Printed *printed)
{
  tm_hold_print_draw (printed->list, printed->job, printed->pages.starts,
                      gtk_print_context_get_cairo_context (context), gtk_print_context_get_width (context),
                      gtk_print_context_get_height (context), (guint)page);
}

gboolean
tm_hold_print_run (GtkWindow *parent, const TmHoldList *list, const TmJob *job, const char *path,
                   GError **error)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  Printed printed = { .list = list, .job = job };
  gboolean done;
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
  g_signal_connect (operation, "paginate", G_CALLBACK (paginate_cb), &printed);
  g_signal_connect (operation, "draw-page", G_CALLBACK (page_cb), &printed);
  done = gtk_print_operation_run (operation, action, parent, error) != GTK_PRINT_OPERATION_RESULT_ERROR;
  g_clear_pointer (&printed.pages.starts, g_array_unref);
  return done;
}
