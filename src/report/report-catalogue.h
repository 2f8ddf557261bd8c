/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-catalogue: the translations of one language, read from a file of gettext's (.mo, GNU gettext manual,
 * "The Format of GNU MO Files"), for use beside the program's own language.
 *
 * gettext itself follows the locale of the process or thread, and only where that is installed; a shop's
 * computer has its own language's and hardly its customers'.  A catalogue does not change once it is read:
 * any number of threads may use it.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct _TmCatalogue TmCatalogue;

/* NULL when @bytes are no catalogue, or a damaged one.  A translation whose conversions (%s, %u…) differ
 * from its text's is left out: it could not be printed safely. */
TmCatalogue *tm_catalogue_new (GBytes *bytes) G_GNUC_WARN_UNUSED_RESULT;
void tm_catalogue_free (TmCatalogue *catalogue);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmCatalogue, tm_catalogue_free)

/* @text itself where there is no translation; @context may be NULL. */
const char *tm_catalogue_text (const TmCatalogue *catalogue, const char *context, const char *text);
const char *tm_catalogue_plural (const TmCatalogue *catalogue, const char *one, const char *many, gulong n);

/* Which form a plural rule ("nplurals=2; plural=(n != 1);") chooses; 0 where it cannot be read. */
guint tm_catalogue_plural_form (const char *rule, gulong n);

G_END_DECLS
