/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-setting-view.h"

#include <glib/gi18n-lib.h>

/* Pixels. */
#define COLUMN_WIDTH 1160
#define GAP          36

struct _TmSettingView {
  GtkBox parent_instance;

  TmDocument *document;
  TmStackPanel stack;
  TmDialPanel dial;
  TmWarmPanel warm;
};

G_DEFINE_FINAL_TYPE (TmSettingView, tm_setting_view, GTK_TYPE_BOX)

static void
show_job (TmSettingView *self)
{
  const TmJob *job = self->document != NULL ? tm_document_job (self->document) : NULL;

  tm_stack_panel_show (&self->stack, job);
  tm_dial_panel_show (&self->dial, job);
  tm_warm_panel_show (&self->warm, job);
}

void
tm_setting_view_set_document (TmSettingView *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_SETTING_VIEW (self));

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document != NULL)
    g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (show_job), self);
  show_job (self);
}

void
tm_setting_view_enter (TmSettingView *self)
{
  g_return_if_fail (TM_IS_SETTING_VIEW (self));

  gtk_widget_grab_focus (GTK_WIDGET (self->stack.size));
}

TmStackPanel *
tm_setting_view_stack (TmSettingView *self)
{
  g_return_val_if_fail (TM_IS_SETTING_VIEW (self), NULL);

  return &self->stack;
}

TmDialPanel *
tm_setting_view_dial (TmSettingView *self)
{
  g_return_val_if_fail (TM_IS_SETTING_VIEW (self), NULL);

  return &self->dial;
}

TmWarmPanel *
tm_setting_view_warm (TmSettingView *self)
{
  g_return_val_if_fail (TM_IS_SETTING_VIEW (self), NULL);

  return &self->warm;
}

static GtkBox *
add_column (GtkWidget *columns)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_widget_set_hexpand (column, TRUE);
  gtk_widget_set_valign (column, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (columns), column);
  return GTK_BOX (column);
}

static GtkWidget *
build_columns (TmSettingView *self)
{
  GtkWidget *columns = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, GAP);
  GtkBox *left = add_column (columns);
  GtkBox *right = add_column (columns);
  GtkWidget *space = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_box_set_homogeneous (GTK_BOX (columns), TRUE);
  tm_stack_panel_build (&self->stack, left);
  gtk_widget_set_size_request (space, -1, 8);
  gtk_box_append (left, space);
  tm_warm_panel_build (&self->warm, left);
  tm_dial_panel_build (&self->dial, right);
  gtk_widget_add_css_class (columns, "tm-dialog");
  return columns;
}

static void
tm_setting_view_dispose (GObject *object)
{
  TmSettingView *self = TM_SETTING_VIEW (object);

  tm_setting_view_set_document (self, NULL);
  G_OBJECT_CLASS (tm_setting_view_parent_class)->dispose (object);
}

static void
tm_setting_view_finalize (GObject *object)
{
  TmSettingView *self = TM_SETTING_VIEW (object);

  tm_stack_panel_clear (&self->stack);
  tm_dial_panel_clear (&self->dial);
  tm_warm_panel_clear (&self->warm);
  G_OBJECT_CLASS (tm_setting_view_parent_class)->finalize (object);
}

static void
tm_setting_view_class_init (TmSettingViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_setting_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = tm_setting_view_finalize;
}

static void
tm_setting_view_init (TmSettingView *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *clamp = adw_clamp_new ();

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  adw_clamp_set_maximum_size (ADW_CLAMP (clamp), COLUMN_WIDTH);
  adw_clamp_set_tightening_threshold (ADW_CLAMP (clamp), COLUMN_WIDTH);
  adw_clamp_set_child (ADW_CLAMP (clamp), build_columns (self));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), clamp);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (self), scroller);
}

GtkWidget *
tm_setting_view_new (void)
{
  return g_object_new (TM_TYPE_SETTING_VIEW, NULL);
}
