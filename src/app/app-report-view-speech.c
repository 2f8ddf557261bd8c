/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-view-speech: what those are told of the page who cannot see it.
 */

#include <glib/gi18n-lib.h>

#include "app-dialog.h"
#include "app-report-view-private.h"

#define LONGEST_TEXT 6000 /* letters of a page */
#define REST_MS      150  /* without another page, before its text is read */

typedef struct {
  TmReportPaper *paper;
  guint page;
} Asked;

static void
free_asked (gpointer data)
{
  Asked *asked = data;

  tm_report_paper_unref (asked->paper);
  g_free (asked);
}

static void
read_cb (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Asked *asked = data;
  g_autofree char *text = tm_report_paper_text (asked->paper, asked->page);

  g_task_return_pointer (task, g_utf8_substring (text, 0, MIN (g_utf8_strlen (text, -1), LONGEST_TEXT)),
                         g_free);
}

static void
was_read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  GWeakRef *view = data;
  g_autoptr (TmReportView) self = g_weak_ref_get (view);
  const Asked *asked = g_task_get_task_data (G_TASK (result));
  g_autofree char *text = g_task_propagate_pointer (G_TASK (result), NULL);

  g_weak_ref_clear (view);
  g_free (view);
  if (self != NULL && self->paper == asked->paper && self->page == asked->page)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

/* The text of the page, once the view has come to rest.  The task does not hold the view, whose last
 * reference must not go on another thread. */
static gboolean
rest_cb (gpointer data)
{
  TmReportView *self = data;
  GWeakRef *view;
  g_autoptr (GTask) task = NULL;
  Asked *asked;

  self->read_id = 0;
  if (self->paper == NULL)
    return G_SOURCE_REMOVE;
  view = g_new0 (GWeakRef, 1);
  g_weak_ref_init (view, self);
  asked = g_new (Asked, 1);
  *asked = (Asked) { tm_report_paper_ref (self->paper), self->page };
  task = g_task_new (NULL, NULL, was_read_cb, view);
  g_task_set_task_data (task, asked, free_asked);
  g_task_run_in_thread (task, read_cb);
  return G_SOURCE_REMOVE;
}

/* "First-article report, page 3 of 12, Characteristics" */
void
tm_report_view_say_page (TmReportView *self)
{
  g_autofree char *words = NULL;

  if (self->said_page == self->page + 1)
    return;
  if (self->paper == NULL)
    words = g_strdup (_ ("Pages of the report: nothing to show yet"));
  else
    words = g_strdup_printf (_ ("%s, page %u of %u, %s"), tm_report_paper_title (self->paper), self->page + 1,
                             tm_report_view_n_pages (self),
                             tm_report_paper_section_of (self->paper, self->page));
  tm_name_widget (GTK_WIDGET (self), words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, "", -1);
  self->said_page = self->page + 1;
  g_clear_handle_id (&self->read_id, g_source_remove);
  self->read_id = g_timeout_add (REST_MS, rest_cb, self);
}
