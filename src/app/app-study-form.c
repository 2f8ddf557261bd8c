/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-study-form.h"

#include <glib/gi18n-lib.h>

#include "app-feature-words.h"
#include "app-form-read.h"
#include "app-form.h"
#include "core-study.h"

#define USUAL_PIECES  10
#define USUAL_REPEATS "3"
#define MOST_REPEATS  100
#define MOST_CELLS    10000

void
tm_study_form_build (TmStudyForm *form, GtkBox *into)
{
  const char *none[] = { _ ("none"), NULL };
  AdwPreferencesGroup *what = tm_form_group (into, _ ("What is studied"), NULL);
  AdwPreferencesGroup *plan = tm_form_group (
      into, _ ("Plan"),
      _ ("Every person takes every piece as often as the others, in an order drawn by lot. Ten pieces that "
         "spread over the band, three people and three repeats are usual; one person alone is a study too."));

  form->methods = g_ptr_array_new ();
  form->features = g_ptr_array_new ();
  form->name = tm_form_entry (what, _ ("Name of the study"));
  form->method = tm_form_choice (what, _ ("Method, or gauge alone"), none);
  form->feature = tm_form_choice (what, _ ("Feature"), none);
  adw_combo_row_set_use_subtitle (form->method, TRUE);
  adw_combo_row_set_use_subtitle (form->feature, TRUE);
  form->band = tm_form_entry (what, _ ("Band to compare with, when it is not the feature’s"));
  form->pieces = tm_form_entry (plan, _ ("Pieces: names with commas between, or how many"));
  form->people = tm_form_entry (plan, _ ("People: initials with commas between"));
  form->repeats = tm_form_entry (plan, _ ("Repeats: how often each takes each piece"));
}

void
tm_study_form_clear (TmStudyForm *form)
{
  g_clear_pointer (&form->methods, g_ptr_array_unref);
  g_clear_pointer (&form->features, g_ptr_array_unref);
}

static void
fill_methods (TmStudyForm *form, const TmJob *job)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  g_ptr_array_set_size (form->methods, 0);
  for (guint i = 0; i < job->methods->len; i++)
    g_ptr_array_add (form->methods, (gpointer)((const TmMethod *)g_ptr_array_index (job->methods, i))->name);
  for (guint i = 0; i < job->gauges->len; i++)
    g_ptr_array_add (form->methods, (gpointer)((const TmGauge *)g_ptr_array_index (job->gauges, i))->tag);
  for (guint i = 0; i < form->methods->len; i++)
    g_ptr_array_add (words, g_ptr_array_index (form->methods, i));
  if (words->len == 0)
    g_ptr_array_add (words, (gpointer)_ ("none"));
  g_ptr_array_add (words, NULL);
  tm_form_set_words (form->method, (const char *const *)words->pdata, 0);
}

static void
fill_features (TmStudyForm *form, const TmJob *job)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);

  g_ptr_array_set_size (form->features, 0);
  g_ptr_array_add (form->features, NULL);
  g_ptr_array_add (words, g_strdup (_ ("none")));
  for (guint i = 0; i < job->features->len; i++)
    {
      TmFeature *feature = g_ptr_array_index (job->features, i);

      if (tm_kind_is_attribute (feature->kind) || feature->unit == TM_UNIT_NONE)
        continue;
      g_ptr_array_add (form->features, feature);
      g_ptr_array_add (words, tm_words_feature (feature));
    }
  g_ptr_array_add (words, NULL);
  tm_form_set_words (form->feature, (const char *const *)words->pdata, form->features->len > 1 ? 1 : 0);
}

/* "Study 1", or the first number that is free. */
static char *
find_name (const TmJob *job)
{
  for (guint i = 1;; i++)
    {
      g_autofree char *name = g_strdup_printf (_ ("Study %u"), i);

      if (tm_job_find_study (job, name) == NULL)
        return g_steal_pointer (&name);
    }
}

void
tm_study_form_fill (TmStudyForm *form, const TmJob *job)
{
  g_autoptr (GString) pieces = g_string_new (NULL);
  g_autoptr (GString) people = g_string_new (NULL);
  g_autofree char *name = find_name (job);

  for (guint i = 0; i < MIN (job->pieces->len, USUAL_PIECES); i++)
    g_string_append_printf (pieces, "%s%s", i > 0 ? ", " : "",
                            ((const TmPiece *)g_ptr_array_index (job->pieces, i))->serial);
  for (guint i = 0; i < job->people->len; i++)
    g_string_append_printf (people, "%s%s", i > 0 ? ", " : "",
                            ((const TmPerson *)g_ptr_array_index (job->people, i))->initials);
  fill_methods (form, job);
  fill_features (form, job);
  tm_form_fill_text (form->name, name);
  tm_form_fill_text (form->band, "");
  tm_form_fill_text (form->pieces, job->pieces->len > 1 ? pieces->str : G_STRINGIFY (USUAL_PIECES));
  tm_form_fill_text (form->people, people->str);
  tm_form_fill_text (form->repeats, USUAL_REPEATS);
}

/* The names in @text, "," or ";" between them; owned texts. */
static GPtrArray *
split_names (const char *text)
{
  g_auto (GStrv) parts = g_strsplit_set (text, ",;", -1);
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; parts[i] != NULL; i++)
    if (*g_strstrip (parts[i]) != '\0')
      g_ptr_array_add (names, g_strdup (parts[i]));
  return names;
}

/* A number alone says how many. */
static GPtrArray *
read_pieces (const char *text)
{
  GPtrArray *names = split_names (text);
  guint64 n;

  if (names->len != 1 || !g_ascii_string_to_unsigned (g_ptr_array_index (names, 0), 10, 2, 1000, &n, NULL))
    return names;
  g_ptr_array_set_size (names, 0);
  for (guint i = 1; i <= n; i++)
    g_ptr_array_add (names, g_strdup_printf ("%u", i));
  return names;
}

static const char *
find_twice (const GPtrArray *names)
{
  for (guint i = 0; i < names->len; i++)
    for (guint k = 0; k < i; k++)
      if (g_str_equal (g_ptr_array_index ((GPtrArray *)names, i), g_ptr_array_index ((GPtrArray *)names, k)))
        return g_ptr_array_index ((GPtrArray *)names, i);
  return NULL;
}

static gboolean
take_names (AdwEntryRow *row, TmJob *job, GPtrArray *names, guint least, const char *too_few, GPtrArray *out,
            char **problem)
{
  const char *twice = find_twice (names);

  tm_form_mark_wrong (row, FALSE);
  if (names->len < least)
    return tm_form_refuse (row, problem, g_strdup (too_few));
  if (twice != NULL)
    return tm_form_refuse (row, problem, g_strdup_printf (_ ("“%s” stands twice; leave one out."), twice));
  for (guint i = 0; i < names->len; i++)
    g_ptr_array_add (out, (gpointer)tm_job_intern (job, g_ptr_array_index (names, i)));
  return TRUE;
}

static gboolean
read_people_and_pieces (TmStudyForm *form, TmJob *job, TmStudy *study, char **problem)
{
  g_autoptr (GPtrArray) pieces = read_pieces (gtk_editable_get_text (GTK_EDITABLE (form->pieces)));
  g_autoptr (GPtrArray) people = split_names (gtk_editable_get_text (GTK_EDITABLE (form->people)));

  return take_names (
             form->pieces, job, pieces, 2,
             _ ("A study needs two pieces or more; write their names with commas between, or how many."),
             study->pieces, problem)
         && take_names (form->people, job, people, 1, _ ("A study needs a person; write the initials."),
                        study->people, problem);
}

static gboolean
read_repeats (TmStudyForm *form, TmStudy *study, char **problem)
{
  if (!tm_form_read_quantity (form->repeats, TM_UNIT_COUNT, &study->repeats, problem))
    return FALSE;
  if (!study->repeats.given || study->repeats.count < 2 || study->repeats.count > MOST_REPEATS)
    return tm_form_refuse (
        form->repeats, problem,
        g_strdup_printf (_ ("Repeats: a whole number from 2 to %d; once alone shows no spread."),
                         MOST_REPEATS));
  if (tm_study_n_cells (study) == 0 || tm_study_n_cells (study) > MOST_CELLS)
    return tm_form_refuse (
        form->repeats, problem,
        g_strdup_printf (_ ("That is more than %d readings; take fewer pieces or repeats."), MOST_CELLS));
  return TRUE;
}

static gboolean
read_band (TmStudyForm *form, TmStudy *study, char **problem)
{
  if (!tm_form_read_quantity (form->band, study->unit, &study->band, problem))
    return FALSE;
  if (study->band.given && study->band.count <= 0)
    return tm_form_refuse (form->band, problem,
                           g_strdup (_ ("A band is wider than zero; leave it empty to take the feature’s.")));
  return TRUE;
}

static gboolean
read_subject (TmStudyForm *form, TmJob *job, TmStudy *study, char **problem)
{
  const TmFeature *feature = g_ptr_array_index (form->features, tm_form_chosen (form->feature));

  if (!tm_form_read_name (form->name, job, &study->name, problem))
    return FALSE;
  if (tm_job_find_study (job, study->name) != NULL)
    return tm_form_refuse (
        form->name, problem,
        g_strdup_printf (_ ("There is a study “%s” already; give this one another name."), study->name));
  if (form->methods->len == 0)
    return tm_form_refuse (form->name, problem,
                           g_strdup (_ ("There is no gauge to study; add one in the register first.")));
  study->method = g_ptr_array_index (form->methods, tm_form_chosen (form->method));
  study->feature = feature != NULL ? feature->balloon : "";
  study->unit = feature != NULL ? feature->unit : job->unit;
  return TRUE;
}

TmStudy *
tm_study_form_read (TmStudyForm *form, TmJob *job, char **problem)
{
  TmStudy *study = tm_study_new ();

  *problem = NULL;
  if (read_subject (form, job, study, problem) && read_band (form, study, problem)
      && read_people_and_pieces (form, job, study, problem) && read_repeats (form, study, problem))
    return study;
  tm_study_free (study);
  return NULL;
}

char *
tm_study_form_hint (TmStudyForm *form)
{
  g_autoptr (GPtrArray) pieces = read_pieces (gtk_editable_get_text (GTK_EDITABLE (form->pieces)));
  g_autoptr (GPtrArray) people = split_names (gtk_editable_get_text (GTK_EDITABLE (form->people)));
  g_autofree char *text = tm_form_text (form->repeats);
  guint64 repeats;
  guint n;

  if (pieces->len < 2 || people->len < 1
      || !g_ascii_string_to_unsigned (text, 10, 2, MOST_REPEATS, &repeats, NULL))
    return g_strdup ("");
  n = pieces->len * people->len * (guint)repeats;
  if (people->len == 1)
    return g_strdup_printf (ngettext ("%u reading in all. One person: what another would add stays unknown.",
                                      "%u readings in all. One person: what another would add stays unknown.",
                                      n),
                            n);
  if (people->len == 2)
    return g_strdup_printf (ngettext ("%u reading in all. Two people tell little of what people differ by.",
                                      "%u readings in all. Two people tell little of what people differ by.",
                                      n),
                            n);
  return g_strdup_printf (ngettext ("%u reading in all.", "%u readings in all.", n), n);
}
