/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The job model and the rules of its record.
 */

#include "core-model.h"

typedef struct {
  TmJob *job;
  TmFeature *feature;
  TmPiece *piece;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->job = tm_job_new ();
  fixture->feature = tm_feature_new ();
  fixture->feature->balloon = tm_job_intern (fixture->job, "1");
  fixture->feature->kind = TM_KIND_BORE;
  fixture->feature->places = 2;
  g_assert_cmpint (tm_job_add_feature (fixture->job, fixture->feature), ==, TM_ADD_OK);
  fixture->piece = tm_piece_new ();
  fixture->piece->serial = tm_job_intern (fixture->job, "001");
  g_assert_cmpint (tm_job_add_piece (fixture->job, fixture->piece), ==, TM_ADD_OK);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  tm_job_free (fixture->job);
}

static TmReading *
make_reading (Fixture *fixture, guint place)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = fixture->piece;
  reading->row.feature = fixture->feature;
  reading->place = place;
  return reading;
}

static TmReading *
add_reading (Fixture *fixture, guint place)
{
  TmReading *reading = make_reading (fixture, place);

  g_assert_cmpint (tm_job_add_reading (fixture->job, reading), ==, TM_ADD_OK);
  return reading;
}

static void
test_names_are_unique (Fixture *fixture, gconstpointer data)
{
  TmFeature *again = tm_feature_new ();
  TmFeature *nameless = tm_feature_new ();

  again->balloon = "1";
  g_assert_cmpint (tm_job_add_feature (fixture->job, again), ==, TM_ADD_TAKEN);
  g_assert_cmpint (tm_job_add_feature (fixture->job, nameless), ==, TM_ADD_NO_NAME);
  g_assert_cmpuint (fixture->job->features->len, ==, 1);
  tm_feature_free (again);
  tm_feature_free (nameless);
}

static void
test_ids_are_numbered (Fixture *fixture, gconstpointer data)
{
  TmReading *first = add_reading (fixture, 1);
  TmReading *given = make_reading (fixture, 1);
  TmReading *third;

  given->row.id = "41";
  g_assert_cmpint (tm_job_add_reading (fixture->job, given), ==, TM_ADD_OK);
  third = add_reading (fixture, 1);
  g_assert_cmpstr (first->row.id, ==, "1");
  g_assert_cmpstr (third->row.id, ==, "42");
  g_assert_true (tm_job_find_reading (fixture->job, "42") == third);
}

static void
test_places_are_bounded (Fixture *fixture, gconstpointer data)
{
  static const guint wrong[] = { 0, 3 };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      TmReading *reading = make_reading (fixture, wrong[i]);

      g_assert_cmpint (tm_job_add_reading (fixture->job, reading), ==, TM_ADD_BAD_PLACE);
      tm_reading_free (reading);
    }
  g_assert_cmpuint (fixture->job->readings->len, ==, 0);
}

static void
test_correction_replaces (Fixture *fixture, gconstpointer data)
{
  TmReading *old = add_reading (fixture, 1);
  TmReading *correction = make_reading (fixture, 1);

  correction->row.replaces = old->row.id;
  g_assert_cmpint (tm_job_add_reading (fixture->job, correction), ==, TM_ADD_NO_REASON);
  correction->row.reason = "misread the sleeve";
  g_assert_cmpint (tm_job_add_reading (fixture->job, correction), ==, TM_ADD_OK);
  g_assert_false (tm_row_counts (&old->row));
  g_assert_true (tm_row_counts (&correction->row));
  g_assert_cmpuint (tm_job_readings_at (fixture->job, fixture->piece, fixture->feature, 1)->len, ==, 2);
}

static void
test_gone_rows_cannot_be_corrected_again (Fixture *fixture, gconstpointer data)
{
  TmReading *old = add_reading (fixture, 1);
  TmReading *correction = make_reading (fixture, 1);

  g_assert_cmpint (tm_job_withdraw (fixture->job, &old->row, "AB", "", ""), ==, TM_ADD_NO_REASON);
  g_assert_true (tm_row_counts (&old->row));
  g_assert_cmpint (tm_job_withdraw (fixture->job, &old->row, "AB", "", "wrong piece"), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_withdraw (fixture->job, &old->row, "AB", "", "again"), ==, TM_ADD_TARGET_GONE);
  correction->row.replaces = old->row.id;
  correction->row.reason = "late";
  g_assert_cmpint (tm_job_add_reading (fixture->job, correction), ==, TM_ADD_TARGET_GONE);
  correction->row.replaces = "77";
  g_assert_cmpint (tm_job_add_reading (fixture->job, correction), ==, TM_ADD_NO_TARGET);
  tm_reading_free (correction);
}

static void
test_used_definitions_stay (Fixture *fixture, gconstpointer data)
{
  add_reading (fixture, 1);

  g_assert_cmpint (tm_job_remove_feature (fixture->job, "1"), ==, TM_ADD_IN_USE);
  g_assert_cmpint (tm_job_remove_piece (fixture->job, "001"), ==, TM_ADD_IN_USE);
  g_assert_true (tm_job_find_feature (fixture->job, "1") == fixture->feature);
}

static void
test_unused_definitions_go (Fixture *fixture, gconstpointer data)
{
  g_assert_cmpint (tm_job_remove_feature (fixture->job, "1"), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_remove_piece (fixture->job, "001"), ==, TM_ADD_OK);
  g_assert_null (tm_job_find_feature (fixture->job, "1"));
  g_assert_cmpuint (fixture->job->pieces->len, ==, 0);
}

static void
test_replaced_feature_keeps_its_readings (Fixture *fixture, gconstpointer data)
{
  TmReading *reading = add_reading (fixture, 2);
  TmFeature *wider = tm_feature_new ();
  TmFeature *narrow = tm_feature_new ();

  wider->balloon = tm_job_intern (fixture->job, "1");
  wider->name = tm_job_intern (fixture->job, "bearing bore");
  wider->places = 4;
  g_assert_cmpint (tm_job_replace_feature (fixture->job, "1", wider), ==, TM_ADD_OK);
  g_assert_true (reading->row.feature == fixture->feature);
  g_assert_cmpstr (fixture->feature->name, ==, "bearing bore");
  narrow->balloon = "1";
  g_assert_cmpint (tm_job_replace_feature (fixture->job, "1", narrow), ==, TM_ADD_BAD_PLACE);
  narrow->balloon = "2";
  narrow->places = 2;
  g_assert_cmpint (tm_job_replace_feature (fixture->job, "1", narrow), ==, TM_ADD_IN_USE);
  tm_feature_free (narrow);
}

static void
add_mark (Fixture *fixture, const char *balloon, guint place)
{
  TmBalloonMark *mark = tm_balloon_mark_new ();

  mark->drawing = "D-1";
  mark->feature = balloon;
  mark->place = place;
  g_assert_cmpint (tm_job_add_balloon_mark (fixture->job, mark), ==, TM_ADD_OK);
}

/* The balloons of places that a feature no longer has go, those of other features and the one of all its
 * places stay; also where it changes its number at the same time. */
static void
test_balloons_of_places_go (Fixture *fixture, gconstpointer data)
{
  TmFeature *other = tm_feature_new ();
  TmFeature *narrow = tm_feature_new ();
  TmDrawing *drawing = tm_drawing_new ();
  const GPtrArray *marks = fixture->job->balloon_marks;

  drawing->name = "D-1";
  g_assert_cmpint (tm_job_add_drawing (fixture->job, drawing), ==, TM_ADD_OK);
  other->balloon = "2";
  other->places = 2;
  g_assert_cmpint (tm_job_add_feature (fixture->job, other), ==, TM_ADD_OK);
  for (guint place = 0; place <= 2; place++)
    add_mark (fixture, "1", place);
  add_mark (fixture, "2", 2);
  narrow->balloon = "3";
  g_assert_cmpuint (narrow->places, ==, 1);
  g_assert_cmpint (tm_job_replace_feature (fixture->job, "1", narrow), ==, TM_ADD_OK);
  g_assert_cmpuint (marks->len, ==, 3);
  for (guint i = 0; i < marks->len; i++)
    {
      const TmBalloonMark *mark = g_ptr_array_index (marks, i);

      g_assert_cmpstr (mark->feature, ==, i < 2 ? "3" : "2");
      g_assert_cmpuint (mark->place, ==, i);
    }
}

/* A position that takes its bonus from a size feature would lose it without a word. */
static void
test_size_of_a_position_keeps_its_name (Fixture *fixture, gconstpointer data)
{
  TmFeature *position = tm_feature_new ();
  TmFeature *renamed = tm_feature_new ();

  position->balloon = "2";
  position->size_feature = "1";
  g_assert_cmpint (tm_job_add_feature (fixture->job, position), ==, TM_ADD_OK);
  renamed->balloon = "3";
  g_assert_cmpint (tm_job_replace_feature (fixture->job, "1", renamed), ==, TM_ADD_IN_USE);
  g_assert_cmpint (tm_job_remove_feature (fixture->job, "1"), ==, TM_ADD_IN_USE);
  position->size_feature = "";
  g_assert_cmpint (tm_job_replace_feature (fixture->job, "1", renamed), ==, TM_ADD_OK);
  g_assert_true (tm_job_find_feature (fixture->job, "3") == fixture->feature);
}

static void
test_gauge_in_a_method_stays (Fixture *fixture, gconstpointer data)
{
  TmGauge *gauge = tm_gauge_new ();
  TmMethod *method = tm_method_new ();

  gauge->tag = tm_job_intern (fixture->job, "MIC-1");
  g_assert_cmpint (tm_job_add_gauge (fixture->job, gauge), ==, TM_ADD_OK);
  method->name = tm_job_intern (fixture->job, "outside micrometer");
  g_ptr_array_add (method->gauges, (gpointer)gauge->tag);
  g_assert_cmpint (tm_job_add_method (fixture->job, method), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_remove_gauge (fixture->job, "MIC-1"), ==, TM_ADD_IN_USE);
  g_assert_cmpint (tm_job_remove_method (fixture->job, "outside micrometer"), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_remove_gauge (fixture->job, "MIC-1"), ==, TM_ADD_OK);
}

static void
test_person_of_a_reading_stays (Fixture *fixture, gconstpointer data)
{
  TmPerson *person = tm_person_new ();
  TmReading *reading = make_reading (fixture, 1);

  person->initials = tm_job_intern (fixture->job, "AB");
  g_assert_cmpint (tm_job_add_person (fixture->job, person), ==, TM_ADD_OK);
  reading->row.by = person->initials;
  g_assert_cmpint (tm_job_add_reading (fixture->job, reading), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_remove_person (fixture->job, "AB"), ==, TM_ADD_IN_USE);
  person = tm_person_new ();
  person->initials = tm_job_intern (fixture->job, "CD");
  g_assert_cmpint (tm_job_add_person (fixture->job, person), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_remove_person (fixture->job, "CD"), ==, TM_ADD_OK);
  g_assert_cmpuint (fixture->job->people->len, ==, 1);
}

static void
test_metal_goes_by_kind_unless_said (void)
{
  static const struct {
    TmKind kind;
    TmCut said;
    TmCut expected;
  } rows[] = {
    { TM_KIND_BORE, TM_CUT_UNKNOWN, TM_CUT_GROWS },       { TM_KIND_DEPTH, TM_CUT_UNKNOWN, TM_CUT_GROWS },
    { TM_KIND_SHAFT, TM_CUT_UNKNOWN, TM_CUT_SHRINKS },    { TM_KIND_LENGTH, TM_CUT_UNKNOWN, TM_CUT_UNKNOWN },
    { TM_KIND_DIAMETER, TM_CUT_UNKNOWN, TM_CUT_UNKNOWN }, { TM_KIND_LENGTH, TM_CUT_SHRINKS, TM_CUT_SHRINKS },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TmFeature *feature = tm_feature_new ();

      feature->kind = rows[i].kind;
      feature->cut = rows[i].said;
      g_assert_cmpint (tm_feature_cut (feature), ==, rows[i].expected);
      tm_feature_free (feature);
    }
}

static void
test_nonconformance_is_found (Fixture *fixture, gconstpointer data)
{
  TmNonconformance *other = tm_nonconformance_new ();
  TmNonconformance *every = tm_nonconformance_new ();

  other->piece = "002";
  other->feature = "1";
  tm_job_add_nonconformance (fixture->job, other);
  g_assert_null (tm_job_nonconformance_of (fixture->job, fixture->piece, fixture->feature));
  every->feature = "1";
  tm_job_add_nonconformance (fixture->job, every);
  g_assert_true (tm_job_nonconformance_of (fixture->job, fixture->piece, fixture->feature) == every);
}

static void
test_words_come_back (void)
{
  for (guint kind = 0; kind < TM_N_KINDS; kind++)
    {
      TmKind back = TM_N_KINDS;

      g_assert_true (tm_kind_from_word (tm_kind_word ((TmKind)kind), &back));
      g_assert_cmpint (back, ==, kind);
    }
  for (guint status = TM_ADD_OK + 1; status < TM_N_ADD_STATUSES; status++)
    g_assert_cmpstr (tm_add_status_text ((TmAddStatus)status), !=, "");
}

#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD ("/model/names-are-unique", test_names_are_unique);
  ADD ("/model/ids-are-numbered", test_ids_are_numbered);
  ADD ("/model/places-are-bounded", test_places_are_bounded);
  ADD ("/model/correction-replaces", test_correction_replaces);
  ADD ("/model/gone-rows", test_gone_rows_cannot_be_corrected_again);
  ADD ("/model/used-definitions-stay", test_used_definitions_stay);
  ADD ("/model/unused-definitions-go", test_unused_definitions_go);
  ADD ("/model/replaced-feature", test_replaced_feature_keeps_its_readings);
  ADD ("/model/balloons-of-places", test_balloons_of_places_go);
  ADD ("/model/size-of-a-position", test_size_of_a_position_keeps_its_name);
  ADD ("/model/gauge-in-a-method", test_gauge_in_a_method_stays);
  ADD ("/model/person-of-a-reading", test_person_of_a_reading_stays);
  ADD ("/model/nonconformance", test_nonconformance_is_found);
  g_test_add_func ("/model/metal", test_metal_goes_by_kind_unless_said);
  g_test_add_func ("/model/words", test_words_come_back);
  return g_test_run ();
}
