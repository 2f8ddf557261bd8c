/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-tool-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-words.h"
#include "core-cut-work.h"

/* How far back other jobs are looked into: a tool of years ago has been ground since (our own choice). */
#define JOBS_MOST 20

char *
tm_words_tool (const TmTool *tool)
{
  g_autofree char *mark = tm_quantity_format (&tool->graduation);
  const char *symbol = tm_unit_symbol (tool->graduation.unit);

  if (!tool->graduation.given)
    return g_strdup (_ ("no graduation stated"));
  return g_strdup_printf (tool->reads == TM_READS_RADIUS ? _ ("dial in %s %s, reads the radius")
                                                         : _ ("dial in %s %s, reads the size"),
                          mark, symbol);
}

static void
add_line (GString *lines, const char *title, const TmQuantity *quantity)
{
  g_autofree char *words = tm_words_quantity (quantity);

  if (quantity->given)
    g_string_append_printf (lines, "%s%s %s", lines->len > 0 ? "\n" : "", title, words);
}

char *
tm_words_tool_habits (const TmTool *tool)
{
  g_autoptr (GString) lines = g_string_new (NULL);

  add_line (lines, _ ("Least cut, on the dial:"), &tool->least_cut);
  add_line (lines, _ ("Backlash, on the dial:"), &tool->backlash);
  add_line (lines, _ ("Usual spring passes:"), &tool->spring_passes);
  if (*tool->note != '\0')
    g_string_append_printf (lines, "%s%s", lines->len > 0 ? "\n" : "", tool->note);
  return g_string_free (g_steal_pointer (&lines), FALSE);
}

/* -------- How it has cut -------- */

static void
clear_answer (gpointer data)
{
  g_free (((TmToolAnswer *)data)->job);
}

static void
take_answers (GArray *into, const TmJob *job, const char *name, const char *part_number)
{
  g_autoptr (GArray) answers = tm_cut_answers (job, name, NULL, NULL, 0);

  for (guint i = 0; i < answers->len; i++)
    {
      TmToolAnswer answer = { g_strdup (part_number), g_array_index (answers, TmCutAnswer, i) };

      g_array_append_val (into, answer);
    }
}

GArray *
tm_tool_answers (TmDocument *document, const char *name)
{
  const TmJob *job = tm_document_job (document);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) others
      = tm_book_tool_jobs (tm_document_book (document), name, job->id, JOBS_MOST, &error);
  GArray *answers = g_array_new (FALSE, FALSE, sizeof (TmToolAnswer));

  g_array_set_clear_func (answers, clear_answer);
  /* A book that cannot be read says so where it is written to; here less is known, and said. */
  for (guint i = 0; others != NULL && i < others->len; i++)
    {
      const TmJob *other = g_ptr_array_index (others, i);

      take_answers (answers, other, name, other->part_number);
    }
  take_answers (answers, job, name, "");
  return answers;
}

static char *
format_counts (double counts, TmUnit unit, guint extra)
{
  TmUnit small = unit == TM_UNIT_IN ? TM_UNIT_IN : TM_UNIT_UM;
  g_autofree char *number = tm_count_format (llround (counts), small, unit == TM_UNIT_IN ? 5 : extra);

  return g_strdup_printf ("%s %s", number, tm_unit_symbol (small));
}

char *
tm_words_tool_response (const GArray *answers, TmUnit unit)
{
  g_autoptr (TmCutBelief) belief = tm_cut_belief_new (1, TRUE);
  g_autofree char *scatter = NULL, *low = NULL, *high = NULL;
  TmCutResponse response;

  for (guint i = 0; i < answers->len; i++)
    tm_cut_belief_learn (belief, &g_array_index (answers, TmToolAnswer, i).answer);
  tm_cut_belief_response (belief, &response);
  scatter = format_counts (response.scatter, unit, 1);
  low = format_counts (response.scatter_low, unit, 1);
  high = format_counts (response.scatter_high, unit, 1);
  return g_strdup_printf (
      answers->len == 0
          ? _ ("No cut by it is on record. Assumed: it takes %.0f %% of what is dialled, give or take %.0f "
               "%% (k = 2), and a cut scatters by %s (%s to %s).")
          : _ ("It takes %.0f %% of what is dialled, give or take %.0f %% (k = 2), and a cut scatters by %s "
               "(95 of 100: %s to %s)."),
      100 * response.factor, 200 * response.factor_sd, scatter, low, high);
}

char *
tm_words_tool_answer (const TmCutAnswer *answer, TmUnit unit)
{
  guint decimals = unit == TM_UNIT_IN ? 4 : 3;
  g_autofree char *asked = tm_count_format (llround (answer->dialled), unit, decimals);
  g_autofree char *got = tm_count_format (llround (answer->achieved), unit, decimals);

  return g_strdup_printf (_ ("asked %s, got %s %s: %.0f %%"), asked, got, tm_unit_symbol (unit),
                          100 * answer->achieved / answer->dialled);
}
