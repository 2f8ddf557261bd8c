/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Any bytes as a template file: a whole template or one line that says why not; and a template that was read
 * is written, read again, and written to the same bytes.
 */

#include "exchange-template.h"
#include "fuzz-driver.h"

#include <string.h>

#define START "{\"format\":\"tenthmark-template\",\"version\":1"

const char *const fuzz_seeds[] = {
  START "}",
  START ",\"template\":{\"name\":\"S\",\"address\":\"a\\nb\",\"accent\":\"#1a5f7a\",\"ground\":\"#dfe8c4\","
        "\"hidden\":[\"where\",\"class\",\"calibration "
        "due\"],\"logo\":{\"media\":\"image/png\",\"content\":\"eA==\"}}}",
  START ",\"fields\":[{\"name\":\"Heat\",\"required\":true},{\"name\":\"Packed\",\"required\":false}]}",
  START ",\"statements\":[{\"place\":\"after cover\",\"text\":\"a\"},{\"language\":\"de\",\"text\":\"b\"},"
        "{\"place\":\"before signatures\",\"language\":\"pt_BR\",\"text\":\"\\u00e9\\ud83d\\ude00\"}]}",
  "{\"statements\":[],\"version\":1,\"fields\":[],\"template\":{},\"format\":\"tenthmark-template\"}",
  NULL,
};

static void
check_error (const GError *error)
{
  g_assert_nonnull (error);
  g_assert_true (error->domain == TM_EXCHANGE_ERROR);
  g_assert_true (g_str_has_prefix (error->message, "f: "));
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  g_assert_null (strpbrk (error->message, "\n\r\t"));
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TmTemplate) template = tm_template_from_bytes ((const char *)data, size, "f", &error);
  g_autoptr (TmTemplate) again = NULL;
  g_autoptr (GString) first = NULL;

  if (template == NULL)
    {
      check_error (error);
      return 0;
    }
  g_assert_no_error (error);
  g_assert_cmpint (tm_template_check (template, NULL), ==, TM_TEMPLATE_OK);
  first = tm_template_to_string (template);
  again = tm_template_from_bytes (first->str, first->len, "f", &error);
  if (again == NULL)
    g_error ("%s\n%s", error->message, first->str);
  g_assert_true (tm_template_equal (template, again));
  return 0;
}
