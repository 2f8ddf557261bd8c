/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-drawing: a drawing (invented) that is slow to draw, a PDF of A1 with 8,000 strokes and 200 balloons:
 * how long a frame takes the program while it is moved, at a fit and at four times its size on paper; how
 * long the main loop is ever kept while the page is drawn on its thread; and what putting a balloon takes,
 * with a drawing of 60 MiB in the job.
 *
 * The processor time of the main thread is what the program itself takes on a machine that others use as
 * well.
 */

#include <adwaita.h>
#include <cairo-pdf.h>
#include <time.h>

#include "app-drawing-view-private.h"
#include "bench-figures.h"
#include "core-callout.h"

#define N_BALLOONS 200
#define N_STROKES  8000
#define N_FRAMES   200
#define N_PUTS     60
#define FRAME_MS   8.0
#define LOOP_MS    40.0
#define PUT_MS     100.0
#define LARGE      (60u * 1048576u)

/* Points of A1. */
#define WIDTH  2384.0
#define HEIGHT 1684.0

static double
processor_ms (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return 1e3 * (double)now.tv_sec + 1e-6 * (double)now.tv_nsec;
}

static cairo_status_t
take_cb (void *data, const unsigned char *bytes, unsigned int length)
{
  g_byte_array_append (data, bytes, length);
  return CAIRO_STATUS_SUCCESS;
}

static GBytes *
make_pdf (void)
{
  GByteArray *bytes = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (take_cb, bytes, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);
  g_autoptr (GRand) random = g_rand_new_with_seed (7);

  cairo_set_line_width (cr, 0.7);
  for (guint i = 0; i < N_STROKES; i++)
    {
      double x = g_rand_double_range (random, 20, WIDTH - 60),
             y = g_rand_double_range (random, 20, HEIGHT - 60);

      cairo_move_to (cr, x, y);
      cairo_curve_to (cr, x + 30, y, x + 30, y + 30, x, y + 30);
      cairo_stroke (cr);
    }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return g_byte_array_free_to_bytes (bytes);
}

static void
add_drawing (TmJob *job, const char *name, const char *media, GBytes *content)
{
  TmDrawing *drawing = tm_drawing_new ();
  g_autofree char *digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, content);

  drawing->name = name;
  drawing->media = media;
  drawing->content = g_bytes_ref (content);
  drawing->digest = tm_job_intern (job, digest);
  tm_job_add_drawing (job, drawing);
}

static TmJob *
make_job (GBytes *pdf)
{
  TmJob *job = tm_job_new ();
  TmPiece *piece = tm_piece_new ();
  g_autoptr (GBytes) large = g_bytes_new_take (g_malloc0 (LARGE), LARGE);

  job->id = "11111111-2222-4333-8444-777777777777";
  job->part_number = "BENCH";
  job->unit = TM_UNIT_MM;
  piece->serial = "001";
  tm_job_add_piece (job, piece);
  for (guint i = 1; i <= N_BALLOONS; i++)
    {
      TmFeature *feature = tm_feature_new ();
      g_autofree char *balloon = g_strdup_printf ("%u", i);

      feature->balloon = tm_job_intern (job, balloon);
      feature->requirement = "Ø25 H7";
      feature->unit = TM_UNIT_MM;
      tm_callout_apply (job, feature);
      tm_job_add_feature (job, feature);
    }
  add_drawing (job, "A1", "application/pdf", pdf);
  add_drawing (job, "large", "image/png", large);
  return job;
}

static void
place_all (TmDocument *document)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (11);
  TmJob *job = tm_document_job (document);

  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);
      double x = g_rand_double_range (random, 0.05, 0.95), y = g_rand_double_range (random, 0.05, 0.95);

      tm_edit_put_mark (document, "A1", feature->balloon, 0, &(TmMarkSpot) { x, y, x - 0.02, y + 0.02 },
                        NULL);
    }
}

/* Until the page is sharp; gives the longest turn of the main loop, ms of its processor time. */
static double
wait_sharp (TmDrawingView *view, double *seconds)
{
  double longest = 0, start = tm_steady_seconds ();

  /* Whether it is, is known once it was drawn at the new scale. */
  while (tm_drawing_sheet_is_sharp (view->sheet))
    g_main_context_iteration (NULL, TRUE);
  do
    {
      double from = processor_ms ();

      g_main_context_iteration (NULL, TRUE);
      longest = MAX (longest, processor_ms () - from);
    }
  while (!tm_drawing_sheet_is_sharp (view->sheet));
  *seconds = tm_steady_seconds () - start;
  return longest;
}

typedef struct {
  TmDrawingView *view;
  GArray *times; /* double, ms of the processor */
  double from;
  int way;
} Run;

static void
before_cb (GdkFrameClock *clock, Run *run)
{
  run->from = processor_ms ();
  if (run->times->len % 40 == 0)
    run->way = -run->way;
  tm_drawing_frame_pan (&run->view->frame, run->way * 13, run->way * 7);
  gtk_widget_queue_draw (GTK_WIDGET (run->view));
}

static void
after_cb (GdkFrameClock *clock, Run *run)
{
  double time = processor_ms () - run->from;

  g_array_append_val (run->times, time);
}

/* The 99th of 100 frames while the drawing is moved. */
static double
move (TmDrawingView *view)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (GTK_WIDGET (view));
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (double));
  Run run = { view, times, 0, 1 };
  gulong before = g_signal_connect (clock, "before-paint", G_CALLBACK (before_cb), &run);
  gulong after = g_signal_connect (clock, "after-paint", G_CALLBACK (after_cb), &run);

  gdk_frame_clock_begin_updating (clock);
  while (times->len < N_FRAMES)
    g_main_context_iteration (NULL, TRUE);
  gdk_frame_clock_end_updating (clock);
  g_signal_handler_disconnect (clock, before);
  g_signal_handler_disconnect (clock, after);
  return tm_percentile (times, 99);
}

static double
put_balloons (TmDocument *document)
{
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint i = 0; i < N_PUTS; i++)
    {
      double x = 0.1 + 0.01 * i, from = tm_steady_seconds (), time;

      tm_edit_put_mark (document, "A1", "1", 0, &(TmMarkSpot) { x, 0.5, x, 0.6 }, NULL);
      time = 1000 * (tm_steady_seconds () - from);
      g_array_append_val (times, time);
    }
  return tm_percentile (times, 50);
}

static int
measure (TmDocument *document)
{
  GtkWidget *window = gtk_window_new ();
  TmDrawingView *view = TM_DRAWING_VIEW (tm_drawing_view_new (TRUE));
  TmFigures *figures = tm_figures_new ("a drawing of A1 with 8,000 strokes, 200 balloons");
  double seconds, longest;

  gtk_window_set_default_size (GTK_WINDOW (window), 980, 600);
  gtk_window_set_child (GTK_WINDOW (window), GTK_WIDGET (view));
  tm_drawing_view_set_document (view, document);
  gtk_window_present (GTK_WINDOW (window));
  longest = wait_sharp (view, &seconds);
  tm_figures_add (figures, "opened and drawn whole", seconds, "s", TM_NO_BOUND);
  tm_drawing_view_zoom (view, 1.3);
  tm_figures_add (figures, "a frame while it is moved, nearly whole, 99 of 100", move (view), "ms", FRAME_MS);
  tm_drawing_view_zoom (view, 4 * TM_FRAME_PAPER_SCALE / view->frame.scale);
  longest = MAX (longest, wait_sharp (view, &seconds));
  tm_figures_add (figures, "sharp again at 400 %", seconds, "s", TM_NO_BOUND);
  tm_figures_add (figures, "a frame while it is moved at 400 %, 99 of 100", move (view), "ms", FRAME_MS);
  tm_figures_add (figures, "longest turn of the main loop while it is drawn", longest, "ms", LOOP_MS);
  tm_figures_add (figures, "a balloon put, with 60 MiB in the job", put_balloons (document), "ms", PUT_MS);
  gtk_window_destroy (GTK_WINDOW (window));
  return tm_figures_finish (figures);
}

int
main (int argc, char *argv[])
{
  char *folder = tm_scratch_new ();
  g_autofree char *path = g_build_filename (folder, "bench.book", NULL);
  g_autoptr (GBytes) pdf = make_pdf ();
  g_autoptr (GError) error = NULL;
  gboolean added;
  TmBook *book;
  TmJob *job;
  int status;

  gtk_init ();
  adw_init ();
  book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_no_error (error);
  job = make_job (pdf);
  tm_book_add_job (book, job, NULL, NULL, &added, &error);
  g_assert_no_error (error);
  TmDocument *document = tm_document_new (book, job);
  place_all (document);
  status = measure (document);
  while (G_OBJECT (document)->ref_count > 1)
    g_main_context_iteration (NULL, TRUE);
  g_object_unref (document);
  tm_book_close (book);
  tm_scratch_remove (folder);
  return status;
}
