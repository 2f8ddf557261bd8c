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

/* Defines @kind, a static TmNamedKind, of the job's functions for a @noun. */
#define TM_DEFINE_NAMED_KIND(kind, noun, copy_noun, free_noun)                                       \
  static gpointer find_##noun (const TmJob *job, const char *name)                                   \
  {                                                                                                  \
    return tm_job_find_##noun (job, name);                                                           \
  }                                                                                                  \
  static gpointer copy_row_##noun (gconstpointer row)                                                \
  {                                                                                                  \
    return copy_noun (row);                                                                          \
  }                                                                                                  \
  static TmAddStatus add_##noun (TmJob *job, gpointer row)                                           \
  {                                                                                                  \
    return tm_job_add_##noun (job, row);                                                             \
  }                                                                                                  \
  static TmAddStatus replace_##noun (TmJob *job, const char *name, gpointer row)                     \
  {                                                                                                  \
    return tm_job_replace_##noun (job, name, row);                                                   \
  }                                                                                                  \
  static void free_row_##noun (gpointer row)                                                         \
  {                                                                                                  \
    free_noun (row);                                                                                 \
  }                                                                                                  \
  static const TmNamedKind kind = {                                                                  \
    find_##noun, copy_row_##noun, add_##noun, replace_##noun, tm_job_remove_##noun, free_row_##noun, \
  };

/* Takes @row, in the place of the one called @name; NULL adds. */
gboolean tm_edit_put_named (TmDocument *document, const TmNamedKind *kind, const char *name, gpointer row,
                            GError **error);

/* The row called @name, on which none hangs that goes with it; @list is that of the job. */
gboolean tm_edit_remove_named (TmDocument *document, const TmNamedKind *kind, GPtrArray *list,
                               const char *name, GError **error);

G_END_DECLS
