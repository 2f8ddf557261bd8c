/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-put: the members of one JSON object, written in the canonical form of a job file; private
 * to this folder.
 */

#pragma once

#include "core-quantity.h"
#include "exchange-json.h"

G_BEGIN_DECLS

/* One object that is being written. */
typedef struct {
  GString *out;
  const TmJsonMember *shape;
  const char *separator; /* between two members */
  gboolean started;
} TmJsonObject;

/* Each writes one member of the shape; what is "", empty or absent is left out. */
void tm_put_text (TmJsonObject *object, guint member, const char *text);
void tm_put_list (TmJsonObject *object, guint member, const GPtrArray *texts);
void tm_put_quantity (TmJsonObject *object, guint member, const TmQuantity *quantity, TmUnit unit);

/* Each writes one member in any case. */
void tm_put_always (TmJsonObject *object, guint member, const char *text);
void tm_put_whole (TmJsonObject *object, guint member, guint value);
void tm_put_truth (TmJsonObject *object, guint member, gboolean value);

/* The members that were kept because nobody knows them. */
void tm_put_extra (TmJsonObject *object, const char *extra);

TmJsonObject tm_open_inner (TmJsonObject *object, guint member);
void tm_close_inner (TmJsonObject *inner, const char *extra);

/* Whether @quantity has a decimal text in its own unit that gives its count again; then @text gets
 * it, to be freed by the caller, and @again what it reads as. */
gboolean tm_is_exact (const TmQuantity *quantity, TmQuantity *again, char **text);

G_END_DECLS
