/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-cut: what is chosen for a cut at the present place, and what it would do.
 */

#include "bench-cut.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "bench-cut-private.h"
#include "bench-private.h"

/* More than this times what there is up to the far limit and the band is a slip of the decimal point, not a
 * cut (our own choice). */
#define FAR_MORE 3.0

/* Marks on the dial that stand for the width of a band with one limit. */
#define OPEN_BAND_MARKS 10.0

static gboolean
is_chosen_here (const TmBench *bench)
{
  return bench->spot.feature != NULL && g_str_equal (bench->spot.feature->balloon, bench->cut_for);
}

/* What was chosen for another feature does not follow to this one. */
static void
choose_here (TmBench *bench)
{
  if (is_chosen_here (bench))
    return;
  g_free (bench->cut_for);
  g_free (bench->tool);
  g_free (bench->cut_mate);
  bench->cut_for = g_strdup (bench->spot.feature != NULL ? bench->spot.feature->balloon : "");
  bench->tool = g_strdup ("");
  bench->cut_mate = g_strdup ("");
}

static void
replace_text (char **target, const char *text)
{
  char *copy = g_strdup (text != NULL ? text : "");

  g_free (*target);
  *target = copy;
}

void
tm_bench_set_tool (TmBench *bench, const char *name)
{
  g_return_if_fail (bench != NULL);

  tm_bench_refresh (bench);
  choose_here (bench);
  replace_text (&bench->tool, name);
}

/* The tool of the newest cut of the place that stands. */
static const TmTool *
find_last_tool (const TmBench *bench)
{
  const TmSpot *spot = &bench->spot;
  const TmCutRow *cut
      = spot->piece != NULL ? tm_job_last_cut (bench->job, spot->piece, spot->feature, spot->place) : NULL;

  return cut != NULL ? tm_job_find_tool (bench->job, cut->tool) : NULL;
}

const TmTool *
tm_bench_tool (const TmBench *bench)
{
  const TmTool *tool = NULL;

  g_return_val_if_fail (bench != NULL, NULL);

  tm_bench_refresh (bench);
  if (bench->spot.feature == NULL)
    return NULL;
  if (is_chosen_here (bench))
    tool = tm_job_find_tool (bench->job, bench->tool);
  if (tool == NULL)
    tool = tm_job_find_tool (bench->job, bench->spot.feature->tool);
  if (tool == NULL)
    tool = find_last_tool (bench);
  if (tool == NULL && bench->job->tools->len == 1)
    tool = g_ptr_array_index (bench->job->tools, 0);
  return tool;
}

void
tm_bench_set_answers (TmBench *bench, const char *name, const GArray *answers)
{
  GArray *copy;

  g_return_if_fail (bench != NULL && name != NULL);

  copy = g_array_new (FALSE, FALSE, sizeof (TmCutAnswer));
  if (answers != NULL && answers->len > 0)
    g_array_append_vals (copy, answers->data, answers->len);
  g_hash_table_replace (bench->answers, g_strdup (name), copy);
}

gboolean
tm_bench_has_answers (const TmBench *bench, const char *name)
{
  g_return_val_if_fail (bench != NULL && name != NULL, FALSE);

  return g_hash_table_contains (bench->answers, name);
}

void
tm_bench_set_cut_mate (TmBench *bench, const char *serial)
{
  g_return_if_fail (bench != NULL);

  tm_bench_refresh (bench);
  choose_here (bench);
  replace_text (&bench->cut_mate, serial);
  bench->cut_piece = bench->spot.piece;
  bench->cut_place = bench->spot.place;
}

const TmMateSize *
tm_bench_cut_mate (const TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, NULL);

  tm_bench_refresh (bench);
  if (!is_chosen_here (bench) || bench->cut_mate[0] == '\0')
    return NULL;
  /* One mate goes with one hole: the next is not cut to fit it too. */
  if (bench->spot.piece != bench->cut_piece || bench->spot.place != bench->cut_place)
    return NULL;
  return tm_job_find_mate_size (bench->job, bench->cut_for, bench->cut_mate);
}

void
tm_bench_set_cut_risk (TmBench *bench, double risk)
{
  g_return_if_fail (bench != NULL);

  bench->cut_risk = risk > 0 && risk < 1 ? risk : 0;
}

double
tm_bench_cut_risk (const TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, 0);

  return bench->cut_risk;
}

/* What the tool did on other jobs, and then at the other places of this one. */
static GArray *
collect_answers (const TmBench *bench, const TmPiece *piece, const TmFeature *feature, guint place,
                 const TmTool *tool)
{
  const GArray *elsewhere = tool != NULL ? g_hash_table_lookup (bench->answers, tool->name) : NULL;
  GArray *known = tm_cut_newest_answers (bench->job, tool != NULL ? tool->name : NULL, piece, feature, place);

  if (elsewhere != NULL && elsewhere->len > 0)
    g_array_prepend_vals (known, elsewhere->data, elsewhere->len);
  return known;
}

static TmCutWork *
begin_work_at (const TmBench *bench, const TmPiece *piece, const TmFeature *feature, guint place,
               const TmTool *tool)
{
  g_autoptr (GArray) known = collect_answers (bench, piece, feature, place, tool);

  return tm_cut_work_new (bench->job, piece, feature, place, tool,
                          (const TmCutAnswer *)(gconstpointer)known->data, known->len);
}

/* NULL where there is no piece or feature: nothing is cut there. */
static TmCutWork *
begin_work (const TmBench *bench)
{
  const TmSpot *spot = &bench->spot;
  const TmTool *tool = tm_bench_tool (bench);

  if (spot->piece == NULL || spot->feature == NULL)
    return NULL;
  return begin_work_at (bench, spot->piece, spot->feature, spot->place, tool);
}

static TmCutAsk
make_ask (const TmBench *bench)
{
  return (TmCutAsk) { .mate = tm_bench_cut_mate (bench),
                      .risk = bench->cut_risk,
                      .aim = bench->job->cut_aim,
                      .method = tm_bench_method_in_force (bench) };
}

static const TmCutAdvice nothing = { .plan = { .status = TM_CUT_NOT_READ } };

void
tm_bench_cut_plan (const TmBench *bench, TmCutAdvice *out)
{
  g_autoptr (TmCutWork) work = NULL;
  TmCutAsk ask;

  g_return_if_fail (bench != NULL && out != NULL);

  work = begin_work (bench);
  ask = make_ask (bench);
  if (work != NULL)
    tm_cut_work_plan (work, &ask, out);
  else
    *out = nothing;
}

void
tm_bench_cut_try_count (const TmBench *bench, gint64 dial, TmCutAdvice *out)
{
  g_autoptr (TmCutWork) work = NULL;
  TmCutAsk ask;

  g_return_if_fail (bench != NULL && out != NULL);

  work = begin_work (bench);
  ask = make_ask (bench);
  if (work != NULL)
    tm_cut_work_try (work, &ask, MAX (dial, 0), out);
  else
    *out = nothing;
}

/* Which way a cut moves the size: +1, -1, or 0 when nobody has said. */
static double
find_direction (const TmFeature *feature)
{
  TmCut cut = tm_feature_cut (feature);

  return cut == TM_CUT_GROWS ? 1 : cut == TM_CUT_SHRINKS ? -1 : 0;
}

gint64
tm_bench_cut_dial_for (const TmBench *bench, gint64 size)
{
  const TmTool *tool;
  TmCutAdvice still;
  double per_mark, away;

  g_return_val_if_fail (bench != NULL, 0);

  tool = tm_bench_tool (bench);
  if (tool == NULL || tool->graduation.count <= 0)
    return 0;
  tm_bench_cut_try_count (bench, 0, &still);
  per_mark = still.step * still.response.factor;
  if (still.plan.status != TM_CUT_OK || !(per_mark > 0))
    return 0;
  away = ((double)(size - still.reference) - still.plan.predicted) * find_direction (bench->spot.feature);
  if (!(away > 0) || away / per_mark > 1e6)
    return 0;
  return (gint64)round (away / per_mark) * tool->graduation.count;
}

gboolean
tm_bench_read_dial (const TmFeature *feature, const char *text, TmUnit unit, TmQuantity *out, GError **error)
{
  TmReadStatus status = tm_quantity_read (text != NULL ? text : "", unit, out);
  g_autofree char *shown = NULL;

  if (status == TM_READ_OK && out->count >= 0)
    return TRUE;
  shown = tm_bench_show_text (text != NULL ? text : "");
  if (status == TM_READ_OK)
    g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY,
                 _ ("Feature %s, dial “%s”: type it without a sign: a cut always takes metal away."),
                 feature->balloon, shown);
  else
    g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY, _ ("Feature %s, dial “%s”: %s."),
                 feature->balloon, shown, _ (tm_read_status_text (status)));
  return FALSE;
}

const TmTool *
tm_bench_check_cut (const TmBench *bench, GError **error)
{
  const TmTool *tool = tm_bench_tool (bench);

  if (!tm_bench_check_somewhere (bench, error))
    return NULL;
  if (!tm_feature_is_cut_to_size (bench->spot.feature))
    g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY,
                 _ ("Feature %s is not cut to a size: there is nothing to dial."),
                 bench->spot.feature->balloon);
  else if (tool == NULL)
    g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY,
                 _ ("Feature %s: say which tool cuts it, then dial."), bench->spot.feature->balloon);
  else
    return tool;
  return NULL;
}

/* FALSE, naming both, when @dial is out of all proportion to the metal that is there. */
static gboolean
check_proportion (const TmBench *bench, const TmTool *tool, const TmQuantity *dial, GError **error)
{
  const TmFeature *feature = bench->spot.feature;
  double change = (double)dial->count * (double)tm_cut_changes_by (feature, tool->reads);
  g_autofree char *taken = NULL;
  g_autofree char *there = NULL;
  TmCutAdvice still;
  double far, room, width;

  tm_bench_cut_try_count (bench, 0, &still);
  far = find_direction (feature) > 0 ? still.band.upper : -still.band.lower;
  if (still.plan.status != TM_CUT_OK || !isfinite (far))
    return TRUE;
  room = MAX (far - find_direction (feature) * still.plan.predicted, 0);
  width = still.band.upper - still.band.lower;
  if (!isfinite (width))
    width = OPEN_BAND_MARKS * (double)tool->graduation.count;
  if (change <= FAR_MORE * (room + width))
    return TRUE;
  taken = tm_count_format (
      tm_count_from_double (change / (double)tm_unit_counts (feature->unit), feature->unit), feature->unit,
      feature->unit == TM_UNIT_IN ? 4 : 3);
  there
      = tm_count_format (tm_count_from_double (room / (double)tm_unit_counts (feature->unit), feature->unit),
                         feature->unit, feature->unit == TM_UNIT_IN ? 4 : 3);
  g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY,
               _ ("Feature %s: that would take %s off, and there are %s %s: look at the decimal point."),
               feature->balloon, taken, there, tm_unit_symbol (feature->unit));
  return FALSE;
}

gboolean
tm_bench_cut_try (const TmBench *bench, const char *text, TmCutAdvice *out, GError **error)
{
  const TmTool *tool;
  TmQuantity dial;

  g_return_val_if_fail (bench != NULL && out != NULL, FALSE);

  *out = nothing;
  tool = tm_bench_check_cut (bench, error);
  if (tool == NULL || !tm_bench_read_dial (bench->spot.feature, text, (TmUnit)tool->unit, &dial, error)
      || !check_proportion (bench, tool, &dial, error))
    return FALSE;
  tm_bench_cut_try_count (bench, dial.count, out);
  return TRUE;
}

gboolean
tm_bench_cut_outcome (const TmBench *bench, const TmCutRow *cut, TmCutOutcome *out)
{
  g_autoptr (TmCutWork) work = NULL;

  g_return_val_if_fail (bench != NULL && cut != NULL && out != NULL, FALSE);

  work = begin_work_at (bench, cut->row.piece, cut->row.feature, cut->place,
                        tm_job_find_tool (bench->job, cut->tool));
  for (guint i = 0; work != NULL && i < tm_cut_work_n_outcomes (work); i++)
    {
      tm_cut_work_outcome (work, i, out);
      if (out->cut == cut)
        return TRUE;
    }
  return FALSE;
}

char *
tm_bench_dial_text (const TmTool *tool, gint64 dial)
{
  g_return_val_if_fail (tool != NULL, NULL);

  return tm_count_format_exact (dial, tool->unit, tool->graduation.decimals);
}
