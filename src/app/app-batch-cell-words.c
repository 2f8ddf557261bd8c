/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-cell-words: a cell of the grid of pieces and features, in words.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-batch-words.h"
#include "app-feature-words.h"

static char *
describe_cell (const TmGridCell *cell)
{
  const char *verdict, *side;
  long percent;

  if (cell == NULL)
    return g_strdup (_ ("not judged yet"));
  if (cell->verdict == TM_VERDICT_NOT_MEASURED)
    return g_strdup (cell->due ? _ ("to be measured") : _ ("not due"));
  verdict = g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word ((TmVerdict)cell->verdict));
  if (cell->side != TM_SIDE_NONE)
    {
      side = g_dpgettext2 (GETTEXT_PACKAGE, "side", tm_side_word ((TmSide)cell->side));
      /* Translators: verdict and side: "out, metal left". */
      return g_strdup_printf (_ ("%s, %s"), verdict, side);
    }
  if (!isfinite (cell->used))
    return g_strdup (verdict);
  percent = lround (CLAMP (cell->used, 0.0f, 99.0f) * 100);
  /* Translators: verdict, and how far from the middle of the band to its limit: "in, 62 % of the band used".
   */
  return g_strdup_printf (_ ("%s, %ld %% of the band used"), verdict, percent);
}

char *
tm_words_batch_cell (const TmPiece *piece, const TmFeature *feature, const TmGridCell *cell)
{
  g_autofree char *name = feature != NULL ? tm_words_feature (feature) : NULL;
  g_autofree char *state = NULL;

  if (piece == NULL)
    return g_steal_pointer (&name);
  if (feature == NULL)
    return g_strdup_printf (_ ("Piece %s"), piece->serial);
  state = describe_cell (cell);
  /* Translators: piece, feature, state: "Piece 006, 6 · Ø12 H8 bore: out, metal left". */
  return g_strdup_printf (_ ("Piece %s, %s: %s"), piece->serial, name, state);
}

char *
tm_words_batch_count (guint n_measured, guint n_pieces)
{
  return g_strdup_printf (ngettext ("%u of %u piece measured", "%u of %u pieces measured", n_pieces),
                          n_measured, n_pieces);
}
