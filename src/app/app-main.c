/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-main: where the program with a window starts.
 */

#include <glib/gi18n-lib.h>
#include <locale.h>

#include "app-application.h"
#include "app-resources.h"
#include "core-numerics.h"
#include "plot-drawing-check.h"

int
main (int argc, char *argv[])
{
  g_autoptr (TmApplication) application = NULL;
  int status;

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, TM_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  /* What GTK reads from the .ui files is looked up in the default domain. */
  textdomain (GETTEXT_PACKAGE);
  if (tm_drawing_check_main (argc, argv, &status))
    return status;
  tm_numerics_init ();
  g_resources_register (tm_resources_get_resource ());

  application = tm_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
