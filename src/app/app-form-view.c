/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-form-view.h"

#include <adwaita.h>

#include "app-band-view.h"
#include "plot-clock.h"
#include "plot-section.h"

struct _TmFormView {
  GtkWidget parent_instance;

  TmFormPicture picture;
  TmSectionPlot *section;
  TmClockPlot *clock;
  char *words;
};

G_DEFINE_FINAL_TYPE (TmFormView, tm_form_view, GTK_TYPE_WIDGET)

static void
drop_plots (TmFormView *self)
{
  g_clear_pointer (&self->section, tm_section_plot_free);
  g_clear_pointer (&self->clock, tm_clock_plot_free);
}

static void
tm_form_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TmFormView *self = TM_FORM_VIEW (widget);
  int width = gtk_widget_get_width (widget);
  int height = gtk_widget_get_height (widget);
  if ((self->section == NULL && self->clock == NULL) || width <= 0 || height <= 0)
    return;
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  double scale = tm_picture_scale (width, height);
  cairo_scale (cr, scale, scale);
  if (self->section != NULL)
    tm_section_plot_draw (self->section, cr, width / scale, height / scale, tm_app_theme ());
  else
    tm_clock_plot_draw (self->clock, cr, width / scale, height / scale, tm_app_theme ());
  cairo_destroy (cr);
}

static void
tm_form_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                      int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural
      = orientation == GTK_ORIENTATION_HORIZONTAL ? TM_PICTURE_MIN_WIDTH : TM_PICTURE_MIN_HEIGHT;
}

static void
tm_form_view_finalize (GObject *object)
{
  TmFormView *self = TM_FORM_VIEW (object);
  drop_plots (self);
  g_clear_pointer (&self->words, g_free);
  G_OBJECT_CLASS (tm_form_view_parent_class)->finalize (object);
}

static void
tm_form_view_class_init (TmFormViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->finalize = tm_form_view_finalize;
  widget_class->snapshot = tm_form_view_snapshot;
  widget_class->measure = tm_form_view_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "formview");
}

static void
tm_form_view_init (TmFormView *self)
{
  self->words = g_strdup ("");
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  g_signal_connect_object (adw_style_manager_get_default (), "notify::dark",
                           G_CALLBACK (gtk_widget_queue_draw), self, G_CONNECT_SWAPPED);
}

GtkWidget *
tm_form_view_new (TmFormPicture picture)
{
  TmFormView *self = g_object_new (TM_TYPE_FORM_VIEW, NULL);
  self->picture = picture;
  return GTK_WIDGET (self);
}

static char *
make_plot (TmFormView *self, const TmJob *job, const TmJudgement *judgement)
{
  if (self->picture == TM_FORM_SECTION)
    {
      self->section = tm_section_plot_new (job, judgement);
      return self->section != NULL ? tm_section_plot_describe (self->section) : NULL;
    }
  self->clock = tm_clock_plot_new (job, judgement);
  return self->clock != NULL ? tm_clock_plot_describe (self->clock) : NULL;
}

gboolean
tm_form_view_show (TmFormView *self, const TmJob *job, const TmJudgement *judgement)
{
  g_return_val_if_fail (TM_IS_FORM_VIEW (self), FALSE);

  drop_plots (self);
  g_autofree char *words = judgement != NULL ? make_plot (self, job, judgement) : NULL;
  gboolean found = words != NULL;
  g_free (self->words);
  self->words = found ? g_steal_pointer (&words) : g_strdup ("");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, self->words, -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return found;
}

const char *
tm_form_view_words (TmFormView *self)
{
  g_return_val_if_fail (TM_IS_FORM_VIEW (self), "");

  return self->words;
}
