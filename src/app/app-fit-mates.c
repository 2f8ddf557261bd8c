/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-fit-mates.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-edit-mate.h"
#include "app-feature-words.h"
#include "app-fit-state.h"
#include "app-fit-words.h"
#include "app-list-row.h"
#include "app-mate-dialog.h"
#include "app-toast.h"

struct _TmFitMates {
  GtkBox parent_instance;

  TmDocument *document;
  GtkListBox *list;
  GtkLabel *none;
  gboolean filling;
};

enum { SIGNAL_CHOSEN, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmFitMates, tm_fit_mates, GTK_TYPE_BOX)

static TmFeature *
get_feature (TmFitMates *self)
{
  return self->document != NULL ? tm_bench_spot (tm_document_bench (self->document))->feature : NULL;
}

static TmMateSize *
find_mate (TmFitMates *self, GtkListBoxRow *row)
{
  const TmFeature *feature = get_feature (self);

  if (feature == NULL || row == NULL)
    return NULL;
  return tm_job_find_mate_size (tm_document_job (self->document), feature->balloon, tm_list_row_key (row));
}

static void
row_selected_cb (TmFitMates *self, GtkListBoxRow *row)
{
  if (!self->filling && row != NULL)
    g_signal_emit (self, signals[SIGNAL_CHOSEN], 0, tm_list_row_key (row));
}

static void
row_activated_cb (TmFitMates *self, GtkListBoxRow *row)
{
  TmMateSize *mate = find_mate (self, row);

  if (mate != NULL)
    tm_mate_dialog_present (GTK_WIDGET (self), self->document, get_feature (self), mate);
}

void
tm_fit_mates_add (TmFitMates *self)
{
  const TmFeature *feature;

  g_return_if_fail (TM_IS_FIT_MATES (self));

  feature = get_feature (self);
  if (feature != NULL)
    tm_mate_dialog_present (GTK_WIDGET (self), self->document, feature, NULL);
}

static void
remove_chosen (TmFitMates *self)
{
  TmMateSize *mate = find_mate (self, gtk_list_box_get_selected_row (self->list));
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;

  if (mate == NULL)
    return;
  text = g_strdup_printf (_ ("Removed the mate %s"), mate->serial);
  if (tm_edit_remove_mate_size (self->document, mate, &error))
    tm_window_toast (GTK_WIDGET (self), text);
  else
    tm_window_show_error (GTK_WIDGET (self), error->message);
}

static gboolean
key_cb (GtkEventControllerKey *keys, guint keyval, guint keycode, GdkModifierType state, TmFitMates *self)
{
  if (keyval != GDK_KEY_Delete || (state & gtk_accelerator_get_default_mod_mask ()) != 0)
    return FALSE;
  remove_chosen (self);
  return TRUE;
}

/* -------- Rows -------- */

/* "for piece 003 · CD · 4 May 2026": whom it is meant for, who measured it, when; "" when nothing is known.
 */
static char *
describe_origin (const TmMateSize *mate)
{
  g_autofree char *day = tm_words_date (mate->at);
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  if (*mate->piece != '\0' && mate->place.given && mate->place.count > 1)
    g_ptr_array_add (parts,
                     g_strdup_printf (_ ("for piece %s, place %d"), mate->piece, (int)mate->place.count));
  else if (*mate->piece != '\0')
    g_ptr_array_add (parts, g_strdup_printf (_ ("for piece %s"), mate->piece));
  if (*mate->by != '\0')
    g_ptr_array_add (parts, g_strdup (mate->by));
  if (*day != '\0')
    g_ptr_array_add (parts, g_steal_pointer (&day));
  if (*mate->note != '\0')
    g_ptr_array_add (parts, g_strdup (mate->note));
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (" · ", (char **)parts->pdata);
}

/* @joint between those that say something. */
static char *
join (const char *const *texts, guint n, const char *joint)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    if (*texts[i] != '\0')
      g_string_append_printf (text, "%s%s", text->len > 0 ? joint : "", texts[i]);
  return g_string_free (text, FALSE);
}

static GtkWidget *
new_row (TmFitMates *self, TmMateSize *mate)
{
  const TmFeature *feature = get_feature (self);
  const TmFitWant want = tm_fit_wanted (feature);
  TmFitCheck check;
  const TmFitStatus status = tm_fit_state_with (self->document, mate, &check);
  g_autofree char *size = tm_words_mate_size (mate, feature->unit);
  g_autofree char *origin = describe_origin (mate);
  g_autofree char *end = status == TM_FIT_OK ? tm_words_fit_inside (&check, &want) : g_strdup ("");
  /* The column is narrow: what matters most stands first in its line. */
  const char *const last[] = { end, origin };
  g_autofree char *third = join (last, G_N_ELEMENTS (last), " · ");
  const char *const texts[] = { size, third };
  g_autofree char *under = join (texts, G_N_ELEMENTS (texts), "\n");
  const char *const all[] = { size, origin, end };
  g_autofree char *spoken = join (all, G_N_ELEMENTS (all), ", ");
  g_autofree char *sentence = g_strdup_printf (_ ("Mate %s: %s"), mate->serial, spoken);
  GtkWidget *row = tm_list_row_new (mate->serial, under, "", sentence, mate->serial);

  gtk_widget_set_tooltip_text (row, _ ("Enter changes this mate, Delete removes it"));
  return row;
}

void
tm_fit_mates_show (TmFitMates *self, TmDocument *document, const char *serial)
{
  const TmFeature *feature;
  gboolean focused;
  guint n = 0;

  g_return_if_fail (TM_IS_FIT_MATES (self));

  g_set_object (&self->document, document);
  self->filling = TRUE;
  focused = tm_list_clear (self->list);
  feature = get_feature (self);
  for (guint i = 0; feature != NULL && i < tm_document_job (document)->mate_sizes->len; i++)
    {
      TmMateSize *mate = g_ptr_array_index (tm_document_job (document)->mate_sizes, i);

      if (!g_str_equal (mate->feature, feature->balloon))
        continue;
      gtk_list_box_append (self->list, new_row (self, mate));
      n++;
    }
  tm_list_select (self->list, serial, focused);
  gtk_widget_set_visible (GTK_WIDGET (self->none), n == 0);
  gtk_widget_set_visible (GTK_WIDGET (self->list), n > 0);
  self->filling = FALSE;
  if (focused && n == 0)
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}

GtkListBox *
tm_fit_mates_list (TmFitMates *self)
{
  g_return_val_if_fail (TM_IS_FIT_MATES (self), NULL);

  return self->list;
}

/* -------- The widget -------- */

static void
tm_fit_mates_dispose (GObject *object)
{
  TmFitMates *self = TM_FIT_MATES (object);

  g_clear_object (&self->document);
  G_OBJECT_CLASS (tm_fit_mates_parent_class)->dispose (object);
}

static void
tm_fit_mates_class_init (TmFitMatesClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_fit_mates_dispose;
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                         NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static GtkWidget *
build_head (void)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *title = gtk_label_new (_ ("Measured mates"));
  GtkWidget *add = tm_button_new (_ ("_Add a mate…"));

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_set_hexpand (title, TRUE);
  gtk_widget_add_css_class (title, "dim-label");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (add), "fit.add-mate");
  gtk_widget_set_tooltip_text (add, _ ("Enter a mate that was measured (Ctrl+I)"));
  gtk_box_append (GTK_BOX (head), title);
  gtk_box_append (GTK_BOX (head), add);
  return head;
}

static GtkWidget *
build_list (TmFitMates *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "tm-choices");
  tm_list_tab_leaves (self->list);
  tm_name_widget (GTK_WIDGET (self->list), _ ("Measured mates"));
  g_signal_connect_swapped (self->list, "row-selected", G_CALLBACK (row_selected_cb), self);
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (row_activated_cb), self);
  /* One click chooses; Enter, or a second click, changes. */
  gtk_list_box_set_activate_on_single_click (self->list, FALSE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->list), keys);
  return GTK_WIDGET (self->list);
}

static void
tm_fit_mates_init (TmFitMates *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  self->none = GTK_LABEL (gtk_label_new (
      _ ("None yet. Add one with its serial and its sizes, and the fit with this piece is shown.")));
  gtk_label_set_xalign (self->none, 0);
  gtk_label_set_wrap (self->none, TRUE);
  gtk_box_append (GTK_BOX (content), GTK_WIDGET (self->none));
  gtk_box_append (GTK_BOX (content), build_list (self));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), content);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (self), build_head ());
  gtk_box_append (GTK_BOX (self), scroller);
}

GtkWidget *
tm_fit_mates_new (void)
{
  return g_object_new (TM_TYPE_FIT_MATES, NULL);
}
