/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-press.h"

#include <glib/gi18n-lib.h>

#include "core-callout.h"

/* What a figure counts. */
typedef enum { LENGTH, ROUGHNESS, PLAIN } Measure;

typedef struct {
  gsize offset; /* of its TmQuantity in TmPress */
  const char *title;
  const char *wanted; /* what may be written: the mend */
  Measure measure;
  double most;   /* millimetres, micrometres, or a plain number */
  gboolean zero; /* whether zero is an answer */
} Figure;

#define FIGURE(member) G_STRUCT_OFFSET (TmPress, member)

/* The widest figures are what a job shop could ever press; they only catch slips of the unit. */
static const Figure figures[TM_N_PRESS_FIGURES] = {
  [TM_PRESS_LENGTH]
  = { FIGURE (length), N_ ("Length of contact"), N_ ("write a length above zero"), LENGTH, 10000 },
  [TM_PRESS_HUB_OUTSIDE] = { FIGURE (hub_outside), N_ ("Hub outside diameter"),
                             N_ ("write a diameter above zero, larger than the bore"), LENGTH, 10000 },
  [TM_PRESS_SHAFT_INSIDE]
  = { FIGURE (shaft_inside), N_ ("Shaft inside diameter"),
      N_ ("write the diameter of its bore, or leave it empty for a solid shaft"), LENGTH, 10000, TRUE },
  [TM_PRESS_FRICTION_LEAST] = { FIGURE (friction_least), N_ ("Friction, least"),
                                N_ ("write a plain number from 0 to 2, such as 0.08"), PLAIN, 2, TRUE },
  [TM_PRESS_FRICTION_MOST] = { FIGURE (friction_most), N_ ("Friction, most"),
                               N_ ("write a plain number from 0 to 2, such as 0.16"), PLAIN, 2, TRUE },
  [TM_PRESS_HUB_ROUGHNESS] = { FIGURE (hub_roughness), N_ ("Bore roughness Rz"),
                               N_ ("write Rz, not below zero, such as 6.3 µm"), ROUGHNESS, 1000, TRUE },
  [TM_PRESS_SHAFT_ROUGHNESS] = { FIGURE (shaft_roughness), N_ ("Shaft roughness Rz"),
                                 N_ ("write Rz, not below zero, such as 6.3 µm"), ROUGHNESS, 1000, TRUE },
  [TM_PRESS_GAP] = { FIGURE (gap), N_ ("Room for dropping in"),
                     N_ ("write the wanted clearance on diameter, not below zero"), LENGTH, 100, TRUE },
};

const char *
tm_press_figure_title (TmPressFigure which)
{
  g_return_val_if_fail ((guint)which < TM_N_PRESS_FIGURES, "");

  return g_dgettext (GETTEXT_PACKAGE, figures[which].title);
}

TmQuantity *
tm_press_quantity (TmPress *press, TmPressFigure which)
{
  g_return_val_if_fail ((guint)which < TM_N_PRESS_FIGURES, NULL);

  return G_STRUCT_MEMBER_P (press, figures[which].offset);
}

TmUnit
tm_press_unit (const TmJob *job, const TmFeature *feature, TmPressFigure which)
{
  const TmUnit length = tm_unit_dimension (feature->unit) == TM_DIMENSION_LENGTH ? feature->unit : job->unit;

  g_return_val_if_fail ((guint)which < TM_N_PRESS_FIGURES, TM_UNIT_NONE);

  switch (figures[which].measure)
    {
    case ROUGHNESS:
      return tm_kind_unit (TM_KIND_ROUGHNESS, length);
    case PLAIN:
      return TM_UNIT_HARDNESS;
    case LENGTH:
    default:
      return length;
    }
}

static gboolean
is_sensible (const Figure *figure, const TmQuantity *quantity)
{
  const TmUnit unit = figure->measure == LENGTH      ? TM_UNIT_MM
                      : figure->measure == ROUGHNESS ? TM_UNIT_UM
                                                     : TM_UNIT_HARDNESS;

  if (quantity->count < 0 || (quantity->count == 0 && !figure->zero))
    return FALSE;
  return quantity->count <= tm_count_from_double (figure->most, unit);
}

gboolean
tm_press_figure_read (const TmJob *job, const TmFeature *feature, TmPressFigure which, const char *text,
                      TmQuantity *out, char **problem)
{
  const Figure *figure = &figures[which];
  TmQuantity read = TM_QUANTITY_NONE;
  const TmReadStatus status = tm_quantity_read (text, tm_press_unit (job, feature, which), &read);

  if (status == TM_READ_EMPTY || (status == TM_READ_OK && is_sensible (figure, &read)))
    {
      *out = read;
      return TRUE;
    }
  *problem = g_strdup_printf (_ ("%s: “%s” cannot be right; %s."), tm_press_figure_title (which), text,
                              g_dgettext (GETTEXT_PACKAGE, figure->wanted));
  return FALSE;
}

/* What two figures cannot be together; NULL: they can.  A job file is refused for the same. */
static const char *
find_contradiction (const TmPress *press)
{
  if (press->friction_least.given && press->friction_most.given
      && press->friction_least.count > press->friction_most.count)
    return _ ("The least friction lies above the most; swap the two.");
  if (press->shaft_inside.given && press->hub_outside.given
      && press->shaft_inside.count >= press->hub_outside.count)
    return _ ("The shaft’s inside diameter is not smaller than the hub’s outside; mend one of the two.");
  return NULL;
}

gboolean
tm_edit_put_press (TmDocument *document, TmFeature *feature, const TmPress *press, GError **error)
{
  const TmPress before = feature->press;
  const char *contradiction = find_contradiction (press);

  if (contradiction != NULL)
    {
      g_set_error_literal (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED, contradiction);
      return FALSE;
    }
  feature->press = *press;
  if (tm_document_save_definitions (document, error))
    return TRUE;
  feature->press = before;
  return FALSE;
}
