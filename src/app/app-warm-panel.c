/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-warm-panel.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-form.h"
#include "core-setting.h"

#define REFERENCE "20" /* ISO 1, °C */

/* A size and its change with a tenth of a micrometre or a hundred-thousandth of an inch. */
static char *
format_size (double counts, TmUnit unit)
{
  g_autofree char *size = tm_count_format (llround (counts), unit, unit == TM_UNIT_IN ? 5 : 4);

  return g_strdup_printf ("%s %s", size, tm_unit_symbol (unit));
}

static char *
describe_gain (double gain, TmUnit unit)
{
  TmUnit small = unit == TM_UNIT_IN ? TM_UNIT_IN : TM_UNIT_UM;
  g_autofree char *size = tm_count_format (llround (fabs (gain)), small, unit == TM_UNIT_IN ? 5 : 1);

  if (strpbrk (size, "123456789") == NULL)
    return g_strdup (_ ("The same: the difference cannot be seen."));
  return g_strdup_printf (gain > 0 ? _ ("It grows by %s %s.") : _ ("It shrinks by %s %s."), size,
                          tm_unit_symbol (small));
}

static void
show_size (TmWarmPanel *panel, const TmQuantity *size, double from, double to)
{
  const TmUnit unit = panel->job->unit;
  const double alpha = tm_expansion_choice_get (&panel->material);
  const double at = tm_length_at ((double)size->count, alpha, from, to);
  g_autofree char *large = NULL;
  g_autofree char *under = NULL;

  if (isnan (at))
    {
      tm_live_answer_set (&panel->answer, NULL,
                          _ ("No size: nothing is colder than −273.15 °C; give both in degrees Celsius."));
      return;
    }
  if (fabs (at) > (double)TM_COUNT_MAX)
    {
      tm_live_answer_set (&panel->answer, NULL, _ ("That is larger than any part; check the size."));
      return;
    }
  large = format_size (at, unit);
  under = describe_gain (tm_length_gain ((double)size->count, alpha, from, to), unit);
  tm_live_answer_set (&panel->answer, large, under);
}

static void
answer_cb (TmWarmPanel *panel)
{
  g_autofree char *problem = NULL;
  TmQuantity size, from, to;

  if (panel->filling || panel->job == NULL)
    return;
  tm_live_read (panel->size, panel->job->unit, &size, &problem);
  tm_live_read (panel->from, TM_UNIT_CELSIUS, &from, &problem);
  tm_live_read (panel->to, TM_UNIT_CELSIUS, &to, &problem);
  if (problem != NULL)
    tm_live_answer_set (&panel->answer, NULL, problem);
  else if (!size.given || !from.given || !to.given)
    tm_live_answer_set (&panel->answer, NULL, _ ("Type the size and both temperatures."));
  else if (size.count <= 0)
    tm_live_answer_set (&panel->answer, NULL, _ ("A size is larger than zero."));
  else
    show_size (panel, &size, tm_count_to_double (from.count, TM_UNIT_CELSIUS),
               tm_count_to_double (to.count, TM_UNIT_CELSIUS));
}

void
tm_warm_panel_show (TmWarmPanel *panel, const TmJob *job)
{
  panel->job = job;
  if (job == NULL)
    return;
  panel->filling = TRUE;
  tm_expansion_choice_fill (&panel->material, job, TRUE);
  panel->filling = FALSE;
  answer_cb (panel);
}

void
tm_warm_panel_build (TmWarmPanel *panel, GtkBox *into)
{
  AdwPreferencesGroup *group;

  tm_form_group (into, _ ("Size at another temperature"),
                 _ ("By the coefficient near 20 °C; far from it the figure is rough."));
  tm_live_answer_build (&panel->answer, into, _ ("Size at the temperature wanted"));
  group = tm_form_group (into, NULL, NULL);
  panel->size = tm_form_entry (group, _ ("Size, as it is now"));
  panel->from = tm_form_entry (group, _ ("Temperature now, °C"));
  panel->to = tm_form_entry (group, _ ("Temperature wanted, °C"));
  tm_expansion_choice_build (&panel->material, group, _ ("Material"));
  tm_form_set_text (panel->to, REFERENCE);
  g_signal_connect_swapped (panel->size, "changed", G_CALLBACK (answer_cb), panel);
  g_signal_connect_swapped (panel->from, "changed", G_CALLBACK (answer_cb), panel);
  g_signal_connect_swapped (panel->to, "changed", G_CALLBACK (answer_cb), panel);
  g_signal_connect_swapped (panel->material.row, "notify::selected", G_CALLBACK (answer_cb), panel);
}

void
tm_warm_panel_clear (TmWarmPanel *panel)
{
  tm_expansion_choice_clear (&panel->material);
}
