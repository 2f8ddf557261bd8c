/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-print.h"

#include <glib/gi18n-lib.h>

/* The paper of the report, whose own margins are the only ones: what is printed is what is shown. */
static GtkPageSetup *
make_setup (const TmReportForm *form)
{
  GtkPageSetup *setup = gtk_page_setup_new ();
  GtkPaperSize *size
      = gtk_paper_size_new (form->paper == TM_PAPER_LETTER ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);

  gtk_page_setup_set_paper_size (setup, size);
  gtk_page_setup_set_orientation (setup, form->landscape ? GTK_PAGE_ORIENTATION_LANDSCAPE
                                                         : GTK_PAGE_ORIENTATION_PORTRAIT);
  gtk_page_setup_set_top_margin (setup, 0, GTK_UNIT_POINTS);
  gtk_page_setup_set_bottom_margin (setup, 0, GTK_UNIT_POINTS);
  gtk_page_setup_set_left_margin (setup, 0, GTK_UNIT_POINTS);
  gtk_page_setup_set_right_margin (setup, 0, GTK_UNIT_POINTS);
  gtk_paper_size_free (size);
  return setup;
}

/* On other paper than the report's, which only the printer's own settings can bring about, the page is made
 * smaller rather than cut off. */
static void
draw_cb (GtkPrintOperation *operation, GtkPrintContext *context, int page, TmReportPaper *paper)
{
  cairo_t *cr = gtk_print_context_get_cairo_context (context);
  double width, height, x = gtk_print_context_get_dpi_x (context) / 72,
                        y = gtk_print_context_get_dpi_y (context) / 72, fit;

  tm_report_paper_size (paper, &width, &height);
  fit = MIN (gtk_print_context_get_width (context) / (width * x),
             gtk_print_context_get_height (context) / (height * y));
  if (fit < 0.99)
    x *= fit, y *= fit;
  cairo_save (cr);
  cairo_scale (cr, x, y);
  tm_report_paper_draw (paper, (guint)page, cr);
  cairo_restore (cr);
}

gboolean
tm_report_print (GtkWindow *parent, TmReportPaper *paper, const char *name, guint current, const char *path,
                 GError **error)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = NULL;
  g_autoptr (GError) failed = NULL;
  GtkPrintOperationAction action = GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG;

  g_return_val_if_fail (paper != NULL && name != NULL, FALSE);

  setup = make_setup (tm_report_paper_form (paper));
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_NONE);
  gtk_print_operation_set_job_name (operation, name);
  gtk_print_operation_set_n_pages (operation, (int)tm_report_paper_n_pages (paper));
  gtk_print_operation_set_current_page (operation, (int)current);
  gtk_print_operation_set_show_progress (operation, TRUE);
  if (path != NULL)
    {
      gtk_print_operation_set_export_filename (operation, path);
      action = GTK_PRINT_OPERATION_ACTION_EXPORT;
    }
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_cb), paper);
  if (gtk_print_operation_run (operation, action, parent, &failed) != GTK_PRINT_OPERATION_RESULT_ERROR)
    return TRUE;
  g_set_error (error, GTK_PRINT_ERROR, GTK_PRINT_ERROR_GENERAL,
               _ ("%s was not printed: %s; look at the printer, or export a PDF and print that"), name,
               failed != NULL ? failed->message : _ ("the printer does not say why"));
  return FALSE;
}
