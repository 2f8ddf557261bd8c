/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-pin-setting: tenthmark-cli pins --zero: setting a comparing gauge on a ring or a stack, both at 20 °C.
 */

#include <glib/gi18n-lib.h>
#include <inttypes.h>
#include <math.h>
#include <stdio.h>

#include "cli-json.h"
#include "cli-pin-stack.h"
#include "cli-verbs.h"
#include "core-setting.h"

static gboolean
read_size (const char *option, const char *text, TmUnit unit, gint64 *out)
{
  TmQuantity quantity;
  TmReadStatus status;

  if (text == NULL)
    return tm_fail (_ ("pins: --zero goes with --standard and --graduation; --%s is missing"), option) == 0;
  status = tm_quantity_read (text, unit, &quantity);
  if (status != TM_READ_OK)
    return tm_fail (_ ("pins: --%s “%s”: %s"), option, text, _ (tm_read_status_text (status))) == 0;
  if (tm_unit_dimension (quantity.unit) != TM_DIMENSION_LENGTH)
    return tm_fail (_ ("pins: --%s “%s” is no length"), option, text) == 0;
  *out = quantity.count;
  return TRUE;
}

static gboolean
read_input (const TmSettingWords *words, TmUnit *unit, TmSettingInput *input)
{
  *input = (TmSettingInput) { .has_lower = words->lower != NULL,
                              .has_upper = words->upper != NULL,
                              .reversed = words->reversed,
                              .standard_temp = 20,
                              .part_temp = 20 };
  if (!tm_unit_from_word (words->unit, unit) || (*unit != TM_UNIT_MM && *unit != TM_UNIT_IN))
    return tm_fail (_ ("pins: --unit “%s”: use mm or in"), words->unit) == 0;
  return read_size ("zero", words->zero, *unit, &input->nominal)
         && read_size ("standard", words->standard, *unit, &input->standard)
         && read_size ("graduation", words->graduation, *unit, &input->graduation)
         && (!input->has_lower || read_size ("lower", words->lower, *unit, &input->lower))
         && (!input->has_upper || read_size ("upper", words->upper, *unit, &input->upper));
}

static void
print_json (const TmSetting *setting, TmUnit unit)
{
  yajl_gen gen = tm_print_begin ();

  yajl_gen_map_open (gen);
  tm_print_unit (gen, unit);
  tm_print_counts (gen, "at_standard", setting->at_standard, unit);
  tm_print_integer (gen, "marks", setting->marks);
  tm_print_counts (gen, "left_over", setting->left_over, unit);
  tm_print_counts (gen, "lower", setting->lower, unit);
  tm_print_counts (gen, "upper", setting->upper, unit);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

static char *
format_signed (double counts, TmUnit unit)
{
  g_autofree char *text = tm_count_format_exact (llround (counts), unit, unit == TM_UNIT_IN ? 4 : 3);

  return g_strdup_printf ("%s%s", counts > 0 ? "+" : "", text);
}

static void
print_words (const TmSetting *setting, TmUnit unit)
{
  const char *symbol = tm_unit_symbol (unit);
  g_autofree char *at = format_signed (setting->at_standard, unit);
  g_autofree char *left = format_signed (setting->left_over, unit);
  g_autofree char *lower = isnan (setting->lower) ? NULL : format_signed (setting->lower, unit);
  g_autofree char *upper = isnan (setting->upper) ? NULL : format_signed (setting->upper, unit);

  printf (_ ("on the standard, put the pointer at %s %s (mark %+" PRId64 ")\n"), at, symbol, setting->marks);
  if (llround (setting->left_over) != 0)
    printf (_ ("that mark leaves %s %s: add it to every reading\n"), left, symbol);
  if (lower != NULL)
    printf (_ ("lower limit: the pointer shows %s %s\n"), lower, symbol);
  if (upper != NULL)
    printf (_ ("upper limit: the pointer shows %s %s\n"), upper, symbol);
}

int
tm_answer_setting (const TmSettingWords *words)
{
  TmSettingInput input;
  TmSetting setting;
  TmSettingStatus status;
  TmUnit unit;

  if (!read_input (words, &unit, &input))
    return 2;
  status = tm_setting (&input, &setting);
  if (status != TM_SETTING_OK)
    return tm_fail (_ ("pins: --zero: %s"),
                    g_dpgettext2 (GETTEXT_PACKAGE, "setting status", tm_setting_status_word (status)));
  if (words->json)
    print_json (&setting, unit);
  else
    print_words (&setting, unit);
  return 0;
}
