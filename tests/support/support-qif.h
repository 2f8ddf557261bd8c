/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * support-qif: where the files of the QIF standard are.  This project holds no copy of them: the schema and
 * samples of the standards body (Boost Software License 1.0) are looked for in the folder that TM_QIF names,
 * else in ../shared/qif beside the sources, and what needs them is skipped, saying so, where they are not.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define TM_QIF_SCHEMA "schema/QIFApplications/QIFDocument.xsd"

/* The path of @name in that folder; NULL, with the running test skipped, when it is not there. */
static inline char *
tm_test_qif (const char *name)
{
  const char *named = g_getenv ("TM_QIF");
  const char *usual = g_getenv ("TM_QIF_USUAL");
  g_autofree char *path = g_build_filename (named != NULL ? named : usual != NULL ? usual : ".", name, NULL);

  if (g_file_test (path, G_FILE_TEST_EXISTS))
    return g_steal_pointer (&path);
  g_test_skip_printf ("no %s of the QIF standard; name the folder that holds it in TM_QIF", name);
  return NULL;
}

G_END_DECLS
