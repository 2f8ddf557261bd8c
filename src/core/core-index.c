/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-index.h"

/* The key of `spots`; the array that it leads to lies behind it in one allocation. */
typedef struct {
  const TmPiece *piece;
  const TmFeature *feature;
  guint place;
} Spot;

struct _TmJobIndex {
  GHashTable *names[TM_N_INDEXES]; /* name -> row */
  guint64 last_id[TM_N_INDEXES];
  GHashTable *spots; /* Spot -> GPtrArray of TmReading */
  GHashTable *pins;  /* Spot -> GPtrArray of TmPinTrial */
  GHashTable *cuts;  /* Spot -> GPtrArray of TmCutRow */
  GHashTable *uses;  /* feature or piece -> count */
  Spot other;        /* of a view: the place whose rows are others; piece NULL: no view */
  GPtrArray *other_readings, *other_trials;
};

static guint
hash_spot (gconstpointer key)
{
  const Spot *spot = key;

  return g_direct_hash (spot->piece) * 31 + g_direct_hash (spot->feature) * 17 + spot->place;
}

static gboolean
spots_equal (gconstpointer a, gconstpointer b)
{
  const Spot *left = a;
  const Spot *right = b;

  return left->piece == right->piece && left->feature == right->feature && left->place == right->place;
}

TmJobIndex *
tm_index_new (void)
{
  TmJobIndex *index = g_new0 (TmJobIndex, 1);

  for (guint i = 0; i < TM_N_INDEXES; i++)
    index->names[i] = g_hash_table_new (g_str_hash, g_str_equal);
  index->spots = g_hash_table_new_full (hash_spot, spots_equal, g_free, (GDestroyNotify)g_ptr_array_unref);
  index->pins = g_hash_table_new_full (hash_spot, spots_equal, g_free, (GDestroyNotify)g_ptr_array_unref);
  index->cuts = g_hash_table_new_full (hash_spot, spots_equal, g_free, (GDestroyNotify)g_ptr_array_unref);
  index->uses = g_hash_table_new (NULL, NULL);
  return index;
}

void
tm_index_free (TmJobIndex *index)
{
  for (guint i = 0; i < TM_N_INDEXES; i++)
    g_hash_table_unref (index->names[i]);
  g_hash_table_unref (index->spots);
  g_hash_table_unref (index->pins);
  g_hash_table_unref (index->cuts);
  g_hash_table_unref (index->uses);
  g_clear_pointer (&index->other_readings, g_ptr_array_unref);
  g_clear_pointer (&index->other_trials, g_ptr_array_unref);
  g_free (index);
}

TmJobIndex *
tm_index_view (const TmJobIndex *index, const TmPiece *piece, const TmFeature *feature, guint place,
               GPtrArray *readings, GPtrArray *trials)
{
  TmJobIndex *view = g_new0 (TmJobIndex, 1);

  *view = *index;
  for (guint i = 0; i < TM_N_INDEXES; i++)
    g_hash_table_ref (view->names[i]);
  g_hash_table_ref (view->spots);
  g_hash_table_ref (view->pins);
  g_hash_table_ref (view->cuts);
  g_hash_table_ref (view->uses);
  view->other = (Spot) { piece, feature, place };
  view->other_readings = readings != NULL ? g_ptr_array_ref (readings) : NULL;
  view->other_trials = trials != NULL ? g_ptr_array_ref (trials) : NULL;
  return view;
}

void
tm_index_insert (TmJobIndex *index, TmIndexKind kind, const char *name, gpointer row)
{
  guint64 id;

  g_hash_table_insert (index->names[kind], (gpointer)name, row);
  if (g_ascii_string_to_unsigned (name, 10, 1, G_MAXUINT64 - 1, &id, NULL))
    index->last_id[kind] = MAX (index->last_id[kind], id);
}

void
tm_index_remove (TmJobIndex *index, TmIndexKind kind, const char *name)
{
  g_hash_table_remove (index->names[kind], name);
}

gpointer
tm_index_find (const TmJobIndex *index, TmIndexKind kind, const char *name)
{
  return name != NULL ? g_hash_table_lookup (index->names[kind], name) : NULL;
}

guint64
tm_index_next_id (const TmJobIndex *index, TmIndexKind kind)
{
  return index->last_id[kind] + 1;
}

static void
add_at (GHashTable *spots, Spot spot, gpointer row)
{
  GPtrArray *rows = g_hash_table_lookup (spots, &spot);

  if (rows == NULL)
    {
      Spot *key = g_new (Spot, 1);

      *key = spot;
      rows = g_ptr_array_new ();
      g_hash_table_insert (spots, key, rows);
    }
  g_ptr_array_add (rows, row);
}

void
tm_index_add_reading (TmJobIndex *index, TmReading *reading)
{
  add_at (index->spots, (Spot) { reading->row.piece, reading->row.feature, reading->place }, reading);
}

void
tm_index_add_pin_trial (TmJobIndex *index, TmPinTrial *trial)
{
  add_at (index->pins, (Spot) { trial->row.piece, trial->row.feature, trial->place }, trial);
}

void
tm_index_add_cut (TmJobIndex *index, TmCutRow *cut)
{
  add_at (index->cuts, (Spot) { cut->row.piece, cut->row.feature, cut->place }, cut);
}

const GPtrArray *
tm_index_cuts_at (const TmJobIndex *index, const TmPiece *piece, const TmFeature *feature, guint place)
{
  Spot spot = { piece, feature, place };

  /* Most jobs have none, and each reading that joins asks. */
  if (g_hash_table_size (index->cuts) == 0)
    return NULL;
  return g_hash_table_lookup (index->cuts, &spot);
}

const GPtrArray *
tm_index_pin_trials_at (const TmJobIndex *index, const TmPiece *piece, const TmFeature *feature, guint place)
{
  Spot spot = { piece, feature, place };

  if (index->other.piece != NULL && spots_equal (&spot, &index->other))
    return index->other_trials;
  return g_hash_table_lookup (index->pins, &spot);
}

const GPtrArray *
tm_index_readings_at (const TmJobIndex *index, const TmPiece *piece, const TmFeature *feature, guint place)
{
  Spot spot = { piece, feature, place };

  if (index->other.piece != NULL && spots_equal (&spot, &index->other))
    return index->other_readings;
  return g_hash_table_lookup (index->spots, &spot);
}

void
tm_index_use (TmJobIndex *index, gconstpointer feature_or_piece)
{
  guint count = tm_index_uses (index, feature_or_piece) + 1;

  g_hash_table_insert (index->uses, (gpointer)feature_or_piece, GUINT_TO_POINTER (count));
}

guint
tm_index_uses (const TmJobIndex *index, gconstpointer feature_or_piece)
{
  return GPOINTER_TO_UINT (g_hash_table_lookup (index->uses, feature_or_piece));
}
