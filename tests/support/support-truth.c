/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "support-truth.h"

#include <math.h>
#include <string.h>

#include "core-combine.h"
#include "core-judge.h"

#define UM           1e6 /* counts */
#define N_METHODS    3
#define MOST_REPEATS 5
#define MOST_TRIALS  24
#define LOWER        G_GINT64_CONSTANT (25000000000)
#define UPPER        G_GINT64_CONSTANT (25052000000)
#define RESOLUTION   (0.5 * UM)
#define ERROR_LIMIT  (1.0 * UM)
#define FORM         (2.0 * UM)
#define PIN_STEP     G_GINT64_CONSTANT (4000000)

struct _TmTruth {
  GRand *rand;
  TmJob *job;
  TmPiece *piece;
  TmFeature *bore;
  TmGauge *readers[2]; /* of the first method, and of the others */
  TmMethod *methods[N_METHODS];
  TmReading *readings[N_METHODS][MOST_REPEATS];
  TmPinTrial *trials[MOST_TRIALS];
  TmWithdrawal unused; /* marks rows that this bore has not got */
  double error_limit, resolution;
};

/* -------- Chance -------- */

static double
draw_between (TmTruth *self, double from, double to)
{
  return g_rand_double_range (self->rand, from, to);
}

static double
draw_normal (TmTruth *self)
{
  double radius = sqrt (-2 * log (1 - g_rand_double (self->rand)));

  return radius * cos (2 * G_PI * g_rand_double (self->rand));
}

/* A standard deviation found with @dof degrees of freedom where the true one is 1. */
static double
draw_spread (TmTruth *self, guint dof)
{
  double sum = 0;

  for (guint i = 0; i < dof; i++)
    {
      double z = draw_normal (self);

      sum += z * z;
    }
  return sqrt (sum / dof);
}

/* -------- The job -------- */

static TmQuantity
make_length (double counts)
{
  return tm_quantity_new ((gint64)llround (counts), TM_UNIT_MM, 9);
}

static TmGauge *
add_gauge (TmTruth *self, const char *tag)
{
  TmGauge *gauge = tm_gauge_new ();

  gauge->tag = tm_job_intern (self->job, tag);
  gauge->unit = TM_UNIT_MM;
  g_assert_cmpint (tm_job_add_gauge (self->job, gauge), ==, TM_ADD_OK);
  return gauge;
}

/* Without error of their own, gauges still have a step, far too fine to matter. */
static void
set_gauges (TmTruth *self, gboolean only_repeats)
{
  self->error_limit = only_repeats ? 0 : ERROR_LIMIT;
  self->resolution = only_repeats ? 10 : RESOLUTION;
  for (guint i = 0; i < G_N_ELEMENTS (self->readers); i++)
    {
      self->readers[i]->resolution = make_length (self->resolution);
      self->readers[i]->error_limit = make_length (self->error_limit);
    }
}

static TmMethod *
add_method (TmTruth *self, const char *name, const char *first, const char *second)
{
  TmMethod *method = tm_method_new ();

  method->name = tm_job_intern (self->job, name);
  g_ptr_array_add (method->gauges, (gpointer)tm_job_intern (self->job, first));
  if (second != NULL)
    g_ptr_array_add (method->gauges, (gpointer)tm_job_intern (self->job, second));
  g_assert_cmpint (tm_job_add_method (self->job, method), ==, TM_ADD_OK);
  return method;
}

static void
add_bore (TmTruth *self)
{
  self->piece = tm_piece_new ();
  self->piece->serial = tm_job_intern (self->job, "1");
  g_assert_cmpint (tm_job_add_piece (self->job, self->piece), ==, TM_ADD_OK);
  self->bore = tm_feature_new ();
  self->bore->balloon = tm_job_intern (self->job, "1");
  self->bore->kind = TM_KIND_BORE;
  self->bore->unit = TM_UNIT_MM;
  self->bore->places = 1;
  self->bore->lower = make_length (LOWER);
  self->bore->upper = make_length (UPPER);
  self->bore->form_unseen = make_length (FORM);
  self->bore->method = self->methods[0]->name;
  g_assert_cmpint (tm_job_add_feature (self->job, self->bore), ==, TM_ADD_OK);
}

static void
fill_row (TmTruth *self, TmEntryRow *row)
{
  row->piece = self->piece;
  row->feature = self->bore;
}

static void
add_rows (TmTruth *self)
{
  for (guint m = 0; m < N_METHODS; m++)
    for (guint i = 0; i < MOST_REPEATS; i++)
      {
        TmReading *reading = self->readings[m][i] = tm_reading_new ();

        fill_row (self, &reading->row);
        reading->place = 1;
        reading->method = self->methods[m]->name;
        reading->value = make_length (LOWER);
        g_assert_cmpint (tm_job_add_reading (self->job, reading), ==, TM_ADD_OK);
      }
  for (guint i = 0; i < MOST_TRIALS; i++)
    {
      TmPinTrial *trial = self->trials[i] = tm_pin_trial_new ();

      fill_row (self, &trial->row);
      trial->place = 1;
      trial->pin_class = tm_job_intern (self->job, "Z");
      trial->size = make_length (LOWER);
      g_assert_cmpint (tm_job_add_pin_trial (self->job, trial), ==, TM_ADD_OK);
    }
}

TmTruth *
tm_truth_new (guint32 seed)
{
  TmTruth *self = g_new0 (TmTruth, 1);

  self->rand = g_rand_new_with_seed (seed);
  self->job = tm_job_new ();
  self->job->unit = TM_UNIT_MM;
  self->readers[0] = add_gauge (self, "BG");
  self->readers[1] = add_gauge (self, "MIC");
  add_gauge (self, "TG");
  add_gauge (self, "SH");
  self->methods[0] = add_method (self, "Dial bore gauge", "BG", NULL);
  self->methods[1] = add_method (self, "Telescoping gauge", "TG", "MIC");
  self->methods[2] = add_method (self, "Small-hole gauge", "SH", "MIC");
  add_bore (self);
  add_rows (self);
  return self;
}

/* -------- One bore -------- */

static void
use_row (TmTruth *self, TmEntryRow *row, gboolean used)
{
  row->withdrawn = used ? NULL : &self->unused;
}

void
tm_truth_free (TmTruth *self)
{
  for (guint m = 0; m < N_METHODS; m++)
    for (guint i = 0; i < MOST_REPEATS; i++)
      use_row (self, &self->readings[m][i]->row, TRUE);
  for (guint i = 0; i < MOST_TRIALS; i++)
    use_row (self, &self->trials[i]->row, TRUE);
  tm_job_free (self->job);
  g_rand_free (self->rand);
  g_free (self);
}

static void
read_method (TmTruth *self, guint index, const TmTruthCase *given, double truth, double bias)
{
  TmMethod *method = self->methods[index];
  double sigma = 0.5 * UM * pow (6, g_rand_double (self->rand));
  guint dof = given->dof_from;

  if (given->dof_to > dof)
    dof = (guint)g_rand_int_range (self->rand, (gint32)dof, (gint32)given->dof_to + 1);
  method->repeatability = TM_QUANTITY_NONE;
  if (dof > 0)
    {
      method->repeatability = make_length (sigma * draw_spread (self, dof));
      method->repeatability_dof = tm_quantity_new (dof, TM_UNIT_COUNT, 0);
    }
  for (guint i = 0; i < MOST_REPEATS; i++)
    {
      TmReading *reading = self->readings[index][i];
      double value = truth + bias + sigma * draw_normal (self);

      reading->value = make_length (self->resolution * round (value / self->resolution));
      use_row (self, &reading->row, i < given->repeats);
    }
}

/* Readings of a two-point size by @n_methods methods. */
static void
read_bore (TmTruth *self, const TmTruthCase *given, double truth, guint n_methods)
{
  double bore_gauge, micrometer;

  set_gauges (self, given->only_repeats);
  bore_gauge = self->error_limit * draw_between (self, -1, 1);
  micrometer = self->error_limit * draw_between (self, -1, 1);
  for (guint m = 0; m < N_METHODS; m++)
    {
      read_method (self, m, given, truth, m == 0 ? bore_gauge : micrometer);
      for (guint i = 0; m >= n_methods && i < MOST_REPEATS; i++)
        use_row (self, &self->readings[m][i]->row, FALSE);
    }
  for (guint i = 0; i < MOST_TRIALS; i++)
    use_row (self, &self->trials[i]->row, FALSE);
}

static gboolean
try_pin (TmTruth *self, guint index, gint64 size, TmPinSign sign, double mating, double clearance)
{
  TmPinTrial *trial = self->trials[index];
  TmPin pin;

  trial->size.count = size;
  trial->sign = sign;
  g_assert_true (tm_pin_extent (size, trial->pin_class, sign, NULL, &pin));
  trial->went = mating >= draw_between (self, (double)pin.low, (double)pin.high) + clearance;
  use_row (self, &trial->row, TRUE);
  return trial->went;
}

/* From the pin nearest to the first reading up until one stops, or down until one goes: as at the bench,
 * every trial recorded. */
static void
try_pins (TmTruth *self, double mating)
{
  TmPinSign sign = g_rand_boolean (self->rand) ? TM_PIN_PLUS : TM_PIN_MINUS;
  double clearance = draw_between (self, 0, (double)TM_PIN_ENTRY_CLEARANCE);
  gint64 size = self->readings[0][0]->value.count / PIN_STEP * PIN_STEP;
  gboolean first = try_pin (self, 0, size, sign, mating, clearance), went = first;

  for (guint i = 1; i < MOST_TRIALS && went == first; i++)
    {
      size += first ? PIN_STEP : -PIN_STEP;
      went = try_pin (self, i, size, sign, mating, clearance);
    }
}

/* Anywhere about the band. */
static double
draw_size (TmTruth *self)
{
  return draw_between (self, (double)LOWER - 20 * UM, (double)UPPER + 20 * UM);
}

/* -------- Intervals -------- */

double
tm_truth_cover_one (TmTruth *self, const TmTruthCase *given, guint n)
{
  guint covered = 0;

  self->bore->counts = TM_COUNTS_ASSIGNED;
  for (guint i = 0; i < n; i++)
    {
      g_auto (TmJudgement) judgement = { 0 };
      double truth = draw_size (self), off;

      read_bore (self, given, truth, 1);
      tm_judge (self->job, self->piece, self->bore, 1, &judgement);
      off = tm_local_size_beyond (&judgement.sizes.stations[0], (gint64)truth);
      covered += fabs (off) <= judgement.expanded;
    }
  return (double)covered / n;
}

double
tm_truth_cover_combined (TmTruth *self, const TmTruthCase *given, guint n)
{
  guint covered = 0;

  for (guint i = 0; i < n; i++)
    {
      g_auto (TmCombined) combined = { 0 };
      double truth = draw_size (self);

      read_bore (self, given, truth, N_METHODS);
      tm_combine (self->job, self->piece, self->bore, 1, "", &combined);
      covered += fabs ((double)combined.reference - truth + combined.size) <= combined.expanded;
    }
  return (double)covered / n;
}

double
tm_truth_cover_pins (TmTruth *self, const TmTruthCase *given, guint n)
{
  guint covered = 0, n_said = 0;

  for (guint i = 0; i < n; i++)
    {
      g_auto (TmPinEvidence) evidence = { 0 };
      double mating = draw_size (self), off;

      read_bore (self, given, mating + draw_between (self, 0, FORM), N_METHODS);
      try_pins (self, mating);
      g_assert_true (tm_pin_evidence (self->job, self->piece, self->bore, 1, TRUE, &evidence));
      if (!evidence.result.has_estimate)
        continue;
      n_said++;
      off = mating - (double)evidence.result.reference;
      covered += off >= evidence.result.low95 && off <= evidence.result.high95;
    }
  return (double)covered / n_said;
}

/* -------- Verdicts -------- */

static void
set_rule (TmTruth *self, TmTruthRule rule)
{
  gboolean plain = rule == TM_RULE_PLAIN;

  self->job->decision = plain ? TM_DECISION_SIMPLE : TM_DECISION_GUARDED;
  /* An N so small that every method is good enough. */
  self->job->simple_ratio = plain ? tm_quantity_new (1, TM_UNIT_HARDNESS, 6) : TM_QUANTITY_NONE;
  self->bore->counts
      = rule == TM_RULE_COMBINED || rule == TM_RULE_PINS ? TM_COUNTS_COMBINED : TM_COUNTS_ASSIGNED;
}

/* At one of the limits or, half the time, up to 4 µm beyond. */
static double
draw_bad_size (TmTruth *self, gboolean beyond)
{
  double by = beyond && g_rand_boolean (self->rand) ? draw_between (self, 0, 4 * UM) : 0;

  return g_rand_boolean (self->rand) ? (double)UPPER + by : (double)LOWER - by;
}

double
tm_truth_wrongly_in (TmTruth *self, const TmTruthCase *given, guint n, TmTruthRule rule, gboolean beyond)
{
  guint wrong = 0;

  set_rule (self, rule);
  for (guint i = 0; i < n; i++)
    {
      g_auto (TmJudgement) judgement = { 0 };
      double truth = draw_bad_size (self, beyond);
      double form = rule == TM_RULE_PINS ? draw_between (self, 0, FORM) : 0;

      read_bore (self, given, truth + form, self->bore->counts == TM_COUNTS_COMBINED ? N_METHODS : 1);
      if (rule == TM_RULE_PINS)
        try_pins (self, truth);
      tm_judge (self->job, self->piece, self->bore, 1, &judgement);
      wrong += judgement.verdict == TM_VERDICT_IN;
    }
  set_rule (self, TM_RULE_GUARDED);
  return (double)wrong / n;
}
