/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-budget-file: an uncertainty budget as a JSON file.
 */

#pragma once

#include "core-uncertainty.h"

G_BEGIN_DECLS

typedef struct {
  char *unit;         /* "" when none is stated */
  double value;       /* the result itself; NAN when not stated */
  double coverage;    /* 0..1 */
  GPtrArray *names;   /* char *, one for each component, "" when it has none */
  GArray *components; /* TmComponent */
} TmBudgetFile;

void tm_budget_file_clear (TmBudgetFile *file);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmBudgetFile, tm_budget_file_clear)

/* Numbers may be JSON numbers or decimals in quotes. FALSE after an error line; members that are not
 * known are named on standard error and left out. */
gboolean tm_budget_file_read (const char *path, TmBudgetFile *out) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
