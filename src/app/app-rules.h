/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-rules: the figures that the shop sets for a job: what each is for, and what is refused. No widgets.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  const char *name;    /* in the job file */
  gsize offset;        /* of its TmQuantity in TmJob */
  const char *title;   /* to be translated, as are the next three */
  const char *about;   /* what it is for */
  const char *assumed; /* what is taken while it is empty */
  const char *wanted;  /* what may be written: the mend */
  TmUnit unit;         /* NONE: the job's own */
  double most;         /* in that unit; millimetres for the job's own */
  gboolean zero;       /* whether zero is an answer */
} TmRuleFigure;

typedef enum {
  TM_RULE_PART_TEMPERATURE,
  TM_RULE_GAUGE_TEMPERATURE,
  TM_RULE_THERMOMETER,
  TM_RULE_EXPANSION,
  TM_RULE_ENTRY_CLEARANCE,
  TM_RULE_DRIFT_LIMIT,
  TM_RULE_CHECK_HOURS,
  TM_RULE_CUT_RISK,
  TM_N_RULE_FIGURES
} TmRuleFigureKind;

const TmRuleFigure *tm_rule_figure (TmRuleFigureKind which);
TmQuantity *tm_rule_quantity (TmJob *job, TmRuleFigureKind which);
TmUnit tm_rule_unit (const TmJob *job, TmRuleFigureKind which);

/* Reads @text; empty is absent.  FALSE with one line in @problem for what is no number or none that a
 * shop would see. */
gboolean tm_rule_read (const TmJob *job, TmRuleFigureKind which, const char *text, TmQuantity *out,
                       char **problem);

/* "aluminium 6061: 23.6, by Callister…", or what is taken where the material is not known. */
char *tm_words_expansion (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
