/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-event.h"

#include <glib/gi18n-lib.h>

TmEvent *
tm_edit_copy_event (const TmEvent *event)
{
  return g_memdup2 (event, sizeof *event);
}

TmUnit
tm_event_unit (const TmJob *job, const TmEvent *event)
{
  const TmFeature *feature = tm_job_find_feature (job, event->feature);

  return feature != NULL ? feature->unit : job->unit;
}

static gboolean
has_tool (const TmJob *job, const char *name)
{
  return *name == '\0' || tm_job_find_tool (job, name) != NULL;
}

static gboolean
is_some_offset (const TmJob *job, const TmEvent *event)
{
  TmQuantity amount;

  return tm_quantity_read (event->amount, tm_event_unit (job, event), &amount) == TM_READ_OK
         && amount.count != 0;
}

/* What is wrong with the event, in one line; NULL: nothing. */
static char *
find_problem (const TmJob *job, const TmEvent *event)
{
  if (*event->kind == '\0')
    return g_strdup (_ ("An event needs its kind: a new tool, an offset, a new lot or a note."));
  if (*event->before_piece != '\0' && tm_job_find_piece (job, event->before_piece) == NULL)
    return g_strdup_printf (
        _ ("Before piece “%s”: the job has no such piece; give the serial of one, or leave "
           "it empty for after the last."),
        event->before_piece);
  if (*event->feature != '\0' && tm_job_find_feature (job, event->feature) == NULL)
    return g_strdup_printf (_ ("Feature “%s”: the job has no such feature; choose one that it has."),
                            event->feature);
  if (!has_tool (job, event->tool))
    return g_strdup_printf (
        _ ("Tool “%s”: the job has no such tool; add it on the Gauges page, under Cutting "
           "tools."),
        event->tool);
  if (g_str_equal (event->kind, "offset") && !is_some_offset (job, event))
    return g_strdup_printf (_ ("Change of size “%s”: an offset needs a number other than zero, like -0.005."),
                            event->amount);
  return NULL;
}

static void
free_event (gpointer row)
{
  tm_event_free (row);
}

gboolean
tm_edit_put_event (TmDocument *document, TmEvent *old, TmEvent *event, GError **error)
{
  g_autofree char *problem = find_problem (tm_document_job (document), event);

  if (problem != NULL)
    {
      tm_event_free (event);
      g_set_error_literal (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED, problem);
      return FALSE;
    }
  return tm_edit_put_row (document, tm_document_job (document)->events, old, event, sizeof *event, free_event,
                          error);
}

gboolean
tm_edit_remove_event (TmDocument *document, TmEvent *event, GError **error)
{
  return tm_edit_remove_row (document, tm_document_job (document)->events, event, free_event, error);
}
