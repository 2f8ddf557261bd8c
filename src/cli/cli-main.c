/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-main: tenthmark-cli, the bench's work without a screen.
 */

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>

#include "cli-verbs.h"
#include "core-numerics.h"
#include "report-drawing.h"

static const TmVerb verbs[] = {
  { "check", "JOB", N_ ("Reads a job file, says what it holds and what is wrong with it."), tm_verb_check },
  { "judge", "JOB", N_ ("Says for each feature of each piece what its readings prove."), tm_verb_judge },
  { "record", "JOB --piece S --feature N VALUE…", N_ ("Adds readings to a job file, as typed at the bench."),
    tm_verb_record },
  { "draw", "JOB --add FILE", N_ ("Keeps drawings with a job file, and puts balloons on them."),
    tm_verb_draw },
  { "report", "JOB --out FILE", N_ ("Writes the first-article report: .pdf, .xlsx, .qif or .csv, by ending."),
    tm_verb_report },
  { "revise", "JOB --revision R --out FILE",
    N_ ("Begins the job of a new revision: what is affected is measured again, the rest by reference."),
    tm_verb_revise },
  { "callout", "TEXT", N_ ("Reads one requirement of a drawing: kind, nominal and limits."),
    tm_verb_callout },
  { "fit", "TEXT|JOB --feature N",
    N_ ("Clearance of a fit: \"25 H7/p6\", or of a feature and its mate by limits and as measured."),
    tm_verb_fit },
  { "pins", "[JOB]",
    N_ ("What pins that went and did not go prove of a bore; of a job, which to pull; gauge-block stacks. 0 "
        "once answered."),
    tm_verb_pins },
  { "cut", "[JOB --piece S --feature N]",
    N_ ("How much to dial next, and at what risk: being in, metal left, metal gone; 1 when not to cut."),
    tm_verb_cut },
  { "drift", "JOB --feature N|--tool T",
    N_ ("What a feature does over the pieces, and how many to measure; 1 when something is out, has shifted "
        "or "
        "drifted to its limit."),
    tm_verb_drift },
  { "press", "[JOB]",
    N_ ("How hard a hub presses its shaft: stresses, forces, heating; 1 when nothing holds."),
    tm_verb_press },
  { "study", "FILE", N_ ("Repeatability and reproducibility of a gauge, from a table of readings."),
    tm_verb_study },
  { "budget", "FILE", N_ ("An uncertainty budget: combined, degrees of freedom, k and expanded."),
    tm_verb_budget },
  { "summary", "FILE", N_ ("Count, mean, standard deviation and lag-1 autocorrelation of a column."),
    tm_verb_summary },
  { "book", "list|add|export|verify|backup|recall|signed|template",
    N_ ("Works on the book, the shop's store of jobs."), tm_verb_book },
};

static void
print_verbs (FILE *stream)
{
  fprintf (stream, "%s\n\n", _ ("Usage: tenthmark-cli VERB …"));
  for (gsize i = 0; i < G_N_ELEMENTS (verbs); i++)
    fprintf (stream, "  %-9s %s\n", verbs[i].name, _ (verbs[i].summary));
  fprintf (stream, "\n%s\n", _ ("Each verb has its own --help; those that print results have --json."));
  fprintf (stream, "%s\n", _ ("Exit status: 0 done, 1 the answer is not good, 2 could not be done."));
}

const TmVerb *
tm_verb_find (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (verbs); i++)
    {
      if (strcmp (verbs[i].name, name) == 0)
        return &verbs[i];
    }
  return NULL;
}

/* What was printed must have arrived: a full disk is no success. */
static int
finish (int status)
{
  if (fflush (stdout) == 0 && !ferror (stdout))
    return status;
  return tm_fail (_ ("standard output: cannot be written (%s); send it elsewhere or make room"),
                  g_strerror (errno));
}

int
main (int argc, char *argv[])
{
  const TmVerb *verb;
  int status;

  setlocale (LC_ALL, "");
  /* Sizes are written with a point wherever they stand; shares and chances beside them too. */
  setlocale (LC_NUMERIC, "C");
  bindtextdomain (GETTEXT_PACKAGE, TM_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  if (tm_report_drawing_main (argc, argv, &status))
    return status;
  tm_numerics_init ();

  if (argc < 2)
    {
      print_verbs (stderr);
      return 2;
    }
  if (strcmp (argv[1], "--help") == 0)
    {
      print_verbs (stdout);
      return finish (0);
    }
  if (strcmp (argv[1], "--version") == 0)
    {
      printf ("tenthmark-cli %s\n", TM_VERSION);
      return finish (0);
    }
  verb = tm_verb_find (argv[1]);
  if (verb == NULL)
    return tm_fail (_ ("there is no verb “%s”; see tenthmark-cli --help"), argv[1]);
  return finish (verb->run (argc - 2, argv + 2));
}
