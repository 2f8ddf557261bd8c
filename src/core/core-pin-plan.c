/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-pin-plan: which pins to pull: of the shop's sets, the pair that proves most of a band.
 *
 * A set may have any number of pins, so that none is enumerated: in each range of sizes of its class
 * the extent is one offset from the marked size, and the pin nearest to a limit is found by division.
 */

#include "core-pins.h"

#include "core-gauge-kind.h"
#include "core-pin-class.h"

/* Candidates kept for each end, nearest to the limit first: more than a pair needs to be two pins. */
#define MOST_CANDIDATES 8
/* Pins tried on either side of a limit in each range of a set's class. */
#define NEAREST 2

typedef struct {
  const TmGauge *set;
  gint64 size; /* as marked */
  TmPin pin;
  gint64 bound;    /* what it proves: D >= bound for a go pin, D < bound for a no-go pin */
  gboolean inside; /* the bound lies inside the band */
  gint64 from_limit;
} Candidate;

typedef struct {
  Candidate inside[MOST_CANDIDATES], outside[MOST_CANDIDATES];
  guint n_inside, n_outside;
} End;

typedef struct {
  const TmJob *job;
  TmLimits limits;
  gint64 clearance;
  GHashTable *measured; /* of the set at hand: marked size -> TmPinSize */
  End go, nogo;
} Planner;

/* -------- Keeping the nearest -------- */

static void
keep_nearest (Candidate *kept, guint *n, const Candidate *candidate)
{
  guint at = *n;

  while (at > 0 && kept[at - 1].from_limit > candidate->from_limit)
    at--;
  if (at == MOST_CANDIDATES)
    return;
  *n = MIN (*n + 1, MOST_CANDIDATES);
  for (guint i = *n - 1; i > at; i--)
    kept[i] = kept[i - 1];
  kept[at] = *candidate;
}

static void
note_candidate (End *end, Candidate candidate, gint64 inside_by)
{
  candidate.inside = inside_by >= 0;
  candidate.from_limit = ABS (inside_by);
  if (candidate.inside)
    keep_nearest (end->inside, &end->n_inside, &candidate);
  else
    keep_nearest (end->outside, &end->n_outside, &candidate);
}

/* A go pin too large for every good bore, or a no-go pin that every good bore takes, proves nothing that
 * anybody asks. */
static void
note_pin (Planner *self, const TmGauge *set, gint64 size, TmPin pin)
{
  const TmLimits *limits = &self->limits;
  Candidate candidate = { .set = set, .size = size, .pin = pin };
  gint64 above = pin.high + self->clearance;

  if (limits->has_lower && (!limits->has_upper || pin.low < limits->upper))
    {
      candidate.pin.went = TRUE;
      candidate.bound = pin.low;
      note_candidate (&self->go, candidate, pin.low - limits->lower);
    }
  if (limits->has_upper && (!limits->has_lower || above > limits->lower))
    {
      candidate.pin.went = FALSE;
      candidate.bound = above;
      note_candidate (&self->nogo, candidate, limits->upper - above);
    }
}

/* -------- The pins of one set -------- */

/* Marked sizes first + k · step, k = 0…n - 1. */
typedef struct {
  gint64 first, step, n;
} Grid;

static gboolean
is_length (const TmQuantity *quantity)
{
  return quantity->given && tm_unit_dimension (quantity->unit) == TM_DIMENSION_LENGTH && quantity->count > 0;
}

/* A set by its step; without one, a pin or plug of one size, or of two: the ends of its range. */
static gboolean
find_grid (const TmGauge *set, Grid *out)
{
  gint64 from = set->range_from.count, to = set->range_to.count;

  if (!is_length (&set->range_from))
    return FALSE;
  if (!is_length (&set->range_to) || to == from)
    *out = (Grid) { from, 1, 1 };
  else if (to < from || (set->pin_step.given && !is_length (&set->pin_step)))
    return FALSE;
  else if (set->pin_step.given)
    *out = (Grid) { from, set->pin_step.count, (to - from) / set->pin_step.count + 1 };
  else
    *out = (Grid) { from, to - from, 2 };
  return TRUE;
}

static gboolean
is_on_grid (const Grid *grid, gint64 size)
{
  gint64 beyond = size - grid->first;

  return beyond >= 0 && beyond % grid->step == 0 && beyond / grid->step < grid->n;
}

/* The pins of a range just below and from @at on, passing over those whose own size is known. */
static void
note_nearest (Planner *self, const TmGauge *set, const Grid *grid, TmPinSign sign, const TmPinRange *range,
              gint64 at)
{
  gint64 pivot = CLAMP (at, range->from, range->to);
  gint64 middle = pivot <= grid->first ? 0 : MIN ((pivot - grid->first) / grid->step, grid->n - 1);

  for (int direction = -1; direction <= 1; direction += 2)
    {
      guint found = 0;

      for (gint64 k = middle + (direction > 0); k >= 0 && k < grid->n && found <= NEAREST; k += direction)
        {
          gint64 size = grid->first + k * grid->step;
          TmPin pin;

          if (direction > 0 ? size > range->to : size < range->from)
            break;
          if (size < range->from || size > range->to || g_hash_table_contains (self->measured, &size))
            continue;
          if (tm_pin_extent (size, set->pin_class, sign, NULL, &pin))
            note_pin (self, set, size, pin);
          found++;
        }
    }
}

static void
note_by_class (Planner *self, const TmGauge *set, const Grid *grid)
{
  TmPinSign sign;
  TmPinRange range;

  if (!tm_pin_sign_from_word (set->pin_sign, &sign))
    return;
  for (guint i = 0; tm_pin_range_get (set->pin_class, i, &range); i++)
    {
      gint64 below = sign == TM_PIN_MINUS ? range.tolerance : 0;
      gint64 above = sign == TM_PIN_PLUS ? range.tolerance : 0;

      if (self->limits.has_lower)
        note_nearest (self, set, grid, sign, &range, self->limits.lower + below);
      if (self->limits.has_upper)
        note_nearest (self, set, grid, sign, &range, self->limits.upper - above - self->clearance);
    }
}

static void
note_measured (Planner *self, const TmGauge *set, const Grid *grid)
{
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, self->measured);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      const TmPinSize *size = value;
      TmPin pin;

      if (is_on_grid (grid, size->size.count)
          && tm_pin_extent (size->size.count, NULL, TM_PIN_MINUS, &size->measured, &pin))
        note_pin (self, set, size->size.count, pin);
    }
}

static GHashTable *
list_measured (const TmJob *job, const TmGauge *set)
{
  GHashTable *measured = g_hash_table_new (g_int64_hash, g_int64_equal);

  for (guint i = 0; i < job->pin_sizes->len; i++)
    {
      TmPinSize *pin = g_ptr_array_index (job->pin_sizes, i);

      if (g_str_equal (pin->gauge, set->tag) && is_length (&pin->size) && is_length (&pin->measured))
        g_hash_table_replace (measured, &pin->size.count, pin);
    }
  return measured;
}

static gboolean
is_pin_set (const TmGauge *gauge)
{
  const TmGaugeKind *kind = tm_gauge_kind_find (gauge->kind);

  return tm_pin_class_known (gauge->pin_class) || gauge->pin_step.given || (kind != NULL && kind->pins);
}

static void
note_set (Planner *self, const TmGauge *set)
{
  Grid grid;

  if (!is_pin_set (set) || !find_grid (set, &grid))
    return;
  self->measured = list_measured (self->job, set);
  note_by_class (self, set, &grid);
  note_measured (self, set, &grid);
  g_clear_pointer (&self->measured, g_hash_table_unref);
}

/* -------- The best pair -------- */

typedef struct {
  const Candidate *go, *nogo;
  TmWide open;  /* over both ends */
  gint64 width; /* of what is proven */
} Pair;

/* Some bore must take the one and refuse the other, whatever their true sizes. */
static gboolean
can_pair (const Candidate *go, const Candidate *nogo)
{
  if (go == NULL || nogo == NULL)
    return TRUE;
  return (go->set != nogo->set || go->size != nogo->size) && go->pin.high <= nogo->pin.low;
}

static gint64
get_open (const Candidate *candidate)
{
  return candidate == NULL || candidate->inside ? 0 : candidate->from_limit;
}

static void
try_pair (Pair *best, const Candidate *go, const Candidate *nogo)
{
  Pair pair = { go, nogo, (TmWide)get_open (go) + get_open (nogo), 0 };

  if (!can_pair (go, nogo))
    return;
  if (go != NULL && nogo != NULL)
    pair.width = nogo->bound - go->bound;
  else
    pair.width = -(go != NULL ? go->from_limit : nogo->from_limit);
  if ((best->go != NULL || best->nogo != NULL)
      && (pair.open > best->open || (pair.open == best->open && pair.width <= best->width)))
    return;
  *best = pair;
}

static const Candidate *
get_nth (const End *end, guint n)
{
  if (n < end->n_inside)
    return &end->inside[n];
  n -= end->n_inside;
  return n < end->n_outside ? &end->outside[n] : NULL;
}

static void
find_single (const End *go, const End *nogo, Pair *best)
{
  for (guint i = 0; get_nth (go, i) != NULL; i++)
    try_pair (best, get_nth (go, i), NULL);
  for (guint i = 0; best->go == NULL && get_nth (nogo, i) != NULL; i++)
    try_pair (best, NULL, get_nth (nogo, i));
}

static Pair
find_pair (const Planner *self)
{
  Pair best = { NULL, NULL, 0, 0 };

  for (guint i = 0; get_nth (&self->go, i) != NULL; i++)
    for (guint j = 0; get_nth (&self->nogo, j) != NULL; j++)
      try_pair (&best, get_nth (&self->go, i), get_nth (&self->nogo, j));
  if (best.go == NULL && best.nogo == NULL)
    find_single (&self->go, &self->nogo, &best);
  return best;
}

static void
copy_pair (const Planner *self, const Pair *pair, TmPinPlan *out)
{
  if (pair->go != NULL)
    {
      out->has_go = TRUE;
      out->go_set = pair->go->set;
      out->go_size = pair->go->size;
      out->go = pair->go->pin;
      out->low = pair->go->bound;
    }
  if (pair->nogo != NULL)
    {
      out->has_nogo = TRUE;
      out->nogo_set = pair->nogo->set;
      out->nogo_size = pair->nogo->size;
      out->nogo = pair->nogo->pin;
      out->high = pair->nogo->bound;
    }
  out->open_below = self->limits.has_lower ? (pair->go ? get_open (pair->go) : -1) : 0;
  out->open_above = self->limits.has_upper ? (pair->nogo ? get_open (pair->nogo) : -1) : 0;
  out->proves_band = (out->has_go || out->has_nogo) && out->open_below == 0 && out->open_above == 0;
}

void
tm_pins_to_pull (const TmJob *job, const TmFeature *feature, TmPinPlan *out)
{
  Planner planner = { .job = job };
  Pair pair;

  g_return_if_fail (job != NULL && feature != NULL && out != NULL);
  *out = (TmPinPlan) { FALSE };
  planner.limits = tm_feature_limits (feature);
  planner.clearance = tm_job_entry_clearance (job);
  if (tm_pins_measure (feature))
    for (guint i = 0; i < job->gauges->len; i++)
      note_set (&planner, g_ptr_array_index (job->gauges, i));
  pair = find_pair (&planner);
  copy_pair (&planner, &pair, out);
}
