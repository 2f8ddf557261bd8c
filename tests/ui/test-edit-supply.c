/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Changes to the materials, processes and tests of a job, to the parts of an assembly and to the facts of the
 * report.  Needs no display.
 */

#include "app-edit-field.h"
#include "app-edit-supply.h"
#include "edit-support.h"

static TmSupply *
make_supply (TmSupplyKind kind, const char *name)
{
  TmSupply *supply = tm_supply_new ();

  supply->kind = kind;
  supply->name = name;
  return supply;
}

static TmSubPart *
make_part (const char *number)
{
  TmSubPart *part = tm_sub_part_new ();

  part->number = number;
  return part;
}

static TmJob *
make_job (void)
{
  TmJob *job = ui_make_job ();

  tm_job_add_supply (job, make_supply (TM_SUPPLY_MATERIAL, "bar"));
  tm_job_add_supply (job, make_supply (TM_SUPPLY_PROCESS, "nitriding"));
  tm_job_add_sub_part (job, make_part ("P-1"));
  tm_job_add_sub_part (job, make_part ("P-2"));
  return job;
}

static TmSupply *
get_supply (TmDocument *document, guint at)
{
  return g_ptr_array_index (tm_document_job (document)->supplies, at);
}

static TmSubPart *
get_part (TmDocument *document, guint at)
{
  return g_ptr_array_index (tm_document_job (document)->sub_parts, at);
}

static gboolean
do_add (TmDocument *document, GError **error)
{
  TmSupply *supply = make_supply (TM_SUPPLY_TEST, "leak test");

  supply->certificate = "LT-7";
  supply->approval = TM_APPROVAL_NOT_ASKED;
  return tm_edit_put_supply (document, NULL, supply, error);
}

static gboolean
do_change (TmDocument *document, GError **error)
{
  TmSupply *supply = tm_edit_copy_supply (get_supply (document, 0));

  supply->certificate = "4711";
  supply->approval = TM_APPROVAL_YES;
  return tm_edit_put_supply (document, get_supply (document, 0), supply, error);
}

static gboolean
do_remove (TmDocument *document, GError **error)
{
  return tm_edit_remove_supply (document, get_supply (document, 0), error);
}

static gboolean
do_add_part (TmDocument *document, GError **error)
{
  return tm_edit_put_sub_part (document, NULL, make_part ("P-3"), error);
}

static gboolean
do_change_part (TmDocument *document, GError **error)
{
  TmSubPart *part = tm_edit_copy_sub_part (get_part (document, 1));

  part->report = "FA-12";
  return tm_edit_put_sub_part (document, get_part (document, 1), part, error);
}

static gboolean
do_remove_part (TmDocument *document, GError **error)
{
  return tm_edit_remove_sub_part (document, get_part (document, 0), error);
}

static void
change_facts (TmJob *job, gpointer data)
{
  job->report_identifier = "FA-0042";
  job->drawing_revision = "D";
  job->article = TM_ARTICLE_ASSEMBLY;
  job->first_article = TM_FIRST_ARTICLE_AGAIN;
  job->language = "de";
  job->second_language = "en";
}

static gboolean
do_facts (TmDocument *document, GError **error)
{
  return tm_edit_facts (document, change_facts, NULL, error);
}

static TmReportField *
make_field (const char *name, const char *value)
{
  TmReportField *field = tm_report_field_new ();

  field->name = name;
  field->value = value;
  return field;
}

static TmJob *
make_job_with_fields (void)
{
  TmJob *job = make_job ();

  tm_job_add_report_field (job, make_field ("Heat number", "H-1"));
  tm_job_add_report_field (job, make_field ("Packed by", "AB"));
  return job;
}

static void
change_fields (TmJob *job, gpointer data)
{
  ((TmReportField *)g_ptr_array_index (job->report_fields, 0))->value = "H-2";
  tm_job_remove_report_field (job, g_ptr_array_index (job->report_fields, 1));
  tm_job_add_report_field (job, make_field ("Box", "7"));
  job->report_identifier = "FA-0042";
}

static gboolean
do_fields (TmDocument *document, GError **error)
{
  return tm_edit_report_facts (document, change_fields, NULL, error);
}

static void
add_first_field (TmJob *job, gpointer data)
{
  tm_job_add_report_field (job, make_field ("Box", "7"));
}

static gboolean
do_first_field (TmDocument *document, GError **error)
{
  return tm_edit_report_facts (document, add_first_field, NULL, error);
}

static const Edit edits[] = {
  { "add-supply", make_job, do_add },
  { "change-supply", make_job, do_change },
  { "remove-supply", make_job, do_remove },
  { "add-sub-part", make_job, do_add_part },
  { "change-sub-part", make_job, do_change_part },
  { "remove-sub-part", make_job, do_remove_part },
  { "report-facts", make_job, do_facts },
  { "report-fields", make_job_with_fields, do_fields },
  { "first-report-field", make_job, do_first_field },
};

/* One without a name leaves the job as it was, to the byte, added or changed to. */
static void
test_refuses (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  g_autofree char *before = bytes_of (tm_document_job (fixture->document));

  for (guint i = 0; i < 4; i++)
    {
      TmDocument *document = fixture->document;
      g_autofree char *after = NULL;
      g_autoptr (GError) error = NULL;

      if (i < 2)
        g_assert_false (tm_edit_put_supply (document, i == 0 ? NULL : get_supply (document, 0),
                                            make_supply (TM_SUPPLY_TEST, ""), &error));
      else
        g_assert_false (
            tm_edit_put_sub_part (document, i == 2 ? NULL : get_part (document, 0), make_part (""), &error));
      g_assert_error (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED);
      after = bytes_of (tm_document_job (document));
      g_assert_cmpstr (after, ==, before);
    }
  ui_fixture_free (fixture);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_edits (edits, G_N_ELEMENTS (edits));
  g_test_add_func ("/edit/supply/refuses", test_refuses);
  return g_test_run ();
}
