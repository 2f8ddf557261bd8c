/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures: DIN 863-1 limits of error of outside micrometers and gauge block grades (former DIN 861, ISO
 * 3650), as printed in published tables.  ISO 3611:2010 leaves a micrometer's limit to its maker, and no
 * published figure was found for transfer gauges: their starting values are common practice, from memory,
 * and say so.
 */

#include "core-gauge-kind.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define UM                G_GINT64_CONSTANT (1000000)
#define INCH_STEP         G_GINT64_CONSTANT (254000) /* 0.00001 in */
#define INCH_DECIMALS     5
#define TENTHS(n)         ((n)*G_GINT64_CONSTANT (2540000))
#define MICROMETER_TO     G_GINT64_CONSTANT (500000000000) /* 500 mm */
#define BLOCK_GRADE_START "2"

static const char source_micrometer[] = N_ ("DIN 863-1, as published in a table");
static const char source_block[] = N_ ("gauge block grade 2, as published in tables");
static const char source_assumed[] = N_ ("assumed: common practice, from memory");
static const char source_feel[] = N_ ("assumed: ordinary hand, common practice, from memory");

/* What a kind's starting figures follow from. */
typedef enum { FIGURE_NONE, FIGURE_MICROMETER, FIGURE_BLOCK, FIGURE_ERROR, FIGURE_FEEL } Figure;

typedef struct {
  Figure figure;
  gint64 limit; /* for ERROR and FEEL, counts */
  const char *source;
} Start;

/* Fields as in the struct: word, contact, transfer, pins, classed, inside, outside. */
static const TmGaugeKind kinds[] = {
  { NC_ ("gauge", "outside micrometer"), TM_CONTACT_TWO_POINT, FALSE, FALSE, FALSE, FALSE, TRUE },
  { NC_ ("gauge", "inside micrometer"), TM_CONTACT_TWO_POINT, FALSE, FALSE, FALSE, TRUE, FALSE },
  { NC_ ("gauge", "three-point bore micrometer"), TM_CONTACT_THREE_POINT, FALSE, FALSE, FALSE, TRUE, FALSE },
  { NC_ ("gauge", "dial bore gauge"), TM_CONTACT_TWO_POINT, FALSE, FALSE, FALSE, TRUE, FALSE },
  { NC_ ("gauge", "telescoping gauge"), TM_CONTACT_TWO_POINT, TRUE, FALSE, FALSE, TRUE, FALSE },
  { NC_ ("gauge", "small-hole gauge"), TM_CONTACT_TWO_POINT, TRUE, FALSE, FALSE, TRUE, FALSE },
  { NC_ ("gauge", "inside caliper"), TM_CONTACT_TWO_POINT, TRUE, FALSE, FALSE, TRUE, FALSE },
  { NC_ ("gauge", "outside caliper"), TM_CONTACT_TWO_POINT, TRUE, FALSE, FALSE, FALSE, TRUE },
  { NC_ ("gauge", "caliper"), TM_CONTACT_TWO_POINT, FALSE, FALSE, FALSE, TRUE, TRUE },
  { NC_ ("gauge", "depth micrometer"), TM_CONTACT_OTHER, FALSE, FALSE, FALSE, FALSE, FALSE },
  { NC_ ("gauge", "depth gauge"), TM_CONTACT_OTHER, FALSE, FALSE, FALSE, FALSE, FALSE },
  { NC_ ("gauge", "height gauge"), TM_CONTACT_OTHER, FALSE, FALSE, FALSE, TRUE, TRUE },
  { NC_ ("gauge", "dial indicator"), TM_CONTACT_OTHER, FALSE, FALSE, FALSE, FALSE, FALSE },
  { NC_ ("gauge", "test indicator"), TM_CONTACT_OTHER, FALSE, FALSE, FALSE, FALSE, FALSE },
  { NC_ ("gauge", "pin set"), TM_CONTACT_FULL_FORM, FALSE, TRUE, TRUE, TRUE, FALSE },
  { NC_ ("gauge", "plug gauge"), TM_CONTACT_FULL_FORM, FALSE, TRUE, TRUE, TRUE, FALSE },
  { NC_ ("gauge", "ring gauge"), TM_CONTACT_FULL_FORM, FALSE, FALSE, TRUE, FALSE, TRUE },
  { NC_ ("gauge", "snap gauge"), TM_CONTACT_TWO_POINT, FALSE, FALSE, FALSE, FALSE, TRUE },
  { NC_ ("gauge", "setting ring"), TM_CONTACT_OTHER, FALSE, FALSE, TRUE, FALSE, FALSE },
  { NC_ ("gauge", "gauge blocks"), TM_CONTACT_OTHER, FALSE, FALSE, FALSE, FALSE, FALSE },
  { NC_ ("gauge", "thread plug gauge"), TM_CONTACT_FULL_FORM, FALSE, FALSE, FALSE, TRUE, FALSE },
  { NC_ ("gauge", "thread ring gauge"), TM_CONTACT_FULL_FORM, FALSE, FALSE, FALSE, FALSE, TRUE },
  { NC_ ("gauge", "CMM"), TM_CONTACT_OTHER, FALSE, FALSE, FALSE, TRUE, TRUE },
  { NC_ ("gauge", "roughness tester"), TM_CONTACT_OTHER, FALSE, FALSE, FALSE, FALSE, FALSE },
  { NC_ ("gauge", "hardness tester"), TM_CONTACT_OTHER, FALSE, FALSE, FALSE, FALSE, FALSE },
  { NC_ ("gauge", "bevel protractor"), TM_CONTACT_OTHER, FALSE, FALSE, FALSE, FALSE, FALSE },
  { NC_ ("gauge", "thermometer"), TM_CONTACT_OTHER, FALSE, FALSE, FALSE, FALSE, FALSE },
};

/* Free words that name a kind, in the form that fold_word() makes. */
static const struct {
  const char *word;
  const char *kind;
} synonyms[] = {
  { "micrometer", "outside micrometer" },
  { "outside mic", "outside micrometer" },
  { "mic", "outside micrometer" },
  { "external micrometer", "outside micrometer" },
  { "digital micrometer", "outside micrometer" },
  { "inside mic", "inside micrometer" },
  { "internal micrometer", "inside micrometer" },
  { "two point inside micrometer", "inside micrometer" },
  { "tubular inside micrometer", "inside micrometer" },
  { "bore micrometer", "three-point bore micrometer" },
  { "three point micrometer", "three-point bore micrometer" },
  { "three point internal micrometer", "three-point bore micrometer" },
  { "bore gauge", "dial bore gauge" },
  { "bore dial gauge", "dial bore gauge" },
  { "two point bore gauge", "dial bore gauge" },
  { "cylinder bore gauge", "dial bore gauge" },
  { "cylinder gauge", "dial bore gauge" },
  { "telescoping", "telescoping gauge" },
  { "telescopic gauge", "telescoping gauge" },
  { "telescope gauge", "telescoping gauge" },
  { "snap t gauge", "telescoping gauge" },
  { "t gauge", "telescoping gauge" },
  { "small bore gauge", "small-hole gauge" },
  { "small hole", "small-hole gauge" },
  { "ball gauge", "small-hole gauge" },
  { "hole gauge", "small-hole gauge" },
  { "internal caliper", "inside caliper" },
  { "inside spring caliper", "inside caliper" },
  { "external caliper", "outside caliper" },
  { "outside spring caliper", "outside caliper" },
  { "digital caliper", "caliper" },
  { "dial caliper", "caliper" },
  { "vernier caliper", "caliper" },
  { "vernier", "caliper" },
  { "calipers", "caliper" },
  { "depth mic", "depth micrometer" },
  { "depth caliper", "depth gauge" },
  { "vernier depth gauge", "depth gauge" },
  { "digital height gauge", "height gauge" },
  { "vernier height gauge", "height gauge" },
  { "indicator", "dial indicator" },
  { "dial gauge", "dial indicator" },
  { "plunger indicator", "dial indicator" },
  { "dial test indicator", "test indicator" },
  { "lever indicator", "test indicator" },
  { "dti", "test indicator" },
  { "pin gauge", "pin set" },
  { "pin gauge set", "pin set" },
  { "pins", "pin set" },
  { "pin", "pin set" },
  { "gauge pins", "pin set" },
  { "plug", "plug gauge" },
  { "plain plug gauge", "plug gauge" },
  { "go no go plug", "plug gauge" },
  { "ring", "ring gauge" },
  { "plain ring gauge", "ring gauge" },
  { "gap gauge", "snap gauge" },
  { "master ring", "setting ring" },
  { "setting master", "setting ring" },
  { "gauge block", "gauge blocks" },
  { "gauge block set", "gauge blocks" },
  { "slip gauges", "gauge blocks" },
  { "block set", "gauge blocks" },
  { "thread plug", "thread plug gauge" },
  { "thread gauge", "thread plug gauge" },
  { "screw plug gauge", "thread plug gauge" },
  { "thread ring", "thread ring gauge" },
  { "screw ring gauge", "thread ring gauge" },
  { "coordinate measuring machine", "CMM" },
  { "roughness gauge", "roughness tester" },
  { "surface roughness tester", "roughness tester" },
  { "surface tester", "roughness tester" },
  { "hardness gauge", "hardness tester" },
  { "protractor", "bevel protractor" },
};

const TmGaugeKind *
tm_gauge_kinds (guint *n)
{
  *n = G_N_ELEMENTS (kinds);
  return kinds;
}

/* One spelling: lower case, hyphens and runs of spaces as one space, "gauge" and "caliper". */
static char *
fold_word (const char *word)
{
  g_autofree char *lower = g_utf8_strdown (word, -1);
  GString *folded = g_string_new (NULL);

  for (const char *c = lower; *c != '\0'; c++)
    {
      gboolean gap = *c == ' ' || *c == '-' || *c == '_' || *c == '/' || *c == '\t';

      if (!gap)
        g_string_append_c (folded, *c);
      else if (folded->len > 0 && folded->str[folded->len - 1] != ' ')
        g_string_append_c (folded, ' ');
    }
  g_string_replace (folded, "gage", "gauge", 0);
  g_string_replace (folded, "calliper", "caliper", 0);
  g_string_replace (folded, "micrometre", "micrometer", 0);
  g_string_replace (folded, "3 point", "three point", 0);
  g_string_replace (folded, "2 point", "two point", 0);
  return g_strchomp (g_string_free (folded, FALSE));
}

static const TmGaugeKind *
find_folded (const char *folded)
{
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autofree char *own = fold_word (kinds[i].word);

      if (g_str_equal (own, folded))
        return &kinds[i];
    }
  for (gsize i = 0; i < G_N_ELEMENTS (synonyms); i++)
    if (g_str_equal (synonyms[i].word, folded))
      return tm_gauge_kind_find (synonyms[i].kind);
  return NULL;
}

/* "25", "m8x1.25", "(ring", "mm": not of the kind's own words but of its size. */
static gboolean
tells_size (const char *word)
{
  return *word == '(' || strpbrk (word, "0123456789") != NULL || g_str_equal (word, "mm")
         || g_str_equal (word, "in") || g_str_equal (word, "inch");
}

/* Without sizes before it, and without all that follows a size after it; a new text. */
static char *
drop_sizes (const char *folded)
{
  g_auto (GStrv) words = g_strsplit (folded, " ", -1);
  g_autoptr (GString) kept = g_string_new (NULL);

  for (guint i = 0; words[i] != NULL; i++)
    if (!tells_size (words[i]))
      g_string_append_printf (kept, "%s%s", kept->len > 0 ? " " : "", words[i]);
    else if (kept->len > 0)
      break;
  return g_string_free (g_steal_pointer (&kept), FALSE);
}

const TmGaugeKind *
tm_gauge_kind_find (const char *word)
{
  g_autofree char *folded = word != NULL && g_utf8_validate (word, -1, NULL) ? fold_word (word) : NULL;
  g_autofree char *kept = NULL;
  const TmGaugeKind *kind;

  if (folded == NULL || *folded == '\0')
    return NULL;
  kind = find_folded (folded);
  if (kind != NULL)
    return kind;
  kept = drop_sizes (folded);
  kind = find_folded (kept);
  if (kind == NULL && g_str_has_suffix (kept, "s"))
    {
      kept[strlen (kept) - 1] = '\0';
      kind = find_folded (kept);
    }
  return kind;
}

gint64
tm_micrometer_limit (gint64 to)
{
  /* ± 4 µm to 50 mm, one more for each 50 mm that is begun: the rows of the table 0-25 … 475-500. */
  if (to <= 0 || to > MICROMETER_TO)
    return 0;
  return (4 + MAX ((to - 1) / (50000 * UM), 0)) * UM;
}

gint64
tm_gauge_block_limit (const char *grade, gint64 size)
{
  static const char *const grades[] = { "00", "0", "1", "2" };
  static const struct {
    gint64 to;           /* µm, included */
    guint hundredths[4]; /* of a µm, by grade */
  } rows[] = {
    { 10000, { 6, 12, 20, 45 } },   { 25000, { 7, 14, 30, 60 } },    { 50000, { 10, 20, 40, 80 } },
    { 75000, { 12, 25, 50, 100 } }, { 100000, { 14, 30, 60, 120 } },
  };

  for (gsize g = 0; g < G_N_ELEMENTS (grades); g++)
    for (gsize i = 0; g_strcmp0 (grade, grades[g]) == 0 && size > 0 && i < G_N_ELEMENTS (rows); i++)
      if (size <= rows[i].to * UM)
        return rows[i].hundredths[g] * (UM / 100);
  return 0;
}

static Start
find_start (const TmGaugeKind *kind)
{
  static const struct {
    const char *word;
    Start start;
  } starts[] = {
    { "outside micrometer", { FIGURE_MICROMETER, 0, source_micrometer } },
    { "gauge blocks", { FIGURE_BLOCK, 0, source_block } },
    { "three-point bore micrometer", { FIGURE_ERROR, TENTHS (2), source_assumed } },
    { "dial bore gauge", { FIGURE_ERROR, TENTHS (1), source_assumed } },
    { "telescoping gauge", { FIGURE_FEEL, TENTHS (10), source_feel } },
    { "small-hole gauge", { FIGURE_FEEL, TENTHS (10), source_feel } },
    { "inside caliper", { FIGURE_FEEL, TENTHS (20), source_assumed } },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (starts); i++)
    if (g_str_equal (starts[i].word, kind->word))
      return starts[i].start;
  return (Start) { FIGURE_NONE, 0, "" };
}

/* @count written in @unit with the digits that it takes; in inches rounded up, never to the better. */
static TmQuantity
write_limit (gint64 count, TmUnit unit)
{
  gint64 step = tm_unit_counts (unit);
  guint decimals = 0;

  if (unit == TM_UNIT_IN)
    count = (count + INCH_STEP - 1) / INCH_STEP * INCH_STEP;
  while (count % step != 0 && decimals < TM_MAX_DECIMALS)
    {
      step /= 10;
      decimals++;
    }
  return count > 0 ? tm_quantity_new (count, unit, MIN (decimals, TM_MAX_DECIMALS)) : TM_QUANTITY_NONE;
}

TmGaugeDefaults
tm_gauge_kind_defaults (const TmGaugeKind *kind, TmUnit unit, const TmQuantity *range_to)
{
  TmGaugeDefaults result = { TM_QUANTITY_NONE, TM_QUANTITY_NONE, TM_QUANTITY_NONE, "", FALSE };
  Start start;
  gint64 to = range_to != NULL && range_to->given ? range_to->count : 1;

  g_return_val_if_fail (kind != NULL, result);
  g_return_val_if_fail (unit == TM_UNIT_MM || unit == TM_UNIT_IN, result);

  start = find_start (kind);
  if (start.figure == FIGURE_MICROMETER)
    result.error_limit = write_limit (tm_micrometer_limit (to), unit);
  else if (start.figure == FIGURE_BLOCK)
    result.error_limit = write_limit (tm_gauge_block_limit (BLOCK_GRADE_START, to), unit);
  else if (start.figure == FIGURE_ERROR)
    result.error_limit = write_limit (start.limit, unit);
  else if (start.figure == FIGURE_FEEL)
    result.feel = write_limit (start.limit, unit);
  if (result.error_limit.given || result.feel.given)
    {
      result.source = start.source;
      result.assumed = tm_gauge_source_is_assumed (start.source);
    }
  return result;
}

gboolean
tm_gauge_source_is_assumed (const char *source)
{
  return source != NULL && g_ascii_strncasecmp (source, "assumed", strlen ("assumed")) == 0;
}
