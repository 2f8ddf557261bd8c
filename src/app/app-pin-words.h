/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-pin-words: pins and what they prove, put into words.  No widgets.
 *
 * Every function returns a text of the caller's own, translated, "" when there is nothing to say.
 */

#pragma once

#include "bench-session.h"
#include "core-combine.h"

G_BEGIN_DECLS

/* "reads as pin 12.006, class X plus, went", the same asking for + or −, or why it is refused. */
char *tm_words_pin_entry (const TmPinEntry *pin, const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* "pin 12.006, class X plus, went" */
char *tm_words_pin_trial (const TmPinTrial *trial) G_GNUC_WARN_UNUSED_RESULT;

/* "Recorded pin 12.006, class X plus, went: too close" */
char *tm_words_pin_recorded (const TmPinTrial *trial, const TmJudgement *judgement) G_GNUC_WARN_UNUSED_RESULT;

/* "PIN-X, class X plus" */
char *tm_words_pin_set (const TmGauge *set) G_GNUC_WARN_UNUSED_RESULT;

/* "12.006 go and 12.018 no-go, class X": the pins of a plan. */
char *tm_words_pin_plan (const TmPinPlan *plan, const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* "They prove 12.006 to 12.018; the band ends at 12.015.": what a plan that does not prove the band
 * proves, and what is missing. */
char *tm_words_plan_leaves_open (const TmPinPlan *plan, const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* What the pins of a place prove, what they leave open, what contradicts; a line each. */
char *tm_words_pins_prove (const TmPinEvidence *alone, const TmPinEvidence *with_readings,
                           const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
