/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-band-pins: the pins of a band plot: those tried, as they truly may be, those to pull, what they
 * leave open, and where their words go.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-combine.h"
#include "core-form.h"
#include "plot-band-layout.h"

void
tm_band_pin_clear (gpointer pin)
{
  g_free (((TmBandPin *)pin)->label);
  g_free (((TmBandPin *)pin)->words);
}

static char *
print_count (const TmBandPlot *plot, double count)
{
  return tm_count_format ((gint64)llround (count), plot->unit, MIN (plot->decimals + 1, TM_MAX_DECIMALS));
}

/* -------- Pins tried -------- */

static const char *
get_sign (TmPinSign sign)
{
  return sign == TM_PIN_PLUS ? C_ ("pin", "plus") : C_ ("pin", "minus");
}

static char *
describe_trial (const TmBandPlot *plot, const TmPinTrial *trial, const TmPin *pin, const char *size)
{
  const char *done = trial->went ? C_ ("pin", "went") : C_ ("pin", "did not go");
  g_autofree char *low = print_count (plot, (double)pin->low), *high = print_count (plot, (double)pin->high);

  if (pin->low == pin->high)
    /* Translators: a pin's marked size, whether it went, and its own measured size. */
    return g_strdup_printf (_ ("Pin %s %s, measured %s"), size, done, low);
  /* Translators: a pin's marked size, class and sign, whether it went, and what it truly may be. */
  return g_strdup_printf (_ ("Pin %s %s %s %s, truly %s to %s"), size, trial->pin_class,
                          get_sign (trial->sign), done, low, high);
}

static void
add_trial (TmBandPlot *plot, const TmPinTrial *trial)
{
  g_autofree char *size = tm_quantity_format_in (&trial->size, plot->unit);
  TmBandPin pin
      = { .low = (double)trial->size.count, .high = (double)trial->size.count, .went = trial->went };
  TmPin extent;

  pin.label = g_strdup_printf (trial->went ? _ ("%s went") : _ ("%s did not go"), size);
  if (tm_pin_extent (trial->size.count, trial->pin_class, trial->sign, &trial->measured, &extent))
    {
      pin.low = (double)extent.low;
      pin.high = (double)extent.high;
      pin.words = describe_trial (plot, trial, &extent, size);
    }
  else
    pin.words = g_strdup_printf (_ ("Pin %s"), pin.label);
  g_array_append_val (plot->pins, pin);
}

/* -------- What they leave open -------- */

/* One side in words: by how much it is open, or that no pin bounds it. */
static char *
describe_open (const TmBandPlot *plot, gint64 open, gboolean below)
{
  g_autofree char *number = NULL;

  if (open < 0)
    return g_strdup (below ? _ ("No pin bounds the size below") : _ ("No pin bounds the size above"));
  number = print_count (plot, (double)open);
  return g_strdup_printf (below ? _ ("The pins leave open %s %s below the band")
                                : _ ("The pins leave open %s %s above the band"),
                          number, tm_unit_symbol (plot->unit));
}

static void
note_open (TmBandPlot *plot, const TmPinResult *pins)
{
  const TmLimits *limits = &plot->limits;
  g_autofree char *below = NULL, *above = NULL;

  if (pins->contradiction)
    {
      plot->open_words = g_strdup (_ ("The pins contradict each other"));
      return;
    }
  if (limits->has_lower && pins->open_below != 0)
    {
      plot->open_low_from = pins->open_below < 0 ? -INFINITY : (double)(limits->lower - pins->open_below);
      plot->open_low_to = (double)limits->lower;
      below = describe_open (plot, pins->open_below, TRUE);
    }
  if (limits->has_upper && pins->open_above != 0)
    {
      plot->open_high_from = (double)limits->upper;
      plot->open_high_to = pins->open_above < 0 ? INFINITY : (double)(limits->upper + pins->open_above);
      above = describe_open (plot, pins->open_above, FALSE);
    }
  if (below != NULL && above != NULL)
    plot->open_words = g_strdup_printf ("%s. %s", below, above);
  else
    plot->open_words = below != NULL ? g_steal_pointer (&below) : g_steal_pointer (&above);
}

/* -------- Pins to pull -------- */

/* Asked for where readings leave the question open, where pins were begun with, where the method cannot
 * settle the band, and where form at the maximum material size is to be shown. */
static gboolean
wants_pins (const TmJob *job, const TmJudgement *judgement, gboolean tried)
{
  const TmFeature *feature = judgement->feature;
  TmOutlook outlook;

  if (judgement->verdict == TM_VERDICT_OUT)
    return FALSE;
  if (judgement->sizes.n_stations > 0 && tm_form_asks_pin (job, judgement->piece, feature, judgement->place))
    return TRUE;
  if (judgement->verdict == TM_VERDICT_IN)
    return FALSE;
  if (tried || judgement->verdict == TM_VERDICT_TOO_CLOSE)
    return TRUE;
  return judgement->sizes.n_stations == 0
         && (!tm_judge_outlook (job, feature, feature->method, &outlook)
             || outlook.settles == TM_SETTLES_CANNOT);
}

static void
add_planned (TmBandPlot *plot, const TmGauge *set, gint64 size, const TmPin *extent, gboolean go)
{
  g_autofree char *number = tm_count_format_exact (size, plot->unit, plot->decimals);
  TmBandPin pin = { .low = (double)extent->low, .high = (double)extent->high, .went = go, .planned = TRUE };

  pin.label = g_strdup_printf (_ ("%s to pull"), number);
  pin.words = g_strdup_printf (go ? _ ("Pull pin %s of %s: it should go")
                                  : _ ("Pull pin %s of %s: it should not go"),
                               number, set->tag);
  g_array_append_val (plot->pins, pin);
}

static void
add_plan (TmBandPlot *plot, const TmJob *job, const TmJudgement *judgement, const TmPinResult *tried)
{
  TmPinPlan plan;

  if (!wants_pins (job, judgement, tried != NULL) || (tried != NULL && tried->contradiction))
    return;
  tm_pins_to_pull (job, judgement->feature, &plan);
  /* An end that a pin has closed already needs no other. */
  if (plan.has_go && (tried == NULL || tried->open_below != 0))
    add_planned (plot, plan.go_set, plan.go_size, &plan.go, TRUE);
  if (plan.has_nogo && (tried == NULL || tried->open_above != 0))
    add_planned (plot, plan.nogo_set, plan.nogo_size, &plan.nogo, FALSE);
}

/* -------- The size that they give -------- */

static void
add_mating_size (TmBandPlot *plot, const TmJob *job, const TmJudgement *judgement)
{
  g_auto (TmPinEvidence) evidence = { 0 };
  const TmPinResult *pins = &evidence.result;
  TmBandRow row = { .read = TRUE, .together = TRUE, .mating = TRUE, .repeats = 1, .point = TM_POINT_NONE };

  if (!tm_pin_evidence (job, judgement->piece, judgement->feature, judgement->place, TRUE, &evidence)
      || !pins->has_estimate || pins->contradiction)
    return;
  row.label = g_strdup (_ ("mating size"));
  row.at = (double)pins->reference + pins->estimate;
  row.low = (double)pins->reference + pins->low95;
  row.high = (double)pins->reference + pins->high95;
  row.uncertainty = (row.high - row.low) / 2;
  row.value = print_count (plot, row.at);
  if (judgement->counted != TM_COUNTED_READINGS)
    row.verdict = judgement->verdict;
  if (row.verdict == TM_VERDICT_OUT)
    row.point
        = row.at < (double)plot->limits.lower && plot->limits.has_lower ? TM_POINT_LEFT : TM_POINT_RIGHT;
  g_array_append_val (plot->rows, row);
}

void
tm_band_plot_add_pins (TmBandPlot *plot, const TmJob *job, const TmJudgement *judgement)
{
  const GPtrArray *trials
      = tm_job_pin_trials_at (job, judgement->piece, judgement->feature, judgement->place);
  g_auto (TmPinEvidence) evidence = { 0 };
  gboolean tried;

  plot->open_low_from = plot->open_low_to = plot->open_high_from = plot->open_high_to = NAN;
  for (guint i = 0; trials != NULL && i < trials->len; i++)
    {
      const TmPinTrial *trial = g_ptr_array_index (trials, i);
      if (tm_row_counts (&trial->row))
        add_trial (plot, trial);
    }
  if (plot->attribute)
    return;
  tried = tm_pin_evidence (job, judgement->piece, judgement->feature, judgement->place, FALSE, &evidence);
  if (tried)
    {
      note_open (plot, &evidence.result);
      add_mating_size (plot, job, judgement);
    }
  add_plan (plot, job, judgement, tried ? &evidence.result : NULL);
}

/* -------- Where they go -------- */

/* The largest pin that went, or the smallest that did not: they close in on the size.  NULL: none. */
static const TmBandPin *
find_tightest (const TmBandPlot *plot, gboolean went, gboolean planned)
{
  const TmBandPin *best = NULL;

  for (guint i = 0; i < plot->pins->len; i++)
    {
      const TmBandPin *pin = &g_array_index (plot->pins, TmBandPin, i);
      if (pin->went == went && pin->planned == planned
          && (best == NULL || (went ? pin->low > best->low : pin->high < best->high)))
        best = pin;
    }
  return best;
}

/* The words stand on the outer side of the bracket where there is room, else on the inner one. */
static TmBandPinPlace
place_pin (const TmBandLayout *layout, const TmBandPlot *plot, TmPen *pen, const TmBandPin *pin)
{
  const TmTextStyle style = { .scale = 0.9 };
  const double width = MIN (tm_text_width (pen, pin->label, &style), layout->right - layout->left);
  const double left = CLAMP (tm_band_layout_x (layout, plot, pin->low), layout->left, layout->right);
  const double right = CLAMP (tm_band_layout_x (layout, plot, pin->high), layout->left, layout->right);
  const double gap = pen->size;
  const gboolean outside
      = pin->went ? left - gap - width >= layout->left : right + gap + width <= layout->width;
  const gboolean to_left = pin->went == outside;
  const double start = CLAMP (to_left ? left - gap - width : right + gap, MIN (pen->size * 0.2, layout->left),
                              MAX (layout->left, layout->width - width));
  TmBandPinPlace place = { .pin = pin, .align = TM_ALIGN_LEFT, .text_x = start };

  place.from = MIN (start, left - pen->size * 0.8);
  place.to = MAX (start + width, right + pen->size * 0.8);
  return place;
}

static gboolean
is_free (const TmBandLayout *layout, const TmBandPinPlace *place, guint row)
{
  for (guint i = 0; i < layout->n_pins; i++)
    if (layout->pins[i].row == row && place->from < layout->pins[i].to && place->to > layout->pins[i].from)
      return FALSE;
  return TRUE;
}

void
tm_band_layout_pins (TmBandLayout *layout, const TmBandPlot *plot, TmPen *pen)
{
  const TmBandPin *shown[TM_BAND_MOST_PINS] = {
    find_tightest (plot, TRUE, FALSE),
    find_tightest (plot, FALSE, FALSE),
    find_tightest (plot, TRUE, TRUE),
    find_tightest (plot, FALSE, TRUE),
  };

  layout->n_pins = layout->n_pin_rows = 0;
  for (guint i = 0; plot->has_axis && i < G_N_ELEMENTS (shown); i++)
    {
      TmBandPinPlace place;

      if (shown[i] == NULL)
        continue;
      place = place_pin (layout, plot, pen, shown[i]);
      while (!is_free (layout, &place, place.row))
        place.row++;
      layout->pins[layout->n_pins++] = place;
      layout->n_pin_rows = MAX (layout->n_pin_rows, place.row + 1);
    }
}
