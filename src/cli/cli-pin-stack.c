/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "cli-pin-stack.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

#include "cli-json.h"
#include "cli-verbs.h"
#include "core-blocks.h"

typedef struct {
  TmUnit unit;
  gint64 size, wear;
  const char *name; /* of the set, or NULL */
  const char *sizes;
} Question;

/* -------- Reading the options -------- */

/* The codes of the usual sets, "M112, M88…". */
static char *
list_codes (void)
{
  g_autoptr (GString) codes = g_string_new (NULL);
  TmBlockSet set;

  for (guint i = 0; tm_block_set (i, &set); i++)
    g_string_append_printf (codes, "%s%s", i > 0 ? ", " : "", set.code);
  return g_string_free (g_steal_pointer (&codes), FALSE);
}

static gboolean
choose_usual_set (const TmStackWords *words, Question *question)
{
  g_autofree char *codes = list_codes ();
  TmBlockSet set;

  if (!tm_block_set_find (words->set, &set))
    return tm_fail (_ ("pins: --set “%s” is none of %s; give its sizes with --sizes"), words->set, codes)
           == 0;
  question->name = set.code;
  question->sizes = set.text;
  question->unit = set.unit;
  return TRUE;
}

static gboolean
choose_gauge (const TmStackWords *words, const TmJob *job, const char *path, Question *question)
{
  const TmGauge *gauge = words->gauge != NULL ? tm_job_find_gauge (job, words->gauge) : NULL;

  if (words->gauge == NULL)
    return tm_fail (_ ("pins: say which block set of the job: --gauge TAG")) == 0;
  if (gauge == NULL)
    return tm_fail (_ ("pins: %s has no gauge “%s”"), path, words->gauge) == 0;
  if (*gauge->blocks == '\0')
    return tm_fail (_ ("pins: %s: gauge “%s” has no block sizes; write them into its “blocks”"), path,
                    words->gauge)
           == 0;
  question->name = gauge->tag;
  question->sizes = gauge->blocks;
  question->unit = gauge->unit;
  return TRUE;
}

static gboolean
choose_set (const TmStackWords *words, const TmJob *job, const char *path, Question *question)
{
  g_autofree char *codes = list_codes ();

  if ((words->set != NULL) + (words->sizes != NULL) + (path != NULL) != 1)
    return tm_fail (_ ("pins: --stack takes its blocks from one of --set (%s), --sizes, or JOB with --gauge"),
                    codes)
           == 0;
  if (words->set != NULL)
    return choose_usual_set (words, question);
  if (path != NULL)
    return choose_gauge (words, job, path, question);
  question->sizes = words->sizes;
  question->unit = TM_UNIT_MM;
  return TRUE;
}

/* --unit is the unit of the sizes that are typed; a set's own sizes are in its own. */
static gboolean
read_unit (const TmStackWords *words, TmUnit *unit)
{
  if (words->unit == NULL)
    return TRUE;
  return (tm_unit_from_word (words->unit, unit) && (*unit == TM_UNIT_MM || *unit == TM_UNIT_IN))
         || tm_fail (_ ("pins: --unit “%s”: use mm or in"), words->unit) == 0;
}

static gboolean
read_length (const char *option, const char *text, TmUnit unit, gint64 *out)
{
  TmQuantity quantity;
  TmReadStatus status = tm_quantity_read (text, unit, &quantity);

  if (status != TM_READ_OK)
    return tm_fail (_ ("pins: --%s “%s”: %s"), option, text, _ (tm_read_status_text (status))) == 0;
  if (tm_unit_dimension (quantity.unit) != TM_DIMENSION_LENGTH)
    return tm_fail (_ ("pins: --%s “%s” is no length"), option, text) == 0;
  *out = quantity.count;
  return TRUE;
}

static gboolean
read_sizes (const TmStackWords *words, TmUnit unit, const Question *question, GArray **sizes)
{
  gsize where;
  TmBlocksStatus status = tm_blocks_read (question->sizes, unit, sizes, &where);

  return status == TM_BLOCKS_OK
         || tm_fail (_ ("pins: the sizes of the set, at “%.40s”: %s"), question->sizes + where,
                     g_dpgettext2 (GETTEXT_PACKAGE, "blocks status", tm_blocks_status_word (status)))
                == 0;
}

static gboolean
read_question (const TmStackWords *words, const TmJob *job, const char *path, Question *question,
               GArray **sizes)
{
  TmUnit own;

  if (!choose_set (words, job, path, question))
    return FALSE;
  own = question->unit;
  if (!read_unit (words, &question->unit))
    return FALSE;
  if (words->sizes != NULL)
    own = question->unit;
  if (!read_length ("stack", words->stack, question->unit, &question->size)
      || (words->wear != NULL && !read_length ("wear", words->wear, question->unit, &question->wear))
      || !read_sizes (words, own, question, sizes))
    return FALSE;
  if (question->size <= 0)
    return tm_fail (_ ("pins: --stack “%s” is not above zero"), words->stack) == 0;
  return question->wear >= 0 || tm_fail (_ ("pins: --wear “%s” is below zero"), words->wear) == 0;
}

/* -------- Answering -------- */

static char *
format_size (gint64 size, TmUnit unit)
{
  return tm_count_format_exact (size, unit, unit == TM_UNIT_IN ? 4 : 3);
}

static void
put_size (yajl_gen gen, const char *key, gint64 size, TmUnit unit)
{
  g_autofree char *text = format_size (size, unit);

  tm_print_text (gen, key, text);
}

static void
put_stack (yajl_gen gen, const Question *question, const GArray *stack)
{
  tm_print_key (gen, "stack");
  if (stack == NULL)
    {
      yajl_gen_null (gen);
      tm_print_null (gen, "count");
      return;
    }
  yajl_gen_array_open (gen);
  for (guint i = 0; i < stack->len; i++)
    {
      g_autofree char *text = format_size (g_array_index (stack, gint64, i), question->unit);

      tm_print_item (gen, text);
    }
  yajl_gen_array_close (gen);
  tm_print_integer (gen, "count", stack->len);
}

static void
print_json (const Question *question, TmBlocksStatus status, const GArray *stack)
{
  yajl_gen gen = tm_print_begin ();

  yajl_gen_map_open (gen);
  tm_print_unit (gen, question->unit);
  put_size (gen, "size", question->size, question->unit);
  put_size (gen, "wear", question->wear, question->unit);
  tm_print_text (gen, "set", question->name);
  put_stack (gen, question, stack);
  tm_print_text (gen, "reason", status == TM_BLOCKS_OK ? NULL : tm_blocks_status_word (status));
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

static void
print_stack (const Question *question, const GArray *stack)
{
  const char *unit = tm_unit_symbol (question->unit);
  g_autofree char *size = format_size (question->size, question->unit);
  g_autofree char *wear = format_size (question->wear, question->unit);

  for (guint i = 0; i < stack->len; i++)
    {
      g_autofree char *block = format_size (g_array_index (stack, gint64, i), question->unit);

      printf ("%s %s\n", block, unit);
    }
  if (question->wear > 0)
    printf (_ ("and a wear block of %s %s at either end\n"), wear, unit);
  printf (ngettext ("%u block makes %s %s\n", "%u blocks make %s %s\n", stack->len), stack->len, size, unit);
}

int
tm_answer_stack (const TmStackWords *words, const char *path)
{
  g_autoptr (TmJob) job = path != NULL ? tm_load_job (path) : NULL;
  g_autoptr (GArray) sizes = NULL;
  g_autoptr (GArray) stack = NULL;
  Question question = { 0 };
  TmBlocksStatus status;

  if ((path != NULL && job == NULL) || !read_question (words, job, path, &question, &sizes))
    return 2;
  status = tm_blocks_stack (sizes, question.size, question.wear, &stack);
  if (words->json)
    print_json (&question, status, stack);
  else if (status == TM_BLOCKS_OK)
    print_stack (&question, stack);
  else
    printf ("%s: %s\n", words->stack,
            g_dpgettext2 (GETTEXT_PACKAGE, "blocks status", tm_blocks_status_word (status)));
  return status == TM_BLOCKS_OK ? 0 : 1;
}
