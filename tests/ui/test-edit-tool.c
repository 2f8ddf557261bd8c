/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Changes to the tools of a job, and to which tool cuts which feature.  Needs no display.
 */

#include "app-edit-tool.h"
#include "edit-support.h"

static TmTool *
make_tool (const char *name, const char *graduation)
{
  TmTool *tool = tm_tool_new ();

  tool->name = name;
  g_assert_cmpint (tm_quantity_read (graduation, TM_UNIT_MM, &tool->graduation), ==, TM_READ_OK);
  return tool;
}

/* Three tools; the second cuts feature 1. */
static TmJob *
make_job (void)
{
  TmJob *job = ui_make_job ();

  g_assert_cmpint (tm_job_add_tool (job, make_tool ("head", "0.01")), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_tool (job, make_tool ("bar", "0.02")), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_tool (job, make_tool ("slide", "0.05")), ==, TM_ADD_OK);
  tm_job_find_feature (job, "1")->tool = "bar";
  return job;
}

static gboolean
do_add (TmDocument *document, GError **error)
{
  return tm_edit_put_tool (document, NULL, make_tool ("cutter", "0.01"), error);
}

static gboolean
do_replace (TmDocument *document, GError **error)
{
  return tm_edit_put_tool (document, "bar", make_tool ("bar", "0.005"), error);
}

static gboolean
do_rename (TmDocument *document, GError **error)
{
  return tm_edit_put_tool (document, "head", make_tool ("boring head", "0.01"), error);
}

static gboolean
do_remove (TmDocument *document, GError **error)
{
  return tm_edit_remove_tool (document, "head", error);
}

static gboolean
do_give (TmDocument *document, GError **error)
{
  return tm_edit_set_feature_tool (document, "2", "slide", error);
}

static gboolean
do_take_off (TmDocument *document, GError **error)
{
  return tm_edit_set_feature_tool (document, "1", NULL, error);
}

/* Tools of another job: one that is new here, one whose name is taken. */
static gboolean
do_take (TmDocument *document, GError **error)
{
  g_autoptr (TmJob) other = ui_make_job ();
  TmTool *form = make_tool (tm_job_intern (other, "form tool"), "0.01");
  guint n = 0;
  gboolean taken;

  form->note = tm_job_intern (other, "left hand");
  g_assert_cmpint (tm_job_add_tool (other, form), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_tool (other, make_tool ("bar", "0.5")), ==, TM_ADD_OK);
  taken = tm_edit_take_tools (document, other, &n, error);
  g_assert_cmpuint (n, ==, taken ? 1 : 0);
  return taken;
}

static const Edit edits[] = {
  { "add-tool", make_job, do_add },       { "replace-tool", make_job, do_replace },
  { "rename-tool", make_job, do_rename }, { "remove-tool", make_job, do_remove },
  { "give-tool", make_job, do_give },     { "take-off-tool", make_job, do_take_off },
  { "take-tools", make_job, do_take },
};

/* A tool that a feature names keeps its name and stays; a name is taken once. */
static void
test_refused (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmDocument *document = fixture->document;
  g_autofree char *before = bytes_of (tm_document_job (document));
  g_autofree char *after = NULL;
  GError *errors[6] = { NULL };
  guint n = 0;

  g_assert_false (tm_edit_remove_tool (document, "bar", &errors[n++]));
  g_assert_false (tm_edit_put_tool (document, "bar", make_tool ("other", "0.02"), &errors[n++]));
  g_assert_false (tm_edit_put_tool (document, NULL, make_tool ("bar", "0.02"), &errors[n++]));
  g_assert_false (tm_edit_put_tool (document, NULL, make_tool ("zero", "0"), &errors[n++]));
  g_assert_false (tm_edit_set_feature_tool (document, "1", "nobody", &errors[n++]));
  g_assert_false (tm_edit_set_feature_tool (document, "99", "bar", &errors[n++]));
  for (guint i = 0; i < n; i++)
    {
      g_assert_error (errors[i], TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED);
      g_assert_null (strchr (errors[i]->message, '\n'));
      g_clear_error (&errors[i]);
    }
  after = bytes_of (tm_document_job (document));
  g_assert_cmpstr (after, ==, before);
  ui_fixture_free (fixture);
}

/* What a job file would refuse is named before it is kept. */
static void
test_problem (void)
{
  TmTool *tool = make_tool ("bar", "0.01");

  g_assert_null (tm_edit_tool_problem (tool));
  tool->spring_passes = tm_quantity_new (1001, TM_UNIT_COUNT, 0);
  g_assert_nonnull (tm_edit_tool_problem (tool));
  tool->spring_passes = TM_QUANTITY_NONE;
  tool->backlash = tm_quantity_new (-1, TM_UNIT_MM, 3);
  g_assert_nonnull (tm_edit_tool_problem (tool));
  tm_tool_free (tool);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_edits (edits, G_N_ELEMENTS (edits));
  g_test_add_func ("/edit/tool-refused", test_refused);
  g_test_add_func ("/edit/tool-problem", test_problem);
  return g_test_run ();
}
