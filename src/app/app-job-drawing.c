/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-job-drawing.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-access.h"
#include "app-button.h"
#include "app-drawing-add.h"
#include "app-drawing-dialog.h"
#include "app-job-drawing-private.h"
#include "app-toast.h"
#include "core-callout.h"

/* Pixels. */
#define LIST_WIDTH 290

G_DEFINE_FINAL_TYPE (TmJobDrawing, tm_job_drawing, GTK_TYPE_BOX)

static TmJob *
get_job (TmJobDrawing *self)
{
  return tm_document_job (self->document);
}

/* -------- Shown anew -------- */

static void
show_paper (TmJobDrawing *self)
{
  const char *problem = tm_drawing_view_problem (self->view);

  adw_status_page_set_description (ADW_STATUS_PAGE (self->problem), problem);
  tm_access_show_page (self->paper, problem != NULL ? "problem" : "view");
}

static void
show_all (TmJobDrawing *self)
{
  gboolean any = self->document != NULL && get_job (self)->drawings->len > 0;

  tm_access_show_page (self->stack, any ? "drawing" : "empty");
  if (!any)
    return;
  tm_job_drawing_show_drawings (self);
  tm_job_drawing_show_percent (self);
  tm_job_drawing_show_hint (self);
  show_paper (self);
}

/* The feature at hand may have been taken out, or have got another number. */
static void
definitions_changed_cb (TmJobDrawing *self)
{
  tm_drawing_list_choose (self->list, tm_drawing_view_chosen (self->view),
                          tm_drawing_view_place (self->view));
  show_all (self);
}

static void
turned_cb (TmJobDrawing *self)
{
  tm_drawing_new_close (self->new_feature);
  if (self->document != NULL)
    show_all (self);
}

/* -------- Choosing -------- */

static void
list_chosen_cb (TmJobDrawing *self)
{
  tm_drawing_view_choose_place (self->view, tm_drawing_list_chosen (self->list),
                                tm_drawing_list_place (self->list), FALSE);
  tm_job_drawing_show_hint (self);
}

static void
view_chosen_cb (TmJobDrawing *self)
{
  tm_drawing_list_choose (self->list, tm_drawing_view_chosen (self->view),
                          tm_drawing_view_place (self->view));
  tm_job_drawing_show_hint (self);
}

/* The bench, at the feature chosen, or its place; at the piece that is measured there. */
static void
jump_cb (TmJobDrawing *self)
{
  const char *chosen = tm_drawing_view_chosen (self->view);
  TmFeature *feature = chosen != NULL ? tm_job_find_feature (get_job (self), chosen) : NULL;
  const TmSpot *spot = tm_bench_spot (tm_document_bench (self->document));
  guint place = tm_drawing_view_place (self->view);
  const char *station;

  if (feature == NULL)
    return;
  station = feature->stations->len > 0 ? g_ptr_array_index (feature->stations, 0) : "";
  if (place == 0)
    place = spot->feature == feature ? spot->place : 1;
  if (spot->piece != NULL && (spot->feature != feature || spot->place != place))
    tm_document_go (self->document, spot->piece, feature, place, station);
  gtk_widget_activate_action (GTK_WIDGET (self), "win.page", "s", "bench");
}

/* From the list: to the drawing, where what is not placed yet can be. */
static void
list_activated_cb (TmJobDrawing *self)
{
  if (tm_drawing_view_is_placed (self->view))
    jump_cb (self);
  else
    gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

/* -------- A new feature -------- */

static void
asks_feature_cb (TmDrawingView *view, double share_x, double share_y, TmJobDrawing *self)
{
  g_autofree char *balloon = tm_edit_next_balloon (get_job (self));

  self->new_x = share_x;
  self->new_y = share_y;
  tm_drawing_view_show_new (view, share_x, share_y);
  tm_drawing_new_open (self->new_feature, get_job (self), balloon);
}

static void
new_closed_cb (TmJobDrawing *self)
{
  tm_drawing_view_show_new (self->view, (double)NAN, (double)NAN);
  gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

static void
new_typed_cb (TmDrawingNew *line, const char *requirement, TmJobDrawing *self)
{
  TmJob *job = get_job (self);
  g_autofree char *balloon = tm_edit_next_balloon (job);
  TmFeature *feature = tm_feature_new ();
  g_autoptr (GError) error = NULL;

  feature->balloon = tm_job_intern (job, balloon);
  feature->requirement = tm_job_intern (job, requirement);
  feature->unit = job->unit;
  tm_callout_apply (job, feature);
  if (!tm_edit_add_feature (self->document, feature, &error))
    {
      tm_window_show_error (GTK_WIDGET (self), error->message);
      return;
    }
  /* Without its balloon it is not what was asked for. */
  if (!tm_drawing_view_put (self->view, balloon, 0, self->new_x, self->new_y))
    tm_edit_remove_feature (self->document, balloon, NULL);
  tm_drawing_new_close (line);
  tm_job_drawing_choose (self, balloon);
}

/* -------- Adding -------- */

static TmDocument *
get_document_cb (GtkWidget *widget)
{
  return TM_JOB_DRAWING (widget)->document;
}

static void
added_cb (GtkWidget *parent, const char *name)
{
  TmJobDrawing *self = TM_JOB_DRAWING (parent);

  if (self->document == NULL)
    return;
  tm_drawing_view_turn_to (self->view, name);
  tm_job_drawing_enter (self);
}

void
tm_job_drawing_add (TmJobDrawing *self)
{
  g_return_if_fail (TM_IS_JOB_DRAWING (self));

  if (self->document != NULL)
    tm_drawing_add_choose (GTK_WIDGET (self), self->document, added_cb);
}

void
tm_job_drawing_take (TmJobDrawing *self, const char *path)
{
  g_return_if_fail (TM_IS_JOB_DRAWING (self));

  if (self->document != NULL)
    tm_drawing_add_file (GTK_WIDGET (self), self->document, path, added_cb);
}

/* -------- Actions -------- */

static gboolean
has_drawing (TmJobDrawing *self)
{
  return self->document != NULL && tm_drawing_view_drawing (self->view) != NULL;
}

static void
facts_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobDrawing *self = TM_JOB_DRAWING (widget);

  if (has_drawing (self))
    tm_drawing_dialog_present (widget, self->document,
                               tm_job_find_drawing (get_job (self), tm_drawing_view_drawing (self->view)));
}

static void
replace_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobDrawing *self = TM_JOB_DRAWING (widget);

  if (has_drawing (self))
    tm_drawing_add_replacement (widget, self->document, tm_drawing_view_drawing (self->view), added_cb);
}

static void
number_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobDrawing *self = TM_JOB_DRAWING (widget);
  g_autoptr (GError) error = NULL;

  if (!has_drawing (self))
    return;
  if (!tm_edit_number_balloons (self->document, &error))
    {
      tm_window_show_error (widget, error->message);
      return;
    }
  tm_drawing_view_forget_undo (self->view);
  tm_window_clear_error (widget);
  tm_window_toast (widget, _ ("Numbered clockwise from the upper left"));
}

static void
undo_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobDrawing *self = TM_JOB_DRAWING (widget);

  if (has_drawing (self) && !tm_drawing_view_undo (self->view))
    tm_window_toast (widget, _ ("There is nothing on the drawing to take back."));
}

static void
new_feature_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobDrawing *self = TM_JOB_DRAWING (widget);
  double x, y;

  if (!has_drawing (self))
    return;
  tm_drawing_view_middle (self->view, &x, &y);
  asks_feature_cb (self->view, x, y, self);
}

static void
place_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobDrawing *self = TM_JOB_DRAWING (widget);

  if (has_drawing (self) && !tm_drawing_view_step_place (self->view))
    tm_window_toast (widget, _ ("Choose a feature of several places first."));
}

static void
paste_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobDrawing *self = TM_JOB_DRAWING (widget);

  if (self->document != NULL)
    tm_drawing_add_clipboard (widget, self->document, added_cb);
}

static void
zoom_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobDrawing *self = TM_JOB_DRAWING (widget);

  if (!has_drawing (self))
    return;
  if (g_str_equal (name, "drawing.fit"))
    tm_drawing_view_fit (self->view);
  else
    tm_drawing_view_zoom (self->view, g_str_equal (name, "drawing.zoom-in") ? 1.25 : 1 / 1.25);
}

static void
bind_keys (GtkWidgetClass *klass)
{
  static const struct {
    guint key;
    const char *action;
  } keys[] = {
    { GDK_KEY_plus, "drawing.zoom-in" },
    { GDK_KEY_equal, "drawing.zoom-in" },
    { GDK_KEY_KP_Add, "drawing.zoom-in" },
    { GDK_KEY_minus, "drawing.zoom-out" },
    { GDK_KEY_KP_Subtract, "drawing.zoom-out" },
    { GDK_KEY_0, "drawing.fit" },
    { GDK_KEY_KP_0, "drawing.fit" },
    { GDK_KEY_z, "drawing.undo" },
    { GDK_KEY_i, "drawing.new-feature" },
    { GDK_KEY_v, "drawing.paste" },
  };

  gtk_widget_class_add_binding_action (klass, GDK_KEY_b, GDK_CONTROL_MASK | GDK_SHIFT_MASK, "drawing.number",
                                       NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding_action (klass, keys[i].key, GDK_CONTROL_MASK, keys[i].action, NULL);
}

/* -------- The widget -------- */

static void
tm_job_drawing_dispose (GObject *object)
{
  tm_job_drawing_set_document (TM_JOB_DRAWING (object), NULL);
  G_OBJECT_CLASS (tm_job_drawing_parent_class)->dispose (object);
}

static void
tm_job_drawing_class_init (TmJobDrawingClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_job_drawing_dispose;
  gtk_widget_class_install_action (widget_class, "drawing.facts", NULL, facts_action);
  gtk_widget_class_install_action (widget_class, "drawing.replace", NULL, replace_action);
  gtk_widget_class_install_action (widget_class, "drawing.number", NULL, number_action);
  gtk_widget_class_install_action (widget_class, "drawing.undo", NULL, undo_action);
  gtk_widget_class_install_action (widget_class, "drawing.new-feature", NULL, new_feature_action);
  gtk_widget_class_install_action (widget_class, "drawing.place", NULL, place_action);
  gtk_widget_class_install_action (widget_class, "drawing.paste", NULL, paste_action);
  gtk_widget_class_install_action (widget_class, "drawing.zoom-in", NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "drawing.zoom-out", NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "drawing.fit", NULL, zoom_action);
  bind_keys (widget_class);
}

static GtkWidget *
build_empty (TmJobDrawing *self)
{
  GtkWidget *page = adw_status_page_new ();

  self->add = tm_button_new (_ ("_Add the drawing of this part…"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->add), "job.add-drawing");
  gtk_widget_set_halign (self->add, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (self->add, "pill");
  gtk_widget_add_css_class (self->add, "suggested-action");
  adw_status_page_set_title (ADW_STATUS_PAGE (page), _ ("No drawing yet"));
  adw_status_page_set_description (
      ADW_STATUS_PAGE (page),
      _ ("With the customer's drawing kept here (PDF, SVG, PNG or JPEG), each feature gets its numbered "
         "balloon on it. At the bench the balloons show what is in, out, or still to be measured, and the "
         "report prints the ballooned drawing.\nA file can also be dropped here, or a picture pasted."));
  adw_status_page_set_child (ADW_STATUS_PAGE (page), self->add);
  return page;
}

static GtkWidget *
build_paper (TmJobDrawing *self)
{
  self->paper = GTK_STACK (gtk_stack_new ());
  self->view = TM_DRAWING_VIEW (tm_drawing_view_new (TRUE));
  self->problem = adw_status_page_new ();
  adw_status_page_set_title (ADW_STATUS_PAGE (self->problem), _ ("This drawing cannot be shown"));
  gtk_stack_add_named (self->paper, GTK_WIDGET (self->view), "view");
  gtk_stack_add_named (self->paper, self->problem, "problem");
  tm_access_show_page (self->paper, "view");
  return GTK_WIDGET (self->paper);
}

static GtkWidget *
build_drawing (TmJobDrawing *self)
{
  GtkWidget *across = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *down = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->list = TM_DRAWING_LIST (tm_drawing_list_new ());
  self->new_feature = TM_DRAWING_NEW (tm_drawing_new_new ());
  gtk_widget_set_size_request (GTK_WIDGET (self->list), LIST_WIDTH, -1);
  gtk_widget_set_hexpand (GTK_WIDGET (self->list), FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "tm-side");
  gtk_box_append (GTK_BOX (down), tm_job_drawing_build_bar (self));
  gtk_box_append (GTK_BOX (down), GTK_WIDGET (self->new_feature));
  gtk_box_append (GTK_BOX (down), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (down), build_paper (self));
  gtk_widget_set_hexpand (down, TRUE);
  gtk_box_append (GTK_BOX (across), GTK_WIDGET (self->list));
  gtk_box_append (GTK_BOX (across), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (across), down);
  return across;
}

static void
tm_job_drawing_init (TmJobDrawing *self)
{
  self->stack = GTK_STACK (gtk_stack_new ());
  gtk_stack_add_named (self->stack, build_empty (self), "empty");
  gtk_stack_add_named (self->stack, build_drawing (self), "drawing");
  gtk_widget_set_hexpand (GTK_WIDGET (self->stack), TRUE);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->stack));
  tm_access_show_page (self->stack, "empty");
  g_signal_connect_swapped (self->list, "chosen", G_CALLBACK (list_chosen_cb), self);
  g_signal_connect_swapped (self->list, "activated", G_CALLBACK (list_activated_cb), self);
  g_signal_connect_swapped (self->view, "chosen", G_CALLBACK (view_chosen_cb), self);
  g_signal_connect_swapped (self->view, "turned", G_CALLBACK (turned_cb), self);
  g_signal_connect_swapped (self->view, "zoomed", G_CALLBACK (tm_job_drawing_show_percent), self);
  g_signal_connect_swapped (self->view, "jump", G_CALLBACK (jump_cb), self);
  g_signal_connect (self->view, "asks-feature", G_CALLBACK (asks_feature_cb), self);
  g_signal_connect (self->new_feature, "typed", G_CALLBACK (new_typed_cb), self);
  g_signal_connect_swapped (self->new_feature, "closed", G_CALLBACK (new_closed_cb), self);
  tm_drawing_add_drop_target (GTK_WIDGET (self), get_document_cb, added_cb);
}

GtkWidget *
tm_job_drawing_new (void)
{
  return g_object_new (TM_TYPE_JOB_DRAWING, NULL);
}

void
tm_job_drawing_set_document (TmJobDrawing *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_JOB_DRAWING (self));

  if (self->document == document)
    return;
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  tm_drawing_new_close (self->new_feature);
  tm_drawing_list_set_document (self->list, document);
  tm_drawing_view_set_document (self->view, document);
  g_set_object (&self->document, document);
  show_all (self);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
}

void
tm_job_drawing_enter (TmJobDrawing *self)
{
  g_return_if_fail (TM_IS_JOB_DRAWING (self));

  if (!has_drawing (self))
    {
      gtk_widget_grab_focus (self->add);
      return;
    }
  /* The first one that is to be placed is at hand, so that each click places one. */
  if (tm_drawing_view_chosen (self->view) == NULL && tm_drawing_view_next_unplaced (self->view) != NULL)
    tm_job_drawing_choose (self, tm_drawing_view_next_unplaced (self->view));
  gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

void
tm_job_drawing_choose (TmJobDrawing *self, const char *balloon)
{
  g_autofree char *kept = g_strdup (balloon);

  g_return_if_fail (TM_IS_JOB_DRAWING (self));

  if (self->document == NULL)
    return;
  tm_drawing_view_choose (self->view, kept, FALSE);
  view_chosen_cb (self);
}
