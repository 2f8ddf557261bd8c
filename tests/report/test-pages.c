/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pages and their PDF: what is added to a document stands on them, whole, in order and inside the margins.
 */

#include "report-glyphs.h"
#include "report-pages.h"

#include <sys/resource.h>

#include "pages-support.h"
#include "pdf-support.h"

#define MADE "2026-05-04T09:12:33Z"

typedef struct {
  char *folder;
  char *path;
} Place;

static void
make_place (Place *place)
{
  place->folder = g_dir_make_tmp ("tenthmark-pages-XXXXXX", NULL);
  g_assert_nonnull (place->folder);
  place->path = g_build_filename (place->folder, "pages.pdf", NULL);
}

static guint
count_files (const Place *place)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
clear_place (Place *place)
{
  (void)g_unlink (place->path);
  g_assert_cmpint (g_rmdir (place->folder), ==, 0);
  g_free (place->folder);
  g_free (place->path);
}

static guint
write_pages (const TmReportDocument *document, const TmReportForm *form, const char *path)
{
  const TmPdfFacts facts = { .author = "Invented works", .subject = "Sleeve", .made = MADE };
  g_autoptr (TmPages) pages = tm_pages_new (document, form);
  g_autoptr (GError) error = NULL;

  g_assert_true (tm_pages_write_pdf (pages, &facts, path, NULL, NULL, &error));
  g_assert_no_error (error);
  return tm_pages_count (pages);
}

/* -------- The document -------- */

static void
test_document (void)
{
  g_autoptr (TmReportDocument) document = make_table (2);
  const TmReportSection *section = g_ptr_array_index (document->sections, 0);
  const TmReportBlock *table = g_ptr_array_index (section->blocks, 0);

  g_assert_cmpuint (tm_report_block_rows (table), ==, 2);
  g_assert_cmpstr (tm_report_block_cell (table, 1, 0)->text, ==, "n2");
  g_assert_cmpint (tm_report_block_cell (table, 1, 2)->role, ==, TM_CELL_NUMBER);
  g_assert_null (tm_report_block_cell (table, 2, 0));
  g_assert_null (tm_report_block_cell (table, 0, 3));
  /* Equal texts are kept once; no text is the empty one; what is not valid is mended. */
  g_assert_true (tm_report_block_cell (table, 0, 1)->text == tm_report_block_cell (table, 1, 1)->text);
  g_assert_cmpstr (tm_report_text (document, NULL), ==, "");
  g_assert_true (g_utf8_validate (tm_report_text (document, "a\xff"
                                                            "b"),
                                  -1, NULL));
  tm_report_add_paragraph (document, "", FALSE);
  g_assert_cmpuint (section->blocks->len, ==, 1);
}

static guint freed;

static void
count_free (gpointer data)
{
  freed++;
}

static void
draw_box (cairo_t *cr, double width, double height, gpointer data)
{
  guint *drawn = data;

  cairo_rectangle (cr, 1, 1, width - 2, height - 2);
  cairo_stroke (cr);
  (*drawn)++;
}

static void
add_picture (TmReportDocument *document, double width, double aspect, guint *drawn, const char *caption)
{
  const TmReportPicture picture
      = { .draw = draw_box, .data = drawn, .free = count_free, .width = width, .aspect = aspect };

  tm_report_add_picture (document, &picture, caption, caption);
}

/* Two across on A4 portrait, 511 points wide; each is drawn once a page is, and freed with the document. */
static void
test_pictures (void)
{
  TmReportDocument *document = tm_report_document_new ("Report");
  const TmReportForm form = { .paper = TM_PAPER_A4 };
  guint drawn = 0;
  TmPages *pages;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 600, 850);
  cairo_t *cr = cairo_create (surface);

  freed = 0;
  tm_report_add_section (document, "Pictures", "pictures", FALSE);
  for (guint i = 0; i < 9; i++)
    {
      g_autofree char *name = g_strdup_printf ("picture %u", i);
      add_picture (document, 250, 0.8, &drawn, name);
    }
  pages = tm_pages_new (document, &form);
  /* Three rows of 213 points with captions fit under the title of a page of 706. */
  g_assert_cmpuint (tm_pages_count (pages), ==, 2);
  g_assert_cmpint (tm_pages_find (pages, "picture 0"), ==, 0);
  g_assert_cmpint (tm_pages_find (pages, "picture 8"), ==, 1);
  g_assert_cmpint (tm_pages_find (pages, "nothing"), ==, -1);
  tm_pages_draw (pages, 0, cr);
  tm_pages_draw (pages, 1, cr);
  g_assert_cmpuint (drawn, ==, 9);
  tm_pages_free (pages);
  tm_report_document_free (document);
  g_assert_cmpuint (freed, ==, 9);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
fill_red (cairo_t *cr, double width, double height, gpointer data)
{
  cairo_set_source_rgb (cr, 1, 0, 0);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_fill (cr);
  *(double *)data = width;
}

/* Where red begins and ends on a page as @draw draws it: from left, top to right, bottom. */
static void
find_red (TmPages *pages, guint page, void (*draw) (TmPages *, guint, cairo_t *), guint *left, guint *top,
          guint *right, guint *bottom)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 900, 900);
  cairo_t *cr = cairo_create (surface);
  const guint32 *pixels;

  draw (pages, page, cr);
  cairo_surface_flush (surface);
  pixels = (const guint32 *)(gconstpointer)cairo_image_surface_get_data (surface);
  *left = *top = 900;
  *right = *bottom = 0;
  for (guint y = 0; y < 900; y++)
    for (guint x = 0; x < 900; x++)
      if ((pixels[y * 900 + x] & 0xffffff) == 0xff0000)
        {
          *left = MIN (*left, x);
          *right = MAX (*right, x);
          *top = MIN (*top, y);
          *bottom = MAX (*bottom, y);
        }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* A wide picture has an upright report's page for itself, on its side, and the next page stands again. */
static void
test_filling_picture (void)
{
  g_autoptr (TmReportDocument) document = tm_report_document_new ("Report");
  const TmReportForm form = { .paper = TM_PAPER_A4 };
  double drawn = 0, width, height;
  const TmReportPicture picture = { .draw = fill_red, .data = &drawn, .aspect = 0.5, .fills_page = TRUE };
  const TmReportPicture upright = { .draw = fill_red, .data = &drawn, .aspect = 1.4, .fills_page = TRUE };
  g_autoptr (TmPages) pages = NULL;
  guint left, top, right, bottom;

  tm_report_add_section (document, "First", "first", FALSE);
  tm_report_add_paragraph (document, "Before.", FALSE);
  tm_report_add_section (document, "Drawing", "drawing", TRUE);
  tm_report_add_paragraph (document, "Above.", FALSE);
  tm_report_add_picture (document, &picture, "wide", "wide");
  tm_report_add_picture (document, &upright, "high", "high");
  tm_report_add_section (document, "Last", "last", FALSE);
  tm_report_add_paragraph (document, "After.", FALSE);
  pages = tm_pages_new (document, &form);
  g_assert_cmpuint (tm_pages_count (pages), ==, 4);
  g_assert_cmpint (tm_pages_find (pages, "drawing"), ==, 1);
  g_assert_cmpint (tm_pages_find (pages, "wide"), ==, 1);
  g_assert_cmpint (tm_pages_find (pages, "high"), ==, 2);
  g_assert_cmpint (tm_pages_find (pages, "last"), ==, 3);
  tm_pages_upright_size (pages, 1, &width, &height);
  g_assert_cmpfloat_with_epsilon (width, 841.89, 0.01);
  g_assert_cmpfloat_with_epsilon (height, 595.28, 0.01);
  tm_pages_upright_size (pages, 3, &width, &height);
  g_assert_cmpfloat_with_epsilon (width, 595.28, 0.01);
  /* Half as high as wide, on 842 by 595 points less margins of 42. */
  find_red (pages, 1, tm_pages_draw_upright, &left, &top, &right, &bottom);
  g_assert_cmpuint (right - left, >, 700);
  g_assert_cmpuint (bottom, <, 595 - 42);
  /* The same on paper that stands: turned by a quarter, its top to the left. */
  find_red (pages, 1, tm_pages_draw, &left, &top, &right, &bottom);
  g_assert_cmpuint (bottom - top, >, 700);
  g_assert_cmpuint (right, <, 595 - 42);
  g_assert_cmpuint (left, <, 595 - right);
  find_red (pages, 2, tm_pages_draw, &left, &top, &right, &bottom);
  g_assert_cmpuint (bottom - top, >, right - left);
  /* In the middle of its own page, whichever way the page before lies. */
  g_assert_cmpuint (left + right, >=, 595 - 2);
  g_assert_cmpuint (left + right, <=, 595 + 2);
  find_red (pages, 3, tm_pages_draw, &left, &top, &right, &bottom);
  g_assert_cmpuint (right, ==, 0);
}

/* Under many words a picture is not pressed into what they leave: it has a page, on its side as well. */
static void
test_filling_picture_crowded (void)
{
  g_autoptr (TmReportDocument) document = tm_report_document_new ("Report");
  double drawn = 0;
  const TmReportPicture picture = { .draw = fill_red, .data = &drawn, .aspect = 0.5, .fills_page = TRUE };
  g_autoptr (TmPages) pages = NULL;
  guint left, top, right, bottom;
  gint page;

  tm_report_add_section (document, "Drawing", "drawing", TRUE);
  for (guint i = 0; i < 40; i++)
    tm_report_add_paragraph (document, "A drawing that is kept elsewhere.", FALSE);
  tm_report_add_picture (document, &picture, "wide", "wide");
  pages = tm_pages_new (document, &(TmReportForm) { .paper = TM_PAPER_A4 });
  page = tm_pages_find (pages, "wide");
  g_assert_cmpint (page, ==, (gint)tm_pages_count (pages) - 1);
  find_red (pages, (guint)page, tm_pages_draw_upright, &left, &top, &right, &bottom);
  g_assert_cmpuint (right - left, >, 700);
}

/* -------- Pages -------- */

static void
test_repeated_head (void)
{
  Place place;
  g_autoptr (TmReportDocument) document = make_table (300);
  g_autofree char *text = NULL, *size = NULL;
  guint n;

  if (!has_pdf_tools ())
    return;
  make_place (&place);
  n = write_pages (document, &(TmReportForm) { .paper = TM_PAPER_LETTER, .landscape = TRUE }, place.path);
  g_assert_cmpuint (n, ==, pdf_pages (place.path));
  g_assert_cmpuint (n, >, 5);
  text = pdf_text (place.path);
  g_assert_cmpuint (count_text (text, "Requirement"), ==, n);
  g_assert_cmpuint (count_text (text, "P-1 A"), ==, n);
  g_assert_cmpuint (count_text (text, "R-17"), ==, n);
  for (guint i = 0; i < 300; i++)
    {
      g_autofree char *result = g_strdup_printf ("25.%04u", i);
      g_assert_cmpuint (count_text (text, result), ==, 1);
    }
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *foot = g_strdup_printf ("page %u of %u", i + 1, n);
      g_assert_cmpuint (count_text (text, foot), ==, 1);
    }
  size = pdf_ask (place.path, NULL, "pdfinfo", NULL);
  g_assert_nonnull (strstr (size, "792 x 612 pts"));
  assert_inside (place.path, 20);
  clear_place (&place);
}

static char *
repeat (const char *piece, guint n)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, "%s", piece);
  return g_string_free (text, FALSE);
}

/* A word longer than any line, a text longer than a page, and letters that run the other way. */
static void
test_long_texts (void)
{
  Place place;
  g_autoptr (TmReportDocument) document = make_table (3);
  g_autofree char *word = repeat ("abcdefghij", 30);
  g_autofree char *tall = NULL, *text = NULL, *drawn = NULL, *ordered = NULL;
  GString *words = g_string_new (NULL);
  g_auto (GStrv) lines = NULL;

  if (!has_pdf_tools ())
    return;
  for (guint i = 0; i < 2500; i++)
    g_string_append_printf (words, "w%04u ", i);
  tall = g_string_free (words, FALSE);
  make_place (&place);
  tm_report_add_cell (document, "tall");
  tm_report_add_cell (document, tall);
  tm_report_add_cell (document, "1.0");
  tm_report_add_cell (document, "word");
  tm_report_add_cell (document, word);
  tm_report_add_cell (document, "2.0");
  tm_report_begin_facts (document, 3);
  tm_report_add_fact (document, "Part name", word);
  tm_report_add_fact (document, "Customer",
                      "\xd7\x9e\xd7\xa1\xd7\x91 "
                      "12 \xd7\x91\xd7\x93\xd7\x99\xd7\x94");
  tm_report_add_paragraph (document, tall, FALSE);
  write_pages (document, &(TmReportForm) { 0 }, place.path);
  assert_inside (place.path, 20);
  text = pdf_ask (place.path, "-", "pdftotext", "-raw", NULL);
  /* Every word of the tall texts, twice: in the table and in the paragraph. */
  for (guint i = 0; i < 2500; i++)
    {
      g_autofree char *one = g_strdup_printf ("w%04u", i);
      g_assert_cmpuint (count_text (text, one), ==, 2);
    }
  lines = g_strsplit (text, "\n", -1);
  drawn = g_strjoinv ("", lines);
  g_assert_cmpuint (count_text (drawn, word), ==, 2);
  /* "bearing" in Hebrew, in its reading order. */
  ordered = pdf_ask (place.path, "-", "pdftotext", NULL);
  g_assert_nonnull (strstr (ordered, "\xd7\x9e\xd7\xa1\xd7\x91"));
  clear_place (&place);
}

/* A requirement under a right-to-left name reads as it was written: its tolerance stands to the right. */
static void
test_direction (void)
{
  Place place;
  g_autoptr (TmReportDocument) document = make_table (1);
  g_autofree char *boxes = NULL;
  const char *size, *tolerance;

  if (!has_pdf_tools ())
    return;
  make_place (&place);
  tm_report_add_cell (document, "2");
  tm_report_add_cell (document, "62 ±0.1\n\xd7\x9e\xd7\xa1\xd7\x91 \xd7\x91");
  tm_report_add_cell (document, "1.0");
  write_pages (document, &(TmReportForm) { 0 }, place.path);
  boxes = pdf_ask (place.path, "-", "pdftotext", "-bbox", NULL);
  size = strstr (boxes, ">62<");
  tolerance = strstr (boxes, "±0.1<");
  g_assert_nonnull (size);
  g_assert_nonnull (tolerance);
  while (*size != '<')
    size--;
  while (*tolerance != '<')
    tolerance--;
  g_assert_cmpfloat (read_attribute (size, "xMin=\""), <, read_attribute (tolerance, "xMin=\""));
  clear_place (&place);
}

/* Two languages stand beside each other: no higher than the one that takes more lines, each read whole. */
static void
test_beside (void)
{
  g_autoptr (TmReportDocument) document = tm_report_document_new ("Report");
  g_autoptr (TmPages) pages = NULL;
  g_autofree char *text = NULL;

  tm_report_add_section (document, "Said", "said", FALSE);
  for (guint i = 0; i < 40; i++)
    tm_report_add_paragraphs (document, "No drift is shown.", "Keine Drift nachgewiesen.", FALSE);
  tm_report_add_paragraphs (document, "Equal.", "Equal.", FALSE);
  pages = tm_pages_new (document, &(TmReportForm) { 0 });
  /* Under each other 80 lines of 15 points would take two pages of 706. */
  g_assert_cmpuint (tm_pages_count (pages), ==, 1);
  text = tm_pages_text (pages, 0);
  g_assert_cmpuint (count_text (text, "No drift is shown.\nKeine Drift nachgewiesen.\n"), ==, 40);
  g_assert_cmpuint (count_text (text, "Equal."), ==, 1);
}

/* A sign that no font has is named with its text, each once; what can be drawn is not spoken of.  U+10FFF0
 * and U+10FFF1 are of a private plane that Unicode gives no meaning to. */
static void
test_missing_glyphs (void)
{
  g_autoptr (TmReportDocument) document = make_table (3);
  g_autofree char *none = NULL;
  g_autofree char *one = NULL;
  g_autofree char *more = NULL;

  tm_report_add_paragraphs (document, "Ø25 ±0.01 µm", "größer", FALSE);
  none = tm_report_missing_glyphs (document);
  g_assert_cmpstr (none, ==, NULL);
  tm_report_begin_facts (document, 2);
  tm_report_add_fact (document, "Customer", "Works \xf4\x8f\xbf\xb0\nand sons");
  tm_report_add_fact (document, "Order", "\xf4\x8f\xbf\xb0 17");
  one = tm_report_missing_glyphs (document);
  g_assert_nonnull (one);
  g_assert_nonnull (
      strstr (one, "“Works \xf4\x8f\xbf\xb0 and sons”: no installed font has its sign U+10FFF0,"));
  tm_report_add_paragraphs (document, "Said", "Gesagt \xf4\x8f\xbf\xb1", FALSE);
  more = tm_report_missing_glyphs (document);
  g_assert_nonnull (strstr (more, "sign U+10FFF0 nor 1 other of the report"));
}

static void
test_nothing (void)
{
  g_autoptr (TmReportDocument) document = tm_report_document_new ("");
  g_autoptr (TmPages) pages = tm_pages_new (document, &(TmReportForm) { .paper = TM_PAPER_A4 });
  double width, height;

  g_assert_cmpuint (tm_pages_count (pages), ==, 1);
  g_assert_cmpstr (tm_pages_section (pages, 0), ==, "");
  tm_pages_size (pages, &width, &height);
  /* ISO 216: 210 mm × 297 mm in points of 1/72 in, to a hundredth. */
  g_assert_cmpfloat_with_epsilon (width, 210 / 25.4 * 72, 0.01);
  g_assert_cmpfloat_with_epsilon (height, 297 / 25.4 * 72, 0.01);
}

/* -------- The file -------- */

static void
test_facts_of_file (void)
{
  Place place;
  g_autoptr (TmReportDocument) document = make_table (60);
  g_autofree char *info = NULL, *fonts = NULL, *structure = NULL;
  g_auto (GStrv) lines = NULL;

  if (!has_pdf_tools ())
    return;
  make_place (&place);
  write_pages (document, &(TmReportForm) { 0 }, place.path);
  info = pdf_ask (place.path, NULL, "pdfinfo", "-isodates", NULL);
  g_assert_nonnull (strstr (info, "Report, P-1 A"));
  g_assert_nonnull (strstr (info, "Invented works"));
  g_assert_nonnull (strstr (info, "2026-05-04T09:12:33"));
  structure = pdf_ask (place.path, NULL, "pdfinfo", "-struct-text", NULL);
  g_assert_nonnull (strstr (structure, "Table"));
  g_assert_cmpuint (count_text (structure, "\"25.0059\""), ==, 1);
  fonts = pdf_ask (place.path, NULL, "pdffonts", NULL);
  lines = g_strsplit (fonts, "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), >, 3);
  /* name, type, encoding, emb, sub, uni: every font is in the file, with its letters' meaning. */
  for (guint i = 2; lines[i] != NULL && *lines[i] != '\0'; i++)
    g_assert_nonnull (strstr (lines[i], "yes yes yes"));
  clear_place (&place);
}

static void
test_same_bytes (void)
{
  Place place;
  g_autofree char *first = NULL, *second = NULL;
  gsize first_length, second_length;

  make_place (&place);
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (TmReportDocument) document = make_table (100);

      write_pages (document, &(TmReportForm) { 0 }, place.path);
      g_assert_true (g_file_get_contents (place.path, i == 0 ? &first : &second,
                                          i == 0 ? &first_length : &second_length, NULL));
    }
  g_assert_cmpuint (first_length, ==, second_length);
  g_assert_true (memcmp (first, second, first_length) == 0);
  clear_place (&place);
}

static gboolean
stop_cb (double fraction, gpointer data)
{
  return fraction < *(const double *)data;
}

static void
test_cancel (void)
{
  Place place;
  g_autoptr (TmReportDocument) document = make_table (1000);
  g_autoptr (TmPages) pages = tm_pages_new (document, &(TmReportForm) { 0 });
  const TmPdfFacts facts = { .made = MADE };

  make_place (&place);
  for (double at = 0.0; at < 0.95; at += 0.3)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (tm_pages_write_pdf (pages, &facts, place.path, stop_cb, &at, &error));
      g_assert_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANCELLED);
      g_assert_cmpuint (count_files (&place), ==, 0);
    }
  clear_place (&place);
}

static void
test_no_folder (void)
{
  g_autoptr (TmReportDocument) document = make_table (1);
  g_autoptr (TmPages) pages = tm_pages_new (document, &(TmReportForm) { 0 });
  g_autoptr (GError) error = NULL;

  g_assert_false (tm_pages_write_pdf (pages, &(TmPdfFacts) { .made = MADE }, "/nonexistent/folder/r.pdf",
                                      NULL, NULL, &error));
  g_assert_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANNOT_WRITE);
  g_assert_nonnull (strstr (error->message, "/nonexistent/folder/r.pdf"));
}

/* A sink that takes only so much, as a full disk does. */
static gboolean
full_sink (const void *bytes, gsize length, gpointer data, GError **error)
{
  gsize *room = data;

  if (length > *room)
    {
      g_set_error_literal (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANNOT_WRITE, "full");
      return FALSE;
    }
  *room -= length;
  return TRUE;
}

static void
test_full_sink (void)
{
  g_autoptr (TmReportDocument) document = make_table (2000);
  g_autoptr (TmPages) pages = tm_pages_new (document, &(TmReportForm) { 0 });

  for (gsize room = 0; room < 200000; room += 70000)
    {
      gsize left = room;
      g_autoptr (GError) error = NULL;

      g_assert_false (tm_pages_write_pdf_to (pages, &(TmPdfFacts) { .made = MADE }, full_sink, &left, NULL,
                                             NULL, &error));
      g_assert_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANNOT_WRITE);
    }
}

static char *
describe_cb (gpointer data)
{
  return g_strdup ("three dots under a line");
}

/* What a page shows is what it says, facts with their labels, pictures in words. */
static void
test_text (void)
{
  static const TmReportColumn columns[]
      = { { "No.", 30, 0, 0, TM_CELL_PLAIN }, { "Size", 60, 0, 1, TM_CELL_NUMBER } };
  g_autoptr (TmReportDocument) document = tm_report_document_new ("Report");
  const TmReportPicture picture = { draw_box, describe_cb, &freed, NULL, 200, 0.5 };
  g_autoptr (TmPages) pages = NULL;
  g_autofree char *first = NULL, *second = NULL;

  tm_report_add_section (document, "Part", "part", FALSE);
  tm_report_begin_facts (document, 2);
  tm_report_add_fact (document, "Number", "S-1");
  tm_report_add_fact (document, "Revision", "C");
  tm_report_begin_table (document, columns, G_N_ELEMENTS (columns));
  tm_report_add_cell (document, "7");
  tm_report_add_cell (document, "25.012");
  tm_report_add_section (document, "Plots", "plots", TRUE);
  tm_report_add_picture (document, &picture, "Feature 7", NULL);
  pages = tm_pages_new (document, &(TmReportForm) { 0 });
  g_assert_cmpuint (tm_pages_count (pages), ==, 2);
  first = tm_pages_text (pages, 0);
  g_assert_cmpstr (first, ==, "Report\nPart\nNumber: S-1, Revision: C\nNo., Size\n7, 25.012");
  second = tm_pages_text (pages, 1);
  g_assert_cmpstr (second, ==, "Plots\nFeature 7\nthree dots under a line");
}

/* The last place of @what, or NULL; there are zeros in between. */
static const char *
find_last (const char *bytes, gsize length, const char *what)
{
  const gsize n = strlen (what);

  for (gsize at = length - n + 1; at > 0; at--)
    if (memcmp (bytes + at - 1, what, n) == 0)
      return bytes + at - 1;
  return NULL;
}

/* What stands at the place that the end of the file names. */
static const char *
find_table (const char *bytes, gsize length)
{
  const char *start = find_last (bytes, length, "startxref");
  const guint64 at = g_ascii_strtoull (start + strlen ("startxref"), NULL, 10);

  g_assert_cmpuint (at, <, length);
  return bytes + at;
}

/* ISO 32000-1, 14.9.2: the catalog's Lang, a tag of BCP 47; the table of objects is still where the file
 * says. */
static void
test_language (void)
{
  static const struct {
    const char *language, *lang;
  } cases[] = { { "de", "/Lang (de)" }, { "de_CH", "/Lang (de-CH)" }, { "", NULL }, { "d)e", NULL } };
  g_autoptr (TmReportDocument) document = tm_report_document_new ("Report");
  Place place;

  make_place (&place);
  tm_report_add_section (document, "Part", "part", FALSE);
  for (guint i = 0; i < 4000; i++)
    tm_report_add_heading (document, "of many pages");
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmPages) pages = tm_pages_new (document, &(TmReportForm) { 0 });
      g_autofree char *bytes = NULL;
      const char *lang;
      gsize length;

      g_assert_true (tm_pages_write_pdf (pages, &(TmPdfFacts) { .made = MADE, .language = cases[i].language },
                                         place.path, NULL, NULL, NULL));
      g_assert_true (g_file_get_contents (place.path, &bytes, &length, NULL));
      g_assert_cmpuint (length, >, 2 * 65536);
      lang = find_last (bytes, length, "/Lang (");
      g_assert_cmpint (lang != NULL, ==, cases[i].lang != NULL);
      g_assert_true (lang == NULL || g_str_has_prefix (lang, cases[i].lang));
      g_assert_true (g_str_has_prefix (find_table (bytes, length), "xref\n0 "));
      if (has_pdf_tools ())
        g_assert_cmpuint (pdf_pages (place.path), ==, tm_pages_count (pages));
    }
  clear_place (&place);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/document/cells", test_document);
  g_test_add_func ("/pages/filling-picture", test_filling_picture);
  g_test_add_func ("/pages/filling-picture/crowded", test_filling_picture_crowded);
  g_test_add_func ("/pages/pictures", test_pictures);
  g_test_add_func ("/pages/text", test_text);
  g_test_add_func ("/pages/language", test_language);
  g_test_add_func ("/pages/repeated-head", test_repeated_head);
  g_test_add_func ("/pages/long-texts", test_long_texts);
  g_test_add_func ("/pages/direction", test_direction);
  g_test_add_func ("/pages/beside", test_beside);
  g_test_add_func ("/pages/missing-glyphs", test_missing_glyphs);
  g_test_add_func ("/pages/nothing", test_nothing);
  g_test_add_func ("/pdf/facts", test_facts_of_file);
  g_test_add_func ("/pdf/same-bytes", test_same_bytes);
  g_test_add_func ("/pdf/cancel", test_cancel);
  g_test_add_func ("/pdf/no-folder", test_no_folder);
  g_test_add_func ("/pdf/full-sink", test_full_sink);
  return g_test_run ();
}
