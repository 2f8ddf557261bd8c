/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-copy.h"

/* Several bores that one tool cuts are looked at together; more than this nobody reads. */
#define MOST_SAME_TOOL 6

typedef struct {
  const TmJob *from;
  TmJob *to;
  GPtrArray *features; /* of `from`, that are taken */
} Copy;

static GPtrArray *
copy_texts (GPtrArray *texts)
{
  GPtrArray *copy = g_ptr_array_new ();

  for (guint i = 0; i < texts->len; i++)
    g_ptr_array_add (copy, g_ptr_array_index (texts, i));
  return copy;
}

/* -------- What is taken -------- */

static void
take_feature (Copy *copy, TmFeature *feature)
{
  TmFeature *size;

  if (feature == NULL || g_ptr_array_find (copy->features, feature, NULL))
    return;
  g_ptr_array_add (copy->features, feature);
  size = tm_job_find_feature (copy->from, feature->size_feature);
  take_feature (copy, size);
}

static void
take_features (Copy *copy, const TmFeature *feature)
{
  guint n = 0;

  take_feature (copy, tm_job_find_feature (copy->from, feature->balloon));
  if (*feature->tool == '\0')
    return;
  for (guint i = 0; i < copy->from->features->len && n < MOST_SAME_TOOL; i++)
    {
      TmFeature *other = g_ptr_array_index (copy->from->features, i);

      if (other == feature || !g_str_equal (other->tool, feature->tool))
        continue;
      take_feature (copy, other);
      n++;
    }
}

/* -------- Definitions -------- */

static void
copy_facts (const TmJob *from, TmJob *to)
{
  to->id = from->id;
  to->unit = from->unit;
  to->material = from->material;
  to->standard = from->standard;
  to->decision = from->decision;
  to->simple_ratio = from->simple_ratio;
  to->general_tolerance = from->general_tolerance;
  to->part_temp_limit = from->part_temp_limit;
  to->gauge_temp_limit = from->gauge_temp_limit;
  to->thermometer = from->thermometer;
  to->expansion = from->expansion;
  to->entry_clearance = from->entry_clearance;
  to->drift_rule = from->drift_rule;
  to->drift_limit = from->drift_limit;
  to->check_hours = from->check_hours;
}

static void
copy_feature (Copy *copy, const TmFeature *feature)
{
  TmFeature *row = tm_feature_new ();
  GPtrArray *stations = row->stations;

  *row = *feature;
  g_ptr_array_unref (stations);
  row->stations = copy_texts (feature->stations);
  tm_job_add_feature (copy->to, row);
}

static void
copy_method (Copy *copy, const TmMethod *method)
{
  TmMethod *row = tm_method_new ();
  GPtrArray *gauges = row->gauges;

  *row = *method;
  g_ptr_array_unref (gauges);
  row->gauges = copy_texts (method->gauges);
  tm_job_add_method (copy->to, row);
}

/* Rows that own nothing but their texts. */
#define COPY_ROWS(list, Type, name, add)                           \
  G_STMT_START                                                     \
  {                                                                \
    for (guint i_ = 0; i_ < copy->from->list->len; i_++)           \
      {                                                            \
        Type *row_ = tm_##name##_new ();                           \
        *row_ = *(Type *)g_ptr_array_index (copy->from->list, i_); \
        add (copy->to, row_);                                      \
      }                                                            \
  }                                                                \
  G_STMT_END

static void
copy_definitions (Copy *copy)
{
  copy_facts (copy->from, copy->to);
  COPY_ROWS (gauges, TmGauge, gauge, tm_job_add_gauge);
  for (guint i = 0; i < copy->from->methods->len; i++)
    copy_method (copy, g_ptr_array_index (copy->from->methods, i));
  COPY_ROWS (tools, TmTool, tool, tm_job_add_tool);
  COPY_ROWS (materials, TmShopMaterial, shop_material, tm_job_add_material);
  for (guint i = 0; i < copy->features->len; i++)
    copy_feature (copy, g_ptr_array_index (copy->features, i));
  COPY_ROWS (pieces, TmPiece, piece, tm_job_add_piece);
  COPY_ROWS (events, TmEvent, event, tm_job_add_event);
  COPY_ROWS (calibrations, TmCalibration, calibration, tm_job_add_calibration);
  COPY_ROWS (checks, TmCheck, check, tm_job_add_check);
  COPY_ROWS (pin_sizes, TmPinSize, pin_size, tm_job_add_pin_size);
  COPY_ROWS (budget_lines, TmBudgetLine, budget_line, tm_job_add_budget_line);
}

/* -------- The record -------- */

/* The row begins as it was recorded: what was done to it since is done again. */
static void
settle_row (Copy *copy, TmEntryRow *row)
{
  row->piece = tm_job_find_piece (copy->to, row->piece->serial);
  row->feature = tm_job_find_feature (copy->to, row->feature->balloon);
  row->withdrawn = NULL;
  row->replaced_by = NULL;
  row->before_cut = FALSE;
}

static gboolean
corrects_elsewhere (Copy *copy, const TmReading *reading)
{
  const TmReading *old
      = *reading->row.replaces != '\0' ? tm_job_find_reading (copy->from, reading->row.replaces) : NULL;

  return old != NULL && old->place != reading->place;
}

/* Adds the readings of one place to @readings.  FALSE: one corrects a reading of another place. */
static gboolean
gather_place (Copy *copy, const TmPiece *piece, const TmFeature *feature, guint place, GPtrArray *readings)
{
  const GPtrArray *there = tm_job_readings_at (copy->from, piece, feature, place);

  for (guint i = 0; there != NULL && i < there->len; i++)
    {
      if (corrects_elsewhere (copy, g_ptr_array_index (there, i)))
        return FALSE;
      g_ptr_array_add (readings, g_ptr_array_index (there, i));
    }
  return TRUE;
}

/* The readings of the features that are taken, place by place: the job finds them at once, however long its
 * record is.  Where a correction names another place than the reading that it corrects the order over all
 * places counts, and the whole record is gone through. */
static GPtrArray *
gather_readings (Copy *copy)
{
  g_autoptr (GPtrArray) readings = g_ptr_array_new ();

  for (guint f = 0; f < copy->features->len; f++)
    {
      const TmFeature *feature = g_ptr_array_index (copy->features, f);

      for (guint p = 0; p < copy->from->pieces->len; p++)
        for (guint place = 1; place <= feature->places; place++)
          if (!gather_place (copy, g_ptr_array_index (copy->from->pieces, p), feature, place, readings))
            return g_ptr_array_ref (copy->from->readings);
    }
  return g_steal_pointer (&readings);
}

#define COPY_RECORD(rows, Type, name, add)                               \
  G_STMT_START                                                           \
  {                                                                      \
    for (guint i_ = 0; i_ < (rows)->len; i_++)                           \
      {                                                                  \
        const Type *old_ = g_ptr_array_index ((rows), i_);               \
        if (!g_ptr_array_find (copy->features, old_->row.feature, NULL)) \
          continue;                                                      \
        Type *row_ = tm_##name##_new ();                                 \
        *row_ = *old_;                                                   \
        settle_row (copy, &row_->row);                                   \
        if (add (copy->to, row_) != TM_ADD_OK)                           \
          tm_##name##_free (row_);                                       \
      }                                                                  \
  }                                                                      \
  G_STMT_END

/* The copy has no nonconformances: what a rework set aside is taken over as it stands. */
#define COPY_FATES(list, Type, find)                                                               \
  G_STMT_START                                                                                     \
  {                                                                                                \
    for (guint i_ = 0; i_ < copy->to->list->len; i_++)                                             \
      {                                                                                            \
        Type *row_ = g_ptr_array_index (copy->to->list, i_);                                       \
        const Type *old_ = find (copy->from, row_->row.id);                                        \
        if (old_ == NULL)                                                                          \
          continue;                                                                                \
        row_->row.before_rework = old_->row.before_rework;                                         \
        if (old_->row.withdrawn != NULL)                                                           \
          tm_job_withdraw (copy->to, &row_->row, old_->row.withdrawn->by, old_->row.withdrawn->at, \
                           old_->row.withdrawn->reason);                                           \
      }                                                                                            \
  }                                                                                                \
  G_STMT_END

static void
copy_record (Copy *copy)
{
  g_autoptr (GPtrArray) readings = gather_readings (copy);

  COPY_RECORD (readings, TmReading, reading, tm_job_add_reading);
  COPY_RECORD (copy->from->pin_trials, TmPinTrial, pin_trial, tm_job_add_pin_trial);
  COPY_RECORD (copy->from->cuts, TmCutRow, cut_row, tm_job_add_cut);
  COPY_FATES (readings, TmReading, tm_job_find_reading);
  COPY_FATES (pin_trials, TmPinTrial, tm_job_find_pin_trial);
  COPY_FATES (cuts, TmCutRow, tm_job_find_cut);
}

TmJob *
tm_batch_copy (const TmJob *job, const TmFeature *feature)
{
  g_autoptr (GPtrArray) features = g_ptr_array_new ();
  Copy copy = { job, tm_job_new (), features };

  take_features (&copy, feature);
  copy_definitions (&copy);
  copy_record (&copy);
  return copy.to;
}

/* -------- The record of some pieces -------- */

/* Only rows that count decide a judgement: then what they correct, and the cuts that they came after, need
 * not be there. */
#define COPY_COUNTED(rows, Type, name, add)                            \
  G_STMT_START                                                         \
  {                                                                    \
    const GPtrArray *rows_ = (rows);                                   \
    for (guint i_ = 0; rows_ != NULL && i_ < rows_->len; i_++)         \
      {                                                                \
        const Type *old_ = g_ptr_array_index (rows_, i_);              \
        if (!tm_row_counts (&old_->row))                               \
          continue;                                                    \
        Type *row_ = tm_##name##_new ();                               \
        *row_ = *old_;                                                 \
        row_->row.piece = g_ptr_array_index (copy->to->pieces, piece); \
        row_->row.feature = g_ptr_array_index (copy->to->features, f); \
        row_->row.replaces = "";                                       \
        row_->row.replaced_by = NULL;                                  \
        if (add (copy->to, row_) != TM_ADD_OK)                         \
          tm_##name##_free (row_);                                     \
      }                                                                \
  }                                                                    \
  G_STMT_END

static void
copy_piece (Copy *copy, guint piece)
{
  const TmPiece *from = g_ptr_array_index (copy->from->pieces, piece);

  for (guint f = 0; f < copy->from->features->len; f++)
    {
      const TmFeature *feature = g_ptr_array_index (copy->from->features, f);

      for (guint place = 1; place <= feature->places; place++)
        {
          COPY_COUNTED (tm_job_readings_at (copy->from, from, feature, place), TmReading, reading,
                        tm_job_add_reading);
          if (copy->from->pin_trials->len == 0)
            continue;
          COPY_COUNTED (tm_job_pin_trials_at (copy->from, from, feature, place), TmPinTrial, pin_trial,
                        tm_job_add_pin_trial);
        }
    }
}

TmJob *
tm_batch_copy_pieces (const TmJob *job, guint from, guint *to, guint most_rows)
{
  Copy copy = { job, tm_job_new (), job->features };
  guint piece = from;

  copy_definitions (&copy);
  do
    copy_piece (&copy, piece++);
  while (piece < *to && copy.to->readings->len + copy.to->pin_trials->len < most_rows);
  *to = piece;
  return copy.to;
}
