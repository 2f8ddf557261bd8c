/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-band-strip: the small strip of the feature list: band, guard and where the readings lie.
 */

#pragma once

#include <gtk/gtk.h>

#include "core-judge.h"

G_BEGIN_DECLS

#define TM_TYPE_BAND_STRIP (tm_band_strip_get_type ())
G_DECLARE_FINAL_TYPE (TmBandStrip, tm_band_strip, TM, BAND_STRIP, GtkWidget)

GtkWidget *tm_band_strip_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* @judgement is borrowed and must stay until another, or NULL, is set. */
void tm_band_strip_set_judgement (TmBandStrip *self, const TmJudgement *judgement);

G_END_DECLS
