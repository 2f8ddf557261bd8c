/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "cli-study-table.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "cli-options.h"
#include "core-study.h"
#include "exchange-csv.h"

enum { PIECE, PERSON, TRIAL, VALUE, N_COLUMNS };

static const struct {
  const char *heading;
  guint column;
} headings[] = {
  { "piece", PIECE },      { "part", PIECE },      { "person", PERSON },
  { "appraiser", PERSON }, { "operator", PERSON }, { "trial", TRIAL },
  { "repeat", TRIAL },     { "value", VALUE },     { "reading", VALUE },
};

/* One line of the file: numbers from 0 in the order of appearance. */
typedef struct {
  guint line;
  guint piece, person, trial;
  double value;
} Entry;

typedef struct {
  GPtrArray *names; /* char * */
  GHashTable *numbers;
} Levels;

typedef struct {
  const char *path;
  int at[N_COLUMNS]; /* index of the cell in a row; -1: no such column */
  Levels levels[3];  /* of pieces, people and trials */
  GArray *entries;   /* Entry */
  GHashTable *taken; /* how many lines a piece and person have, where no trial is given */
} Reader;

void
tm_study_table_clear (TmStudyTable *table)
{
  g_clear_pointer (&table->pieces, g_ptr_array_unref);
  g_clear_pointer (&table->people, g_ptr_array_unref);
  g_clear_pointer (&table->trials, g_ptr_array_unref);
  g_clear_pointer (&table->values, g_free);
}

/* g_ascii_strtod() would also take hexadecimal and "nan". */
gboolean
tm_study_number_read (const char *text, double *out)
{
  g_autofree char *plain = g_strdelimit (g_strdup (text), ",", '.');
  char *end;

  if (*plain == '\0' || plain[strspn (plain, "0123456789.+-eE")] != '\0')
    return FALSE;
  *out = g_ascii_strtod (plain, &end);
  return end != plain && *end == '\0' && isfinite (*out);
}

/* Comments become blank lines, so that their commas do not say what separates the cells. */
static void
blank_comments (char *text, gsize length)
{
  gboolean comment = FALSE, begun = FALSE;

  for (gsize i = 0; i < length; i++)
    {
      if (text[i] == '\n')
        begun = comment = FALSE;
      else if (!begun && text[i] == '#')
        comment = TRUE;
      begun = begun || (text[i] != '\n' && text[i] != ' ' && text[i] != '\t' && (guchar)text[i] < 0x80);
      if (comment && text[i] != '\n' && text[i] != '\r')
        text[i] = ' ';
    }
}

static guint
find_level (Levels *levels, const char *name)
{
  gpointer number = g_hash_table_lookup (levels->numbers, name);

  if (number == NULL)
    {
      char *kept = g_strdup (name);

      g_ptr_array_add (levels->names, kept);
      number = GUINT_TO_POINTER (levels->names->len);
      g_hash_table_insert (levels->numbers, kept, number);
    }
  return GPOINTER_TO_UINT (number) - 1;
}

static int
find_column (const char *heading)
{
  g_autofree char *folded = g_utf8_casefold (heading, -1);

  for (gsize i = 0; i < G_N_ELEMENTS (headings); i++)
    if (g_str_equal (folded, headings[i].heading))
      return (int)headings[i].column;
  return -1;
}

static gboolean
read_headings (Reader *self, const TmCsvRow *row)
{
  for (guint i = 0; i < N_COLUMNS; i++)
    self->at[i] = -1;
  for (guint i = 0; i < row->cells->len; i++)
    {
      const char *heading = g_ptr_array_index (row->cells, i);
      const int column = find_column (heading);

      if (column < 0 || self->at[column] >= 0)
        {
          tm_fail (column < 0
                       ? _ ("%s, line %u: “%s” is no heading of a study; use piece, person, trial, value")
                       : _ ("%s, line %u: the column “%s” stands twice; leave one out"),
                   self->path, row->line, heading);
          return FALSE;
        }
      self->at[column] = (int)i;
    }
  if (self->at[PIECE] >= 0 && self->at[VALUE] >= 0)
    return TRUE;
  tm_fail (_ ("%s, line %u: there is no column “%s”; the first line is: piece, person, trial, value"),
           self->path, row->line, self->at[PIECE] < 0 ? "piece" : "value");
  return FALSE;
}

static const char *
get_cell (const Reader *self, const TmCsvRow *row, guint column)
{
  const int at = self->at[column];

  return at >= 0 && (guint)at < row->cells->len ? g_ptr_array_index (row->cells, (guint)at) : "";
}

/* The trial as named, else as the next one of its piece and person. */
static guint
find_trial (Reader *self, const TmCsvRow *row, const Entry *entry)
{
  g_autofree char *key = g_strdup_printf ("%u %u", entry->piece, entry->person);
  g_autofree char *counted = NULL;
  guint n;

  if (self->at[TRIAL] >= 0)
    return find_level (&self->levels[TRIAL], get_cell (self, row, TRIAL));
  n = GPOINTER_TO_UINT (g_hash_table_lookup (self->taken, key)) + 1;
  g_hash_table_insert (self->taken, g_steal_pointer (&key), GUINT_TO_POINTER (n));
  counted = g_strdup_printf ("%u", n);
  return find_level (&self->levels[TRIAL], counted);
}

static gboolean
check_row (const Reader *self, const TmCsvRow *row)
{
  static const char *const names[] = { "piece", "person", "trial" };
  const guint n_headings = (guint)(self->at[PIECE] >= 0) + (guint)(self->at[PERSON] >= 0)
                           + (guint)(self->at[TRIAL] >= 0) + (guint)(self->at[VALUE] >= 0);

  for (guint i = PIECE; i <= TRIAL; i++)
    if (self->at[i] >= 0 && *get_cell (self, row, i) == '\0')
      {
        tm_fail (_ ("%s, line %u: the %s is empty; say which it is"), self->path, row->line, names[i]);
        return FALSE;
      }
  if (row->cells->len <= n_headings)
    return TRUE;
  tm_fail (_ ("%s, line %u: it has %u cells under %u headings; separate cells alike in every line"),
           self->path, row->line, row->cells->len, n_headings);
  return FALSE;
}

static gboolean
read_row (Reader *self, const TmCsvRow *row)
{
  const char *text = get_cell (self, row, VALUE);
  Entry entry = { .line = row->line, .value = NAN };

  if (!check_row (self, row))
    return FALSE;
  if (*text != '\0' && !tm_study_number_read (text, &entry.value))
    {
      tm_fail (_ ("%s, line %u: “%s” is not a number; write it like 25.012"), self->path, row->line, text);
      return FALSE;
    }
  entry.piece = find_level (&self->levels[PIECE], get_cell (self, row, PIECE));
  entry.person
      = find_level (&self->levels[PERSON], self->at[PERSON] >= 0 ? get_cell (self, row, PERSON) : "1");
  entry.trial = find_trial (self, row, &entry);
  g_array_append_val (self->entries, entry);
  return TRUE;
}

static gboolean
is_whole (const char *text)
{
  const gsize length = strlen (text);

  return length > 0 && length <= 9 && strspn (text, "0123456789") == length;
}

static int
compare_numbers_cb (gconstpointer a, gconstpointer b)
{
  const guint64 first = g_ascii_strtoull (*(const char *const *)a, NULL, 10);
  const guint64 second = g_ascii_strtoull (*(const char *const *)b, NULL, 10);

  return first < second ? -1 : first > second;
}

/* Trials 1, 2, 3 stand in that order, whichever line came first. */
static void
sort_trials (Reader *self)
{
  Levels *trials = &self->levels[TRIAL];
  g_autoptr (GPtrArray) before = g_ptr_array_new (); /* borrowed texts */

  for (guint i = 0; i < trials->names->len; i++)
    {
      if (!is_whole (g_ptr_array_index (trials->names, i)))
        return;
      g_ptr_array_add (before, g_ptr_array_index (trials->names, i));
    }
  g_ptr_array_sort (trials->names, compare_numbers_cb);
  for (guint i = 0; i < trials->names->len; i++)
    g_hash_table_insert (trials->numbers, g_ptr_array_index (trials->names, i), GUINT_TO_POINTER (i + 1));
  for (guint i = 0; i < self->entries->len; i++)
    {
      Entry *entry = &g_array_index (self->entries, Entry, i);

      entry->trial = find_level (trials, g_ptr_array_index (before, entry->trial));
    }
}

static const char *
get_name (const Reader *self, guint column, guint number)
{
  return g_ptr_array_index (self->levels[column].names, number);
}

/* Puts the lines into the crossed table; no cell is read twice. */
static gboolean
fill_values (const Reader *self, double *values)
{
  const guint people = self->levels[PERSON].names->len, trials = self->levels[TRIAL].names->len;
  const guint n = self->levels[PIECE].names->len * people * trials;
  g_autofree guint *lines = g_new0 (guint, n);

  for (guint i = 0; i < n; i++)
    values[i] = NAN;
  for (guint i = 0; i < self->entries->len; i++)
    {
      const Entry *entry = &g_array_index (self->entries, Entry, i);
      const guint cell = (entry->piece * people + entry->person) * trials + entry->trial;

      if (lines[cell] > 0)
        {
          tm_fail (
              _ ("%s, line %u: piece %s, person %s, trial %s stands twice (also in line %u); leave one out"),
              self->path, entry->line, get_name (self, PIECE, entry->piece),
              get_name (self, PERSON, entry->person), get_name (self, TRIAL, entry->trial), lines[cell]);
          return FALSE;
        }
      lines[cell] = entry->line;
      values[cell] = entry->value;
    }
  return TRUE;
}

static gboolean
make_table (Reader *self, TmStudyTable *out)
{
  double n = 1;

  sort_trials (self);
  for (guint i = 0; i < G_N_ELEMENTS (self->levels); i++)
    n *= self->levels[i].names->len;
  if (n > TM_STUDY_MOST_CELLS)
    {
      tm_fail (_ ("%s: %.0f readings in a study are too many; a study holds at most %d"), self->path, n,
               TM_STUDY_MOST_CELLS);
      return FALSE;
    }
  out->values = g_new (double, (gsize)MAX (1, n));
  out->pieces = g_ptr_array_ref (self->levels[PIECE].names);
  out->people = g_ptr_array_ref (self->levels[PERSON].names);
  out->trials = g_ptr_array_ref (self->levels[TRIAL].names);
  return fill_values (self, out->values);
}

static gboolean
read_rows (Reader *self, const GPtrArray *rows, TmStudyTable *out)
{
  if (rows->len == 0)
    {
      tm_fail (_ ("%s: it is empty; the first line is: piece, person, trial, value"), self->path);
      return FALSE;
    }
  if (!read_headings (self, g_ptr_array_index (rows, 0)))
    return FALSE;
  for (guint i = 1; i < rows->len; i++)
    if (!read_row (self, g_ptr_array_index (rows, i)))
      return FALSE;
  if (rows->len > 1)
    return make_table (self, out);
  tm_fail (_ ("%s: there is no reading under the headings; give one to a line"), self->path);
  return FALSE;
}

static void
init_reader (Reader *self, const char *path)
{
  *self = (Reader) { .path = path };
  for (guint i = 0; i < G_N_ELEMENTS (self->levels); i++)
    {
      self->levels[i].names = g_ptr_array_new_with_free_func (g_free);
      self->levels[i].numbers = g_hash_table_new (g_str_hash, g_str_equal);
    }
  self->entries = g_array_new (FALSE, FALSE, sizeof (Entry));
  self->taken = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
}

static void
clear_reader (Reader *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (self->levels); i++)
    {
      g_hash_table_unref (self->levels[i].numbers);
      g_ptr_array_unref (self->levels[i].names);
    }
  g_array_unref (self->entries);
  g_hash_table_unref (self->taken);
}

gboolean
tm_study_table_read (const char *path, TmStudyTable *out)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) rows = NULL;
  g_autofree char *text = NULL;
  Reader reader;
  gsize length;
  gboolean done;

  *out = (TmStudyTable) { NULL };
  if (!g_file_get_contents (path, &text, &length, &error))
    {
      tm_fail (_ ("%s: cannot be read: %s"), path, error->message);
      return FALSE;
    }
  blank_comments (text, length);
  rows = tm_csv_read (text, length, path, &error);
  if (rows == NULL)
    {
      tm_fail_error (g_steal_pointer (&error));
      return FALSE;
    }
  init_reader (&reader, path);
  done = read_rows (&reader, rows, out);
  clear_reader (&reader);
  return done;
}
