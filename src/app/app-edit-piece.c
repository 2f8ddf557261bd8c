/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-piece.h"

#include <glib/gi18n-lib.h>

static const struct {
  const char *word;
  const char *text;
} dispositions[] = {
  { "", NC_ ("held back", "not decided") },    { "hold", NC_ ("held back", "hold") },
  { "measure", NC_ ("held back", "measure") }, { "release", NC_ ("held back", "release") },
  { "scrap", NC_ ("held back", "scrap") },
};

const char *
tm_disposition_word (guint which)
{
  return which < G_N_ELEMENTS (dispositions) ? dispositions[which].word : NULL;
}

const char *
tm_disposition_text (guint which)
{
  return which < G_N_ELEMENTS (dispositions)
             ? g_dpgettext2 (GETTEXT_PACKAGE, "held back", dispositions[which].text)
             : NULL;
}

guint
tm_disposition_which (const char *word)
{
  for (guint i = 0; i < G_N_ELEMENTS (dispositions); i++)
    if (g_strcmp0 (word, dispositions[i].word) == 0)
      return i;
  return G_N_ELEMENTS (dispositions);
}

gboolean
tm_edit_dispose (TmDocument *document, const TmDisposition *choice, guint n, GError **error)
{
  TmJob *job = tm_document_job (document);
  g_autofree TmPiece *before = g_new (TmPiece, MAX (n, 1));

  for (guint i = 0; i < n; i++)
    {
      before[i] = *choice[i].piece;
      choice[i].piece->disposition = tm_job_intern (job, choice[i].disposition);
      choice[i].piece->disposition_note = tm_job_intern (job, choice[i].note);
    }
  if (tm_document_save_definitions (document, error))
    return TRUE;
  for (guint i = n; i > 0; i--)
    *choice[i - 1].piece = before[i - 1];
  return FALSE;
}
