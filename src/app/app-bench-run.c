/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-bench-run: the run of the feature at hand over the pieces of the batch, with its forecast, while it is
 * measured; a rule that a reading breaks is said there and then.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-batch-words.h"
#include "app-bench-page-private.h"

/* Fewer pieces than this make no run to look at. */
#define PIECES_LEAST 10

/* Violations of readings that followed each other at once. */
#define MOST_SAID 3

/* What was just recorded is drawn first. */
#define ASK_AFTER_MS 40

/* -------- What is said -------- */

static gint
find_piece (const TmBatch *batch, const char *serial)
{
  for (guint i = 0; i < batch->series.n_points; i++)
    if (g_str_equal (batch->series.points[i].piece->serial, serial))
      return (gint)i;
  return -1;
}

/* "Piece 030: beyond 3 sigma; scatter: beyond 3 sigma", or NULL: no rule speaks of it. */
static char *
describe_violation (const TmBatch *batch, const char *serial)
{
  const gint piece = find_piece (batch, serial);
  g_autofree char *hits = NULL;

  if (piece < 0 || isnan (batch->series.points[piece].mean))
    return NULL;
  hits = tm_words_batch_hits (batch, (guint)piece);
  if (*hits == '\0')
    return NULL;
  return g_strdup_printf (_ ("Piece %s, feature %s: %s. Look at the run before the next piece is made."),
                          serial, batch->series.feature->balloon, hits);
}

/* "Drifting larger · about 18 more pieces (13 to 27)" */
static char *
describe_run (const TmBatch *batch)
{
  g_autofree char *headline = tm_words_batch_headline (batch);
  guint n, low, high;

  if (!isfinite (batch->pieces_left) || !isfinite (batch->pieces_left_low))
    return g_steal_pointer (&headline);
  n = (guint)CLAMP (batch->pieces_left, 0, 999999);
  low = (guint)CLAMP (batch->pieces_left_low, 0, 999999);
  if (!isfinite (batch->pieces_left_high))
    return g_strdup_printf (
        ngettext ("%s · about %u more piece (%u at least)", "%s · about %u more pieces (%u at least)", n),
        headline, n, low);
  high = (guint)CLAMP (ceil (batch->pieces_left_high), 0, 999999);
  return g_strdup_printf (
      ngettext ("%s · about %u more piece (%u to %u)", "%s · about %u more pieces (%u to %u)", n), headline,
      n, low, high);
}

static void
clear_line (TmBenchPage *self)
{
  g_queue_clear_full (&self->run_said, g_free);
  self->run_not_said = 0;
  gtk_label_set_text (self->run_line, "");
  gtk_widget_set_visible (GTK_WIDGET (self->run_line), FALSE);
}

static void
show_said (TmBenchPage *self)
{
  g_autoptr (GString) all = g_string_new (NULL);

  if (self->run_not_said > 0)
    g_string_append_printf (all,
                            ngettext ("%u reading before these broke a rule too: see the Batch page.",
                                      "%u readings before these broke a rule too: see the Batch page.",
                                      self->run_not_said),
                            self->run_not_said);
  for (const GList *link = self->run_said.head; link != NULL; link = link->next)
    g_string_append_printf (all, "%s%s", all->len > 0 ? "\n" : "", (const char *)link->data);
  gtk_label_set_text (self->run_line, all->str);
  gtk_widget_set_visible (GTK_WIDGET (self->run_line), TRUE);
}

/* Under what is said of others that were recorded in the same moment; more than a few would push the entry
 * out of the window. */
static void
say_violation (TmBenchPage *self, const char *text)
{
  g_queue_push_tail (&self->run_said, g_strdup (text));
  if (g_queue_get_length (&self->run_said) > MOST_SAID)
    {
      g_free (g_queue_pop_head (&self->run_said));
      self->run_not_said++;
    }
  show_said (self);
}

/* -------- What was just recorded -------- */

/* Waits until its run is worked out.  Of the job: whatever takes a feature away forgets it. */
typedef struct {
  const TmFeature *feature;
  guint place;
  char *serial;
} Recorded;

static void
free_recorded (gpointer data)
{
  Recorded *recorded = data;

  g_free (recorded->serial);
  g_free (recorded);
}

/* Of the feature at @place, or at any for 0; of all pieces where @serial is NULL. */
static void
forget (TmBenchPage *self, const TmFeature *feature, guint place, const char *serial)
{
  for (GList *link = self->run_new.head, *next; link != NULL; link = next)
    {
      const Recorded *recorded = link->data;

      next = link->next;
      if (recorded->feature != feature || (place != 0 && recorded->place != place)
          || (serial != NULL && !g_str_equal (recorded->serial, serial)))
        continue;
      free_recorded (link->data);
      g_queue_delete_link (&self->run_new, link);
    }
}

static void
remember (TmBenchPage *self, const TmEntryRow *row, guint place)
{
  Recorded *recorded = g_new (Recorded, 1);

  forget (self, row->feature, place, row->piece->serial);
  *recorded = (Recorded) { row->feature, place, g_strdup (row->piece->serial) };
  g_queue_push_tail (&self->run_new, recorded);
}

/* Says of all that @batch is about what it shows of them. */
static void
say_violations (TmBenchPage *self, const TmBatch *batch)
{
  for (const GList *link = self->run_new.head; link != NULL; link = link->next)
    {
      const Recorded *recorded = link->data;
      g_autofree char *text = NULL;

      if (recorded->feature == self->run_feature && recorded->place == self->run_place)
        text = describe_violation (batch, recorded->serial);
      if (text != NULL)
        say_violation (self, text);
    }
}

/* -------- Working it out -------- */

static void
show_answer (TmBenchPage *self)
{
  const TmSpot *spot = tm_bench_spot (tm_document_bench (self->document));
  g_autofree char *says = describe_run (&self->run->batch);
  const gint focus = spot->piece != NULL ? find_piece (&self->run->batch, spot->piece->serial) : -1;

  tm_pictures_show_run (self->pictures, &self->run->batch, self->run->plot, focus, says);
}

/* @expected: another answer is on its way. */
static void
drop_answer (TmBenchPage *self, gboolean expected)
{
  tm_pictures_drop_run (self->pictures, expected);
  g_clear_pointer (&self->run, tm_batch_answer_free);
}

static void
stop (TmBenchPage *self)
{
  g_clear_handle_id (&self->run_ask_id, g_source_remove);
  if (self->run_working != NULL)
    g_cancellable_cancel (self->run_working);
  g_clear_object (&self->run_working);
}

static void ask (TmBenchPage *self, const TmFeature *feature, guint place);

static gboolean
is_working (TmBenchPage *self)
{
  return self->run_working != NULL || self->run_ask_id != 0;
}

static gboolean
is_at_hand (TmBenchPage *self)
{
  const TmSpot *spot = tm_bench_spot (tm_document_bench (self->document));

  return spot->feature == self->run_feature && spot->place == self->run_place;
}

static void
take_answer (TmBenchPage *self, TmBatchAnswer *answer)
{
  TmBatchAnswer *old = g_steal_pointer (&self->run);

  self->run = answer;
  show_answer (self);
  g_clear_pointer (&old, tm_batch_answer_free);
}

/* The next that something was recorded of, or the feature at hand where the bench has moved on. */
static void
go_on (TmBenchPage *self)
{
  const TmSpot *spot = tm_bench_spot (tm_document_bench (self->document));
  const Recorded *next = g_queue_peek_head (&self->run_new);

  if (next != NULL)
    ask (self, next->feature, next->place);
  else if (spot->feature == NULL || is_at_hand (self))
    drop_answer (self, FALSE);
  else
    ask (self, spot->feature, spot->place);
}

/* The bench may have moved on to the next feature since: then the answer is only for what was recorded. */
static void
answered_cb (TmBatchAnswer *answer, gpointer data)
{
  TmBenchPage *self = data;
  const gboolean is_run = answer->batch.series.n_measured >= PIECES_LEAST;

  g_clear_object (&self->run_working);
  if (is_run)
    say_violations (self, &answer->batch);
  forget (self, self->run_feature, self->run_place, NULL);
  if (is_run && is_at_hand (self) && g_queue_is_empty (&self->run_new))
    {
      take_answer (self, answer);
      return;
    }
  tm_batch_answer_free (answer);
  go_on (self);
}

static gboolean
has_run (const TmJob *job, const TmFeature *feature, guint place)
{
  guint n = 0;

  if (tm_kind_is_attribute (feature->kind))
    return FALSE;
  for (guint i = 0; i < job->pieces->len && n < PIECES_LEAST; i++)
    {
      const GPtrArray *readings
          = tm_job_readings_at (job, g_ptr_array_index (job->pieces, i), feature, place);

      n += readings != NULL && readings->len > 0;
    }
  return n >= PIECES_LEAST;
}

/* The feature is there: whatever takes one away forgets the run. */
static gboolean
ask_cb (gpointer data)
{
  TmBenchPage *self = data;

  self->run_ask_id = 0;
  self->run_working = g_cancellable_new ();
  tm_batch_work (self->document, self->run_feature, self->run_place, TRUE, self->run_working, answered_cb,
                 self);
  return G_SOURCE_REMOVE;
}

static void
ask (TmBenchPage *self, const TmFeature *feature, guint place)
{
  const gboolean others_wait = !g_queue_is_empty (&self->run_new);

  stop (self);
  self->run_feature = feature;
  self->run_place = place;
  if (has_run (tm_document_job (self->document), feature, place))
    {
      self->run_ask_id = g_timeout_add (ASK_AFTER_MS, ask_cb, self);
      return;
    }
  drop_answer (self, FALSE);
  /* What was recorded there may have been withdrawn since. */
  if (others_wait)
    {
      forget (self, feature, place, NULL);
      go_on (self);
    }
}

void
tm_bench_page_show_run (TmBenchPage *self)
{
  const TmSpot *spot = tm_bench_spot (tm_document_bench (self->document));

  if (spot->feature == NULL)
    return;
  if (is_at_hand (self))
    {
      if (self->run != NULL)
        show_answer (self);
      return;
    }
  drop_answer (self, has_run (tm_document_job (self->document), spot->feature, spot->place));
  /* What was just recorded is looked at before anything else: a rule must not go unsaid. */
  if (g_queue_is_empty (&self->run_new) || !is_working (self))
    ask (self, spot->feature, spot->place);
}

/* What is being worked out for something recorded before is not given up for this, unless it is of the same
 * run: then both are told from the new one. */
void
tm_bench_page_run_recorded (TmBenchPage *self, const TmEntryRow *row)
{
  const TmReading *last = tm_bench_last (tm_document_bench (self->document));
  const gboolean is_new = last != NULL && &last->row == row && row->withdrawn == NULL;
  const gboolean others_wait = !g_queue_is_empty (&self->run_new);

  if (!others_wait)
    clear_line (self);
  if (!is_new)
    {
      forget (self, row->feature, 0, row->piece->serial);
      if (row->feature == self->run_feature)
        ask (self, self->run_feature, self->run_place);
      return;
    }
  if (has_run (tm_document_job (self->document), row->feature, last->place))
    remember (self, row, last->place);
  if (!others_wait || !is_working (self)
      || (row->feature == self->run_feature && last->place == self->run_place))
    ask (self, row->feature, last->place);
}

void
tm_bench_page_forget_run (TmBenchPage *self)
{
  stop (self);
  drop_answer (self, FALSE);
  g_queue_clear_full (&self->run_new, free_recorded);
  self->run_feature = NULL;
  self->run_place = 0;
}

void
tm_bench_page_leave_run (TmBenchPage *self)
{
  tm_bench_page_forget_run (self);
  clear_line (self);
}

GtkWidget *
tm_bench_page_build_run_line (TmBenchPage *self)
{
  GtkWidget *line = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, NULL);

  gtk_label_set_wrap (GTK_LABEL (line), TRUE);
  gtk_label_set_xalign (GTK_LABEL (line), 0);
  gtk_widget_add_css_class (line, "tm-entry-problem");
  gtk_widget_set_visible (line, FALSE);
  self->run_line = GTK_LABEL (line);
  return line;
}
