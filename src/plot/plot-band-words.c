/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-band-private.h"

static const char *
translate_verdict (TmVerdict verdict)
{
  return g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word (verdict));
}

static void
describe_limits (const TmBandPlot *plot, GString *out)
{
  const char *unit = tm_unit_symbol (plot->unit);

  if (plot->limits.has_lower && plot->limits.has_upper)
    g_string_append_printf (out, _ ("limits %s to %s %s"), plot->lower_text, plot->upper_text, unit);
  else if (plot->limits.has_upper)
    g_string_append_printf (out, _ ("at most %s %s"), plot->upper_text, unit);
  else if (plot->limits.has_lower)
    g_string_append_printf (out, _ ("at least %s %s"), plot->lower_text, unit);
  else if (plot->attribute)
    g_string_append (out, _ ("pass or fail"));
  else
    g_string_append (out, _ ("no limits"));
}

static void
describe_proven (const TmBandPlot *plot, GString *out)
{
  const guint decimals = MIN (plot->decimals + 1, TM_MAX_DECIMALS);
  double low, high;
  g_autofree char *from = NULL, *to = NULL;

  if (!plot->limits.has_lower && !plot->limits.has_upper)
    return;
  if (tm_band_plot_proven (plot, &low, &high))
    {
      if (!plot->guarded)
        return;
    }
  else
    {
      g_string_append_printf (out, "; %s", _ ("nothing can be proven in"));
      return;
    }
  from = isfinite (low) ? tm_count_format ((gint64)low, plot->unit, decimals) : NULL;
  to = isfinite (high) ? tm_count_format ((gint64)high, plot->unit, decimals) : NULL;
  g_string_append (out, "; ");
  if (from != NULL && to != NULL)
    g_string_append_printf (out, _ ("proven in from %s to %s"), from, to);
  else if (to != NULL)
    g_string_append_printf (out, _ ("proven in up to %s"), to);
  else if (from != NULL)
    g_string_append_printf (out, _ ("proven in from %s"), from);
}

/* Of what all methods, or pins and readings, say together: the interval too. */
static void
describe_interval (const TmBandPlot *plot, const TmBandRow *row, GString *out)
{
  const guint decimals = MIN (plot->decimals + 1, TM_MAX_DECIMALS);
  g_autofree char *low = NULL, *high = NULL;

  if (!isfinite (row->low) || !isfinite (row->high))
    return;
  low = tm_count_format ((gint64)llround (row->low), plot->unit, decimals);
  high = tm_count_format ((gint64)llround (row->high), plot->unit, decimals);
  g_string_append (out, ", ");
  g_string_append_printf (out, _ ("from %s to %s"), low, high);
}

static void
describe_read (const TmBandPlot *plot, const TmBandRow *row, GString *out)
{
  const char *unit = plot->attribute ? "" : tm_unit_symbol (plot->unit);
  const char *space = *unit != '\0' ? " " : "";

  g_string_append_printf (out, "%s%s: %s%s%s", row->part ? "; " : ". ", row->label, row->value, space, unit);
  if (row->repeats > 1 && !plot->attribute)
    g_string_append_printf (out, " (%s)", _ ("mean of repeats"));
  if (row->together && !row->part && !row->mating)
    g_string_append_printf (out, ", %s", _ ("all methods together"));
  if (row->part || row->together)
    describe_interval (plot, row, out);
  if (row->cannot)
    g_string_append_printf (out, ", %s", _ ("cannot settle it"));
  if (row->apart)
    g_string_append_printf (out, ", %s", _ ("stands apart"));
  if (row->verdict != TM_VERDICT_NOT_MEASURED && !plot->attribute)
    g_string_append_printf (out, ", %s", translate_verdict (row->verdict));
}

static void
describe_row (const TmBandPlot *plot, const TmBandRow *row, GString *out)
{
  if (row->read)
    describe_read (plot, row, out);
  else
    g_string_append_printf (out, ". %s: %s", row->label, _ ("not read"));
  if (row->typed)
    {
      g_string_append (out, ", ");
      g_string_append_printf (out, _ ("%s %s typed, not recorded"), row->typed_value,
                              plot->attribute ? "" : tm_unit_symbol (plot->unit));
    }
}

char *
tm_band_plot_describe (const TmBandPlot *plot)
{
  GString *out;

  g_return_val_if_fail (plot != NULL, NULL);
  out = g_string_new (plot->title);
  g_string_append (out, ": ");
  describe_limits (plot, out);
  describe_proven (plot, out);
  for (guint i = 0; i < plot->rows->len; i++)
    describe_row (plot, &g_array_index (plot->rows, TmBandRow, i), out);
  for (guint i = 0; i < plot->pins->len; i++)
    g_string_append_printf (out, ". %s", g_array_index (plot->pins, TmBandPin, i).words);
  if (plot->open_words != NULL)
    g_string_append_printf (out, ". %s", plot->open_words);
  tm_band_plan_describe (plot, out);
  if (plot->has_mate)
    {
      g_string_append (out, ". ");
      g_string_append_printf (out, _ ("Mate %s"), plot->mate_text);
      if (plot->fit_by_limits != NULL)
        g_string_append_printf (out, ", %s", plot->fit_by_limits);
      if (plot->fit_measured != NULL)
        g_string_append_printf (out, ", %s", plot->fit_measured);
    }
  g_string_append_c (out, '.');
  return g_string_free (out, FALSE);
}
