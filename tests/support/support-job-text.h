/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * support-job-text: small job files as text, so that a test shows only what it is about.
 */

#pragma once

#include <glib.h>

/* The start of a job in millimetres, and one in inches; sections follow, and "}". */
#define TM_TEST_JOB_MM                               \
  "{\"format\": \"tenthmark-job\", \"version\": 1, " \
  "\"job\": {\"id\": \"j\", \"part_number\": \"P-1\", \"unit\": \"mm\"}"
#define TM_TEST_JOB_IN                               \
  "{\"format\": \"tenthmark-job\", \"version\": 1, " \
  "\"job\": {\"id\": \"j\", \"part_number\": \"P-1\", \"unit\": \"in\"}"

/* The usual sections: a bore, a position, a pass/fail feature and two pieces. */
#define TM_TEST_FEATURES                                                                      \
  ", \"features\": [{\"balloon\": \"1\", \"kind\": \"bore\", \"requirement\": \"Ø25 H7\"}, " \
  "{\"balloon\": \"2\", \"requirement\": \"4X ⌖ Ø0.2 Ⓜ A B\"}, "                         \
  "{\"balloon\": \"3\", \"kind\": \"attribute\", \"name\": \"Edges\"}]"
#define TM_TEST_PIECES ", \"pieces\": [{\"serial\": \"001\"}, {\"serial\": \"002\"}]"

/* A job with those sections and these readings. */
#define TM_TEST_READINGS(rows) TM_TEST_JOB_MM TM_TEST_FEATURES TM_TEST_PIECES ", \"readings\": [" rows "]}"

/* A job with this one feature. */
#define TM_TEST_FEATURE(row) TM_TEST_JOB_MM ", \"features\": [" row "]}"
