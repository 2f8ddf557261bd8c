/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * 10,000 reading strings: valid, sloppy, mistaken and hostile.
 *
 * The generator first chooses the size that is meant, as a whole number of picometres (0.1 µm =
 * 100 000 pm, 0.1 tenth = 254 000 pm: the inch of 25.4 mm), then writes it in one of many ways, in
 * integer arithmetic of its own.  So it knows what each string must give:
 *   MUST     the value that was meant, exactly;
 *   REFUSE   a refusal, whatever digits are in it;
 *   NEVER_SILENT  the value that was meant, or a refusal, or a question (a slip) before it is recorded;
 *   SOUP     nobody meant anything: a refusal, or what the digits say in one of the four units.
 */

#include <string.h>

#include "core-entry.h"

#define N_STRINGS   10000
#define METRIC_GRID G_GINT64_CONSTANT (100000)
#define INCH_GRID   G_GINT64_CONSTANT (254000)

typedef enum { MUST, REFUSE, NEVER_SILENT, SOUP, N_DUTIES } Duty;

/* Sizes in grid steps: 0.1 µm or 0.1 tenth. */
static const struct {
  TmKind kind;
  gboolean inch;
  gint64 nominal, lower, upper; /* 0: none */
} plans[] = {
  { TM_KIND_BORE, FALSE, 250000, 250000, 250210 },      /* Ø25 H7 */
  { TM_KIND_BORE, TRUE, 75000, 74900, 75050 },          /* .7500 +.0005 -.0010 */
  { TM_KIND_SHAFT, FALSE, 400000, 399750, 399910 },     /* Ø40 f6-like */
  { TM_KIND_SHAFT, TRUE, 118750, 118700, 118750 },      /* 1 3/16 +0 -.0005 */
  { TM_KIND_DIAMETER, FALSE, 65000, 64000, 66000 },     /* Ø6.5 ±0.1 */
  { TM_KIND_LENGTH, FALSE, 1200000, 1197000, 1203000 }, /* 120 ±0.3 */
  { TM_KIND_LENGTH, TRUE, 200000, 199500, 200500 },     /* 2.000 ±.005 */
  { TM_KIND_DEPTH, TRUE, 0, 12400, 12600 },             /* .124/.126 */
  { TM_KIND_BORE, FALSE, 0, 80050, 80200 },             /* 8.005/8.020 */
  { TM_KIND_BORE, FALSE, 5000, 4970, 5030 },            /* Ø0.5 ±0.003 */
};

typedef struct {
  TmFeature feature;
  gboolean inch;
  gint64 grid;    /* pm in one step */
  gint64 nominal; /* steps; 0: none */
  gint64 lower, upper;
  gint64 meant; /* steps */
} Case;

typedef struct {
  char *text;
  Duty duty;
  gint64 count; /* what is meant, pm */
} Typed;

static guint64 state = 0x2545F4914F6CDD1D;

/* xorshift64*, so that every machine runs the same strings. */
static guint32
draw (guint32 below)
{
  state ^= state >> 12;
  state ^= state << 25;
  state ^= state >> 27;
  return (guint32)(((state * G_GUINT64_CONSTANT (2685821657736338717)) >> 32) % below);
}

static TmQuantity
make_quantity (const Case *self, gint64 steps)
{
  if (steps == 0)
    return TM_QUANTITY_NONE;
  return tm_quantity_new (steps * self->grid, self->feature.unit, self->inch ? 5 : 4);
}

static Case
choose_case (void)
{
  guint i = draw (G_N_ELEMENTS (plans));
  Case self = { .inch = plans[i].inch, .grid = plans[i].inch ? INCH_GRID : METRIC_GRID };

  self.feature.kind = plans[i].kind;
  self.feature.unit = self.inch ? TM_UNIT_IN : TM_UNIT_MM;
  self.feature.places = 1;
  self.nominal = plans[i].nominal;
  self.lower = plans[i].lower;
  self.upper = plans[i].upper;
  self.feature.nominal = make_quantity (&self, self.nominal);
  self.feature.lower = make_quantity (&self, self.lower);
  self.feature.upper = make_quantity (&self, self.upper);
  self.meant = self.lower + draw ((guint32)(self.upper - self.lower + 1));
  return self;
}

/* Decimals of a size in grid steps written in the feature's unit. */
static guint
count_decimals (const Case *self)
{
  return self->inch ? 5 : 4;
}

/* @value / 10^@decimals as text. */
static char *
write_decimal (gint64 value, guint decimals, const char *mark)
{
  gint64 power = 1;

  for (guint i = 0; i < decimals; i++)
    power *= 10;
  if (decimals == 0)
    return g_strdup_printf ("%" G_GINT64_FORMAT, value);
  return g_strdup_printf ("%" G_GINT64_FORMAT "%s%0*" G_GINT64_FORMAT, value / power, mark, (int)decimals,
                          value % power);
}

static char *
write_plain (const Case *self, gint64 steps, const char *mark)
{
  return write_decimal (steps, count_decimals (self), mark);
}

/* Without the zeros and the mark that a lazy hand leaves out. */
static char *
write_lazy (const Case *self, gint64 steps, const char *mark)
{
  char *text = write_plain (self, steps, mark);
  gsize n = strlen (text);

  while (text[n - 1] == '0')
    text[--n] = '\0';
  if (text[n - 1] == *mark && draw (2) == 0)
    text[--n] = '\0';
  if (text[0] == '0' && text[1] == *mark && text[2] != '\0')
    memmove (text, text + 1, n);
  return text;
}

/* Decorated with what fingers, gauges and pasted text leave around a number. */
static char *
surround (char *text)
{
  static const char *const edges[] = { "", " ", "  ", "\t", "\r\n", "\n", "\r", "\u00a0" };
  g_autofree char *inner = text;

  return g_strconcat (edges[draw (G_N_ELEMENTS (edges))], inner, edges[draw (G_N_ELEMENTS (edges))], NULL);
}

static const char *
choose_mark (void)
{
  return draw (2) ? "." : ",";
}

static const char *
choose (const char *const *words)
{
  return words[draw (g_strv_length ((char **)words))];
}

static char *
attach (char *number, const char *const *words)
{
  g_autofree char *inner = number;

  return g_strconcat (inner, draw (2) ? " " : "", choose (words), NULL);
}

static const char *const words_mm[] = { "mm", "MM", "Mm", NULL };
static const char *const words_in[] = { "in", "IN", "\"", "inch", "\u2033", "\u201d", NULL };
static const char *const words_um[] = { "um", "\u00b5m", "\u03bcm", "UM", NULL };
static const char *const words_thou[] = { "thou", "mil", "THOU", NULL };
static const char *const words_tenth[] = { "tenths", "tenth", NULL };
static const char *const words_uin[] = { "uin", "\u00b5in", NULL };

/* One way to write the size meant as it stands; each must be taken so. */
static Typed
type_as_written (const Case *self)
{
  Typed typed = { NULL, MUST, self->meant * self->grid };

  switch (draw (6))
    {
    case 0:
      typed.text = surround (write_plain (self, self->meant, choose_mark ()));
      break;
    case 1:
      typed.text = write_lazy (self, self->meant, choose_mark ());
      break;
    case 2:
      typed.text = surround (write_lazy (self, self->meant, choose_mark ()));
      break;
    case 3:
      typed.text = attach (write_lazy (self, self->meant, choose_mark ()), self->inch ? words_in : words_mm);
      break;
    case 4:
      if (self->inch)
        typed.text = attach (write_decimal (self->meant, 2, choose_mark ()), words_thou);
      else
        typed.text = attach (write_decimal (self->meant, 1, choose_mark ()), words_um);
      break;
    default: /* 0.1 tenth is 10 microinches, and 254 nm, exactly */
      if (!self->inch)
        typed.text = attach (write_decimal (self->meant * 100, 3, choose_mark ()), words_um);
      else if (draw (2))
        typed.text = attach (write_decimal (self->meant, 1, choose_mark ()), words_tenth);
      else if (draw (2))
        typed.text = attach (write_decimal (self->meant * 10, 0, "."), words_uin);
      else
        typed.text = attach (write_decimal (self->meant * 254, 6, choose_mark ()), words_mm);
      break;
    }
  return typed;
}

/* Digits alone: micrometres, tenths or thou of the size. */
static Typed
type_shorthand (const Case *self)
{
  gint64 whole = self->meant - self->meant % 10;

  if (self->inch && draw (2))
    return (Typed) { surround (write_decimal (self->meant, 2, choose_mark ())), MUST,
                     self->meant * self->grid };
  if (draw (3) == 0)
    return (Typed) { write_decimal (self->meant, 1, choose_mark ()), MUST, self->meant * self->grid };
  return (Typed) { surround (write_decimal (whole / 10, 0, ".")), MUST, whole * self->grid };
}

static const char *const words_plus[] = { "+", "+ ", NULL };
static const char *const words_minus[] = { "-", "\u2212", "- ", NULL };

/* A sign and a deviation from nominal. */
static Typed
type_deviation (const Case *self)
{
  gboolean minus = draw (2);
  const char *sign = choose (minus ? words_minus : words_plus);
  gint64 steps = draw (300);
  g_autofree char *number = NULL;
  Duty duty = MUST;

  switch (draw (4))
    {
    case 0: /* whole tenths or micrometres */
      steps -= steps % 10;
      number = write_decimal (steps / 10, 0, ".");
      break;
    case 1: /* with its unit */
      number = attach (write_plain (self, steps, choose_mark ()), self->inch ? words_in : words_mm);
      break;
    case 2: /* tenths or micrometres with a decimal: may be refused */
      number = write_decimal (steps, 1, choose_mark ());
      duty = NEVER_SILENT;
      break;
    default: /* inches or millimetres with no unit: must not be taken for something smaller */
      number = write_plain (self, steps, choose_mark ());
      duty = NEVER_SILENT;
      break;
    }
  return (Typed) { g_strconcat (sign, number, NULL), self->nominal ? duty : REFUSE,
                   (self->nominal + (minus ? -steps : steps)) * self->grid };
}

/* Whole and 64ths of an inch: 1/64 in = 396 875 000 pm. */
static Typed
type_fraction (const Case *self)
{
  guint whole = draw (3);
  guint numerator = 1 + draw (63);
  guint denominator = 64;
  Typed typed
      = { NULL, self->inch ? MUST : REFUSE, G_GINT64_CONSTANT (396875000) * (64 * whole + numerator) };

  while (numerator % 2 == 0 && draw (4))
    {
      numerator /= 2;
      denominator /= 2;
    }
  if (whole > 0)
    typed.text = g_strdup_printf ("%u%s%u/%u%s", whole, draw (2) ? " " : "-", numerator, denominator,
                                  draw (2) ? "\"" : "");
  else
    typed.text = g_strdup_printf ("%u%s%u", numerator, draw (2) ? "/" : "\u2044", denominator);
  return typed;
}

static char *
drop_mark (char *text)
{
  char *mark = strchr (text, '.');

  memmove (mark, mark + 1, strlen (mark));
  return text;
}

/* Two neighbouring digits of the written size swapped. */
static char *
swap_digits (const Case *self)
{
  char *text = write_plain (self, self->meant, ".");
  gsize at = draw ((guint32)strlen (text) - 1);
  char kept = text[at];

  if (text[at] == '.' || text[at + 1] == '.')
    return text;
  text[at] = text[at + 1];
  text[at + 1] = kept;
  return text;
}

/* The steps that a text of swapped digits says. */
static gint64
read_back (const char *text)
{
  gint64 steps = 0;

  for (; *text != '\0'; text++)
    {
      if (*text != '.')
        steps = steps * 10 + (*text - '0');
    }
  return steps;
}

/* A swap that stays within a band of the limits is a size like any other: nobody could tell. */
static Typed
type_swapped (const Case *self)
{
  char *text = swap_digits (self);
  gint64 steps = read_back (text);
  gint64 band = self->upper - self->lower;

  if (steps < self->lower - band || steps > self->upper + band)
    return (Typed) { text, NEVER_SILENT, self->meant * self->grid };
  return (Typed) { text, MUST, steps * self->grid };
}

static Typed
type_thimble_turn (const Case *self)
{
  gint64 turn = self->inch ? 2500 : 5000;
  gint64 steps = self->meant + (draw (2) ? turn : -turn);
  gboolean tells = 2 * (self->upper - self->lower) < turn;

  if (steps <= 0 || !tells)
    steps = self->meant;
  return (Typed) { write_plain (self, steps, choose_mark ()), NEVER_SILENT, self->meant * self->grid };
}

/* The last digits only, as some hands are used to write.  Where they are as they stand a size near the
 * one wanted (120 for 120.120), nobody could tell, and they are taken as written. */
static Typed
type_last_digits (const Case *self)
{
  guint width = self->inch ? 4 : 3;
  gint64 whole = self->meant - self->meant % 10;
  gint64 digits = whole / 10 % (self->inch ? 10000 : 1000);
  gint64 as_written = digits * (self->inch ? 100000 : 10000);
  char *text = g_strdup_printf ("%0*d", (int)width, (int)digits);

  if (text[0] != '0' && as_written > self->lower - self->lower / 20
      && as_written < self->upper + self->upper / 20)
    return (Typed) { text, MUST, as_written * self->grid };
  return (Typed) { text, NEVER_SILENT, whole * self->grid };
}

/* The size in the other system, with no unit to say so. */
static Typed
type_wrong_unit (const Case *self)
{
  char *text;

  if (self->inch)
    text = write_decimal (self->meant * 254 / 1000, 3, ".");
  else
    text = write_decimal (self->meant * 100 / 254, 5, ".");
  return (Typed) { text, NEVER_SILENT, self->meant * self->grid };
}

static char *
bounce_key (const Case *self)
{
  g_autofree char *text = write_plain (self, self->meant, ".");

  return g_strdup_printf ("%c%s", text[0], text);
}

static Typed
type_mistake (const Case *self)
{
  guint decimals = count_decimals (self);

  switch (draw (7))
    {
    case 0:
      return type_swapped (self);
    case 1:
      return type_thimble_turn (self);
    case 2:
      return type_last_digits (self);
    case 3:
      return type_wrong_unit (self);
    case 4:
      return (Typed) { bounce_key (self), NEVER_SILENT, self->meant * self->grid };
    case 5: /* the mark one place off */
      return (Typed) { write_decimal (self->meant, draw (2) ? decimals - 1 : decimals + 1, choose_mark ()),
                       NEVER_SILENT, self->meant * self->grid };
    default: /* the mark not typed */
      return (Typed) { drop_mark (write_plain (self, self->meant, ".")), NEVER_SILENT,
                       self->meant * self->grid };
    }
}

static char *
insert_text (const char *text, gsize at, const char *what)
{
  g_autofree char *head = g_strndup (text, at);

  return g_strconcat (head, what, text + at, NULL);
}

static const char *const separators[] = { " ", "'", "_", "\u2019", "\u00a0", "\u202f", "\r\n", NULL };
static const char *const rubbish_before[]
    = { "\u00d8", "=", "x", "#", "$", "<", "~", "+-", "\u00b1", "0x", "@", NULL };
static const char *const rubbish_after[] = { "e3",  "?",    " deg", " kg",    "%", "!",  " mm mm",   "-",
                                             " ok", "\xff", "\xc2", "\u00b2", ";", " 1", " furlong", NULL };

static Typed
type_hostile (const Case *self)
{
  g_autofree char *plain = write_plain (self, self->meant, choose_mark ());
  g_autofree char *digits = write_decimal (self->meant, 0, ".");
  gsize within = 1 + draw ((guint32)strlen (digits) - 1);

  switch (draw (7))
    {
    case 0:
      return (Typed) { insert_text (digits, within, choose (separators)), REFUSE, 0 };
    case 1: /* keyed twice: two marks */
      return (Typed) { g_strconcat (plain, plain, NULL), REFUSE, 0 };
    case 2:
      return (Typed) { g_strconcat (choose (rubbish_before), plain, NULL), REFUSE, 0 };
    case 3:
      return (Typed) { g_strconcat (plain, choose (rubbish_after), NULL), REFUSE, 0 };
    case 4: /* a byte that no text has */
      return (Typed) { insert_text (plain, draw ((guint32)strlen (plain)), "\xfe"), REFUSE, 0 };
    case 5:
      return (Typed) { g_strnfill (1000 + draw (9000), (char)('0' + draw (10))), REFUSE, 0 };
    default:
      return (Typed) { insert_text (plain, strlen (plain), ",.0"), REFUSE, 0 };
    }
}

static Typed
type_soup (void)
{
  static const char letters[] = "0123456789012345678901234567890123456789..,,+- \t'";
  char text[12];
  guint n = draw (sizeof text);

  for (guint i = 0; i < n; i++)
    text[i] = letters[draw (sizeof letters - 1)];
  text[n] = '\0';
  return (Typed) { g_strdup (text), SOUP, 0 };
}

static Typed
type_one (const Case *self)
{
  guint way = draw (100);

  if (way < 25)
    return type_as_written (self);
  if (way < 40)
    return type_shorthand (self);
  if (way < 52)
    return type_deviation (self);
  if (way < 58)
    return type_fraction (self);
  if (way < 75)
    return type_mistake (self);
  return way < 90 ? type_hostile (self) : type_soup ();
}

/* What digits with at most one mark say in @unit pm; -1 when that is no whole number of pm. */
static gint64
say_digits (const char *text, gint64 unit)
{
  __extension__ __int128 scaled = 0;
  __extension__ __int128 power = 1;
  gboolean after = FALSE;

  for (; *text != '\0'; text++)
    {
      if (*text == '.' || *text == ',')
        after = TRUE;
      else if (g_ascii_isdigit (*text))
        {
          scaled = scaled * 10 + (*text - '0');
          power = after ? power * 10 : power;
        }
    }
  return scaled * unit % power == 0 ? (gint64)(scaled * unit / power) : -1;
}

static gboolean
soup_says (const Case *self, const char *text, const TmEntry *entry)
{
  static const gint64 units[] = { 1000000000, 25400000000, 1000000, 25400000, 2540000 };
  gboolean in_primes = strstr (text, "''") != NULL; /* two primes are inches */
  const char *minus = strchr (text, '-');
  gint64 nominal = self->nominal * self->grid;
  gint64 small = self->inch ? units[4] : units[2];

  if (minus != NULL || strchr (text, '+') != NULL)
    return entry->value.count == nominal + say_digits (text, in_primes ? units[1] : small) * (minus ? -1 : 1);
  if (in_primes)
    return entry->value.count == say_digits (text, units[1]);
  if (entry->form == TM_ENTRY_FORM_PLAIN)
    return entry->value.count == say_digits (text, units[self->inch ? 1 : 0]);
  for (gsize i = 2; i < G_N_ELEMENTS (units); i++)
    {
      if (entry->value.count == say_digits (text, units[i]))
        return TRUE;
    }
  return FALSE;
}

/* TRUE when the reader did its duty by this string. */
static gboolean
is_right (const Case *self, const Typed *typed, const TmEntry *entry)
{
  gboolean taken = entry->status == TM_ENTRY_OK;

  switch (typed->duty)
    {
    case MUST:
      return taken && entry->value.given && entry->value.count == typed->count;
    case REFUSE:
      return !taken && *tm_entry_status_text (entry->status) != '\0';
    case NEVER_SILENT:
      return !taken || entry->value.count == typed->count
             || tm_entry_slip_check (entry, &self->feature, NULL, 0).slip != TM_SLIP_NONE;
    case SOUP:
      return !taken || soup_says (self, typed->text, entry);
    case N_DUTIES:
    default:
      return FALSE;
    }
}

static void
test_strings (void)
{
  guint n_taken[N_DUTIES] = { 0 };
  guint n_all[N_DUTIES] = { 0 };

  for (guint i = 0; i < N_STRINGS; i++)
    {
      Case one = choose_case ();
      Typed typed = type_one (&one);
      TmEntry entry = tm_entry_read (typed.text, &one.feature);

      n_all[typed.duty]++;
      n_taken[typed.duty] += entry.status == TM_ENTRY_OK;
      if (!is_right (&one, &typed, &entry))
        {
          g_autofree char *shown = g_strescape (typed.text, NULL);

          g_test_message ("string %u \"%.80s\" (kind %d, %s, near %" G_GINT64_FORMAT
                          "): duty %d, meant %" G_GINT64_FORMAT
                          ", status %d, form %d, took %" G_GINT64_FORMAT,
                          i, shown, one.feature.kind, one.inch ? "in" : "mm", one.lower, typed.duty,
                          typed.count, entry.status, entry.form, entry.value.count);
          g_test_fail ();
        }
      g_free (typed.text);
    }
  for (guint duty = 0; duty < N_DUTIES; duty++)
    g_test_message ("duty %u: %u strings, %u taken", duty, n_all[duty], n_taken[duty]);
  /* The mix itself: enough of each. */
  g_assert_cmpuint (n_all[MUST], >, 3000);
  g_assert_cmpuint (n_all[REFUSE], >, 1000);
  g_assert_cmpuint (n_all[NEVER_SILENT], >, 1000);
  g_assert_cmpuint (n_taken[NEVER_SILENT], >, 300);
  g_assert_cmpuint (n_taken[SOUP], >, 50);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/entry-strings/ten-thousand", test_strings);
  return g_test_run ();
}
