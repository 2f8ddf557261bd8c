/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The languages of a report: catalogues as gettext writes them (GNU gettext manual, "The Format of GNU MO
 * Files"), sound, damaged and hostile; and the words of a thread.
 */

#include "report-language.h"

#include <string.h>

#include "plot-words.h"
#include "report-catalogue.h"

typedef struct {
  const char *text;
  gsize text_length;
  const char *translation;
  gsize translation_length;
} Row;

#define ROW(text, translation)                                     \
  {                                                                \
    text, sizeof (text) - 1, translation, sizeof (translation) - 1 \
  }

static const Row rows[] = {
  ROW ("", "Language: de\nPlural-Forms: nplurals=2; plural=(n != 1);\nX: y\n"),
  ROW ("Piece", "Teil"),
  ROW ("verdict\004in", "innerhalb"),
  ROW ("%u piece\0%u pieces", "%u Teil\0%u Teile"),
  ROW ("Size %s of %u", "Maß %s von %u"),
  ROW ("Wrong %s", "Falsch %n"),
  ROW ("Swapped %s %u", "Vertauscht %u %s"),
  ROW ("More %s", "Mehr %s %s"),
  ROW ("95 %: from", "95 %: von"),
};

static void
append_number (GByteArray *file, guint32 number)
{
  g_byte_array_append (file, (const guint8 *)&number, sizeof number);
}

static GByteArray *
make_catalogue (const Row *table, guint n)
{
  GByteArray *file = g_byte_array_new ();
  guint32 at = 28 + 16 * n;

  append_number (file, 0x950412de);
  append_number (file, 0);
  append_number (file, n);
  append_number (file, 28);
  append_number (file, 28 + 8 * n);
  append_number (file, 0);
  append_number (file, 28 + 16 * n);
  for (guint side = 0; side < 2; side++)
    for (guint i = 0; i < n; i++)
      {
        const gsize length = side == 0 ? table[i].text_length : table[i].translation_length;

        append_number (file, (guint32)length);
        append_number (file, at);
        at += (guint32)length + 1;
      }
  for (guint side = 0; side < 2; side++)
    for (guint i = 0; i < n; i++)
      g_byte_array_append (file, (const guint8 *)(side == 0 ? table[i].text : table[i].translation),
                           (guint)(side == 0 ? table[i].text_length : table[i].translation_length) + 1);
  return file;
}

static TmCatalogue *
read_bytes (const void *data, gsize length)
{
  g_autoptr (GBytes) bytes = g_bytes_new (data, length);

  return tm_catalogue_new (bytes);
}

static void
test_catalogue (void)
{
  g_autoptr (GByteArray) file = make_catalogue (rows, G_N_ELEMENTS (rows));
  g_autoptr (TmCatalogue) catalogue = read_bytes (file->data, file->len);

  g_assert_nonnull (catalogue);
  g_assert_cmpstr (tm_catalogue_text (catalogue, NULL, "Piece"), ==, "Teil");
  g_assert_cmpstr (tm_catalogue_text (catalogue, "verdict", "in"), ==, "innerhalb");
  g_assert_cmpstr (tm_catalogue_text (catalogue, NULL, "in"), ==, "in");
  g_assert_cmpstr (tm_catalogue_text (catalogue, NULL, "Unknown"), ==, "Unknown");
  g_assert_cmpstr (tm_catalogue_text (catalogue, NULL, "95 %: from"), ==, "95 %: von");
  g_assert_cmpstr (tm_catalogue_plural (catalogue, "%u piece", "%u pieces", 1), ==, "%u Teil");
  g_assert_cmpstr (tm_catalogue_plural (catalogue, "%u piece", "%u pieces", 0), ==, "%u Teile");
  g_assert_cmpstr (tm_catalogue_plural (catalogue, "%u piece", "%u pieces", 7), ==, "%u Teile");
  /* What could not be printed safely stays as it was written. */
  g_assert_cmpstr (tm_catalogue_text (catalogue, NULL, "Size %s of %u"), ==, "Maß %s von %u");
  g_assert_cmpstr (tm_catalogue_text (catalogue, NULL, "Wrong %s"), ==, "Wrong %s");
  g_assert_cmpstr (tm_catalogue_text (catalogue, NULL, "Swapped %s %u"), ==, "Swapped %s %u");
  g_assert_cmpstr (tm_catalogue_text (catalogue, NULL, "More %s"), ==, "More %s");
}

/* GNU gettext manual, "Plural forms": English and German, French, Polish, Japanese, Slovenian. */
static void
test_plural_rules (void)
{
  static const char german[] = "nplurals=2; plural=n != 1;";
  static const char french[] = "nplurals=2; plural=n>1;";
  static const char polish[] = "nplurals=3; plural=n==1 ? 0 : n%10>=2 && n%10<=4 && (n%100<10 || n%100>=20) "
                               "? 1 : 2;";
  static const char slovenian[]
      = "nplurals=4; plural=n%100==1 ? 0 : n%100==2 ? 1 : n%100==3 || n%100==4 ? 2 : 3;";
  static const struct {
    const char *rule;
    gulong n;
    guint form;
  } cases[] = {
    { german, 0, 1 },
    { german, 1, 0 },
    { german, 2, 1 },
    { french, 0, 0 },
    { french, 1, 0 },
    { french, 2, 1 },
    { polish, 1, 0 },
    { polish, 2, 1 },
    { polish, 5, 2 },
    { polish, 12, 2 },
    { polish, 22, 1 },
    { polish, 112, 2 },
    { slovenian, 1, 0 },
    { slovenian, 2, 1 },
    { slovenian, 104, 2 },
    { slovenian, 5, 3 },
    { "nplurals=1; plural=0;", 7, 0 },
    { "nplurals=2; plural=!(n == 1) * 1;", 3, 1 },
    { "nplurals=2; plural=n / 0;", 3, 0 },
    { "nplurals=2; plural=n;", 9, 0 },
    { "nplurals=2; plural=(n;", 1, 0 },
    { "nplurals=2; plural=n n;", 1, 0 },
    { "nplurals=2;", 1, 0 },
    { "", 1, 0 },
  };
  g_autoptr (GString) deep = g_string_new ("nplurals=2; plural=");
  g_autoptr (GString) choices = g_string_new ("nplurals=2; plural=");

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpuint (tm_catalogue_plural_form (cases[i].rule, cases[i].n), ==, cases[i].form);
  for (guint i = 0; i < 100000; i++)
    {
      g_string_append_c (deep, "(!"[i % 2]);
      g_string_append (choices, "n?1:");
    }
  g_assert_cmpuint (tm_catalogue_plural_form (deep->str, 1), ==, 0);
  g_assert_cmpuint (tm_catalogue_plural_form (choices->str, 0), ==, 0);
}

/* Cut anywhere, and with each byte changed in turn, a catalogue is refused or answers. */
static void
test_damaged (void)
{
  g_autoptr (GByteArray) file = make_catalogue (rows, G_N_ELEMENTS (rows));

  for (guint length = 0; length < file->len; length++)
    {
      g_autofree guint8 *cut = g_memdup2 (file->data, MAX (length, 1u));
      g_autoptr (TmCatalogue) catalogue = read_bytes (cut, length);

      g_assert_null (catalogue);
    }
  for (guint at = 0; at < file->len; at++)
    for (guint bit = 0; bit < 8; bit++)
      {
        g_autofree guint8 *changed = g_memdup2 (file->data, file->len);
        g_autoptr (TmCatalogue) catalogue = NULL;

        changed[at] ^= (guint8)(1u << bit);
        catalogue = read_bytes (changed, file->len);
        if (catalogue == NULL)
          continue;
        g_assert_nonnull (tm_catalogue_text (catalogue, NULL, "Piece"));
        g_assert_nonnull (tm_catalogue_plural (catalogue, "%u piece", "%u pieces", 2));
      }
}

static void
test_other_byte_order (void)
{
  g_autoptr (GByteArray) file = make_catalogue (rows, G_N_ELEMENTS (rows));
  g_autoptr (TmCatalogue) catalogue = NULL;

  for (guint at = 0; at < 28 + 16 * G_N_ELEMENTS (rows); at += 4)
    {
      guint32 number;

      memcpy (&number, file->data + at, 4);
      number = GUINT32_SWAP_LE_BE (number);
      memcpy (file->data + at, &number, 4);
    }
  catalogue = read_bytes (file->data, file->len);
  g_assert_nonnull (catalogue);
  g_assert_cmpstr (tm_catalogue_text (catalogue, NULL, "Piece"), ==, "Teil");
}

/* -------- Threads -------- */

static gpointer
speak_cb (gpointer data)
{
  TmWords words;

  tm_language_words (data, TM_DECIMAL_COMMA, &words);
  tm_words_use (&words);
  for (guint i = 0; i < 2000; i++)
    {
      char number[] = "1.5";

      if (!g_str_equal (_ ("Piece"), g_str_equal (data, "de") ? "Teil" : "Piece")
          || !g_str_equal (tm_words_number (number), "1,5"))
        return data;
    }
  tm_words_use (NULL);
  return NULL;
}

/* Two threads speak two languages at a time, and this one its own. */
static void
test_threads (void)
{
  GThread *german = g_thread_new ("de", speak_cb, (gpointer) "de");
  GThread *english = g_thread_new ("en", speak_cb, (gpointer) "en");
  char number[] = "1.5";

  for (guint i = 0; i < 2000; i++)
    g_assert_cmpstr (_ ("Piece"), ==, "Piece");
  g_assert_cmpstr (tm_words_number (number), ==, "1.5");
  g_assert_null (g_thread_join (german));
  g_assert_null (g_thread_join (english));
}

/* Numbers take the comma; texts, whole numbers and what the sentence itself says keep their points. */
static void
test_numbers (void)
{
  TmWords words;
  g_autofree char *plain = tm_words_print ("%.2f", 1.5);
  g_autofree char *mixed = NULL, *wide = NULL, *none = NULL;
  g_autoptr (GString) added = g_string_new ("x");

  g_assert_cmpstr (plain, ==, "1.50");
  tm_language_words ("en", TM_DECIMAL_COMMA, &words);
  tm_words_use (&words);
  mixed = tm_words_print ("B89.7.3 %s: %+.3f %s (95 %%: %.0f to %g), %u of %" G_GINT64_FORMAT " %.3s.", "a.b",
                          -2.5, "µm", 3.0, 0.25, 7u, (gint64)-9000000000, "abcdef");
  wide = tm_words_print ("%*.*f|%-8.2e|%0*u|%*s|%.*s|%-*d|", 8, 2, 1.5, 12345.0, 4, 72u, 3, "a", 2, "bcd", 3,
                         -1);
  none = tm_words_print ("100 %% of 1.5");
  tm_words_append (added, "%.1f", 2.5);
  tm_words_use (NULL);
  g_assert_cmpstr (mixed, ==, "B89.7.3 a.b: -2,500 µm (95 %: 3 to 0,25), 7 of -9000000000 abc.");
  g_assert_cmpstr (wide, ==, "    1,50|1,23e+04|0072|  a|bc|-1 |");
  g_assert_cmpstr (none, ==, "100 % of 1.5");
  g_assert_cmpstr (added->str, ==, "x2,5");
}

static void
test_unknown (void)
{
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) list = tm_language_list ();
  TmWords words;

  g_assert_true (g_strv_contains ((const char *const *)list, "de"));
  g_assert_true (g_strv_contains ((const char *const *)list, "en"));
  g_assert_cmpstr (tm_language_name ("de"), ==, "Deutsch");
  g_assert_cmpstr (tm_language_name ("en"), ==, "English");
  g_assert_cmpstr (tm_language_name ("xx"), ==, "xx");
  g_assert_true (
      tm_report_form_check (&(TmReportForm) { .language = "de", .second_language = "en" }, &error));
  g_assert_true (tm_report_form_check (&(TmReportForm) { 0 }, &error));
  g_assert_false (tm_report_form_check (&(TmReportForm) { .second_language = "../../etc" }, &error));
  g_assert_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_NO_LANGUAGE);
  g_assert_nonnull (strstr (error->message, "de, en"));
  tm_language_words ("xx", TM_DECIMAL_POINT, &words);
  g_assert_cmpstr (words.text (words.data, NULL, "Piece"), ==, "Piece");
}

static void
test_dates (void)
{
  static const struct {
    TmDateForm form;
    const char *text, *date, *time;
  } cases[] = {
    { TM_DATE_ISO, "2026-05-04T09:12:33Z", "2026-05-04", "2026-05-04 09:12 UTC" },
    { TM_DATE_DMY, "2026-05-04T09:12:33Z", "04.05.2026", "04.05.2026 09:12 UTC" },
    { TM_DATE_MDY, "2026-05-04T09:12:33Z", "05/04/2026", "05/04/2026 09:12 UTC" },
    { TM_DATE_DMY, "2026-05-04", "04.05.2026", "04.05.2026" },
    { TM_DATE_DMY, "", "", "" },
    { TM_DATE_DMY, "May 2026", "May 2026", "May 2026" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *date = tm_report_date (cases[i].form, cases[i].text);
      g_autofree char *time = tm_report_time (cases[i].form, cases[i].text);

      g_assert_cmpstr (date, ==, cases[i].date);
      g_assert_cmpstr (time, ==, cases[i].time);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/language/catalogue", test_catalogue);
  g_test_add_func ("/language/plural-rules", test_plural_rules);
  g_test_add_func ("/language/damaged", test_damaged);
  g_test_add_func ("/language/other-byte-order", test_other_byte_order);
  g_test_add_func ("/language/threads", test_threads);
  g_test_add_func ("/language/numbers", test_numbers);
  g_test_add_func ("/language/unknown", test_unknown);
  g_test_add_func ("/language/dates", test_dates);
  return g_test_run ();
}
