/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-near: where the readings of a feature may be expected, before any is made.
 */

#include "core-near.h"

static gint64
clamp_wide (TmWide value)
{
  if (value > TM_COUNT_MAX)
    return TM_COUNT_MAX;
  if (value < -(TmWide)TM_COUNT_MAX)
    return -TM_COUNT_MAX;
  return (gint64)value;
}

static gint64
find_reference (const TmFeature *feature)
{
  if (feature->nominal.given)
    return feature->nominal.count;
  if (feature->lower.given && feature->upper.given)
    return clamp_wide (((TmWide)feature->lower.count + feature->upper.count) / 2);
  if (feature->upper.given)
    return feature->upper.count;
  return feature->lower.given ? feature->lower.count : 0;
}

static void
set_near (TmNear *near, const TmFeature *feature)
{
  gint64 low = near->reference;
  gint64 high = near->reference;

  if (feature->lower.given)
    low = MIN (low, feature->lower.count);
  if (feature->upper.given)
    high = MAX (high, feature->upper.count);
  near->near_low = clamp_wide ((TmWide)low - near->reference / 20);
  near->near_high = clamp_wide ((TmWide)high + near->reference / 20);
}

static void
set_plausible (TmNear *near, const TmFeature *feature)
{
  gboolean greatest_only = feature->upper.given && !feature->lower.given;
  gboolean least_only = feature->lower.given && !feature->upper.given;
  gint64 low = greatest_only ? 0 : near->reference / 4;
  gint64 high = clamp_wide ((TmWide)near->reference * (least_only ? 20 : 4));

  near->plausible_low = MIN (low, near->near_low);
  near->plausible_high = MAX (high, near->near_high);
}

TmNear
tm_near_of_feature (const TmFeature *feature)
{
  TmNear near = { FALSE, 0, 0, 0, 0, 0 };

  near.reference = find_reference (feature);
  if (near.reference <= 0)
    return near;
  near.known = TRUE;
  set_near (&near, feature);
  set_plausible (&near, feature);
  return near;
}

gboolean
tm_near_contains (const TmNear *near, gint64 count)
{
  return near->known && count >= near->near_low && count <= near->near_high;
}

gboolean
tm_near_is_about (const TmNear *near, gint64 count)
{
  return near->known && count >= near->near_low / 2 && count / 2 <= near->near_high;
}

gboolean
tm_near_is_plausible (const TmNear *near, gint64 count)
{
  return near->known && count >= near->plausible_low && count <= near->plausible_high;
}
