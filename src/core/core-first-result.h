/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-first-result: what a place was before its last rework or repair.  The report keeps it beside the
 * result that counts now, so that nobody takes a reworked part for one that was right at once.
 */

#pragma once

#include "core-judge.h"

G_BEGIN_DECLS

typedef struct {
  TmJudgement judgement;          /* of what was read before the rework; owned, as tm_judge() gives it */
  const TmNonconformance *rework; /* the last one that those rows came before */
} TmFirstResult;

/* FALSE when nothing that stands was read of the place before a rework of it; @out is then empty.  The
 * methods, gauges and limits are those of the job as it is now, and so is the size that a bonus rests on.
 * Rows of an earlier state, before a cut or a rework before the last one, are left out.  Changes nothing in
 * @job: several threads may ask at once while none writes. */
gboolean tm_first_result (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                          TmFirstResult *out);
void tm_first_result_clear (TmFirstResult *result);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmFirstResult, tm_first_result_clear)

G_END_DECLS
