/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The shop's template in the book: whole, for good, version by version, and found out when it is touched.
 */

#include "book-fixture.h"
#include "support-template.h"

#define AT "2026-05-04T09:12:33Z"

static TmBook *
open_book (const Place *place)
{
  GError *error = NULL;
  TmBook *book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);

  g_assert_no_error (error);
  return book;
}

static void
save (TmBook *book, const TmTemplate *template)
{
  GError *error = NULL;

  g_assert_true (tm_book_save_template (book, template, "RW", AT, &error));
  g_assert_no_error (error);
}

static void
assert_holds (TmBook *book, const TmTemplate *wanted)
{
  GError *error = NULL;
  g_autoptr (TmTemplate) found = tm_book_template (book, &error);

  g_assert_no_error (error);
  g_assert_true (tm_template_equal (found, wanted));
}

static void
test_comes_back (Place *place, gconstpointer data)
{
  g_autoptr (TmTemplate) wanted = tm_test_template ();
  g_autoptr (TmTemplate) blank = tm_template_new ();
  g_autoptr (TmTemplate) found = NULL;
  TmBook *book = open_book (place);

  assert_holds (book, blank);
  save (book, wanted);
  assert_holds (book, wanted);
  tm_book_close (book);
  assert_clean (place->path);
  book = open_book (place);
  found = tm_book_template (book, NULL);
  g_assert_true (g_bytes_equal (found->logo, wanted->logo));
  g_assert_cmpint (tm_template_check (found, NULL), ==, TM_TEMPLATE_OK);
  tm_book_close (book);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM template WHERE changed_by = 'RW'"
                                          " AND changed_at = '" AT "'"),
                   ==, 1);
}

/* Every change is a version; the same again is none; taking it away is one too, and all of them stay. */
static void
test_versions (Place *place, gconstpointer data)
{
  g_autoptr (TmTemplate) template = tm_test_template ();
  g_autoptr (TmTemplate) blank = tm_template_new ();
  TmBook *book = open_book (place);

  save (book, NULL);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM journal"), ==, 0);
  save (book, template);
  save (book, template);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM template"), ==, 1);
  tm_template_set_text (&template->name, "Another name\\with\tsigns");
  g_ptr_array_set_size (template->fields, 1);
  save (book, template);
  assert_holds (book, template);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM template"), ==, 2);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM template_field"), ==, 3);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM shop_content"), ==, 1);
  save (book, NULL);
  assert_holds (book, blank);
  save (book, template);
  assert_holds (book, template);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM template"), ==, 4);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM shop_content"), ==, 1);
  tm_book_close (book);
  assert_clean (place->path);
}

/* The list has who and when, the newest first; each can be read, and taken again it is one more. */
static void
test_taken_again (Place *place, gconstpointer data)
{
  g_autoptr (TmTemplate) first = tm_test_template ();
  g_autoptr (TmTemplate) second = tm_template_copy (first);
  g_autoptr (TmTemplate) found = NULL;
  g_autoptr (GPtrArray) versions = NULL;
  const TmBookTemplateVersion *version;
  GError *error = NULL;
  TmBook *book = open_book (place);

  versions = tm_book_template_versions (book, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (versions->len, ==, 0);
  g_clear_pointer (&versions, g_ptr_array_unref);
  save (book, first);
  second->ground = 0x102030;
  tm_template_set_text (&second->name, "Second");
  g_assert_true (tm_book_save_template (book, second, "KM", "2026-06-01T10:00:00Z", &error));
  save (book, NULL);
  versions = tm_book_template_versions (book, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (versions->len, ==, 3);
  version = g_ptr_array_index (versions, 0);
  g_assert_true (version->is_empty);
  version = g_ptr_array_index (versions, 1);
  g_assert_false (version->is_empty);
  g_assert_cmpstr (version->by, ==, "KM");
  g_assert_cmpstr (version->at, ==, "2026-06-01T10:00:00Z");
  g_assert_cmpstr (version->name, ==, "Second");
  version = g_ptr_array_index (versions, 2);
  found = tm_book_template_version (book, version->number, &error);
  g_assert_no_error (error);
  g_assert_true (tm_template_equal (found, first));
  save (book, found);
  assert_holds (book, first);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM template"), ==, 4);
  tm_book_close (book);
  assert_clean (place->path);
}

/* Jobs know nothing of it. */
static void
test_beside_jobs (Place *place, gconstpointer data)
{
  g_autoptr (TmTemplate) template = tm_test_template ();
  g_autoptr (TmJob) job = make_rich_job ("5f6c2f0e-0000-4000-8000-000000000031");
  g_autoptr (TmJob) back = NULL;
  g_autoptr (GPtrArray) list = NULL;
  TmBook *book = open_book (place);

  save (book, template);
  put_job (place->path, job);
  list = tm_book_list (book, NULL);
  g_assert_cmpuint (list->len, ==, 1);
  back = take_job (place->path, job->id);
  assert_same_job (job, back);
  assert_holds (book, template);
  tm_book_close (book);
  assert_clean (place->path);
}

static void
test_refused (Place *place, gconstpointer data)
{
  g_autoptr (TmTemplate) template = tm_test_template ();
  GError *error = NULL;
  TmBook *book = open_book (place);

  tm_template_add_field (template, "Heat number", FALSE);
  g_assert_false (tm_book_save_template (book, template, "RW", AT, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, place->path));
  g_assert_nonnull (strstr (error->message, "same name"));
  g_clear_error (&error);
  tm_book_close (book);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM journal"), ==, 0);
  book = tm_book_open (place->path, TM_BOOK_OPEN_READ_ONLY, &error);
  g_assert_no_error (error);
  g_ptr_array_set_size (template->fields, 2);
  g_assert_false (tm_book_save_template (book, template, "RW", AT, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_READ_ONLY);
  g_clear_error (&error);
  tm_book_close (book);
}

typedef struct {
  const char *sql;
  const char *what, *where, *how;
} Tampering;

/* Each row is of the whole shop, and says which of its rows it is. */
static void
test_tampering (Place *place, gconstpointer data)
{
  static const Tampering cases[] = {
    { OPEN_TABLE ("shop_content") "UPDATE shop_content SET bytes = X'00'", "shop_content", "the whole shop",
      "SHA-256" },
    { OPEN_TABLE ("shop_content") "DELETE FROM shop_content", "shop_content", "kept file", "deleted" },
    { OPEN_TABLE ("template") "UPDATE template SET name = 'Other'", "template", AT, "name is Other" },
    { OPEN_TABLE ("template") "UPDATE template SET ground = '#000000'", "template", AT, "ground is #000000" },
    { OPEN_TABLE ("template_field") "UPDATE template_field SET required = 0", "template_field",
      "field Heat number", "required is 0" },
    { OPEN_TABLE ("template_text") "UPDATE template_text SET text = 'No.' WHERE language = 'de'",
      "template_text", "statement 1", "text is No." },
    { OPEN_TABLE ("template_text") "DELETE FROM template_text WHERE statement = 2", "template_text",
      "statement 2", "deleted" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("%s/%" G_GSIZE_FORMAT, place->folder, i);
      g_autoptr (GPtrArray) faults = NULL;
      gboolean found = FALSE;
      TmBook *book;

      put_template (path);
      assert_clean (path);
      tamper (path, cases[i].sql);
      book = tm_book_open (path, TM_BOOK_OPEN_READ_ONLY, NULL);
      faults = tm_book_verify (book, NULL, NULL);
      for (guint f = 0; f < faults->len; f++)
        {
          const TmBookFault *fault = g_ptr_array_index (faults, f);

          found
              = found
                || (g_str_equal (fault->what, cases[i].what) && strstr (fault->where, cases[i].where) != NULL
                    && strstr (fault->where, "the whole shop") != NULL
                    && strstr (fault->how, cases[i].how) != NULL);
        }
      g_assert_true (found);
      tm_book_close (book);
    }
}

/* A book in which a template's rows mean nothing says so, and gives none. */
static void
test_damaged (Place *place, gconstpointer data)
{
  static const char *const cases[] = {
    OPEN_TABLE ("template") "UPDATE template SET accent = 'red'",
    OPEN_TABLE ("template") "UPDATE template SET ground = '#12345'",
    OPEN_TABLE ("template") "UPDATE template SET hidden = 'verdict'",
    OPEN_TABLE ("template_text") "UPDATE template_text SET statement = 7",
    OPEN_TABLE ("template_text") "UPDATE template_text SET place = 'nowhere'",
    OPEN_TABLE ("shop_content") "UPDATE shop_content SET bytes = X'00'",
    OPEN_TABLE ("shop_content") "DELETE FROM shop_content",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("%s/%" G_GSIZE_FORMAT, place->folder, i);
      GError *error = NULL;
      TmBook *book;

      put_template (path);
      tamper (path, cases[i]);
      book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, NULL);
      g_assert_null (tm_book_template (book, &error));
      g_assert_true (error->domain == TM_BOOK_ERROR);
      g_assert_nonnull (strstr (error->message, path));
      g_clear_error (&error);
      tm_book_close (book);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name_, function_) \
  g_test_add ("/book/template/" name_, Place, NULL, place_set_up, function_, place_tear_down)
  ADD ("comes-back", test_comes_back);
  ADD ("versions", test_versions);
  ADD ("taken-again", test_taken_again);
  ADD ("beside-jobs", test_beside_jobs);
  ADD ("refused", test_refused);
  ADD ("tampering", test_tampering);
  ADD ("damaged", test_damaged);
  return g_test_run ();
}
