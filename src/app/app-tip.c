/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-tip.h"

static gboolean
query_tooltip_cb (GtkWidget *widget, int x, int y, gboolean keyboard, GtkTooltip *tooltip, gpointer data)
{
  const char *text = GTK_IS_LABEL (widget) ? gtk_label_get_text (GTK_LABEL (widget))
                                           : gtk_inscription_get_text (GTK_INSCRIPTION (widget));

  if (text == NULL || *text == '\0')
    return FALSE;
  gtk_tooltip_set_text (tooltip, text);
  return TRUE;
}

void
tm_tip_own_text (GtkWidget *widget)
{
  g_return_if_fail (GTK_IS_LABEL (widget) || GTK_IS_INSCRIPTION (widget));

  gtk_widget_set_has_tooltip (widget, TRUE);
  g_signal_connect (widget, "query-tooltip", G_CALLBACK (query_tooltip_cb), NULL);
}
