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
} TmPressCase;

void tm_press_print (const TmPressCase *press);
void tm_press_print_json (const TmPressCase *press);

/* The tables, and the shop's entries of @job (may be NULL) before them. */
void tm_materials_print (const TmJob *job);
void tm_materials_print_json (const TmJob *job);

G_END_DECLS
