/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-actions.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-report-choices.h"
#include "app-report-export.h"
#include "app-report-page-private.h"
#include "app-report-print.h"
#include "app-toast.h"
#include "app-words.h"
#include "app-work.h"

/* -------- Export -------- */

static void
export_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  static const struct {
    const char *action;
    TmExport export;
  } exports[] = {
    { "report.export-workbook", TM_EXPORT_WORKBOOK },
    { "report.export-pages", TM_EXPORT_PAGES },
    { "report.export-qif", TM_EXPORT_QIF },
    { "report.export-table", TM_EXPORT_TABLE },
  };
  TmReportPage *self = TM_REPORT_PAGE (widget);

  for (guint i = 0; i < G_N_ELEMENTS (exports) && self->document != NULL; i++)
    if (g_str_equal (name, exports[i].action))
      tm_report_export (widget, self->document, exports[i].export);
}

/* @parameter: the path, for a caller that has chosen one already. */
static void
write_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmReportPage *self = TM_REPORT_PAGE (widget);

  if (self->document != NULL)
    tm_report_export_to (widget, self->document, g_variant_get_string (parameter, NULL));
}

/* -------- Printing -------- */

typedef struct {
  char *book_path;
  char *id;
  char *path; /* of the file to print to, or NULL */
  TmJobForm form;
} Printing;

static void
free_printing (gpointer data)
{
  Printing *printing = data;

  g_free (printing->book_path);
  g_free (printing->id);
  g_free (printing->path);
  tm_job_form_clear (&printing->form);
  g_free (printing);
}

static void
print_paper (TmReportPage *self, TmReportPaper *paper, const char *path)
{
  /* The printer's dialog runs the main loop. */
  g_autoptr (TmReportPage) held = g_object_ref (self);
  const TmJob *job = tm_document_job (self->document);
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  g_autofree char *name = tm_words_job_title (job->part_number, job->part_name, job->revision);
  g_autoptr (GError) error = NULL;

  if (!tm_report_print (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, paper, name,
                        tm_report_view_page (tm_report_preview_view (self->preview)), path, &error))
    tm_window_show_error (GTK_WIDGET (self), error->message);
}

static gpointer
run_lay_out (TmWork *work, gpointer data, GError **error)
{
  const Printing *printing = data;

  return tm_report_lay_out (printing->book_path, printing->id, &printing->form, tm_work_progress, work,
                            error);
}

static void
laid_out_cb (GtkWidget *parent, gpointer result, const GError *error, gpointer data)
{
  TmReportPage *self = TM_REPORT_PAGE (parent);
  const Printing *printing = data;
  g_autoptr (TmReportPaper) paper = result;

  if (error != NULL)
    tm_window_show_error (parent, error->message);
  else if (paper != NULL && self->document != NULL)
    print_paper (self, paper, printing->path);
}

/* The pages on show, where they are of the record as it is; else they are laid out first. */
static void
print (TmReportPage *self, const char *path)
{
  TmReportPaper *paper = tm_report_view_paper (tm_report_preview_view (self->preview));
  Printing *printing;

  if (self->document == NULL)
    return;
  if (paper != NULL && tm_report_page_is_settled (self))
    {
      g_autoptr (TmReportPaper) held = tm_report_paper_ref (paper);

      print_paper (self, held, path);
      return;
    }
  printing = g_new0 (Printing, 1);
  printing->book_path = g_strdup (tm_book_path (tm_document_book (self->document)));
  printing->id = g_strdup (tm_document_job (self->document)->id);
  printing->path = g_strdup (path);
  tm_job_form_fill_for (&printing->form, self->document);
  tm_work_run (GTK_WIDGET (self), _ ("Laying out the pages"), run_lay_out, laid_out_cb, printing,
               free_printing, (GDestroyNotify)tm_report_paper_unref);
}

static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  print (TM_REPORT_PAGE (widget), NULL);
}

/* @parameter: the path of a PDF, for a caller that has chosen one already. */
static void
print_to_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  print (TM_REPORT_PAGE (widget), g_variant_get_string (parameter, NULL));
}

/* -------- Signing, the form, and what is looked at -------- */

static void
sign_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_report_sign_begin (TM_REPORT_PAGE (widget)->sign);
}

static void
form_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmReportPage *self = TM_REPORT_PAGE (widget);

  if (self->document != NULL)
    tm_report_choices_present (widget, self->document, tm_report_page_form_changed);
}

static void
view_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_report_page_show_view (TM_REPORT_PAGE (widget),
                            g_str_equal (name, "report.show-table") ? "table" : "pages");
}

static void
missing_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_report_page_show_missing (TM_REPORT_PAGE (widget));
}

static void
zoom_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmReportView *view = tm_report_preview_view (TM_REPORT_PAGE (widget)->preview);

  if (g_str_equal (name, "report.zoom-in"))
    tm_report_view_step_zoom (view, 1);
  else if (g_str_equal (name, "report.zoom-out"))
    tm_report_view_step_zoom (view, -1);
  else if (g_str_equal (name, "report.zoom-one"))
    tm_report_view_set_factor (view, 1);
  else
    tm_report_view_set_zoom (view, g_str_equal (name, "report.zoom-page") ? TM_ZOOM_PAGE : TM_ZOOM_WIDTH);
}

static void
ask_page_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmReportPage *self = TM_REPORT_PAGE (widget);

  tm_report_page_show_view (self, "pages");
  tm_report_preview_ask_page (self->preview);
}

static void
focus_pages_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmReportPage *self = TM_REPORT_PAGE (widget);

  tm_report_page_show_view (self, "pages");
  gtk_widget_grab_focus (GTK_WIDGET (tm_report_preview_view (self->preview)));
}

/* -------- Keys and buttons -------- */

typedef struct {
  const char *name;
  GtkWidgetActionActivateFunc activate;
  struct {
    guint key;
    GdkModifierType state;
  } keys[3];
} Action;

#define CTRL       GDK_CONTROL_MASK
#define CTRL_SHIFT (GDK_CONTROL_MASK | GDK_SHIFT_MASK)

static const Action actions[] = {
  { "report.export-workbook", export_action, { { GDK_KEY_e, CTRL } } },
  { "report.export-pages", export_action, { { GDK_KEY_d, CTRL } } },
  { "report.export-qif", export_action, { { 0 } } },
  { "report.export-table", export_action, { { GDK_KEY_e, CTRL_SHIFT } } },
  { "report.sign", sign_action, { { GDK_KEY_s, CTRL_SHIFT } } },
  { "report.print", print_action, { { GDK_KEY_p, CTRL } } },
  { "report.form", form_action, { { GDK_KEY_l, CTRL } } },
  { "report.show-pages", focus_pages_action, { { GDK_KEY_1, CTRL } } },
  { "report.show-table", view_action, { { GDK_KEY_2, CTRL } } },
  { "report.show-missing", missing_action, { { GDK_KEY_F9, 0 } } },
  { "report.ask-page", ask_page_action, { { GDK_KEY_g, CTRL } } },
  { "report.zoom-in",
    zoom_action,
    { { GDK_KEY_plus, CTRL }, { GDK_KEY_equal, CTRL }, { GDK_KEY_KP_Add, CTRL } } },
  { "report.zoom-out", zoom_action, { { GDK_KEY_minus, CTRL }, { GDK_KEY_KP_Subtract, CTRL } } },
  { "report.zoom-one", zoom_action, { { GDK_KEY_0, CTRL }, { GDK_KEY_KP_0, CTRL } } },
  { "report.zoom-width", zoom_action, { { GDK_KEY_8, CTRL } } },
  { "report.zoom-page", zoom_action, { { GDK_KEY_9, CTRL } } },
};

void
tm_report_actions_install (GtkWidgetClass *klass)
{
  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    {
      gtk_widget_class_install_action (klass, actions[i].name, NULL, actions[i].activate);
      for (guint k = 0; k < G_N_ELEMENTS (actions[i].keys) && actions[i].keys[k].key != 0; k++)
        gtk_widget_class_add_binding_action (klass, actions[i].keys[k].key, actions[i].keys[k].state,
                                             actions[i].name, NULL);
    }
  gtk_widget_class_install_action (klass, "report.write", "s", write_action);
  gtk_widget_class_install_action (klass, "report.print-to", "s", print_to_action);
}

static GtkWidget *
build_export (void)
{
  GtkWidget *button = gtk_menu_button_new ();
  g_autoptr (GMenu) menu = g_menu_new ();

  g_menu_append (menu, _ ("_Workbook…"), "report.export-workbook");
  g_menu_append (menu, _ ("_PDF…"), "report.export-pages");
  g_menu_append (menu, _ ("_QIF…"), "report.export-qif");
  g_menu_append (menu, _ ("_CSV table…"), "report.export-table");
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), G_MENU_MODEL (menu));
  gtk_menu_button_set_label (GTK_MENU_BUTTON (button), _ ("Export"));
  gtk_widget_set_tooltip_text (button, _ ("Write the report as workbook (Ctrl+E), PDF (Ctrl+D), QIF or CSV"));
  tm_name_widget (button, _ ("Export"));
  return button;
}

GtkWidget *
tm_report_actions_buttons (void)
{
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *form = tm_button_new (_ ("_Form…"));
  GtkWidget *print = tm_button_new (_ ("P_rint…"));

  gtk_actionable_set_action_name (GTK_ACTIONABLE (form), "report.form");
  gtk_widget_set_tooltip_text (form, _ ("Languages, numbers, dates and paper of the report (Ctrl+L)"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (print), "report.print");
  gtk_widget_set_tooltip_text (print, _ ("Print the pages (Ctrl+P)"));
  gtk_widget_set_valign (buttons, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (buttons), form);
  gtk_box_append (GTK_BOX (buttons), print);
  gtk_box_append (GTK_BOX (buttons), build_export ());
  return buttons;
}

GtkWidget *
tm_report_actions_toggle (const char *label, const char *tip, const char *action)
{
  GtkWidget *button = gtk_toggle_button_new ();

  gtk_button_set_child (GTK_BUTTON (button), gtk_label_new (label));
  tm_name_widget (button, label);
  gtk_widget_add_css_class (button, "text-button");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_set_tooltip_text (button, tip);
  return button;
}
