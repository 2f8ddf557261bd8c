/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-feature-drop: choosing one of the features that are judged by a number.
 */

#pragma once

#include <gtk/gtk.h>

#include "core-model.h"

G_BEGIN_DECLS

/* @name: what a screen reader calls it. */
GtkDropDown *tm_feature_drop_new (const char *name) G_GNUC_WARN_UNUSED_RESULT;

/* The job's features; the one called @balloon is chosen if it is there, else the first. */
void tm_feature_drop_fill (GtkDropDown *drop, const TmJob *job, const char *balloon);

/* What is chosen, or NULL. */
TmFeature *tm_feature_drop_get (GtkDropDown *drop, const TmJob *job);

G_END_DECLS
