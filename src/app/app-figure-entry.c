/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-figure-entry.h"

#include "app-dialog.h"
#include "app-panel-line.h"

/* What a figure may be long at most, unit and all. */
#define MAX_LENGTH 40
#define CHARS      9
#define UNIT_WIDTH 26 /* pixels, so that the entries of a column line up */

struct _TmFigureEntry {
  GtkBox parent_instance;

  GtkLabel *title;
  GtkWidget *entry;
  GtkLabel *unit;
  GtkLabel *problem;
  char *filled; /* as the model has it */
};

enum { SIGNAL_LEFT, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmFigureEntry, tm_figure_entry, GTK_TYPE_BOX)

static gboolean
is_wrong (TmFigureEntry *self)
{
  return *gtk_label_get_text (self->problem) != '\0';
}

static void
leave (TmFigureEntry *self)
{
  g_autofree char *text = tm_figure_entry_text (self);

  if (is_wrong (self) || !g_str_equal (text, self->filled))
    g_signal_emit (self, signals[SIGNAL_LEFT], 0);
}

static void
tm_figure_entry_finalize (GObject *object)
{
  TmFigureEntry *self = TM_FIGURE_ENTRY (object);

  g_clear_pointer (&self->filled, g_free);
  G_OBJECT_CLASS (tm_figure_entry_parent_class)->finalize (object);
}

static void
tm_figure_entry_class_init (TmFigureEntryClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_figure_entry_finalize;
  signals[SIGNAL_LEFT] = g_signal_new ("left", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                       NULL, G_TYPE_NONE, 0);
}

static GtkWidget *
build_entry (TmFigureEntry *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->entry = gtk_entry_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), CHARS);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), CHARS);
  gtk_editable_set_alignment (GTK_EDITABLE (self->entry), 1);
  gtk_entry_set_max_length (GTK_ENTRY (self->entry), MAX_LENGTH);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (leave), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (leave), self);
  gtk_widget_add_controller (self->entry, focus);
  return self->entry;
}

static void
tm_figure_entry_init (TmFigureEntry *self)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  self->filled = g_strdup ("");
  self->title = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->title, 0);
  gtk_label_set_wrap (self->title, TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self->title), TRUE);
  self->unit = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->unit, 0);
  gtk_widget_set_size_request (GTK_WIDGET (self->unit), UNIT_WIDTH, -1);
  gtk_widget_add_css_class (GTK_WIDGET (self->unit), "dim-label");
  gtk_box_append (GTK_BOX (line), GTK_WIDGET (self->title));
  gtk_box_append (GTK_BOX (line), build_entry (self));
  gtk_box_append (GTK_BOX (line), GTK_WIDGET (self->unit));
  gtk_box_append (GTK_BOX (self), line);
  self->problem = tm_panel_line_add (GTK_WIDGET (self), "tm-entry-problem");
  gtk_widget_set_visible (GTK_WIDGET (self->problem), FALSE);
}

GtkWidget *
tm_figure_entry_new (const char *title, const char *spoken)
{
  TmFigureEntry *self = g_object_new (TM_TYPE_FIGURE_ENTRY, NULL);

  gtk_label_set_text (self->title, title);
  gtk_widget_set_visible (GTK_WIDGET (self->title), *title != '\0');
  tm_name_entry (GTK_EDITABLE (self->entry), spoken != NULL ? spoken : title);
  return GTK_WIDGET (self);
}

void
tm_figure_entry_set_unit (TmFigureEntry *self, const char *unit)
{
  g_return_if_fail (TM_IS_FIGURE_ENTRY (self));

  gtk_label_set_text (self->unit, unit);
}

void
tm_figure_entry_set_placeholder (TmFigureEntry *self, const char *text)
{
  g_return_if_fail (TM_IS_FIGURE_ENTRY (self));

  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), text);
}

static gboolean
keeps_text (TmFigureEntry *self)
{
  g_autofree char *text = tm_figure_entry_text (self);
  const gboolean focused = (gtk_widget_get_state_flags (self->entry) & GTK_STATE_FLAG_FOCUS_WITHIN) != 0;

  return is_wrong (self) || (focused && !g_str_equal (text, self->filled));
}

void
tm_figure_entry_fill (TmFigureEntry *self, const char *text)
{
  const gboolean keep = keeps_text (self);

  g_return_if_fail (TM_IS_FIGURE_ENTRY (self));

  g_free (self->filled);
  self->filled = g_strdup (text);
  if (!keep && !g_str_equal (gtk_editable_get_text (GTK_EDITABLE (self->entry)), text))
    gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
}

void
tm_figure_entry_reset (TmFigureEntry *self, const char *text)
{
  g_return_if_fail (TM_IS_FIGURE_ENTRY (self));

  tm_figure_entry_set_problem (self, NULL);
  g_free (self->filled);
  self->filled = g_strdup (text);
  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (self->entry)), text))
    gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
}

char *
tm_figure_entry_text (TmFigureEntry *self)
{
  g_return_val_if_fail (TM_IS_FIGURE_ENTRY (self), NULL);

  return g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry))));
}

void
tm_figure_entry_set_problem (TmFigureEntry *self, const char *problem)
{
  g_return_if_fail (TM_IS_FIGURE_ENTRY (self));

  tm_figure_entry_mark (self, problem != NULL && *problem != '\0');
  tm_panel_line_take (self->problem, g_strdup (problem != NULL ? problem : ""));
}

const char *
tm_figure_entry_problem (TmFigureEntry *self)
{
  g_return_val_if_fail (TM_IS_FIGURE_ENTRY (self), NULL);

  return gtk_label_get_text (self->problem);
}

void
tm_figure_entry_mark (TmFigureEntry *self, gboolean wrong)
{
  g_return_if_fail (TM_IS_FIGURE_ENTRY (self));

  if (wrong)
    gtk_widget_add_css_class (self->entry, "error");
  else
    gtk_widget_remove_css_class (self->entry, "error");
}

void
tm_figure_entry_focus (TmFigureEntry *self)
{
  g_return_if_fail (TM_IS_FIGURE_ENTRY (self));

  gtk_widget_grab_focus (self->entry);
}

GtkEditable *
tm_figure_entry_editable (TmFigureEntry *self)
{
  g_return_val_if_fail (TM_IS_FIGURE_ENTRY (self), NULL);

  return GTK_EDITABLE (self->entry);
}
