/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-elastic.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-material.h"

/* Sources.  "From memory": the figure was written down without the book at hand. */
#define CALLISTER N_ ("Callister, Materials Science and Engineering, table B.2")
#define CALLISTER_RECALLED \
  N_ ("Callister, Materials Science and Engineering, tables B.2 and B.3 (from memory)")
#define CALLISTER_YIELD \
  N_ ("Callister, Materials Science and Engineering, table B.4 (from memory), by condition")
#define DOWLING  N_ ("Dowling, Mechanical Behavior of Materials, table 5.2")
#define PHILPOT  N_ ("Philpot, Mechanics of Materials, table D.1b")
#define DIN_7190 N_ ("DIN 7190, for cooling (from memory)")
#define RECALLED N_ ("from memory, no source at hand")
#define DOUBTED  N_ ("Callister, table B.2, where 1.10 GPa is doubtful")

/* A figure by one source, by two, and one that no source has. */
#define ONE(value, source)            \
  {                                   \
    value, value, value, source, NULL \
  }
#define TWO(value, low, high, source, other) \
  {                                          \
    value, low, high, source, other          \
  }
#define NONE                \
  {                         \
    NAN, NAN, NAN, "", NULL \
  }
#define YIELD(low, high) TWO (low, low, high, CALLISTER_YIELD, NULL)

typedef struct {
  const char *material; /* as core-material names it: spelling and expansion are there */
  const char *name;     /* of a condition that has a row of its own, or NULL: the material's */
  const char *keys;     /* of that condition, as tm_material_matches() takes them */
  TmFigure modulus, poisson, yield, cold;
  gboolean plastic;
} Row;

/* A condition stands before its material. */
static const Row rows[] = {
  { "steel", NULL, NULL, TWO (207, 207, 212, CALLISTER, DOWLING),
    TWO (0.293, 0.293, 0.30, DOWLING, CALLISTER_RECALLED), NONE, ONE (8.5, DIN_7190), FALSE },
  { "steel ASTM A36", NULL, NULL, ONE (207, CALLISTER), ONE (0.30, CALLISTER_RECALLED), YIELD (220, 250),
    ONE (8.5, DIN_7190), FALSE },
  { "steel 1020", NULL, NULL, ONE (207, CALLISTER), ONE (0.30, CALLISTER_RECALLED), YIELD (210, 350),
    ONE (8.5, DIN_7190), FALSE },
  { "steel 1040", NULL, NULL, ONE (207, CALLISTER), ONE (0.30, CALLISTER_RECALLED), YIELD (290, 490),
    ONE (8.5, DIN_7190), FALSE },
  { "steel 1050", NULL, NULL, ONE (207, CALLISTER), ONE (0.30, CALLISTER_RECALLED), NONE, ONE (8.5, DIN_7190),
    FALSE },
  { "steel 4140", NULL, NULL, ONE (207, CALLISTER), ONE (0.30, CALLISTER_RECALLED), YIELD (417, 1570),
    ONE (8.5, DIN_7190), FALSE },
  { "steel 4340", NULL, NULL, ONE (207, CALLISTER), ONE (0.30, CALLISTER_RECALLED), YIELD (472, 1620),
    ONE (8.5, DIN_7190), FALSE },
  { "stainless steel", NULL, NULL, TWO (193, 193, 215, CALLISTER, DOWLING),
    TWO (0.283, 0.283, 0.30, DOWLING, CALLISTER_RECALLED), NONE, NONE, FALSE },
  { "stainless 304", NULL, NULL, TWO (193, 193, 215, CALLISTER, DOWLING),
    TWO (0.283, 0.283, 0.30, DOWLING, CALLISTER_RECALLED), YIELD (205, 515), NONE, FALSE },
  { "stainless 316", NULL, NULL, TWO (193, 193, 215, CALLISTER, DOWLING),
    TWO (0.283, 0.283, 0.30, DOWLING, CALLISTER_RECALLED), YIELD (205, 310), NONE, FALSE },
  { "stainless 405", NULL, NULL, ONE (200, CALLISTER_RECALLED), ONE (0.30, CALLISTER_RECALLED),
    YIELD (170, 170), NONE, FALSE },
  { "stainless 440A", NULL, NULL, ONE (200, CALLISTER_RECALLED), ONE (0.30, CALLISTER_RECALLED),
    YIELD (415, 1650), NONE, FALSE },
  { "stainless 17-7PH", NULL, NULL, ONE (204, CALLISTER_RECALLED), ONE (0.30, CALLISTER_RECALLED),
    YIELD (1210, 1310), NONE, FALSE },
  { "grey cast iron", NULL, NULL, TWO (84, 66, 138, PHILPOT, CALLISTER_RECALLED),
    TWO (0.22, 0.22, 0.26, PHILPOT, CALLISTER_RECALLED), NONE, ONE (8, DIN_7190), FALSE },
  { "ductile iron", NULL, NULL, ONE (168, PHILPOT), TWO (0.32, 0.28, 0.32, PHILPOT, CALLISTER_RECALLED), NONE,
    ONE (8, DIN_7190), FALSE },
  { "ductile iron 60-40-18", NULL, NULL, TWO (168, 168, 169, PHILPOT, CALLISTER_RECALLED),
    TWO (0.32, 0.29, 0.32, PHILPOT, CALLISTER_RECALLED), YIELD (276, 276), ONE (8, DIN_7190), FALSE },
  { "ductile iron 80-55-06", NULL, NULL, ONE (168, PHILPOT),
    TWO (0.32, 0.31, 0.32, PHILPOT, CALLISTER_RECALLED), YIELD (379, 379), ONE (8, DIN_7190), FALSE },
  { "malleable iron", NULL, NULL, ONE (179, PHILPOT), ONE (0.27, PHILPOT), NONE, ONE (8, DIN_7190), FALSE },
  { "aluminium", NULL, NULL, TWO (70.3, 69, 72.4, DOWLING, CALLISTER_RECALLED),
    TWO (0.345, 0.33, 0.345, DOWLING, CALLISTER_RECALLED), NONE, ONE (18, DIN_7190), FALSE },
  { "aluminium 1100", NULL, NULL, TWO (70.3, 69, 70.3, DOWLING, CALLISTER_RECALLED),
    TWO (0.345, 0.33, 0.345, DOWLING, CALLISTER_RECALLED), YIELD (34, 117), ONE (18, DIN_7190), FALSE },
  { "aluminium 2024", "aluminium 2024-T3", "|2024 t3|2024 t351|", ONE (72.4, CALLISTER_RECALLED),
    ONE (0.33, CALLISTER_RECALLED), YIELD (345, 345), ONE (18, DIN_7190), FALSE },
  { "aluminium 2024", NULL, NULL, ONE (72.4, CALLISTER_RECALLED), ONE (0.33, CALLISTER_RECALLED),
    YIELD (75, 345), ONE (18, DIN_7190), FALSE },
  { "aluminium 6061", "aluminium 6061-T6", "|6061 t6|6061 t651|6061 t6511|", ONE (69, PHILPOT),
    ONE (0.33, PHILPOT), YIELD (276, 276), ONE (18, DIN_7190), FALSE },
  { "aluminium 6061", NULL, NULL, ONE (69, PHILPOT), ONE (0.33, PHILPOT), YIELD (55, 276), ONE (18, DIN_7190),
    FALSE },
  { "aluminium 7075", "aluminium 7075-T6", "|7075 t6|7075 t651|", ONE (71, CALLISTER_RECALLED),
    ONE (0.33, CALLISTER_RECALLED), YIELD (505, 505), ONE (18, DIN_7190), FALSE },
  { "aluminium 7075", NULL, NULL, ONE (71, CALLISTER_RECALLED), ONE (0.33, CALLISTER_RECALLED),
    YIELD (103, 505), ONE (18, DIN_7190), FALSE },
  { "aluminium 356.0", NULL, NULL, ONE (72.4, CALLISTER_RECALLED), ONE (0.33, CALLISTER_RECALLED),
    YIELD (124, 164), ONE (18, DIN_7190), FALSE },
  { "copper C11000", NULL, NULL, TWO (130, 115, 130, DOWLING, CALLISTER_RECALLED),
    TWO (0.343, 0.33, 0.343, DOWLING, CALLISTER_RECALLED), YIELD (69, 310), ONE (14, DIN_7190), FALSE },
  { "beryllium copper C17200", NULL, NULL, ONE (128, CALLISTER_RECALLED), ONE (0.30, CALLISTER_RECALLED),
    YIELD (195, 1205), NONE, FALSE },
  { "brass", NULL, NULL, TWO (101, 97, 110, DOWLING, CALLISTER_RECALLED),
    TWO (0.350, 0.34, 0.35, DOWLING, CALLISTER_RECALLED), NONE, ONE (16, DIN_7190), FALSE },
  { "cartridge brass C26000", NULL, NULL, TWO (101, 101, 110, DOWLING, CALLISTER_RECALLED),
    ONE (0.350, DOWLING), YIELD (75, 435), ONE (16, DIN_7190), FALSE },
  { "free-cutting brass C36000", NULL, NULL, ONE (97, CALLISTER_RECALLED), ONE (0.34, CALLISTER_RECALLED),
    YIELD (125, 310), ONE (16, DIN_7190), FALSE },
  { "red brass C23000", NULL, NULL, ONE (115, PHILPOT), ONE (0.307, PHILPOT), NONE, ONE (16, DIN_7190),
    FALSE },
  { "bronze", NULL, NULL, TWO (100, 100, 110, CALLISTER_RECALLED, PHILPOT),
    TWO (0.34, 0.316, 0.34, CALLISTER_RECALLED, PHILPOT), NONE, ONE (15, DIN_7190), FALSE },
  { "bearing bronze C93200", NULL, NULL, ONE (100, CALLISTER_RECALLED), ONE (0.34, CALLISTER_RECALLED),
    YIELD (125, 125), ONE (15, DIN_7190), FALSE },
  { "manganese bronze C86100", NULL, NULL, ONE (105, PHILPOT), ONE (0.34, PHILPOT), NONE, ONE (15, DIN_7190),
    FALSE },
  { "aluminium bronze C95400", NULL, NULL, ONE (110, PHILPOT), ONE (0.316, PHILPOT), NONE, ONE (15, DIN_7190),
    FALSE },
  { "titanium", NULL, NULL, TWO (120, 103, 120, DOWLING, CALLISTER_RECALLED),
    TWO (0.361, 0.34, 0.361, DOWLING, CALLISTER_RECALLED), YIELD (170, 170), NONE, FALSE },
  { "Ti-6Al-4V", NULL, NULL, ONE (114, PHILPOT), TWO (0.33, 0.33, 0.34, PHILPOT, CALLISTER_RECALLED),
    YIELD (830, 1103), NONE, FALSE },
  { "Invar", NULL, NULL, ONE (141, CALLISTER_RECALLED), ONE (0.29, RECALLED), YIELD (276, 276), NONE, FALSE },
  { "acetal", NULL, NULL, TWO (2.95, 2.8, 3.1, RECALLED, NULL), ONE (0.35, RECALLED),
    TWO (60, 60, 70, RECALLED, NULL), NONE, TRUE },
  { "acetal, glass-filled", NULL, NULL, TWO (8.5, 8, 9, RECALLED, NULL), ONE (0.35, RECALLED), NONE, NONE,
    TRUE },
  { "nylon 6,6", NULL, NULL, TWO (2.7, 1.59, 3.79, DOWLING, CALLISTER),
    TWO (0.41, 0.39, 0.41, DOWLING, CALLISTER_RECALLED), YIELD (44.8, 82.8), NONE, TRUE },
  { "PEEK", NULL, NULL, TWO (3.6, 1.10, 3.6, RECALLED, DOUBTED), ONE (0.38, RECALLED), YIELD (91, 91), NONE,
    TRUE },
  { "UHMWPE", NULL, NULL, ONE (0.69, CALLISTER), ONE (0.46, RECALLED), YIELD (21.4, 27.6), NONE, TRUE },
  { "PTFE", NULL, NULL, TWO (0.475, 0.40, 0.55, CALLISTER, NULL), ONE (0.46, CALLISTER_RECALLED),
    YIELD (13.8, 15.2), NONE, TRUE },
  { "HDPE", NULL, NULL, ONE (1.08, DOWLING), ONE (0.42, DOWLING), YIELD (26.2, 33.1), NONE, TRUE },
  { "polycarbonate", NULL, NULL, ONE (2.38, CALLISTER_RECALLED), ONE (0.36, CALLISTER_RECALLED),
    YIELD (62.1, 62.1), NONE, TRUE },
};

static const TmFigure no_figure = NONE;

/* One book that differs within itself is one source. */
static TmFigure
take_expansion (const TmExpansion *found)
{
  gboolean other = found->other_source != NULL && !g_str_equal (found->other_source, found->source);

  return (TmFigure) { found->value, found->low, found->high, found->source,
                      other ? found->other_source : NULL };
}

static void
fill_from_row (const Row *row, TmElastic *out)
{
  TmExpansion expansion;

  *out = (TmElastic) { .name = row->name ? row->name : row->material,
                       .modulus = row->modulus,
                       .poisson = row->poisson,
                       .yield = row->yield,
                       .expansion = no_figure,
                       .cold = row->cold,
                       .plastic = row->plastic };
  if (tm_material_expansion (row->material, &expansion))
    out->expansion = take_expansion (&expansion);
}

gboolean
tm_elastic_table (guint i, TmElastic *out)
{
  if (i >= G_N_ELEMENTS (rows))
    return FALSE;
  fill_from_row (&rows[i], out);
  return TRUE;
}

/* The name goes to core-material, which knows the spellings; a condition is looked for within it. */
static const Row *
find_row (const char *text)
{
  TmExpansion known;

  if (!tm_material_expansion (text, &known))
    return NULL;
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (g_str_equal (rows[i].material, known.material)
        && (rows[i].keys == NULL || tm_material_matches (text, rows[i].keys)))
      return &rows[i];
  return NULL;
}

static TmFigure
state_figure (const TmQuantity *quantity, const char *source)
{
  double value;

  if (!quantity->given)
    return no_figure;
  value = tm_count_to_double (quantity->count, quantity->unit);
  return (TmFigure) { value, value, value, source, NULL };
}

void
tm_elastic_of_shop (const TmShopMaterial *material, TmElastic *out)
{
  *out = (TmElastic) { .name = material->name,
                       .modulus = state_figure (&material->modulus, material->source),
                       .poisson = state_figure (&material->poisson, material->source),
                       .yield = state_figure (&material->yield, material->source),
                       .expansion = state_figure (&material->expansion, material->source),
                       .cold = state_figure (&material->cold, material->source),
                       .plastic = material->plastic,
                       .shop = TRUE };
}

static void
complete (TmFigure *figure, const TmFigure *from_table)
{
  if (isnan (figure->value))
    *figure = *from_table;
}

gboolean
tm_elastic_find (const TmJob *job, const char *name, TmElastic *out)
{
  const TmShopMaterial *own = job != NULL && name != NULL ? tm_job_find_material (job, name) : NULL;
  const Row *row = find_row (name);
  TmElastic table = { .name = "",
                      .modulus = no_figure,
                      .poisson = no_figure,
                      .yield = no_figure,
                      .expansion = no_figure,
                      .cold = no_figure };

  if (row != NULL)
    fill_from_row (row, &table);
  *out = table;
  if (own == NULL)
    return row != NULL;
  tm_elastic_of_shop (own, out);
  complete (&out->modulus, &table.modulus);
  complete (&out->poisson, &table.poisson);
  complete (&out->yield, &table.yield);
  complete (&out->expansion, &table.expansion);
  complete (&out->cold, &table.cold);
  out->plastic = own->plastic || table.plastic;
  return TRUE;
}
