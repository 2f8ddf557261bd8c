/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-callout-reader: what the forms of a requirement share while one text is read.  Private to the
 * callout reader.
 */

#pragma once

#include "core-callout-token.h"
#include "core-callout.h"

G_BEGIN_DECLS

typedef struct {
  TmTokens tokens;
  TmUnit unit;         /* of the drawing: MM or IN */
  const char *general; /* may be NULL */
  TmCallout out;       /* places are set before a form is read */
} TmCalloutReader;

/* Takes "4X ", "(4X)", "4 places" where it cannot be "4 by".
 * Returns: FALSE, with nothing taken, when there is none. */
gboolean tm_callout_take_places (TmCalloutReader *reader);

/* Each looks whether the text is of its form. */
gboolean tm_callout_is_geometry (const TmTokens *tokens);
gboolean tm_callout_is_thread (const TmTokens *tokens, TmUnit unit);
gboolean tm_callout_is_roughness (const TmTokens *tokens);
gboolean tm_callout_is_hardness (const TmTokens *tokens);

/* The one wording of the characteristic at the cursor, "" when there is none. */
const char *tm_callout_geometry_word (const TmTokens *tokens);

/* Each reads the rest of the text, to its end, into reader->out. */
TmCalloutStatus tm_callout_read_geometry (TmCalloutReader *reader);
TmCalloutStatus tm_callout_read_thread (TmCalloutReader *reader);
TmCalloutStatus tm_callout_read_roughness (TmCalloutReader *reader);
TmCalloutStatus tm_callout_read_hardness (TmCalloutReader *reader);
TmCalloutStatus tm_callout_read_size (TmCalloutReader *reader);

G_END_DECLS
