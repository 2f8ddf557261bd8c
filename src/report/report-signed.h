/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-signed: what the signatures of a job say of its record as it is now.
 */

#pragma once

#include "report-content.h"
#include "report-form.h"

G_BEGIN_DECLS

typedef enum {
  TM_SIGNED_UNKNOWN,    /* the record's digest is not known */
  TM_SIGNED_HOLDS,      /* what was signed is what the record says */
  TM_SIGNED_SUPERSEDED, /* the record has changed since */
} TmSignedState;

/* @digest is that of the record as it is now; NULL: not known. */
TmSignedState tm_signature_state (const TmSignature *signature, const char *digest);

/* The newest signature of @job when none holds by @digest; NULL when one holds, there is none, or @digest is
 * NULL. */
const TmSignature *tm_job_superseded (const TmJob *job, const char *digest);

/* The roles that pages and workbook leave a line for, marked for translation; NULL-terminated. */
const char *const *tm_report_roles (void);
/* Whether somebody's signature in that role holds. */
gboolean tm_report_role_is_signed (const TmReportContent *content, const char *role);

/* The name of the person that signed, else the initials; borrowed. */
const char *tm_report_signer (const TmJob *job, const TmSignature *signature);

/* "An earlier report, FA-7, was signed by … on …; the record has changed since…", of the newest signature
 * that does not hold; NULL when there is none; free it. */
char *tm_report_say_superseded (const TmReportContent *content, TmDateForm dates) G_GNUC_WARN_UNUSED_RESULT;

/* "Signed although 2 things were missing; they are named under …"; NULL when nothing is missing or no
 * signature holds; free it. */
char *tm_report_say_signed_with_gaps (const TmReportContent *content) G_GNUC_WARN_UNUSED_RESULT;

/* "signed over 3f1c…", with what became of it; free it. */
char *tm_report_say_signature (const TmReportContent *content,
                               const TmSignature *signature) G_GNUC_WARN_UNUSED_RESULT;

/* Puts the gaps that signatures and namesake make after the others, in place of those that they made. */
void tm_report_find_signed_gaps (TmReportContent *content);

G_END_DECLS
