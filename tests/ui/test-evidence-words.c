/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pins, several methods, temperatures and assumed figures in words.  The job is invented.
 */

#include <glib.h>
#include <string.h>

#include "app-evidence-words.h"
#include "app-pin-words.h"
#include "app-reading-words.h"
#include "exchange-job.h"

/* A bore of .438 to .439 in, two transfer gauges, pins of class X plus and ZZ minus; a warm part. */
static const char job_text[]
    = "{\"format\": \"tenthmark-job\", \"version\": 1,"
      " \"job\": {\"part_number\": \"W-1\", \"unit\": \"in\", \"material\": \"6061 aluminium\"},"
      " \"gauges\": ["
      "  {\"tag\": \"IC-1\", \"kind\": \"inside caliper\", \"unit\": \"in\", \"feel\": \"0.002\", "
      "\"source\": \"assumed\"},"
      "  {\"tag\": \"SH-3\", \"kind\": \"small-hole gauge\", \"unit\": \"in\", \"feel\": \"0.0005\"},"
      "  {\"tag\": \"MIC-1\", \"kind\": \"outside micrometer\", \"unit\": \"in\", \"resolution\": \"0.0001\","
      "   \"error_limit\": \"0.0001\"},"
      "  {\"tag\": \"PS-X\", \"kind\": \"pin set\", \"unit\": \"in\", \"range_from\": \"0.4\", \"range_to\": "
      "\"0.5\","
      "   \"pin_step\": \"0.001\", \"pin_class\": \"X\", \"pin_sign\": \"plus\"},"
      "  {\"tag\": \"PS-ZZ\", \"kind\": \"pin set\", \"unit\": \"in\", \"range_from\": \"0.4\", "
      "\"range_to\": \"0.5\","
      "   \"pin_step\": \"0.001\", \"pin_class\": \"ZZ\", \"pin_sign\": \"minus\"}],"
      " \"methods\": ["
      "  {\"name\": \"inside caliper\", \"gauges\": [\"IC-1\", \"MIC-1\"]},"
      "  {\"name\": \"small-hole gauge\", \"gauges\": [\"SH-3\", \"MIC-1\"], \"repeatability\": \"0.0002\","
      "   \"repeatability_dof\": \"24\"}],"
      " \"features\": ["
      "  {\"balloon\": \"1\", \"kind\": \"bore\", \"unit\": \"in\", \"lower\": \"0.438\", \"upper\": "
      "\"0.439\","
      "   \"method\": \"small-hole gauge\"},"
      "  {\"balloon\": \"2\", \"kind\": \"length\", \"unit\": \"in\", \"nominal\": \"1\", \"lower\": "
      "\"0.99\","
      "   \"upper\": \"1.01\", \"method\": \"MIC-1\"}],"
      " \"pieces\": [{\"serial\": \"1\"}, {\"serial\": \"2\"}],"
      " \"readings\": ["
      "  {\"piece\": \"1\", \"feature\": \"1\", \"value\": \"0.4388\", \"method\": \"inside caliper\"},"
      "  {\"piece\": \"1\", \"feature\": \"1\", \"value\": \"0.4382\", \"method\": \"small-hole gauge\"},"
      "  {\"piece\": \"1\", \"feature\": \"1\", \"value\": \"0.4383\", \"method\": \"small-hole gauge\"},"
      "  {\"piece\": \"1\", \"feature\": \"2\", \"value\": \"1.0000\", \"part_temp\": \"25\", "
      "\"gauge_temp\": \"25\"}],"
      " \"pin_trials\": ["
      "  {\"piece\": \"1\", \"feature\": \"1\", \"size\": \"0.438\", \"class\": \"X\", \"sign\": \"plus\", "
      "\"went\": true},"
      "  {\"piece\": \"2\", \"feature\": \"1\", \"size\": \"0.438\", \"class\": \"ZZ\", \"sign\": \"minus\", "
      "\"went\": true},"
      "  {\"piece\": \"2\", \"feature\": \"1\", \"size\": \"0.439\", \"class\": \"ZZ\", \"sign\": \"minus\", "
      "\"went\": false}]}";

static TmJob *
load (void)
{
  g_autoptr (GError) error = NULL;
  TmJob *job = tm_job_from_bytes (job_text, strlen (job_text), "words.tmjob", NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  return job;
}

static const TmFeature *
bore_of (const TmJob *job)
{
  return g_ptr_array_index (job->features, 0);
}

static void
assert_holds (const char *text, const char *part)
{
  if (strstr (text, part) == NULL)
    g_error ("“%s” is not in “%s”", part, text);
}

static char *
describe_pins (const TmJob *job, guint piece, gboolean readings)
{
  g_auto (TmPinEvidence) alone = { NULL };
  g_auto (TmPinEvidence) both = { NULL };
  const TmPiece *one = g_ptr_array_index (job->pieces, piece);
  g_assert_true (tm_pin_evidence (job, one, bore_of (job), 1, FALSE, &alone));
  if (readings)
    g_assert_true (tm_pin_evidence (job, one, bore_of (job), 1, TRUE, &both));
  return tm_words_pins_prove (&alone, readings ? &both : NULL, bore_of (job));
}

static void
test_methods (void)
{
  g_autoptr (TmJob) job = load ();
  g_auto (TmCombined) combined = { NULL };
  tm_combine (job, g_ptr_array_index (job->pieces, 0), bore_of (job), 1, "", &combined);
  g_autofree char *parts = tm_words_methods (&combined, bore_of (job));
  g_autofree char *together = tm_words_together (&combined, bore_of (job));
  assert_holds (parts, "inside caliper\n0.4388 ± 0.0021 in: cannot settle this band");
  assert_holds (parts, "small-hole gauge, 2\u00a0readings\n0.4382");
  g_assert_true (g_str_has_prefix (together, "together: 0.4382"));
}

/* Words for both ways of disagreeing. */
static void
test_disagreement (void)
{
  g_autoptr (TmJob) job = load ();
  TmCombinePart parts[2] = { { .method_name = "one", .size = 0, .u = 1, .expanded = 2 },
                             { .method_name = "other", .size = 9, .u = 1, .expanded = 2 } };
  TmCombined combined
      = { .parts = parts, .n_parts = 2, .u = 1, .expanded = 2, .disagree = TRUE, .apart = -1 };
  g_autofree char *either = tm_words_together (&combined, bore_of (job));
  combined.apart = 1;
  combined.best_alone = TRUE;
  g_autofree char *named = tm_words_together (&combined, bore_of (job));
  assert_holds (either, "one of them is wrong");
  assert_holds (named, "other stands apart");
  assert_holds (named, "the best one to count alone");
}

/* ZZ minus: .438 may be as small as .4378 (0.0002 in, ASME B89.1.5), .439 as large as .439, and it needs a
 * micrometre to enter. */
static void
test_pins_prove (void)
{
  g_autoptr (TmJob) job = load ();
  g_autofree char *go_alone = describe_pins (job, 0, FALSE);
  g_autofree char *both = describe_pins (job, 0, TRUE);
  g_autofree char *open = describe_pins (job, 1, FALSE);
  assert_holds (go_alone, "prove 0.43800 in or more");
  assert_holds (go_alone, "no pin that did not go bounds it above");
  assert_holds (both, "mating size 0.4384");
  assert_holds (both, "assumed");
  assert_holds (open, "prove 0.43780 to 0.43904 in");
  assert_holds (open, "leave 0.43780 to 0.438 open");
  assert_holds (open, "leave 0.439 to 0.43904 open");
}

static void
test_contradiction (void)
{
  g_autoptr (TmJob) job = load ();
  TmPinTrial *trial = g_ptr_array_index (job->pin_trials, 1);
  trial->size
      = tm_quantity_new (G_GINT64_CONSTANT (11176000000), TM_UNIT_IN, 3); /* .440 went, .439 did not */
  g_autofree char *text = describe_pins (job, 1, FALSE);
  assert_holds (text, "Cannot both be true: ");
  assert_holds (text, "pin 0.440, class ZZ minus, went");
  assert_holds (text, "pin 0.439, class ZZ minus, did not go");
}

static void
test_pin_entry (void)
{
  g_autoptr (TmJob) job = load ();
  const TmGauge *set = tm_job_find_gauge (job, "PS-X");
  TmPinEntry pin = { .ok = TRUE,
                     .size = tm_quantity_new (G_GINT64_CONSTANT (11125200000), TM_UNIT_IN, 3),
                     .pin_class = "X",
                     .sign = TM_PIN_PLUS };
  g_autofree char *asks = tm_words_pin_entry (&pin, bore_of (job));
  pin.has_outcome = pin.went = TRUE;
  g_autofree char *went = tm_words_pin_entry (&pin, bore_of (job));
  pin.measured = tm_quantity_new (G_GINT64_CONSTANT (11125708000), TM_UNIT_IN, 5);
  g_autofree char *measured = tm_words_pin_entry (&pin, bore_of (job));
  g_autofree char *from = tm_words_pin_set (set);
  g_assert_true (g_str_has_prefix (asks, "pin 0.438, class X plus\n+ went"));
  g_assert_cmpstr (went, ==, "reads as pin 0.438, class X plus, went");
  g_assert_cmpstr (measured, ==, "reads as pin 0.438, measured 0.43802, went");
  g_assert_cmpstr (from, ==, "PS-X, class X plus");
}

static void
test_plan (void)
{
  g_autoptr (TmJob) job = load ();
  const TmGauge *go = tm_job_find_gauge (job, "PS-X"), *nogo = tm_job_find_gauge (job, "PS-ZZ");
  TmPinPlan plan = { .has_go = TRUE,
                     .has_nogo = TRUE,
                     .go_set = go,
                     .nogo_set = nogo,
                     .go_size = G_GINT64_CONSTANT (11125200000),
                     .nogo_size = G_GINT64_CONSTANT (11150600000),
                     .low = G_GINT64_CONSTANT (11125200000),
                     .high = G_GINT64_CONSTANT (11151600000),
                     .open_above = 1000000 };
  g_autofree char *mixed = tm_words_pin_plan (&plan, bore_of (job));
  g_autofree char *open = tm_words_plan_leaves_open (&plan, bore_of (job));
  plan.nogo_set = go;
  plan.proves_band = TRUE;
  g_autofree char *same = tm_words_pin_plan (&plan, bore_of (job));
  g_autofree char *closed = tm_words_plan_leaves_open (&plan, bore_of (job));
  g_assert_cmpstr (mixed, ==, "0.438 go (class X plus) and 0.439 no-go (class ZZ minus)");
  g_assert_cmpstr (open, ==, "They prove 0.43800 to 0.43904; the band ends at 0.439.");
  g_assert_cmpstr (same, ==, "0.438 plus go and 0.439 plus no-go, class X");
  g_assert_cmpstr (closed, ==, "");
}

/* Part and gauge both at 25 °C: 6061 shrinks by 5 × (23.6 - 11.5) ppm more than a steel gauge: 0.99994 in
 * (the same pair as in the check of metrology, Temperature: 100.0000 gives 99.99395). */
static void
test_temperature (void)
{
  g_autoptr (TmJob) job = load ();
  g_auto (TmJudgement) judgement = { 0 };
  tm_judge (job, g_ptr_array_index (job->pieces, 0), g_ptr_array_index (job->features, 1), 1, &judgement);
  g_autofree char *text = tm_words_corrected (&judgement);
  g_assert_cmpstr (text, ==, "1.00000 read, 0.99994 at 20 °C");
  /* Methods put together differ from the last one's mean, but nobody has corrected that. */
  g_auto (TmJudgement) together = { 0 };
  ((TmFeature *)bore_of (job))->counts = TM_COUNTS_COMBINED;
  tm_judge (job, g_ptr_array_index (job->pieces, 0), bore_of (job), 1, &together);
  g_autofree char *none = tm_words_corrected (&together);
  g_assert_cmpint (together.counted, ==, TM_COUNTED_COMBINED);
  g_assert_cmpstr (none, ==, "");
}

static void
test_assumed (void)
{
  g_autoptr (TmJob) job = load ();
  g_autofree char *caliper = tm_words_assumed (job, bore_of (job), "inside caliper");
  g_autofree char *nothing = tm_words_assumed (job, bore_of (job), "nobody's");
  assert_holds (caliper, "assumed, not measured here: ");
  assert_holds (caliper, "IC-1");
  g_assert_cmpstr (nothing, ==, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/evidence/methods", test_methods);
  g_test_add_func ("/evidence/disagreement", test_disagreement);
  g_test_add_func ("/evidence/pins-prove", test_pins_prove);
  g_test_add_func ("/evidence/contradiction", test_contradiction);
  g_test_add_func ("/evidence/pin-entry", test_pin_entry);
  g_test_add_func ("/evidence/plan", test_plan);
  g_test_add_func ("/evidence/temperature", test_temperature);
  g_test_add_func ("/evidence/assumed", test_assumed);
  return g_test_run ();
}
