/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-plural: the plural rules of gettext catalogues: expressions of C over n (GNU gettext manual, "Plural
 * forms"), reckoned as they are read.
 */

#include <string.h>

#include "report-catalogue.h"

#define DEEPEST 40 /* brackets, signs and choices inside each other */

typedef struct {
  const char *at;
  gulong n;
  guint depth;
  gboolean bad;
} Rule;

static gulong read_choice (Rule *rule);

static void
skip_blanks (Rule *rule)
{
  while (g_ascii_isspace (*rule->at))
    rule->at++;
}

static gboolean
take (Rule *rule, const char *sign)
{
  skip_blanks (rule);
  if (!g_str_has_prefix (rule->at, sign))
    return FALSE;
  rule->at += strlen (sign);
  return TRUE;
}

static gulong
read_value (Rule *rule)
{
  gulong value = 0;

  if (rule->bad || ++rule->depth > DEEPEST)
    {
      rule->bad = TRUE;
      return 0;
    }
  skip_blanks (rule);
  if (*rule->at == '!' && rule->at[1] != '=')
    {
      rule->at++;
      value = !read_value (rule);
    }
  else if (take (rule, "("))
    {
      value = read_choice (rule);
      rule->bad |= !take (rule, ")");
    }
  else if (take (rule, "n"))
    value = rule->n;
  else if (g_ascii_isdigit (*rule->at))
    value = (gulong)g_ascii_strtoull (rule->at, (char **)&rule->at, 10);
  else
    rule->bad = TRUE;
  rule->depth--;
  return value;
}

/* From the weakest; those of one level are equal, the longer sign first. */
static const char *const operators[][5]
    = { { "||" }, { "&&" }, { "==", "!=" }, { "<=", ">=", "<", ">" }, { "+", "-" }, { "*", "/", "%" } };

static gulong
apply (Rule *rule, const char *sign, gulong a, gulong b)
{
  switch (sign[0])
    {
    case '|':
      return a || b;
    case '&':
      return a && b;
    case '=':
      return a == b;
    case '!':
      return a != b;
    case '<':
      return sign[1] == '=' ? a <= b : a < b;
    case '>':
      return sign[1] == '=' ? a >= b : a > b;
    case '+':
      return a + b;
    case '-':
      return a - b;
    case '*':
      return a * b;
    default:
      rule->bad |= b == 0;
      return b == 0 ? 0 : sign[0] == '/' ? a / b : a % b;
    }
}

static gulong
read_level (Rule *rule, guint level)
{
  gulong value;
  gboolean more = TRUE;

  if (level == G_N_ELEMENTS (operators))
    return read_value (rule);
  value = read_level (rule, level + 1);
  while (more && !rule->bad)
    {
      more = FALSE;
      for (guint i = 0; operators[level][i] != NULL && !more; i++)
        if (take (rule, operators[level][i]))
          {
            value = apply (rule, operators[level][i], value, read_level (rule, level + 1));
            more = TRUE;
          }
    }
  return value;
}

static gulong
read_choice (Rule *rule)
{
  const gulong value = read_level (rule, 0);
  gulong yes, no;

  if (!take (rule, "?"))
    return value;
  if (++rule->depth > DEEPEST)
    rule->bad = TRUE;
  if (rule->bad)
    return 0;
  yes = read_choice (rule);
  rule->bad |= !take (rule, ":");
  no = rule->bad ? 0 : read_choice (rule);
  rule->depth--;
  return value ? yes : no;
}

guint
tm_catalogue_plural_form (const char *text, gulong n)
{
  const char *count = strstr (text, "nplurals=");
  const char *start = strstr (text, "plural=");
  Rule rule = { .n = n };
  gulong form;

  while (start != NULL && start > text && start[-1] != ' ' && start[-1] != ';')
    start = strstr (start + 1, "plural=");
  if (count == NULL || start == NULL)
    return 0;
  rule.at = start + strlen ("plural=");
  form = read_choice (&rule);
  skip_blanks (&rule);
  if (rule.bad || (*rule.at != ';' && *rule.at != '\0')
      || form >= g_ascii_strtoull (count + strlen ("nplurals="), NULL, 10))
    return 0;
  return (guint)MIN (form, 16ul);
}
