/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-hold-list.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-edit-piece.h"
#include "app-feature-words.h"
#include "app-words.h"
#include "exchange-csv.h"

#include "plot-chance.h"

static void
free_line (gpointer data)
{
  TmHoldLine *line = data;

  g_free (line->serial);
  g_free (line);
}

static void
clear_list (gpointer data)
{
  TmHoldList *list = data;

  g_ptr_array_unref (list->lines);
  g_free (list->feature);
  g_free (list->job);
}

TmHoldList *
tm_hold_list_ref (TmHoldList *list)
{
  return g_rc_box_acquire (list);
}

void
tm_hold_list_unref (TmHoldList *list)
{
  g_rc_box_release_full (list, clear_list);
}

static void
add_held (TmHoldList *list, const TmPiece *piece, const TmHoldRow *row)
{
  TmHoldLine *line = g_new0 (TmHoldLine, 1);

  line->serial = g_strdup (piece->serial);
  line->held = TRUE;
  line->measured = row->measured;
  line->out = row->out;
  list->n_held++;
  list->n_unmeasured += !row->measured;
  if (isfinite (row->out))
    list->expected += row->out;
  g_ptr_array_add (list->lines, line);
}

static void
add_decided (TmHoldList *list, const TmPiece *piece)
{
  TmHoldLine *line = g_new0 (TmHoldLine, 1);

  line->serial = g_strdup (piece->serial);
  line->out = NAN;
  g_ptr_array_add (list->lines, line);
}

/* The rows of @batch by the serial of the piece that they are of: it may have been worked out from a copy of
 * the job. */
static GHashTable *
index_rows (const TmBatch *batch)
{
  GHashTable *rows = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; batch != NULL && batch->hold != NULL && i < batch->hold->len; i++)
    {
      TmHoldRow *row = &g_array_index (batch->hold, TmHoldRow, i);

      if (row->point < batch->series.n_points)
        g_hash_table_insert (rows, (gpointer)batch->series.points[row->point].piece->serial, row);
    }
  return rows;
}

TmHoldList *
tm_hold_list_new (const TmJob *job, const TmFeature *feature, const TmBatch *batch)
{
  TmHoldList *list = g_rc_box_new0 (TmHoldList);
  g_autoptr (GHashTable) rows = index_rows (batch);

  list->lines = g_ptr_array_new_with_free_func (free_line);
  list->feature = feature != NULL ? tm_words_feature (feature) : g_strdup ("");
  list->job = tm_words_job_title (job->part_number, job->part_name, job->revision);
  for (guint i = 0; i < job->pieces->len; i++)
    {
      const TmPiece *piece = g_ptr_array_index (job->pieces, i);
      const TmHoldRow *row = g_hash_table_lookup (rows, piece->serial);

      if (row != NULL)
        add_held (list, piece, row);
      else if (*piece->disposition != '\0')
        add_decided (list, piece);
    }
  return list;
}

static const char *
find_first_held (const TmHoldList *list)
{
  for (guint i = 0; i < list->lines->len; i++)
    {
      const TmHoldLine *line = g_ptr_array_index (list->lines, i);

      if (line->held)
        return line->serial;
    }
  return "";
}

char *
tm_hold_list_summary (const TmHoldList *list)
{
  if (list->n_held == 0)
    return g_strdup (list->lines->len > 0
                         ? _ ("Nothing found calls for holding back; these were decided before.")
                         : _ ("No piece to hold back."));
  return g_strdup_printf (
      ngettext ("%u piece, %s; %u of them not measured; by the chance of each about %.1f are out.",
                "%u pieces from %s on; %u of them not measured; by the chance of each about %.1f are out.",
                list->n_held),
      list->n_held, find_first_held (list), list->n_unmeasured, list->expected);
}

char *
tm_words_chance_out (double out)
{
  if (!isfinite (out))
    return g_strdup (_ ("unknown"));
  return tm_chance_text (out);
}

char *
tm_words_hold_line (const TmHoldLine *line)
{
  g_autofree char *chance = tm_words_chance_out (line->out);

  if (!line->held)
    return g_strdup (_ ("decided before"));
  return line->measured ? g_strdup_printf (_ ("measured, chance of being out %s"), chance)
                        : g_strdup_printf (_ ("not measured, chance of being out %s"), chance);
}

const char *
tm_words_disposition (const TmPiece *piece)
{
  const char *text = tm_disposition_text (tm_disposition_which (piece->disposition));

  if (*piece->disposition == '\0')
    return "";
  return text != NULL ? text : piece->disposition;
}

static void
put_line (GString *out, const TmHoldList *list, const TmHoldLine *line, const TmPiece *piece)
{
  g_autofree char *chance = NULL;
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  if (isfinite (line->out))
    chance = g_strdup (g_ascii_formatd (digits, sizeof digits, "%.6f", line->out));
  tm_csv_put_text (out, line->serial);
  tm_csv_put_text (out, list->feature);
  tm_csv_put_text (out, !line->held ? "" : line->measured ? _ ("yes") : _ ("no"));
  tm_csv_put_number (out, chance != NULL ? chance : "");
  tm_csv_put_text (out, piece != NULL ? tm_words_disposition (piece) : "");
  tm_csv_put_text (out, piece != NULL ? piece->disposition_note : "");
  tm_csv_end_line (out);
}

GString *
tm_hold_list_table (const TmHoldList *list, const TmJob *job)
{
  const char *headings[] = { _ ("Piece"),       _ ("Feature"), _ ("Measured"), _ ("Chance of being out"),
                             _ ("Disposition"), _ ("Note") };
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (headings); i++)
    tm_csv_put_text (out, headings[i]);
  tm_csv_end_line (out);
  for (guint i = 0; i < list->lines->len; i++)
    {
      const TmHoldLine *line = g_ptr_array_index (list->lines, i);

      put_line (out, list, line, tm_job_find_piece (job, line->serial));
    }
  return out;
}
