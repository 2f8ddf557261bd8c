/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-drawing-states.h"

#include "app-batch-portion.h"

/* Microseconds of judging in one idle turn: well within a frame. */
#define TURN_TIME 3000

struct _TmDrawingStates {
  void (*changed) (gpointer data);
  gpointer data;
  TmDocument *document;
  const TmPiece *piece; /* that the verdicts are of; only compared */
  GHashTable *known;    /* TmFeature -> GArray of TmDrawingState: the worst, then each place */
  GQueue asked;         /* TmFeature */
  guint idle_id;
};

static void
forget (TmDrawingStates *states)
{
  g_hash_table_remove_all (states->known);
  g_queue_clear (&states->asked);
  g_clear_handle_id (&states->idle_id, g_source_remove);
}

static TmDrawingState
judge_place (TmDrawingStates *states, const TmFeature *feature, guint place)
{
  g_auto (TmJudgement) judgement = { 0 };
  TmGridCell cell;

  tm_judge (tm_document_job (states->document), states->piece, feature, place, &judgement);
  cell = tm_grid_cell (&judgement, TRUE);
  return (TmDrawingState) { judgement.verdict, cell.point == TM_POINT_LEFT    ? TM_POINT_DOWN
                                               : cell.point == TM_POINT_RIGHT ? TM_POINT_UP
                                                                              : TM_POINT_NONE };
}

static void
judge_feature (TmDrawingStates *states, const TmFeature *feature)
{
  GArray *kept = g_array_sized_new (FALSE, FALSE, sizeof (TmDrawingState), feature->places + 1);
  TmDrawingState *of;

  for (guint i = 0; i <= feature->places; i++)
    g_array_append_val (kept, ((TmDrawingState) { TM_VERDICT_NOT_MEASURED, TM_POINT_NONE }));
  of = (TmDrawingState *)(gpointer)kept->data;
  for (guint i = 1; i <= feature->places && states->piece != NULL; i++)
    {
      of[i] = judge_place (states, feature, i);
      if (i == 1
          || tm_batch_rank_verdict ((guint8)of[i].verdict) > tm_batch_rank_verdict ((guint8)of[0].verdict))
        of[0] = of[i];
    }
  g_hash_table_insert (states->known, (gpointer)feature, kept);
}

static gboolean
judge_some_cb (gpointer data)
{
  TmDrawingStates *states = data;
  gint64 end = g_get_monotonic_time () + TURN_TIME;

  while (!g_queue_is_empty (&states->asked) && g_get_monotonic_time () < end)
    judge_feature (states, g_queue_pop_head (&states->asked));
  if (!g_queue_is_empty (&states->asked))
    return G_SOURCE_CONTINUE;
  states->idle_id = 0;
  states->changed (states->data);
  return G_SOURCE_REMOVE;
}

static void
ask (TmDrawingStates *states, const TmFeature *feature)
{
  if (g_queue_find (&states->asked, feature) == NULL)
    g_queue_push_tail (&states->asked, (gpointer)feature);
  if (states->idle_id == 0)
    states->idle_id = g_idle_add_full (G_PRIORITY_LOW, judge_some_cb, states, NULL);
}

/* What was known of a feature is judged again at once: its balloon does not blink. */
static void
touch (TmDrawingStates *states, const TmFeature *feature)
{
  if (g_hash_table_contains (states->known, feature))
    judge_feature (states, feature);
}

static void
recorded_cb (TmDocument *document, const TmEntryRow *row, TmDrawingStates *states)
{
  const TmJob *job = tm_document_job (document);

  touch (states, row->feature);
  /* A size gives its bonus to the positions that name it. */
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *other = g_ptr_array_index (job->features, i);

      if (g_str_equal (other->size_feature, row->feature->balloon))
        touch (states, other);
    }
  states->changed (states->data);
}

static const TmPiece *
find_piece (TmDrawingStates *states)
{
  return tm_bench_spot (tm_document_bench (states->document))->piece;
}

static void
moved_cb (TmDocument *document, TmDrawingStates *states)
{
  if (find_piece (states) == states->piece)
    return;
  states->piece = find_piece (states);
  forget (states);
  states->changed (states->data);
}

static void
definitions_changed_cb (TmDocument *document, TmDrawingStates *states)
{
  states->piece = find_piece (states);
  forget (states);
  states->changed (states->data);
}

TmDrawingStates *
tm_drawing_states_new (void (*changed) (gpointer data), gpointer data)
{
  TmDrawingStates *states = g_new0 (TmDrawingStates, 1);

  states->changed = changed;
  states->data = data;
  states->known = g_hash_table_new_full (NULL, NULL, NULL, (GDestroyNotify)g_array_unref);
  g_queue_init (&states->asked);
  return states;
}

void
tm_drawing_states_set_document (TmDrawingStates *states, TmDocument *document)
{
  g_return_if_fail (states != NULL);

  forget (states);
  if (states->document != NULL)
    g_signal_handlers_disconnect_by_data (states->document, states);
  g_set_object (&states->document, document);
  states->piece = NULL;
  if (document == NULL)
    return;
  states->piece = find_piece (states);
  g_signal_connect (document, "recorded", G_CALLBACK (recorded_cb), states);
  g_signal_connect (document, "moved", G_CALLBACK (moved_cb), states);
  g_signal_connect (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), states);
}

void
tm_drawing_states_free (TmDrawingStates *states)
{
  g_return_if_fail (states != NULL);

  tm_drawing_states_set_document (states, NULL);
  g_hash_table_unref (states->known);
  g_free (states);
}

gboolean
tm_drawing_states_get (TmDrawingStates *states, const TmFeature *feature, guint place, TmDrawingState *state)
{
  const GArray *of;

  g_return_val_if_fail (states != NULL && states->document != NULL, FALSE);
  g_return_val_if_fail (feature != NULL, FALSE);

  /* Of a feature that has just changed it may be known of fewer places, or asked of more, than there are. */
  of = g_hash_table_lookup (states->known, feature);
  *state = of != NULL ? g_array_index (of, TmDrawingState, MIN (place, of->len - 1))
                      : (TmDrawingState) { TM_VERDICT_NOT_MEASURED, TM_POINT_NONE };
  if (of == NULL)
    ask (states, feature);
  return of != NULL;
}

gboolean
tm_drawing_states_are_known (TmDrawingStates *states)
{
  g_return_val_if_fail (states != NULL, FALSE);

  return g_queue_is_empty (&states->asked);
}
