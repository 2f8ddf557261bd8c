/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-drawing-words.h"

#include <glib/gi18n-lib.h>

#include "app-feature-words.h"
#include "plot-balloon.h"

char *
tm_words_drawing (const TmDrawing *drawing)
{
  if (*drawing->sheet == '\0')
    return g_strdup (drawing->name);
  /* Translators: name of a drawing, and its sheet. */
  return g_strdup_printf (_ ("%s, sheet %s"), drawing->name, drawing->sheet);
}

/* "Ø25 H7 bearing bore" */
static char *
describe_feature (const TmFeature *feature)
{
  g_autofree char *requirement = tm_words_requirement (feature);

  if (*feature->name == '\0' || g_str_equal (feature->name, requirement))
    return g_steal_pointer (&requirement);
  return g_strdup_printf ("%s %s", requirement, feature->name);
}

char *
tm_words_balloon (const TmFeature *feature, guint place, const TmDrawingState *state)
{
  g_autofree char *balloon = tm_balloon_words (
      feature, place, state != NULL ? state->verdict : TM_VERDICT_NOT_MEASURED, state == NULL);
  g_autofree char *about = describe_feature (feature);

  return g_strdup_printf ("%s: %s", balloon, about);
}

char *
tm_words_no_balloon (const TmFeature *feature, guint place)
{
  g_autofree char *about = describe_feature (feature);

  if (place > 0 && feature->places > 1)
    return g_strdup_printf (_ ("place %u of feature %s has no balloon of its own on it: %s"), place,
                            feature->balloon, about);
  return g_strdup_printf (_ ("feature %s has no balloon on it: %s"), feature->balloon, about);
}

char *
tm_words_drawing_with (const TmDrawing *drawing, const char *about)
{
  g_autofree char *name = tm_words_drawing (drawing);

  if (about == NULL)
    return g_strdup_printf (_ ("Drawing %s"), name);
  return g_strdup_printf (_ ("Drawing %s; %s"), name, about);
}
