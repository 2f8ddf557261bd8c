/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-error: one-line errors that name the file, the place in it and the mend.
 */

#pragma once

#include "exchange-job.h"

G_BEGIN_DECLS

/* Sets @error to "source: place: text" on one line; @source and @place are left out when NULL or
 * "".  Control characters that came in with quoted data are replaced, so that it stays one line. */
void tm_exchange_fail (GError **error, TmExchangeError code, const char *source, const char *place,
                       const char *format, ...) G_GNUC_PRINTF (5, 6);

/* @text in quotation marks, cut short when long: for naming what was found. */
char *tm_exchange_quote (const char *text) G_GNUC_WARN_UNUSED_RESULT;

/* Sets @error for a failed file operation: what could not be done to @path (a display name), why,
 * and the mend.  @code_number is errno. */
void tm_exchange_fail_io (GError **error, const char *path, int code_number);

G_END_DECLS
