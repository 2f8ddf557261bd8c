/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-cut: what the parts of the verb cut share.
 */

#pragma once

#include "core-cut-work.h"

G_BEGIN_DECLS

/* A cut as it is asked about, and its answer. */
typedef struct {
  TmUnit unit;      /* MM or IN, of sizes */
  TmUnit dial_unit; /* of the dial */
  TmReads reads;
  gboolean is_tried; /* the dial was stated, not asked for */
  TmCutAdvice advice;
  const char *feature, *piece; /* of a job; else NULL */
  guint place;
  const char *tool; /* of a job, else NULL */
} TmCutCase;

/* Of a job; NULL: not stated. */
typedef struct {
  const char *feature, *piece, *place, *tool, *mate;
  const char *dial, *aim, *method;
  double risk; /* 0: the job's */
} TmCutWhich;

/* The plan for a place of a job's piece.  FALSE after an error line. */
gboolean tm_cut_take_job (const TmJob *job, const char *path, const TmCutWhich *which, TmCutCase *out);

/* "in" or "proven"; FALSE after an error line. */
gboolean tm_cut_read_aim (const char *text, TmAim *aim);
/* @count of a dial that was typed; FALSE after an error line. */
gboolean tm_cut_read_dial (const char *text, TmUnit unit, gint64 *count);

void tm_cut_print (const TmCutCase *cut);
void tm_cut_print_json (const TmCutCase *cut);

G_END_DECLS
