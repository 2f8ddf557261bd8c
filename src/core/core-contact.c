/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-contact.h"

const TmGaugeKind *
tm_method_touching (const TmJob *job, const char *name)
{
  const TmMethod *method = tm_job_find_method (job, name);
  const char *tag = name;
  const TmGauge *gauge;

  if (method != NULL)
    tag = method->gauges->len > 0 ? g_ptr_array_index (method->gauges, 0) : "";
  gauge = tm_job_find_gauge (job, tag);
  return gauge != NULL ? tm_gauge_kind_find (gauge->kind) : NULL;
}

TmContact
tm_method_contact (const TmJob *job, const char *name)
{
  const TmGaugeKind *kind = tm_method_touching (job, name);

  return kind != NULL ? kind->contact : TM_CONTACT_OTHER;
}
