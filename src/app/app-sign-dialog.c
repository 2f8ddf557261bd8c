/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-sign-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-edit-signature.h"
#include "app-form-dialog.h"
#include "app-form.h"
#include "app-toast.h"
#include "report-signed.h"

/* Lines of what is missing that are told one by one. */
#define MOST_MISSING 6
#define WIDTH        560
#define HEIGHT       640
#define HEIGHT_WHOLE 470 /* nothing is missing */

typedef struct {
  TmDocument *document;
  TmSigning *signing;
  TmFormDialog window;
  AdwComboRow *person, *role;
  AdwEntryRow *other;
  GtkCheckButton *although; /* NULL: nothing is missing */
  gboolean busy;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  tm_signing_unref (dialog->signing);
  g_free (dialog);
}

static Dialog *
get_dialog (GtkWidget *inside)
{
  return g_object_get_data (G_OBJECT (gtk_widget_get_root (inside)), "dialog");
}

static guint
count_roles (void)
{
  return g_strv_length ((char **)tm_report_roles ());
}

static gboolean
is_blank (const char *text)
{
  g_autofree char *left = g_strstrip (g_strdup (text));

  return *left == '\0';
}

/* -------- What is signed -------- */

static void
build_facts (Dialog *dialog)
{
  const TmSigning *signing = dialog->signing;
  const char *identifier = signing->job->report_identifier;
  AdwPreferencesGroup *group
      = tm_form_group (dialog->window.rows, _ ("What is signed"),
                       _ ("Pages and workbook are kept as they are now. When the record changes later the "
                          "signature stays, and is marked as superseded."));
  GtkWidget *row = adw_action_row_new ();
  g_autofree char *counts
      = g_strdup_printf (_ ("%u in  ·  %u out  ·  %u too close  ·  %u not measured"), signing->n_in,
                         signing->n_out, signing->n_too_close, signing->n_not_measured);
  g_autofree char *title
      = g_strdup_printf (ngettext ("Report %s, %u page", "Report %s, %u pages", signing->n_pages),
                         is_blank (identifier) ? _ ("without identifier") : identifier, signing->n_pages);
  g_autofree char *spoken = g_strdup_printf ("%s: %s", title, counts);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), counts);
  tm_name_widget (row, spoken);
  adw_preferences_group_add (group, row);
}

/* -------- What is missing -------- */

static void update_cb (Dialog *dialog);

static void
add_although (Dialog *dialog, AdwPreferencesGroup *group, guint n)
{
  GtkWidget *row = adw_action_row_new ();
  g_autofree char *text = g_strdup_printf (
      ngettext ("Sign although %u thing is missing", "Sign although %u things are missing", n), n);

  dialog->although = GTK_CHECK_BUTTON (gtk_check_button_new ());
  tm_name_widget (GTK_WIDGET (dialog->although), text);
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), text);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), _ ("The signed pages name what is missing."));
  adw_action_row_add_prefix (ADW_ACTION_ROW (row), GTK_WIDGET (dialog->although));
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (row), GTK_WIDGET (dialog->although));
  g_signal_connect_swapped (dialog->although, "toggled", G_CALLBACK (update_cb), dialog);
  adw_preferences_group_add (group, row);
}

/* A line for each; the last one counts those that are not told. */
static char *
list_missing (const GPtrArray *missing)
{
  guint shown = missing->len > MOST_MISSING + 1 ? MOST_MISSING : missing->len;
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < shown; i++)
    g_string_append_printf (text, "%s%u. %s", i > 0 ? "\n" : "", i + 1,
                            (const char *)g_ptr_array_index (missing, i));
  if (shown < missing->len)
    {
      g_string_append_c (text, '\n');
      g_string_append_printf (text, ngettext ("… and %u more", "… and %u more", missing->len - shown),
                              missing->len - shown);
    }
  return g_string_free (text, FALSE);
}

static void
build_missing (Dialog *dialog)
{
  const GPtrArray *missing = dialog->signing->missing;
  g_autofree char *text = list_missing (missing);
  g_autofree char *markup = g_markup_escape_text (text, -1);

  if (missing->len > 0)
    add_although (dialog, tm_form_group (dialog->window.rows, _ ("What is missing"), markup), missing->len);
}

/* -------- Who signs -------- */

static char *
name_person (const TmPerson *person)
{
  return *person->name != '\0' ? g_strdup_printf ("%s · %s", person->initials, person->name)
                               : g_strdup (person->initials);
}

static void
build_people (Dialog *dialog, AdwPreferencesGroup *group)
{
  const GPtrArray *people = dialog->signing->job->people;
  const char *by = tm_bench_by (tm_document_bench (dialog->document));
  g_autoptr (GtkStringList) words = gtk_string_list_new (NULL);
  guint chosen = 0;

  for (guint i = 0; i < people->len; i++)
    {
      const TmPerson *person = g_ptr_array_index (people, i);
      g_autofree char *name = name_person (person);

      gtk_string_list_append (words, name);
      if (g_str_equal (person->initials, by))
        chosen = i;
    }
  dialog->person = tm_access_combo_row_new (_ ("Signed by"));
  adw_combo_row_set_model (dialog->person, G_LIST_MODEL (words));
  adw_combo_row_set_selected (dialog->person, chosen);
  adw_preferences_group_add (group, GTK_WIDGET (dialog->person));
}

/* Whether that person has signed this record in that role; NULL: anybody. */
static gboolean
has_signed (const Dialog *dialog, const char *by, const char *role)
{
  const GPtrArray *signatures = dialog->signing->job->signatures;

  for (guint i = 0; i < signatures->len; i++)
    {
      const TmSignature *row = g_ptr_array_index (signatures, i);

      if (tm_signature_state (row, dialog->signing->digest) == TM_SIGNED_HOLDS
          && g_str_equal (row->role, role) && (by == NULL || g_str_equal (row->by, by)))
        return TRUE;
    }
  return FALSE;
}

/* The first that nobody has signed in, else the last. */
static guint
find_open_role (const Dialog *dialog)
{
  guint role = 0;

  while (role + 1 < count_roles () && has_signed (dialog, NULL, tm_report_roles ()[role]))
    role++;
  return role;
}

static void
build_roles (Dialog *dialog, AdwPreferencesGroup *group)
{
  g_autoptr (GtkStringList) words = gtk_string_list_new (NULL);

  for (const char *const *role = tm_report_roles (); *role != NULL; role++)
    gtk_string_list_append (words, _ (*role));
  gtk_string_list_append (words, _ ("Another role"));
  dialog->role = tm_access_combo_row_new (_ ("Role"));
  adw_combo_row_set_model (dialog->role, G_LIST_MODEL (words));
  adw_combo_row_set_selected (dialog->role, find_open_role (dialog));
  adw_preferences_group_add (group, GTK_WIDGET (dialog->role));
  dialog->other = tm_form_entry (group, _ ("Which role"));
}

static const TmPerson *
chosen_person (const Dialog *dialog)
{
  const GPtrArray *people = dialog->signing->job->people;
  guint chosen = tm_form_chosen (dialog->person);

  return chosen < people->len ? g_ptr_array_index (people, chosen) : NULL;
}

/* As the record has it; free it. */
static char *
chosen_role (const Dialog *dialog)
{
  guint chosen = tm_form_chosen (dialog->role);

  return chosen < count_roles () ? g_strdup (tm_report_roles ()[chosen]) : tm_form_text (dialog->other);
}

/* -------- Signing -------- */

/* Why it cannot be signed so; NULL: it can. */
static const char *
find_problem (const Dialog *dialog, const char *role)
{
  const TmPerson *person = chosen_person (dialog);

  if (is_blank (dialog->signing->job->report_identifier))
    return _ ("The report has no identifier: enter it on the job page (Report facts), then sign.");
  if (person == NULL)
    return _ ("The job names nobody: add who signs on the job page (People), then sign.");
  if (has_signed (dialog, person->initials, role))
    return _ ("This person has signed this record in this role already.");
  return NULL;
}

static void
update_cb (Dialog *dialog)
{
  g_autofree char *role = chosen_role (dialog);
  const char *problem = find_problem (dialog, role);
  gboolean agreed = dialog->although == NULL || gtk_check_button_get_active (dialog->although);

  gtk_widget_set_visible (GTK_WIDGET (dialog->other), tm_form_chosen (dialog->role) >= count_roles ());
  gtk_widget_set_sensitive (dialog->window.save, !dialog->busy && agreed && *role != '\0' && problem == NULL);
  tm_dialog_problem_set (dialog->window.problem, problem != NULL ? problem : dialog->signing->unprintable);
}

static void
say_signed (Dialog *dialog, const TmSignature *row)
{
  g_autofree char *text = g_strdup_printf (_ ("Signed: report %s, by %s"), row->report,
                                           tm_report_signer (tm_document_job (dialog->document), row));

  tm_form_dialog_done (&dialog->window, text);
}

static void
made_cb (GtkWidget *parent, const TmSignature *row, const GError *made_error)
{
  Dialog *dialog = get_dialog (parent);
  g_autoptr (GError) error = NULL;

  dialog->busy = FALSE;
  update_cb (dialog);
  if (made_error != NULL)
    tm_dialog_problem_set (dialog->window.problem, made_error->message);
  else if (row == NULL)
    tm_dialog_problem_set (dialog->window.problem, _ ("Cancelled; nothing was signed."));
  else if (tm_edit_add_signature (dialog->document, row, dialog->signing->mark, &error))
    say_signed (dialog, row);
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

static void
sign_cb (Dialog *dialog)
{
  const TmPerson *person = chosen_person (dialog);
  g_autofree char *role = chosen_role (dialog);

  if (!gtk_widget_get_sensitive (dialog->window.save))
    return;
  dialog->busy = TRUE;
  update_cb (dialog);
  tm_signing_make (GTK_WIDGET (dialog->window.rows), dialog->signing, person->initials, role, made_cb);
}

static void
connect (Dialog *dialog)
{
  g_signal_connect_swapped (dialog->role, "notify::selected", G_CALLBACK (update_cb), dialog);
  g_signal_connect_swapped (dialog->person, "notify::selected", G_CALLBACK (update_cb), dialog);
  g_signal_connect_swapped (dialog->other, "changed", G_CALLBACK (update_cb), dialog);
  g_signal_connect_swapped (dialog->other, "entry-activated", G_CALLBACK (sign_cb), dialog);
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (sign_cb), dialog);
}

GtkWindow *
tm_sign_dialog_present (GtkWidget *any_child, TmDocument *document, TmSigning *signing)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  AdwPreferencesGroup *group;

  dialog->document = g_object_ref (document);
  dialog->signing = tm_signing_ref (signing);
  tm_form_dialog_build (&dialog->window, any_child, _ ("Sign the report"), WIDTH,
                        signing->missing->len > 0 ? HEIGHT : HEIGHT_WHOLE);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  tm_button_set_label (dialog->window.save, _ ("_Sign"));
  build_facts (dialog);
  build_missing (dialog);
  group = tm_form_group (dialog->window.rows, _ ("Signature"), NULL);
  build_people (dialog, group);
  build_roles (dialog, group);
  connect (dialog);
  update_cb (dialog);
  gtk_window_present (dialog->window.window);
  gtk_widget_grab_focus (dialog->although != NULL ? GTK_WIDGET (dialog->although)
                                                  : GTK_WIDGET (dialog->person));
  return dialog->window.window;
}

static void
prepared_cb (GtkWidget *parent, TmSigning *signing, const GError *error)
{
  g_autoptr (TmDocument) document = g_object_steal_data (G_OBJECT (parent), "tm-signs");

  if (error != NULL)
    tm_window_show_error (parent, error->message);
  else if (signing != NULL && document != NULL
           && g_str_equal (signing->id, tm_document_job (document)->id)) /* else another was opened */
    tm_sign_dialog_present (parent, document, signing);
}

void
tm_sign_dialog_begin (GtkWidget *any_child, TmDocument *document)
{
  /* Asked for twice in a row, it is read once. */
  if (g_object_get_data (G_OBJECT (any_child), "tm-signs") != NULL)
    return;
  g_object_set_data_full (G_OBJECT (any_child), "tm-signs", g_object_ref (document), g_object_unref);
  tm_signing_prepare (any_child, document, prepared_cb);
}

static guint
find_person (const GPtrArray *people, const char *initials)
{
  for (guint i = 0; i < people->len; i++)
    if (g_str_equal (((const TmPerson *)g_ptr_array_index (people, i))->initials, initials))
      return i;
  return GTK_INVALID_LIST_POSITION;
}

gboolean
tm_sign_dialog_answer (GtkWindow *window, const char *by, const char *role, gboolean although)
{
  Dialog *dialog = g_object_get_data (G_OBJECT (window), "dialog");
  guint known = 0;

  g_return_val_if_fail (dialog != NULL, FALSE);

  while (known < count_roles () && !g_str_equal (tm_report_roles ()[known], role))
    known++;
  if (*by != '\0')
    adw_combo_row_set_selected (dialog->person, find_person (dialog->signing->job->people, by));
  adw_combo_row_set_selected (dialog->role, known);
  if (known == count_roles ())
    tm_form_set_text (dialog->other, role);
  if (dialog->although != NULL)
    gtk_check_button_set_active (dialog->although, although);
  if (!gtk_widget_get_sensitive (dialog->window.save))
    return FALSE;
  sign_cb (dialog);
  return TRUE;
}
