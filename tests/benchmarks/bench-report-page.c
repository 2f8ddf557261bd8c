/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-report-page: the pages of a report of 600 characteristics on 100 pieces (invented) on the screen: how
 * long until they are there, how long that ever keeps the main loop, how long a frame takes the program while
 * they scroll, and what their pictures take.
 *
 * A frame is from the beginning of its layout to the end of its drawing, in processor time of the main
 * thread: what the program itself takes on a machine that others use as well.
 */

#include <adwaita.h>
#include <stdlib.h>
#include <time.h>

#include "app-report-page.h"
#include "app-resources.h"
#include "bench-figures.h"
#include "book-store.h"
#include "support-big-job.h"

#define N_FEATURES 600
#define N_READINGS 114000 /* two for each bore, one for each tenth feature: 100 pieces */
#define N_FRAMES   300
#define STEP       61 /* pixels a frame, as a wheel turned fast */
#define FRAME_MS   8.0
#define LOOP_MS    100.0 /* that the page may keep the main loop at once, when the list of gaps is filled */
#define LIST_S     1.0   /* in which the list of gaps has its rows */
#define SHOWN_S    12.0
#define PAGE_MS    400.0 /* from a jump to the page being drawn, on a thread of a busy machine */
#define N_JUMPS    20
#define MIB        (1024.0 * 1024.0)

typedef struct {
  GtkAdjustment *adjustment;
  guint n;
  double from;
  GArray *frames; /* double, ms */
} Run;

static double
processor_seconds (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

static void
before_paint_cb (GdkFrameClock *clock, Run *run)
{
  run->from = processor_seconds ();
  gtk_adjustment_set_value (run->adjustment, gtk_adjustment_get_value (run->adjustment) + STEP);
}

static void
after_paint_cb (GdkFrameClock *clock, Run *run)
{
  double frame = 1000 * (processor_seconds () - run->from);

  g_array_append_val (run->frames, frame);
  run->n++;
}

static TmDocument *
make_document (TmBook *book)
{
  TmJob *job = tm_test_big_job (N_FEATURES, N_READINGS);
  g_autoptr (GError) error = NULL;
  gboolean added;

  /* No first article: the report is about each piece. */
  ((TmPiece *)g_ptr_array_index (job->pieces, 0))->first_article = FALSE;
  g_assert_true (tm_book_add_job (book, job, NULL, NULL, &added, &error));
  g_assert_no_error (error);
  return tm_document_new (book, job);
}

static TmReportView *
view_of (TmReportPage *page)
{
  return tm_report_preview_view (tm_report_page_preview (page));
}

static gboolean
is_drawn (TmReportPage *page)
{
  TmReportTiles *tiles = tm_report_view_tiles (view_of (page));

  return tm_report_page_is_settled (page) && tm_report_tiles_bytes (tiles) > 0
         && tm_report_tiles_is_idle (tiles);
}

/* Until the pages that are looked at are drawn, and @seconds more at least: the longest turn of the main
 * loop, ms of its processor time. */
static double
wait_drawn (TmReportPage *page, double seconds)
{
  const double start = tm_steady_seconds ();
  double longest = 0;

  while (!is_drawn (page) || tm_steady_seconds () < start + seconds)
    {
      const double from = processor_seconds ();

      g_main_context_iteration (NULL, !is_drawn (page));
      longest = MAX (longest, 1000 * (processor_seconds () - from));
    }
  return longest;
}

static void
scroll (TmReportPage *page, Run *run)
{
  GtkWidget *scroller = gtk_widget_get_ancestor (GTK_WIDGET (view_of (page)), GTK_TYPE_SCROLLED_WINDOW);
  GdkFrameClock *clock = gtk_widget_get_frame_clock (GTK_WIDGET (page));
  gulong before = g_signal_connect (clock, "before-paint", G_CALLBACK (before_paint_cb), run);
  gulong after = g_signal_connect (clock, "after-paint", G_CALLBACK (after_paint_cb), run);

  run->adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  run->frames = g_array_new (FALSE, FALSE, sizeof (double));
  gdk_frame_clock_begin_updating (clock);
  while (run->n < N_FRAMES)
    g_main_context_iteration (NULL, TRUE);
  gdk_frame_clock_end_updating (clock);
  g_signal_handler_disconnect (clock, before);
  g_signal_handler_disconnect (clock, after);
}

static void
drawn_cb (TmReportTiles *tiles, guint *n_drawn)
{
  (*n_drawn)++;
}

/* The longest wait for a page far away, ms: what is looked at is drawn before its neighbours. */
static double
jump (TmReportPage *page)
{
  const guint n = tm_report_paper_n_pages (tm_report_view_paper (view_of (page)));
  TmReportTiles *tiles = tm_report_view_tiles (view_of (page));
  double longest = 0;
  guint n_drawn = 0;
  gulong drawn = g_signal_connect (tiles, "drawn", G_CALLBACK (drawn_cb), &n_drawn);

  for (guint i = 0; i < N_JUMPS; i++)
    {
      double from;

      wait_drawn (page, 0);
      from = tm_steady_seconds ();
      n_drawn = 0;
      tm_report_view_show_page (view_of (page), (i * 7919 + n / 2) % n);
      while (n_drawn == 0)
        g_main_context_iteration (NULL, TRUE);
      longest = MAX (longest, 1000 * (tm_steady_seconds () - from));
    }
  g_signal_handler_disconnect (tiles, drawn);
  return longest;
}

static void
measure (TmFigures *figures, GtkWidget *window, TmReportPage *page)
{
  Run run = { 0 };
  const double start = tm_steady_seconds ();
  double longest;

  gtk_window_present (GTK_WINDOW (window));
  longest = wait_drawn (page, 0);
  g_printerr ("%u pages\n", tm_report_paper_n_pages (tm_report_view_paper (view_of (page))));
  tm_figures_add (figures, "opened until the first page is drawn", tm_steady_seconds () - start, "s",
                  SHOWN_S);
  longest = MAX (longest, wait_drawn (page, LIST_S));
  tm_figures_add (figures, "  of the main loop's time at most at once", longest, "ms", LOOP_MS);
  scroll (page, &run);
  tm_figures_add (figures, "scrolling: 99 of 100 frames within", tm_percentile (run.frames, 99), "ms",
                  FRAME_MS);
  tm_figures_add (figures, "  the middle one", tm_percentile (run.frames, 50), "ms", FRAME_MS);
  tm_figures_add (figures, "a page far away is drawn within", jump (page), "ms", PAGE_MS);
  tm_figures_add (figures, "pictures of pages",
                  (double)tm_report_tiles_bytes (tm_report_view_tiles (view_of (page))) / MIB, "MiB",
                  (double)tm_report_tiles_most_bytes () / MIB + 0.1);
  tm_figures_add (figures, "memory of the whole program", tm_peak_mib (), "MiB", TM_NO_BOUND);
  g_array_unref (run.frames);
}

int
main (void)
{
  g_autofree char *folder = tm_scratch_new ();
  g_autofree char *path = g_build_filename (folder, "bench.tmbook", NULL);
  g_autoptr (TmBook) book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, NULL);
  g_autoptr (TmDocument) document = make_document (book);
  TmFigures *figures = tm_figures_new ("The Report page with 600 characteristics on 100 pieces");
  GtkWidget *window, *page;

  adw_init ();
  window = gtk_window_new ();
  page = tm_report_page_new ();
  gtk_window_set_child (GTK_WINDOW (window), page);
  gtk_window_set_default_size (GTK_WINDOW (window), 1280, 720);
  tm_report_page_set_document (TM_REPORT_PAGE (page), document);
  measure (figures, window, TM_REPORT_PAGE (page));
  gtk_window_destroy (GTK_WINDOW (window));
  while (G_OBJECT (document)->ref_count > 1)
    g_main_context_iteration (NULL, TRUE);
  tm_scratch_remove (folder);
  g_steal_pointer (&folder);
  return tm_figures_finish (figures);
}
