/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-drawing.h"

#include "plot-drawing-check.h"

gboolean
tm_report_drawing_main (int argc, char *argv[], int *status)
{
  return tm_drawing_check_main (argc, argv, status);
}

const char *
tm_report_drawing_media (GBytes *content, guint page, GError **error)
{
  g_autoptr (TmDrawingPage) opened = NULL;
  const char *media;

  g_return_val_if_fail (content != NULL, NULL);
  media = tm_drawing_look (content, NULL, error);
  if (media == NULL)
    return NULL;
  opened = tm_drawing_page_open (content, page, error);
  return opened != NULL ? media : NULL;
}

gsize
tm_report_drawing_most (void)
{
  return TM_DRAWING_MAX_BYTES;
}
