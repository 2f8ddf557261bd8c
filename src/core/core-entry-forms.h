/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-entry-forms: the value that each form of a reading stands for.  Each function sets the
 * status of @entry, its form and its value; @unit goes with the feature's dimension.
 */

#pragma once

#include "core-entry-text.h"

G_BEGIN_DECLS

void tm_entry_form_with_unit (const TmEntryText *text, TmUnit unit, const TmFeature *feature, TmEntry *entry);
void tm_entry_form_fraction (const TmEntryText *text, TmUnit unit, const TmFeature *feature, TmEntry *entry);
void tm_entry_form_deviation (const TmEntryText *text, TmUnit unit, const TmFeature *feature, TmEntry *entry);
void tm_entry_form_bare (const TmEntryText *text, const TmFeature *feature, TmEntry *entry);

G_END_DECLS
