/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-chances-view.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-band-view.h"
#include "app-dialog.h"
#include "plot-chance.h"

#define BAR_HEIGHT 18
/* A chance that is not nothing is never too narrow to be seen. */
#define LEAST_WIDTH 4.0
#define HATCH_STEP  5.0

enum { PART_LEFT, PART_IN, PART_GONE, N_PARTS };

struct _TmChancesView {
  GtkBox parent_instance;

  double parts[N_PARTS];
  GtkWidget *bar; /* GtkDrawingArea */
  GtkLabel *words[N_PARTS];
};

G_DEFINE_FINAL_TYPE (TmChancesView, tm_chances_view, GTK_TYPE_BOX)

static void
set_colour (cairo_t *cr, const TmColour *colour)
{
  cairo_set_source_rgba (cr, colour->red, colour->green, colour->blue, colour->alpha);
}

/* The widths of the parts in a bar of @width: in proportion, but for the least. */
static void
share_width (const double parts[N_PARTS], double width, double widths[N_PARTS])
{
  double sum = 0;
  for (guint i = 0; i < N_PARTS; i++)
    {
      widths[i] = parts[i] > 0 ? MAX (parts[i] * width, LEAST_WIDTH) : 0;
      sum += widths[i];
    }
  for (guint i = 0; i < N_PARTS && sum > 0; i++)
    widths[i] *= width / sum;
}

static void
draw_left (cairo_t *cr, double x, double width, const TmTheme *theme)
{
  set_colour (cr, &theme->in);
  cairo_set_line_width (cr, 1.5);
  cairo_rectangle (cr, x + 0.75, 0.75, MAX (width - 1.5, 0.5), BAR_HEIGHT - 1.5);
  cairo_stroke (cr);
}

static void
draw_in (cairo_t *cr, double x, double width, const TmTheme *theme)
{
  set_colour (cr, &theme->in);
  cairo_rectangle (cr, x, 0, width, BAR_HEIGHT);
  cairo_fill (cr);
}

static void
draw_gone (cairo_t *cr, double x, double width, const TmTheme *theme)
{
  set_colour (cr, &theme->out);
  cairo_save (cr);
  cairo_rectangle (cr, x, 0, width, BAR_HEIGHT);
  cairo_clip_preserve (cr);
  cairo_set_line_width (cr, 1.5);
  cairo_stroke (cr);
  for (double at = x - BAR_HEIGHT; at < x + width; at += HATCH_STEP)
    {
      cairo_move_to (cr, at, BAR_HEIGHT);
      cairo_line_to (cr, at + BAR_HEIGHT, 0);
    }
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  TmChancesView *self = TM_CHANCES_VIEW (data);
  const TmTheme *theme = tm_app_theme ();
  double widths[N_PARTS];
  double x = 0;
  share_width (self->parts, width, widths);
  if (widths[PART_LEFT] > 0)
    draw_left (cr, x, widths[PART_LEFT], theme);
  x += widths[PART_LEFT];
  if (widths[PART_IN] > 0)
    draw_in (cr, x, widths[PART_IN], theme);
  x += widths[PART_IN];
  if (widths[PART_GONE] > 0)
    draw_gone (cr, x, widths[PART_GONE], theme);
}

static void
tm_chances_view_class_init (TmChancesViewClass *klass)
{
}

static void
add_words (TmChancesView *self, GtkWidget *box, guint part, GtkAlign align)
{
  self->words[part] = GTK_LABEL (gtk_label_new (NULL));
  gtk_widget_set_halign (GTK_WIDGET (self->words[part]), align);
  gtk_widget_set_hexpand (GTK_WIDGET (self->words[part]), part == PART_IN);
  gtk_widget_add_css_class (GTK_WIDGET (self->words[part]), part == PART_IN ? "tm-chance-in" : "tm-chance");
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->words[part]));
}

static void
tm_chances_view_init (TmChancesView *self)
{
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 3);
  self->bar = g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG, NULL);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self->bar), BAR_HEIGHT);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->bar), draw_cb, self, NULL);
  add_words (self, words, PART_LEFT, GTK_ALIGN_START);
  add_words (self, words, PART_IN, GTK_ALIGN_CENTER);
  add_words (self, words, PART_GONE, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (self), words);
  gtk_box_append (GTK_BOX (self), self->bar);
  g_signal_connect_object (adw_style_manager_get_default (), "notify::dark",
                           G_CALLBACK (gtk_widget_queue_draw), self->bar, G_CONNECT_SWAPPED);
  tm_chances_view_show (self, NULL);
}

GtkWidget *
tm_chances_view_new (void)
{
  return g_object_new (TM_TYPE_CHANCES_VIEW, NULL);
}

static void
show_words (TmChancesView *self)
{
  g_autofree char *left = tm_chance_text (self->parts[PART_LEFT]);
  g_autofree char *in = tm_chance_text (self->parts[PART_IN]);
  g_autofree char *gone = tm_chance_text (self->parts[PART_GONE]);
  g_autofree char *left_words = g_strdup_printf (_ ("metal left %s"), left);
  g_autofree char *in_words = g_strdup_printf (_ ("in %s"), in);
  g_autofree char *gone_words = g_strdup_printf (_ ("metal gone %s ▸"), gone);
  /* Translators: the three chances of a cut: in, metal left, metal gone. */
  g_autofree char *all = g_strdup_printf (_ ("in %s, metal left %s, metal gone %s"), in, left, gone);
  gtk_label_set_text (self->words[PART_LEFT], left_words);
  gtk_label_set_text (self->words[PART_IN], in_words);
  gtk_label_set_text (self->words[PART_GONE], gone_words);
  tm_name_widget (self->bar, all);
}

void
tm_chances_view_show (TmChancesView *self, const TmCutChances *chances)
{
  gboolean known
      = chances != NULL && isfinite (chances->left) && isfinite (chances->in) && isfinite (chances->gone);
  g_return_if_fail (TM_IS_CHANCES_VIEW (self));

  gtk_widget_set_visible (GTK_WIDGET (self), known);
  if (!known)
    return;
  self->parts[PART_LEFT] = CLAMP (chances->left, 0, 1);
  self->parts[PART_IN] = CLAMP (chances->in, 0, 1);
  self->parts[PART_GONE] = CLAMP (chances->gone, 0, 1);
  show_words (self);
  gtk_widget_queue_draw (self->bar);
}
