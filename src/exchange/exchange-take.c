/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-take.h"

#include <glib/gi18n-lib.h>

const char *
tm_member_text (TmMember member)
{
  if (member.object >= 0)
    return tm_json_inner_text (member.row, (guint)member.object, (guint)member.member);
  return tm_json_text (member.row, (guint)member.member);
}

gboolean
tm_member_is_given (TmMember member)
{
  return *tm_member_text (member) != '\0';
}

gboolean
tm_member_fail (TmMember member, TmExchangeError code, GError **error, const char *format, ...)
{
  g_autofree char *place = member.object >= 0
                               ? tm_json_inner_path (member.row, (guint)member.object, (guint)member.member)
                               : tm_json_path (member.row, member.member);
  g_autofree char *text = NULL;
  va_list args;

  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);
  tm_exchange_fail (error, code, member.row->source, place, "%s", text);
  return FALSE;
}

void
tm_take_text (TmMember member, TmJob *job, const char **out)
{
  *out = tm_job_intern (job, tm_member_text (member));
}

gboolean
tm_take_name (TmMember member, TmJob *job, gboolean required, const char **out, GError **error)
{
  const char *text = tm_member_text (member);

  if (required && *text == '\0')
    return tm_member_fail (member, TM_EXCHANGE_ERROR_MISSING, error, _ ("missing; give it a text"));
  *out = tm_job_intern (job, text);
  return TRUE;
}

gboolean
tm_take_quantity (TmMember member, TmUnit unit, TmQuantity *out, GError **error)
{
  const char *text = tm_member_text (member);
  g_autofree char *quoted = NULL;
  TmReadStatus status;

  if (*text == '\0')
    return TRUE;
  status = tm_quantity_read (text, unit, out);
  if (status == TM_READ_OK)
    return TRUE;
  quoted = tm_exchange_quote (text);
  return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error, "%s: %s", quoted,
                         _ (tm_read_status_text (status)));
}

gboolean
tm_take_spread (TmMember member, TmUnit unit, TmQuantity *out, GError **error)
{
  const TmUnit others[] = { TM_UNIT_DEGREE, TM_UNIT_HARDNESS };
  const char *text = tm_member_text (member);
  TmQuantity read = TM_QUANTITY_NONE;
  gboolean found = *text != '\0' && tm_quantity_read (text, unit, &read) == TM_READ_UNIT_WRONG;

  for (guint i = 0; found && !read.given && i < G_N_ELEMENTS (others); i++)
    tm_quantity_read (text, others[i], &read);
  if (!found || !read.given)
    return tm_take_quantity (member, unit, out, error);
  *out = read;
  return TRUE;
}

static gboolean
check_not_negative (TmMember member, const TmQuantity *quantity, GError **error)
{
  return quantity->count >= 0
         || tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                            _ ("must not be below zero; write it without the sign"));
}

gboolean
tm_take_not_negative (TmMember member, TmUnit unit, TmQuantity *out, GError **error)
{
  return tm_take_quantity (member, unit, out, error) && check_not_negative (member, out, error);
}

gboolean
tm_take_spread_not_negative (TmMember member, TmUnit unit, TmQuantity *out, GError **error)
{
  return tm_take_spread (member, unit, out, error) && check_not_negative (member, out, error);
}

gboolean
tm_take_above_zero (TmMember member, TmUnit unit, const char *like, TmQuantity *out, GError **error)
{
  if (!tm_take_quantity (member, unit, out, error))
    return FALSE;
  return !out->given || out->count > 0
         || tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                            _ ("must be above zero; write it like %s"), like);
}

gboolean
tm_take_length_above_zero (TmMember member, TmUnit unit, TmQuantity *out, GError **error)
{
  if (!tm_take_quantity (member, unit, out, error))
    return FALSE;
  return !out->given || out->count > 0
         || tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                            _ ("must be above zero; correct it, or take it out"));
}

/* The number in @length digits at @text; FALSE when one of them is none. */
static gboolean
read_digits (const char *text, guint length, guint *out)
{
  *out = 0;
  for (guint i = 0; i < length; i++)
    {
      if (!g_ascii_isdigit (text[i]))
        return FALSE;
      *out = *out * 10 + (guint)(text[i] - '0');
    }
  return TRUE;
}

static gboolean
is_date (const char *text)
{
  guint year, month, day;

  return read_digits (text, 4, &year) && text[4] == '-' && read_digits (text + 5, 2, &month) && text[7] == '-'
         && read_digits (text + 8, 2, &day) && month >= 1 && month <= 12
         && g_date_valid_dmy ((GDateDay)day, (GDateMonth)month, (GDateYear)year);
}

static gboolean
is_clock (const char *text)
{
  guint hour, minute, second;

  return read_digits (text, 2, &hour) && text[2] == ':' && read_digits (text + 3, 2, &minute)
         && text[5] == ':' && read_digits (text + 6, 2, &second) && text[8] == 'Z' && text[9] == '\0'
         && hour < 24 && minute < 60 && second < 60;
}

gboolean
tm_take_date (TmMember member, TmJob *job, const char **out, GError **error)
{
  const char *text = tm_member_text (member);
  g_autofree char *quoted = NULL;

  if (*text == '\0')
    return TRUE;
  if (is_date (text) && text[10] == '\0')
    {
      *out = tm_job_intern (job, text);
      return TRUE;
    }
  quoted = tm_exchange_quote (text);
  return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                         _ ("%s is no date of the calendar; write it like 2026-05-04"), quoted);
}

gboolean
tm_job_is_moment (const char *text)
{
  return is_date (text) && text[10] == 'T' && is_clock (text + 11);
}

gboolean
tm_take_moment (TmMember member, TmJob *job, const char **out, GError **error)
{
  const char *text = tm_member_text (member);
  g_autofree char *quoted = NULL;

  if (*text == '\0')
    return TRUE;
  if (tm_job_is_moment (text))
    {
      *out = tm_job_intern (job, text);
      return TRUE;
    }
  quoted = tm_exchange_quote (text);
  return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                         _ ("%s is no date and time in UTC; write it like 2026-05-04T09:12:33Z"), quoted);
}

gboolean
tm_member_fail_word (TmMember member, const char *words, GError **error)
{
  g_autofree char *quoted = tm_exchange_quote (tm_member_text (member));

  return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                         _ ("%s is not known here; use one of: %s"), quoted, words);
}

gboolean
tm_take_whole (TmMember member, guint least, guint most, guint *out, GError **error)
{
  const TmJsonSlot *slot = &member.row->slots[member.member];

  if (!slot->given)
    return TRUE;
  if (slot->whole < least || slot->whole > most)
    return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error,
                           _ ("%u is out of range; use a number from %u to %u"), slot->whole, least, most);
  *out = slot->whole;
  return TRUE;
}
