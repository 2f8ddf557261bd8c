/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-material-choice.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "core-elastic.h"

struct _TmMaterialChoice {
  GtkBox parent_instance;

  GtkWidget *drop;
  GPtrArray *names; /* char *: "" first */
  GPtrArray *shown; /* char *: as listed, to see whether the list is another */
  gboolean filling;
};

enum { SIGNAL_CHOSEN, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmMaterialChoice, tm_material_choice, GTK_TYPE_BOX)

static void
selected_cb (TmMaterialChoice *self)
{
  const guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->drop));

  if (!self->filling && chosen < self->names->len)
    {
      g_autofree char *name = g_strdup (g_ptr_array_index (self->names, chosen));

      g_signal_emit (self, signals[SIGNAL_CHOSEN], 0, name);
    }
}

static void
tm_material_choice_finalize (GObject *object)
{
  TmMaterialChoice *self = TM_MATERIAL_CHOICE (object);

  g_clear_pointer (&self->names, g_ptr_array_unref);
  g_clear_pointer (&self->shown, g_ptr_array_unref);
  G_OBJECT_CLASS (tm_material_choice_parent_class)->finalize (object);
}

static void
tm_material_choice_class_init (TmMaterialChoiceClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_material_choice_finalize;
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                         NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer chars)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (label), GPOINTER_TO_INT (chars));
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  GtkStringObject *text = gtk_list_item_get_item (item);

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), gtk_string_object_get_string (text));
  tm_access_name_row (gtk_list_item_get_child (item), gtk_string_object_get_string (text));
}

static GtkListItemFactory *
make_factory (int chars)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), GINT_TO_POINTER (chars));
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  return factory;
}

/* A long name is cut in the button, which must not widen the column, later in the list; the list is long
 * enough to be searched. */
static void
tm_material_choice_init (TmMaterialChoice *self)
{
  g_autoptr (GtkListItemFactory) button = make_factory (1);
  g_autoptr (GtkListItemFactory) list = make_factory (48);
  g_autoptr (GtkExpression) text = gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string");

  self->names = g_ptr_array_new_with_free_func (g_free);
  self->shown = g_ptr_array_new_with_free_func (g_free);
  self->drop = gtk_drop_down_new (NULL, NULL);
  gtk_drop_down_set_factory (GTK_DROP_DOWN (self->drop), button);
  gtk_drop_down_set_list_factory (GTK_DROP_DOWN (self->drop), list);
  gtk_drop_down_set_expression (GTK_DROP_DOWN (self->drop), text);
  gtk_drop_down_set_enable_search (GTK_DROP_DOWN (self->drop), TRUE);
  tm_access_name_inside (self->drop, GTK_TYPE_SEARCH_ENTRY, _ ("Search the materials"));
  gtk_widget_set_hexpand (self->drop, TRUE);
  g_signal_connect_swapped (self->drop, "notify::selected", G_CALLBACK (selected_cb), self);
}

GtkWidget *
tm_material_choice_new (const char *title)
{
  TmMaterialChoice *self = g_object_new (TM_TYPE_MATERIAL_CHOICE, "spacing", 8, NULL);
  GtkWidget *label = gtk_label_new (title);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_size_request (label, 104, -1);
  gtk_box_append (GTK_BOX (self), label);
  gtk_box_append (GTK_BOX (self), self->drop);
  gtk_widget_add_css_class (self->drop, "tm-methods");
  tm_access_name_drop_down (GTK_DROP_DOWN (self->drop), title);
  return GTK_WIDGET (self);
}

static void
add (GPtrArray *names, GPtrArray *shown, const char *name, const char *text)
{
  if (g_ptr_array_find_with_equal_func (names, name, g_str_equal, NULL))
    return;
  g_ptr_array_add (names, g_strdup (name));
  g_ptr_array_add (shown, g_strdup (text));
}

/* The shop's own entries stand first. */
static void
collect (const TmJob *job, const char *none, const char *chosen, GPtrArray *names, GPtrArray *shown)
{
  TmElastic material;

  add (names, shown, "", none);
  for (guint i = 0; i < job->materials->len; i++)
    {
      const TmShopMaterial *own = g_ptr_array_index (job->materials, i);
      g_autofree char *text = g_strdup_printf (_ ("%s, the shop’s"), own->name);

      add (names, shown, own->name, text);
    }
  for (guint i = 0; tm_elastic_table (i, &material); i++)
    add (names, shown, material.name, material.name);
  add (names, shown, chosen, chosen);
}

static gboolean
are_equal (const GPtrArray *a, const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (!g_str_equal (g_ptr_array_index (a, i), g_ptr_array_index (b, i)))
      return FALSE;
  return TRUE;
}

static void
take_list (TmMaterialChoice *self, GPtrArray *names, GPtrArray *shown)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  for (guint i = 0; i < shown->len; i++)
    gtk_string_list_append (list, g_ptr_array_index (shown, i));
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->drop), G_LIST_MODEL (list));
  g_ptr_array_unref (self->names);
  g_ptr_array_unref (self->shown);
  self->names = g_ptr_array_ref (names);
  self->shown = g_ptr_array_ref (shown);
}

void
tm_material_choice_show (TmMaterialChoice *self, const TmJob *job, const char *none, const char *chosen)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) shown = g_ptr_array_new_with_free_func (g_free);
  guint at = 0;

  g_return_if_fail (TM_IS_MATERIAL_CHOICE (self));

  self->filling = TRUE;
  collect (job, none, chosen, names, shown);
  if (!are_equal (names, self->names) || !are_equal (shown, self->shown))
    take_list (self, names, shown);
  g_ptr_array_find_with_equal_func (self->names, chosen, g_str_equal, &at);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->drop), at);
  self->filling = FALSE;
}
