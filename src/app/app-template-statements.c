/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-template-statements.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-form-area.h"
#include "app-form.h"

#define AREA_LINES 3
/* More than this many texts nobody reads. */
#define MOST_TEXTS (TM_TEMPLATE_MAX_STATEMENTS * TM_TEMPLATE_MAX_TEXTS)
/* The choice after the places. */
#define SAID_AGAIN TM_N_STATEMENT_PLACES

typedef struct {
  AdwPreferencesGroup *group;
  AdwComboRow *place;
  AdwEntryRow *language;
  GtkTextView *text;
} Row;

struct _TmTemplateStatements {
  GtkBox *box;
  GArray *rows; /* Row */
  GtkWidget *add;
  GCallback changed;
  gpointer data;
};

static void
say_changed (TmTemplateStatements *statements)
{
  ((void (*) (gpointer))statements->changed) (statements->data);
}

static Row *
row_at (TmTemplateStatements *statements, guint at)
{
  return &g_array_index (statements->rows, Row, at);
}

/* The first cannot say another one again. */
static gboolean
is_again (TmTemplateStatements *statements, guint at)
{
  return at > 0 && tm_form_chosen (row_at (statements, at)->place) == SAID_AGAIN;
}

static void
number_rows (TmTemplateStatements *statements)
{
  guint n = 0;

  for (guint i = 0; i < statements->rows->len; i++)
    {
      g_autofree char *title = NULL;

      n += !is_again (statements, i);
      title = is_again (statements, i) ? g_strdup_printf (_ ("Statement %u in another language"), n)
                                       : g_strdup_printf (_ ("Statement %u"), n);
      adw_preferences_group_set_title (row_at (statements, i)->group, title);
    }
  gtk_widget_set_sensitive (statements->add, statements->rows->len < MOST_TEXTS);
}

static void
changed_cb (TmTemplateStatements *statements)
{
  number_rows (statements);
  say_changed (statements);
}

/* -------- Rows -------- */

static void
remove_cb (GtkWidget *button, TmTemplateStatements *statements)
{
  GtkWidget *group = gtk_widget_get_ancestor (button, ADW_TYPE_PREFERENCES_GROUP);

  for (guint i = 0; i < statements->rows->len; i++)
    if (GTK_WIDGET (row_at (statements, i)->group) == group)
      {
        g_array_remove_index (statements->rows, i);
        gtk_box_remove (statements->box, group);
        break;
      }
  gtk_widget_grab_focus (statements->add);
  changed_cb (statements);
}

static void
add_remove (TmTemplateStatements *statements, AdwPreferencesGroup *group)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("user-trash-symbolic");

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_tooltip_text (button, _ ("Take this statement out"));
  tm_name_widget (button, _ ("Take this statement out"));
  adw_preferences_group_set_header_suffix (group, button);
  g_signal_connect (button, "clicked", G_CALLBACK (remove_cb), statements);
}

static void
add_row (TmTemplateStatements *statements, guint place, const char *language, const char *text)
{
  const char *const places[]
      = { _ ("after the cover"), _ ("before the signatures"), _ ("with the one above"), NULL };
  Row row = { .group = tm_form_group (statements->box, "", NULL) };

  row.place = tm_form_choice (row.group, _ ("Where it stands"), places);
  adw_combo_row_set_selected (row.place, place);
  row.language = tm_form_entry (row.group, _ ("Language code: de, en… (empty: any)"));
  tm_form_set_text (row.language, language);
  row.text = tm_form_area_new (row.group, _ ("Text"), AREA_LINES);
  tm_form_area_set_text (row.text, text);
  add_remove (statements, row.group);
  g_signal_connect_swapped (row.place, "notify::selected", G_CALLBACK (changed_cb), statements);
  g_signal_connect_swapped (row.language, "changed", G_CALLBACK (say_changed), statements);
  g_signal_connect_swapped (gtk_text_view_get_buffer (row.text), "changed", G_CALLBACK (say_changed),
                            statements);
  g_array_append_val (statements->rows, row);
}

static void
add_cb (TmTemplateStatements *statements)
{
  add_row (statements, TM_STATEMENT_BEFORE_SIGNATURES, "", "");
  changed_cb (statements);
  tm_form_focus_new (GTK_WIDGET (row_at (statements, statements->rows->len - 1)->text));
}

/* -------- The whole -------- */

TmTemplateStatements *
tm_template_statements_new (GtkBox *into, GCallback changed, gpointer data)
{
  TmTemplateStatements *statements = g_new0 (TmTemplateStatements, 1);

  statements->changed = changed;
  statements->data = data;
  statements->rows = g_array_new (FALSE, FALSE, sizeof (Row));
  tm_form_group (into, _ ("Statements of the shop"),
                 _ ("Printed in every report in the shop’s own words. The report takes the text in its "
                    "language, else that for any."));
  statements->box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 18));
  gtk_box_append (into, GTK_WIDGET (statements->box));
  statements->add = tm_button_new (_ ("Add a _statement"));
  gtk_widget_set_halign (statements->add, GTK_ALIGN_START);
  gtk_box_append (into, statements->add);
  g_signal_connect_swapped (statements->add, "clicked", G_CALLBACK (add_cb), statements);
  return statements;
}

void
tm_template_statements_free (TmTemplateStatements *statements)
{
  if (statements == NULL)
    return;
  g_array_unref (statements->rows);
  g_free (statements);
}

static void
clear_rows (TmTemplateStatements *statements)
{
  GtkWidget *child;

  g_array_set_size (statements->rows, 0);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (statements->box))) != NULL)
    gtk_box_remove (statements->box, child);
}

void
tm_template_statements_show (TmTemplateStatements *statements, const TmTemplate *template)
{
  clear_rows (statements);
  for (guint i = 0; i < template->statements->len; i++)
    {
      const TmTemplateStatement *statement = g_ptr_array_index (template->statements, i);

      for (guint k = 0; k < statement->texts->len; k++)
        {
          const TmStatementText *text = g_ptr_array_index (statement->texts, k);

          add_row (statements, k == 0 ? (guint)statement->place : (guint)SAID_AGAIN, text->language,
                   text->text);
        }
    }
  number_rows (statements);
}

void
tm_template_statements_read (TmTemplateStatements *statements, TmTemplate *template)
{
  TmTemplateStatement *statement = NULL;

  g_ptr_array_set_size (template->statements, 0);
  for (guint i = 0; i < statements->rows->len; i++)
    {
      const Row *row = row_at (statements, i);
      const guint place = tm_form_chosen (row->place);
      g_autofree char *language = tm_form_text (row->language);
      g_autofree char *text = tm_form_area_text (row->text);

      if (!is_again (statements, i))
        statement = tm_template_add_statement (template, place == SAID_AGAIN ? TM_STATEMENT_BEFORE_SIGNATURES
                                                                             : (TmStatementPlace)place);
      tm_template_statement_add_text (statement, language, text);
    }
}

void
tm_template_statements_focus (TmTemplateStatements *statements, guint at)
{
  guint n = 0;

  for (guint i = 0; i < statements->rows->len; i++)
    {
      n += !is_again (statements, i);
      if (n == at + 1)
        {
          gtk_widget_grab_focus (GTK_WIDGET (row_at (statements, i)->text));
          return;
        }
    }
}
