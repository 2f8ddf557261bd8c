/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-facts: the facts of part, order and accountability, in the order that pages and workbook print them.
 */

#pragma once

#include "report-content.h"

G_BEGIN_DECLS

/* What is done where the job does not hold a fact. */
typedef enum {
  TM_FACT_OPTIONAL, /* nothing is printed */
  TM_FACT_REQUIRED, /* stands as unknown */
  TM_FACT_BY_HAND,  /* the workbook leaves room for it to be filled in */
} TmFactNeed;

typedef struct {
  const char *label; /* marked for translation, or the shop's own */
  const char *value; /* "": not known; borrowed from the job, or owned by the list */
  TmFactNeed need;
  gboolean is_word; /* the value is marked for translation */
  gboolean is_own;  /* label and value are of the shop's own template: never translated */
} TmReportFact;

typedef struct {
  GArray *facts; /* TmReportFact */
  char *pieces;  /* private */
  char *tooling; /* private */
} TmReportFacts;

/* All facts; free what it holds with tm_report_facts_clear(). */
void tm_report_facts (const TmReportContent *content, TmReportFacts *out);
void tm_report_facts_clear (TmReportFacts *facts);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmReportFacts, tm_report_facts_clear)

/* The identifier of the report: as the shop numbers it, else the job's own. */
const char *tm_report_identifier (const TmJob *job);

/* "full", "partial" or "re-inspection", marked for translation. */
const char *tm_report_kind_word (TmFirstArticleKind kind);

/* What is not measured for a partial first article: "Not measured again, by reference to baseline report
 * FA-7: features 2, 3, 5."; NULL where everything is; free it. */
char *tm_report_referred (const TmReportContent *content) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
