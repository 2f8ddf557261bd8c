/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-callout: tenthmark-cli callout.
 */

#include <glib/gi18n-lib.h>
#include <stdio.h>

#include "cli-json.h"
#include "cli-verbs.h"
#include "core-callout.h"

char *
tm_join_operands (const GPtrArray *operands)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < operands->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? " " : "", (const char *)g_ptr_array_index (operands, i));
  return g_string_free (text, FALSE);
}

static void
print_callout_json (const TmCallout *callout, const char *text)
{
  yajl_gen gen = tm_print_begin ();

  yajl_gen_map_open (gen);
  tm_print_text (gen, "kind", tm_kind_word (callout->kind));
  if (callout->status != TM_CALLOUT_OK)
    {
      tm_print_text (gen, "text", text);
      tm_print_text (gen, "reason", _ (tm_callout_status_text (callout->status)));
    }
  else
    {
      tm_print_unit (gen, callout->unit);
      tm_print_quantity (gen, "nominal", &callout->nominal, callout->unit);
      tm_print_quantity (gen, "lower", &callout->lower, callout->unit);
      tm_print_quantity (gen, "upper", &callout->upper, callout->unit);
      tm_print_integer (gen, "places", callout->places);
      tm_print_flag (gen, "zone_diameter", callout->zone_diameter);
      tm_print_text (gen, "modifier",
                     callout->modifier == TM_MODIFIER_NONE ? NULL : tm_modifier_word (callout->modifier));
      tm_print_key (gen, "datums");
      yajl_gen_array_open (gen);
      for (guint i = 0; i < callout->n_datums; i++)
        yajl_gen_string (gen, (const unsigned char *)callout->datums[i], strlen (callout->datums[i]));
      yajl_gen_array_close (gen);
      tm_print_flag (gen, "envelope", callout->envelope);
      tm_print_text (gen, "cut", callout->cut == TM_CUT_UNKNOWN ? NULL : tm_cut_word (callout->cut));
    }
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

static void
print_quantity (const char *label, const TmQuantity *quantity)
{
  g_autofree char *number = tm_quantity_format (quantity);

  if (quantity->given)
    printf ("%s %s %s\n", label, number, tm_unit_symbol (quantity->unit));
}

static void
print_callout (const TmCallout *callout, const char *text)
{
  if (callout->status != TM_CALLOUT_OK)
    {
      printf (_ ("note: “%s”: %s\n"), text, _ (tm_callout_status_text (callout->status)));
      return;
    }
  printf (_ ("kind %s\n"), g_dpgettext2 (GETTEXT_PACKAGE, "kind", tm_kind_word (callout->kind)));
  if (callout->places > 1)
    printf (_ ("places %u\n"), callout->places);
  print_quantity (_ ("nominal"), &callout->nominal);
  print_quantity (_ ("lower"), &callout->lower);
  print_quantity (_ ("upper"), &callout->upper);
}

int
tm_verb_callout (int n_words, char **words)
{
  const TmVerb *verb = tm_verb_find ("callout");
  const char *unit_word = "mm";
  const char *general = NULL;
  gboolean json = FALSE;
  const TmOption options[] = {
    { "unit", "mm|in", N_ ("the drawing's unit; mm if not given"), &unit_word, NULL },
    { "general", "TEXT", N_ ("its general tolerance, such as \"ISO 2768-m\""), &general, NULL },
    { "json", NULL, N_ ("print JSON"), NULL, &json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);
  g_autofree char *text = NULL;
  TmUnit unit;
  TmCallout callout;

  if (operands == NULL)
    return status;
  if (operands->len == 0)
    return tm_fail (_ ("callout: it takes the requirement's text, such as \"25 H7\""));
  if (!tm_unit_from_word (unit_word, &unit) || (unit != TM_UNIT_MM && unit != TM_UNIT_IN))
    return tm_fail (_ ("callout: --unit “%s”: use mm or in"), unit_word);
  text = tm_join_operands (operands);
  callout = tm_callout_read (text, unit, general);
  if (json)
    print_callout_json (&callout, text);
  else
    print_callout (&callout, text);
  return callout.status == TM_CALLOUT_OK ? 0 : 1;
}
