/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-mate: changes to the measured mates of a feature and to the clearance that is wanted with them.
 *
 * As in app-edit.h: each change is in the book before the function returns TRUE, and on FALSE the job is as
 * before, with one line for the person in @error.  What is handed in is taken in any case.
 */

#pragma once

#include "app-edit.h"

G_BEGIN_DECLS

/* @old NULL adds. */
gboolean tm_edit_put_mate_size (TmDocument *document, TmMateSize *old, TmMateSize *mate, GError **error);
gboolean tm_edit_remove_mate_size (TmDocument *document, TmMateSize *mate, GError **error);
TmMateSize *tm_edit_copy_mate_size (const TmMateSize *mate) G_GNUC_WARN_UNUSED_RESULT;

/* The wanted clearance of @feature with its mate; an end that is absent is open. */
gboolean tm_edit_wanted_clearance (TmDocument *document, TmFeature *feature, TmQuantity least,
                                   TmQuantity most, GError **error);

/* Which piece and place a measured mate is meant for; @piece "": none. */
typedef struct {
  TmMateSize *mate;
  const char *piece; /* interned in the job */
  guint place;
} TmMeantFor;

/* All of them, or none. */
gboolean tm_edit_mean_mates_for (TmDocument *document, const TmMeantFor *choice, guint n, GError **error);

G_END_DECLS
