/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-base64.h"

/* The decoder skips what is no base64, so what comes out must give the same text again. */
GBytes *
tm_base64_read (const char *text)
{
  gsize length = 0;
  guchar *bytes = g_base64_decode (text, &length);
  g_autofree char *again = g_base64_encode (bytes, length);

  if (length > 0 && g_str_equal (again, text))
    return g_bytes_new_take (bytes, length);
  g_free (bytes);
  return NULL;
}
