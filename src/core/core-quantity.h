/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-quantity: exact measured quantities.
 *
 * A length is a signed 64-bit count of picometres, so that inch and millimetre values are both
 * exact (1 in = 25.4 mm exactly, international inch, 1959).  Every other dimension has an exact
 * count of its own, see TmDimension.  No floating point is used anywhere in this file.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

__extension__ typedef __int128 TmWide;

typedef enum {
  TM_UNIT_NONE,     /* no number at all: attribute and note features */
  TM_UNIT_MM,       /* millimetre */
  TM_UNIT_IN,       /* inch */
  TM_UNIT_UM,       /* micrometre: roughness, and readings typed so */
  TM_UNIT_UIN,      /* microinch: roughness, and readings typed so */
  TM_UNIT_THOU,     /* 0.001 in, only as typed */
  TM_UNIT_TENTH,    /* 0.0001 in, only as typed */
  TM_UNIT_DEGREE,   /* decimal degree */
  TM_UNIT_HARDNESS, /* points of the feature's hardness scale */
  TM_UNIT_COUNT,    /* whole things */
  TM_UNIT_CELSIUS,  /* temperatures of part and gauge */
  TM_N_UNITS
} TmUnit;

typedef enum {
  TM_DIMENSION_NONE,
  TM_DIMENSION_LENGTH,      /* count = picometres */
  TM_DIMENSION_ANGLE,       /* count = millionths of an arc second */
  TM_DIMENSION_HARDNESS,    /* count = millionths of a point */
  TM_DIMENSION_COUNT,       /* count = things */
  TM_DIMENSION_TEMPERATURE, /* count = millionths of a degree Celsius */
} TmDimension;

/* A quantity with the way it was written, so that it can be written back to the same text. */
typedef struct {
  gint64 count;    /* exact value, in the dimension's count */
  guint8 unit;     /* TmUnit it was written in */
  guint8 decimals; /* digits after the point as written, 0..TM_MAX_DECIMALS */
  guint8 given;    /* FALSE: absent; every other field is then 0 */
} TmQuantity;

#define TM_MAX_DECIMALS 12

/* Largest magnitude accepted, either sign: 4e18 counts (4000 km), so that sums of two never wrap. */
#define TM_COUNT_MAX G_GINT64_CONSTANT (4000000000000000000)

/* Why text is not a quantity. */
typedef enum {
  TM_READ_OK,
  TM_READ_EMPTY,        /* nothing but spaces */
  TM_READ_NOT_A_NUMBER, /* not digits with at most one decimal mark */
  TM_READ_THOUSANDS,    /* more than one mark: thousands separators are not read */
  TM_READ_TOO_FINE,     /* not a whole number of counts, or more than TM_MAX_DECIMALS digits */
  TM_READ_TOO_LARGE,    /* beyond TM_COUNT_MAX */
  TM_READ_UNIT_UNKNOWN, /* a word after the number that is no unit */
  TM_READ_UNIT_WRONG,   /* a unit of another dimension */
  TM_N_READ_STATUSES
} TmReadStatus;

#define TM_QUANTITY_NONE ((TmQuantity) { 0, TM_UNIT_NONE, 0, FALSE })

/* What @unit measures; only units of one dimension can be compared. */
TmDimension tm_unit_dimension (TmUnit unit);

/* Counts in one @unit: 1e9 for mm, 25.4e9 for in; 0 for TM_UNIT_NONE. */
gint64 tm_unit_counts (TmUnit unit);

/* The word a file holds and a screen shows: "mm", "in", "um", "deg", ""…; never NULL. */
const char *tm_unit_word (TmUnit unit);

/* The symbol for people: "mm", "in", "µm", "µin", "thou", "tenths", "°", "". */
const char *tm_unit_symbol (TmUnit unit);

/* Reads a unit word in any of its spellings (mm, in, ", inch, um, µm, thou, mil, deg, °…).
 * Returns: FALSE when @word is none; @unit is then untouched. */
gboolean tm_unit_from_word (const char *word, TmUnit *unit);

/* The shop's small unit that goes with @unit: µm for mm, tenths for in, else @unit itself. */
TmUnit tm_unit_small (TmUnit unit);

/* Reads decimal @text: an optional sign, digits with a decimal point or comma (".75" and "25,"
 * included), and optionally a unit word.  Without a unit word the number is in @unit.
 * @out is written only on TM_READ_OK. */
TmReadStatus tm_quantity_read (const char *text, TmUnit unit, TmQuantity *out);

/* The message template, marked for translation, for each refusal; never NULL. */
const char *tm_read_status_text (TmReadStatus status);

/* @count, to be written in @unit with @decimals digits after the point, at most TM_MAX_DECIMALS. */
TmQuantity tm_quantity_new (gint64 count, TmUnit unit, guint decimals);

/* The number as it was written, in its own unit, without the unit word; "" when not given. */
char *tm_quantity_format (const TmQuantity *quantity) G_GNUC_WARN_UNUSED_RESULT;

/* As tm_quantity_format() when the quantity's unit is @unit; otherwise with its unit word after a
 * space ("19.01 mm"): the form a file holds. */
char *tm_quantity_format_in (const TmQuantity *quantity, TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;

/* @count rounded half to even (ISO 80000-1 B.3 rule A) to @decimals digits of @unit, once, from
 * the exact value.  Never "-0.000". */
char *tm_count_format (gint64 count, TmUnit unit, guint decimals) G_GNUC_WARN_UNUSED_RESULT;

/* As tm_count_format() with as many digits, at least @min_decimals, as give the exact value, up to
 * TM_MAX_DECIMALS (where it is rounded). */
char *tm_count_format_exact (gint64 count, TmUnit unit, guint min_decimals) G_GNUC_WARN_UNUSED_RESULT;

/* @count as a bound that stays one when it is printed: the exact value where @decimals digits give it,
 * else rounded up, or down, to them. */
char *tm_count_format_bound (gint64 count, TmUnit unit, guint decimals,
                             gboolean up) G_GNUC_WARN_UNUSED_RESULT;

/* The exact rational @sum / @n (n >= 1) rounded half to even as tm_count_format() does. */
char *tm_mean_format (TmWide sum, guint n, TmUnit unit, guint decimals) G_GNUC_WARN_UNUSED_RESULT;

/* Compares the mean @sum / @n with @limit exactly: the sign of sum - n * limit. */
int tm_mean_compare (TmWide sum, guint n, gint64 limit);

/* @count as a double in @unit, for statistics and drawing only. */
double tm_count_to_double (gint64 count, TmUnit unit);

/* Rounds @value, in @unit, to the nearest count; clamped to ±TM_COUNT_MAX; NaN gives 0. */
gint64 tm_count_from_double (double value, TmUnit unit);

G_END_DECLS
