/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-pictures: the pictures of one place: its readings on the band, the bore cut along its axis, the bore
 * seen along its axis, its sizes over the pieces of the batch.  One is shown; small buttons over it, and
 * Ctrl+1 to Ctrl+4, choose, and the choice is remembered.  A picture that a place has nothing for is not
 * offered.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-band-view.h"
#include "core-judge.h"
#include "plot-chart.h"

G_BEGIN_DECLS

typedef enum {
  TM_PICTURE_BAND,
  TM_PICTURE_SECTION,
  TM_PICTURE_CLOCK,
  TM_PICTURE_RUN,
  TM_N_PICTURES
} TmPictureKind;

#define TM_TYPE_PICTURES (tm_pictures_get_type ())
G_DECLARE_FINAL_TYPE (TmPictures, tm_pictures, TM, PICTURES, GtkBox)

GtkWidget *tm_pictures_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Takes ownership of @plot, for the band; NULL shows nothing. */
void tm_pictures_take_plot (TmPictures *self, TmBandPlot *plot);

/* Makes section and clock of the place that @judgement is of, and says beside them what its gauges cannot
 * see; neither is kept.  @judgement may be NULL: there is nothing to show. */
void tm_pictures_show (TmPictures *self, const TmJob *job, const TmJudgement *judgement);

/* The run of the place over the batch, with piece @focus marked (-1: none) and @says beside it; all but the
 * text borrowed until the next call of this or the next function. */
void tm_pictures_show_run (TmPictures *self, const TmBatch *batch, const TmChartPlot *plot, gint focus,
                           const char *says);
/* No run is shown.  @expected: one is being worked out, and its button stays or comes already: a button that
 * goes and comes lays the whole page out anew. */
void tm_pictures_drop_run (TmPictures *self, gboolean expected);

/* Chooses a picture, which is remembered; a place that has none of it shows the band. */
void tm_pictures_choose (TmPictures *self, TmPictureKind kind);

/* While @held the band shows and no choice is offered; what was chosen is not forgotten. */
void tm_pictures_hold_band (TmPictures *self, gboolean held);

/* The picture that is shown now. */
TmPictureKind tm_pictures_shown (TmPictures *self);

/* The widget of a picture; an image with its words as accessible name. */
GtkWidget *tm_pictures_get (TmPictures *self, TmPictureKind kind);

G_END_DECLS
