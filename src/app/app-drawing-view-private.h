/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-view-private: what the files of the view share; tests look in here too.
 */

#pragma once

#include "app-drawing-frame.h"
#include "app-drawing-sheet.h"
#include "app-drawing-stamp.h"
#include "app-drawing-states.h"
#include "app-drawing-view.h"
#include "plot-balloon.h"

G_BEGIN_DECLS

/* A balloon on the drawing shown. */
typedef struct {
  const char
      *balloon; /* of its feature, a text of the job's: the feature itself may go before this is told */
  guint place;
  char *text;
  TmMarkSpot spot;
  TmDrawingStamp stamp;
} TmDrawingItem;

/* What one change of a balloon is taken back to. */
typedef struct {
  char *drawing, *balloon;
  guint place;
  gboolean was_there;
  TmMarkSpot spot;
} TmDrawingUndo;

struct _TmDrawingView {
  GtkWidget parent_instance;

  TmDocument *document;
  gboolean for_change;
  TmDrawingStates *states;
  TmDrawingSheet *sheet;
  TmDrawingFrame frame;
  char *drawing;
  char *chosen;
  guint place; /* of the chosen balloon */
  char *said;
  gboolean closer; /* brought to the middle once the page is open and the view has a size */
  gboolean reveals;
  gboolean whole; /* the person asked to see all of it: it is not brought closer */

  GArray *items;    /* TmDrawingItem */
  GArray *balloons; /* TmBalloon, as drawn: of the items, in their order */
  GArray *order;    /* guint: indices of items, what lies on top last */

  /* A balloon that is being moved: not in the job yet. */
  gboolean moving;
  TmMarkSpot moved;
  GArray *undo; /* TmDrawingUndo, the last one is taken back first */
  double new_x, new_y;

  guint zoomed_id; /* the scale is yet to be told */

  /* The pointer. */
  int held; /* index of the item under the button; -1: the paper */
  TmBalloonPart held_part;
  TmMarkSpot held_spot;
  double drag_x, drag_y; /* how far it was dragged before */
  double pointer_x, pointer_y;
  GtkGesture *zooming; /* borrowed: the two fingers */
  double pinch;
  gboolean pinched; /* since the first finger came down: that is no click and no drag */
};

/* -------- app-drawing-view.c -------- */

enum {
  TM_DRAWING_CHOSEN,
  TM_DRAWING_TURNED,
  TM_DRAWING_ZOOMED,
  TM_DRAWING_JUMP,
  TM_DRAWING_ASKS_FEATURE,
  TM_DRAWING_N_SIGNALS
};
void tm_drawing_view_emit (TmDrawingView *self, guint signal);

/* Index of the chosen balloon on the drawing shown; -1: it has none. */
int tm_drawing_view_chosen_item (TmDrawingView *self);
void tm_drawing_view_choose_item (TmDrawingView *self, int item);
/* NULL when it has just been taken out. */
const TmFeature *tm_drawing_view_feature_of (TmDrawingView *self, const TmDrawingItem *item);
/* The frame, or what is chosen, is another one: shown and said anew. */
void tm_drawing_view_show (TmDrawingView *self);
void tm_drawing_view_moved_frame (TmDrawingView *self, double scale_before);

/* -------- app-drawing-view-draw.c -------- */

/* Works out where the balloons are in the view as it is now. */
void tm_drawing_view_lay_out (TmDrawingView *self);
int tm_drawing_view_item_at (TmDrawingView *self, double x, double y, TmBalloonPart *part);
void tm_drawing_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot);

/* -------- app-drawing-view-edit.c -------- */

/* While it is moved the balloon stands at @spot; settling puts it into the job. */
void tm_drawing_view_move (TmDrawingView *self, const TmMarkSpot *spot);
void tm_drawing_view_settle (TmDrawingView *self);
void tm_drawing_view_take_off (TmDrawingView *self);
/* Whether what is chosen, a feature or one place of it, has no balloon of its own yet on any drawing. */
gboolean tm_drawing_view_is_to_place (TmDrawingView *self);
/* Its balloon with the tip here; then chooses the next that has none: of a place the next place. */
gboolean tm_drawing_view_place_chosen (TmDrawingView *self, double share_x, double share_y);
/* By so many features of the job's list. */
void tm_drawing_view_step (TmDrawingView *self, int by);
void tm_drawing_view_clear_undo (TmDrawingView *self);

/* -------- app-drawing-view-keys.c, app-drawing-view-pointer.c -------- */

gboolean tm_drawing_view_key (TmDrawingView *self, guint keyval, GdkModifierType state);
void tm_drawing_view_click (TmDrawingView *self, int n_press, double x, double y, GdkModifierType state);
void tm_drawing_view_add_keys (TmDrawingView *self);
void tm_drawing_view_add_pointer (TmDrawingView *self);

G_END_DECLS
