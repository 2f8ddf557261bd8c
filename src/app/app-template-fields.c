/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-template-fields.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-form.h"

struct _TmTemplateFields {
  GtkListBox *list;
  GtkWidget *add;
  GCallback changed;
  gpointer data;
};

static void
say_changed (TmTemplateFields *fields)
{
  ((void (*) (gpointer))fields->changed) (fields->data);
}

static GtkListBoxRow *
row_at (TmTemplateFields *fields, guint at)
{
  return gtk_list_box_get_row_at_index (fields->list, (int)at);
}

static guint
count_rows (TmTemplateFields *fields)
{
  guint n = 0;

  while (row_at (fields, n) != NULL)
    n++;
  return n;
}

static GtkCheckButton *
check_of (GtkListBoxRow *row)
{
  return g_object_get_data (G_OBJECT (row), "required");
}

/* -------- Buttons of a row -------- */

static GtkListBoxRow *
row_of (GtkWidget *button)
{
  return GTK_LIST_BOX_ROW (gtk_widget_get_ancestor (button, GTK_TYPE_LIST_BOX_ROW));
}

/* An empty list would only be a line. */
static void
settle (TmTemplateFields *fields)
{
  const guint n = count_rows (fields);

  gtk_widget_set_visible (GTK_WIDGET (fields->list), n > 0);
  gtk_widget_set_sensitive (fields->add, n < TM_TEMPLATE_MAX_FIELDS);
}

static void
remove_cb (GtkWidget *button, TmTemplateFields *fields)
{
  GtkListBoxRow *row = row_of (button);
  const int at = gtk_list_box_row_get_index (row);

  gtk_list_box_remove (fields->list, GTK_WIDGET (row));
  settle (fields);
  if (row_at (fields, 0) != NULL)
    tm_template_fields_focus (fields, (guint)MAX (0, at - 1));
  else
    gtk_widget_grab_focus (fields->add);
  say_changed (fields);
}

static void
move (TmTemplateFields *fields, GtkWidget *button, int by)
{
  GtkListBoxRow *row = row_of (button);
  const int at = gtk_list_box_row_get_index (row);
  const int to = CLAMP (at + by, 0, (int)count_rows (fields) - 1);

  if (to == at)
    return;
  g_object_ref (row);
  gtk_list_box_remove (fields->list, GTK_WIDGET (row));
  gtk_list_box_insert (fields->list, GTK_WIDGET (row), to);
  g_object_unref (row);
  gtk_widget_grab_focus (button);
  say_changed (fields);
}

static void
up_cb (GtkWidget *button, TmTemplateFields *fields)
{
  move (fields, button, -1);
}

static void
down_cb (GtkWidget *button, TmTemplateFields *fields)
{
  move (fields, button, 1);
}

static void
add_button (TmTemplateFields *fields, AdwEntryRow *row, const char *icon, const char *name, GCallback clicked)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_tooltip_text (button, name);
  tm_name_widget (button, name);
  adw_entry_row_add_suffix (row, button);
  g_signal_connect (button, "clicked", clicked, fields);
}

static void
add_row (TmTemplateFields *fields, const char *name, gboolean required)
{
  AdwEntryRow *row = tm_access_entry_row_new (_ ("Name of the field"));
  GtkWidget *check = gtk_check_button_new_with_label (_ ("required"));

  tm_form_set_text (row, name);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), required);
  gtk_widget_set_valign (check, GTK_ALIGN_CENTER);
  adw_entry_row_add_suffix (row, check);
  add_button (fields, row, "go-up-symbolic", _ ("Move this field up"), G_CALLBACK (up_cb));
  add_button (fields, row, "go-down-symbolic", _ ("Move this field down"), G_CALLBACK (down_cb));
  add_button (fields, row, "user-trash-symbolic", _ ("Take this field out"), G_CALLBACK (remove_cb));
  g_object_set_data (G_OBJECT (row), "required", check);
  g_signal_connect_swapped (row, "changed", G_CALLBACK (say_changed), fields);
  g_signal_connect_swapped (check, "toggled", G_CALLBACK (say_changed), fields);
  gtk_list_box_append (fields->list, GTK_WIDGET (row));
}

static void
add_cb (TmTemplateFields *fields)
{
  add_row (fields, "", FALSE);
  settle (fields);
  tm_form_focus_new (GTK_WIDGET (row_at (fields, count_rows (fields) - 1)));
  say_changed (fields);
}

/* -------- The group -------- */

TmTemplateFields *
tm_template_fields_new (GtkBox *into, GCallback changed, gpointer data)
{
  TmTemplateFields *fields = g_new0 (TmTemplateFields, 1);
  AdwPreferencesGroup *group = tm_form_group (
      into, _ ("Fields that each job fills"),
      _ ("They stand among the facts of the report, in this order. A required one that a job "
         "leaves empty is listed as missing."));

  fields->changed = changed;
  fields->data = data;
  fields->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (fields->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (fields->list), "boxed-list");
  tm_name_widget (GTK_WIDGET (fields->list), _ ("Fields that each job fills"));
  adw_preferences_group_add (group, GTK_WIDGET (fields->list));
  fields->add = tm_button_new (_ ("Add a _field"));
  gtk_widget_set_halign (fields->add, GTK_ALIGN_START);
  gtk_widget_set_margin_top (fields->add, 8);
  adw_preferences_group_add (group, fields->add);
  g_signal_connect_swapped (fields->add, "clicked", G_CALLBACK (add_cb), fields);
  settle (fields);
  return fields;
}

void
tm_template_fields_free (TmTemplateFields *fields)
{
  g_free (fields);
}

void
tm_template_fields_show (TmTemplateFields *fields, const TmTemplate *template)
{
  while (row_at (fields, 0) != NULL)
    gtk_list_box_remove (fields->list, GTK_WIDGET (row_at (fields, 0)));
  for (guint i = 0; i < template->fields->len; i++)
    {
      const TmTemplateField *field = g_ptr_array_index (template->fields, i);

      add_row (fields, field->name, field->required);
    }
  settle (fields);
}

void
tm_template_fields_read (TmTemplateFields *fields, TmTemplate *template)
{
  GtkListBoxRow *row;

  g_ptr_array_set_size (template->fields, 0);
  for (guint i = 0; (row = row_at (fields, i)) != NULL; i++)
    {
      g_autofree char *name = tm_form_text (ADW_ENTRY_ROW (row));

      tm_template_add_field (template, name, gtk_check_button_get_active (check_of (row)));
    }
}

void
tm_template_fields_focus (TmTemplateFields *fields, guint at)
{
  GtkListBoxRow *row = row_at (fields, at);

  if (row != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (row));
}
