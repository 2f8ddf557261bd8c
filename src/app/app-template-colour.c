/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-template-colour.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-form.h"

struct _TmTemplateColour {
  TmTemplateColourInfo info;
  AdwPreferencesGroup *group;
  AdwEntryRow *row;
  GtkColorChooser *button;
  GtkLabel *sample; /* or NULL */
  GCallback changed;
  gpointer data;
};

gboolean
tm_template_colour_read (TmTemplateColour *self, char **problem)
{
  g_autofree char *text = tm_form_text (self->row);

  tm_form_mark_wrong (self->row, FALSE);
  *self->info.given = *text != '\0' && tm_colour_read (text, self->info.colour);
  if (*text == '\0' || *self->info.given)
    return TRUE;
  if (problem == NULL)
    return FALSE;
  return tm_form_refuse (
      self->row, problem,
      g_strdup_printf (_ ("Colour: “%s” is none; write it like #1a5f7a, or leave it empty."), text));
}

static PangoAttribute *
make_ink (PangoAttribute *(*new_attribute) (guint16, guint16, guint16), guint32 rgb)
{
  /* 0xff becomes 0xffff. */
  return new_attribute ((guint16)((rgb >> 16 & 0xff) * 0x101), (guint16)((rgb >> 8 & 0xff) * 0x101),
                        (guint16)((rgb & 0xff) * 0x101));
}

static void
show_sample (TmTemplateColour *self)
{
  PangoAttrList *attributes;

  if (self->sample == NULL)
    return;
  gtk_widget_set_visible (GTK_WIDGET (self->sample), *self->info.given);
  attributes = pango_attr_list_new ();
  pango_attr_list_insert (attributes, make_ink (pango_attr_background_new, *self->info.colour));
  pango_attr_list_insert (attributes,
                          make_ink (pango_attr_foreground_new, tm_colour_text_on (*self->info.colour)));
  gtk_label_set_attributes (self->sample, attributes);
  pango_attr_list_unref (attributes);
}

/* The button follows what is typed. */
static void
show_colour (TmTemplateColour *self)
{
  const guint32 rgb = *self->info.given ? *self->info.colour : 0;
  const GdkRGBA colour = { (float)(rgb >> 16 & 0xff) / 255.0f, (float)(rgb >> 8 & 0xff) / 255.0f,
                           (float)(rgb & 0xff) / 255.0f, 1.0f };
  g_autofree char *words = self->info.say (self->info.draft);

  adw_preferences_group_set_description (self->group, words);
  gtk_color_chooser_set_rgba (self->button, &colour);
  show_sample (self);
}

static void
typed_cb (TmTemplateColour *self)
{
  (void)tm_template_colour_read (self, NULL);
  show_colour (self);
  ((void (*) (gpointer))self->changed) (self->data);
}

static guint32
to_byte (float share)
{
  return (guint32)CLAMP (share * 255.0f + 0.5f, 0.0f, 255.0f);
}

static void
chosen_cb (TmTemplateColour *self)
{
  GdkRGBA colour;
  g_autofree char *text = NULL;

  gtk_color_chooser_get_rgba (self->button, &colour);
  text = tm_colour_format (to_byte (colour.red) << 16 | to_byte (colour.green) << 8 | to_byte (colour.blue));
  tm_form_set_text (self->row, text);
}

TmTemplateColour *
tm_template_colour_new (GtkBox *into, const TmTemplateColourInfo *info, GCallback changed, gpointer data)
{
  TmTemplateColour *self = g_new0 (TmTemplateColour, 1);
  GtkWidget *button = gtk_color_button_new ();

  self->info = *info;
  self->changed = changed;
  self->data = data;
  self->group = tm_form_group (into, info->title, "");
  self->row = tm_form_entry (self->group, info->label);
  self->button = GTK_COLOR_CHOOSER (button);
  gtk_color_chooser_set_use_alpha (self->button, FALSE);
  gtk_color_button_set_title (GTK_COLOR_BUTTON (button), info->title);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  tm_access_name_inside (button, GTK_TYPE_BUTTON, info->choose);
  if (info->sample != NULL)
    {
      g_autofree char *padded = g_strdup_printf (" %s ", info->sample);

      self->sample = GTK_LABEL (gtk_label_new (padded));
      /* Not in the row, which pales the labels beside its entry. */
      adw_preferences_group_set_header_suffix (self->group, GTK_WIDGET (self->sample));
    }
  adw_entry_row_add_suffix (self->row, button);
  g_signal_connect_swapped (button, "color-set", G_CALLBACK (chosen_cb), self);
  g_signal_connect_swapped (self->row, "changed", G_CALLBACK (typed_cb), self);
  return self;
}

void
tm_template_colour_free (TmTemplateColour *self)
{
  g_free (self);
}

void
tm_template_colour_show (TmTemplateColour *self, gboolean given, guint32 colour)
{
  g_autofree char *text = given ? tm_colour_format (colour) : g_strdup ("");

  tm_form_set_text (self->row, text);
  (void)tm_template_colour_read (self, NULL);
  show_colour (self);
}
