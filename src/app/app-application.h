/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-application: the program: its command line, its shortcuts, light or dark.
 *
 * tenthmark [--book PATH] [JOBFILE]
 */

#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

#define TM_TYPE_APPLICATION (tm_application_get_type ())
G_DECLARE_FINAL_TYPE (TmApplication, tm_application, TM, APPLICATION, AdwApplication)

TmApplication *tm_application_new (void);

G_END_DECLS
