/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where readings were taken, and the local sizes there: ISO 14405-1 default two-point size, ASME Y14.5
 * actual local size: repeats at one station are averaged, stations are compared.
 */

#include <math.h>

#include "core-form.h"
#include "judge-support.h"

static void
test_read (void)
{
  static const struct {
    const char *text;
    TmUnit unit;
    gboolean good;
    TmDepthKind depth;
    gint64 at;
    guint hour;
  } cases[] = {
    { "", TM_UNIT_MM, TRUE, TM_DEPTH_NONE, 0, 0 },
    { "mouth", TM_UNIT_MM, TRUE, TM_DEPTH_MOUTH, 0, 0 },
    { "middle/3", TM_UNIT_IN, TRUE, TM_DEPTH_MIDDLE, 0, 3 },
    { "bottom/12", TM_UNIT_IN, TRUE, TM_DEPTH_BOTTOM, 0, 12 },
    { "Mouth/1", TM_UNIT_MM, TRUE, TM_DEPTH_MOUTH, 0, 1 },
    { "/6", TM_UNIT_MM, TRUE, TM_DEPTH_NONE, 0, 6 },
    { "12.5/9", TM_UNIT_MM, TRUE, TM_DEPTH_LENGTH, 12500000000, 9 },
    { "0.5", TM_UNIT_IN, TRUE, TM_DEPTH_LENGTH, 12700000000, 0 },
    { "0.5 in/12", TM_UNIT_MM, TRUE, TM_DEPTH_LENGTH, 12700000000, 12 },
    { "0", TM_UNIT_MM, TRUE, TM_DEPTH_LENGTH, 0, 0 },
    { "mouth/", TM_UNIT_MM, FALSE, 0, 0, 0 },
    { "mouth/0", TM_UNIT_MM, FALSE, 0, 0, 0 },
    { "mouth/13", TM_UNIT_MM, FALSE, 0, 0, 0 },
    { "mouth/012", TM_UNIT_MM, FALSE, 0, 0, 0 },
    { "mouth/3/4", TM_UNIT_MM, FALSE, 0, 0, 0 },
    { "mouth/+3", TM_UNIT_MM, FALSE, 0, 0, 0 },
    { "-1", TM_UNIT_MM, FALSE, 0, 0, 0 },
    { "top", TM_UNIT_MM, FALSE, 0, 0, 0 },
    { "5 deg", TM_UNIT_MM, FALSE, 0, 0, 0 },
    { "0000000000000000000000000000000000000000000000000000000000000001", TM_UNIT_MM, FALSE, 0, 0, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmStation station = { TM_DEPTH_BOTTOM, TM_QUANTITY_NONE, 99 };
      gboolean good = tm_station_read (cases[i].text, cases[i].unit, &station);

      g_test_message ("“%s”", cases[i].text);
      g_assert_cmpint (good, ==, cases[i].good);
      g_assert_cmpuint (station.hour, ==, good ? cases[i].hour : 99);
      g_assert_cmpint (station.depth, ==, good ? cases[i].depth : TM_DEPTH_BOTTOM);
      g_assert_cmpint (station.at.count, ==, cases[i].at);
    }
}

/* Clock 12/3/6/9 are two directions, not four. */
static void
test_diameter (void)
{
  for (guint hour = 1; hour <= 12; hour++)
    {
      TmStation station = { TM_DEPTH_MOUTH, TM_QUANTITY_NONE, hour };
      TmStation opposite = { TM_DEPTH_MOUTH, TM_QUANTITY_NONE, hour > 6 ? hour - 6 : hour + 6 };

      g_assert_cmpuint (tm_station_diameter (&station), ==, tm_station_diameter (&opposite));
      g_assert_cmpuint (tm_station_diameter (&station), ==, hour % 6);
    }
}

static void
test_same (void)
{
  g_assert_true (tm_station_same ("25/12", "25.00/12", TM_UNIT_MM));
  g_assert_true (tm_station_same ("1/3", "25.4 mm/3", TM_UNIT_IN));
  g_assert_true (tm_station_same ("left side", "left side", TM_UNIT_MM));
  g_assert_false (tm_station_same ("mouth/12", "mouth/6", TM_UNIT_MM));
  g_assert_false (tm_station_same ("mouth", "", TM_UNIT_MM));
}

/* Zero-bounded: the lower limit is absent, the band is the upper limit. max / min: no band. */
static void
test_limits (void)
{
  static const struct {
    TmKind kind;
    const char *lower, *upper;
    gboolean has_lower, has_upper, zero_bounded;
    gint64 band;
  } cases[] = {
    { TM_KIND_BORE, "25.000", "25.021", TRUE, TRUE, FALSE, 21000000 },
    { TM_KIND_LENGTH, NULL, "12", FALSE, TRUE, FALSE, 0 },
    { TM_KIND_LENGTH, "3", NULL, TRUE, FALSE, FALSE, 0 },
    { TM_KIND_POSITION, NULL, "0.2", FALSE, TRUE, TRUE, 200000000 },
    { TM_KIND_FORM, "0", "0.01", FALSE, TRUE, TRUE, 10000000 },
    { TM_KIND_ROUGHNESS, "0.8", "1.6", TRUE, TRUE, FALSE, 800000000 },
    { TM_KIND_ROUGHNESS, "0.8", NULL, TRUE, FALSE, FALSE, 0 },
    { TM_KIND_NOTE, NULL, NULL, FALSE, FALSE, FALSE, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      TmFeature *feature = add_feature (job, "1", cases[i].kind, cases[i].lower, cases[i].upper, "");
      TmLimits limits = tm_feature_limits (feature);

      g_assert_cmpint (limits.has_lower, ==, cases[i].has_lower);
      g_assert_cmpint (limits.has_upper, ==, cases[i].has_upper);
      g_assert_cmpint (limits.zero_bounded, ==, cases[i].zero_bounded);
      g_assert_cmpint (tm_limits_band (&limits), ==, cases[i].band);
    }
}

static void
collect (TmJob *job, TmFeature *feature, TmSizes *sizes)
{
  tm_sizes_collect (feature, tm_job_readings_at (job, first_piece (job), feature, 1), sizes);
}

static void
test_collect (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");
  g_auto (TmSizes) sizes = { 0 };

  collect (job, bore, &sizes);
  g_assert_cmpuint (sizes.n_stations, ==, 0);
  read_size (job, bore, "mouth/12", "25.012", "");
  read_size (job, bore, "bottom/12", "25.008", "");
  read_size (job, bore, "mouth/12", "25.0135", "");
  read_size (job, bore, "10/12", "25.02", "");
  read_size (job, bore, "mouth/12", "25.012", "");
  read_size (job, bore, "10.0/12", "25.02", "");
  collect (job, bore, &sizes);
  g_assert_cmpuint (sizes.n_stations, ==, 3);
  g_assert_cmpstr (sizes.stations[0].station, ==, "mouth/12");
  g_assert_cmpuint (sizes.stations[0].n, ==, 3);
  g_assert_true (sizes.stations[0].sum == (TmWide)75037500000);
  g_assert_cmpuint (sizes.stations[0].decimals, ==, 4);
  /* 0, 1.5, 0 µm: s = 1.5/√3 µm. */
  g_assert_cmpfloat_with_epsilon (sizes.stations[0].spread, 1.5e6 / sqrt (3), 1e-6);
  g_assert_cmpuint (sizes.stations[2].n, ==, 2);
  g_assert_cmpfloat (sizes.stations[2].spread, ==, 0);
  g_assert_cmpuint (sizes.smallest, ==, 1);
  g_assert_cmpuint (sizes.largest, ==, 2);
}

/* Means are compared as fractions: 1/3 pm apart is apart. */
static void
test_extremes_are_exact (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");
  g_auto (TmSizes) sizes = { 0 };

  read_size (job, bore, "mouth", "25.000000000", "");
  read_size (job, bore, "mouth", "25.000000000", "");
  read_size (job, bore, "mouth", "25.000000001", "");
  read_size (job, bore, "bottom", "25.000000000", "");
  collect (job, bore, &sizes);
  g_assert_cmpuint (sizes.largest, ==, 0);
  g_assert_cmpuint (sizes.smallest, ==, 1);
  g_assert_cmpint (tm_local_size_compare (&sizes.stations[0], 25000000000), ==, 1);
  g_assert_cmpint (tm_local_size_compare (&sizes.stations[0], 25000000001), ==, -1);
  g_assert_cmpfloat_with_epsilon (tm_local_size_beyond (&sizes.stations[0], 25000000000), 1.0 / 3, 1e-15);
}

static void
test_only_what_counts (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");
  TmReading *wrong = read_size (job, bore, "mouth", "25.500", "");
  TmReading *corrected = new_reading (job, bore, "mouth", "");
  TmReading *gone = read_size (job, bore, "bottom", "25.010", "");
  g_auto (TmSizes) sizes = { 0 };

  corrected->value = quantity ("25.005", TM_UNIT_MM);
  corrected->row.replaces = wrong->row.id;
  corrected->row.reason = "misread";
  g_assert_cmpint (tm_job_add_reading (job, corrected), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_withdraw (job, &gone->row, "AB", "", "chip in the bore"), ==, TM_ADD_OK);
  collect (job, bore, &sizes);
  g_assert_cmpuint (sizes.n_stations, ==, 1);
  g_assert_true (sizes.stations[0].sum == (TmWide)25005000000);
}

/* Methods are never averaged: the assigned one counts where it was used, else the latest. */
static void
test_methods_at_one_station (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "A");
  g_auto (TmSizes) sizes = { 0 };

  read_size (job, bore, "mouth", "25.001", "B");
  read_size (job, bore, "mouth", "25.002", "");
  read_size (job, bore, "mouth", "25.004", "A");
  read_size (job, bore, "mouth", "25.009", "C");
  read_size (job, bore, "bottom", "25.011", "B");
  read_size (job, bore, "bottom", "25.012", "C");
  collect (job, bore, &sizes);
  g_assert_cmpstr (sizes.stations[0].method_name, ==, "A");
  g_assert_cmpuint (sizes.stations[0].n, ==, 2);
  g_assert_true (sizes.stations[0].sum == (TmWide)50006000000);
  g_assert_cmpstr (sizes.stations[1].method_name, ==, "C");
  g_assert_true (sizes.stations[1].sum == (TmWide)25012000000);
}

/* The same job in inch digits, one reading typed in millimetres: the finest digits are kept. */
static void
test_mixed_units (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "19", "20", "");
  g_auto (TmSizes) sizes = { 0 };

  bore->unit = TM_UNIT_IN;
  read_size (job, bore, "", "19.01 mm", "");
  read_size (job, bore, "", "0.7486", "");
  collect (job, bore, &sizes);
  g_assert_cmpint (sizes.stations[0].unit, ==, TM_UNIT_IN);
  g_assert_cmpuint (sizes.stations[0].decimals, ==, 4);
}

/* Twenty thousand stations at one place: found by hash, in the same way as few. */
static void
test_many_stations (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");
  g_auto (TmSizes) sizes = { 0 };

  for (guint i = 0; i < 20000; i++)
    {
      g_autofree char *station = g_strdup_printf ("%u.%03u", i / 1000, i % 1000);
      g_autofree char *longer = g_strconcat (station, "0", NULL);

      read_size (job, bore, station, "25.010", "");
      read_size (job, bore, longer, "25.012", "");
    }
  read_size (job, bore, "no station", "25.010", "");
  read_size (job, bore, "no station", "25.010", "");
  collect (job, bore, &sizes);
  g_assert_cmpuint (sizes.n_stations, ==, 20001);
  g_assert_cmpuint (sizes.stations[7].n, ==, 2);
  g_assert_cmpuint (sizes.stations[20000].n, ==, 2);
}

/* -------- Form -------- */

typedef struct {
  const char *station, *value;
} At;

static void
collect_from (const At *at, TmKind kind, TmSizes *sizes, gboolean *has_taper, double *taper,
              gboolean *has_round, double *out_of_round)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *feature = add_feature (job, "1", kind, "25.000", "25.021", "");

  for (guint i = 0; at[i].station != NULL; i++)
    read_size (job, feature, at[i].station, at[i].value, "");
  collect (job, feature, sizes);
  *has_taper = tm_form_taper (feature, sizes, taper);
  *has_round = tm_form_out_of_round (feature, sizes, out_of_round);
  tm_sizes_clear (sizes);
}

static void
test_form (void)
{
  static const struct {
    TmKind kind;
    At at[6];
    gboolean has_taper;
    double taper;
    gboolean has_round;
    double out_of_round;
  } cases[] = {
    { TM_KIND_BORE,
      { { "mouth/12", "25.012" },
        { "mouth/3", "25.010" },
        { "bottom/12", "25.008" },
        { "bottom/3", "25.005" } },
      TRUE,
      4.5e6,
      TRUE,
      3e6 },
    /* 12 and 6 are one diameter: no direction to compare. */
    { TM_KIND_BORE, { { "mouth/12", "25.012" }, { "mouth/6", "25.010" } }, FALSE, 0, FALSE, 0 },
    /* …and are averaged before the other direction is compared. */
    { TM_KIND_SHAFT,
      { { "middle/12", "25.012" }, { "middle/6", "25.010" }, { "middle/9", "25.004" } },
      FALSE,
      0,
      TRUE,
      7e6 },
    /* Directions at different depths are not compared. */
    { TM_KIND_BORE, { { "mouth/12", "25.012" }, { "bottom/3", "25.018" } }, TRUE, -6e6, FALSE, 0 },
    { TM_KIND_BORE, { { "2", "25.012" }, { "15", "25.011" }, { "30", "25.009" } }, TRUE, 3e6, FALSE, 0 },
    { TM_KIND_BORE, { { "mouth", "25.012" }, { "30", "25.009" } }, TRUE, 3e6, FALSE, 0 },
    { TM_KIND_BORE, { { "30/12", "25.012" }, { "30/3", "25.009" } }, FALSE, 0, TRUE, 3e6 },
    { TM_KIND_BORE, { { "", "25.012" } }, FALSE, 0, FALSE, 0 },
    { TM_KIND_LENGTH, { { "mouth/12", "25.012" }, { "mouth/3", "25.010" } }, FALSE, 0, FALSE, 0 },
    { TM_KIND_FORM, { { "mouth", "25.012" }, { "bottom", "25.010" } }, FALSE, 0, FALSE, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmSizes sizes;
      gboolean has_taper, has_round;
      double taper = 0, out_of_round = 0;

      collect_from (cases[i].at, cases[i].kind, &sizes, &has_taper, &taper, &has_round, &out_of_round);
      g_assert_cmpint (has_taper, ==, cases[i].has_taper);
      g_assert_cmpfloat_with_epsilon (taper, cases[i].taper, 1e-3);
      g_assert_cmpint (has_round, ==, cases[i].has_round);
      g_assert_cmpfloat_with_epsilon (out_of_round, cases[i].out_of_round, 1e-3);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/station/read", test_read);
  g_test_add_func ("/core/station/diameter", test_diameter);
  g_test_add_func ("/core/station/same", test_same);
  g_test_add_func ("/core/station/limits", test_limits);
  g_test_add_func ("/core/station/collect", test_collect);
  g_test_add_func ("/core/station/extremes-are-exact", test_extremes_are_exact);
  g_test_add_func ("/core/station/only-what-counts", test_only_what_counts);
  g_test_add_func ("/core/station/methods-at-one-station", test_methods_at_one_station);
  g_test_add_func ("/core/station/mixed-units", test_mixed_units);
  g_test_add_func ("/core/station/many-stations", test_many_stations);
  g_test_add_func ("/core/station/form", test_form);
  return g_test_run ();
}
