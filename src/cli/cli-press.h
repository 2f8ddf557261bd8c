/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-press: what the parts of the verb press share.
 */

#pragma once

#include "core-press.h"

G_BEGIN_DECLS

/* A press fit as it is asked about, and its answer. */
typedef struct {
  TmUnit unit; /* MM or IN, of what is printed */
  TmPressInput input;
  TmPressAnswer answer;
  TmElastic hub, shaft; /* the material's figures; its name is "" where none is named */
  gboolean range;       /* least and most differ */
  const char *feature;  /* of a job: its balloon, and the serials of what was measured; else NULL */
  const char *piece, *mate;
} TmPressCase;

/* Which fit of a job is asked about; NULL: not stated. */
typedef struct {
  const char *feature, *piece, *place, *mate;
} TmPressWhich;

/* What @job says of the press: sizes as measured where a piece or a mate is named (a piece brings the mate
 * that is meant for it), else by limits.  FALSE after an error line. */
gboolean tm_press_take_job (const TmJob *job, const char *path, const TmPressWhich *which, TmPressCase *out);

void tm_press_print (const TmPressCase *press);
void tm_press_print_json (const TmPressCase *press);

/* The tables, and the shop's entries of @job (may be NULL) before them. */
void tm_materials_print (const TmJob *job);
void tm_materials_print_json (const TmJob *job);

G_END_DECLS
