/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where a page ends: what stays together, what gives way, and that nothing is lost by it.
 */

#include <string.h>

#include "pages-support.h"
#include "report-pages.h"

/* -------- What stays together -------- */

/* A heading never stands at the foot of a page without what it heads. */
static void
test_headings_stay (void)
{
  for (guint rows = 30; rows < 60; rows++)
    {
      g_autoptr (TmReportDocument) document = make_table (rows);
      g_autoptr (TmPages) pages = NULL;
      g_autofree char *text = NULL;

      tm_report_add_section (document, "Next", "next", FALSE);
      tm_report_add_heading (document, "Heading");
      tm_report_begin_facts (document, 2);
      tm_report_add_fact (document, "Label", "Value");
      pages = tm_pages_new (document, &(TmReportForm) { 0 });
      text = tm_pages_text (pages, (guint)tm_pages_find (pages, "next"));
      g_assert_nonnull (strstr (text, "Next\nHeading\nLabel: Value"));
    }
}

/* Neither the first nor the last row of a table stands alone on a page. */
static void
test_rows_stay (void)
{
  for (guint rows = 40; rows < 60; rows++)
    {
      g_autoptr (TmReportDocument) document = make_table (rows);
      g_autofree char *last = g_strdup_printf ("n%u,", rows);
      g_autofree char *before = g_strdup_printf ("n%u,", rows - 1);
      g_autoptr (TmPages) pages = NULL;
      g_autofree char *end = NULL;

      pages = tm_pages_new (document, &(TmReportForm) { 0 });
      end = tm_pages_text (pages, tm_pages_count (pages) - 1);
      g_assert_nonnull (strstr (end, last));
      g_assert_nonnull (strstr (end, before));
    }
}

/* Two or three sentences under a heading are not parted. */
static void
test_sentences_stay (void)
{
  for (guint rows = 30; rows < 60; rows++)
    {
      g_autoptr (TmReportDocument) document = make_table (rows);
      g_autoptr (TmPages) pages = NULL;
      g_autofree char *text = NULL;

      tm_report_add_section (document, "Next", "next", FALSE);
      tm_report_add_heading (document, "Heading");
      tm_report_add_paragraph (document, "The first sentence.", FALSE);
      tm_report_add_paragraph (document, "The second sentence.", FALSE);
      tm_report_add_paragraph (document, "The last sentence.", FALSE);
      pages = tm_pages_new (document, &(TmReportForm) { 0 });
      text = tm_pages_text (pages, (guint)tm_pages_find (pages, "next"));
      g_assert_nonnull (strstr (text, "Heading\nThe first"));
      g_assert_nonnull (strstr (text, "The last sentence."));
    }
}

static guint
count_pages (guint rows, const char *title, guint last_rows)
{
  g_autoptr (TmReportDocument) document = make_table (rows);
  g_autoptr (TmPages) pages = NULL;

  tm_report_add_section (document, title, "last", TRUE);
  for (guint i = 0; i < last_rows; i++)
    tm_report_add_paragraph (document, "A line.", FALSE);
  pages = tm_pages_new (document, &(TmReportForm) { 0 });
  return tm_pages_count (pages);
}

/* A section that starts a page stays under the last one where all of it fits there, but not on the first
 * page, which stands for itself.  A page of A4 holds 45 such rows or more, and fewer than 70 such lines. */
static void
test_short_section (void)
{
  g_assert_cmpuint (count_pages (10, "Short", 3), ==, 2);
  g_assert_cmpuint (count_pages (60, "Short", 3), ==, 2);
  g_assert_cmpuint (count_pages (60, "Long", 45), ==, 3);
}

/* Lines to sign on stand on one page, under their heading. */
static void
test_signatures_together (void)
{
  for (guint rows = 20; rows < 60; rows++)
    {
      g_autoptr (TmReportDocument) document = make_table (rows);
      g_autoptr (TmPages) pages = NULL;
      g_autofree char *text = NULL;

      tm_report_add_section (document, "Signatures", "signatures", FALSE);
      tm_report_begin_signatures (document, 1);
      tm_report_add_signature (document, "First to sign", "");
      tm_report_add_signature (document, "Second to sign", "");
      tm_report_add_signature (document, "Third to sign", "");
      pages = tm_pages_new (document, &(TmReportForm) { 0 });
      text = tm_pages_text (pages, (guint)tm_pages_find (pages, "signatures"));
      g_assert_nonnull (strstr (text, "First to sign"));
      g_assert_nonnull (strstr (text, "Third to sign"));
    }
}

/* -------- Pictures that give way -------- */

static void
note_height (cairo_t *cr, double width, double height, gpointer data)
{
  *(double *)data = height;
}

/* A picture of 511 × 204 points above @n lines; returns its height on the first page. */
static double
draw_above_lines (guint n, double flattest, guint *n_pages)
{
  double height = 0.0;
  const TmReportPicture picture
      = { .draw = note_height, .data = &height, .width = 2000.0, .aspect = 0.4, .flattest = flattest };
  g_autoptr (TmReportDocument) document = tm_report_document_new ("Report");
  g_autoptr (TmPages) pages = NULL;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 600, 850);
  cairo_t *cr = cairo_create (surface);

  tm_report_add_section (document, "Section", "section", FALSE);
  tm_report_add_picture (document, &picture, "", NULL);
  for (guint i = 0; i < n; i++)
    tm_report_add_paragraph (document, "A line.", FALSE);
  pages = tm_pages_new (document, &(TmReportForm) { 0 });
  *n_pages = tm_pages_count (pages);
  tm_pages_draw (pages, 0, cr);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return height;
}

/* It is flatter only where that saves a page, and no flatter than it may be.  Under the titles, 66 points,
 * and the picture, 212 with its room, a page of 706 has room for 28 lines of 15 points; at its flattest
 * for 36. */
static void
test_flatter (void)
{
  guint n_pages;

  /* 0.1: as the page is 511.276 wide. */
  g_assert_cmpfloat_with_epsilon (draw_above_lines (20, 80.0, &n_pages), 204.5, 0.1);
  g_assert_cmpuint (n_pages, ==, 1);
  g_assert_cmpfloat_with_epsilon (draw_above_lines (34, 0.0, &n_pages), 204.5, 0.1);
  g_assert_cmpuint (n_pages, ==, 2);
  g_assert_cmpfloat (draw_above_lines (34, 80.0, &n_pages), <, 204.0);
  g_assert_cmpuint (n_pages, ==, 1);
  g_assert_cmpfloat (draw_above_lines (34, 80.0, &n_pages), >=, 80.0);
  g_assert_cmpfloat_with_epsilon (draw_above_lines (45, 80.0, &n_pages), 204.5, 0.1);
  g_assert_cmpuint (n_pages, ==, 2);
}

/* -------- Whatever is written -------- */

/* Each text that is written is one of these, with a number of its own. */
static const char *
make_token (TmReportDocument *document, guint *n)
{
  g_autofree char *token = g_strdup_printf ("<%u>", (*n)++);

  return tm_report_text (document, token);
}

static void
add_any_table (TmReportDocument *document, guint *n)
{
  static const TmReportColumn columns[]
      = { { "A", 20, 0, 0, TM_CELL_PLAIN }, { "B", 60, 0, 1, TM_CELL_PLAIN } };
  const guint rows = (guint)g_test_rand_int_range (0, 60);

  tm_report_begin_table (document, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < 2 * rows; i++)
    tm_report_add_cell (document, make_token (document, n));
}

static void
add_any_block (TmReportDocument *document, guint *n)
{
  const TmReportPicture picture = { .draw = note_height,
                                    .width = g_test_rand_bit () ? 2000.0 : 245.0,
                                    .aspect = g_test_rand_double_range (0.1, 0.6),
                                    .flattest = g_test_rand_bit () ? 40.0 : 0.0 };

  switch (g_test_rand_int_range (0, 5))
    {
    case 0:
      tm_report_add_heading (document, make_token (document, n));
      break;
    case 1:
      tm_report_add_picture (document, &picture, make_token (document, n), NULL);
      break;
    case 2:
      add_any_table (document, n);
      break;
    case 3:
      tm_report_begin_facts (document, 2);
      tm_report_add_fact (document, "Label", make_token (document, n));
      break;
    default:
      for (gint i = g_test_rand_int_range (1, 12); i > 0; i--)
        {
          const char *text = make_token (document, n);

          tm_report_add_paragraphs (document, text, g_test_rand_bit () ? make_token (document, n) : NULL,
                                    FALSE);
        }
    }
}

/* A section may be laid out several times, under the one before or with flatter pictures: in the end each of
 * its texts stands once, in the order in which they were written. */
static void
test_all_stand_once (void)
{
  for (guint run = 0; run < 60; run++)
    {
      g_autoptr (TmReportDocument) document = tm_report_document_new ("Report");
      g_autoptr (TmPages) pages = NULL;
      g_autoptr (GString) all = g_string_new (NULL);
      const char *at;
      guint n = 0;

      for (gint section = g_test_rand_int_range (1, 7); section > 0; section--)
        {
          tm_report_add_section (document, make_token (document, &n), NULL, g_test_rand_bit ());
          for (gint block = g_test_rand_int_range (0, 8); block > 0; block--)
            add_any_block (document, &n);
        }
      pages = tm_pages_new (document, &(TmReportForm) { .landscape = g_test_rand_bit () });
      for (guint page = 0; page < tm_pages_count (pages); page++)
        {
          g_autofree char *text = tm_pages_text (pages, page);

          g_string_append (all, text);
        }
      at = all->str;
      for (guint i = 0; i < n; i++)
        {
          g_autofree char *token = g_strdup_printf ("<%u>", i);

          at = strstr (at, token);
          g_assert_nonnull (at);
          g_assert_null (strstr (++at, token));
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/flow/headings-stay", test_headings_stay);
  g_test_add_func ("/flow/rows-stay", test_rows_stay);
  g_test_add_func ("/flow/sentences-stay", test_sentences_stay);
  g_test_add_func ("/flow/short-section", test_short_section);
  g_test_add_func ("/flow/flatter", test_flatter);
  g_test_add_func ("/flow/signatures-together", test_signatures_together);
  g_test_add_func ("/flow/all-stand-once", test_all_stand_once);
  return g_test_run ();
}
