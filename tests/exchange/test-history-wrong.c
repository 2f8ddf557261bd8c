/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Wrong gauges, histories of gauges, budget lines and studies in a job file: each refused in one line.
 */

#include "support-job-text.h"
#include "wrong-support.h"

/* After a gauge in mm and a pin set of 1 to 2 mm by 0.01. */
#define GAUGES                                                                              \
  ", \"gauges\": [{\"tag\": \"M\", \"resolution\": \"0.001\"}, {\"tag\": \"P\", \"kind\": " \
  "\"pin set\", \"range_from\": \"1\", \"range_to\": \"2\", \"pin_step\": \"0.01\"}]"
#define METHODS GAUGES ", \"methods\": [{\"name\": \"m\", \"gauges\": [\"M\"]}]"

static const Wrong gauges[] = {
  { "{\"tag\": \"a\", \"resolution\": \"0\"}", BAD, "gauges[0].resolution", "such as 0.001" },
  { "{\"tag\": \"a\", \"resolution\": \"-0.001\"}", BAD, "gauges[0].resolution", "without the sign" },
  { "{\"tag\": \"a\", \"feel\": \"-0.001\"}", BAD, "gauges[0].feel", "without the sign" },
  { "{\"tag\": \"a\", \"feel\": \"1 deg\"}", BAD, "gauges[0].feel", "unit" },
  { "{\"tag\": \"a\", \"calibrated\": \"2026-03-01\", \"due\": \"2026-02-28\"}", BAD, "gauges[0].due",
    "look at both" },
  { "{\"tag\": \"a\", \"range_from\": \"25\", \"range_to\": \"0\"}", BAD, "gauges[0].range_from",
    "smaller size first" },
  { "{\"tag\": \"a\", \"kind\": \"pin set\", \"pin_class\": \"A\"}", BAD, "gauges[0].pin_class", "ZZ" },
  { "{\"tag\": \"a\", \"pin_sign\": \"+\"}", BAD, "gauges[0].pin_sign", "minus, plus" },
  { "{\"tag\": \"a\", \"pin_step\": \"0\", \"range_from\": \"1\", \"range_to\": \"2\"}", BAD,
    "gauges[0].pin_step", "0.001" },
  { "{\"tag\": \"a\", \"pin_step\": \"2\", \"range_from\": \"1\", \"range_to\": \"2\"}", BAD,
    "gauges[0].pin_step", "range" },
  { "{\"tag\": \"a\", \"expansion\": \"much\"}", BAD, "gauges[0].expansion", "25.012" },
};

static const Wrong histories[] = {
  { "\"calibrations\": [{\"gauge\": \"X\", \"date\": \"2026-03-01\"}]", BAD, "calibrations[0].gauge",
    "add the gauge" },
  { "\"calibrations\": [{\"date\": \"2026-03-01\"}]", MISSING, "calibrations[0].gauge", "give it" },
  { "\"calibrations\": [{\"gauge\": \"M\", \"certificate\": \"1\"}]", MISSING, "calibrations[0].date",
    "write the day" },
  { "\"calibrations\": [{\"gauge\": \"M\", \"date\": \"2026-03-01\", \"due\": \"2025-03-01\"}]", BAD,
    "calibrations[0].due", "both dates" },
  { "\"calibrations\": [{\"gauge\": \"M\", \"date\": \"2026-03-01\", \"uncertainty\": \"-0.001\"}]", BAD,
    "calibrations[0].uncertainty", "without the sign" },
  { "\"calibrations\": [{\"gauge\": \"M\", \"date\": \"2026-03-01\", \"uncertainty\": \"0.1 deg\"}]", BAD,
    "calibrations[0].uncertainty", "unit" },
  { "\"calibrations\": [{\"gauge\": \"M\", \"date\": \"2026-03-01\", \"coverage\": \"0\"}]", BAD,
    "calibrations[0].coverage", "like 2" },
  { "\"calibrations\": [{\"gauge\": \"M\", \"date\": \"2026-03-01\", \"coverage\": \"-2\"}]", BAD,
    "calibrations[0].coverage", "like 2" },
  { "\"calibrations\": [{\"gauge\": \"M\", \"date\": \"2026-03-01\", \"outcome\": \"so-so\"}]", BAD,
    "calibrations[0].outcome", "good, bad" },
  { "\"calibrations\": [{\"gauge\": \"M\", \"date\": \"2026-03-01\"}, {\"gauge\": \"M\", \"date\": "
    "\"2026-03-01\"}]",
    BAD, "calibrations[1].date", "keep one" },
  { "\"checks\": [{\"gauge\": \"M\", \"reading\": \"1\"}]", MISSING, "checks[0].standard", "standard" },
  { "\"checks\": [{\"gauge\": \"M\", \"standard\": \"1\"}]", MISSING, "checks[0].reading",
    "read on its standard" },
  { "\"checks\": [{\"gauge\": \"M\", \"standard\": \"1\", \"reading\": \"1\", \"at\": \"today\"}]", BAD,
    "checks[0].at", "UTC" },
  { "\"checks\": [{\"gauge\": \"X\", \"standard\": \"1\", \"reading\": \"1\"}]", BAD, "checks[0].gauge",
    "add the gauge" },
  { "\"pin_sizes\": [{\"gauge\": \"P\", \"measured\": \"1\"}]", MISSING, "pin_sizes[0].size", "marked" },
  { "\"pin_sizes\": [{\"gauge\": \"P\", \"size\": \"1\"}]", MISSING, "pin_sizes[0].measured", "found" },
  { "\"pin_sizes\": [{\"gauge\": \"P\", \"size\": \"2.01\", \"measured\": \"2.01\"}]", BAD,
    "pin_sizes[0].size", "not in the set" },
  { "\"pin_sizes\": [{\"gauge\": \"P\", \"size\": \"1.005\", \"measured\": \"1.005\"}]", BAD,
    "pin_sizes[0].size", "not in the set" },
  { "\"pin_sizes\": [{\"gauge\": \"P\", \"size\": \"1.5\", \"measured\": \"1.5\"}, {\"gauge\": \"P\", "
    "\"size\": \"1.50\", \"measured\": \"1.5\"}]",
    BAD, "pin_sizes[1].size", "keep one" },
  { "\"budget_lines\": [{\"method\": \"m\", \"kind\": \"luck\", \"value\": \"1\"}]", BAD,
    "budget_lines[0].kind", "people" },
  { "\"budget_lines\": [{\"method\": \"m\", \"name\": \"x\"}]", MISSING, "budget_lines[0].value",
    "how much" },
  { "\"budget_lines\": [{\"method\": \"m\", \"value\": \"-0.001\"}]", BAD, "budget_lines[0].value",
    "without the sign" },
  { "\"budget_lines\": [{\"method\": \"m\", \"value\": \"1\", \"distribution\": \"bell\"}]", BAD,
    "budget_lines[0].distribution", "u-shaped" },
  { "\"budget_lines\": [{\"method\": \"m\", \"value\": \"1\", \"divisor\": \"0\"}]", BAD,
    "budget_lines[0].divisor", "like 2" },
  { "\"budget_lines\": [{\"method\": \"m\", \"value\": \"1\", \"dof\": \"0.5\"}]", BAD, "budget_lines[0].dof",
    "at least 1" },
  { "\"budget_lines\": [{\"method\": \"x\", \"value\": \"1\"}]", BAD, "budget_lines[0].method",
    "add the method" },
};

static const Wrong studies[] = {
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\"}]",
    BAD, "studies[0].pieces", "at least 2" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"people\": [\"A\"], \"repeats\": \"2\"}]", BAD,
    "studies[0].pieces", "at least 2" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\", \"a\"], \"people\": "
    "[\"A\"], \"repeats\": \"2\"}]",
    BAD, "studies[0].pieces", "keep one" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\"}]",
    BAD, "studies[0].pieces", "empty" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", 2], \"people\": [\"A\"], "
    "\"repeats\": \"2\"}]",
    BAD, "studies[0].pieces[1]", "quotation marks" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\", "
    "\"B\", 3], \"repeats\": \"2\"}]",
    BAD, "studies[0].people[2]", "quotation marks" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"repeats\": \"2\"}]",
    BAD, "studies[0].people", "at least 1" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"]}]",
    MISSING, "studies[0].repeats", "how often" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"1\"}]",
    BAD, "studies[0].repeats", "2 to 100" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"101\"}]",
    BAD, "studies[0].repeats", "2 to 100" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"2.5\"}]",
    BAD, "studies[0].repeats", "" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\", \"band\": \"0\"}]",
    BAD, "studies[0].band", "like 0.021" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\", \"unit\": \"count\"}]",
    BAD, "studies[0].unit", "mm, in" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\", \"seed\": \"-1\"}]",
    BAD, "studies[0].seed", "without the sign" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"x\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\"}]",
    BAD, "studies[0].method", "add the method" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\"}, {\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": "
    "[\"A\"], \"repeats\": \"2\"}]",
    BAD, "studies[1].name", "choose another" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\"}], \"study_readings\": [{\"study\": \"t\", \"piece\": \"a\", \"person\": \"A\", "
    "\"trial\": \"1\", \"value\": \"1\"}]",
    BAD, "study_readings[0].study", "no study plans it" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\"}], \"study_readings\": [{\"study\": \"s\", \"piece\": \"c\", \"person\": \"A\", "
    "\"trial\": \"1\", \"value\": \"1\"}]",
    BAD, "study_readings[0].piece", "no study plans it" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\"}], \"study_readings\": [{\"study\": \"s\", \"piece\": \"a\", \"person\": \"B\", "
    "\"trial\": \"1\", \"value\": \"1\"}]",
    BAD, "study_readings[0].person", "no study plans it" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\"}], \"study_readings\": [{\"study\": \"s\", \"piece\": \"a\", \"person\": \"A\", "
    "\"trial\": \"3\", \"value\": \"1\"}]",
    BAD, "study_readings[0].trial", "no study plans it" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\"}], \"study_readings\": [{\"study\": \"s\", \"piece\": \"a\", \"person\": \"A\", "
    "\"trial\": \"0\", \"value\": \"1\"}]",
    BAD, "study_readings[0].trial", "no study plans it" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\"}], \"study_readings\": [{\"study\": \"s\", \"piece\": \"a\", \"person\": \"A\", "
    "\"trial\": \"1\", \"typed\": \"1\"}]",
    MISSING, "study_readings[0].value", "what was read" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\"}], \"study_readings\": [{\"study\": \"s\", \"piece\": \"a\", \"person\": \"A\", "
    "\"trial\": \"1\", \"value\": \"1 deg\"}]",
    BAD, "study_readings[0].value", "unit" },
  { "\"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", \"b\"], \"people\": [\"A\"], "
    "\"repeats\": \"2\"}], \"study_readings\": [{\"study\": \"s\", \"piece\": \"a\", \"person\": \"A\", "
    "\"trial\": \"1\", \"value\": \"1\"}, {\"study\": \"s\", \"piece\": \"a\", \"person\": \"A\", \"trial\": "
    "\"1\", \"value\": \"1\"}]",
    BAD, "study_readings[1].trial", "keep one" },
};

static void
test_gauges (void)
{
  check_all (TM_TEST_JOB_MM ", \"gauges\": [", gauges, G_N_ELEMENTS (gauges), "]}");
}

static void
test_histories (void)
{
  check_all (TM_TEST_JOB_MM METHODS ", ", histories, G_N_ELEMENTS (histories), "}");
}

static void
test_studies (void)
{
  check_all (TM_TEST_JOB_MM METHODS ", ", studies, G_N_ELEMENTS (studies), "}");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/history-wrong/gauges", test_gauges);
  g_test_add_func ("/exchange/history-wrong/histories", test_histories);
  g_test_add_func ("/exchange/history-wrong/studies", test_studies);
  return g_test_run ();
}
