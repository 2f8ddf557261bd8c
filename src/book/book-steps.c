/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-steps: how a book of an earlier version becomes one of the next.
 */

#include "book-schema-sql.h"
#include "book-schema.h"

/* Here the columns are one text without a comma before it. */
#define DEFINITION(table_, columns_) DEFINITION_OF (table_, ", " columns_)
#define RECORD(table_, columns_)     RECORD_OF (table_, ", " columns_, "")

/* clang-format off */
static const char version_1[] =
    JOURNAL
    SEAL
    JOB
    DEFINITION ("facts",
        "part_number TEXT NOT NULL, part_name TEXT NOT NULL, revision TEXT NOT NULL, "
        "drawing TEXT NOT NULL, customer TEXT NOT NULL, order_number TEXT NOT NULL, "
        "unit TEXT NOT NULL, material TEXT NOT NULL, standard TEXT NOT NULL, "
        "decision TEXT NOT NULL, simple_ratio_count INTEGER, simple_ratio_form TEXT, "
        "general_tolerance TEXT NOT NULL, first_article TEXT NOT NULL, "
        "first_article_reason TEXT NOT NULL, first_article_baseline TEXT NOT NULL, "
        "first_article_extra TEXT NOT NULL, extra TEXT NOT NULL, job_extra TEXT NOT NULL")
    DEFINITION ("person",
        "initials TEXT NOT NULL, name TEXT NOT NULL, extra TEXT NOT NULL")
    DEFINITION ("gauge",
        "tag TEXT NOT NULL, kind TEXT NOT NULL, unit TEXT NOT NULL, resolution_pm INTEGER, "
        "resolution_form TEXT, error_limit_pm INTEGER, error_limit_form TEXT, "
        "calibrated TEXT NOT NULL, due TEXT NOT NULL, certificate TEXT NOT NULL, "
        "extra TEXT NOT NULL")
    DEFINITION ("method",
        "name TEXT NOT NULL, gauges TEXT NOT NULL, repeatability_pm INTEGER, "
        "repeatability_form TEXT, repeatability_dof_count INTEGER, repeatability_dof_form TEXT, "
        "extra TEXT NOT NULL")
    DEFINITION ("feature",
        "balloon TEXT NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, "
        "requirement TEXT NOT NULL, unit TEXT NOT NULL, nominal_pm INTEGER, nominal_form TEXT, "
        "lower_pm INTEGER, lower_form TEXT, upper_pm INTEGER, upper_form TEXT, "
        "cut TEXT NOT NULL, envelope INTEGER NOT NULL, designator TEXT NOT NULL, "
        "places INTEGER NOT NULL, stations TEXT NOT NULL, size_feature TEXT NOT NULL, "
        "method TEXT NOT NULL, check_rule TEXT NOT NULL, group_size INTEGER NOT NULL, "
        "sheet TEXT NOT NULL, zone TEXT NOT NULL, mate_given INTEGER NOT NULL, "
        "mate_kind TEXT NOT NULL, mate_lower_pm INTEGER, mate_lower_form TEXT, "
        "mate_upper_pm INTEGER, mate_upper_form TEXT, mate_extra TEXT NOT NULL, "
        "zone_diameter INTEGER NOT NULL, modifier TEXT NOT NULL, datums TEXT NOT NULL, "
        "extra TEXT NOT NULL")
    DEFINITION ("piece",
        "serial TEXT NOT NULL, first_article INTEGER NOT NULL, extra TEXT NOT NULL")
    DEFINITION ("event",
        "before_piece TEXT NOT NULL, kind TEXT NOT NULL, note TEXT NOT NULL, "
        "amount TEXT NOT NULL, extra TEXT NOT NULL")
    DEFINITION ("nonconformance",
        "piece TEXT NOT NULL, feature TEXT NOT NULL, number TEXT NOT NULL, note TEXT NOT NULL, "
        "disposition TEXT NOT NULL, extra TEXT NOT NULL")
    DEFINITION ("signature",
        "signed_by TEXT NOT NULL, role TEXT NOT NULL, signed_at TEXT NOT NULL, "
        "digest TEXT NOT NULL, extra TEXT NOT NULL")
    RECORD ("reading",
        "place INTEGER NOT NULL, station TEXT NOT NULL, value_pm INTEGER, value_form TEXT, "
        "outcome TEXT NOT NULL, dx_pm INTEGER, dx_form TEXT, dy_pm INTEGER, dy_form TEXT, "
        "typed TEXT NOT NULL, method TEXT NOT NULL, part_temp_count INTEGER, "
        "part_temp_form TEXT, gauge_temp_count INTEGER, gauge_temp_form TEXT")
    RECORD ("pin_trial",
        "size_pm INTEGER, size_form TEXT, pin_class TEXT NOT NULL, sign TEXT NOT NULL, "
        "went INTEGER NOT NULL")
    RECORD ("cut",
        "dialled_pm INTEGER, dialled_form TEXT, passes INTEGER NOT NULL")
    WITHDRAWAL;

/* A column that joins a table.  Rows of before have the default, which their journal facts leave out. */
#define JOINS(table_, column_)      "ALTER TABLE " table_ " ADD COLUMN " column_ ";\n"
#define JOINS_TEXT(table_, column_) JOINS (table_, column_ " TEXT NOT NULL DEFAULT ''")
#define JOINS_QUANTITY(table_, name_, suffix_) \
  JOINS (table_, name_ suffix_ " INTEGER") JOINS (table_, name_ "_form TEXT")
#define JOINS_LENGTH(table_, name_) JOINS_QUANTITY (table_, name_, "_pm")
#define JOINS_NUMBER(table_, name_) JOINS_QUANTITY (table_, name_, "_count")

/* What a reading proves: the gauges' history, pins, budgets and studies.  The indices are for a recall: what
 * was measured with this gauge since then, and what else was read there. */
static const char version_2[] =
    JOINS_NUMBER ("facts", "part_temp_limit")
    JOINS_NUMBER ("facts", "gauge_temp_limit")
    JOINS_NUMBER ("facts", "thermometer")
    JOINS_NUMBER ("facts", "expansion")
    JOINS_LENGTH ("facts", "entry_clearance")
    JOINS_TEXT ("facts", "drift_rule")
    JOINS_NUMBER ("facts", "drift_limit")
    JOINS_NUMBER ("facts", "check_hours")
    JOINS_TEXT ("gauge", "serial")
    JOINS_TEXT ("gauge", "owner")
    JOINS_TEXT ("gauge", "place")
    JOINS_LENGTH ("gauge", "range_from")
    JOINS_LENGTH ("gauge", "range_to")
    JOINS_LENGTH ("gauge", "feel")
    JOINS_NUMBER ("gauge", "expansion")
    JOINS_LENGTH ("gauge", "pin_step")
    JOINS_TEXT ("gauge", "pin_class")
    JOINS_TEXT ("gauge", "pin_sign")
    JOINS_TEXT ("gauge", "source")
    JOINS_TEXT ("method", "repeatability_source")
    JOINS_TEXT ("feature", "counts")
    JOINS_LENGTH ("feature", "form_unseen")
    JOINS_TEXT ("reading", "overdue_reason")
    JOINS ("pin_trial", "place INTEGER")
    JOINS_TEXT ("pin_trial", "gauge")
    JOINS_LENGTH ("pin_trial", "measured")
    JOINS_TEXT ("pin_trial", "overdue_reason")
    DEFINITION ("calibration",
        "gauge TEXT NOT NULL, date TEXT NOT NULL, due TEXT NOT NULL, certificate TEXT NOT NULL, "
        "calibrated_by TEXT NOT NULL, uncertainty_pm INTEGER, uncertainty_form TEXT, "
        "coverage_count INTEGER, coverage_form TEXT, error_pm INTEGER, error_form TEXT, "
        "outcome TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL")
    DEFINITION ("gauge_check",
        "gauge TEXT NOT NULL, standard_pm INTEGER, standard_form TEXT, reading_pm INTEGER, "
        "reading_form TEXT, checked_by TEXT NOT NULL, checked_at TEXT NOT NULL, "
        "note TEXT NOT NULL, extra TEXT NOT NULL")
    DEFINITION ("pin_size",
        "gauge TEXT NOT NULL, size_pm INTEGER, size_form TEXT, measured_pm INTEGER, "
        "measured_form TEXT, extra TEXT NOT NULL")
    DEFINITION ("budget_line",
        "method TEXT NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, value_pm INTEGER, "
        "value_form TEXT, distribution TEXT NOT NULL, divisor_count INTEGER, divisor_form TEXT, "
        "dof_count INTEGER, dof_form TEXT, source TEXT NOT NULL, extra TEXT NOT NULL")
    DEFINITION ("study",
        "name TEXT NOT NULL, feature TEXT NOT NULL, method TEXT NOT NULL, unit TEXT NOT NULL, "
        "pieces TEXT NOT NULL, people TEXT NOT NULL, repeats_count INTEGER, repeats_form TEXT, "
        "seed_count INTEGER, seed_form TEXT, band_pm INTEGER, band_form TEXT, "
        "begun_at TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL")
    DEFINITION ("study_reading",
        "study TEXT NOT NULL, piece TEXT NOT NULL, person TEXT NOT NULL, trial_count INTEGER, "
        "trial_form TEXT, value_pm INTEGER, value_form TEXT, typed TEXT NOT NULL, "
        "taken_at TEXT NOT NULL, extra TEXT NOT NULL")
    "CREATE INDEX reading_method ON reading (method, taken_at);\n"
    "CREATE INDEX reading_spot ON reading (job, piece, "
    "feature);\n";

/* What was cut and what goes in: tools, cuts at their places, measured mates, press fits.  The index is for
 * how a tool answered before. */
static const char version_3[] =
    JOINS_NUMBER ("facts", "cut_risk")
    JOINS_TEXT ("facts", "cut_aim")
    JOINS_TEXT ("gauge", "blocks")
    JOINS_TEXT ("feature", "tool")
    JOINS_LENGTH ("feature", "wanted_least")
    JOINS_LENGTH ("feature", "wanted_most")
    JOINS_LENGTH ("feature", "press_length")
    JOINS_LENGTH ("feature", "hub_outside")
    JOINS_LENGTH ("feature", "shaft_inside")
    JOINS_TEXT ("feature", "hub_material")
    JOINS_TEXT ("feature", "shaft_material")
    JOINS_NUMBER ("feature", "friction_least")
    JOINS_NUMBER ("feature", "friction_most")
    JOINS_LENGTH ("feature", "hub_roughness")
    JOINS_LENGTH ("feature", "shaft_roughness")
    JOINS_LENGTH ("feature", "press_gap")
    JOINS_TEXT ("feature", "press_extra")
    JOINS_TEXT ("cut", "reads")
    JOINS ("cut", "place INTEGER")
    JOINS_TEXT ("cut", "tool")
    JOINS_TEXT ("cut", "after_reading")
    JOINS_TEXT ("cut", "note")
    DEFINITION ("tool",
                "name TEXT NOT NULL, unit TEXT NOT NULL, reads TEXT NOT NULL, graduation_pm INTEGER,"
                " graduation_form TEXT, least_cut_pm INTEGER, least_cut_form TEXT, backlash_pm INTEGER,"
                " backlash_form TEXT, spring_passes_count INTEGER, spring_passes_form TEXT,"
                " note TEXT NOT NULL, extra TEXT NOT NULL")
    DEFINITION ("material",
                "name TEXT NOT NULL, modulus_count INTEGER, modulus_form TEXT, poisson_count INTEGER,"
                " poisson_form TEXT, yield_count INTEGER, yield_form TEXT, expansion_count INTEGER,"
                " expansion_form TEXT, cold_count INTEGER, cold_form TEXT, plastic INTEGER NOT NULL,"
                " source TEXT NOT NULL, extra TEXT NOT NULL")
    DEFINITION ("mate",
                "feature TEXT NOT NULL, serial TEXT NOT NULL, smallest_pm INTEGER, smallest_form TEXT,"
                " largest_pm INTEGER, largest_form TEXT, uncertainty_pm INTEGER, uncertainty_form TEXT,"
                " piece TEXT NOT NULL, place_count INTEGER, place_form TEXT, measured_by TEXT NOT NULL,"
                " measured_at TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL")
    "CREATE INDEX cut_tool ON cut (tool, job);\n";

/* The batch: what happened between two pieces and to what, what becomes of pieces held back, how the charts
 * are drawn. */
static const char version_4[] =
    JOINS_TEXT ("event", "feature")
    JOINS_TEXT ("event", "tool")
    JOINS_TEXT ("event", "seen_by")
    JOINS_TEXT ("event", "seen_at")
    JOINS_TEXT ("piece", "disposition")
    JOINS_TEXT ("piece", "disposition_note")
    JOINS_TEXT ("feature", "chart_rules")
    JOINS ("feature", "chart_baseline INTEGER")
    JOINS_LENGTH ("tool", "offset_step");

/* The report: its facts, materials, processes and tests, drawings with their balloons, reworks, and the bytes
 * of what was drawn and signed. */
static const char version_5[] =
    JOINS_TEXT ("facts", "drawing_revision")
    JOINS_TEXT ("facts", "article")
    JOINS_TEXT ("facts", "report_identifier")
    JOINS_TEXT ("facts", "organisation")
    JOINS_TEXT ("facts", "supplier_code")
    JOINS_TEXT ("facts", "manufacturing_record")
    JOINS_TEXT ("facts", "drawing_changes")
    JOINS_TEXT ("facts", "language")
    JOINS_TEXT ("facts", "second_language")
    JOINS_TEXT ("facts", "report_extra")
    JOINS ("feature", "affected INTEGER")
    JOINS_TEXT ("feature", "tooling")
    JOINS_TEXT ("feature", "comment")
    JOINS ("nonconformance", "place INTEGER")
    JOINS_TEXT ("nonconformance", "raised_by")
    JOINS_TEXT ("nonconformance", "raised_at")
    JOINS_TEXT ("nonconformance", "rework_by")
    JOINS_TEXT ("nonconformance", "rework_at")
    JOINS_TEXT ("nonconformance", "rework_after")
    JOINS_TEXT ("signature", "report")
    JOINS_TEXT ("signature", "pages")
    JOINS_TEXT ("signature", "workbook")
    DEFINITION ("supply",
                "kind TEXT NOT NULL, name TEXT NOT NULL, specification TEXT NOT NULL, code TEXT NOT NULL,"
                " supplier TEXT NOT NULL, approval TEXT NOT NULL, certificate TEXT NOT NULL,"
                " note TEXT NOT NULL, extra TEXT NOT NULL")
    DEFINITION ("sub_part",
                "number TEXT NOT NULL, name TEXT NOT NULL, serial TEXT NOT NULL, report TEXT NOT NULL,"
                " extra TEXT NOT NULL")
    DEFINITION ("report_field", "name TEXT NOT NULL, value TEXT NOT NULL, extra TEXT NOT NULL")
    DEFINITION ("drawing",
                "name TEXT NOT NULL, sheet TEXT NOT NULL, media TEXT NOT NULL, page INTEGER,"
                " digest TEXT NOT NULL, extra TEXT NOT NULL")
    DEFINITION ("balloon",
                "drawing TEXT NOT NULL, feature TEXT NOT NULL, place INTEGER, x_count INTEGER, x_form TEXT,"
                " y_count INTEGER, y_form TEXT, to_x_count INTEGER, to_x_form TEXT, to_y_count INTEGER,"
                " to_y_form TEXT, extra TEXT NOT NULL")
    CONTENT;

/* What belongs to the whole shop: the template of its reports. */
static const char version_6[] =
    SHOP_CONTENT
    TEMPLATE_OF ("");

/* A second colour of the shop's. */
static const char version_7[] =
    JOINS_TEXT ("template", "ground");
/* clang-format on */

static const char *const steps[]
    = { version_1, version_2, version_3, version_4, version_5, version_6, version_7 };

const TmSchema tm_schema = { steps, G_N_ELEMENTS (steps), tm_schema_tables };
