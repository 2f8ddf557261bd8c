/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-nonconformance-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-edit-nonconformance.h"
#include "app-feature-words.h"
#include "app-form.h"
#include "app-toast.h"
#include "app-words.h"

/* The record's words for what was decided; common practice. */
static const char *const dispositions[] = {
  "",
  NC_ ("disposition", "use as is"),
  NC_ ("disposition", "rework"),
  NC_ ("disposition", "repair"),
  NC_ ("disposition", "scrap"),
  NC_ ("disposition", "return"),
};

struct _TmNonconformanceDialog {
  AdwWindow parent_instance;

  TmDocument *document;
  const TmPiece *piece;
  const TmFeature *feature;
  guint place;

  GtkWidget *number;
  GtkWidget *note;
  GtkWidget *disposition; /* AdwComboRow */
  AdwActionRow *work;     /* the rework or repair */
  GtkWidget *work_done, *work_back;
  GtkWidget *save;
  GtkLabel *about;
  GtkLabel *hint;
};

G_DEFINE_FINAL_TYPE (TmNonconformanceDialog, tm_nonconformance_dialog, ADW_TYPE_WINDOW)

static const char *
get_text (GtkWidget *row)
{
  return gtk_editable_get_text (GTK_EDITABLE (row));
}

static TmNonconformance *
find_row (TmNonconformanceDialog *self)
{
  return tm_job_nonconformance_at (tm_document_job (self->document), self->piece, self->feature, self->place);
}

static const char *
chosen_disposition (TmNonconformanceDialog *self, const char *before)
{
  guint chosen = adw_combo_row_get_selected (ADW_COMBO_ROW (self->disposition));

  /* A word of the record that is none of ours stands after them in the list: then it is kept. */
  return chosen < G_N_ELEMENTS (dispositions) ? dispositions[chosen] : before;
}

static TmNonconformance *
make_new (TmNonconformanceDialog *self, TmJob *job)
{
  TmNonconformance *row = tm_nonconformance_new ();
  g_autofree char *now = tm_now_utc ();

  row->piece = self->piece->serial;
  row->feature = self->feature->balloon;
  row->by = tm_job_intern (job, tm_bench_by (tm_document_bench (self->document)));
  row->at = tm_job_intern (job, now);
  return row;
}

/* As the rows say, on the ground of @old (NULL: none). */
static TmNonconformance *
read_dialog (TmNonconformanceDialog *self, const TmNonconformance *old)
{
  TmJob *job = tm_document_job (self->document);
  TmNonconformance *row = old != NULL ? tm_edit_copy_nonconformance (old) : make_new (self, job);
  g_autofree char *number = g_strstrip (g_strdup (get_text (self->number)));
  g_autofree char *note = g_strstrip (g_strdup (get_text (self->note)));

  row->number = tm_job_intern (job, number);
  row->note = tm_job_intern (job, note);
  row->disposition = tm_job_intern (job, chosen_disposition (self, row->disposition));
  return row;
}

static gboolean
keep (TmNonconformanceDialog *self, TmNonconformance *row, GError **error)
{
  return tm_edit_put_nonconformance (self->document, find_row (self), row, error);
}

static void
save_cb (GtkWidget *widget, TmNonconformanceDialog *self)
{
  g_autoptr (GError) error = NULL;
  if (!gtk_widget_get_sensitive (self->save))
    return;
  if (keep (self, read_dialog (self, find_row (self)), &error))
    gtk_window_close (GTK_WINDOW (self));
  else
    gtk_label_set_text (self->hint, error->message);
}

static gboolean
asks_for_work (const char *disposition)
{
  return g_str_equal (disposition, "rework") || g_str_equal (disposition, "repair");
}

/* TRUE when something was read of piece and feature that counts: after a rework, measured again. */
static gboolean
has_result (TmNonconformanceDialog *self)
{
  const TmJob *job = tm_document_job (self->document);

  for (guint place = 1; place <= self->feature->places; place++)
    {
      const GPtrArray *readings = tm_job_readings_at (job, self->piece, self->feature, place);

      for (guint i = 0; readings != NULL && i < readings->len; i++)
        if (tm_row_counts (&((const TmReading *)g_ptr_array_index (readings, i))->row))
          return TRUE;
    }
  return FALSE;
}

/* "done by MK, 4 May 2026, 11:12" */
static char *
describe_work (const TmNonconformance *row)
{
  g_autofree char *at = row != NULL ? tm_words_time (row->rework_at) : NULL;

  if (row == NULL || *row->rework_at == '\0')
    return g_strdup (_ ("not done yet"));
  return *row->rework_by != '\0' ? g_strdup_printf (_ ("done by %s, %s"), row->rework_by, at)
                                 : g_strdup_printf (_ ("done %s"), at);
}

/* The work is asked for by the decision, and stays once it was done.  What was measured again and is still
 * out may be worked on once more. */
static void
show_work (TmNonconformanceDialog *self)
{
  const TmNonconformance *row = find_row (self);
  const char *disposition = chosen_disposition (self, row != NULL ? row->disposition : "");
  gboolean done = row != NULL && *row->rework_at != '\0';
  gboolean asked = asks_for_work (disposition);
  gboolean repair = g_str_equal (disposition, "repair");
  g_autofree char *state = describe_work (row);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self->work), repair ? _ ("Repair") : _ ("Rework"));
  adw_action_row_set_subtitle (self->work, state);
  tm_button_set_label (self->work_done, done     ? _ ("_Done again")
                                        : repair ? _ ("Repair is _done")
                                                 : _ ("Rework is _done"));
  gtk_widget_set_visible (GTK_WIDGET (self->work), asked || done);
  gtk_widget_set_visible (self->work_done, asked && (!done || has_result (self)));
  gtk_widget_set_visible (self->work_back, done);
  gtk_widget_set_sensitive (self->work_done, gtk_widget_get_sensitive (self->save));
}

/* The bench goes where the feature is measured again from. */
static void
go_to_first_station (TmNonconformanceDialog *self)
{
  const TmJob *job = tm_document_job (self->document);
  TmPiece *piece = tm_job_find_piece (job, self->piece->serial);
  TmFeature *feature = tm_job_find_feature (job, self->feature->balloon);

  tm_document_go (self->document, piece, feature, MAX (find_row (self)->place, 1),
                  feature->stations->len > 0 ? g_ptr_array_index (feature->stations, 0) : "");
}

static void
done_cb (TmNonconformanceDialog *self)
{
  TmNonconformance *row;
  GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (self));
  g_autofree char *feature = tm_words_feature (self->feature);
  g_autofree char *text = g_strdup_printf (_ ("Measure again: piece %s, %s"), self->piece->serial, feature);
  g_autoptr (GError) error = NULL;

  if (!gtk_widget_get_sensitive (self->save))
    return;
  row = read_dialog (self, find_row (self));
  tm_edit_mark_reworked (tm_document_job (self->document), row,
                         tm_bench_by (tm_document_bench (self->document)));
  if (!keep (self, row, &error))
    {
      gtk_label_set_text (self->hint, error->message);
      return;
    }
  go_to_first_station (self);
  if (parent != NULL)
    tm_window_toast (GTK_WIDGET (parent), text);
  gtk_window_close (GTK_WINDOW (self));
}

/* The first result counts again. */
static void
back_cb (TmNonconformanceDialog *self)
{
  TmNonconformance *row = tm_edit_copy_nonconformance (find_row (self));
  g_autoptr (GError) error = NULL;

  tm_edit_unmark_reworked (tm_document_job (self->document), row);
  if (!keep (self, row, &error))
    gtk_label_set_text (self->hint, error->message);
  show_work (self);
  gtk_widget_grab_focus (gtk_widget_get_visible (self->work_done) ? self->work_done : self->save);
}

static void
changed_cb (GtkEditable *editable, TmNonconformanceDialog *self)
{
  gtk_widget_set_sensitive (self->save, *get_text (self->number) != '\0' || *get_text (self->note) != '\0');
  gtk_widget_set_sensitive (self->work_done, gtk_widget_get_sensitive (self->save));
}

static void
tm_nonconformance_dialog_dispose (GObject *object)
{
  TmNonconformanceDialog *self = TM_NONCONFORMANCE_DIALOG (object);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (tm_nonconformance_dialog_parent_class)->dispose (object);
}

static void
tm_nonconformance_dialog_class_init (TmNonconformanceDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_nonconformance_dialog_dispose;
}

static GtkWidget *
add_entry (TmNonconformanceDialog *self, AdwPreferencesGroup *rows, const char *title)
{
  AdwEntryRow *row = tm_form_entry (rows, title);
  g_signal_connect (row, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect (row, "entry-activated", G_CALLBACK (save_cb), self);
  return GTK_WIDGET (row);
}

static GtkWidget *
build_disposition (void)
{
  GtkWidget *row = GTK_WIDGET (tm_access_combo_row_new (_ ("Decision")));
  g_autoptr (GtkStringList) words = gtk_string_list_new (NULL);
  gtk_string_list_append (words, _ ("not decided"));
  for (guint i = 1; i < G_N_ELEMENTS (dispositions); i++)
    gtk_string_list_append (words, g_dpgettext2 (GETTEXT_PACKAGE, "disposition", dispositions[i]));
  adw_combo_row_set_model (ADW_COMBO_ROW (row), G_LIST_MODEL (words));
  return row;
}

static void
disposition_cb (TmNonconformanceDialog *self)
{
  if (self->document != NULL)
    show_work (self);
}

static GtkWidget *
add_work_button (TmNonconformanceDialog *self, const char *label, GCallback clicked)
{
  GtkWidget *button = tm_button_new (label);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  adw_action_row_add_suffix (self->work, button);
  return button;
}

static void
build_work (TmNonconformanceDialog *self, AdwPreferencesGroup *rows)
{
  self->work = ADW_ACTION_ROW (adw_action_row_new ());
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (self->work), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self->work), _ ("Rework"));
  self->work_back = add_work_button (self, _ ("_Take back"), G_CALLBACK (back_cb));
  self->work_done = add_work_button (self, _ ("Rework is _done"), G_CALLBACK (done_cb));
  gtk_widget_set_sensitive (self->work_done, FALSE);
  adw_preferences_group_add (rows, GTK_WIDGET (self->work));
}

static void
tm_nonconformance_dialog_init (TmNonconformanceDialog *self)
{
  TmDialogForm form;
  self->save = tm_button_new (_ ("_Save"));
  gtk_widget_add_css_class (self->save, "suggested-action");
  gtk_widget_set_sensitive (self->save, FALSE);
  g_signal_connect (self->save, "clicked", G_CALLBACK (save_cb), self);
  form = tm_dialog_form_build (ADW_WINDOW (self), _ ("Nonconformance"), self->save);
  gtk_window_set_title (GTK_WINDOW (self), _ ("Nonconformance"));
  self->about = form.about;
  self->hint = form.hint;
  self->number = add_entry (self, form.rows, _ ("Number of the nonconformance"));
  self->note = add_entry (self, form.rows, _ ("What is wrong"));
  self->disposition = build_disposition ();
  adw_preferences_group_add (form.rows, self->disposition);
  build_work (self, form.rows);
  g_signal_connect_swapped (self->disposition, "notify::selected", G_CALLBACK (disposition_cb), self);
}

static void
show_disposition (TmNonconformanceDialog *self, const char *word)
{
  GListModel *words = adw_combo_row_get_model (ADW_COMBO_ROW (self->disposition));
  guint chosen = 0;
  while (chosen < G_N_ELEMENTS (dispositions) && !g_str_equal (dispositions[chosen], word))
    chosen++;
  if (chosen == G_N_ELEMENTS (dispositions))
    gtk_string_list_append (GTK_STRING_LIST (words), word);
  adw_combo_row_set_selected (ADW_COMBO_ROW (self->disposition), chosen);
}

/* "Piece 001, 1 · Ø25 H7, raised by MK, 4 May 2026, 11:12" */
static char *
describe_spot (TmNonconformanceDialog *self, const TmNonconformance *row)
{
  g_autofree char *feature = tm_words_feature (self->feature);
  g_autofree char *at = row != NULL ? tm_words_time (row->at) : NULL;
  g_autofree char *spot = row != NULL && *row->piece == '\0'
                              ? g_strdup_printf (_ ("Every piece, %s"), feature)
                              : g_strdup_printf (_ ("Piece %s, %s"), self->piece->serial, feature);

  if (row == NULL || *row->at == '\0')
    return g_steal_pointer (&spot);
  return *row->by != '\0' ? g_strdup_printf (_ ("%s\nRaised by %s, %s"), spot, row->by, at)
                          : g_strdup_printf (_ ("%s\nRaised %s"), spot, at);
}

static void
show_spot (TmNonconformanceDialog *self)
{
  const TmNonconformance *row = find_row (self);
  g_autofree char *about = describe_spot (self, row);

  gtk_label_set_text (self->about, about);
  if (row != NULL)
    {
      gtk_editable_set_text (GTK_EDITABLE (self->number), row->number);
      gtk_editable_set_text (GTK_EDITABLE (self->note), row->note);
      show_disposition (self, row->disposition);
    }
  show_work (self);
}

GtkWidget *
tm_nonconformance_dialog_present (GtkWidget *parent, TmDocument *document)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);

  const TmSpot *spot = tm_bench_spot (tm_document_bench (document));
  g_return_val_if_fail (spot->piece != NULL && spot->feature != NULL, NULL);

  TmNonconformanceDialog *self = g_object_new (TM_TYPE_NONCONFORMANCE_DIALOG, NULL);
  self->document = g_object_ref (document);
  self->piece = spot->piece;
  self->feature = spot->feature;
  self->place = MAX (spot->place, 1);
  show_spot (self);
  tm_dialog_attach (GTK_WINDOW (self), parent);
  gtk_window_present (GTK_WINDOW (self));
  gtk_widget_grab_focus (self->number);
  return GTK_WIDGET (self);
}

gboolean
tm_nonconformance_dialog_answer (TmNonconformanceDialog *self, const char *number, const char *note,
                                 guint disposition)
{
  g_autoptr (GError) error = NULL;
  g_return_val_if_fail (TM_IS_NONCONFORMANCE_DIALOG (self), FALSE);

  gtk_editable_set_text (GTK_EDITABLE (self->number), number);
  gtk_editable_set_text (GTK_EDITABLE (self->note), note);
  adw_combo_row_set_selected (ADW_COMBO_ROW (self->disposition), disposition);
  if (!gtk_widget_get_sensitive (self->save) || !keep (self, read_dialog (self, find_row (self)), &error))
    return FALSE;
  gtk_window_close (GTK_WINDOW (self));
  return TRUE;
}
