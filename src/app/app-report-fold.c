/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-fold.h"

#include <adwaita.h>

#include "app-button.h"

GtkWidget *
tm_report_fold_new (GtkWidget *side, GtkWidget *content)
{
  AdwFlap *fold = ADW_FLAP (adw_flap_new ());

  adw_flap_set_flap (fold, side);
  adw_flap_set_separator (fold, gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  adw_flap_set_content (fold, content);
  gtk_widget_set_hexpand (GTK_WIDGET (fold), TRUE);
  return GTK_WIDGET (fold);
}

gboolean
tm_report_fold_is_open (GtkWidget *fold)
{
  g_return_val_if_fail (ADW_IS_FLAP (fold), FALSE);

  return adw_flap_get_reveal_flap (ADW_FLAP (fold));
}

gboolean
tm_report_fold_has_room (GtkWidget *fold)
{
  g_return_val_if_fail (ADW_IS_FLAP (fold), FALSE);

  return !adw_flap_get_folded (ADW_FLAP (fold));
}

void
tm_report_fold_open (GtkWidget *fold, gboolean open)
{
  g_return_if_fail (ADW_IS_FLAP (fold));

  adw_flap_set_reveal_flap (ADW_FLAP (fold), open || tm_report_fold_has_room (fold));
}

static void
words_cb (GtkLabel *words, GParamSpec *property, GtkWidget *button)
{
  tm_button_set_label (button, gtk_label_get_text (words));
}

GtkWidget *
tm_report_fold_button_new (GtkWidget *fold, GtkLabel *words, const char *action, const char *tip)
{
  GtkWidget *button = tm_button_new (gtk_label_get_text (words));

  gtk_widget_set_tooltip_text (button, tip);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  g_signal_connect_object (words, "notify::label", G_CALLBACK (words_cb), button, 0);
  g_object_bind_property (fold, "folded", button, "visible", G_BINDING_SYNC_CREATE);
  return button;
}
