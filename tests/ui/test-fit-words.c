/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fits, their chances and pairings in words.
 */

#include <math.h>
#include <string.h>

#include "app-fit-words.h"

#define assert_words(call, expected)          \
  G_STMT_START                                \
  {                                           \
    g_autofree char *words_ = (call);         \
    g_assert_cmpstr (words_, ==, (expected)); \
  }                                           \
  G_STMT_END

static const TmFitWant any = { FALSE };

static gint64
count_of (const char *text, TmUnit unit)
{
  TmQuantity quantity;

  g_assert_cmpint (tm_quantity_read (text, unit, &quantity), ==, TM_READ_OK);
  return quantity.count;
}

static TmFitWant
want_of (const char *least, const char *most, TmUnit unit)
{
  return (TmFitWant) { least != NULL, most != NULL, least != NULL ? count_of (least, unit) : 0,
                       most != NULL ? count_of (most, unit) : 0 };
}

/* Bore @least to @most µm over a shaft of 25 mm, u µm. */
static TmFitStatus
check_um (double least, double most, double u, const TmFitWant *want, TmFitCheck *out)
{
  gint64 shaft_size = count_of ("25", TM_UNIT_MM);
  TmFitPart shaft = { shaft_size, shaft_size, 0, NAN, 0, 20 };
  TmFitPart bore
      = { shaft_size + (gint64)(least * 1e6), shaft_size + (gint64)(most * 1e6), u * 1e6, NAN, 0, 20 };

  return tm_fit_check (&bore, &shaft, want, out);
}

static void
test_range (void)
{
  static const struct {
    double least, most, u;
    TmUnit unit;
    const char *words;
  } rows[] = {
    { 2, 14, 1.5, TM_UNIT_MM, "clearance 2 to 14 µm, ± 3.0 µm" },
    { 2.04, 14.01, 0, TM_UNIT_MM, "clearance 2 to 14.1 µm" },
    { 5, 5, 0, TM_UNIT_MM, "clearance 5 µm" },
    { -12, -3, 0, TM_UNIT_MM, "interference 3 to 12 µm" },
    { -12, 0, 0, TM_UNIT_MM, "interference 0 to 12 µm" },
    { 0, 12, 0, TM_UNIT_MM, "clearance 0 to 12 µm" },
    { -3, 9, 7.44, TM_UNIT_MM, "interference 3 µm to clearance 9 µm, ± 15 µm" },
    { 900, 1500, 0, TM_UNIT_MM, "clearance 0.9 to 1.5 mm" },
    { 2.54, 25.4, 1.27, TM_UNIT_IN, "clearance 1 to 10 tenths, ± 1.0 tenths" },
    { -25.4, -12.7, 0, TM_UNIT_IN, "interference 5 to 10 tenths" },
    { 254, 508, 0, TM_UNIT_IN, "clearance 0.01 to 0.02 in" },
  };
  TmFitCheck unknown = { NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TmFitCheck check;

      g_assert_cmpint (check_um (rows[i].least, rows[i].most, rows[i].u, &any, &check), ==, TM_FIT_OK);
      assert_words (tm_words_fit_range (&check, rows[i].unit), rows[i].words);
    }
  assert_words (tm_words_fit_range (&unknown, TM_UNIT_MM), "");
}

static void
test_want (void)
{
  static const struct {
    const char *least, *most, *words;
  } rows[] = {
    { NULL, NULL, "" },
    { "-0.035", "-0.001", "wanted: interference 1 to 35 µm" },
    { "0.005", "0.020", "wanted: clearance 5 to 20 µm" },
    { "-0.005", "0.020", "wanted: interference 5 µm to clearance 20 µm" },
    { "0.005", NULL, "wanted: clearance of 5 µm or more" },
    { NULL, "0.020", "wanted: clearance of 20 µm or less" },
    { "-0.030", NULL, "wanted: interference of 30 µm or less" },
    { NULL, "-0.010", "wanted: interference of 10 µm or more" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TmFitWant want = want_of (rows[i].least, rows[i].most, TM_UNIT_MM);

      assert_words (tm_words_fit_want (&want, TM_UNIT_MM), rows[i].words);
    }
}

/* One row a case: what it says, its chances, and how it goes in. */
static void
test_says (void)
{
  static const struct {
    double least, most, u;
    const char *want_least, *want_most;
    const char *says, *chances, *nature;
  } rows[] = {
    { 8, 12, 1, "0.000", "0.020", "Inside the wanted range",
      "inside over 99.9 %, too loose under 0.1 %, too tight under 0.1 %",
      "It goes in without force: over 99.9 %" },
    { 1, 2, 2, "0.000", "0.020", "May be too tight", "inside 69 %, too loose under 0.1 %, too tight 31 %",
      "It goes in without force: 69 %; it presses all over: 16 %" },
    { 18, 19, 1, "0.000", "0.020", "May be too loose", "inside 84 %, too loose 16 %, too tight under 0.1 %",
      "It goes in without force: over 99.9 %" },
    { -30, -28, 1, "-0.020", "-0.010", "Too tight",
      "inside under 0.1 %, too loose under 0.1 %, too tight over 99.9 %",
      "It presses all over: over 99.9 %" },
    { 0, 30, 1, "0.010", "0.020", "Too tight at one end, too loose at the other",
      "inside under 0.1 %, too loose over 99.9 %, too tight over 99.9 %", "It goes in without force: 50 %" },
    { 9, 11, 10, "0.000", "0.020", "May be too tight or too loose",
      "inside 63 %, too loose 18 %, too tight 18 %",
      "It goes in without force: 82 %; it presses all over: 14 %" },
    { 5, 5, 1, "0.000", NULL, "Inside the wanted range", "inside over 99.9 %, too tight under 0.1 %",
      "It goes in without force: over 99.9 %" },
    { 30, 30, 1, NULL, "0.020", "Too loose", "inside under 0.1 %, too loose over 99.9 %",
      "It goes in without force: over 99.9 %" },
    { 5, 9, 0, "0.000", "0.020", "Inside the wanted range", "all of it inside", "It goes in without force" },
    { -35, -1, 0, "-0.030", "-0.010", "May be too tight or too loose", "", "It presses all over" },
    { -35, -15, 0, "-0.030", "-0.010", "May be too tight", "", "It presses all over" },
    { -35, -31, 0, "-0.030", "-0.010", "Too tight", "all of it too tight", "It presses all over" },
    { -5, 5, 0, "-0.030", "-0.010", "Too loose", "all of it too loose", "It may have room or press" },
    { 5, 9, 0, NULL, NULL, "A clearance fit", "", "It goes in without force" },
    { -9, -5, 1, NULL, NULL, "An interference fit", "", "It presses all over: over 99.9 %" },
    { -5, 5, 0, NULL, NULL, "A transition fit: it may have room or press", "", "It may have room or press" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TmFitWant want = want_of (rows[i].want_least, rows[i].want_most, TM_UNIT_MM);
      TmFitCheck check;
      TmFitStatus status = check_um (rows[i].least, rows[i].most, rows[i].u, &want, &check);

      g_test_message ("row %u", (guint)i);
      g_assert_cmpint (status, ==, TM_FIT_OK);
      assert_words (tm_words_fit_says (status, &check, &want), rows[i].says);
      assert_words (tm_words_fit_chances (&check, &want), rows[i].chances);
      assert_words (tm_words_fit_nature (&check), rows[i].nature);
    }
}

/* No number is made of what is unknown. */
static void
test_unknown (void)
{
  TmFitWant want = want_of ("0.000", "0.020", TM_UNIT_MM);
  TmFitCheck check;

  g_assert_cmpint (check_um (5, 9, NAN, &want, &check), ==, TM_FIT_NO_METHOD);
  assert_words (tm_words_fit_range (&check, TM_UNIT_MM), "clearance 5 to 9 µm");
  assert_words (tm_words_fit_says (TM_FIT_NO_METHOD, &check, &want), "Inside the wanted range as read");
  assert_words (tm_words_fit_chances (&check, &want), "");
  assert_words (tm_words_fit_inside (&check, &want), "");
  assert_words (tm_words_fit_nature (&check), "It goes in without force");
  g_assert_cmpint (check_um (5, 29, NAN, &want, &check), ==, TM_FIT_NO_METHOD);
  assert_words (tm_words_fit_says (TM_FIT_NO_METHOD, &check, &want), "Outside the wanted range as read");
  for (TmFitStatus status = TM_FIT_OK; status < TM_N_FIT_STATUSES; status++)
    {
      TmFitCheck none = { NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN };
      g_autofree char *says = tm_words_fit_says (status, &none, &want);
      g_autofree char *word = tm_words_fit_status (status);

      g_assert_null (strstr (says, "nan"));
      /* A headline begins as one. */
      if (status != TM_FIT_OK && status != TM_FIT_NO_METHOD)
        {
          g_assert_true (g_ascii_isupper (says[0]));
          g_assert_cmpstr (says + 1, ==, word + 1);
        }
      assert_words (tm_words_fit_nature (&none), "");
    }
}

static void
test_inside (void)
{
  TmFitWant want = want_of ("0.000", "0.020", TM_UNIT_MM);
  TmFitCheck check;

  g_assert_cmpint (check_um (1, 2, 2, &want, &check), ==, TM_FIT_OK);
  assert_words (tm_words_fit_inside (&check, &want), "inside 69 %");
  assert_words (tm_words_fit_inside (&check, &any), "");
}

static void
test_pairing (void)
{
  TmPair pairs[] = { { .bore = 0, .shaft = 1 }, { .bore = 1, .shaft = TM_ASSIGN_NONE }, { .bore = 2 } };
  TmPairing pairing = { pairs, 3, 0.31, 1.26 };
  TmPairing none = { &pairs[1], 1, 0, 0 };

  assert_words (tm_words_pairing (&pairing), "Expected outside: 0.3 of 2 pairs; in the order they came: 1.3");
  assert_words (tm_words_pairing (&none), "");
}

static void
test_mate_size (void)
{
  TmMateSize mate = { "" };

  assert_words (tm_words_mate_size (&mate, TM_UNIT_MM), "");
  tm_quantity_read ("25.0270", TM_UNIT_MM, &mate.smallest);
  assert_words (tm_words_mate_size (&mate, TM_UNIT_MM), "25.0270 mm");
  tm_quantity_read ("25.029", TM_UNIT_MM, &mate.largest);
  tm_quantity_read ("0.002", TM_UNIT_MM, &mate.uncertainty);
  assert_words (tm_words_mate_size (&mate, TM_UNIT_MM), "25.0270 to 25.0290 mm ± 2 µm");
  tm_quantity_read ("0.7500", TM_UNIT_IN, &mate.smallest);
  tm_quantity_read ("0.7502", TM_UNIT_IN, &mate.largest);
  tm_quantity_read ("0.0001", TM_UNIT_IN, &mate.uncertainty);
  assert_words (tm_words_mate_size (&mate, TM_UNIT_IN), "0.7500 to 0.7502 in ± 1 tenths");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fit-words/range", test_range);
  g_test_add_func ("/fit-words/want", test_want);
  g_test_add_func ("/fit-words/says", test_says);
  g_test_add_func ("/fit-words/unknown", test_unknown);
  g_test_add_func ("/fit-words/inside", test_inside);
  g_test_add_func ("/fit-words/pairing", test_pairing);
  g_test_add_func ("/fit-words/mate-size", test_mate_size);
  return g_test_run ();
}
