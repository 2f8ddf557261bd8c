/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "cli-budget-file.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>
#include <yajl/yajl_tree.h>

#include "cli-options.h"

#define MOST_BYTES (4 * 1024 * 1024)
/* The tree is freed by recursion. */
#define MOST_DEPTH 32

typedef struct {
  const char *path;
  TmBudgetFile *out;
} Reader;

void
tm_budget_file_clear (TmBudgetFile *file)
{
  g_clear_pointer (&file->unit, g_free);
  g_clear_pointer (&file->names, g_ptr_array_unref);
  g_clear_pointer (&file->components, g_array_unref);
}

/* -------- Values -------- */

/* NULL for a member that is not there or null. */
static yajl_val
find_member (yajl_val object, const char *key)
{
  const char *path[] = { key, NULL };
  yajl_val value = yajl_tree_get (object, path, yajl_t_any);

  return value == NULL || YAJL_IS_NULL (value) ? NULL : value;
}

/* "components[2].value", or the key alone. */
static char *
make_place (int index, const char *key)
{
  return index < 0 ? g_strdup (key) : g_strdup_printf ("components[%d].%s", index, key);
}

/* g_ascii_strtod() would also take hexadecimal and "nan". */
static gboolean
read_decimal (const char *text, double *value)
{
  char *end;

  if (*text == '\0' || strspn (text, "+-.0123456789eE") != strlen (text))
    return FALSE;
  *value = g_ascii_strtod (text, &end);
  return *end == '\0' && isfinite (*value);
}

static gboolean
read_number (const Reader *self, yajl_val object, int index, const char *key, double *value)
{
  yajl_val member = find_member (object, key);
  g_autofree char *place = make_place (index, key);
  const char *text = NULL;

  if (member == NULL)
    return TRUE;
  if (YAJL_IS_NUMBER (member))
    text = YAJL_GET_NUMBER (member);
  else if (YAJL_IS_STRING (member))
    text = YAJL_GET_STRING (member);
  if (text != NULL && read_decimal (text, value))
    return TRUE;
  tm_fail (_ ("%s: %s: “%s” is not a decimal number; write it like 0.25"), self->path, place,
           text != NULL ? text : "…");
  return FALSE;
}

static const char *
read_text (yajl_val object, const char *key)
{
  yajl_val member = find_member (object, key);

  return member != NULL && YAJL_IS_STRING (member) ? YAJL_GET_STRING (member) : "";
}

/* A misspelt member would change the result without a word. */
static void
name_unknown (const Reader *self, yajl_val object, int index, const char *const *known)
{
  for (gsize i = 0; i < YAJL_GET_OBJECT (object)->len; i++)
    {
      const char *key = YAJL_GET_OBJECT (object)->keys[i];
      g_autofree char *place = make_place (index, key);

      if (!g_strv_contains (known, key))
        tm_fail (_ ("%s: %s is not a member of a budget; it is left out"), self->path, place);
    }
}

/* -------- Components -------- */

static gboolean
check_component (const Reader *self, int index, const TmComponent *component)
{
  const char *fault = NULL;
  const char *key = "value";

  if (isnan (component->value))
    fault = _ ("it is missing; write the uncertainty of this component");
  else if (component->value < 0)
    fault = _ ("it is below zero; an uncertainty is written without a sign");
  else if (!(component->dof > 0))
    key = "dof",
    fault = _ ("degrees of freedom are above zero; leave them out where the value is taken as known");
  else if (component->divisor < 0)
    key = "divisor", fault = _ ("a divisor is above zero; leave it out for the distribution's own");
  if (fault == NULL)
    return TRUE;
  tm_fail ("%s: components[%d].%s: %s", self->path, index, key, fault);
  return FALSE;
}

static gboolean
read_distribution (const Reader *self, yajl_val object, int index, TmComponent *component)
{
  const char *word = read_text (object, "distribution");

  if (!tm_distribution_from_word (word, &component->distribution))
    {
      tm_fail (
          _ ("%s: components[%d].distribution: “%s” is none; it is normal, rectangular, triangular, u-shaped "
             "or t"),
          self->path, index, word);
      return FALSE;
    }
  if (component->distribution == TM_DISTRIBUTION_T && find_member (object, "dof") == NULL)
    {
      tm_fail (_ ("%s: components[%d].dof: it is missing; t needs its degrees of freedom"), self->path,
               index);
      return FALSE;
    }
  return TRUE;
}

/* Zero stands for "the distribution's own" inside, so that a written zero must be told apart. */
static gboolean
read_divisor (const Reader *self, yajl_val object, int index, TmComponent *component)
{
  double divisor = NAN;

  if (!read_number (self, object, index, "divisor", &divisor))
    return FALSE;
  if (!isnan (divisor))
    component->divisor = divisor > 0 ? divisor : -1;
  return TRUE;
}

static gboolean
read_component (const Reader *self, yajl_val object, int index)
{
  static const char *const known[]
      = { "name", "value", "distribution", "divisor", "sensitivity", "dof", "source", "note", NULL };
  TmComponent component = tm_component (TM_COMPONENT_OTHER, TM_DISTRIBUTION_NORMAL, NAN, INFINITY, FALSE);

  if (!YAJL_IS_OBJECT (object))
    {
      tm_fail (_ ("%s: components[%d]: it is no object; write it in braces"), self->path, index);
      return FALSE;
    }
  name_unknown (self, object, index, known);
  if (!read_distribution (self, object, index, &component) || !read_divisor (self, object, index, &component)
      || !read_number (self, object, index, "value", &component.value)
      || !read_number (self, object, index, "sensitivity", &component.sensitivity)
      || !read_number (self, object, index, "dof", &component.dof)
      || !check_component (self, index, &component))
    return FALSE;
  g_ptr_array_add (self->out->names, g_strdup (read_text (object, "name")));
  g_array_append_val (self->out->components, component);
  return TRUE;
}

static gboolean
read_components (const Reader *self, yajl_val tree)
{
  yajl_val list = find_member (tree, "components");

  if (list == NULL || !YAJL_IS_ARRAY (list) || YAJL_GET_ARRAY (list)->len == 0)
    {
      tm_fail (_ ("%s: components: there is none; a budget lists at least one"), self->path);
      return FALSE;
    }
  for (gsize i = 0; i < YAJL_GET_ARRAY (list)->len; i++)
    if (!read_component (self, YAJL_GET_ARRAY (list)->values[i], (int)i))
      return FALSE;
  return TRUE;
}

/* -------- The file -------- */

static gboolean
read_coverage (const Reader *self, yajl_val tree)
{
  double *coverage = &self->out->coverage;

  *coverage = 0.95;
  if (!read_number (self, tree, -1, "coverage", coverage))
    return FALSE;
  if (*coverage > 0 && *coverage < 1)
    return TRUE;
  tm_fail (_ ("%s: coverage: it lies between 0 and 1; write 0.95 for 95 %%"), self->path);
  return FALSE;
}

static gboolean
read_tree (const Reader *self, yajl_val tree)
{
  static const char *const known[] = { "unit", "value", "components", "coverage", "name", "note", NULL };

  if (!YAJL_IS_OBJECT (tree))
    {
      tm_fail (_ ("%s: it is no budget; write one object with its components"), self->path);
      return FALSE;
    }
  name_unknown (self, tree, -1, known);
  self->out->unit = g_strdup (read_text (tree, "unit"));
  self->out->value = NAN;
  return read_number (self, tree, -1, "value", &self->out->value) && read_coverage (self, tree)
         && read_components (self, tree);
}

/* Braces and brackets outside texts. */
static guint
find_depth (const char *content)
{
  guint depth = 0, deepest = 0;
  gboolean in_text = FALSE;

  for (const char *c = content; *c != '\0'; c++)
    {
      if (in_text && *c == '\\' && c[1] != '\0')
        c++;
      else if (*c == '"')
        in_text = !in_text;
      else if (!in_text && (*c == '{' || *c == '['))
        deepest = MAX (deepest, ++depth);
      else if (!in_text && (*c == '}' || *c == ']') && depth > 0)
        depth--;
    }
  return deepest;
}

static yajl_val
parse (const char *path, const char *content, gsize length)
{
  char problem[256] = "";
  yajl_val tree = NULL;

  if (length > MOST_BYTES || find_depth (content) > MOST_DEPTH)
    {
      tm_fail (_ ("%s: too large or too deeply nested for a budget; split it"), path);
      return NULL;
    }
  tree = yajl_tree_parse (content, problem, sizeof problem);
  if (tree == NULL)
    {
      g_strdelimit (problem, "\r\n\t", ' ');
      g_strchomp (problem);
      tm_fail (_ ("%s: it is no JSON; look at its braces, commas and quotes (%s)"), path, problem);
    }
  return tree;
}

gboolean
tm_budget_file_read (const char *path, TmBudgetFile *out)
{
  Reader self = { path, out };
  g_autofree char *content = NULL;
  g_autoptr (GError) error = NULL;
  gsize length;
  yajl_val tree;
  gboolean good;

  *out = (TmBudgetFile) { NULL };
  if (!g_file_get_contents (path, &content, &length, &error))
    {
      tm_fail_error (g_steal_pointer (&error));
      return FALSE;
    }
  tree = parse (path, content, length);
  if (tree == NULL)
    return FALSE;
  out->names = g_ptr_array_new_with_free_func (g_free);
  out->components = g_array_new (FALSE, FALSE, sizeof (TmComponent));
  good = read_tree (&self, tree);
  yajl_tree_free (tree);
  return good;
}
