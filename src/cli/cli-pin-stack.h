/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-pin-stack: tenthmark-cli pins --stack: the fewest gauge blocks that make a size; and pins --zero: where
 * the pointer of a comparing gauge is put on its standard.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The words of the options as they were given, or NULL. */
typedef struct {
  const char *stack; /* the size wanted */
  const char *set;   /* code of a usual set */
  const char *sizes; /* sizes of another */
  const char *gauge; /* tag of a set in the job */
  const char *wear;
  const char *unit;
  gboolean json;
} TmStackWords;

/* @path: of a job, or NULL.  Returns the exit status: 0 stacked, 1 no stack makes the size, 2 not
 * understood. */
int tm_answer_stack (const TmStackWords *words, const char *path);

typedef struct {
  const char *zero; /* the size that is to show as zero */
  const char *standard;
  const char *graduation;
  const char *lower, *upper;
  const char *unit;
  gboolean reversed;
  gboolean json;
} TmSettingWords;

int tm_answer_setting (const TmSettingWords *words);

G_END_DECLS
