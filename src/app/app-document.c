/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-document.h"

/* Seconds without a new fact after which the book's log is folded in. */
#define IDLE_SECONDS 20

struct _TmDocument {
  GObject parent_instance;

  TmBook *book; /* borrowed */
  TmJob *job;
  TmBench *bench;
  TmTemplate *template; /* of the shop's reports */
  guint fold_id;
};

enum { SIGNAL_DEFINITIONS_CHANGED, SIGNAL_RECORDED, SIGNAL_MOVED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmDocument, tm_document, G_TYPE_OBJECT)

char *
tm_now_utc (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();

  return g_date_time_format (now, "%Y-%m-%dT%H:%M:%SZ");
}

static gboolean
fold_log_cb (gpointer data)
{
  TmDocument *self = data;
  g_autoptr (GError) error = NULL;

  self->fold_id = 0;
  if (!tm_book_is_read_only (self->book) && !tm_book_checkpoint (self->book, &error))
    g_debug ("log not folded in: %s", error->message);
  return G_SOURCE_REMOVE;
}

/* Folding the log in is left until nobody records: it may take a moment on a slow disk. */
static void
fold_log_when_idle (TmDocument *self)
{
  g_clear_handle_id (&self->fold_id, g_source_remove);
  self->fold_id = g_timeout_add_seconds (IDLE_SECONDS, fold_log_cb, self);
}

static void
emit_moved (TmDocument *self)
{
  g_signal_emit (self, signals[SIGNAL_MOVED], 0);
}

static void
emit_recorded (TmDocument *self, const TmEntryRow *row)
{
  fold_log_when_idle (self);
  g_signal_emit (self, signals[SIGNAL_RECORDED], 0, row);
  emit_moved (self);
}

static gboolean
has_station (const TmFeature *feature, const char *station)
{
  for (guint i = 0; i < feature->stations->len; i++)
    if (g_str_equal (g_ptr_array_index (feature->stations, i), station))
      return TRUE;
  return feature->stations->len == 0 && *station == '\0';
}

static const char *
first_station (const TmFeature *feature)
{
  return feature->stations->len > 0 ? g_ptr_array_index (feature->stations, 0) : "";
}

/* After the definitions changed the session may stand nowhere although there is now a piece and a
 * feature, or at a station or place that the feature no longer has. */
static void
settle_spot (TmDocument *self)
{
  TmSpot spot = *tm_bench_spot (self->bench);
  gboolean stale = FALSE;

  if (spot.piece == NULL && self->job->pieces->len > 0)
    spot.piece = g_ptr_array_index (self->job->pieces, 0), stale = TRUE;
  if (spot.feature == NULL && self->job->features->len > 0)
    spot.feature = g_ptr_array_index (self->job->features, 0), stale = TRUE;
  if (spot.feature == NULL)
    return;
  if (spot.place == 0 || spot.place > spot.feature->places)
    spot.place = 1, stale = TRUE;
  if (stale || !has_station (spot.feature, spot.station))
    tm_bench_go (self->bench, spot.piece, spot.feature, spot.place, first_station (spot.feature));
}

static void
tm_document_finalize (GObject *object)
{
  TmDocument *self = TM_DOCUMENT (object);

  g_clear_handle_id (&self->fold_id, g_source_remove);
  g_clear_pointer (&self->bench, tm_bench_free);
  g_clear_pointer (&self->job, tm_job_free);
  g_clear_pointer (&self->template, tm_template_free);
  G_OBJECT_CLASS (tm_document_parent_class)->finalize (object);
}

static void
tm_document_class_init (TmDocumentClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = tm_document_finalize;
  signals[SIGNAL_DEFINITIONS_CHANGED]
      = g_signal_new ("definitions-changed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_RECORDED] = g_signal_new ("recorded", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                           G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[SIGNAL_MOVED]
      = g_signal_new ("moved", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
tm_document_init (TmDocument *self)
{
}

TmDocument *
tm_document_new (TmBook *book, TmJob *job)
{
  TmDocument *self;

  g_return_val_if_fail (book != NULL, NULL);
  g_return_val_if_fail (job != NULL, NULL);

  self = g_object_new (TM_TYPE_DOCUMENT, NULL);
  self->book = book;
  self->job = job;
  self->template = tm_template_new ();
  self->bench = tm_bench_new (job, tm_book_recorder (book, job->id));
  return self;
}

TmJob *
tm_document_job (TmDocument *self)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (self), NULL);

  return self->job;
}

TmBook *
tm_document_book (TmDocument *self)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (self), NULL);

  return self->book;
}

TmBench *
tm_document_bench (TmDocument *self)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (self), NULL);

  return self->bench;
}

void
tm_document_leave (TmDocument *self, const TmPiece *piece, const TmFeature *feature)
{
  const TmSpot *spot;
  TmBench *fresh;

  g_return_if_fail (TM_IS_DOCUMENT (self));

  spot = tm_bench_spot (self->bench);
  if ((piece == NULL || spot->piece != piece) && (feature == NULL || spot->feature != feature))
    return;
  fresh = tm_bench_new_like (self->bench);
  tm_bench_free (self->bench);
  self->bench = fresh;
}

gboolean
tm_document_save_definitions (TmDocument *self, GError **error)
{
  g_autofree char *at = NULL;

  g_return_val_if_fail (TM_IS_DOCUMENT (self), FALSE);

  at = tm_now_utc ();
  if (!tm_book_save_definitions (self->book, self->job, tm_bench_by (self->bench), at, error))
    return FALSE;
  settle_spot (self);
  fold_log_when_idle (self);
  g_signal_emit (self, signals[SIGNAL_DEFINITIONS_CHANGED], 0);
  return TRUE;
}

const TmTemplate *
tm_document_template (TmDocument *self)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (self), NULL);

  return self->template;
}

gboolean
tm_document_load_template (TmDocument *self, GError **error)
{
  TmTemplate *template;

  g_return_val_if_fail (TM_IS_DOCUMENT (self), FALSE);

  template = tm_book_template (self->book, error);
  tm_template_free (self->template);
  self->template = template != NULL ? template : tm_template_new ();
  g_signal_emit (self, signals[SIGNAL_DEFINITIONS_CHANGED], 0);
  return template != NULL;
}

void
tm_document_restored (TmDocument *self)
{
  g_return_if_fail (TM_IS_DOCUMENT (self));

  settle_spot (self);
  g_signal_emit (self, signals[SIGNAL_DEFINITIONS_CHANGED], 0);
}

void
tm_document_set_text (TmDocument *self, const char *text)
{
  g_return_if_fail (TM_IS_DOCUMENT (self));

  tm_bench_set_text (self->bench, text);
  emit_moved (self);
}

gboolean
tm_document_go (TmDocument *self, TmPiece *piece, TmFeature *feature, guint place, const char *station)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (self), FALSE);

  if (!tm_bench_go (self->bench, piece, feature, place, station))
    return FALSE;
  emit_moved (self);
  return TRUE;
}

static TmSubmit
announce_submit (TmDocument *self, TmSubmit submit)
{
  TmBenchFact fact = tm_bench_newest (self->bench);

  if (submit == TM_SUBMIT_RECORDED)
    emit_recorded (self, tm_bench_fact_row (&fact));
  else
    emit_moved (self);
  return submit;
}

TmSubmit
tm_document_submit (TmDocument *self, GError **error)
{
  g_autofree char *at = NULL;

  g_return_val_if_fail (TM_IS_DOCUMENT (self), TM_SUBMIT_FAILED);

  at = tm_now_utc ();
  return announce_submit (self, tm_bench_submit (self->bench, at, g_get_monotonic_time () / 1000, error));
}

TmSubmit
tm_document_submit_offsets (TmDocument *self, const char *dx, const char *dy, GError **error)
{
  g_autofree char *at = NULL;

  g_return_val_if_fail (TM_IS_DOCUMENT (self), TM_SUBMIT_FAILED);

  at = tm_now_utc ();
  return announce_submit (self, tm_bench_submit_offsets (self->bench, dx, dy, at, error));
}

TmSubmit
tm_document_submit_pin (TmDocument *self, const char *text, GError **error)
{
  g_autofree char *at = NULL;

  g_return_val_if_fail (TM_IS_DOCUMENT (self), TM_SUBMIT_FAILED);

  at = tm_now_utc ();
  return announce_submit (self, tm_bench_submit_pin (self->bench, text, at, error));
}

TmSubmit
tm_document_submit_cut (TmDocument *self, const char *text, guint passes, const char *note, GError **error)
{
  g_autofree char *at = NULL;

  g_return_val_if_fail (TM_IS_DOCUMENT (self), TM_SUBMIT_FAILED);

  at = tm_now_utc ();
  return announce_submit (
      self, tm_bench_submit_cut (self->bench, text, passes, note, at, g_get_monotonic_time () / 1000, error));
}

gboolean
tm_document_correct_cut (TmDocument *self, const TmCutRow *cut, const char *text, guint passes,
                         const char *reason, GError **error)
{
  g_autofree char *at = NULL;

  g_return_val_if_fail (TM_IS_DOCUMENT (self), FALSE);

  at = tm_now_utc ();
  if (!tm_bench_correct_cut (self->bench, cut, text, passes, reason, at, error))
    return FALSE;
  emit_recorded (self, &cut->row);
  return TRUE;
}

gboolean
tm_document_withdraw_cut (TmDocument *self, const TmCutRow *cut, const char *reason, GError **error)
{
  g_autofree char *at = NULL;

  g_return_val_if_fail (TM_IS_DOCUMENT (self), FALSE);

  at = tm_now_utc ();
  if (!tm_bench_withdraw_cut (self->bench, cut, reason, at, error))
    return FALSE;
  emit_recorded (self, &cut->row);
  return TRUE;
}

gboolean
tm_document_withdraw_pin (TmDocument *self, const TmPinTrial *trial, const char *reason, GError **error)
{
  g_autofree char *at = NULL;

  g_return_val_if_fail (TM_IS_DOCUMENT (self), FALSE);

  at = tm_now_utc ();
  if (!tm_bench_withdraw_pin (self->bench, trial, reason, at, error))
    return FALSE;
  emit_recorded (self, &trial->row);
  return TRUE;
}

gboolean
tm_document_correct (TmDocument *self, const TmReading *reading, const char *text, const char *reason,
                     GError **error)
{
  g_autofree char *at = NULL;

  g_return_val_if_fail (TM_IS_DOCUMENT (self), FALSE);

  at = tm_now_utc ();
  if (!tm_bench_correct (self->bench, reading, text, reason, at, error))
    return FALSE;
  emit_recorded (self, &reading->row);
  return TRUE;
}

gboolean
tm_document_withdraw (TmDocument *self, const TmReading *reading, const char *reason, GError **error)
{
  g_autofree char *at = NULL;

  g_return_val_if_fail (TM_IS_DOCUMENT (self), FALSE);

  at = tm_now_utc ();
  if (!tm_bench_withdraw (self->bench, reading, reason, at, error))
    return FALSE;
  emit_recorded (self, &reading->row);
  return TRUE;
}
