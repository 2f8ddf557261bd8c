/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-judge-budget.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-position.h"

/* As the judgement took it: a bonus that is given and not clamped. FALSE when there is none. */
static gboolean
make_bonus (const TmJob *job, const TmJudgement *judgement, TmComponent *out)
{
  const TmFeature *feature = judgement->feature;
  TmBonus bonus;

  if (feature->kind != TM_KIND_POSITION || feature->modifier == TM_MODIFIER_NONE)
    return FALSE;
  bonus = tm_position_bonus_of (job, judgement->piece, feature, judgement->place);
  if (!bonus.measured || !(bonus.u > 0))
    return FALSE;
  *out = tm_component (TM_COMPONENT_SIZE, TM_DISTRIBUTION_NORMAL, bonus.u, bonus.dof, TRUE);
  out->subject = bonus.feature->balloon;
  out->source = bonus.mating ? N_ ("the mating size, by pins") : N_ ("the least favourable local size");
  return TRUE;
}

guint
tm_judgement_lines (const TmJob *job, const TmJudgement *judgement, TmComponent *lines)
{
  const TmLocalSize *size;
  TmComponent bonus;
  TmUseWhen when;
  TmMethodUse use;

  if (judgement->deciding >= judgement->sizes.n_stations || isnan (judgement->u))
    return 0;
  size = &judgement->sizes.stations[judgement->deciding];
  when = tm_use_when (size->last);
  use = tm_method_use_at (job, judgement->feature, size->method_name, &when);
  return tm_method_lines (&use, size, make_bonus (job, judgement, &bonus) ? &bonus : NULL, lines);
}
