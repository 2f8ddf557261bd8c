/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Any bytes as a table of features: a preview or one line that says why not; what the preview says can
 * be added is added, and the job is written and read again.
 */

#include "exchange-table.h"
#include "fuzz-driver.h"

#include <string.h>

const char *const fuzz_seeds[] = {
  "Balloon,Requirement,Name\n1,\xc3\x98"
  "25 H7,Seat\n2,\"4X \xc3\x98"
  "6.5 \xc2\xb1"
  "0.1\",\"a \"\"b\"\"\nc\"\n",
  "No;Lower;Upper;Nominal;Unit;Kind;Class;Qty\n5;\"0,745\";0,755;0,75;in;bore;key;3\n;1;2;;;;;\n",
  "1\t12 max\tx\n2\tRa 1.6\ty\n3\t40\tz\n",
  "sep=;\nSpec;No\n90\xc2\xb0 \xc2\xb1"
  "1\xc2\xb0;1\n",
  "25 H7\n30 h6\n",
  NULL,
};

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) job = tm_job_new ();
  g_autoptr (TmJob) again = NULL;
  g_autoptr (TmTablePreview) preview = NULL;
  g_autoptr (GString) text = NULL;

  job->id = job->part_number = tm_job_intern (job, "P");
  preview = tm_table_preview ((const char *)data, size, "f", job, &error);
  if (preview == NULL)
    {
      g_assert_nonnull (error);
      g_assert_true (g_str_has_prefix (error->message, "f: "));
      g_assert_null (strpbrk (error->message, "\n\r\t"));
      return 0;
    }
  g_assert_no_error (error);
  g_assert_cmpuint (tm_table_apply (preview, job), ==, preview->n_addable);
  text = tm_job_to_string (job);
  again = tm_job_from_bytes (text->str, text->len, "f", NULL, NULL, NULL, &error);
  if (again == NULL)
    g_error ("%s\n%s", error->message, text->str);
  g_assert_cmpuint (again->features->len, ==, preview->n_addable);
  return 0;
}
