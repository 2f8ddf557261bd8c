/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-event-form.h"

#include <glib/gi18n-lib.h>

#include "app-edit-event.h"
#include "app-event-words.h"
#include "app-feature-words.h"
#include "app-form-read.h"
#include "app-form.h"

static guint
count_kinds (void)
{
  guint n = 0;

  while (tm_event_kind_word (n) != NULL)
    n++;
  return n;
}

static const char *
chosen_kind (TmEventForm *form)
{
  const char *word = tm_event_kind_word (tm_form_chosen (form->kind));

  return word != NULL ? word : form->foreign_kind != NULL ? form->foreign_kind : "other";
}

static const TmFeature *
chosen_feature (TmEventForm *form)
{
  guint chosen = tm_form_chosen (form->feature);

  return chosen > 0 && chosen <= form->job->features->len
             ? g_ptr_array_index (form->job->features, chosen - 1)
             : NULL;
}

/* An offset has its amount, in the unit of what it is about; nothing else has one. */
static void
show_amount (TmEventForm *form)
{
  const TmFeature *feature = chosen_feature (form);
  const TmUnit unit = feature != NULL ? feature->unit : form->job->unit;
  g_autofree char *title = g_strdup_printf (_ ("Change of size, %s"), tm_unit_symbol (unit));

  gtk_widget_set_visible (GTK_WIDGET (form->amount), g_str_equal (chosen_kind (form), "offset"));
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (form->amount), title);
}

void
tm_event_form_build (TmEventForm *form, GtkBox *into, const TmJob *job)
{
  AdwPreferencesGroup *what = tm_form_group (into, _ ("What happened"), NULL);
  AdwPreferencesGroup *about = tm_form_group (into, _ ("What it is about"),
                                              _ ("A new tool, an offset or a new lot begins a new stretch of "
                                                 "the feature, or of all that the tool cuts; a "
                                                 "note does not."));
  AdwPreferencesGroup *who = tm_form_group (into, _ ("Record"), NULL);

  form->job = job;
  form->kind = tm_form_choice (what, _ ("Kind"), (const char *const[]) { NULL });
  form->amount = tm_form_entry (what, _ ("Change of size"));
  form->before = tm_form_entry (what, _ ("Before piece; empty: after the last"));
  form->feature = tm_form_choice (about, _ ("Feature"), (const char *const[]) { NULL });
  form->tool = tm_form_choice (about, _ ("Tool"), (const char *const[]) { NULL });
  form->note = tm_form_entry (who, _ ("Note"));
  form->by = tm_form_entry (who, _ ("By, initials"));
  form->at = tm_form_entry (who, _ ("At, like 2026-05-04 11:12"));
  g_signal_connect_swapped (form->kind, "notify::selected", G_CALLBACK (show_amount), form);
  g_signal_connect_swapped (form->feature, "notify::selected", G_CALLBACK (show_amount), form);
}

static void
fill_kinds (TmEventForm *form, const char *kind)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  guint chosen = count_kinds ();

  for (guint i = 0; tm_event_kind_word (i) != NULL; i++)
    {
      if (g_str_equal (kind, tm_event_kind_word (i)))
        chosen = i;
      g_ptr_array_add (words, (gpointer)tm_words_event_kind (tm_event_kind_word (i)));
    }
  g_clear_pointer (&form->foreign_kind, g_free);
  if (chosen == count_kinds () && *kind != '\0')
    {
      form->foreign_kind = g_strdup (kind);
      g_ptr_array_add (words, form->foreign_kind);
    }
  else if (chosen == count_kinds ())
    chosen = 0;
  g_ptr_array_add (words, NULL);
  tm_form_set_words (form->kind, (const char *const *)words->pdata, chosen);
}

static void
fill_features (TmEventForm *form, const char *balloon)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  guint chosen = 0;

  g_ptr_array_add (words, g_strdup (_ ("all")));
  for (guint i = 0; i < form->job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (form->job->features, i);

      if (g_str_equal (feature->balloon, balloon))
        chosen = words->len;
      g_ptr_array_add (words, tm_words_feature (feature));
    }
  g_ptr_array_add (words, NULL);
  tm_form_set_words (form->feature, (const char *const *)words->pdata, chosen);
}

static void
fill_tools (TmEventForm *form, const char *name)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  guint chosen = 0;

  g_ptr_array_add (words, (gpointer)_ ("none"));
  for (guint i = 0; i < form->job->tools->len; i++)
    {
      const TmTool *tool = g_ptr_array_index (form->job->tools, i);

      if (g_str_equal (tool->name, name))
        chosen = words->len;
      g_ptr_array_add (words, (gpointer)tool->name);
    }
  g_ptr_array_add (words, NULL);
  tm_form_set_words (form->tool, (const char *const *)words->pdata, chosen);
}

void
tm_event_form_fill (TmEventForm *form, const TmEvent *event)
{
  g_autofree char *at = tm_words_clock_from_utc (event->at);

  fill_features (form, event->feature);
  fill_tools (form, event->tool);
  fill_kinds (form, event->kind);
  tm_form_fill_text (form->before, event->before_piece);
  tm_form_fill_text (form->amount, event->amount);
  tm_form_fill_text (form->note, event->note);
  tm_form_fill_text (form->by, event->by);
  tm_form_fill_text (form->at, at);
  show_amount (form);
}

void
tm_event_form_clear (TmEventForm *form)
{
  g_clear_pointer (&form->foreign_kind, g_free);
}

static gboolean
read_before (TmEventForm *form, TmJob *job, TmEvent *event, char **problem)
{
  g_autofree char *serial = tm_form_text (form->before);

  tm_form_mark_wrong (form->before, FALSE);
  if (*serial != '\0' && tm_job_find_piece (job, serial) == NULL)
    return tm_form_refuse (form->before, problem,
                           g_strdup_printf (_ ("Before piece: the job has no piece “%s”; write the serial as "
                                               "in the list of pieces, or nothing for after the last."),
                                            serial));
  event->before_piece = tm_job_intern (job, serial);
  return TRUE;
}

/* Kept as it was written. */
static gboolean
read_amount (TmEventForm *form, TmJob *job, TmEvent *event, char **problem)
{
  g_autofree char *text = tm_form_text (form->amount);
  TmQuantity amount;

  tm_form_mark_wrong (form->amount, FALSE);
  if (!g_str_equal (event->kind, "offset"))
    return TRUE;
  if (!tm_form_read_signed (form->amount, tm_event_unit (job, event), &amount, problem))
    return FALSE;
  if (!amount.given || amount.count == 0)
    return tm_form_refuse (
        form->amount, problem,
        g_strdup (_ ("Change of size: an offset needs one, other than zero, like -0.005.")));
  event->amount = tm_job_intern (job, text);
  return TRUE;
}

static gboolean
read_time (TmEventForm *form, TmJob *job, TmEvent *event, char **problem)
{
  g_autofree char *text = tm_form_text (form->at);
  g_autofree char *before = tm_words_clock_from_utc (event->at);
  g_autofree char *utc = NULL;

  tm_form_mark_wrong (form->at, FALSE);
  /* Left as it was, its seconds stay. */
  if (g_str_equal (text, before))
    return TRUE;
  utc = tm_words_clock_to_utc (text);
  if (utc == NULL)
    return tm_form_refuse (
        form->at, problem,
        g_strdup_printf (_ ("At: “%s” is no time; write it like 2026-05-04 11:12, or nothing."), text));
  event->at = tm_job_intern (job, utc);
  return TRUE;
}

static void
read_choices (TmEventForm *form, TmJob *job, TmEvent *event)
{
  const TmFeature *feature = chosen_feature (form);
  const guint tool = tm_form_chosen (form->tool);

  event->kind = tm_job_intern (job, chosen_kind (form));
  event->feature = feature != NULL ? feature->balloon : tm_job_intern (job, "");
  event->tool = tool > 0 && tool <= job->tools->len
                    ? ((const TmTool *)g_ptr_array_index (job->tools, tool - 1))->name
                    : tm_job_intern (job, "");
}

TmEvent *
tm_event_form_read (TmEventForm *form, TmJob *job, const TmEvent *event, char **problem)
{
  TmEvent *read = event != NULL ? tm_edit_copy_event (event) : tm_event_new ();
  g_autofree char *note = tm_form_text (form->note);
  g_autofree char *by = tm_form_text (form->by);

  *problem = NULL;
  read_choices (form, job, read);
  read->note = tm_job_intern (job, note);
  read->by = tm_job_intern (job, by);
  if (read_amount (form, job, read, problem) && read_before (form, job, read, problem)
      && read_time (form, job, read, problem))
    return read;
  tm_event_free (read);
  return NULL;
}
