/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-job-members.h"

static const TmJsonMember first_article_members[] = {
  [FIRST_ARTICLE_KIND] = { "kind", TM_JSON_TEXT },
  [FIRST_ARTICLE_REASON] = { "reason", TM_JSON_TEXT },
  [FIRST_ARTICLE_BASELINE] = { "baseline", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember report_members[] = {
  [REPORT_IDENTIFIER] = { "identifier", TM_JSON_TEXT },
  [REPORT_ORGANISATION] = { "organisation", TM_JSON_TEXT },
  [REPORT_SUPPLIER_CODE] = { "supplier_code", TM_JSON_TEXT },
  [REPORT_MANUFACTURING_RECORD] = { "manufacturing_record", TM_JSON_TEXT },
  [REPORT_DRAWING_CHANGES] = { "drawing_changes", TM_JSON_TEXT },
  [REPORT_ARTICLE] = { "article", TM_JSON_TEXT },
  [REPORT_LANGUAGE] = { "language", TM_JSON_TEXT },
  [REPORT_SECOND_LANGUAGE] = { "second_language", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember job_members[] = {
  [JOB_ID] = { "id", TM_JSON_TEXT },
  [JOB_PART_NUMBER] = { "part_number", TM_JSON_TEXT },
  [JOB_PART_NAME] = { "part_name", TM_JSON_TEXT },
  [JOB_REVISION] = { "revision", TM_JSON_TEXT },
  [JOB_DRAWING] = { "drawing", TM_JSON_TEXT },
  [JOB_DRAWING_REVISION] = { "drawing_revision", TM_JSON_TEXT },
  [JOB_CUSTOMER] = { "customer", TM_JSON_TEXT },
  [JOB_ORDER] = { "order", TM_JSON_TEXT },
  [JOB_UNIT] = { "unit", TM_JSON_TEXT },
  [JOB_MATERIAL] = { "material", TM_JSON_TEXT },
  [JOB_STANDARD] = { "standard", TM_JSON_TEXT },
  [JOB_DECISION] = { "decision", TM_JSON_TEXT },
  [JOB_SIMPLE_RATIO] = { "simple_ratio", TM_JSON_TEXT },
  [JOB_GENERAL_TOLERANCE] = { "general_tolerance", TM_JSON_TEXT },
  [JOB_PART_TEMP_LIMIT] = { "part_temp_limit", TM_JSON_TEXT },
  [JOB_GAUGE_TEMP_LIMIT] = { "gauge_temp_limit", TM_JSON_TEXT },
  [JOB_THERMOMETER] = { "thermometer", TM_JSON_TEXT },
  [JOB_EXPANSION] = { "expansion", TM_JSON_TEXT },
  [JOB_ENTRY_CLEARANCE] = { "entry_clearance", TM_JSON_TEXT },
  [JOB_DRIFT_RULE] = { "drift_rule", TM_JSON_TEXT },
  [JOB_DRIFT_LIMIT] = { "drift_limit", TM_JSON_TEXT },
  [JOB_CHECK_HOURS] = { "check_hours", TM_JSON_TEXT },
  [JOB_CUT_RISK] = { "cut_risk", TM_JSON_TEXT },
  [JOB_CUT_AIM] = { "cut_aim", TM_JSON_TEXT },
  [JOB_FIRST_ARTICLE] = { "first_article", TM_JSON_OBJECT, first_article_members },
  [JOB_REPORT] = { "report", TM_JSON_OBJECT, report_members },
  { NULL },
};

static const TmJsonMember person_members[] = {
  [PERSON_INITIALS] = { "initials", TM_JSON_TEXT },
  [PERSON_NAME] = { "name", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember gauge_members[] = {
  [GAUGE_TAG] = { "tag", TM_JSON_TEXT },
  [GAUGE_KIND] = { "kind", TM_JSON_TEXT },
  [GAUGE_UNIT] = { "unit", TM_JSON_TEXT },
  [GAUGE_RESOLUTION] = { "resolution", TM_JSON_TEXT },
  [GAUGE_ERROR_LIMIT] = { "error_limit", TM_JSON_TEXT },
  [GAUGE_CALIBRATED] = { "calibrated", TM_JSON_TEXT },
  [GAUGE_DUE] = { "due", TM_JSON_TEXT },
  [GAUGE_CERTIFICATE] = { "certificate", TM_JSON_TEXT },
  [GAUGE_SERIAL] = { "serial", TM_JSON_TEXT },
  [GAUGE_OWNER] = { "owner", TM_JSON_TEXT },
  [GAUGE_PLACE] = { "place", TM_JSON_TEXT },
  [GAUGE_RANGE_FROM] = { "range_from", TM_JSON_TEXT },
  [GAUGE_RANGE_TO] = { "range_to", TM_JSON_TEXT },
  [GAUGE_FEEL] = { "feel", TM_JSON_TEXT },
  [GAUGE_EXPANSION] = { "expansion", TM_JSON_TEXT },
  [GAUGE_PIN_STEP] = { "pin_step", TM_JSON_TEXT },
  [GAUGE_PIN_CLASS] = { "pin_class", TM_JSON_TEXT },
  [GAUGE_PIN_SIGN] = { "pin_sign", TM_JSON_TEXT },
  [GAUGE_BLOCKS] = { "blocks", TM_JSON_TEXT },
  [GAUGE_SOURCE] = { "source", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember calibration_members[] = {
  [CALIBRATION_GAUGE] = { "gauge", TM_JSON_TEXT },
  [CALIBRATION_DATE] = { "date", TM_JSON_TEXT },
  [CALIBRATION_DUE] = { "due", TM_JSON_TEXT },
  [CALIBRATION_CERTIFICATE] = { "certificate", TM_JSON_TEXT },
  [CALIBRATION_BY] = { "by", TM_JSON_TEXT },
  [CALIBRATION_UNCERTAINTY] = { "uncertainty", TM_JSON_TEXT },
  [CALIBRATION_COVERAGE] = { "coverage", TM_JSON_TEXT },
  [CALIBRATION_ERROR] = { "error", TM_JSON_TEXT },
  [CALIBRATION_OUTCOME] = { "outcome", TM_JSON_TEXT },
  [CALIBRATION_NOTE] = { "note", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember check_members[] = {
  [CHECK_GAUGE] = { "gauge", TM_JSON_TEXT },
  [CHECK_STANDARD] = { "standard", TM_JSON_TEXT },
  [CHECK_READING] = { "reading", TM_JSON_TEXT },
  [CHECK_BY] = { "by", TM_JSON_TEXT },
  [CHECK_AT] = { "at", TM_JSON_TEXT },
  [CHECK_NOTE] = { "note", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember pin_size_members[] = {
  [PIN_SIZE_GAUGE] = { "gauge", TM_JSON_TEXT },
  [PIN_SIZE_SIZE] = { "size", TM_JSON_TEXT },
  [PIN_SIZE_MEASURED] = { "measured", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember method_members[] = {
  [METHOD_NAME] = { "name", TM_JSON_TEXT },
  [METHOD_GAUGES] = { "gauges", TM_JSON_LIST },
  [METHOD_REPEATABILITY] = { "repeatability", TM_JSON_TEXT },
  [METHOD_REPEATABILITY_DOF] = { "repeatability_dof", TM_JSON_TEXT },
  [METHOD_REPEATABILITY_SOURCE] = { "repeatability_source", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember budget_line_members[] = {
  [LINE_METHOD] = { "method", TM_JSON_TEXT },
  [LINE_KIND] = { "kind", TM_JSON_TEXT },
  [LINE_NAME] = { "name", TM_JSON_TEXT },
  [LINE_VALUE] = { "value", TM_JSON_TEXT },
  [LINE_DISTRIBUTION] = { "distribution", TM_JSON_TEXT },
  [LINE_DIVISOR] = { "divisor", TM_JSON_TEXT },
  [LINE_DOF] = { "dof", TM_JSON_TEXT },
  [LINE_SOURCE] = { "source", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember mate_members[] = {
  [MATE_KIND] = { "kind", TM_JSON_TEXT },
  [MATE_LOWER] = { "lower", TM_JSON_TEXT },
  [MATE_UPPER] = { "upper", TM_JSON_TEXT },
  [MATE_WANTED_LEAST] = { "wanted_least", TM_JSON_TEXT },
  [MATE_WANTED_MOST] = { "wanted_most", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember press_members[] = {
  [PRESS_LENGTH] = { "length", TM_JSON_TEXT },
  [PRESS_HUB_OUTSIDE] = { "hub_outside", TM_JSON_TEXT },
  [PRESS_SHAFT_INSIDE] = { "shaft_inside", TM_JSON_TEXT },
  [PRESS_HUB_MATERIAL] = { "hub_material", TM_JSON_TEXT },
  [PRESS_SHAFT_MATERIAL] = { "shaft_material", TM_JSON_TEXT },
  [PRESS_FRICTION_LEAST] = { "friction_least", TM_JSON_TEXT },
  [PRESS_FRICTION_MOST] = { "friction_most", TM_JSON_TEXT },
  [PRESS_HUB_ROUGHNESS] = { "hub_roughness", TM_JSON_TEXT },
  [PRESS_SHAFT_ROUGHNESS] = { "shaft_roughness", TM_JSON_TEXT },
  [PRESS_GAP] = { "gap", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember tool_members[] = {
  [TOOL_NAME] = { "name", TM_JSON_TEXT },
  [TOOL_UNIT] = { "unit", TM_JSON_TEXT },
  [TOOL_READS] = { "reads", TM_JSON_TEXT },
  [TOOL_GRADUATION] = { "graduation", TM_JSON_TEXT },
  [TOOL_LEAST_CUT] = { "least_cut", TM_JSON_TEXT },
  [TOOL_BACKLASH] = { "backlash", TM_JSON_TEXT },
  [TOOL_SPRING_PASSES] = { "spring_passes", TM_JSON_WHOLE },
  [TOOL_OFFSET_STEP] = { "offset_step", TM_JSON_TEXT },
  [TOOL_NOTE] = { "note", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember material_members[] = {
  [MATERIAL_NAME] = { "name", TM_JSON_TEXT },
  [MATERIAL_MODULUS] = { "modulus", TM_JSON_TEXT },
  [MATERIAL_POISSON] = { "poisson", TM_JSON_TEXT },
  [MATERIAL_YIELD] = { "yield", TM_JSON_TEXT },
  [MATERIAL_EXPANSION] = { "expansion", TM_JSON_TEXT },
  [MATERIAL_COLD] = { "cold", TM_JSON_TEXT },
  [MATERIAL_PLASTIC] = { "plastic", TM_JSON_TRUTH },
  [MATERIAL_SOURCE] = { "source", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember mate_size_members[] = {
  [MATE_SIZE_FEATURE] = { "feature", TM_JSON_TEXT },
  [MATE_SIZE_SERIAL] = { "serial", TM_JSON_TEXT },
  [MATE_SIZE_SMALLEST] = { "smallest", TM_JSON_TEXT },
  [MATE_SIZE_LARGEST] = { "largest", TM_JSON_TEXT },
  [MATE_SIZE_UNCERTAINTY] = { "uncertainty", TM_JSON_TEXT },
  [MATE_SIZE_PIECE] = { "piece", TM_JSON_TEXT },
  [MATE_SIZE_PLACE] = { "place", TM_JSON_WHOLE },
  [MATE_SIZE_BY] = { "by", TM_JSON_TEXT },
  [MATE_SIZE_AT] = { "at", TM_JSON_TEXT },
  [MATE_SIZE_NOTE] = { "note", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember feature_members[] = {
  [FEATURE_BALLOON] = { "balloon", TM_JSON_TEXT },
  [FEATURE_KIND] = { "kind", TM_JSON_TEXT },
  [FEATURE_NAME] = { "name", TM_JSON_TEXT },
  [FEATURE_REQUIREMENT] = { "requirement", TM_JSON_TEXT },
  [FEATURE_UNIT] = { "unit", TM_JSON_TEXT },
  [FEATURE_NOMINAL] = { "nominal", TM_JSON_TEXT },
  [FEATURE_LOWER] = { "lower", TM_JSON_TEXT },
  [FEATURE_UPPER] = { "upper", TM_JSON_TEXT },
  [FEATURE_CUT] = { "cut", TM_JSON_TEXT },
  [FEATURE_ENVELOPE] = { "envelope", TM_JSON_TRUTH },
  [FEATURE_CLASS] = { "class", TM_JSON_TEXT },
  [FEATURE_PLACES] = { "places", TM_JSON_WHOLE },
  [FEATURE_STATIONS] = { "stations", TM_JSON_LIST },
  [FEATURE_SIZE_FEATURE] = { "size_feature", TM_JSON_TEXT },
  [FEATURE_METHOD] = { "method", TM_JSON_TEXT },
  [FEATURE_CHECK] = { "check", TM_JSON_TEXT },
  [FEATURE_GROUP_SIZE] = { "group_size", TM_JSON_WHOLE },
  [FEATURE_SHEET] = { "sheet", TM_JSON_TEXT },
  [FEATURE_ZONE] = { "zone", TM_JSON_TEXT },
  [FEATURE_TOOLING] = { "tooling", TM_JSON_TEXT },
  [FEATURE_COMMENT] = { "comment", TM_JSON_TEXT },
  [FEATURE_AFFECTED] = { "affected", TM_JSON_TRUTH },
  [FEATURE_COUNTS] = { "counts", TM_JSON_TEXT },
  [FEATURE_FORM_UNSEEN] = { "form_unseen", TM_JSON_TEXT },
  [FEATURE_TOOL] = { "tool", TM_JSON_TEXT },
  [FEATURE_CHART_RULES] = { "chart_rules", TM_JSON_TEXT },
  [FEATURE_CHART_BASELINE] = { "chart_baseline", TM_JSON_WHOLE },
  [FEATURE_MATE] = { "mate", TM_JSON_OBJECT, mate_members },
  [FEATURE_PRESS] = { "press", TM_JSON_OBJECT, press_members },
  { NULL },
};

static const TmJsonMember piece_members[] = {
  [PIECE_SERIAL] = { "serial", TM_JSON_TEXT },
  [PIECE_FIRST_ARTICLE] = { "first_article", TM_JSON_TRUTH },
  [PIECE_DISPOSITION] = { "disposition", TM_JSON_TEXT },
  [PIECE_DISPOSITION_NOTE] = { "disposition_note", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember withdrawn_members[] = {
  [WITHDRAWN_BY] = { "by", TM_JSON_TEXT },
  [WITHDRAWN_AT] = { "at", TM_JSON_TEXT },
  [WITHDRAWN_REASON] = { "reason", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember reading_members[] = {
  [ROW_ID] = { "id", TM_JSON_TEXT },
  [ROW_PIECE] = { "piece", TM_JSON_TEXT },
  [ROW_FEATURE] = { "feature", TM_JSON_TEXT },
  [READING_PLACE] = { "place", TM_JSON_WHOLE },
  [READING_STATION] = { "station", TM_JSON_TEXT },
  [READING_VALUE] = { "value", TM_JSON_TEXT },
  [READING_TYPED] = { "typed", TM_JSON_TEXT },
  [READING_DX] = { "dx", TM_JSON_TEXT },
  [READING_DY] = { "dy", TM_JSON_TEXT },
  [READING_METHOD] = { "method", TM_JSON_TEXT },
  [READING_BY] = { "by", TM_JSON_TEXT },
  [READING_AT] = { "at", TM_JSON_TEXT },
  [READING_PART_TEMP] = { "part_temp", TM_JSON_TEXT },
  [READING_GAUGE_TEMP] = { "gauge_temp", TM_JSON_TEXT },
  [READING_OVERDUE_REASON] = { "overdue_reason", TM_JSON_TEXT },
  [READING_REPLACES] = { "replaces", TM_JSON_TEXT },
  [READING_REASON] = { "reason", TM_JSON_TEXT },
  [READING_WITHDRAWN] = { "withdrawn", TM_JSON_OBJECT, withdrawn_members },
  { NULL },
};
const TmRowMembers tm_reading_row_members
    = { READING_BY, READING_AT, READING_REPLACES, READING_REASON, READING_WITHDRAWN };

static const TmJsonMember trial_members[] = {
  [ROW_ID] = { "id", TM_JSON_TEXT },
  [ROW_PIECE] = { "piece", TM_JSON_TEXT },
  [ROW_FEATURE] = { "feature", TM_JSON_TEXT },
  [TRIAL_PLACE] = { "place", TM_JSON_WHOLE },
  [TRIAL_SIZE] = { "size", TM_JSON_TEXT },
  [TRIAL_CLASS] = { "class", TM_JSON_TEXT },
  [TRIAL_SIGN] = { "sign", TM_JSON_TEXT },
  [TRIAL_MEASURED] = { "measured", TM_JSON_TEXT },
  [TRIAL_GAUGE] = { "gauge", TM_JSON_TEXT },
  [TRIAL_WENT] = { "went", TM_JSON_TRUTH },
  [TRIAL_BY] = { "by", TM_JSON_TEXT },
  [TRIAL_AT] = { "at", TM_JSON_TEXT },
  [TRIAL_OVERDUE_REASON] = { "overdue_reason", TM_JSON_TEXT },
  [TRIAL_REPLACES] = { "replaces", TM_JSON_TEXT },
  [TRIAL_REASON] = { "reason", TM_JSON_TEXT },
  [TRIAL_WITHDRAWN] = { "withdrawn", TM_JSON_OBJECT, withdrawn_members },
  { NULL },
};
const TmRowMembers tm_trial_row_members
    = { TRIAL_BY, TRIAL_AT, TRIAL_REPLACES, TRIAL_REASON, TRIAL_WITHDRAWN };

static const TmJsonMember cut_members[] = {
  [ROW_ID] = { "id", TM_JSON_TEXT },
  [ROW_PIECE] = { "piece", TM_JSON_TEXT },
  [ROW_FEATURE] = { "feature", TM_JSON_TEXT },
  [CUT_PLACE] = { "place", TM_JSON_WHOLE },
  [CUT_DIALLED] = { "dialled", TM_JSON_TEXT },
  [CUT_READS] = { "reads", TM_JSON_TEXT },
  [CUT_PASSES] = { "passes", TM_JSON_WHOLE },
  [CUT_TOOL] = { "tool", TM_JSON_TEXT },
  [CUT_AFTER] = { "after", TM_JSON_TEXT },
  [CUT_NOTE] = { "note", TM_JSON_TEXT },
  [CUT_BY] = { "by", TM_JSON_TEXT },
  [CUT_AT] = { "at", TM_JSON_TEXT },
  [CUT_REPLACES] = { "replaces", TM_JSON_TEXT },
  [CUT_REASON] = { "reason", TM_JSON_TEXT },
  [CUT_WITHDRAWN] = { "withdrawn", TM_JSON_OBJECT, withdrawn_members },
  { NULL },
};
const TmRowMembers tm_cut_row_members = { CUT_BY, CUT_AT, CUT_REPLACES, CUT_REASON, CUT_WITHDRAWN };

static const TmJsonMember event_members[] = {
  [EVENT_BEFORE_PIECE] = { "before_piece", TM_JSON_TEXT },
  [EVENT_KIND] = { "kind", TM_JSON_TEXT },
  [EVENT_NOTE] = { "note", TM_JSON_TEXT },
  [EVENT_AMOUNT] = { "amount", TM_JSON_TEXT },
  [EVENT_FEATURE] = { "feature", TM_JSON_TEXT },
  [EVENT_TOOL] = { "tool", TM_JSON_TEXT },
  [EVENT_BY] = { "by", TM_JSON_TEXT },
  [EVENT_AT] = { "at", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember nonconformance_members[] = {
  [NONCONFORMANCE_PIECE] = { "piece", TM_JSON_TEXT },
  [NONCONFORMANCE_FEATURE] = { "feature", TM_JSON_TEXT },
  [NONCONFORMANCE_PLACE] = { "place", TM_JSON_WHOLE },
  [NONCONFORMANCE_NUMBER] = { "number", TM_JSON_TEXT },
  [NONCONFORMANCE_NOTE] = { "note", TM_JSON_TEXT },
  [NONCONFORMANCE_DISPOSITION] = { "disposition", TM_JSON_TEXT },
  [NONCONFORMANCE_BY] = { "by", TM_JSON_TEXT },
  [NONCONFORMANCE_AT] = { "at", TM_JSON_TEXT },
  [NONCONFORMANCE_REWORK_BY] = { "rework_by", TM_JSON_TEXT },
  [NONCONFORMANCE_REWORK_AT] = { "rework_at", TM_JSON_TEXT },
  [NONCONFORMANCE_REWORK_AFTER] = { "rework_after", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember supply_members[] = {
  [SUPPLY_KIND] = { "kind", TM_JSON_TEXT },
  [SUPPLY_NAME] = { "name", TM_JSON_TEXT },
  [SUPPLY_SPECIFICATION] = { "specification", TM_JSON_TEXT },
  [SUPPLY_CODE] = { "code", TM_JSON_TEXT },
  [SUPPLY_SUPPLIER] = { "supplier", TM_JSON_TEXT },
  [SUPPLY_APPROVAL] = { "approval", TM_JSON_TEXT },
  [SUPPLY_CERTIFICATE] = { "certificate", TM_JSON_TEXT },
  [SUPPLY_NOTE] = { "note", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember sub_part_members[] = {
  [SUB_PART_NUMBER] = { "number", TM_JSON_TEXT },
  [SUB_PART_NAME] = { "name", TM_JSON_TEXT },
  [SUB_PART_SERIAL] = { "serial", TM_JSON_TEXT },
  [SUB_PART_REPORT] = { "report", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember report_field_members[] = {
  [REPORT_FIELD_NAME] = { "name", TM_JSON_TEXT },
  [REPORT_FIELD_VALUE] = { "value", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember drawing_members[] = {
  [DRAWING_NAME] = { "name", TM_JSON_TEXT },
  [DRAWING_SHEET] = { "sheet", TM_JSON_TEXT },
  [DRAWING_MEDIA] = { "media", TM_JSON_TEXT },
  [DRAWING_PAGE] = { "page", TM_JSON_WHOLE },
  [DRAWING_DIGEST] = { "digest", TM_JSON_TEXT },
  [DRAWING_CONTENT] = { "content", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember balloon_members[] = {
  [BALLOON_DRAWING] = { "drawing", TM_JSON_TEXT },
  [BALLOON_FEATURE] = { "feature", TM_JSON_TEXT },
  [BALLOON_PLACE] = { "place", TM_JSON_WHOLE },
  [BALLOON_X] = { "x", TM_JSON_TEXT },
  [BALLOON_Y] = { "y", TM_JSON_TEXT },
  [BALLOON_TO_X] = { "to_x", TM_JSON_TEXT },
  [BALLOON_TO_Y] = { "to_y", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember study_members[] = {
  [STUDY_NAME] = { "name", TM_JSON_TEXT },       [STUDY_FEATURE] = { "feature", TM_JSON_TEXT },
  [STUDY_METHOD] = { "method", TM_JSON_TEXT },   [STUDY_UNIT] = { "unit", TM_JSON_TEXT },
  [STUDY_PIECES] = { "pieces", TM_JSON_LIST },   [STUDY_PEOPLE] = { "people", TM_JSON_LIST },
  [STUDY_REPEATS] = { "repeats", TM_JSON_TEXT }, [STUDY_SEED] = { "seed", TM_JSON_TEXT },
  [STUDY_BAND] = { "band", TM_JSON_TEXT },       [STUDY_AT] = { "at", TM_JSON_TEXT },
  [STUDY_NOTE] = { "note", TM_JSON_TEXT },       { NULL },
};

static const TmJsonMember study_reading_members[] = {
  [STUDY_READING_STUDY] = { "study", TM_JSON_TEXT },   [STUDY_READING_PIECE] = { "piece", TM_JSON_TEXT },
  [STUDY_READING_PERSON] = { "person", TM_JSON_TEXT }, [STUDY_READING_TRIAL] = { "trial", TM_JSON_TEXT },
  [STUDY_READING_VALUE] = { "value", TM_JSON_TEXT },   [STUDY_READING_TYPED] = { "typed", TM_JSON_TEXT },
  [STUDY_READING_AT] = { "at", TM_JSON_TEXT },         { NULL },
};

static const TmJsonMember signature_members[] = {
  [SIGNATURE_BY] = { "by", TM_JSON_TEXT },
  [SIGNATURE_ROLE] = { "role", TM_JSON_TEXT },
  [SIGNATURE_AT] = { "at", TM_JSON_TEXT },
  [SIGNATURE_DIGEST] = { "digest", TM_JSON_TEXT },
  [SIGNATURE_REPORT] = { "report", TM_JSON_TEXT },
  [SIGNATURE_PAGES] = { "pages", TM_JSON_TEXT },
  [SIGNATURE_WORKBOOK] = { "workbook", TM_JSON_TEXT },
  { NULL },
};

const TmJsonMember tm_job_sections[] = {
  [IN_FORMAT] = { "format", TM_JSON_TEXT },
  [IN_VERSION] = { "version", TM_JSON_WHOLE },
  [IN_JOB] = { "job", TM_JSON_OBJECT, job_members },
  [IN_PEOPLE] = { "people", TM_JSON_ROWS, person_members },
  [IN_GAUGES] = { "gauges", TM_JSON_ROWS, gauge_members },
  [IN_CALIBRATIONS] = { "calibrations", TM_JSON_ROWS, calibration_members },
  [IN_CHECKS] = { "checks", TM_JSON_ROWS, check_members },
  [IN_PIN_SIZES] = { "pin_sizes", TM_JSON_ROWS, pin_size_members },
  [IN_METHODS] = { "methods", TM_JSON_ROWS, method_members },
  [IN_BUDGET_LINES] = { "budget_lines", TM_JSON_ROWS, budget_line_members },
  [IN_TOOLS] = { "tools", TM_JSON_ROWS, tool_members },
  [IN_MATERIALS] = { "materials", TM_JSON_ROWS, material_members },
  [IN_SUPPLIES] = { "supplies", TM_JSON_ROWS, supply_members },
  [IN_SUB_PARTS] = { "sub_parts", TM_JSON_ROWS, sub_part_members },
  [IN_REPORT_FIELDS] = { "report_fields", TM_JSON_ROWS, report_field_members },
  [IN_FEATURES] = { "features", TM_JSON_ROWS, feature_members },
  [IN_DRAWINGS] = { "drawings", TM_JSON_ROWS, drawing_members },
  [IN_BALLOONS] = { "balloons", TM_JSON_ROWS, balloon_members },
  [IN_PIECES] = { "pieces", TM_JSON_ROWS, piece_members },
  [IN_MATES] = { "mates", TM_JSON_ROWS, mate_size_members },
  [IN_READINGS] = { "readings", TM_JSON_ROWS, reading_members },
  [IN_PIN_TRIALS] = { "pin_trials", TM_JSON_ROWS, trial_members },
  [IN_CUTS] = { "cuts", TM_JSON_ROWS, cut_members },
  [IN_EVENTS] = { "events", TM_JSON_ROWS, event_members },
  [IN_NONCONFORMANCES] = { "nonconformances", TM_JSON_ROWS, nonconformance_members },
  [IN_STUDIES] = { "studies", TM_JSON_ROWS, study_members },
  [IN_STUDY_READINGS] = { "study_readings", TM_JSON_ROWS, study_reading_members },
  [IN_SIGNATURES] = { "signatures", TM_JSON_ROWS, signature_members },
  { NULL },
};
