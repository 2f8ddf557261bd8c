/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-study: tenthmark-cli study, repeatability and reproducibility of a gauge from a table.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-json.h"
#include "cli-study-table.h"
#include "cli-verbs.h"
#include "core-study.h"

static const char *
get_name (const GPtrArray *names, guint number)
{
  return g_ptr_array_index ((GPtrArray *)names, number);
}

/* FALSE after an error line, for what cannot be analysed. */
static gboolean
check_result (const char *path, const TmStudyTable *table, const TmStudyResult *result)
{
  if (result->status == TM_STUDY_TOO_SMALL)
    tm_fail (_ ("%s: %u × %u × %u (pieces, people, repeats) is too small; a study needs at least two pieces, "
                "one person and two repeats"),
             path, result->pieces, result->people, result->repeats);
  else if (result->status == TM_STUDY_MISSING)
    tm_fail (ngettext ("%s: %u reading is missing, the first at piece %s, person %s, trial %s; take it",
                       "%s: %u readings are missing, the first at piece %s, person %s, trial %s; take them",
                       result->n_missing),
             path, result->n_missing, get_name (table->pieces, result->missing_piece),
             get_name (table->people, result->missing_person),
             get_name (table->trials, result->missing_trial));
  else
    return TRUE;
  return FALSE;
}

static void
print_interval (yajl_gen gen, const char *key, const TmStudyPart *part)
{
  tm_print_key (gen, key);
  yajl_gen_map_open (gen);
  tm_print_number (gen, "low", part->low);
  tm_print_number (gen, "high", part->high);
  yajl_gen_map_close (gen);
}

static void
print_intervals (yajl_gen gen, const TmStudyResult *r)
{
  tm_print_key (gen, "intervals_95");
  yajl_gen_map_open (gen);
  print_interval (gen, "ev", &r->ev);
  print_interval (gen, "av", &r->av);
  print_interval (gen, "interaction", &r->interaction);
  print_interval (gen, "grr", &r->grr);
  print_interval (gen, "pv", &r->pv);
  print_interval (gen, "tv", &r->tv);
  yajl_gen_map_close (gen);
}

static void
print_range (yajl_gen gen, const TmStudyRange *range)
{
  tm_print_key (gen, "range_method");
  yajl_gen_map_open (gen);
  tm_print_number (gen, "ev", range->ev);
  tm_print_number (gen, "av", range->av);
  tm_print_number (gen, "grr", range->grr);
  tm_print_number (gen, "pv", range->pv);
  tm_print_number (gen, "tv", range->tv);
  tm_print_number (gen, "percent_study", 100 * range->grr / range->tv);
  yajl_gen_map_close (gen);
}

static void
print_squares (yajl_gen gen, const TmStudyResult *r)
{
  tm_print_key (gen, "mean_squares");
  yajl_gen_map_open (gen);
  tm_print_number (gen, "pieces", r->ms_pieces);
  tm_print_number (gen, "people", r->ms_people);
  tm_print_number (gen, "interaction", r->ms_interaction);
  tm_print_number (gen, "error", r->ms_error);
  yajl_gen_map_close (gen);
}

static void
print_parts (yajl_gen gen, const TmStudyResult *r)
{
  tm_print_number (gen, "ev", r->ev.sd);
  tm_print_number (gen, "av", r->av.sd);
  tm_print_number (gen, "interaction", r->interaction.sd);
  tm_print_number (gen, "grr", r->grr.sd);
  tm_print_number (gen, "pv", r->pv.sd);
  tm_print_number (gen, "tv", r->tv.sd);
  tm_print_number (gen, "percent_study", r->percent_study);
  tm_print_number (gen, "percent_band", r->percent_band);
  tm_print_number (gen, "ndc", r->ndc > 0 ? (double)r->ndc : (double)NAN);
}

static void
print_json (const TmStudyResult *r)
{
  yajl_gen gen = tm_print_begin ();

  yajl_gen_map_open (gen);
  tm_print_integer (gen, "pieces", r->pieces);
  tm_print_integer (gen, "people", r->people);
  tm_print_integer (gen, "repeats", r->repeats);
  print_parts (gen, r);
  tm_print_flag (gen, "pooled", r->pooled);
  tm_print_number (gen, "p_interaction", r->p_interaction);
  tm_print_number (gen, "ev_dof", r->ev_dof);
  tm_print_number (gen, "between_people", r->between);
  tm_print_number (gen, "between_people_dof", r->between_dof);
  print_squares (gen, r);
  print_intervals (gen, r);
  print_range (gen, &r->range);
  tm_print_text (gen, "note", r->status == TM_STUDY_OK ? NULL : _ (tm_study_status_text (r->status)));
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

/* Fixed columns; a component that is not known has a dash. */
static void
print_line (const char *label, const TmStudyPart *part, double by_range)
{
  g_autofree char *range = isfinite (by_range) ? g_strdup_printf ("%.6g", by_range) : g_strdup ("—");

  if (isnan (part->sd))
    printf (_ ("%s: not known\n"), label);
  else
    printf (_ ("%s: %.6g (95 %%: %.4g to %.4g; by ranges %s)\n"), label, part->sd, part->low, part->high,
            range);
}

static void
print_shares (const TmStudyResult *r)
{
  printf (_ ("share of the study: %.1f %%\n"), r->percent_study);
  if (isfinite (r->percent_band))
    printf (_ ("share of the band (six times the gauge): %.1f %%\n"), r->percent_band);
  if (r->ndc > 0)
    printf (_ ("distinct classes of pieces: %u\n"), r->ndc);
  else
    printf ("%s\n", _ ("distinct classes of pieces: not known, no repeat differs from another"));
}

static void
print_words (const TmStudyResult *r)
{
  printf (_ ("pieces %u, people %u, repeats %u\n"), r->pieces, r->people, r->repeats);
  if (r->status != TM_STUDY_OK)
    printf ("%s\n", _ (tm_study_status_text (r->status)));
  if (r->status == TM_STUDY_NO_SPREAD)
    return;
  if (isfinite (r->p_interaction))
    printf (r->pooled ? _ (
                "interaction of people and pieces: none to be seen (p %.3f), pooled into repeatability\n")
                      : _ ("interaction of people and pieces: p %.3f, kept apart\n"),
            r->p_interaction);
  printf ("%s\n", _ ("standard deviations:"));
  print_line (_ ("repeatability"), &r->ev, r->range.ev);
  print_line (_ ("people"), &r->av, r->range.av);
  print_line (_ ("interaction"), &r->interaction, NAN);
  print_line (_ ("gauge, all together"), &r->grr, r->range.grr);
  print_line (_ ("pieces"), &r->pv, r->range.pv);
  print_line (_ ("total"), &r->tv, r->range.tv);
  print_shares (r);
}

/* FALSE after an error line; 0 when no band is given. */
static gboolean
read_band (const char *text, double *band)
{
  *band = 0;
  if (text == NULL || (tm_study_number_read (text, band) && *band > 0))
    return TRUE;
  tm_fail (_ ("study: --band “%s” is not a width above zero; write it like 0.021"), text);
  return FALSE;
}

int
tm_verb_study (int n_words, char **words)
{
  const TmVerb *verb = tm_verb_find ("study");
  const char *band_text = NULL;
  gboolean json = FALSE;
  const TmOption options[] = {
    { "band", "W", N_ ("width of the band that the gauge is to settle"), &band_text, NULL },
    { "json", NULL, N_ ("print JSON"), NULL, &json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);
  g_auto (TmStudyTable) table = { NULL };
  TmStudyResult result;
  const char *path;
  double band;

  if (operands == NULL)
    return status;
  path = tm_only_operand (verb, operands);
  if (path == NULL || !read_band (band_text, &band) || !tm_study_table_read (path, &table))
    return 2;
  tm_study_analyse (table.values, table.pieces->len, table.people->len, table.trials->len, band, &result);
  if (!check_result (path, &table, &result))
    return 2;
  if (json)
    print_json (&result);
  else
    print_words (&result);
  return 0;
}
