/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * methods-support: an invented job with methods, and what stands on the dialogs over a window.
 */

#pragma once

#include <adwaita.h>

#include "app-button.h"
#include "ui-fixture.h"

static inline TmQuantity
mm (const char *text)
{
  TmQuantity quantity = TM_QUANTITY_NONE;

  g_assert_cmpint (tm_quantity_read (text, TM_UNIT_MM, &quantity), ==, TM_READ_OK);
  return quantity;
}

static inline TmGauge *
add_gauge (TmJob *job, const char *tag, const char *kind)
{
  TmGauge *gauge = tm_gauge_new ();

  gauge->tag = tm_job_intern (job, tag);
  gauge->kind = tm_job_intern (job, kind);
  gauge->unit = TM_UNIT_MM;
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
  return gauge;
}

static inline TmMethod *
add_method (TmJob *job, const char *name, const char *first, const char *second)
{
  TmMethod *method = tm_method_new ();

  method->name = tm_job_intern (job, name);
  g_ptr_array_add (method->gauges, (gpointer)tm_job_intern (job, first));
  if (second != NULL)
    g_ptr_array_add (method->gauges, (gpointer)tm_job_intern (job, second));
  g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
  return method;
}

/* The fixture's job; BM-2 with an error limit of 4 µm in a method of its own, a telescoping gauge read
 * with an outside micrometer, a caliper that is too coarse. */
static inline TmJob *
make_methods_job (void)
{
  TmJob *job = ui_make_job ();
  TmGauge *telescoping, *micrometer, *caliper;

  tm_job_find_gauge (job, "BM-2")->error_limit = mm ("0.004");
  telescoping = add_gauge (job, "TG-1", "telescoping gauge");
  telescoping->feel = mm ("0.0127");
  micrometer = add_gauge (job, "OM-25", "outside micrometer");
  micrometer->resolution = mm ("0.001");
  micrometer->error_limit = mm ("0.002");
  caliper = add_gauge (job, "CA-150", "caliper");
  caliper->resolution = mm ("0.01");
  caliper->error_limit = mm ("0.03");
  add_method (job, "bored", "BM-2", NULL);
  add_method (job, "transfer", "TG-1", "OM-25");
  return job;
}

/* The modal window that is over @window, or NULL. */
static inline GtkWidget *
dialog_over (GtkWidget *window)
{
  GListModel *all = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkWidget) other = g_list_model_get_item (all, i);

      if (other != window && gtk_window_get_modal (GTK_WINDOW (other)))
        return other;
    }
  return NULL;
}

typedef gboolean (*Wanted) (GtkWidget *widget, const char *text);

static inline GtkWidget *
find_widget (GtkWidget *widget, Wanted wanted, const char *text)
{
  if (wanted (widget, text))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_widget (child, wanted, text);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static inline gboolean
is_row (GtkWidget *widget, const char *title)
{
  return ADW_IS_PREFERENCES_ROW (widget)
         && g_str_has_prefix (adw_preferences_row_get_title (ADW_PREFERENCES_ROW (widget)), title);
}

static inline gboolean
is_button (GtkWidget *widget, const char *label)
{
  return GTK_IS_BUTTON (widget) && GTK_IS_LABEL (gtk_button_get_child (GTK_BUTTON (widget)))
         && g_str_equal (tm_button_text (widget), label);
}

static inline gboolean
is_problem (GtkWidget *widget, const char *text)
{
  return GTK_IS_LABEL (widget) && gtk_widget_has_css_class (widget, "tm-problem");
}

static inline GtkWidget *
need (GtkWidget *widget, Wanted wanted, const char *text)
{
  GtkWidget *found = widget != NULL ? find_widget (widget, wanted, text) : NULL;

  if (found == NULL)
    g_error ("there is no “%s”", text);
  return found;
}

static inline void
type_in (GtkWidget *dialog, const char *title, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (need (dialog, is_row, title)), text);
}

static inline const char *
typed_in (GtkWidget *dialog, const char *title)
{
  return gtk_editable_get_text (GTK_EDITABLE (need (dialog, is_row, title)));
}

/* Chooses the word that begins with @word. */
static inline void
choose_in (GtkWidget *dialog, const char *title, const char *word)
{
  AdwComboRow *row = ADW_COMBO_ROW (need (dialog, is_row, title));
  GListModel *words = adw_combo_row_get_model (row);

  for (guint i = 0; i < g_list_model_get_n_items (words); i++)
    {
      g_autoptr (GtkStringObject) item = g_list_model_get_item (words, i);

      if (g_str_has_prefix (gtk_string_object_get_string (item), word))
        {
          adw_combo_row_set_selected (row, i);
          return;
        }
    }
  g_error ("%s: no choice “%s”", title, word);
}

static inline void
press (GtkWidget *dialog, const char *label)
{
  g_signal_emit_by_name (need (dialog, is_button, label), "clicked");
}

static inline const char *
problem_in (GtkWidget *dialog)
{
  GtkWidget *line = need (dialog, is_problem, "line of problems");

  return gtk_widget_get_visible (line) ? gtk_label_get_text (GTK_LABEL (line)) : "";
}

#define assert_says(text, part)                           \
  G_STMT_START                                            \
  {                                                       \
    if (strstr ((text), (part)) == NULL)                  \
      g_error ("“%s” does not say “%s”", (text), (part)); \
  }                                                       \
  G_STMT_END

/* TRUE when a row of @list is read out as @sentence. */
static inline gboolean
is_read_out (GtkListBox *list, const char *sentence)
{
  for (int i = 0;; i++)
    {
      GtkListBoxRow *row = gtk_list_box_get_row_at_index (list, i);
      g_autofree char *wrong = NULL;

      if (row == NULL)
        return FALSE;
      wrong = gtk_test_accessible_check_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                                  sentence);
      if (wrong == NULL)
        return TRUE;
    }
}

static inline guint
count_rows (GtkListBox *list)
{
  guint n = 0;

  while (gtk_list_box_get_row_at_index (list, (int)n) != NULL)
    n++;
  return n;
}
