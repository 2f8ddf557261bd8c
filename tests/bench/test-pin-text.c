/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The text of a pin trial taken apart: what a hand types, in the forms that the trade writes.
 */

#include <glib.h>

#include "bench-pin-text.h"

#define NO_SIGN  -1
#define NOT_SAID -1

static const struct {
  const char *text;
  const char *size;
  const char *pin_class;
  int sign;
  int went;
} cases[] = {
  { "12.006+", "12.006", NULL, NO_SIGN, TRUE },
  { "12018-", "12018", NULL, NO_SIGN, FALSE },
  { " 12.018 \u2212\n", "12.018", NULL, NO_SIGN, FALSE },
  { "12.006 Z minus +", "12.006", "Z", TM_PIN_MINUS, TRUE },
  { "12.006 zz plus -", "12.006", "ZZ", TM_PIN_PLUS, FALSE },
  { "12.006-Z+ go", "12.006", "Z", TM_PIN_PLUS, TRUE },
  { "12.018-X- nogo", "12.018", "X", TM_PIN_MINUS, FALSE },
  { "12.018 X-no go", "12.018", "X", TM_PIN_MINUS, FALSE },
  { "12.006 class XX plus went", "12.006", "XX", TM_PIN_PLUS, TRUE },
  { ".4727 did not go", ".4727", NULL, NO_SIGN, FALSE },
  { ".4727g", ".4727", NULL, NO_SIGN, TRUE },
  { ".4727 in n", ".4727 in", NULL, NO_SIGN, FALSE },
  { "12.006 minus -", "12.006", NULL, TM_PIN_MINUS, FALSE },
  { "12.006 Y+", "12.006", "Y", NO_SIGN, TRUE },
  { "12.006x", "12.006", "X", NO_SIGN, NOT_SAID },
  { "12.006 X plus", "12.006", "X", TM_PIN_PLUS, NOT_SAID },
  /* A unit ends in a letter, too; a doubled key is no sign. */
  { ".4727 in", ".4727 in", NULL, NO_SIGN, NOT_SAID },
  { "12.006 mm", "12.006 mm", NULL, NO_SIGN, NOT_SAID },
  { "12.006++", "12.006+", NULL, NO_SIGN, TRUE },
  { "-12", "-12", NULL, NO_SIGN, NOT_SAID },
  { "+", "", NULL, NO_SIGN, TRUE },
  { "", "", NULL, NO_SIGN, NOT_SAID },
  { NULL, "", NULL, NO_SIGN, NOT_SAID },
  { "\xff\xfe+", "", NULL, NO_SIGN, TRUE },
  { "a text that is far too long to be the size of any pin that somebody pulls from a set +", "", NULL,
    NO_SIGN, NOT_SAID },
};

static void
test_forms (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmPinText pin;

      tm_pin_text_read (cases[i].text, &pin);
      if (cases[i].text == NULL || cases[i].text[0] != '\xff')
        g_assert_cmpstr (pin.size, ==, cases[i].size);
      g_assert_true (g_utf8_validate (pin.size, -1, NULL));
      g_assert_cmpstr (pin.pin_class, ==, cases[i].pin_class);
      g_assert_cmpint (pin.has_sign ? (int)pin.sign : NO_SIGN, ==, cases[i].sign);
      g_assert_cmpint (pin.has_outcome ? pin.went : NOT_SAID, ==, cases[i].went);
    }
}

static void
test_classes (void)
{
  g_assert_cmpuint (tm_pin_class_rank ("XXX"), ==, 0);
  g_assert_cmpuint (tm_pin_class_rank ("x"), <, tm_pin_class_rank ("Y"));
  g_assert_cmpuint (tm_pin_class_rank ("Z"), <, tm_pin_class_rank ("ZZ"));
  g_assert_cmpuint (tm_pin_class_rank ("ZZ"), <, tm_pin_class_rank (""));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/pin-text/forms", test_forms);
  g_test_add_func ("/bench/pin-text/classes", test_classes);
  return g_test_run ();
}
