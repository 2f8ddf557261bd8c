/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-language.h"

#include <string.h>

#include "report-catalogue.h"

#define SOURCE    "en" /* what the program's texts are written in */
#define FILE_NAME "LC_MESSAGES" G_DIR_SEPARATOR_S GETTEXT_PACKAGE ".mo"
#define LONGEST   32 /* of a code */

/* -------- Catalogues -------- */

/* Where translations lie: where the environment says (tests), beside the program that was built or installed,
 * where it was to be installed. */
static char **
list_folders (void)
{
  GStrvBuilder *builder = g_strv_builder_new ();
  g_autofree char *program = g_file_read_link ("/proc/self/exe", NULL);
  g_autofree char *beside = program != NULL ? g_path_get_dirname (program) : g_strdup (".");
  g_autofree char *built = g_build_filename (beside, "..", "..", "po", NULL);
  g_autofree char *installed = g_build_filename (beside, "..", "share", "tenthmark", "languages", NULL);
  const char *wanted = g_getenv ("TM_LANGUAGES_DIR");
  char **folders;

  if (wanted != NULL)
    g_strv_builder_add (builder, wanted);
  g_strv_builder_add (builder, built);
  g_strv_builder_add (builder, installed);
  g_strv_builder_add (builder, TM_LANGUAGES_DIR);
  folders = g_strv_builder_end (builder);
  g_strv_builder_unref (builder);
  return folders;
}

/* A code is part of a file's name: letters, digits and "_@-" only. */
static gboolean
is_code (const char *code)
{
  if (*code == '\0' || strlen (code) > LONGEST)
    return FALSE;
  for (; *code != '\0'; code++)
    if (!g_ascii_isalnum (*code) && strchr ("_@-", *code) == NULL)
      return FALSE;
  return TRUE;
}

static gboolean
is_source (const char *code)
{
  return g_str_has_prefix (code, SOURCE) && !g_ascii_isalnum (code[strlen (SOURCE)]);
}

static TmCatalogue *
load_catalogue (const char *code)
{
  g_auto (GStrv) folders = list_folders ();

  for (guint i = 0; folders[i] != NULL && is_code (code); i++)
    {
      g_autofree char *path = g_build_filename (folders[i], code, FILE_NAME, NULL);
      g_autoptr (GMappedFile) file = g_mapped_file_new (path, FALSE, NULL);
      g_autoptr (GBytes) bytes = NULL;
      TmCatalogue *catalogue;

      if (file == NULL)
        continue;
      /* A copy: the file may be replaced under us. */
      bytes = g_bytes_new (g_mapped_file_get_contents (file), g_mapped_file_get_length (file));
      catalogue = tm_catalogue_new (bytes);
      if (catalogue != NULL)
        return catalogue;
    }
  return NULL;
}

/* Of the language and territory, else of the language.  Each is read once and stays, since texts of it may be
 * in use anywhere. */
static const TmCatalogue *
find_catalogue (const char *code)
{
  static GMutex mutex;
  static GHashTable *known;
  g_autofree char *language = NULL;
  TmCatalogue *catalogue;

  g_mutex_lock (&mutex);
  if (known == NULL)
    known = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  catalogue = g_hash_table_lookup (known, code);
  if (catalogue == NULL && (catalogue = load_catalogue (code)) != NULL)
    g_hash_table_insert (known, g_strdup (code), catalogue);
  g_mutex_unlock (&mutex);
  if (catalogue != NULL || strchr (code, '_') == NULL)
    return catalogue;
  language = g_strndup (code, strcspn (code, "_"));
  return find_catalogue (language);
}

/* -------- Words -------- */

static const char *
source_text (gpointer data, const char *context, const char *text)
{
  return text;
}

static const char *
source_plural (gpointer data, const char *one, const char *many, gulong n)
{
  return n == 1 ? one : many;
}

static const char *
catalogue_text (gpointer data, const char *context, const char *text)
{
  return tm_catalogue_text (data, context, text);
}

static const char *
catalogue_plural (gpointer data, const char *one, const char *many, gulong n)
{
  return tm_catalogue_plural (data, one, many, n);
}

void
tm_language_words (const char *code, TmDecimal decimal, TmWords *words)
{
  const TmCatalogue *catalogue;

  *words = (TmWords) { .decimal_comma = decimal == TM_DECIMAL_COMMA };
  if (code == NULL || *code == '\0')
    return;
  catalogue = is_source (code) ? NULL : find_catalogue (code);
  words->text = catalogue != NULL ? catalogue_text : source_text;
  words->plural = catalogue != NULL ? catalogue_plural : source_plural;
  words->data = (gpointer)catalogue;
}

/* -------- Which there are -------- */

static void
add_languages (GHashTable *codes, const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (is_code (name) && !g_hash_table_contains (codes, name) && find_catalogue (name) != NULL)
      g_hash_table_add (codes, g_strdup (name));
}

static int
compare_cb (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *)a, *(const char *const *)b);
}

char **
tm_language_list (void)
{
  g_auto (GStrv) folders = list_folders ();
  g_autoptr (GHashTable) codes = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  char **list;
  guint n;

  g_hash_table_add (codes, g_strdup (SOURCE));
  for (guint i = 0; folders[i] != NULL; i++)
    add_languages (codes, folders[i]);
  list = (char **)g_hash_table_get_keys_as_array (codes, &n);
  qsort (list, n, sizeof *list, compare_cb);
  g_hash_table_steal_all (codes);
  return list;
}

const char *
tm_language_name (const char *code)
{
  const char *source = NC_ ("the language's own name", "English");
  TmWords words;
  const char *name;

  tm_language_words (code, TM_DECIMAL_POINT, &words);
  if (words.text == NULL)
    return code;
  name = words.text (words.data, "the language's own name", source);
  return name == source && !is_source (code) ? code : name;
}

static gboolean
check_language (const char *code, GError **error)
{
  g_auto (GStrv) list = NULL;
  g_autofree char *names = NULL;

  if (code == NULL || *code == '\0' || is_source (code) || find_catalogue (code) != NULL)
    return TRUE;
  list = tm_language_list ();
  names = g_strjoinv (", ", list);
  g_set_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_NO_LANGUAGE,
               _ ("there is no translation of reports into “%s”; choose one of %s"), code, names);
  return FALSE;
}

gboolean
tm_report_form_check (const TmReportForm *form, GError **error)
{
  return check_language (form->language, error) && check_language (form->second_language, error);
}

/* -------- Numbers and dates -------- */

static const struct {
  const char *code;
  TmDecimal decimal;
  TmDateForm dates;
} habits[] = {
  /* Territories stand before their languages. */
  { "de_CH", TM_DECIMAL_POINT, TM_DATE_DMY }, { "de_LI", TM_DECIMAL_POINT, TM_DATE_DMY },
  { "en_US", TM_DECIMAL_POINT, TM_DATE_MDY }, { "es_MX", TM_DECIMAL_POINT, TM_DATE_DMY },
  { "cs", TM_DECIMAL_COMMA, TM_DATE_DMY },    { "da", TM_DECIMAL_COMMA, TM_DATE_DMY },
  { "de", TM_DECIMAL_COMMA, TM_DATE_DMY },    { "es", TM_DECIMAL_COMMA, TM_DATE_DMY },
  { "fi", TM_DECIMAL_COMMA, TM_DATE_DMY },    { "fr", TM_DECIMAL_COMMA, TM_DATE_DMY },
  { "it", TM_DECIMAL_COMMA, TM_DATE_DMY },    { "nb", TM_DECIMAL_COMMA, TM_DATE_DMY },
  { "nl", TM_DECIMAL_COMMA, TM_DATE_DMY },    { "pl", TM_DECIMAL_COMMA, TM_DATE_DMY },
  { "pt", TM_DECIMAL_COMMA, TM_DATE_DMY },    { "ru", TM_DECIMAL_COMMA, TM_DATE_DMY },
  { "sv", TM_DECIMAL_COMMA, TM_DATE_ISO },    { "tr", TM_DECIMAL_COMMA, TM_DATE_DMY },
};

void
tm_report_form_by_language (TmReportForm *form)
{
  const char *code = form->language != NULL ? form->language : "";

  form->decimal = TM_DECIMAL_POINT;
  form->dates = TM_DATE_ISO;
  for (gsize i = 0; i < G_N_ELEMENTS (habits); i++)
    {
      const gsize length = strlen (habits[i].code);

      if (strncmp (code, habits[i].code, length) != 0 || g_ascii_isalnum (code[length]))
        continue;
      form->decimal = habits[i].decimal;
      form->dates = habits[i].dates;
      return;
    }
}

static gboolean
is_date (const char *text)
{
  for (guint i = 0; i < 10; i++)
    if (i == 4 || i == 7 ? text[i] != '-' : !g_ascii_isdigit (text[i]))
      return FALSE;
  return TRUE;
}

char *
tm_report_date (TmDateForm form, const char *date)
{
  if (!is_date (date))
    return g_strdup (date);
  if (form == TM_DATE_DMY)
    return g_strdup_printf ("%.2s.%.2s.%.4s", date + 8, date + 5, date);
  if (form == TM_DATE_MDY)
    return g_strdup_printf ("%.2s/%.2s/%.4s", date + 5, date + 8, date);
  return g_strndup (date, 10);
}

char *
tm_report_time (TmDateForm form, const char *time)
{
  g_autofree char *date = tm_report_date (form, time);

  if (!is_date (time) || strlen (time) < 16 || time[10] != 'T')
    return g_strdup (date);
  return g_strdup_printf ("%s %.5s UTC", date, time + 11);
}
