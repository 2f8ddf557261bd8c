/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-sign.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-list-row.h"
#include "app-sign-dialog.h"
#include "app-signed-dialog.h"
#include "app-tip.h"
#include "app-toast.h"
#include "app-words.h"
#include "book-store.h"
#include "exchange-job.h"
#include "report-signed.h"

/* Pixels: three signatures, then they scroll. */
#define MOST_HEIGHT 176

struct _TmReportSign {
  GtkBox parent_instance;

  TmDocument *document;
  char *digest;   /* of the record as it is now; NULL: not known */
  char *namesake; /* another job with the same identifier, or NULL */
  gboolean stale; /* to be found out when it is looked at */
  gboolean looked_at;
  guint64 turn; /* of the record: what an earlier turn found is dropped */
  gboolean checking;

  GtkImage *icon;
  GtkLabel *state;
  GtkLabel *about;
  GtkWidget *scroller;
  GtkListBox *list;
};

enum { SIGNAL_CHECKED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmReportSign, tm_report_sign, GTK_TYPE_BOX)

/* -------- What it says -------- */

static TmSignedState
state_of (TmReportSign *self, const TmSignature *signature)
{
  return tm_signature_state (signature, self->digest);
}

static const TmSignature *
newest (const TmJob *job)
{
  return job->signatures->len > 0 ? g_ptr_array_index (job->signatures, job->signatures->len - 1) : NULL;
}

static const TmSignature *
find_holding (TmReportSign *self, const TmJob *job)
{
  for (guint i = job->signatures->len; i > 0; i--)
    if (state_of (self, g_ptr_array_index (job->signatures, i - 1)) == TM_SIGNED_HOLDS)
      return g_ptr_array_index (job->signatures, i - 1);
  return NULL;
}

static void
show_head (TmReportSign *self, const char *icon, const char *state, const char *about)
{
  gtk_image_set_from_icon_name (self->icon, icon);
  gtk_label_set_text (self->state, state);
  gtk_label_set_text (self->about, about);
}

static void
show_state (TmReportSign *self)
{
  const TmJob *job = tm_document_job (self->document);
  const TmSignature *last = newest (job);
  const TmSignature *holding = find_holding (self, job);
  g_autofree char *time = last != NULL ? tm_words_time (holding != NULL ? holding->at : last->at) : NULL;
  g_autofree char *about = NULL;

  if (last == NULL)
    show_head (self, "document-edit-symbolic", _ ("Not signed"),
               _ ("Signing keeps pages and workbook as they are then."));
  else if (holding != NULL)
    {
      about = g_strdup_printf (_ ("By %s, %s; the record is as it was signed."),
                               tm_report_signer (job, holding), time);
      show_head (self, "emblem-ok-symbolic", _ ("Signed"), about);
    }
  else if (self->digest != NULL)
    {
      about = g_strdup_printf (_ ("The record has changed since %s signed it (%s)."),
                               tm_report_signer (job, last), time);
      show_head (self, "dialog-warning-symbolic", _ ("Superseded"), about);
    }
  else
    show_head (self, "content-loading-symbolic", _ ("Signed"),
               _ ("The record is being compared with what was signed."));
}

static const char *
short_state (TmSignedState state)
{
  switch (state)
    {
    case TM_SIGNED_HOLDS:
      return _ ("holds");
    case TM_SIGNED_SUPERSEDED:
      return _ ("superseded");
    case TM_SIGNED_UNKNOWN:
    default:
      return "";
    }
}

static GtkWidget *
build_row (TmReportSign *self, const TmJob *job, guint index)
{
  const TmSignature *signature = g_ptr_array_index (job->signatures, index);
  gboolean known = g_strv_contains (tm_report_roles (), signature->role);
  const char *role = known ? _ (signature->role) : signature->role;
  g_autofree char *time = tm_words_time (signature->at);
  g_autofree char *under = g_strdup_printf ("%s · %s", tm_report_signer (job, signature), time);
  g_autofree char *key = g_strdup_printf ("%u", index);
  g_autofree char *spoken = g_strdup_printf (_ ("%s, %s, %s. %s"), role, tm_report_signer (job, signature),
                                             time, tm_words_signed_state (state_of (self, signature)));

  return tm_list_row_new (role, under, short_state (state_of (self, signature)), spoken, key);
}

/* The newest stands first. */
static void
show_rows (TmReportSign *self)
{
  const TmJob *job = tm_document_job (self->document);
  gboolean inside = tm_list_clear (self->list);

  for (guint i = job->signatures->len; i > 0; i--)
    gtk_list_box_append (self->list, build_row (self, job, i - 1));
  gtk_widget_set_visible (self->scroller, job->signatures->len > 0);
  if (inside && job->signatures->len > 0)
    gtk_widget_grab_focus (GTK_WIDGET (gtk_list_box_get_row_at_index (self->list, 0)));
}

static void
show (TmReportSign *self)
{
  show_state (self);
  show_rows (self);
}

/* -------- Finding out -------- */

typedef struct {
  char *book_path;
  char *id;
  guint64 turn;
  GWeakRef asked; /* TmReportSign: its last reference must not go on another thread */
} Check;

static void
free_check (gpointer data)
{
  Check *check = data;

  g_free (check->book_path);
  g_free (check->id);
  g_weak_ref_clear (&check->asked);
  g_free (check);
}

static void
check_cb (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Check *check = data;
  g_autoptr (TmJob) job = NULL;
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (check->book_path, TM_BOOK_OPEN_NORMAL, &error);

  if (book != NULL)
    job = tm_book_load_job (book, check->id, NULL, NULL, &error);
  if (job != NULL)
    g_task_return_pointer (task, tm_job_digest (job), g_free);
  else
    g_task_return_error (task, error);
}

static void
know (TmReportSign *self, const char *digest)
{
  g_free (self->digest);
  self->digest = g_strdup (digest);
  show (self);
  g_signal_emit (self, signals[SIGNAL_CHECKED], 0);
}

static void find_out (TmReportSign *self);

static void
checked_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Check *check = g_task_get_task_data (G_TASK (result));
  g_autoptr (TmReportSign) self = g_weak_ref_get (&check->asked);
  g_autoptr (GError) error = NULL;
  g_autofree char *digest = g_task_propagate_pointer (G_TASK (result), &error);

  if (self == NULL)
    return;
  self->checking = FALSE;
  if (self->document == NULL)
    return;
  if (check->turn != self->turn)
    find_out (self);
  else if (digest != NULL)
    know (self, digest);
  else
    tm_window_show_error (GTK_WIDGET (self), error->message);
}

static void
begin_check (TmReportSign *self)
{
  Check *check = g_new0 (Check, 1);
  g_autoptr (GTask) task = g_task_new (NULL, NULL, checked_cb, NULL);

  check->book_path = g_strdup (tm_book_path (tm_document_book (self->document)));
  check->id = g_strdup (tm_document_job (self->document)->id);
  check->turn = self->turn;
  g_weak_ref_init (&check->asked, self);
  g_task_set_task_data (task, check, free_check);
  self->checking = TRUE;
  g_task_run_in_thread (task, check_cb);
}

static void
find_namesake (TmReportSign *self)
{
  const TmJob *job = tm_document_job (self->document);
  g_autoptr (GPtrArray) found
      = tm_book_find_report (tm_document_book (self->document), job->report_identifier, job->id, NULL);
  const TmBookEntry *entry = found != NULL && found->len > 0 ? g_ptr_array_index (found, 0) : NULL;

  g_clear_pointer (&self->namesake, g_free);
  if (entry != NULL)
    self->namesake = tm_words_job_title (entry->part_number, entry->part_name, entry->revision);
}

/* One comparison at a time; the namesake is told at once all the same: the page asks for it next. */
static void
find_out (TmReportSign *self)
{
  if (self->document == NULL || !self->stale || !self->looked_at)
    return;
  find_namesake (self);
  show (self);
  if (self->checking)
    return;
  self->stale = FALSE;
  if (tm_document_job (self->document)->signatures->len > 0)
    begin_check (self);
}

static void
changed_cb (TmReportSign *self)
{
  self->turn++;
  self->stale = TRUE;
  g_clear_pointer (&self->digest, g_free);
  g_clear_pointer (&self->namesake, g_free);
  find_out (self);
}

/* -------- The widget -------- */

static void
row_activated_cb (TmReportSign *self, GtkListBoxRow *row)
{
  const TmJob *job = tm_document_job (self->document);
  guint64 index = g_ascii_strtoull (tm_list_row_key (row), NULL, 10);
  const TmSignature *signature;

  if (index >= job->signatures->len)
    return;
  signature = g_ptr_array_index (job->signatures, index);
  tm_signed_dialog_present (GTK_WIDGET (self), self->document, signature, state_of (self, signature));
}

static void
tm_report_sign_dispose (GObject *object)
{
  tm_report_sign_set_document (TM_REPORT_SIGN (object), NULL);
  G_OBJECT_CLASS (tm_report_sign_parent_class)->dispose (object);
}

static void
tm_report_sign_finalize (GObject *object)
{
  TmReportSign *self = TM_REPORT_SIGN (object);

  g_free (self->digest);
  g_free (self->namesake);
  G_OBJECT_CLASS (tm_report_sign_parent_class)->finalize (object);
}

static void
tm_report_sign_class_init (TmReportSignClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = tm_report_sign_dispose;
  object_class->finalize = tm_report_sign_finalize;
  signals[SIGNAL_CHECKED] = g_signal_new ("checked", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                          NULL, NULL, G_TYPE_NONE, 0);
}

static GtkLabel *
add_label (GtkWidget *box, const char *css_class)
{
  GtkLabel *label = GTK_LABEL (gtk_label_new (NULL));

  gtk_label_set_xalign (label, 0);
  gtk_label_set_wrap (label, TRUE);
  gtk_label_set_wrap_mode (label, PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (label, 24);
  gtk_label_set_lines (label, 4);
  gtk_label_set_ellipsize (label, PANGO_ELLIPSIZE_END);
  tm_tip_own_text (GTK_WIDGET (label));
  gtk_widget_add_css_class (GTK_WIDGET (label), css_class);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (label));
  return label;
}

static GtkWidget *
build_head (TmReportSign *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *button = tm_button_new (_ ("_Sign…"));

  self->icon = GTK_IMAGE (gtk_image_new ());
  gtk_widget_set_valign (GTK_WIDGET (self->icon), GTK_ALIGN_START);
  self->state = add_label (words, "heading");
  self->about = add_label (words, "dim-label");
  gtk_widget_set_hexpand (words, TRUE);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "report.sign");
  gtk_widget_set_tooltip_text (button, _ ("Sign the report (Ctrl+Shift+S)"));
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->icon));
  gtk_box_append (GTK_BOX (head), words);
  gtk_box_append (GTK_BOX (head), button);
  gtk_widget_add_css_class (head, "tm-sign-head");
  tm_access_hide_decoration (head);
  return head;
}

static GtkWidget *
build_list (TmReportSign *self)
{
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "navigation-sidebar");
  tm_name_widget (GTK_WIDGET (self->list), _ ("Signatures"));
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (row_activated_cb), self);
  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (self->scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (self->scroller), MOST_HEIGHT);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), GTK_WIDGET (self->list));
  gtk_widget_set_visible (self->scroller, FALSE);
  return self->scroller;
}

static void
tm_report_sign_init (TmReportSign *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-sign");
  gtk_box_append (GTK_BOX (self), build_head (self));
  gtk_box_append (GTK_BOX (self), build_list (self));
  gtk_box_append (GTK_BOX (self), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
}

GtkWidget *
tm_report_sign_new (void)
{
  return g_object_new (TM_TYPE_REPORT_SIGN, NULL);
}

void
tm_report_sign_set_document (TmReportSign *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_REPORT_SIGN (self));

  if (self->document == document)
    return;
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  g_object_set_data (G_OBJECT (self), "tm-signs", NULL);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "recorded", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (changed_cb), self);
  changed_cb (self);
}

void
tm_report_sign_set_looked_at (TmReportSign *self, gboolean looked_at)
{
  g_return_if_fail (TM_IS_REPORT_SIGN (self));

  self->looked_at = looked_at;
  find_out (self);
}

void
tm_report_sign_complete (TmReportSign *self, TmReportContent *content)
{
  g_return_if_fail (TM_IS_REPORT_SIGN (self));
  g_return_if_fail (content != NULL);

  if (self->document == NULL)
    return;
  if (self->digest != NULL)
    tm_report_content_set_digest (content, self->digest);
  tm_report_content_set_namesake (content, self->namesake);
}

void
tm_report_sign_begin (TmReportSign *self)
{
  g_return_if_fail (TM_IS_REPORT_SIGN (self));

  if (self->document != NULL)
    tm_sign_dialog_begin (GTK_WIDGET (self), self->document);
}
