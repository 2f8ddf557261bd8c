/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-check-cuts: what is wrong with the tools, cuts, mates and presses of a job that loads.
 */

#include "cli-check-cuts.h"

#include <glib/gi18n-lib.h>

#include "core-cut-work.h"
#include "core-press.h"

static gboolean
is_tool (const TmJob *job, const char *name)
{
  return *name == '\0' || tm_job_find_tool (job, name) != NULL;
}

static void
check_material (const TmJob *job, const TmFeature *feature, const char *name, GPtrArray *faults)
{
  TmElastic unused;

  if (*name != '\0' && !tm_elastic_find (job, name, &unused))
    g_ptr_array_add (faults, g_strdup_printf (_ ("feature %s: press: material “%s” is in no table and not in "
                                                 "this job; add it, or name another"),
                                              feature->balloon, name));
}

/* Only figures that are stated can be wrong: what is not is asked for where the press is reckoned. */
static void
check_press (const TmJob *job, const TmFeature *feature, GPtrArray *faults)
{
  const TmPress *press = &feature->press;
  TmPressInput input;
  TmPressAnswer answer;
  gboolean wrong;

  check_material (job, feature, press->hub_material, faults);
  check_material (job, feature, press->shaft_material, faults);
  if (!press->hub_outside.given)
    return;
  tm_press_input_of (job, feature, &input);
  input.interference = input.interference_least = input.interference_most = 0;
  tm_press (&input, &answer);
  wrong = answer.status == TM_PRESS_HUB_TOO_THIN || answer.status == TM_PRESS_SHAFT_BORE;
  if (wrong)
    g_ptr_array_add (faults, g_strdup_printf (_ ("feature %s: press: %s"), feature->balloon,
                                              g_dpgettext2 (GETTEXT_PACKAGE, "press status",
                                                            tm_press_status_word (answer.status))));
}

static void
check_feature (const TmJob *job, const TmFeature *feature, GPtrArray *faults)
{
  if (!is_tool (job, feature->tool))
    g_ptr_array_add (faults,
                     g_strdup_printf (_ ("feature %s: tool “%s” is not in this job; add it, or name another"),
                                      feature->balloon, feature->tool));
  check_press (job, feature, faults);
}

static void
check_cut (const TmJob *job, const TmCutRow *cut, GPtrArray *faults)
{
  const TmFeature *feature = cut->row.feature;

  if (!tm_row_stands (&cut->row))
    return;
  if (!is_tool (job, cut->tool))
    g_ptr_array_add (
        faults, g_strdup_printf (_ ("cut %s: tool “%s” is not in this job; add it"), cut->row.id, cut->tool));
  if (cut->dialled.count < 0 || (cut->dialled.count == 0 && cut->passes == 0))
    g_ptr_array_add (faults,
                     g_strdup_printf (_ ("cut %s: nothing was dialled and no spring pass taken, or it was "
                                         "dialled away from the metal; correct it, or withdraw it"),
                                      cut->row.id));
  if (!tm_feature_is_cut_to_size (feature))
    g_ptr_array_add (faults, g_strdup_printf (_ ("cut %s: feature %s is not cut to a size; withdraw it"),
                                              cut->row.id, feature->balloon));
}

static void
check_mate (const TmJob *job, const TmMateSize *mate, GPtrArray *faults)
{
  const TmFeature *feature = tm_job_find_feature (job, mate->feature);

  if (*mate->piece == '\0')
    return;
  if (tm_job_find_piece (job, mate->piece) == NULL)
    g_ptr_array_add (faults,
                     g_strdup_printf (_ ("mate %s: piece “%s” is not in this job; add it, or name another"),
                                      mate->serial, mate->piece));
  if (feature != NULL && tm_fit_mate_place (mate) > feature->places)
    g_ptr_array_add (
        faults,
        g_strdup_printf (ngettext ("mate %s: feature %s has %u place; correct the place",
                                   "mate %s: feature %s has %u places; correct the place", feature->places),
                         mate->serial, feature->balloon, feature->places));
}

void
tm_check_cuts (const TmJob *job, GPtrArray *faults)
{
  for (guint i = 0; i < job->features->len; i++)
    check_feature (job, g_ptr_array_index (job->features, i), faults);
  for (guint i = 0; i < job->cuts->len; i++)
    check_cut (job, g_ptr_array_index (job->cuts, i), faults);
  for (guint i = 0; i < job->mate_sizes->len; i++)
    check_mate (job, g_ptr_array_index (job->mate_sizes, i), faults);
}
