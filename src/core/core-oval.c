/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-oval: the oval that fits diameters read in several directions best.
 */

#include <gsl/gsl_multifit.h>
#include <math.h>
#include <string.h>

#include "core-contact.h"
#include "core-form.h"

#define N_DIAMETERS  6
#define N_PARAMETERS 3 /* D0, a, b */

/* A two-point size and its direction; the size is held as the distance from the fit's reference. */
typedef struct {
  const char *text; /* of its station */
  TmStation station;
  const TmLocalSize *local;
  double size;
} Spot;

static gboolean
is_at_depth (const TmStation *station, const TmStation *at)
{
  return station->depth == at->depth
         && (station->depth != TM_DEPTH_LENGTH || station->at.count == at->at.count);
}

/* Sizes that a direction was read for and that a two-point gauge may have taken. */
static GArray *
list_spots (const TmJob *job, const TmFeature *feature, const TmSizes *sizes)
{
  GArray *spots = g_array_sized_new (FALSE, FALSE, sizeof (Spot), sizes->n_stations);

  for (guint i = 0; i < sizes->n_stations; i++)
    {
      const TmLocalSize *local = &sizes->stations[i];
      const TmContact contact = tm_method_contact (job, local->method_name);
      Spot spot = { .text = local->station, .local = local };

      if (contact == TM_CONTACT_THREE_POINT || contact == TM_CONTACT_FULL_FORM
          || !tm_station_read (local->station, feature->unit, &spot.station) || spot.station.hour == 0)
        continue;
      g_array_append_val (spots, spot);
    }
  return spots;
}

static guint
count_directions (const Spot *spots, guint n)
{
  gboolean seen[N_DIAMETERS] = { FALSE };
  guint count = 0;

  for (guint i = 0; i < n; i++)
    {
      gboolean *direction = &seen[tm_station_diameter (&spots[i].station)];

      count += !*direction;
      *direction = TRUE;
    }
  return count;
}

static double
find_angle (const Spot *spot)
{
  return tm_station_diameter (&spot->station) * G_PI / N_DIAMETERS;
}

static double
find_oval_size (const TmOval *oval, double angle)
{
  return oval->mean + oval->a * cos (2 * angle) + oval->b * sin (2 * angle);
}

/* Three directions make the three columns independent, so the fit always has one answer. */
static void
solve (const Spot *spots, guint n, TmOval *oval)
{
  gsl_matrix *columns = gsl_matrix_alloc (n, N_PARAMETERS);
  gsl_vector *sizes = gsl_vector_alloc (n), *found = gsl_vector_alloc (N_PARAMETERS);
  gsl_matrix *covariance = gsl_matrix_alloc (N_PARAMETERS, N_PARAMETERS);
  gsl_multifit_linear_workspace *workspace = gsl_multifit_linear_alloc (n, N_PARAMETERS);
  double squares;

  for (guint i = 0; i < n; i++)
    {
      const double angle = find_angle (&spots[i]);

      gsl_matrix_set (columns, i, 0, 1.0);
      gsl_matrix_set (columns, i, 1, cos (2 * angle));
      gsl_matrix_set (columns, i, 2, sin (2 * angle));
      gsl_vector_set (sizes, i, spots[i].size);
    }
  gsl_multifit_linear (columns, sizes, found, covariance, &squares, workspace);
  oval->mean = gsl_vector_get (found, 0);
  oval->a = gsl_vector_get (found, 1);
  oval->b = gsl_vector_get (found, 2);
  gsl_multifit_linear_free (workspace);
  gsl_matrix_free (covariance);
  gsl_vector_free (found);
  gsl_vector_free (sizes);
  gsl_matrix_free (columns);
}

static void
fit (Spot *spots, guint n, TmOval *oval)
{
  double direction;

  oval->reference = (gint64)(spots[0].local->sum / spots[0].local->n);
  for (guint i = 0; i < n; i++)
    spots[i].size = tm_local_size_beyond (spots[i].local, oval->reference);
  solve (spots, n, oval);
  oval->ovality = 2 * hypot (oval->a, oval->b);
  direction = atan2 (oval->b, oval->a) / 2 * 180 / G_PI;
  oval->direction = direction < 0 ? direction + 180 : direction;
  oval->residual = 0;
  for (guint i = 0; i < n; i++)
    oval->residual
        = MAX (oval->residual, fabs (spots[i].size - find_oval_size (oval, find_angle (&spots[i]))));
}

static void
clear_oval_cb (gpointer data)
{
  g_clear_pointer (&((TmOval *)data)->depth, g_free);
}

static void
start_oval (const Spot *first, guint n, TmOval *oval)
{
  *oval = (TmOval) { .station = first->station, .n_directions = count_directions (first, n) };
  oval->station.hour = 0;
  oval->depth = g_strndup (first->text, strcspn (first->text, "/"));
}

static int
compare_spots_cb (gconstpointer a, gconstpointer b)
{
  const Spot *one = a, *other = b;

  if (one->station.depth != other->station.depth)
    return one->station.depth < other->station.depth ? -1 : 1;
  if (one->station.at.count != other->station.at.count)
    return one->station.at.count < other->station.at.count ? -1 : 1;
  return one->local < other->local ? -1 : one->local > other->local;
}

/* How many spots from @first on lie at its depth. */
static guint
count_depth (const GArray *spots, guint first)
{
  const TmStation *at = &g_array_index (spots, Spot, first).station;
  guint n = 1;

  while (first + n < spots->len && is_at_depth (&g_array_index (spots, Spot, first + n).station, at))
    n++;
  return n;
}

GArray *
tm_form_ovals (const TmJob *job, const TmFeature *feature, const TmSizes *sizes)
{
  GArray *ovals = g_array_new (FALSE, FALSE, sizeof (TmOval));
  g_autoptr (GArray) spots = NULL;
  guint n;

  g_array_set_clear_func (ovals, clear_oval_cb);
  if (!tm_feature_is_diameter (feature))
    return ovals;
  spots = list_spots (job, feature, sizes);
  g_array_sort (spots, compare_spots_cb);
  for (guint first = 0; first < spots->len; first += n)
    {
      Spot *here = &g_array_index (spots, Spot, first);
      TmOval oval;

      n = count_depth (spots, first);
      if (count_directions (here, n) < N_PARAMETERS)
        continue;
      start_oval (here, n, &oval);
      fit (here, n, &oval);
      g_array_append_val (ovals, oval);
    }
  return ovals;
}
