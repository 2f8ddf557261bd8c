/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fewest blocks: depth-first by the number of blocks allowed, largest block first, so that the first stack
 * found is the one that is wanted.  Two bounds cut the tree: what the k largest and the k smallest blocks
 * left add up to, and how many of the blocks left it takes at least to reach the rest modulo a step (a table
 * by the usual subset-sum recurrence).  The last two blocks are found by closing in from both ends.
 */

#include "core-blocks.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* -------- Reading a set -------- */

static gboolean
read_size (const char *text, TmUnit unit, gint64 *size)
{
  TmQuantity quantity;

  if (tm_quantity_read (text, unit, &quantity) != TM_READ_OK
      || tm_unit_dimension (quantity.unit) != TM_DIMENSION_LENGTH || quantity.count <= 0)
    return FALSE;
  *size = quantity.count;
  return TRUE;
}

/* Past the dash of "1.001-1.009", with the text before it ended there; NULL when there is none. */
static char *
split_at_dash (char *text)
{
  static const char *const dashes[] = { "-", "–", "—" };

  for (gsize i = 0; i < G_N_ELEMENTS (dashes); i++)
    {
      char *dash = strstr (text, dashes[i]);

      if (dash == NULL)
        continue;
      *dash = '\0';
      return dash + strlen (dashes[i]);
    }
  return NULL;
}

static TmBlocksStatus
add_series (GArray *sizes, gint64 from, gint64 to, gint64 step)
{
  if (to < from || (to - from) % step != 0)
    return TM_BLOCKS_BAD_STEP;
  if ((to - from) / step >= TM_BLOCKS_MOST)
    return TM_BLOCKS_TOO_MANY;
  for (gint64 i = 0; i <= (to - from) / step; i++)
    {
      gint64 size = from + i * step;

      g_array_append_val (sizes, size);
    }
  return TM_BLOCKS_OK;
}

/* "25", or "25-100 by 25"; @part is changed. */
static TmBlocksStatus
read_part (char *part, TmUnit unit, GArray *sizes)
{
  char *by = strstr (part, "by");
  char *second;
  gint64 from, to, step;

  if (by == NULL)
    {
      if (!read_size (part, unit, &from))
        return TM_BLOCKS_NOT_READ;
      g_array_append_val (sizes, from);
      return TM_BLOCKS_OK;
    }
  *by = '\0';
  second = split_at_dash (part);
  if (second == NULL || !read_size (part, unit, &from) || !read_size (second, unit, &to)
      || !read_size (by + strlen ("by"), unit, &step))
    return TM_BLOCKS_NOT_READ;
  return add_series (sizes, from, to, step);
}

static int
compare_sizes (gconstpointer a, gconstpointer b)
{
  gint64 one = *(const gint64 *)a;
  gint64 other = *(const gint64 *)b;

  return (one > other) - (one < other);
}

static void
sort_once_each (GArray *sizes)
{
  guint kept = 0;

  g_array_sort (sizes, compare_sizes);
  for (guint i = 0; i < sizes->len; i++)
    if (kept == 0 || g_array_index (sizes, gint64, kept - 1) != g_array_index (sizes, gint64, i))
      g_array_index (sizes, gint64, kept++) = g_array_index (sizes, gint64, i);
  g_array_set_size (sizes, kept);
}

static TmBlocksStatus
read_parts (const char *text, TmUnit unit, GArray *sizes, gsize *where)
{
  g_auto (GStrv) parts = g_strsplit_set (text, ";\n", -1);
  gsize offset = 0;

  for (guint i = 0; parts[i] != NULL; i++)
    {
      gsize length = strlen (parts[i]);
      TmBlocksStatus status = TM_BLOCKS_OK;

      *where = offset;
      if (*g_strstrip (parts[i]) != '\0')
        status = read_part (parts[i], unit, sizes);
      if (status == TM_BLOCKS_OK && sizes->len > TM_BLOCKS_MOST)
        status = TM_BLOCKS_TOO_MANY;
      if (status != TM_BLOCKS_OK)
        return status;
      offset += length + 1;
    }
  *where = 0;
  return sizes->len > 0 ? TM_BLOCKS_OK : TM_BLOCKS_EMPTY;
}

TmBlocksStatus
tm_blocks_read (const char *text, TmUnit unit, GArray **sizes, gsize *where)
{
  g_autoptr (GArray) read = g_array_new (FALSE, FALSE, sizeof (gint64));
  TmBlocksStatus status;
  gsize at = 0;

  g_return_val_if_fail (text != NULL && sizes != NULL, TM_BLOCKS_EMPTY);

  *sizes = NULL;
  status = read_parts (text, unit, read, &at);
  if (where != NULL)
    *where = at;
  if (status != TM_BLOCKS_OK)
    return status;
  sort_once_each (read);
  *sizes = g_steal_pointer (&read);
  return TM_BLOCKS_OK;
}

/* -------- Usual sets -------- */

static const char source_counted[] = N_ ("as published in a table, its pieces counted");
static const char source_memory[] = N_ ("common practice, from memory, its pieces counted");

static const TmBlockSet sets[] = {
  { "M112", NC_ ("block set", "112 pieces, metric"), TM_UNIT_MM, 112,
    "1.0005; 1.001-1.009 by 0.001; 1.01-1.49 by 0.01; 0.5-24.5 by 0.5; 25-100 by 25", source_counted },
  { "M88", NC_ ("block set", "88 pieces, metric"), TM_UNIT_MM, 88,
    "1.0005; 1.001-1.009 by 0.001; 1.01-1.49 by 0.01; 0.5-9.5 by 0.5; 10-100 by 10", source_memory },
  { "M87", NC_ ("block set", "87 pieces, metric"), TM_UNIT_MM, 87,
    "1.001-1.009 by 0.001; 1.01-1.49 by 0.01; 0.5-9.5 by 0.5; 10-100 by 10", source_memory },
  { "IN81", NC_ ("block set", "81 pieces, inch"), TM_UNIT_IN, 81,
    ".1001-.1009 by .0001; .101-.149 by .001; .050-.950 by .050; 1-4 by 1", source_memory },
};

gboolean
tm_block_set (guint i, TmBlockSet *out)
{
  g_return_val_if_fail (out != NULL, FALSE);

  if (i >= G_N_ELEMENTS (sets))
    return FALSE;
  *out = sets[i];
  return TRUE;
}

gboolean
tm_block_set_find (const char *code, TmBlockSet *out)
{
  for (guint i = 0; code != NULL && tm_block_set (i, out); i++)
    if (g_ascii_strcasecmp (out->code, code) == 0)
      return TRUE;
  return FALSE;
}

/* -------- Stacks -------- */

/* Steps in the table of rests: 2000 of 0.0005 mm are a whole millimetre. */
#define N_RESTS 2000
#define NEVER   G_MAXUINT8

typedef struct {
  const gint64 *sizes; /* rising */
  guint n;
  TmWide *sums;  /* n + 1: of the i smallest */
  gint64 step;   /* greatest common divisor of the sizes */
  guint8 *needs; /* (n + 1) rows of N_RESTS: fewest of the i smallest that leave this rest of N_RESTS steps */
  guint tries;
  gint64 chosen[TM_STACK_MOST];
  guint n_chosen;
} Search;

static gint64
common_divisor (gint64 a, gint64 b)
{
  while (b != 0)
    {
      gint64 rest = a % b;

      a = b;
      b = rest;
    }
  return a;
}

static void
fill_sums (Search *search)
{
  search->sums = g_new0 (TmWide, search->n + 1);
  search->step = 0;
  for (guint i = 0; i < search->n; i++)
    {
      search->sums[i + 1] = search->sums[i] + search->sizes[i];
      search->step = common_divisor (search->sizes[i], search->step);
    }
}

static guint
find_rest (const Search *search, gint64 size)
{
  return (guint)(size / search->step % N_RESTS);
}

static void
fill_needs (Search *search)
{
  search->needs = g_malloc (((gsize)search->n + 1) * N_RESTS);
  memset (search->needs, NEVER, N_RESTS);
  search->needs[0] = 0;
  for (guint i = 0; i < search->n; i++)
    {
      const guint8 *before = search->needs + (gsize)i * N_RESTS;
      guint8 *after = search->needs + ((gsize)i + 1) * N_RESTS;
      guint shift = find_rest (search, search->sizes[i]);

      for (guint rest = 0; rest < N_RESTS; rest++)
        {
          guint8 with = before[rest >= shift ? rest - shift : rest + N_RESTS - shift];

          after[rest] = with < before[rest] && with + 1 < before[rest] ? (guint8)(with + 1) : before[rest];
        }
    }
}

static void
choose (Search *search, gint64 size)
{
  search->chosen[search->n_chosen++] = size;
}

/* Two of the @n smallest, the larger as large as can be. */
static gboolean
find_pair (Search *search, guint n, gint64 rest)
{
  guint low = 0;

  for (guint high = n; high-- > low + 1;)
    {
      while (low + 1 < high && search->sizes[low] < rest - search->sizes[high])
        low++;
      if (search->sizes[low] != rest - search->sizes[high])
        continue;
      choose (search, search->sizes[high]);
      choose (search, search->sizes[low]);
      return TRUE;
    }
  return FALSE;
}

static gboolean
find_one (Search *search, guint n, gint64 rest)
{
  guint low = 0;

  while (low < n)
    {
      guint middle = low + (n - low) / 2;

      if (search->sizes[middle] == rest)
        {
          choose (search, rest);
          return TRUE;
        }
      if (search->sizes[middle] < rest)
        low = middle + 1;
      else
        n = middle;
    }
  return FALSE;
}

static gboolean
may_make (const Search *search, guint n, gint64 rest, guint k)
{
  return k <= n && rest >= search->sums[k] && rest <= search->sums[n] - search->sums[n - k]
         && search->needs[(gsize)n * N_RESTS + find_rest (search, rest)] <= k;
}

/* Exactly @k of the @n smallest that make @rest. */
static gboolean
find_stack (Search *search, guint n, gint64 rest, guint k)
{
  if (!may_make (search, n, rest, k))
    return FALSE;
  if (k == 1)
    return find_one (search, n, rest);
  if (k == 2)
    return find_pair (search, n, rest);
  for (guint i = n; i-- >= k && search->tries < TM_STACK_TRIES;)
    {
      search->tries++;
      if (search->sizes[i] >= rest)
        continue;
      /* With this one the largest, not even the largest of those below it make up the rest. */
      if (rest > search->sums[i + 1] - search->sums[i + 1 - k])
        break;
      choose (search, search->sizes[i]);
      if (find_stack (search, i, rest - search->sizes[i], k - 1))
        return TRUE;
      search->n_chosen--;
    }
  return FALSE;
}

static TmBlocksStatus
run_search (Search *search, gint64 size)
{
  if (size % search->step != 0)
    return TM_BLOCKS_NO_STACK;
  for (guint k = 1; k <= TM_STACK_MOST; k++)
    {
      if (find_stack (search, search->n, size, k))
        return TM_BLOCKS_OK;
      if (search->tries >= TM_STACK_TRIES)
        return TM_BLOCKS_GAVE_UP;
    }
  return TM_BLOCKS_NO_STACK;
}

static GArray *
take_chosen (const Search *search)
{
  GArray *stack = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = search->n_chosen; i-- > 0;)
    g_array_append_val (stack, search->chosen[i]);
  return stack;
}

TmBlocksStatus
tm_blocks_stack (const GArray *sizes, gint64 size, gint64 wear, GArray **stack)
{
  Search search = { 0 };
  TmBlocksStatus status = TM_BLOCKS_NO_STACK;
  TmWide rest = (TmWide)size - 2 * (TmWide)wear;

  g_return_val_if_fail (sizes != NULL && stack != NULL, TM_BLOCKS_EMPTY);

  *stack = NULL;
  if (size > 0 && wear > 0 && rest < 0)
    return TM_BLOCKS_WEAR;
  if (size <= 0 || wear < 0)
    return TM_BLOCKS_NO_STACK;
  /* Larger blocks than the stack itself are of no use. */
  search.sizes = (const gint64 *)(gconstpointer)sizes->data;
  while (search.n < sizes->len && search.sizes[search.n] <= rest)
    search.n++;
  if (rest > 0 && search.n == 0)
    return TM_BLOCKS_NO_STACK;
  if (rest > 0)
    {
      fill_sums (&search);
      fill_needs (&search);
      status = run_search (&search, (gint64)rest);
      g_free (search.sums);
      g_free (search.needs);
    }
  else
    status = TM_BLOCKS_OK;
  if (status == TM_BLOCKS_OK)
    *stack = take_chosen (&search);
  return status;
}

/* -------- Words -------- */

const char *
tm_blocks_status_word (TmBlocksStatus status)
{
  static const char *const words[TM_N_BLOCKS_STATUSES] = {
    [TM_BLOCKS_OK] = NC_ ("blocks status", "stacked"),
    [TM_BLOCKS_EMPTY] = NC_ ("blocks status", "the set has no sizes; write them as 1.0005; 25-100 by 25"),
    [TM_BLOCKS_NOT_READ]
    = NC_ ("blocks status", "neither a size nor a series; write it as 25 or as 25-100 by 25"),
    [TM_BLOCKS_BAD_STEP]
    = NC_ ("blocks status",
           "the series does not come out; from its first size whole steps must lead up to its last"),
    [TM_BLOCKS_TOO_MANY] = NC_ ("blocks status", "more than 400 sizes; no set has so many"),
    [TM_BLOCKS_NO_STACK] = NC_ ("blocks status", "no eight blocks of the set, or fewer, make the size"),
    [TM_BLOCKS_WEAR] = NC_ ("blocks status", "the two wear blocks alone are more than the size"),
    [TM_BLOCKS_GAVE_UP] = NC_ (
        "blocks status", "no stack was found in reasonable time; the sizes of the set have no common step"),
  };

  g_return_val_if_fail ((guint)status < TM_N_BLOCKS_STATUSES, "");
  return words[status];
}
