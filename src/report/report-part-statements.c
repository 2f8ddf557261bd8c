/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-statements: what the shop states, in its own words.
 */

#include <glib/gi18n-lib.h>

#include "report-part.h"
#include "report-template.h"

/* Each line of it is a paragraph. */
static void
add_statement (TmParts *parts, const TmTemplateStatement *statement)
{
  g_autofree char *text = tm_report_statement (statement, parts->form);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    tm_report_add_paragraph (parts->document, lines[i], FALSE);
}

static void
add_statements (TmParts *parts, TmStatementPlace place, const char *name)
{
  const TmTemplate *template = parts->form->template;

  if (!tm_report_has_statements (template, place))
    return;
  tm_part_section (parts, N_ ("Statements of the shop"), name, FALSE);
  for (guint i = 0; i < template->statements->len; i++)
    {
      const TmTemplateStatement *statement = g_ptr_array_index (template->statements, i);

      if (statement->place == place)
        add_statement (parts, statement);
    }
}

void
tm_part_statements_after_cover (TmParts *parts)
{
  add_statements (parts, TM_STATEMENT_AFTER_COVER, "statements");
}

void
tm_part_statements_before_signatures (TmParts *parts)
{
  add_statements (parts, TM_STATEMENT_BEFORE_SIGNATURES, "statements-last");
}
