/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-fit-pair: tenthmark-cli fit JOB --pair: which of the measured mates to which of the measured places.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-fit.h"
#include "cli-json.h"
#include "cli-options.h"
#include "cli-share.h"
#include "core-pairing.h"

/* A measured place of a piece, or a measured mate. */
typedef struct {
  const TmPiece *piece; /* NULL: a mate */
  guint place;
  const TmMateSize *mate;
  TmFitStatus status;
  TmFitPart part;
} Taken;

typedef struct {
  const TmFeature *feature;
  const TmFitWant *want;
  gboolean is_bore;
  GArray *places;   /* Taken: that are paired */
  GArray *mates;    /* Taken: likewise */
  GArray *left_out; /* Taken: that are not measured, or not well enough to be */
  TmPairing pairing;
  gboolean good;
} Batch;

/* -------- What there is -------- */

static void
sort_out (Batch *batch, GArray *good, const Taken *taken)
{
  g_array_append_vals (taken->status == TM_FIT_OK ? good : batch->left_out, taken, 1);
}

static void
take_places (Batch *batch, const TmJob *job)
{
  for (guint i = 0; i < job->pieces->len; i++)
    for (guint place = 1; place <= batch->feature->places; place++)
      {
        Taken taken = { .piece = g_ptr_array_index (job->pieces, i), .place = place };

        taken.status = tm_fit_part_as_measured (job, taken.piece, batch->feature, place, &taken.part);
        sort_out (batch, batch->places, &taken);
      }
}

static void
take_mates (Batch *batch, const TmJob *job)
{
  for (guint i = 0; i < job->mate_sizes->len; i++)
    {
      Taken taken = { .mate = g_ptr_array_index (job->mate_sizes, i) };

      if (!g_str_equal (taken.mate->feature, batch->feature->balloon))
        continue;
      taken.status = tm_fit_mate_as_measured (taken.mate, &taken.part);
      sort_out (batch, batch->mates, &taken);
    }
}

static TmFitPart *
copy_parts (const GArray *from)
{
  TmFitPart *parts = g_new (TmFitPart, from->len + 1);

  for (guint i = 0; i < from->len; i++)
    parts[i] = g_array_index (from, Taken, i).part;
  return parts;
}

static TmFitStatus
pair (Batch *batch)
{
  const GArray *bores = batch->is_bore ? batch->places : batch->mates;
  const GArray *shafts = batch->is_bore ? batch->mates : batch->places;
  g_autofree TmFitPart *bore_parts = copy_parts (bores);
  g_autofree TmFitPart *shaft_parts = copy_parts (shafts);

  return tm_pair_fits (bore_parts, bores->len, shaft_parts, shafts->len, batch->want, &batch->pairing, NULL);
}

/* The pair of a place; NULL: no mate is left for it. */
static const TmPair *
find_pair (const Batch *batch, guint place)
{
  for (guint i = 0; i < batch->pairing.n_pairs; i++)
    {
      const TmPair *pair = &batch->pairing.pairs[i];

      if (pair->shaft != TM_ASSIGN_NONE && place == (batch->is_bore ? pair->bore : pair->shaft))
        return pair;
    }
  return NULL;
}

static const TmMateSize *
get_mate (const Batch *batch, const TmPair *pair)
{
  return g_array_index (batch->mates, Taken, batch->is_bore ? pair->shaft : pair->bore).mate;
}

static gboolean
is_used (const Batch *batch, guint mate)
{
  for (guint i = 0; i < batch->pairing.n_pairs; i++)
    {
      const TmPair *pair = &batch->pairing.pairs[i];

      if (pair->shaft != TM_ASSIGN_NONE && mate == (batch->is_bore ? pair->shaft : pair->bore))
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_good (const Batch *batch)
{
  for (guint i = 0; i < batch->places->len; i++)
    {
      const TmPair *pair = find_pair (batch, i);

      if (pair == NULL || !tm_fit_is_within (&pair->check, batch->want))
        return FALSE;
    }
  return batch->places->len > 0;
}

static guint
count_pairs (const Batch *batch)
{
  return MIN (batch->places->len, batch->mates->len);
}

/* -------- JSON -------- */

static void
put_pairs (yajl_gen gen, const Batch *batch)
{
  tm_print_key (gen, "pairs");
  yajl_gen_array_open (gen);
  for (guint i = 0; i < batch->places->len; i++)
    {
      const Taken *taken = &g_array_index (batch->places, Taken, i);
      const TmPair *pair = find_pair (batch, i);

      yajl_gen_map_open (gen);
      tm_print_text (gen, "piece", taken->piece->serial);
      tm_print_integer (gen, "place", taken->place);
      tm_print_text (gen, "mate", pair != NULL ? get_mate (batch, pair)->serial : NULL);
      tm_print_number (gen, "probability_outside", pair != NULL ? pair->outside : (double)NAN);
      if (pair != NULL)
        tm_fit_put_check (gen, &pair->check, batch->feature->unit);
      yajl_gen_map_close (gen);
    }
  yajl_gen_array_close (gen);
}

static void
put_left_over (yajl_gen gen, const Batch *batch)
{
  tm_print_key (gen, "mates_left_over");
  yajl_gen_array_open (gen);
  for (guint i = 0; i < batch->mates->len; i++)
    if (!is_used (batch, i))
      tm_print_item (gen, g_array_index (batch->mates, Taken, i).mate->serial);
  yajl_gen_array_close (gen);
}

static void
put_left_out (yajl_gen gen, const Batch *batch)
{
  tm_print_key (gen, "left_out");
  yajl_gen_array_open (gen);
  for (guint i = 0; i < batch->left_out->len; i++)
    {
      const Taken *taken = &g_array_index (batch->left_out, Taken, i);

      yajl_gen_map_open (gen);
      tm_print_text (gen, "piece", taken->piece != NULL ? taken->piece->serial : NULL);
      if (taken->piece != NULL)
        tm_print_integer (gen, "place", taken->place);
      else
        tm_print_null (gen, "place");
      tm_print_text (gen, "mate", taken->mate != NULL ? taken->mate->serial : NULL);
      tm_print_text (gen, "reason",
                     g_dpgettext2 (GETTEXT_PACKAGE, "fit status", tm_fit_status_word (taken->status)));
      yajl_gen_map_close (gen);
    }
  yajl_gen_array_close (gen);
}

static void
print_json (const Batch *batch)
{
  yajl_gen gen = tm_print_begin ();

  yajl_gen_map_open (gen);
  tm_print_unit (gen, batch->feature->unit);
  tm_print_text (gen, "feature", batch->feature->balloon);
  tm_fit_put_want (gen, batch->want, batch->feature->unit);
  put_pairs (gen, batch);
  put_left_over (gen, batch);
  put_left_out (gen, batch);
  tm_print_number (gen, "expected_outside", batch->pairing.expected_outside);
  tm_print_number (gen, "expected_outside_first_come", batch->pairing.first_come);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

/* -------- Words -------- */

static char *
name_taken (const Batch *batch, const Taken *taken)
{
  if (taken->mate != NULL)
    return g_strdup_printf (_ ("mate %s"), taken->mate->serial);
  if (batch->feature->places > 1)
    return g_strdup_printf (_ ("piece %s, place %u"), taken->piece->serial, taken->place);
  return g_strdup_printf (_ ("piece %s"), taken->piece->serial);
}

static void
print_pair (const Batch *batch, guint place)
{
  const TmPair *pair = find_pair (batch, place);
  g_autofree char *name = name_taken (batch, &g_array_index (batch->places, Taken, place));
  g_autofree char *range = NULL;
  g_autofree char *inside = NULL;

  if (pair == NULL)
    {
      printf (_ ("%s: no mate is left for it\n"), name);
      return;
    }
  range = tm_fit_describe_range (&pair->check, batch->feature->unit);
  inside = tm_format_share (1 - pair->outside, 1);
  /* Translators: a piece, a mate's serial, the range of clearance, a percentage. */
  printf (_ ("%s: mate %s, %s, inside %s\n"), name, get_mate (batch, pair)->serial, range, inside);
}

static void
print_words (const Batch *batch)
{
  guint n = count_pairs (batch);

  tm_fit_print_want (batch->want, batch->feature->unit);
  for (guint i = 0; i < batch->places->len; i++)
    print_pair (batch, i);
  for (guint i = 0; i < batch->mates->len; i++)
    if (!is_used (batch, i))
      printf (_ ("mate %s: left over\n"), g_array_index (batch->mates, Taken, i).mate->serial);
  for (guint i = 0; i < batch->left_out->len; i++)
    {
      const Taken *taken = &g_array_index (batch->left_out, Taken, i);
      g_autofree char *name = name_taken (batch, taken);

      printf (_ ("%s: left out: %s\n"), name,
              g_dpgettext2 (GETTEXT_PACKAGE, "fit status", tm_fit_status_word (taken->status)));
    }
  printf (ngettext ("expected outside what is wanted: %.2f of %u pair; in the order they came: %.2f\n",
                    "expected outside what is wanted: %.2f of %u pairs; in the order they came: %.2f\n", n),
          batch->pairing.expected_outside, n, batch->pairing.first_come);
}

static int
finish (Batch *batch, TmFitStatus status, gboolean json)
{
  if (status != TM_FIT_OK)
    return tm_fail (_ ("fit: feature %s: %s"), batch->feature->balloon,
                    g_dpgettext2 (GETTEXT_PACKAGE, "fit status", tm_fit_status_word (status)));
  if (json)
    print_json (batch);
  else
    print_words (batch);
  return is_good (batch) ? 0 : 1;
}

int
tm_fit_pair_job (const TmJob *job, const TmFeature *feature, const TmFitWant *want, gboolean json)
{
  Batch batch = { feature, want, tm_fit_feature_is_bore (feature, NULL) };
  g_autoptr (GArray) places = batch.places = g_array_new (FALSE, FALSE, sizeof (Taken));
  g_autoptr (GArray) mates = batch.mates = g_array_new (FALSE, FALSE, sizeof (Taken));
  g_autoptr (GArray) left_out = batch.left_out = g_array_new (FALSE, FALSE, sizeof (Taken));
  TmFitStatus status;
  int result;

  take_places (&batch, job);
  take_mates (&batch, job);
  status = pair (&batch);
  result = finish (&batch, status, json);
  tm_pairing_clear (&batch.pairing);
  return result;
}
