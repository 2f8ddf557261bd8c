/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-entry: what a machinist's keystrokes mean as a reading of one feature.
 */

#include <glib/gi18n-lib.h>
#include <string.h>

#include "core-entry-forms.h"
#include "core-entry-text.h"

static const char *const status_texts[TM_N_ENTRY_STATUSES] = {
  [TM_ENTRY_OK] = "",
  [TM_ENTRY_EMPTY] = N_ ("nothing is typed yet"),
  [TM_ENTRY_NOT_A_NUMBER] = N_ ("this is not one number; write it like 24.987, .7486 or +3"),
  [TM_ENTRY_THOUSANDS] = N_ ("more than one decimal mark, or a digit-group separator; write one mark only"),
  [TM_ENTRY_TOO_FINE] = N_ ("finer than can be kept exactly; write fewer decimals"),
  [TM_ENTRY_TOO_LARGE] = N_ ("too large to be a reading"),
  [TM_ENTRY_UNIT_UNKNOWN]
  = N_ ("the unit is not known; write mm, um, in, thou, tenths, uin or deg, or leave it out"),
  [TM_ENTRY_UNIT_WRONG] = N_ ("the unit does not go with this feature"),
  [TM_ENTRY_NO_NOMINAL]
  = N_ ("a sign means a deviation from nominal, and this feature has no nominal; write the whole size"),
  [TM_ENTRY_SHORTHAND_NONE] = N_ ("far from this feature's size however it is read; write it with its unit"),
  [TM_ENTRY_SHORTHAND_MANY] = N_ ("this has more than one meaning; write it with its unit"),
  [TM_ENTRY_BAD_FRACTION]
  = N_ ("a fraction is read for inch features only, with no sign and no zero below; write a decimal"),
  [TM_ENTRY_NEGATIVE] = N_ ("a size cannot be below zero"),
  [TM_ENTRY_NOT_PASS_FAIL] = N_ ("this feature passes or fails; type p or f"),
  [TM_ENTRY_PASS_FAIL] = N_ ("this feature has a size; type the reading"),
};

static const struct {
  const char *word;
  TmOutcome outcome;
} outcome_words[] = {
  { "p", TM_OUTCOME_PASS },     { "pass", TM_OUTCOME_PASS },  { "go", TM_OUTCOME_PASS },
  { "f", TM_OUTCOME_FAIL },     { "fail", TM_OUTCOME_FAIL },  { "nogo", TM_OUTCOME_FAIL },
  { "no-go", TM_OUTCOME_FAIL }, { "no go", TM_OUTCOME_FAIL },
};

static TmOutcome
find_outcome (const char *plain)
{
  for (gsize i = 0; i < G_N_ELEMENTS (outcome_words); i++)
    {
      if (strcmp (plain, outcome_words[i].word) == 0)
        return outcome_words[i].outcome;
    }
  return TM_OUTCOME_NONE;
}

static void
read_outcome (const TmEntryText *text, TmEntry *entry)
{
  entry->form = TM_ENTRY_FORM_OUTCOME;
  entry->outcome = find_outcome (text->plain);
  if (entry->outcome != TM_OUTCOME_NONE)
    entry->status = TM_ENTRY_OK;
  else
    entry->status = text->status == TM_ENTRY_EMPTY ? TM_ENTRY_EMPTY : TM_ENTRY_NOT_PASS_FAIL;
}

/* The unit the number is written in; FALSE and a refusal when it is none for this feature. */
static gboolean
find_unit (const TmEntryText *text, const TmFeature *feature, TmUnit *unit, TmEntryStatus *status)
{
  *unit = feature->unit;
  if (text->unit[0] != '\0' && !tm_unit_from_word (text->unit, unit))
    {
      *status = TM_ENTRY_UNIT_UNKNOWN;
      return FALSE;
    }
  if (tm_unit_dimension (*unit) != tm_unit_dimension (feature->unit) || *unit == TM_UNIT_NONE)
    {
      *status = TM_ENTRY_UNIT_WRONG;
      return FALSE;
    }
  return TRUE;
}

static void
read_number (const TmEntryText *text, const TmFeature *feature, TmEntry *entry)
{
  TmUnit unit;

  if (!find_unit (text, feature, &unit, &entry->status))
    return;
  if (text->is_fraction)
    tm_entry_form_fraction (text, unit, feature, entry);
  else if (text->sign != 0)
    tm_entry_form_deviation (text, unit, feature, entry);
  else if (text->unit[0] != '\0')
    tm_entry_form_with_unit (text, unit, feature, entry);
  else
    tm_entry_form_bare (text, feature, entry);
}

TmEntry
tm_entry_read (const char *text, const TmFeature *feature)
{
  TmEntry entry = { .status = TM_ENTRY_NOT_A_NUMBER };
  TmEntryText parts;

  g_return_val_if_fail (feature != NULL, entry);

  tm_entry_text_read (text, &parts);
  if (tm_kind_is_attribute (feature->kind))
    read_outcome (&parts, &entry);
  else if (find_outcome (parts.plain) != TM_OUTCOME_NONE)
    entry.status = TM_ENTRY_PASS_FAIL;
  else if (parts.status != TM_ENTRY_OK)
    entry.status = parts.status;
  else
    read_number (&parts, feature, &entry);
  return entry;
}

const char *
tm_entry_status_text (TmEntryStatus status)
{
  g_return_val_if_fail (status < TM_N_ENTRY_STATUSES, "");

  return status_texts[status];
}
