/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * start-ours: the program as app-main starts it, but it says when it is first drawn.
 */

#include <glib/gi18n-lib.h>
#include <locale.h>

#include "app-application.h"
#include "app-resources.h"
#include "first-frame.h"

int
main (int argc, char *argv[])
{
  g_autoptr (TmApplication) application = NULL;

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, TM_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  g_resources_register (tm_resources_get_resource ());

  application = tm_application_new ();
  tell_first_frame (GTK_APPLICATION (application));
  return g_application_run (G_APPLICATION (application), argc, argv);
}
