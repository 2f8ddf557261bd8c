/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-words: the words of the model's enumerations, as the job file writes them.
 */

#include "core-model.h"

#include <glib/gi18n-lib.h>

static const char *const kind_words[TM_N_KINDS] = {
  [TM_KIND_BORE] = NC_ ("kind", "bore"),           [TM_KIND_SHAFT] = NC_ ("kind", "shaft"),
  [TM_KIND_DIAMETER] = NC_ ("kind", "diameter"),   [TM_KIND_LENGTH] = NC_ ("kind", "length"),
  [TM_KIND_DEPTH] = NC_ ("kind", "depth"),         [TM_KIND_ANGLE] = NC_ ("kind", "angle"),
  [TM_KIND_POSITION] = NC_ ("kind", "position"),   [TM_KIND_FORM] = NC_ ("kind", "form"),
  [TM_KIND_ROUGHNESS] = NC_ ("kind", "roughness"), [TM_KIND_HARDNESS] = NC_ ("kind", "hardness"),
  [TM_KIND_THREAD] = NC_ ("kind", "thread"),       [TM_KIND_ATTRIBUTE] = NC_ ("kind", "attribute"),
  [TM_KIND_NOTE] = NC_ ("kind", "note"),
};

static const char *const cut_words[] = { "", "grows", "shrinks" };
static const char *const standard_words[] = { "ISO", "ASME" };
static const char *const decision_words[] = { "guarded", "simple" };
static const char *const first_article_words[TM_N_FIRST_ARTICLES] = {
  [TM_FIRST_ARTICLE_FULL] = NC_ ("first article", "full"),
  [TM_FIRST_ARTICLE_PARTIAL] = NC_ ("first article", "partial"),
  [TM_FIRST_ARTICLE_AGAIN] = NC_ ("first article", "re-inspection"),
};
static const char *const article_words[] = { NC_ ("article", "detail"), NC_ ("article", "assembly") };
static const char *const supply_kind_words[TM_N_SUPPLIES] = {
  [TM_SUPPLY_MATERIAL] = NC_ ("supply", "material"),
  [TM_SUPPLY_PROCESS] = NC_ ("supply", "process"),
  [TM_SUPPLY_TEST] = NC_ ("supply", "test"),
};
static const char *const approval_words[]
    = { "", NC_ ("approval", "yes"), NC_ ("approval", "no"), NC_ ("approval", "not asked") };
static const char *const modifier_words[] = { "", "mmc", "lmc" };
static const char *const outcome_words[] = { "", "pass", "fail" };
static const char *const pin_sign_words[] = { "minus", "plus" };

static const char *const reads_words[] = { NC_ ("reads", "diameter"), NC_ ("reads", "radius") };
static const char *const aim_words[] = { NC_ ("aim", "in"), NC_ ("aim", "proven") };
static const char *const counts_words[] = { "", "combined" };
static const char *const drift_rule_words[] = { "", "ask" };
static const char *const line_kind_words[TM_N_LINE_KINDS] = {
  [TM_LINE_OTHER] = NC_ ("line", "other"),
  [TM_LINE_FEEL] = NC_ ("line", "feel"),
  [TM_LINE_TEMPERATURE] = NC_ ("line", "temperature"),
  [TM_LINE_FORM] = NC_ ("line", "form"),
  [TM_LINE_SETTING] = NC_ ("line", "setting"),
  [TM_LINE_PEOPLE] = NC_ ("line", "people"),
};

static const char *const add_status_texts[TM_N_ADD_STATUSES] = {
  [TM_ADD_OK] = "",
  [TM_ADD_NO_NAME] = N_ ("it has no name; give it one"),
  [TM_ADD_TAKEN] = N_ ("that name is taken; choose another"),
  [TM_ADD_NO_PIECE] = N_ ("it names no piece and feature of this job"),
  [TM_ADD_BAD_PLACE] = N_ ("the feature has no such place"),
  [TM_ADD_NO_TARGET] = N_ ("it corrects a row that is not there, or one of another piece or feature"),
  [TM_ADD_TARGET_GONE] = N_ ("that row is corrected or withdrawn already"),
  [TM_ADD_NO_REASON] = N_ ("a correction or withdrawal needs its reason"),
  [TM_ADD_IN_USE] = N_ ("the record or another definition names it; it must stay as it is"),
  [TM_ADD_NO_GAUGE] = N_ ("there is no gauge with that tag; add the gauge first"),
  [TM_ADD_NO_METHOD] = N_ ("there is no method of that name; add the method first"),
  [TM_ADD_NO_FEATURE] = N_ ("there is no feature with that balloon number; add the feature first"),
  [TM_ADD_NO_DRAWING] = N_ ("there is no drawing of that name; add the drawing first"),
  [TM_ADD_NO_STUDY] = N_ ("no study plans it; look at the study's name, pieces, people and repeats"),
};

/* The index of @word in @words, or -1. */
static int
find_word (const char *const *words, guint n_words, const char *word)
{
  for (guint i = 0; word != NULL && i < n_words; i++)
    {
      if (g_str_equal (words[i], word))
        return (int)i;
    }
  return -1;
}

#define DEFINE_WORDS(Type, name, table)                             \
  const char *tm_##name##_word (Type value)                         \
  {                                                                 \
    g_return_val_if_fail ((guint)value < G_N_ELEMENTS (table), ""); \
    return table[value];                                            \
  }

#define DEFINE_FROM_WORD(Type, name, table)                      \
  gboolean tm_##name##_from_word (const char *word, Type *value) \
  {                                                              \
    int found = find_word (table, G_N_ELEMENTS (table), word);   \
    if (found >= 0)                                              \
      *value = (Type)found;                                      \
    return found >= 0;                                           \
  }

DEFINE_WORDS (TmKind, kind, kind_words)
DEFINE_FROM_WORD (TmKind, kind, kind_words)
DEFINE_WORDS (TmCut, cut, cut_words)
DEFINE_FROM_WORD (TmCut, cut, cut_words)
DEFINE_WORDS (TmStandard, standard, standard_words)
DEFINE_FROM_WORD (TmStandard, standard, standard_words)
DEFINE_WORDS (TmDecision, decision, decision_words)
DEFINE_FROM_WORD (TmDecision, decision, decision_words)
DEFINE_WORDS (TmFirstArticleKind, first_article, first_article_words)
DEFINE_FROM_WORD (TmFirstArticleKind, first_article, first_article_words)
DEFINE_WORDS (TmArticle, article, article_words)
DEFINE_FROM_WORD (TmArticle, article, article_words)
DEFINE_WORDS (TmSupplyKind, supply_kind, supply_kind_words)
DEFINE_FROM_WORD (TmSupplyKind, supply_kind, supply_kind_words)
DEFINE_WORDS (TmApproval, approval, approval_words)
DEFINE_FROM_WORD (TmApproval, approval, approval_words)
DEFINE_WORDS (TmModifier, modifier, modifier_words)
DEFINE_WORDS (TmOutcome, outcome, outcome_words)
DEFINE_WORDS (TmPinSign, pin_sign, pin_sign_words)
DEFINE_FROM_WORD (TmPinSign, pin_sign, pin_sign_words)
DEFINE_WORDS (TmCounts, counts, counts_words)
DEFINE_FROM_WORD (TmCounts, counts, counts_words)
DEFINE_WORDS (TmReads, reads, reads_words)
DEFINE_FROM_WORD (TmReads, reads, reads_words)
DEFINE_WORDS (TmAim, aim, aim_words)
DEFINE_FROM_WORD (TmAim, aim, aim_words)
DEFINE_WORDS (TmDriftRule, drift_rule, drift_rule_words)
DEFINE_FROM_WORD (TmDriftRule, drift_rule, drift_rule_words)
DEFINE_WORDS (TmLineKind, line_kind, line_kind_words)
DEFINE_FROM_WORD (TmLineKind, line_kind, line_kind_words)

const char *
tm_add_status_text (TmAddStatus status)
{
  g_return_val_if_fail (status < TM_N_ADD_STATUSES, "");

  return add_status_texts[status];
}

gboolean
tm_kind_is_attribute (TmKind kind)
{
  return kind == TM_KIND_THREAD || kind == TM_KIND_ATTRIBUTE || kind == TM_KIND_NOTE;
}

gboolean
tm_kind_is_zero_bounded (TmKind kind)
{
  return kind == TM_KIND_FORM || kind == TM_KIND_POSITION || kind == TM_KIND_ROUGHNESS;
}
