/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-bench-page-private: what the page's two files share; tests look in here too.
 */

#pragma once

#include "app-batch-work.h"
#include "app-bench-page.h"
#include "app-cut-bar.h"
#include "app-drawing-view.h"
#include "app-feature-list.h"
#include "app-fit-view.h"
#include "app-pictures.h"
#include "app-pin-bar.h"
#include "app-reading-entry.h"
#include "app-station-chips.h"
#include "app-verdict-panel.h"

G_BEGIN_DECLS

struct _TmBenchPage {
  GtkBox parent_instance;

  TmDocument *document;
  TmSpot shown; /* the spot on screen; its pointers are only compared */
  TmJudgement judgement;
  gboolean has_judgement;
  TmQuantity drawn;  /* the reading in the entry that the band picture shows */
  gboolean planning; /* a cut, not a reading, is in hand */
  guint focus_id;

  GtkStack *stack;  /* "empty", "bench" */
  GtkWidget *empty; /* AdwStatusPage */
  GtkWidget *empty_button;
  TmFeatureList *list;
  GtkLabel *callout;
  GtkLabel *name;
  GtkLabel *limits;
  GtkLabel *on_drawing;
  TmStationChips *chips;
  TmReadingEntry *entry;
  TmPinBar *pin_bar; /* shown while pins are tried */
  TmCutBar *cut_bar; /* in place of chips and entry while a cut is planned */
  TmPictures *pictures;
  TmVerdictPanel *panel;
  GtkWidget *menu; /* GtkMenuButton */
  GtkStack *work;  /* beside the list: "measure", "fit" */
  TmFitView *fit;
  GtkWidget *fit_button;

  /* The drawing, in the place of the pictures. */
  gboolean with_drawing; /* the person asked for it */
  GtkWidget *drawing_pane;
  TmDrawingView *drawing;
  GtkLabel *drawing_caption;
  GtkWidget *drawing_button;

  /* The run of the feature over the batch, where it has one. */
  guint run_ask_id;             /* 0: nothing waits to be worked out */
  GCancellable *run_working;    /* NULL: nothing is being worked out */
  TmBatchAnswer *run;           /* NULL: none */
  const TmFeature *run_feature; /* what @run or @run_working is about; only compared */
  guint run_place;
  GQueue run_new;     /* just recorded: what of it violates a rule is still to be said, app-bench-run.c */
  GQueue run_said;    /* violations in @run_line, the newest last */
  guint run_not_said; /* for which it had no room */
  GtkLabel *run_line; /* a violation, said there and then */
};

/* app-bench-actions.c: "bench." actions, their keys, and the menu of the measuring order. */
void tm_bench_page_install_actions (GtkWidgetClass *klass);
void tm_bench_page_add_controllers (TmBenchPage *self);
GtkWidget *tm_bench_page_build_menu (TmBenchPage *self);

/* The menu button says who measures, where the job knows people. */
void tm_bench_page_show_person (TmBenchPage *self);

/* Enter, the Record button, pass and fail. */
void tm_bench_page_submit (TmBenchPage *self);

/* app-bench-pins.c: trying pins. */
void tm_bench_page_toggle_pins (TmBenchPage *self);
void tm_bench_page_submit_pin (TmBenchPage *self, const char *trial);
void tm_bench_page_connect_pins (TmBenchPage *self);
/* A feature that is assigned to pins begins with them; the bar shows while the entry takes pins. */
void tm_bench_page_begin_pins (TmBenchPage *self);
void tm_bench_page_show_pins (TmBenchPage *self);

/* app-bench-page.c: shown anew, as what is typed or planned now asks. */
void tm_bench_page_show_plot (TmBenchPage *self);
void tm_bench_page_show_limits (TmBenchPage *self);
void tm_bench_page_show_panel (TmBenchPage *self);
/* The cursor to where the hand types now. */
void tm_bench_page_focus (TmBenchPage *self);

/* app-bench-cut.c: planning and recording cuts. */
void tm_bench_page_toggle_cut (TmBenchPage *self);
void tm_bench_page_set_planning (TmBenchPage *self, gboolean planning);
void tm_bench_page_submit_cut (TmBenchPage *self);
void tm_bench_page_connect_cut (TmBenchPage *self);
/* The job is closed: the next one is measured first. */
void tm_bench_page_leave_cut (TmBenchPage *self);
/* Plans anew for the present place while a cut is planned; where none can be, readings are taken again. */
void tm_bench_page_show_cut (TmBenchPage *self);
/* Points out a cut that @reading has shown to be unlike the others. */
void tm_bench_page_say_unlike (TmBenchPage *self, const TmReading *reading);

/* app-bench-fit.c: fit and press in the place of the reading entry. */
gboolean tm_bench_page_is_fitting (TmBenchPage *self);
void tm_bench_page_toggle_fit (TmBenchPage *self);
/* Offers it where the feature at hand takes a mate, and brings it up to date while it is in sight. */
void tm_bench_page_show_fit (TmBenchPage *self);
/* The job is closed. */
void tm_bench_page_leave_fit (TmBenchPage *self);
GtkWidget *tm_bench_page_build_fit_button (TmBenchPage *self);
/* @measure and the view of the fit, one of which is in sight. */
GtkWidget *tm_bench_page_build_work (TmBenchPage *self, GtkWidget *measure);

/* app-bench-drawing.c: the drawing around the balloon of the feature at hand. */
void tm_bench_page_toggle_drawing (TmBenchPage *self);
/* Pictures or drawing, as is asked for; brought up to date while it is in sight. */
void tm_bench_page_show_drawing (TmBenchPage *self);
GtkWidget *tm_bench_page_build_drawing (TmBenchPage *self);
GtkWidget *tm_bench_page_build_drawing_button (TmBenchPage *self);

/* app-bench-run.c: the run of the feature at hand over the batch, worked out off the main loop. */
/* Another piece or place may be at hand. */
void tm_bench_page_show_run (TmBenchPage *self);
/* A reading, trial or cut was recorded, corrected or withdrawn. */
void tm_bench_page_run_recorded (TmBenchPage *self, const TmEntryRow *row);
/* What it is made of has changed: it is worked out anew when it is next shown. */
void tm_bench_page_forget_run (TmBenchPage *self);
/* The job is closed. */
void tm_bench_page_leave_run (TmBenchPage *self);
GtkWidget *tm_bench_page_build_run_line (TmBenchPage *self);

/* Asks why an overdue gauge is used (@about: the refusal), then calls @go_on again. */
void tm_bench_page_ask_overdue (TmBenchPage *self, const char *about, void (*go_on) (TmBenchPage *self));

G_END_DECLS
