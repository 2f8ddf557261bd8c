/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-gap-join: one thing that is missing on many pieces, at many places or stations is one gap.
 */

#include "report-gaps.h"

#include <string.h>

void
tm_gap_free (TmGap *gap)
{
  if (gap == NULL)
    return;
  g_clear_pointer (&gap->pieces, g_ptr_array_unref);
  g_clear_pointer (&gap->places, g_array_unref);
  g_clear_pointer (&gap->stations, g_ptr_array_unref);
  g_free (gap);
}

/* -------- What two gaps have in common -------- */

static guint
mix (guint hash, gconstpointer value)
{
  return hash * 31 + g_direct_hash (value);
}

static guint
hash_thing (const TmGap *gap)
{
  return mix (mix (g_str_hash (gap->field), gap->feature), GUINT_TO_POINTER (gap->kind));
}

static gboolean
is_same_thing (const TmGap *a, const TmGap *b)
{
  return a->kind == b->kind && a->feature == b->feature && g_str_equal (a->field, b->field);
}

static guint
hash_list (guint hash, const GPtrArray *list)
{
  for (guint i = 0; list != NULL && i < list->len; i++)
    hash = mix (hash, g_ptr_array_index (list, i));
  return hash;
}

static gboolean
is_same_list (const GPtrArray *a, const GPtrArray *b)
{
  if (a == NULL || b == NULL)
    return a == b;
  return a->len == b->len && memcmp (a->pdata, b->pdata, a->len * sizeof *a->pdata) == 0;
}

static gboolean
are_same_pieces (const TmGap *a, const TmGap *b)
{
  return a->piece == b->piece && is_same_list (a->pieces, b->pieces);
}

static gboolean
are_same_places (const TmGap *a, const TmGap *b)
{
  if (a->place != b->place || a->places == NULL || b->places == NULL)
    return a->place == b->place && a->places == b->places;
  return a->places->len == b->places->len
         && memcmp (a->places->data, b->places->data, a->places->len * sizeof (guint)) == 0;
}

/* -------- The three passes -------- */

static guint
hash_but_piece (gconstpointer gap)
{
  const TmGap *it = gap;

  return mix (hash_thing (it) ^ g_str_hash (it->station), GUINT_TO_POINTER (it->place));
}

static gboolean
differs_by_piece (gconstpointer a, gconstpointer b)
{
  const TmGap *one = a;
  const TmGap *other = b;

  return is_same_thing (one, other) && one->place == other->place
         && g_str_equal (one->station, other->station);
}

static void
take_piece (TmGap *gap, const TmGap *from)
{
  if (gap->pieces == NULL)
    {
      gap->pieces = g_ptr_array_new ();
      g_ptr_array_add (gap->pieces, (gpointer)gap->piece);
    }
  g_ptr_array_add (gap->pieces, (gpointer)from->piece);
}

static guint
hash_but_place (gconstpointer gap)
{
  const TmGap *it = gap;

  return hash_list (mix (hash_thing (it) ^ g_str_hash (it->station), it->piece), it->pieces);
}

static gboolean
differs_by_place (gconstpointer a, gconstpointer b)
{
  const TmGap *one = a;
  const TmGap *other = b;

  return is_same_thing (one, other) && g_str_equal (one->station, other->station)
         && are_same_pieces (one, other);
}

static void
take_place (TmGap *gap, const TmGap *from)
{
  if (gap->places == NULL)
    {
      gap->places = g_array_new (FALSE, FALSE, sizeof (guint));
      g_array_append_val (gap->places, gap->place);
    }
  g_array_append_val (gap->places, from->place);
}

static guint
hash_but_station (gconstpointer gap)
{
  const TmGap *it = gap;

  return hash_list (mix (mix (hash_thing (it), it->piece), GUINT_TO_POINTER (it->place)), it->pieces);
}

static gboolean
differs_by_station (gconstpointer a, gconstpointer b)
{
  return is_same_thing (a, b) && are_same_pieces (a, b) && are_same_places (a, b);
}

static void
take_station (TmGap *gap, const TmGap *from)
{
  if (gap->stations == NULL)
    {
      gap->stations = g_ptr_array_new ();
      g_ptr_array_add (gap->stations, (gpointer)gap->station);
    }
  g_ptr_array_add (gap->stations, (gpointer)from->station);
}

/* A gap that differs from one before it only in what @take takes goes into that one. */
static void
join (GPtrArray *gaps, GHashFunc hash, GEqualFunc differs, void (*take) (TmGap *gap, const TmGap *from))
{
  g_autoptr (GHashTable) kept = g_hash_table_new (hash, differs);
  guint n = 0;

  for (guint i = 0; i < gaps->len; i++)
    {
      TmGap *gap = g_ptr_array_index (gaps, i);
      TmGap *before = g_hash_table_lookup (kept, gap);

      if (before != NULL)
        {
          take (before, gap);
          tm_gap_free (gap);
        }
      else
        {
          g_hash_table_add (kept, gap);
          gaps->pdata[n++] = gap;
        }
    }
  /* Those behind have gone or moved up. */
  for (guint i = n; i < gaps->len; i++)
    gaps->pdata[i] = NULL;
  g_ptr_array_set_size (gaps, (int)n);
}

/* By pieces first: what one piece lacks at two places and others at one stays apart, and is told as it is. */
void
tm_report_join_gaps (GPtrArray *gaps)
{
  join (gaps, hash_but_piece, differs_by_piece, take_piece);
  join (gaps, hash_but_place, differs_by_place, take_place);
  join (gaps, hash_but_station, differs_by_station, take_station);
}
