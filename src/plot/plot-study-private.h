/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-study-private: what the pictures of a study hold between their making and their drawing.
 */

#pragma once

#include "plot-axis.h"
#include "plot-study.h"

G_BEGIN_DECLS

#define TM_N_STUDY_PARTS 5

/* Six standard deviations, in the study's unit; NAN: not known. */
typedef struct {
  const char *label; /* translated */
  double size, low, high;
  gboolean of_pieces; /* not the gauge's doing */
} TmStudyBar;

struct _TmStudyPlot {
  TmUnit unit;
  TmStudyStatus status;
  TmStudyBar bars[TM_N_STUDY_PARTS];
  double band; /* width; 0: none */
  double percent_band;
  guint pieces, people, repeats;
  double *away; /* each reading less the mean of its piece, [(piece · people + person) · repeats + trial];
                 * NULL unless the study is complete */
  double reach; /* the largest of them, either side; 0: none */
  GPtrArray *piece_names, *people_names; /* char * */
};

G_END_DECLS
