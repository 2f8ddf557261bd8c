/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Random models: written as a job file, read, and compared with what they were.
 */

#include "exchange-job.h"
#include "support-random-job.h"

#define RANDOM_JOBS 300

static TmJob *
read_text (const GString *text)
{
  g_autoptr (GError) error = NULL;
  TmJob *job = tm_job_from_bytes (text->str, text->len, "part.tmjob", NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (job);
  return job;
}

static void
check_stable (const GString *text)
{
  g_autoptr (TmJob) job = read_text (text);
  g_autoptr (GString) again = tm_job_to_string (job);

  g_assert_cmpstr (again->str, ==, text->str);
  g_assert_cmpuint (again->len, ==, text->len);
}

/* What was read again is what the model held, member by member: the bytes alone would not show a member
 * that neither reader nor writer knows. */

#define SAME_TEXT(before, after, member)     g_assert_cmpstr ((before)->member, ==, (after)->member)
#define SAME_QUANTITY(before, after, member) assert_same_quantity (&(before)->member, &(after)->member)

static void
assert_same_quantity (const TmQuantity *before, const TmQuantity *after)
{
  g_assert_cmpint (before->given, ==, after->given);
  g_assert_cmpint (before->count, ==, after->count);
}

static void
assert_same_texts (const GPtrArray *before, const GPtrArray *after)
{
  g_assert_cmpuint (before->len, ==, after->len);
  for (guint i = 0; i < before->len; i++)
    g_assert_cmpstr (g_ptr_array_index (before, i), ==, g_ptr_array_index (after, i));
}

static void
assert_same_readings (const TmJob *before, const TmJob *after)
{
  g_assert_cmpuint (before->readings->len, ==, after->readings->len);
  for (guint i = 0; i < before->readings->len; i++)
    {
      const TmReading *was = g_ptr_array_index (before->readings, i);
      const TmReading *is = g_ptr_array_index (after->readings, i);

      SAME_QUANTITY (was, is, value);
      SAME_QUANTITY (was, is, dx);
      SAME_QUANTITY (was, is, part_temp);
      SAME_TEXT (was, is, typed);
      SAME_TEXT (was, is, overdue_reason);
      g_assert_true ((was->row.withdrawn != NULL) == (is->row.withdrawn != NULL));
    }
}

static void
assert_same_trials (const TmJob *before, const TmJob *after)
{
  g_assert_cmpuint (before->pin_trials->len, ==, after->pin_trials->len);
  for (guint i = 0; i < before->pin_trials->len; i++)
    {
      const TmPinTrial *was = g_ptr_array_index (before->pin_trials, i);
      const TmPinTrial *is = g_ptr_array_index (after->pin_trials, i);

      SAME_QUANTITY (was, is, size);
      SAME_QUANTITY (was, is, measured);
      SAME_TEXT (was, is, pin_class);
      SAME_TEXT (was, is, gauge);
      SAME_TEXT (was, is, overdue_reason);
      g_assert_cmpuint (was->place, ==, is->place);
      g_assert_cmpint (was->sign, ==, is->sign);
      g_assert_cmpint (was->went, ==, is->went);
    }
}

static void
assert_same_history (const TmJob *before, const TmJob *after)
{
  g_assert_cmpuint (before->calibrations->len, ==, after->calibrations->len);
  for (guint i = 0; i < before->calibrations->len; i++)
    {
      const TmCalibration *was = g_ptr_array_index (before->calibrations, i);
      const TmCalibration *is = g_ptr_array_index (after->calibrations, i);

      SAME_TEXT (was, is, gauge);
      SAME_TEXT (was, is, date);
      SAME_TEXT (was, is, due);
      SAME_TEXT (was, is, certificate);
      SAME_TEXT (was, is, by);
      SAME_QUANTITY (was, is, uncertainty);
      SAME_QUANTITY (was, is, coverage);
      SAME_QUANTITY (was, is, error);
      SAME_TEXT (was, is, outcome);
      SAME_TEXT (was, is, note);
    }
  g_assert_cmpuint (before->checks->len, ==, after->checks->len);
  for (guint i = 0; i < before->checks->len; i++)
    {
      const TmCheck *was = g_ptr_array_index (before->checks, i);
      const TmCheck *is = g_ptr_array_index (after->checks, i);

      SAME_TEXT (was, is, gauge);
      SAME_QUANTITY (was, is, standard);
      SAME_QUANTITY (was, is, reading);
      SAME_TEXT (was, is, by);
      SAME_TEXT (was, is, at);
      SAME_TEXT (was, is, note);
    }
}

static void
assert_same_gauges (const TmJob *before, const TmJob *after)
{
  assert_same_history (before, after);
  g_assert_cmpuint (before->gauges->len, ==, after->gauges->len);
  for (guint i = 0; i < before->gauges->len; i++)
    {
      const TmGauge *was = g_ptr_array_index (before->gauges, i);
      const TmGauge *is = g_ptr_array_index (after->gauges, i);

      SAME_TEXT (was, is, tag);
      SAME_TEXT (was, is, serial);
      SAME_TEXT (was, is, owner);
      SAME_TEXT (was, is, place);
      SAME_QUANTITY (was, is, range_from);
      SAME_QUANTITY (was, is, range_to);
      SAME_QUANTITY (was, is, feel);
      SAME_QUANTITY (was, is, expansion);
      SAME_QUANTITY (was, is, pin_step);
      SAME_TEXT (was, is, pin_class);
      SAME_TEXT (was, is, pin_sign);
      SAME_TEXT (was, is, source);
      SAME_TEXT (was, is, blocks);
    }
  g_assert_cmpuint (before->pin_sizes->len, ==, after->pin_sizes->len);
  for (guint i = 0; i < before->pin_sizes->len; i++)
    {
      const TmPinSize *was = g_ptr_array_index (before->pin_sizes, i);
      const TmPinSize *is = g_ptr_array_index (after->pin_sizes, i);

      SAME_TEXT (was, is, gauge);
      SAME_QUANTITY (was, is, size);
      SAME_QUANTITY (was, is, measured);
    }
}

static void
assert_same_budgets (const TmJob *before, const TmJob *after)
{
  for (guint i = 0; i < before->methods->len; i++)
    {
      const TmMethod *was = g_ptr_array_index (before->methods, i);
      const TmMethod *is = g_ptr_array_index (after->methods, i);

      assert_same_texts (was->gauges, is->gauges);
      SAME_QUANTITY (was, is, repeatability);
      SAME_TEXT (was, is, repeatability_source);
    }
  g_assert_cmpuint (before->budget_lines->len, ==, after->budget_lines->len);
  for (guint i = 0; i < before->budget_lines->len; i++)
    {
      const TmBudgetLine *was = g_ptr_array_index (before->budget_lines, i);
      const TmBudgetLine *is = g_ptr_array_index (after->budget_lines, i);

      SAME_TEXT (was, is, method);
      g_assert_cmpint (was->kind, ==, is->kind);
      SAME_TEXT (was, is, name);
      SAME_QUANTITY (was, is, value);
      SAME_TEXT (was, is, distribution);
      SAME_QUANTITY (was, is, divisor);
      SAME_QUANTITY (was, is, dof);
      SAME_TEXT (was, is, source);
    }
}

static void
assert_same_study_readings (const TmJob *before, const TmJob *after)
{
  g_assert_cmpuint (before->study_readings->len, ==, after->study_readings->len);
  for (guint i = 0; i < before->study_readings->len; i++)
    {
      const TmStudyReading *was = g_ptr_array_index (before->study_readings, i);
      const TmStudyReading *is = g_ptr_array_index (after->study_readings, i);

      SAME_TEXT (was, is, study);
      SAME_TEXT (was, is, piece);
      SAME_TEXT (was, is, person);
      SAME_QUANTITY (was, is, trial);
      SAME_QUANTITY (was, is, value);
      SAME_TEXT (was, is, typed);
      SAME_TEXT (was, is, at);
    }
}

static void
assert_same_studies (const TmJob *before, const TmJob *after)
{
  assert_same_study_readings (before, after);
  g_assert_cmpuint (before->studies->len, ==, after->studies->len);
  for (guint i = 0; i < before->studies->len; i++)
    {
      const TmStudy *was = g_ptr_array_index (before->studies, i);
      const TmStudy *is = g_ptr_array_index (after->studies, i);

      SAME_TEXT (was, is, name);
      SAME_TEXT (was, is, feature);
      SAME_TEXT (was, is, method);
      g_assert_cmpint (was->unit, ==, is->unit);
      assert_same_texts (was->pieces, is->pieces);
      assert_same_texts (was->people, is->people);
      SAME_QUANTITY (was, is, repeats);
      SAME_QUANTITY (was, is, seed);
      SAME_QUANTITY (was, is, band);
      SAME_TEXT (was, is, at);
      SAME_TEXT (was, is, note);
    }
}

/* A reading is old when a cut that stands was made after it: asked of each pair, the slow way. */
static void
assert_marks (const TmJob *job)
{
  for (guint i = 0; i < job->readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (job->readings, i);
      const GPtrArray *cuts = tm_job_cuts_at (job, reading->row.piece, reading->row.feature, reading->place);
      gboolean before = FALSE;

      for (guint c = 0; cuts != NULL && c < cuts->len; c++)
        {
          const TmCutRow *cut = g_ptr_array_index (cuts, c);

          before = before || (tm_row_stands (&cut->row) && tm_cut_follows (job, cut, reading));
        }
      g_assert_true (reading->row.before_cut == before);
    }
}

static void
assert_same_cuts (const TmJob *before, const TmJob *after)
{
  g_assert_cmpuint (before->cuts->len, ==, after->cuts->len);
  for (guint i = 0; i < before->cuts->len; i++)
    {
      const TmCutRow *was = g_ptr_array_index (before->cuts, i);
      const TmCutRow *is = g_ptr_array_index (after->cuts, i);

      SAME_QUANTITY (was, is, dialled);
      g_assert_cmpint (was->reads, ==, is->reads);
      g_assert_cmpuint (was->passes, ==, is->passes);
      g_assert_cmpuint (was->place, ==, is->place);
      SAME_TEXT (was, is, tool);
      SAME_TEXT (was, is, after);
      SAME_TEXT (was, is, note);
      g_assert_true ((was->row.withdrawn != NULL) == (is->row.withdrawn != NULL));
    }
  /* The readings that a cut made old are the same ones. */
  assert_marks (before);
  assert_marks (after);
  for (guint i = 0; i < before->readings->len; i++)
    {
      const TmReading *was = g_ptr_array_index (before->readings, i);
      const TmReading *is = g_ptr_array_index (after->readings, i);

      g_assert_true (was->row.before_cut == is->row.before_cut);
    }
}

static void
assert_same_tools (const TmJob *before, const TmJob *after)
{
  g_assert_cmpuint (before->tools->len, ==, after->tools->len);
  for (guint i = 0; i < before->tools->len; i++)
    {
      const TmTool *was = g_ptr_array_index (before->tools, i);
      const TmTool *is = g_ptr_array_index (after->tools, i);

      SAME_TEXT (was, is, name);
      g_assert_cmpint (was->unit, ==, is->unit);
      g_assert_cmpint (was->reads, ==, is->reads);
      SAME_QUANTITY (was, is, graduation);
      SAME_QUANTITY (was, is, least_cut);
      SAME_QUANTITY (was, is, backlash);
      SAME_QUANTITY (was, is, spring_passes);
      SAME_QUANTITY (was, is, offset_step);
      SAME_TEXT (was, is, note);
    }
  g_assert_cmpuint (before->materials->len, ==, after->materials->len);
  for (guint i = 0; i < before->materials->len; i++)
    {
      const TmShopMaterial *was = g_ptr_array_index (before->materials, i);
      const TmShopMaterial *is = g_ptr_array_index (after->materials, i);

      SAME_TEXT (was, is, name);
      SAME_QUANTITY (was, is, modulus);
      SAME_QUANTITY (was, is, poisson);
      SAME_QUANTITY (was, is, yield);
      SAME_QUANTITY (was, is, expansion);
      SAME_QUANTITY (was, is, cold);
      g_assert_cmpint (was->plastic, ==, is->plastic);
      SAME_TEXT (was, is, source);
    }
}

static void
assert_same_press (const TmPress *was, const TmPress *is)
{
  SAME_QUANTITY (was, is, length);
  SAME_QUANTITY (was, is, hub_outside);
  SAME_QUANTITY (was, is, shaft_inside);
  SAME_TEXT (was, is, hub_material);
  SAME_TEXT (was, is, shaft_material);
  SAME_QUANTITY (was, is, friction_least);
  SAME_QUANTITY (was, is, friction_most);
  SAME_QUANTITY (was, is, hub_roughness);
  SAME_QUANTITY (was, is, shaft_roughness);
  SAME_QUANTITY (was, is, gap);
}

static void
assert_same_mates (const TmJob *before, const TmJob *after)
{
  for (guint i = 0; i < before->features->len; i++)
    {
      const TmFeature *was = g_ptr_array_index (before->features, i);
      const TmFeature *is = g_ptr_array_index (after->features, i);

      SAME_TEXT (was, is, tool);
      g_assert_cmpint (was->mate.given, ==, is->mate.given);
      SAME_QUANTITY (was, is, mate.lower);
      SAME_QUANTITY (was, is, mate.wanted_least);
      SAME_QUANTITY (was, is, mate.wanted_most);
      assert_same_press (&was->press, &is->press);
    }
  g_assert_cmpuint (before->mate_sizes->len, ==, after->mate_sizes->len);
  for (guint i = 0; i < before->mate_sizes->len; i++)
    {
      const TmMateSize *was = g_ptr_array_index (before->mate_sizes, i);
      const TmMateSize *is = g_ptr_array_index (after->mate_sizes, i);

      SAME_TEXT (was, is, feature);
      SAME_TEXT (was, is, serial);
      SAME_QUANTITY (was, is, smallest);
      SAME_QUANTITY (was, is, largest);
      SAME_QUANTITY (was, is, uncertainty);
      SAME_TEXT (was, is, piece);
      SAME_QUANTITY (was, is, place);
      SAME_TEXT (was, is, by);
      SAME_TEXT (was, is, at);
      SAME_TEXT (was, is, note);
    }
}

static void
assert_same_rules (const TmJob *before, const TmJob *after)
{
  SAME_QUANTITY (before, after, part_temp_limit);
  SAME_QUANTITY (before, after, gauge_temp_limit);
  SAME_QUANTITY (before, after, thermometer);
  SAME_QUANTITY (before, after, expansion);
  SAME_QUANTITY (before, after, entry_clearance);
  g_assert_cmpint (before->drift_rule, ==, after->drift_rule);
  SAME_QUANTITY (before, after, drift_limit);
  SAME_QUANTITY (before, after, check_hours);
  SAME_QUANTITY (before, after, cut_risk);
  g_assert_cmpint (before->cut_aim, ==, after->cut_aim);
  for (guint i = 0; i < before->features->len; i++)
    {
      const TmFeature *was = g_ptr_array_index (before->features, i);
      const TmFeature *is = g_ptr_array_index (after->features, i);

      g_assert_cmpint (was->counts, ==, is->counts);
      SAME_QUANTITY (was, is, form_unseen);
    }
}

/* Events, dispositions and what the charts are drawn by. */
static void
assert_same_batch (const TmJob *before, const TmJob *after)
{
  g_assert_cmpuint (before->events->len, ==, after->events->len);
  for (guint i = 0; i < before->events->len; i++)
    {
      const TmEvent *was = g_ptr_array_index (before->events, i);
      const TmEvent *is = g_ptr_array_index (after->events, i);

      SAME_TEXT (was, is, before_piece);
      SAME_TEXT (was, is, kind);
      SAME_TEXT (was, is, note);
      SAME_TEXT (was, is, amount);
      SAME_TEXT (was, is, feature);
      SAME_TEXT (was, is, tool);
      SAME_TEXT (was, is, by);
      SAME_TEXT (was, is, at);
    }
  for (guint i = 0; i < before->pieces->len; i++)
    {
      const TmPiece *was = g_ptr_array_index (before->pieces, i);
      const TmPiece *is = g_ptr_array_index (after->pieces, i);

      SAME_TEXT (was, is, disposition);
      SAME_TEXT (was, is, disposition_note);
    }
  for (guint i = 0; i < before->features->len; i++)
    {
      const TmFeature *was = g_ptr_array_index (before->features, i);
      const TmFeature *is = g_ptr_array_index (after->features, i);

      SAME_TEXT (was, is, chart_rules);
      g_assert_cmpuint (was->chart_baseline, ==, is->chart_baseline);
    }
}

static void
assert_same_nonconformances (const TmJob *before, const TmJob *after)
{
  g_assert_cmpuint (before->nonconformances->len, ==, after->nonconformances->len);
  for (guint i = 0; i < before->nonconformances->len; i++)
    {
      const TmNonconformance *was = g_ptr_array_index (before->nonconformances, i);
      const TmNonconformance *is = g_ptr_array_index (after->nonconformances, i);

      SAME_TEXT (was, is, piece);
      SAME_TEXT (was, is, feature);
      g_assert_cmpuint (was->place, ==, is->place);
      SAME_TEXT (was, is, number);
      SAME_TEXT (was, is, note);
      SAME_TEXT (was, is, disposition);
      SAME_TEXT (was, is, by);
      SAME_TEXT (was, is, at);
      SAME_TEXT (was, is, rework_by);
      SAME_TEXT (was, is, rework_at);
      SAME_TEXT (was, is, rework_after);
    }
  for (guint i = 0; i < before->readings->len; i++)
    {
      const TmReading *was = g_ptr_array_index (before->readings, i);
      const TmReading *is = g_ptr_array_index (after->readings, i);

      g_assert_cmpint (was->row.before_rework, ==, is->row.before_rework);
    }
}

static void
assert_same_supplies (const TmJob *before, const TmJob *after)
{
  g_assert_cmpuint (before->supplies->len, ==, after->supplies->len);
  g_assert_cmpuint (before->sub_parts->len, ==, after->sub_parts->len);
  g_assert_cmpuint (before->report_fields->len, ==, after->report_fields->len);
  for (guint i = 0; i < before->supplies->len; i++)
    {
      const TmSupply *was = g_ptr_array_index (before->supplies, i);
      const TmSupply *is = g_ptr_array_index (after->supplies, i);
      const TmSubPart *part = g_ptr_array_index (before->sub_parts, i);
      const TmSubPart *same_part = g_ptr_array_index (after->sub_parts, i);
      const TmReportField *field = g_ptr_array_index (before->report_fields, i);
      const TmReportField *same_field = g_ptr_array_index (after->report_fields, i);

      g_assert_cmpint (was->kind, ==, is->kind);
      g_assert_cmpint (was->approval, ==, is->approval);
      SAME_TEXT (was, is, name);
      SAME_TEXT (was, is, specification);
      SAME_TEXT (was, is, code);
      SAME_TEXT (was, is, supplier);
      SAME_TEXT (was, is, certificate);
      SAME_TEXT (was, is, note);
      SAME_TEXT (part, same_part, number);
      SAME_TEXT (part, same_part, name);
      SAME_TEXT (part, same_part, serial);
      SAME_TEXT (part, same_part, report);
      SAME_TEXT (field, same_field, name);
      SAME_TEXT (field, same_field, value);
    }
}

static void
assert_same_drawings (const TmJob *before, const TmJob *after)
{
  g_assert_cmpuint (before->drawings->len, ==, after->drawings->len);
  for (guint i = 0; i < before->drawings->len; i++)
    {
      const TmDrawing *was = g_ptr_array_index (before->drawings, i);
      const TmDrawing *is = g_ptr_array_index (after->drawings, i);

      SAME_TEXT (was, is, name);
      SAME_TEXT (was, is, sheet);
      SAME_TEXT (was, is, media);
      SAME_TEXT (was, is, digest);
      g_assert_cmpuint (was->page, ==, is->page);
      g_assert_true (g_bytes_equal (was->content, is->content));
    }
  g_assert_cmpuint (before->balloon_marks->len, ==, after->balloon_marks->len);
  for (guint i = 0; i < before->balloon_marks->len; i++)
    {
      const TmBalloonMark *was = g_ptr_array_index (before->balloon_marks, i);
      const TmBalloonMark *is = g_ptr_array_index (after->balloon_marks, i);

      SAME_TEXT (was, is, drawing);
      SAME_TEXT (was, is, feature);
      g_assert_cmpuint (was->place, ==, is->place);
      SAME_QUANTITY (was, is, x);
      SAME_QUANTITY (was, is, y);
      SAME_QUANTITY (was, is, to_x);
      SAME_QUANTITY (was, is, to_y);
    }
}

static void
assert_same_report (const TmJob *before, const TmJob *after)
{
  g_assert_cmpint (before->first_article, ==, after->first_article);
  g_assert_cmpint (before->article, ==, after->article);
  SAME_TEXT (before, after, drawing_revision);
  SAME_TEXT (before, after, report_identifier);
  SAME_TEXT (before, after, organisation);
  SAME_TEXT (before, after, supplier_code);
  SAME_TEXT (before, after, manufacturing_record);
  SAME_TEXT (before, after, drawing_changes);
  SAME_TEXT (before, after, language);
  SAME_TEXT (before, after, second_language);
  for (guint i = 0; i < before->features->len; i++)
    {
      const TmFeature *was = g_ptr_array_index (before->features, i);
      const TmFeature *is = g_ptr_array_index (after->features, i);

      SAME_TEXT (was, is, tooling);
      SAME_TEXT (was, is, comment);
      g_assert_cmpint (was->affected, ==, is->affected);
    }
  for (guint i = 0; i < before->signatures->len; i++)
    {
      const TmSignature *was = g_ptr_array_index (before->signatures, i);
      const TmSignature *is = g_ptr_array_index (after->signatures, i);

      SAME_TEXT (was, is, report);
      SAME_TEXT (was, is, pages);
      SAME_TEXT (was, is, workbook);
    }
}

/* Any job that the model takes is written, read, and written to the same bytes. */
static void
test_random (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (12);

  for (guint i = 0; i < RANDOM_JOBS; i++)
    {
      g_autoptr (TmJob) job = tm_test_random_job (rand);
      g_autoptr (GString) text = tm_job_to_string (job);
      g_autoptr (TmJob) again = NULL;

      g_test_message ("job %u", i);
      check_stable (text);
      again = read_text (text);
      assert_same_readings (job, again);
      assert_same_gauges (job, again);
      assert_same_trials (job, again);
      assert_same_budgets (job, again);
      assert_same_studies (job, again);
      assert_same_rules (job, again);
      assert_same_cuts (job, again);
      assert_same_tools (job, again);
      assert_same_mates (job, again);
      assert_same_batch (job, again);
      assert_same_nonconformances (job, again);
      assert_same_supplies (job, again);
      assert_same_drawings (job, again);
      assert_same_report (job, again);
    }
}

/* Definitions alone: all of them, and nothing of what the pieces were. */
static void
test_definitions (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (31);

  for (guint i = 0; i < RANDOM_JOBS / 10; i++)
    {
      g_autoptr (TmJob) job = tm_test_random_job (rand);
      g_autoptr (GError) error = NULL;
      g_autoptr (TmJob) copy = tm_job_copy_definitions (job, &error);

      g_assert_no_error (error);
      assert_same_gauges (job, copy);
      assert_same_budgets (job, copy);
      assert_same_studies (job, copy);
      assert_same_rules (job, copy);
      assert_same_tools (job, copy);
      assert_same_supplies (job, copy);
      assert_same_drawings (job, copy);
      g_assert_cmpuint (copy->features->len, ==, job->features->len);
      g_assert_cmpuint (copy->pieces->len + copy->readings->len + copy->pin_trials->len + copy->cuts->len, ==,
                        0);
      g_assert_cmpuint (copy->events->len + copy->nonconformances->len + copy->mate_sizes->len, ==, 0);
      g_assert_cmpuint (copy->signatures->len, ==, 0);
    }
}

/* Sections in the opposite order make the same job: what hangs on a gauge may stand before it. */
static void
test_backwards (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  g_autoptr (TmJob) job = tm_test_random_job (rand);
  g_autoptr (GString) text = tm_job_to_string (job);
  g_autofree char *inside = g_strndup (text->str + 3, text->len - 6);
  g_auto (GStrv) sections = g_strsplit (inside, ",\n \"", -1);
  g_autoptr (GString) turned = g_string_new ("{ \"");
  g_autoptr (TmJob) again = NULL;
  g_autoptr (GString) written = NULL;
  guint n = g_strv_length (sections);

  g_assert_cmpuint (n, >, 12);
  for (guint i = n; i > 1; i--)
    g_string_append_printf (turned, "%s,\n \"", sections[i - 1]);
  g_string_append_printf (turned, "%s\n}\n", sections[0] + 1);
  again = read_text (turned);
  written = tm_job_to_string (again);
  g_assert_cmpstr (written->str, ==, text->str);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/job-again/random", test_random);
  g_test_add_func ("/exchange/job-again/definitions", test_definitions);
  g_test_add_func ("/exchange/job-again/backwards", test_backwards);
  return g_test_run ();
}
