/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauge-take.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-form.h"
#include "app-gauge-words.h"
#include "app-toast.h"
#include "app-work.h"
#include "book-store.h"

/* Pixels. */
#define DIALOG_WIDTH  560
#define DIALOG_HEIGHT 600

struct _TmGaugeTake {
  AdwWindow parent_instance;

  TmDocument *document;
  TmJob *others;     /* the gauges of the whole book; NULL while it is looked through */
  GPtrArray *checks; /* GtkCheckButton, one for each gauge that is offered; owned by the rows */
  AdwPreferencesGroup *group;
  GtkWidget *confirm;
  GtkLabel *problem;
  GtkLabel *says;
};

G_DEFINE_FINAL_TYPE (TmGaugeTake, tm_gauge_take, ADW_TYPE_WINDOW)

static const char *
get_tag (gpointer check)
{
  return g_object_get_data (G_OBJECT (check), "tag");
}

static guint
count_marked (TmGaugeTake *self)
{
  guint n = 0;

  for (guint i = 0; i < self->checks->len; i++)
    n += gtk_check_button_get_active (g_ptr_array_index (self->checks, i)) ? 1 : 0;
  return n;
}

static void
marked_cb (TmGaugeTake *self)
{
  guint n = count_marked (self);
  g_autofree char *label = n > 0 ? g_strdup_printf (ngettext ("_Take %u gauge", "_Take %u gauges", n), n)
                                 : g_strdup (_ ("_Take"));

  tm_button_set_label (self->confirm, label);
  gtk_widget_set_sensitive (self->confirm, n > 0);
}

/* "Taken: 2 gauges, 1 method" */
static char *
describe_taken (guint n_gauges, guint n_methods)
{
  g_autofree char *gauges = g_strdup_printf (ngettext ("%u gauge", "%u gauges", n_gauges), n_gauges);
  g_autofree char *methods = g_strdup_printf (ngettext ("%u method", "%u methods", n_methods), n_methods);

  return n_methods > 0 ? g_strdup_printf (_ ("Taken: %s, %s"), gauges, methods)
                       : g_strdup_printf (_ ("Taken: %s"), gauges);
}

void
tm_gauge_take_confirm (TmGaugeTake *self)
{
  g_autoptr (GPtrArray) tags = g_ptr_array_new ();
  GtkWidget *parent;
  guint n_gauges, n_methods;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  g_return_if_fail (TM_IS_GAUGE_TAKE (self));

  if (self->others == NULL || count_marked (self) == 0)
    return;
  for (guint i = 0; i < self->checks->len; i++)
    if (gtk_check_button_get_active (g_ptr_array_index (self->checks, i)))
      g_ptr_array_add (tags, (gpointer)get_tag (g_ptr_array_index (self->checks, i)));
  g_ptr_array_add (tags, NULL);
  if (!tm_edit_take_gauges (self->document, self->others, (const char *const *)tags->pdata, &n_gauges,
                            &n_methods, &error))
    {
      tm_dialog_problem_set (self->problem, error->message);
      return;
    }
  text = describe_taken (n_gauges, n_methods);
  parent = GTK_WIDGET (gtk_window_get_transient_for (GTK_WINDOW (self)));
  if (parent != NULL)
    tm_window_toast (parent, text);
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
confirm_cb (TmGaugeTake *self)
{
  tm_gauge_take_confirm (self);
}

static void
add_gauge (TmGaugeTake *self, const TmGauge *gauge)
{
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *check = gtk_check_button_new ();
  g_autofree char *today = tm_today ();
  g_autofree char *state = tm_words_gauge_state (self->others, gauge, today);
  g_autofree char *about = *gauge->kind != '\0'
                               ? g_strdup_printf ("%s, %s", tm_words_gauge_kind (gauge->kind), state)
                               : g_strdup (state);
  g_autofree char *title = g_markup_escape_text (gauge->tag, -1);
  g_autofree char *subtitle = g_markup_escape_text (about, -1);
  g_autofree char *spoken = g_strdup_printf ("%s, %s", gauge->tag, about);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), subtitle);
  g_object_set_data (G_OBJECT (check), "tag", (gpointer)gauge->tag);
  gtk_widget_set_valign (check, GTK_ALIGN_CENTER);
  tm_name_widget (check, spoken);
  g_signal_connect_swapped (check, "toggled", G_CALLBACK (marked_cb), self);
  adw_action_row_add_prefix (ADW_ACTION_ROW (row), check);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (row), check);
  adw_preferences_group_add (self->group, row);
  g_ptr_array_add (self->checks, check);
}

static void
show_others (TmGaugeTake *self)
{
  const TmJob *job = tm_document_job (self->document);

  for (guint i = 0; i < self->others->gauges->len; i++)
    {
      const TmGauge *gauge = g_ptr_array_index (self->others->gauges, i);

      if (tm_job_find_gauge (job, gauge->tag) == NULL)
        add_gauge (self, gauge);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->group), self->checks->len > 0);
  gtk_label_set_text (self->says,
                      self->checks->len > 0
                          ? _ ("Each comes with its calibrations and checks, and the methods that "
                               "use only gauges of this job come along.")
                          : _ ("This job has every gauge of the book already."));
  if (self->checks->len > 0)
    gtk_widget_grab_focus (g_ptr_array_index (self->checks, 0));
}

static void
free_job (gpointer data)
{
  tm_job_free (data);
}

static gpointer
run_look (TmWork *work, gpointer data, GError **error)
{
  g_autoptr (TmBook) book = tm_book_open (data, TM_BOOK_OPEN_NORMAL, error);

  return book != NULL ? tm_book_gauge_register (book, error) : NULL;
}

static void
looked_cb (GtkWidget *parent, gpointer result, const GError *error, gpointer data)
{
  TmGaugeTake *self = TM_GAUGE_TAKE (parent);

  gtk_label_set_text (self->says, "");
  if (error != NULL)
    tm_dialog_problem_set (self->problem, error->message);
  if (result == NULL)
    return;
  self->others = result;
  show_others (self);
}

static void
tm_gauge_take_dispose (GObject *object)
{
  TmGaugeTake *self = TM_GAUGE_TAKE (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->checks, g_ptr_array_unref);
  G_OBJECT_CLASS (tm_gauge_take_parent_class)->dispose (object);
  g_clear_pointer (&self->others, tm_job_free);
}

static void
tm_gauge_take_class_init (TmGaugeTakeClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_gauge_take_dispose;
}

static GtkWidget *
build_list (TmGaugeTake *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  self->says = GTK_LABEL (g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL));
  gtk_label_set_wrap (self->says, TRUE);
  gtk_label_set_xalign (self->says, 0);
  gtk_label_set_text (self->says, _ ("Looking through the book…"));
  gtk_widget_add_css_class (box, "tm-dialog");
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->says));
  self->group = tm_form_group (GTK_BOX (box), NULL, NULL);
  tm_access_name_inside (GTK_WIDGET (self->group), GTK_TYPE_LIST_BOX, _ ("Gauges of the book"));
  gtk_widget_set_visible (GTK_WIDGET (self->group), FALSE);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_widget_set_vexpand (scroller, TRUE);
  return scroller;
}

static void
tm_gauge_take_init (TmGaugeTake *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->checks = g_ptr_array_new ();
  self->confirm = tm_button_new (_ ("_Take"));
  gtk_widget_add_css_class (self->confirm, "suggested-action");
  gtk_widget_set_sensitive (self->confirm, FALSE);
  g_signal_connect_swapped (self->confirm, "clicked", G_CALLBACK (confirm_cb), self);
  self->problem = tm_dialog_problem_new ();
  gtk_box_append (GTK_BOX (box), tm_dialog_header_new (self->confirm));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->problem));
  gtk_box_append (GTK_BOX (box), build_list (self));
  gtk_window_set_title (GTK_WINDOW (self), _ ("Take gauges from the book"));
  gtk_window_set_default_size (GTK_WINDOW (self), DIALOG_WIDTH, DIALOG_HEIGHT);
  adw_window_set_content (ADW_WINDOW (self), box);
}

TmGaugeTake *
tm_gauge_take_present (GtkWidget *any_child, TmDocument *document)
{
  TmGaugeTake *self = g_object_new (TM_TYPE_GAUGE_TAKE, NULL);

  self->document = g_object_ref (document);
  tm_dialog_attach (GTK_WINDOW (self), any_child);
  gtk_window_present (GTK_WINDOW (self));
  tm_work_run (GTK_WIDGET (self), _ ("Looking through the book"), run_look, looked_cb,
               g_strdup (tm_book_path (tm_document_book (document))), g_free, free_job);
  return self;
}

gboolean
tm_gauge_take_is_ready (TmGaugeTake *self)
{
  g_return_val_if_fail (TM_IS_GAUGE_TAKE (self), FALSE);

  return self->others != NULL;
}

gboolean
tm_gauge_take_mark (TmGaugeTake *self, const char *tag)
{
  g_return_val_if_fail (TM_IS_GAUGE_TAKE (self), FALSE);

  for (guint i = 0; i < self->checks->len; i++)
    if (g_str_equal (get_tag (g_ptr_array_index (self->checks, i)), tag))
      {
        gtk_check_button_set_active (g_ptr_array_index (self->checks, i), TRUE);
        return TRUE;
      }
  return FALSE;
}
