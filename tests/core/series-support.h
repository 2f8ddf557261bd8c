/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * series-support: small batches of invented pieces for the tests of series, holds and batches.
 */

#pragma once

#include <math.h>

#include "core-batch.h"
#include "judge-support.h"

#define MICRON 1e6

/* A job whose decision is the simple rule with no method asked: limits decide plainly. */
static inline TmJob *
make_batch_job (guint n_pieces)
{
  TmJob *job = tm_job_new ();

  job->unit = TM_UNIT_MM;
  for (guint i = 1; i <= n_pieces; i++)
    {
      TmPiece *piece = tm_piece_new ();
      g_autofree char *serial = g_strdup_printf ("P%u", i);

      piece->serial = tm_job_intern (job, serial);
      g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
    }
  return job;
}

/* Reads @microns above 25 mm on piece @index, from 0. */
static inline void
read_piece (TmJob *job, TmFeature *feature, guint index, const char *station, double microns)
{
  TmReading *reading = new_reading (job, feature, station, "");

  reading->row.piece = g_ptr_array_index (job->pieces, index);
  reading->value = tm_quantity_new (25000000000 + (gint64)llround (microns * MICRON), TM_UNIT_MM, 6);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
}

static inline TmEvent *
add_event (TmJob *job, const char *kind, const char *before, const char *feature, const char *tool)
{
  TmEvent *event = tm_event_new ();

  event->kind = tm_job_intern (job, kind);
  event->before_piece = tm_job_intern (job, before);
  event->feature = tm_job_intern (job, feature);
  event->tool = tm_job_intern (job, tool);
  tm_job_add_event (job, event);
  return event;
}

/* One bore, 25 mm ± 0.02, with a reading on each piece where @microns is a number. */
static inline TmJob *
make_bore_job (const double *microns, guint n, TmFeature **feature)
{
  TmJob *job = make_batch_job (n);

  *feature = add_feature (job, "1", TM_KIND_BORE, "24.98", "25.02", "");
  for (guint i = 0; i < n; i++)
    if (!isnan (microns[i]))
      read_piece (job, *feature, i, "", microns[i]);
  return job;
}
