/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-run-rules: what a run of points on a control chart says, and how often it says so by chance.
 *
 * Western Electric, Statistical Quality Control Handbook (1956); L. S. Nelson, J. Quality Technology 16
 * (1984).  A rule of k of m speaks only when the newest point is one of the k.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  TM_RULE_BEYOND_3S,
  TM_RULE_2_OF_3_BEYOND_2S,
  TM_RULE_4_OF_5_BEYOND_1S,
  TM_RULE_8_ONE_SIDE,
  TM_RULE_9_ONE_SIDE,
  TM_RULE_6_RISING_OR_FALLING,
  TM_RULE_14_ALTERNATING,
  TM_RULE_15_WITHIN_1S,
  TM_RULE_8_BEYOND_1S,
  TM_N_RUN_RULES
} TmRunRule;

#define TM_RULE_BIT(rule) (1u << (rule))
#define TM_RULES_USUAL    TM_RULE_BIT (TM_RULE_BEYOND_3S)

typedef struct {
  guint point; /* index of the point that completes it */
  guint rule;  /* TmRunRule */
} TmRuleHit;

/* @z: points in standard deviations from the centre; NAN: missing, which ends every run.  @breaks: indexes
 * that begin a new stretch.  TmRuleHit array in order. */
GArray *tm_run_rules (const double *z, gsize n, const guint *breaks, guint n_breaks,
                      guint rules) G_GNUC_WARN_UNUSED_RESULT;

/* Mean number of points until the set speaks, of independent normal points whose mean lies @shift standard
 * deviations off: exact by Markov chain for the rules that look at zones; by simulation with a fixed seed
 * where trends or alternation are in the set, @exact FALSE then. */
double tm_run_rules_length (guint rules, double shift, gboolean *exact);

const char *tm_run_rule_word (TmRunRule rule); /* "beyond-3s"…: of files, stable */
const char *
tm_run_rule_text (TmRunRule rule); /* "two of three beyond 2 sigma on one side": marked for translation */
gboolean tm_run_rule_from_word (const char *word, TmRunRule *rule);

G_END_DECLS
