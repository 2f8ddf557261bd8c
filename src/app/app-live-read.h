/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-live-read: rows that are read at every stroke: what is wrong is said where the answer would stand, and
 * the cursor stays where it is.
 */

#pragma once

#include <adwaita.h>

#include "core-model.h"

G_BEGIN_DECLS

/* Reads @row, a number without a unit in @unit; empty is absent.  FALSE where it is no such number; the first
 * thing that is wrong is put into @problem, which must hold NULL or an earlier one. */
gboolean tm_live_read (AdwEntryRow *row, TmUnit unit, TmQuantity *out, char **problem);

/* The answer: large, with lines under it. */
typedef struct {
  GtkLabel *large;
  GtkLabel *under;
} TmLiveAnswer;

void tm_live_answer_build (TmLiveAnswer *answer, GtkBox *into, const char *name);
/* Either may be NULL. */
void tm_live_answer_set (TmLiveAnswer *answer, const char *large, const char *under);

G_END_DECLS
