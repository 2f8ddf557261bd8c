/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-signed-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-form.h"
#include "app-hand-out.h"
#include "app-words.h"
#include "book-store.h"

#define WIDTH  760
#define HEIGHT 590

typedef struct {
  TmDocument *document;
  TmSignature signature; /* its texts are the job's */
  GtkLabel *problem;
  GtkWidget *first; /* what the keyboard begins at */
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  g_free (dialog);
}

const char *
tm_words_signed_state (TmSignedState state)
{
  switch (state)
    {
    case TM_SIGNED_HOLDS:
      return _ ("Holds: the record is as it was signed");
    case TM_SIGNED_SUPERSEDED:
      return _ ("Superseded: the record has changed since");
    case TM_SIGNED_UNKNOWN:
    default:
      return _ ("Not compared with the record yet");
    }
}

static GtkWidget *
add_row (AdwPreferencesGroup *group, const char *title, const char *value)
{
  GtkWidget *row = adw_action_row_new ();
  g_autofree char *spoken = g_strdup_printf ("%s: %s", title, value);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), value);
  adw_action_row_set_subtitle_lines (ADW_ACTION_ROW (row), 0);
  tm_name_widget (row, spoken);
  adw_preferences_group_add (group, row);
  return row;
}

static void
build_facts (GtkBox *into, const TmJob *job, const TmSignature *signature, TmSignedState state)
{
  AdwPreferencesGroup *group = tm_form_group (into, _ ("Signature"), NULL);
  gboolean known = g_strv_contains (tm_report_roles (), signature->role);
  g_autofree char *time = tm_words_time (signature->at);
  g_autofree char *who = g_strdup_printf ("%s, %s", tm_report_signer (job, signature), time);

  add_row (group, known ? _ (signature->role) : signature->role, who);
  add_row (group, _ ("Report"), *signature->report != '\0' ? signature->report : _ ("no identifier"));
  add_row (group, _ ("State"), tm_words_signed_state (state));
  add_row (group, _ ("SHA-256 of the record that was signed"), signature->digest);
}

/* -------- Files -------- */

static void
save_cb (GtkWidget *button, Dialog *dialog)
{
  TmHandOut what = (TmHandOut)GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "what"));

  tm_hand_out_save (button, dialog->document, &dialog->signature, what, dialog->problem);
}

static void
open_cb (GtkWidget *button, Dialog *dialog)
{
  TmHandOut what = (TmHandOut)GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "what"));

  tm_hand_out_open (dialog->document, &dialog->signature, what, dialog->problem);
}

static GtkWidget *
add_button (Dialog *dialog, GtkWidget *row, const char *label, const char *spoken, TmHandOut what,
            GCallback clicked)
{
  GtkWidget *button = tm_button_new (label);

  tm_name_widget (button, spoken);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_object_set_data (G_OBJECT (button), "what", GINT_TO_POINTER (what));
  g_signal_connect (button, "clicked", clicked, dialog);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), button);
  return button;
}

/* NULL: it is kept; else what stands in its place. */
static char *
find_reason (Dialog *dialog, const char *digest)
{
  g_autoptr (GError) error = NULL;
  gboolean kept = FALSE;

  if (*digest != '\0'
      && !tm_book_keeps_content (tm_document_book (dialog->document), tm_document_job (dialog->document)->id,
                                 digest, &kept, &error))
    return g_strdup (error->message);
  return kept ? NULL : g_strdup (_ ("Not in this book: look for it where the report was signed."));
}

static void
add_file (Dialog *dialog, AdwPreferencesGroup *group, TmHandOut what)
{
  const char *digest = tm_hand_out_digest (&dialog->signature, what);
  g_autofree char *reason = find_reason (dialog, digest);
  gboolean pages = what == TM_HAND_OUT_PAGES;
  g_autofree char *text = g_strdup_printf ("SHA-256 %s", digest);
  GtkWidget *row
      = add_row (group, pages ? _ ("Pages (PDF)") : _ ("Workbook"), reason != NULL ? reason : text);
  GtkWidget *first;

  if (reason != NULL)
    return;
  first = add_button (dialog, row, pages ? _ ("_Open") : _ ("O_pen"),
                      pages ? _ ("Open the signed pages") : _ ("Open the signed workbook"), what,
                      G_CALLBACK (open_cb));
  add_button (dialog, row, pages ? _ ("_Save…") : _ ("S_ave…"),
              pages ? _ ("Save the signed pages") : _ ("Save the signed workbook"), what,
              G_CALLBACK (save_cb));
  if (dialog->first == NULL)
    dialog->first = first;
}

static void
build_files (Dialog *dialog, GtkBox *into)
{
  AdwPreferencesGroup *group
      = tm_form_group (into, _ ("Hand out again"),
                       _ ("The files as they were signed, byte for byte, whatever has changed since."));

  add_file (dialog, group, TM_HAND_OUT_PAGES);
  add_file (dialog, group, TM_HAND_OUT_WORKBOOK);
}

GtkWindow *
tm_signed_dialog_present (GtkWidget *any_child, TmDocument *document, const TmSignature *signature,
                          TmSignedState state)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  GtkWidget *outer = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *inner = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWindow *window;

  dialog->document = g_object_ref (document);
  dialog->signature = *signature;
  dialog->problem = tm_dialog_problem_new ();
  gtk_widget_add_css_class (inner, "tm-dialog");
  build_facts (GTK_BOX (inner), tm_document_job (document), signature, state);
  build_files (dialog, GTK_BOX (inner));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), inner);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (outer), GTK_WIDGET (dialog->problem));
  gtk_box_append (GTK_BOX (outer), scroller);
  window = tm_dialog_new (any_child, _ ("Signed report"), WIDTH, HEIGHT, outer);
  g_object_set_data_full (G_OBJECT (window), "dialog", dialog, free_dialog);
  gtk_window_present (window);
  if (dialog->first != NULL)
    gtk_widget_grab_focus (dialog->first);
  return window;
}
