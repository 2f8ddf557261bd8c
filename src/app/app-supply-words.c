/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-supply-words.h"

#include <glib/gi18n-lib.h>

const char *
tm_words_supply_kind (TmSupplyKind kind)
{
  static const char *const words[TM_N_SUPPLIES] = {
    [TM_SUPPLY_MATERIAL] = NC_ ("supply", "Raw material"),
    [TM_SUPPLY_PROCESS] = NC_ ("supply", "Special process"),
    [TM_SUPPLY_TEST] = NC_ ("supply", "Functional test"),
  };

  g_return_val_if_fail ((guint)kind < TM_N_SUPPLIES, "");

  return g_dpgettext2 (GETTEXT_PACKAGE, "supply", words[kind]);
}

const char *
tm_words_approval (TmApproval approval)
{
  switch (approval)
    {
    case TM_APPROVAL_YES:
      return C_ ("approval", "approved by the customer");
    case TM_APPROVAL_NO:
      return C_ ("approval", "not approved by the customer");
    case TM_APPROVAL_NOT_ASKED:
      return C_ ("approval", "the customer asks for no approval");
    case TM_APPROVAL_UNSAID:
    default:
      return C_ ("approval", "not said");
    }
}

static void
add_part (GString *parts, const char *part)
{
  if (*part != '\0')
    g_string_append_printf (parts, "%s%s", parts->len > 0 ? " · " : "", part);
}

char *
tm_words_supply (const TmSupply *supply)
{
  GString *parts = g_string_new (NULL);
  g_autofree char *certificate = *supply->certificate != '\0'
                                     ? g_strdup_printf (_ ("certificate %s"), supply->certificate)
                                     : g_strdup (_ ("no certificate"));

  add_part (parts, tm_words_supply_kind (supply->kind));
  add_part (parts, supply->specification);
  add_part (parts, supply->code);
  add_part (parts, supply->supplier);
  add_part (parts, certificate);
  return g_string_free (parts, FALSE);
}

char *
tm_words_sub_part (const TmSubPart *part)
{
  GString *parts = g_string_new (NULL);
  g_autofree char *serial
      = *part->serial != '\0' ? g_strdup_printf (_ ("serial %s"), part->serial) : g_strdup ("");
  g_autofree char *report = *part->report != '\0' ? g_strdup_printf (_ ("report %s"), part->report)
                                                  : g_strdup (_ ("no first-article report"));

  add_part (parts, part->name);
  add_part (parts, serial);
  add_part (parts, report);
  return g_string_free (parts, FALSE);
}
