/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-reading-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-feature-words.h"
#include "app-pin-words.h"
#include "core-form.h"

/* A resolution coarser than this share of the band is pointed out (metrology: Uncertainty). */
#define COARSE_SHARE 0.1

static const char *const verdict_titles[TM_N_VERDICTS] = {
  [TM_VERDICT_NOT_MEASURED] = NC_ ("verdict title", "Not measured"),
  [TM_VERDICT_IN] = NC_ ("verdict title", "In"),
  [TM_VERDICT_OUT] = NC_ ("verdict title", "Out"),
  [TM_VERDICT_TOO_CLOSE] = NC_ ("verdict title", "Too close"),
};

static char *
join_lines (GPtrArray *lines)
{
  g_ptr_array_add (lines, NULL);
  return g_strjoinv ("\n", (char **)lines->pdata);
}

/* A difference of readings has the digits of the readings. */
static char *
format_difference (const TmJudgement *judgement, double counts)
{
  guint decimals = 0;
  for (guint i = 0; i < judgement->sizes.n_stations; i++)
    decimals = MAX (decimals, judgement->sizes.stations[i].decimals);
  const TmFeature *feature = judgement->feature;
  decimals = MAX (decimals, MAX (feature->lower.decimals, feature->upper.decimals));
  g_autofree char *number = tm_count_format ((gint64)llround (counts), feature->unit, decimals);
  return g_strdup_printf ("%s %s", number, tm_unit_symbol (feature->unit));
}

char *
tm_words_verdict (const TmJudgement *judgement)
{
  if (judgement->verdict == TM_VERDICT_OUT && judgement->side == TM_SIDE_METAL_LEFT)
    return g_strdup (_ ("Out – metal\u00a0left"));
  if (judgement->verdict == TM_VERDICT_OUT && judgement->side == TM_SIDE_METAL_GONE)
    return g_strdup (_ ("Out – metal\u00a0gone"));
  if (judgement->verdict == TM_VERDICT_NOT_MEASURED && judgement->why == TM_WHY_STATIONS_MISSING)
    /* Translators: so many of so many stations are read. */
    return g_strdup_printf (_ ("%u of %u read"), judgement->sizes.n_stations,
                            judgement->feature->stations->len);
  return g_strdup (g_dpgettext2 (GETTEXT_PACKAGE, "verdict title", verdict_titles[judgement->verdict]));
}

static char *
find_deciding_station (const TmJudgement *judgement)
{
  const TmSizes *sizes = &judgement->sizes;
  if (judgement->deciding >= sizes->n_stations)
    return g_strdup ("");
  return tm_words_station (sizes->stations[judgement->deciding].station, judgement->feature->unit);
}

/* What the verdict rests on beyond the readings of the assigned method. */
static const char *
find_counted_words (const TmJudgement *judgement)
{
  switch (judgement->counted)
    {
    case TM_COUNTED_COMBINED:
      return judgement->pins_joined ? _ ("by methods and pins together") : _ ("by all methods together");
    case TM_COUNTED_PINS:
      return _ ("by pins");
    case TM_COUNTED_READINGS:
    case TM_N_COUNTED:
    default:
      return "";
    }
}

static char *
describe_in (const TmJudgement *judgement)
{
  guint n_read = judgement->sizes.n_stations;
  const char *counted = find_counted_words (judgement);
  if (n_read <= 1)
    return g_strdup (counted);
  g_autofree char *stations
      = g_strdup_printf (ngettext ("at %u station", "at all %u stations", n_read), n_read);
  return *counted != '\0' ? g_strdup_printf ("%s, %s", stations, counted) : g_steal_pointer (&stations);
}

/* A verdict is held back while it could still turn. */
static char *
describe_held (const TmJudgement *judgement)
{
  if (judgement->why == TM_WHY_STATIONS_MISSING)
    return g_strdup (_ ("in so far; every station has to be read"));
  if (judgement->why == TM_WHY_NO_SIZE)
    return g_strdup (_ ("yet: the size that gives the bonus is not read"));
  return g_strdup ("");
}

static char *
describe_too_close (const TmJudgement *judgement, const char *station)
{
  if (judgement->why == TM_WHY_METHOD_NOT_GOOD)
    return g_strdup (_ ("to call: this gauge is not good enough"));
  return *station != '\0' ? g_strdup_printf (_ ("to call at %s"), station) : g_strdup (_ ("to call"));
}

char *
tm_words_where (const TmJudgement *judgement)
{
  g_autofree char *station = find_deciding_station (judgement);
  switch (judgement->verdict)
    {
    case TM_VERDICT_IN:
      return describe_in (judgement);
    case TM_VERDICT_TOO_CLOSE:
      return describe_too_close (judgement, station);
    case TM_VERDICT_OUT:
      return *station != '\0' ? g_strdup_printf (_ ("at %s"), station) : g_strdup ("");
    case TM_VERDICT_NOT_MEASURED:
      return describe_held (judgement);
    case TM_N_VERDICTS:
    default:
      return g_strdup ("");
    }
}

/* A size, from readings or from pins alone. */
static gboolean
has_reading (const TmJudgement *judgement)
{
  return judgement->sizes.n_stations > 0
         || (judgement->counted == TM_COUNTED_PINS && judgement->verdict != TM_VERDICT_NOT_MEASURED);
}

char *
tm_words_size (const TmJudgement *judgement)
{
  if (!has_reading (judgement))
    return g_strdup ("");
  g_autofree char *size = tm_judgement_size_text (judgement);
  if (*size == '\0')
    return g_steal_pointer (&size);
  if (tm_kind_is_attribute (judgement->feature->kind))
    return g_strdup (g_dpgettext2 (GETTEXT_PACKAGE, "outcome", size));
  const char *symbol = tm_unit_symbol (judgement->feature->unit);
  const char *gap = *symbol != '\0' && judgement->feature->unit != TM_UNIT_DEGREE ? " " : "";
  if (!isfinite (judgement->expanded))
    return g_strconcat (size, gap, symbol, NULL);
  g_autofree char *spread = tm_judgement_spread_text (judgement, judgement->expanded);
  return g_strdup_printf ("%s ± %s%s%s", size, spread, gap, symbol);
}

static char *
describe_probability (double probability, guint n_stations)
{
  int percent = (int)floor (100.0 * probability);
  g_autofree char *likely = NULL;
  if (probability > 0.99)
    likely = g_strdup (_ ("over 99 % likely in"));
  else if (probability < 0.01)
    likely = g_strdup (_ ("under 1 % likely in"));
  else
    likely = g_strdup_printf (_ ("%d %% likely in"), percent);
  return n_stations > 1 ? g_strdup_printf (_ ("%s, all stations read"), likely) : g_steal_pointer (&likely);
}

/* What the likelihood rests on, where that is worth saying beside it. */
static const char *
find_why_sentence (TmWhy why)
{
  switch (why)
    {
    case TM_WHY_NO_ERROR_LIMIT:
      return _ ("the gauge's limit of error is unknown");
    case TM_WHY_FEW_READINGS:
      return _ ("rests on few readings");
    case TM_WHY_ASSUMED:
      return _ ("rests on assumed figures");
    case TM_WHY_OUT_OF_RANGE:
      return _ ("the gauge does not reach this size");
    case TM_WHY_OVERDUE:
      return _ ("the gauge was overdue, with no reason stated");
    case TM_WHY_CHECK_ASKED:
      return _ ("the gauge needs a check on its standard");
    case TM_WHY_PINS_CONTRADICT:
      return _ ("the pins contradict");
    case TM_WHY_METHODS_DISAGREE:
      return _ ("the methods disagree");
    case TM_WHY_PINS_OPEN:
      return _ ("the pins leave the band open");
    case TM_WHY_NONE:
    case TM_WHY_NO_METHOD:
    case TM_WHY_METHOD_NOT_GOOD:
    case TM_WHY_STATIONS_MISSING:
    case TM_WHY_NO_SIZE:
    case TM_WHY_NO_LIMITS:
    case TM_N_WHYS:
    default:
      return NULL;
    }
}

char *
tm_words_chance (const TmJudgement *judgement)
{
  if (!has_reading (judgement) || tm_kind_is_attribute (judgement->feature->kind))
    return g_strdup ("");
  if (judgement->why == TM_WHY_NO_LIMITS)
    return g_strdup (_ ("no limits to hold it against"));
  if (!isfinite (judgement->probability_in) && judgement->counted == TM_COUNTED_PINS)
    return g_strdup (judgement->why == TM_WHY_PINS_OPEN ? _ ("the pins leave the band open") : "");
  if (!isfinite (judgement->probability_in))
    return g_strdup (_ ("compared plainly: no gauge is named"));
  g_autofree char *chance = describe_probability (judgement->probability_in, judgement->sizes.n_stations);
  const char *why = find_why_sentence (judgement->why);
  return why != NULL ? g_strdup_printf ("%s; %s", chance, why) : g_steal_pointer (&chance);
}

static char *
describe_taper (const TmJudgement *judgement)
{
  gboolean shrinks = tm_feature_cut (judgement->feature) == TM_CUT_SHRINKS;
  g_autofree char *taper = format_difference (judgement, fabs (judgement->taper));
  if (fabs (judgement->taper) < 0.5)
    return g_strdup (_ ("no taper seen"));
  if (shrinks)
    return g_strdup_printf (judgement->taper < 0 ? _ ("taper %s, larger at the bottom")
                                                 : _ ("taper %s, larger at the mouth"),
                            taper);
  return g_strdup_printf (
      judgement->taper < 0 ? _ ("taper %s, opens to the bottom") : _ ("taper %s, opens to the mouth"), taper);
}

static char *
describe_bonus (const TmJudgement *judgement)
{
  const TmFeature *feature = judgement->feature;
  if (!judgement->limits.has_upper || !feature->upper.given
      || judgement->limits.upper == feature->upper.count)
    return NULL;
  g_autofree char *allowed = tm_words_count (feature, judgement->limits.upper, feature->upper.decimals);
  return g_strdup_printf (_ ("allowed %s, with the bonus"), allowed);
}

char *
tm_words_form (const TmJob *job, const TmJudgement *judgement)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  if (judgement->has_taper)
    g_ptr_array_add (lines, describe_taper (judgement));
  if (judgement->has_out_of_round)
    {
      g_autofree char *spread = format_difference (judgement, judgement->out_of_round);
      g_ptr_array_add (lines, g_strdup_printf (_ ("spread of diameters %s"), spread));
    }
  if (judgement->feature->kind == TM_KIND_POSITION && judgement->feature->modifier != TM_MODIFIER_NONE)
    {
      char *bonus = describe_bonus (judgement);
      if (bonus != NULL)
        g_ptr_array_add (lines, bonus);
    }
  if (judgement->sizes.n_stations > 0
      && tm_form_asks_pin (job, judgement->piece, judgement->feature, judgement->place))
    g_ptr_array_add (lines, g_strdup (_ ("perfect form at the go limit is shown by a full-length go pin")));
  return join_lines (lines);
}

static const TmGauge *
find_reading_gauge (const TmJob *job, const char *method_name)
{
  const TmMethod *method = tm_job_find_method (job, method_name);
  if (method == NULL)
    return tm_job_find_gauge (job, method_name);
  if (method->gauges->len == 0)
    return NULL;
  return tm_job_find_gauge (job, g_ptr_array_index (method->gauges, method->gauges->len - 1));
}

static char *
describe_due (const TmGauge *gauge, const char *today)
{
  g_autofree char *due = tm_words_date (gauge->due);
  if (*gauge->due == '\0')
    return g_strdup (_ ("no calibration date"));
  if (strcmp (gauge->due, today) < 0)
    return g_strdup_printf (_ ("overdue since %s: calibrate it first"), due);
  return g_strdup_printf (_ ("due %s"), due);
}

static const char *
find_settles_sentence (TmSettles settles)
{
  switch (settles)
    {
    case TM_SETTLES:
      return _ ("settles it");
    case TM_SETTLES_MOSTLY:
      return _ ("settles most readings");
    case TM_SETTLES_SELDOM:
      return _ ("settles few readings");
    case TM_SETTLES_CANNOT:
      return _ ("cannot settle this band");
    case TM_SETTLES_UNKNOWN:
    default:
      return "";
    }
}

/* Two significant digits of a guard are enough, but never fewer decimals than the limits have. */
static char *
describe_outlook (const TmFeature *feature, const TmOutlook *outlook)
{
  TmJudgement form = { .feature = feature };
  g_autofree char *guard = tm_judgement_spread_text (&form, (double)outlook->guard);
  const char *settles = find_settles_sentence (outlook->settles);
  if (outlook->settles == TM_SETTLES_CANNOT)
    return g_strdup (settles);
  if (outlook->guard <= 0)
    return g_strdup (settles);
  if (*settles == '\0')
    return g_strdup_printf (_ ("guard %s"), guard);
  return g_strdup_printf (_ ("%s; guard %s"), settles, guard);
}

static void
add_outlook (GPtrArray *lines, const TmJob *job, const TmFeature *feature, const char *method_name)
{
  TmOutlook outlook;
  if (tm_kind_is_attribute (feature->kind) || !tm_judge_outlook (job, feature, method_name, &outlook))
    return;
  char *line = describe_outlook (feature, &outlook);
  if (*line != '\0')
    g_ptr_array_add (lines, line);
  else
    g_free (line);
  if (outlook.blind_share > COARSE_SHARE)
    g_ptr_array_add (
        lines, g_strdup_printf (_ ("coarse: one step is %.0f %% of the band"), 100.0 * outlook.blind_share));
}

char *
tm_words_gauge (const TmJob *job, const TmFeature *feature, const char *method_name, const char *today)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  const TmGauge *gauge = find_reading_gauge (job, method_name);
  if (*method_name == '\0')
    return g_strdup ("");
  if (gauge == NULL)
    g_ptr_array_add (lines, g_strdup_printf (_ ("%s is not in the list of gauges"), method_name));
  else
    {
      /* Most methods are named after their gauge: then the name above says it. */
      if (strstr (method_name, gauge->tag) == NULL)
        g_ptr_array_add (lines, g_strdup_printf ("%s %s", gauge->kind, gauge->tag));
      g_ptr_array_add (lines, describe_due (gauge, today));
    }
  add_outlook (lines, job, feature, method_name);
  return join_lines (lines);
}

static char *
advise_read (const TmAdvice *advice, const TmJudgement *judgement, const char *station)
{
  g_autofree char *read
      = *station != '\0' ? g_strdup_printf (_ ("Read %s."), station) : g_strdup (_ ("Take a reading."));
  if (judgement == NULL || judgement->verdict != TM_VERDICT_TOO_CLOSE)
    return g_steal_pointer (&read);
  g_autofree char *deciding = find_deciding_station (judgement);
  if (*deciding == '\0' || g_str_equal (deciding, station))
    return g_steal_pointer (&read);
  return g_strdup_printf (_ ("%s Then repeat %s, or use a finer gauge there."), read, deciding);
}

static char *
advise_next (const TmAdvice *advice)
{
  if (advice->feature == NULL)
    return g_strdup (_ ("Settled. Go on to the next feature."));
  g_autofree char *feature = tm_words_feature (advice->feature);
  return g_strdup_printf (_ ("Settled. Go on to %s."), feature);
}

static char *
advise_piece_done (const TmAdvice *advice)
{
  if (advice->piece == NULL)
    return g_strdup (_ ("This piece is done. Take the next one."));
  return g_strdup_printf (_ ("Piece %s is done. Take the next one."), advice->piece->serial);
}

/* This gauge does not do, and there are no pins that do: which gauge does, and what the best pins leave
 * open. */
static char *
advise_finer (const TmAdvice *advice)
{
  g_autofree char *open = tm_words_plan_leaves_open (&advice->pins, advice->feature);
  g_autofree char *pins = tm_words_pin_plan (&advice->pins, advice->feature);
  if (*advice->method != '\0')
    return g_strdup_printf (_ ("This gauge will not settle it. Use %s."), advice->method);
  if (*open == '\0')
    return g_strdup (_ ("Use a finer gauge: this one will not settle it."));
  /* Translators: the pins, then what they leave open, a sentence. */
  return g_strdup_printf (_ ("No gauge here settles it. The best pins are %s. %s"), pins, open);
}

static char *
advise_pins (const TmAdvice *advice)
{
  g_autofree char *pins = tm_words_pin_plan (&advice->pins, advice->feature);
  g_autofree char *open = tm_words_plan_leaves_open (&advice->pins, advice->feature);
  if (*open != '\0')
    return g_strdup_printf (_ ("Try pins %s. %s"), pins, open);
  if (*advice->method != '\0')
    /* Translators: the pins, then the name of a gauge. */
    return g_strdup_printf (_ ("Settle it with pins %s, or use %s."), pins, advice->method);
  return g_strdup_printf (_ ("Settle it with pins %s."), pins);
}

char *
tm_words_advice (const TmAdvice *advice, const TmJudgement *judgement)
{
  TmUnit unit = advice->feature != NULL                           ? advice->feature->unit
                : judgement != NULL && judgement->feature != NULL ? judgement->feature->unit
                                                                  : TM_UNIT_MM;
  g_autofree char *station = tm_words_station (advice->station, unit);
  switch (advice->kind)
    {
    case TM_ADVICE_ADD_PIECE:
      return g_strdup (_ ("Add a piece on the Job page, then measure it here."));
    case TM_ADVICE_ADD_FEATURE:
      return g_strdup (_ ("Add the drawing's features on the Job page."));
    case TM_ADVICE_READ:
      return advise_read (advice, judgement, station);
    case TM_ADVICE_REPEAT:
      return *station != '\0'
                 ? g_strdup_printf (_ ("Repeat the reading at %s, or use a finer gauge."), station)
                 : g_strdup (_ ("Repeat the reading, or use a finer gauge."));
    case TM_ADVICE_FINER_GAUGE:
      return advise_finer (advice);
    case TM_ADVICE_PULL_PINS:
      return advise_pins (advice);
    case TM_ADVICE_COUNT_COMBINED:
      return g_strdup (_ ("The pins prove it. To let them count, choose that all together count."));
    case TM_ADVICE_CHECK_GAUGE:
      return g_strdup_printf (_ ("Check %s on its standard first, on the Gauges page."), advice->gauge->tag);
    case TM_ADVICE_STATE_REASON:
      return g_strdup_printf (
          _ ("%s is past its due date: calibrate it, take another, or say why it is used."),
          advice->gauge->tag);
    case TM_ADVICE_SETTLE_CONTRADICTION:
      return g_strdup (
          _ ("What was tried cannot all be true: clean the bore, try the pins again, and withdraw "
             "what was wrong."));
    case TM_ADVICE_CUT_AGAIN:
      if (judgement != NULL && judgement->verdict == TM_VERDICT_TOO_CLOSE)
        return g_strdup (_ ("Metal may be left: plan a light cut (F4), or repeat the reading."));
      return g_strdup (_ ("Metal is left: plan the next cut (F4), then read again."));
    case TM_ADVICE_READ_AFTER_CUT:
      return *station != '\0'
                 ? g_strdup_printf (_ ("A cut was made: clean and deburr, then read %s again."), station)
                 : g_strdup (_ ("A cut was made: clean and deburr, then read it again."));
    case TM_ADVICE_REPORT_NONCONFORMANCE:
      return g_strdup (_ ("Hold this piece and write a nonconformance."));
    case TM_ADVICE_NAME_METHOD:
      return g_strdup (_ ("Choose the gauge that reads this, so that the reading can be proven."));
    case TM_ADVICE_NEXT:
      return advise_next (advice);
    case TM_ADVICE_PIECE_DONE:
      return advise_piece_done (advice);
    case TM_ADVICE_ALL_DONE:
      return g_strdup (_ ("Everything that is due is measured. See the Report page."));
    case TM_ADVICE_NONE:
    default:
      return g_strdup ("");
    }
}

char *
tm_words_caution (const TmAdvice *advice)
{
  if (advice->kind == TM_ADVICE_CUT_AGAIN)
    return g_strdup (_ ("Before you reach in: spindle stopped and isolated, chips cleared, edge deburred "
                        "before any gauge goes in."));
  return g_strdup (_ ("Before a gauge goes in: spindle stopped and isolated, chips cleared, edge deburred."));
}

char *
tm_words_state (TmVerdict verdict, TmSide side, gboolean due, guint n_read, guint n_due)
{
  if (verdict == TM_VERDICT_OUT && side != TM_SIDE_NONE)
    return g_strdup (g_dpgettext2 (GETTEXT_PACKAGE, "side", tm_side_word (side)));
  if (verdict == TM_VERDICT_OUT || verdict == TM_VERDICT_TOO_CLOSE)
    return g_strdup (g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word (verdict)));
  if (n_read > 0 && n_read < n_due)
    /* Translators: so many of so many places or stations are read. */
    return g_strdup_printf (_ ("%u of %u"), n_read, n_due);
  if (verdict == TM_VERDICT_NOT_MEASURED)
    return g_strdup (due ? "—" : _ ("not due"));
  return g_strdup (g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word (verdict)));
}
