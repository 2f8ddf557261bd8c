/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-theme: the one palette (Okabe and Ito, Color Universal Design, 2008) and the text colours of
 * light, dark and paper.  ui/style.css mirrors it; a test holds the two together.
 */

#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

typedef struct {
  double red, green, blue, alpha; /* 0..1 */
} TmColour;

typedef struct {
  gboolean dark;
  const char *font; /* Pango family list */
  double text_size; /* device-independent pixels or points of ordinary text */
  TmColour text;
  TmColour dim;     /* secondary text, grid lines */
  TmColour surface; /* behind the plot */
  TmColour in;
  TmColour band; /* the proven zone's fill */
  TmColour close;
  TmColour out;
  TmColour mate;
  TmColour planned;
} TmTheme;

const TmTheme *tm_theme_light (void);
const TmTheme *tm_theme_dark (void);
const TmTheme *tm_theme_paper (void); /* white surface, black text */

G_END_DECLS
