/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-line-form.h"

#include <glib/gi18n-lib.h>

#include "app-edit.h"
#include "app-form-read.h"
#include "app-form.h"
#include "core-uncertainty.h"

/* In the order of TmLineKind. */
static const char *const kind_names[TM_N_LINE_KINDS] = {
  [TM_LINE_OTHER] = NC_ ("line", "something else"),
  [TM_LINE_FEEL] = NC_ ("line", "transfer feel"),
  [TM_LINE_TEMPERATURE] = NC_ ("line", "temperature"),
  [TM_LINE_FORM] = NC_ ("line", "form that is not seen"),
  [TM_LINE_SETTING] = NC_ ("line", "setting master or zero"),
  [TM_LINE_PEOPLE] = NC_ ("line", "between people"),
};

/* In the order of TmDistribution: what the value is. */
static const char *const distribution_names[TM_N_DISTRIBUTIONS] = {
  [TM_DISTRIBUTION_NORMAL] = N_ ("normal, a standard uncertainty"),
  [TM_DISTRIBUTION_T] = N_ ("t, a deviation from readings"),
  [TM_DISTRIBUTION_RECTANGULAR] = N_ ("rectangular, ± limits"),
  [TM_DISTRIBUTION_TRIANGULAR] = N_ ("triangular, ± limits"),
  [TM_DISTRIBUTION_U_SHAPED] = N_ ("u-shaped, ± limits"),
};

static void
build_what (TmLineForm *form, GtkBox *into)
{
  const char *words[TM_N_LINE_KINDS + 1] = { NULL };
  AdwPreferencesGroup *group = tm_form_group (
      into, _ ("Line"), _ ("Lines of one kind and name in two methods are one error that both share."));

  for (guint i = 0; i < TM_N_LINE_KINDS; i++)
    words[i] = g_dpgettext2 (GETTEXT_PACKAGE, "line", kind_names[i]);
  form->kind = tm_form_choice (group, _ ("Kind"), words);
  form->name = tm_form_entry (group, _ ("Name"));
}

void
tm_line_form_build (TmLineForm *form, GtkBox *into)
{
  AdwPreferencesGroup *group;

  build_what (form, into);
  group = tm_form_group (
      into, _ ("Figure"),
      _ ("A number without a unit is in the drawing’s unit. For 95 % limits choose normal and "
         "divide by 2. Left empty, the divisor is the distribution’s own and the figure is "
         "taken as known."));
  form->value = tm_form_entry (group, _ ("Value"));
  form->distribution = tm_form_choice (group, _ ("Distribution"), (const char *const[]) { NULL });
  form->divisor = tm_form_entry (group, _ ("Divisor"));
  form->dof = tm_form_entry (group, _ ("Degrees of freedom"));
  form->source = tm_form_entry (group, _ ("Where the figure comes from"));
}

/* A word that a file brought and nobody knows stands last, to be replaced. */
static void
fill_distribution (TmLineForm *form, const char *word)
{
  const char *words[TM_N_DISTRIBUTIONS + 2] = { NULL };
  TmDistribution chosen = TM_DISTRIBUTION_RECTANGULAR;
  gboolean known = *word == '\0' || tm_distribution_from_word (word, &chosen);

  for (guint i = 0; i < TM_N_DISTRIBUTIONS; i++)
    words[i] = g_dgettext (GETTEXT_PACKAGE, distribution_names[i]);
  if (!known)
    words[TM_N_DISTRIBUTIONS] = word;
  tm_form_set_words (form->distribution, words, known ? chosen : TM_N_DISTRIBUTIONS);
}

void
tm_line_form_fill (TmLineForm *form, const TmJob *job, const TmBudgetLine *line)
{
  TmBudgetLine *blank = tm_budget_line_new ();
  const TmBudgetLine *shown = line != NULL ? line : blank;

  adw_combo_row_set_selected (form->kind, shown->kind);
  tm_form_fill_text (form->name, shown->name);
  tm_form_fill_quantity (form->value, &shown->value, job->unit);
  fill_distribution (form, line != NULL ? line->distribution : "");
  tm_form_fill_quantity (form->divisor, &shown->divisor, TM_UNIT_HARDNESS);
  tm_form_fill_quantity (form->dof, &shown->dof, TM_UNIT_HARDNESS);
  tm_form_fill_text (form->source, shown->source);
  tm_budget_line_free (blank);
}

static gboolean
read_value (TmLineForm *form, const TmJob *job, TmQuantity *out, char **problem)
{
  if (!tm_form_read_quantity (form->value, job->unit, out, problem))
    return FALSE;
  if (!out->given)
    return tm_form_refuse (form->value, problem,
                           g_strdup (_ ("Value: a line needs one; write it like 0.002 mm.")));
  if (out->count == 0)
    return tm_form_refuse (form->value, problem,
                           g_strdup (_ ("Value: zero adds nothing; leave the line out.")));
  return TRUE;
}

static gboolean
read_above_zero (AdwEntryRow *row, TmQuantity *out, char **problem)
{
  if (!tm_form_read_quantity (row, TM_UNIT_HARDNESS, out, problem))
    return FALSE;
  if (out->given && out->count <= 0)
    return tm_form_refuse (row, problem,
                           g_strdup_printf (_ ("%s: write a number above zero, or leave it empty."),
                                            adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row))));
  return TRUE;
}

static gboolean
read_distribution (TmLineForm *form, TmJob *job, TmBudgetLine *line, char **problem)
{
  guint chosen = tm_form_chosen (form->distribution);

  if (chosen >= TM_N_DISTRIBUTIONS)
    {
      g_free (*problem);
      *problem = g_strdup_printf (_ ("Distribution: “%s” is none that is known here; choose one."),
                                  line->distribution);
      gtk_widget_grab_focus (GTK_WIDGET (form->distribution));
      return FALSE;
    }
  line->distribution = tm_job_intern (job, tm_distribution_word ((TmDistribution)chosen));
  return TRUE;
}

/* A deviation from readings without how many says too much. */
static gboolean
check_dof (TmLineForm *form, const TmBudgetLine *line, char **problem)
{
  if (tm_form_chosen (form->distribution) != TM_DISTRIBUTION_T || line->dof.given)
    return TRUE;
  return tm_form_refuse (
      form->dof, problem,
      g_strdup (_ ("Degrees of freedom: a deviation from readings needs them: readings less one.")));
}

TmBudgetLine *
tm_line_form_read (TmLineForm *form, TmJob *job, const char *method, const TmBudgetLine *line, char **problem)
{
  TmBudgetLine *read = line != NULL ? tm_edit_copy_budget_line (line) : tm_budget_line_new ();
  g_autofree char *source = tm_form_text (form->source);

  *problem = NULL;
  read->method = tm_job_intern (job, method);
  read->kind = (TmLineKind)tm_form_chosen (form->kind);
  read->source = tm_job_intern (job, source);
  if (tm_form_read_name (form->name, job, &read->name, problem)
      && read_value (form, job, &read->value, problem) && read_distribution (form, job, read, problem)
      && read_above_zero (form->divisor, &read->divisor, problem)
      && read_above_zero (form->dof, &read->dof, problem) && check_dof (form, read, problem))
    return read;
  tm_budget_line_free (read);
  return NULL;
}
