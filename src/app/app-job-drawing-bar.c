/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-job-drawing-bar: the line over the drawing: which one, how large, and what to do.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-drawing-words.h"
#include "app-job-drawing-private.h"
#include "plot-balloon.h"

/* Characters of a name in the button, and in the list that it opens. */
#define NAME_CHARS 22
#define LIST_CHARS 70

static const GPtrArray *
get_drawings (TmJobDrawing *self)
{
  return tm_document_job (self->document)->drawings;
}

static gboolean
lists (GListModel *model, GPtrArray *names)
{
  gboolean same = model != NULL && g_list_model_get_n_items (model) == names->len;

  for (guint i = 0; same && i < names->len; i++)
    same
        = g_str_equal (gtk_string_list_get_string (GTK_STRING_LIST (model), i), g_ptr_array_index (names, i));
  return same;
}

/* While one is being chosen in the drop-down its list must stay the same. */
static void
list_names (TmJobDrawing *self, GPtrArray *names)
{
  g_autoptr (GtkStringList) list = NULL;

  if (lists (gtk_drop_down_get_model (self->drop), names))
    return;
  list = gtk_string_list_new (NULL);
  for (guint i = 0; i < names->len; i++)
    gtk_string_list_append (list, g_ptr_array_index (names, i));
  gtk_drop_down_set_model (self->drop, G_LIST_MODEL (list));
}

void
tm_job_drawing_show_drawings (TmJobDrawing *self)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  const GPtrArray *drawings = get_drawings (self);
  const char *shown = tm_drawing_view_drawing (self->view);
  guint chosen = 0;

  for (guint i = 0; i < drawings->len; i++)
    {
      const TmDrawing *drawing = g_ptr_array_index (drawings, i);

      g_ptr_array_add (names, tm_words_drawing (drawing));
      if (g_strcmp0 (drawing->name, shown) == 0)
        chosen = i;
    }
  self->listing = TRUE;
  list_names (self, names);
  if (gtk_drop_down_get_selected (self->drop) != chosen)
    gtk_drop_down_set_selected (self->drop, chosen);
  self->listing = FALSE;
}

static void
turned_cb (TmJobDrawing *self)
{
  guint at = gtk_drop_down_get_selected (self->drop);

  if (self->listing || self->document == NULL || at >= get_drawings (self)->len)
    return;
  tm_drawing_view_turn_to (self->view, ((TmDrawing *)g_ptr_array_index (get_drawings (self), at))->name);
}

void
tm_job_drawing_show_percent (TmJobDrawing *self)
{
  /* Translators: how large a drawing is shown, of its size on paper. */
  g_autofree char *text = g_strdup_printf (_ ("%.0f %%"), tm_drawing_view_percent (self->view));

  gtk_label_set_text (self->percent, text);
}

/* -------- What to do next -------- */

static char *
describe_chosen (TmJobDrawing *self, const TmFeature *feature)
{
  const guint place = tm_drawing_view_place (self->view);
  g_autofree char *text = tm_balloon_text (feature, place);

  if (tm_drawing_view_is_placed (self->view))
    return g_strdup_printf (
        _ ("Balloon %s: drag it or its tip.  Arrow keys move it, with Ctrl its tip; Delete "
           "takes it off; Enter measures."),
        text);
  if (tm_find_place_mark (tm_document_job (self->document), feature->balloon, place) != NULL)
    return g_strdup_printf (_ ("Balloon %s stands on another drawing."), text);
  if (place == 0 && feature->places > 1)
    return g_strdup_printf (
        _ ("Click where balloon %s shall point.  The full stop, or the arrow at the left: one for "
           "each place."),
        text);
  return g_strdup_printf (_ ("Click where the leader line of balloon %s shall point.  Enter puts it in the "
                             "middle."),
                          text);
}

void
tm_job_drawing_show_hint (TmJobDrawing *self)
{
  const char *chosen = tm_drawing_view_chosen (self->view);
  const TmFeature *feature
      = chosen != NULL ? tm_job_find_feature (tm_document_job (self->document), chosen) : NULL;
  guint n_placed, n = tm_drawing_list_count (self->list, &n_placed);
  g_autofree char *text = NULL;

  if (n == 0)
    text = g_strdup (_ ("Ctrl and a click where a requirement stands, or Ctrl+I, adds it as a feature."));
  else if (feature != NULL)
    text = describe_chosen (self, feature);
  else if (n_placed == n)
    text = g_strdup (_ ("All balloons are placed.  A double click on one, or Enter, measures it."));
  else
    text = g_strdup (_ ("Choose a feature at the left, then click where it stands on the drawing."));
  gtk_label_set_text (self->hint, text);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->hint), text);
}

/* -------- Building -------- */

static GtkWidget *
add_icon (GtkWidget *box, const char *icon, const char *action, const char *name)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_set_tooltip_text (button, name);
  tm_name_widget (button, name);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_focus_on_click (button, FALSE);
  tm_access_hide_decoration (button);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static GtkWidget *
build_menu (void)
{
  GtkWidget *button = gtk_menu_button_new ();
  g_autoptr (GMenu) menu = g_menu_new ();

  g_menu_append (menu, _ ("_Name and sheet…"), "drawing.facts");
  g_menu_append (menu, _ ("_Replace its file…"), "drawing.replace");
  g_menu_append (menu, _ ("New _feature here"), "drawing.new-feature");
  g_menu_append (menu, _ ("The ne_xt place of it (.)"), "drawing.place");
  g_menu_append (menu, _ ("N_umber clockwise"), "drawing.number");
  g_menu_append (menu, _ ("_Take back"), "drawing.undo");
  g_menu_append (menu, _ ("_Paste a picture or a file"), "drawing.paste");
  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (button), "view-more-symbolic");
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), G_MENU_MODEL (menu));
  gtk_widget_set_tooltip_text (button, _ ("More for this drawing"));
  tm_name_widget (button, _ ("More for this drawing"));
  gtk_widget_add_css_class (button, "flat");
  return button;
}

static GtkWidget *
build_zoom (TmJobDrawing *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  add_icon (box, "zoom-out-symbolic", "drawing.zoom-out", _ ("Smaller (Ctrl+minus)"));
  self->percent = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_width_chars (self->percent, 6);
  gtk_widget_add_css_class (GTK_WIDGET (self->percent), "numeric");
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->percent));
  add_icon (box, "zoom-in-symbolic", "drawing.zoom-in", _ ("Larger (Ctrl+plus)"));
  add_icon (box, "zoom-fit-best-symbolic", "drawing.fit", _ ("All of it (Ctrl+0)"));
  return box;
}

/* A long name must not make the window wider; its end tells more than its middle. */
static void
setup_name_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer chars)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_MIDDLE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), GPOINTER_TO_INT (chars));
  gtk_list_item_set_child (item, label);
}

static void
bind_name_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  GtkWidget *label = gtk_list_item_get_child (item);
  const char *name = gtk_string_object_get_string (gtk_list_item_get_item (item));

  gtk_label_set_text (GTK_LABEL (label), name);
  gtk_widget_set_tooltip_text (label, name);
}

static GtkListItemFactory *
make_factory (int chars)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_name_cb), GINT_TO_POINTER (chars));
  g_signal_connect (factory, "bind", G_CALLBACK (bind_name_cb), NULL);
  return factory;
}

static void
build_drop (TmJobDrawing *self)
{
  g_autoptr (GtkListItemFactory) button = make_factory (NAME_CHARS);
  g_autoptr (GtkListItemFactory) list = make_factory (LIST_CHARS);

  self->drop = GTK_DROP_DOWN (gtk_drop_down_new (G_LIST_MODEL (gtk_string_list_new (NULL)), NULL));
  gtk_drop_down_set_factory (self->drop, button);
  gtk_drop_down_set_list_factory (self->drop, list);
  tm_access_name_drop_down (self->drop, _ ("Drawing"));
  gtk_widget_set_size_request (GTK_WIDGET (self->drop), 200, -1);
  g_signal_connect_swapped (self->drop, "notify::selected", G_CALLBACK (turned_cb), self);
}

GtkWidget *
tm_job_drawing_build_bar (TmJobDrawing *self)
{
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *add = tm_button_new (_ ("_Add a drawing…"));

  build_drop (self);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (add), "job.add-drawing");
  gtk_widget_set_tooltip_text (add, _ ("A page of the customer's drawing: PDF, SVG, PNG or JPEG (Ctrl+D)"));
  self->hint = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->hint, 0);
  gtk_label_set_wrap (self->hint, TRUE);
  gtk_label_set_lines (self->hint, 2);
  gtk_label_set_ellipsize (self->hint, PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars (self->hint, 24);
  gtk_widget_set_hexpand (GTK_WIDGET (self->hint), TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->hint), "dim-label");
  gtk_box_append (GTK_BOX (bar), GTK_WIDGET (self->drop));
  gtk_box_append (GTK_BOX (bar), build_zoom (self));
  gtk_box_append (GTK_BOX (bar), GTK_WIDGET (self->hint));
  gtk_box_append (GTK_BOX (bar), add);
  gtk_box_append (GTK_BOX (bar), build_menu ());
  gtk_widget_add_css_class (bar, "tm-drawing-bar");
  return bar;
}
