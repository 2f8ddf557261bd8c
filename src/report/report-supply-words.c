/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-supply-words.h"

#include <glib/gi18n-lib.h>

const char *
tm_report_supply_word (TmSupplyKind kind)
{
  switch (kind)
    {
    case TM_SUPPLY_PROCESS:
      return N_ ("special process");
    case TM_SUPPLY_TEST:
      return N_ ("functional test");
    case TM_SUPPLY_MATERIAL:
    case TM_N_SUPPLIES:
    default:
      return N_ ("raw material");
    }
}

const char *
tm_report_approval_word (TmApproval approval)
{
  switch (approval)
    {
    case TM_APPROVAL_YES:
      return NC_ ("approval", "yes");
    case TM_APPROVAL_NO:
      return NC_ ("approval", "no");
    case TM_APPROVAL_NOT_ASKED:
      return NC_ ("approval", "not needed");
    case TM_APPROVAL_UNSAID:
    default:
      return "";
    }
}
