/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-fit-pairs.h"

/* The two lots, in the order of places and mates. */
typedef struct {
  GArray *places; /* TmFitPart */
  GArray *mates;  /* TmFitPart */
} Lots;

static void
add_place (TmFitPairs *pairs, Lots *lots, const TmJob *job, TmPiece *piece, const TmFeature *feature,
           guint place)
{
  TmFitPart part = { 0 };
  const TmFitPlace row = { .piece = piece, .place = place };

  if (tm_fit_part_as_measured (job, piece, feature, place, &part) != TM_FIT_OK)
    {
      pairs->n_places_out++;
      return;
    }
  g_array_append_val (pairs->places, row);
  g_array_append_val (lots->places, part);
}

static void
add_mate (TmFitPairs *pairs, Lots *lots, TmMateSize *mate)
{
  TmFitPart part = { 0 };

  if (tm_fit_mate_as_measured (mate, &part) != TM_FIT_OK)
    {
      pairs->n_mates_out++;
      return;
    }
  g_ptr_array_add (pairs->mates, mate);
  g_array_append_val (lots->mates, part);
}

static void
collect (TmFitPairs *pairs, Lots *lots, const TmJob *job, const TmFeature *feature)
{
  for (guint i = 0; i < job->pieces->len; i++)
    for (guint place = 1; place <= MAX (feature->places, 1); place++)
      add_place (pairs, lots, job, g_ptr_array_index (job->pieces, i), feature, place);
  for (guint i = 0; i < job->mate_sizes->len; i++)
    {
      TmMateSize *mate = g_ptr_array_index (job->mate_sizes, i);

      if (g_str_equal (mate->feature, feature->balloon))
        add_mate (pairs, lots, mate);
    }
}

/* Who the part at @i is: first the bores are counted, then the shafts. */
static const char *
name_culprit (const TmFitPairs *pairs, gboolean bore, guint i)
{
  const guint n_first = bore ? pairs->places->len : pairs->mates->len;
  const gboolean place = bore == (i < n_first);
  const guint at = i < n_first ? i : i - n_first;

  if (place && at < pairs->places->len)
    return g_array_index (pairs->places, TmFitPlace, at).piece->serial;
  if (!place && at < pairs->mates->len)
    return ((TmMateSize *)g_ptr_array_index (pairs->mates, at))->serial;
  return NULL;
}

/* Puts what was found, one row a bore, with the places. */
static void
take_pairs (TmFitPairs *pairs, gboolean bore)
{
  const TmPairing *found = &pairs->pairing;

  for (guint i = 0; i < found->n_pairs; i++)
    {
      const TmPair *pair = &found->pairs[i];
      const guint place = bore ? pair->bore : pair->shaft;
      const guint mate = bore ? pair->shaft : pair->bore;
      TmFitPlace *row;

      if (place >= pairs->places->len || mate >= pairs->mates->len)
        continue;
      row = &g_array_index (pairs->places, TmFitPlace, place);
      row->mate = g_ptr_array_index (pairs->mates, mate);
      row->check = pair->check;
      pairs->n_pairs++;
      g_ptr_array_remove (pairs->mates_over, row->mate);
    }
}

static void
pair_up (TmFitPairs *pairs, const Lots *lots, const TmFitWant *want, gboolean bore)
{
  const GArray *bores = bore ? lots->places : lots->mates;
  const GArray *shafts = bore ? lots->mates : lots->places;
  guint culprit = G_MAXUINT;

  for (guint i = 0; i < pairs->mates->len; i++)
    g_ptr_array_add (pairs->mates_over, g_ptr_array_index (pairs->mates, i));
  if (bores->len == 0 || shafts->len == 0)
    {
      pairs->status = TM_FIT_NOT_MEASURED;
      return;
    }
  pairs->status = tm_pair_fits ((const TmFitPart *)(gconstpointer)bores->data, bores->len,
                                (const TmFitPart *)(gconstpointer)shafts->data, shafts->len, want,
                                &pairs->pairing, &culprit);
  if (pairs->status == TM_FIT_OK)
    take_pairs (pairs, bore);
  else if (culprit != G_MAXUINT)
    pairs->culprit = name_culprit (pairs, bore, culprit);
}

void
tm_fit_pairs_of (TmDocument *document, TmFitPairs *out)
{
  const TmFeature *feature = tm_bench_spot (tm_document_bench (document))->feature;
  const TmFitWant want = feature != NULL ? tm_fit_wanted (feature) : (TmFitWant) { 0 };
  Lots lots
      = { g_array_new (FALSE, TRUE, sizeof (TmFitPart)), g_array_new (FALSE, TRUE, sizeof (TmFitPart)) };
  gboolean bore;

  *out = (TmFitPairs) { .status = TM_FIT_OK,
                        .places = g_array_new (FALSE, TRUE, sizeof (TmFitPlace)),
                        .mates = g_ptr_array_new (),
                        .mates_over = g_ptr_array_new () };
  if (feature == NULL)
    out->status = TM_FIT_NOT_MEASURED;
  else
    {
      bore = tm_fit_feature_is_bore (feature, &out->status);
      collect (out, &lots, tm_document_job (document), feature);
      if (out->status == TM_FIT_OK)
        pair_up (out, &lots, &want, bore);
    }
  g_array_unref (lots.places);
  g_array_unref (lots.mates);
}

void
tm_fit_pairs_clear (TmFitPairs *pairs)
{
  g_clear_pointer (&pairs->places, g_array_unref);
  g_clear_pointer (&pairs->mates, g_ptr_array_unref);
  g_clear_pointer (&pairs->mates_over, g_ptr_array_unref);
  tm_pairing_clear (&pairs->pairing);
}
