/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauge-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-edit.h"
#include "app-form-dialog.h"
#include "app-gauge-form.h"

/* Pixels. */
#define DIALOG_WIDTH  560
#define DIALOG_HEIGHT 680

typedef struct {
  TmDocument *document;
  char *tag; /* of the gauge as it is in the job; NULL: a new one */
  TmFormDialog window;
  TmGaugeForm form;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  tm_gauge_form_clear (&dialog->form);
  g_free (dialog->tag);
  g_free (dialog);
}

static const TmGauge *
find_gauge (Dialog *dialog, const char *tag)
{
  return tag != NULL ? tm_job_find_gauge (tm_document_job (dialog->document), tag) : NULL;
}

static gboolean
save_gauge (gpointer form, char **said, GError **error)
{
  Dialog *dialog = form;
  TmGauge *gauge = tm_gauge_form_read (&dialog->form, tm_document_job (dialog->document),
                                       find_gauge (dialog, dialog->tag), said);

  if (gauge == NULL)
    return FALSE;
  *said = g_strdup_printf (dialog->tag != NULL ? _ ("Saved gauge %s") : _ ("Added gauge %s"), gauge->tag);
  return tm_edit_put_gauge (dialog->document, dialog->tag, gauge, error);
}

GtkWidget *
tm_gauge_dialog_present (GtkWidget *any_child, TmDocument *document, const char *tag, const char *copy_of)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  g_autofree char *title = tag != NULL ? g_strdup_printf (_ ("Gauge %s"), tag) : g_strdup (_ ("Add a gauge"));
  const TmGauge *shown;

  dialog->document = g_object_ref (document);
  dialog->tag = g_strdup (tag);
  tm_form_dialog_build (&dialog->window, any_child, title, DIALOG_WIDTH, DIALOG_HEIGHT);
  tm_button_set_label (dialog->window.save, tag != NULL ? _ ("_Save") : _ ("_Add"));
  tm_gauge_form_build (&dialog->form, dialog->window.rows);
  shown = find_gauge (dialog, tag != NULL ? tag : copy_of);
  tm_gauge_form_fill (&dialog->form, shown, tm_document_job (document)->unit, tag == NULL && shown != NULL);
  tm_gauge_form_connect (&dialog->form, &dialog->window);
  tm_form_dialog_act (&dialog->window, save_gauge, NULL, dialog, free_dialog);
  return GTK_WIDGET (tm_form_dialog_present (&dialog->window, GTK_WIDGET (dialog->form.tag)));
}
