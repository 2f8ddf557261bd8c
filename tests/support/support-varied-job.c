/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "support-varied-job.h"

#include "core-callout.h"
#include "support-random-job.h"

/* Of each job; one job after the other goes through all of them. */
#define N_CALLOUTS 6
#define N_LIMITS   3

/* Names as jobs have them, and as they may come from anywhere. */
static const char *const texts[] = {
  "",
  "Seat, bored",
  "גוף משאבה (שמאל)",
  "حلقة ١٢",
  "\xe2\x80\x8fmixed עברית and Latin\xe2\x80\x8e",
  "軸受ハウジング",
  "  leading and   inner blanks  ",
  "=1+2",
  "+44 @home -x",
  "<b>&amp;</b> ]]> <!-- \"'",
  "tab\there\nand\r\nlines",
  "control \x01\x02\x1b\x1f\x7f",
  "non-character \xef\xbf\xbe\xef\xbf\xbf",
  "\xf0\x9f\x94\xa9 bolt",
};

/* Every form of a drawing that is read, for both systems. */
static const char *const requirements[] = {
  "Ø25 H7",
  "25.000/25.021",
  "1.250 ±.005",
  ".875 +.001 -.000",
  "12 max",
  "R3 min",
  "SR4 ±0.1",
  "4X Ø6.5 ±0.1",
  "3X R2 max",
  "Ra 1.6",
  "Ra 0.8 - 1.6",
  "Rz 6.3",
  "90° ±0.5°",
  "58-62 HRC",
  "200 HB min",
  "M8x1.25 6H",
  "2X 1/4-20 UNC-2B",
  "⌖ Ø0.2 Ⓜ A B C",
  "⌖ 0.2 A",
  "2X ⌖ Ø0 Ⓜ A-B DⓂ",
  "⌖ Ø0.2 A B C D E F",
  "⏤ Ø0.05 Ⓜ",
  "straightness 0.02",
  "⏥ 0.05",
  "○ 0.01",
  "⌭ 0.008",
  "⌒ 0.1 A",
  "⌓ 0.1 A B",
  "⟂ Ø0.05 A",
  "⟂ 0.05 Ⓜ A",
  "∥ 0.02 A",
  "∠ 0.1 A B",
  "◎ Ø0.05 A",
  "coaxiality 0.05 A",
  "⌯ 0.1 A",
  "⌰ 0.03 A-B",
  "circular runout 0.03 A",
  "↗ 0.02 A",
  "40",
  "break all edges",
};

static const char *
intern_long (TmJob *job)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < 40; i++)
    g_string_append (text, i % 7 == 0 ? "very long name of a bore " : "שם ארוך ");
  return tm_job_intern (job, text->str);
}

static const char *
pick (GRand *rand, TmJob *job)
{
  guint index = (guint)g_rand_int_range (rand, 0, G_N_ELEMENTS (texts) + 1);

  return index == G_N_ELEMENTS (texts) ? intern_long (job) : tm_job_intern (job, texts[index]);
}

static TmFeature *
begin_feature (GRand *rand, TmJob *job, guint number)
{
  TmFeature *feature = tm_feature_new ();
  g_autofree char *balloon = g_strdup_printf (number % 5 == 0 ? "N %u.1" : "N %u", number);

  feature->balloon = tm_job_intern (job, balloon);
  feature->name = pick (rand, job);
  feature->sheet = pick (rand, job);
  feature->zone = pick (rand, job);
  feature->check = tm_job_intern (job, g_rand_boolean (rand) ? "first" : "each");
  if (g_rand_boolean (rand) && job->methods->len > 0)
    feature->method = ((TmMethod *)g_ptr_array_index (job->methods, 0))->name;
  return feature;
}

static void
add_callout (GRand *rand, TmJob *job, guint number, const char *requirement)
{
  TmFeature *feature = begin_feature (rand, job, number);

  feature->requirement = tm_job_intern (job, requirement);
  tm_callout_apply (job, feature);
  if (feature->kind == TM_KIND_POSITION)
    feature->size_feature = tm_job_intern (job, "N 1");
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
}

static TmQuantity
make_limit (GRand *rand, TmUnit unit, gint64 whole)
{
  guint decimals = (guint)g_rand_int_range (rand, 0, 5);
  gint64 step = tm_unit_counts (unit);

  for (guint i = 0; i < decimals && step % 10 == 0; i++)
    step /= 10;
  return tm_quantity_new (whole * tm_unit_counts (unit) + step * g_rand_int_range (rand, 0, 9), unit,
                          decimals);
}

/* Limits without a requirement: on both sides, on one, on none, with a nominal and without. */
static void
add_limits (GRand *rand, TmJob *job, guint number, TmKind kind)
{
  static const TmUnit lengths[] = { TM_UNIT_MM, TM_UNIT_IN, TM_UNIT_UM, TM_UNIT_THOU, TM_UNIT_UIN };
  TmFeature *feature = begin_feature (rand, job, number);
  TmUnit unit = tm_kind_unit (kind, g_rand_boolean (rand) ? TM_UNIT_MM : TM_UNIT_IN);
  guint sides = (guint)g_rand_int_range (rand, 0, 4);

  feature->kind = kind;
  feature->unit = unit;
  if (unit == TM_UNIT_NONE && g_rand_boolean (rand))
    feature->unit = unit = TM_UNIT_MM;
  feature->places = (guint)g_rand_int_range (rand, 1, 4);
  if (tm_unit_dimension (unit) == TM_DIMENSION_LENGTH && !tm_kind_is_attribute (kind))
    unit = lengths[g_rand_int_range (rand, 0, G_N_ELEMENTS (lengths))];
  if (unit != TM_UNIT_NONE && (sides & 1) != 0)
    feature->lower = make_limit (rand, unit, 10);
  if (unit != TM_UNIT_NONE && (sides & 2) != 0)
    feature->upper = make_limit (rand, unit, 11);
  if (unit != TM_UNIT_NONE && g_rand_boolean (rand))
    feature->nominal = make_limit (rand, unit, 10);
  feature->name = *feature->name != '\0' ? feature->name : tm_job_intern (job, "limits alone");
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
}

static void
add_features (GRand *rand, TmJob *job, guint32 seed)
{
  guint number = 1;

  add_callout (rand, job, number++, "Ø25 H7");
  for (guint i = 0; i < N_CALLOUTS; i++)
    add_callout (rand, job, number++, requirements[(seed * N_CALLOUTS + i) % G_N_ELEMENTS (requirements)]);
  for (guint i = 0; i < N_LIMITS; i++)
    add_limits (rand, job, number++, (TmKind)((seed * N_LIMITS + i) % TM_N_KINDS));
}

static void
add_reading (GRand *rand, TmJob *job, TmPiece *piece, TmFeature *feature)
{
  static const char *const stations[] = { "", "mouth/12", "mouth/3", "bottom" };
  TmReading *reading = tm_reading_new ();

  reading->row.piece = piece;
  reading->row.feature = feature;
  reading->row.by = tm_job_intern (job, g_rand_boolean (rand) ? "RT" : "ק");
  reading->row.at = tm_job_intern (job, "2026-05-04T09:12:33Z");
  reading->place = (guint)g_rand_int_range (rand, 1, (gint32)feature->places + 1);
  reading->station = tm_job_intern (job, stations[g_rand_int_range (rand, 0, G_N_ELEMENTS (stations))]);
  reading->method = tm_job_intern (job, g_rand_boolean (rand) ? "G-1" : "");
  if (tm_kind_is_attribute (feature->kind))
    reading->outcome = g_rand_boolean (rand) ? TM_OUTCOME_PASS : TM_OUTCOME_FAIL;
  else
    reading->value = make_limit (rand, feature->unit, g_rand_boolean (rand) ? 10 : 25);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
}

static void
add_readings (GRand *rand, TmJob *job)
{
  for (guint p = 0; p < job->pieces->len; p++)
    for (guint f = 0; f < job->features->len; f++)
      for (gint n = g_rand_int_range (rand, 0, 4); n > 0; n--)
        add_reading (rand, job, g_ptr_array_index (job->pieces, p), g_ptr_array_index (job->features, f));
}

static void
add_people (TmJob *job)
{
  static const char *const people[][2] = { { "RT", "R. Test (invented)" }, { "ק", "קוף (invented)" } };

  for (gsize i = 0; i < G_N_ELEMENTS (people); i++)
    {
      TmPerson *person = tm_person_new ();

      person->initials = tm_job_intern (job, people[i][0]);
      person->name = tm_job_intern (job, people[i][1]);
      g_assert_cmpint (tm_job_add_person (job, person), ==, TM_ADD_OK);
    }
}

static void
add_nonconformance (GRand *rand, TmJob *job, const char *piece, const char *feature)
{
  TmNonconformance *one = tm_nonconformance_new ();

  one->piece = tm_job_intern (job, piece);
  one->feature = tm_job_intern (job, feature);
  one->number = pick (rand, job);
  one->note = pick (rand, job);
  one->disposition = tm_job_intern (job, g_rand_boolean (rand) ? "use as is" : "");
  tm_job_add_nonconformance (job, one);
}

static void
add_signature (GRand *rand, TmJob *job, const char *by)
{
  TmSignature *one = tm_signature_new ();

  one->by = tm_job_intern (job, by);
  one->role = pick (rand, job);
  one->at = tm_job_intern (job, g_rand_boolean (rand) ? "2026-05-05T10:00:00Z" : "");
  tm_job_add_signature (job, one);
}

static void
set_facts (GRand *rand, TmJob *job)
{
  if (g_rand_boolean (rand))
    job->id = tm_job_intern (job, "0b6d6a34-5f0e-4c6b-9c1e-2a1d8f0a7c01");
  job->part_number = g_rand_boolean (rand) ? pick (rand, job) : job->part_number;
  job->part_name = pick (rand, job);
  job->revision = pick (rand, job);
  job->drawing = pick (rand, job);
  job->customer = pick (rand, job);
  job->order = pick (rand, job);
  job->material = pick (rand, job);
  job->standard = g_rand_boolean (rand) ? TM_STANDARD_ASME : TM_STANDARD_ISO;
  if (g_rand_boolean (rand))
    job->first_article = TM_FIRST_ARTICLE_PARTIAL;
  job->first_article_reason = pick (rand, job);
  job->first_article_baseline = pick (rand, job);
}

TmJob *
tm_test_varied_job (guint32 seed)
{
  GRand *rand = g_rand_new_with_seed (seed);
  TmJob *job = tm_test_random_job (rand);
  TmPiece *piece = tm_piece_new ();

  set_facts (rand, job);
  add_people (job);
  add_features (rand, job, seed);
  piece->serial = tm_job_intern (job, "פ <1> \x07");
  piece->first_article = g_rand_boolean (rand);
  g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
  add_readings (rand, job);
  add_nonconformance (rand, job, "", "N 1");
  add_nonconformance (rand, job, "001", "");
  add_nonconformance (rand, job, piece->serial, "N 2");
  if (g_rand_boolean (rand))
    add_signature (rand, job, "RT");
  if (g_rand_boolean (rand))
    add_signature (rand, job, "nobody in the job");
  g_rand_free (rand);
  return job;
}
