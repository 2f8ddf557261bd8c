/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-revision: the job of a new revision of a part, begun from the job of the revision before.
 *
 * What is unaffected is carried over and spoken of by the baseline report; what is affected is measured
 * again.  What belongs to the pieces that were made (the record, measured mates, certificates of their
 * material, serials of parts put in, answers to the shop's own fields) stays with the job that made them.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* Texts are borrowed; "" where there is nothing to say. */
typedef struct {
  const char *id; /* of the new job */
  const char *revision;
  const char *drawing_revision; /* "": that of the part */
  const char *report;           /* identifier of the new report, or "" */
  const char *reason;           /* why it is measured again */
  const char *baseline;         /* report that speaks of what is not; of a full one left out */
  gboolean full;                /* a full first article: everything is measured again */
  const char *const *affected;  /* balloons, NULL-terminated; NULL: none */
} TmRevision;

typedef enum {
  TM_REVISION_OK,
  TM_REVISION_UNNAMED,     /* no revision */
  TM_REVISION_SAME,        /* that of the job it starts from */
  TM_REVISION_NO_REASON,   /* of a partial first article, as are the rest */
  TM_REVISION_NO_BASELINE, /* no report that speaks of what is not measured again */
  TM_REVISION_NO_AFFECTED, /* nothing would be measured */
  TM_REVISION_NO_FEATURE,  /* a balloon that the job has not */
  TM_N_REVISION_STATUSES
} TmRevisionStatus;

/* Whether @revision can be begun from @job; @balloon (may be NULL) gets the one that is not there. */
TmRevisionStatus tm_revision_check (const TmJob *job, const TmRevision *revision, const char **balloon);

/* The message template, marked for translation. */
const char *tm_revision_status_text (TmRevisionStatus status);

/* The features of @job, as a set of const TmFeature *, that are measured again when the @balloons
 * (NULL-terminated) are affected: those, and each position whose bonus comes from a size among them. */
GHashTable *tm_revision_affected (const TmJob *job, const char *const *balloons) G_GNUC_WARN_UNUSED_RESULT;

/* Makes @job, a copy of the definitions of the job before without its record, the job of @revision, which
 * tm_revision_check() has found good. */
void tm_job_revise (TmJob *job, const TmRevision *revision);

/* Whether @with is to another requirement than @before (callout, limits, kind, places, datums): the baseline
 * report cannot speak of it any more. */
gboolean tm_feature_requires_other (const TmFeature *before, const TmFeature *with);

/* TRUE for a partial first article in which something is marked as affected: then what is new or changed has
 * to be marked as well. */
gboolean tm_job_is_by_reference (const TmJob *job);

G_END_DECLS
