/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-station.h"

#include <math.h>
#include <string.h>

#include "core-position.h"

/* Beyond this many readings at one place, stations are found by hash rather than one by one, so
 * that a hostile job file cannot make the search quadratic. */
#define LINEAR_LIMIT 64

static gboolean
read_hour (const char *text, guint *hour)
{
  gsize digits = strspn (text, "0123456789");

  if (digits < 1 || digits > 2 || text[digits] != '\0')
    return FALSE;
  *hour = (guint)g_ascii_strtoull (text, NULL, 10);
  return *hour >= 1 && *hour <= 12;
}

static gboolean
read_depth (const char *text, TmUnit unit, TmStation *out)
{
  static const struct {
    const char *word;
    TmDepthKind depth;
  } words[] = {
    { "", TM_DEPTH_NONE },
    { "mouth", TM_DEPTH_MOUTH },
    { "middle", TM_DEPTH_MIDDLE },
    { "bottom", TM_DEPTH_BOTTOM },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_ascii_strcasecmp (text, words[i].word) == 0)
      {
        out->depth = words[i].depth;
        return TRUE;
      }
  if (tm_unit_dimension (unit) != TM_DIMENSION_LENGTH)
    unit = TM_UNIT_MM;
  out->depth = TM_DEPTH_LENGTH;
  return tm_quantity_read (text, unit, &out->at) == TM_READ_OK && out->at.count >= 0;
}

gboolean
tm_station_read (const char *text, TmUnit unit, TmStation *out)
{
  TmStation station = { TM_DEPTH_NONE, TM_QUANTITY_NONE, 0 };
  char depth[48];
  const char *slash;
  gsize length;

  g_return_val_if_fail (out != NULL, FALSE);
  if (text == NULL)
    text = "";
  slash = strchr (text, '/');
  length = slash ? (gsize)(slash - text) : strlen (text);
  if (length >= sizeof depth)
    return FALSE;
  memcpy (depth, text, length);
  depth[length] = '\0';
  if (slash && !read_hour (slash + 1, &station.hour))
    return FALSE;
  if (!read_depth (depth, unit, &station))
    return FALSE;
  *out = station;
  return TRUE;
}

guint
tm_station_diameter (const TmStation *station)
{
  return station->hour % 6;
}

gboolean
tm_station_same (const char *a, const char *b, TmUnit unit)
{
  TmStation one, other;

  if (a == b || strcmp (a, b) == 0)
    return TRUE;
  return tm_station_read (a, unit, &one) && tm_station_read (b, unit, &other) && one.depth == other.depth
         && one.hour == other.hour && one.at.count == other.at.count;
}

TmLimits
tm_feature_limits (const TmFeature *feature)
{
  TmLimits limits
      = { feature->lower.count, feature->upper.count, feature->lower.given, feature->upper.given, FALSE };

  if (tm_kind_is_zero_bounded (feature->kind) && limits.has_upper && (!limits.has_lower || limits.lower == 0))
    {
      limits.zero_bounded = TRUE;
      limits.has_lower = FALSE;
      limits.lower = 0;
    }
  return limits;
}

gint64
tm_limits_band (const TmLimits *limits)
{
  if (limits->has_lower && limits->has_upper)
    return limits->upper - limits->lower;
  return limits->zero_bounded ? limits->upper : 0;
}

/* -------- Grouping readings by station -------- */

typedef struct {
  const TmFeature *feature;
  GArray *sizes;     /* TmLocalSize */
  GArray *assigned;  /* gboolean per station: read by the feature's own method */
  GHashTable *index; /* canonical station -> number + 1; NULL while few */
  guint *station_of; /* per reading: station number + 1, or 0 when it does not count */
  TmCorrect correct; /* or NULL */
  gconstpointer data;
} Collector;

static const char *
get_method (const TmFeature *feature, const TmReading *reading)
{
  return reading->method[0] != '\0' ? reading->method : feature->method;
}

static gboolean
is_radial (const TmFeature *feature, const TmReading *reading)
{
  return feature->kind == TM_KIND_POSITION && (reading->dx.given || reading->dy.given);
}

static gboolean
has_entry (const TmFeature *feature, const TmReading *reading)
{
  if (!tm_row_counts (&reading->row))
    return FALSE;
  if (tm_kind_is_attribute (feature->kind))
    return reading->outcome != TM_OUTCOME_NONE;
  return reading->value.given || is_radial (feature, reading);
}

static char *
make_key (const char *text, TmUnit unit)
{
  TmStation station;

  if (!tm_station_read (text, unit, &station))
    return g_strconcat ("?", text, NULL);
  return g_strdup_printf ("%d:%" G_GINT64_FORMAT ":%u", station.depth, station.at.count, station.hour);
}

static guint
add_station (Collector *self, const char *text)
{
  TmLocalSize size = { .station = text, .method_name = "" };
  gboolean no = FALSE;

  g_array_append_val (self->sizes, size);
  g_array_append_val (self->assigned, no);
  return self->sizes->len - 1;
}

static guint
find_station_by_hash (Collector *self, const char *text)
{
  g_autofree char *key = make_key (text, self->feature->unit);
  guint found = GPOINTER_TO_UINT (g_hash_table_lookup (self->index, key));

  if (found == 0)
    {
      found = add_station (self, text) + 1;
      g_hash_table_insert (self->index, g_steal_pointer (&key), GUINT_TO_POINTER (found));
    }
  return found - 1;
}

static guint
find_station (Collector *self, const char *text)
{
  if (self->index)
    return find_station_by_hash (self, text);
  for (guint i = 0; i < self->sizes->len; i++)
    if (tm_station_same (g_array_index (self->sizes, TmLocalSize, i).station, text, self->feature->unit))
      return i;
  return add_station (self, text);
}

/* First pass: where each reading belongs, and which method speaks for each station. */
static void
assign_reading (Collector *self, const TmReading *reading, guint *station_of)
{
  const char *method = get_method (self->feature, reading);
  gboolean is_assigned = method[0] != '\0' && strcmp (method, self->feature->method) == 0;
  guint station;
  TmLocalSize *size;
  gboolean *assigned;

  if (!has_entry (self->feature, reading))
    return;
  station = find_station (self, reading->station);
  *station_of = station + 1;
  size = &g_array_index (self->sizes, TmLocalSize, station);
  assigned = &g_array_index (self->assigned, gboolean, station);
  if (size->last != NULL && strcmp (size->method_name, method) != 0)
    size->several_methods = TRUE;
  size->last = reading;
  if (*assigned && !is_assigned)
    return;
  *assigned = is_assigned;
  size->method_name = method;
  size->radial = is_radial (self->feature, reading);
}

static double
get_step (TmUnit unit, guint decimals)
{
  return (double)tm_unit_counts (unit) / pow (10, decimals);
}

/* Keeps the finest digits of the readings averaged. */
static void
note_digits (TmLocalSize *size, const TmQuantity *quantity)
{
  if (!quantity->given)
    return;
  if (size->unit != TM_UNIT_NONE
      && get_step (quantity->unit, quantity->decimals) >= get_step (size->unit, size->decimals))
    return;
  size->unit = quantity->unit;
  size->decimals = quantity->decimals;
}

static gint64
get_correction (const Collector *self, const TmReading *reading)
{
  return self->correct ? self->correct (self->data, reading) : 0;
}

static void
add_value (const Collector *self, TmLocalSize *size, const TmReading *reading)
{
  if (size->radial)
    {
      size->dx_sum += reading->dx.count;
      size->dy_sum += reading->dy.count;
      note_digits (size, &reading->dx);
      note_digits (size, &reading->dy);
    }
  else
    {
      size->raw_sum += reading->value.count;
      size->sum += reading->value.count + get_correction (self, reading);
      note_digits (size, &reading->value);
    }
}

/* Second pass: readings of the method that speaks for the station.  */
static void
add_reading (Collector *self, const TmReading *reading, guint station_of)
{
  TmLocalSize *size;

  if (station_of == 0)
    return;
  size = &g_array_index (self->sizes, TmLocalSize, station_of - 1);
  if (strcmp (size->method_name, get_method (self->feature, reading)) != 0
      || size->radial != is_radial (self->feature, reading))
    return;
  size->n++;
  size->last = reading;
  size->outcome = reading->outcome;
  if (!tm_kind_is_attribute (self->feature->kind))
    add_value (self, size, reading);
}

static double
square_from_mean (TmWide sum, guint n, gint64 value)
{
  double difference = (double)((TmWide)value * n - sum) / n;

  return difference * difference;
}

/* Third pass, only where there are repeats: sums of squares from the exact mean. */
static void
add_square (Collector *self, const TmReading *reading, guint station_of)
{
  TmLocalSize *size;

  if (station_of == 0)
    return;
  size = &g_array_index (self->sizes, TmLocalSize, station_of - 1);
  if (size->n < 2 || strcmp (size->method_name, get_method (self->feature, reading)) != 0
      || size->radial != is_radial (self->feature, reading))
    return;
  if (size->radial)
    size->spread += (square_from_mean (size->dx_sum, size->n, reading->dx.count)
                     + square_from_mean (size->dy_sum, size->n, reading->dy.count))
                    / 2;
  else
    size->spread
        += square_from_mean (size->sum, size->n, reading->value.count + get_correction (self, reading));
}

static void
finish_sizes (Collector *self, TmSizes *out)
{
  out->n_stations = self->sizes->len;
  out->stations = (TmLocalSize *)(gpointer)g_array_free (self->sizes, FALSE);
  for (guint i = 0; i < out->n_stations; i++)
    {
      TmLocalSize *size = &out->stations[i];
      const TmLocalSize *smallest = &out->stations[out->smallest];
      const TmLocalSize *largest = &out->stations[out->largest];

      if (size->n > 1)
        size->spread = sqrt (size->spread / (size->n - 1));
      if (size->radial)
        size->raw_sum = size->sum = tm_position_diametral (size->dx_sum, size->dy_sum);
      if (size->sum * smallest->n < smallest->sum * size->n)
        out->smallest = i;
      if (size->sum * largest->n > largest->sum * size->n)
        out->largest = i;
    }
}

void
tm_sizes_collect (const TmFeature *feature, const GPtrArray *readings, TmSizes *out)
{
  tm_sizes_collect_corrected (feature, readings, NULL, NULL, out);
}

void
tm_sizes_collect_corrected (const TmFeature *feature, const GPtrArray *readings, TmCorrect correct,
                            gconstpointer data, TmSizes *out)
{
  Collector self = { .feature = feature, .correct = correct, .data = data };
  guint few[LINEAR_LIMIT] = { 0 };
  g_autofree guint *many = NULL;
  gboolean repeats = FALSE;

  *out = (TmSizes) { 0 };
  if (readings == NULL || readings->len == 0)
    return;
  self.sizes = g_array_sized_new (FALSE, FALSE, sizeof (TmLocalSize), 1);
  self.assigned = g_array_sized_new (FALSE, FALSE, sizeof (gboolean), 1);
  if (readings->len > LINEAR_LIMIT)
    {
      many = g_new0 (guint, readings->len);
      self.index = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
    }
  self.station_of = many ? many : few;
  for (guint i = 0; i < readings->len; i++)
    assign_reading (&self, g_ptr_array_index (readings, i), &self.station_of[i]);
  for (guint i = 0; i < readings->len; i++)
    add_reading (&self, g_ptr_array_index (readings, i), self.station_of[i]);
  for (guint i = 0; i < self.sizes->len; i++)
    repeats = repeats || g_array_index (self.sizes, TmLocalSize, i).n > 1;
  for (guint i = 0; repeats && i < readings->len; i++)
    add_square (&self, g_ptr_array_index (readings, i), self.station_of[i]);
  finish_sizes (&self, out);
  g_array_free (self.assigned, TRUE);
  g_clear_pointer (&self.index, g_hash_table_unref);
}

void
tm_sizes_clear (TmSizes *sizes)
{
  g_clear_pointer (&sizes->stations, g_free);
  *sizes = (TmSizes) { 0 };
}

int
tm_local_size_compare (const TmLocalSize *size, gint64 limit)
{
  if (size->radial)
    return tm_position_compare (size->dx_sum, size->dy_sum, size->n, limit);
  return tm_mean_compare (size->sum, size->n, limit);
}

double
tm_local_size_beyond (const TmLocalSize *size, gint64 limit)
{
  return (double)(size->sum - (TmWide)limit * size->n) / size->n;
}

double
tm_local_size_correction (const TmLocalSize *size)
{
  return (double)(size->sum - size->raw_sum) / MAX (size->n, 1);
}

gboolean
tm_sizes_has_station (const TmFeature *feature, const TmSizes *sizes, const char *station)
{
  for (guint i = 0; i < sizes->n_stations; i++)
    if (tm_station_same (sizes->stations[i].station, station, feature->unit))
      return TRUE;
  return FALSE;
}

gboolean
tm_sizes_complete (const TmFeature *feature, const TmSizes *sizes)
{
  for (guint i = 0; feature->stations && i < feature->stations->len; i++)
    if (!tm_sizes_has_station (feature, sizes, g_ptr_array_index (feature->stations, i)))
      return FALSE;
  return TRUE;
}
