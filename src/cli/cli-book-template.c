/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-book-template: tenthmark-cli book template, the shop's report template into the book and out of it.
 */

#include <glib/gi18n-lib.h>
#include <stdio.h>

#include "cli-book.h"
#include "cli-json.h"
#include "cli-verbs.h"
#include "exchange-template.h"
#include "report-template.h"

static int
set_template (const TmBookCall *call)
{
  GError *error = NULL;
  g_autoptr (TmTemplate) template = tm_template_from_file (call->set, &error);
  g_autoptr (TmBook) book = NULL;
  g_autofree char *now = tm_time_now ();

  if (template != NULL && !tm_report_template_check (template, &error))
    {
      g_prefix_error (&error, "%s: ", call->set);
      return tm_fail_error (error);
    }
  if (template == NULL)
    return tm_fail_error (error);
  book = tm_book_call_open (call, TM_BOOK_OPEN_NORMAL);
  if (book == NULL)
    return 2;
  return tm_book_save_template (book, template, "", now, &error) ? 0 : tm_fail_error (error);
}

/* NULL after an error line. */
static TmTemplate *
load_template (const TmBookCall *call)
{
  g_autoptr (TmBook) book = tm_book_call_open (call, TM_BOOK_OPEN_READ_ONLY);
  GError *error = NULL;
  TmTemplate *template;

  if (book == NULL)
    return NULL;
  template = tm_book_template (book, &error);
  if (template == NULL)
    tm_fail_error (error);
  return template;
}

static void
print_words (const TmTemplate *template)
{
  g_autofree char *accent = template->has_accent ? tm_colour_format (template->accent) : NULL;
  g_autofree char *ground = template->has_ground ? tm_colour_format (template->ground) : NULL;

  if (tm_template_is_empty (template))
    {
      printf (_ ("The book has no report template.\n"));
      return;
    }
  printf (_ ("Shop: %s\n"), *template->name != '\0' ? template->name : "—");
  printf (_ ("Logo: %s\n"), template->logo != NULL ? template->logo_media : "—");
  if (accent != NULL)
    printf (_ ("Heads and lines: %s\n"), accent);
  if (ground != NULL)
    printf (_ ("Ground of table heads: %s\n"), ground);
  for (guint i = 0; i < TM_N_TEMPLATE_COLUMNS; i++)
    if (!tm_template_shows (template, i))
      printf (_ ("Column left out: %s\n"), _ (tm_template_column_title (i)));
  for (guint i = 0; i < template->fields->len; i++)
    {
      const TmTemplateField *field = g_ptr_array_index (template->fields, i);

      printf (field->required ? _ ("Field, required: %s\n") : _ ("Field: %s\n"), field->name);
    }
  printf (g_dngettext (GETTEXT_PACKAGE, "%u statement\n", "%u statements\n", template->statements->len),
          template->statements->len);
}

/* In the form of the template file, whether JSON was asked for or not. */
static int
write_template (const TmTemplate *template, const char *out)
{
  g_autoptr (GString) bytes = NULL;
  GError *error = NULL;

  if (out != NULL)
    return tm_template_to_file (template, out, &error) ? 0 : tm_fail_error (error);
  bytes = tm_template_to_string (template);
  fwrite (bytes->str, 1, bytes->len, stdout);
  return 0;
}

int
tm_book_call_template (const TmBookCall *call)
{
  g_autoptr (TmTemplate) template = NULL;

  if (call->set != NULL && call->out != NULL)
    return tm_fail (_ ("book template: --set and --out are two calls; give one of them"));
  if (call->set != NULL)
    return set_template (call);
  template = load_template (call);
  if (template == NULL)
    return 2;
  if (call->out != NULL || call->json)
    return write_template (template, call->out);
  print_words (template);
  return 0;
}
