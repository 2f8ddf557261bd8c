/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-material-words: the figures of a material, each with what the tables have and where it comes from.
 */

#pragma once

#include "core-elastic.h"

G_BEGIN_DECLS

/* One figure, as texts; "" where there is nothing to say. */
typedef struct {
  char *what;
  char *value;    /* with its unit; "not known" */
  char *tables;   /* what the tables have, where that is more or other than @value */
  char *source;   /* one, or two after another */
  char *sentence; /* all of it */
} TmMaterialLine;

void tm_material_line_free (TmMaterialLine *line);

/* The lines of @material; @table: the tables' material of that name, or NULL. */
GPtrArray *tm_words_material (const TmElastic *material, const TmElastic *table) G_GNUC_WARN_UNUSED_RESULT;

/* What stands under the lines: what a range means, and what the figures of a plastic leave out. */
GStrv tm_words_material_notes (const TmElastic *material) G_GNUC_WARN_UNUSED_RESULT;

/* "207 GPa"; "" where it is not known. */
char *tm_words_modulus (const TmElastic *material) G_GNUC_WARN_UNUSED_RESULT;

/* What it is, and which presses of @job name it: "A metal of the tables, in the press of feature 1". */
char *tm_words_material_about (const TmJob *job, const TmElastic *material) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
