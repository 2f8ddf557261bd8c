/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What drift says of capability, in words.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-drift-print.h"

static gboolean
print_index (const char *name, const TmIndex *index)
{
  if (isnan (index->value))
    return FALSE;
  printf (_ ("  %-3s %.2f (95 %%: %.2f to %.2f)\n"), name, index->value, index->low, index->high);
  return TRUE;
}

static void
print_unsteady (const TmBatch *batch)
{
  if (batch->change.found)
    printf ("%s\n",
            _ ("  the pieces before and after the shift are taken together: it is no steady process, and "
               "the figures promise nothing"));
  else if (tm_batch_has_drift (batch) || batch->drifted)
    printf ("%s\n",
            _ ("  the drift is in Pp and Ppk: it is no steady process, and the figures promise nothing"));
  else if (batch->series.n_breaks > 0)
    printf ("%s\n", _ ("  the pieces before and after events are taken together"));
}

/* Why a figure is missing, or is to be taken with care. */
static void
print_reasons (const TmBatch *batch, const TmCapability *c)
{
  const TmSeries *series = &batch->series;
  gboolean one_sided = !isfinite (series->lower) || !isfinite (series->upper);

  if (c->unshaped)
    printf (
        _ ("  Pp and Ppk refused: the values are not normal (p %.2g) and follow no named shape; %u pieces "
           "carry their own quantiles\n"),
        c->normality_p, TM_CAPABLE_EMPIRIC);
  else if (c->shape == TM_SHAPE_EMPIRIC)
    printf ("%s\n", _ ("  Ppk by the quantiles of the values themselves: they are not normal"));
  else if (c->shape != TM_SHAPE_NORMAL)
    printf (_ ("  Ppk by the quantiles of a distribution that is %s\n"),
            g_dpgettext2 (GETTEXT_PACKAGE, "shape", tm_shape_word (c->shape)));
  if (c->shape != TM_SHAPE_NORMAL && !isnan (c->cp.value))
    printf ("%s\n", _ ("  Cp, Cpk and Cpm stand on a normal distribution, which this is not: go by Ppk"));
  if (one_sided)
    printf ("%s\n", _ ("  one limit: Ppk to that side alone; the others do not apply"));
  else if (c->within_lost)
    printf ("%s\n", _ ("  Cp and Cpk refused: measuring scatters as much as the pieces within groups"));
  else if (isnan (c->cp.value))
    printf ("%s\n", _ ("  Cp and Cpk refused: the scatter from piece to piece is not known"));
  if (!one_sided && !c->unshaped && isnan (c->cm.value))
    printf (c->n < TM_CAPABLE_MACHINE
                ? _ ("  Cm and Cmk refused: they need %u pieces\n")
                : _ ("  Cm and Cmk refused: they need %u pieces in a row, without drift or event\n"),
            TM_CAPABLE_MACHINE);
}

void
tm_drift_print_capability (const TmBatch *batch, const TmCapability *c)
{
  if (c->status != TM_CAPABLE_OK)
    {
      printf (_ ("capability refused: %s\n"),
              g_dpgettext2 (GETTEXT_PACKAGE, "capability", tm_capable_status_word (c->status)));
      return;
    }
  printf (ngettext ("capability of %u piece:\n", "capability of %u pieces:\n", (gulong)c->n), (guint)c->n);
  print_index ("Cp", &c->cp);
  print_index ("Cpk", &c->cpk);
  print_index ("Pp", &c->pp);
  print_index ("Ppk", &c->ppk);
  print_index ("Cpm", &c->cpm);
  print_index ("Cm", &c->cm);
  print_index ("Cmk", &c->cmk);
  print_unsteady (batch);
  print_reasons (batch, c);
  if (batch->series.repeatability > 0)
    printf ("%s\n", _ ("  repeatability of measuring is taken out"));
  if (tm_batch_state (batch) == TM_BATCH_DRIFTING && batch->capability_apart.status == TM_CAPABLE_OK
      && !isnan (batch->capability_apart.ppk.value))
    printf (_ ("  with the drift taken out Ppk would be %.2f: that is the scatter alone\n"),
            batch->capability_apart.ppk.value);
  if (isfinite (c->normality_p) && c->shape == TM_SHAPE_NORMAL)
    printf (_ ("  test of normality (Anderson and Darling): p %.2g\n"), c->normality_p);
  if (c->n_wanted > c->n && tm_drift_is_steady (batch))
    printf (_ ("  about %u pieces would bring Ppk within a fifth\n"), c->n_wanted);
}

void
tm_drift_print_interval (const TmDriftCase *drift)
{
  const TmSeries *series = &drift->batch->series;
  TmDriftInterval interval;
  g_autofree char *lower = NULL;
  g_autofree char *upper = NULL;

  if (drift->batch->capability.status != TM_CAPABLE_OK)
    return;
  if (!tm_drift_interval (drift, &interval))
    {
      printf ("%s\n",
              _ ("where nearly all pieces lie is refused: it takes a steady, normal run without events"));
      return;
    }
  lower = tm_drift_format_size (series, interval.lower);
  upper = tm_drift_format_size (series, interval.upper);
  printf (_ ("%g %% sure that %g %% of all pieces lie between %s and %s %s\n"), 100 * drift->sure->confidence,
          100 * drift->sure->coverage, lower, upper, tm_drift_unit (series));
}
