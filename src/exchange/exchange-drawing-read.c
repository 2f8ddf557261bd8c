/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows of "drawings" and "balloons".  A drawing's bytes are base64; nothing here looks into them.
 */

#include "exchange-base64.h"
#include "exchange-job-read.h"

#include <glib/gi18n-lib.h>

#include <string.h>

#define MAX_PAGE   10000
#define MAX_PLACES 1000

static gboolean
take_media (TmJob *job, const TmJsonRow *row, TmDrawing *drawing, GError **error)
{
  static const char *const words[] = { "image/png", "image/jpeg", "image/svg+xml", "application/pdf", NULL };
  TmMember member = TM_OWN (row, DRAWING_MEDIA);

  if (!g_strv_contains (words, tm_member_text (member)))
    return tm_member_fail_word (member, "image/png, image/jpeg, image/svg+xml, application/pdf", error);
  tm_take_text (member, job, &drawing->media);
  return TRUE;
}

static gboolean
take_content (TmJob *job, const TmJsonRow *row, TmDrawing *drawing, GError **error)
{
  TmMember content = TM_OWN (row, DRAWING_CONTENT);
  TmMember digest = TM_OWN (row, DRAWING_DIGEST);
  g_autofree char *found = NULL;

  if (!tm_take_digest (digest, job, &drawing->digest, error))
    return FALSE;
  if (!tm_member_is_given (content))
    return tm_member_is_given (digest)
           || tm_member_fail (content, TM_EXCHANGE_ERROR_MISSING, error,
                              _ ("missing; write the file's bytes as base64"));
  drawing->content = tm_base64_read (tm_member_text (content));
  if (drawing->content == NULL)
    return tm_member_fail (content, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("is no base64; write the file's bytes so, without line ends"));
  found = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, drawing->content);
  if (*drawing->digest != '\0' && !g_str_equal (drawing->digest, found))
    return tm_member_fail (digest, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("is not that of \"content\"; one of them was altered"));
  drawing->digest = tm_job_intern (job, found);
  return TRUE;
}

gboolean
tm_read_drawing_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmDrawing *drawing = tm_drawing_new ();
  TmMember name = TM_OWN (row, DRAWING_NAME);
  TmAddStatus status;

  tm_take_text (TM_OWN (row, DRAWING_SHEET), job, &drawing->sheet);
  drawing->extra = tm_job_intern (job, row->extra->str);
  if (tm_take_name (name, job, TRUE, &drawing->name, error) && take_media (job, row, drawing, error)
      && tm_take_whole (TM_OWN (row, DRAWING_PAGE), 1, MAX_PAGE, &drawing->page, error)
      && take_content (job, row, drawing, error))
    {
      status = tm_job_add_drawing (job, drawing);
      if (status == TM_ADD_OK)
        return TRUE;
      tm_read_add_fail (name, status, error);
    }
  tm_drawing_free (drawing);
  return FALSE;
}

/* A share of the page's width or height. */
static gboolean
take_share (TmMember member, gboolean required, TmQuantity *out, GError **error)
{
  if (!tm_member_is_given (member))
    return !required
           || tm_member_fail (member, TM_EXCHANGE_ERROR_MISSING, error,
                              _ ("missing; write a share of the page from 0 to 1"));
  if (!tm_take_not_negative (member, TM_UNIT_HARDNESS, out, error))
    return FALSE;
  return out->count <= tm_unit_counts (TM_UNIT_HARDNESS)
         || tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                            _ ("lies outside the page; write a share of it from 0 to 1"));
}

static gboolean
take_point (const TmJsonRow *row, guint x, guint y, gboolean required, TmQuantity *out_x, TmQuantity *out_y,
            GError **error)
{
  if (!take_share (TM_OWN (row, x), required, out_x, error)
      || !take_share (TM_OWN (row, y), required, out_y, error))
    return FALSE;
  return out_x->given == out_y->given
         || tm_member_fail (TM_OWN (row, x), TM_EXCHANGE_ERROR_MISSING, error,
                            _ ("a point needs both of its shares; write the other one too"));
}

static gboolean
take_balloon (TmJob *job, const TmJsonRow *row, TmBalloonMark *mark, GError **error)
{
  mark->extra = tm_job_intern (job, row->extra->str);
  return tm_take_name (TM_OWN (row, BALLOON_DRAWING), job, TRUE, &mark->drawing, error)
         && tm_take_name (TM_OWN (row, BALLOON_FEATURE), job, TRUE, &mark->feature, error)
         && tm_take_whole (TM_OWN (row, BALLOON_PLACE), 0, MAX_PLACES, &mark->place, error)
         && take_point (row, BALLOON_X, BALLOON_Y, TRUE, &mark->x, &mark->y, error)
         && take_point (row, BALLOON_TO_X, BALLOON_TO_Y, FALSE, &mark->to_x, &mark->to_y, error);
}

gboolean
tm_read_balloon_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmBalloonMark *mark = tm_balloon_mark_new ();
  TmAddStatus status;

  if (take_balloon (job, row, mark, error))
    {
      status = tm_job_add_balloon_mark (job, mark);
      if (status == TM_ADD_OK)
        return TRUE;
      tm_read_add_fail (TM_OWN (row, status == TM_ADD_NO_DRAWING ? BALLOON_DRAWING : BALLOON_FEATURE), status,
                        error);
    }
  tm_balloon_mark_free (mark);
  return FALSE;
}
