/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-file: a file put in the place of another, whole or not at all; private to this folder.
 */

#pragma once

#include "exchange-error.h"

G_BEGIN_DECLS

/* Writes all of @data to @fd; FALSE with errno. */
gboolean tm_file_put (int fd, const char *data, gsize length);

/* Writes the content to @fd; FALSE with @error set, or with errno when it is not. */
typedef gboolean (*TmFileFill) (int fd, gpointer data, GError **error);

/* Fills a temporary file beside @path, syncs it and renames it, so that the old file or the whole new one
 * is there, never a part.  A link stays one: what it leads to is written. */
gboolean tm_file_replace (const char *path, TmFileFill fill, gpointer data, GError **error);

/* All of the file, at most @most bytes and one more (of a file that grows meanwhile); a larger one is refused
 * with @too_large, which is translated. */
GString *tm_file_load (const char *path, gsize most, const char *too_large,
                       GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
