/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a report says and what it lacks: one job that lacks nothing, then each gap on its own.
 */

#include "report-support.h"

#include "report-gaps.h"
#include "report-signed.h"

static TmPiece *
first_piece (TmJob *job)
{
  return g_ptr_array_index (job->pieces, 0);
}

static TmFeature *
first_feature (TmJob *job)
{
  return g_ptr_array_index (job->features, 0);
}

/* The only gap of @job, which is freed with it. */
static void
assert_only_gap (TmJob *job, TmGapKind kind, const char *words)
{
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  const TmGap *gap;
  g_autofree char *text = NULL;

  g_assert_cmpuint (content->gaps->len, ==, 1);
  gap = g_ptr_array_index (content->gaps, 0);
  g_assert_cmpint (gap->kind, ==, kind);
  text = tm_gap_describe (gap);
  g_assert_nonnull (strstr (text, words));
  g_assert_null (strchr (text, '\n'));
  tm_job_free (job);
}

/* What was read before a cut says nothing of the size as it is. */
static void
test_cut_since (void)
{
  TmJob *job = make_whole_job ();
  TmCutRow *cut = tm_cut_row_new ();

  cut->row.piece = first_piece (job);
  cut->row.feature = first_feature (job);
  cut->dialled = quantity ("0.005", TM_UNIT_MM);
  cut->after = "1";
  g_assert_cmpint (tm_job_add_cut (job, cut), ==, TM_ADD_OK);
  assert_only_gap (job, TM_GAP_NOT_MEASURED, "was cut after it was last read: measure it again");
}

static void
test_whole (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);

  g_assert_cmpuint (content->gaps->len, ==, 0);
  g_assert_cmpuint (content->lines->len, ==, 1);
  g_assert_cmpuint (content->n_in, ==, 1);
  g_assert_cmpuint (content->n_out + content->n_too_close + content->n_not_measured, ==, 0);
  g_assert_cmpuint (content->gauges->len, ==, 1);
  g_assert_true (g_ptr_array_index (content->gauges, 0) == tm_job_find_gauge (job, "M-1"));
}

static void
test_unsigned (void)
{
  TmJob *job = make_whole_job ();

  g_ptr_array_set_size (job->signatures, 0);
  assert_only_gap (job, TM_GAP_UNSIGNED, "is not signed");
}

/* Whether the record has changed is known only by its digest. */
static void
test_superseded (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  const TmGap *gap;
  g_autofree char *text = NULL;

  tm_report_content_set_digest (content, SIGNED_DIGEST);
  g_assert_cmpuint (content->gaps->len, ==, 0);
  tm_report_content_set_digest (content, "0000");
  g_assert_cmpuint (content->gaps->len, ==, 1);
  gap = g_ptr_array_index (content->gaps, 0);
  g_assert_cmpint (gap->kind, ==, TM_GAP_SUPERSEDED);
  g_assert_true (gap->signature == g_ptr_array_index (job->signatures, 0));
  text = tm_gap_describe (gap);
  g_assert_nonnull (strstr (text, "since AB signed the report on 2026-05-05"));
  tm_report_content_set_digest (content, NULL);
  g_assert_cmpuint (content->gaps->len, ==, 0);
}

/* One that holds is enough, whatever was signed before. */
static void
test_signed_again (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  TmSignature *again = add_signature (job, "CD", "Reviewed by", "2026-05-06T10:00:00Z", "00AB");
  g_autoptr (TmReportContent) content = tm_report_content_new (job);

  tm_report_content_set_digest (content, "00ab");
  g_assert_cmpuint (content->gaps->len, ==, 0);
  g_assert_cmpint (tm_signature_state (again, content->digest), ==, TM_SIGNED_HOLDS);
  g_assert_cmpint (tm_signature_state (g_ptr_array_index (job->signatures, 0), content->digest), ==,
                   TM_SIGNED_SUPERSEDED);
  g_assert_true (tm_report_role_is_signed (content, "Reviewed by"));
  g_assert_false (tm_report_role_is_signed (content, "Measured by"));
}

static void
test_same_identifier (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  const TmGap *gap;
  g_autofree char *text = NULL;

  tm_report_content_set_namesake (content, "Q-7 Cover, rev B");
  g_assert_cmpuint (content->gaps->len, ==, 1);
  gap = g_ptr_array_index (content->gaps, 0);
  g_assert_cmpint (gap->kind, ==, TM_GAP_SAME_IDENTIFIER);
  text = tm_gap_describe (gap);
  g_assert_nonnull (strstr (text, "Q-7 Cover, rev B"));
  tm_report_content_set_namesake (content, NULL);
  g_assert_cmpuint (content->gaps->len, ==, 0);
}

static void
answer (TmJob *job, const char *name, const char *value)
{
  TmReportField *field = tm_report_field_new ();

  field->name = name;
  field->value = value;
  tm_job_add_report_field (job, field);
}

/* What the shop's template requires; what it only asks for may stay empty, and blanks are no answer. */
static void
test_field_missing (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  g_autoptr (TmTemplate) template = tm_template_new ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  const TmGap *gap;
  g_autofree char *text = NULL;

  tm_template_add_field (template, "Packed by", FALSE);
  tm_report_content_set_template (content, template);
  g_assert_cmpuint (content->gaps->len, ==, 0);
  tm_template_add_field (template, "Heat number", TRUE);
  tm_report_content_set_template (content, template);
  g_assert_cmpuint (content->gaps->len, ==, 1);
  gap = g_ptr_array_index (content->gaps, 0);
  g_assert_cmpint (gap->kind, ==, TM_GAP_FIELD_MISSING);
  text = tm_gap_describe (gap);
  g_assert_nonnull (strstr (text, "“Heat number” is empty"));
  answer (job, "Heat number", " \t");
  tm_report_content_set_template (content, template);
  g_assert_cmpuint (content->gaps->len, ==, 1);
  answer (job, "Heat number", "H-1");
  tm_report_content_set_template (content, template);
  g_assert_cmpuint (content->gaps->len, ==, 0);
  g_ptr_array_set_size (job->report_fields, 0);
  tm_report_content_set_template (content, NULL);
  g_assert_cmpuint (content->gaps->len, ==, 0);
}

static void
test_no_features (void)
{
  TmJob *job = make_whole_job ();
  TmJob *empty = tm_job_new ();

  empty->part_number = job->part_number;
  empty->part_name = job->part_name;
  empty->revision = job->revision;
  empty->drawing = job->drawing;
  empty->customer = job->customer;
  empty->order = job->order;
  empty->report_identifier = job->report_identifier;
  empty->organisation = job->organisation;
  add_drawing (empty, "D-1");
  add_supply (empty, TM_SUPPLY_MATERIAL, "Bar", "Z-0", TM_APPROVAL_UNSAID);
  add_piece (empty, "001", TRUE);
  add_signature (empty, "AB", "Measured by", "2026-05-05T10:00:00Z", SIGNED_DIGEST);
  tm_job_free (job);
  assert_only_gap (empty, TM_GAP_NO_FEATURES, "no features");
}

static void
test_no_piece (void)
{
  TmJob *job = make_whole_job ();

  first_piece (job)->first_article = FALSE;
  assert_only_gap (job, TM_GAP_NO_PIECE, "first article");
}

static void
test_facts (void)
{
  const char *names[] = { "part name", "revision",          "drawing number", "customer",
                          "order",     "report identifier", "organisation" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      TmJob *job = make_whole_job ();
      const char **facts[] = { &job->part_name, &job->revision,          &job->drawing,     &job->customer,
                               &job->order,     &job->report_identifier, &job->organisation };
      *facts[i] = "  ";
      assert_only_gap (job, TM_GAP_FACT_MISSING, names[i]);
    }
}

static void
test_not_measured (void)
{
  TmJob *job = make_whole_job ();

  add_feature (job, "2", TM_KIND_LENGTH, "62", "61.9", "62.1", "micrometer");
  assert_only_gap (job, TM_GAP_NOT_MEASURED, "2 of piece 001 is not measured");
}

static void
test_no_limits (void)
{
  TmJob *job = make_whole_job ();
  TmFeature *bare = add_feature (job, "2", TM_KIND_LENGTH, "62", "", "", "micrometer");

  add_reading (job, first_piece (job), bare, "", "62.01");
  assert_only_gap (job, TM_GAP_NOT_MEASURED, "no limits");
}

static void
test_station (void)
{
  TmJob *job = make_whole_job ();

  g_ptr_array_add (first_feature (job)->stations, (gpointer) "");
  g_ptr_array_add (first_feature (job)->stations, (gpointer) "bottom/3");
  assert_only_gap (job, TM_GAP_STATION_MISSING, "bottom/3");
}

static void
test_too_close (void)
{
  TmJob *job = make_whole_job ();
  TmFeature *tight = add_feature (job, "2", TM_KIND_BORE, "12", "12.000", "12.011", "micrometer");

  add_reading (job, first_piece (job), tight, "", "12.011");
  assert_only_gap (job, TM_GAP_TOO_CLOSE, "too close to call");
  job = make_whole_job ();
  tight = add_feature (job, "2", TM_KIND_BORE, "12", "12.000", "12.011", "micrometer");
  add_reading (job, first_piece (job), tight, "", "12.011");
  add_nonconformance (job, "001", "2", "NC-7");
  {
    g_autoptr (TmReportContent) content = tm_report_content_new (job);
    g_assert_cmpuint (content->gaps->len, ==, 0);
    g_assert_cmpuint (content->n_too_close, ==, 1);
  }
  tm_job_free (job);
}

static void
test_no_method (void)
{
  TmJob *job = make_whole_job ();

  first_feature (job)->method = "";
  assert_only_gap (job, TM_GAP_NO_METHOD, "no known method");
}

static void
test_gauge_unknown (void)
{
  TmJob *job = make_whole_job ();
  TmFeature *length = add_feature (job, "2", TM_KIND_LENGTH, "62", "61.9", "62.1", "transfer");

  add_method (job, "transfer", "LOST-1", "M-1");
  add_reading (job, first_piece (job), length, "", "62.01");
  assert_only_gap (job, TM_GAP_GAUGE_UNKNOWN, "LOST-1");
}

static void
test_overdue (void)
{
  /* Due the day before the reading, on its day, calibrated after it, and no date at all. */
  static const struct {
    const char *calibrated, *due;
    gboolean covered;
  } cases[] = {
    { "2025-05-04", "2026-05-03", FALSE }, { "2025-05-04", "2026-05-04", TRUE },
    { "2026-05-05", "2027-05-05", FALSE }, { "2026-05-04", "2027-05-05", TRUE },
    { "2025-05-04", "", FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmJob *job = make_whole_job ();
      TmGauge *gauge = tm_job_find_gauge (job, "M-1");
      gauge->calibrated = cases[i].calibrated;
      gauge->due = cases[i].due;
      if (!cases[i].covered)
        assert_only_gap (job, TM_GAP_GAUGE_OVERDUE, "M-1");
      else
        {
          g_autoptr (TmReportContent) content = tm_report_content_new (job);
          g_assert_cmpuint (content->gaps->len, ==, 0);
          tm_report_content_free (g_steal_pointer (&content));
          tm_job_free (job);
        }
    }
}

/* The micrometer that reads a telescoping gauge carries the calibration, also when the telescoping
 * gauge has a resolution and a limit of error of its own; a due date that it does have must hold. */
static void
test_transfer (void)
{
  static const struct {
    const char *resolution, *limit, *due;
    gboolean good;
  } cases[] = {
    { "", "", "", TRUE },
    { "0.001", "0.02", "", TRUE },
    { "0.001", "0.02", "2026-05-04", TRUE },
    { "", "", "2026-05-03", FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_whole_job ();
      TmFeature *bore = add_feature (job, "2", TM_KIND_BORE, "30", "30.00", "30.50", "telescoping");
      g_autoptr (TmReportContent) content = NULL;

      add_gauge (job, "TG-1", cases[i].resolution, cases[i].limit, cases[i].due);
      add_method (job, "telescoping", "TG-1", "M-1");
      add_reading (job, first_piece (job), bore, "", "30.25");
      content = tm_report_content_new (job);
      g_assert_cmpuint (content->gauges->len, ==, 2);
      g_assert_cmpuint (content->gaps->len, ==, cases[i].good ? 0 : 1);
      if (!cases[i].good)
        g_assert_cmpstr (((const TmGap *)g_ptr_array_index (content->gaps, 0))->field, ==, "TG-1");
    }
}

/* The reading gauge of a transfer is the one that must be in calibration. */
static void
test_transfer_reader_overdue (void)
{
  TmJob *job = make_whole_job ();
  TmFeature *bore = add_feature (job, "2", TM_KIND_BORE, "30", "30.00", "30.50", "telescoping");

  add_gauge (job, "TG-1", "", "", "");
  add_gauge (job, "M-2", "0.001", "0.002", "");
  add_method (job, "telescoping", "TG-1", "M-2");
  add_reading (job, first_piece (job), bore, "", "30.25");
  assert_only_gap (job, TM_GAP_GAUGE_OVERDUE, "M-2");
}

/* A stated reason settles it: the report carries the reason instead. */
static void
test_overdue_with_reason (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  TmReading *reading = g_ptr_array_index (job->readings, 0);
  g_autoptr (TmReportContent) content = NULL;

  tm_job_find_gauge (job, "M-1")->due = "2026-02-01";
  reading->overdue_reason = "the other one is at the laboratory";
  content = tm_report_content_new (job);
  g_assert_cmpuint (content->gaps->len, ==, 0);
}

/* The calibration in force at the reading decides, whatever the gauge's newest date is. */
static void
test_calibration_in_force (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  TmGauge *gauge = tm_job_find_gauge (job, "M-1");
  TmCalibration *calibration = tm_calibration_new ();
  g_autoptr (TmReportContent) content = NULL;

  gauge->calibrated = "2026-06-01";
  gauge->due = "2027-06-01";
  calibration->gauge = "M-1";
  calibration->date = "2025-06-01";
  calibration->due = "2026-06-01";
  g_assert_cmpint (tm_job_add_calibration (job, calibration), ==, TM_ADD_OK);
  content = tm_report_content_new (job);
  g_assert_cmpuint (content->gaps->len, ==, 0);
  g_clear_pointer (&content, tm_report_content_free);
  calibration->due = "2026-04-01";
  assert_only_gap (g_steal_pointer (&job), TM_GAP_GAUGE_OVERDUE, "state why");
}

static TmPinTrial *
add_trial (TmJob *job, const char *size, gboolean went)
{
  TmPinTrial *trial = tm_pin_trial_new ();

  trial->row.piece = first_piece (job);
  trial->row.feature = first_feature (job);
  trial->row.at = "2026-05-04T09:12:33Z";
  trial->size = quantity (size, TM_UNIT_MM);
  trial->pin_class = "X";
  trial->sign = went ? TM_PIN_PLUS : TM_PIN_MINUS;
  trial->went = went;
  g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
  return trial;
}

static void
test_pin_set (void)
{
  static const struct {
    const char *due, *reason;
    gboolean good;
  } cases[] = {
    { "2027-01-05", "", TRUE }, { "2026-05-03", "", FALSE }, { "", "", FALSE }, { "", "no other set", TRUE }
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_whole_job ();
      TmPinTrial *trial = add_trial (job, "25.002", TRUE);
      g_autoptr (TmReportContent) content = NULL;

      add_gauge (job, "PS-1", "", "", cases[i].due);
      trial->gauge = "PS-1";
      trial->overdue_reason = cases[i].reason;
      content = tm_report_content_new (job);
      g_assert_cmpuint (content->gauges->len, ==, 2);
      g_assert_cmpuint (content->gaps->len, ==, cases[i].good ? 0 : 1);
    }
}

/* The larger pin went where the smaller did not. */
static void
test_pins_contradict (void)
{
  TmJob *job = make_whole_job ();

  add_trial (job, "25.015", TRUE);
  add_trial (job, "25.005", FALSE);
  assert_only_gap (job, TM_GAP_PINS_CONTRADICT, "cannot all be true");
}

/* Two pins that prove the band are a result: nothing is missing. */
static void
test_pins_alone (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  TmReading *reading = g_ptr_array_index (job->readings, 0);
  g_autoptr (TmReportContent) content = NULL;

  tm_job_withdraw (job, &reading->row, "AB", "2026-05-04T10:00:00Z", "chip");
  add_trial (job, "25.002", TRUE);
  add_trial (job, "25.018", FALSE);
  content = tm_report_content_new (job);
  g_assert_cmpuint (content->gaps->len, ==, 0);
  g_assert_cmpuint (content->n_in, ==, 1);
}

/* 25.010 and 25.018 mm by two gauges of ±0.002 mm. */
static void
test_methods_disagree (void)
{
  TmJob *job = make_whole_job ();

  add_gauge (job, "M-2", "0.001", "0.002", "2027-01-05");
  add_method (job, "other", "M-2", NULL);
  tm_job_find_method (job, "micrometer")->repeatability = quantity ("0.0005", TM_UNIT_MM);
  tm_job_find_method (job, "other")->repeatability = quantity ("0.0005", TM_UNIT_MM);
  add_reading (job, first_piece (job), first_feature (job), "", "25.018")->method = "other";
  assert_only_gap (job, TM_GAP_METHODS_DISAGREE, "disagree");
}

/* A feel that nobody measured makes up most of the budget: said once for the method. */
static void
test_assumed (void)
{
  TmJob *job = make_whole_job ();
  TmFeature *bore = add_feature (job, "2", TM_KIND_BORE, "30", "30.00", "30.50", "telescoping");
  TmFeature *other = add_feature (job, "3", TM_KIND_BORE, "31", "31.00", "31.50", "telescoping");
  TmGauge *gauge = add_gauge (job, "TG-1", "", "", "");

  gauge->kind = "telescoping gauge";
  gauge->feel = quantity ("0.025", TM_UNIT_MM);
  gauge->source = "assumed: common practice, from memory";
  add_method (job, "telescoping", "TG-1", "M-1");
  add_reading (job, first_piece (job), bore, "", "30.25");
  add_reading (job, first_piece (job), other, "", "31.25");
  assert_only_gap (job, TM_GAP_ASSUMED, "telescoping");
}

static void
test_no_reference (void)
{
  TmJob *job = make_whole_job ();
  TmFeature *length = add_feature (job, "2", TM_KIND_LENGTH, "62", "61.9", "62.1", "micrometer");

  add_reading (job, first_piece (job), length, "", "62.5");
  assert_only_gap (job, TM_GAP_NO_REFERENCE, "nonconformance number");
}

static void
test_partial (void)
{
  TmJob *job = make_whole_job ();

  job->first_article = TM_FIRST_ARTICLE_PARTIAL;
  job->first_article_reason = "new tool";
  assert_only_gap (job, TM_GAP_PARTIAL_REASON, "baseline report");
  job = make_whole_job ();
  job->first_article = TM_FIRST_ARTICLE_PARTIAL;
  job->first_article_baseline = "P-0";
  assert_only_gap (job, TM_GAP_PARTIAL_REASON, "reason");
}

static void
test_drawing_revision (void)
{
  TmJob *job = make_whole_job ();

  job->drawing_revision = "B";
  assert_only_gap (job, TM_GAP_DRAWING_REVISION, "drawing's revision is not that of the part");
}

static void
test_no_drawing (void)
{
  TmJob *job = make_whole_job ();

  tm_job_remove_drawing (job, g_ptr_array_index (job->drawings, 0));
  assert_only_gap (job, TM_GAP_NO_DRAWING, "No drawing is kept");
}

static void
test_no_balloon (void)
{
  TmJob *job = make_whole_job ();

  tm_job_remove_balloon_mark (job, g_ptr_array_index (job->balloon_marks, 0));
  assert_only_gap (job, TM_GAP_NO_BALLOON, "has no balloon on the drawing");
}

/* Where places have balloons of their own each needs one, on whichever drawing. */
static void
test_place_without_balloon (void)
{
  TmJob *job = make_whole_job ();
  TmFeature *holes = add_feature (job, "2", TM_KIND_ATTRIBUTE, "", "", "", "");
  g_autoptr (TmReportContent) content = NULL;

  holes->places = 3;
  holes->tooling = "Plug PG-2";
  for (guint place = 1; place <= 3; place++)
    add_reading (job, first_piece (job), holes, "", "pass")->place = place;
  tm_job_remove_balloon_mark (job, g_ptr_array_index (job->balloon_marks, 1));
  add_drawing (job, "D-2");
  add_mark (job, "D-1", "2", 1);
  add_mark (job, "D-2", "2", 3);
  content = tm_report_content_new (job);
  g_assert_cmpuint (((const TmGap *)g_ptr_array_index (content->gaps, 0))->place, ==, 2);
  g_clear_pointer (&content, tm_report_content_free);
  add_mark (job, "D-2", "2", 2);
  content = tm_report_content_new (job);
  for (guint i = 0; i < content->gaps->len; i++)
    g_assert_cmpint (((const TmGap *)g_ptr_array_index (content->gaps, i))->kind, !=, TM_GAP_NO_BALLOON);
  tm_job_free (job);
}

static void
test_no_material (void)
{
  TmJob *job = make_whole_job ();

  g_ptr_array_set_size (job->supplies, 0);
  assert_only_gap (job, TM_GAP_NO_MATERIAL, "No raw material");
}

typedef struct {
  TmSupplyKind kind;
  const char *certificate;
  TmApproval approval;
  TmGapKind gap; /* TM_N_GAPS: none */
} Supply;

static void
test_supplies (void)
{
  static const Supply cases[] = {
    { TM_SUPPLY_MATERIAL, " ", TM_APPROVAL_UNSAID, TM_GAP_SUPPLY_PROOF },
    { TM_SUPPLY_MATERIAL, "Z", TM_APPROVAL_UNSAID, TM_N_GAPS },
    { TM_SUPPLY_PROCESS, "", TM_APPROVAL_YES, TM_GAP_SUPPLY_PROOF },
    { TM_SUPPLY_PROCESS, "Z", TM_APPROVAL_UNSAID, TM_GAP_SUPPLY_APPROVAL },
    { TM_SUPPLY_PROCESS, "Z", TM_APPROVAL_NO, TM_GAP_SUPPLY_APPROVAL },
    { TM_SUPPLY_PROCESS, "Z", TM_APPROVAL_NOT_ASKED, TM_N_GAPS },
    { TM_SUPPLY_TEST, "", TM_APPROVAL_UNSAID, TM_GAP_SUPPLY_PROOF },
    { TM_SUPPLY_TEST, "Z", TM_APPROVAL_UNSAID, TM_N_GAPS },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_whole_job ();
      g_autoptr (TmReportContent) content = NULL;

      g_test_message ("case %" G_GSIZE_FORMAT, i);
      add_supply (job, cases[i].kind, "Quench", cases[i].certificate, cases[i].approval);
      content = tm_report_content_new (job);
      g_assert_cmpuint (content->gaps->len, ==, cases[i].gap != TM_N_GAPS);
      if (content->gaps->len > 0)
        {
          const TmGap *gap = g_ptr_array_index (content->gaps, 0);
          g_autofree char *text = tm_gap_describe (gap);

          g_assert_cmpint (gap->kind, ==, cases[i].gap);
          g_assert_cmpuint (gap->row, ==, 1);
          g_assert_nonnull (strstr (text, "Quench"));
        }
    }
}

static void
test_sub_parts (void)
{
  TmJob *job = make_whole_job ();
  TmSubPart *part = tm_sub_part_new ();

  job->article = TM_ARTICLE_ASSEMBLY;
  assert_only_gap (job, TM_GAP_NO_SUB_PARTS, "assembly");
  job = make_whole_job ();
  job->article = TM_ARTICLE_ASSEMBLY;
  part->number = "S-1";
  tm_job_add_sub_part (job, part);
  assert_only_gap (job, TM_GAP_SUB_PART_REPORT, "Part S-1");
}

static void
test_tooling (void)
{
  TmJob *job = make_whole_job ();
  TmFeature *thread = add_feature (job, "2", TM_KIND_THREAD, NULL, NULL, NULL, "");

  add_reading (job, first_piece (job), thread, "", "pass");
  assert_only_gap (job, TM_GAP_NO_TOOLING, "neither gauge nor tooling");
}

static void
test_tooling_named (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  TmFeature *thread = add_feature (job, "2", TM_KIND_THREAD, NULL, NULL, NULL, "");
  g_autoptr (TmReportContent) content = NULL;

  thread->tooling = "plug T-9";
  add_reading (job, first_piece (job), thread, "", "pass");
  content = tm_report_content_new (job);
  g_assert_cmpuint (content->gaps->len, ==, 0);
}

static void
test_disposition (void)
{
  TmJob *job = make_whole_job ();

  add_nonconformance (job, "001", "1", "NC-1");
  ((TmNonconformance *)g_ptr_array_index (job->nonconformances, 0))->disposition = " ";
  assert_only_gap (job, TM_GAP_NO_DISPOSITION, "Nonconformance NC-1");
}

static void
test_rework_open (void)
{
  TmJob *job = make_whole_job ();

  add_nonconformance (job, "001", "1", "NC-1");
  ((TmNonconformance *)g_ptr_array_index (job->nonconformances, 0))->disposition = "repair";
  assert_only_gap (job, TM_GAP_REWORK_OPEN, "is to be reworked or repaired");
}

/* Reworked, and not read since; read again nothing is missing. */
static void
test_rework (void)
{
  TmJob *job = make_whole_job ();
  g_autoptr (TmJob) again = make_whole_job ();
  g_autoptr (TmReportContent) content = NULL;

  rework_bore (job);
  g_assert_cmpint (tm_job_withdraw (job, g_ptr_array_index (job->readings, 1), "AB", "", "wrong bore"), ==,
                   TM_ADD_OK);
  assert_only_gap (job, TM_GAP_NOT_MEASURED, "was reworked after it was last read: measure it again");
  rework_bore (again);
  content = tm_report_content_new (again);
  g_assert_cmpuint (content->gaps->len, ==, 0);
}

/* A withdrawn reading is no result, and its gauge needs no date for it. */
static void
test_withdrawn (void)
{
  TmJob *job = make_whole_job ();
  TmReading *reading = g_ptr_array_index (job->readings, 0);

  g_assert_cmpint (tm_job_withdraw (job, &reading->row, "AB", "2026-05-04T10:00:00Z", "chip"), ==, TM_ADD_OK);
  tm_job_find_gauge (job, "M-1")->due = "2026-02-01";
  assert_only_gap (job, TM_GAP_NOT_MEASURED, "not measured");
}

/* Only marked pieces are reported; where none is marked, the plan says which features are. */
static void
test_lines (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  TmFeature *four = add_feature (job, "2", TM_KIND_DIAMETER, "6", "5.9", "6.1", "micrometer");
  TmFeature *first = add_feature (job, "3", TM_KIND_LENGTH, "9", "8.9", "9.1", "micrometer");
  g_autoptr (TmReportContent) content = NULL;

  four->places = 4;
  first->check = "first";
  add_piece (job, "002", FALSE);
  content = tm_report_content_new (job);
  g_assert_cmpuint (content->lines->len, ==, 6);
  tm_report_content_free (g_steal_pointer (&content));
  first_piece (job)->first_article = FALSE;
  content = tm_report_content_new (job);
  g_assert_cmpuint (content->lines->len, ==, 6 + 5);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/content/whole", test_whole);
  g_test_add_func ("/content/cut-since", test_cut_since);
  g_test_add_func ("/content/gap/unsigned", test_unsigned);
  g_test_add_func ("/content/gap/superseded", test_superseded);
  g_test_add_func ("/content/signed-again", test_signed_again);
  g_test_add_func ("/content/gap/same-identifier", test_same_identifier);
  g_test_add_func ("/content/gap/field-missing", test_field_missing);
  g_test_add_func ("/content/gap/no-features", test_no_features);
  g_test_add_func ("/content/gap/no-piece", test_no_piece);
  g_test_add_func ("/content/gap/facts", test_facts);
  g_test_add_func ("/content/gap/not-measured", test_not_measured);
  g_test_add_func ("/content/gap/no-limits", test_no_limits);
  g_test_add_func ("/content/gap/station", test_station);
  g_test_add_func ("/content/gap/too-close", test_too_close);
  g_test_add_func ("/content/gap/no-method", test_no_method);
  g_test_add_func ("/content/gap/gauge-unknown", test_gauge_unknown);
  g_test_add_func ("/content/gap/overdue", test_overdue);
  g_test_add_func ("/content/gap/transfer", test_transfer);
  g_test_add_func ("/content/gap/transfer-reader-overdue", test_transfer_reader_overdue);
  g_test_add_func ("/content/gap/overdue-with-reason", test_overdue_with_reason);
  g_test_add_func ("/content/gap/calibration-in-force", test_calibration_in_force);
  g_test_add_func ("/content/gap/pin-set", test_pin_set);
  g_test_add_func ("/content/gap/pins-contradict", test_pins_contradict);
  g_test_add_func ("/content/pins-alone", test_pins_alone);
  g_test_add_func ("/content/gap/methods-disagree", test_methods_disagree);
  g_test_add_func ("/content/gap/assumed", test_assumed);
  g_test_add_func ("/content/gap/no-reference", test_no_reference);
  g_test_add_func ("/content/gap/partial", test_partial);
  g_test_add_func ("/content/gap/drawing-revision", test_drawing_revision);
  g_test_add_func ("/content/gap/no-drawing", test_no_drawing);
  g_test_add_func ("/content/gap/no-balloon", test_no_balloon);
  g_test_add_func ("/content/gap/place-without-balloon", test_place_without_balloon);
  g_test_add_func ("/content/gap/no-material", test_no_material);
  g_test_add_func ("/content/gap/supplies", test_supplies);
  g_test_add_func ("/content/gap/sub-parts", test_sub_parts);
  g_test_add_func ("/content/gap/tooling", test_tooling);
  g_test_add_func ("/content/gap/tooling-named", test_tooling_named);
  g_test_add_func ("/content/gap/disposition", test_disposition);
  g_test_add_func ("/content/gap/rework-open", test_rework_open);
  g_test_add_func ("/content/gap/rework", test_rework);
  g_test_add_func ("/content/withdrawn", test_withdrawn);
  g_test_add_func ("/content/lines", test_lines);
  return g_test_run ();
}
