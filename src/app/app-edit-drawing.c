/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-drawing.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Shares of a page are kept to five digits: a hundredth of a millimetre on the largest sheet. */
#define SHARE_DECIMALS 5
#define SHARE_STEPS    100000.0

static double
read_share (const TmQuantity *share)
{
  return share->given ? (double)share->count / (double)tm_unit_counts (TM_UNIT_HARDNESS) : (double)NAN;
}

static TmQuantity
make_share (double share)
{
  gint64 steps = (gint64)floor (CLAMP (share, 0.0, 1.0) * SHARE_STEPS + 0.5);

  return tm_quantity_new (steps * (tm_unit_counts (TM_UNIT_HARDNESS) / (gint64)SHARE_STEPS), TM_UNIT_HARDNESS,
                          SHARE_DECIMALS);
}

TmMarkSpot
tm_mark_spot (const TmBalloonMark *mark)
{
  return (TmMarkSpot) { read_share (&mark->x), read_share (&mark->y), read_share (&mark->to_x),
                        read_share (&mark->to_y) };
}

static void
set_spot (TmBalloonMark *mark, const TmMarkSpot *spot)
{
  gboolean led = isfinite (spot->to_x) && isfinite (spot->to_y);

  mark->x = make_share (spot->x);
  mark->y = make_share (spot->y);
  mark->to_x = led ? make_share (spot->to_x) : TM_QUANTITY_NONE;
  mark->to_y = led ? make_share (spot->to_y) : TM_QUANTITY_NONE;
}

TmBalloonMark *
tm_find_mark (const TmJob *job, const char *drawing, const char *balloon, guint place)
{
  for (guint i = 0; i < job->balloon_marks->len; i++)
    {
      TmBalloonMark *mark = g_ptr_array_index (job->balloon_marks, i);

      if (mark->place == place && g_str_equal (mark->drawing, drawing)
          && g_str_equal (mark->feature, balloon))
        return mark;
    }
  return NULL;
}

TmBalloonMark *
tm_find_any_mark (const TmJob *job, const char *balloon)
{
  return tm_find_place_mark (job, balloon, 0);
}

TmBalloonMark *
tm_find_place_mark (const TmJob *job, const char *balloon, guint place)
{
  TmBalloonMark *found = NULL;
  guint found_at = G_MAXUINT;

  for (guint i = 0; i < job->balloon_marks->len; i++)
    {
      TmBalloonMark *mark = g_ptr_array_index (job->balloon_marks, i);
      guint at = G_MAXUINT;

      if ((place == 0 || mark->place == place) && g_str_equal (mark->feature, balloon)
          && g_ptr_array_find (job->drawings, tm_job_find_drawing (job, mark->drawing), &at) && at < found_at)
        found = mark, found_at = at;
    }
  return found;
}

static gboolean
refuse (GError **error, char *line)
{
  g_set_error_literal (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED, line);
  g_free (line);
  return FALSE;
}

/* -------- Drawings -------- */

char *
tm_edit_free_drawing_name (const TmJob *job, const char *wished)
{
  char *name = g_strdup (wished);

  for (guint n = 2; tm_job_find_drawing (job, name) != NULL; n++)
    {
      g_free (name);
      name = g_strdup_printf ("%s (%u)", wished, n);
    }
  return name;
}

static gboolean
check_drawing (const TmDrawing *drawing, GError **error)
{
  gsize size = drawing->content != NULL ? g_bytes_get_size (drawing->content) : 0;

  if (size == 0)
    return refuse (error, g_strdup_printf (_ ("%s: the file is empty; choose another one."), drawing->name));
  if (size > TM_BOOK_CONTENT_MAX)
    return refuse (error, g_strdup_printf (_ ("%s: a drawing may have %u MiB and this one has more; write it "
                                              "with fewer dots to the inch."),
                                           drawing->name, TM_BOOK_CONTENT_MAX / 1048576u));
  return TRUE;
}

static void
set_digest (TmJob *job, TmDrawing *drawing)
{
  g_autofree char *digest = NULL;

  if (*drawing->digest != '\0')
    return;
  digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, drawing->content);
  drawing->digest = tm_job_intern (job, digest);
}

static gboolean
join_drawing (TmJob *job, TmDrawing *drawing, GError **error)
{
  TmAddStatus status;

  if (!check_drawing (drawing, error))
    return FALSE;
  set_digest (job, drawing);
  status = tm_job_add_drawing (job, drawing);
  return status == TM_ADD_OK || tm_edit_refuse (drawing->name, status, error);
}

gboolean
tm_edit_add_drawings (TmDocument *document, GPtrArray *drawings, GError **error)
{
  TmJob *job = tm_document_job (document);
  guint before = job->drawings->len;
  guint n = 0;

  while (n < drawings->len && join_drawing (job, g_ptr_array_index (drawings, n), error))
    n++;
  if (n == drawings->len && tm_document_save_definitions (document, error))
    return TRUE;
  for (guint i = n; i < drawings->len; i++)
    tm_drawing_free (g_ptr_array_index (drawings, i));
  g_ptr_array_set_size (job->drawings, (int)before);
  return FALSE;
}

/* Takes over what the file of @from is, and the file itself. */
static void
take_file (TmDrawing *drawing, const TmDrawing *from)
{
  drawing->media = from->media;
  drawing->page = from->page;
  drawing->digest = from->digest;
  drawing->content = from->content;
}

gboolean
tm_edit_replace_drawing (TmDocument *document, TmDrawing *drawing, TmDrawing *with, GError **error)
{
  TmDrawing before = *drawing;

  if (!check_drawing (with, error))
    {
      tm_drawing_free (with);
      return FALSE;
    }
  set_digest (tm_document_job (document), with);
  take_file (drawing, with);
  if (!tm_document_save_definitions (document, error))
    {
      take_file (drawing, &before);
      tm_drawing_free (with);
      return FALSE;
    }
  with->content = before.content;
  tm_drawing_free (with);
  return TRUE;
}

/* The marks of @drawing, not owned. */
static GPtrArray *
find_marks (const TmJob *job, const TmDrawing *drawing)
{
  GPtrArray *marks = g_ptr_array_new ();

  for (guint i = 0; i < job->balloon_marks->len; i++)
    {
      TmBalloonMark *mark = g_ptr_array_index (job->balloon_marks, i);

      if (g_str_equal (mark->drawing, drawing->name))
        g_ptr_array_add (marks, mark);
    }
  return marks;
}

static void
rename_drawing (TmDrawing *drawing, GPtrArray *marks, const char *name)
{
  drawing->name = name;
  for (guint i = 0; i < marks->len; i++)
    ((TmBalloonMark *)g_ptr_array_index (marks, i))->drawing = name;
}

gboolean
tm_edit_name_drawing (TmDocument *document, TmDrawing *drawing, const char *name, const char *sheet,
                      GError **error)
{
  TmJob *job = tm_document_job (document);
  g_autoptr (GPtrArray) marks = find_marks (job, drawing);
  const TmDrawing *holder = tm_job_find_drawing (job, name);
  const char *old_name = drawing->name, *old_sheet = drawing->sheet;

  if (*name == '\0')
    return refuse (error, g_strdup (_ ("Name: a drawing needs one; write its number.")));
  if (holder != NULL && holder != drawing)
    return tm_edit_refuse (name, TM_ADD_TAKEN, error);
  rename_drawing (drawing, marks, tm_job_intern (job, name));
  drawing->sheet = tm_job_intern (job, sheet);
  if (tm_document_save_definitions (document, error))
    return TRUE;
  rename_drawing (drawing, marks, old_name);
  drawing->sheet = old_sheet;
  return FALSE;
}

static void
put_back (GPtrArray *list, GPtrArray *rows)
{
  while (list->len > 0)
    g_ptr_array_steal_index (list, list->len - 1);
  for (guint i = 0; i < rows->len; i++)
    g_ptr_array_add (list, g_ptr_array_index (rows, i));
}

/* The rows of @list in their order, not owned. */
static GPtrArray *
hold_pointers (GPtrArray *list)
{
  GPtrArray *held = g_ptr_array_new ();

  for (guint i = 0; i < list->len; i++)
    g_ptr_array_add (held, g_ptr_array_index (list, i));
  return held;
}

gboolean
tm_edit_remove_drawing (TmDocument *document, TmDrawing *drawing, GError **error)
{
  TmJob *job = tm_document_job (document);
  g_autoptr (GPtrArray) marks = find_marks (job, drawing);
  g_autoptr (GPtrArray) drawings_before = hold_pointers (job->drawings);
  g_autoptr (GPtrArray) marks_before = hold_pointers (job->balloon_marks);
  guint at = 0;

  g_return_val_if_fail (g_ptr_array_find (job->drawings, drawing, &at), FALSE);

  g_ptr_array_steal_index (job->drawings, at);
  for (guint i = 0; i < marks->len; i++)
    if (g_ptr_array_find (job->balloon_marks, g_ptr_array_index (marks, i), &at))
      g_ptr_array_steal_index (job->balloon_marks, at);
  if (!tm_document_save_definitions (document, error))
    {
      put_back (job->drawings, drawings_before);
      put_back (job->balloon_marks, marks_before);
      return FALSE;
    }
  tm_drawing_free (drawing);
  g_ptr_array_set_free_func (marks, (GDestroyNotify)tm_balloon_mark_free);
  return TRUE;
}

/* -------- Balloons -------- */

static gboolean
add_mark (TmDocument *document, const char *drawing, const char *balloon, guint place, const TmMarkSpot *spot,
          GError **error)
{
  TmJob *job = tm_document_job (document);
  TmBalloonMark *mark = tm_balloon_mark_new ();
  TmAddStatus status;

  mark->drawing = tm_job_intern (job, drawing);
  mark->feature = tm_job_intern (job, balloon);
  mark->place = place;
  set_spot (mark, spot);
  status = tm_job_add_balloon_mark (job, mark);
  if (status != TM_ADD_OK)
    {
      tm_balloon_mark_free (mark);
      return tm_edit_refuse (balloon, status, error);
    }
  if (tm_document_save_definitions (document, error))
    return TRUE;
  tm_job_remove_balloon_mark (job, mark);
  return FALSE;
}

gboolean
tm_edit_put_mark (TmDocument *document, const char *drawing, const char *balloon, guint place,
                  const TmMarkSpot *spot, GError **error)
{
  TmBalloonMark *mark = tm_find_mark (tm_document_job (document), drawing, balloon, place);
  TmBalloonMark before;

  if (mark == NULL)
    return add_mark (document, drawing, balloon, place, spot, error);
  before = *mark;
  set_spot (mark, spot);
  if (tm_document_save_definitions (document, error))
    return TRUE;
  *mark = before;
  return FALSE;
}

static void
free_mark (gpointer row)
{
  tm_balloon_mark_free (row);
}

gboolean
tm_edit_remove_mark (TmDocument *document, TmBalloonMark *mark, GError **error)
{
  return tm_edit_remove_row (document, tm_document_job (document)->balloon_marks, mark, free_mark, error);
}
