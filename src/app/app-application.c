/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-application.h"

#include <glib/gi18n-lib.h>

#include "app-dialog.h"
#include "app-settings.h"
#include "app-toast.h"
#include "app-window.h"

struct _TmApplication {
  AdwApplication parent_instance;

  char *book_path;
};

G_DEFINE_FINAL_TYPE (TmApplication, tm_application, ADW_TYPE_APPLICATION)

typedef struct {
  const char *action;
  const char *keys[3];
} Shortcut;

/* The shortcuts window (ui/shortcuts.ui) lists these. */
static const Shortcut shortcuts[] = {
  { "app.quit", { "<Control>q" } },
  { "app.shortcuts", { "F1", "<Control>question" } },
  { "window.close", { "<Control>w" } },
  { "win.new-job", { "<Control>n" } },
  { "win.open-file", { "<Control>o" } },
  { "win.export-job", { "<Control>s" } },
  { "win.new-revision", { "<Control><Shift>r" } },
  { "win.home", { "<Alt>Left", "<Alt>Home" } },
  { "win.page::job", { "<Alt>1" } },
  { "win.page::bench", { "<Alt>2" } },
  { "win.page::batch", { "<Alt>3" } },
  { "win.page::gauges", { "<Alt>4" } },
  { "win.page::report", { "<Alt>5" } },
  { "win.export", { "<Control>e" } },
  { "win.add-piece", { "<Control><Shift>n" } },
  { "win.previous-piece", { "<Control>Page_Up" } },
  { "win.next-piece", { "<Control>Page_Down" } },
};

/* Where the shop's book lies when nobody says otherwise. */
static char *
default_book_path (void)
{
  g_autofree char *folder = g_build_filename (g_get_user_data_dir (), "tenthmark", NULL);

  g_mkdir_with_parents (folder, 0700);
  return g_build_filename (folder, "shop.tmbook", NULL);
}

static TmWindow *
present_window (TmApplication *self)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (self));

  while (window != NULL && !TM_IS_WINDOW (window))
    window = gtk_window_get_transient_for (window);
  if (window == NULL)
    {
      if (self->book_path == NULL)
        self->book_path = default_book_path ();
      window = GTK_WINDOW (tm_window_new (GTK_APPLICATION (self), self->book_path));
    }
  gtk_window_present (window);
  return TM_WINDOW (window);
}

static void
tm_application_activate (GApplication *application)
{
  present_window (TM_APPLICATION (application));
}

static void
tm_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  TmWindow *window = present_window (TM_APPLICATION (application));
  GtkWindow *question = tm_dialog_over (GTK_WINDOW (window));
  g_autofree char *path = n_files > 0 ? g_file_get_path (files[0]) : NULL;

  if (path == NULL)
    return;
  /* What is typed in a dialog belongs to the job that is open. */
  if (question != NULL)
    {
      tm_window_show_error (GTK_WIDGET (window),
                            _ ("The file was not opened: finish what the dialog asks, then open it again."));
      gtk_window_present (question);
      return;
    }
  tm_window_open_file (window, path);
}

/* A start with a book of its own is a program of its own: it must not hand its job file to the one
 * that has the shop's book open. */
static int
tm_application_handle_local_options (GApplication *application, GVariantDict *options)
{
  TmApplication *self = TM_APPLICATION (application);
  const char *path = NULL;

  if (g_variant_dict_contains (options, "version"))
    {
      g_print ("tenthmark %s\n", TM_VERSION);
      return 0;
    }
  if (g_variant_dict_lookup (options, "book", "^&ay", &path))
    {
      g_autoptr (GFile) file = g_file_new_for_commandline_arg (path);

      g_free (self->book_path);
      self->book_path = g_file_get_path (file);
      g_application_set_flags (application, g_application_get_flags (application) | G_APPLICATION_NON_UNIQUE);
    }
  return -1;
}

static void
apply_style (const char *style)
{
  AdwColorScheme scheme = ADW_COLOR_SCHEME_DEFAULT;

  if (g_str_equal (style, "light"))
    scheme = ADW_COLOR_SCHEME_FORCE_LIGHT;
  else if (g_str_equal (style, "dark"))
    scheme = ADW_COLOR_SCHEME_FORCE_DARK;
  adw_style_manager_set_color_scheme (adw_style_manager_get_default (), scheme);
}

static void
style_cb (GSimpleAction *action, GVariant *state, gpointer data)
{
  const char *style = g_variant_get_string (state, NULL);

  tm_settings_set_text ("style", style);
  apply_style (style);
  g_simple_action_set_state (action, state);
}

static void
quit_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  GtkApplication *application = GTK_APPLICATION (data);
  /* A window takes others with it when it closes: each is kept until all have been asked. */
  GList *windows = g_list_copy_deep (gtk_application_get_windows (application),
                                     (GCopyFunc)(GCallback)g_object_ref, NULL);

  for (GList *l = windows; l != NULL; l = l->next)
    if (TM_IS_WINDOW (l->data))
      gtk_window_close (l->data);
  g_list_free_full (windows, g_object_unref);
}

static void
shortcuts_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  g_autoptr (GtkBuilder) builder = gtk_builder_new_from_resource ("/org/tenthmark/Tenthmark/shortcuts.ui");
  GtkWindow *window = GTK_WINDOW (gtk_builder_get_object (builder, "shortcuts"));

  gtk_window_set_transient_for (window, gtk_application_get_active_window (GTK_APPLICATION (data)));
  gtk_window_present (window);
}

static void
about_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  GtkWidget *about = g_object_new (
      ADW_TYPE_ABOUT_WINDOW, "transient-for", gtk_application_get_active_window (GTK_APPLICATION (data)),
      "destroy-with-parent", TRUE, "application-name", "Tenthmark", "application-icon",
      "org.tenthmark.Tenthmark", "version", TM_VERSION, "license-type", GTK_LICENSE_GPL_3_0, "developer-name",
      _ ("The Tenthmark contributors"), "comments",
      _ ("Measures each feature at the bench, says what the reading proves, records it, and writes the "
         "first-article report.\n\nThe figures help to plan and to judge; the drawing, the customer's "
         "requirements, local codes and a qualified engineer decide."),
      NULL);

  gtk_window_present (GTK_WINDOW (about));
}

static void
add_actions (TmApplication *self)
{
  static const GActionEntry entries[] = {
    { .name = "quit", .activate = quit_cb },
    { .name = "shortcuts", .activate = shortcuts_cb },
    { .name = "about", .activate = about_cb },
  };
  g_autofree char *style = tm_settings_get_text ("style");
  g_autoptr (GSimpleAction) action
      = g_simple_action_new_stateful ("style", G_VARIANT_TYPE_STRING, g_variant_new_string (style));

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_signal_connect (action, "change-state", G_CALLBACK (style_cb), self);
  g_action_map_add_action (G_ACTION_MAP (self), G_ACTION (action));
  apply_style (style);
}

static void
tm_application_startup (GApplication *application)
{
  G_APPLICATION_CLASS (tm_application_parent_class)->startup (application);
  g_set_application_name ("Tenthmark");
  gtk_window_set_default_icon_name ("org.tenthmark.Tenthmark");
  add_actions (TM_APPLICATION (application));
  for (guint i = 0; i < G_N_ELEMENTS (shortcuts); i++)
    gtk_application_set_accels_for_action (GTK_APPLICATION (application), shortcuts[i].action,
                                           shortcuts[i].keys);
}

static void
tm_application_finalize (GObject *object)
{
  TmApplication *self = TM_APPLICATION (object);

  g_free (self->book_path);
  G_OBJECT_CLASS (tm_application_parent_class)->finalize (object);
}

static void
tm_application_class_init (TmApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = tm_application_finalize;
  application_class->startup = tm_application_startup;
  application_class->activate = tm_application_activate;
  application_class->open = tm_application_open;
  application_class->handle_local_options = tm_application_handle_local_options;
}

static void
tm_application_init (TmApplication *self)
{
  static const GOptionEntry options[] = {
    { "book", 'b', 0, G_OPTION_ARG_FILENAME, NULL, N_ ("Keep the record in this book"), N_ ("PATH") },
    { "version", 0, 0, G_OPTION_ARG_NONE, NULL, N_ ("Say which version this is"), NULL },
    { NULL },
  };

  g_application_set_option_context_parameter_string (G_APPLICATION (self), _ ("[JOBFILE]"));
  g_application_set_option_context_summary (
      G_APPLICATION (self),
      _ ("Opens the shop's book; with a job file, adds it to the book and opens the job."));
  g_application_add_main_option_entries (G_APPLICATION (self), options);
}

TmApplication *
tm_application_new (void)
{
  return g_object_new (TM_TYPE_APPLICATION, "application-id", "org.tenthmark.Tenthmark", "flags",
                       G_APPLICATION_HANDLES_OPEN, "resource-base-path", "/org/tenthmark/Tenthmark", NULL);
}
