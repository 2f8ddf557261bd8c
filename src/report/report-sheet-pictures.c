/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-pictures: the band plot of each bore, two across and three down on a page.
 */

#include <glib/gi18n-lib.h>

#include "core-form.h"
#include "plot-band.h"
#include "report-picture.h"
#include "report-sheets.h"
#include "report-words.h"

/* Screen pixels, 96 to the inch. */
#define WIDTH  590.0
#define HEIGHT 256.0
/* The plot's own units are larger than pixels, so that its words stay legible on paper. */
#define ENLARGED 1.25
/* Pixels drawn for each of them, so that it prints sharp. */
#define SCALE 2.5
/* More pictures than this make a file nobody can mail; the sheet says so. */
#define MOST_PICTURES 200

#define LONGEST_PIECE 20 /* letters of its serial number, over the picture */

#define ROWS_EACH   14 /* of 20 pixels: one heading, the picture, a gap */
#define ROWS_A_PAGE 3
/* Percent: three rows of pictures then fit on a landscape page of either paper. */
#define PRINT_SCALE 75

static gboolean
is_shown (const TmReportLine *line)
{
  return tm_feature_is_diameter (line->feature) && line->judgement.sizes.n_stations > 0;
}

static guint
count_shown (const TmReportContent *content)
{
  guint n = 0;

  for (guint i = 0; i < content->lines->len; i++)
    n += is_shown (g_ptr_array_index (content->lines, i));
  return n;
}

static void
insert_picture (TmSheet *sheet, guint32 row, guint column, GBytes *png, const char *words)
{
  gsize length;
  const unsigned char *data = g_bytes_get_data (png, &length);
  g_autofree char *description = tm_cell_text (words);
  lxw_image_options options = { 0 };

  sheet->workbook->picture_bytes += length;
  options.x_scale = options.y_scale = 1.0 / SCALE;
  options.description = description;
  options.object_position = LXW_OBJECT_MOVE_DONT_SIZE;
  tm_workbook_check (sheet->workbook, worksheet_insert_image_buffer_opt (sheet->sheet, row, (lxw_col_t)column,
                                                                         data, length, &options));
}

static void
write_picture (TmSheet *sheet, const TmReportLine *line, guint column)
{
  const TmJob *job = sheet->workbook->job;
  g_autoptr (TmBandPlot) plot = tm_band_plot_new (job, &line->judgement, NULL);
  g_autofree char *words = tm_band_plot_describe (plot);
  g_autofree char *feature = tm_report_feature_short_name (line->feature, line->place);
  g_autofree char *piece = tm_report_shorten (line->piece->serial, LONGEST_PIECE);
  g_autofree char *heading = g_strdup_printf (_ ("%s, piece %s: %s"), feature, piece,
                                              tm_report_verdict_word (line->judgement.verdict));
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) png
      = tm_picture_of_band_plot (plot, WIDTH / ENLARGED, HEIGHT / ENLARGED, SCALE * ENLARGED, &error);

  tm_sheet_text (sheet, column, heading, TM_STYLE_SECTION);
  if (png == NULL)
    tm_workbook_fail (sheet->workbook, TM_REPORT_ERROR_FAILED, "%s", error->message);
  else
    insert_picture (sheet, sheet->row + 1, column, png, words);
}

static void
set_layout (TmSheet *sheet)
{
  const double widths[] = { 86.0, 86.0 };

  sheet->scale = PRINT_SCALE;
  tm_sheet_columns (sheet, widths, G_N_ELEMENTS (widths));
}

/* Moves below the pictures; a new page begins after each third row of them. */
static void
end_row (TmSheet *sheet, guint index, GArray *breaks)
{
  for (guint i = 0; i < ROWS_EACH; i++)
    tm_sheet_next (sheet, 0.0);
  if (index % (2 * ROWS_A_PAGE) == 2 * ROWS_A_PAGE - 1)
    {
      const lxw_row_t at = sheet->row;
      g_array_append_val (breaks, at);
    }
}

static void
write_pictures (TmSheet *sheet, guint n)
{
  const GPtrArray *lines = sheet->workbook->content->lines;
  g_autoptr (GArray) breaks = g_array_new (TRUE, TRUE, sizeof (lxw_row_t));
  const guint most = MIN (n, MOST_PICTURES);
  guint shown = 0;

  for (guint i = 0; i < lines->len && shown < most; i++)
    {
      const TmReportLine *line = g_ptr_array_index (lines, i);
      if (!is_shown (line))
        continue;
      if (!tm_workbook_goes_on (sheet->workbook,
                                sheet->workbook->done + sheet->workbook->share * shown / most))
        return;
      write_picture (sheet, line, shown % 2);
      shown++;
      if (shown % 2 == 0 || shown == most)
        end_row (sheet, shown - 1, breaks);
    }
  if (breaks->len > 0 && g_array_index (breaks, lxw_row_t, breaks->len - 1) >= sheet->row)
    g_array_set_size (breaks, breaks->len - 1);
  if (breaks->len > 0)
    worksheet_set_h_pagebreaks (sheet->sheet, (lxw_row_t *)(gpointer)breaks->data);
}

void
tm_sheet_write_pictures (TmWorkbook *workbook)
{
  const guint n = count_shown (workbook->content);
  g_autofree char *cut = g_strdup_printf (_ ("Shown are the first %d places of %u."), MOST_PICTURES, n);
  TmSheet sheet;

  if (n == 0)
    return;
  if (tm_sheet_begin (&sheet, workbook, _ ("Band plots"), N_ ("Band plots"),
                      n > MOST_PICTURES ? cut
                                        : _ ("Each bore's limits, the zone in which a size is proven in, and "
                                             "each station's reading with its uncertainty.")))
    {
      set_layout (&sheet);
      write_pictures (&sheet, n);
    }
  tm_sheet_end (&sheet);
}
