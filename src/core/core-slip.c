/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-slip: readings that are possible but look like a mistake of the hand.
 *
 * With B the width of the band (upper limit - lower limit; the upper limit of a zero-bounded kind;
 * 1 % of the size where there is no band), and an expected value one inside the limits or within
 * B / 2 of a reading made so far:
 *   a value within B outside the limits, on the good side of a one-sided limit, or within B / 2 of a
 *   reading made so far is plausible and never a slip;
 *   a thimble turn is asked about when the value is one turn off an expected one;
 *   a digit swap, when swapping two neighbouring digits as written gives an expected one;
 *   anything else that lies further than 3 B outside the limits is far out.
 * The widths are our own choice: a real reading so far off costs one more Enter.
 */

#include <string.h>

#include "core-entry.h"
#include "core-near.h"

typedef struct {
  const TmFeature *feature;
  const gint64 *so_far;
  gsize n_so_far;
  gint64 low, high; /* limits; an open side reaches as far as a count does */
  gint64 band;
} Expectation;

/* FALSE when the feature says nothing about its size. */
static gboolean
expect_of_feature (const TmFeature *feature, Expectation *expected)
{
  TmNear near = tm_near_of_feature (feature);
  gboolean zero_bounded = tm_kind_is_zero_bounded (feature->kind);
  gint64 share = near.known ? MAX (near.reference / 100, 1) : 0;

  expected->low = feature->lower.given ? feature->lower.count : -TM_COUNT_MAX;
  expected->high = feature->upper.given ? feature->upper.count : TM_COUNT_MAX;
  if (feature->lower.given && feature->upper.given)
    expected->band = expected->high - expected->low;
  else if (zero_bounded && feature->upper.given)
    expected->band = expected->high;
  else
    expected->band = share;
  if (!feature->lower.given && !feature->upper.given && near.known)
    {
      expected->low = near.reference - share;
      expected->high = near.reference + share;
    }
  return feature->lower.given || feature->upper.given || near.known;
}

static gboolean
is_near_so_far (const Expectation *expected, gint64 count)
{
  for (gsize i = 0; i < expected->n_so_far; i++)
    {
      TmWide off = (TmWide)count - expected->so_far[i];
      if (2 * ABS (off) <= expected->band)
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_within (const Expectation *expected, gint64 count, guint bands)
{
  TmWide margin = (TmWide)expected->band * bands;

  return count >= expected->low - margin && count <= expected->high + margin;
}

static gboolean
is_expected (const Expectation *expected, gint64 count)
{
  if (count < 0 && tm_kind_is_zero_bounded (expected->feature->kind))
    return FALSE;
  return is_within (expected, count, 0) || is_near_so_far (expected, count);
}

/* Only limits or a nominal on both sides say where a swapped or turned value belongs; with one limit
 * alone everything on its good side would be "likelier". */
static gboolean
is_bounded (const Expectation *expected)
{
  return expected->low > -TM_COUNT_MAX && expected->high < TM_COUNT_MAX;
}

static gboolean
is_likelier (const Expectation *expected, gint64 count)
{
  if (is_bounded (expected) || tm_kind_is_zero_bounded (expected->feature->kind))
    return is_expected (expected, count);
  return is_near_so_far (expected, count);
}

/* One turn: 0.025 in of an inch micrometer, 0.5 mm of a metric one (40 threads per inch, 0.5 mm
 * pitch: common practice). */
static gboolean
find_thimble_turn (const TmQuantity *value, const Expectation *expected, TmQuantity *likelier)
{
  gint64 turn = value->unit == TM_UNIT_MM || value->unit == TM_UNIT_UM ? 500000000 : 635000000;

  if (tm_unit_dimension (value->unit) != TM_DIMENSION_LENGTH
      || tm_kind_is_zero_bounded (expected->feature->kind))
    return FALSE;
  for (int side = -1; side <= 1; side += 2)
    {
      gint64 count = value->count + side * turn;
      if (is_likelier (expected, count))
        {
          guint least = turn == 500000000 ? 1 : 3;
          *likelier = tm_quantity_new (count, value->unit, MAX (value->decimals, least));
          return TRUE;
        }
    }
  return FALSE;
}

static gboolean
find_digit_swap (const TmQuantity *value, const Expectation *expected, TmQuantity *likelier)
{
  g_autofree char *digits = tm_quantity_format (value);
  char *previous = NULL;

  for (char *p = digits; *p != '\0'; p++)
    {
      TmQuantity swapped;
      char kept = *p;

      if (!g_ascii_isdigit (*p))
        continue;
      if (previous != NULL && *previous != *p)
        {
          *p = *previous;
          *previous = kept;
          if (tm_quantity_read (digits, value->unit, &swapped) == TM_READ_OK
              && is_likelier (expected, swapped.count))
            {
              *likelier = swapped;
              return TRUE;
            }
          *previous = *p;
          *p = kept;
        }
      previous = p;
    }
  return FALSE;
}

static gboolean
is_far_out (const Expectation *expected, gint64 count)
{
  gboolean least_only = expected->high == TM_COUNT_MAX;

  if (!is_within (expected, count, 3))
    return TRUE;
  /* A least size alone says little about the greatest; ten times it is no longer the same feature. */
  return least_only && expected->low > 0 && count / 10 > expected->low;
}

TmSlipCheck
tm_slip_check (const TmQuantity *value, const TmFeature *feature, const gint64 *so_far, gsize n_so_far)
{
  TmSlipCheck check = { TM_SLIP_NONE, TM_QUANTITY_NONE };
  Expectation expected = { feature, so_far, so_far != NULL ? n_so_far : 0, 0, 0, 0 };

  g_return_val_if_fail (value != NULL && feature != NULL, check);

  if (!value->given || tm_unit_dimension (value->unit) != tm_unit_dimension (feature->unit)
      || !expect_of_feature (feature, &expected) || is_near_so_far (&expected, value->count))
    return check;
  if (is_far_out (&expected, value->count))
    check.slip = TM_SLIP_FAR_OUT;
  else if (is_within (&expected, value->count, 1))
    return check;
  if (find_thimble_turn (value, &expected, &check.likelier))
    check.slip = TM_SLIP_THIMBLE_TURN;
  else if (find_digit_swap (value, &expected, &check.likelier))
    check.slip = TM_SLIP_DIGIT_SWAP;
  return check;
}

static gboolean
is_metric (TmUnit unit)
{
  return unit == TM_UNIT_MM || unit == TM_UNIT_UM;
}

TmSlipCheck
tm_entry_slip_check (const TmEntry *entry, const TmFeature *feature, const gint64 *so_far, gsize n_so_far)
{
  TmSlipCheck check = { TM_SLIP_NONE, TM_QUANTITY_NONE };

  g_return_val_if_fail (entry != NULL && feature != NULL, check);

  if (entry->status != TM_ENTRY_OK || entry->form == TM_ENTRY_FORM_OUTCOME)
    return check;
  check = tm_slip_check (&entry->value, feature, so_far, n_so_far);
  if (check.slip == TM_SLIP_NONE && entry->form == TM_ENTRY_FORM_SHORTHAND
      && is_metric (entry->value.unit) != is_metric (feature->unit))
    check.slip = TM_SLIP_OTHER_SYSTEM;
  return check;
}
