/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-dial-panel.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>
#include <math.h>

#include "app-form-read.h"
#include "app-form.h"
#include "app-gauge-words.h"
#include "core-gauge-kind.h"
#include "core-setting.h"
#include "core-temperature.h"

#define REFERENCE 20.0 /* ISO 1, °C */

/* -------- What is asked -------- */

typedef struct {
  TmQuantity nominal, lower, upper, standard, uncertainty, graduation, part_temp, standard_temp;
} Typed;

static gboolean
read_rows (TmDialPanel *panel, Typed *typed, char **problem)
{
  const TmUnit unit = panel->job->unit;
  const struct {
    AdwEntryRow *row;
    TmUnit unit;
    TmQuantity *out;
  } rows[] = { { panel->nominal, unit, &typed->nominal },
               { panel->lower, unit, &typed->lower },
               { panel->upper, unit, &typed->upper },
               { panel->standard, unit, &typed->standard },
               { panel->uncertainty, unit, &typed->uncertainty },
               { panel->graduation, unit, &typed->graduation },
               { panel->part_temp, TM_UNIT_CELSIUS, &typed->part_temp },
               { panel->standard_temp, TM_UNIT_CELSIUS, &typed->standard_temp } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    tm_live_read (rows[i].row, rows[i].unit, rows[i].out, problem);
  return *problem == NULL;
}

static double
get_celsius (const TmQuantity *typed)
{
  return typed->given ? tm_count_to_double (typed->count, TM_UNIT_CELSIUS) : REFERENCE;
}

static TmSettingInput
make_input (const TmDialPanel *panel, const Typed *typed)
{
  return (TmSettingInput) {
    .nominal = typed->nominal.count,
    .standard = typed->standard.count,
    .standard_expanded = (double)MAX (typed->uncertainty.count, 0),
    .graduation = typed->graduation.count,
    .lower = typed->lower.count,
    .upper = typed->upper.count,
    .has_lower = typed->lower.given,
    .has_upper = typed->upper.given,
    .reversed = tm_form_chosen (panel->pointer) == 1,
    .standard_alpha = tm_expansion_choice_get (&panel->ring_material),
    .part_alpha = tm_expansion_choice_get (&panel->part),
    .standard_temp = get_celsius (&typed->standard_temp),
    .part_temp = get_celsius (&typed->part_temp),
  };
}

/* -------- The answer -------- */

/* "+7.7 µm", "−0.0003 in": in the small unit where it has a mark of its own. */
static char *
format_pointer (double counts, TmUnit unit)
{
  TmUnit small = unit == TM_UNIT_IN ? TM_UNIT_IN : TM_UNIT_UM;
  guint decimals = unit == TM_UNIT_IN ? 5 : 1;
  g_autofree char *size = tm_count_format (llround (fabs (counts)), small, decimals);
  const char *sign = strpbrk (size, "123456789") == NULL ? "" : counts < 0 ? "−" : "+";

  return g_strdup_printf ("%s%s %s", sign, size, tm_unit_symbol (small));
}

static void
add_line (GString *lines, char *line)
{
  g_string_append_printf (lines, "%s%s", lines->len > 0 ? "\n" : "", line);
  g_free (line);
}

/* "Lower limit at −10.0 µm, upper limit at +11.0 µm." */
static void
add_limits (GString *lines, const TmSetting *setting, TmUnit unit)
{
  g_autofree char *lower = isnan (setting->lower) ? NULL : format_pointer (setting->lower, unit);
  g_autofree char *upper = isnan (setting->upper) ? NULL : format_pointer (setting->upper, unit);

  if (lower != NULL && upper != NULL)
    add_line (lines, g_strdup_printf (_ ("The lower limit shows as %s, the upper as %s."), lower, upper));
  else if (lower != NULL)
    add_line (lines, g_strdup_printf (_ ("The lower limit shows as %s."), lower));
  else if (upper != NULL)
    add_line (lines, g_strdup_printf (_ ("The upper limit shows as %s."), upper));
}

static char *
describe (const TmSetting *setting, TmUnit unit)
{
  g_autoptr (GString) lines = g_string_new (NULL);
  g_autofree char *left = format_pointer (setting->left_over, unit);
  g_autofree char *warm = format_pointer (setting->temperature, unit);
  g_autofree char *expanded = isnan (setting->expanded) ? NULL : format_pointer (setting->expanded, unit);

  add_limits (lines, setting, unit);
  if (strpbrk (left, "+−") != NULL)
    add_line (lines, g_strdup_printf (_ ("Put on that mark, the gauge shows wrong: add %s to every reading."),
                                      left));
  else
    add_line (lines, g_strdup (_ ("Nothing is left over.")));
  if (strpbrk (warm, "+−") != NULL)
    add_line (lines, g_strdup_printf (_ ("Of it the temperatures make %s."), warm));
  if (expanded != NULL)
    add_line (lines, g_strdup_printf (_ ("The setting is known to ± %s (k = 2): ring and half a mark."),
                                      expanded + strlen ("+")));
  return g_string_free (g_steal_pointer (&lines), FALSE);
}

static void
show_setting (TmDialPanel *panel, const TmSetting *setting)
{
  const TmUnit unit = panel->job->unit;
  g_autofree char *at = format_pointer (setting->at_standard, unit);
  g_autofree char *under = describe (setting, unit);
  g_autofree char *large = g_strdup_printf (_ ("On the ring: mark %s%" PRId64 " (%s)"),
                                            setting->marks > 0   ? "+"
                                            : setting->marks < 0 ? "−"
                                                                 : "",
                                            ABS (setting->marks), at);

  tm_live_answer_set (&panel->answer, large, under);
}

/* What is still to be typed before there can be an answer; NULL: nothing. */
static const char *
find_missing (const Typed *typed)
{
  if (!typed->nominal.given)
    return _ ("Choose a feature, or type the size that is to show as zero.");
  if (!typed->standard.given)
    return _ ("Type the ring’s own size, as its certificate has it.");
  if (!typed->graduation.given)
    return _ ("Type what one mark of the dial stands for.");
  return NULL;
}

static void
answer_cb (TmDialPanel *panel)
{
  g_autofree char *problem = NULL;
  g_autofree char *line = NULL;
  const char *missing;
  TmSettingInput input;
  TmSettingStatus status;
  TmSetting setting;
  Typed typed;

  if (panel->filling || panel->job == NULL)
    return;
  if (!read_rows (panel, &typed, &problem))
    {
      tm_live_answer_set (&panel->answer, NULL, problem);
      return;
    }
  missing = find_missing (&typed);
  if (missing != NULL)
    {
      tm_live_answer_set (&panel->answer, NULL, missing);
      return;
    }
  input = make_input (panel, &typed);
  status = tm_setting (&input, &setting);
  if (status == TM_SETTING_OK)
    {
      show_setting (panel, &setting);
      return;
    }
  line = g_strdup_printf (_ ("No setting: %s."),
                          g_dpgettext2 (GETTEXT_PACKAGE, "setting status", tm_setting_status_word (status)));
  tm_live_answer_set (&panel->answer, NULL, line);
}

/* -------- Taking over from the job -------- */

static void
feature_cb (TmDialPanel *panel)
{
  guint chosen = tm_form_chosen (panel->feature);
  const TmFeature *feature;
  TmQuantity nominal;

  if (panel->filling || panel->job == NULL || chosen == 0 || chosen > panel->balloons->len)
    return;
  feature = tm_job_find_feature (panel->job, g_ptr_array_index (panel->balloons, chosen - 1));
  if (feature == NULL)
    return;
  nominal = feature->nominal;
  if (!nominal.given)
    nominal = tm_quantity_new (tm_feature_length (feature), feature->unit, feature->upper.decimals);
  panel->filling = TRUE;
  tm_form_fill_quantity (panel->nominal, &nominal, panel->job->unit);
  tm_form_fill_quantity (panel->lower, &feature->lower, panel->job->unit);
  tm_form_fill_quantity (panel->upper, &feature->upper, panel->job->unit);
  panel->filling = FALSE;
  answer_cb (panel);
}

static void
ring_cb (TmDialPanel *panel)
{
  guint chosen = tm_form_chosen (panel->ring);
  const TmGauge *ring;

  if (panel->filling || panel->job == NULL || chosen == 0 || chosen > panel->tags->len)
    return;
  ring = tm_job_find_gauge (panel->job, g_ptr_array_index (panel->tags, chosen - 1));
  if (ring != NULL)
    tm_form_fill_quantity (panel->standard, &ring->range_from, panel->job->unit);
}

static gboolean
is_kind (const TmGauge *gauge, const char *word)
{
  const TmGaugeKind *kind = tm_gauge_kind_find (gauge->kind);

  return kind != NULL && g_str_equal (kind->word, word);
}

/* Shows @words after "typed below" with what was chosen before, if it is still there. */
static void
set_choice (AdwComboRow *row, GPtrArray *names, GPtrArray *words, const char *before)
{
  guint chosen = 0;

  for (guint i = 0; before != NULL && i < names->len; i++)
    if (g_str_equal (g_ptr_array_index (names, i), before))
      chosen = i + 1;
  g_ptr_array_insert (words, 0, g_strdup (_ ("typed below")));
  g_ptr_array_add (words, NULL);
  tm_form_set_words (row, (const char *const *)words->pdata, chosen);
}

static char *
get_chosen (AdwComboRow *row, GPtrArray *names)
{
  guint chosen = tm_form_chosen (row);

  return chosen > 0 && chosen <= names->len ? g_strdup (g_ptr_array_index (names, chosen - 1)) : NULL;
}

static void
list_features (TmDialPanel *panel)
{
  g_autofree char *before = get_chosen (panel->feature, panel->balloons);
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);

  g_ptr_array_set_size (panel->balloons, 0);
  for (guint i = 0; i < panel->job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (panel->job->features, i);

      if (!tm_feature_grows_warm (feature) || tm_feature_length (feature) <= 0)
        continue;
      g_ptr_array_add (panel->balloons, g_strdup (feature->balloon));
      g_ptr_array_add (
          words, g_strdup_printf ("%s  %s", feature->balloon,
                                  *feature->requirement != '\0' ? feature->requirement : feature->name));
    }
  set_choice (panel->feature, panel->balloons, words, before);
}

static void
list_rings (TmDialPanel *panel)
{
  g_autofree char *before = get_chosen (panel->ring, panel->tags);
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);

  g_ptr_array_set_size (panel->tags, 0);
  for (guint i = 0; i < panel->job->gauges->len; i++)
    {
      const TmGauge *gauge = g_ptr_array_index (panel->job->gauges, i);
      g_autofree char *range = tm_words_gauge_range (gauge);

      if (!is_kind (gauge, "setting ring") || !gauge->range_from.given)
        continue;
      g_ptr_array_add (panel->tags, g_strdup (gauge->tag));
      g_ptr_array_add (words, g_strdup_printf ("%s, %s", gauge->tag, range));
    }
  set_choice (panel->ring, panel->tags, words, before);
}

/* The dial of the shop's bore gauge, while nobody has written another. */
static void
propose_graduation (TmDialPanel *panel)
{
  g_autofree char *text = tm_form_text (panel->graduation);

  for (guint i = 0; *text == '\0' && i < panel->job->gauges->len; i++)
    {
      const TmGauge *gauge = g_ptr_array_index (panel->job->gauges, i);

      if (is_kind (gauge, "dial bore gauge") && gauge->resolution.given)
        {
          tm_form_fill_quantity (panel->graduation, &gauge->resolution, panel->job->unit);
          return;
        }
    }
}

void
tm_dial_panel_show (TmDialPanel *panel, const TmJob *job)
{
  panel->job = job;
  if (job == NULL)
    return;
  panel->filling = TRUE;
  list_features (panel);
  list_rings (panel);
  propose_graduation (panel);
  tm_expansion_choice_fill (&panel->part, job, TRUE);
  tm_expansion_choice_fill (&panel->ring_material, job, FALSE);
  panel->filling = FALSE;
  answer_cb (panel);
}

/* -------- Building -------- */

static void
build_rows (TmDialPanel *panel, GtkBox *into)
{
  const char *none[] = { _ ("typed below"), NULL };
  const char *pointers[] = { _ ("rises with the size"), _ ("falls with the size"), NULL };
  AdwPreferencesGroup *size = tm_form_group (into, NULL, NULL);
  AdwPreferencesGroup *ring = tm_form_group (into, NULL, NULL);

  panel->feature = tm_form_choice (size, _ ("Feature"), none);
  panel->nominal = tm_form_entry (size, _ ("Size that shows as zero"));
  panel->lower = tm_form_entry (size, _ ("Lower limit"));
  panel->upper = tm_form_entry (size, _ ("Upper limit"));
  panel->ring = tm_form_choice (ring, _ ("Ring"), none);
  panel->standard = tm_form_entry (ring, _ ("Own size of the ring, or of the blocks"));
  panel->uncertainty = tm_form_entry (ring, _ ("Its uncertainty, k = 2; empty: unknown"));
  panel->graduation = tm_form_entry (ring, _ ("Graduation of the dial"));
  panel->pointer = tm_form_choice (ring, _ ("Pointer"), pointers);
}

static void
build_temperatures (TmDialPanel *panel, GtkBox *into)
{
  AdwPreferencesGroup *group = tm_form_group (into, _ ("Temperatures at the setting"),
                                              _ ("Empty: 20 °C, and nothing is corrected."));

  panel->part_temp = tm_form_entry (group, _ ("Part, °C"));
  tm_expansion_choice_build (&panel->part, group, _ ("Part’s material"));
  panel->standard_temp = tm_form_entry (group, _ ("Ring, °C"));
  tm_expansion_choice_build (&panel->ring_material, group, _ ("Ring’s material"));
}

static void
connect (TmDialPanel *panel)
{
  AdwEntryRow *entries[] = { panel->nominal,     panel->lower,      panel->upper,     panel->standard,
                             panel->uncertainty, panel->graduation, panel->part_temp, panel->standard_temp };
  AdwComboRow *choices[] = { panel->pointer, panel->part.row, panel->ring_material.row };

  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    g_signal_connect_swapped (entries[i], "changed", G_CALLBACK (answer_cb), panel);
  for (guint i = 0; i < G_N_ELEMENTS (choices); i++)
    g_signal_connect_swapped (choices[i], "notify::selected", G_CALLBACK (answer_cb), panel);
  g_signal_connect_swapped (panel->feature, "notify::selected", G_CALLBACK (feature_cb), panel);
  g_signal_connect_swapped (panel->ring, "notify::selected", G_CALLBACK (ring_cb), panel);
}

void
tm_dial_panel_build (TmDialPanel *panel, GtkBox *into)
{
  tm_form_group (into, _ ("Dial gauge on a ring"),
                 _ ("Where the pointer stands on the ring, so that zero is the size you want."));
  tm_live_answer_build (&panel->answer, into, _ ("Setting"));
  panel->balloons = g_ptr_array_new_with_free_func (g_free);
  panel->tags = g_ptr_array_new_with_free_func (g_free);
  build_rows (panel, into);
  build_temperatures (panel, into);
  connect (panel);
}

void
tm_dial_panel_clear (TmDialPanel *panel)
{
  g_clear_pointer (&panel->balloons, g_ptr_array_unref);
  g_clear_pointer (&panel->tags, g_ptr_array_unref);
  tm_expansion_choice_clear (&panel->part);
  tm_expansion_choice_clear (&panel->ring_material);
}
