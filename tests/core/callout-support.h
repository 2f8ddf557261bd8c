/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * callout-support: rows of requirements with their results written out in words: kind, unit,
 * nominal, [lower upper], and whatever else the text says; or "note:" and why.
 */

#pragma once

#include "core-callout.h"

typedef struct {
  const char *text;
  const char *result;
} Row;

static const char *const status_names[TM_N_CALLOUT_STATUSES] = {
  [TM_CALLOUT_OK] = "ok",
  [TM_CALLOUT_EMPTY] = "note: empty",
  [TM_CALLOUT_NOT_READ] = "note: not read",
  [TM_CALLOUT_CLASS_UNKNOWN] = "note: class unknown",
  [TM_CALLOUT_NO_GENERAL] = "note: no general",
  [TM_CALLOUT_GENERAL_UNKNOWN] = "note: general unknown",
  [TM_CALLOUT_GENERAL_RANGE] = "note: general range",
  [TM_CALLOUT_LIMITS_CROSSED] = "note: crossed",
  [TM_CALLOUT_TOO_FINE] = "note: too fine",
  [TM_CALLOUT_UNIT_WRONG] = "note: unit wrong",
};

static inline void
append_quantity (GString *out, const TmQuantity *quantity)
{
  g_autofree char *text = tm_quantity_format (quantity);

  g_string_append (out, quantity->given ? text : "-");
}

static inline void
append_rest (GString *out, const TmCallout *callout)
{
  if (callout->places != 1)
    g_string_append_printf (out, " x%u", callout->places);
  if (callout->envelope)
    g_string_append (out, " envelope");
  if (callout->zone_diameter)
    g_string_append (out, " dia");
  if (callout->modifier != TM_MODIFIER_NONE)
    g_string_append_printf (out, " %s", tm_modifier_word (callout->modifier));
  for (guint i = 0; i < callout->n_datums; i++)
    g_string_append_printf (out, " %s", callout->datums[i]);
  if (callout->cut != TM_CUT_UNKNOWN)
    g_string_append_printf (out, " %s", tm_cut_word (callout->cut));
}

static inline char *
describe (const TmCallout *callout)
{
  GString *out;

  if (callout->status != TM_CALLOUT_OK)
    {
      g_assert_cmpint (callout->kind, ==, TM_KIND_NOTE);
      g_assert_false (callout->nominal.given || callout->lower.given || callout->upper.given);
      g_assert_cmpint (callout->unit, ==, TM_UNIT_NONE);
      g_assert_cmpuint (callout->places, ==, 1);
      return g_strdup (status_names[callout->status]);
    }
  out = g_string_new (tm_kind_word (callout->kind));
  if (callout->unit != TM_UNIT_NONE)
    {
      g_string_append_printf (out, " %s ", tm_unit_word (callout->unit));
      append_quantity (out, &callout->nominal);
      g_string_append (out, " [");
      append_quantity (out, &callout->lower);
      g_string_append_c (out, ' ');
      append_quantity (out, &callout->upper);
      g_string_append_c (out, ']');
    }
  append_rest (out, callout);
  return g_string_free (out, FALSE);
}

static inline void
check_rows (const Row *rows, gsize n, TmUnit unit, const char *general)
{
  for (gsize i = 0; i < n; i++)
    {
      TmCallout callout = tm_callout_read (rows[i].text, unit, general);
      g_autofree char *got = describe (&callout);
      g_autofree char *shown = g_strescape (rows[i].text, NULL); /* some rows are no UTF-8 */

      g_test_message ("\"%s\"", shown);
      g_assert_cmpstr (got, ==, rows[i].result);
    }
}
