/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Any bytes as a drawing: one line that says why not, or a page of a size that a page may have, which is
 * drawn.  The bytes are read as they are and, since pictures hold zeros, as hexadecimal digits.
 */

#include "fuzz-driver.h"
#include "plot-drawing-private.h"

#include <string.h>

/* More than a seed's few pixels would only be slow. */
#define MOST_PIXELS 100000u

/* A PNG and a JPEG of 3 by 2 pixels as the library of pictures writes them, the head of one that lies on its
 * side (TIFF 6.0, tag 274), an SVG and what begins like a PDF. */
const char *const fuzz_seeds[] = {
  "89504e470d0a1a0a0000000d49484452000000030000000208020000001216f14d0000000373424954080808dbe14fe0"
  "000000097048597300000f6100000f6101a83fa76900000015494441540899636c70506060606060606062800100105c"
  "00e48a2b08df0000000049454e44ae426082",
  "ffd8ffe000104a46494600010101006400640000ffdb0043001b12141714111b1716171e1c1b2028422b28252528513a"
  "3d3042605565645f555d5b6a7899816a7190735b5d85b586909ea3abadab6780bcc9baa6c799a8aba4ffdb0043011c1e"
  "1e2823284e2b2b4ea46e5d6ea4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4a4"
  "a4a4a4a4a4a4a4a4a4a4a4a4a4a4ffc00011080002000303012200021101031101ffc4001f0000010501010101010100"
  "000000000000000102030405060708090a0bffc400b5100002010303020403050504040000017d010203000411051221"
  "31410613516107227114328191a1082342b1c11552d1f02433627282090a161718191a25262728292a3435363738393a"
  "434445464748494a535455565758595a636465666768696a737475767778797a838485868788898a9293949596979899"
  "9aa2a3a4a5a6a7a8a9aab2b3b4b5b6b7b8b9bac2c3c4c5c6c7c8c9cad2d3d4d5d6d7d8d9dae1e2e3e4e5e6e7e8e9eaf1"
  "f2f3f4f5f6f7f8f9faffc4001f0100030101010101010101010000000000000102030405060708090a0bffc400b51100"
  "020102040403040705040400010277000102031104052131061241510761711322328108144291a1b1c109233352f015"
  "6272d10a162434e125f11718191a262728292a35363738393a434445464748494a535455565758595a63646566676869"
  "6a737475767778797a82838485868788898a92939495969798999aa2a3a4a5a6a7a8a9aab2b3b4b5b6b7b8b9bac2c3c4"
  "c5c6c7c8c9cad2d3d4d5d6d7d8d9dae2e3e4e5e6e7e8e9eaf2f3f4f5f6f7f8f9faffda000c03010002110311003f00a1"
  "45145739d47fffd9",
  "ffd8ffe100164578696600004d4d002a00000008000101120003000000010006ffc0000b080020001001011100ffd9",
  "<svg xmlns='http://www.w3.org/2000/svg' width='30mm' height='20mm' viewBox='0 0 30 20'><defs><g id='a'>"
  "<path d='M1 2L3 4H9V8Z' fill='url(#p)'/></g></defs><use href='#a' x='3'/><text y='9' "
  "font-size='3'>&#216;9</text>"
  "</svg>",
  "<?xml version='1.0'?><!DOCTYPE svg [<!ENTITY e 'x'>]><svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 "
  "9 9'>"
  "<text>&e;</text></svg>",
  "%PDF-1.4 nothing of it",
  NULL,
};

static void
check_refusal (const GError *error)
{
  g_assert_nonnull (error);
  g_assert_true (error->domain == TM_PLOT_ERROR);
  g_assert_null (strpbrk (error->message, "\n\r\t"));
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
}

static void
draw_page (TmDrawingPage *page)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 20, 20);
  cairo_t *cr = cairo_create (surface);
  const double width = tm_drawing_page_width (page), height = tm_drawing_page_height (page);

  g_assert_true (width >= 1.0 && height >= 1.0 && MAX (width, height) <= TM_DRAWING_MAX_POINTS);
  cairo_scale (cr, 20.0 / width, 20.0 / height);
  (void)tm_drawing_page_draw (page, cr);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* Heads are read of all; opened is what our own limits let through, and no PDF, of which its library tells
 * the world on standard error. */
static gboolean
is_opened (GBytes *content)
{
  TmPictureHead head = { 0 };

  switch (tm_drawing_media (content))
    {
    case TM_DRAWING_PNG:
      return tm_drawing_read_png_head (content, &head, NULL) && head.width * head.height <= MOST_PIXELS;
    case TM_DRAWING_JPEG:
      return tm_drawing_read_jpeg_head (content, &head, NULL) && head.width * head.height <= MOST_PIXELS;
    case TM_DRAWING_PDF:
      return FALSE;
    case TM_DRAWING_SVG:
    case TM_DRAWING_UNKNOWN:
    default:
      return TRUE;
    }
}

static void
read_bytes (GBytes *content)
{
  g_autoptr (TmDrawingPage) page = NULL;
  g_autoptr (GError) error = NULL, problem = NULL;

  if (tm_drawing_media (content) != TM_DRAWING_PDF && tm_drawing_look (content, NULL, &error) == NULL)
    check_refusal (error);
  if (!is_opened (content))
    return;
  page = tm_drawing_page_open (content, 1, &problem);
  if (page == NULL)
    check_refusal (problem);
  else
    draw_page (page);
}

static GBytes *
read_digits (const guint8 *data, gsize size)
{
  GByteArray *bytes = g_byte_array_new ();

  for (gsize i = 0; i + 1 < size; i += 2)
    {
      const guint8 byte = (guint8)(MAX (0, g_ascii_xdigit_value ((char)data[i])) << 4
                                   | MAX (0, g_ascii_xdigit_value ((char)data[i + 1])));

      g_byte_array_append (bytes, &byte, 1);
    }
  return g_byte_array_free_to_bytes (bytes);
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (GBytes) plain = g_bytes_new (data, size), digits = read_digits (data, size);

  read_bytes (plain);
  read_bytes (digits);
  return 0;
}
