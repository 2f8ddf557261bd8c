/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-uncertainty-words: the words of a budget's lines, as files and screens write them.
 */

#include <glib/gi18n-lib.h>

#include "core-uncertainty.h"

static const char *const component_words[TM_N_COMPONENT_KINDS] = {
  [TM_COMPONENT_RESOLUTION] = NC_ ("component", "resolution"),
  [TM_COMPONENT_ERROR_LIMIT] = NC_ ("component", "limit of error"),
  [TM_COMPONENT_CERTIFICATE] = NC_ ("component", "certificate"),
  [TM_COMPONENT_DRIFT] = NC_ ("component", "drift on the standard"),
  [TM_COMPONENT_REPEATABILITY] = NC_ ("component", "repeatability"),
  [TM_COMPONENT_PEOPLE] = NC_ ("component", "between people"),
  [TM_COMPONENT_FEEL] = NC_ ("component", "transfer feel"),
  [TM_COMPONENT_TEMPERATURE] = NC_ ("component", "temperature"),
  [TM_COMPONENT_EXPANSION] = NC_ ("component", "expansion"),
  [TM_COMPONENT_FORM] = NC_ ("component", "form not seen"),
  [TM_COMPONENT_SETTING] = NC_ ("component", "setting"),
  [TM_COMPONENT_SIZE] = NC_ ("component", "size that gives the bonus"),
  [TM_COMPONENT_OTHER] = NC_ ("component", "other"),
};

static const char *const distribution_words[TM_N_DISTRIBUTIONS] = {
  [TM_DISTRIBUTION_NORMAL] = NC_ ("distribution", "normal"),
  [TM_DISTRIBUTION_T] = NC_ ("distribution", "t"),
  [TM_DISTRIBUTION_RECTANGULAR] = NC_ ("distribution", "rectangular"),
  [TM_DISTRIBUTION_TRIANGULAR] = NC_ ("distribution", "triangular"),
  [TM_DISTRIBUTION_U_SHAPED] = NC_ ("distribution", "u-shaped"),
};

const char *
tm_component_word (TmComponentKind kind)
{
  g_return_val_if_fail ((guint)kind < TM_N_COMPONENT_KINDS, "");
  return component_words[kind];
}

const char *
tm_distribution_word (TmDistribution distribution)
{
  g_return_val_if_fail ((guint)distribution < TM_N_DISTRIBUTIONS, "");
  return distribution_words[distribution];
}

gboolean
tm_distribution_from_word (const char *word, TmDistribution *distribution)
{
  for (guint i = 0; word != NULL && i < TM_N_DISTRIBUTIONS; i++)
    if (g_str_equal (distribution_words[i], word))
      {
        *distribution = (TmDistribution)i;
        return TRUE;
      }
  return FALSE;
}
