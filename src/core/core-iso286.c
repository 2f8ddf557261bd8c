/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-iso286.h"

#include "core-iso286-tables.h"

#include <string.h>

#define PM_PER_MM      G_GINT64_CONSTANT (1000000000)
#define PM_PER_UM      G_GINT64_CONSTANT (1000000)
#define PM_PER_TENTH   (PM_PER_UM / 10) /* a tenth of a micrometre */
#define COARSE         (500 * PM_PER_MM)
#define GRADE_SMALLEST (-1)
#define GRADE_LARGEST  18

/* Columns of the deviation table that rules refer to. */
enum { COLUMN_A, COLUMN_B, COLUMN_G = 9, COLUMN_K, COLUMN_M, COLUMN_N, COLUMN_P };

/* What one class at one size comes to while it is worked out; deviations in picometres. */
typedef struct {
  gint64 size;
  gint64 tolerance;
  int grade;
  gboolean hole;
} Request;

static int
find_column (const char *letters)
{
  for (int i = 0; i < TM_ISO286_N_DEVIATIONS; i++)
    if (strcmp (tm_iso286_deviation_names[i], letters) == 0)
      return i;
  return -1;
}

static gboolean
is_known_letters (const char *letters)
{
  return find_column (letters) >= 0 || strcmp (letters, "h") == 0 || strcmp (letters, "j") == 0
         || strcmp (letters, "js") == 0;
}

static gboolean
read_grade (const char *digits, int *grade)
{
  if (strcmp (digits, "01") == 0)
    *grade = GRADE_SMALLEST;
  else if (g_ascii_isdigit (digits[0]) && digits[1] == '\0')
    *grade = digits[0] - '0';
  else if (digits[0] == '1' && g_ascii_isdigit (digits[1]) && digits[2] == '\0')
    *grade = 10 + digits[1] - '0';
  else
    return FALSE;
  return *grade <= GRADE_LARGEST;
}

gboolean
tm_iso286_class_read (const char *letters, const char *grade, TmIso286Class *out)
{
  gsize n = strlen (letters);
  TmIso286Class found = { 0 };

  if (n < 1 || n > 2 || !g_ascii_isalpha (letters[0]))
    return FALSE;
  found.hole = g_ascii_isupper (letters[0]);
  for (gsize i = 0; i < n; i++)
    {
      if (!g_ascii_isalpha (letters[i]) || !!g_ascii_isupper (letters[i]) != found.hole)
        return FALSE;
      found.letters[i] = g_ascii_tolower (letters[i]);
    }
  if (!is_known_letters (found.letters) || !read_grade (grade, &found.grade))
    return FALSE;
  *out = found;
  return TRUE;
}

/* A size on a boundary belongs to the range below it: "over … up to and including". */
static gboolean
is_beyond (gint64 size, int upto)
{
  return size > upto * PM_PER_MM;
}

gboolean
tm_iso286_grade (gint64 size, int grade, gint64 *tolerance)
{
  gsize row = 0;
  int tenths;

  if (size <= 0 || grade < GRADE_SMALLEST || grade > GRADE_LARGEST)
    return FALSE;
  if (grade >= 14 && size <= PM_PER_MM) /* not used up to 1 mm */
    return FALSE;
  while (row < tm_iso286_n_grade_rows && is_beyond (size, tm_iso286_grade_rows[row].upto))
    row++;
  if (row == tm_iso286_n_grade_rows)
    return FALSE;
  tenths = tm_iso286_grade_rows[row].tenths[grade + 1];
  if (tenths == TM_ISO286_NO)
    return FALSE;
  *tolerance = tenths * PM_PER_TENTH;
  return TRUE;
}

static gboolean
find_magnitude (gint64 size, int column, gint64 *magnitude)
{
  gsize row = 0;
  int micrometres;

  while (row < tm_iso286_n_deviation_rows && is_beyond (size, tm_iso286_deviation_rows[row].upto))
    row++;
  if (row == tm_iso286_n_deviation_rows)
    return FALSE;
  micrometres = tm_iso286_deviation_rows[row].micrometres[column];
  *magnitude = micrometres * PM_PER_UM;
  return micrometres != TM_ISO286_NO;
}

/* Above 500 mm the deviations are given for IT6 to IT16 only. */
static gboolean
is_grade_outside_coarse (const Request *request)
{
  return request->size > COARSE && (request->grade < 6 || request->grade > 16);
}

/* a to g and A to G: the deviation nearest the nominal, which lies wholly on one side. */
static gboolean
find_clearance (const Request *request, int column, gint64 *lower, gint64 *upper)
{
  gint64 magnitude;

  if (column <= COLUMN_B && request->size <= PM_PER_MM) /* not used up to 1 mm */
    return FALSE;
  if (!find_magnitude (request->size, column, &magnitude))
    return FALSE;
  *lower = request->hole ? magnitude : -magnitude - request->tolerance;
  *upper = *lower + request->tolerance;
  return TRUE;
}

static gboolean
find_interference_shaft (const Request *request, int column, gint64 *lower, gint64 *upper)
{
  gint64 magnitude;

  if (!find_magnitude (request->size, column, &magnitude))
    return FALSE;
  if (column == COLUMN_K && (request->grade < 4 || request->grade > 7))
    magnitude = 0;
  *lower = magnitude;
  *upper = magnitude + request->tolerance;
  return TRUE;
}

/* Over 3 mm, and not above 500 mm, the finer grades of K to ZC are moved by the difference between
 * the grade and the next finer one; it is given for IT3 to IT8. */
static gboolean
find_delta (const Request *request, int column, gint64 *delta)
{
  int coarsest = column >= COLUMN_P ? 7 : 8;
  gint64 finer;

  *delta = 0;
  if (request->grade > coarsest || request->size > COARSE)
    return TRUE;
  if (request->grade < 3)
    return FALSE;
  if (request->size <= 3 * PM_PER_MM)
    return TRUE;
  if (!tm_iso286_grade (request->size, request->grade - 1, &finer))
    return FALSE;
  *delta = request->tolerance - finer;
  return TRUE;
}

/* K to ZC: the rules that are not in the table. */
static gboolean
find_interference_hole (const Request *request, int column, gint64 *lower, gint64 *upper)
{
  gint64 magnitude, delta;
  gboolean small = request->size <= 3 * PM_PER_MM;
  gboolean fine = request->grade <= 8;

  if (!find_magnitude (request->size, column, &magnitude) || !find_delta (request, column, &delta))
    return FALSE;
  if (column == COLUMN_K && !fine && !small)
    return FALSE;
  if (column == COLUMN_N && !fine && request->size <= PM_PER_MM)
    return FALSE;
  if (column == COLUMN_N && !fine && !small && request->size <= COARSE)
    magnitude = 0;
  *upper = delta - magnitude;
  if (column == COLUMN_M && request->grade == 6 && request->size > 250 * PM_PER_MM
      && request->size <= 315 * PM_PER_MM)
    *upper = -9 * PM_PER_UM; /* the standard's one exception; the rule would give -11 */
  *lower = *upper - request->tolerance;
  return TRUE;
}

static gboolean
find_j (const Request *request, gint64 *lower, gint64 *upper)
{
  gsize row = 0;
  int column, micrometres;

  if (request->grade < (request->hole ? 6 : 5) || request->grade > 8)
    return FALSE;
  column = request->hole ? 3 + request->grade - 6 : MAX (request->grade - 6, 0);
  while (row < tm_iso286_n_j_rows && is_beyond (request->size, tm_iso286_j_rows[row].upto))
    row++;
  if (row == tm_iso286_n_j_rows)
    return FALSE;
  micrometres = tm_iso286_j_rows[row].micrometres[column];
  if (micrometres == TM_ISO286_NO)
    return FALSE;
  *lower = micrometres * PM_PER_UM - (request->hole ? request->tolerance : 0);
  *upper = *lower + request->tolerance;
  return TRUE;
}

gboolean
tm_iso286_deviations (gint64 size, const TmIso286Class *tolerance_class, gint64 *lower, gint64 *upper)
{
  Request request = { .size = size, .grade = tolerance_class->grade, .hole = tolerance_class->hole };
  int column = find_column (tolerance_class->letters);

  if (!tm_iso286_grade (size, request.grade, &request.tolerance))
    return FALSE;
  if (strcmp (tolerance_class->letters, "js") == 0)
    {
      *lower = -request.tolerance / 2;
      *upper = request.tolerance / 2;
      return TRUE;
    }
  if (strcmp (tolerance_class->letters, "h") == 0)
    {
      *lower = request.hole ? 0 : -request.tolerance;
      *upper = *lower + request.tolerance;
      return TRUE;
    }
  if (strcmp (tolerance_class->letters, "j") == 0)
    return find_j (&request, lower, upper);
  if (column < 0 || is_grade_outside_coarse (&request))
    return FALSE;
  if (column <= COLUMN_G)
    return find_clearance (&request, column, lower, upper);
  return request.hole ? find_interference_hole (&request, column, lower, upper)
                      : find_interference_shaft (&request, column, lower, upper);
}
