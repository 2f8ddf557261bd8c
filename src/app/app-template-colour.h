/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-template-colour: the row for one colour of the report template, typed or chosen, and above it how what
 * is printed in it can be read.
 */

#pragma once

#include <adwaita.h>

#include "core-template.h"

G_BEGIN_DECLS

typedef struct _TmTemplateColour TmTemplateColour;

/* What the row is about.  The texts are translated; @given and @colour are members of @draft, which outlives
 * the row and holds what the row says. */
typedef struct {
  const char *title;  /* over the row, and of the window in which a colour is chosen */
  const char *label;  /* of the entry */
  const char *choose; /* what the button is read out as */
  const char *sample; /* words that are shown on the colour as they will be printed; or NULL */
  char *(*say) (const TmTemplate *draft);
  TmTemplate *draft;
  gboolean *given;
  guint32 *colour;
} TmTemplateColourInfo;

/* Adds the row to @into; @changed is called with @data after each change.  @info is copied. */
TmTemplateColour *tm_template_colour_new (GtkBox *into, const TmTemplateColourInfo *info, GCallback changed,
                                          gpointer data) G_GNUC_WARN_UNUSED_RESULT;
void tm_template_colour_free (TmTemplateColour *self);

/* Puts the colour of @template, in the place of the draft's, into the row. */
void tm_template_colour_show (TmTemplateColour *self, gboolean given, guint32 colour);

/* Reads the row into the draft; FALSE where what was typed is no colour, then with a line in @problem and the
 * cursor there, unless @problem is NULL. */
gboolean tm_template_colour_read (TmTemplateColour *self, char **problem);

G_END_DECLS
