/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-kind: the columns of each table of the book, and the struct member that each one holds.
 *
 * The words below are the book's own and never change, whatever becomes of the enumerations.
 */

#include "book-field.h"

#include <glib/gi18n-lib.h>

const char *const tm_book_unit_words[]
    = { "none", "mm", "in", "um", "uin", "thou", "tenth", "deg", "hardness", "count", "celsius", NULL };
static const char *const kind_words[]
    = { "bore", "shaft",     "diameter", "length", "depth",     "angle", "position",
        "form", "roughness", "hardness", "thread", "attribute", "note",  NULL };
static const char *const cut_words[] = { "", "grows", "shrinks", NULL };
static const char *const standard_words[] = { "ISO", "ASME", NULL };
static const char *const decision_words[] = { "guarded", "simple", NULL };
static const char *const first_article_words[] = { "full", "partial", "re-inspection", NULL };
static const char *const article_words[] = { "", "assembly", NULL };
static const char *const supply_kind_words[] = { "material", "process", "test", NULL };
static const char *const approval_words[] = { "", "yes", "no", "not asked", NULL };
static const char *const modifier_words[] = { "", "mmc", "lmc", NULL };
static const char *const outcome_words[] = { "", "pass", "fail", NULL };
static const char *const sign_words[] = { "minus", "plus", NULL };
static const char *const counts_words[] = { "", "combined", NULL };
static const char *const drift_rule_words[] = { "", "ask", NULL };
static const char *const reads_words[] = { "", "radius", NULL };
static const char *const aim_words[] = { "", "proven", NULL };
static const char *const statement_words[] = { "after cover", "before signatures", NULL };
static const char *const line_kind_words[]
    = { "other", "feel", "temperature", "form", "setting", "people", NULL };

G_STATIC_ASSERT (G_N_ELEMENTS (tm_book_unit_words) == TM_N_UNITS + 1);
G_STATIC_ASSERT (G_N_ELEMENTS (kind_words) == TM_N_KINDS + 1);
G_STATIC_ASSERT (G_N_ELEMENTS (line_kind_words) == TM_N_LINE_KINDS + 1);
G_STATIC_ASSERT (G_N_ELEMENTS (statement_words) == TM_N_STATEMENT_PLACES + 1);

#define OTHER(type_, struct_, member_, column_)                                               \
  {                                                                                           \
    .column = column_, .type = TM_FIELD_##type_, .offset = G_STRUCT_OFFSET (struct_, member_) \
  }
#define TEXT(struct_, member_, column_) OTHER (TEXT, struct_, member_, column_)
#define WORD(struct_, member_, column_, words_)                                                             \
  {                                                                                                         \
    .column = column_, .type = TM_FIELD_WORD, .offset = G_STRUCT_OFFSET (struct_, member_), .words = words_ \
  }
#define COUNTED(struct_, member_, name_, suffix_)                                     \
  {                                                                                   \
    .column = name_ suffix_, .form_column = name_ "_form", .type = TM_FIELD_QUANTITY, \
    .offset = G_STRUCT_OFFSET (struct_, member_)                                      \
  }
#define LENGTH(struct_, member_, name_) COUNTED (struct_, member_, name_, "_pm")
#define NUMBER(struct_, member_, name_) COUNTED (struct_, member_, name_, "_count")

static const TmField version_fields[] = {
  TEXT (TmVersion, key, "key"),
  OTHER (WIDE, TmVersion, rank, "rank"),
  OTHER (BOOL, TmVersion, removed, "removed"),
  TEXT (TmVersion, by, "changed_by"),
  TEXT (TmVersion, at, "changed_at"),
};

static const TmField job_fields[] = {
  TEXT (TmJob, id, "id"),
};

static const TmField facts_fields[] = {
  TEXT (TmJob, part_number, "part_number"),
  TEXT (TmJob, part_name, "part_name"),
  TEXT (TmJob, revision, "revision"),
  TEXT (TmJob, drawing, "drawing"),
  TEXT (TmJob, customer, "customer"),
  TEXT (TmJob, order, "order_number"),
  WORD (TmJob, unit, "unit", tm_book_unit_words),
  TEXT (TmJob, material, "material"),
  WORD (TmJob, standard, "standard", standard_words),
  WORD (TmJob, decision, "decision", decision_words),
  NUMBER (TmJob, simple_ratio, "simple_ratio"),
  TEXT (TmJob, general_tolerance, "general_tolerance"),
  WORD (TmJob, first_article, "first_article", first_article_words),
  TEXT (TmJob, first_article_reason, "first_article_reason"),
  TEXT (TmJob, first_article_baseline, "first_article_baseline"),
  TEXT (TmJob, first_article_extra, "first_article_extra"),
  TEXT (TmJob, extra, "extra"),
  TEXT (TmJob, job_extra, "job_extra"),
  NUMBER (TmJob, part_temp_limit, "part_temp_limit"),
  NUMBER (TmJob, gauge_temp_limit, "gauge_temp_limit"),
  NUMBER (TmJob, thermometer, "thermometer"),
  NUMBER (TmJob, expansion, "expansion"),
  LENGTH (TmJob, entry_clearance, "entry_clearance"),
  WORD (TmJob, drift_rule, "drift_rule", drift_rule_words),
  NUMBER (TmJob, drift_limit, "drift_limit"),
  NUMBER (TmJob, check_hours, "check_hours"),
  NUMBER (TmJob, cut_risk, "cut_risk"),
  WORD (TmJob, cut_aim, "cut_aim", aim_words),
  TEXT (TmJob, drawing_revision, "drawing_revision"),
  WORD (TmJob, article, "article", article_words),
  TEXT (TmJob, report_identifier, "report_identifier"),
  TEXT (TmJob, organisation, "organisation"),
  TEXT (TmJob, supplier_code, "supplier_code"),
  TEXT (TmJob, manufacturing_record, "manufacturing_record"),
  TEXT (TmJob, drawing_changes, "drawing_changes"),
  TEXT (TmJob, language, "language"),
  TEXT (TmJob, second_language, "second_language"),
  TEXT (TmJob, report_extra, "report_extra"),
};

static const TmField person_fields[] = {
  TEXT (TmPerson, initials, "initials"),
  TEXT (TmPerson, name, "name"),
  TEXT (TmPerson, extra, "extra"),
};

static const TmField gauge_fields[] = {
  TEXT (TmGauge, tag, "tag"),
  TEXT (TmGauge, kind, "kind"),
  WORD (TmGauge, unit, "unit", tm_book_unit_words),
  LENGTH (TmGauge, resolution, "resolution"),
  LENGTH (TmGauge, error_limit, "error_limit"),
  TEXT (TmGauge, calibrated, "calibrated"),
  TEXT (TmGauge, due, "due"),
  TEXT (TmGauge, certificate, "certificate"),
  TEXT (TmGauge, extra, "extra"),
  TEXT (TmGauge, serial, "serial"),
  TEXT (TmGauge, owner, "owner"),
  TEXT (TmGauge, place, "place"),
  LENGTH (TmGauge, range_from, "range_from"),
  LENGTH (TmGauge, range_to, "range_to"),
  LENGTH (TmGauge, feel, "feel"),
  NUMBER (TmGauge, expansion, "expansion"),
  LENGTH (TmGauge, pin_step, "pin_step"),
  TEXT (TmGauge, pin_class, "pin_class"),
  TEXT (TmGauge, pin_sign, "pin_sign"),
  TEXT (TmGauge, source, "source"),
  TEXT (TmGauge, blocks, "blocks"),
};

static const TmField calibration_fields[] = {
  TEXT (TmCalibration, gauge, "gauge"),
  TEXT (TmCalibration, date, "date"),
  TEXT (TmCalibration, due, "due"),
  TEXT (TmCalibration, certificate, "certificate"),
  TEXT (TmCalibration, by, "calibrated_by"),
  LENGTH (TmCalibration, uncertainty, "uncertainty"),
  NUMBER (TmCalibration, coverage, "coverage"),
  LENGTH (TmCalibration, error, "error"),
  TEXT (TmCalibration, outcome, "outcome"),
  TEXT (TmCalibration, note, "note"),
  TEXT (TmCalibration, extra, "extra"),
};

static const TmField check_fields[] = {
  TEXT (TmCheck, gauge, "gauge"),       LENGTH (TmCheck, standard, "standard"),
  LENGTH (TmCheck, reading, "reading"), TEXT (TmCheck, by, "checked_by"),
  TEXT (TmCheck, at, "checked_at"),     TEXT (TmCheck, note, "note"),
  TEXT (TmCheck, extra, "extra"),
};

static const TmField pin_size_fields[] = {
  TEXT (TmPinSize, gauge, "gauge"),
  LENGTH (TmPinSize, size, "size"),
  LENGTH (TmPinSize, measured, "measured"),
  TEXT (TmPinSize, extra, "extra"),
};

static const TmField method_fields[] = {
  TEXT (TmMethod, name, "name"),
  OTHER (LIST, TmMethod, gauges, "gauges"),
  LENGTH (TmMethod, repeatability, "repeatability"),
  NUMBER (TmMethod, repeatability_dof, "repeatability_dof"),
  TEXT (TmMethod, extra, "extra"),
  TEXT (TmMethod, repeatability_source, "repeatability_source"),
};

static const TmField budget_line_fields[] = {
  TEXT (TmBudgetLine, method, "method"),
  WORD (TmBudgetLine, kind, "kind", line_kind_words),
  TEXT (TmBudgetLine, name, "name"),
  LENGTH (TmBudgetLine, value, "value"),
  TEXT (TmBudgetLine, distribution, "distribution"),
  NUMBER (TmBudgetLine, divisor, "divisor"),
  NUMBER (TmBudgetLine, dof, "dof"),
  TEXT (TmBudgetLine, source, "source"),
  TEXT (TmBudgetLine, extra, "extra"),
};

static const TmField tool_fields[] = {
  TEXT (TmTool, name, "name"),
  WORD (TmTool, unit, "unit", tm_book_unit_words),
  WORD (TmTool, reads, "reads", reads_words),
  LENGTH (TmTool, graduation, "graduation"),
  LENGTH (TmTool, least_cut, "least_cut"),
  LENGTH (TmTool, backlash, "backlash"),
  NUMBER (TmTool, spring_passes, "spring_passes"),
  TEXT (TmTool, note, "note"),
  TEXT (TmTool, extra, "extra"),
  LENGTH (TmTool, offset_step, "offset_step"),
};

static const TmField material_fields[] = {
  TEXT (TmShopMaterial, name, "name"),
  NUMBER (TmShopMaterial, modulus, "modulus"),
  NUMBER (TmShopMaterial, poisson, "poisson"),
  NUMBER (TmShopMaterial, yield, "yield"),
  NUMBER (TmShopMaterial, expansion, "expansion"),
  NUMBER (TmShopMaterial, cold, "cold"),
  OTHER (BOOL, TmShopMaterial, plastic, "plastic"),
  TEXT (TmShopMaterial, source, "source"),
  TEXT (TmShopMaterial, extra, "extra"),
};

static const TmField feature_fields[] = {
  TEXT (TmFeature, balloon, "balloon"),
  WORD (TmFeature, kind, "kind", kind_words),
  TEXT (TmFeature, name, "name"),
  TEXT (TmFeature, requirement, "requirement"),
  WORD (TmFeature, unit, "unit", tm_book_unit_words),
  LENGTH (TmFeature, nominal, "nominal"),
  LENGTH (TmFeature, lower, "lower"),
  LENGTH (TmFeature, upper, "upper"),
  WORD (TmFeature, cut, "cut", cut_words),
  OTHER (BOOL, TmFeature, envelope, "envelope"),
  TEXT (TmFeature, designator, "designator"),
  OTHER (UINT, TmFeature, places, "places"),
  OTHER (LIST, TmFeature, stations, "stations"),
  TEXT (TmFeature, size_feature, "size_feature"),
  TEXT (TmFeature, method, "method"),
  TEXT (TmFeature, check, "check_rule"),
  OTHER (UINT, TmFeature, group_size, "group_size"),
  TEXT (TmFeature, sheet, "sheet"),
  TEXT (TmFeature, zone, "zone"),
  OTHER (BOOL, TmFeature, mate.given, "mate_given"),
  { .column = "mate_kind",
    .type = TM_FIELD_WORD,
    .offset = G_STRUCT_OFFSET (TmFeature, mate.kind),
    .words = kind_words,
    .guard = G_STRUCT_OFFSET (TmFeature, mate.given) },
  LENGTH (TmFeature, mate.lower, "mate_lower"),
  LENGTH (TmFeature, mate.upper, "mate_upper"),
  TEXT (TmFeature, mate.extra, "mate_extra"),
  OTHER (BOOL, TmFeature, zone_diameter, "zone_diameter"),
  WORD (TmFeature, modifier, "modifier", modifier_words),
  TEXT (TmFeature, datums, "datums"),
  TEXT (TmFeature, extra, "extra"),
  WORD (TmFeature, counts, "counts", counts_words),
  LENGTH (TmFeature, form_unseen, "form_unseen"),
  TEXT (TmFeature, tool, "tool"),
  LENGTH (TmFeature, mate.wanted_least, "wanted_least"),
  LENGTH (TmFeature, mate.wanted_most, "wanted_most"),
  LENGTH (TmFeature, press.length, "press_length"),
  LENGTH (TmFeature, press.hub_outside, "hub_outside"),
  LENGTH (TmFeature, press.shaft_inside, "shaft_inside"),
  TEXT (TmFeature, press.hub_material, "hub_material"),
  TEXT (TmFeature, press.shaft_material, "shaft_material"),
  NUMBER (TmFeature, press.friction_least, "friction_least"),
  NUMBER (TmFeature, press.friction_most, "friction_most"),
  LENGTH (TmFeature, press.hub_roughness, "hub_roughness"),
  LENGTH (TmFeature, press.shaft_roughness, "shaft_roughness"),
  LENGTH (TmFeature, press.gap, "press_gap"),
  TEXT (TmFeature, press.extra, "press_extra"),
  TEXT (TmFeature, chart_rules, "chart_rules"),
  OTHER (COUNT, TmFeature, chart_baseline, "chart_baseline"),
  OTHER (COUNT, TmFeature, affected, "affected"),
  TEXT (TmFeature, tooling, "tooling"),
  TEXT (TmFeature, comment, "comment"),
};

static const TmField piece_fields[] = {
  TEXT (TmPiece, serial, "serial"),
  OTHER (BOOL, TmPiece, first_article, "first_article"),
  TEXT (TmPiece, extra, "extra"),
  TEXT (TmPiece, disposition, "disposition"),
  TEXT (TmPiece, disposition_note, "disposition_note"),
};

static const TmField mate_fields[] = {
  TEXT (TmMateSize, feature, "feature"),
  TEXT (TmMateSize, serial, "serial"),
  LENGTH (TmMateSize, smallest, "smallest"),
  LENGTH (TmMateSize, largest, "largest"),
  LENGTH (TmMateSize, uncertainty, "uncertainty"),
  TEXT (TmMateSize, piece, "piece"),
  NUMBER (TmMateSize, place, "place"),
  TEXT (TmMateSize, by, "measured_by"),
  TEXT (TmMateSize, at, "measured_at"),
  TEXT (TmMateSize, note, "note"),
  TEXT (TmMateSize, extra, "extra"),
};

static const TmField supply_fields[] = {
  WORD (TmSupply, kind, "kind", supply_kind_words),
  TEXT (TmSupply, name, "name"),
  TEXT (TmSupply, specification, "specification"),
  TEXT (TmSupply, code, "code"),
  TEXT (TmSupply, supplier, "supplier"),
  WORD (TmSupply, approval, "approval", approval_words),
  TEXT (TmSupply, certificate, "certificate"),
  TEXT (TmSupply, note, "note"),
  TEXT (TmSupply, extra, "extra"),
};

static const TmField sub_part_fields[] = {
  TEXT (TmSubPart, number, "number"), TEXT (TmSubPart, name, "name"),   TEXT (TmSubPart, serial, "serial"),
  TEXT (TmSubPart, report, "report"), TEXT (TmSubPart, extra, "extra"),
};

static const TmField report_field_fields[] = {
  TEXT (TmReportField, name, "name"),
  TEXT (TmReportField, value, "value"),
  TEXT (TmReportField, extra, "extra"),
};

/* The content itself is kept by its digest (book-content.c). */
static const TmField drawing_fields[] = {
  TEXT (TmDrawing, name, "name"),     TEXT (TmDrawing, sheet, "sheet"),
  TEXT (TmDrawing, media, "media"),   OTHER (PLACE, TmDrawing, page, "page"),
  TEXT (TmDrawing, digest, "digest"), TEXT (TmDrawing, extra, "extra"),
};

static const TmField balloon_fields[] = {
  TEXT (TmBalloonMark, drawing, "drawing"),
  TEXT (TmBalloonMark, feature, "feature"),
  OTHER (COUNT, TmBalloonMark, place, "place"),
  NUMBER (TmBalloonMark, x, "x"),
  NUMBER (TmBalloonMark, y, "y"),
  NUMBER (TmBalloonMark, to_x, "to_x"),
  NUMBER (TmBalloonMark, to_y, "to_y"),
  TEXT (TmBalloonMark, extra, "extra"),
};

#define ROW_START(struct_)                                                  \
  TEXT (struct_, row.id, "id"), OTHER (PIECE, struct_, row.piece, "piece"), \
      OTHER (FEATURE, struct_, row.feature, "feature")
#define ROW_END(struct_)                                                              \
  TEXT (struct_, row.by, "taken_by"), TEXT (struct_, row.at, "taken_at"),             \
      TEXT (struct_, row.replaces, "replaces"), TEXT (struct_, row.reason, "reason"), \
      TEXT (struct_, row.extra, "extra")

static const TmField reading_fields[] = {
  ROW_START (TmReading),
  OTHER (UINT, TmReading, place, "place"),
  TEXT (TmReading, station, "station"),
  LENGTH (TmReading, value, "value"),
  WORD (TmReading, outcome, "outcome", outcome_words),
  LENGTH (TmReading, dx, "dx"),
  LENGTH (TmReading, dy, "dy"),
  TEXT (TmReading, typed, "typed"),
  TEXT (TmReading, method, "method"),
  NUMBER (TmReading, part_temp, "part_temp"),
  NUMBER (TmReading, gauge_temp, "gauge_temp"),
  ROW_END (TmReading),
  TEXT (TmReading, overdue_reason, "overdue_reason"),
};

static const TmField pin_trial_fields[] = {
  ROW_START (TmPinTrial),
  LENGTH (TmPinTrial, size, "size"),
  TEXT (TmPinTrial, pin_class, "pin_class"),
  WORD (TmPinTrial, sign, "sign", sign_words),
  OTHER (BOOL, TmPinTrial, went, "went"),
  ROW_END (TmPinTrial),
  OTHER (PLACE, TmPinTrial, place, "place"),
  TEXT (TmPinTrial, gauge, "gauge"),
  LENGTH (TmPinTrial, measured, "measured"),
  TEXT (TmPinTrial, overdue_reason, "overdue_reason"),
};

static const TmField cut_fields[] = {
  ROW_START (TmCutRow),
  LENGTH (TmCutRow, dialled, "dialled"),
  OTHER (UINT, TmCutRow, passes, "passes"),
  ROW_END (TmCutRow),
  WORD (TmCutRow, reads, "reads", reads_words),
  OTHER (PLACE, TmCutRow, place, "place"),
  TEXT (TmCutRow, tool, "tool"),
  TEXT (TmCutRow, after, "after_reading"),
  TEXT (TmCutRow, note, "note"),
};

static const TmField withdrawal_fields[] = {
  TEXT (TmBookWithdrawal, target, "target"),      TEXT (TmBookWithdrawal, id, "id"),
  TEXT (TmBookWithdrawal, note.by, "done_by"),    TEXT (TmBookWithdrawal, note.at, "done_at"),
  TEXT (TmBookWithdrawal, note.reason, "reason"), TEXT (TmBookWithdrawal, note.extra, "extra"),
};

static const TmField content_fields[] = {
  TEXT (TmBookContent, digest, "digest"),
  OTHER (WIDE, TmBookContent, length, "length"),
};

static const TmField template_fields[] = {
  TEXT (TmBookTemplate, by, "changed_by"), TEXT (TmBookTemplate, at, "changed_at"),
  TEXT (TmBookTemplate, name, "name"),     TEXT (TmBookTemplate, address, "address"),
  TEXT (TmBookTemplate, accent, "accent"), TEXT (TmBookTemplate, hidden, "hidden"),
  TEXT (TmBookTemplate, logo, "logo"),     TEXT (TmBookTemplate, logo_media, "logo_media"),
  TEXT (TmBookTemplate, ground, "ground"),
};

static const TmField template_field_fields[] = {
  OTHER (WIDE, TmBookTemplateField, template, "template"),
  TEXT (TmBookTemplateField, name, "name"),
  OTHER (BOOL, TmBookTemplateField, required, "required"),
};

static const TmField template_text_fields[] = {
  OTHER (WIDE, TmBookTemplateText, template, "template"),
  OTHER (UINT, TmBookTemplateText, statement, "statement"),
  WORD (TmBookTemplateText, place, "place", statement_words),
  TEXT (TmBookTemplateText, language, "language"),
  TEXT (TmBookTemplateText, text, "text"),
};

static const TmField event_fields[] = {
  TEXT (TmEvent, before_piece, "before_piece"),
  TEXT (TmEvent, kind, "kind"),
  TEXT (TmEvent, note, "note"),
  TEXT (TmEvent, amount, "amount"),
  TEXT (TmEvent, extra, "extra"),
  TEXT (TmEvent, feature, "feature"),
  TEXT (TmEvent, tool, "tool"),
  TEXT (TmEvent, by, "seen_by"),
  TEXT (TmEvent, at, "seen_at"),
};

static const TmField nonconformance_fields[] = {
  TEXT (TmNonconformance, piece, "piece"),
  TEXT (TmNonconformance, feature, "feature"),
  TEXT (TmNonconformance, number, "number"),
  TEXT (TmNonconformance, note, "note"),
  TEXT (TmNonconformance, disposition, "disposition"),
  TEXT (TmNonconformance, extra, "extra"),
  OTHER (COUNT, TmNonconformance, place, "place"),
  TEXT (TmNonconformance, by, "raised_by"),
  TEXT (TmNonconformance, at, "raised_at"),
  TEXT (TmNonconformance, rework_by, "rework_by"),
  TEXT (TmNonconformance, rework_at, "rework_at"),
  TEXT (TmNonconformance, rework_after, "rework_after"),
};

static const TmField study_fields[] = {
  TEXT (TmStudy, name, "name"),
  TEXT (TmStudy, feature, "feature"),
  TEXT (TmStudy, method, "method"),
  WORD (TmStudy, unit, "unit", tm_book_unit_words),
  OTHER (LIST, TmStudy, pieces, "pieces"),
  OTHER (LIST, TmStudy, people, "people"),
  NUMBER (TmStudy, repeats, "repeats"),
  NUMBER (TmStudy, seed, "seed"),
  LENGTH (TmStudy, band, "band"),
  TEXT (TmStudy, at, "begun_at"),
  TEXT (TmStudy, note, "note"),
  TEXT (TmStudy, extra, "extra"),
};

static const TmField study_reading_fields[] = {
  TEXT (TmStudyReading, study, "study"),   TEXT (TmStudyReading, piece, "piece"),
  TEXT (TmStudyReading, person, "person"), NUMBER (TmStudyReading, trial, "trial"),
  LENGTH (TmStudyReading, value, "value"), TEXT (TmStudyReading, typed, "typed"),
  TEXT (TmStudyReading, at, "taken_at"),   TEXT (TmStudyReading, extra, "extra"),
};

static const TmField signature_fields[] = {
  TEXT (TmSignature, by, "signed_by"), TEXT (TmSignature, role, "role"),
  TEXT (TmSignature, at, "signed_at"), TEXT (TmSignature, digest, "digest"),
  TEXT (TmSignature, extra, "extra"),  TEXT (TmSignature, report, "report"),
  TEXT (TmSignature, pages, "pages"),  TEXT (TmSignature, workbook, "workbook"),
};

#define FIELDS(table_) .fields = table_, .n_fields = G_N_ELEMENTS (table_)
#define LIST(member_)  .list = G_STRUCT_OFFSET (TmJob, member_)

/* The naming is how a fault of verification names a row. */
static const TmKindInfo kinds[TM_N_BOOK_KINDS] = {
  [TM_BOOK_JOB] = { "job", N_ ("job %s"), "id", FALSE, FIELDS (job_fields) },
  [TM_BOOK_FACTS] = { "facts", N_ ("facts of part %s"), "part_number", TRUE, FIELDS (facts_fields) },
  [TM_BOOK_PERSON] = { "person", N_ ("person %s"), "initials", TRUE, FIELDS (person_fields), LIST (people) },
  [TM_BOOK_GAUGE] = { "gauge", N_ ("gauge %s"), "tag", TRUE, FIELDS (gauge_fields), LIST (gauges) },
  [TM_BOOK_CALIBRATION] = { "calibration", N_ ("calibration of gauge %s"), "gauge", TRUE,
                            FIELDS (calibration_fields), LIST (calibrations) },
  [TM_BOOK_CHECK]
  = { "gauge_check", N_ ("check of gauge %s"), "gauge", TRUE, FIELDS (check_fields), LIST (checks) },
  [TM_BOOK_PIN_SIZE]
  = { "pin_size", N_ ("measured pin of set %s"), "gauge", TRUE, FIELDS (pin_size_fields), LIST (pin_sizes) },
  [TM_BOOK_METHOD] = { "method", N_ ("method %s"), "name", TRUE, FIELDS (method_fields), LIST (methods) },
  [TM_BOOK_BUDGET_LINE] = { "budget_line", N_ ("budget line of method %s"), "method", TRUE,
                            FIELDS (budget_line_fields), LIST (budget_lines) },
  [TM_BOOK_TOOL] = { "tool", N_ ("tool %s"), "name", TRUE, FIELDS (tool_fields), LIST (tools) },
  [TM_BOOK_MATERIAL]
  = { "material", N_ ("material %s"), "name", TRUE, FIELDS (material_fields), LIST (materials) },
  [TM_BOOK_FEATURE]
  = { "feature", N_ ("feature %s"), "balloon", TRUE, FIELDS (feature_fields), LIST (features) },
  [TM_BOOK_PIECE] = { "piece", N_ ("piece %s"), "serial", TRUE, FIELDS (piece_fields), LIST (pieces) },
  [TM_BOOK_MATE] = { "mate", N_ ("mate %s"), "serial", TRUE, FIELDS (mate_fields), LIST (mate_sizes) },
  [TM_BOOK_SUPPLY]
  = { "supply", N_ ("material, process or test %s"), "name", TRUE, FIELDS (supply_fields), LIST (supplies) },
  [TM_BOOK_SUB_PART] = { "sub_part", N_ ("part %s of the assembly"), "number", TRUE, FIELDS (sub_part_fields),
                         LIST (sub_parts) },
  [TM_BOOK_REPORT_FIELD] = { "report_field", N_ ("field %s of the report"), "name", TRUE,
                             FIELDS (report_field_fields), LIST (report_fields) },
  [TM_BOOK_DRAWING]
  = { "drawing", N_ ("drawing %s"), "name", TRUE, FIELDS (drawing_fields), LIST (drawings) },
  [TM_BOOK_BALLOON] = { "balloon", N_ ("balloon %s on a drawing"), "feature", TRUE, FIELDS (balloon_fields),
                        LIST (balloon_marks) },
  [TM_BOOK_READING] = { "reading", N_ ("reading %s"), "id", FALSE, FIELDS (reading_fields), LIST (readings) },
  [TM_BOOK_PIN_TRIAL]
  = { "pin_trial", N_ ("pin trial %s"), "id", FALSE, FIELDS (pin_trial_fields), LIST (pin_trials) },
  [TM_BOOK_CUT] = { "cut", N_ ("cut %s"), "id", FALSE, FIELDS (cut_fields), LIST (cuts) },
  [TM_BOOK_WITHDRAWAL] = { "withdrawal", N_ ("withdrawal of %s"), "id", FALSE, FIELDS (withdrawal_fields) },
  [TM_BOOK_CONTENT] = { "content", N_ ("kept file %s"), "digest", FALSE, FIELDS (content_fields) },
  [TM_BOOK_SHOP_CONTENT] = { "shop_content", N_ ("kept file %s"), "digest", FALSE, FIELDS (content_fields) },
  [TM_BOOK_TEMPLATE]
  = { "template", N_ ("report template of %s"), "changed_at", FALSE, FIELDS (template_fields) },
  [TM_BOOK_TEMPLATE_FIELD] = { "template_field", N_ ("field %s of the report template"), "name", FALSE,
                               FIELDS (template_field_fields) },
  [TM_BOOK_TEMPLATE_TEXT] = { "template_text", N_ ("statement %s of the report template"), "statement", FALSE,
                              FIELDS (template_text_fields) },
  [TM_BOOK_EVENT] = { "event", N_ ("event %s"), "key", TRUE, FIELDS (event_fields), LIST (events) },
  [TM_BOOK_NONCONFORMANCE] = { "nonconformance", N_ ("nonconformance %s"), "number", TRUE,
                               FIELDS (nonconformance_fields), LIST (nonconformances) },
  [TM_BOOK_STUDY] = { "study", N_ ("study %s"), "name", TRUE, FIELDS (study_fields), LIST (studies) },
  [TM_BOOK_STUDY_READING] = { "study_reading", N_ ("reading of study %s"), "study", TRUE,
                              FIELDS (study_reading_fields), LIST (study_readings) },
  [TM_BOOK_SIGNATURE]
  = { "signature", N_ ("signature %s"), "key", TRUE, FIELDS (signature_fields), LIST (signatures) },
};

const TmKindInfo *
tm_kind_info (TmBookKind kind)
{
  g_assert (kind < TM_N_BOOK_KINDS);
  return &kinds[kind];
}

gboolean
tm_kind_has_bytes (TmBookKind kind)
{
  return kind == TM_BOOK_CONTENT || kind == TM_BOOK_SHOP_CONTENT;
}

char *
tm_kind_name (TmBookKind kind, const char *name)
{
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  return g_strdup_printf (_ (tm_kind_info (kind)->naming), name);
#pragma GCC diagnostic pop
}

const TmField *
tm_version_fields (guint *n)
{
  *n = G_N_ELEMENTS (version_fields);
  return version_fields;
}
