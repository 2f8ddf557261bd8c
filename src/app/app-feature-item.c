/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-feature-item.h"

#include "app-reading-words.h"

struct _TmFeatureItem {
  GObject parent_instance;

  TmFeature *feature;
  const TmPiece *piece; /* judged for; only compared */
  gboolean judged;
  gboolean has_judgement;
  TmJudgement worst;
  guint n_places_read;
  gboolean due;
};

G_DEFINE_FINAL_TYPE (TmFeatureItem, tm_feature_item, G_TYPE_OBJECT)

/* Out, then too close, then not measured, then in: the order of tm_judge_feature(). */
static int
rank_verdict (TmVerdict verdict)
{
  static const int ranks[TM_N_VERDICTS] = {
    [TM_VERDICT_IN] = 0,
    [TM_VERDICT_NOT_MEASURED] = 1,
    [TM_VERDICT_TOO_CLOSE] = 2,
    [TM_VERDICT_OUT] = 3,
  };
  return ranks[verdict];
}

/* A place without a reading has nothing to draw: any place that has one shows in its stead. */
static gboolean
is_worse (const TmJudgement *one, const TmJudgement *other)
{
  if (one->verdict == TM_VERDICT_NOT_MEASURED)
    return FALSE;
  if (other->verdict == TM_VERDICT_NOT_MEASURED)
    return TRUE;
  return rank_verdict (one->verdict) > rank_verdict (other->verdict);
}

static void
drop_judgement (TmFeatureItem *self)
{
  if (self->has_judgement)
    tm_judgement_clear (&self->worst);
  self->has_judgement = FALSE;
}

static void
tm_feature_item_finalize (GObject *object)
{
  drop_judgement (TM_FEATURE_ITEM (object));
  G_OBJECT_CLASS (tm_feature_item_parent_class)->finalize (object);
}

static void
tm_feature_item_class_init (TmFeatureItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_feature_item_finalize;
}

static void
tm_feature_item_init (TmFeatureItem *self)
{
}

TmFeatureItem *
tm_feature_item_new (TmFeature *feature)
{
  TmFeatureItem *self = g_object_new (TM_TYPE_FEATURE_ITEM, NULL);
  self->feature = feature;
  return self;
}

TmFeature *
tm_feature_item_feature (TmFeatureItem *self)
{
  g_return_val_if_fail (TM_IS_FEATURE_ITEM (self), NULL);

  return self->feature;
}

void
tm_feature_item_invalidate (TmFeatureItem *self)
{
  g_return_if_fail (TM_IS_FEATURE_ITEM (self));

  self->judged = FALSE;
}

gboolean
tm_feature_item_is_fresh (TmFeatureItem *self, const TmPiece *piece)
{
  g_return_val_if_fail (TM_IS_FEATURE_ITEM (self), FALSE);

  return self->judged && self->piece == piece;
}

static void
judge_places (TmFeatureItem *self, const TmJob *job, const TmPiece *piece)
{
  for (guint place = 1; place <= self->feature->places; place++)
    {
      TmJudgement judgement;
      tm_judge (job, piece, self->feature, place, &judgement);
      if (judgement.verdict != TM_VERDICT_NOT_MEASURED)
        self->n_places_read++;
      if (self->has_judgement && !is_worse (&judgement, &self->worst))
        {
          tm_judgement_clear (&judgement);
          continue;
        }
      drop_judgement (self);
      self->worst = judgement;
      self->has_judgement = TRUE;
    }
}

void
tm_feature_item_judge (TmFeatureItem *self, const TmJob *job, const TmPiece *piece, guint piece_index)
{
  g_return_if_fail (TM_IS_FEATURE_ITEM (self));
  g_return_if_fail (job != NULL);

  drop_judgement (self);
  self->n_places_read = 0;
  self->due = piece != NULL && tm_job_feature_is_due (job, self->feature, piece, piece_index);
  if (piece != NULL)
    judge_places (self, job, piece);
  self->piece = piece;
  self->judged = TRUE;
}

const TmJudgement *
tm_feature_item_judgement (TmFeatureItem *self)
{
  g_return_val_if_fail (TM_IS_FEATURE_ITEM (self), NULL);

  return self->has_judgement ? &self->worst : NULL;
}

char *
tm_feature_item_state (TmFeatureItem *self)
{
  g_return_val_if_fail (TM_IS_FEATURE_ITEM (self), NULL);

  if (!self->has_judgement)
    return g_strdup ("—");
  guint n_read = self->n_places_read;
  guint n_due = self->feature->places;
  if (n_due == 1 && self->worst.why == TM_WHY_STATIONS_MISSING)
    {
      n_read = self->worst.sizes.n_stations;
      n_due = self->feature->stations->len;
    }
  return tm_words_state (self->worst.verdict, self->worst.side, self->due, n_read, n_due);
}

static gboolean
has_reading (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  const GPtrArray *readings = tm_job_readings_at (job, piece, feature, place);
  for (guint i = 0; readings != NULL && i < readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (readings, i);
      if (tm_row_counts (&reading->row))
        return TRUE;
    }
  return FALSE;
}

gboolean
tm_feature_is_measured (const TmJob *job, const TmPiece *piece, const TmFeature *feature)
{
  for (guint place = 1; place <= feature->places; place++)
    if (!has_reading (job, piece, feature, place))
      return FALSE;
  return TRUE;
}
