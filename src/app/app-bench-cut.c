/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-bench-cut: planning and recording cuts at the Bench.
 */

#include <glib/gi18n-lib.h>

#include "app-bench-page-private.h"
#include "app-cut-history.h"
#include "app-cut-words.h"
#include "app-edit-tool.h"
#include "app-feature-words.h"
#include "app-toast.h"
#include "app-tool-dialog.h"

static TmBench *
get_bench (TmBenchPage *self)
{
  return tm_document_bench (self->document);
}

static void
history_known (gpointer data)
{
  TmBenchPage *self = TM_BENCH_PAGE (data);
  if (self->document != NULL && self->planning)
    tm_bench_page_show_cut (self);
}

/* What the tool did on other jobs comes in a moment; until then the plan is made without. */
static void
ask_history (TmBenchPage *self)
{
  const TmTool *tool = tm_bench_tool (get_bench (self));
  if (tool != NULL)
    tm_cut_history_ask (self->document, tool->name, G_OBJECT (self), history_known, self);
}

/* The hand either reads or cuts: one entry at a time. */
static void
swap_entries (TmBenchPage *self)
{
  tm_station_chips_set_offered (self->chips, !self->planning);
  gtk_widget_set_visible (GTK_WIDGET (self->entry), !self->planning);
  gtk_widget_set_visible (GTK_WIDGET (self->cut_bar), self->planning);
  tm_pictures_hold_band (self->pictures, self->planning);
  tm_verdict_panel_set_planning (self->panel, self->planning);
  tm_bench_page_show_pins (self);
  tm_bench_page_show_drawing (self);
  if (!self->planning)
    tm_station_chips_show (self->chips, self->document);
}

void
tm_bench_page_set_planning (TmBenchPage *self, gboolean planning)
{
  if (self->planning == planning)
    return;
  self->planning = planning;
  swap_entries (self);
  if (self->has_judgement)
    tm_bench_page_show_limits (self);
  tm_bench_page_show_cut (self);
  tm_bench_page_show_panel (self);
  if (planning)
    tm_cut_bar_focus (self->cut_bar);
  else
    tm_reading_entry_focus (self->entry);
}

void
tm_bench_page_leave_cut (TmBenchPage *self)
{
  tm_cut_bar_drop_document (self->cut_bar);
  if (!self->planning)
    return;
  self->planning = FALSE;
  swap_entries (self);
}

void
tm_bench_page_toggle_cut (TmBenchPage *self)
{
  const TmFeature *feature = tm_bench_spot (get_bench (self))->feature;
  if (!self->planning && !tm_feature_is_cut_to_size (feature))
    {
      tm_window_toast (GTK_WIDGET (self),
                       _ ("Bores, shafts, lengths and depths are cut to a size: this feature is none."));
      return;
    }
  tm_bench_page_set_planning (self, !self->planning);
}

void
tm_bench_page_show_cut (TmBenchPage *self)
{
  const TmFeature *feature = tm_bench_spot (get_bench (self))->feature;
  if (self->planning && (feature == NULL || !tm_feature_is_cut_to_size (feature)))
    {
      tm_bench_page_set_planning (self, FALSE);
      return;
    }
  if (self->planning)
    {
      tm_cut_bar_show (self->cut_bar, self->document);
      ask_history (self);
    }
  tm_bench_page_show_plot (self);
}

/* After a cut the reading entry stands ready again: what it proves is not known any more. */
static void
finish_cut (TmBenchPage *self)
{
  const TmCutRow *cut = tm_bench_newest (get_bench (self)).cut;
  g_autofree char *what = cut != NULL ? tm_words_cut_row (cut) : g_strdup ("");
  g_autofree char *text = g_strdup_printf (
      _ ("Recorded %s. Stop and isolate the spindle, clear chips, deburr, then read it."), what);
  tm_cut_bar_clear (self->cut_bar);
  tm_bench_page_set_planning (self, FALSE);
  tm_window_clear_error (GTK_WIDGET (self));
  tm_window_toast (GTK_WIDGET (self), text);
}

static void
show_refusal (TmBenchPage *self, TmSubmit submit, const char *text, const GError *error)
{
  if (submit == TM_SUBMIT_ASKED)
    {
      TmCutAdvice tried;
      g_autofree char *question = NULL;
      if (!tm_bench_cut_try (get_bench (self), text, &tried, NULL))
        question = g_strdup_printf (_ ("%s is far more than there is metal. Was that really dialled? Press "
                                       "Enter again to record it."),
                                    text);
      else
        question = tm_words_cut_question (&tried, text);
      tm_cut_bar_say (self->cut_bar, question, TRUE);
    }
  else if (error != NULL)
    tm_cut_bar_say (self->cut_bar, error->message, FALSE);
  if (submit == TM_SUBMIT_FAILED && error != NULL)
    tm_window_show_error (GTK_WIDGET (self), error->message);
}

void
tm_bench_page_submit_cut (TmBenchPage *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = g_strdup (tm_cut_bar_text (self->cut_bar));
  g_autofree char *note = g_strdup (tm_cut_bar_note (self->cut_bar));
  if (*text == '\0' && *tm_cut_bar_text (self->cut_bar) != '\0')
    {
      tm_cut_bar_say (self->cut_bar, _ ("Was this dialled? Press Enter again to record the cut."), TRUE);
      return;
    }
  if (!tm_cut_bar_is_settled (self->cut_bar))
    return;
  TmSubmit submit
      = tm_document_submit_cut (self->document, text, tm_cut_bar_passes (self->cut_bar), note, &error);
  if (submit == TM_SUBMIT_RECORDED)
    finish_cut (self);
  else
    show_refusal (self, submit, text, error);
}

void
tm_bench_page_say_unlike (TmBenchPage *self, const TmReading *reading)
{
  const TmCutRow *cut = tm_job_last_cut (tm_document_job (self->document), reading->row.piece,
                                         reading->row.feature, reading->place);
  TmCutOutcome outcome;
  if (cut == NULL || !tm_bench_cut_outcome (get_bench (self), cut, &outcome) || !outcome.unlike)
    return;
  g_autofree char *text = tm_words_cut_unlike (&outcome);
  if (*text != '\0')
    tm_window_show_error (GTK_WIDGET (self), text);
}

/* A feature without a tool of its own keeps the one chosen, as it does a gauge. */
static void
choose_tool (TmBenchPage *self, const char *name)
{
  g_autoptr (GError) error = NULL;
  const TmFeature *feature = tm_bench_spot (get_bench (self))->feature;
  tm_bench_set_tool (get_bench (self), name);
  if (*feature->tool == '\0' && !tm_edit_set_feature_tool (self->document, feature->balloon, name, &error))
    tm_window_show_error (GTK_WIDGET (self), error->message);
  tm_bench_page_show_cut (self);
  tm_cut_bar_focus (self->cut_bar);
}

static void
tool_saved (GtkWidget *widget, const char *name)
{
  TmBenchPage *self = TM_BENCH_PAGE (widget);
  if (self->document != NULL && self->planning)
    choose_tool (self, name);
}

static void
edit_tool_cb (TmCutChoices *choices, const char *name, TmBenchPage *self)
{
  if (self->document == NULL)
    return;
  tm_tool_dialog_present (GTK_WIDGET (self), self->document, *name != '\0' ? name : NULL, tool_saved);
}

static void
tool_chosen_cb (TmCutChoices *choices, const char *name, TmBenchPage *self)
{
  if (self->document != NULL)
    choose_tool (self, name);
}

static void
mate_chosen_cb (TmCutChoices *choices, const char *serial, TmBenchPage *self)
{
  if (self->document == NULL)
    return;
  tm_bench_set_cut_mate (get_bench (self), serial);
  tm_bench_page_show_cut (self);
  tm_cut_bar_focus (self->cut_bar);
}

static void
record_cb (TmCutBar *bar, TmBenchPage *self)
{
  tm_bench_page_submit_cut (self);
}

static void
tried_cb (TmCutBar *bar, TmBenchPage *self)
{
  tm_bench_page_show_plot (self);
}

/* Dragging the aim is as good as typing: the nearest mark of the dial goes into the entry. */
static void
aim_moved_cb (TmBandView *view, gint64 size, TmBenchPage *self)
{
  if (self->document != NULL && self->planning)
    tm_cut_bar_set_dial (self->cut_bar, tm_bench_cut_dial_for (get_bench (self), size));
}

void
tm_bench_page_connect_cut (TmBenchPage *self)
{
  TmCutChoices *choices = tm_cut_bar_choices (self->cut_bar);
  g_signal_connect (self->cut_bar, "record", G_CALLBACK (record_cb), self);
  g_signal_connect (self->cut_bar, "tried", G_CALLBACK (tried_cb), self);
  g_signal_connect (choices, "tool-chosen", G_CALLBACK (tool_chosen_cb), self);
  g_signal_connect (choices, "edit-tool", G_CALLBACK (edit_tool_cb), self);
  g_signal_connect (choices, "mate-chosen", G_CALLBACK (mate_chosen_cb), self);
  g_signal_connect (tm_pictures_get (self->pictures, TM_PICTURE_BAND), "aim-moved", G_CALLBACK (aim_moved_cb),
                    self);
}
