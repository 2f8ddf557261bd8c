/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-theme.h"

/* 0xRRGGBB as published. */
#define RGB(hex)                                                                   \
  {                                                                                \
    (double)(((hex) >> 16) & 0xff) / 255.0, (double)(((hex) >> 8) & 0xff) / 255.0, \
        (double)((hex)&0xff) / 255.0, 1.0                                          \
  }

/* Okabe and Ito, "Color Universal Design", 2008: blue, orange, vermilion, bluish green, reddish
 * purple. */
#define IN      RGB (0x0072B2)
#define CLOSE   RGB (0xE69F00)
#define OUT     RGB (0xD55E00)
#define MATE    RGB (0x009E73)
#define PLANNED RGB (0xCC79A7)

/* The blue, thin enough to read text on. */
#define BAND(opacity)                                        \
  {                                                          \
    0.0, (double)0x72 / 255.0, (double)0xB2 / 255.0, opacity \
  }

#define FONT "Cantarell, Noto Sans, DejaVu Sans, sans-serif"

static const TmTheme light = {
  .dark = FALSE,
  .font = FONT,
  .text_size = 13.0,
  .text = RGB (0x2A2A2A),
  .dim = RGB (0x6B6B6B),
  .surface = RGB (0xFFFFFF),
  .in = IN,
  .band = BAND (0.24),
  .close = CLOSE,
  .out = OUT,
  .mate = MATE,
  .planned = PLANNED,
};

static const TmTheme dark = {
  .dark = TRUE,
  .font = FONT,
  .text_size = 13.0,
  .text = RGB (0xFFFFFF),
  .dim = RGB (0xA6A6A6),
  .surface = RGB (0x1E1E1E),
  .in = IN,
  .band = BAND (0.24),
  .close = CLOSE,
  .out = OUT,
  .mate = MATE,
  .planned = PLANNED,
};

static const TmTheme paper = {
  .dark = FALSE,
  .font = FONT,
  .text_size = 9.0,
  .text = RGB (0x000000),
  .dim = RGB (0x555555),
  .surface = RGB (0xFFFFFF),
  .in = IN,
  .band = BAND (0.20),
  .close = CLOSE,
  .out = OUT,
  .mate = MATE,
  .planned = PLANNED,
};

const TmTheme *
tm_theme_light (void)
{
  return &light;
}

const TmTheme *
tm_theme_dark (void)
{
  return &dark;
}

const TmTheme *
tm_theme_paper (void)
{
  return &paper;
}
