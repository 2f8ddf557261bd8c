/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-pictures.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-batch-picture.h"
#include "app-dialog.h"
#include "app-form-view.h"
#include "app-settings.h"
#include "app-tip.h"
#include "core-form.h"

typedef struct {
  const char *name; /* as remembered, and of its page */
  const char *label;
  const char *tip;
  guint key;
} Kind;

static const Kind kinds[TM_N_PICTURES] = {
  [TM_PICTURE_BAND] = { "band", NC_ ("picture", "Band"), N_ ("Readings on the band (Ctrl+1)"), GDK_KEY_1 },
  [TM_PICTURE_SECTION]
  = { "section", NC_ ("picture", "Section"), N_ ("Cut along the axis: depth and size (Ctrl+2)"), GDK_KEY_2 },
  [TM_PICTURE_CLOCK]
  = { "clock", NC_ ("picture", "Clock"), N_ ("Seen along the axis: directions (Ctrl+3)"), GDK_KEY_3 },
  [TM_PICTURE_RUN]
  = { "run", NC_ ("picture", "Run"), N_ ("Sizes in the order of pieces (Ctrl+4)"), GDK_KEY_4 },
};

struct _TmPictures {
  GtkBox parent_instance;

  GtkStack *stack;
  GtkWidget *pictures[TM_N_PICTURES];
  GtkWidget *buttons[TM_N_PICTURES]; /* GtkToggleButton, one group */
  gboolean offered[TM_N_PICTURES];
  GtkWidget *head;    /* the words and the buttons */
  GtkWidget *choices; /* the buttons */
  GtkLabel *blind;    /* what stands beside the picture */
  char *unseen;       /* of the pictures of form: what the gauges cannot see */
  char *run_says;
  TmPictureKind wanted;
  TmPictureKind shown;
  gboolean held; /* the band alone, whatever is wanted */
  gboolean filling;
};

G_DEFINE_FINAL_TYPE (TmPictures, tm_pictures, GTK_TYPE_BOX)

static TmPictureKind
read_choice (void)
{
  g_autofree char *name = tm_settings_get_text ("picture");
  for (guint i = 0; i < TM_N_PICTURES; i++)
    if (g_strcmp0 (name, kinds[i].name) == 0)
      return (TmPictureKind)i;
  return TM_PICTURE_BAND;
}

/* The picture that is wanted where the place has it, else the band; no buttons without a choice. */
static void
refresh (TmPictures *self)
{
  gboolean choice = !self->held
                    && (self->offered[TM_PICTURE_SECTION] || self->offered[TM_PICTURE_CLOCK]
                        || self->offered[TM_PICTURE_RUN]);
  self->shown = !self->held && self->offered[self->wanted] ? self->wanted : TM_PICTURE_BAND;
  tm_access_show_page (self->stack, kinds[self->shown].name);
  self->filling = TRUE;
  for (guint i = 0; i < TM_N_PICTURES; i++)
    {
      gtk_widget_set_visible (self->buttons[i], self->offered[i]);
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->buttons[i]), i == self->shown);
    }
  self->filling = FALSE;
  /* Beside a picture of form stands what it cannot show, beside the run what it says. */
  gtk_label_set_text (self->blind, self->shown == TM_PICTURE_RUN ? self->run_says : self->unseen);
  gtk_widget_set_visible (GTK_WIDGET (self->blind), self->shown != TM_PICTURE_BAND);
  gtk_widget_set_visible (self->choices, choice);
  gtk_widget_set_visible (self->head, choice);
}

static void
toggled_cb (GtkToggleButton *button, TmPictures *self)
{
  if (self->filling || !gtk_toggle_button_get_active (button))
    return;
  for (guint i = 0; i < TM_N_PICTURES; i++)
    if (self->buttons[i] == GTK_WIDGET (button))
      tm_pictures_choose (self, (TmPictureKind)i);
}

/* Keys that mean nothing here are left to others. */
static gboolean
key_cb (GtkWidget *widget, GVariant *kind, gpointer data)
{
  TmPictures *self = TM_PICTURES (widget);
  guint chosen = g_variant_get_uint32 (kind);
  if (!gtk_widget_get_mapped (widget) || chosen >= TM_N_PICTURES || !self->offered[chosen]
      || !gtk_widget_get_visible (self->choices))
    return FALSE;
  tm_pictures_choose (self, (TmPictureKind)chosen);
  return TRUE;
}

static void
add_keys (TmPictures *self)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();
  gtk_shortcut_controller_set_scope (GTK_SHORTCUT_CONTROLLER (keys), GTK_SHORTCUT_SCOPE_GLOBAL);
  for (guint i = 0; i < TM_N_PICTURES; i++)
    gtk_shortcut_controller_add_shortcut (
        GTK_SHORTCUT_CONTROLLER (keys),
        gtk_shortcut_new_with_arguments (gtk_keyval_trigger_new (kinds[i].key, GDK_CONTROL_MASK),
                                         gtk_callback_action_new (key_cb, NULL, NULL), "u", i));
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

static void
tm_pictures_finalize (GObject *object)
{
  TmPictures *self = TM_PICTURES (object);
  g_free (self->unseen);
  g_free (self->run_says);
  G_OBJECT_CLASS (tm_pictures_parent_class)->finalize (object);
}

static void
tm_pictures_class_init (TmPicturesClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_pictures_finalize;
}

/* The entry keeps the focus: who measures types on. */
static void
add_button (TmPictures *self, guint kind)
{
  const char *label = g_dpgettext2 (GETTEXT_PACKAGE, "picture", kinds[kind].label);
  GtkWidget *button = gtk_toggle_button_new_with_label (label);
  if (kind > 0)
    gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), GTK_TOGGLE_BUTTON (self->buttons[0]));
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_focus_on_click (button, FALSE);
  gtk_widget_set_tooltip_text (button, g_dgettext (GETTEXT_PACKAGE, kinds[kind].tip));
  tm_name_widget (button, label);
  g_signal_connect (button, "toggled", G_CALLBACK (toggled_cb), self);
  gtk_box_append (GTK_BOX (self->choices), button);
  self->buttons[kind] = button;
}

static GtkWidget *
build_head (TmPictures *self)
{
  self->head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  self->blind = GTK_LABEL (gtk_label_new (NULL));
  self->choices = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 2);
  gtk_label_set_xalign (self->blind, 0);
  gtk_label_set_ellipsize (self->blind, PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (GTK_WIDGET (self->blind), TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->blind), "tm-blind");
  tm_tip_own_text (GTK_WIDGET (self->blind));
  gtk_widget_set_halign (self->choices, GTK_ALIGN_END);
  gtk_widget_set_hexpand (self->choices, TRUE);
  for (guint i = 0; i < TM_N_PICTURES; i++)
    add_button (self, i);
  gtk_widget_add_css_class (self->head, "tm-pictures-head");
  gtk_box_append (GTK_BOX (self->head), GTK_WIDGET (self->blind));
  gtk_box_append (GTK_BOX (self->head), self->choices);
  return self->head;
}

static void
tm_pictures_init (TmPictures *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_append (GTK_BOX (self), build_head (self));
  self->stack = GTK_STACK (gtk_stack_new ());
  self->pictures[TM_PICTURE_BAND] = tm_band_view_new ();
  self->pictures[TM_PICTURE_SECTION] = tm_form_view_new (TM_FORM_SECTION);
  self->pictures[TM_PICTURE_CLOCK] = tm_form_view_new (TM_FORM_CLOCK);
  self->pictures[TM_PICTURE_RUN] = tm_batch_picture_new (TM_BATCH_RUN);
  self->unseen = g_strdup ("");
  self->run_says = g_strdup ("");
  for (guint i = 0; i < TM_N_PICTURES; i++)
    gtk_stack_add_named (self->stack, self->pictures[i], kinds[i].name);
  gtk_widget_set_vexpand (GTK_WIDGET (self->stack), TRUE);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->stack));
  self->offered[TM_PICTURE_BAND] = TRUE;
  self->wanted = read_choice ();
  add_keys (self);
  refresh (self);
}

GtkWidget *
tm_pictures_new (void)
{
  return g_object_new (TM_TYPE_PICTURES, NULL);
}

void
tm_pictures_take_plot (TmPictures *self, TmBandPlot *plot)
{
  g_return_if_fail (TM_IS_PICTURES (self));

  tm_band_view_take_plot (TM_BAND_VIEW (self->pictures[TM_PICTURE_BAND]), plot);
}

void
tm_pictures_show (TmPictures *self, const TmJob *job, const TmJudgement *judgement)
{
  TmBlind blind = TM_BLIND_NONE;
  g_return_if_fail (TM_IS_PICTURES (self));

  self->offered[TM_PICTURE_SECTION]
      = tm_form_view_show (TM_FORM_VIEW (self->pictures[TM_PICTURE_SECTION]), job, judgement);
  self->offered[TM_PICTURE_CLOCK]
      = tm_form_view_show (TM_FORM_VIEW (self->pictures[TM_PICTURE_CLOCK]), job, judgement);
  if (judgement != NULL)
    blind = tm_form_blind (job, judgement->feature, &judgement->sizes);
  g_free (self->unseen);
  self->unseen = g_strdup (blind != TM_BLIND_NONE ? g_dgettext (GETTEXT_PACKAGE, tm_blind_text (blind)) : "");
  refresh (self);
}

static void
set_run (TmPictures *self, const TmBatch *batch, const TmChartPlot *plot, gint focus, const char *says)
{
  TmBatchPicture *picture = TM_BATCH_PICTURE (self->pictures[TM_PICTURE_RUN]);
  tm_batch_picture_set (picture, batch, plot);
  tm_batch_picture_set_focus (picture, focus);
  g_free (self->run_says);
  self->run_says = g_strdup (says);
  refresh (self);
}

void
tm_pictures_show_run (TmPictures *self, const TmBatch *batch, const TmChartPlot *plot, gint focus,
                      const char *says)
{
  g_return_if_fail (TM_IS_PICTURES (self) && batch != NULL);

  self->offered[TM_PICTURE_RUN] = TRUE;
  set_run (self, batch, plot, focus, says);
}

void
tm_pictures_drop_run (TmPictures *self, gboolean expected)
{
  g_return_if_fail (TM_IS_PICTURES (self));

  self->offered[TM_PICTURE_RUN] = expected;
  set_run (self, NULL, NULL, -1, "");
}

void
tm_pictures_hold_band (TmPictures *self, gboolean held)
{
  g_return_if_fail (TM_IS_PICTURES (self));

  if (self->held == held)
    return;
  self->held = held;
  refresh (self);
}

void
tm_pictures_choose (TmPictures *self, TmPictureKind kind)
{
  g_return_if_fail (TM_IS_PICTURES (self));
  g_return_if_fail (kind < TM_N_PICTURES);

  self->wanted = kind;
  tm_settings_set_text ("picture", kinds[kind].name);
  refresh (self);
}

TmPictureKind
tm_pictures_shown (TmPictures *self)
{
  g_return_val_if_fail (TM_IS_PICTURES (self), TM_PICTURE_BAND);

  return self->shown;
}

GtkWidget *
tm_pictures_get (TmPictures *self, TmPictureKind kind)
{
  g_return_val_if_fail (TM_IS_PICTURES (self) && kind < TM_N_PICTURES, NULL);

  return self->pictures[kind];
}
