/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The palette is the published one, and words can be read on every ground they stand on.
 */

#include <glib.h>
#include <math.h>
#include <string.h>

#include "plot-theme.h"

static const TmTheme *
get_theme (guint index)
{
  return index == 0 ? tm_theme_light () : index == 1 ? tm_theme_dark () : tm_theme_paper ();
}

static guint32
get_hex (const TmColour *colour)
{
  return (guint32)lround (colour->red * 255.0) << 16 | (guint32)lround (colour->green * 255.0) << 8
         | (guint32)lround (colour->blue * 255.0);
}

/* Okabe and Ito, "Color Universal Design", 2008: blue, orange, vermilion, bluish green, reddish
 * purple. */
static void
test_palette (void)
{
  for (guint i = 0; i < 3; i++)
    {
      const TmTheme *theme = get_theme (i);
      g_assert_cmphex (get_hex (&theme->in), ==, 0x0072B2);
      g_assert_cmphex (get_hex (&theme->close), ==, 0xE69F00);
      g_assert_cmphex (get_hex (&theme->out), ==, 0xD55E00);
      g_assert_cmphex (get_hex (&theme->mate), ==, 0x009E73);
      g_assert_cmphex (get_hex (&theme->planned), ==, 0xCC79A7);
      g_assert_cmphex (get_hex (&theme->band), ==, 0x0072B2);
      g_assert_cmpfloat (theme->text_size, >, 0.0);
      g_assert_nonnull (theme->font);
    }
  g_assert_true (tm_theme_dark ()->dark);
  g_assert_false (tm_theme_light ()->dark);
  g_assert_cmphex (get_hex (&tm_theme_paper ()->surface), ==, 0xFFFFFF);
  g_assert_cmphex (get_hex (&tm_theme_paper ()->text), ==, 0x000000);
}

/* Relative luminance and contrast: WCAG 2.1. */
static double
get_linear (double channel)
{
  return channel <= 0.03928 ? channel / 12.92 : pow ((channel + 0.055) / 1.055, 2.4);
}

static double
get_luminance (const TmColour *colour)
{
  return 0.2126 * get_linear (colour->red) + 0.7152 * get_linear (colour->green)
         + 0.0722 * get_linear (colour->blue);
}

static double
get_contrast (const TmColour *a, const TmColour *b)
{
  const double first = get_luminance (a), second = get_luminance (b);

  return (MAX (first, second) + 0.05) / (MIN (first, second) + 0.05);
}

static TmColour
lay_over (const TmColour *ground, const TmColour *colour)
{
  const double a = colour->alpha;

  return (TmColour) { ground->red + (colour->red - ground->red) * a,
                      ground->green + (colour->green - ground->green) * a,
                      ground->blue + (colour->blue - ground->blue) * a, 1.0 };
}

static void
test_contrast (void)
{
  for (guint i = 0; i < 3; i++)
    {
      const TmTheme *theme = get_theme (i);
      const TmColour band = lay_over (&theme->surface, &theme->band);

      /* WCAG 2.1: 4.5 for text; the small "proven in" stands on the band. */
      g_assert_cmpfloat (get_contrast (&theme->text, &theme->surface), >=, 7.0);
      g_assert_cmpfloat (get_contrast (&theme->text, &band), >=, 7.0);
      g_assert_cmpfloat (get_contrast (&theme->dim, &theme->surface), >=, 4.5);
      /* Half the way for a hint that also stands in the describing words. */
      g_assert_cmpfloat (get_contrast (&theme->dim, &band), >=, 3.0);
      /* 3 for marks, which are told apart by shape as well; orange on white has 2.2 and is hatched,
       * and is outlined by its own guard. */
      g_assert_cmpfloat (get_contrast (&theme->in, &theme->surface), >=, 3.0);
      g_assert_cmpfloat (get_contrast (&theme->out, &theme->surface), >=, 3.0);
      g_assert_cmpfloat (get_contrast (&theme->close, &theme->surface), >=, 2.0);
    }
}

/* The screen's style sheet names the same colours. */
static void
test_style_sheet (void)
{
  const TmTheme *theme = tm_theme_light ();
  const struct {
    const char *name;
    const TmColour *colour;
  } colours[] = { { "tm_in", &theme->in },
                  { "tm_close", &theme->close },
                  { "tm_out", &theme->out },
                  { "tm_mate", &theme->mate },
                  { "tm_planned", &theme->planned } };
  g_autofree char *path = g_build_filename (g_getenv ("TM_SAMPLE_JOBS"), "..", "ui", "style.css", NULL);
  g_autofree char *css = NULL;

  g_assert_true (g_file_get_contents (path, &css, NULL, NULL));
  for (gsize i = 0; i < G_N_ELEMENTS (colours); i++)
    {
      g_autofree char *line
          = g_strdup_printf ("@define-color %s #%06X;", colours[i].name, get_hex (colours[i].colour));
      g_assert_nonnull (strstr (css, line));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/theme/palette", test_palette);
  g_test_add_func ("/theme/contrast", test_contrast);
  g_test_add_func ("/theme/style-sheet", test_style_sheet);
  return g_test_run ();
}
