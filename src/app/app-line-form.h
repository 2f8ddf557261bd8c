/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-line-form: the fields of one line that a person writes into a method's budget.
 */

#pragma once

#include <adwaita.h>

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  AdwComboRow *kind;
  AdwEntryRow *name, *value;
  AdwComboRow *distribution;
  AdwEntryRow *divisor, *dof, *source;
} TmLineForm;

void tm_line_form_build (TmLineForm *form, GtkBox *into);
/* @line NULL: a new one. */
void tm_line_form_fill (TmLineForm *form, const TmJob *job, const TmBudgetLine *line);
/* A new line of @method on the ground of @line (NULL: none); NULL with one line in @problem. */
TmBudgetLine *tm_line_form_read (TmLineForm *form, TmJob *job, const char *method, const TmBudgetLine *line,
                                 char **problem) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
