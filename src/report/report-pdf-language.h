/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-pdf-language: the language of a PDF file (ISO 32000-1, 14.9.2), which the library that writes the
 * file cannot say: a screen reader chooses its voice by it.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* How many of the first @length bytes cannot belong to the end of a PDF from its catalog on. */
gsize tm_pdf_before_catalog (const guint8 *bytes, gsize length);

/* Puts @language ("de", "de_CH") into the catalog of a PDF whose end, from the catalog on, is the end of
 * @end. Nothing is changed where it is not built as expected: the catalog as the last object, before a table
 * of objects; or where @language is none. */
void tm_pdf_set_language (GByteArray *end, const char *language);

G_END_DECLS
