/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-sample-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "app-dialog.h"
#include "app-edit-chart.h"
#include "app-form-dialog.h"
#include "app-form.h"

#define LOT_MOST   1000000
#define EVERY_MOST 10000

enum { PLAN_EACH, PLAN_FIRST, PLAN_EVERY };

typedef struct {
  TmDocument *document;
  char *balloon;
  TmSpread spread;
  TmFormDialog window;
  AdwComboRow *plan;
  AdwEntryRow *every;
  AdwEntryRow *lot, *share, *risk;
  GtkLabel *sample;
  AdwEntryRow *coverage, *confidence;
  GtkLabel *interval;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  g_free (dialog->balloon);
  g_free (dialog);
}

static gboolean
read_whole (AdwEntryRow *row, guint least, guint most, guint *out)
{
  g_autofree char *text = tm_form_text (row);
  guint64 number;

  if (!g_ascii_string_to_unsigned (text, 10, least, most, &number, NULL))
    return FALSE;
  *out = (guint)number;
  return TRUE;
}

/* -------- Answers that follow what is typed -------- */

static gboolean
read_share (AdwEntryRow *row, double *share)
{
  g_autofree char *text = tm_form_text (row);

  return tm_read_percent (text, share);
}

static void
show_sample (Dialog *dialog)
{
  guint lot;
  double share, risk;
  g_autofree char *words = NULL;

  if (!read_whole (dialog->lot, 1, LOT_MOST, &lot))
    words = g_strdup_printf (_ ("Pieces in the lot: write a whole number from 1 to %d."), LOT_MOST);
  else if (!read_share (dialog->share, &share))
    words = g_strdup (_ ("Share out: write a percentage between 0 and 100, like 5."));
  else if (!read_share (dialog->risk, &risk))
    words = g_strdup (_ ("Chance that such a lot passes: write a percentage between 0 and 100, like 5."));
  else
    words = tm_words_lot_sample (lot, share, risk);
  gtk_label_set_text (dialog->sample, words);
}

static void
show_interval (Dialog *dialog)
{
  const TmFeature *feature = tm_job_find_feature (tm_document_job (dialog->document), dialog->balloon);
  double coverage, confidence;
  g_autofree char *words = NULL;

  if (!read_share (dialog->coverage, &coverage) || !read_share (dialog->confidence, &confidence))
    words = g_strdup (_ ("Write percentages between 0 and 100, like 99 and 95."));
  else if (feature != NULL)
    words = tm_words_tolerance_interval (feature, &dialog->spread, coverage, confidence);
  gtk_label_set_text (dialog->interval, words != NULL ? words : "");
}

static void
show_plan (Dialog *dialog)
{
  gtk_widget_set_visible (GTK_WIDGET (dialog->every), tm_form_chosen (dialog->plan) == PLAN_EVERY);
}

/* -------- Saving the plan -------- */

static char *
read_plan (Dialog *dialog, char **problem)
{
  guint n;

  tm_form_mark_wrong (dialog->every, FALSE);
  switch (tm_form_chosen (dialog->plan))
    {
    case PLAN_FIRST:
      return g_strdup ("first");
    case PLAN_EVERY:
      if (read_whole (dialog->every, 2, EVERY_MOST, &n))
        return g_strdup_printf ("every %u", n);
      tm_form_refuse (
          dialog->every, problem,
          g_strdup_printf (_ ("Of how many pieces one is measured: write a whole number from 2 to %d."),
                           EVERY_MOST));
      return NULL;
    default:
      return g_strdup ("each");
    }
}

static void
save_cb (Dialog *dialog)
{
  TmFeature *feature = tm_job_find_feature (tm_document_job (dialog->document), dialog->balloon);
  g_autofree char *problem = NULL;
  g_autofree char *check = read_plan (dialog, &problem);
  g_autofree char *text
      = g_strdup_printf (_ ("Changed which pieces are measured for feature %s"), dialog->balloon);
  g_autoptr (GError) error = NULL;

  if (feature == NULL)
    {
      g_free (problem);
      problem = g_strdup_printf (_ ("Feature %s is not in the job any more; cancel."), dialog->balloon);
    }
  else if (check != NULL && tm_edit_check_plan (dialog->document, feature, check, &error))
    {
      tm_form_dialog_done (&dialog->window, text);
      return;
    }
  tm_dialog_problem_set (dialog->window.problem, error != NULL ? error->message : problem);
}

/* -------- The window -------- */

static GtkLabel *
add_answer (GtkBox *into)
{
  GtkWidget *label = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "tm-answer");
  gtk_box_append (into, label);
  return GTK_LABEL (label);
}

static GtkBox *
add_section (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_box_append (dialog->window.rows, box);
  return GTK_BOX (box);
}

static void
build_plan (Dialog *dialog)
{
  const char *words[] = { [PLAN_EACH] = _ ("each piece"),
                          [PLAN_FIRST] = _ ("the first piece"),
                          [PLAN_EVERY] = _ ("one of so many pieces"),
                          NULL };
  AdwPreferencesGroup *group = tm_form_group (dialog->window.rows, _ ("Which pieces of this job"),
                                              _ ("Saved with the feature: the others are not asked for."));

  dialog->plan = tm_form_choice (group, _ ("Measure"), words);
  dialog->every = tm_form_entry (group, _ ("One of how many"));
}

static void
build_answers (Dialog *dialog)
{
  GtkBox *lot = add_section (dialog);
  GtkBox *spread = add_section (dialog);
  AdwPreferencesGroup *asked
      = tm_form_group (lot, _ ("Sample of a lot"), _ ("A lot that is too bad must hardly ever pass."));
  AdwPreferencesGroup *sure = tm_form_group (
      spread, _ ("Where nearly all pieces lie"),
      _ ("From the pieces of this feature measured so far, as long as they are of one normal process."));

  dialog->lot = tm_form_entry (asked, _ ("Pieces in the lot"));
  dialog->share = tm_form_entry (asked, _ ("Share out that must not pass (%)"));
  dialog->risk = tm_form_entry (asked, _ ("Chance that such a lot passes (%)"));
  dialog->sample = add_answer (lot);
  dialog->coverage = tm_form_entry (sure, _ ("Share of pieces that lie between (%)"));
  dialog->confidence = tm_form_entry (sure, _ ("How sure (%)"));
  dialog->interval = add_answer (spread);
}

static void
fill_plan (Dialog *dialog, const char *check)
{
  const gboolean every = g_str_has_prefix (check, "every ");

  adw_combo_row_set_selected (dialog->plan, every                          ? PLAN_EVERY
                                            : g_str_equal (check, "first") ? PLAN_FIRST
                                                                           : PLAN_EACH);
  tm_form_set_text (dialog->every, every ? check + strlen ("every ") : "5");
}

static void
fill (Dialog *dialog, const TmFeature *feature)
{
  const guint n_pieces = tm_document_job (dialog->document)->pieces->len;
  g_autofree char *lot = g_strdup_printf ("%u", MAX (n_pieces, 1));

  fill_plan (dialog, feature->check);
  tm_form_set_text (dialog->lot, lot);
  tm_form_set_text (dialog->share, "5");
  tm_form_set_text (dialog->risk, "5");
  tm_form_set_text (dialog->coverage, "99");
  tm_form_set_text (dialog->confidence, "95");
}

static void
connect (Dialog *dialog)
{
  AdwEntryRow *lot[] = { dialog->lot, dialog->share, dialog->risk };
  AdwEntryRow *sure[] = { dialog->coverage, dialog->confidence };

  for (guint i = 0; i < G_N_ELEMENTS (lot); i++)
    g_signal_connect_swapped (lot[i], "changed", G_CALLBACK (show_sample), dialog);
  for (guint i = 0; i < G_N_ELEMENTS (sure); i++)
    g_signal_connect_swapped (sure[i], "changed", G_CALLBACK (show_interval), dialog);
  g_signal_connect_swapped (dialog->plan, "notify::selected", G_CALLBACK (show_plan), dialog);
  g_signal_connect_swapped (dialog->every, "entry-activated", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (save_cb), dialog);
}

GtkWindow *
tm_sample_dialog_present (GtkWidget *any_child, TmDocument *document, const TmFeature *feature,
                          const TmSpread *spread)
{
  Dialog *dialog;
  g_autofree char *title = NULL;

  g_return_val_if_fail (TM_IS_DOCUMENT (document) && feature != NULL, NULL);

  title = g_strdup_printf (_ ("How many to measure for feature %s"), feature->balloon);
  dialog = g_new0 (Dialog, 1);
  dialog->document = g_object_ref (document);
  dialog->balloon = g_strdup (feature->balloon);
  if (spread != NULL)
    dialog->spread = *spread;
  tm_form_dialog_build (&dialog->window, any_child, title, 560, 660);
  build_plan (dialog);
  build_answers (dialog);
  fill (dialog, feature);
  connect (dialog);
  show_plan (dialog);
  show_sample (dialog);
  show_interval (dialog);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->plan));
  gtk_window_present (dialog->window.window);
  return dialog->window.window;
}
