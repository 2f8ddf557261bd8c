/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a press fit comes to, in words.  Needs no display.
 */

#include <math.h>
#include <string.h>

#include "app-press-words.h"

/* A bush 20/25 (E 110, ν 0.34) in a steel ring of 50 (E 207, ν 0.3), interference 0.020: p 16.728 MPa and
 * the bore closes by 16.897 µm (Lamé, recomputed; tests/core/test-press.c).  15 long and friction 0.1 make
 * π·25·15·16.728·0.1 = 1970.7 N and 24.63 N·m. */
static TmPressInput
make_bush (void)
{
  TmPressInput input;

  tm_press_input_init (&input);
  input.interference = input.interference_least = input.interference_most = 0.020;
  input.diameter = 25;
  input.hub_outside = 50;
  input.shaft_inside = 20;
  input.hub = (TmPressBody) { 207, 0.3, NAN, 11.7, NAN };
  input.shaft = (TmPressBody) { 110, 0.34, NAN, 18, NAN };
  input.length = 15;
  input.friction_least = input.friction_most = 0.1;
  return input;
}

static const TmPressRow *
find_row (const GPtrArray *rows, const char *title)
{
  for (guint i = 0; i < rows->len; i++)
    {
      const TmPressRow *row = g_ptr_array_index (rows, i);

      if (g_str_has_prefix (row->title, title))
        return row;
    }
  return NULL;
}

/* Nothing that is not a number is ever said. */
static void
assert_sane (const char *text)
{
  g_autofree char *lower = g_ascii_strdown (text, -1);

  g_assert_null (strstr (lower, "nan"));
  g_assert_null (strstr (lower, "inf"));
  g_assert_null (strstr (lower, "(null)"));
  g_assert_null (strstr (lower, "-0 "));
}

static void
assert_sane_rows (const GPtrArray *rows)
{
  for (guint i = 0; i < rows->len; i++)
    {
      const TmPressRow *row = g_ptr_array_index (rows, i);

      /* "Interference" begins like what is not to be said. */
      if (!g_str_has_prefix (row->title, "Interference"))
        assert_sane (row->sentence);
      for (guint c = 0; c < TM_N_PRESS_COLUMNS; c++)
        assert_sane (row->cells[c]);
    }
}

typedef struct {
  TmUnit unit;
  const char *title;
  const char *cell;
} Cell;

/* 16.728 MPa is 2426 psi, 1970.7 N 443.0 lbf, 24.63 N·m 18.17 lbf·ft (NIST SP 811), 0.016897 mm 0.00067 in.
 */
static const Cell cells[] = {
  { TM_UNIT_MM, "Interference", "0.0200 mm" },
  { TM_UNIT_MM, "Pressure", "16.7 MPa" },
  { TM_UNIT_MM, "Bore of the shaft closes", "0.0169 mm" },
  { TM_UNIT_MM, "Holds along the axis", "1.97 kN" },
  { TM_UNIT_MM, "Holds in torque", "24.6 N·m" },
  { TM_UNIT_IN, "Pressure", "2.43 ksi" },
  { TM_UNIT_IN, "Bore of the shaft closes", "0.00067 in" },
  { TM_UNIT_IN, "Force to press in", "443 lbf" },
  { TM_UNIT_IN, "Holds in torque", "18.2 lbf·ft" },
};

static void
test_rows (void)
{
  const TmPressInput input = make_bush ();
  TmPressAnswer answer;

  tm_press (&input, &answer);
  for (guint i = 0; i < G_N_ELEMENTS (cells); i++)
    {
      g_autoptr (GPtrArray) rows = tm_words_press_rows (&input, &answer, cells[i].unit);
      const TmPressRow *row = find_row (rows, cells[i].title);

      g_assert_nonnull (row);
      for (guint c = 0; c < TM_N_PRESS_COLUMNS; c++)
        g_assert_cmpstr (row->cells[c], ==, cells[i].cell);
      g_assert_nonnull (strstr (row->sentence, cells[i].cell));
      assert_sane_rows (rows);
    }
}

/* What is not known has no row, and what is to be stated is said. */
static void
test_unknown (void)
{
  TmPressInput input = make_bush ();
  TmPressAnswer answer;
  g_autoptr (GPtrArray) rows = NULL;
  g_auto (GStrv) notes = NULL;
  g_autofree char *all = NULL;
  g_autofree char *says = NULL;

  input.length = NAN;
  input.shaft_inside = 0;
  tm_press (&input, &answer);
  rows = tm_words_press_rows (&input, &answer, TM_UNIT_MM);
  g_assert_null (find_row (rows, "Holds"));
  g_assert_null (find_row (rows, "Force"));
  g_assert_null (find_row (rows, "Hub, share of its yield"));
  g_assert_null (find_row (rows, "Bore of the shaft"));
  g_assert_null (find_row (rows, "Shaft, hoop stress at its bore"));
  notes = tm_words_press_notes (&input, &answer, NULL, NULL, TM_UNIT_MM);
  all = g_strjoinv ("\n", notes);
  g_assert_nonnull (strstr (all, "State the length of contact to see the forces."));
  g_assert_nonnull (strstr (all, "State the room for dropping in"));
  says = tm_words_press_says (&answer, TM_UNIT_MM);
  g_assert_true (g_str_has_prefix (says, "Presses with "));
  assert_sane_rows (rows);
  assert_sane (all);
}

/* ΔT = (δ + gap)/(α d) = (0.02 + 0.05)/(11.7e-6 × 25) = 239.3: to 259 °C; the shaft by 155.6: to -136 °C. */
static void
test_room (void)
{
  TmPressInput input = make_bush ();
  TmPressAnswer answer;
  g_auto (GStrv) notes = NULL;

  input.gap = 0.05;
  tm_press (&input, &answer);
  notes = tm_words_press_notes (&input, &answer, NULL, NULL, TM_UNIT_MM);
  g_assert_cmpstr (notes[0], ==,
                   "To drop in with 0.0500 mm of room at the most interference: heat the hub to 259 °C, or "
                   "cool the shaft to -136 °C.");
}

static void
check_says (const TmPressInput *input, const char *begins)
{
  TmPressAnswer answer;
  g_autofree char *says = NULL;

  tm_press (input, &answer);
  says = tm_words_press_says (&answer, TM_UNIT_MM);
  g_test_message ("%s", says);
  g_assert_true (g_str_has_prefix (says, begins));
  g_assert_null (strchr (says, '\n'));
  assert_sane (says);
}

static void
test_says (void)
{
  TmPressInput input = make_bush ();

  check_says (&input, "Holds at least 1.97 kN; up to 1.97 kN to press in");
  /* The hoop stress of the hub is 27.9 MPa, so that its largest is over 20. */
  input.hub.yield = 20;
  check_says (&input, "The hub would yield");
  input.shaft.yield = 20;
  check_says (&input, "Hub and shaft would yield");
  input.hub.yield = input.shaft.yield = NAN;
  input.interference_least = -0.002;
  check_says (&input, "At the least interference nothing is left");
}

/* Every status is one line; one that is an error has no figures. */
static void
test_nonsense (void)
{
  TmPressInput wrong[5];

  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    wrong[i] = make_bush ();
  wrong[0].hub_outside = 20;
  wrong[1].shaft_inside = 25;
  wrong[2].hub.modulus = -207;
  wrong[3].interference = wrong[3].interference_most = 9;
  wrong[4].friction_least = 0.3;
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      TmPressAnswer answer;
      g_autoptr (GPtrArray) rows = NULL;
      g_autofree char *says = NULL;

      tm_press (&wrong[i], &answer);
      g_assert_cmpint (answer.status, !=, TM_PRESS_OK);
      rows = tm_words_press_rows (&wrong[i], &answer, TM_UNIT_MM);
      says = tm_words_press_says (&answer, TM_UNIT_MM);
      g_assert_cmpuint (rows->len, ==, 0);
      g_assert_cmpuint (strlen (says), >, 0);
      g_assert_null (strchr (says, '\n'));
    }
}

static void
test_cautions (void)
{
  TmPressInput input = make_bush ();
  TmPressAnswer answer;
  g_auto (GStrv) always = NULL;
  g_auto (GStrv) metal = NULL;
  g_auto (GStrv) plastic = NULL;

  tm_press (&input, &answer);
  always = tm_words_press_cautions (&answer, FALSE, TRUE);
  metal = tm_words_press_cautions (&answer, FALSE, FALSE);
  plastic = tm_words_press_cautions (&answer, TRUE, FALSE);
  g_assert_cmpuint (g_strv_length (always), ==, 2);
  /* A plastic relaxes and takes up moisture. */
  g_assert_cmpuint (g_strv_length (plastic), ==, g_strv_length (metal) + 2);
}

static void
test_material (void)
{
  TmElastic steel;
  g_autofree char *words = NULL;
  g_autofree char *none = tm_words_elastic (NULL, TM_UNIT_MM);

  g_assert_true (tm_elastic_find (NULL, "steel", &steel));
  words = tm_words_elastic (&steel, TM_UNIT_MM);
  g_assert_true (g_str_has_prefix (words, "steel: E 207 GPa"));
  g_assert_nonnull (strstr (words, "Callister"));
  g_assert_cmpstr (none, ==, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/press-words/rows", test_rows);
  g_test_add_func ("/press-words/unknown", test_unknown);
  g_test_add_func ("/press-words/room", test_room);
  g_test_add_func ("/press-words/says", test_says);
  g_test_add_func ("/press-words/nonsense", test_nonsense);
  g_test_add_func ("/press-words/cautions", test_cautions);
  g_test_add_func ("/press-words/material", test_material);
  return g_test_run ();
}
