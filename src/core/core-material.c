/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-material.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* A share of the coefficient; handbooks differ by about this much for one alloy. */
#define HALF_WIDTH_SHARE 0.1

#define CALLISTER N_ ("Callister, Materials Science and Engineering, table B.6")
#define SWYT      N_ ("Swyt, J. Res. NIST 99 (1994) 31")
#define PHILPOT   N_ ("Philpot, Mechanics of Materials, table D.1b")
#define TOOLBOX   N_ ("NIST engineering metrology toolbox, handbooks quoted there")
#define SUPPLIER  N_ ("a supplier's list of plastics")
#define RECALLED  N_ ("from memory, no source at hand")

typedef struct {
  const char *name;
  double value;     /* 1e-6 / °C near 20 °C, by the first source; the middle where one gives a range */
  double low, high; /* of all that are named */
  const char *source, *other_source;
  const char *keys; /* "|key|key|": lower case, one space where there was punctuation */
} Material;

/* Alloys stand before their families, so that the first that fits is the closest. */
static const Material materials[] = {
  { "steel ASTM A36", 11.7, 11.7, 11.7, CALLISTER, NULL, "|a36|" },
  { "steel 1020", 11.7, 11.7, 11.7, CALLISTER, NULL, "|1020|" },
  { "steel 1040", 11.3, 11.3, 11.3, CALLISTER, NULL, "|1040|" },
  { "steel 1050", 11.5, 11.2, 11.5, TOOLBOX, TOOLBOX, "|1050 steel|aisi 1050|steel 1050|" },
  { "steel 4140", 12.3, 12.3, 12.3, CALLISTER, NULL, "|4140|" },
  { "steel 4340", 12.3, 12.3, 12.3, CALLISTER, NULL, "|4340|" },
  { "stainless 304", 17.2, 17.2, 17.2, CALLISTER, NULL, "|304|304l|" },
  { "stainless 316", 15.9, 15.9, 15.9, CALLISTER, NULL, "|316|316l|" },
  { "stainless 405", 10.8, 10.8, 10.8, CALLISTER, NULL, "|405|" },
  { "stainless 440A", 10.2, 10.2, 10.2, CALLISTER, NULL, "|440a|" },
  { "stainless 17-7PH", 11.0, 11.0, 11.0, CALLISTER, NULL, "|17 7ph|17 7 ph|" },
  { "ductile iron 60-40-18", 11.2, 11.2, 11.2, CALLISTER, NULL, "|60 40 18|" },
  { "ductile iron 80-55-06", 10.6, 10.6, 10.6, CALLISTER, NULL, "|80 55 06|" },
  { "aluminium 1100", 23.6, 23.6, 23.6, CALLISTER, NULL, "|1100|" },
  { "aluminium 2024", 22.9, 22.9, 22.9, CALLISTER, NULL, "|2024|" },
  { "aluminium 6061", 23.6, 23.6, 23.6, CALLISTER, NULL, "|6061|" },
  { "aluminium 7075", 23.4, 23.4, 23.4, CALLISTER, NULL, "|7075|" },
  { "aluminium 356.0", 21.5, 21.5, 21.5, CALLISTER, NULL, "|356|356 0|a356|" },
  { "beryllium copper C17200", 16.7, 16.7, 16.7, CALLISTER, NULL, "|c17200|beryllium copper|" },
  { "cartridge brass C26000", 19.9, 19.9, 19.9, CALLISTER, NULL, "|c26000|cartridge brass|" },
  { "free-cutting brass C36000", 20.5, 20.5, 20.5, CALLISTER, NULL,
    "|c36000|c360|free cutting brass|free machining brass|" },
  { "red brass C23000", 18.7, 18.7, 18.7, RECALLED, NULL, "|c23000|c230|red brass|" },
  { "manganese bronze C86100", 21.6, 21.6, 21.6, RECALLED, NULL, "|c86100|c861|manganese bronze|" },
  { "aluminium bronze C95400", 16.2, 16.2, 16.2, RECALLED, NULL,
    "|c95400|c954|aluminium bronze|aluminum bronze|" },
  { "bearing bronze C93200", 18.0, 18.0, 18.0, CALLISTER, NULL, "|c93200|c932|bearing bronze|" },
  { "copper C11000", 17.0, 17.0, 17.0, CALLISTER, NULL, "|c11000|c110|copper|" },
  { "Ti-6Al-4V", 8.6, 8.6, 9.5, CALLISTER, PHILPOT, "|ti 6al 4v|6al 4v|ti6al4v|ti 6 4|ti64|" },
  { "titanium", 8.6, 8.6, 8.6, CALLISTER, NULL, "|titanium|ti cp|" },
  { "Invar", 1.6, 1.6, 1.6, CALLISTER, NULL, "|invar|" },
  { "nylon 6,6", 144, 144, 144, CALLISTER, NULL, "|nylon|nylon 6 6|nylon 66|pa66|" },
  { "PEEK", 78.5, 72, 85, CALLISTER, CALLISTER, "|peek|" },
  { "UHMWPE", 297, 234, 360, CALLISTER, CALLISTER, "|uhmwpe|uhmw|uhmw pe|" },
  { "PTFE", 171, 126, 216, CALLISTER, CALLISTER, "|ptfe|" },
  { "HDPE", 152, 106, 198, CALLISTER, CALLISTER, "|hdpe|" },
  { "polycarbonate", 122, 122, 122, CALLISTER, NULL, "|polycarbonate|" },
  { "acetal, glass-filled", 39.4, 39.4, 39.4, SUPPLIER, NULL,
    "|acetal glass filled|glass filled acetal|pom gf|acetal gf|" },
  { "acetal", 106.5, 106.5, 106.5, SUPPLIER, NULL, "|acetal|pom|" },
  { "silicon", 2.6, 2.6, 2.6, SWYT, NULL, "|silicon|" },
  { "malleable iron", 11.9, 11.9, 11.9, RECALLED, NULL, "|malleable iron|malleable cast iron|" },
  { "grey cast iron", 11.4, 11.4, 11.4, CALLISTER, NULL,
    "|grey cast iron|gray cast iron|grey iron|gray iron|cast iron|" },
  { "ductile iron", 10.9, 10.6, 11.2, CALLISTER, CALLISTER, "|ductile iron|nodular iron|" },
  { "brass", 20.2, 19.9, 20.5, CALLISTER, CALLISTER, "|brass|" },
  { "bronze", 18.0, 18.0, 18.0, CALLISTER, NULL, "|bronze|" },
  { "stainless steel", 13.7, 10.2, 17.2, CALLISTER, CALLISTER, "|stainless|stainless steel|" },
  { "aluminium", 23.1, 23.1, 23.6, SWYT, CALLISTER, "|aluminium|aluminum|alu|al|" },
  { "steel", 11.5, 11.5, 11.7, SWYT, CALLISTER, "|steel|crs|hrs|" },
};

/* What a gauge is taken to be made of (Swyt; the standard of JCGM 100, H.1, too). */
static const TmExpansion gauge_steel = { "steel", 11.5, 11.5, 11.5, SWYT, NULL };

double
tm_expansion_half_width (const TmExpansion *expansion)
{
  double apart = MAX (expansion->high - expansion->value, expansion->value - expansion->low);

  return MAX (fabs (expansion->value) * HALF_WIDTH_SHARE, apart);
}

/* " 6061 t6 ": lower case, each run of anything but letters and digits one space. */
static char *
make_words (const char *text)
{
  GString *words = g_string_new (" ");

  for (const char *c = text; *c != '\0'; c++)
    {
      if (g_ascii_isalnum (*c))
        g_string_append_c (words, g_ascii_tolower (*c));
      else if (words->str[words->len - 1] != ' ')
        g_string_append_c (words, ' ');
    }
  if (words->str[words->len - 1] != ' ')
    g_string_append_c (words, ' ');
  return g_string_free (words, FALSE);
}

/* TRUE when one of "|key|key|" stands as whole words in @words. */
static gboolean
has_key (const char *words, const char *keys)
{
  const char *from = keys + 1;

  for (const char *to = strchr (from, '|'); to != NULL; from = to + 1, to = strchr (from, '|'))
    {
      gsize length = (gsize)(to - from);

      for (const char *at = strchr (words, ' '); at[1] != '\0'; at = strchr (at + 1, ' '))
        if (strncmp (at + 1, from, length) == 0 && at[1 + length] == ' ')
          return TRUE;
    }
  return FALSE;
}

gboolean
tm_material_matches (const char *text, const char *keys)
{
  g_autofree char *words = make_words (text ? text : "");

  return has_key (words, keys);
}

gboolean
tm_material_expansion (const char *text, TmExpansion *out)
{
  g_autofree char *words = make_words (text ? text : "");

  for (guint i = 0; i < G_N_ELEMENTS (materials); i++)
    {
      const Material *material = &materials[i];

      if (!has_key (words, material->keys))
        continue;
      *out = (TmExpansion) { material->name, material->value,  material->low,
                             material->high, material->source, material->other_source };
      return TRUE;
    }
  return FALSE;
}

static TmExpansion
state_expansion (const TmQuantity *quantity)
{
  double value = tm_count_to_double (quantity->count, quantity->unit);

  return (TmExpansion) { "", value, value, value, N_ ("stated"), NULL };
}

/* The last material looked up: every reading of a job asks for the same one.  A pure cache, one per
 * thread. */
static gboolean
find_cached (const char *text, TmExpansion *out)
{
  static _Thread_local char last[64];
  static _Thread_local TmExpansion expansion;
  static _Thread_local gboolean found;

  if (text[0] == '\0')
    return FALSE;
  if (strlen (text) >= sizeof last)
    return tm_material_expansion (text, out);
  if (strcmp (last, text) != 0)
    {
      g_strlcpy (last, text, sizeof last);
      found = tm_material_expansion (text, &expansion);
    }
  if (found)
    *out = expansion;
  return found;
}

gboolean
tm_job_expansion (const TmJob *job, TmExpansion *out)
{
  if (!job->expansion.given)
    return find_cached (job->material, out);
  *out = state_expansion (&job->expansion);
  return TRUE;
}

TmExpansion
tm_gauge_expansion (const TmGauge *gauge)
{
  return gauge != NULL && gauge->expansion.given ? state_expansion (&gauge->expansion) : gauge_steel;
}
