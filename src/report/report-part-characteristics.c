/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-characteristics: every requirement of the drawing with its result.  A column that no line has
 * anything for is left out; upright pages put what belongs together under each other.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-mark.h"
#include "report-line-words.h"
#include "report-part.h"
#include "report-words.h"

typedef enum {
  COLUMN_BALLOON,
  COLUMN_WHERE,
  COLUMN_CLASS,
  COLUMN_REQUIREMENT,
  COLUMN_PIECE,
  COLUMN_PLACE,
  COLUMN_UNIT,
  COLUMN_LOWER,
  COLUMN_UPPER,
  COLUMN_LIMITS, /* both, upright */
  COLUMN_RESULT,
  COLUMN_UNCERTAINTY,
  COLUMN_VERDICT,
  COLUMN_GAUGE,
  COLUMN_REFERENCE,
  COLUMN_COMMENT,
  N_COLUMNS
} Column;

static const TmReportColumn columns[N_COLUMNS] = {
  [COLUMN_BALLOON] = { N_ ("No."), 24, 46, 0.3, TM_CELL_CENTRE },
  [COLUMN_WHERE] = { N_ ("Sheet, zone"), 32, 60, 0.3, TM_CELL_CENTRE },
  [COLUMN_CLASS] = { N_ ("Class"), 32, 70, 0.3, TM_CELL_CENTRE },
  [COLUMN_REQUIREMENT] = { N_ ("Requirement"), 70, 170, 3, TM_CELL_PLAIN },
  [COLUMN_PIECE] = { N_ ("Piece"), 26, 60, 0.3, TM_CELL_CENTRE },
  [COLUMN_PLACE] = { N_ ("Place"), 40, 50, 0.2, TM_CELL_CENTRE },
  [COLUMN_UNIT] = { N_ ("Unit"), 22, 40, 0.1, TM_CELL_CENTRE },
  [COLUMN_LOWER] = { N_ ("Lower limit"), 36, 90, 0.4, TM_CELL_NUMBER },
  [COLUMN_UPPER] = { N_ ("Upper limit"), 36, 90, 0.4, TM_CELL_NUMBER },
  [COLUMN_LIMITS] = { N_ ("Limits"), 36, 90, 0.4, TM_CELL_NUMBER },
  [COLUMN_RESULT] = { N_ ("Result"), 40, 110, 0.6, TM_CELL_NUMBER },
  [COLUMN_UNCERTAINTY] = { N_ ("Uncertainty ± (95 %)"), 36, 80, 0.4, TM_CELL_NUMBER },
  [COLUMN_VERDICT] = { N_ ("Verdict"), 44, 100, 0.5, TM_CELL_VERDICT },
  [COLUMN_GAUGE] = { N_ ("Gauge"), 36, 90, 1, TM_CELL_PLAIN },
  [COLUMN_REFERENCE] = { N_ ("Nonconformance"), 44, 90, 0.5, TM_CELL_PLAIN },
  [COLUMN_COMMENT] = { N_ ("Comment"), 60, 170, 2.5, TM_CELL_PLAIN },
};

/* -------- Rows -------- */

#define MOST_APART 10 /* pieces of one characteristic that have a row of their own */

/* A line, or the lines of all pieces for one place of one feature. */
typedef struct {
  const TmReportLine *line; /* or that of the smallest piece */
  guint index;              /* in the content */
  const TmReportLine *largest;
  TmVerdict worst;
  double expanded; /* largest, counts */
  guint n;         /* pieces put together; 1: a single one */
  guint n_unread, n_more;
} Row;

static double
get_mean (const TmReportLine *line, guint station)
{
  const TmLocalSize *size = &line->judgement.sizes.stations[station];

  return (double)size->sum / MAX (1u, size->n);
}

/* Out before too close before not measured before in. */
static guint
rank_verdict (TmVerdict verdict)
{
  return verdict == TM_VERDICT_OUT            ? 3
         : verdict == TM_VERDICT_TOO_CLOSE    ? 2
         : verdict == TM_VERDICT_NOT_MEASURED ? 1
                                              : 0;
}

static Row
make_row (const TmReportLine *line, guint index)
{
  return (Row) { line, index, line, line->judgement.verdict, line->judgement.expanded, 1, 0, 0 };
}

static void
join_line (Row *row, const TmReportLine *line, guint index)
{
  const TmSizes *sizes = &line->judgement.sizes;

  row->n++;
  if (rank_verdict (line->judgement.verdict) > rank_verdict (row->worst))
    row->worst = line->judgement.verdict;
  if (isfinite (line->judgement.expanded) && !(row->expanded >= line->judgement.expanded))
    row->expanded = line->judgement.expanded;
  if (sizes->n_stations == 0 || tm_kind_is_attribute (line->feature->kind))
    return;
  if (row->line->judgement.sizes.n_stations == 0
      || get_mean (line, sizes->smallest) < get_mean (row->line, row->line->judgement.sizes.smallest))
    row->line = line;
  if (row->largest->judgement.sizes.n_stations == 0
      || get_mean (line, sizes->largest) > get_mean (row->largest, row->largest->judgement.sizes.largest))
    row->largest = line;
}

/* Not measured is only counted; other verdicts than in have their pieces named, and so has each piece that
 * was reworked, lest it look like one that was right at once. */
static void
add_apart (GArray *rows, Row *whole, const TmReportLine *line, guint index, guint *apart)
{
  const Row single = make_row (line, index);

  if (line->first != NULL)
    g_array_append_val (rows, single);
  else if (line->judgement.verdict == TM_VERDICT_NOT_MEASURED)
    whole->n_unread++;
  else if (line->judgement.verdict != TM_VERDICT_IN && (*apart)++ < MOST_APART)
    g_array_append_val (rows, single);
  else if (line->judgement.verdict != TM_VERDICT_IN)
    whole->n_more++;
}

/* @indexes: the lines of one place of one feature, one for each piece. */
static void
add_group (GArray *rows, const GPtrArray *lines, const GArray *indexes)
{
  const guint first = g_array_index (indexes, guint, 0), at = rows->len;
  Row whole = make_row (g_ptr_array_index (lines, first), first);
  guint apart = 0;

  g_array_append_val (rows, whole);
  for (guint i = 0; i < indexes->len; i++)
    {
      const guint index = g_array_index (indexes, guint, i);
      const TmReportLine *line = g_ptr_array_index (lines, index);

      if (i > 0)
        join_line (&whole, line, index);
      if (indexes->len > 1)
        add_apart (rows, &whole, line, index, &apart);
    }
  g_array_index (rows, Row, at) = whole;
}

static GArray *
find_group (GHashTable *groups, GPtrArray *order, const TmReportLine *line)
{
  g_autofree char *key = g_strdup_printf ("%p/%u", (gconstpointer)line->feature, line->place);
  GArray *group = g_hash_table_lookup (groups, key);

  if (group == NULL)
    {
      group = g_array_new (FALSE, FALSE, sizeof (guint));
      g_hash_table_insert (groups, g_steal_pointer (&key), group);
      g_ptr_array_add (order, group);
    }
  return group;
}

static GArray *
make_rows (const TmParts *parts)
{
  const GPtrArray *lines = parts->content->lines;
  GArray *rows = g_array_new (FALSE, FALSE, sizeof (Row));
  g_autoptr (GHashTable) groups = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GPtrArray) order = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);

  for (guint i = 0; i < lines->len; i++)
    {
      const Row single = make_row (g_ptr_array_index (lines, i), i);

      if (parts->together)
        g_array_append_val (find_group (groups, order, single.line), i);
      else
        g_array_append_val (rows, single);
    }
  for (guint i = 0; i < order->len; i++)
    add_group (rows, lines, g_ptr_array_index (order, i));
  return rows;
}

/* -------- Which columns -------- */

typedef struct {
  gboolean shown[N_COLUMNS];
  gboolean upright;
  gboolean tooling; /* of some feature */
  gboolean gauges;
  gboolean where, designator; /* also where they stand under the requirement */
  TmUnit unit;                /* of all sizes; NONE: they differ */
} Plan;

static char *
say_comment (gconstpointer line)
{
  return tm_report_line_comment (line);
}

static void
look_at (Plan *plan, TmParts *parts, const Row *row)
{
  const TmReportLine *line = row->line;
  const TmFeature *feature = line->feature;
  const TmReportLine *first = g_ptr_array_index (parts->content->lines, 0);
  g_autofree char *comment = tm_report_line_comment (line);

  plan->shown[COLUMN_WHERE] |= *feature->sheet != '\0' || *feature->zone != '\0';
  plan->shown[COLUMN_CLASS] |= *feature->designator != '\0';
  plan->shown[COLUMN_PIECE] |= line->piece != first->piece || row->n > 1;
  plan->shown[COLUMN_PLACE] |= feature->places > 1;
  plan->shown[COLUMN_REFERENCE] |= line->nonconformance != NULL && *line->nonconformance->number != '\0';
  plan->shown[COLUMN_COMMENT]
      |= *comment != '\0' || row->n_unread + row->n_more > 0 || (row->n == 1 && line->first != NULL);
  plan->shown[COLUMN_GAUGE] |= *line->judgement.method_name != '\0' || *feature->tooling != '\0';
  plan->tooling |= *feature->tooling != '\0';
  plan->shown[COLUMN_UNCERTAINTY] |= isfinite (line->judgement.expanded);
  if (tm_kind_is_attribute (feature->kind))
    return;
  plan->shown[COLUMN_UNIT] |= plan->unit != TM_UNIT_NONE && feature->unit != plan->unit;
  plan->unit = feature->unit;
}

/* What an upright page puts into another column. */
static void
stack (Plan *plan)
{
  plan->shown[COLUMN_COMMENT] |= plan->shown[COLUMN_REFERENCE];
  plan->shown[COLUMN_WHERE] = plan->shown[COLUMN_CLASS] = plan->shown[COLUMN_PLACE]
      = plan->shown[COLUMN_LOWER] = plan->shown[COLUMN_UPPER] = plan->shown[COLUMN_REFERENCE]
      = plan->shown[COLUMN_UNIT] = FALSE;
  plan->shown[COLUMN_LIMITS] = TRUE;
}

/* What the shop's template leaves out; tooling that was made for the part stays. */
static void
leave_out (Plan *plan, const TmTemplate *template)
{
  plan->shown[COLUMN_WHERE] &= tm_template_shows (template, TM_TEMPLATE_WHERE);
  plan->shown[COLUMN_CLASS] &= tm_template_shows (template, TM_TEMPLATE_CLASS);
  plan->shown[COLUMN_UNCERTAINTY] &= tm_template_shows (template, TM_TEMPLATE_UNCERTAINTY);
  plan->gauges = tm_template_shows (template, TM_TEMPLATE_GAUGE);
  plan->shown[COLUMN_GAUGE] &= plan->gauges || plan->tooling;
}

static Plan
make_plan (TmParts *parts, const GArray *rows)
{
  static const Column always[]
      = { COLUMN_BALLOON, COLUMN_REQUIREMENT, COLUMN_LOWER, COLUMN_UPPER, COLUMN_RESULT, COLUMN_VERDICT };
  Plan plan = { .upright = !parts->form->landscape };

  for (gsize i = 0; i < G_N_ELEMENTS (always); i++)
    plan.shown[always[i]] = TRUE;
  for (guint i = 0; i < rows->len; i++)
    look_at (&plan, parts, &g_array_index (rows, Row, i));
  if (plan.shown[COLUMN_UNIT])
    plan.unit = TM_UNIT_NONE;
  leave_out (&plan, parts->form->template);
  plan.where = plan.shown[COLUMN_WHERE];
  plan.designator = plan.shown[COLUMN_CLASS];
  if (plan.upright)
    stack (&plan);
  return plan;
}

/* -------- Cells -------- */

static void
append_line (GString *out, const char *text)
{
  if (text == NULL || *text == '\0')
    return;
  if (out->len > 0)
    g_string_append_c (out, '\n');
  g_string_append (out, text);
}

static char *
name_where (const TmFeature *feature)
{
  return g_strdup_printf ("%s%s%s", feature->sheet,
                          *feature->sheet != '\0' && *feature->zone != '\0' ? ", " : "", feature->zone);
}

static char *
say_place (gconstpointer data)
{
  const TmReportLine *line = data;

  return line->feature->places > 1 ? g_strdup_printf (_ ("%u of %u"), line->place, line->feature->places)
                                   : g_strdup ("");
}

static void
add_balloon (TmParts *parts, const Plan *plan, const TmReportLine *line)
{
  g_autoptr (GString) text = g_string_new (line->feature->balloon);
  g_autofree char *place = say_place (line);
  g_autofree char *drawing = tm_part_drawing_name (parts, line->feature, line->place);

  if (plan->upright)
    append_line (text, place);
  tm_report_add_cell (parts->document, text->str);
  if (drawing != NULL)
    tm_report_link_cell (parts->document, drawing);
}

static const char *
word_class (TmParts *parts, const TmFeature *feature)
{
  if (g_str_equal (feature->designator, "critical"))
    return tm_part_label (parts, "class", NC_ ("class", "critical"));
  if (g_str_equal (feature->designator, "key"))
    return tm_part_label (parts, "class", NC_ ("class", "key"));
  return feature->designator;
}

static void
add_requirement (TmParts *parts, const Plan *plan, const TmReportLine *line)
{
  const TmFeature *feature = line->feature;
  g_autofree char *where = name_where (feature);
  g_autoptr (GString) text = g_string_new (feature->requirement);

  append_line (text, feature->name);
  if (plan->upright && plan->where)
    append_line (text, where);
  if (plan->upright && plan->designator && *feature->designator != '\0')
    {
      if (plan->where && *where != '\0')
        g_string_append (text, " · ");
      else if (text->len > 0)
        g_string_append_c (text, '\n');
      g_string_append (text, word_class (parts, feature));
    }
  tm_report_add_cell (parts->document, text->str);
}

/* A limit that a bonus has widened is printed fine enough to show it. */
static char *
format_limit (const TmFeature *feature, const TmQuantity *stated, gint64 limit)
{
  const gboolean widened = stated->given && limit != stated->count;

  return tm_count_format (limit, feature->unit, widened ? MAX (stated->decimals, 4) : stated->decimals);
}

static char *
format_lower (const TmReportLine *line)
{
  const TmLimits *limits = &line->judgement.limits;

  if (!limits->has_lower || tm_kind_is_attribute (line->feature->kind))
    return g_strdup ("");
  return format_limit (line->feature, &line->feature->lower, limits->lower);
}

static char *
format_upper (const TmReportLine *line)
{
  const TmLimits *limits = &line->judgement.limits;

  if (!limits->has_upper || tm_kind_is_attribute (line->feature->kind))
    return g_strdup ("");
  return format_limit (line->feature, &line->feature->upper, limits->upper);
}

/* Upright, where only one limit is given, which one it is. */
static void
add_limits (TmParts *parts, const Plan *plan, const TmReportLine *line)
{
  g_autofree char *lower = format_lower (line), *upper = format_upper (line);
  g_autoptr (GString) text = g_string_new (NULL);

  if (*lower != '\0' && *upper == '\0')
    g_string_append (text, "≥ ");
  g_string_append (text, lower);
  if (*lower != '\0' && *upper != '\0')
    g_string_append_c (text, '\n');
  if (*lower == '\0' && *upper != '\0')
    g_string_append (text, "≤ ");
  g_string_append (text, upper);
  if (plan->unit == TM_UNIT_NONE && text->len > 0)
    append_line (text, tm_unit_symbol (line->feature->unit));
  tm_report_add_cell (parts->document, text->str);
}

static char *
format_station (const TmReportLine *line, guint station, guint decimals)
{
  const TmLocalSize *size = &line->judgement.sizes.stations[station];

  return tm_mean_format (size->sum, MAX (1u, size->n), line->feature->unit, decimals);
}

static void
add_range (TmParts *parts, const Plan *plan, const Row *row)
{
  const guint decimals = MAX (tm_report_line_decimals (row->line), tm_report_line_decimals (row->largest));
  g_autofree char *smallest = format_station (row->line, row->line->judgement.sizes.smallest, decimals);
  g_autofree char *largest = format_station (row->largest, row->largest->judgement.sizes.largest, decimals);
  g_autofree char *range = g_strdup_printf (plan->upright ? "%s …\n%s" : "%s … %s", smallest, largest);

  tm_report_add_cell (parts->document, g_str_equal (smallest, largest) ? smallest : range);
}

/* Of pieces put together the worst. */
static const char *
word_outcome (TmParts *parts, const Row *row)
{
  const TmJudgement *judgement = &row->line->judgement;
  const gboolean failed
      = row->n > 1 ? row->worst == TM_VERDICT_OUT
                   : judgement->sizes.n_stations > 0
                         && judgement->sizes.stations[judgement->deciding].outcome == TM_OUTCOME_FAIL;

  if (judgement->sizes.n_stations == 0 && row->n == 1)
    return "";
  return tm_part_label (parts, NULL, failed ? N_ ("fail") : N_ ("pass"));
}

static void
add_result (TmParts *parts, const Plan *plan, const Row *row)
{
  const TmJudgement *judgement = &row->line->judgement;

  if (tm_kind_is_attribute (row->line->feature->kind))
    tm_report_add_cell (parts->document, word_outcome (parts, row));
  else if (judgement->sizes.n_stations == 0)
    {
      g_autofree char *size = tm_judgement_size_text (judgement);

      tm_report_add_cell (parts->document, size);
    }
  else
    add_range (parts, plan, row);
}

static void
add_uncertainty (TmParts *parts, const Row *row)
{
  g_autofree char *text = isfinite (row->expanded) && !tm_kind_is_attribute (row->line->feature->kind)
                              ? tm_judgement_spread_text (&row->line->judgement, row->expanded)
                              : g_strdup ("");

  tm_report_add_cell (parts->document, text);
}

/* An arrow points the way that the size lies beyond its limit. */
static TmPoint
find_point (const TmReportLine *line)
{
  const TmJudgement *judgement = &line->judgement;
  const TmLocalSize *size;

  if (tm_kind_is_attribute (line->feature->kind) || judgement->sizes.n_stations == 0)
    return TM_POINT_NONE;
  size = &judgement->sizes.stations[judgement->deciding];
  if (judgement->limits.has_upper
      && tm_mean_compare (size->sum, MAX (1u, size->n), judgement->limits.upper) > 0)
    return TM_POINT_UP;
  return TM_POINT_DOWN;
}

/* A row of several pieces has no one side. */
static void
add_verdict (TmParts *parts, const Row *row)
{
  g_autofree char *plot = row->n == 1 ? tm_part_plot_name (parts, row->index) : NULL;

  tm_report_add_verdict (parts->document, row->worst, row->n == 1 ? find_point (row->line) : TM_POINT_NONE,
                         tm_part_label (parts, "verdict", tm_verdict_word (row->worst)));
  if (plot != NULL)
    tm_report_link_cell (parts->document, plot);
}

static char *
say_unread (gconstpointer data)
{
  const Row *row = data;

  if (row->n_unread == 0)
    return NULL;
  return g_strdup_printf (ngettext ("%u piece not measured", "%u pieces not measured", row->n_unread),
                          row->n_unread);
}

static char *
say_more (gconstpointer data)
{
  const Row *row = data;

  if (row->n_more == 0)
    return NULL;
  return g_strdup_printf (ngettext ("%u more piece is not in", "%u more pieces are not in", row->n_more),
                          row->n_more);
}

typedef struct {
  const TmReportLine *line;
  TmDateForm dates;
} First;

static char *
say_first (gconstpointer data)
{
  const First *first = data;

  return tm_report_line_first (first->line, first->dates);
}

static void
add_comment (TmParts *parts, const Plan *plan, const Row *row)
{
  const TmReportLine *line = row->line;
  const First data = { line, parts->form->dates };
  g_autofree char *first = row->n == 1 ? tm_part_both (parts, say_first, &data) : NULL;
  g_autofree char *comment = tm_part_both (parts, say_comment, line);
  g_autofree char *unread = tm_part_both (parts, say_unread, row);
  g_autofree char *more = tm_part_both (parts, say_more, row);
  g_autoptr (GString) text
      = g_string_new (plan->upright && line->nonconformance != NULL ? line->nonconformance->number : "");

  append_line (text, first);
  append_line (text, comment);
  append_line (text, unread);
  append_line (text, more);
  tm_report_add_cell (parts->document, text->str);
}

/* What measured it, and the tooling that was made to check it. */
static char *
name_gauges (const TmParts *parts, const Plan *plan, const TmReportLine *line)
{
  g_autofree char *tags
      = plan->gauges ? tm_report_gauges_of (parts->job, line->judgement.method_name) : g_strdup ("");
  GString *text = g_string_new (tags);

  append_line (text, line->feature->tooling);
  return g_string_free (text, FALSE);
}

static char *
say_pieces (gconstpointer data)
{
  const Row *row = data;

  return row->n == 1 ? g_strdup (row->line->piece->serial) : g_strdup_printf (_ ("all %u"), row->n);
}

static void
add_cell (TmParts *parts, const Plan *plan, Column column, const Row *row)
{
  const TmReportLine *line = row->line;
  g_autofree char *text = NULL;

  switch (column)
    {
    case COLUMN_BALLOON:
      add_balloon (parts, plan, line);
      return;
    case COLUMN_REQUIREMENT:
      add_requirement (parts, plan, line);
      return;
    case COLUMN_LIMITS:
      add_limits (parts, plan, line);
      return;
    case COLUMN_RESULT:
      add_result (parts, plan, row);
      return;
    case COLUMN_UNCERTAINTY:
      add_uncertainty (parts, row);
      return;
    case COLUMN_VERDICT:
      add_verdict (parts, row);
      return;
    case COLUMN_COMMENT:
      add_comment (parts, plan, row);
      return;
    case COLUMN_WHERE:
      text = name_where (line->feature);
      break;
    case COLUMN_CLASS:
      text = g_strdup (word_class (parts, line->feature));
      break;
    case COLUMN_PIECE:
      text = tm_part_both (parts, say_pieces, row);
      break;
    case COLUMN_PLACE:
      text = say_place (line);
      break;
    case COLUMN_UNIT:
      text = g_strdup (tm_unit_symbol (line->feature->unit));
      break;
    case COLUMN_LOWER:
      text = format_lower (line);
      break;
    case COLUMN_UPPER:
      text = format_upper (line);
      break;
    case COLUMN_GAUGE:
      text = name_gauges (parts, plan, line);
      break;
    case COLUMN_REFERENCE:
      text = g_strdup (line->nonconformance != NULL ? line->nonconformance->number : "");
      break;
    case N_COLUMNS:
    default:
      return;
    }
  tm_report_add_cell (parts->document, text);
}

/* -------- The part -------- */

static char *
say_unit (gconstpointer data)
{
  const Plan *plan = data;

  return g_strdup_printf (_ ("Sizes are in %s. Results are the smallest and the largest over the stations."),
                          tm_unit_symbol (plan->unit));
}

static void
begin_table (TmParts *parts, const Plan *plan)
{
  TmReportColumn own[N_COLUMNS];
  guint n = 0;

  for (guint i = 0; i < N_COLUMNS; i++)
    if (plan->shown[i])
      {
        own[n] = columns[i];
        if (i == COLUMN_GAUGE && plan->tooling)
          own[n].title = plan->gauges ? N_ ("Gauge, qualified tooling") : N_ ("Qualified tooling");
        n++;
      }
  tm_part_table (parts, own, n);
}

static void
add_rows (TmParts *parts, const GArray *rows)
{
  const Plan plan = make_plan (parts, rows);

  if (plan.unit != TM_UNIT_NONE)
    tm_part_say (parts, say_unit, &plan, TRUE);
  begin_table (parts, &plan);
  for (guint i = 0; i < rows->len; i++)
    for (guint column = 0; column < N_COLUMNS; column++)
      if (plan.shown[column])
        add_cell (parts, &plan, column, &g_array_index (rows, Row, i));
}

void
tm_part_characteristics (TmParts *parts)
{
  const GPtrArray *lines = parts->content->lines;
  g_autoptr (GArray) rows = make_rows (parts);

  tm_part_section (parts, N_ ("Characteristics"), "characteristics", TRUE);
  if (lines->len == 0)
    {
      tm_part_say_text (parts, N_ ("None."), FALSE);
      return;
    }
  if (parts->together)
    tm_part_say_text (
        parts,
        N_ ("Each characteristic stands for all pieces, with the smallest and the largest of them, "
            "the largest uncertainty and the worst verdict; under it stand pieces that are not in, or that "
            "were reworked. "
            "The workbook has every piece."),
        TRUE);
  add_rows (parts, rows);
}
