/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-view-places: where the sheets lie below each other.
 */

#include <math.h>

#include "app-report-view-private.h"

void
tm_report_view_sheet_size (TmReportView *self, guint page, double *width, double *height)
{
  const double scale = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  int across, down;

  tm_report_tiles_page_size (self->tiles, page, &across, &down);
  *width = across / scale;
  *height = down / scale;
}

guint
tm_report_view_n_pages (TmReportView *self)
{
  return self->paper != NULL ? tm_report_paper_n_pages (self->paper) : 0;
}

void
tm_report_view_place_sheets (TmReportView *self)
{
  const guint n = tm_report_view_n_pages (self);
  double top = TM_SHEET_MARGIN, width, height;

  g_array_set_size (self->tops, 0);
  self->widest = 0;
  for (guint i = 0; i < n; i++)
    {
      tm_report_view_sheet_size (self, i, &width, &height);
      g_array_append_val (self->tops, top);
      self->widest = MAX (self->widest, width);
      top += height + TM_SHEET_GAP;
    }
  g_array_append_val (self->tops, top);
}

double
tm_report_view_sheet_top (TmReportView *self, guint page)
{
  return g_array_index (self->tops, double, MIN (page, self->tops->len - 1));
}

guint
tm_report_view_find_sheet (TmReportView *self, double y)
{
  guint low = 0, high = self->tops->len - 1;

  while (low + 1 < high)
    {
      const guint middle = (low + high) / 2;

      if (g_array_index (self->tops, double, middle) <= y)
        low = middle;
      else
        high = middle;
    }
  return low;
}

double
tm_report_view_find_place (TmReportView *self, double y)
{
  const guint page = tm_report_view_find_sheet (self, y);
  const double top = tm_report_view_sheet_top (self, page), end = tm_report_view_sheet_top (self, page + 1);

  return end > top ? page + (y - top) / (end - top) : page;
}

double
tm_report_view_find_height (TmReportView *self, double place)
{
  const guint n = self->tops->len - 1;
  const guint page = n > 0 ? (guint)CLAMP (floor (place), 0, n - 1) : 0;
  const double top = tm_report_view_sheet_top (self, page);

  return top + (place - page) * (tm_report_view_sheet_top (self, page + 1) - top);
}

double
tm_report_view_top (TmReportView *self)
{
  return tm_scrolled_value (TM_SCROLLED (self), GTK_ORIENTATION_VERTICAL);
}

guint
tm_report_view_find_page (TmReportView *self)
{
  return tm_report_view_find_sheet (self, tm_report_view_top (self)
                                              + gtk_widget_get_height (GTK_WIDGET (self)) / 2.0);
}
