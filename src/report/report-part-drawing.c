/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-drawing: the drawings that the job keeps, each on a page of its own, with the balloons that
 * number its characteristics and what was found of each.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-balloon.h"
#include "plot-drawing.h"
#include "plot-grid.h"
#include "report-part.h"
#include "report-words.h"

#define LONGEST_NAME 80 /* letters, in a caption */

/* Text size of balloons, points: smaller where many would cover the drawing. */
#define BALLOON_TEXT  7.5
#define BALLOON_SMALL 6.0
#define MANY_BALLOONS 60

/* -------- Balloons -------- */

/* As tm_judge_feature() ranks them. */
static guint
get_rank (TmVerdict verdict)
{
  static const guint ranks[TM_N_VERDICTS] = {
    [TM_VERDICT_IN] = 1, [TM_VERDICT_NOT_MEASURED] = 2, [TM_VERDICT_TOO_CLOSE] = 3, [TM_VERDICT_OUT] = 4
  };

  return ranks[verdict];
}

/* Larger is up, smaller is down. */
static TmPoint
find_point (const TmReportLine *line)
{
  const TmPoint side = tm_grid_cell (&line->judgement, TRUE).point;

  return side == TM_POINT_RIGHT ? TM_POINT_UP : side == TM_POINT_LEFT ? TM_POINT_DOWN : TM_POINT_NONE;
}

/* The worst line of the mark's place, or of all; none: nothing is told. */
static void
set_verdict (const TmReportContent *content, const TmFeature *feature, guint place, TmBalloon *balloon)
{
  guint worst = 0;

  balloon->plain = TRUE;
  balloon->point = TM_POINT_NONE;
  balloon->verdict = TM_VERDICT_NOT_MEASURED;
  for (guint i = 0; i < content->lines->len; i++)
    {
      const TmReportLine *line = g_ptr_array_index (content->lines, i);

      if (line->feature != feature || (place != 0 && place != line->place)
          || get_rank (line->judgement.verdict) <= worst)
        continue;
      worst = get_rank (line->judgement.verdict);
      balloon->plain = FALSE;
      balloon->verdict = line->judgement.verdict;
      balloon->point = find_point (line);
    }
}

static double
get_share (const TmQuantity *share)
{
  return (double)share->count / (double)tm_unit_counts (TM_UNIT_HARDNESS);
}

/* A balloon, in shares of the page, and whose it is. */
typedef struct {
  TmBalloon balloon;
  const TmFeature *feature;
  guint place;
} Spot;

/* The text is the document's. */
static Spot
make_spot (TmParts *parts, const TmBalloonMark *mark)
{
  const TmFeature *feature = tm_job_find_feature (parts->job, mark->feature);
  g_autofree char *text = tm_balloon_text (feature, mark->place);
  TmBalloon balloon = {
    .x = get_share (&mark->x),
    .y = get_share (&mark->y),
    .led = mark->to_x.given,
    .to_x = get_share (&mark->to_x),
    .to_y = get_share (&mark->to_y),
    .text = tm_report_text (parts->document, text),
  };

  set_verdict (parts->content, feature, mark->place, &balloon);
  return (Spot) { balloon, feature, mark->place };
}

/* -------- The picture -------- */

typedef struct {
  TmDrawingPage *page;
  GArray *spots; /* Spot */
  const char *name;
} Picture;

static void
free_picture (gpointer data)
{
  Picture *picture = data;

  tm_drawing_page_unref (picture->page);
  g_array_unref (picture->spots);
  g_free (picture);
}

static void
draw_cb (cairo_t *cr, double width, double height, gpointer data)
{
  const Picture *picture = data;
  TmTheme theme = *tm_theme_paper ();
  const double scale = width / tm_drawing_page_width (picture->page);

  theme.text_size = picture->spots->len > MANY_BALLOONS ? BALLOON_SMALL : BALLOON_TEXT;
  cairo_save (cr);
  cairo_scale (cr, scale, scale);
  (void)tm_drawing_page_draw (picture->page, cr);
  cairo_restore (cr);
  for (guint i = 0; i < picture->spots->len; i++)
    {
      TmBalloon balloon = g_array_index (picture->spots, Spot, i).balloon;

      balloon.x *= width;
      balloon.to_x *= width;
      balloon.y *= height;
      balloon.to_y *= height;
      tm_balloon_draw (&balloon, cr, &theme);
    }
}

/* Each balloon with what it tells. */
static char *
describe_cb (gpointer data)
{
  const Picture *picture = data;
  const guint n = picture->spots->len;
  g_autoptr (GString) words = g_string_new (NULL);

  g_string_append_printf (words, ngettext ("Drawing %s with %u balloon", "Drawing %s with %u balloons", n),
                          picture->name, n);
  for (guint i = 0; i < n; i++)
    {
      const Spot *spot = &g_array_index (picture->spots, Spot, i);
      g_autofree char *one
          = tm_balloon_words (spot->feature, spot->place, spot->balloon.verdict, spot->balloon.plain);

      g_string_append_printf (words, "%s%s", i == 0 ? ": " : "; ", one);
    }
  return g_string_free (g_steal_pointer (&words), FALSE);
}

/* -------- The part -------- */

typedef struct {
  const TmDrawing *drawing;
  const char *revision;
  const char *reason; /* why it is not shown */
} Shown;

static char *
say_caption (gconstpointer data)
{
  const Shown *shown = data;
  g_autofree char *name = tm_report_shorten (shown->drawing->name, LONGEST_NAME);
  g_autofree char *sheet = tm_report_shorten (shown->drawing->sheet, LONGEST_NAME);
  g_autofree char *revision = tm_report_shorten (shown->revision, LONGEST_NAME);

  if (*sheet != '\0' && *revision != '\0')
    return g_strdup_printf (_ ("%s, sheet %s, revision %s"), name, sheet, revision);
  if (*sheet != '\0')
    return g_strdup_printf (_ ("%s, sheet %s"), name, sheet);
  return *revision != '\0' ? g_strdup_printf (_ ("%s, revision %s"), name, revision) : g_strdup (name);
}

static char *
say_not_shown (gconstpointer data)
{
  const Shown *shown = data;
  g_autofree char *name = tm_report_shorten (shown->drawing->name, LONGEST_NAME);

  if (shown->reason == NULL)
    return g_strdup_printf (_ ("Drawing %s belongs to this report and is kept elsewhere."), name);
  return g_strdup_printf (_ ("Drawing %s cannot be shown: %s."), name, shown->reason);
}

static GArray *
list_spots (TmParts *parts, const TmDrawing *drawing)
{
  GArray *spots = g_array_new (FALSE, FALSE, sizeof (Spot));

  for (guint i = 0; i < parts->job->balloon_marks->len; i++)
    {
      const TmBalloonMark *mark = g_ptr_array_index (parts->job->balloon_marks, i);

      if (g_str_equal (mark->drawing, drawing->name)
          && tm_job_find_feature (parts->job, mark->feature) != NULL)
        {
          const Spot spot = make_spot (parts, mark);

          g_array_append_val (spots, spot);
        }
    }
  return spots;
}

static void
add_picture (TmParts *parts, const TmDrawing *drawing, TmDrawingPage *page)
{
  const Shown shown = { drawing, tm_job_drawing_revision (parts->job), NULL };
  g_autofree char *caption = tm_part_both (parts, say_caption, &shown);
  g_autofree char *name = NULL;
  Picture *data = g_new (Picture, 1);
  const TmReportPicture picture = {
    .draw = draw_cb,
    .describe = describe_cb,
    .data = data,
    .free = free_picture,
    .aspect = tm_drawing_page_height (page) / tm_drawing_page_width (page),
    .fills_page = TRUE,
  };

  *data = (Picture) { page, list_spots (parts, drawing), tm_report_text (parts->document, drawing->name) };
  g_ptr_array_add (parts->drawn, (gpointer)drawing);
  name = g_strdup_printf ("drawing-%u", parts->drawn->len);
  tm_report_add_picture (parts->document, &picture, caption, name);
}

/* Opens what can be, and says of the others why not. */
static GPtrArray *
open_pages (TmParts *parts)
{
  const GPtrArray *drawings = parts->job->drawings;
  GPtrArray *pages = g_ptr_array_new ();

  for (guint i = 0; i < drawings->len; i++)
    {
      const TmDrawing *drawing = g_ptr_array_index (drawings, i);
      g_autoptr (GError) error = NULL;
      TmDrawingPage *page
          = drawing->content != NULL ? tm_drawing_page_open (drawing->content, drawing->page, &error) : NULL;
      const Shown shown = { drawing, "", error != NULL ? error->message : NULL };

      g_ptr_array_add (pages, page);
      if (page == NULL)
        tm_part_say (parts, say_not_shown, &shown, FALSE);
    }
  return pages;
}

/* One that stands for one place of several. */
static gboolean
has_place_balloon (const TmJob *job)
{
  for (guint i = 0; i < job->balloon_marks->len; i++)
    {
      const TmBalloonMark *mark = g_ptr_array_index (job->balloon_marks, i);
      const TmFeature *feature = tm_job_find_feature (job, mark->feature);

      if (mark->place > 0 && feature != NULL && feature->places > 1)
        return TRUE;
    }
  return FALSE;
}

void
tm_part_drawing (TmParts *parts)
{
  const GPtrArray *drawings = parts->job->drawings;
  g_autoptr (GPtrArray) pages = NULL;
  gboolean any = FALSE;

  if (drawings->len == 0)
    return;
  tm_part_section (parts, N_ ("Drawing"), "drawing", TRUE);
  pages = open_pages (parts);
  for (guint i = 0; i < pages->len; i++)
    any |= g_ptr_array_index (pages, i) != NULL;
  if (any && parts->content->lines->len > 0)
    tm_part_say_text (
        parts,
        N_ ("Each balloon tells the worst verdict of its characteristic: with a dot it is in, with a "
            "broken ring too close to call, with a thick ring and an arrow or a square out; a thin "
            "ring alone is not measured here."),
        TRUE);
  if (any && parts->content->lines->len > 0 && has_place_balloon (parts->job))
    tm_part_say_text (parts,
                      N_ ("A number such as 6.2 is the second place of characteristic 6; it tells the "
                          "verdict of that place."),
                      TRUE);
  for (guint i = 0; i < pages->len; i++)
    if (g_ptr_array_index (pages, i) != NULL)
      add_picture (parts, g_ptr_array_index (drawings, i), g_ptr_array_index (pages, i));
}

char *
tm_part_drawing_name (const TmParts *parts, const TmFeature *feature, guint place)
{
  const GPtrArray *marks = parts->job->balloon_marks;

  for (guint i = 0; i < marks->len; i++)
    {
      const TmBalloonMark *mark = g_ptr_array_index (marks, i);
      guint at;

      if (g_str_equal (mark->feature, feature->balloon) && (mark->place == 0 || mark->place == place)
          && g_ptr_array_find (parts->drawn, tm_job_find_drawing (parts->job, mark->drawing), &at))
        return g_strdup_printf ("drawing-%u", at + 1);
    }
  return NULL;
}
