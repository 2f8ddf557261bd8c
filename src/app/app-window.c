/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-window.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-files.h"
#include "app-gap.h"
#include "app-pages.h"
#include "app-settings.h"
#include "app-tip.h"
#include "app-toast.h"
#include "app-window-private.h"
#include "app-words.h"

G_DEFINE_FINAL_TYPE (TmWindow, tm_window, ADW_TYPE_APPLICATION_WINDOW)

enum { PROP_0, PROP_PAGE, N_PROPS };

static GParamSpec *properties[N_PROPS];

void
tm_window_put_error (TmWindow *self, const char *text)
{
  if (*text != '\0')
    gtk_label_set_text (self->error_label, text);
  gtk_revealer_set_reveal_child (self->error_revealer, *text != '\0');
}

static void
close_error_cb (TmWindow *self)
{
  tm_window_put_error (self, "");
}

static const TmPageKind *
find_page_kind (const char *name)
{
  guint n;
  const TmPageKind *kinds = tm_pages (&n);

  for (guint i = 0; i < n; i++)
    if (g_str_equal (kinds[i].name, name))
      return &kinds[i];
  return NULL;
}

/* The report's list of what is missing jumps to where it is mended. */
static void
go_to_cb (GtkWidget *page, gpointer gap, TmWindow *self)
{
  tm_gap_go (self, gap);
}

/* Pages are made when they are first looked at: a start does not pay for them. */
static GtkWidget *
make_page (TmWindow *self, const TmPageKind *kind)
{
  GtkWidget *page = kind->create ();

  gtk_stack_add_named (self->pages, page, kind->name);
  if (g_signal_lookup ("go-to", G_OBJECT_TYPE (page)) != 0)
    g_signal_connect (page, "go-to", G_CALLBACK (go_to_cb), self);
  kind->set_document (page, self->document);
  return page;
}

/* A stack that loses the focus with its page puts it on the first thing of the next one, and selects
 * the text there: it is entered below, once. */
static void
leave_page (TmWindow *self)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  if (focus != NULL && gtk_widget_is_ancestor (focus, GTK_WIDGET (self->pages)))
    gtk_window_set_focus (GTK_WINDOW (self), NULL);
}

/* A page may know where it is best entered: only when it is shown, so that Tab still goes through all
 * of it. */
static void
enter_page (TmWindow *self, const TmPageKind *kind, GtkWidget *page)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  if (kind->enter != NULL)
    kind->enter (page);
  else if (focus == NULL || !gtk_widget_is_ancestor (focus, page))
    gtk_widget_child_focus (page, GTK_DIR_TAB_FORWARD);
}

void
tm_window_show_page (TmWindow *self, const char *name)
{
  const TmPageKind *kind = find_page_kind (name);
  g_autofree char *kept = g_strdup (name);

  if (kind == NULL || self->document == NULL)
    return;
  /* Looking again at what is shown leaves the cursor where it is. */
  if (g_strcmp0 (gtk_stack_get_visible_child_name (self->pages), name) == 0 && !self->fresh)
    return;
  self->fresh = FALSE;
  if (gtk_stack_get_child_by_name (self->pages, name) == NULL)
    make_page (self, kind);
  leave_page (self);
  tm_access_show_page (self->pages, name);
  g_free (self->page);
  self->page = g_steal_pointer (&kept);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_PAGE]);
  gtk_widget_set_visible (self->piece_tools, g_str_equal (self->page, "bench"));
  enter_page (self, kind, gtk_stack_get_visible_child (self->pages));
}

static void
show_title (TmWindow *self)
{
  const TmJob *job = tm_document_job (self->document);
  g_autofree char *title = tm_words_job_title (job->part_number, job->part_name, job->revision);
  g_autofree char *window_title = g_strdup_printf ("%s — Tenthmark", title);

  gtk_label_set_text (self->job_title, title);
  gtk_window_set_title (GTK_WINDOW (self), window_title);
}

static void
definitions_changed_cb (TmWindow *self)
{
  show_title (self);
  tm_window_refresh_pieces (self);
}

static void
moved_cb (TmWindow *self)
{
  tm_window_follow_piece (self);
}

/* Hands @document (or NULL) to every page that has been made. */
static void
give_document (TmWindow *self, TmDocument *document)
{
  guint n;
  const TmPageKind *kinds = tm_pages (&n);

  for (guint i = 0; i < n; i++)
    {
      GtkWidget *page = gtk_stack_get_child_by_name (self->pages, kinds[i].name);

      if (page != NULL)
        kinds[i].set_document (page, document);
    }
}

static void
close_document (TmWindow *self)
{
  if (self->document == NULL)
    return;
  g_signal_handlers_disconnect_by_data (self->document, self);
  give_document (self, NULL);
  g_clear_object (&self->document);
}

/* A row that is being typed in saves its text when it loses the focus.  FALSE while a dialog waits for
 * its answer, perhaps about that very text: what is typed there must not be lost. */
static gboolean
finish_typing (TmWindow *self)
{
  GtkWindow *question;

  if (self->document != NULL)
    gtk_window_set_focus (GTK_WINDOW (self), NULL);
  question = tm_dialog_over (GTK_WINDOW (self));
  if (question != NULL)
    gtk_window_present (question);
  return question == NULL;
}

/* In a job: back, title, pages, pieces; on Home: new and open. */
static void
show_tools (TmWindow *self, gboolean in_job)
{
  gtk_widget_set_visible (self->home_tools, !in_job);
  gtk_widget_set_visible (self->job_tools, in_job);
  tm_access_show_page (self->title_stack, in_job ? "job" : "home");
  tm_access_show_page (self->stack, in_job ? "job" : "home");
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.home", in_job);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.page", in_job);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.export-job", in_job);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.new-revision", in_job);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.export", in_job);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.add-piece", in_job);
  if (!in_job)
    gtk_widget_set_visible (self->piece_tools, FALSE);
}

void
tm_window_go_home (TmWindow *self)
{
  if (!finish_typing (self))
    return;
  close_document (self);
  show_tools (self, FALSE);
  gtk_window_set_title (GTK_WINDOW (self), "Tenthmark");
  tm_home_refresh (self->home);
  tm_home_enter (self->home);
}

/* Whoever measured last goes on, when this job knows them; a single person needs no asking. */
static void
choose_person (TmDocument *document)
{
  const TmJob *job = tm_document_job (document);
  g_autofree char *initials = tm_settings_get_text ("initials");
  g_autofree char *order = tm_settings_get_text ("order");
  TmBench *bench = tm_document_bench (document);

  if (tm_job_find_person (job, initials) != NULL)
    tm_bench_set_by (bench, initials);
  else if (job->people->len == 1)
    tm_bench_set_by (bench, ((TmPerson *)g_ptr_array_index (job->people, 0))->initials);
  if (g_str_equal (order, "feature-first"))
    tm_bench_set_order (bench, TM_ORDER_FEATURE_FIRST);
}

/* A report without the shop's template would look right and say less: its loss is told. */
static void
load_template (TmWindow *self)
{
  g_autoptr (GError) error = NULL;

  if (!tm_document_load_template (self->document, &error))
    tm_window_put_error (self, error->message);
}

void
tm_window_show_job (TmWindow *self, TmJob *job, const char *page)
{
  gboolean ready = job->features->len > 0 && job->pieces->len > 0;

  g_return_if_fail (TM_IS_WINDOW (self));
  g_return_if_fail (self->book != NULL);

  finish_typing (self);
  close_document (self);
  tm_window_put_error (self, "");
  self->document = tm_document_new (self->book, job);
  load_template (self);
  choose_person (self->document);
  g_signal_connect_swapped (self->document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
  g_signal_connect_swapped (self->document, "moved", G_CALLBACK (moved_cb), self);
  definitions_changed_cb (self);
  give_document (self, self->document);
  self->fresh = TRUE;
  show_tools (self, TRUE);
  if (page == NULL)
    page = ready && find_page_kind ("bench") != NULL ? "bench" : "job";
  tm_window_show_page (self, page);
}

/* Adds one button of the page switch; the action's state presses it. */
static void
add_page_button (TmWindow *self, const TmPageKind *kind)
{
  GtkWidget *button = gtk_toggle_button_new_with_label (g_dgettext (GETTEXT_PACKAGE, kind->title));

  /* The target first: an action without the target it wants is complained about. */
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", kind->name);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.page");
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "tm-page");
  gtk_box_append (self->page_switch, button);
}

static void
build_page_switch (TmWindow *self)
{
  guint n;
  const TmPageKind *kinds = tm_pages (&n);

  for (guint i = 0; i < n; i++)
    add_page_button (self, &kinds[i]);
}

void
tm_window_open_book (TmWindow *self)
{
  g_autoptr (GError) error = NULL;

  self->book = tm_book_open (self->book_path, TM_BOOK_OPEN_NORMAL, &error);
  tm_home_set_book (self->home, self->book, error != NULL ? error->message : NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.new-job", self->book != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.open-file", self->book != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.template", self->book != NULL);
  tm_home_enter (self->home);
}

static void
tm_window_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  TmWindow *self = TM_WINDOW (object);

  if (id == PROP_PAGE)
    g_value_set_string (value, self->page);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
tm_window_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  TmWindow *self = TM_WINDOW (object);

  if (id == PROP_PAGE)
    tm_window_show_page (self, g_value_get_string (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static gboolean
tm_window_close_request (GtkWindow *window)
{
  int width, height;

  if (!finish_typing (TM_WINDOW (window)))
    return TRUE;
  gtk_window_get_default_size (window, &width, &height);
  tm_settings_set_flag ("maximized", gtk_window_is_maximized (window));
  tm_settings_set_number ("width", MAX (width, 360));
  tm_settings_set_number ("height", MAX (height, 300));
  return GTK_WINDOW_CLASS (tm_window_parent_class)->close_request (window);
}

static void
tm_window_dispose (GObject *object)
{
  TmWindow *self = TM_WINDOW (object);

  /* A window is disposed of when it is destroyed and again when the last reference goes. */
  if (self->pages != NULL)
    {
      close_document (self);
      gtk_widget_dispose_template (GTK_WIDGET (self), TM_TYPE_WINDOW);
    }
  g_clear_object (&self->chooser);
  g_clear_object (&self->toast);
  G_OBJECT_CLASS (tm_window_parent_class)->dispose (object);
}

static void
tm_window_finalize (GObject *object)
{
  TmWindow *self = TM_WINDOW (object);

  g_clear_pointer (&self->book, tm_book_close);
  g_free (self->book_path);
  g_free (self->page);
  G_OBJECT_CLASS (tm_window_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *klass)
{
  gtk_widget_class_bind_template_child (klass, TmWindow, toasts);
  gtk_widget_class_bind_template_child (klass, TmWindow, title_stack);
  gtk_widget_class_bind_template_child (klass, TmWindow, page_switch);
  gtk_widget_class_bind_template_child (klass, TmWindow, home_tools);
  gtk_widget_class_bind_template_child (klass, TmWindow, job_tools);
  gtk_widget_class_bind_template_child (klass, TmWindow, job_title);
  gtk_widget_class_bind_template_child (klass, TmWindow, piece_tools);
  gtk_widget_class_bind_template_child (klass, TmWindow, piece_drop);
  gtk_widget_class_bind_template_child (klass, TmWindow, error_revealer);
  gtk_widget_class_bind_template_child (klass, TmWindow, error_label);
  gtk_widget_class_bind_template_child (klass, TmWindow, stack);
  gtk_widget_class_bind_template_child (klass, TmWindow, home);
  gtk_widget_class_bind_template_child (klass, TmWindow, pages);
  gtk_widget_class_bind_template_callback (klass, close_error_cb);
}

static void
tm_window_class_init (TmWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = tm_window_finalize;
  GTK_WINDOW_CLASS (klass)->close_request = tm_window_close_request;
  G_OBJECT_CLASS (klass)->get_property = tm_window_get_property;
  G_OBJECT_CLASS (klass)->set_property = tm_window_set_property;
  properties[PROP_PAGE] = g_param_spec_string (
      "page", NULL, NULL, "job", G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, properties);
  gtk_widget_class_install_property_action (widget_class, "win.page", "page");
  g_type_ensure (TM_TYPE_HOME);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/tenthmark/Tenthmark/window.ui");
  bind_children (widget_class);
  tm_window_install_actions (widget_class);
}

static void
tm_window_init (TmWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->page = g_strdup ("job");
  build_page_switch (self);
  tm_tip_own_text (GTK_WIDGET (self->job_title));
  tm_window_setup_pieces (self);
  gtk_window_set_default_size (GTK_WINDOW (self), tm_settings_get_number ("width"),
                               tm_settings_get_number ("height"));
  if (tm_settings_get_flag ("maximized"))
    gtk_window_maximize (GTK_WINDOW (self));
  show_tools (self, FALSE);
}

TmWindow *
tm_window_new (GtkApplication *application, const char *book_path)
{
  TmWindow *self;

  g_return_val_if_fail (book_path != NULL, NULL);

  self = g_object_new (TM_TYPE_WINDOW, "application", application, NULL);
  self->book_path = g_strdup (book_path);
  tm_window_open_book (self);
  return self;
}

TmDocument *
tm_window_document (TmWindow *self)
{
  g_return_val_if_fail (TM_IS_WINDOW (self), NULL);

  return self->document;
}

TmBook *
tm_window_book (TmWindow *self)
{
  g_return_val_if_fail (TM_IS_WINDOW (self), NULL);

  return self->book;
}
