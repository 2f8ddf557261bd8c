/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where a new balloon is best put: of some places about the tip the one that covers least.
 */

#include "plot-balloon.h"

#include <math.h>

#define DIRECTIONS 16
#define DISTANCES  5
#define NEAREST    3.0 /* radii from the tip */
#define STEP       1.5 /* and from one distance to the next */
#define GAP        2.4 /* radii from one to the next of a row */

/* What is worse by how much: all but settles it, or only decides between equals. */
#define COST_OUTSIDE 1e6
#define COST_COVERS  1e3
#define COST_CROSSES 1e2

static double
find_distance_to_line (double x, double y, const TmBalloon *other)
{
  const double dx = other->to_x - other->x, dy = other->to_y - other->y;
  const double length = dx * dx + dy * dy;
  const double along
      = length > 0 ? CLAMP (((x - other->x) * dx + (y - other->y) * dy) / length, 0.0, 1.0) : 0.0;

  return hypot (x - other->x - along * dx, y - other->y - along * dy);
}

static double
find_side (double ax, double ay, double bx, double by, double x, double y)
{
  return (bx - ax) * (y - ay) - (by - ay) * (x - ax);
}

/* Whether the two leader lines cross. */
static gboolean
crosses (const TmBalloon *a, const TmBalloon *b)
{
  return find_side (a->x, a->y, a->to_x, a->to_y, b->x, b->y)
                 * find_side (a->x, a->y, a->to_x, a->to_y, b->to_x, b->to_y)
             < 0
         && find_side (b->x, b->y, b->to_x, b->to_y, a->x, a->y)
                    * find_side (b->x, b->y, b->to_x, b->to_y, a->to_x, a->to_y)
                < 0;
}

static double
find_cost_beside (const TmBalloon *balloon, const TmBalloon *other, const TmTheme *theme)
{
  const double radius = tm_balloon_radius (theme);
  const double wide
      = tm_balloon_half_width (balloon->text, theme) + tm_balloon_half_width (other->text, theme);
  double cost = 0.0;

  if (fabs (balloon->x - other->x) < wide + radius * 0.3 && fabs (balloon->y - other->y) < radius * 2.3)
    cost += COST_COVERS;
  if (other->led && find_distance_to_line (balloon->x, balloon->y, other) < radius * 1.2)
    cost += COST_CROSSES;
  if (balloon->led && find_distance_to_line (other->x, other->y, balloon) < radius * 1.2)
    cost += COST_CROSSES;
  if (balloon->led && other->led && crosses (balloon, other))
    cost += COST_CROSSES;
  return cost;
}

static double
find_cost (const TmBalloon *balloon, double width, double height, const TmBalloon *others, guint n,
           const TmTheme *theme)
{
  const double radius = tm_balloon_radius (theme), half = tm_balloon_half_width (balloon->text, theme);
  double cost = 0.0;

  if (balloon->x < half || balloon->y < radius || balloon->x > width - half || balloon->y > height - radius)
    cost += COST_OUTSIDE;
  for (guint i = 0; i < n; i++)
    cost += find_cost_beside (balloon, &others[i], theme);
  return cost;
}

static void
place_about (TmBalloon *balloon, double width, double height, const TmBalloon *others, guint n,
             const TmTheme *theme)
{
  const double radius = tm_balloon_radius (theme);
  TmBalloon best = *balloon;
  double least = INFINITY;

  for (guint i = 0; i < DISTANCES; i++)
    for (guint k = 0; k < DIRECTIONS; k++)
      {
        /* First up to the right, where a hand expects it; then to either side of that in turn. */
        const double turn = (k % 2 == 0 ? 1.0 : -1.0) * ((k + 1) / 2) * 2.0 * G_PI / DIRECTIONS;
        const double far = radius * (NEAREST + STEP * i);
        TmBalloon tried = *balloon;
        double cost;

        tried.x = balloon->to_x + far * cos (-G_PI / 4.0 + turn);
        tried.y = balloon->to_y + far * sin (-G_PI / 4.0 + turn);
        cost = find_cost (&tried, width, height, others, n, theme) + i * DIRECTIONS + k;
        if (cost < least)
          {
            least = cost;
            best = tried;
          }
      }
  *balloon = best;
}

/* In rows from the last of the others, or from the corner, to the first room that is free. */
static void
place_beside (TmBalloon *balloon, double width, double height, const TmBalloon *others, guint n,
              const TmTheme *theme)
{
  const double radius = tm_balloon_radius (theme), half = tm_balloon_half_width (balloon->text, theme);
  const double left = half + radius, step = radius * GAP;

  balloon->x = n > 0
                   ? others[n - 1].x + tm_balloon_half_width (others[n - 1].text, theme) + half + radius * 0.4
                   : left;
  balloon->y = n > 0 ? others[n - 1].y : radius * 2.0;
  while (balloon->y <= height - radius)
    {
      if (find_cost (balloon, width, height, others, n, theme) <= 0.0)
        return;
      balloon->x += step;
      if (balloon->x > width - half)
        {
          balloon->x = left;
          balloon->y += step;
        }
    }
}

void
tm_balloon_place (TmBalloon *balloon, double width, double height, const TmBalloon *others, guint n,
                  const TmTheme *theme)
{
  double half, radius;

  g_return_if_fail (balloon != NULL && theme != NULL && (others != NULL || n == 0));
  if (balloon->led)
    place_about (balloon, width, height, others, n, theme);
  else
    place_beside (balloon, width, height, others, n, theme);
  half = tm_balloon_half_width (balloon->text, theme);
  radius = tm_balloon_radius (theme);
  balloon->x = CLAMP (balloon->x, MIN (half, width / 2.0), MAX (width - half, width / 2.0));
  balloon->y = CLAMP (balloon->y, MIN (radius, height / 2.0), MAX (height - radius, height / 2.0));
}
