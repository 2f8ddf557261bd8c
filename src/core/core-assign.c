/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-assign: the assignment of least total cost.
 *
 * Each row and each column has a price; what an edge costs beyond the prices of its ends is never below
 * zero, and zero along the edges of the assignment: that proves it the cheapest.  One row after the other
 * is added along the shortest path, by those costs, from it to a column that is free (Dijkstra), and the
 * prices follow.
 */

#include "core-pairing.h"

#include <math.h>

typedef struct {
  const double *cost; /* of each row, column after column */
  guint n_rows;       /* at most n_columns */
  guint n_columns;
  double *row_price;
  double *column_price; /* 0 of a column that is free, never above */
  guint *row_of;        /* of a column, or NONE */
  double *distance;     /* of a column from the row that is added */
  guint *before;        /* of a column: the one before it on the way, or NONE */
  gboolean *done;       /* its distance is final */
} Assignment;

static void
start (Assignment *self, const double *cost, guint n_rows, guint n_columns)
{
  *self = (Assignment) {
    .cost = cost,
    .n_rows = n_rows,
    .n_columns = n_columns,
    .row_price = g_new0 (double, n_rows),
    .column_price = g_new0 (double, n_columns),
    .row_of = g_new (guint, n_columns),
    .distance = g_new (double, n_columns),
    .before = g_new (guint, n_columns),
    .done = g_new (gboolean, n_columns),
  };
  for (guint column = 0; column < n_columns; column++)
    self->row_of[column] = TM_ASSIGN_NONE;
}

static void
finish (Assignment *self)
{
  g_free (self->row_price);
  g_free (self->column_price);
  g_free (self->row_of);
  g_free (self->distance);
  g_free (self->before);
  g_free (self->done);
}

/* Looks from @row, that @so_far leads to by way of the column @by, at all columns that are not final.
 * Returns the nearest of them; of several, one that is free. */
static guint
look_around (Assignment *self, guint row, guint by, double so_far)
{
  const double *cost = &self->cost[(gsize)row * self->n_columns];
  double base = so_far - self->row_price[row];
  double least = INFINITY;
  guint nearest = TM_ASSIGN_NONE;

  for (guint column = 0; column < self->n_columns; column++)
    {
      double distance = base + (cost[column] - self->column_price[column]);

      if (self->done[column])
        continue;
      if (distance < self->distance[column])
        {
          self->distance[column] = distance;
          self->before[column] = by;
        }
      distance = self->distance[column];
      if (nearest == TM_ASSIGN_NONE || distance < least
          || (distance <= least && self->row_of[column] == TM_ASSIGN_NONE))
        {
          least = distance;
          nearest = column;
        }
    }
  return nearest;
}

/* The free column that is nearest to @row. */
static guint
find_free_column (Assignment *self, guint row)
{
  guint column = TM_ASSIGN_NONE;
  double so_far = 0;

  for (guint i = 0; i < self->n_columns; i++)
    {
      self->distance[i] = INFINITY;
      self->before[i] = TM_ASSIGN_NONE;
      self->done[i] = FALSE;
    }
  do
    {
      column = look_around (self, row, column, so_far);
      self->done[column] = TRUE;
      so_far = self->distance[column];
      row = self->row_of[column];
    }
  while (row != TM_ASSIGN_NONE);
  return column;
}

/* What was passed on the way to @end becomes dearer for its rows, by how much nearer it was. */
static void
move_prices (Assignment *self, guint added, guint end)
{
  self->row_price[added] += self->distance[end];
  for (guint column = 0; column < self->n_columns; column++)
    {
      double nearer = self->distance[end] - self->distance[column];

      if (!self->done[column] || column == end)
        continue;
      self->column_price[column] -= nearer;
      self->row_price[self->row_of[column]] += nearer;
    }
}

static void
add_row (Assignment *self, guint row)
{
  guint end = find_free_column (self, row);

  move_prices (self, row, end);
  for (guint column = end; column != TM_ASSIGN_NONE; column = self->before[column])
    {
      guint by = self->before[column];

      self->row_of[column] = by == TM_ASSIGN_NONE ? row : self->row_of[by];
    }
}

static double *
turn_over (const double *cost, guint n_rows, guint n_columns)
{
  double *turned = g_new (double, (gsize)n_rows *n_columns);

  for (gsize row = 0; row < n_rows; row++)
    for (gsize column = 0; column < n_columns; column++)
      turned[column * n_rows + row] = cost[row * n_columns + column];
  return turned;
}

/* Rows at most as many as columns. */
static void
solve (const double *cost, guint n_rows, guint n_columns, gboolean turned, guint *column_of_row)
{
  Assignment self;

  start (&self, cost, n_rows, n_columns);
  for (guint row = 0; row < n_rows; row++)
    add_row (&self, row);
  for (guint column = 0; column < n_columns; column++)
    {
      if (turned)
        column_of_row[column] = self.row_of[column];
      else if (self.row_of[column] != TM_ASSIGN_NONE)
        column_of_row[self.row_of[column]] = column;
    }
  finish (&self);
}

double
tm_assign (const double *cost, guint n_rows, guint n_columns, guint *column_of_row)
{
  double total = 0;

  g_return_val_if_fail (column_of_row != NULL || n_rows == 0, 0);
  g_return_val_if_fail (cost != NULL || n_rows == 0 || n_columns == 0, 0);

  for (guint row = 0; row < n_rows; row++)
    column_of_row[row] = TM_ASSIGN_NONE;
  if (n_rows <= n_columns)
    {
      solve (cost, n_rows, n_columns, FALSE, column_of_row);
    }
  else if (n_columns > 0)
    {
      g_autofree double *turned = turn_over (cost, n_rows, n_columns);

      solve (turned, n_columns, n_rows, TRUE, column_of_row);
    }
  for (guint row = 0; row < n_rows; row++)
    if (column_of_row[row] != TM_ASSIGN_NONE)
      total += cost[(gsize)row * n_columns + column_of_row[row]];
  return total;
}
