/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-template: the template file (.tmtemplate, JSON), bytes in, the shop's template out, and back, so
 * that another bench's book and the command line can have it.
 *
 * Strict: a member that is not known, a column that does not exist or that no template can leave out, a
 * colour that is none are refused with their place.  Errors are TM_EXCHANGE_ERROR.
 */

#pragma once

#include "core-template.h"
#include "exchange-job.h"

G_BEGIN_DECLS

/* Bytes: room for the largest logo in base64 and every statement in every language. */
#define TM_TEMPLATE_FILE_MAX (8u * 1048576u)

/* @place names the source in errors.  Either a whole template that tm_template_check() finds right, or none.
 */
TmTemplate *tm_template_from_bytes (const char *data, gsize length, const char *place,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;
TmTemplate *tm_template_from_file (const char *path, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same template always gives the same bytes. */
GString *tm_template_to_string (const TmTemplate *template) G_GNUC_WARN_UNUSED_RESULT;
/* The old file or the whole new one, never a part. */
gboolean tm_template_to_file (const TmTemplate *template, const char *path, GError **error);

G_END_DECLS
