/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-feature-drop.h"

#include "app-access.h"
#include "app-feature-words.h"

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars (GTK_LABEL (label), 24);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 44);
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkStringObject *text = gtk_list_item_get_item (item);

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), gtk_string_object_get_string (text));
}

GtkDropDown *
tm_feature_drop_new (const char *name)
{
  GtkDropDown *drop = GTK_DROP_DOWN (gtk_drop_down_new (NULL, NULL));
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  gtk_drop_down_set_factory (drop, factory);
  tm_access_name_drop_down (drop, name);
  return drop;
}

static gboolean
is_offered (const TmFeature *feature)
{
  return !tm_kind_is_attribute (feature->kind);
}

void
tm_feature_drop_fill (GtkDropDown *drop, const TmJob *job, const char *balloon)
{
  g_autoptr (GtkStringList) words = gtk_string_list_new (NULL);
  guint chosen = 0, n = 0;

  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);
      g_autofree char *text = tm_words_feature (feature);

      if (!is_offered (feature))
        continue;
      chosen = g_strcmp0 (feature->balloon, balloon) == 0 ? n : chosen;
      gtk_string_list_append (words, text);
      n++;
    }
  gtk_drop_down_set_model (drop, G_LIST_MODEL (words));
  gtk_drop_down_set_selected (drop, n > 0 ? chosen : GTK_INVALID_LIST_POSITION);
  gtk_widget_set_sensitive (GTK_WIDGET (drop), n > 0);
}

TmFeature *
tm_feature_drop_get (GtkDropDown *drop, const TmJob *job)
{
  guint left = gtk_drop_down_get_selected (drop);

  for (guint i = 0; i < job->features->len && left != GTK_INVALID_LIST_POSITION; i++)
    {
      TmFeature *feature = g_ptr_array_index (job->features, i);

      if (is_offered (feature) && left-- == 0)
        return feature;
    }
  return NULL;
}
