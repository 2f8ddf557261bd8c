/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-drawing-sheet.h"

#include <math.h>

#include "plot-drawing.h"

/* More than what is in sight, as a share of it on each side, so that it can be moved a little. */
#define AROUND 0.25

/* A part of the page, in pixels of the page at a scale. */
typedef struct {
  double scale; /* pixels of the screen to a point; 0: none */
  int x, y, width, height;
} Part;

typedef struct {
  cairo_surface_t *surface; /* of an image; NULL: none yet */
  Part part;
} Picture;

struct _TmDrawingSheet {
  void (*changed) (gpointer data);
  gpointer data;

  GBytes *content;
  guint number;
  guint generation; /* counts the pages that were set: an answer about another one is too late */
  TmDrawingPage *page;
  char *problem;

  Picture whole, near;
  gboolean sharp;
  gboolean drawing;       /* a thread is at it */
  TmDrawingSheet **asked; /* shared with what a thread does: holds NULL once the sheet is gone */
};

/* -------- On the thread -------- */

typedef struct {
  TmDrawingSheet **asked;
  guint generation;
  GBytes *content; /* to be opened */
  guint number;
  TmDrawingPage *page; /* to be drawn */
  Part part;
  gboolean is_whole;
} Job;

static void
free_job (gpointer data)
{
  Job *job = data;

  g_rc_box_release (job->asked);
  g_clear_pointer (&job->content, g_bytes_unref);
  g_clear_pointer (&job->page, tm_drawing_page_unref);
  g_free (job);
}

static void
open_cb (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  GError *error = NULL;
  TmDrawingPage *page = tm_drawing_page_open (job->content, job->number, &error);

  if (page != NULL)
    g_task_return_pointer (task, page, (GDestroyNotify)tm_drawing_page_unref);
  else
    g_task_return_error (task, error);
}

static void
free_surface (gpointer surface)
{
  cairo_surface_destroy (surface);
}

static void
draw_cb (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  cairo_surface_t *surface
      = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, job->part.width, job->part.height);
  cairo_t *cr = cairo_create (surface);

  cairo_translate (cr, -job->part.x, -job->part.y);
  cairo_scale (cr, job->part.scale, job->part.scale);
  tm_drawing_page_draw (job->page, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  g_task_return_pointer (task, surface, free_surface);
}

/* -------- On the main loop -------- */

static void
run (TmDrawingSheet *sheet, Job *job, GTaskThreadFunc thread, GAsyncReadyCallback done)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, done, NULL);

  job->asked = g_rc_box_acquire (sheet->asked);
  job->generation = sheet->generation;
  g_task_set_task_data (task, job, free_job);
  g_task_run_in_thread (task, thread);
}

/* The sheet that asked, or NULL when it is gone or shows another page by now. */
static TmDrawingSheet *
find_sheet (const Job *job)
{
  TmDrawingSheet *sheet = *job->asked;

  return sheet != NULL && sheet->generation == job->generation ? sheet : NULL;
}

static void
drop_picture (Picture *picture)
{
  g_clear_pointer (&picture->surface, cairo_surface_destroy);
  picture->part = (Part) { 0 };
}

static void
drawn_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  GTask *task = G_TASK (result);
  const Job *job = g_task_get_task_data (task);
  cairo_surface_t *surface = g_task_propagate_pointer (task, NULL);
  TmDrawingSheet *sheet = find_sheet (job);
  Picture *picture;

  if (sheet == NULL)
    {
      cairo_surface_destroy (surface);
      return;
    }
  sheet->drawing = FALSE;
  picture = job->is_whole ? &sheet->whole : &sheet->near;
  drop_picture (picture);
  picture->surface = surface;
  picture->part = job->part;
  sheet->changed (sheet->data);
}

static void
draw (TmDrawingSheet *sheet, const Part *part, gboolean is_whole)
{
  Job *job = g_new0 (Job, 1);

  job->page = tm_drawing_page_ref (sheet->page);
  job->part = *part;
  job->is_whole = is_whole;
  sheet->drawing = TRUE;
  run (sheet, job, draw_cb, drawn_cb);
}

static void
opened_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  GTask *task = G_TASK (result);
  g_autoptr (GError) error = NULL;
  TmDrawingPage *page = g_task_propagate_pointer (task, &error);
  TmDrawingSheet *sheet = find_sheet (g_task_get_task_data (task));

  if (sheet == NULL)
    {
      g_clear_pointer (&page, tm_drawing_page_unref);
      return;
    }
  sheet->page = page;
  if (error != NULL)
    sheet->problem = g_strdup (error->message);
  sheet->changed (sheet->data);
}

static void
forget_page (TmDrawingSheet *sheet)
{
  sheet->generation++;
  sheet->drawing = FALSE;
  sheet->sharp = FALSE;
  g_clear_pointer (&sheet->content, g_bytes_unref);
  g_clear_pointer (&sheet->page, tm_drawing_page_unref);
  g_clear_pointer (&sheet->problem, g_free);
  drop_picture (&sheet->whole);
  drop_picture (&sheet->near);
}

TmDrawingSheet *
tm_drawing_sheet_new (void (*changed) (gpointer data), gpointer data)
{
  TmDrawingSheet *sheet = g_new0 (TmDrawingSheet, 1);

  sheet->changed = changed;
  sheet->data = data;
  sheet->asked = g_rc_box_new (TmDrawingSheet *);
  *sheet->asked = sheet;
  return sheet;
}

void
tm_drawing_sheet_free (TmDrawingSheet *sheet)
{
  g_return_if_fail (sheet != NULL);

  forget_page (sheet);
  *sheet->asked = NULL;
  g_rc_box_release (sheet->asked);
  g_free (sheet);
}

void
tm_drawing_sheet_set (TmDrawingSheet *sheet, GBytes *content, guint page)
{
  Job *job;

  g_return_if_fail (sheet != NULL);

  if (content == sheet->content && page == sheet->number)
    return;
  forget_page (sheet);
  sheet->number = page;
  if (content == NULL)
    return;
  sheet->content = g_bytes_ref (content);
  job = g_new0 (Job, 1);
  job->content = g_bytes_ref (content);
  job->number = page;
  run (sheet, job, open_cb, opened_cb);
}

gboolean
tm_drawing_sheet_size (TmDrawingSheet *sheet, double *width, double *height)
{
  g_return_val_if_fail (sheet != NULL, FALSE);

  if (sheet->page == NULL)
    return FALSE;
  *width = tm_drawing_page_width (sheet->page);
  *height = tm_drawing_page_height (sheet->page);
  return TRUE;
}

const char *
tm_drawing_sheet_problem (TmDrawingSheet *sheet)
{
  g_return_val_if_fail (sheet != NULL, NULL);

  return sheet->problem;
}

gboolean
tm_drawing_sheet_is_sharp (TmDrawingSheet *sheet)
{
  g_return_val_if_fail (sheet != NULL, FALSE);

  return sheet->sharp;
}

/* -------- What is in sight -------- */

static Part
find_whole (const TmDrawingFrame *frame, int device)
{
  double scale = tm_drawing_frame_fit_scale (frame) * device;

  return (Part) { scale, 0, 0, MAX ((int)ceil (frame->page_width * scale), 1),
                  MAX ((int)ceil (frame->page_height * scale), 1) };
}

/* What is in sight of the page at the scale of the frame. */
static Part
find_sight (const TmDrawingFrame *frame, int device)
{
  double across = frame->page_width * frame->scale, down = frame->page_height * frame->scale;
  double left = CLAMP (-frame->x, 0, across), top = CLAMP (-frame->y, 0, down);
  double right = CLAMP (frame->width - frame->x, left, across);
  double bottom = CLAMP (frame->height - frame->y, top, down);

  return (Part) { frame->scale * device, (int)floor (left * device), (int)floor (top * device),
                  (int)ceil ((right - left) * device), (int)ceil ((bottom - top) * device) };
}

/* With some more around it, inside the page. */
static Part
widen (const Part *sight, const TmDrawingFrame *frame)
{
  int across = (int)ceil (frame->page_width * sight->scale),
      down = (int)ceil (frame->page_height * sight->scale);
  int more_x = (int)(sight->width * AROUND), more_y = (int)(sight->height * AROUND);
  int left = MAX (sight->x - more_x, 0), top = MAX (sight->y - more_y, 0);
  int right = MIN (sight->x + sight->width + more_x, across);
  int bottom = MIN (sight->y + sight->height + more_y, down);

  return (Part) { sight->scale, left, top, MAX (right - left, 1), MAX (bottom - top, 1) };
}

static gboolean
same_scale (const Part *a, const Part *b)
{
  return a->scale > 0 && fabs (a->scale - b->scale) <= 1e-6 * b->scale;
}

static gboolean
holds (const Part *part, const Part *sight)
{
  /* A pixel at the edge may be rounded away. */
  return same_scale (part, sight) && part->x <= sight->x + 1 && part->y <= sight->y + 1
         && part->x + part->width >= sight->x + sight->width - 1
         && part->y + part->height >= sight->y + sight->height - 1;
}

static void
draw_picture (cairo_t *cr, const Picture *picture, const TmDrawingFrame *frame, int device)
{
  const Part *part = &picture->part;
  double by = frame->scale / part->scale;
  /* On whole pixels of the screen, else a sharp picture is smeared over two. */
  double x = floor (frame->x * device + 0.5) / device, y = floor (frame->y * device + 0.5) / device;

  cairo_save (cr);
  cairo_translate (cr, x + part->x * by, y + part->y * by);
  cairo_scale (cr, by, by);
  cairo_set_source_surface (cr, picture->surface, 0, 0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_BILINEAR);
  cairo_paint (cr);
  cairo_restore (cr);
}

static void
draw_paper (cairo_t *cr, const TmDrawingFrame *frame)
{
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_rectangle (cr, frame->x, frame->y, frame->page_width * frame->scale,
                   frame->page_height * frame->scale);
  cairo_fill (cr);
}

/* One thing is drawn at a time: the page as a whole first, then what is in sight by then. */
static void
draw_next (TmDrawingSheet *sheet, const Part *whole, const Part *sight, const TmDrawingFrame *frame)
{
  Part near = widen (sight, frame);

  sheet->sharp = holds (&sheet->whole.part, sight) || holds (&sheet->near.part, sight);
  if (sheet->drawing)
    return;
  if (sheet->whole.surface == NULL)
    draw (sheet, whole, TRUE);
  else if (!sheet->sharp && same_scale (whole, sight))
    draw (sheet, whole, TRUE);
  else if (!sheet->sharp)
    draw (sheet, &near, FALSE);
}

void
tm_drawing_sheet_draw (TmDrawingSheet *sheet, cairo_t *cr, const TmDrawingFrame *frame, int device)
{
  Part whole, sight;

  g_return_if_fail (sheet != NULL && device > 0);

  if (sheet->page == NULL || !tm_drawing_frame_is_set (frame))
    return;
  whole = find_whole (frame, device);
  sight = find_sight (frame, device);
  draw_paper (cr, frame);
  if (sheet->whole.surface != NULL && !holds (&sheet->near.part, &sight))
    draw_picture (cr, &sheet->whole, frame, device);
  if (sheet->near.surface != NULL && !holds (&sheet->whole.part, &sight))
    draw_picture (cr, &sheet->near, frame, device);
  draw_next (sheet, &whole, &sight, frame);
}
