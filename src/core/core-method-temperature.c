/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-method-temperature: the lines that temperature gives to a budget.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-method-private.h"
#include "core-temperature.h"

/* Where no thermometer's limit is stated: ± °C, assumed (common practice). */
#define THERMOMETER_ASSUMED 0.5
/* Of a part whose material nobody stated, 1e-6 / °C: that of the commonest metal that moves most. */
#define EXPANSION_UNKNOWN 23.6

/* One side, with what is said of it. */
typedef struct {
  TmWarmth warmth;
  const char *subject;
  const char *source; /* of the temperature */
  gboolean assumed;
  const char *expansion_source;
} Side;

static void
add_side (const TmBudget *self, const Side *side, double length)
{
  TmComponent lines[] = {
    tm_component (TM_COMPONENT_TEMPERATURE, TM_DISTRIBUTION_RECTANGULAR,
                  tm_warmth_temperature (&side->warmth, length), INFINITY, TRUE),
    tm_component (TM_COMPONENT_EXPANSION, TM_DISTRIBUTION_RECTANGULAR,
                  tm_warmth_expansion (&side->warmth, length), INFINITY, TRUE),
  };

  lines[0].source = side->source;
  lines[0].assumed = side->assumed;
  lines[1].source = side->expansion_source;
  lines[1].assumed = TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      lines[i].subject = side->subject;
      if (lines[i].value > 0)
        tm_budget_add_line (self->use, &lines[i]);
    }
}

/* A temperature that was taken, and corrected for: the thermometer's limit is left.  Where the part's
 * material is not known nothing is corrected, and all of the distance from 20 °C is left. */
static void
set_taken (const TmBudget *self, double temperature, gboolean corrected, Side *side)
{
  gboolean stated = self->job->thermometer.given;
  double limit = fabs (tm_plain_number (&self->job->thermometer, THERMOMETER_ASSUMED));

  side->source
      = stated ? N_ ("the thermometer's limit") : N_ ("assumed: thermometer ± 0.5 °C, common practice");
  side->assumed = !stated;
  side->warmth.half_width = limit;
  if (corrected)
    side->warmth.away = temperature - 20;
  else
    side->warmth.half_width += fabs (temperature - 20);
}

static void
set_limit (const TmQuantity *limit, Side *side)
{
  side->source = N_ ("the job's limit for it");
  side->warmth.half_width = fabs (tm_plain_number (limit, 0));
}

static gboolean
has_temperature (const TmBudget *self)
{
  if (self->own_temperature || !tm_feature_grows_warm (self->feature))
    return FALSE;
  return self->when->temperatures || self->job->part_temp_limit.given || self->job->gauge_temp_limit.given;
}

static double
get_length (const TmBudget *self)
{
  return (double)(self->when->size != 0 ? self->when->size : tm_feature_length (self->feature));
}

static void
add_both_sides (const TmBudget *self)
{
  double length;
  TmExpansion part = { "",
                       EXPANSION_UNKNOWN,
                       EXPANSION_UNKNOWN,
                       EXPANSION_UNKNOWN,
                       N_ ("assumed: material not known, taken as aluminium"),
                       NULL };
  TmExpansion own = tm_gauge_expansion (self->use->gauge);
  gboolean known = tm_job_expansion (self->job, &part);
  Side sides[] = {
    { { part.value, tm_expansion_half_width (&part), 0, 0 }, "part", NULL, FALSE, part.source },
    { { own.value, tm_expansion_half_width (&own), 0, 0 },
      self->use->gauge ? self->use->gauge->tag : NULL,
      NULL,
      FALSE,
      own.source },
  };

  if (self->when->temperatures)
    {
      set_taken (self, self->when->part_temp, known, &sides[0]);
      set_taken (self, self->when->gauge_temp, known, &sides[1]);
    }
  else
    {
      set_limit (&self->job->part_temp_limit, &sides[0]);
      set_limit (&self->job->gauge_temp_limit, &sides[1]);
    }
  length = get_length (self);
  add_side (self, &sides[0], length);
  add_side (self, &sides[1], length);
}

void
tm_budget_add_temperature (const TmBudget *self)
{
  if (has_temperature (self))
    add_both_sides (self);
}
