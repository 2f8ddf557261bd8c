/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-signed.h"

#include <glib/gi18n-lib.h>

#include "report-language.h"

static const char *const roles[]
    = { N_ ("Measured by"), N_ ("Reviewed by"), N_ ("Customer's approval"), NULL };

const char *const *
tm_report_roles (void)
{
  return roles;
}

TmSignedState
tm_signature_state (const TmSignature *signature, const char *digest)
{
  g_return_val_if_fail (signature != NULL, TM_SIGNED_UNKNOWN);

  if (digest == NULL)
    return TM_SIGNED_UNKNOWN;
  return g_ascii_strcasecmp (signature->digest, digest) == 0 ? TM_SIGNED_HOLDS : TM_SIGNED_SUPERSEDED;
}

static const TmSignature *
get (const TmJob *job, guint i)
{
  return g_ptr_array_index (job->signatures, i);
}

static gboolean
holds (const TmReportContent *content, const TmSignature *signature)
{
  return tm_signature_state (signature, content->digest) == TM_SIGNED_HOLDS;
}

static guint
count_holding (const TmJob *job, const char *digest)
{
  guint n = 0;

  for (guint i = 0; i < job->signatures->len; i++)
    n += tm_signature_state (get (job, i), digest) == TM_SIGNED_HOLDS;
  return n;
}

const TmSignature *
tm_job_superseded (const TmJob *job, const char *digest)
{
  g_return_val_if_fail (job != NULL, NULL);

  if (digest == NULL || job->signatures->len == 0 || count_holding (job, digest) > 0)
    return NULL;
  return get (job, job->signatures->len - 1);
}

gboolean
tm_report_role_is_signed (const TmReportContent *content, const char *role)
{
  for (guint i = 0; i < content->job->signatures->len; i++)
    {
      const TmSignature *signature = get (content->job, i);

      if (holds (content, signature) && g_str_equal (signature->role, role))
        return TRUE;
    }
  return FALSE;
}

const char *
tm_report_signer (const TmJob *job, const TmSignature *signature)
{
  const TmPerson *person = tm_job_find_person (job, signature->by);

  return person != NULL && *person->name != '\0' ? person->name : signature->by;
}

/* -------- In words -------- */

static const TmSignature *
find_newest_superseded (const TmReportContent *content)
{
  for (guint i = content->job->signatures->len; i > 0; i--)
    if (tm_signature_state (get (content->job, i - 1), content->digest) == TM_SIGNED_SUPERSEDED)
      return get (content->job, i - 1);
  return NULL;
}

char *
tm_report_say_superseded (const TmReportContent *content, TmDateForm dates)
{
  const TmSignature *signature = find_newest_superseded (content);
  g_autofree char *date = NULL;

  if (signature == NULL)
    return NULL;
  date = tm_report_date (dates, signature->at);
  if (*signature->report == '\0')
    return g_strdup_printf (_ ("An earlier report was signed by %s on %s; the record has changed since, and "
                               "this report shows it as changed."),
                            tm_report_signer (content->job, signature), date);
  return g_strdup_printf (
      _ ("An earlier report, %s, was signed by %s on %s; the record has changed since, and "
         "this report shows it as changed."),
      signature->report, tm_report_signer (content->job, signature), date);
}

char *
tm_report_say_signed_with_gaps (const TmReportContent *content)
{
  const guint n = content->gaps->len;

  if (n == 0 || count_holding (content->job, content->digest) == 0)
    return NULL;
  return g_strdup_printf (
      ngettext (
          "Signed although %u thing was missing; it is named under “Missing before it can go out”.",
          "Signed although %u things were missing; they are named under “Missing before it can go out”.", n),
      n);
}

char *
tm_report_say_signature (const TmReportContent *content, const TmSignature *signature)
{
  switch (tm_signature_state (signature, content->digest))
    {
    case TM_SIGNED_HOLDS:
      return g_strdup_printf (_ ("signed over %.16s…, the record that this report shows"), signature->digest);
    case TM_SIGNED_SUPERSEDED:
      return g_strdup_printf (_ ("signed over %.16s…; superseded: the record has changed since"),
                              signature->digest);
    case TM_SIGNED_UNKNOWN:
    default:
      return g_strdup_printf (_ ("signed over %.16s…"), signature->digest);
    }
}

/* -------- Gaps -------- */

static gboolean
is_ours (const TmGap *gap)
{
  return gap->kind == TM_GAP_SAME_IDENTIFIER || gap->kind == TM_GAP_UNSIGNED
         || gap->kind == TM_GAP_SUPERSEDED;
}

static void
add_gap (TmReportContent *content, TmGapKind kind, const char *field, const TmSignature *signature)
{
  TmGap *gap = g_new0 (TmGap, 1);

  gap->kind = kind;
  gap->station = "";
  gap->field = field;
  gap->signature = signature;
  g_ptr_array_add (content->gaps, gap);
}

void
tm_report_find_signed_gaps (TmReportContent *content)
{
  const TmSignature *superseded = tm_job_superseded (content->job, content->digest);

  for (guint i = content->gaps->len; i > 0; i--)
    if (is_ours (g_ptr_array_index (content->gaps, i - 1)))
      g_ptr_array_remove_index (content->gaps, i - 1);
  if (content->namesake != NULL)
    add_gap (content, TM_GAP_SAME_IDENTIFIER, content->namesake, NULL);
  if (content->job->signatures->len == 0)
    add_gap (content, TM_GAP_UNSIGNED, "", NULL);
  else if (superseded != NULL)
    add_gap (content, TM_GAP_SUPERSEDED, superseded->report, superseded);
}

void
tm_report_content_set_digest (TmReportContent *content, const char *digest)
{
  g_return_if_fail (content != NULL);

  g_free (content->digest);
  content->digest = g_strdup (digest);
  tm_report_find_signed_gaps (content);
}

void
tm_report_content_set_namesake (TmReportContent *content, const char *job)
{
  g_return_if_fail (content != NULL);

  g_free (content->namesake);
  content->namesake = g_strdup (job);
  tm_report_find_signed_gaps (content);
}
