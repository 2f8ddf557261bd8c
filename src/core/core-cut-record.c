/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-cut-record: the readings and cuts of one place, drawn out of the job in the order in which they were
 * made, as numbers.
 */

#include <math.h>
#include <string.h>

#include "core-correction.h"
#include "core-cut-order.h"
#include "core-cut-work-private.h"
#include "core-form.h"
#include "core-uncertainty.h"

/* Two biases of one method are one error while what they are drawn from differs by less than this share: a
 * new calibration, or a temperature that was taken, makes another one. */
#define SAME_BIAS 0.1

gint64
tm_cut_changes_by (const TmFeature *feature, TmReads reads)
{
  return tm_feature_is_diameter (feature) && reads == TM_READS_RADIUS ? 2 : 1;
}

gboolean
tm_feature_is_cut_to_size (const TmFeature *feature)
{
  switch (feature->kind)
    {
    case TM_KIND_BORE:
    case TM_KIND_SHAFT:
    case TM_KIND_DIAMETER:
    case TM_KIND_LENGTH:
    case TM_KIND_DEPTH:
      return TRUE;
    case TM_KIND_ANGLE:
    case TM_KIND_POSITION:
    case TM_KIND_FORM:
    case TM_KIND_ROUGHNESS:
    case TM_KIND_HARDNESS:
    case TM_KIND_THREAD:
    case TM_KIND_ATTRIBUTE:
    case TM_KIND_NOTE:
    case TM_N_KINDS:
    default:
      return FALSE;
    }
}

/* -------- Cuts -------- */

/* A correction stands where the cut that it corrects was made: here, unless that was at another place. */
static guint
find_rank (const GPtrArray *cuts, const TmJob *job, guint number)
{
  guint rank = number;

  g_ptr_array_find ((GPtrArray *)cuts, tm_cut_order_first (job, g_ptr_array_index (cuts, number)), &rank);
  return rank;
}

static double
find_change (const TmFeature *feature, const TmCutRow *cut)
{
  return (double)cut->dialled.count * (double)tm_cut_changes_by (feature, cut->reads);
}

static gboolean
is_of_tool (const TmTool *tool, const TmCutRow *cut)
{
  return tool == NULL || *cut->tool == '\0' || strcmp (tool->name, cut->tool) == 0;
}

static void
collect_cuts (TmCutWork *work)
{
  const GPtrArray *cuts = tm_job_cuts_at (work->job, work->piece, work->feature, work->place);
  g_autofree const TmCutRow **by_rank = g_new0 (const TmCutRow *, cuts ? cuts->len + 1 : 1);

  for (guint i = 0; cuts != NULL && i < cuts->len; i++)
    {
      const TmCutRow *cut = g_ptr_array_index (cuts, i);

      if (tm_row_stands (&cut->row) && cut->dialled.given)
        by_rank[find_rank (cuts, work->job, i)] = cut;
    }
  for (guint i = 0; cuts != NULL && i < cuts->len; i++)
    {
      TmCutStep step = { .row = by_rank[i] };

      if (by_rank[i] == NULL)
        continue;
      step.change = MAX (0, find_change (work->feature, by_rank[i]));
      step.stand = tm_cut_order_stand (work->job, by_rank[i]);
      step.same_tool = is_of_tool (work->tool, by_rank[i]);
      step.outcome.cut = by_rank[i];
      g_array_append_val (work->steps, step);
    }
}

/* -------- Readings -------- */

static const char *
get_method_name (const TmFeature *feature, const TmReading *reading)
{
  return *reading->method != '\0' ? reading->method : feature->method;
}

static guint
find_part (const TmCutWork *work, const TmReading *reading, guint number)
{
  guint part = work->steps->len;

  while (part > 0
         && tm_cut_order_follows (work->job, &g_array_index (work->steps, TmCutStep, part - 1).stand, reading,
                                  number))
    part--;
  return part;
}

/* One text for one station, however it is written. */
static char *
make_station_key (const char *text, TmUnit unit)
{
  TmStation station;

  if (!tm_station_read (text, unit, &station))
    return g_strconcat ("?", text, NULL);
  return g_strdup_printf ("%d:%" G_GINT64_FORMAT ":%u", station.depth, station.at.count, station.hour);
}

static TmCutReading *
find_group (TmCutWork *work, GHashTable *index, guint part, const TmReading *reading)
{
  const char *method = get_method_name (work->feature, reading);
  g_autofree char *station = make_station_key (reading->station, work->feature->unit);
  g_autofree char *key = g_strdup_printf ("%u %s %s", part, station, method);
  guint found = GPOINTER_TO_UINT (g_hash_table_lookup (index, key));
  TmCutReading fresh = { .part = part, .station = reading->station, .method_name = method };

  if (found == 0)
    {
      fresh.raw.station = reading->station;
      fresh.raw.method_name = method;
      g_array_append_val (work->readings, fresh);
      found = work->readings->len;
      g_hash_table_insert (index, g_steal_pointer (&key), GUINT_TO_POINTER (found));
    }
  return &g_array_index (work->readings, TmCutReading, found - 1);
}

/* Sums first; `spread` holds the sum of squares until finish_group(). */
static void
add_to_group (TmCutWork *work, GHashTable *index, const TmReading *reading, guint number)
{
  TmCutReading *group = find_group (work, index, find_part (work, reading, number), reading);
  gint64 value = reading->value.count + tm_reading_correction (work->job, reading, NULL).total;
  double off = (double)(value - work->reference);

  group->raw.sum += value;
  group->raw.n++;
  group->raw.last = reading;
  group->raw.spread += off * off;
}

static void
finish_group (TmCutWork *work, TmCutReading *group)
{
  TmUseWhen when = tm_use_when (group->raw.last);
  TmMethodUse use = tm_method_use_at (work->job, work->feature, group->method_name, &when);
  TmUncertainty uncertainty;
  guint n = group->raw.n;
  double widening;

  group->size = tm_local_size_beyond (&group->raw, work->reference);
  group->raw.spread = n > 1 ? sqrt (MAX (0, group->raw.spread - n * group->size * group->size) / (n - 1)) : 0;
  uncertainty = tm_method_uncertainty (&use, &group->raw, NULL);
  group->known = isfinite (uncertainty.u);
  if (!group->known)
    return;
  /* Few degrees of freedom widen both parts, as the judgement does it. */
  widening = tm_t_quantile (0.95, uncertainty.dof) / tm_t_quantile (0.95, INFINITY);
  group->own = uncertainty.own * widening;
  group->shared = uncertainty.shared * widening;
}

static int
compare_parts (gconstpointer a, gconstpointer b)
{
  const TmCutReading *one = a, *other = b;

  return one->part < other->part ? -1 : one->part > other->part;
}

static void
collect_readings (TmCutWork *work)
{
  const GPtrArray *readings = tm_job_readings_at (work->job, work->piece, work->feature, work->place);
  g_autoptr (GHashTable) index = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; readings != NULL && i < readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (readings, i);

      if (tm_row_stands (&reading->row) && reading->value.given)
        add_to_group (work, index, reading, i);
    }
  for (guint i = 0; i < work->readings->len; i++)
    finish_group (work, &g_array_index (work->readings, TmCutReading, i));
  g_array_sort (work->readings, compare_parts);
}

/* -------- Stations and methods -------- */

/* The number of a bias; one beyond the list where there is none like it. */
static guint
find_method (const TmCutWork *work, const char *name, double shared)
{
  guint i;

  for (i = 0; i < work->methods->len; i++)
    {
      const TmCutMethod *each = &g_array_index (work->methods, TmCutMethod, i);

      if (strcmp (each->name, name) == 0
          && fabs (each->shared - shared) <= SAME_BIAS * MAX (each->shared, shared))
        break;
    }
  return i;
}

static void
number_method (TmCutWork *work, TmCutReading *group)
{
  TmCutMethod fresh = { group->method_name, group->shared };

  group->method = find_method (work, group->method_name, group->shared);
  if (group->method == work->methods->len)
    g_array_append_val (work->methods, fresh);
}

/* A station's newest size, for choosing among too many. */
typedef struct {
  guint number; /* in the order first read */
  double size;
} StationSize;

static int
compare_sizes (gconstpointer a, gconstpointer b)
{
  const StationSize *one = a, *other = b;

  return one->size < other->size ? -1 : one->size > other->size;
}

/* Of more stations than a belief holds the outermost ones decide: as many of the smallest as of the largest.
 */
static void
keep_outermost (TmCutWork *work, GArray *sizes)
{
  g_autofree guint *place = g_new (guint, sizes->len);
  guint half = TM_CUT_MOST_STATIONS / 2;

  g_array_sort (sizes, compare_sizes);
  for (guint i = 0; i < sizes->len; i++)
    {
      guint number = g_array_index (sizes, StationSize, i).number;
      gboolean is_kept = sizes->len <= TM_CUT_MOST_STATIONS || i < half || i >= sizes->len - half;

      if (sizes->len <= TM_CUT_MOST_STATIONS)
        place[number] = number;
      else
        place[number] = is_kept ? (i < half ? i : half + i - (sizes->len - half)) : TM_CUT_MOST_STATIONS;
    }
  for (guint i = 0; i < work->readings->len; i++)
    {
      TmCutReading *group = &g_array_index (work->readings, TmCutReading, i);

      group->at = group->known ? place[group->at] : TM_CUT_MOST_STATIONS;
    }
  work->n_stations = MIN (sizes->len, TM_CUT_MOST_STATIONS);
}

static void
number_stations (TmCutWork *work)
{
  g_autoptr (GHashTable) index = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GArray) sizes = g_array_new (FALSE, FALSE, sizeof (StationSize));

  for (guint i = 0; i < work->readings->len; i++)
    {
      TmCutReading *group = &g_array_index (work->readings, TmCutReading, i);
      g_autofree char *key = make_station_key (group->station, work->feature->unit);
      guint found = GPOINTER_TO_UINT (g_hash_table_lookup (index, key));
      StationSize fresh = { sizes->len, 0 };

      if (!group->known)
        continue;
      if (found == 0)
        {
          g_array_append_val (sizes, fresh);
          found = sizes->len;
          g_hash_table_insert (index, g_steal_pointer (&key), GUINT_TO_POINTER (found));
        }
      group->at = found - 1;
      g_array_index (sizes, StationSize, found - 1).size = group->size;
    }
  keep_outermost (work, sizes);
}

static gboolean
is_read_now (const TmCutWork *work, const char *station)
{
  for (guint i = 0; i < work->readings->len; i++)
    {
      const TmCutReading *each = &g_array_index (work->readings, TmCutReading, i);

      if (each->part == work->steps->len && tm_station_same (each->station, station, work->feature->unit))
        return TRUE;
    }
  return FALSE;
}

static guint
count_unread (const TmCutWork *work)
{
  guint unread = 0;

  for (guint i = 0; i < work->feature->stations->len; i++)
    unread += !is_read_now (work, g_ptr_array_index (work->feature->stations, i));
  return unread;
}

void
tm_cut_record_collect (TmCutWork *work)
{
  TmLimits limits = tm_feature_limits (work->feature);

  work->reference = limits.has_lower   ? limits.lower
                    : limits.has_upper ? limits.upper
                                       : work->feature->nominal.count;
  collect_cuts (work);
  collect_readings (work);
  for (guint i = 0; i < work->readings->len; i++)
    {
      TmCutReading *group = &g_array_index (work->readings, TmCutReading, i);
      gboolean is_now = group->part == work->steps->len;

      work->any_unknown = work->any_unknown || (is_now && !group->known);
      work->any_read = work->any_read || (is_now && group->known);
      if (group->known)
        number_method (work, group);
    }
  number_stations (work);
  work->n_unread = count_unread (work);
}

gboolean
tm_cut_record_next (const TmCutWork *work, const char *name, guint *method, double *own, double *shared)
{
  TmMethodUse use = tm_method_use (work->job, work->feature, name);
  TmLocalSize single = { .n = 1 };
  TmUncertainty uncertainty = tm_method_uncertainty (&use, &single, NULL);
  double widening;

  if (!isfinite (uncertainty.u))
    return FALSE;
  widening = tm_t_quantile (0.95, uncertainty.dof) / tm_t_quantile (0.95, INFINITY);
  *own = uncertainty.own * widening;
  *shared = uncertainty.shared * widening;
  *method = find_method (work, name, *shared);
  return TRUE;
}
