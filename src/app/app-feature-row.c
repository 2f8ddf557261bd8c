/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-feature-row.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-band-strip.h"
#include "app-feature-words.h"
#include "app-tip.h"
#include "app-words.h"

struct _TmFeatureRow {
  GtkBox parent_instance;

  TmFeatureItem *item;
  GtkLabel *balloon;
  GtkLabel *callout;
  GtkLabel *state;
  TmBandStrip *strip;
};

G_DEFINE_FINAL_TYPE (TmFeatureRow, tm_feature_row, GTK_TYPE_BOX)

static void
tm_feature_row_dispose (GObject *object)
{
  TmFeatureRow *self = TM_FEATURE_ROW (object);
  if (self->strip != NULL)
    tm_band_strip_set_judgement (self->strip, NULL);
  self->strip = NULL;
  g_clear_object (&self->item);
  G_OBJECT_CLASS (tm_feature_row_parent_class)->dispose (object);
}

static void
tm_feature_row_class_init (TmFeatureRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_feature_row_dispose;
}

static GtkLabel *
add_label (GtkBox *box, const char *css_class)
{
  GtkLabel *label = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (label, 0);
  gtk_widget_add_css_class (GTK_WIDGET (label), css_class);
  gtk_box_append (box, GTK_WIDGET (label));
  return label;
}

static void
tm_feature_row_init (TmFeatureRow *self)
{
  GtkWidget *middle = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  gtk_box_set_spacing (GTK_BOX (self), 10);

  self->balloon = add_label (GTK_BOX (self), "tm-balloon");
  gtk_label_set_xalign (self->balloon, 0.5);
  gtk_widget_set_valign (GTK_WIDGET (self->balloon), GTK_ALIGN_CENTER);

  gtk_box_append (GTK_BOX (self), middle);
  gtk_widget_set_hexpand (middle, TRUE);
  gtk_widget_set_valign (middle, GTK_ALIGN_CENTER);
  self->callout = add_label (GTK_BOX (middle), "tm-callout");
  tm_tip_own_text (GTK_WIDGET (self->callout));
  gtk_label_set_ellipsize (self->callout, PANGO_ELLIPSIZE_END);
  self->strip = TM_BAND_STRIP (tm_band_strip_new ());
  gtk_box_append (GTK_BOX (middle), GTK_WIDGET (self->strip));

  self->state = add_label (GTK_BOX (self), "tm-state");
  gtk_label_set_xalign (self->state, 1);
  gtk_widget_set_valign (GTK_WIDGET (self->state), GTK_ALIGN_CENTER);
}

GtkWidget *
tm_feature_row_new (void)
{
  return g_object_new (TM_TYPE_FEATURE_ROW, NULL);
}

TmFeatureItem *
tm_feature_row_item (TmFeatureRow *self)
{
  g_return_val_if_fail (TM_IS_FEATURE_ROW (self), NULL);

  return self->item;
}

void
tm_feature_row_set_item (TmFeatureRow *self, TmFeatureItem *item)
{
  g_return_if_fail (TM_IS_FEATURE_ROW (self));

  tm_band_strip_set_judgement (self->strip, NULL);
  gtk_label_set_text (self->state, "");
  g_set_object (&self->item, item);
  if (item == NULL)
    return;
  const TmFeature *feature = tm_feature_item_feature (item);
  g_autofree char *callout = tm_words_requirement (feature);
  g_autofree char *title = *feature->name != '\0' && !g_str_equal (feature->name, callout)
                               ? g_strdup_printf ("%s %s", callout, feature->name)
                               : g_strdup (callout);
  gtk_widget_set_visible (GTK_WIDGET (self->strip), !tm_kind_is_attribute (feature->kind));
  gtk_label_set_text (self->balloon, feature->balloon);
  gtk_label_set_text (self->callout, title);
}

void
tm_feature_row_update (TmFeatureRow *self)
{
  g_return_if_fail (TM_IS_FEATURE_ROW (self));
  g_return_if_fail (self->item != NULL);

  const TmFeature *feature = tm_feature_item_feature (self->item);
  const TmJudgement *judgement = tm_feature_item_judgement (self->item);
  g_autofree char *state = tm_feature_item_state (self->item);
  g_autofree char *name = tm_words_feature (feature);
  g_autofree char *spoken
      = g_strdup_printf ("%s, %s", name, g_str_equal (state, "—") ? _ ("not measured") : state);
  gtk_label_set_text (self->state, state);
  tm_band_strip_set_judgement (self->strip, judgement);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->callout), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  tm_access_name_row (GTK_WIDGET (self), spoken);
}
