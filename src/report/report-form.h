/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-form: how a report looks: the customer's languages, form of numbers and dates, and paper, and the
 * shop's template.
 */

#pragma once

#include "core-template.h"

G_BEGIN_DECLS

typedef enum { TM_PAPER_A4, TM_PAPER_LETTER } TmPaper;
typedef enum { TM_DECIMAL_POINT, TM_DECIMAL_COMMA } TmDecimal;

typedef enum {
  TM_DATE_ISO, /* 2026-05-04 */
  TM_DATE_DMY, /* 04.05.2026 */
  TM_DATE_MDY, /* 05/04/2026 */
} TmDateForm;

/* All zero: the language of the program, ISO dates, a decimal point, A4, portrait. */
typedef struct {
  const char *language;        /* "de", "en"…; NULL or "": that of the program */
  const char *second_language; /* beside it; NULL or "": none */
  TmDecimal decimal;
  TmDateForm dates;
  TmPaper paper;
  gboolean landscape;
  const TmTemplate *template; /* of the shop's own; NULL: none; outlives whoever is given the form */
} TmReportForm;

/* The paper of the user's locale: Letter where LC_PAPER or the territory says so, else A4. */
TmPaper tm_paper_of_locale (void);

G_END_DECLS
