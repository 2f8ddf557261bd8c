/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-how-many: how many pieces of a lot to measure, and what a number of values says of all pieces.
 */

#include <glib/gi18n-lib.h>
#include <stdio.h>

#include "cli-drift.h"
#include "cli-json.h"
#include "cli-options.h"
#include "core-tolerance.h"

int
tm_drift_sample_lot (guint lot, const TmHowSure *sure, gboolean json)
{
  guint n = tm_lot_sample (lot, sure->share, sure->risk), bad = tm_lot_bad (lot, sure->share);
  double missed = tm_lot_chance (lot, bad, n);

  if (json)
    {
      yajl_gen gen = tm_print_begin ();

      yajl_gen_map_open (gen);
      tm_print_integer (gen, "lot", lot);
      tm_print_integer (gen, "sample", n);
      tm_print_integer (gen, "bad", bad);
      tm_print_number (gen, "missed", missed);
      tm_print_integer (gen, "every", lot / n);
      yajl_gen_map_close (gen);
      tm_print_end (gen);
      return 0;
    }
  printf (ngettext ("measure %u piece of %u, drawn by chance, and take the lot only if it is in\n",
                    "measure %u pieces of %u, drawn by chance, and take the lot only if all are in\n", n),
          n, lot);
  if (lot / n >= 2)
    printf (_ ("spread over the order made that is one piece in every %u\n"), lot / n);
  printf (ngettext ("with %u bad piece in the lot, the sample misses it with a chance of %.2f %%\n",
                    "with %u bad pieces in the lot, the sample misses all of them with a chance of %.2f %%\n",
                    bad),
          bad, 100 * missed);
  return 0;
}

int
tm_drift_values (guint n, const TmHowSure *sure, gboolean json)
{
  double two, one;

  if (n < 2)
    return tm_fail (_ ("drift: --values “%u”: one value has no spread; measure two or more"), n);
  two = tm_tolerance_two_sided (n, sure->coverage, sure->confidence);
  one = tm_tolerance_one_sided (n, sure->coverage, sure->confidence);
  if (json)
    {
      yajl_gen gen = tm_print_begin ();

      yajl_gen_map_open (gen);
      tm_print_integer (gen, "values", n);
      tm_print_number (gen, "coverage", sure->coverage);
      tm_print_number (gen, "confidence", sure->confidence);
      tm_print_number (gen, "two_sided", two);
      tm_print_number (gen, "one_sided", one);
      yajl_gen_map_close (gen);
      tm_print_end (gen);
      return 0;
    }
  printf (_ ("of %u values of a steady, normal process one is %g %% sure that %g %% of all pieces lie\n"), n,
          100 * sure->confidence, 100 * sure->coverage);
  printf (_ ("between their mean less and plus %.4f standard deviations; to one side, within %.4f\n"), two,
          one);
  return 0;
}
