/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-supply: changes to the materials, special processes and tests of a job, and to the parts of an
 * assembly.
 *
 * As in app-edit.h: each change is in the book before the function returns TRUE, and on FALSE the job is as
 * before, with one line for the person in @error.  What is handed in is taken in any case.
 */

#pragma once

#include "app-edit.h"

G_BEGIN_DECLS

/* @old NULL adds, after the others.  Refused: one without a name, a part without a number. */
gboolean tm_edit_put_supply (TmDocument *document, TmSupply *old, TmSupply *supply, GError **error);
gboolean tm_edit_remove_supply (TmDocument *document, TmSupply *supply, GError **error);
gboolean tm_edit_put_sub_part (TmDocument *document, TmSubPart *old, TmSubPart *part, GError **error);
gboolean tm_edit_remove_sub_part (TmDocument *document, TmSubPart *part, GError **error);

/* Copies that share the job's texts. */
TmSupply *tm_edit_copy_supply (const TmSupply *supply) G_GNUC_WARN_UNUSED_RESULT;
TmSubPart *tm_edit_copy_sub_part (const TmSubPart *part) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
