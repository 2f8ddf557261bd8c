/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-named: changes to the rows of a job that go by a name (tools, materials, gauges, methods), the
 * same for each kind.
 */

#pragma once

#include "app-edit.h"

G_BEGIN_DECLS

/* What a kind of row is changed with.  Its struct begins with its name. */
typedef struct {
  gpointer (*find) (const TmJob *job, const char *name); /* borrowed, or NULL */
  gpointer (*copy) (gconstpointer row);
  TmAddStatus (*add) (TmJob *job, gpointer row);
  TmAddStatus (*replace) (TmJob *job, const char *name, gpointer row);
  TmAddStatus (*remove) (TmJob *job, const char *name);
  void (*free) (gpointer row);
} TmNamedKind;

/* Takes @row, in the place of the one called @name; NULL adds. */
gboolean tm_edit_put_named (TmDocument *document, const TmNamedKind *kind, const char *name, gpointer row,
                            GError **error);

/* The row called @name, on which none hangs that goes with it; @list is that of the job. */
gboolean tm_edit_remove_named (TmDocument *document, const TmNamedKind *kind, GPtrArray *list,
                               const char *name, GError **error);

G_END_DECLS
