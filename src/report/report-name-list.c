/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-name-list.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define MOST_RUNS  6  /* told one by one */
#define LEAST_RUN  3  /* names that make a range: of two both are told */
#define MOST_DIGIT 18 /* digits of a number that is counted up: it fits into 64 bits */

typedef struct {
  const GPtrArray *names;
  GPtrArray *runs; /* char * */
  guint n_told;    /* of the names */
} Runs;

/* -------- What counts up -------- */

/* How many bytes stand before the number that @name ends with. */
static gsize
find_number (const char *name)
{
  const gsize length = strlen (name);
  gsize at = length;

  while (at > 0 && length - at < MOST_DIGIT && g_ascii_isdigit (name[at - 1]))
    at--;
  return at;
}

/* Whether @next is @name with its last number one higher: "A-09" and "A-10", "9" and "10", never "09" and
 * "010". */
static gboolean
counts_up (const char *name, const char *next)
{
  const gsize at = find_number (name);
  const char *digits = name + at;
  g_autofree char *expected = NULL;

  if (*digits == '\0')
    return FALSE;
  expected = g_strdup_printf ("%.*s%0*" G_GUINT64_FORMAT, (int)at, name, (int)strlen (digits),
                              g_ascii_strtoull (digits, NULL, 10) + 1);
  return g_str_equal (expected, next);
}

static const char *
get_name (const Runs *runs, guint i)
{
  return g_ptr_array_index (runs->names, i);
}

static guint
measure_run (const Runs *runs, guint from, gboolean joined)
{
  guint n = 1;

  while (joined && from + n < runs->names->len
         && counts_up (get_name (runs, from + n - 1), get_name (runs, from + n)))
    n++;
  return n;
}

/* A dash between names that have one of their own stands apart. */
static char *
name_run (const Runs *runs, guint from, guint n)
{
  const char *first = get_name (runs, from);
  const char *dash = find_number (first) == 0 ? "–" : " – ";

  if (n < LEAST_RUN)
    return g_strdup (first);
  return g_strconcat (first, dash, get_name (runs, from + n - 1), NULL);
}

/* All runs where one more than the most would do; else the first of them. */
static void
find_runs (Runs *runs, gboolean joined)
{
  guint told[MOST_RUNS + 1] = { 0 };
  guint from = 0;

  while (from < runs->names->len && runs->runs->len <= MOST_RUNS)
    {
      const guint n = measure_run (runs, from, joined);

      g_ptr_array_add (runs->runs, name_run (runs, from, n));
      from += n < LEAST_RUN ? 1 : n;
      told[runs->runs->len - 1] = from;
    }
  if (from < runs->names->len)
    g_ptr_array_set_size (runs->runs, MOST_RUNS);
  runs->n_told = told[runs->runs->len - 1];
}

/* -------- In words -------- */

static char *
join_runs (const Runs *runs, guint n)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    g_string_append_printf (out, "%s%s", i > 0 ? ", " : "", (const char *)g_ptr_array_index (runs->runs, i));
  return g_string_free (out, FALSE);
}

static char *
tell_all (const Runs *runs)
{
  const guint n = runs->runs->len;
  g_autofree char *head = NULL;

  if (n < 2)
    return join_runs (runs, n);
  head = join_runs (runs, n - 1);
  /* Translators: the end of a list: "3–7, 9" and "12". */
  return g_strdup_printf (_ ("%s and %s"), head, (const char *)g_ptr_array_index (runs->runs, n - 1));
}

typedef enum { NAMES, PLACES, PIECES } Sort;

static char *
tell_some (const Runs *runs, Sort sort)
{
  const guint n = runs->names->len - runs->n_told;
  g_autofree char *head = join_runs (runs, runs->runs->len);

  if (sort != PIECES)
    return g_strdup_printf (ngettext ("%s … and %u more", "%s … and %u more", n), head, n);
  /* Translators: after the first serials of a list: "of pieces 1, 3, 5 … and 12 more pieces". */
  return g_strdup_printf (ngettext ("%s … and %u more piece", "%s … and %u more pieces", n), head, n);
}

static char *
tell (const GPtrArray *names, Sort sort)
{
  g_autoptr (GPtrArray) told = g_ptr_array_new_with_free_func (g_free);
  Runs runs = { names, told, 0 };

  if (names->len > 0)
    find_runs (&runs, sort != NAMES);
  return runs.n_told == names->len ? tell_all (&runs) : tell_some (&runs, sort);
}

char *
tm_report_serials (const GPtrArray *pieces)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  g_return_val_if_fail (pieces != NULL, NULL);
  for (guint i = 0; i < pieces->len; i++)
    g_ptr_array_add (names, (gpointer)((const TmPiece *)g_ptr_array_index (pieces, i))->serial);
  return tell (names, PIECES);
}

char *
tm_report_places (const GArray *places)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);

  g_return_val_if_fail (places != NULL, NULL);
  for (guint i = 0; i < places->len; i++)
    g_ptr_array_add (names, g_strdup_printf ("%u", g_array_index (places, guint, i)));
  return tell (names, PLACES);
}

char *
tm_report_names (const GPtrArray *names)
{
  g_return_val_if_fail (names != NULL, NULL);

  return tell (names, NAMES);
}
