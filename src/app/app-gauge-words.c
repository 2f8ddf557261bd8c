/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauge-words.h"

#include <glib/gi18n-lib.h>

#include "app-document.h"
#include "app-feature-words.h"
#include "app-words.h"
#include "core-gauge-kind.h"

#define DATE_LENGTH 10

const char *
tm_words_gauge_kind (const char *kind)
{
  const TmGaugeKind *known = tm_gauge_kind_find (kind);

  /* A word with a size after it says more than the kind alone. */
  if (known != NULL && g_ascii_strcasecmp (known->word, kind) == 0)
    return g_dpgettext2 (GETTEXT_PACKAGE, "gauge", known->word);
  return kind;
}

static char *
describe_ends (const TmGauge *gauge)
{
  const TmQuantity *from = &gauge->range_from, *to = &gauge->range_to;
  g_autofree char *bare = tm_quantity_format (from);
  g_autofree char *low = tm_words_quantity (from);
  g_autofree char *high = tm_words_quantity (to);

  if (from->given && to->given && from->count == to->count)
    return g_steal_pointer (&low);
  if (from->given && to->given)
    return g_strdup_printf ("%s … %s", from->unit == to->unit ? bare : low, high);
  if (to->given)
    return g_strdup_printf (_ ("up to %s"), high);
  return from->given ? g_strdup_printf (_ ("from %s"), low) : g_strdup ("");
}

char *
tm_words_gauge_range (const TmGauge *gauge)
{
  g_autofree char *ends = describe_ends (gauge);
  g_autofree char *step = tm_quantity_format_in (&gauge->pin_step, gauge->range_to.unit);

  /* Translators: "1 … 10 mm by 0.01": the range of a set of pins and the step from pin to pin. */
  return gauge->pin_step.given ? g_strdup_printf (_ ("%s by %s"), ends, step) : g_steal_pointer (&ends);
}

char *
tm_words_gauge_class (const TmGauge *gauge)
{
  const char *sign = *gauge->pin_sign == '\0'                ? ""
                     : g_str_equal (gauge->pin_sign, "plus") ? _ ("plus")
                                                             : _ ("minus");
  g_autofree char *both = g_strdup_printf ("%s %s", gauge->pin_class, sign);

  return g_strdup (g_strstrip (both));
}

static int
count_days (const char *from, const char *to)
{
  g_autofree char *from_stamp = g_strdup_printf ("%sT00:00:00Z", from);
  g_autofree char *to_stamp = g_strdup_printf ("%sT00:00:00Z", to);
  g_autoptr (GDateTime) first = g_date_time_new_from_iso8601 (from_stamp, NULL);
  g_autoptr (GDateTime) last = g_date_time_new_from_iso8601 (to_stamp, NULL);

  return first != NULL && last != NULL ? (int)(g_date_time_difference (last, first) / G_TIME_SPAN_DAY) : 0;
}

static char *
describe_soon (const char *due, const char *today)
{
  g_autofree char *date = tm_words_date (due);
  int days = count_days (today, due);

  if (days == 0)
    return g_strdup_printf (_ ("due today, %s"), date);
  return g_strdup_printf (ngettext ("due %s, in %d day", "due %s, in %d days", (gulong)days), date, days);
}

char *
tm_words_gauge_state (const TmJob *job, const TmGauge *gauge, const char *today)
{
  const TmCalibration *bad = tm_gauge_found_bad (job, gauge->tag, today);
  const char *due = tm_gauge_due_date (job, gauge, today);
  g_autofree char *date = tm_words_date (bad != NULL ? bad->date : due);

  if (bad != NULL)
    return g_strdup_printf (_ ("found bad on %s"), date);
  switch (tm_gauge_due (job, gauge, today))
    {
    case TM_DUE_OVERDUE:
      return g_strdup_printf (_ ("overdue since %s"), date);
    case TM_DUE_SOON:
      return describe_soon (due, today);
    case TM_DUE_GOOD:
      return g_strdup_printf (_ ("due %s"), date);
    case TM_DUE_UNKNOWN:
    case TM_N_DUES:
    default:
      return g_strdup (_ ("no due date"));
    }
}

const char *
tm_words_due_mark (TmDue due)
{
  return due == TM_DUE_OVERDUE ? "▲ " : due == TM_DUE_SOON ? "◆ " : "";
}

char *
tm_words_limit (const TmQuantity *quantity)
{
  g_autofree char *text = tm_words_quantity (quantity);

  return quantity->given ? g_strdup_printf ("±%s", text) : g_strdup ("");
}

char *
tm_words_signed (gint64 count, const TmQuantity *like)
{
  g_autofree char *text = tm_count_format_exact (ABS (count), (TmUnit)like->unit, like->decimals);

  return g_strdup_printf ("%s%s %s",
                          count > 0   ? "+"
                          : count < 0 ? "−"
                                      : "",
                          text, tm_unit_symbol ((TmUnit)like->unit));
}

const char *
tm_words_gauge_source (const char *source)
{
  return *source != '\0' ? g_dgettext (GETTEXT_PACKAGE, source) : "";
}

char *
tm_today (void)
{
  g_autofree char *now = tm_now_utc ();

  return g_strndup (now, DATE_LENGTH);
}
