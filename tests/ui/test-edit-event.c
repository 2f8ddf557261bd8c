/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Changes to events, to what is decided of pieces held back, and to how a batch is watched.  Needs no
 * display.
 */

#include "app-edit-chart.h"
#include "app-edit-event.h"
#include "app-edit-piece.h"
#include "core-run-rules.h"
#include "edit-support.h"

static TmEvent *
make_event (TmJob *job, const char *kind, const char *before, const char *amount)
{
  TmEvent *event = tm_event_new ();

  event->kind = tm_job_intern (job, kind);
  event->before_piece = tm_job_intern (job, before);
  event->amount = tm_job_intern (job, amount);
  return event;
}

/* The fixture's job with two events. */
static TmJob *
make_job (void)
{
  TmJob *job = ui_make_job ();

  tm_job_add_event (job, make_event (job, "tool", "001", ""));
  tm_job_add_event (job, make_event (job, "other", "002", ""));
  return job;
}

static TmEvent *
get_event (TmDocument *document, guint at)
{
  return g_ptr_array_index (tm_document_job (document)->events, at);
}

static gboolean
do_add (TmDocument *document, GError **error)
{
  return tm_edit_put_event (document, NULL,
                            make_event (tm_document_job (document), "offset", "002", "-0.005"), error);
}

static gboolean
do_change (TmDocument *document, GError **error)
{
  TmEvent *event = tm_edit_copy_event (get_event (document, 1));

  event->kind = tm_job_intern (tm_document_job (document), "lot");
  event->before_piece = tm_job_intern (tm_document_job (document), "");
  return tm_edit_put_event (document, get_event (document, 1), event, error);
}

static gboolean
do_remove (TmDocument *document, GError **error)
{
  return tm_edit_remove_event (document, get_event (document, 0), error);
}

static gboolean
do_watch (TmDocument *document, GError **error)
{
  const TmChartChoice choice = { TM_RULES_USUAL | TM_RULE_BIT (TM_RULE_9_ONE_SIDE), 5, 10 };

  return tm_edit_chart_choice (document, tm_job_find_feature (tm_document_job (document), "1"), &choice,
                               error);
}

static gboolean
do_plan (TmDocument *document, GError **error)
{
  return tm_edit_check_plan (document, tm_job_find_feature (tm_document_job (document), "1"), "every 5",
                             error);
}

static const Edit edits[] = {
  { "add-event", make_job, do_add },       { "change-event", make_job, do_change },
  { "remove-event", make_job, do_remove }, { "watch", make_job, do_watch },
  { "check-plan", make_job, do_plan },
};

typedef struct {
  const char *kind, *before, *amount, *feature, *tool;
  const char *named; /* in the refusal */
} Wrong;

static const Wrong wrong[] = {
  { "", "001", "", "", "", "kind" },           { "tool", "099", "", "", "", "099" },
  { "tool", "001", "", "77", "", "77" },       { "tool", "001", "", "", "bar 20", "bar 20" },
  { "offset", "001", "", "", "", "offset" },   { "offset", "001", "0.000", "", "", "0.000" },
  { "offset", "001", "five", "", "", "five" }, { "offset", "001", "nan", "1", "", "nan" },
};

static void
check_refused (TmDocument *document, TmEvent *old, const Wrong *row)
{
  TmJob *job = tm_document_job (document);
  TmEvent *event = make_event (job, row->kind, row->before, row->amount);
  g_autofree char *before = bytes_of (job);
  g_autofree char *after = NULL;
  g_autoptr (GError) error = NULL;

  event->feature = row->feature;
  event->tool = row->tool;
  g_assert_false (tm_edit_put_event (document, old, event, &error));
  g_assert_error (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, row->named));
  g_assert_null (strchr (error->message, '\n'));
  after = bytes_of (job);
  g_assert_cmpstr (after, ==, before);
}

/* Added or changed to, what is wrong leaves the job as it was, to the byte. */
static void
test_refuses (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());

  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      check_refused (fixture->document, NULL, &wrong[i]);
      check_refused (fixture->document, get_event (fixture->document, 0), &wrong[i]);
    }
  ui_fixture_free (fixture);
}

/* Several pieces get their disposition together; a book that does not write leaves all as they were. */
static void
test_disposes (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmJob *job = tm_document_job (fixture->document);
  g_autofree char *id = g_strdup (job->id);
  TmDisposition choice[] = { { tm_job_find_piece (job, "001"), "hold", "until Monday" },
                             { tm_job_find_piece (job, "002"), "measure", "" } };
  g_autoptr (GError) error = NULL;

  g_assert_true (tm_edit_dispose (fixture->document, choice, 2, &error));
  g_assert_cmpstr (choice[0].piece->disposition, ==, "hold");
  g_assert_cmpstr (choice[0].piece->disposition_note, ==, "until Monday");
  g_assert_cmpstr (choice[1].piece->disposition, ==, "measure");
  assert_kept (fixture);

  g_assert_finalize_object (fixture->document);
  tm_book_close (fixture->book);
  fixture->book = tm_book_open (fixture->path, TM_BOOK_OPEN_READ_ONLY, &error);
  g_assert_no_error (error);
  fixture->document
      = tm_document_new (fixture->book, tm_book_load_job (fixture->book, id, NULL, NULL, &error));
  job = tm_document_job (fixture->document);
  choice[0] = (TmDisposition) { tm_job_find_piece (job, "001"), "scrap", "cracked" };
  choice[1] = (TmDisposition) { choice[0].piece, "release", "the same piece twice" };
  g_autofree char *before = bytes_of (job);
  g_assert_false (tm_edit_dispose (fixture->document, choice, 2, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_READ_ONLY);
  g_autofree char *after = bytes_of (job);
  g_assert_cmpstr (after, ==, before);
  g_assert_cmpstr (choice[0].piece->disposition, !=, "scrap");
  g_assert_cmpstr (choice[0].piece->disposition, !=, "release");
  ui_fixture_free (fixture);
}

/* Every set of rules comes back from its words; the usual one is kept as no words at all. */
static void
test_rules (void)
{
  g_autofree char *usual = tm_chart_rules_to_words (TM_RULES_USUAL);

  g_assert_cmpstr (usual, ==, "");
  for (guint rules = 2; rules < 1u << TM_N_RUN_RULES; rules++)
    {
      g_autofree char *words = tm_chart_rules_to_words (rules);

      g_assert_cmpuint (tm_chart_rules_from_words (words), ==, rules);
    }
  g_assert_cmpuint (tm_chart_rules_from_words ("no-such-rule  beyond-3s"), ==, TM_RULES_USUAL);
  g_assert_cmpuint (tm_chart_rules_from_words (""), ==, 0);
}

static void
test_dispositions (void)
{
  guint n = 0;

  for (; tm_disposition_word (n) != NULL; n++)
    {
      g_assert_cmpuint (tm_disposition_which (tm_disposition_word (n)), ==, n);
      g_assert_cmpstr (tm_disposition_text (n), !=, "");
    }
  g_assert_cmpuint (tm_disposition_which ("melt"), ==, n);
  g_assert_null (tm_disposition_text (n));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_edits (edits, G_N_ELEMENTS (edits));
  g_test_add_func ("/edit/event/refuses", test_refuses);
  g_test_add_func ("/edit/piece/disposes", test_disposes);
  g_test_add_func ("/edit/chart/rules", test_rules);
  g_test_add_func ("/edit/piece/dispositions", test_dispositions);
  return g_test_run ();
}
