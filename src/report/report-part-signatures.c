/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-signatures: who signed, and lines to sign on.
 */

#include <glib/gi18n-lib.h>

#include "report-part.h"

static char *
say_digest (gconstpointer digest)
{
  return g_strdup_printf (_ ("signed over %.16s…"), (const char *)digest);
}

static void
add_signature (TmParts *parts, const TmSignature *signature)
{
  const TmPerson *person = tm_job_find_person (parts->job, signature->by);
  g_autofree char *time = tm_report_time (parts->form->dates, signature->at);
  g_autofree char *digest = tm_part_both (parts, say_digest, signature->digest);

  tm_report_add_cell (parts->document, signature->role);
  tm_report_add_cell (parts->document, person != NULL ? person->name : signature->by);
  tm_report_add_cell (parts->document, time);
  tm_report_add_cell (parts->document, digest);
}

static void
add_signed (TmParts *parts)
{
  static const TmReportColumn columns[] = { { N_ ("Role"), 60, 140, 1, TM_CELL_STRONG },
                                            { N_ ("Name"), 60, 160, 1, TM_CELL_PLAIN },
                                            { N_ ("Date"), 60, 130, 0, TM_CELL_PLAIN },
                                            { N_ ("Signature"), 80, 0, 1, TM_CELL_PLAIN } };
  const GPtrArray *signatures = parts->job->signatures;

  if (signatures->len == 0)
    return;
  tm_part_table (parts, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < signatures->len; i++)
    add_signature (parts, g_ptr_array_index (signatures, i));
}

void
tm_part_signatures (TmParts *parts)
{
  static const char *const roles[] = { N_ ("Measured by"), N_ ("Reviewed by"), N_ ("Customer's approval") };

  tm_part_section (parts, N_ ("Signatures"), "signatures", FALSE);
  add_signed (parts);
  tm_report_begin_signatures (parts->document, 3);
  for (gsize i = 0; i < G_N_ELEMENTS (roles); i++)
    {
      tm_report_add_signature (parts->document, tm_part_label (parts, NULL, roles[i]), "");
      tm_report_add_signature (parts->document, tm_part_label (parts, NULL, N_ ("Date")), "");
      tm_report_add_signature (parts->document, tm_part_label (parts, NULL, N_ ("Signature")), "");
    }
}
