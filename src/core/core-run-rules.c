/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One machine reads the points and remembers what its rules need; the run length asks the same machine, so
 * that what is shown and what is promised cannot differ.
 */

#include "core-run-rules.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <math.h>
#include <string.h>

/* Rules that look at more than the zone that a point lies in. */
#define ORDER_RULES (TM_RULE_BIT (TM_RULE_6_RISING_OR_FALLING) | TM_RULE_BIT (TM_RULE_14_ALTERNATING))

/* What the rules remember of the points so far, nothing that a rule not asked for would need. */
typedef struct {
  guint8 above_2s, below_2s; /* bits, the newest lowest */
  guint8 above_1s, below_1s;
  gint8 one_side; /* length of the run on one side, negative below */
  guint8 within, beyond;
  gint8 rising; /* points of a run that rises, negative: falls */
  guint8 alternating;
  gint8 last_step;
  gboolean has_last;
  double last;
} Memory;

static const struct {
  const char *word;
  const char *text;
} rule_words[TM_N_RUN_RULES] = {
  [TM_RULE_BEYOND_3S] = { "beyond-3s", N_ ("one point beyond 3 sigma") },
  [TM_RULE_2_OF_3_BEYOND_2S] = { "2-of-3-beyond-2s", N_ ("two of three points beyond 2 sigma on one side") },
  [TM_RULE_4_OF_5_BEYOND_1S] = { "4-of-5-beyond-1s", N_ ("four of five points beyond 1 sigma on one side") },
  [TM_RULE_8_ONE_SIDE] = { "8-one-side", N_ ("eight points in a row on one side of the centre") },
  [TM_RULE_9_ONE_SIDE] = { "9-one-side", N_ ("nine points in a row on one side of the centre") },
  [TM_RULE_6_RISING_OR_FALLING]
  = { "6-rising-or-falling", N_ ("six points in a row that only rise, or only fall") },
  [TM_RULE_14_ALTERNATING]
  = { "14-alternating", N_ ("fourteen points in a row that go up and down by turns") },
  [TM_RULE_15_WITHIN_1S] = { "15-within-1s", N_ ("fifteen points in a row within 1 sigma") },
  [TM_RULE_8_BEYOND_1S] = { "8-beyond-1s", N_ ("eight points in a row beyond 1 sigma on either side") },
};

const char *
tm_run_rule_word (TmRunRule rule)
{
  g_return_val_if_fail (rule < TM_N_RUN_RULES, "");
  return rule_words[rule].word;
}

const char *
tm_run_rule_text (TmRunRule rule)
{
  g_return_val_if_fail (rule < TM_N_RUN_RULES, "");
  return rule_words[rule].text;
}

gboolean
tm_run_rule_from_word (const char *word, TmRunRule *rule)
{
  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    if (g_strcmp0 (word, rule_words[i].word) == 0)
      {
        *rule = i;
        return TRUE;
      }
  return FALSE;
}

/* -------- The machine -------- */

static gboolean
asks (guint rules, TmRunRule rule)
{
  return (rules & TM_RULE_BIT (rule)) != 0;
}

/* Adds the newest point to the bits of the last @m and says whether it is one of @k among them. */
static gboolean
take_bits (guint8 *bits, gboolean here, guint k, guint m)
{
  *bits = (guint8)(((guint)*bits << 1 | here) & ((1u << m) - 1));
  return here && (guint)__builtin_popcount (*bits) >= k;
}

static guint
take_zones (Memory *memory, double z, guint rules)
{
  guint hits = asks (rules, TM_RULE_BEYOND_3S) && fabs (z) > 3 ? TM_RULE_BIT (TM_RULE_BEYOND_3S) : 0;

  if (asks (rules, TM_RULE_2_OF_3_BEYOND_2S)
      && (take_bits (&memory->above_2s, z > 2, 2, 3) | take_bits (&memory->below_2s, z < -2, 2, 3)))
    hits |= TM_RULE_BIT (TM_RULE_2_OF_3_BEYOND_2S);
  if (asks (rules, TM_RULE_4_OF_5_BEYOND_1S)
      && (take_bits (&memory->above_1s, z > 1, 4, 5) | take_bits (&memory->below_1s, z < -1, 4, 5)))
    hits |= TM_RULE_BIT (TM_RULE_4_OF_5_BEYOND_1S);
  return hits;
}

/* One more of a run, or none; no longer than @most is counted. */
static guint8
count_run (guint8 length, gboolean goes_on, guint8 most)
{
  return goes_on ? (guint8)MIN (length + 1, most) : 0;
}

static gint8
count_side (gint8 run, int side, gint8 most)
{
  if (side == 0)
    return 0;
  if (side > 0)
    return (gint8)(run > 0 ? MIN (run + 1, most) : 1);
  return (gint8)(run < 0 ? MAX (run - 1, -most) : -1);
}

static int
get_sign (double value)
{
  return (value > 0) - (value < 0);
}

static guint
take_runs (Memory *memory, double z, guint rules)
{
  const gint8 longest = asks (rules, TM_RULE_9_ONE_SIDE) ? 9 : 8;
  guint hits = 0;

  if (asks (rules, TM_RULE_8_ONE_SIDE) || asks (rules, TM_RULE_9_ONE_SIDE))
    memory->one_side = count_side (memory->one_side, get_sign (z), longest);
  if (asks (rules, TM_RULE_8_ONE_SIDE) && ABS (memory->one_side) >= 8)
    hits |= TM_RULE_BIT (TM_RULE_8_ONE_SIDE);
  if (asks (rules, TM_RULE_9_ONE_SIDE) && ABS (memory->one_side) >= 9)
    hits |= TM_RULE_BIT (TM_RULE_9_ONE_SIDE);
  if (asks (rules, TM_RULE_15_WITHIN_1S)
      && (memory->within = count_run (memory->within, fabs (z) < 1, 15)) == 15)
    hits |= TM_RULE_BIT (TM_RULE_15_WITHIN_1S);
  if (asks (rules, TM_RULE_8_BEYOND_1S)
      && (memory->beyond = count_run (memory->beyond, fabs (z) > 1, 8)) == 8)
    hits |= TM_RULE_BIT (TM_RULE_8_BEYOND_1S);
  return hits;
}

/* Six points that rise are five steps, fourteen that alternate are thirteen. */
static guint
take_order (Memory *memory, double z, guint rules)
{
  const gint8 step = (gint8)(memory->has_last ? get_sign (z - memory->last) : 0);
  guint hits = 0;

  memory->rising = count_side (memory->rising, step, 5);
  if (step != 0 && step == -memory->last_step)
    memory->alternating = (guint8)MIN (memory->alternating + 1, 13);
  else
    memory->alternating = step != 0;
  memory->last_step = step;
  memory->last = z;
  memory->has_last = TRUE;
  if (asks (rules, TM_RULE_6_RISING_OR_FALLING) && ABS (memory->rising) >= 5)
    hits |= TM_RULE_BIT (TM_RULE_6_RISING_OR_FALLING);
  if (asks (rules, TM_RULE_14_ALTERNATING) && memory->alternating >= 13)
    hits |= TM_RULE_BIT (TM_RULE_14_ALTERNATING);
  return hits;
}

static guint
take_point (Memory *memory, double z, guint rules)
{
  guint hits = take_zones (memory, z, rules) | take_runs (memory, z, rules);

  if (rules & ORDER_RULES)
    hits |= take_order (memory, z, rules);
  return hits;
}

GArray *
tm_run_rules (const double *z, gsize n, const guint *breaks, guint n_breaks, guint rules)
{
  GArray *hits = g_array_new (FALSE, FALSE, sizeof (TmRuleHit));
  Memory memory = { 0 };
  guint next_break = 0;

  for (gsize i = 0; i < n; i++)
    {
      guint here;

      for (; next_break < n_breaks && breaks[next_break] <= i; next_break++)
        memory = (Memory) { 0 };
      if (isnan (z[i]))
        {
          memory = (Memory) { 0 };
          continue;
        }
      here = take_point (&memory, z[i], rules);
      for (guint rule = 0; rule < TM_N_RUN_RULES; rule++)
        if (asks (here, rule))
          {
            TmRuleHit hit = { (guint)i, rule };

            g_array_append_val (hits, hit);
          }
    }
  return hits;
}

/* -------- Run lengths -------- */

static const double zone_points[] = { -3.5, -2.5, -1.5, -0.5, 0.5, 1.5, 2.5, 3.5 };
#define N_ZONES G_N_ELEMENTS (zone_points)

static void
find_zone_chances (double shift, double *chances)
{
  static const double ends[] = { -3, -2, -1, 0, 1, 2, 3 };
  double below = 0;

  for (guint i = 0; i < N_ZONES; i++)
    {
      double to = i < G_N_ELEMENTS (ends) ? gsl_cdf_ugaussian_P (ends[i] - shift) : 1;

      chances[i] = to - below;
      below = to;
    }
}

/* The states that the machine can be in, and where each zone takes it: -1 is a signal. */
typedef struct {
  GArray *states; /* Memory */
  GArray *next;   /* gint, N_ZONES a state */
  GHashTable *known;
} Chain;

static guint
hash_memory (gconstpointer key)
{
  const guchar *bytes = key;
  guint hash = 5381;

  for (gsize i = 0; i < sizeof (Memory); i++)
    hash = hash * 33 + bytes[i];
  return hash;
}

static gboolean
equal_memory (gconstpointer a, gconstpointer b)
{
  return memcmp (a, b, sizeof (Memory)) == 0;
}

static gint
find_state (Chain *chain, const Memory *memory)
{
  gpointer at;
  guint index;

  if (g_hash_table_lookup_extended (chain->known, memory, NULL, &at))
    return GPOINTER_TO_INT (at);
  index = chain->states->len;
  g_array_append_vals (chain->states, memory, 1);
  g_hash_table_insert (chain->known, g_memdup2 (memory, sizeof *memory), GUINT_TO_POINTER (index));
  return (gint)index;
}

/* The oldest bit of a window leaves with the next point: it tells nothing any more. */
static void
forget (Memory *memory)
{
  memory->above_2s &= 3;
  memory->below_2s &= 3;
  memory->above_1s &= 15;
  memory->below_1s &= 15;
}

static void
build_chain (Chain *chain, guint rules)
{
  Memory start;

  memset (&start, 0, sizeof start);
  find_state (chain, &start);
  for (guint i = 0; i < chain->states->len; i++)
    for (guint zone = 0; zone < N_ZONES; zone++)
      {
        Memory memory;
        gint to = -1;

        memcpy (&memory, &g_array_index (chain->states, Memory, i), sizeof memory);
        if (take_point (&memory, zone_points[zone], rules) == 0)
          {
            forget (&memory);
            to = find_state (chain, &memory);
          }
        g_array_append_val (chain->next, to);
      }
}

/* One step of the chain.  Returns: the chance that nothing was signalled yet. */
static double
advance (const Chain *chain, const double *chances, const double *from, double *to)
{
  const gint *next = &g_array_index (chain->next, gint, 0);
  double sum = 0;

  memset (to, 0, chain->states->len * sizeof (double));
  for (guint i = 0; i < chain->states->len; i++)
    for (guint zone = 0; zone < N_ZONES; zone++)
      {
        gint at = next[i * N_ZONES + zone];

        if (at >= 0)
          {
            to[at] += from[i] * chances[zone];
            sum += from[i] * chances[zone];
          }
      }
  return sum;
}

/* Σ P(length > k).  Once the chance falls by the same share at each step, the rest is a geometric series. */
static double
sum_survival (const Chain *chain, const double *chances)
{
  g_autofree double *from = g_new0 (double, chain->states->len);
  g_autofree double *to = g_new0 (double, chain->states->len);
  double sum = 0, alive = 1, share = 0;
  guint steady = 0;

  from[0] = 1;
  for (guint k = 0; k < 100000 && steady < 50 && alive > 1e-18; k++)
    {
      double now = advance (chain, chances, from, to);
      double *swap = from;

      sum += alive;
      steady = fabs (now / alive - share) < 1e-14 ? steady + 1 : 0;
      share = now / alive;
      alive = now;
      from = to;
      to = swap;
    }
  return share < 1 ? sum + alive / (1 - share) : INFINITY;
}

static double
find_chain_length (guint rules, double shift)
{
  Chain chain = { g_array_new (FALSE, FALSE, sizeof (Memory)), g_array_new (FALSE, FALSE, sizeof (gint)),
                  g_hash_table_new_full (hash_memory, equal_memory, g_free, NULL) };
  double chances[N_ZONES], length;

  find_zone_chances (shift, chances);
  build_chain (&chain, rules);
  length = sum_survival (&chain, chances);
  g_array_unref (chain.states);
  g_array_unref (chain.next);
  g_hash_table_unref (chain.known);
  return length;
}

#define SIMULATED_RUNS 40000
#define LONGEST_RUN    1000000

static double
simulate_length (guint rules, double shift)
{
  gsl_rng *random = gsl_rng_alloc (gsl_rng_mt19937);
  double sum = 0;

  gsl_rng_set (random, 20);
  for (guint run = 0; run < SIMULATED_RUNS; run++)
    {
      Memory memory = { 0 };
      guint length = 1;

      while (take_point (&memory, shift + gsl_ran_gaussian_ziggurat (random, 1), rules) == 0
             && length < LONGEST_RUN)
        length++;
      sum += length;
    }
  gsl_rng_free (random);
  return sum / SIMULATED_RUNS;
}

double
tm_run_rules_length (guint rules, double shift, gboolean *exact)
{
  g_return_val_if_fail (exact != NULL, NAN);

  rules &= TM_RULE_BIT (TM_N_RUN_RULES) - 1;
  *exact = (rules & ORDER_RULES) == 0;
  if (rules == 0)
    return INFINITY;
  return *exact ? find_chain_length (rules, shift) : simulate_length (rules, shift);
}
