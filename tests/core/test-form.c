/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The form of a place: ovals, taper on a length, what gauges of two and of three points see of lobes, and
 * the handling errors that have a sign.
 */

#include <math.h>
#include <string.h>

#include "core-contact.h"
#include "core-form.h"
#include "core-handling.h"
#include "judge-support.h"

#define PM_PER_MM 1e9

/* r (t) = radius + amplitude · cos (lobes · t + phase) + eccentric · cos t; mm. */
typedef struct {
  double radius;
  guint lobes;
  double amplitude;
  double phase;
  double eccentric;
} Profile;

static double
find_radius (const Profile *profile, double t)
{
  return profile->radius + profile->amplitude * cos (profile->lobes * t + profile->phase)
         + profile->eccentric * cos (t + 0.5);
}

/* What a two-point gauge reads across @t. */
static double
read_two_points (const Profile *profile, double t)
{
  return find_radius (profile, t) + find_radius (profile, t + G_PI);
}

/* What a gauge of three points 120° apart reads: twice the mean of its three radii. */
static double
read_three_points (const Profile *profile, double t)
{
  double sum = 0;

  for (int i = 0; i < 3; i++)
    sum += find_radius (profile, t + i * 2 * G_PI / 3);
  return sum * 2 / 3;
}

static double
find_range (const Profile *profile, double (*read) (const Profile *profile, double t))
{
  double low = INFINITY, high = -INFINITY;

  for (int i = 0; i < 3600; i++)
    {
      const double size = read (profile, i * G_PI / 1800);
      low = MIN (low, size);
      high = MAX (high, size);
    }
  return high - low;
}

/* -------- Bores read at clock hours -------- */

static TmFeature *
add_bore (TmJob *job, const char *method)
{
  return add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", method);
}

static void
read_count (TmJob *job, TmFeature *feature, const char *station, double mm, const char *method)
{
  TmReading *reading = new_reading (job, feature, station, method);

  reading->value = tm_quantity_new ((gint64)llround (mm * PM_PER_MM), TM_UNIT_MM, 12);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
}

/* Reads @profile by two points at each of @hours, up to 0. */
static void
read_hours (TmJob *job, TmFeature *feature, const char *depth, const Profile *profile, const guint *hours)
{
  for (guint i = 0; hours[i] != 0; i++)
    {
      g_autofree char *station = g_strdup_printf ("%s/%u", depth, hours[i]);
      read_count (job, feature, station, read_two_points (profile, hours[i] * G_PI / 6), "");
    }
}

static void
collect (const TmJob *job, const TmFeature *feature, TmSizes *sizes)
{
  tm_sizes_collect (feature, tm_job_readings_at (job, first_piece (job), feature, 1), sizes);
}

static const char *
find_kind (TmContact contact, gboolean inside)
{
  guint n;
  const TmGaugeKind *kinds = tm_gauge_kinds (&n);

  for (guint i = 0; i < n; i++)
    if (kinds[i].contact == contact && kinds[i].measures_inside == inside)
      return kinds[i].word;
  g_assert_not_reached ();
}

static void
add_gauge_of (TmJob *job, const char *tag, TmContact contact)
{
  add_gauge (job, tag, "0.001", "0.002")->kind = tm_job_intern (job, find_kind (contact, TRUE));
}

/* D (θ) = D0 + a cos 2θ + b sin 2θ of our own making comes back to the rounding of its readings. */
static void
test_exact_ovals (void)
{
  static const guint all[] = { 12, 1, 2, 3, 4, 5, 0 }, three[] = { 12, 2, 4, 0 }, mixed[] = { 7, 11, 3, 0 };
  static const struct {
    const guint *hours;
    guint n;
    double amplitude;
    double towards; /* degrees */
  } cases[] = {
    { all, 6, 0.002, 40 },    { three, 3, 0.002, 0 },      { three, 3, 0.0005, 90 },
    { mixed, 3, 0.004, 170 }, { all, 6, 0.000001, 123.4 }, { three, 3, 0.1, 45 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      TmFeature *bore = add_bore (job, "");
      const Profile profile = { 12.5, 2, cases[i].amplitude, -2 * cases[i].towards * G_PI / 180, 0 };
      g_auto (TmSizes) sizes = { 0 };
      g_autoptr (GArray) ovals = NULL;
      const TmOval *oval;

      read_hours (job, bore, "mouth", &profile, cases[i].hours);
      collect (job, bore, &sizes);
      ovals = tm_form_ovals (job, bore, &sizes);
      g_assert_cmpuint (ovals->len, ==, 1);
      oval = &g_array_index (ovals, TmOval, 0);
      g_assert_cmpstr (oval->depth, ==, "mouth");
      g_assert_cmpint (oval->station.depth, ==, TM_DEPTH_MOUTH);
      g_assert_cmpuint (oval->n_directions, ==, cases[i].n);
      /* Readings are whole picometres: half of one at most is lost in each. */
      assert_near ((double)oval->reference + oval->mean, 25e9, 2.0);
      assert_near (oval->ovality, 4 * cases[i].amplitude * PM_PER_MM, 4.0);
      /* 0° and 180° are one direction. */
      assert_near (remainder (oval->direction - cases[i].towards, 180), 0, 1e-6 / cases[i].amplitude);
      g_assert_cmpfloat (oval->residual, <, 2.0);
    }
}

/* An oval's diameters spread by twice its circularity deviation (the difference of its radii). */
static void
test_spread_of_oval (void)
{
  static const guint hours[] = { 12, 3, 0 };
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "");
  const Profile profile = { 12.5, 2, 0.003, 0, 0 };
  const double circularity = find_range (&profile, find_radius);
  g_auto (TmSizes) sizes = { 0 };
  double spread = 0;

  read_hours (job, bore, "mouth", &profile, hours);
  collect (job, bore, &sizes);
  g_assert_true (tm_form_out_of_round (bore, &sizes, &spread));
  assert_near (circularity, 0.006, 1e-9);
  assert_near (spread, 2 * circularity * PM_PER_MM, 2.0);
}

/* Two readings at 90° find an oval only by luck of its direction: at 45° they differ by nothing, along
 * the axes by four times the amplitude.  A third direction tells. */
static void
test_two_directions_may_miss (void)
{
  static const guint two[] = { 12, 3, 0 }, more[] = { 2, 0 };
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "");
  const Profile profile = { 12.5, 2, 0.003, -G_PI / 2, 0 };
  g_auto (TmSizes) sizes = { 0 }, third = { 0 };
  g_autoptr (GArray) none = NULL, ovals = NULL;
  double spread = NAN;

  read_hours (job, bore, "mouth", &profile, two);
  collect (job, bore, &sizes);
  g_assert_true (tm_form_out_of_round (bore, &sizes, &spread));
  assert_near (spread, 0, 2.0);
  none = tm_form_ovals (job, bore, &sizes);
  g_assert_cmpuint (none->len, ==, 0);
  read_hours (job, bore, "mouth", &profile, more);
  collect (job, bore, &third);
  ovals = tm_form_ovals (job, bore, &third);
  g_assert_cmpuint (ovals->len, ==, 1);
  assert_near (g_array_index (ovals, TmOval, 0).ovality, 0.012 * PM_PER_MM, 4.0);
  assert_near (g_array_index (ovals, TmOval, 0).direction, 45, 1e-3);
}

/* Sections recomputed from their profiles (r (t) in mm): three lobes, five lobes, three lobes off centre.
 * Every two-point diameter is 25.000000; the largest circle that goes in is 24.992, 24.994, 24.996. */
static void
test_two_points_see_no_odd_lobes (void)
{
  static const guint hours[] = { 12, 1, 2, 3, 4, 5, 6, 0 };
  static const struct {
    Profile profile;
    double roundness; /* minimum zone, mm */
  } sections[] = {
    { { 12.5, 3, 0.004, 0, 0 }, 0.008 },
    { { 12.5, 5, 0.003, 0.3, 0 }, 0.006 },
    { { 12.5, 3, 0.002, 1.0, 0.010 }, 0.004 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (sections); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      TmFeature *bore = add_bore (job, "");
      Profile centred = sections[i].profile;
      g_auto (TmSizes) sizes = { 0 };
      g_autoptr (GArray) ovals = NULL;
      double spread = NAN;

      centred.eccentric = 0; /* where the bore lies is no part of its form */
      assert_near (find_range (&centred, find_radius), sections[i].roundness, 5e-7);
      assert_near (find_range (&sections[i].profile, read_two_points), 0, 1e-9);
      read_hours (job, bore, "mouth", &sections[i].profile, hours);
      collect (job, bore, &sizes);
      for (guint s = 0; s < sizes.n_stations; s++)
        assert_near (tm_local_size_beyond (&sizes.stations[s], G_GINT64_CONSTANT (25000000000)), 0, 1.0);
      g_assert_true (tm_form_out_of_round (bore, &sizes, &spread));
      assert_near (spread, 0, 1.0);
      ovals = tm_form_ovals (job, bore, &sizes);
      g_assert_cmpuint (ovals->len, ==, 1);
      assert_near (g_array_index (ovals, TmOval, 0).ovality, 0, 2.0);
    }
}

/* f = 1 + cos n (90° + θ/2) / sin (θ/2): how an indicator over a V of angle θ moves, per peak to valley of
 * n lobes (Journal of the Japan Society of Precision Engineering 43-514-1167; a simulation agrees).  A V
 * of 60° touches as a three-point gauge does, one of 180° as a two-point gauge.  What such a gauge reads
 * as size is f over the f of a size alone (n = 0), twice. */
static void
test_lobes_by_contact (void)
{
  static const struct {
    guint lobes;
    double angle;
    double f;
  } printed[] = {
    { 2, 60, 0 },         { 3, 60, 3 },  { 4, 60, 0 },  { 5, 60, 0 },         { 6, 60, 3 },
    { 7, 60, 0 },         { 8, 60, 0 },  { 9, 60, 3 },  { 2, 180, 2 },        { 3, 180, 0 },
    { 4, 180, 2 },        { 5, 180, 0 }, { 6, 180, 2 }, { 7, 180, 0 },        { 8, 180, 2 },
    { 9, 180, 0 },        { 2, 90, 1 },  { 3, 90, 2 },  { 4, 90, -0.414214 }, { 5, 108, 2.236068 },
    { 2, 120, 1.577350 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (printed); i++)
    {
      const double half = printed[i].angle / 2 * G_PI / 180;
      const double f = 1 + cos (printed[i].lobes * (G_PI / 2 + half)) / sin (half);
      const double size_alone = 1 + 1 / sin (half);
      const Profile profile = { 12.5, printed[i].lobes, 0.001, 0.7, 0 };
      const double peak_to_valley = 0.002;

      assert_near (f, printed[i].f, 6e-7);
      if (printed[i].angle == 60)
        assert_near (find_range (&profile, read_three_points), fabs (f) / size_alone * 2 * peak_to_valley,
                     5e-7);
      if (printed[i].angle == 180)
        assert_near (find_range (&profile, read_two_points), fabs (f) / size_alone * 2 * peak_to_valley,
                     5e-7);
    }
}

/* -------- Which readings make an oval -------- */

static void
test_which_readings (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "TWO");
  g_auto (TmSizes) cross = { 0 }, both = { 0 }, all = { 0 };
  g_autoptr (GArray) of_cross = NULL, of_both = NULL, of_all = NULL;

  add_gauge_of (job, "TWO", TM_CONTACT_TWO_POINT);
  add_gauge_of (job, "THREE", TM_CONTACT_THREE_POINT);
  /* Clock 12, 3, 6 and 9 are two directions. */
  for (guint hour = 3; hour <= 12; hour += 3)
    {
      g_autofree char *station = g_strdup_printf ("bottom/%u", hour);
      read_size (job, bore, station, "25.010", "TWO");
    }
  collect (job, bore, &cross);
  of_cross = tm_form_ovals (job, bore, &cross);
  g_assert_cmpuint (of_cross->len, ==, 0);
  /* A third direction by three points does not count, nor one without an hour, nor at another depth. */
  read_size (job, bore, "bottom/2", "25.012", "THREE");
  read_size (job, bore, "bottom", "25.013", "TWO");
  read_size (job, bore, "mouth/2", "25.014", "TWO");
  collect (job, bore, &both);
  of_both = tm_form_ovals (job, bore, &both);
  g_assert_cmpuint (of_both->len, ==, 0);
  read_size (job, bore, "bottom/1", "25.011", "TWO");
  collect (job, bore, &all);
  of_all = tm_form_ovals (job, bore, &all);
  g_assert_cmpuint (of_all->len, ==, 1);
  g_assert_cmpuint (g_array_index (of_all, TmOval, 0).n_directions, ==, 3);
}

/* Opposite readings that differ leave the fit a residual of half their difference. */
static void
test_residual (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "");
  g_auto (TmSizes) sizes = { 0 };
  g_autoptr (GArray) ovals = NULL;

  read_size (job, bore, "12.5/12", "25.010", "");
  read_size (job, bore, "12.5/6", "25.012", "");
  read_size (job, bore, "12.50/2", "25.011", "");
  read_size (job, bore, "12.5/4", "25.011", "");
  collect (job, bore, &sizes);
  ovals = tm_form_ovals (job, bore, &sizes);
  g_assert_cmpuint (ovals->len, ==, 1);
  g_assert_cmpstr (g_array_index (ovals, TmOval, 0).depth, ==, "12.5");
  assert_near (g_array_index (ovals, TmOval, 0).ovality, 0, 1.0);
  assert_near (g_array_index (ovals, TmOval, 0).residual, 1e6, 1.0);
}

static void
test_depths_in_order (void)
{
  static const char *const depths[] = { "bottom", "20", "5", "mouth" };
  static const char *const sorted[] = { "mouth", "bottom", "5", "20" };
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "");
  g_auto (TmSizes) sizes = { 0 };
  g_autoptr (GArray) ovals = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (depths); i++)
    for (guint hour = 2; hour <= 6; hour += 2)
      {
        g_autofree char *station = g_strdup_printf ("%s/%u", depths[i], hour);
        read_size (job, bore, station, "25.010", "");
      }
  collect (job, bore, &sizes);
  ovals = tm_form_ovals (job, bore, &sizes);
  g_assert_cmpuint (ovals->len, ==, G_N_ELEMENTS (sorted));
  for (guint i = 0; i < ovals->len; i++)
    g_assert_cmpstr (g_array_index (ovals, TmOval, i).depth, ==, sorted[i]);
}

static void
test_no_oval_of_a_length (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *width = add_feature (job, "2", TM_KIND_LENGTH, "61.9", "62.1", "");
  g_auto (TmSizes) sizes = { 0 };
  g_autoptr (GArray) ovals = NULL;

  for (guint hour = 1; hour <= 3; hour++)
    {
      g_autofree char *station = g_strdup_printf ("/%u", hour);
      read_size (job, width, station, "62.01", "");
    }
  collect (job, width, &sizes);
  ovals = tm_form_ovals (job, width, &sizes);
  g_assert_cmpuint (ovals->len, ==, 0);
}

/* -------- Taper on a length -------- */

static void
test_slope (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "");
  g_auto (TmSizes) sizes = { 0 }, worded = { 0 };
  double slope = NAN;

  read_size (job, bore, "5", "25.010", "");
  collect (job, bore, &sizes);
  g_assert_false (tm_form_taper_slope (bore, &sizes, &slope));
  tm_sizes_clear (&sizes);
  read_size (job, bore, "45", "25.018", "");
  read_size (job, bore, "20", "25.011", "");
  collect (job, bore, &sizes);
  g_assert_true (tm_form_taper_slope (bore, &sizes, &slope));
  /* 0.008 mm on 40 mm, opening to the bottom: 1 in 5000. */
  assert_near (slope, -1.0 / 5000, 1e-12);
  read_size (job, bore, "mouth", "25.010", "");
  collect (job, bore, &worded);
  g_assert_false (tm_form_taper_slope (bore, &worded, &slope));
}

/* -------- What is not seen, and the pin that is asked for -------- */

static void
try_pin (TmJob *job, TmFeature *feature, const char *size, TmPinSign sign, gboolean went)
{
  TmPinTrial *trial = tm_pin_trial_new ();

  trial->row.piece = first_piece (job);
  trial->row.feature = feature;
  trial->place = 1;
  trial->size = quantity (size, TM_UNIT_MM);
  trial->pin_class = "X";
  trial->sign = sign;
  trial->went = went;
  g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
}

static TmBlind
find_blind (const TmJob *job, const TmFeature *feature)
{
  g_auto (TmSizes) sizes = { 0 };

  collect (job, feature, &sizes);
  return tm_form_blind (job, feature, &sizes);
}

static void
test_blind (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "TWO");
  TmFeature *other = add_feature (job, "2", TM_KIND_BORE, "10", "10.01", "THREE");
  TmFeature *width = add_feature (job, "3", TM_KIND_LENGTH, "10", "10.01", "TWO");
  TmFeature *plain = add_feature (job, "4", TM_KIND_BORE, "10", "10.01", "");
  TmReading *three;

  add_gauge_of (job, "TWO", TM_CONTACT_TWO_POINT);
  add_gauge_of (job, "THREE", TM_CONTACT_THREE_POINT);
  g_assert_cmpint (find_blind (job, bore), ==, TM_BLIND_NONE);
  read_size (job, bore, "mouth", "25.010", "");
  read_size (job, other, "mouth", "10.005", "");
  read_size (job, width, "", "10.005", "");
  read_size (job, plain, "", "10.005", "");
  g_assert_cmpint (find_blind (job, bore), ==, TM_BLIND_ODD_LOBES);
  g_assert_cmpint (find_blind (job, other), ==, TM_BLIND_OVAL);
  g_assert_cmpint (find_blind (job, width), ==, TM_BLIND_NONE);
  g_assert_cmpint (find_blind (job, plain), ==, TM_BLIND_NONE);
  /* Both kinds together see both, even where the other one's reading is not the one that speaks. */
  three = read_size (job, bore, "mouth", "25.009", "THREE");
  g_assert_cmpint (find_blind (job, bore), ==, TM_BLIND_NONE);
  g_assert_cmpint (tm_job_withdraw (job, &three->row, "AB", "", "chip"), ==, TM_ADD_OK);
  g_assert_cmpint (find_blind (job, bore), ==, TM_BLIND_ODD_LOBES);
  /* A pin does not show that an oval is nowhere too wide. */
  try_pin (job, other, "10.001", TM_PIN_PLUS, TRUE);
  g_assert_cmpint (find_blind (job, other), ==, TM_BLIND_OVAL);
  g_assert_cmpstr (tm_blind_text (TM_BLIND_NONE), ==, "");
  g_assert_nonnull (strstr (tm_blind_text (TM_BLIND_ODD_LOBES), "odd number of lobes"));
  g_assert_nonnull (strstr (tm_blind_text (TM_BLIND_OVAL), "oval"));
}

/* Perfect form at the maximum material size (ISO 14405-1 envelope; ASME Y14.5 Rule #1) is shown by a pin
 * that went and cannot be smaller than the bore's lower limit; readings do not show it. */
static void
test_asks_pin (void)
{
  static const struct {
    gboolean envelope;
    TmStandard standard;
    gboolean asked;
  } cases[] = {
    { FALSE, TM_STANDARD_ISO, FALSE },
    { TRUE, TM_STANDARD_ISO, TRUE },
    { FALSE, TM_STANDARD_ASME, TRUE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      TmFeature *bore = add_bore (job, "TWO");
      const TmPiece *piece = first_piece (job);

      add_gauge_of (job, "TWO", TM_CONTACT_TWO_POINT);
      job->standard = cases[i].standard;
      bore->envelope = cases[i].envelope;
      read_size (job, bore, "mouth", "25.010", "");
      g_assert_cmpint (tm_form_asks_pin (job, piece, bore, 1), ==, cases[i].asked);
      /* A minus pin may be smaller than it is marked, and one that stopped shows nothing. */
      try_pin (job, bore, "25.000", TM_PIN_MINUS, TRUE);
      try_pin (job, bore, "25.005", TM_PIN_PLUS, FALSE);
      g_assert_cmpint (tm_form_asks_pin (job, piece, bore, 1), ==, cases[i].asked);
      g_assert_cmpint (find_blind (job, bore), ==, TM_BLIND_ODD_LOBES);
      try_pin (job, bore, "25.000", TM_PIN_PLUS, TRUE);
      g_assert_false (tm_form_asks_pin (job, piece, bore, 1));
      g_assert_cmpint (find_blind (job, bore), ==, TM_BLIND_NONE);
    }
}

static void
test_asks_pin_where_it_can (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *open = add_feature (job, "1", TM_KIND_BORE, NULL, "25.021", "");
  TmFeature *unknown = add_feature (job, "2", TM_KIND_DIAMETER, "25.000", "25.021", "");
  TmFeature *flat = add_feature (job, "3", TM_KIND_FORM, NULL, "0.05", "");
  TmFeature *shaft = add_feature (job, "4", TM_KIND_SHAFT, "24.980", "25.000", "");

  job->standard = TM_STANDARD_ASME;
  g_assert_false (tm_form_asks_pin (job, first_piece (job), open, 1));
  g_assert_false (tm_form_asks_pin (job, first_piece (job), unknown, 1));
  g_assert_false (tm_form_asks_pin (job, first_piece (job), flat, 1));
  g_assert_true (tm_form_asks_pin (job, first_piece (job), shaft, 1));
}

/* -------- Contact and handling -------- */

static void
test_contact (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);

  add_gauge_of (job, "T", TM_CONTACT_THREE_POINT);
  add_gauge (job, "M", "0.001", "0.002")->kind = tm_job_intern (job, find_kind (TM_CONTACT_TWO_POINT, FALSE));
  add_gauge (job, "?", "0.001", "0.002")->kind = tm_job_intern (job, "something of our own");
  add_method (job, "transfer", "T,M", NULL, NULL);
  /* The gauge that touches is the first. */
  g_assert_cmpint (tm_method_contact (job, "transfer"), ==, TM_CONTACT_THREE_POINT);
  g_assert_cmpint (tm_method_contact (job, "M"), ==, TM_CONTACT_TWO_POINT);
  g_assert_cmpint (tm_method_contact (job, "?"), ==, TM_CONTACT_OTHER);
  g_assert_cmpint (tm_method_contact (job, "nobody's"), ==, TM_CONTACT_OTHER);
  g_assert_cmpint (tm_method_contact (job, ""), ==, TM_CONTACT_OTHER);
}

/* Recomputed from the elementary formulas, to the five digits given there. */
static void
test_handling_errors (void)
{
  static const struct {
    double diameter, tilt, error;
  } tilts[] = { { 25, 0.5, 0.00095 }, { 25, 1, 0.00381 }, { 25, 2, 0.01524 } };
  static const struct {
    double offset, error;
  } chords[] = { { 0.1, -0.00080 }, { 0.25, -0.00500 }, { 0.5, -0.02001 } };

  for (gsize i = 0; i < G_N_ELEMENTS (tilts); i++)
    {
      assert_near (tm_handling_tilt_error (tilts[i].diameter, tilts[i].tilt), tilts[i].error, 5e-6);
      g_assert_cmpfloat (tm_handling_tilt_error (tilts[i].diameter, -tilts[i].tilt), >, 0);
    }
  assert_near (tm_handling_tilt_error (1, 1), 0.000152, 5e-7);
  for (gsize i = 0; i < G_N_ELEMENTS (chords); i++)
    assert_near (tm_handling_chord_error (25, chords[i].offset), chords[i].error, 5e-6);
  assert_near (tm_handling_chord_error (25, 12.5), -25, 1e-9);
  g_assert_cmpfloat (tm_handling_tilt_error (25, 0), ==, 0);
  g_assert_cmpfloat (tm_handling_chord_error (25, 0), ==, 0);
}

static void
test_handling_words (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "");
  TmFeature *shaft = add_feature (job, "2", TM_KIND_SHAFT, "24.980", "25.000", "");

  add_gauge_of (job, "TWO", TM_CONTACT_TWO_POINT);
  add_gauge_of (job, "THREE", TM_CONTACT_THREE_POINT);
  add_gauge_of (job, "CMM", TM_CONTACT_OTHER);
  g_assert_cmpint (tm_handling_of (job, bore, "TWO"), ==, TM_HANDLING_INSIDE);
  g_assert_cmpint (tm_handling_of (job, bore, "THREE"), ==, TM_HANDLING_LEANS);
  g_assert_cmpint (tm_handling_of (job, bore, "CMM"), ==, TM_HANDLING_NONE);
  g_assert_cmpint (tm_handling_of (job, bore, "nobody's"), ==, TM_HANDLING_NONE);
  g_assert_cmpint (tm_handling_of (job, shaft, "TWO"), ==, TM_HANDLING_NONE);
  g_assert_nonnull (strstr (tm_handling_text (TM_HANDLING_INSIDE), "largest across"));
  g_assert_nonnull (strstr (tm_handling_text (TM_HANDLING_INSIDE), "smallest along"));
  g_assert_cmpstr (tm_handling_text (TM_HANDLING_NONE), ==, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/form/exact-ovals", test_exact_ovals);
  g_test_add_func ("/form/spread-of-oval", test_spread_of_oval);
  g_test_add_func ("/form/two-directions-may-miss", test_two_directions_may_miss);
  g_test_add_func ("/form/two-points-see-no-odd-lobes", test_two_points_see_no_odd_lobes);
  g_test_add_func ("/form/lobes-by-contact", test_lobes_by_contact);
  g_test_add_func ("/form/which-readings", test_which_readings);
  g_test_add_func ("/form/residual", test_residual);
  g_test_add_func ("/form/depths-in-order", test_depths_in_order);
  g_test_add_func ("/form/no-oval-of-a-length", test_no_oval_of_a_length);
  g_test_add_func ("/form/slope", test_slope);
  g_test_add_func ("/form/blind", test_blind);
  g_test_add_func ("/form/asks-pin", test_asks_pin);
  g_test_add_func ("/form/asks-pin-where-it-can", test_asks_pin_where_it_can);
  g_test_add_func ("/form/contact", test_contact);
  g_test_add_func ("/handling/errors", test_handling_errors);
  g_test_add_func ("/handling/words", test_handling_words);
  return g_test_run ();
}
