/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-pins: the pin trials that count, with the size and class of each pin and what it proves.
 */

#include <glib/gi18n-lib.h>

#include "report-part.h"
#include "report-pin-words.h"

typedef struct {
  const TmJob *job;
  const TmPinTrial *trial;
} Proof;

static char *
say_proof (gconstpointer data)
{
  const Proof *proof = data;

  return tm_report_pin_proof (proof->job, proof->trial);
}

static void
add_pin (TmParts *parts, const TmPinTrial *trial)
{
  const TmFeature *feature = trial->row.feature;
  const Proof data = { parts->job, trial };
  g_autofree char *place = feature->places > 1 ? g_strdup_printf ("%s/%u", feature->balloon, trial->place)
                                               : g_strdup (feature->balloon);
  g_autofree char *proof = tm_part_both (parts, say_proof, &data);

  tm_report_add_cell (parts->document, place);
  tm_report_add_cell (parts->document, trial->row.piece->serial);
  tm_part_quantity_cell (parts, &trial->size, feature->unit);
  tm_report_add_cell (parts->document, tm_unit_symbol (feature->unit));
  tm_report_add_cell (parts->document, trial->pin_class);
  tm_part_word_cell (parts, NULL, trial->sign == TM_PIN_MINUS ? N_ ("minus") : N_ ("plus"));
  tm_part_quantity_cell (parts, &trial->measured, feature->unit);
  tm_report_add_cell (parts->document, trial->gauge);
  tm_part_word_cell (parts, NULL, trial->went ? N_ ("went") : N_ ("did not go"));
  tm_report_add_cell (parts->document, proof);
}

void
tm_part_pins (TmParts *parts)
{
  static const TmReportColumn columns[] = {
    { N_ ("Feature"), 30, 60, 0, TM_CELL_CENTRE },
    { N_ ("Piece"), 28, 60, 0, TM_CELL_CENTRE },
    { N_ ("Pin"), 36, 0, 0, TM_CELL_NUMBER },
    { N_ ("Unit"), 22, 30, 0, TM_CELL_CENTRE },
    { N_ ("Class"), 26, 40, 0, TM_CELL_CENTRE },
    { N_ ("Sign"), 28, 50, 0, TM_CELL_CENTRE },
    { N_ ("Pin measured"), 40, 0, 0, TM_CELL_NUMBER },
    { N_ ("Set"), 30, 70, 0, TM_CELL_PLAIN },
    { N_ ("Result"), 40, 70, 0, TM_CELL_PLAIN },
    { N_ ("Proves that the mating size is"), 70, 150, 1, TM_CELL_PLAIN },
  };
  const GPtrArray *trials = parts->job->pin_trials;
  gboolean begun = FALSE;

  for (guint i = 0; i < trials->len; i++)
    {
      const TmPinTrial *trial = g_ptr_array_index (trials, i);

      if (!tm_row_counts (&trial->row))
        continue;
      if (!begun)
        {
          tm_part_section (parts, N_ ("Pin trials"), "pins", FALSE);
          tm_part_table (parts, columns, G_N_ELEMENTS (columns));
        }
      begun = TRUE;
      add_pin (parts, trial);
    }
}
