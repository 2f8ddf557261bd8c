/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Gauge-block stacks.  The least numbers of blocks of the usual sets were found by a search of every choice,
 * outside this program; here a search of every subset checks random sets and sizes.
 */

#include "core-blocks.h"

static gint64
count_of (const char *text, TmUnit unit)
{
  TmQuantity quantity;

  g_assert_cmpint (tm_quantity_read (text, unit, &quantity), ==, TM_READ_OK);
  return quantity.count;
}

static GArray *
read_set (const char *code, TmBlockSet *set)
{
  GArray *sizes;

  g_assert_true (tm_block_set_find (code, set));
  g_assert_cmpint (tm_blocks_read (set->text, set->unit, &sizes, NULL), ==, TM_BLOCKS_OK);
  return sizes;
}

static char *
format_stack (const GArray *stack, TmUnit unit)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < stack->len; i++)
    {
      g_autofree char *size = tm_count_format_exact (g_array_index (stack, gint64, i), unit, 0);

      g_string_append_printf (text, "%s%s", i > 0 ? " + " : "", size);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* -------- Sets -------- */

/* Published: 112 pieces are 1 + 9 + 49 + 49 + 4.  From memory: 88 are 1 + 9 + 49 + 19 + 10, 87 the same
 * without 1.0005, 81 inch ones 9 + 49 + 19 + 4. */
static void
test_sets (void)
{
  TmBlockSet set;
  guint i;

  for (i = 0; tm_block_set (i, &set); i++)
    {
      g_autoptr (GArray) sizes = NULL;
      TmBlockSet found;

      g_assert_cmpint (tm_blocks_read (set.text, set.unit, &sizes, NULL), ==, TM_BLOCKS_OK);
      g_assert_cmpuint (sizes->len, ==, set.pieces);
      g_assert_cmpint (g_ascii_strtoll (set.name, NULL, 10), ==, set.pieces);
      g_assert_true (tm_block_set_find (set.code, &found));
      g_assert_cmpstr (found.text, ==, set.text);
    }
  g_assert_cmpuint (i, ==, 4);
  g_assert_false (tm_block_set_find ("M13", &set));
}

static void
test_read (void)
{
  static const struct {
    const char *text;
    TmUnit unit;
    TmBlocksStatus status;
    gsize where;
    const char *sizes;
  } cases[] = {
    { "25; 5;25;1,005", TM_UNIT_MM, TM_BLOCKS_OK, 0, "1.005 + 5 + 25" },
    { " 10-40 by 10 ", TM_UNIT_MM, TM_BLOCKS_OK, 0, "10 + 20 + 30 + 40" },
    { "1–1.2 by .1\n5", TM_UNIT_MM, TM_BLOCKS_OK, 0, "1 + 1.1 + 1.2 + 5" },
    { "25.4 mm; .5", TM_UNIT_IN, TM_BLOCKS_OK, 0, "0.5 + 1" },
    { "7-7 by 1", TM_UNIT_MM, TM_BLOCKS_OK, 0, "7" },
    { "", TM_UNIT_MM, TM_BLOCKS_EMPTY, 0, NULL },
    { " ; ;", TM_UNIT_MM, TM_BLOCKS_EMPTY, 0, NULL },
    { "5; six", TM_UNIT_MM, TM_BLOCKS_NOT_READ, 2, NULL },
    { "5; 0", TM_UNIT_MM, TM_BLOCKS_NOT_READ, 2, NULL },
    { "-5", TM_UNIT_MM, TM_BLOCKS_NOT_READ, 0, NULL },
    { "20 deg", TM_UNIT_MM, TM_BLOCKS_NOT_READ, 0, NULL },
    { "1-2", TM_UNIT_MM, TM_BLOCKS_NOT_READ, 0, NULL },
    { "1-2 by 0", TM_UNIT_MM, TM_BLOCKS_NOT_READ, 0, NULL },
    { "1 by 2", TM_UNIT_MM, TM_BLOCKS_NOT_READ, 0, NULL },
    { "5;1-2 by .3", TM_UNIT_MM, TM_BLOCKS_BAD_STEP, 2, NULL },
    { "2-1 by .1", TM_UNIT_MM, TM_BLOCKS_BAD_STEP, 0, NULL },
    { "1-401 by 1", TM_UNIT_MM, TM_BLOCKS_TOO_MANY, 0, NULL },
    { "1-300 by 1; 301-500 by 1", TM_UNIT_MM, TM_BLOCKS_TOO_MANY, 11, NULL },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GArray) sizes = NULL;
      g_autofree char *text = NULL;
      gsize where;

      g_test_message ("“%s”", cases[i].text);
      g_assert_cmpint (tm_blocks_read (cases[i].text, cases[i].unit, &sizes, &where), ==, cases[i].status);
      g_assert_cmpuint (where, ==, cases[i].where);
      text = sizes != NULL ? format_stack (sizes, cases[i].unit) : NULL;
      g_assert_cmpstr (text, ==, cases[i].sizes);
    }
}

/* -------- Stacks -------- */

/* Least numbers by a search of every choice (recomputed); of each number the stack with the largest blocks.
 * That 58.345 = 1.005 + 1.04 + 1.30 + 5 + 50 is the National Physical Laboratory's own example, of five
 * blocks, clearing the last digit first. */
static void
test_worked (void)
{
  static const struct {
    const char *set, *size, *stack;
  } cases[] = {
    { "M112", "58.345", "1.005 + 1.34 + 6 + 50" },
    { "M112", "25.0005", "1.0005 + 24" },
    { "M112", "37.869", "1.009 + 1.36 + 10.5 + 25" },
    { "M112", "12.5", "12.5" },
    { "M88", "58.345", "1.005 + 1.34 + 6 + 50" },
    { "M88", "46.235", "1.005 + 1.23 + 4 + 40" },
    { "IN81", "0.6337", NULL },
    { "IN81", "2.5", "0.5 + 2" },
    { "IN81", "0.5001", "0.1001 + 0.4" },
  };
  static const guint counts[] = { 4, 2, 4, 1, 4, 4, 3, 2, 2 };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmBlockSet set;
      g_autoptr (GArray) sizes = read_set (cases[i].set, &set);
      g_autoptr (GArray) stack = NULL;
      g_autofree char *text = NULL;
      gint64 size = count_of (cases[i].size, set.unit);
      gint64 sum = 0;

      g_assert_cmpint (tm_blocks_stack (sizes, size, 0, &stack), ==, TM_BLOCKS_OK);
      g_assert_cmpuint (stack->len, ==, counts[i]);
      for (guint j = 0; j < stack->len; j++)
        sum += g_array_index (stack, gint64, j);
      g_assert_cmpint (sum, ==, size);
      text = format_stack (stack, set.unit);
      if (cases[i].stack != NULL)
        g_assert_cmpstr (text, ==, cases[i].stack);
    }
  g_assert_cmpint (count_of ("1.005", TM_UNIT_MM) + count_of ("1.04", TM_UNIT_MM)
                       + count_of ("1.30", TM_UNIT_MM) + count_of ("5", TM_UNIT_MM)
                       + count_of ("50", TM_UNIT_MM),
                   ==, count_of ("58.345", TM_UNIT_MM));
}

/* Two wear blocks of 2 mm: the stack between them makes 54.345 = 1.005 + 1.34 + 2 + 50 (hand arithmetic). */
static void
test_wear (void)
{
  TmBlockSet set;
  g_autoptr (GArray) sizes = read_set ("M112", &set);
  g_autoptr (GArray) stack = NULL;
  g_autoptr (GArray) nothing = NULL;
  g_autofree char *text = NULL;
  gint64 two = count_of ("2", TM_UNIT_MM);

  g_assert_cmpint (tm_blocks_stack (sizes, count_of ("58.345", TM_UNIT_MM), two, &stack), ==, TM_BLOCKS_OK);
  text = format_stack (stack, TM_UNIT_MM);
  g_assert_cmpstr (text, ==, "1.005 + 1.34 + 2 + 50");
  g_assert_cmpint (tm_blocks_stack (sizes, 2 * two, two, &nothing), ==, TM_BLOCKS_OK);
  g_assert_cmpuint (nothing->len, ==, 0);
  g_clear_pointer (&nothing, g_array_unref);
  g_assert_cmpint (tm_blocks_stack (sizes, 2 * two - 1, two, &nothing), ==, TM_BLOCKS_WEAR);
  g_assert_null (nothing);
}

static void
test_refused (void)
{
  static const struct {
    const char *set, *size, *wear;
  } cases[] = {
    { "M112", "58.3451", "0" }, /* finer than any block */
    { "M112", "0.3", "0" },     /* under the smallest */
    { "M112", "0.75", "0" },    /* between one block and two */
    { "M112", "500", "0" },     /* more than its eight largest */
    { "M112", "4.3", "2" },     /* what is left is under the smallest */
    { "M87", "25.0005", "0" },  /* that set has no 1.0005 */
    { "IN81", "0.00001", "0" }, { "IN81", "-1", "0" }, { "IN81", "0", "0" }, { "IN81", "1", "-0.1" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmBlockSet set;
      g_autoptr (GArray) sizes = read_set (cases[i].set, &set);
      GArray *stack = NULL;

      g_test_message ("%s of %s", cases[i].size, cases[i].set);
      g_assert_cmpint (tm_blocks_stack (sizes, count_of (cases[i].size, set.unit),
                                        count_of (cases[i].wear, set.unit), &stack),
                       ==, TM_BLOCKS_NO_STACK);
      g_assert_null (stack);
    }
}

/* -------- Against every subset -------- */

/* Whether subset @a is to be preferred to @b, both of one sum: fewer, then the larger blocks. */
static gboolean
is_better (guint a, guint b)
{
  int fewer = __builtin_popcount (a) - __builtin_popcount (b);

  /* Sizes rise with the bit, so that the subset with the largest block is the larger number. */
  return fewer < 0 || (fewer == 0 && a > b);
}

static guint
search_subsets (const GArray *sizes, gint64 size)
{
  guint best = 0;

  for (guint subset = 1; subset < 1u << sizes->len; subset++)
    {
      gint64 sum = 0;

      if (__builtin_popcount (subset) > TM_STACK_MOST)
        continue;
      for (guint i = 0; i < sizes->len; i++)
        sum += (subset >> i & 1) != 0 ? g_array_index (sizes, gint64, i) : 0;
      if (sum == size && (best == 0 || is_better (subset, best)))
        best = subset;
    }
  return best;
}

static gint64
choose_size (const GArray *sizes, GRand *rand)
{
  gint64 size = 0;

  /* Half of them a sum of some blocks, so that there is a stack; half anything. */
  if (g_rand_boolean (rand))
    return g_rand_int_range (rand, 1, 300);
  for (guint i = 0; i < sizes->len; i++)
    size += g_rand_int_range (rand, 0, 3) == 0 ? g_array_index (sizes, gint64, i) : 0;
  return MAX (size, 1);
}

static void
check_stack (const GArray *sizes, gint64 size)
{
  g_autoptr (GArray) stack = NULL;
  TmBlocksStatus status = tm_blocks_stack (sizes, size, 0, &stack);
  guint best = search_subsets (sizes, size);
  guint at = 0;

  g_assert_cmpint (status, ==, best == 0 ? TM_BLOCKS_NO_STACK : TM_BLOCKS_OK);
  for (guint i = 0; best != 0 && i < sizes->len; i++)
    if ((best >> i & 1) != 0)
      {
        g_assert_cmpuint (at, <, stack->len);
        g_assert_cmpint (g_array_index (stack, gint64, at++), ==, g_array_index (sizes, gint64, i));
      }
  if (best != 0)
    g_assert_cmpuint (at, ==, stack->len);
}

static void
test_every_subset (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (41);

  for (guint round = 0; round < 600; round++)
    {
      g_autoptr (GArray) sizes = g_array_new (FALSE, FALSE, sizeof (gint64));
      guint n = (guint)g_rand_int_range (rand, 1, 12);
      gint64 size = 0;

      for (guint i = 0; i < n; i++)
        {
          size += g_rand_int_range (rand, 1, round % 2 == 0 ? 6 : 60);
          g_array_append_val (sizes, size);
        }
      for (guint i = 0; i < 3; i++)
        check_stack (sizes, choose_size (sizes, rand));
    }
}

/* -------- Within its bounds -------- */

/* Whole sets over their whole reach: each size is made or refused, never given up. */
static void
test_whole_reach (void)
{
  static const struct {
    const char *set;
    const char *most, *step;
  } cases[] = { { "M112", "420", "0.7365" }, { "M88", "560", "0.9865" }, { "IN81", "15", ".0437" } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmBlockSet set;
      g_autoptr (GArray) sizes = read_set (cases[i].set, &set);
      gint64 step = count_of (cases[i].step, set.unit);
      gint64 most = count_of (cases[i].most, set.unit);

      for (gint64 size = step; size <= most; size += step)
        {
          g_autoptr (GArray) stack = NULL;
          TmBlocksStatus status = tm_blocks_stack (sizes, size, 0, &stack);
          gint64 sum = 0;

          g_assert_cmpint (status, !=, TM_BLOCKS_GAVE_UP);
          for (guint j = 0; stack != NULL && j < stack->len; j++)
            sum += g_array_index (stack, gint64, j);
          g_assert_cmpint (sum, ==, status == TM_BLOCKS_OK ? size : 0);
        }
    }
}

/* 400 sizes without any order in them: an answer comes, whatever it is. */
static void
test_disorder (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  g_autoptr (GArray) sizes = g_array_new (FALSE, FALSE, sizeof (gint64));
  gint64 size = 0;

  for (guint i = 0; i < TM_BLOCKS_MOST; i++)
    {
      size += g_rand_int_range (rand, 1, G_MAXINT32);
      g_array_append_val (sizes, size);
    }
  for (guint i = 0; i < 3; i++)
    {
      g_autoptr (GArray) stack = NULL;
      gint64 asked = size + g_rand_int_range (rand, 1, G_MAXINT32);
      TmBlocksStatus status = tm_blocks_stack (sizes, asked, 0, &stack);
      gint64 sum = 0;

      g_assert_cmpint (status == TM_BLOCKS_OK, ==, stack != NULL);
      for (guint j = 0; stack != NULL && j < stack->len; j++)
        sum += g_array_index (stack, gint64, j);
      g_assert_true (stack == NULL || sum == asked);
    }
}

static void
test_words (void)
{
  for (guint i = 0; i < TM_N_BLOCKS_STATUSES; i++)
    g_assert_cmpstr (tm_blocks_status_word ((TmBlocksStatus)i), !=, NULL);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/blocks/sets", test_sets);
  g_test_add_func ("/blocks/read", test_read);
  g_test_add_func ("/blocks/worked", test_worked);
  g_test_add_func ("/blocks/wear", test_wear);
  g_test_add_func ("/blocks/refused", test_refused);
  g_test_add_func ("/blocks/every-subset", test_every_subset);
  g_test_add_func ("/blocks/whole-reach", test_whole_reach);
  g_test_add_func ("/blocks/disorder", test_disorder);
  g_test_add_func ("/blocks/words", test_words);
  return g_test_run ();
}
