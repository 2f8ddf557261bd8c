/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-bench-drawing: the drawing in the place of the pictures, around the balloon of the feature at hand,
 * while readings go on.
 */

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-bench-page-private.h"
#include "app-dialog.h"
#include "app-drawing-words.h"
#include "app-toast.h"

static const TmSpot *
get_spot (TmBenchPage *self)
{
  return tm_bench_spot (tm_document_bench (self->document));
}

static gboolean
has_drawings (TmBenchPage *self)
{
  return self->document != NULL && tm_document_job (self->document)->drawings->len > 0;
}

/* While a cut is planned the band is what is worked on. */
static gboolean
is_in_sight (TmBenchPage *self)
{
  return self->with_drawing && has_drawings (self) && !self->planning;
}

static void
show_caption (TmBenchPage *self)
{
  const TmJob *job = tm_document_job (self->document);
  const char *name = tm_drawing_view_drawing (self->drawing);
  const TmDrawing *drawing = name != NULL ? tm_job_find_drawing (job, name) : NULL;
  const char *problem = tm_drawing_view_problem (self->drawing);
  const TmFeature *feature = get_spot (self)->feature;
  g_autofree char *words = drawing != NULL ? tm_words_drawing (drawing) : g_strdup ("");
  g_autofree char *more = NULL;

  if (problem != NULL)
    more = g_strdup (problem);
  else if (feature != NULL && !tm_drawing_view_is_placed (self->drawing))
    more = g_strdup_printf (_ ("feature %s has no balloon on it"), feature->balloon);
  if (more != NULL)
    {
      g_autofree char *both = g_strdup_printf ("%s  ·  %s", words, more);

      gtk_label_set_text (self->drawing_caption, both);
    }
  else
    gtk_label_set_text (self->drawing_caption, words);
}

void
tm_bench_page_show_drawing (TmBenchPage *self)
{
  const TmSpot *spot = self->document != NULL ? get_spot (self) : NULL;
  const TmFeature *feature = spot != NULL ? spot->feature : NULL;
  gboolean drawing = feature != NULL && is_in_sight (self);

  /* Pass and fail have no size axis to draw on. */
  gtk_widget_set_visible (GTK_WIDGET (self->pictures),
                          feature != NULL && !drawing && !tm_kind_is_attribute (feature->kind));
  gtk_widget_set_visible (self->drawing_pane, drawing);
  gtk_widget_set_visible (self->drawing_button, has_drawings (self));
  tm_drawing_view_set_document (self->drawing, drawing ? self->document : NULL);
  if (!drawing)
    return;
  tm_drawing_view_choose_place (self->drawing, feature->balloon, spot->place, TRUE);
  show_caption (self);
}

void
tm_bench_page_toggle_drawing (TmBenchPage *self)
{
  if (!has_drawings (self))
    {
      tm_window_toast (GTK_WIDGET (self),
                       _ ("No drawing is kept with this job; it is added on the Job page (Ctrl+D)."));
      return;
    }
  if (tm_bench_page_is_fitting (self))
    tm_bench_page_toggle_fit (self);
  self->with_drawing = !is_in_sight (self);
  if (self->with_drawing)
    tm_bench_page_set_planning (self, FALSE);
  tm_bench_page_show_drawing (self);
  tm_bench_page_focus (self);
}

/* A click on a balloon goes to its feature, and to its place where it is of one; the hand goes on typing. */
static void
chosen_cb (TmBenchPage *self)
{
  const char *chosen = tm_drawing_view_chosen (self->drawing);
  TmFeature *feature = chosen != NULL ? tm_job_find_feature (tm_document_job (self->document), chosen) : NULL;
  const TmSpot *spot = get_spot (self);
  guint place = tm_drawing_view_place (self->drawing);
  const char *station;

  if (feature == NULL || spot->piece == NULL)
    return;
  place = spot->feature == feature && place == 0 ? spot->place : CLAMP (place, 1, feature->places);
  if (spot->feature == feature && spot->place == place)
    return;
  station = feature->stations->len > 0 ? g_ptr_array_index (feature->stations, 0) : "";
  tm_document_go (self->document, spot->piece, feature, place, station);
  tm_bench_page_focus (self);
}

static void
turned_cb (TmBenchPage *self)
{
  if (self->document != NULL && tm_drawing_view_drawing (self->drawing) != NULL)
    show_caption (self);
}

GtkWidget *
tm_bench_page_build_drawing (TmBenchPage *self)
{
  self->drawing_pane = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  self->drawing = TM_DRAWING_VIEW (tm_drawing_view_new (FALSE));
  self->drawing_caption = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->drawing_caption, 0);
  gtk_label_set_ellipsize (self->drawing_caption, PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (GTK_WIDGET (self->drawing_caption), "dim-label");
  gtk_widget_add_css_class (GTK_WIDGET (self->drawing), "tm-bench-drawing");
  gtk_box_append (GTK_BOX (self->drawing_pane), GTK_WIDGET (self->drawing));
  gtk_box_append (GTK_BOX (self->drawing_pane), GTK_WIDGET (self->drawing_caption));
  gtk_widget_set_visible (self->drawing_pane, FALSE);
  g_signal_connect_swapped (self->drawing, "chosen", G_CALLBACK (chosen_cb), self);
  g_signal_connect_swapped (self->drawing, "turned", G_CALLBACK (turned_cb), self);
  g_signal_connect_swapped (self->drawing, "jump", G_CALLBACK (tm_bench_page_focus), self);
  return self->drawing_pane;
}

GtkWidget *
tm_bench_page_build_drawing_button (TmBenchPage *self)
{
  self->drawing_button = gtk_button_new_from_icon_name ("image-x-generic-symbolic");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->drawing_button), "bench.drawing");
  gtk_widget_set_tooltip_text (self->drawing_button, _ ("The drawing around this feature's balloon (F7)"));
  gtk_widget_set_focus_on_click (self->drawing_button, FALSE);
  gtk_widget_set_valign (self->drawing_button, GTK_ALIGN_START);
  gtk_widget_set_visible (self->drawing_button, FALSE);
  tm_name_widget (self->drawing_button, _ ("Drawing"));
  tm_access_hide_decoration (self->drawing_button);
  return self->drawing_button;
}
