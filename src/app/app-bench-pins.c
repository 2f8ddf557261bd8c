/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-bench-pins: trying pins at the Bench.
 */

#include <glib/gi18n-lib.h>

#include "app-bench-page-private.h"
#include "app-pin-words.h"
#include "app-toast.h"

void
tm_bench_page_show_pins (TmBenchPage *self)
{
  gboolean pins = tm_reading_entry_takes_pins (self->entry) && !self->planning;
  if (pins)
    tm_pin_bar_show (self->pin_bar, self->document);
  gtk_widget_set_visible (GTK_WIDGET (self->pin_bar), pins);
}

static void
set_pins (TmBenchPage *self, gboolean pins)
{
  tm_reading_entry_set_pins (self->entry, pins);
  tm_bench_page_show_pins (self);
}

void
tm_bench_page_toggle_pins (TmBenchPage *self)
{
  const TmFeature *feature = tm_bench_spot (tm_document_bench (self->document))->feature;
  if (!tm_feature_takes_pins (feature))
    {
      tm_window_toast (GTK_WIDGET (self), _ ("Pins are tried in bores: this feature is none."));
      return;
    }
  set_pins (self, !tm_reading_entry_takes_pins (self->entry));
  tm_reading_entry_focus (self->entry);
  if (tm_reading_entry_takes_pins (self->entry))
    tm_reading_entry_select (self->entry);
}

void
tm_bench_page_begin_pins (TmBenchPage *self)
{
  const TmBench *bench = tm_document_bench (self->document);
  const TmFeature *feature = tm_bench_spot (bench)->feature;
  const TmJob *job = tm_document_job (self->document);
  const TmMethod *method = tm_job_find_method (job, feature->method);
  const char *tag = method != NULL && method->gauges->len > 0
                        ? g_ptr_array_index (method->gauges, method->gauges->len - 1)
                        : feature->method;
  const TmGauge *gauge = tm_job_find_gauge (job, tag);
  if (gauge != NULL && tm_gauge_is_pins (gauge) && tm_feature_takes_pins (feature))
    set_pins (self, TRUE);
  tm_bench_page_show_pins (self);
}

static void
say_recorded (TmBenchPage *self)
{
  const TmPinTrial *trial = tm_bench_newest (tm_document_bench (self->document)).trial;
  if (trial == NULL)
    return;
  g_auto (TmJudgement) judgement = { 0 };
  tm_judge (tm_document_job (self->document), trial->row.piece, trial->row.feature, trial->place, &judgement);
  g_autofree char *text = tm_words_pin_recorded (trial, &judgement);
  tm_window_clear_error (GTK_WIDGET (self));
  tm_window_toast (GTK_WIDGET (self), text);
}

/* After a trial the next pin stands ready; when there is none to try, readings are taken again. */
static void
offer_next (TmBenchPage *self)
{
  if (!tm_reading_entry_takes_pins (self->entry))
    return;
  tm_document_set_text (self->document, "");
  set_pins (self, tm_bench_next_pin (tm_document_bench (self->document)).given);
}

static void
submit_again (TmBenchPage *self)
{
  g_autofree char *text = g_strdup (tm_bench_text (tm_document_bench (self->document)));
  tm_bench_page_submit_pin (self, text);
}

void
tm_bench_page_submit_pin (TmBenchPage *self, const char *trial)
{
  g_autoptr (GError) error = NULL;
  /* The entry's own text changes while the trial is taken. */
  g_autofree char *text = g_strdup (trial);
  tm_document_set_text (self->document, text);
  TmSubmit submit = tm_document_submit_pin (self->document, text, &error);
  if (submit == TM_SUBMIT_RECORDED)
    {
      say_recorded (self);
      offer_next (self);
      tm_reading_entry_focus (self->entry);
      tm_reading_entry_select (self->entry);
      return;
    }
  if (g_error_matches (error, TM_BENCH_ERROR, TM_BENCH_ERROR_OVERDUE))
    tm_bench_page_ask_overdue (self, error->message, submit_again);
  else if (error != NULL)
    tm_window_show_error (GTK_WIDGET (self), error->message);
}

static void
pin_tried_cb (TmReadingEntry *entry, const char *trial, TmBenchPage *self)
{
  tm_bench_page_submit_pin (self, trial);
}

/* A button is as good as the key; where the text is no pin, the line that the session has for it says why. */
static void
bar_tried_cb (TmPinBar *bar, gboolean went, TmBenchPage *self)
{
  g_autofree char *text = g_strdup (tm_bench_text (tm_document_bench (self->document)));
  if (tm_reading_entry_try_pin (self->entry, went))
    return;
  if (tm_bench_text_is_pin (tm_document_bench (self->document), text))
    tm_window_toast (GTK_WIDGET (self),
                     _ ("The entry already says what the pin did: press Enter to record it."));
  else
    tm_bench_page_submit_pin (self, text);
}

static void
set_chosen_cb (TmPinBar *bar, TmBenchPage *self)
{
  tm_reading_entry_refresh (self->entry);
  tm_reading_entry_focus (self->entry);
}

void
tm_bench_page_connect_pins (TmBenchPage *self)
{
  g_signal_connect (self->entry, "pin-tried", G_CALLBACK (pin_tried_cb), self);
  g_signal_connect (self->pin_bar, "tried", G_CALLBACK (bar_tried_cb), self);
  g_signal_connect (self->pin_bar, "set-chosen", G_CALLBACK (set_chosen_cb), self);
}
