/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Any bytes as a reading of any kind of feature: never a crash, never half a result, and a value that
 * was taken can be written down and read back as the same count.
 */

#include "core-entry.h"
#include "fuzz-driver.h"

#include <string.h>

const char *const fuzz_seeds[] = {
  "24.987",
  ".7486",
  "24,987",
  "7486",
  "748.6",
  "24987",
  "+3",
  "-12",
  "\xe2\x88\x92"
  "12",
  "+0.003 mm",
  "-.0005",
  "19.01 mm",
  ".7486 in",
  "748.6 thou",
  "19010 \xc2\xb5m",
  "7486 tenths",
  "1 3/16",
  "1-3/16\"",
  "\xc2\xbd",
  "89.5\xc2\xb0",
  "p",
  "no-go",
  "1,234.5",
  "25.01\r\n",
  NULL,
};

/* Kind, unit, and nominal, lower and upper in whole counts of the smallest unit shown; 0 is absent. */
static const struct {
  TmKind kind;
  TmUnit unit;
  gint64 nominal, lower, upper;
} features[] = {
  { TM_KIND_BORE, TM_UNIT_MM, 25000000000, 25000000000, 25021000000 },
  { TM_KIND_BORE, TM_UNIT_IN, 19050000000, 18999200000, 19075400000 },
  { TM_KIND_LENGTH, TM_UNIT_MM, 0, 0, 12000000000 },
  { TM_KIND_LENGTH, TM_UNIT_IN, 0, 1270000000, 0 },
  { TM_KIND_LENGTH, TM_UNIT_MM, TM_COUNT_MAX, 0, TM_COUNT_MAX },
  { TM_KIND_LENGTH, TM_UNIT_IN, -TM_COUNT_MAX, -TM_COUNT_MAX, TM_COUNT_MAX },
  { TM_KIND_FORM, TM_UNIT_MM, 0, 0, 20000000 },
  { TM_KIND_ROUGHNESS, TM_UNIT_UM, 0, 0, 1600000 },
  { TM_KIND_ANGLE, TM_UNIT_DEGREE, 324000000000, 322200000000, 325800000000 },
  { TM_KIND_HARDNESS, TM_UNIT_HARDNESS, 0, 58000000, 62000000 },
  { TM_KIND_THREAD, TM_UNIT_NONE, 0, 0, 0 },
  { TM_KIND_NOTE, TM_UNIT_NONE, 0, 0, 0 },
};

static TmFeature
make_feature (gsize index)
{
  TmUnit unit = features[index].unit;
  TmFeature feature = { .kind = features[index].kind, .unit = unit, .places = 1 };

  if (features[index].nominal != 0)
    feature.nominal = tm_quantity_new (features[index].nominal, unit, 3);
  if (features[index].lower != 0)
    feature.lower = tm_quantity_new (features[index].lower, unit, 3);
  if (features[index].upper != 0)
    feature.upper = tm_quantity_new (features[index].upper, unit, 3);
  return feature;
}

static void
check_quantity (const TmQuantity *value, const TmFeature *feature)
{
  g_autofree char *text = tm_quantity_format_in (value, feature->unit);
  TmQuantity again;

  g_assert_true (value->given);
  g_assert_cmpint (ABS (value->count), <=, TM_COUNT_MAX);
  g_assert_cmpint (tm_unit_dimension (value->unit), ==, tm_unit_dimension (feature->unit));
  g_assert_cmpint (tm_quantity_read (text, feature->unit, &again), ==, TM_READ_OK);
  g_assert_cmpint (again.count, ==, value->count);
}

static void
check_entry (const TmEntry *entry, const TmFeature *feature)
{
  TmSlipCheck check = tm_entry_slip_check (entry, feature, &feature->lower.count, 1);

  g_assert_cmpuint (entry->n_candidates, <=, TM_ENTRY_MAX_CANDIDATES);
  for (guint i = 0; i < entry->n_candidates; i++)
    check_quantity (&entry->candidates[i], feature);
  if (entry->status != TM_ENTRY_OK)
    {
      g_assert_cmpint (entry->status, <, TM_N_ENTRY_STATUSES);
      g_assert_false (entry->value.given);
      g_assert_cmpint (check.slip, ==, TM_SLIP_NONE);
      return;
    }
  g_assert_cmpuint (entry->n_candidates, ==, 0);
  g_assert_true ((entry->form == TM_ENTRY_FORM_OUTCOME) == (entry->outcome != TM_OUTCOME_NONE));
  if (entry->form != TM_ENTRY_FORM_OUTCOME)
    check_quantity (&entry->value, feature);
  if (check.likelier.given)
    g_assert_cmpint (check.likelier.count, !=, entry->value.count);
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autofree char *text = g_strndup ((const char *)data, size);

  for (gsize i = 0; i < G_N_ELEMENTS (features); i++)
    {
      TmFeature feature = make_feature (i);
      TmEntry entry = tm_entry_read (text, &feature);

      check_entry (&entry, &feature);
    }
  return 0;
}
