/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tolerance frames, roughness, hardness and threads, numbers under a general tolerance, and what a
 * requirement sets in a feature.
 *
 * Sources: the forms are those of ISO 129-1, ISO 286-1, ISO 1101, ISO 14405-1, ISO 2768-1 and
 * ASME Y14.5 (common practice where two ways of writing are in use); ISO 286 limits were compared
 * with published tables in test-iso286.
 */

#include "callout-support.h"

#define ISO   "ISO 2768-mK"
#define BLOCK ".X .1, .XX .01, .XXX .005, .XXXX .0005"
#define FULL  "X .5, .X .1, .XX .01, .XXX .005, ANGLES 1, FRACTIONS 1/64"

static const Row geometry_rows[] = {
  { "⌖ Ø0.2 Ⓜ A B C", "position mm - [- 0.2] dia mmc A B C" },
  { "pos dia 0.2 mmc A B C", "position mm - [- 0.2] dia mmc A B C" },
  { "true position dia 0.2 mmc a b c", "position mm - [- 0.2] dia mmc A B C" },
  { "⌖|⌀0,2Ⓜ|A|B|C", "position mm - [- 0.2] dia mmc A B C" },
  { "⌖ Ø0.2 (M) A B C", "position mm - [- 0.2] dia mmc A B C" },
  { "4X ⌖ Ø0.2 Ⓛ A B", "position mm - [- 0.2] x4 dia lmc A B" },
  { "pos 0.1 lmc A", "position mm - [- 0.1] lmc A" },
  { "TP Ø0.2 A", "position mm - [- 0.2] dia A" },
  { "⌖ 0.2 A", "position mm - [- 0.2] A" },
  { "⌖ Ø0.2 rfs A", "position mm - [- 0.2] dia A" },
  { "⌖ Ø0 Ⓜ A B", "position mm - [- 0] dia mmc A B" },
  { "⌖ Ø0.2 Ⓜ A BⓂ C", "position mm - [- 0.2] dia mmc A BⓂ C" },
  { "⌖ Ø0.2 A-B C", "position mm - [- 0.2] dia A-B C" },
  { "⌖ Ø0.2 A B C D E F", "position mm - [- 0.2] dia A B C D E F" },
  { "⏥ 0.05", "form mm - [- 0.05]" },
  { "flatness 0.05", "form mm - [- 0.05]" },
  { "flatness 5 µm", "form mm - [- 0.005]" },
  { "⏤ Ø0.05 Ⓜ", "form mm - [- 0.05] dia mmc" },
  { "straightness 0.02", "form mm - [- 0.02]" },
  { "○ 0.01", "form mm - [- 0.01]" },
  { "roundness 0.01", "form mm - [- 0.01]" },
  { "⌭ 0.008", "form mm - [- 0.008]" },
  { "⌒ 0.1", "form mm - [- 0.1]" },
  { "⌓ 0.1 A B", "form mm - [- 0.1] A B" },
  { "profile of a surface 0.1 A B C", "form mm - [- 0.1] A B C" },
  { "⟂ 0.02 A", "form mm - [- 0.02] A" },
  { "⊥ Ø0.02 Ⓜ A", "form mm - [- 0.02] dia mmc A" },
  { "∥ 0.02 A", "form mm - [- 0.02] A" },
  { "// 0.02 A", "form mm - [- 0.02] A" },
  { "∠ 0.1 A", "form mm - [- 0.1] A" },
  { "◎ Ø0.05 A", "form mm - [- 0.05] dia A" },
  { "⌯ 0.1 A", "form mm - [- 0.1] A" },
  { "↗ 0.02 A", "form mm - [- 0.02] A" },
  { "⌰ 0.02 A-B", "form mm - [- 0.02] A-B" },
  { "total runout 0.02 A", "form mm - [- 0.02] A" },
  { "runout 0.02 TIR A", "form mm - [- 0.02] A" },
  { "⌖ Ø0 A", "note: not read" },        /* nothing allowed, and no bonus */
  { "⌖ Ø0.2 M A B", "note: not read" },  /* modifier or datum */
  { "⌖ Ø0.2 Ⓟ 10 A", "note: not read" }, /* projected zone */
  { "⌖ Ø0.2 A B C D E F G", "note: not read" },
  { "⏥ 0.05 A", "note: not read" },
  { "○ Ø0.01", "note: not read" },
  { "↗ 0.02 Ⓜ A", "note: not read" },
  { "⏥", "note: not read" },
  { "⏥ 0.05 CZ", "note: not read" },
  { "⏥ 1°", "note: unit wrong" },
  { "position of the label", "note: not read" },
};

static const Row other_rows[] = {
  { "Ra 1.6", "roughness um - [- 1.6]" },
  { "Ra1.6", "roughness um - [- 1.6]" },
  { "Ra 1,6", "roughness um - [- 1.6]" },
  { "Rz 10", "roughness um - [- 10]" },
  { "3.2 Ra", "roughness um - [- 3.2]" },
  { "√ Ra 3.2", "roughness um - [- 3.2]" },
  { "Ra 1.6 µm", "roughness um - [- 1.6]" },
  { "Ra max 1.6", "roughness um - [- 1.6]" },
  { "Ra ≤ 1.6", "roughness um - [- 1.6]" },
  { "Ra 63 µin", "roughness uin - [- 63]" },
  { "Ra 0.8-1.6", "note: not read" },
  { "Ra 1.6 min", "note: not read" },
  { "Ra 0", "note: not read" },
  { "Ra 1.6 mm", "note: unit wrong" },
  { "Ra", "note: not read" },
  { "58-62 HRC", "hardness points - [58 62]" },
  { "58–62 HRC", "hardness points - [58 62]" },
  { "20-32 HRC", "hardness points - [20 32]" },
  { "58 to 62 HRC", "hardness points - [58 62]" },
  { "HRC 58/62", "hardness points - [58 62]" },
  { "HRC 60 ±2", "hardness points 60 [58 62]" },
  { "60 +2/-0 HRC", "hardness points 60 [60 62]" },
  { "HRC60 ±2", "hardness points 60 [58 62]" },
  { "200 HBW max", "hardness points - [- 200]" },
  { "min 58 HRC", "hardness points - [58 -]" },
  { "700 HV10 min", "hardness points - [700 -]" },
  { "HV10 700-750", "hardness points - [700 750]" },
  { "60 HRC", "note: no general" },
  { "HV700", "note: not read" },
  { "HBW 10/3000 200", "note: not read" },
  { "60 ±2 mm HRC", "note: unit wrong" },
  { "M8x1.25 6H", "thread" },
  { "M8", "thread" },
  { "m8x1.25", "thread" },
  { "M8×1 - 6g LH", "thread" },
  { "M10x1.5-4h6h", "thread" },
  { "4xM8", "thread x4" },
  { "4X M6x1 - 6H THRU", "thread x4" },
  { "Tr20x4 7e", "thread" },
  { "G1/4", "thread" },
  { "Rc 1/8", "thread" },
  { "1/4-20 UNC-2B", "thread" },
  { "M8 pitch circle Ø50 ±0.1", "note: not read" },
  { "M8 ±0.1", "note: not read" },
};

/* ISO 2768-1 class m. */
static const Row iso_general_rows[] = {
  { "40", "length mm 40 [39.7 40.3]" },
  { "40.0", "length mm 40.0 [39.7 40.3]" },
  { "Ø40", "diameter mm 40 [39.7 40.3]" },
  { "4X Ø6", "diameter mm 6 [5.9 6.1] x4" },
  { "6.001", "length mm 6.001 [5.801 6.201]" },
  { "12 deep", "depth mm 12 [11.8 12.2]" },
  { "↧12", "depth mm 12 [11.8 12.2]" },
  { "R3", "length mm 3 [2.8 3.2]" },
  { "R5", "length mm 5 [4.5 5.5]" },
  { "R10", "length mm 10 [9 11]" },
  { "C1", "length mm 1 [0.8 1.2]" },
  { "1 x 45°", "length mm 1 [0.8 1.2]" },
  { "2x45°", "length mm 2 [1.8 2.2]" },
  { "Ø40 Ⓔ", "diameter mm 40 [39.7 40.3] envelope" },
  { "2.5 TYP", "length mm 2.5 [2.4 2.6]" },
  { "40 ±0.1", "length mm 40 [39.9 40.1]" }, /* its own tolerance goes first */
  { "0.5", "length mm 0.5 [0.4 0.6]" },
  { "0.4", "note: general range" },
  { "4001", "note: general range" },
  { "90°", "note: general range" }, /* needs the length of the shorter side */
  { "1 in", "note: general range" },
  { "0", "note: not read" },
  { "(40)", "note: not read" },
  { "40 REF", "note: not read" },
  { "60 HRC", "note: no general" },
};

static const Row block_rows[] = {
  { "1.5", "length in 1.5 [1.4 1.6]" },
  { "1.50", "length in 1.50 [1.49 1.51]" },
  { "1.500", "length in 1.500 [1.495 1.505]" },
  { "1.5000", "length in 1.5000 [1.4995 1.5005]" },
  { ".875", "length in 0.875 [0.870 0.880]" },
  { "Ø.2500", "diameter in 0.2500 [0.2495 0.2505]" },
  { "2X R.06", "length in 0.06 [0.05 0.07] x2" },
  { ".03 x 45°", "length in 0.03 [0.02 0.04]" },
  { "1.50 deep", "depth in 1.50 [1.49 1.51]" },
  { "40", "note: general range" },
  { "1.50000", "note: general range" },
  { "3/8", "note: general range" },
  { "90°", "note: general range" },
  { "25 mm", "note: general range" },
  { ".005", "length in 0.005 [0.000 0.010]" },
  { ".004", "note: general range" }, /* would reach below nothing */
};

static const Row full_block_rows[] = {
  { "40", "length in 40 [39.5 40.5]" },
  { "3/8", "length in 0.375 [0.359375 0.390625]" },
  { "90°", "angle deg 90 [89 91]" },
  { "1.5000", "note: general range" },
};

static void
test_geometry (void)
{
  check_rows (geometry_rows, G_N_ELEMENTS (geometry_rows), TM_UNIT_MM, NULL);
}

static void
test_other_kinds (void)
{
  check_rows (other_rows, G_N_ELEMENTS (other_rows), TM_UNIT_MM, NULL);
}

static void
test_general (void)
{
  static const Row unknown[]
      = { { "40", "note: general unknown" }, { "40 ±0.1", "length mm 40 [39.9 40.1]" } };

  check_rows (iso_general_rows, G_N_ELEMENTS (iso_general_rows), TM_UNIT_MM, ISO);
  check_rows (block_rows, G_N_ELEMENTS (block_rows), TM_UNIT_IN, BLOCK);
  check_rows (full_block_rows, G_N_ELEMENTS (full_block_rows), TM_UNIT_IN, FULL);
  check_rows (unknown, G_N_ELEMENTS (unknown), TM_UNIT_MM, "as usual");
}

static void
test_apply (void)
{
  g_autoptr (TmJob) job = tm_job_new ();
  TmFeature *feature = tm_feature_new ();

  job->unit = TM_UNIT_MM;
  job->general_tolerance = tm_job_intern (job, "ISO 2768-m");
  feature->requirement = tm_job_intern (job, "4X ⌖ Ø0.2 Ⓜ A B C");
  g_assert_cmpint (tm_callout_apply (job, feature), ==, TM_CALLOUT_OK);
  g_assert_cmpint (feature->kind, ==, TM_KIND_POSITION);
  g_assert_cmpint (feature->unit, ==, TM_UNIT_MM);
  g_assert_cmpuint (feature->places, ==, 4);
  g_assert_true (feature->zone_diameter);
  g_assert_cmpint (feature->modifier, ==, TM_MODIFIER_MMC);
  g_assert_cmpstr (feature->datums, ==, "A B C");
  g_assert_cmpint (feature->upper.count, ==, 200000000);
  g_assert_false (feature->lower.given || feature->nominal.given);

  feature->requirement = tm_job_intern (job, "Ø25 H7 Ⓔ");
  g_assert_cmpint (tm_callout_apply (job, feature), ==, TM_CALLOUT_OK);
  g_assert_cmpint (feature->kind, ==, TM_KIND_BORE);
  g_assert_cmpint (feature->cut, ==, TM_CUT_GROWS);
  g_assert_cmpuint (feature->places, ==, 1);
  g_assert_true (feature->envelope);
  g_assert_false (feature->zone_diameter);
  g_assert_cmpint (feature->modifier, ==, TM_MODIFIER_NONE);
  g_assert_cmpstr (feature->datums, ==, "");
  g_assert_cmpint (feature->lower.count, ==, G_GINT64_CONSTANT (25000000000));

  feature->requirement = tm_job_intern (job, "");
  g_assert_cmpint (tm_callout_apply (job, feature), ==, TM_CALLOUT_EMPTY);
  g_assert_cmpint (feature->kind, ==, TM_KIND_BORE); /* limits given without a text stand */

  feature->requirement = tm_job_intern (job, "40");
  g_assert_cmpint (tm_callout_apply (job, feature), ==, TM_CALLOUT_OK);
  g_assert_cmpint (feature->upper.count, ==, G_GINT64_CONSTANT (40300000000));

  feature->requirement = tm_job_intern (job, "Break all edges");
  g_assert_cmpint (tm_callout_apply (job, feature), ==, TM_CALLOUT_NOT_READ);
  g_assert_cmpint (feature->kind, ==, TM_KIND_NOTE);
  g_assert_false (feature->lower.given || feature->upper.given || feature->nominal.given);
  g_assert_cmpint (feature->cut, ==, TM_CUT_UNKNOWN);
  tm_feature_free (feature);
}

/* What the form of the window and a job file both take as saying the same. */
static void
test_kinds_agree (void)
{
  g_assert_true (tm_kinds_agree (TM_KIND_BORE, TM_KIND_DIAMETER));
  g_assert_true (tm_kinds_agree (TM_KIND_ROUGHNESS, TM_KIND_LENGTH));
  g_assert_true (tm_kinds_agree (TM_KIND_NOTE, TM_KIND_THREAD));
  g_assert_false (tm_kinds_agree (TM_KIND_SHAFT, TM_KIND_BORE));
  g_assert_false (tm_kinds_agree (TM_KIND_BORE, TM_KIND_SHAFT));
  g_assert_false (tm_kinds_agree (TM_KIND_ANGLE, TM_KIND_LENGTH));
  g_assert_false (tm_kinds_agree (TM_KIND_LENGTH, TM_KIND_NOTE));
  g_assert_cmpint (tm_kind_unit (TM_KIND_ROUGHNESS, TM_UNIT_IN), ==, TM_UNIT_UIN);
  g_assert_cmpint (tm_kind_unit (TM_KIND_ROUGHNESS, TM_UNIT_MM), ==, TM_UNIT_UM);
  g_assert_cmpint (tm_kind_unit (TM_KIND_BORE, TM_UNIT_IN), ==, TM_UNIT_IN);
  g_assert_cmpint (tm_kind_unit (TM_KIND_THREAD, TM_UNIT_IN), ==, TM_UNIT_NONE);
}

/* One wording for each characteristic, whatever it is called on the drawing. */
static void
test_characteristic (void)
{
  static const struct {
    const char *text;
    const char *word;
  } rows[] = {
    { "⌖ Ø0.2 Ⓜ A B C", "position" },
    { "TP Ø0.2 A", "position" },
    { "4X pos 0.1 A", "position" },
    { "⏥ 0.05", "flatness" },
    { "flat 0.05", "flatness" },
    { "○ 0.01", "circularity" },
    { "roundness 0.01", "circularity" },
    { "⟂ 0.05 A", "perpendicularity" },
    { "squareness 0.1 A", "perpendicularity" },
    { "profile of a line 0.1", "line profile" },
    { "⌓ 0.1 A", "surface profile" },
    { "⌰ 0.03 A", "total runout" },
    { "↗ 0.02 A", "runout" },
    { "R3 min", "radius" },
    { "2X SR4 ±0.1", "radius" },
    { "Ra 1.6", "" },
    { "Ø25 H7", "" },
    { "round all edges", "" },
    { "", "" },
    { "R", "" },
    { "\xff", "" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_test_message ("row %zu", i);
      g_assert_cmpstr (tm_callout_characteristic (rows[i].text), ==, rows[i].word);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/callout/geometry", test_geometry);
  g_test_add_func ("/callout/other-kinds", test_other_kinds);
  g_test_add_func ("/callout/general", test_general);
  g_test_add_func ("/callout/apply", test_apply);
  g_test_add_func ("/callout/kinds-agree", test_kinds_agree);
  g_test_add_func ("/callout/characteristic", test_characteristic);
  return g_test_run ();
}
