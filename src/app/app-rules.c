/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-rules.h"

#include <glib/gi18n-lib.h>

#include "core-material.h"

/* A plain number. */
#define PLAIN TM_UNIT_HARDNESS

#define RULE(member) #member, G_STRUCT_OFFSET(TmJob, member)

static const TmRuleFigure figures[TM_N_RULE_FIGURES] = {
  [TM_RULE_PART_TEMPERATURE] = { RULE (part_temp_limit), N_ ("Part, ± °C about 20 °C"),
                                 N_ ("How far a part may be from 20 °C where its temperature was not taken."),
                                 N_ ("Not stated: temperature is left out of the budgets."),
                                 N_ ("write °C between 0 and 60, such as 3"), TM_UNIT_CELSIUS, 60, TRUE },
  [TM_RULE_GAUGE_TEMPERATURE]
  = { RULE (gauge_temp_limit), N_ ("Gauge, ± °C about 20 °C"),
      N_ ("How far a gauge may be from 20 °C where its temperature was not taken."),
      N_ ("Not stated: left out."), N_ ("write °C between 0 and 60, such as 2"), TM_UNIT_CELSIUS, 60, TRUE },
  [TM_RULE_THERMOMETER]
  = { RULE (thermometer), N_ ("Thermometer, ± °C"), N_ ("How far a temperature that was taken may be wrong."),
      N_ ("Assumed while empty: 0.5 °C, common practice."), N_ ("write °C between 0 and 10, such as 0.5"),
      TM_UNIT_CELSIUS, 10, TRUE },
  [TM_RULE_EXPANSION]
  = { RULE (expansion), N_ ("Expansion of the parts, millionths per °C"),
      N_ ("Your own figure goes before the one of the tables."), "",
      N_ ("write millionths per °C, above 0 and up to 500: steel has about 11.7, aluminium 23.6"), PLAIN,
      500 },
  [TM_RULE_ENTRY_CLEARANCE]
  = { RULE (entry_clearance), N_ ("Entry clearance of a pin"),
      N_ ("A pin that did not go proves only that the bore is smaller than pin and clearance."),
      N_ ("Assumed while empty: 1 µm."), N_ ("write a length up to 0.1 mm (0.004 in)"), TM_UNIT_NONE, 0.1016,
      TRUE },
  [TM_RULE_DRIFT_LIMIT]
  = { RULE (drift_limit), N_ ("Drift limit, share of the limit of error"),
      N_ ("A gauge that moved further on its standard has moved too far."), N_ ("Assumed while empty: 1."),
      N_ ("write a number above 0 and up to 10, such as 0.5"), PLAIN, 10 },
  [TM_RULE_CHECK_HOURS] = { RULE (check_hours), N_ ("A check holds for, hours"),
                            N_ ("A reading whose gauge was checked longer ago asks for a new check."),
                            N_ ("Not stated: no check is asked for."),
                            N_ ("write hours above 0 and up to 8784, such as 8"), PLAIN, 8784 },
  [TM_RULE_CUT_RISK]
  = { RULE (cut_risk), N_ ("Accepted chance of metal gone"),
      N_ ("Of a whole run of cuts on one place, from the first to the last: 0.01 is one run in a hundred."),
      N_ ("Assumed while empty: 0.01."), N_ ("write a share above 0 and up to 0.5, such as 0.01"), PLAIN,
      0.5 },
};

const TmRuleFigure *
tm_rule_figure (TmRuleFigureKind which)
{
  g_return_val_if_fail ((guint)which < TM_N_RULE_FIGURES, NULL);

  return &figures[which];
}

TmQuantity *
tm_rule_quantity (TmJob *job, TmRuleFigureKind which)
{
  return G_STRUCT_MEMBER_P (job, tm_rule_figure (which)->offset);
}

TmUnit
tm_rule_unit (const TmJob *job, TmRuleFigureKind which)
{
  TmUnit unit = tm_rule_figure (which)->unit;

  return unit == TM_UNIT_NONE ? job->unit : unit;
}

static gboolean
is_sensible (const TmRuleFigure *figure, const TmQuantity *quantity)
{
  TmUnit unit = figure->unit == TM_UNIT_NONE ? TM_UNIT_MM : figure->unit;

  if (quantity->count < 0 || (quantity->count == 0 && !figure->zero))
    return FALSE;
  return quantity->count <= tm_count_from_double (figure->most, unit);
}

gboolean
tm_rule_read (const TmJob *job, TmRuleFigureKind which, const char *text, TmQuantity *out, char **problem)
{
  const TmRuleFigure *figure = tm_rule_figure (which);
  TmReadStatus status = tm_quantity_read (text, tm_rule_unit (job, which), out);

  if (status == TM_READ_EMPTY)
    *out = TM_QUANTITY_NONE;
  if (status == TM_READ_EMPTY || (status == TM_READ_OK && is_sensible (figure, out)))
    return TRUE;
  *problem
      = g_strdup_printf (_ ("%s: “%s” cannot be right; %s."), g_dgettext (GETTEXT_PACKAGE, figure->title),
                         text, g_dgettext (GETTEXT_PACKAGE, figure->wanted));
  return FALSE;
}

char *
tm_words_expansion (const TmJob *job)
{
  TmExpansion found;
  g_autofree char *value = NULL;

  if (!tm_job_expansion (job, &found))
    return *job->material != '\0'
               ? g_strdup_printf (_ ("“%s” is not in the tables: taken as aluminium, 23.6, assumed."),
                                  job->material)
               : g_strdup (_ ("No material is stated on the Job page: taken as aluminium, 23.6, assumed."));
  value = g_strdup_printf ("%.4g", found.value);
  if (*found.material == '\0')
    return g_strdup_printf (_ ("Your own figure: %s."), value);
  /* Translators: "In the tables: aluminium 6061, 23.6, by Callister, Materials Science and Engineering". */
  return g_strdup_printf (_ ("In the tables: %s, %s, by %s."), found.material, value,
                          g_dgettext (GETTEXT_PACKAGE, found.source));
}
