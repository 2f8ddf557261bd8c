/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-event-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-dialog.h"
#include "app-edit-event.h"
#include "app-event-form.h"
#include "app-event-words.h"
#include "app-form-dialog.h"

typedef struct {
  TmDocument *document;
  TmEvent *event; /* of the job, or NULL; only compared until it is found there again */
  TmFormDialog window;
  TmEventForm form;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  tm_event_form_clear (&dialog->form);
  g_object_unref (dialog->document);
  g_free (dialog);
}

static TmEvent *
find_event (Dialog *dialog)
{
  const TmJob *job = tm_document_job (dialog->document);

  return g_ptr_array_find (job->events, dialog->event, NULL) ? dialog->event : NULL;
}

static char *
say_saved (const TmJob *job, const TmEvent *event)
{
  g_autofree char *what = tm_words_event (job, event);
  g_autofree char *where = tm_words_event_place (event);

  return g_strdup_printf (_ ("Recorded: %s, %s"), what, where);
}

static void
save_cb (Dialog *dialog)
{
  TmJob *job = tm_document_job (dialog->document);
  TmEvent *old = find_event (dialog);
  g_autofree char *problem = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  TmEvent *event = tm_event_form_read (&dialog->form, job, old, &problem);

  if (event == NULL)
    {
      tm_dialog_problem_set (dialog->window.problem, problem);
      return;
    }
  text = say_saved (job, event);
  if (tm_edit_put_event (dialog->document, old, event, &error))
    tm_form_dialog_done (&dialog->window, text);
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

static void
remove_cb (Dialog *dialog)
{
  TmEvent *old = find_event (dialog);
  g_autofree char *what = old != NULL ? tm_words_event (tm_document_job (dialog->document), old) : NULL;
  g_autofree char *text = g_strdup_printf (_ ("Removed: %s"), what != NULL ? what : "");
  g_autoptr (GError) error = NULL;

  if (old == NULL || tm_edit_remove_event (dialog->document, old, &error))
    tm_form_dialog_done (&dialog->window, text);
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

/* Enter in a row saves, as in any form. */
static void
connect (Dialog *dialog)
{
  AdwEntryRow *rows[]
      = { dialog->form.before, dialog->form.amount, dialog->form.note, dialog->form.by, dialog->form.at };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_signal_connect_swapped (rows[i], "entry-activated", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->window.remove, "clicked", G_CALLBACK (remove_cb), dialog);
}

static GtkWindow *
present (GtkWidget *any_child, TmDocument *document, TmEvent *event, const TmEvent *shown)
{
  Dialog *dialog = g_new0 (Dialog, 1);

  dialog->document = g_object_ref (document);
  dialog->event = event;
  tm_form_dialog_build (&dialog->window, any_child,
                        event != NULL ? _ ("Event between pieces") : _ ("New event between pieces"), 540,
                        640);
  tm_event_form_build (&dialog->form, dialog->window.rows, tm_document_job (document));
  tm_event_form_fill (&dialog->form, shown);
  gtk_widget_set_visible (dialog->window.remove, event != NULL);
  connect (dialog);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  /* What an advice has filled in only wants to be agreed to. */
  gtk_widget_grab_focus (event == NULL && *shown->amount != '\0' ? dialog->window.save
                                                                 : GTK_WIDGET (dialog->form.kind));
  gtk_window_present (dialog->window.window);
  return dialog->window.window;
}

GtkWindow *
tm_event_dialog_present (GtkWidget *any_child, TmDocument *document, TmEvent *event)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (document) && event != NULL, NULL);

  return present (any_child, document, event, event);
}

/* The piece made next, as far as the record knows: the one after the last that was measured; "" where that
 * is the last. */
static const char *
find_next_piece (const TmJob *job)
{
  const TmPiece *last = NULL;
  guint at = 0;

  for (guint i = 0; i < job->readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (job->readings, i);
      guint piece;

      if (tm_row_stands (&reading->row) && reading->row.piece != last
          && g_ptr_array_find (job->pieces, reading->row.piece, &piece))
        {
          last = reading->row.piece;
          at = MAX (at, piece + 1);
        }
    }
  return at < job->pieces->len ? ((const TmPiece *)g_ptr_array_index (job->pieces, at))->serial : "";
}

static const char *
find_only_tool (const TmJob *job)
{
  return job->tools->len == 1 ? ((const TmTool *)g_ptr_array_index (job->tools, 0))->name : "";
}

GtkWindow *
tm_event_dialog_present_new (GtkWidget *any_child, TmDocument *document, const TmEvent *proposal)
{
  g_autofree char *now = tm_now_utc ();
  TmEvent *shown;
  GtkWindow *window;

  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);

  shown = proposal != NULL ? tm_edit_copy_event (proposal) : tm_event_new ();
  if (proposal == NULL)
    {
      shown->kind = "tool";
      shown->before_piece = find_next_piece (tm_document_job (document));
      shown->tool = find_only_tool (tm_document_job (document));
    }
  shown->by = tm_bench_by (tm_document_bench (document));
  shown->at = now;
  window = present (any_child, document, NULL, shown);
  tm_event_free (shown);
  return window;
}
