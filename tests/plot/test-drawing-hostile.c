/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Drawings made to do harm: each is refused in one line, or shown, and takes little time and memory of this
 * process; what it takes of the child that tries it is bounded.  The files are made here.
 */

#include "plot-support.h"

#include <gio/gio.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include "plot-drawing-check.h"
#include "plot-drawing.h"

/* Of this process for one file, beside the file itself: opening and remembering. */
#define MOST_GROWTH_MIB 300
/* By the clock: the child's own limit of 6 s, on a loaded machine. */
#define MOST_SECONDS 120.0

static gboolean
is_sanitized (void)
{
#if defined(__SANITIZE_ADDRESS__)
  return TRUE;
#else
  return FALSE;
#endif
}

static long
get_peak_mib (int who)
{
  struct rusage usage;

  getrusage (who, &usage);
  return usage.ru_maxrss / 1024;
}

/* Opens it; what was refused says why in one line.  Tells how it went, for whoever reads the log. */
static gboolean
open_bounded (const char *what, GBytes *content, guint number, GError **error)
{
  g_autoptr (GTimer) timer = g_timer_new ();
  const long before = get_peak_mib (RUSAGE_SELF);
  g_autoptr (TmDrawingPage) page = NULL;
  g_autoptr (GError) problem = NULL;
  double seconds;

  page = tm_drawing_page_open (content, number, &problem);
  seconds = g_timer_elapsed (timer, NULL);
  g_test_message ("%s: %.2f s, %ld MiB more here, at most %ld MiB in a child: %s", what, seconds,
                  get_peak_mib (RUSAGE_SELF) - before, get_peak_mib (RUSAGE_CHILDREN),
                  page != NULL ? "shown" : problem->message);
  g_assert_true ((page == NULL) == (problem != NULL));
  g_assert_cmpfloat (seconds, <, MOST_SECONDS);
  if (!is_sanitized ())
    g_assert_cmpint (get_peak_mib (RUSAGE_SELF) - before, <, MOST_GROWTH_MIB);
  if (problem != NULL)
    {
      g_assert_null (strchr (problem->message, '\n'));
      g_assert_cmpuint (strlen (problem->message), <, 400);
      g_propagate_error (error, g_steal_pointer (&problem));
    }
  return page != NULL;
}

static void
check_refused (const char *what, GBytes *content, TmPlotError code)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (open_bounded (what, content, 1, &error));
  g_assert_error (error, TM_PLOT_ERROR, (gint)code);
}

/* Whether it is shown or refused is the library's affair; that it ends soon is ours. */
static void
check_bounded (const char *what, GBytes *content)
{
  g_autoptr (GError) error = NULL;

  (void)open_bounded (what, content, 1, &error);
}

static GBytes *
take_text (GString *text)
{
  return g_string_free_to_bytes (text);
}

static GBytes *
make_text (const char *text)
{
  return g_bytes_new (text, strlen (text));
}

/* -------- SVG -------- */

#define SVG                                                                                         \
  "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' width='400' " \
  "height='300'>"

static void
test_entities (void)
{
  GString *svg = g_string_new ("<!DOCTYPE svg [<!ENTITY a0 'lollollollollollollollollollol'>");
  g_autoptr (GBytes) content = NULL;

  for (guint i = 1; i < 12; i++)
    {
      g_string_append_printf (svg, "<!ENTITY a%u '", i);
      for (guint k = 0; k < 10; k++)
        g_string_append_printf (svg, "&a%u;", i - 1);
      g_string_append (svg, "'>");
    }
  g_string_append (svg, "]>" SVG "<text y='20'>&a11;</text></svg>");
  content = take_text (svg);
  check_bounded ("entity bomb", content);
}

/* Were it opened, reading from the pipe would wait for ever. */
static void
test_outside (void)
{
  g_autofree char *folder = g_dir_make_tmp ("drawing-XXXXXX", NULL);
  g_autofree char *pipe = g_build_filename (folder, "pipe", NULL);
  g_autofree char *text = NULL, *entity = NULL;
  g_autoptr (GBytes) content = NULL, outside = NULL;
  g_autoptr (GTimer) timer = g_timer_new ();

  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  text = g_strdup_printf (
      SVG "<style>@import url('file://%s');</style>"
          "<image xlink:href='file://%s' width='9' height='9'/>"
          "<use xlink:href='file://%s#a'/><rect width='9' height='9' fill=\"url('file://%s#b')\"/>"
          "<image xlink:href='http://127.0.0.1:9/a.png' width='9' height='9'/></svg>",
      pipe, pipe, pipe, pipe);
  content = make_text (text);
  check_bounded ("outside references", content);
  entity = g_strdup_printf (
      "<!DOCTYPE svg [<!ENTITY x SYSTEM 'file://%s'>]>" SVG "<text y='20'>&x;</text></svg>", pipe);
  outside = make_text (entity);
  check_bounded ("entity of another file", outside);
  g_assert_cmpfloat (g_timer_elapsed (timer, NULL), <, 30.0);
  unlink (pipe);
  rmdir (folder);
}

static void
test_deep (void)
{
  GString *svg = g_string_new (SVG);
  g_autoptr (GBytes) content = NULL;

  for (guint i = 0; i < 10000; i++)
    g_string_append (svg, "<g>");
  g_string_append (svg, "<path d='M0 0L9 9'/>");
  for (guint i = 0; i < 10000; i++)
    g_string_append (svg, "</g>");
  g_string_append (svg, "</svg>");
  content = take_text (svg);
  check_refused ("10,000 deep", content, TM_PLOT_ERROR_DAMAGED);
}

static void
test_uses (void)
{
  GString *svg = g_string_new (SVG "<defs><g id='a0'><rect width='9' height='9'/></g>");
  g_autoptr (GBytes) content = NULL;

  for (guint i = 1; i < 14; i++)
    {
      g_string_append_printf (svg, "<g id='a%u'>", i);
      for (guint k = 0; k < 10; k++)
        g_string_append_printf (svg, "<use xlink:href='#a%u'/>", i - 1);
      g_string_append (svg, "</g>");
    }
  g_string_append (svg, "</defs><use xlink:href='#a13'/></svg>");
  content = take_text (svg);
  check_refused ("uses of uses", content, TM_PLOT_ERROR_TOO_MUCH);
}

static void
test_filters (void)
{
  GString *svg = g_string_new (SVG "<defs>");
  g_autoptr (GBytes) content = NULL;

  for (guint i = 0; i < 200; i++)
    g_string_append_printf (
        svg,
        "<filter id='f%u' x='-900%%' y='-900%%' width='2000%%' height='2000%%' "
        "filterUnits='objectBoundingBox'>"
        "<feTurbulence baseFrequency='0.9' numOctaves='20'/><feMorphology operator='dilate' radius='500'/>"
        "<feGaussianBlur stdDeviation='4000'/></filter>",
        i);
  g_string_append (svg, "</defs>");
  for (guint i = 0; i < 200; i++)
    g_string_append_printf (svg, "<rect width='400' height='300' filter='url(#f%u)'/>", i);
  g_string_append (svg, "</svg>");
  content = take_text (svg);
  check_refused ("huge filters", content, TM_PLOT_ERROR_TOO_MUCH);
}

static void
test_wide_svg (void)
{
  g_autoptr (GBytes) content = make_text (
      "<svg xmlns='http://www.w3.org/2000/svg' width='1e9' height='1e9'><rect width='9' height='9'/></svg>");
  g_autoptr (GBytes) bare = make_text ("<svg xmlns='http://www.w3.org/2000/svg'></svg>");

  check_refused ("SVG of 1e9 pixels", content, TM_PLOT_ERROR_TOO_LARGE);
  check_bounded ("SVG without size", bare);
}

/* -------- PNG -------- */

static void
append_be32 (GByteArray *out, guint32 value)
{
  const guint32 big = GUINT32_TO_BE (value);

  g_byte_array_append (out, (const guint8 *)&big, 4);
}

/* The sum of a PNG's chunk: ISO/IEC 15948, annex D. */
static guint32
sum_chunk (const guint8 *data, gsize length)
{
  guint32 sum = 0xffffffffu;

  for (gsize i = 0; i < length; i++)
    {
      sum ^= data[i];
      for (guint k = 0; k < 8; k++)
        sum = (sum & 1) != 0 ? 0xedb88320u ^ (sum >> 1) : sum >> 1;
    }
  return sum ^ 0xffffffffu;
}

static void
append_chunk (GByteArray *out, const char *name, const void *data, gsize length)
{
  const guint from = out->len + 4;

  append_be32 (out, (guint32)length);
  g_byte_array_append (out, (const guint8 *)name, 4);
  if (length > 0)
    g_byte_array_append (out, data, (guint)length);
  append_be32 (out, sum_chunk (out->data + from, out->len - from));
}

static GBytes *
compress_nothing (gsize length)
{
  g_autoptr (GConverter) zip = G_CONVERTER (g_zlib_compressor_new (G_ZLIB_COMPRESSOR_FORMAT_ZLIB, 9));
  g_autoptr (GOutputStream) memory = g_memory_output_stream_new_resizable ();
  g_autoptr (GOutputStream) stream = g_converter_output_stream_new (memory, zip);
  g_autofree guint8 *zeros = g_malloc0 (65536);

  for (gsize done = 0; done < length; done += 65536)
    g_assert_true (g_output_stream_write_all (stream, zeros, MIN (65536, length - done), NULL, NULL, NULL));
  g_assert_true (g_output_stream_close (stream, NULL, NULL));
  return g_memory_output_stream_steal_as_bytes (G_MEMORY_OUTPUT_STREAM (memory));
}

/* One bit a pixel, all black: a square of 30,000 takes 110 kB. */
static GBytes *
make_png (guint32 width, guint32 height, GBytes *packed)
{
  GByteArray *png = g_byte_array_new ();
  guint8 head[13] = { 0 };
  const guint32 wide = GUINT32_TO_BE (width), high = GUINT32_TO_BE (height);

  memcpy (head, &wide, 4);
  memcpy (head + 4, &high, 4);
  head[8] = 1;
  g_byte_array_append (png, (const guint8 *)"\x89PNG\r\n\x1a\n", 8);
  append_chunk (png, "IHDR", head, 13);
  if (packed != NULL)
    append_chunk (png, "IDAT", g_bytes_get_data (packed, NULL), g_bytes_get_size (packed));
  append_chunk (png, "IEND", NULL, 0);
  return g_byte_array_free_to_bytes (png);
}

static GBytes *
cut_off (GBytes *content, gsize length)
{
  return g_bytes_new (g_bytes_get_data (content, NULL), MIN (length, g_bytes_get_size (content)));
}

static void
test_png (void)
{
  g_autoptr (GBytes) packed = compress_nothing (30000 * (30000 / 8 + 1));
  g_autoptr (GBytes) claims = make_png (32768, 32768, NULL), most = make_png (0xffffffff, 0xffffffff, NULL);
  g_autoptr (GBytes) real = make_png (30000, 30000, packed), none = make_png (0, 5, NULL);
  g_autoptr (GBytes) empty = make_png (9, 9, NULL), long_one = make_png (30000, 100, packed);
  g_autoptr (GBytes) cut = cut_off (long_one, 60), head = cut_off (claims, 20);

  check_refused ("PNG head of 1 G pixels", claims, TM_PLOT_ERROR_TOO_LARGE);
  check_refused ("PNG head of 2^64 pixels", most, TM_PLOT_ERROR_TOO_LARGE);
  check_refused ("PNG of 900 M pixels", real, TM_PLOT_ERROR_TOO_LARGE);
  check_refused ("PNG of no pixels", none, TM_PLOT_ERROR_DAMAGED);
  check_refused ("PNG without data", empty, TM_PLOT_ERROR_DAMAGED);
  check_refused ("PNG cut off", cut, TM_PLOT_ERROR_DAMAGED);
  check_refused ("PNG cut off in its head", head, TM_PLOT_ERROR_DAMAGED);
  check_bounded ("PNG with more data than pixels", long_one);
}

/* Pictures inside an SVG go through the same libraries, without our look at the head. */
static void
test_png_in_svg (void)
{
  g_autoptr (GBytes) packed = compress_nothing (30000 * (30000 / 8 + 1));
  g_autoptr (GBytes) png = make_png (30000, 30000, packed);
  g_autofree char *base = g_base64_encode (g_bytes_get_data (png, NULL), g_bytes_get_size (png));
  g_autofree char *text = g_strconcat (SVG "<image width='9' height='9' xlink:href='data:image/png;base64,",
                                       base, "'/></svg>", NULL);
  g_autoptr (GBytes) content = make_text (text);

  check_refused ("PNG of 900 M pixels in an SVG", content, TM_PLOT_ERROR_TOO_MUCH);
}

/* -------- JPEG -------- */

static void
append_bytes (GByteArray *out, const char *bytes, gsize length)
{
  g_byte_array_append (out, (const guint8 *)bytes, (guint)length);
}

#define APPEND(out, literal) append_bytes ((out), (literal), sizeof (literal) - 1)

/* Progressive, one component: a table of units, one code of each kind, and so many scans of one band each. */
static GBytes *
make_jpeg (guint side, guint scans)
{
  GByteArray *jpeg = g_byte_array_new ();
  const guint8 size[] = { (guint8)(side >> 8), (guint8)side, (guint8)(side >> 8), (guint8)side };

  APPEND (jpeg, "\xff\xd8\xff\xdb\x00\x43\x00");
  for (guint i = 0; i < 64; i++)
    APPEND (jpeg, "\x01");
  APPEND (jpeg, "\xff\xc2\x00\x0b\x08");
  g_byte_array_append (jpeg, size, 4);
  APPEND (jpeg, "\x01\x01\x11\x00");
  APPEND (jpeg, "\xff\xc4\x00\x14\x00\x01\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00");
  APPEND (jpeg, "\xff\xc4\x00\x14\x10\x01\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\xe0");
  APPEND (jpeg, "\xff\xda\x00\x08\x01\x01\x00\x00\x00\x00\x00");
  for (guint i = 0; i < scans; i++)
    APPEND (jpeg, "\xff\xda\x00\x08\x01\x01\x00\x01\x3f\x00\x00");
  APPEND (jpeg, "\xff\xd9");
  return g_byte_array_free_to_bytes (jpeg);
}

static void
test_jpeg (void)
{
  g_autoptr (GBytes) claims = make_jpeg (32768, 0), small = make_jpeg (64, 1);
  g_autoptr (GBytes) scans = make_jpeg (8900, 200000);
  g_autoptr (GBytes) cut = cut_off (small, 80), head = cut_off (small, 4);

  check_refused ("JPEG head of 1 G pixels", claims, TM_PLOT_ERROR_TOO_LARGE);
  check_bounded ("JPEG without data", small);
  check_refused ("JPEG cut off before its frame", cut, TM_PLOT_ERROR_DAMAGED);
  check_refused ("JPEG cut off in its head", head, TM_PLOT_ERROR_DAMAGED);
  check_refused ("JPEG of 200,000 scans", scans, TM_PLOT_ERROR_TOO_MUCH);
}

/* -------- PDF -------- */

typedef struct {
  GString *text;
  GArray *places; /* gsize */
} Pdf;

static Pdf
begin_pdf (void)
{
  return (Pdf) { g_string_new ("%PDF-1.5\n"), g_array_new (FALSE, FALSE, sizeof (gsize)) };
}

/* Objects are numbered from 1 in the order that they are added. */
static void
add_object (Pdf *pdf, const char *body)
{
  g_array_append_val (pdf->places, pdf->text->len);
  g_string_append_printf (pdf->text, "%u 0 obj\n%s\nendobj\n", pdf->places->len, body);
}

static void
add_stream (Pdf *pdf, const char *head, const char *data, gsize length)
{
  g_array_append_val (pdf->places, pdf->text->len);
  g_string_append_printf (pdf->text, "%u 0 obj\n<< %s /Length %" G_GSIZE_FORMAT " >>\nstream\n",
                          pdf->places->len, head, length);
  g_string_append_len (pdf->text, data, (gssize)length);
  g_string_append (pdf->text, "\nendstream\nendobj\n");
}

static GBytes *
end_pdf (Pdf *pdf, const char *trailer)
{
  const gsize start = pdf->text->len;

  g_string_append_printf (pdf->text, "xref\n0 %u\n0000000000 65535 f \n", pdf->places->len + 1);
  for (guint i = 0; i < pdf->places->len; i++)
    g_string_append_printf (pdf->text, "%010u 00000 n \n", (guint)g_array_index (pdf->places, gsize, i));
  g_string_append_printf (pdf->text, "trailer\n<< /Size %u /Root 1 0 R %s >>\nstartxref\n%u\n%%%%EOF\n",
                          pdf->places->len + 1, trailer, (guint)start);
  g_array_unref (pdf->places);
  return take_text (pdf->text);
}

/* Catalogue, one node of pages with @kids, and objects that follow from number 3. */
static Pdf
begin_pages (const char *kids, guint count)
{
  Pdf pdf = begin_pdf ();
  g_autofree char *pages = g_strdup_printf ("<< /Type /Pages /Kids [%s] /Count %u >>", kids, count);

  add_object (&pdf, "<< /Type /Catalog /Pages 2 0 R >>");
  add_object (&pdf, pages);
  return pdf;
}

static GBytes *
make_pdf (const char *page, const char *content, const char *trailer)
{
  Pdf pdf = begin_pages ("3 0 R", 1);

  add_object (&pdf, page);
  add_stream (&pdf, "", content, strlen (content));
  return end_pdf (&pdf, trailer);
}

#define PAGE "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 400 300] /Contents 4 0 R "

static void
test_pdf_pages (void)
{
  Pdf none = begin_pages ("", 0), circle = begin_pages ("2 0 R", 1), liar = begin_pages ("", 2000000000);
  g_autoptr (GBytes) no_pages = end_pdf (&none, ""), round = end_pdf (&circle, ""),
                     many = end_pdf (&liar, "");
  g_autoptr (GBytes) wide
      = make_pdf ("<< /Type /Page /Parent 2 0 R /MediaBox [0 0 1000000000 1000000000] >>", "", "");
  g_autoptr (GBytes) odd = make_pdf ("<< /Type /Page /Parent 2 0 R /MediaBox [9 9 9 9] >>", "", "");
  g_autoptr (GBytes) good = make_pdf (PAGE ">>", "0 0 100 100 re f", "");
  g_autoptr (GBytes) cut = cut_off (good, 120);

  g_assert_true (open_bounded ("a good PDF", good, 1, NULL));
  check_refused ("PDF without pages", no_pages, TM_PLOT_ERROR_NO_PAGE);
  check_bounded ("PDF whose pages are their own child", round);
  check_bounded ("PDF that claims 2 G pages", many);
  check_refused ("PDF page of 1e9 points", wide, TM_PLOT_ERROR_TOO_LARGE);
  check_bounded ("PDF page of no size", odd);
  check_bounded ("PDF cut off", cut);
}

/* One page under so many nodes, each the only child of the one above. */
static GBytes *
make_tree (guint depth)
{
  Pdf pdf = begin_pdf ();

  add_object (&pdf, "<< /Type /Catalog /Pages 2 0 R >>");
  for (guint i = 2; i < depth + 2; i++)
    {
      g_autofree char *node = g_strdup_printf ("<< /Type /Pages /Kids [%u 0 R] /Count 1 >>", i + 1);

      add_object (&pdf, node);
    }
  add_object (&pdf, "<< /Type /Page /MediaBox [0 0 400 300] >>");
  return end_pdf (&pdf, "");
}

/* The way down takes the square of the depth: 1.7 s of a processor here for 100,000, which a faster one may
 * do within the second, and 15 s for 300,000, which none does.  The trees of real drawings are a few deep. */
static void
test_pdf_tree (void)
{
  g_autoptr (GBytes) usual = make_tree (50), deep = make_tree (100000), deeper = make_tree (300000);

  g_assert_true (open_bounded ("PDF with pages 50 deep", usual, 1, NULL));
  check_bounded ("PDF with pages 100,000 deep", deep);
  check_refused ("PDF with pages 300,000 deep", deeper, TM_PLOT_ERROR_TOO_MUCH);
}

static void
test_pdf_locked (void)
{
  g_autoptr (GBytes) content
      = make_pdf (PAGE ">>", "",
                  "/ID [<00112233445566778899aabbccddeeff> <00112233445566778899aabbccddeeff>] "
                  "/Encrypt << /Filter /Standard /V 1 /R 2 /P -44 "
                  "/O <5566778899aabbccddeeff00112233445566778899aabbccddeeff0011223344> "
                  "/U <99aabbccddeeff00112233445566778899aabbccddeeff001122334455667788> >>");

  check_refused ("PDF with a password", content, TM_PLOT_ERROR_LOCKED);
}

/* Each form draws the next ten times. */
static void
test_pdf_forms (void)
{
  Pdf pdf = begin_pages ("3 0 R", 1);
  g_autoptr (GBytes) content = NULL;

  add_object (&pdf, PAGE "/Resources << /XObject << /F 5 0 R >> >> >>");
  add_stream (&pdf, "", "/F Do", 5);
  for (guint i = 5; i < 18; i++)
    {
      g_autofree char *head = g_strdup_printf (
          "/Type /XObject /Subtype /Form /BBox [0 0 400 300] /Resources << /XObject << /F %u 0 R >> >>",
          i + 1);

      add_stream (&pdf, head, "/F Do /F Do /F Do /F Do /F Do /F Do /F Do /F Do /F Do /F Do", 59);
    }
  add_stream (&pdf, "/Type /XObject /Subtype /Form /BBox [0 0 400 300]", "0 0 9 9 re f", 12);
  content = end_pdf (&pdf, "");
  check_refused ("PDF of forms in forms", content, TM_PLOT_ERROR_TOO_MUCH);
}

static void
test_pdf_picture (void)
{
  Pdf pdf = begin_pages ("3 0 R", 1);
  g_autoptr (GBytes) packed = compress_nothing (32u * 1024u * 1024u), content = NULL;

  add_object (&pdf, PAGE "/Resources << /XObject << /F 5 0 R >> >> >>");
  add_stream (&pdf, "", "400 0 0 300 0 0 cm /F Do", 24);
  add_stream (&pdf,
              "/Type /XObject /Subtype /Image /Width 60000 /Height 60000 /ColorSpace /DeviceRGB "
              "/BitsPerComponent 8 /Filter /FlateDecode",
              g_bytes_get_data (packed, NULL), g_bytes_get_size (packed));
  content = end_pdf (&pdf, "");
  check_refused ("PDF with a picture of 3.6 G pixels", content, TM_PLOT_ERROR_TOO_MUCH);
}

/* -------- What is none of them -------- */

static void
test_others (void)
{
  static const guint8 zip[] = { 'P', 'K', 3, 4, 20, 0, 0, 0, 8, 0 };
  g_autoptr (GBytes) nothing = g_bytes_new (NULL, 0), packed = g_bytes_new (zip, sizeof zip);
  g_autoptr (GBytes) large
      = g_bytes_new_take (g_malloc0 (TM_DRAWING_MAX_BYTES + 1), TM_DRAWING_MAX_BYTES + 1);
  g_autoptr (GBytes) page = make_text ("<html><body>a drawing</body></html>");

  check_refused ("nothing", nothing, TM_PLOT_ERROR_UNKNOWN_MEDIA);
  check_refused ("a zip", packed, TM_PLOT_ERROR_UNKNOWN_MEDIA);
  check_refused ("a web page", page, TM_PLOT_ERROR_UNKNOWN_MEDIA);
  check_refused ("more than 64 MiB", large, TM_PLOT_ERROR_TOO_LARGE);
}

/* -------- The check itself -------- */

static void
test_cannot_start (void)
{
  g_autoptr (GBytes) svg = make_text (SVG "<rect width='7' height='7'/></svg>");
  const char *program = g_getenv ("TM_CLI");

  tm_drawing_check_with ("/nowhere/at/all");
  check_refused ("no program to check with", svg, TM_PLOT_ERROR_NOT_CHECKED);
  tm_drawing_check_with ("/bin/true"); /* any program that ends well */
  g_assert_true (open_bounded ("a good SVG", svg, 1, NULL));
  tm_drawing_check_with ("/nowhere/at/all");
  g_assert_true (open_bounded ("the same, which is remembered", svg, 1, NULL));
  tm_drawing_check_with (program);
}

/* A program in the place of the child, which ends with @status. */
static void
check_end (const char *program, int status, TmPlotError code, const char *words)
{
  g_autofree char *script = g_strdup_printf ("#!/bin/sh\nexit %d\n", status);
  g_autofree char *text = g_strdup_printf (SVG "<rect width='7' height='%d'/></svg>", 20 + status);
  g_autoptr (GBytes) svg = make_text (text);
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents_full (program, script, -1, G_FILE_SET_CONTENTS_CONSISTENT, 0700, NULL));
  g_assert_false (open_bounded ("a child that gives up", svg, 1, &error));
  g_assert_error (error, TM_PLOT_ERROR, (gint)code);
  g_assert_nonnull (strstr (error->message, words));
  /* Only what says nothing of the drawing is asked again. */
  tm_drawing_check_with ("/bin/true");
  g_assert_true (open_bounded ("the same again", svg, 1, NULL) == (code == TM_PLOT_ERROR_NOT_CHECKED));
  tm_drawing_check_with (program);
}

/* Each limit has its own words: 60 s by the clock are no fault of the drawing. */
static void
test_ends (void)
{
  g_autofree char *folder = g_dir_make_tmp ("drawing-XXXXXX", NULL);
  g_autofree char *program = g_build_filename (folder, "ends", NULL);

  tm_drawing_check_with (program);
  check_end (program, 3, TM_PLOT_ERROR_TOO_MUCH, "MiB of memory");
  check_end (program, 4, TM_PLOT_ERROR_NOT_CHECKED, "within 60 seconds");
  check_end (program, 5, TM_PLOT_ERROR_TOO_MUCH, "finding its page takes more than 1 second;");
  tm_drawing_check_with (g_getenv ("TM_CLI"));
  unlink (program);
  rmdir (folder);
}

/* What failed is not tried again. */
static void
test_remembered (void)
{
  g_autoptr (GBytes) svg = make_text (SVG "<rect width='8' height='8'</svg>");

  check_refused ("a broken SVG", svg, TM_PLOT_ERROR_DAMAGED);
  tm_drawing_check_with ("/nowhere/at/all");
  check_refused ("the same again", svg, TM_PLOT_ERROR_DAMAGED);
  tm_drawing_check_with (g_getenv ("TM_CLI"));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_assert_nonnull (g_getenv ("TM_CLI"));
  tm_drawing_check_with (g_getenv ("TM_CLI"));
  g_test_add_func ("/drawing-hostile/cannot-start", test_cannot_start);
  g_test_add_func ("/drawing-hostile/ends", test_ends);
  g_test_add_func ("/drawing-hostile/remembered", test_remembered);
  g_test_add_func ("/drawing-hostile/others", test_others);
  g_test_add_func ("/drawing-hostile/svg/entities", test_entities);
  g_test_add_func ("/drawing-hostile/svg/outside", test_outside);
  g_test_add_func ("/drawing-hostile/svg/deep", test_deep);
  g_test_add_func ("/drawing-hostile/svg/uses", test_uses);
  g_test_add_func ("/drawing-hostile/svg/filters", test_filters);
  g_test_add_func ("/drawing-hostile/svg/wide", test_wide_svg);
  g_test_add_func ("/drawing-hostile/svg/png", test_png_in_svg);
  g_test_add_func ("/drawing-hostile/png", test_png);
  g_test_add_func ("/drawing-hostile/jpeg", test_jpeg);
  g_test_add_func ("/drawing-hostile/pdf/pages", test_pdf_pages);
  g_test_add_func ("/drawing-hostile/pdf/tree", test_pdf_tree);
  g_test_add_func ("/drawing-hostile/pdf/locked", test_pdf_locked);
  g_test_add_func ("/drawing-hostile/pdf/forms", test_pdf_forms);
  g_test_add_func ("/drawing-hostile/pdf/picture", test_pdf_picture);
  return g_test_run ();
}
