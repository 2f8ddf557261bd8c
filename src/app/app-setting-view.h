/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-setting-view: helpers at the surface plate: a stack of gauge blocks, a dial gauge on its ring, a size
 * at another temperature.  Nothing of it is kept.
 */

#pragma once

#include <adwaita.h>

#include "app-dial-panel.h"
#include "app-document.h"
#include "app-stack-panel.h"
#include "app-warm-panel.h"

G_BEGIN_DECLS

#define TM_TYPE_SETTING_VIEW (tm_setting_view_get_type ())
G_DECLARE_FINAL_TYPE (TmSettingView, tm_setting_view, TM, SETTING_VIEW, GtkBox)

GtkWidget *tm_setting_view_new (void);

/* @document may be NULL. */
void tm_setting_view_set_document (TmSettingView *self, TmDocument *document);

/* Puts the focus on the size of the stack. */
void tm_setting_view_enter (TmSettingView *self);

/* The panels; for tests. */
TmStackPanel *tm_setting_view_stack (TmSettingView *self);
TmDialPanel *tm_setting_view_dial (TmSettingView *self);
TmWarmPanel *tm_setting_view_warm (TmSettingView *self);

G_END_DECLS
