/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-template-form.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-form-area.h"
#include "app-form.h"
#include "app-template-colour.h"
#include "app-template-fields.h"
#include "app-template-logo.h"
#include "app-template-statements.h"
#include "app-template-words.h"

#define ADDRESS_LINES 3

struct _TmTemplateForm {
  TmTemplate *draft; /* its logo is always right, the rest when it is read */
  AdwEntryRow *name;
  GtkTextView *address;
  AdwActionRow *logo;
  GtkWidget *choose_logo, *remove_logo;
  TmTemplateColour *accent, *ground;
  GtkCheckButton *columns[TM_N_TEMPLATE_COLUMNS];
  TmTemplateFields *fields;
  TmTemplateStatements *statements;
  GtkFileChooserNative *chooser;
  gboolean filling;
  GCallback changed;
  gpointer data;
};

static void
changed_cb (TmTemplateForm *form)
{
  if (!form->filling)
    ((void (*) (gpointer))form->changed) (form->data);
}

/* -------- Logo -------- */

static void
show_logo (TmTemplateForm *form)
{
  g_autofree char *words = tm_words_logo (form->draft);

  adw_action_row_set_subtitle (form->logo, words);
  gtk_widget_set_sensitive (form->remove_logo, form->draft->logo != NULL);
}

/* The dialog may have been closed meanwhile. */
static void
logo_read_cb (GtkWidget *parent, GBytes *logo, const char *media, const GError *error, gpointer data)
{
  TmTemplateForm *form = g_object_get_data (G_OBJECT (parent), "tm-form");

  if (form == NULL)
    return;
  if (error != NULL)
    {
      adw_action_row_set_subtitle (form->logo, error->message);
      return;
    }
  tm_template_set_logo (form->draft, logo, media);
  show_logo (form);
  changed_cb (form);
}

void
tm_template_form_take_logo (TmTemplateForm *form, const char *path)
{
  tm_logo_read (GTK_WIDGET (form->logo), path, logo_read_cb, NULL);
}

static void
remove_logo_cb (TmTemplateForm *form)
{
  tm_template_set_logo (form->draft, NULL, NULL);
  show_logo (form);
  gtk_widget_grab_focus (form->choose_logo);
  changed_cb (form);
}

static void
logo_chosen_cb (GtkFileChooserNative *chooser, int response, TmTemplateForm *form)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  if (response == GTK_RESPONSE_ACCEPT && path != NULL)
    tm_template_form_take_logo (form, path);
  g_clear_object (&form->chooser);
}

static void
choose_logo_cb (TmTemplateForm *form)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (form->logo));

  gtk_file_filter_set_name (filter, _ ("PNG, JPEG and SVG pictures"));
  gtk_file_filter_add_mime_type (filter, "image/png");
  gtk_file_filter_add_mime_type (filter, "image/jpeg");
  gtk_file_filter_add_mime_type (filter, "image/svg+xml");
  g_clear_object (&form->chooser);
  form->chooser = gtk_file_chooser_native_new (_ ("Choose the shop’s logo"), GTK_WINDOW (root),
                                               GTK_FILE_CHOOSER_ACTION_OPEN, NULL, NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (form->chooser), TRUE);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (form->chooser), filter);
  g_signal_connect (form->chooser, "response", G_CALLBACK (logo_chosen_cb), form);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (form->chooser));
}

static GtkWidget *
add_logo_button (TmTemplateForm *form, const char *label, GCallback clicked)
{
  GtkWidget *button = tm_button_new (label);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  adw_action_row_add_suffix (form->logo, button);
  g_signal_connect_swapped (button, "clicked", clicked, form);
  return button;
}

static void
add_shop (TmTemplateForm *form, GtkBox *into)
{
  AdwPreferencesGroup *group = tm_form_group (into, _ ("Shop"), NULL);

  form->name = tm_form_entry (group, _ ("Name of the shop"));
  form->address = tm_form_area_new (group, _ ("Address, telephone"), ADDRESS_LINES);
  form->logo = ADW_ACTION_ROW (adw_action_row_new ());
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (form->logo), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (form->logo), _ ("Logo"));
  gtk_widget_set_focusable (GTK_WIDGET (form->logo), FALSE);
  form->choose_logo = add_logo_button (form, _ ("_Choose a picture…"), G_CALLBACK (choose_logo_cb));
  form->remove_logo = add_logo_button (form, _ ("Remove the _logo"), G_CALLBACK (remove_logo_cb));
  g_object_set_data (G_OBJECT (form->logo), "tm-form", form);
  adw_preferences_group_add (group, g_object_ref (GTK_WIDGET (form->logo)));
  g_signal_connect_swapped (form->name, "changed", G_CALLBACK (changed_cb), form);
  g_signal_connect_swapped (gtk_text_view_get_buffer (form->address), "changed", G_CALLBACK (changed_cb),
                            form);
}

/* -------- Colours -------- */

static void
add_colours (TmTemplateForm *form, GtkBox *into)
{
  TmTemplate *draft = form->draft;
  const TmTemplateColourInfo accent = { .title = _ ("Colour of heads and lines"),
                                        .label = _ ("Colour, like #1a5f7a (empty: black)"),
                                        .choose = _ ("Choose a colour"),
                                        .say = tm_words_accent,
                                        .draft = draft,
                                        .given = &draft->has_accent,
                                        .colour = &draft->accent };
  const TmTemplateColourInfo ground = { .title = _ ("Ground of table heads"),
                                        .label = _ ("Ground, like #1a5f7a (empty: as usual)"),
                                        .choose = _ ("Choose a ground"),
                                        .sample = _ ("Head"),
                                        .say = tm_words_ground,
                                        .draft = draft,
                                        .given = &draft->has_ground,
                                        .colour = &draft->ground };

  form->accent = tm_template_colour_new (into, &accent, G_CALLBACK (changed_cb), form);
  form->ground = tm_template_colour_new (into, &ground, G_CALLBACK (changed_cb), form);
}

/* -------- Columns -------- */

static gboolean
is_of_workbook (TmTemplateColumn column)
{
  return column == TM_TEMPLATE_NOMINAL || column == TM_TEMPLATE_DEVIATION || column == TM_TEMPLATE_SIDE
         || column == TM_TEMPLATE_DUE || column == TM_TEMPLATE_COUNTS;
}

static void
add_column (TmTemplateForm *form, AdwPreferencesGroup *group, TmTemplateColumn column)
{
  const char *title = g_dgettext (GETTEXT_PACKAGE, tm_template_column_title (column));
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *check = gtk_check_button_new ();

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  if (is_of_workbook (column))
    adw_action_row_set_subtitle (ADW_ACTION_ROW (row), _ ("in the workbook"));
  gtk_widget_set_valign (check, GTK_ALIGN_CENTER);
  adw_action_row_add_prefix (ADW_ACTION_ROW (row), check);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (row), check);
  gtk_widget_set_focusable (row, FALSE);
  adw_preferences_group_add (group, row);
  form->columns[column] = GTK_CHECK_BUTTON (check);
  g_signal_connect_swapped (check, "toggled", G_CALLBACK (changed_cb), form);
}

static void
add_columns (TmTemplateForm *form, GtkBox *into)
{
  AdwPreferencesGroup *group = tm_form_group (
      into, _ ("Columns of the characteristics"),
      _ ("Number, requirement, limits, result, verdict, nonconformance and comment are always "
         "there: a report without them is sent back."));

  for (guint i = 0; i < TM_N_TEMPLATE_COLUMNS; i++)
    add_column (form, group, i);
}

/* -------- The whole -------- */

TmTemplateForm *
tm_template_form_new (GtkBox *into, GCallback changed, gpointer data)
{
  TmTemplateForm *form = g_new0 (TmTemplateForm, 1);

  form->draft = tm_template_new ();
  form->changed = changed;
  form->data = data;
  form->filling = TRUE;
  add_shop (form, into);
  add_colours (form, into);
  add_columns (form, into);
  form->fields = tm_template_fields_new (into, G_CALLBACK (changed_cb), form);
  form->statements = tm_template_statements_new (into, G_CALLBACK (changed_cb), form);
  form->filling = FALSE;
  return form;
}

void
tm_template_form_free (TmTemplateForm *form)
{
  if (form == NULL)
    return;
  /* A logo may still be being read. */
  g_object_set_data (G_OBJECT (form->logo), "tm-form", NULL);
  g_clear_object (&form->logo);
  g_clear_object (&form->chooser);
  tm_template_colour_free (form->accent);
  tm_template_colour_free (form->ground);
  tm_template_fields_free (form->fields);
  tm_template_statements_free (form->statements);
  tm_template_free (form->draft);
  g_free (form);
}

void
tm_template_form_show (TmTemplateForm *form, const TmTemplate *template)
{
  form->filling = TRUE;
  tm_template_set_logo (form->draft, template->logo, template->logo_media);
  show_logo (form);
  tm_form_set_text (form->name, template->name);
  tm_form_area_set_text (form->address, template->address);
  tm_template_colour_show (form->accent, template->has_accent, template->accent);
  tm_template_colour_show (form->ground, template->has_ground, template->ground);
  for (guint i = 0; i < TM_N_TEMPLATE_COLUMNS; i++)
    gtk_check_button_set_active (form->columns[i], tm_template_shows (template, i));
  tm_template_fields_show (form->fields, template);
  tm_template_statements_show (form->statements, template);
  form->filling = FALSE;
  changed_cb (form);
}

static void
collect (TmTemplateForm *form)
{
  TmTemplate *draft = form->draft;
  g_autofree char *name = tm_form_text (form->name);
  g_autofree char *address = tm_form_area_text (form->address);

  tm_template_set_text (&draft->name, name);
  tm_template_set_text (&draft->address, address);
  draft->hidden = 0;
  for (guint i = 0; i < TM_N_TEMPLATE_COLUMNS; i++)
    if (!gtk_check_button_get_active (form->columns[i]))
      draft->hidden |= 1u << i;
  tm_template_fields_read (form->fields, draft);
  tm_template_statements_read (form->statements, draft);
}

const TmTemplate *
tm_template_form_peek (TmTemplateForm *form)
{
  collect (form);
  (void)tm_template_colour_read (form->accent, NULL);
  (void)tm_template_colour_read (form->ground, NULL);
  return form->draft;
}

static void
focus_problem (TmTemplateForm *form, TmTemplateStatus status, guint row)
{
  if (status >= TM_TEMPLATE_STATEMENT_EMPTY)
    tm_template_statements_focus (form->statements, row);
  else if (status >= TM_TEMPLATE_FIELD_UNNAMED)
    tm_template_fields_focus (form->fields, row);
  else if (status >= TM_TEMPLATE_LOGO_LARGE)
    gtk_widget_grab_focus (form->choose_logo);
  else if (status == TM_TEMPLATE_ADDRESS_LONG)
    gtk_widget_grab_focus (GTK_WIDGET (form->address));
  else
    gtk_widget_grab_focus (GTK_WIDGET (form->name));
}

const TmTemplate *
tm_template_form_read (TmTemplateForm *form, char **problem)
{
  TmTemplateStatus status;
  guint row = 0;

  collect (form);
  if (!tm_template_colour_read (form->accent, problem) || !tm_template_colour_read (form->ground, problem))
    return NULL;
  status = tm_template_check (form->draft, &row);
  if (status == TM_TEMPLATE_OK)
    return form->draft;
  *problem = tm_words_template_problem (status, row);
  focus_problem (form, status, row);
  return NULL;
}
