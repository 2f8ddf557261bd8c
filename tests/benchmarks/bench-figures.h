/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-figures: a table of measured figures, each beside its bound, and what they need: phases run
 * in a process of their own, and the middle of several runs.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* No bound: the figure is only told. */
#define TM_NO_BOUND (-1.0)

typedef struct _TmFigures TmFigures;

TmFigures *tm_figures_new (const char *title);
/* Prints the table and frees it; 0 when every figure keeps its bound, else 1. */
int tm_figures_finish (TmFigures *figures);

/* Adds a row.  @bound: the largest value that is good enough; equal is not. */
void tm_figures_add (TmFigures *figures, const char *what, double value, const char *unit, double bound);

/* What a phase took. */
typedef struct {
  double seconds;  /* as the phase measured it */
  double cpu;      /* user and system time of the whole process, seconds */
  double peak_mib; /* largest resident memory of the process */
} TmPhase;

/* Runs @phase in a child of this process, so that its peak memory is its own.  @phase does its work
 * and returns the seconds that count.  Aborts when the child fails. */
typedef double (*TmPhaseFunc) (gpointer data);
TmPhase tm_phase_run (TmPhaseFunc phase, gpointer data);

/* Runs a program to its end with its output thrown away, and measures it from outside.  @exit_status
 * gets its exit status. */
TmPhase tm_phase_spawn (const char *const *argv, int *exit_status);

/* The value below which @percent of the values lie, by nearest rank; sorts @values (double). */
double tm_percentile (GArray *values, double percent);

/* Seconds of a steady clock. */
double tm_steady_seconds (void);

/* The largest resident memory of this process since it started, in MiB. */
double tm_peak_mib (void);

/* A fresh folder, removed with what is in it by tm_scratch_remove(). */
char *tm_scratch_new (void) G_GNUC_WARN_UNUSED_RESULT;
void tm_scratch_remove (char *folder);

G_END_DECLS
