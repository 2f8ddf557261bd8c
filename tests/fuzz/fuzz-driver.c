/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Usage: fuzz-TARGET [COUNT [SEED]].  Prints how many inputs were run; a failed check aborts and
 * leaves the input on standard error.
 */

#include "fuzz-driver.h"

#include <stdio.h>
#include <string.h>

#define DEFAULT_COUNT 20000
#define DEFAULT_SEED  286
#define MAX_EDITS     6
#define MAX_SIZE      600 /* unless the seed itself is longer */

/* Pieces that a text is likely to be broken by. */
static const char *const tokens[] = {
  "0",
  "9",
  ".",
  ",",
  "-",
  "+",
  "/",
  "±",
  "°",
  "Ø",
  "x",
  "X",
  " ",
  "\t",
  "'",
  "\"",
  "(",
  ")",
  "mm",
  "in",
  "um",
  "H7",
  "p6",
  "E",
  "max",
  "min",
  "Ⓜ",
  "⌖",
  "A",
  "e9",
  "inf",
  "nan",
  "\xff",
  "\xe2\x8c",
  "99999999999999999999",
  "0.0000000000000001",
  "4X",
  "−",
  "R",
  "M8",
  "HRC",
  "1/64",
  "%s%n",
  "\n",
  "p",
  "f",
  "=",
  "thou",
};

static void
edit (GByteArray *bytes, GRand *random, guint most)
{
  guint at = bytes->len > 0 ? (guint)g_rand_int_range (random, 0, (gint32)bytes->len) : 0;
  const char *token = tokens[g_rand_int_range (random, 0, G_N_ELEMENTS (tokens))];
  g_autofree guint8 *tail = g_memdup2 (bytes->data + at, bytes->len - at);
  guint tail_size = bytes->len - at;

  switch (g_rand_int_range (random, 0, 5))
    {
    case 0: /* drop a byte */
      if (bytes->len > 0)
        g_byte_array_remove_index (bytes, at);
      break;
    case 1: /* change a byte */
      if (bytes->len > 0)
        bytes->data[at] = (guint8)g_rand_int_range (random, 1, 256);
      break;
    case 2: /* cut the rest off */
      g_byte_array_set_size (bytes, at);
      break;
    case 3: /* repeat the rest */
      g_byte_array_append (bytes, tail, tail_size);
      break;
    default: /* put a piece in */
      g_byte_array_set_size (bytes, at);
      g_byte_array_append (bytes, (const guint8 *)token, (guint)strlen (token));
      g_byte_array_append (bytes, tail, tail_size);
      break;
    }
  if (bytes->len > most)
    g_byte_array_set_size (bytes, most);
}

static void
run_one (GRand *random, guint n_seeds)
{
  const char *seed = fuzz_seeds[g_rand_int_range (random, 0, (gint32)n_seeds)];
  g_autoptr (GByteArray) bytes = g_byte_array_new ();

  g_byte_array_append (bytes, (const guint8 *)seed, (guint)strlen (seed));
  for (int edits = g_rand_int_range (random, 0, MAX_EDITS + 1); edits > 0; edits--)
    edit (bytes, random, MAX (MAX_SIZE, (guint)strlen (seed)));
  LLVMFuzzerTestOneInput (bytes->data, bytes->len);
}

int
main (int argc, char **argv)
{
  guint64 count = argc > 1 ? g_ascii_strtoull (argv[1], NULL, 10) : DEFAULT_COUNT;
  guint32 start = argc > 2 ? (guint32)g_ascii_strtoull (argv[2], NULL, 10) : DEFAULT_SEED;
  GRand *random = g_rand_new_with_seed (start);
  guint n_seeds = g_strv_length ((char **)fuzz_seeds);

  for (guint i = 0; i < n_seeds; i++)
    LLVMFuzzerTestOneInput ((const guint8 *)fuzz_seeds[i], strlen (fuzz_seeds[i]));
  for (guint64 i = 0; i < count; i++)
    run_one (random, n_seeds);
  g_rand_free (random);
  printf ("%u seeds and %" G_GUINT64_FORMAT " mutations from seed %u: no failed check\n", n_seeds, count,
          start);
  return 0;
}
