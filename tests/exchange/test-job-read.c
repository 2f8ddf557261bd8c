/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-job.h"
#include "support-job-text.h"

#include <string.h>

static TmJob *
read_job (const char *text)
{
  g_autoptr (GError) error = NULL;
  TmJob *job = tm_job_from_bytes (text, strlen (text), "part.tmjob", NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (job);
  return job;
}

static const char everything[]
    = "{\"format\": \"tenthmark-job\", \"version\": 1,\n"
      " \"job\": {\"id\": \"abc\", \"part_number\": \"P-1\", \"part_name\": \"Flange\", \"revision\": \"B\","
      " \"drawing\": \"D-1\", \"customer\": \"Example\", \"order\": \"O-1\", \"unit\": \"mm\", \"material\": "
      "\"steel\","
      " \"standard\": \"ASME\", \"decision\": \"simple\", \"simple_ratio\": \"4\", \"general_tolerance\": "
      "\"ISO 2768-m\","
      " \"first_article\": {\"kind\": \"partial\", \"reason\": \"new revision\", \"baseline\": \"A\"}},\n"
      " \"people\": [{\"initials\": \"RT\", \"name\": \"R. Thorne\"}],\n"
      " \"gauges\": [{\"tag\": \"TG\", \"kind\": \"telescoping gauge\", \"unit\": \"in\"},"
      "  {\"tag\": \"OM\", \"kind\": \"micrometer\", \"resolution\": \"0.001\", \"error_limit\": \"0.002\","
      "   \"calibrated\": \"2026-03-01\", \"due\": \"2028-02-29\", \"certificate\": \"C-1\"},"
      "  {\"tag\": \"BP\", \"resolution\": \"0.1 deg\"}],\n"
      " \"methods\": [{\"name\": \"transfer\", \"gauges\": [\"TG\", \"OM\"], \"repeatability\": \"0.003 mm\","
      "  \"repeatability_dof\": \"30\"}],\n"
      " \"features\": [{\"balloon\": \"1\", \"kind\": \"bore\", \"name\": \"Seat\", \"requirement\": \"Ø25 "
      "H7\", \"unit\": \"mm\","
      "  \"nominal\": \"25\", \"lower\": \"25.000\", \"upper\": \"25.021\", \"cut\": \"grows\", "
      "\"envelope\": true,"
      "  \"class\": \"critical\", \"places\": 2, \"stations\": [\"mouth/12\", \"12.5/3\"], \"method\": "
      "\"transfer\","
      "  \"check\": \"every 5\", \"group_size\": 3, \"sheet\": \"1\", \"zone\": \"B2\","
      "  \"mate\": {\"kind\": \"shaft\", \"lower\": \"24.980\", \"upper\": \"24.993\"}},"
      "  {\"balloon\": \"2\", \"kind\": \"position\", \"requirement\": \"⌖ Ø0.2 Ⓜ A B\", \"size_feature\": "
      "\"1\"},"
      "  {\"balloon\": \"3\", \"kind\": \"attribute\", \"name\": \"Edges\"}],\n"
      " \"pieces\": [{\"serial\": \"001\", \"first_article\": true}, {\"serial\": \"002\"}],\n"
      " \"readings\": [{\"id\": \"7\", \"piece\": \"001\", \"feature\": \"1\", \"place\": 2, \"station\": "
      "\"12.5/3\","
      "  \"value\": \"0.98465 in\", \"typed\": \".98465 in\", \"method\": \"OM\", \"by\": \"RT\", \"at\": "
      "\"2026-05-04T09:12:33Z\","
      "  \"part_temp\": \"22.5\", \"gauge_temp\": \"20.5\"},"
      "  {\"piece\": \"001\", \"feature\": \"1\", \"place\": 2, \"station\": \"12.5/3\", \"value\": "
      "\"25,010\","
      "   \"replaces\": \"7\", \"reason\": \"misread\"},"
      "  {\"piece\": \"001\", \"feature\": \"2\", \"dx\": \"0.010\", \"dy\": \"-0.020\"},"
      "  {\"piece\": \"002\", \"feature\": \"3\", \"value\": \"fail\","
      "   \"withdrawn\": {\"by\": \"RT\", \"at\": \"2026-05-04T10:00:00Z\", \"reason\": \"wrong piece\"}}],\n"
      " \"pin_trials\": [{\"piece\": \"001\", \"feature\": \"1\", \"size\": \"25.000\", \"class\": \"Z\", "
      "\"sign\": \"plus\","
      "  \"went\": true}],\n"
      " \"cuts\": [{\"piece\": \"001\", \"feature\": \"1\", \"dialled\": \"0.150\", \"passes\": 4}],\n"
      " \"events\": [{\"before_piece\": \"002\", \"kind\": \"offset\", \"note\": \"n\", \"amount\": "
      "\"-0.010\"}],\n"
      " \"nonconformances\": [{\"piece\": \"002\", \"feature\": \"3\", \"number\": \"N-1\", \"note\": \"n\","
      "  \"disposition\": \"scrap\"}],\n"
      " \"signatures\": [{\"by\": \"RT\", \"role\": \"inspector\", \"at\": \"2026-05-04T11:00:00Z\", "
      "\"digest\": \"\"}]}";

static void
check_job_facts (const TmJob *job)
{
  g_assert_cmpstr (job->id, ==, "abc");
  g_assert_cmpstr (job->part_name, ==, "Flange");
  g_assert_cmpint (job->unit, ==, TM_UNIT_MM);
  g_assert_cmpint (job->standard, ==, TM_STANDARD_ASME);
  g_assert_cmpint (job->decision, ==, TM_DECISION_SIMPLE);
  g_assert_cmpint (job->simple_ratio.count, ==, 4 * tm_unit_counts (TM_UNIT_HARDNESS));
  g_assert_cmpint (job->first_article, ==, TM_FIRST_ARTICLE_PARTIAL);
  g_assert_cmpstr (job->first_article_baseline, ==, "A");
  g_assert_cmpstr (tm_job_find_person (job, "RT")->name, ==, "R. Thorne");
}

static void
check_gauges (const TmJob *job)
{
  const TmMethod *method = tm_job_find_method (job, "transfer");

  g_assert_cmpint (tm_job_find_gauge (job, "TG")->unit, ==, TM_UNIT_IN);
  g_assert_cmpint (tm_job_find_gauge (job, "OM")->error_limit.count, ==, 2000000);
  g_assert_cmpstr (tm_job_find_gauge (job, "OM")->due, ==, "2028-02-29");
  g_assert_cmpint (tm_job_find_gauge (job, "BP")->resolution.unit, ==, TM_UNIT_DEGREE);
  g_assert_cmpuint (method->gauges->len, ==, 2);
  g_assert_cmpstr (g_ptr_array_index (method->gauges, 1), ==, "OM");
  g_assert_cmpint (method->repeatability.count, ==, 3000000);
  g_assert_cmpint (method->repeatability_dof.count, ==, 30);
}

static void
check_features (const TmJob *job)
{
  const TmFeature *bore = tm_job_find_feature (job, "1");
  const TmFeature *position = tm_job_find_feature (job, "2");

  g_assert_cmpint (bore->kind, ==, TM_KIND_BORE);
  g_assert_cmpint (bore->upper.count, ==, G_GINT64_CONSTANT (25021000000));
  g_assert_cmpint (bore->cut, ==, TM_CUT_GROWS);
  g_assert_true (bore->envelope);
  g_assert_cmpstr (bore->designator, ==, "critical");
  g_assert_cmpuint (bore->places, ==, 2);
  g_assert_cmpuint (bore->stations->len, ==, 2);
  g_assert_cmpstr (g_ptr_array_index (bore->stations, 1), ==, "12.5/3");
  g_assert_cmpuint (bore->group_size, ==, 3);
  g_assert_true (bore->mate.given);
  g_assert_cmpint (bore->mate.lower.count, ==, G_GINT64_CONSTANT (24980000000));
  g_assert_cmpint (position->modifier, ==, TM_MODIFIER_MMC);
  g_assert_true (position->zone_diameter);
  g_assert_cmpstr (position->datums, ==, "A B");
  g_assert_cmpint (position->upper.count, ==, 200000000);
  g_assert_cmpint (tm_job_find_feature (job, "3")->unit, ==, TM_UNIT_NONE);
}

static void
check_record (const TmJob *job)
{
  const TmReading *first = tm_job_find_reading (job, "7");
  const TmReading *second = g_ptr_array_index (job->readings, 1);
  const TmReading *offsets = g_ptr_array_index (job->readings, 2);
  const TmReading *outcome = g_ptr_array_index (job->readings, 3);

  /* 0.98465 in = 25.010110 mm exactly. */
  g_assert_cmpint (first->value.count, ==, G_GINT64_CONSTANT (25010110000));
  g_assert_cmpint (first->value.unit, ==, TM_UNIT_IN);
  g_assert_true (first->row.replaced_by == second);
  g_assert_cmpstr (second->row.id, ==, "8");
  g_assert_cmpint (second->value.count, ==, G_GINT64_CONSTANT (25010000000));
  g_assert_cmpint (offsets->dy.count, ==, -20000000);
  g_assert_cmpint (outcome->outcome, ==, TM_OUTCOME_FAIL);
  g_assert_cmpstr (outcome->row.withdrawn->reason, ==, "wrong piece");
  g_assert_cmpint (((TmPinTrial *)g_ptr_array_index (job->pin_trials, 0))->sign, ==, TM_PIN_PLUS);
  g_assert_cmpuint (((TmCutRow *)g_ptr_array_index (job->cuts, 0))->passes, ==, 4);
  g_assert_cmpstr (((TmEvent *)g_ptr_array_index (job->events, 0))->amount, ==, "-0.010");
  g_assert_cmpuint (job->nonconformances->len, ==, 1);
  g_assert_cmpstr (((TmSignature *)g_ptr_array_index (job->signatures, 0))->role, ==, "inspector");
}

static void
test_everything (void)
{
  g_autoptr (TmJob) job = read_job (everything);

  check_job_facts (job);
  check_gauges (job);
  check_features (job);
  check_record (job);
}

static void
test_defaults (void)
{
  g_autoptr (TmJob) job
      = read_job (TM_TEST_READINGS ("{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25.010\"}, "
                                    "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25.011\", "
                                    "\"replaces\": \"\", \"reason\": \"\"}"));
  const TmReading *first = g_ptr_array_index (job->readings, 0);
  const TmReading *second = g_ptr_array_index (job->readings, 1);

  g_assert_cmpstr (first->row.id, ==, "1");
  g_assert_cmpstr (second->row.id, ==, "2");
  g_assert_cmpuint (first->place, ==, 1);
  g_assert_cmpstr (first->station, ==, "");
  g_assert_cmpint (job->standard, ==, TM_STANDARD_ISO);
  g_assert_cmpint (job->decision, ==, TM_DECISION_GUARDED);
  g_assert_false (job->simple_ratio.given);
}

/* Sections in any order give the same job as in the order of the contract. */
static void
test_any_order (void)
{
  static const char backwards[]
      = "{\"readings\": [{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25.010\"}], "
        "\"unknown\": [1, 2], \"pieces\": [{\"serial\": \"001\"}], "
        "\"features\": [{\"requirement\": \"Ø25 H7\", \"balloon\": \"1\"}], "
        "\"job\": {\"unit\": \"mm\", \"part_number\": \"P-1\"}, \"version\": 1, \"format\": "
        "\"tenthmark-job\"}";
  static const char forwards[] = "{\"format\": \"tenthmark-job\", \"version\": 1, \"job\": {\"part_number\": "
                                 "\"P-1\", \"unit\": \"mm\"}, "
                                 "\"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\"}], "
                                 "\"pieces\": [{\"serial\": \"001\"}], "
                                 "\"readings\": [{\"piece\": \"001\", \"feature\": \"1\", \"value\": "
                                 "\"25.010\"}], \"unknown\": [1, 2]}";
  g_autoptr (TmJob) a = read_job (backwards);
  g_autoptr (TmJob) b = read_job (forwards);
  g_autoptr (GString) a_text = tm_job_to_string (a);
  g_autoptr (GString) b_text = tm_job_to_string (b);

  g_assert_cmpstr (a_text->str, ==, b_text->str);
}

/* What a feature becomes, from requirement, limits and kind together. */
static const struct {
  const char *row;
  TmKind kind;
  TmUnit unit;
  const char *nominal, *lower, *upper;
  guint places;
} feature_rows[] = {
  { "{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\"}", TM_KIND_BORE, TM_UNIT_MM, "25", "25.000", "25.021",
    1 },
  { "{\"balloon\": \"1\", \"kind\": \"length\", \"requirement\": \"20 H9\"}", TM_KIND_LENGTH, TM_UNIT_MM,
    "20", "20.000", "20.052", 1 },
  { "{\"balloon\": \"1\", \"kind\": \"shaft\", \"requirement\": \"Ø12 ±0.1\"}", TM_KIND_SHAFT, TM_UNIT_MM,
    "12", "11.9", "12.1", 1 },
  { "{\"balloon\": \"1\", \"kind\": \"depth\", \"requirement\": \"12 ±0.1\"}", TM_KIND_DEPTH, TM_UNIT_MM,
    "12", "11.9", "12.1", 1 },
  { "{\"balloon\": \"1\", \"requirement\": \"4X Ø6.5 ±0.1\"}", TM_KIND_DIAMETER, TM_UNIT_MM, "6.5", "6.4",
    "6.6", 4 },
  { "{\"balloon\": \"1\", \"requirement\": \"4X Ø6.5 ±0.1\", \"places\": 1}", TM_KIND_DIAMETER, TM_UNIT_MM,
    "6.5", "6.4", "6.6", 1 },
  { "{\"balloon\": \"1\", \"lower\": \"9.9\", \"upper\": \"10.1\"}", TM_KIND_LENGTH, TM_UNIT_MM, "", "9.9",
    "10.1", 1 },
  { "{\"balloon\": \"1\", \"lower\": \"29\", \"upper\": \"31\", \"unit\": \"deg\"}", TM_KIND_ANGLE,
    TM_UNIT_DEGREE, "", "29", "31", 1 },
  { "{\"balloon\": \"1\", \"kind\": \"bore\", \"requirement\": \"see table 3\", \"lower\": \"9.9\", "
    "\"upper\": \"10.1\"}",
    TM_KIND_BORE, TM_UNIT_MM, "", "9.9", "10.1", 1 },
  { "{\"balloon\": \"1\", \"requirement\": \"see table 3\"}", TM_KIND_NOTE, TM_UNIT_NONE, "", "", "", 1 },
  { "{\"balloon\": \"1\", \"kind\": \"attribute\", \"requirement\": \"Ø6 H7\"}", TM_KIND_ATTRIBUTE,
    TM_UNIT_NONE, "", "", "", 1 },
  { "{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\", \"lower\": \"25\", \"upper\": \"25.0210\"}",
    TM_KIND_BORE, TM_UNIT_MM, "25", "25", "25.0210", 1 },
  { "{\"balloon\": \"1\", \"kind\": \"form\", \"requirement\": \"0.05 max\"}", TM_KIND_FORM, TM_UNIT_MM, "",
    "", "0.05", 1 },
  { "{\"balloon\": \"1\", \"requirement\": \"Ra 1.6\", \"lower\": \"0\"}", TM_KIND_ROUGHNESS, TM_UNIT_UM, "",
    "0", "1.6", 1 },
  { "{\"balloon\": \"1\", \"requirement\": \"Ra 1.6\", \"unit\": \"mm\", \"upper\": \"1.6\"}",
    TM_KIND_ROUGHNESS, TM_UNIT_UM, "", "", "1.6", 1 },
  { "{\"balloon\": \"1\", \"kind\": \"roughness\", \"unit\": \"in\", \"upper\": \"32\"}", TM_KIND_ROUGHNESS,
    TM_UNIT_UIN, "", "", "32", 1 },
  { "{\"balloon\": \"1\", \"requirement\": \".750 ±.005\", \"unit\": \"in\"}", TM_KIND_LENGTH, TM_UNIT_IN,
    "0.750", "0.745", "0.755", 1 },
};

static void
test_features (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (feature_rows); i++)
    {
      g_autofree char *text
          = g_strconcat (TM_TEST_JOB_MM ", \"features\": [", feature_rows[i].row, "]}", NULL);
      g_autoptr (TmJob) job = read_job (text);
      const TmFeature *feature = tm_job_find_feature (job, "1");
      g_autofree char *nominal = tm_quantity_format (&feature->nominal);
      g_autofree char *lower = tm_quantity_format (&feature->lower);
      g_autofree char *upper = tm_quantity_format (&feature->upper);

      g_test_message ("%s", feature_rows[i].row);
      g_assert_cmpint (feature->kind, ==, feature_rows[i].kind);
      g_assert_cmpint (feature->unit, ==, feature_rows[i].unit);
      g_assert_cmpstr (nominal, ==, feature_rows[i].nominal);
      g_assert_cmpstr (lower, ==, feature_rows[i].lower);
      g_assert_cmpstr (upper, ==, feature_rows[i].upper);
      g_assert_cmpuint (feature->places, ==, feature_rows[i].places);
    }
}

/* A bare number states no limits of its own: those of the file stand, the general tolerance fills in
 * where there are none. */
static void
test_general (void)
{
  g_autoptr (TmJob) job = read_job (
      "{\"format\": \"tenthmark-job\", \"version\": 1, \"job\": {\"part_number\": \"P\", \"unit\": \"mm\", "
      "\"general_tolerance\": \"ISO 2768-m\"}, \"features\": [{\"balloon\": \"1\", \"requirement\": \"40\"}, "
      "{\"balloon\": \"2\", \"requirement\": \"40\", \"lower\": \"39.9\", \"upper\": \"40.1\"}]}");

  g_assert_cmpint (tm_job_find_feature (job, "1")->upper.count, ==, G_GINT64_CONSTANT (40300000000));
  g_assert_cmpint (tm_job_find_feature (job, "2")->upper.count, ==, G_GINT64_CONSTANT (40100000000));
}

/* A job without an id gets the same one each time, whatever the spaces; other content, another. */
static void
test_derived_id (void)
{
  static const char tight[]
      = "{\"format\":\"tenthmark-job\",\"version\":1,\"job\":{\"part_number\":\"P\",\"unit\":\"mm\"}}";
  static const char loose[] = "{ \"version\" : 1,\n\"format\" : \"tenthmark-job\",\n\"job\" : {\"unit\": "
                              "\"mm\", \"part_number\": \"P\"} }\n";
  static const char other[]
      = "{\"format\":\"tenthmark-job\",\"version\":1,\"job\":{\"part_number\":\"Q\",\"unit\":\"mm\"}}";
  g_autoptr (TmJob) a = read_job (tight);
  g_autoptr (TmJob) b = read_job (loose);
  g_autoptr (TmJob) c = read_job (other);

  g_assert_true (g_uuid_string_is_valid (a->id));
  g_assert_cmpstr (a->id, ==, b->id);
  g_assert_cmpstr (a->id, !=, c->id);
}

typedef struct {
  guint calls;
  double last;
  gboolean go_on;
} Progress;

static gboolean
progress_cb (double fraction, gpointer data)
{
  Progress *progress = data;

  g_assert_cmpfloat (fraction, >=, progress->last);
  g_assert_cmpfloat (fraction, <=, 1.0);
  progress->last = fraction;
  progress->calls++;
  return progress->go_on;
}

static void
test_cancel (void)
{
  g_autoptr (GError) error = NULL;
  Progress progress = { 0, 0.0, TRUE };
  g_autoptr (TmJob) job = tm_job_from_bytes (everything, strlen (everything), "part.tmjob", NULL, progress_cb,
                                             &progress, &error);
  TmJob *none;

  g_assert_no_error (error);
  g_assert_cmpuint (progress.calls, >, 0);
  progress = (Progress) { 0, 0.0, FALSE };
  none = tm_job_from_bytes (everything, strlen (everything), "part.tmjob", NULL, progress_cb, &progress,
                            &error);
  g_assert_null (none);
  g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_CANCELLED);
  g_assert_cmpuint (progress.calls, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/job-read/everything", test_everything);
  g_test_add_func ("/exchange/job-read/defaults", test_defaults);
  g_test_add_func ("/exchange/job-read/any-order", test_any_order);
  g_test_add_func ("/exchange/job-read/features", test_features);
  g_test_add_func ("/exchange/job-read/general", test_general);
  g_test_add_func ("/exchange/job-read/derived-id", test_derived_id);
  g_test_add_func ("/exchange/job-read/cancel", test_cancel);
  return g_test_run ();
}
