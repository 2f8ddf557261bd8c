/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-gauge-words.h"

#include <glib/gi18n-lib.h>

#include "core-gauge.h"
#include "report-gaps.h"

/* Whether every counting reading by @gauge fell into its calibration or states why not. */
static gboolean
was_covered (const TmReportContent *content, const TmGauge *gauge)
{
  for (guint i = 0; i < content->gaps->len; i++)
    {
      const TmGap *gap = g_ptr_array_index (content->gaps, i);
      if (gap->kind == TM_GAP_GAUGE_OVERDUE && g_strcmp0 (gap->field, gauge->tag) == 0)
        return FALSE;
    }
  return TRUE;
}

/* What the readings with an overdue gauge state, each reason once. */
typedef struct {
  const TmJob *job;
  const TmGauge *gauge;
  GPtrArray *reasons; /* const char * */
} Overdue;

static void
note_reason (Overdue *overdue, const TmEntryRow *row, const char *reason)
{
  if (*reason == '\0' || !tm_row_counts (row)
      || tm_gauge_due (overdue->job, overdue->gauge, row->at) != TM_DUE_OVERDUE
      || g_ptr_array_find_with_equal_func (overdue->reasons, reason, g_str_equal, NULL))
    return;
  g_ptr_array_add (overdue->reasons, (gpointer)reason);
}

static void
note_reading_cb (const char *tag, const TmReading *reading, gpointer data)
{
  Overdue *overdue = data;

  if (g_str_equal (tag, overdue->gauge->tag))
    note_reason (overdue, &reading->row, reading->overdue_reason);
}

static GPtrArray *
find_reasons (const TmJob *job, const TmGauge *gauge)
{
  Overdue overdue = { job, gauge, g_ptr_array_new () };

  for (guint i = 0; i < job->readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (job->readings, i);
      if (*reading->overdue_reason != '\0')
        tm_report_each_tag (job, reading, note_reading_cb, &overdue);
    }
  for (guint i = 0; i < job->pin_trials->len; i++)
    {
      const TmPinTrial *trial = g_ptr_array_index (job->pin_trials, i);
      if (g_str_equal (trial->gauge, gauge->tag))
        note_reason (&overdue, &trial->row, trial->overdue_reason);
    }
  return overdue.reasons;
}

/* "overdue: the other one is at the laboratory". */
static char *
describe_overdue (const GPtrArray *reasons)
{
  g_autoptr (GString) list = g_string_new (NULL);

  for (guint i = 0; i < reasons->len; i++)
    g_string_append_printf (list, "%s%s", i > 0 ? "; " : "", (const char *)g_ptr_array_index (reasons, i));
  return g_strdup_printf (_ ("overdue: %s"), list->str);
}

char *
tm_report_gauge_cover (const TmReportContent *content, const TmGauge *gauge)
{
  g_autoptr (GPtrArray) reasons = find_reasons (content->job, gauge);

  if (!was_covered (content, gauge))
    return g_strdup (_ ("no"));
  if (reasons->len > 0)
    return describe_overdue (reasons);
  /* No date and no gap: it only ever carried sizes to a gauge that has one, or took no reading that
   * counts. */
  return g_strdup (*tm_gauge_due_date (content->job, gauge, NULL) == '\0' ? _ ("needs none: read by another")
                                                                          : _ ("yes"));
}
