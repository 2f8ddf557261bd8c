/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-template-logo.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#include "app-edit.h"
#include "app-work.h"
#include "core-template.h"
#include "plot-drawing.h"

/* What is being read, on either thread. */
typedef struct {
  char *path;
  GBytes *bytes;
  const char *media;
  TmLogoRead done;
  gpointer data;
} Reading;

static void
free_reading (gpointer data)
{
  Reading *reading = data;

  g_free (reading->path);
  g_clear_pointer (&reading->bytes, g_bytes_unref);
  g_free (reading);
}

static gboolean
refuse (TmTemplateStatus status, GError **error)
{
  g_set_error_literal (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED,
                       g_dgettext (GETTEXT_PACKAGE, tm_template_status_text (status)));
  return FALSE;
}

/* At most one byte more than may be: a file that is too large is not read whole.  One read may give less
 * than there is, from a shared folder for example. */
static gboolean
read_bytes (Reading *reading, GError **error)
{
  g_autoptr (GFile) file = g_file_new_for_path (reading->path);
  g_autoptr (GFileInputStream) stream = g_file_read (file, NULL, error);
  g_autofree char *all = stream != NULL ? g_malloc (TM_TEMPLATE_MAX_LOGO + 1) : NULL;
  gsize length = 0;

  if (stream == NULL
      || !g_input_stream_read_all (G_INPUT_STREAM (stream), all, TM_TEMPLATE_MAX_LOGO + 1, &length, NULL,
                                   error))
    return FALSE;
  if (length > TM_TEMPLATE_MAX_LOGO)
    return refuse (TM_TEMPLATE_LOGO_LARGE, error);
  reading->bytes = g_bytes_new (all, length);
  return TRUE;
}

/* A PDF could be drawn as well, but a page of one is no logo. */
static gboolean
try_logo (Reading *reading, GError **error)
{
  g_autoptr (TmDrawingPage) page = NULL;

  reading->media = tm_drawing_look (reading->bytes, NULL, error);
  if (reading->media == NULL)
    return FALSE;
  if (!g_str_has_prefix (reading->media, "image/"))
    return refuse (TM_TEMPLATE_LOGO_MEDIA, error);
  page = tm_drawing_page_open (reading->bytes, 1, error);
  return page != NULL;
}

static gpointer
run (TmWork *work, gpointer data, GError **error)
{
  Reading *reading = data;
  g_autofree char *shown = g_filename_display_basename (reading->path);

  if (read_bytes (reading, error) && tm_work_progress (0.3, work) && try_logo (reading, error))
    return tm_work_progress (1.0, work) ? reading : NULL;
  if (error != NULL && *error != NULL)
    g_prefix_error (error, "%s: ", shown);
  return NULL;
}

static void
done_cb (GtkWidget *parent, gpointer result, const GError *error, gpointer data)
{
  Reading *reading = data;

  if (result != NULL)
    reading->done (parent, reading->bytes, reading->media, NULL, reading->data);
  else if (error != NULL)
    reading->done (parent, NULL, NULL, error, reading->data);
}

/* The result is the data itself, which is freed once. */
static void
leave_result (gpointer result)
{
}

void
tm_logo_read (GtkWidget *parent, const char *path, TmLogoRead done, gpointer data)
{
  Reading *reading = g_new0 (Reading, 1);

  reading->path = g_strdup (path);
  reading->done = done;
  reading->data = data;
  tm_work_run (parent, _ ("Reading the logo"), run, done_cb, reading, free_reading, leave_result);
}
