/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gap.h"

#include "app-gauges-page.h"
#include "app-job-page.h"
#include "app-method-view.h"
#include "app-window-private.h"

static TmJobPage *
show_job_page (TmWindow *window)
{
  tm_window_show_page (window, "job");
  return TM_JOB_PAGE (gtk_stack_get_child_by_name (window->pages, "job"));
}

/* The register, with the gauge of that name chosen; a method of that name where it is none. */
static void
show_gauge (TmWindow *window, const char *name)
{
  const TmJob *job = tm_document_job (window->document);
  TmGaugesPage *page;

  tm_window_show_page (window, "gauges");
  page = TM_GAUGES_PAGE (gtk_stack_get_child_by_name (window->pages, "gauges"));
  if (tm_job_find_gauge (job, name) == NULL && tm_job_find_method (job, name) != NULL)
    {
      tm_gauges_page_show_view (page, "methods");
      tm_method_view_choose (TM_METHOD_VIEW (tm_gauges_page_view (page, "methods")), name, NULL);
    }
  else
    tm_gauges_page_show_gauge (page, name);
}

/* The bench, at the place of the gap, with an action of the page when there is one for it. */
static void
show_bench (TmWindow *window, const TmGap *gap, const char *action)
{
  TmPiece *piece = (TmPiece *)gap->piece;
  TmFeature *feature = (TmFeature *)gap->feature;
  const char *station = gap->station != NULL ? gap->station : "";

  if (feature != NULL && *station == '\0' && feature->stations->len > 0)
    station = g_ptr_array_index (feature->stations, 0);
  if (piece != NULL && feature != NULL)
    tm_document_go (window->document, piece, feature, MAX (gap->place, 1), station);
  tm_window_show_page (window, "bench");
  if (action != NULL)
    gtk_widget_activate_action (gtk_stack_get_visible_child (window->pages), action, NULL);
}

/* The list has changed where the row is gone: then it opens as a whole. */
static const TmSupply *
find_supply (TmWindow *window, const TmGap *gap)
{
  const GPtrArray *supplies = tm_document_job (window->document)->supplies;

  return gap->kind != TM_GAP_NO_MATERIAL && gap->row < supplies->len ? g_ptr_array_index (supplies, gap->row)
                                                                     : NULL;
}

static const TmSubPart *
find_sub_part (TmWindow *window, const TmGap *gap)
{
  const GPtrArray *parts = tm_document_job (window->document)->sub_parts;

  return gap->kind == TM_GAP_SUB_PART_REPORT && gap->row < parts->len ? g_ptr_array_index (parts, gap->row)
                                                                      : NULL;
}

void
tm_gap_go (TmWindow *window, const TmGap *gap)
{
  g_return_if_fail (TM_IS_WINDOW (window));
  g_return_if_fail (window->document != NULL);

  switch (gap->kind)
    {
    case TM_GAP_NO_FEATURES:
      tm_job_page_focus_callout (show_job_page (window));
      break;
    case TM_GAP_NO_PIECE:
      tm_job_page_focus_piece (show_job_page (window));
      break;
    case TM_GAP_FACT_MISSING:
    case TM_GAP_PARTIAL_REASON:
      tm_job_page_focus_fact (show_job_page (window), gap->field);
      break;
    case TM_GAP_DRAWING_REVISION:
      tm_job_page_focus_fact (show_job_page (window), gap->field);
      break;
    case TM_GAP_NO_DRAWING:
    case TM_GAP_NO_BALLOON:
      tm_job_page_show_drawing (show_job_page (window), gap->feature != NULL ? gap->feature->balloon : NULL);
      break;
    case TM_GAP_NO_MATERIAL:
    case TM_GAP_SUPPLY_PROOF:
    case TM_GAP_SUPPLY_APPROVAL:
      tm_job_page_show_supply (show_job_page (window), find_supply (window, gap));
      break;
    case TM_GAP_NO_SUB_PARTS:
    case TM_GAP_SUB_PART_REPORT:
      tm_job_page_show_sub_part (show_job_page (window), find_sub_part (window, gap));
      break;
    case TM_GAP_NO_METHOD:
      tm_job_page_change_feature (show_job_page (window), gap->feature, TM_FEATURE_ROW_METHOD);
      break;
    case TM_GAP_NO_TOOLING:
      tm_job_page_change_feature (show_job_page (window), gap->feature, TM_FEATURE_ROW_TOOLING);
      break;
    case TM_GAP_GAUGE_UNKNOWN:
    case TM_GAP_GAUGE_OVERDUE:
    case TM_GAP_ASSUMED:
      show_gauge (window, gap->field != NULL ? gap->field : "");
      break;
    case TM_GAP_NO_REFERENCE:
    case TM_GAP_NO_DISPOSITION:
    case TM_GAP_REWORK_OPEN:
      show_bench (window, gap, "bench.nonconformance");
      break;
    case TM_GAP_FIELD_MISSING:
      tm_job_page_show_field (show_job_page (window), gap->field);
      break;
    case TM_GAP_SAME_IDENTIFIER:
      tm_job_page_focus_fact (show_job_page (window), "report_identifier");
      break;
    case TM_GAP_UNSIGNED:
    case TM_GAP_SUPERSEDED:
      tm_window_show_page (window, "report");
      gtk_widget_activate_action (gtk_stack_get_visible_child (window->pages), "report.sign", NULL);
      break;
    case TM_GAP_NOT_MEASURED:
    case TM_GAP_STATION_MISSING:
    case TM_GAP_TOO_CLOSE:
    case TM_GAP_PINS_CONTRADICT:
    case TM_GAP_METHODS_DISAGREE:
    case TM_N_GAPS:
    default:
      show_bench (window, gap, NULL);
      break;
    }
}
