/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-welcome: what Home shows while the book is empty: a first job in three steps, and the sample
 * jobs.
 */

#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

#define TM_TYPE_WELCOME (tm_welcome_get_type ())
G_DECLARE_FINAL_TYPE (TmWelcome, tm_welcome, TM, WELCOME, AdwBin)

GtkWidget *tm_welcome_new (void);

G_END_DECLS
