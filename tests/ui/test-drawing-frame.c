/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which part of a page a view shows.  Needs no display.  Expected numbers are worked out by hand from the
 * sizes; the tolerance of a thousandth of a pixel is for floating point.
 */

#include "app-drawing-frame.h"

#include <math.h>

#define NEAR 0.001

static TmDrawingFrame
make_frame (void)
{
  TmDrawingFrame frame = TM_FRAME_NONE;

  tm_drawing_frame_set_view (&frame, 832, 632);
  tm_drawing_frame_set_page (&frame, 800, 400);
  return frame;
}

/* 832 - 2 x 16 pixels for 800 points: one to one, and as much above as below. */
static void
test_fit (void)
{
  TmDrawingFrame frame = make_frame ();

  g_assert_cmpfloat_with_epsilon (frame.scale, 1, NEAR);
  g_assert_cmpfloat_with_epsilon (frame.x, 16, NEAR);
  g_assert_cmpfloat_with_epsilon (frame.y, 116, NEAR);
  tm_drawing_frame_set_view (&frame, 432, 632);
  g_assert_cmpfloat_with_epsilon (frame.scale, 0.5, NEAR);
  g_assert_true (frame.fits);
}

static void
test_zoom_keeps_point (void)
{
  TmDrawingFrame frame = make_frame ();
  double before_x, before_y, after_x, after_y;

  tm_drawing_frame_to_page (&frame, 300, 250, &before_x, &before_y);
  tm_drawing_frame_zoom (&frame, 4, 300, 250);
  tm_drawing_frame_to_page (&frame, 300, 250, &after_x, &after_y);
  g_assert_cmpfloat_with_epsilon (frame.scale, 4, NEAR);
  g_assert_cmpfloat_with_epsilon (after_x, before_x, 1e-9);
  g_assert_cmpfloat_with_epsilon (after_y, before_y, 1e-9);
  g_assert_false (frame.fits);
}

static void
test_zoom_ends (void)
{
  TmDrawingFrame frame = make_frame ();

  tm_drawing_frame_zoom (&frame, 1e9, 10, 10);
  g_assert_cmpfloat_with_epsilon (frame.scale, TM_FRAME_MOST_SCALE, NEAR);
  tm_drawing_frame_zoom (&frame, 1e-9, 10, 10);
  g_assert_cmpfloat_with_epsilon (frame.scale, 1, NEAR);
  g_assert_true (frame.fits);
  tm_drawing_frame_zoom (&frame, 0, 10, 10);
  tm_drawing_frame_zoom (&frame, (double)NAN, 10, 10);
  g_assert_cmpfloat_with_epsilon (frame.scale, 1, NEAR);
}

/* No further than there is page: the margin stays free at each end. */
static void
test_pan_ends (void)
{
  TmDrawingFrame frame = make_frame ();

  tm_drawing_frame_pan (&frame, 500, 500);
  g_assert_cmpfloat_with_epsilon (frame.x, 16, NEAR);
  tm_drawing_frame_zoom (&frame, 2, 416, 316);
  tm_drawing_frame_pan (&frame, 1e6, 1e6);
  g_assert_cmpfloat_with_epsilon (frame.x, 16, NEAR);
  g_assert_cmpfloat_with_epsilon (frame.y, 16, NEAR);
  tm_drawing_frame_pan (&frame, -1e6, -1e6);
  g_assert_cmpfloat_with_epsilon (frame.x, 832 - 1600 - 16, NEAR);
  g_assert_cmpfloat_with_epsilon (frame.y, 632 - 800 - 16, NEAR);
}

static void
test_centre (void)
{
  TmDrawingFrame frame = make_frame ();
  double x, y;

  tm_drawing_frame_centre (&frame, 0.5, 0.5, 3);
  tm_drawing_frame_to_view (&frame, 0.5, 0.5, &x, &y);
  g_assert_cmpfloat_with_epsilon (x, 416, NEAR);
  g_assert_cmpfloat_with_epsilon (y, 316, NEAR);
  g_assert_cmpfloat_with_epsilon (frame.scale, 3, NEAR);
  /* What is larger already stays so. */
  tm_drawing_frame_centre (&frame, 0.4, 0.5, 2);
  g_assert_cmpfloat_with_epsilon (frame.scale, 3, NEAR);
}

static void
test_reveal (void)
{
  TmDrawingFrame frame = make_frame ();
  double x, y;

  tm_drawing_frame_centre (&frame, 0.5, 0.5, 4);
  tm_drawing_frame_reveal (&frame, 0.9, 0.5, 60);
  tm_drawing_frame_to_view (&frame, 0.9, 0.5, &x, &y);
  g_assert_cmpfloat_with_epsilon (x, 832 - 60, NEAR);
  g_assert_cmpfloat_with_epsilon (y, 316, NEAR);
}

/* Another size of the view leaves in the middle what was there. */
static void
test_resize (void)
{
  TmDrawingFrame frame = make_frame ();
  double share_x, share_y;

  tm_drawing_frame_centre (&frame, 0.3, 0.6, 5);
  tm_drawing_frame_set_view (&frame, 500, 300);
  tm_drawing_frame_to_page (&frame, 250, 150, &share_x, &share_y);
  g_assert_cmpfloat_with_epsilon (share_x, 0.3, 1e-9);
  g_assert_cmpfloat_with_epsilon (share_y, 0.6, 1e-9);
}

/* Nothing yet, or a view without size: no division by it. */
static void
test_nothing (void)
{
  TmDrawingFrame frame = TM_FRAME_NONE;
  double x, y;

  tm_drawing_frame_zoom (&frame, 2, 5, 5);
  tm_drawing_frame_pan (&frame, 2, 5);
  tm_drawing_frame_centre (&frame, 0.5, 0.5, 2);
  tm_drawing_frame_to_page (&frame, 5, 5, &x, &y);
  g_assert_false (tm_drawing_frame_is_set (&frame));
  g_assert_true (isfinite (x) && isfinite (y));
  tm_drawing_frame_set_page (&frame, 800, 400);
  tm_drawing_frame_set_view (&frame, 1, 1);
  g_assert_true (frame.scale > 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing-frame/fit", test_fit);
  g_test_add_func ("/drawing-frame/zoom-keeps-point", test_zoom_keeps_point);
  g_test_add_func ("/drawing-frame/zoom-ends", test_zoom_ends);
  g_test_add_func ("/drawing-frame/pan-ends", test_pan_ends);
  g_test_add_func ("/drawing-frame/centre", test_centre);
  g_test_add_func ("/drawing-frame/reveal", test_reveal);
  g_test_add_func ("/drawing-frame/resize", test_resize);
  g_test_add_func ("/drawing-frame/nothing", test_nothing);
  return g_test_run ();
}
