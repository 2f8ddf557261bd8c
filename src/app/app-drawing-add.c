/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-drawing-add.h"

#include <glib/gi18n-lib.h>

#include "app-drawing-pages.h"
#include "app-edit-drawing.h"
#include "app-toast.h"
#include "app-work.h"
#include "plot-drawing.h"

/* What is being added, on either thread. */
typedef struct {
  TmDocument *document;
  TmDrawingAdded added;
  char *path;       /* to be read, or NULL */
  char *name;       /* of the drawing, without an ending */
  char *replaces;   /* name of the drawing whose file it takes the place of, or NULL */
  GPtrArray *later; /* paths of the files that follow this one, or NULL */
  char *said;       /* what went wrong with those before it, or NULL */
  GBytes *bytes;    /* NULL until it is read */
  char *digest;
  const char *media;
  guint n_pages;
} Adding;

static void
free_adding (gpointer data)
{
  Adding *adding = data;

  g_clear_object (&adding->document);
  g_free (adding->path);
  g_free (adding->name);
  g_free (adding->replaces);
  g_clear_pointer (&adding->later, g_ptr_array_unref);
  g_free (adding->said);
  g_clear_pointer (&adding->bytes, g_bytes_unref);
  g_free (adding->digest);
  g_free (adding);
}

/* "bracket.pdf" as "bracket" */
static char *
name_of (const char *path)
{
  g_autofree char *base = g_filename_display_basename (path);
  char *dot = strrchr (base, '.');

  if (dot != NULL && dot != base)
    *dot = '\0';
  return g_steal_pointer (&base);
}

static Adding *
new_adding (TmDocument *document, const char *name, TmDrawingAdded added)
{
  Adding *adding = g_new0 (Adding, 1);

  adding->document = g_object_ref (document);
  adding->name = g_strdup (name);
  adding->added = added;
  return adding;
}

/* -------- On the thread -------- */

/* A file that is too large is not read first. */
static gboolean
check_size (const char *path, const char *shown, GError **error)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GFileInfo) info
      = g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_SIZE "," G_FILE_ATTRIBUTE_STANDARD_TYPE,
                           G_FILE_QUERY_INFO_NONE, NULL, error);

  if (info == NULL)
    return FALSE;
  if (g_file_info_get_file_type (info) != G_FILE_TYPE_REGULAR)
    {
      g_set_error (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED,
                   _ ("%s: this is no file; choose a picture or a PDF."), shown);
      return FALSE;
    }
  if (g_file_info_get_size (info) <= (goffset)TM_DRAWING_MAX_BYTES)
    return TRUE;
  g_set_error (
      error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED,
      _ ("%s: a drawing may have %u MiB and this one has more; write it with fewer dots to the inch."), shown,
      TM_DRAWING_MAX_BYTES / 1048576u);
  return FALSE;
}

static gboolean
read_file (Adding *adding, GError **error)
{
  g_autofree char *shown = g_filename_display_basename (adding->path);
  g_autoptr (GFile) file = g_file_new_for_path (adding->path);

  if (!check_size (adding->path, shown, error))
    return FALSE;
  adding->bytes = g_file_load_bytes (file, NULL, NULL, error);
  return adding->bytes != NULL;
}

/* What it is, and that its page, where it has only one, can be drawn. */
static gboolean
look (Adding *adding, GError **error)
{
  adding->media = tm_drawing_look (adding->bytes, &adding->n_pages, error);
  if (adding->media == NULL)
    return FALSE;
  if (adding->n_pages == 1)
    {
      g_autoptr (TmDrawingPage) page = tm_drawing_page_open (adding->bytes, 1, error);

      if (page == NULL)
        return FALSE;
    }
  adding->digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, adding->bytes);
  return TRUE;
}

/* Gives back @data itself, filled: it goes on to the main loop. */
static gpointer
run (TmWork *work, gpointer data, GError **error)
{
  Adding *adding = data;
  g_autofree char *shown
      = adding->path != NULL ? g_filename_display_basename (adding->path) : g_strdup (adding->name);

  if (adding->bytes == NULL && !read_file (adding, error))
    return NULL;
  if (!tm_work_progress (0.3, work))
    return NULL;
  if (!look (adding, error))
    {
      g_prefix_error (error, "%s: ", shown);
      return NULL;
    }
  return tm_work_progress (1, work) ? adding : NULL;
}

/* -------- On the main loop -------- */

/* Of several files the one that is good does not hide what was said of the one before. */
static void
say_problem (GtkWidget *parent, Adding *adding, const char *problem)
{
  g_autofree char *before = g_steal_pointer (&adding->said);

  adding->said = before != NULL ? g_strconcat (before, "  ", problem, NULL) : g_strdup (problem);
  tm_window_show_error (parent, adding->said);
}

static void
say_done (GtkWidget *parent, const Adding *adding, const char *text)
{
  if (adding->said == NULL)
    tm_window_clear_error (parent);
  tm_window_toast (parent, text);
}

static void start (GtkWidget *parent, Adding *adding);

/* The next of several files, one at a time: of each it may have to be asked which pages. */
static void
go_on (GtkWidget *parent, const Adding *before)
{
  g_autofree char *name = NULL;
  const char *path;
  Adding *adding;

  if (before->later == NULL || before->later->len == 0 || gtk_widget_get_root (parent) == NULL)
    return;
  path = g_ptr_array_index (before->later, 0);
  name = name_of (path);
  adding = new_adding (before->document, name, before->added);
  adding->path = g_strdup (path);
  adding->said = g_strdup (before->said);
  adding->later = g_ptr_array_ref (before->later);
  g_ptr_array_remove_index (adding->later, 0);
  start (parent, adding);
}

static TmDrawing *
make_drawing (const Adding *adding, guint page)
{
  TmJob *job = tm_document_job (adding->document);
  TmDrawing *drawing = tm_drawing_new ();
  /* Translators: name of a drawing that is a page of a file: file, page. */
  g_autofree char *wished = adding->n_pages > 1 ? g_strdup_printf (_ ("%s page %u"), adding->name, page)
                                                : g_strdup (adding->name);
  g_autofree char *name = tm_edit_free_drawing_name (job, wished);

  drawing->name = tm_job_intern (job, name);
  drawing->media = tm_job_intern (job, adding->media);
  drawing->digest = tm_job_intern (job, adding->digest);
  drawing->page = page;
  drawing->content = g_bytes_ref (adding->bytes);
  return drawing;
}

static void
add_pages (GtkWidget *parent, Adding *adding, const guint *pages, guint n)
{
  g_autoptr (GPtrArray) drawings = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *first = NULL;
  g_autofree char *text = NULL;

  for (guint i = 0; i < n; i++)
    g_ptr_array_add (drawings, make_drawing (adding, pages[i]));
  first = g_strdup (((TmDrawing *)g_ptr_array_index (drawings, 0))->name);
  if (!tm_edit_add_drawings (adding->document, drawings, &error))
    {
      say_problem (parent, adding, error->message);
      return;
    }
  text = n == 1 ? g_strdup_printf (_ ("Added: %s"), first)
                : g_strdup_printf (ngettext ("%u drawing added", "%u drawings added", n), n);
  say_done (parent, adding, text);
  adding->added (parent, first);
}

/* "bracket: this drawing is page 3, and the file has 2 pages; choose another one." */
static char *
describe_no_page (const Adding *adding, guint page)
{
  return g_strdup_printf (
      ngettext ("%s: this drawing is page %u, and the file has %u page; choose another one.",
                "%s: this drawing is page %u, and the file has %u pages; choose another one.",
                adding->n_pages),
      adding->name, page, adding->n_pages);
}

static void
replace (GtkWidget *parent, Adding *adding)
{
  TmDrawing *drawing = tm_job_find_drawing (tm_document_job (adding->document), adding->replaces);
  guint page = drawing == NULL || adding->n_pages == 1 ? 1 : drawing->page;
  g_autofree char *line = page > adding->n_pages ? describe_no_page (adding, page) : NULL;
  g_autofree char *text = g_strdup_printf (_ ("Replaced: %s"), adding->replaces);
  g_autoptr (GError) error = NULL;

  if (drawing == NULL)
    return;
  if (line != NULL
      || !tm_edit_replace_drawing (adding->document, drawing, make_drawing (adding, page), &error))
    {
      say_problem (parent, adding, line != NULL ? line : error->message);
      return;
    }
  say_done (parent, adding, text);
  adding->added (parent, adding->replaces);
}

/* The dialog outlives the work whose data this is. */
typedef struct {
  GtkWidget *parent;
  Adding *adding;
} Choice;

static Adding *
copy_adding (const Adding *adding)
{
  Adding *copy = new_adding (adding->document, adding->name, adding->added);

  copy->said = g_strdup (adding->said);
  copy->later = adding->later != NULL ? g_ptr_array_ref (adding->later) : NULL;
  copy->bytes = g_bytes_ref (adding->bytes);
  copy->digest = g_strdup (adding->digest);
  copy->media = adding->media;
  copy->n_pages = adding->n_pages;
  return copy;
}

static void
pages_chosen_cb (GtkWidget *parent, const GArray *pages, gpointer data)
{
  add_pages (parent, ((Choice *)data)->adding, (const guint *)(gpointer)pages->data, pages->len);
}

/* The dialog is closed, with or without a choice. */
static void
end_choice (gpointer data)
{
  Choice *choice = data;

  go_on (choice->parent, choice->adding);
  g_object_unref (choice->parent);
  free_adding (choice->adding);
  g_free (choice);
}

static void
ask_pages (GtkWidget *parent, const Adding *adding)
{
  Choice *choice = g_new (Choice, 1);

  *choice = (Choice) { g_object_ref (parent), copy_adding (adding) };
  tm_drawing_pages_present (parent, adding->name, adding->bytes, adding->n_pages, pages_chosen_cb, choice,
                            end_choice);
}

static void
done_cb (GtkWidget *parent, gpointer result, const GError *error, gpointer data)
{
  Adding *adding = data;

  if (error != NULL)
    say_problem (parent, adding, error->message);
  else if (result == NULL)
    return;
  else if (adding->replaces != NULL)
    replace (parent, adding);
  else if (adding->n_pages == 1)
    add_pages (parent, adding, &(guint) { 1 }, 1);
  else
    {
      ask_pages (parent, adding);
      return;
    }
  go_on (parent, adding);
}

static void
start (GtkWidget *parent, Adding *adding)
{
  g_autofree char *title = g_strdup_printf (_ ("Reading %s"), adding->name);

  tm_work_run (parent, title, run, done_cb, adding, free_adding, NULL);
}

void
tm_drawing_add_file (GtkWidget *parent, TmDocument *document, const char *path, TmDrawingAdded added)
{
  g_autofree char *name = name_of (path);
  Adding *adding = new_adding (document, name, added);

  adding->path = g_strdup (path);
  start (parent, adding);
}

void
tm_drawing_replace_file (GtkWidget *parent, TmDocument *document, const char *drawing, const char *path,
                         TmDrawingAdded added)
{
  g_autofree char *name = name_of (path);
  Adding *adding = new_adding (document, name, added);

  adding->path = g_strdup (path);
  adding->replaces = g_strdup (drawing);
  start (parent, adding);
}

void
tm_drawing_add_bytes (GtkWidget *parent, TmDocument *document, const char *name, GBytes *bytes,
                      TmDrawingAdded added)
{
  Adding *adding = new_adding (document, name, added);

  adding->bytes = g_bytes_ref (bytes);
  start (parent, adding);
}

/* -------- Where it comes from -------- */

typedef struct {
  GtkWidget *parent;
  TmDocument *document;
  TmDrawingAdded added;
  char *replaces; /* or NULL */
} Asking;

static void
free_asking (gpointer data)
{
  Asking *asking = data;

  g_object_unref (asking->parent);
  g_object_unref (asking->document);
  g_free (asking->replaces);
  g_free (asking);
}

static Asking *
new_asking (GtkWidget *parent, TmDocument *document, TmDrawingAdded added)
{
  Asking *asking = g_new (Asking, 1);

  *asking = (Asking) { g_object_ref (parent), g_object_ref (document), added, NULL };
  return asking;
}

/* The window may have been closed meanwhile. */
static gboolean
is_open (const Asking *asking)
{
  return gtk_widget_get_root (asking->parent) != NULL;
}

static void
chosen_cb (GtkFileChooserNative *chooser, int response, Asking *asking)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  gboolean chosen = response == GTK_RESPONSE_ACCEPT && path != NULL && is_open (asking);

  if (chosen && asking->replaces != NULL)
    tm_drawing_replace_file (asking->parent, asking->document, asking->replaces, path, asking->added);
  else if (chosen)
    tm_drawing_add_file (asking->parent, asking->document, path, asking->added);
  free_asking (asking);
  g_object_unref (chooser);
}

static void
choose (GtkWidget *parent, const char *title, Asking *asking)
{
  static const char *const endings[] = { "pdf", "svg", "png", "jpg", "jpeg" };
  GtkRoot *root = gtk_widget_get_root (parent);
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (
      title, GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, GTK_FILE_CHOOSER_ACTION_OPEN, NULL, NULL);
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("Drawings: PDF, SVG, PNG, JPEG"));
  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++)
    gtk_file_filter_add_suffix (filter, endings[i]);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), filter);
  g_signal_connect (chooser, "response", G_CALLBACK (chosen_cb), asking);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

void
tm_drawing_add_choose (GtkWidget *parent, TmDocument *document, TmDrawingAdded added)
{
  choose (parent, _ ("Add a drawing"), new_asking (parent, document, added));
}

void
tm_drawing_add_replacement (GtkWidget *parent, TmDocument *document, const char *drawing,
                            TmDrawingAdded added)
{
  Asking *asking = new_asking (parent, document, added);
  g_autofree char *title = g_strdup_printf (_ ("Replace the file of %s"), drawing);

  asking->replaces = g_strdup (drawing);
  choose (parent, title, asking);
}

/* FALSE: none of @files (GFile) is one that can be read here. */
static gboolean
add_files (GtkWidget *parent, TmDocument *document, GSList *files, TmDrawingAdded added)
{
  Adding *first = new_adding (document, "", added);
  gboolean any;

  first->later = g_ptr_array_new_with_free_func (g_free);
  for (GSList *at = files; at != NULL; at = at->next)
    {
      char *path = g_file_get_path (at->data);
      g_autofree char *name = path == NULL ? g_file_get_parse_name (at->data) : NULL;
      g_autofree char *line
          = name != NULL
                ? g_strdup_printf (_ ("%s: this is not on this computer; save it as a file first."), name)
                : NULL;

      if (path != NULL)
        g_ptr_array_add (first->later, path);
      else
        say_problem (parent, first, line);
    }
  any = first->later->len > 0;
  go_on (parent, first);
  free_adding (first);
  return any;
}

static void
add_texture (GtkWidget *parent, TmDocument *document, GdkTexture *texture, const char *name,
             TmDrawingAdded added)
{
  g_autoptr (GBytes) bytes = gdk_texture_save_to_png_bytes (texture);

  tm_drawing_add_bytes (parent, document, name, bytes, added);
}

static void
pasted_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Asking *asking = data;
  const GValue *value = gdk_clipboard_read_value_finish (GDK_CLIPBOARD (source), result, NULL);

  if (is_open (asking))
    {
      if (value != NULL && G_VALUE_HOLDS (value, GDK_TYPE_FILE_LIST))
        add_files (asking->parent, asking->document, g_value_get_boxed (value), asking->added);
      else if (value != NULL && g_value_get_object (value) != NULL)
        add_texture (asking->parent, asking->document, g_value_get_object (value), _ ("Pasted picture"),
                     asking->added);
      else
        tm_window_toast (asking->parent, _ ("There is no picture and no file on the clipboard."));
    }
  free_asking (asking);
}

/* What a file manager copies is the file; what else there is, a picture. */
void
tm_drawing_add_clipboard (GtkWidget *parent, TmDocument *document, TmDrawingAdded added)
{
  GdkClipboard *clipboard = gtk_widget_get_clipboard (parent);
  g_autoptr (GdkContentFormats) formats = gdk_content_formats_union_deserialize_gtypes (
      gdk_content_formats_ref (gdk_clipboard_get_formats (clipboard)));
  const GType type = gdk_content_formats_contain_gtype (formats, GDK_TYPE_FILE_LIST) ? GDK_TYPE_FILE_LIST
                                                                                     : GDK_TYPE_TEXTURE;

  gdk_clipboard_read_value_async (clipboard, type, G_PRIORITY_DEFAULT, NULL, pasted_cb,
                                  new_asking (parent, document, added));
}

typedef struct {
  TmDocument *(*get) (GtkWidget *widget);
  TmDrawingAdded added;
} Drop;

static gboolean
dropped_cb (GtkDropTarget *target, const GValue *value, double x, double y, Drop *drop)
{
  GtkWidget *widget = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (target));
  TmDocument *document = drop->get (widget);

  if (document == NULL)
    return FALSE;
  if (G_VALUE_HOLDS (value, GDK_TYPE_FILE_LIST))
    return add_files (widget, document, g_value_get_boxed (value), drop->added);
  add_texture (widget, document, g_value_get_object (value), _ ("Dropped picture"), drop->added);
  return TRUE;
}

static void
free_drop (gpointer data, GClosure *closure)
{
  g_free (data);
}

void
tm_drawing_add_drop_target (GtkWidget *widget, TmDocument *(*get) (GtkWidget *widget), TmDrawingAdded added)
{
  GtkDropTarget *target = gtk_drop_target_new (G_TYPE_INVALID, GDK_ACTION_COPY);
  Drop *drop = g_new (Drop, 1);
  GType types[] = { GDK_TYPE_FILE_LIST, GDK_TYPE_TEXTURE };

  gtk_drop_target_set_gtypes (target, types, G_N_ELEMENTS (types));
  *drop = (Drop) { get, added };
  g_signal_connect_data (target, "drop", G_CALLBACK (dropped_cb), drop, free_drop, 0);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (target));
}
