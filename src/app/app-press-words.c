/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-press-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-words.h"

/* What one unit of the inch system is in that of the computation: the pound-force and the inch by definition
 * (1 lbf = 0.45359237 kg × 9.80665 m/s², 1 in = 25.4 mm; NIST SP 811). */
#define NEWTON_PER_LBF          4.4482216152605
#define MPA_PER_PSI             (NEWTON_PER_LBF / (25.4 * 25.4))
#define NEWTON_METRE_PER_LBF_FT (NEWTON_PER_LBF * 0.3048)

/* Digits after the point of a length. */
#define DECIMALS_MM 4
#define DECIMALS_IN 5

/* -------- Figures -------- */

/* Three significant digits, never an exponent. */
static char *
format_plain (double value)
{
  const double size = fabs (value);
  const int before = size >= 1e-6 ? (int)floor (log10 (size)) + 1 : 1;
  const int decimals = size >= 1e-6 ? CLAMP (3 - before, 0, 4) : 0;
  char *text = g_strdup_printf ("%.*f", decimals, value);

  /* Never a minus before nothing. */
  if (*text == '-' && strspn (text + 1, "0.") == strlen (text + 1))
    memmove (text, text + 1, strlen (text));
  return text;
}

static char *
with_unit (double value, const char *unit)
{
  g_autofree char *number = format_plain (value);

  return *unit == '\0' ? g_steal_pointer (&number) : g_strdup_printf ("%s %s", number, unit);
}

static char *
format_length (double mm, TmUnit unit)
{
  const guint decimals = unit == TM_UNIT_IN ? DECIMALS_IN : DECIMALS_MM;
  g_autofree char *number = tm_count_format (tm_count_from_double (mm, TM_UNIT_MM), unit, decimals);

  return g_strdup_printf ("%s %s", number, tm_unit_symbol (unit));
}

static char *
format_stress (double mpa, TmUnit unit)
{
  const double psi = mpa / MPA_PER_PSI;

  if (unit != TM_UNIT_IN)
    return with_unit (mpa, "MPa");
  return fabs (psi) < 1000 ? with_unit (psi, "psi") : with_unit (psi / 1000, "ksi");
}

static char *
format_force (double newton, TmUnit unit)
{
  if (unit == TM_UNIT_IN)
    return with_unit (newton / NEWTON_PER_LBF, "lbf");
  return fabs (newton) < 1000 ? with_unit (newton, "N") : with_unit (newton / 1000, "kN");
}

static char *
format_torque (double newton_metre, TmUnit unit)
{
  return unit == TM_UNIT_IN ? with_unit (newton_metre / NEWTON_METRE_PER_LBF_FT, "lbf·ft")
                            : with_unit (newton_metre, "N·m");
}

/* A share of 1 in percent. */
static char *
format_share (double share, TmUnit unit)
{
  g_autofree char *number = format_plain (share * 100);

  return g_strdup_printf (_ ("%s %%"), number);
}

static char *
format_temperature (double celsius)
{
  return g_strdup_printf ("%.0f °C", celsius);
}

/* -------- Rows -------- */

typedef char *(*Format) (double value, TmUnit unit);

typedef struct {
  const char *title;
  gsize offset; /* of a double in TmPressState */
  Format format;
  gboolean share; /* of what the material bears: over 1 is too much */
} Line;

#define STATE(member) G_STRUCT_OFFSET (TmPressState, member)

static const Line lines[] = {
  { N_ ("Pressure between the two"), STATE (pressure), format_stress, FALSE },
  { N_ ("Hub, hoop stress at the contact"), STATE (hub_hoop), format_stress, FALSE },
  { N_ ("Hub, hoop stress outside"), STATE (hub_outside_hoop), format_stress, FALSE },
  { N_ ("Hub, largest stress"), STATE (hub_mises), format_stress, FALSE },
  { N_ ("Hub, share of its yield"), STATE (hub_use), format_share, TRUE },
  { N_ ("Shaft, hoop stress at the contact"), STATE (shaft_hoop_outer), format_stress, FALSE },
  { N_ ("Shaft, hoop stress at its bore"), STATE (shaft_hoop_inner), format_stress, FALSE },
  { N_ ("Shaft, largest stress"), STATE (shaft_mises), format_stress, FALSE },
  { N_ ("Shaft, share of its yield"), STATE (shaft_use), format_share, TRUE },
  { N_ ("Hub grows outside by"), STATE (hub_growth), format_length, FALSE },
  { N_ ("Bore of the shaft closes by"), STATE (bore_closure), format_length, FALSE },
  { N_ ("Holds along the axis, at least"), STATE (axial_least), format_force, FALSE },
  { N_ ("Holds in torque, at least"), STATE (torque_least), format_torque, FALSE },
  { N_ ("Force to press in, at most"), STATE (axial_most), format_force, FALSE },
};

void
tm_press_row_free (TmPressRow *row)
{
  g_free (row->title);
  for (guint i = 0; i < TM_N_PRESS_COLUMNS; i++)
    g_free (row->cells[i]);
  g_free (row->sentence);
  g_free (row);
}

static TmPressRow *
make_row (const char *title, const double values[TM_N_PRESS_COLUMNS], Format format, TmUnit unit)
{
  TmPressRow *row = g_new0 (TmPressRow, 1);

  row->title = g_strdup (title);
  for (guint i = 0; i < TM_N_PRESS_COLUMNS; i++)
    row->cells[i] = isfinite (values[i]) ? format (values[i], unit) : g_strdup (_ ("not known"));
  row->sentence = g_strdup_printf (_ ("%s: least %s, middle %s, most %s"), title, row->cells[TM_PRESS_LEAST],
                                   row->cells[TM_PRESS_MIDDLE], row->cells[TM_PRESS_MOST]);
  return row;
}

static double
value_of (const TmPressState *state, const Line *line)
{
  return G_STRUCT_MEMBER (double, state, line->offset);
}

/* A row where one of the three is known; a closure that is nothing (of a solid shaft) is not shown. */
static void
add_line (GPtrArray *rows, const Line *line, const TmPressInput *input, const TmPressAnswer *answer,
          TmUnit unit)
{
  const double values[]
      = { value_of (&answer->least, line), value_of (&answer->state, line), value_of (&answer->most, line) };
  TmPressRow *row;

  if (!isfinite (values[0]) && !isfinite (values[1]) && !isfinite (values[2]))
    return;
  if (line->offset == STATE (bore_closure) && !(input->shaft_inside > 0))
    return;
  row = make_row (g_dgettext (GETTEXT_PACKAGE, line->title), values, line->format, unit);
  row->over = line->share && values[TM_PRESS_MOST] > 1;
  g_ptr_array_add (rows, row);
}

static void
add_interference (GPtrArray *rows, const TmPressInput *input, const TmPressAnswer *answer, TmUnit unit)
{
  const double middle = input->interference;
  const double stated[] = { isfinite (input->interference_least) ? input->interference_least : middle, middle,
                            isfinite (input->interference_most) ? input->interference_most : middle };
  const double left[] = { answer->least.effective, answer->state.effective, answer->most.effective };

  g_ptr_array_add (rows, make_row (_ ("Interference"), stated, format_length, unit));
  if (answer->roughness_loss > 0)
    g_ptr_array_add (rows, make_row (_ ("Left of it after roughness"), left, format_length, unit));
}

static gboolean
has_figures (const TmPressAnswer *answer)
{
  return answer->status == TM_PRESS_OK || answer->status == TM_PRESS_NO_INTERFERENCE;
}

GPtrArray *
tm_words_press_rows (const TmPressInput *input, const TmPressAnswer *answer, TmUnit unit)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_press_row_free);

  if (!has_figures (answer))
    return rows;
  add_interference (rows, input, answer, unit);
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    add_line (rows, &lines[i], input, answer, unit);
  return rows;
}

/* -------- The line that matters -------- */

static char *
say_yields (const TmPressAnswer *answer)
{
  const gboolean hub = answer->most.hub_use > 1;
  const gboolean shaft = answer->most.shaft_use > 1;

  if (hub && shaft)
    return g_strdup (_ ("Hub and shaft would yield at the most interference"));
  if (hub)
    return g_strdup (_ ("The hub would yield at the most interference"));
  return shaft ? g_strdup (_ ("The shaft would yield at the most interference")) : NULL;
}

static char *
say_holds (const TmPressAnswer *answer, TmUnit unit)
{
  g_autofree char *holds = NULL;
  g_autofree char *takes = NULL;

  if (!isfinite (answer->least.axial_least) || !isfinite (answer->most.axial_most))
    {
      g_autofree char *pressure = format_stress (answer->state.pressure, unit);

      return g_strdup_printf (_ ("Presses with %s"), pressure);
    }
  holds = format_force (answer->least.axial_least, unit);
  takes = format_force (answer->most.axial_most, unit);
  return g_strdup_printf (_ ("Holds at least %s; up to %s to press in"), holds, takes);
}

/* A status is said of a figure, in the middle of a line; here it begins one. */
static char *
say_status (TmPressStatus status)
{
  return tm_words_start_upper (g_dpgettext2 (GETTEXT_PACKAGE, "press status", tm_press_status_word (status)));
}

char *
tm_words_press_says (const TmPressAnswer *answer, TmUnit unit)
{
  char *yields;

  if (answer->status != TM_PRESS_OK)
    return say_status (answer->status);
  yields = say_yields (answer);
  if (yields != NULL)
    return yields;
  if (!(answer->least.effective > 0))
    return g_strdup (_ ("At the least interference nothing is left to hold"));
  return say_holds (answer, unit);
}

/* -------- Notes -------- */

static void
add_note (GPtrArray *notes, char *note)
{
  g_ptr_array_add (notes, note);
}

static char *
say_room (const TmPressInput *input, const TmPressAnswer *answer, TmUnit unit)
{
  g_autofree char *gap = format_length (input->gap, unit);
  g_autofree char *hot = isfinite (answer->heat_hub_to) ? format_temperature (answer->heat_hub_to) : NULL;
  g_autofree char *cold
      = isfinite (answer->cool_shaft_to) ? format_temperature (answer->cool_shaft_to) : NULL;

  if (hot != NULL && cold != NULL)
    return g_strdup_printf (_ ("To drop in with %s of room at the most interference: heat the hub to %s, or "
                               "cool the shaft to %s."),
                            gap, hot, cold);
  if (hot != NULL)
    return g_strdup_printf (_ ("To drop in with %s of room at the most interference: heat the hub to %s."),
                            gap, hot);
  if (cold != NULL)
    return g_strdup_printf (_ ("To drop in with %s of room at the most interference: cool the shaft to %s."),
                            gap, cold);
  return NULL;
}

static void
add_temperatures (GPtrArray *notes, const TmPressInput *input, const TmPressAnswer *answer, TmUnit unit)
{
  char *room;

  if (!isfinite (input->gap))
    {
      add_note (notes, g_strdup (_ ("State the room for dropping in to see how far to heat or cool.")));
      return;
    }
  room = say_room (input, answer, unit);
  if (room != NULL)
    add_note (notes, room);
  if (room == NULL && answer->cold_enough)
    add_note (notes, g_strdup (_ ("How far to heat or cool is not known: the expansion of neither material "
                                  "is.")));
}

/* What is to be stated for the forces. */
static void
add_unknown (GPtrArray *notes, const TmPressInput *input, const TmPressAnswer *answer)
{
  if (isfinite (answer->most.axial_most))
    return;
  if (isfinite (input->length))
    add_note (notes, g_strdup (_ ("State the friction to see the forces.")));
  else if (isfinite (input->friction_most))
    add_note (notes, g_strdup (_ ("State the length of contact to see the forces.")));
  else
    add_note (notes, g_strdup (_ ("State the length of contact and the friction to see the forces.")));
}

char *
tm_words_elastic (const TmElastic *material, TmUnit unit)
{
  g_autofree char *modulus = NULL;
  g_autofree char *yield = NULL;

  if (material == NULL)
    return g_strdup ("");
  /* Translators: E is the modulus of elasticity. */
  modulus = isfinite (material->modulus.value) ? g_strdup_printf (_ ("E %.4g GPa"), material->modulus.value)
                                               : g_strdup (_ ("E not known"));
  yield = isfinite (material->yield.value) ? format_stress (material->yield.value, unit)
                                           : g_strdup (_ ("not known"));
  if (material->modulus.source == NULL || *material->modulus.source == '\0')
    return g_strdup_printf (_ ("%s: %s, yield %s"), material->name, modulus, yield);
  return g_strdup_printf (_ ("%s: %s, yield %s; %s"), material->name, modulus, yield,
                          material->shop ? material->modulus.source
                                         : g_dgettext (GETTEXT_PACKAGE, material->modulus.source));
}

static void
add_material (GPtrArray *notes, const TmElastic *material, gboolean hub, TmUnit unit)
{
  g_autofree char *words = tm_words_elastic (material, unit);

  if (*words != '\0')
    /* Translators: then the material with its figures. */
    add_note (notes,
              hub ? g_strdup_printf (_ ("Hub of %s."), words) : g_strdup_printf (_ ("Shaft of %s."), words));
}

char **
tm_words_press_notes (const TmPressInput *input, const TmPressAnswer *answer, const TmElastic *hub,
                      const TmElastic *shaft, TmUnit unit)
{
  GPtrArray *notes = g_ptr_array_new ();

  if (has_figures (answer))
    {
      add_temperatures (notes, input, answer, unit);
      add_unknown (notes, input, answer);
    }
  add_material (notes, hub, TRUE, unit);
  add_material (notes, shaft, FALSE, unit);
  g_ptr_array_add (notes, NULL);
  return (char **)g_ptr_array_free (notes, FALSE);
}

/* -------- Cautions -------- */

/* Those that hold for every press are kept apart: they are never scrolled out of sight. */
static gboolean
holds_always (TmPressCaution caution)
{
  return caution == TM_PRESS_CAUTION_GUARD || caution == TM_PRESS_CAUTION_ESTIMATE;
}

char **
tm_words_press_cautions (const TmPressAnswer *answer, gboolean plastic, gboolean always)
{
  GPtrArray *cautions = g_ptr_array_new ();

  for (guint i = 0; i < TM_N_PRESS_CAUTIONS; i++)
    {
      const TmPressCaution caution = (TmPressCaution)i;

      if (holds_always (caution) == always && tm_press_caution_applies (caution, answer, plastic))
        g_ptr_array_add (cautions, g_strdup (g_dpgettext2 (GETTEXT_PACKAGE, "press caution",
                                                           tm_press_caution_word (caution))));
    }
  g_ptr_array_add (cautions, NULL);
  return (char **)g_ptr_array_free (cautions, FALSE);
}
