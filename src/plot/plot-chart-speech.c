/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words beside the points of a chart, none over another.
 */

#include <math.h>

#include "plot-chart-private.h"

#define MOST_WORDS 8    /* more on one picture is a wall of text; the description has them all */
#define WORD_SCALE 0.85 /* of ordinary text */

/* -------- Room -------- */

static gboolean
overlaps (const TmChartBox *a, const TmChartBox *b)
{
  return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height
         && b->y < a->y + a->height;
}

static gboolean
is_free (const TmChartSpeech *speech, const TmChartBox *box)
{
  const TmFrame *frame = speech->frame;

  if (box->x < frame->left || box->x + box->width > frame->right || box->y < frame->top
      || box->y + box->height > frame->bottom)
    return FALSE;
  for (guint i = 0; i < speech->boxes->len; i++)
    if (overlaps (box, &g_array_index (speech->boxes, TmChartBox, i)))
      return FALSE;
  return TRUE;
}

/* What is drawn between two places: its top and bottom, as far as it lies in the area. */
static gboolean
find_ink (const TmChartSpeech *speech, double from, double to, double *top, double *bottom)
{
  const TmFrame *frame = speech->frame;
  const double slot = tm_frame_slot (frame);
  const guint first = tm_chart_find_item (speech->plot, (from - frame->left) / slot - 1.0);
  const guint end = tm_chart_find_item (speech->plot, (to - frame->left) / slot);
  const TmSpan low = tm_envelope_span (speech->low, first, end);
  const TmSpan high = tm_envelope_span (speech->high, first, end);

  if (low.n == 0 || high.n == 0)
    return FALSE;
  *top = tm_frame_keep (frame, tm_frame_at (frame, speech->base + high.high));
  *bottom = tm_frame_keep (frame, tm_frame_at (frame, speech->base + low.low));
  return TRUE;
}

/* At the point's own height, where nothing is drawn. */
static gboolean
place_beside (const TmChartSpeech *speech, double x, double y, double width, TmChartBox *out)
{
  const double height = speech->frame->pen.line * WORD_SCALE, gap = speech->frame->pen.size * 0.8;

  for (guint left = 0; left < 2; left++)
    {
      const TmChartBox box = { left ? x - gap - width : x + gap, y - height / 2.0, width, height };
      double top = INFINITY, bottom = -INFINITY;

      find_ink (speech, box.x, box.x + width, &top, &bottom);
      if ((top > box.y + height || bottom < box.y) && is_free (speech, &box))
        {
          *out = box;
          return TRUE;
        }
    }
  return FALSE;
}

/* The nearest of: above or below all that is drawn there, over the point, right or left of it. */
static gboolean
place_words (const TmChartSpeech *speech, double x, double y, double width, TmChartBox *out)
{
  static const double shifts[] = { -0.5, -0.08, -0.92 };
  const double height = speech->frame->pen.line * WORD_SCALE, gap = speech->frame->pen.size * 0.8;
  double nearest = INFINITY;

  for (gsize i = 0; i < G_N_ELEMENTS (shifts); i++)
    {
      TmChartBox box = { x + shifts[i] * width, 0.0, width, height };
      double top = y, bottom = y;

      box.x = CLAMP (box.x, speech->frame->left, MAX (speech->frame->left, speech->frame->right - width));
      find_ink (speech, box.x, box.x + width, &top, &bottom);
      for (guint below = 0; below < 2; below++)
        for (guint step = 0; step < 4; step++)
          {
            const double apart = gap + step * height;
            double away;

            box.y = below ? MAX (bottom, y) + apart : MIN (top, y) - apart - height;
            away = fabs (box.y + height / 2.0 - y) + fabs (box.x + width / 2.0 - x) * 0.2;
            if (away < nearest && is_free (speech, &box))
              {
                nearest = away;
                *out = box;
              }
          }
    }
  return isfinite (nearest) || place_beside (speech, x, y, width, out);
}

/* Words keep off the limits. */
static void
keep_line_clear (TmChartSpeech *speech, double count)
{
  const TmFrame *frame = speech->frame;
  const double y = tm_frame_at (frame, count);
  const TmChartBox box = { frame->left, y - 2.0, frame->right - frame->left, 4.0 };

  if (tm_frame_holds (frame, y))
    g_array_append_val (speech->boxes, box);
}

void
tm_chart_keep_limits_clear (TmChartSpeech *speech)
{
  const TmLimits *limits = &speech->plot->band.limits;

  if (limits->has_lower)
    keep_line_clear (speech, (double)limits->lower);
  if (limits->has_upper)
    keep_line_clear (speech, (double)limits->upper);
}

/* -------- Saying -------- */

static void
draw_leader (const TmChartSpeech *speech, double x, double y, const TmChartBox *box)
{
  const gboolean above = box->y + box->height < y;
  const gboolean beside = box->y <= y && y <= box->y + box->height;
  const double from = above ? y - speech->frame->pen.size * 0.55 : y + speech->frame->pen.size * 0.55;
  const double to = above ? box->y + box->height : box->y;

  if (!beside && (to - from) * (above ? -1.0 : 1.0) > 2.0)
    tm_frame_line (speech->frame, x, from, CLAMP (x, box->x + 3.0, box->x + box->width - 3.0), to, 0.8,
                   &speech->frame->pen.theme->text, 0.6);
}

gboolean
tm_chart_draw_say (TmChartSpeech *speech, double x, double y, const char *text)
{
  TmPen *pen = &speech->frame->pen;
  TmTextStyle style = { .scale = WORD_SCALE };
  const double width
      = MIN (tm_text_width (pen, text, &style), (speech->frame->right - speech->frame->left) * 0.6);
  TmChartBox box;

  if (!tm_frame_is_tall (speech->frame) || speech->n_words >= MOST_WORDS
      || !place_words (speech, x, y, width + 2.0, &box))
    return FALSE;
  draw_leader (speech, x, y, &box);
  style.max_width = width + 1.0;
  /* A ground in place of an edge about each letter, which takes ten times as long. */
  tm_frame_fill (speech->frame, box.x - 1.0, box.y + 1.0, box.width + 2.0, box.height - 2.0,
                 &pen->theme->surface, 0.75);
  tm_text_draw (pen, text, box.x, box.y + box.height / 2.0, &style);
  g_array_append_val (speech->boxes, box);
  speech->n_words++;
  return TRUE;
}
