/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-bench-fit: fit and press in the place of the reading entry, for the feature that is at the bench.
 */

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-bench-page-private.h"
#include "app-button.h"
#include "app-fit-state.h"
#include "app-toast.h"

gboolean
tm_bench_page_is_fitting (TmBenchPage *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (self->work), "fit") == 0;
}

static gboolean
takes_mate (TmBenchPage *self)
{
  const TmFeature *feature
      = self->document != NULL ? tm_bench_spot (tm_document_bench (self->document))->feature : NULL;

  return self->has_judgement && feature != NULL && tm_feature_takes_mate (feature);
}

static void
go_to_fit (TmBenchPage *self)
{
  tm_access_show_page (self->work, "fit");
  tm_fit_view_show (self->fit, self->document);
  tm_fit_view_enter (self->fit);
}

static void
go_to_measuring (TmBenchPage *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  /* What is being typed is kept before its entry goes out of sight. */
  if (root != NULL)
    gtk_root_set_focus (root, NULL);
  tm_access_show_page (self->work, "measure");
  if (self->has_judgement)
    tm_bench_page_focus (self);
}

void
tm_bench_page_toggle_fit (TmBenchPage *self)
{
  if (tm_bench_page_is_fitting (self))
    go_to_measuring (self);
  else if (takes_mate (self))
    go_to_fit (self);
  else
    tm_window_toast (GTK_WIDGET (self),
                     _ ("A mate goes with a bore, a shaft or a length; choose one on the left."));
}

void
tm_bench_page_show_fit (TmBenchPage *self)
{
  gtk_widget_set_visible (self->fit_button, takes_mate (self));
  if (!tm_bench_page_is_fitting (self))
    return;
  if (takes_mate (self))
    tm_fit_view_show (self->fit, self->document);
  else
    tm_access_show_page (self->work, "measure");
}

void
tm_bench_page_leave_fit (TmBenchPage *self)
{
  tm_fit_view_show (self->fit, NULL);
  tm_access_show_page (self->work, "measure");
}

GtkWidget *
tm_bench_page_build_fit_button (TmBenchPage *self)
{
  self->fit_button = tm_button_new (_ ("_Fit and press"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->fit_button), "bench.fit");
  gtk_widget_set_tooltip_text (self->fit_button, _ ("Will the mate go in, and how will it press (F6)"));
  gtk_widget_set_focus_on_click (self->fit_button, FALSE);
  gtk_widget_set_valign (self->fit_button, GTK_ALIGN_START);
  gtk_widget_set_visible (self->fit_button, FALSE);
  return self->fit_button;
}

GtkWidget *
tm_bench_page_build_work (TmBenchPage *self, GtkWidget *measure)
{
  self->work = GTK_STACK (gtk_stack_new ());
  self->fit = TM_FIT_VIEW (tm_fit_view_new ());
  gtk_stack_add_named (self->work, measure, "measure");
  gtk_stack_add_named (self->work, GTK_WIDGET (self->fit), "fit");
  gtk_widget_set_hexpand (GTK_WIDGET (self->work), TRUE);
  tm_access_show_page (self->work, "measure");
  return GTK_WIDGET (self->work);
}
