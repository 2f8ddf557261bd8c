/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "support-big-job.h"

#define START_SECONDS 25200 /* 07:00:00 */

static TmQuantity
read_mm (const char *text)
{
  TmQuantity quantity = TM_QUANTITY_NONE;

  if (tm_quantity_read (text, TM_UNIT_MM, &quantity) != TM_READ_OK)
    g_error ("support-big-job: %s", text);
  return quantity;
}

/* Adds the one gauge and the one method that everything is measured with. */
static void
add_method (TmJob *job)
{
  TmPerson *person = tm_person_new ();
  TmGauge *gauge = tm_gauge_new ();
  TmMethod *method = tm_method_new ();

  person->initials = tm_job_intern (job, "RT");
  person->name = tm_job_intern (job, "R. Thorne (invented)");
  gauge->tag = tm_job_intern (job, "DBG-2");
  gauge->kind = tm_job_intern (job, "dial bore gauge");
  gauge->resolution = read_mm ("0.001");
  gauge->error_limit = read_mm ("0.0015");
  gauge->calibrated = tm_job_intern (job, "2026-02-10");
  gauge->due = tm_job_intern (job, "2027-02-10");
  method->name = tm_job_intern (job, "Dial bore gauge on ring");
  g_ptr_array_add (method->gauges, (gpointer)gauge->tag);
  method->repeatability = read_mm ("0.001");
  method->repeatability_dof = tm_quantity_new (30, TM_UNIT_COUNT, 0);
  g_assert_cmpint (tm_job_add_person (job, person), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
}

static void
add_feature (TmJob *job, guint index)
{
  TmFeature *feature = tm_feature_new ();
  g_autofree char *balloon = g_strdup_printf ("%u", index + 1);
  g_autofree char *name = g_strdup_printf ("Bore %u", index + 1);

  feature->balloon = tm_job_intern (job, balloon);
  feature->name = tm_job_intern (job, name);
  if (index % 10 == 9)
    {
      feature->kind = TM_KIND_ATTRIBUTE;
      feature->unit = TM_UNIT_NONE;
      feature->requirement = tm_job_intern (job, "Free of burrs");
    }
  else
    {
      feature->kind = TM_KIND_BORE;
      feature->unit = TM_UNIT_MM;
      feature->requirement = tm_job_intern (job, "Ø25 H7");
      feature->nominal = read_mm ("25");
      feature->lower = read_mm ("25.000");
      feature->upper = read_mm ("25.021");
      feature->method = tm_job_intern (job, "Dial bore gauge on ring");
      g_ptr_array_add (feature->stations, (gpointer)tm_job_intern (job, "mouth/12"));
      g_ptr_array_add (feature->stations, (gpointer)tm_job_intern (job, "bottom/12"));
    }
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
}

static TmPiece *
add_piece (TmJob *job, guint index)
{
  TmPiece *piece = tm_piece_new ();
  g_autofree char *serial = g_strdup_printf ("%05u", index + 1);

  piece->serial = tm_job_intern (job, serial);
  piece->first_article = index == 0;
  g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
  return piece;
}

static const char *
make_moment (TmJob *job, guint index)
{
  guint seconds = START_SECONDS + index % 28800;
  g_autofree char *text
      = g_strdup_printf ("2026-%02u-%02uT%02u:%02u:%02uZ", 1 + index / 28800 / 28 % 12,
                         1 + index / 28800 % 28, seconds / 3600, seconds / 60 % 60, seconds % 60);

  return tm_job_intern (job, text);
}

static void
add_reading (TmJob *job, TmPiece *piece, TmFeature *feature, const char *station, guint index, GRand *rand)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = piece;
  reading->row.feature = feature;
  reading->row.by = tm_job_intern (job, "RT");
  reading->row.at = make_moment (job, index);
  reading->station = tm_job_intern (job, station);
  if (tm_kind_is_attribute (feature->kind))
    {
      reading->outcome = TM_OUTCOME_PASS;
      reading->typed = tm_job_intern (job, "p");
    }
  else
    {
      gint64 microns = 25000 + g_rand_int_range (rand, 2, 20);
      g_autofree char *typed = g_strdup_printf ("%" G_GINT64_FORMAT, microns);

      reading->value = tm_quantity_new (microns * 1000000, TM_UNIT_MM, 3);
      reading->typed = tm_job_intern (job, typed);
      reading->method = feature->method;
      reading->part_temp = tm_quantity_new (21500000, TM_UNIT_CELSIUS, 1);
      reading->gauge_temp = tm_quantity_new (20500000, TM_UNIT_CELSIUS, 1);
    }
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
}

/* Measures all of one piece; returns how many readings there are then. */
static guint
measure_piece (TmJob *job, TmPiece *piece, guint done, guint n_readings, GRand *rand)
{
  for (guint i = 0; i < job->features->len; i++)
    {
      TmFeature *feature = g_ptr_array_index (job->features, i);
      guint stations = MAX (feature->stations->len, 1);

      for (guint s = 0; s < stations && done < n_readings; s++, done++)
        add_reading (job, piece, feature,
                     s < feature->stations->len ? g_ptr_array_index (feature->stations, s) : "", done, rand);
    }
  return done;
}

TmJob *
tm_test_big_job (guint n_features, guint n_readings)
{
  TmJob *job = tm_job_new ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260504);
  guint done = 0;

  g_assert (n_features > 0);
  job->id = tm_job_intern (job, "b0000000-0000-4000-8000-000000000001");
  job->part_number = tm_job_intern (job, "BIG-1");
  job->part_name = tm_job_intern (job, "Large job (invented data)");
  job->unit = TM_UNIT_MM;
  add_method (job);
  for (guint i = 0; i < n_features; i++)
    add_feature (job, i);
  for (guint i = 0; done < n_readings; i++)
    done = measure_piece (job, add_piece (job, i), done, n_readings, rand);
  return job;
}
