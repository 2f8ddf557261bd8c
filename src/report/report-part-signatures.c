/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-signatures: who signed, and lines for those who have not.
 */

#include <glib/gi18n-lib.h>

#include "report-part.h"
#include "report-signed.h"

typedef struct {
  const TmReportContent *content;
  const TmSignature *signature;
} Signed;

static char *
say_signature (gconstpointer data)
{
  const Signed *is = data;

  return tm_report_say_signature (is->content, is->signature);
}

static void
add_signature (TmParts *parts, const TmSignature *signature)
{
  const Signed is = { parts->content, signature };
  g_autofree char *time = tm_report_time (parts->form->dates, signature->at);
  g_autofree char *said = tm_part_both (parts, say_signature, &is);

  if (g_strv_contains (tm_report_roles (), signature->role))
    tm_part_word_cell (parts, NULL, signature->role);
  else
    tm_report_add_cell (parts->document, signature->role);
  tm_report_add_cell (parts->document, tm_report_signer (parts->job, signature));
  tm_report_add_cell (parts->document, time);
  tm_report_add_cell (parts->document, said);
}

static char *
say_gaps (gconstpointer content)
{
  return tm_report_say_signed_with_gaps (content);
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
  tm_part_say (parts, say_gaps, parts->content, FALSE);
}

static gboolean
is_open (const TmParts *parts, const char *role)
{
  return !tm_report_role_is_signed (parts->content, role);
}

static guint
count_open (const TmParts *parts)
{
  guint n = 0;

  for (const char *const *role = tm_report_roles (); *role != NULL; role++)
    n += is_open (parts, *role);
  return n;
}

void
tm_part_signatures (TmParts *parts)
{
  tm_part_section (parts, N_ ("Signatures"), "signatures", FALSE);
  add_signed (parts);
  if (count_open (parts) == 0)
    return;
  tm_report_begin_signatures (parts->document, 3);
  for (const char *const *role = tm_report_roles (); *role != NULL; role++)
    {
      if (!is_open (parts, *role))
        continue;
      tm_report_add_signature (parts->document, tm_part_label (parts, NULL, *role), "");
      tm_report_add_signature (parts->document, tm_part_label (parts, NULL, N_ ("Date")), "");
      tm_report_add_signature (parts->document, tm_part_label (parts, NULL, N_ ("Signature")), "");
    }
}
