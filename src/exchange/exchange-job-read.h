/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-job-read: rows of the job file into structs of the model; private to this folder.
 *
 * Each function adds one row to @job, or leaves it alone and returns FALSE with @error.
 */

#pragma once

#include "core-callout.h"
#include "exchange-job-members.h"
#include "exchange-take.h"

G_BEGIN_DECLS

gboolean tm_read_feature_row (TmJob *job, const TmJsonRow *row, GError **error);

/* The feature that @row describes, not yet added, whose texts are those of @job; NULL with @error.
 * @read (may be NULL) gets what became of its requirement. */
TmFeature *tm_read_feature (TmJob *job, const TmJsonRow *row, TmCalloutStatus *read,
                            GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The words of TmKind, for a refusal. */
#define TM_KIND_LIST                                                                           \
  "bore, shaft, diameter, length, depth, angle, position, form, roughness, hardness, thread, " \
  "attribute, note"

/* What the row of a feature says of its mate and of the press fit with it, into @feature. */
gboolean tm_take_mate (TmJob *job, const TmJsonRow *row, TmFeature *feature, GError **error);
gboolean tm_take_press (TmJob *job, const TmJsonRow *row, TmFeature *feature, GError **error);

/* What the row of the job says of its report. */
gboolean tm_take_report (TmJob *job, const TmJsonRow *row, GError **error);
/* A SHA-256 as 64 hexadecimal digits. */
gboolean tm_take_digest (TmMember member, TmJob *job, const char **out, GError **error);

gboolean tm_read_supply_row (TmJob *job, const TmJsonRow *row, GError **error);
gboolean tm_read_sub_part_row (TmJob *job, const TmJsonRow *row, GError **error);
gboolean tm_read_report_field_row (TmJob *job, const TmJsonRow *row, GError **error);
gboolean tm_read_nonconformance_row (TmJob *job, const TmJsonRow *row, GError **error);
gboolean tm_read_signature_row (TmJob *job, const TmJsonRow *row, GError **error);

gboolean tm_read_drawing_row (TmJob *job, const TmJsonRow *row, GError **error);
gboolean tm_read_balloon_row (TmJob *job, const TmJsonRow *row, GError **error);

gboolean tm_read_tool_row (TmJob *job, const TmJsonRow *row, GError **error);
gboolean tm_read_material_row (TmJob *job, const TmJsonRow *row, GError **error);
gboolean tm_read_mate_size_row (TmJob *job, const TmJsonRow *row, GError **error);

gboolean tm_read_reading_row (TmJob *job, const TmJsonRow *row, GError **error);
gboolean tm_read_trial_row (TmJob *job, const TmJsonRow *row, GError **error);
gboolean tm_read_cut_row (TmJob *job, const TmJsonRow *row, GError **error);

gboolean tm_read_gauge_row (TmJob *job, const TmJsonRow *row, GError **error);
gboolean tm_read_calibration_row (TmJob *job, const TmJsonRow *row, GError **error);
gboolean tm_read_check_row (TmJob *job, const TmJsonRow *row, GError **error);
gboolean tm_read_pin_size_row (TmJob *job, const TmJsonRow *row, GError **error);

gboolean tm_read_method_row (TmJob *job, const TmJsonRow *row, GError **error);
gboolean tm_read_budget_line_row (TmJob *job, const TmJsonRow *row, GError **error);

gboolean tm_read_study_row (TmJob *job, const TmJsonRow *row, GError **error);
gboolean tm_read_study_reading_row (TmJob *job, const TmJsonRow *row, GError **error);

/* Refuses a row that the model does not take: @member is the member to blame. */
gboolean tm_read_add_fail (TmMember member, TmAddStatus status, GError **error);

G_END_DECLS
