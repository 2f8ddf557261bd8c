/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-elastic: the elastic and thermal figures of shop materials, by published tables, and the shop's own.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* One figure; where sources differ both stand: `value` is the first source's (the middle of a range), low and
 * high hold them all.  Of a yield strength, which hangs on the condition, `value` is the weakest condition's.
 */
typedef struct {
  double value;             /* NAN: no source has it */
  double low, high;         /* NAN as value */
  const char *source;       /* marked for translation; "" for none; the shop's own text for its entries */
  const char *other_source; /* of the figures that differ from `value`, or NULL */
} TmFigure;

typedef struct {
  const char *name;
  TmFigure modulus; /* GPa */
  TmFigure poisson;
  TmFigure yield;     /* MPa */
  TmFigure expansion; /* 1e-6 / °C, near 20 °C */
  TmFigure cold;      /* 1e-6 / °C, for cooling well below 0 °C; NAN: unknown */
  gboolean plastic;   /* creeps and takes up moisture: figures of elasticity are not the whole truth */
  gboolean shop;      /* the shop's own entry */
} TmElastic;

/* The materials of the tables, in order: metals, then plastics.  FALSE beyond the last.  Figures whose source
 * says so are from memory. */
gboolean tm_elastic_table (guint i, TmElastic *out);

/* Looks @name up: the shop's entries of @job (may be NULL) first, by exact name; then the tables in any
 * letter case and spelling that core-material knows.  A figure that a shop's entry leaves out is the table's,
 * where the name is known there too, and `low` to `high` of a stated one are that figure.  FALSE, with every
 * figure NAN, when neither knows it. */
gboolean tm_elastic_find (const TmJob *job, const char *name, TmElastic *out);

/* The figures of the shop's entry @material alone, without the tables'. */
void tm_elastic_of_shop (const TmShopMaterial *material, TmElastic *out);

G_END_DECLS
