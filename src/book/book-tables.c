/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-tables: the tables, indices, views and triggers of a new book, made in one go.
 *
 * This is the newest shape.  The steps bring an older book to the same: a test holds both to the same text,
 * which is why a column stands where its step put it, and says what it says for the rows of before.
 */

#include "book-schema-sql.h"
#include "book-schema.h"

#define DEFINITION(table_, columns_)     DEFINITION_OF (table_, columns_)
#define RECORD(table_, columns_, later_) RECORD_OF (table_, columns_, later_)

#define TEXT(name_)   ", " name_ " TEXT NOT NULL"
#define WHOLE(name_)  ", " name_ " INTEGER NOT NULL"
#define MAYBE(name_)  ", " name_ " INTEGER"
#define LENGTH(name_) ", " name_ "_pm INTEGER, " name_ "_form TEXT"
#define NUMBER(name_) ", " name_ "_count INTEGER, " name_ "_form TEXT"
/* A text that joined a table which may have had rows. */
#define LATER(name_) ", " name_ " TEXT NOT NULL DEFAULT ''"

/* clang-format off */
const char tm_schema_tables[] =
  JOURNAL
  SEAL
  JOB
  DEFINITION ("facts",
    TEXT ("part_number") TEXT ("part_name") TEXT ("revision") TEXT ("drawing") TEXT ("customer")
    TEXT ("order_number") TEXT ("unit") TEXT ("material") TEXT ("standard") TEXT ("decision")
    NUMBER ("simple_ratio") TEXT ("general_tolerance") TEXT ("first_article") TEXT ("first_article_reason")
    TEXT ("first_article_baseline") TEXT ("first_article_extra") TEXT ("extra") TEXT ("job_extra")
    NUMBER ("part_temp_limit") NUMBER ("gauge_temp_limit") NUMBER ("thermometer") NUMBER ("expansion")
    LENGTH ("entry_clearance") LATER ("drift_rule") NUMBER ("drift_limit") NUMBER ("check_hours")
    NUMBER ("cut_risk") LATER ("cut_aim") LATER ("drawing_revision") LATER ("article")
    LATER ("report_identifier") LATER ("organisation") LATER ("supplier_code")
    LATER ("manufacturing_record") LATER ("drawing_changes") LATER ("language") LATER ("second_language")
    LATER ("report_extra"))
  DEFINITION ("person",
    TEXT ("initials") TEXT ("name") TEXT ("extra"))
  DEFINITION ("gauge",
    TEXT ("tag") TEXT ("kind") TEXT ("unit") LENGTH ("resolution") LENGTH ("error_limit")
    TEXT ("calibrated") TEXT ("due") TEXT ("certificate") TEXT ("extra") LATER ("serial") LATER ("owner")
    LATER ("place") LENGTH ("range_from") LENGTH ("range_to") LENGTH ("feel") NUMBER ("expansion")
    LENGTH ("pin_step") LATER ("pin_class") LATER ("pin_sign") LATER ("source") LATER ("blocks"))
  DEFINITION ("method",
    TEXT ("name") TEXT ("gauges") LENGTH ("repeatability") NUMBER ("repeatability_dof") TEXT ("extra")
    LATER ("repeatability_source"))
  DEFINITION ("feature",
    TEXT ("balloon") TEXT ("kind") TEXT ("name") TEXT ("requirement") TEXT ("unit") LENGTH ("nominal")
    LENGTH ("lower") LENGTH ("upper") TEXT ("cut") WHOLE ("envelope") TEXT ("designator") WHOLE ("places")
    TEXT ("stations") TEXT ("size_feature") TEXT ("method") TEXT ("check_rule") WHOLE ("group_size")
    TEXT ("sheet") TEXT ("zone") WHOLE ("mate_given") TEXT ("mate_kind") LENGTH ("mate_lower")
    LENGTH ("mate_upper") TEXT ("mate_extra") WHOLE ("zone_diameter") TEXT ("modifier") TEXT ("datums")
    TEXT ("extra") LATER ("counts") LENGTH ("form_unseen") LATER ("tool") LENGTH ("wanted_least")
    LENGTH ("wanted_most") LENGTH ("press_length") LENGTH ("hub_outside") LENGTH ("shaft_inside")
    LATER ("hub_material") LATER ("shaft_material") NUMBER ("friction_least") NUMBER ("friction_most")
    LENGTH ("hub_roughness") LENGTH ("shaft_roughness") LENGTH ("press_gap") LATER ("press_extra")
    LATER ("chart_rules") MAYBE ("chart_baseline") MAYBE ("affected") LATER ("tooling")
    LATER ("comment"))
  DEFINITION ("piece",
    TEXT ("serial") WHOLE ("first_article") TEXT ("extra") LATER ("disposition") LATER ("disposition_note"))
  DEFINITION ("event",
    TEXT ("before_piece") TEXT ("kind") TEXT ("note") TEXT ("amount") TEXT ("extra") LATER ("feature")
    LATER ("tool") LATER ("seen_by") LATER ("seen_at"))
  DEFINITION ("nonconformance",
    TEXT ("piece") TEXT ("feature") TEXT ("number") TEXT ("note") TEXT ("disposition") TEXT ("extra")
    MAYBE ("place") LATER ("raised_by") LATER ("raised_at") LATER ("rework_by") LATER ("rework_at")
    LATER ("rework_after"))
  DEFINITION ("signature",
    TEXT ("signed_by") TEXT ("role") TEXT ("signed_at") TEXT ("digest") TEXT ("extra") LATER ("report")
    LATER ("pages") LATER ("workbook"))
  RECORD ("reading",
    WHOLE ("place") TEXT ("station") LENGTH ("value") TEXT ("outcome") LENGTH ("dx") LENGTH ("dy")
    TEXT ("typed") TEXT ("method") NUMBER ("part_temp") NUMBER ("gauge_temp"),
    LATER ("overdue_reason"))
  RECORD ("pin_trial",
    LENGTH ("size") TEXT ("pin_class") TEXT ("sign") WHOLE ("went"),
    MAYBE ("place") LATER ("gauge") LENGTH ("measured") LATER ("overdue_reason"))
  RECORD ("cut",
    LENGTH ("dialled") WHOLE ("passes"),
    LATER ("reads") MAYBE ("place") LATER ("tool") LATER ("after_reading") LATER ("note"))
  DEFINITION ("calibration",
    TEXT ("gauge") TEXT ("date") TEXT ("due") TEXT ("certificate") TEXT ("calibrated_by")
    LENGTH ("uncertainty") NUMBER ("coverage") LENGTH ("error") TEXT ("outcome") TEXT ("note")
    TEXT ("extra"))
  DEFINITION ("gauge_check",
    TEXT ("gauge") LENGTH ("standard") LENGTH ("reading") TEXT ("checked_by") TEXT ("checked_at")
    TEXT ("note") TEXT ("extra"))
  DEFINITION ("pin_size",
    TEXT ("gauge") LENGTH ("size") LENGTH ("measured") TEXT ("extra"))
  DEFINITION ("budget_line",
    TEXT ("method") TEXT ("kind") TEXT ("name") LENGTH ("value") TEXT ("distribution") NUMBER ("divisor")
    NUMBER ("dof") TEXT ("source") TEXT ("extra"))
  DEFINITION ("study",
    TEXT ("name") TEXT ("feature") TEXT ("method") TEXT ("unit") TEXT ("pieces") TEXT ("people")
    NUMBER ("repeats") NUMBER ("seed") LENGTH ("band") TEXT ("begun_at") TEXT ("note") TEXT ("extra"))
  DEFINITION ("study_reading",
    TEXT ("study") TEXT ("piece") TEXT ("person") NUMBER ("trial") LENGTH ("value") TEXT ("typed")
    TEXT ("taken_at") TEXT ("extra"))
  DEFINITION ("tool",
    TEXT ("name") TEXT ("unit") TEXT ("reads") LENGTH ("graduation") LENGTH ("least_cut")
    LENGTH ("backlash") NUMBER ("spring_passes") TEXT ("note") TEXT ("extra") LENGTH ("offset_step"))
  DEFINITION ("material",
    TEXT ("name") NUMBER ("modulus") NUMBER ("poisson") NUMBER ("yield") NUMBER ("expansion")
    NUMBER ("cold") WHOLE ("plastic") TEXT ("source") TEXT ("extra"))
  DEFINITION ("mate",
    TEXT ("feature") TEXT ("serial") LENGTH ("smallest") LENGTH ("largest") LENGTH ("uncertainty")
    TEXT ("piece") NUMBER ("place") TEXT ("measured_by") TEXT ("measured_at") TEXT ("note") TEXT ("extra"))
  WITHDRAWAL
  DEFINITION ("supply",
    TEXT ("kind") TEXT ("name") TEXT ("specification") TEXT ("code") TEXT ("supplier") TEXT ("approval")
    TEXT ("certificate") TEXT ("note") TEXT ("extra"))
  DEFINITION ("sub_part",
    TEXT ("number") TEXT ("name") TEXT ("serial") TEXT ("report") TEXT ("extra"))
  DEFINITION ("report_field",
    TEXT ("name") TEXT ("value") TEXT ("extra"))
  DEFINITION ("drawing",
    TEXT ("name") TEXT ("sheet") TEXT ("media") MAYBE ("page") TEXT ("digest") TEXT ("extra"))
  DEFINITION ("balloon",
    TEXT ("drawing") TEXT ("feature") MAYBE ("place") NUMBER ("x") NUMBER ("y") NUMBER ("to_x")
    NUMBER ("to_y") TEXT ("extra"))
  CONTENT
  SHOP_CONTENT
  TEMPLATE_OF (LATER ("ground"))
  "CREATE INDEX reading_method ON reading (method, taken_at);\n"
  "CREATE INDEX reading_spot ON reading (job, piece, feature);\n"
  "CREATE INDEX cut_tool ON cut (tool, job);\n";
/* clang-format on */
