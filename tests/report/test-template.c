/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The shop's template on the pages: who made the report, the colour, which columns, the fields in their
 * order, the statements in the report's languages; and nothing of it without one.
 */

#include "exchange-job.h"
#include "pdf-support.h"
#include "report-package.h"
#include "report-support.h"
#include "report-template.h"
#include "report-workbook.h"
#include "support-template.h"
#include "zip-support.h"

#define MADE     "2026-05-04T09:12:33Z"
#define ACCENT   0x1a5f7a
#define MIDDLING 2 /* of 255: how far a printed colour may be from the one asked for, by rounding */

static TmJob *
load_sample (const char *name)
{
  g_autofree char *path = g_build_filename (g_getenv ("TM_SAMPLE_JOBS"), name, NULL);
  g_autoptr (GError) error = NULL;
  TmJob *job = tm_job_from_file (path, NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  return job;
}

static void
answer (TmJob *job, const char *name, const char *value)
{
  TmReportField *field = tm_report_field_new ();

  field->name = name;
  field->value = value;
  tm_job_add_report_field (job, field);
}

static TmReportDocument *
make_document (const TmJob *job, const TmReportForm *form)
{
  g_autoptr (TmReportContent) content = tm_report_content_new (job);

  tm_report_content_set_template (content, form->template);
  return tm_report_package_new (content, form, NULL, NULL);
}

static const TmReportSection *
find_section (const TmReportDocument *document, const char *name)
{
  for (guint i = 0; i < document->sections->len; i++)
    {
      const TmReportSection *section = g_ptr_array_index (document->sections, i);

      if (g_str_equal (section->name, name))
        return section;
    }
  return NULL;
}

static const TmReportBlock *
find_table (const TmReportSection *section)
{
  for (guint i = 0; i < section->blocks->len; i++)
    {
      const TmReportBlock *block = g_ptr_array_index (section->blocks, i);

      if (block->kind == TM_BLOCK_TABLE)
        return block;
    }
  g_assert_not_reached ();
}

/* "No.|Requirement|…" */
static char *
list_columns (const TmJob *job, const TmReportForm *form)
{
  g_autoptr (TmReportDocument) document = make_document (job, form);
  const TmReportBlock *table = find_table (find_section (document, "characteristics"));
  GString *list = g_string_new ("|");

  for (guint i = 0; i < table->n_columns; i++)
    g_string_append_printf (list, "%s|", table->columns[i].title);
  return g_string_free (list, FALSE);
}

/* Every column that can be left out, at once: what says which requirement it is, what came out and what was
 * decided is still there, upright and on its side. */
static void
test_columns (void)
{
  static const char *const always[]
      = { "|No.|", "|Requirement|", "|Result|", "|Verdict|", "|Comment|", "|Qualified tooling|" };
  static const char *const gone[] = { "|Sheet, zone|", "|Class|", "|Uncertainty", "|Gauge" };
  g_autoptr (TmJob) job = load_sample ("pump-bearing-housing.tmjob");
  g_autoptr (TmTemplate) template = tm_template_new ();

  for (guint landscape = 0; landscape < 2; landscape++)
    {
      const TmReportForm without = { .landscape = landscape == 1 };
      const TmReportForm with = { .landscape = landscape == 1, .template = template };
      g_autofree char *before = list_columns (job, &without);
      g_autofree char *after = NULL;

      template->hidden = (1u << TM_N_TEMPLATE_COLUMNS) - 1;
      after = list_columns (job, &with);
      for (gsize i = 0; i < G_N_ELEMENTS (always); i++)
        g_assert_nonnull (strstr (after, always[i]));
      for (gsize i = landscape == 1 ? 0 : 2; i < G_N_ELEMENTS (gone); i++)
        {
          g_assert_nonnull (strstr (before, gone[i]));
          g_assert_null (strstr (after, gone[i]));
        }
      g_assert_cmpint (strstr (after, landscape == 1 ? "|Lower limit|Upper limit|" : "|Limits|") != NULL, ==,
                       1);
    }
}

/* Upright, sheet, zone and class stand under the requirement: there too they are left out. */
static void
test_columns_stacked (void)
{
  g_autoptr (TmJob) job = load_sample ("pump-bearing-housing.tmjob");
  g_autoptr (TmTemplate) template = tm_template_new ();
  const TmReportForm form = { .template = template };

  for (guint i = 0; i < 4; i++)
    {
      g_autoptr (TmReportDocument) document = NULL;
      const TmReportCell *cell;

      template->hidden
          = ((i & 1) != 0 ? 1u << TM_TEMPLATE_WHERE : 0) | ((i & 2) != 0 ? 1u << TM_TEMPLATE_CLASS : 0);
      document = make_document (job, &form);
      cell = tm_report_block_cell (find_table (find_section (document, "characteristics")), 0, 1);
      g_assert_cmpint (strstr (cell->text, "1, B3") != NULL, ==, (i & 1) == 0);
      g_assert_cmpint (strstr (cell->text, "critical") != NULL, ==, (i & 2) == 0);
      g_assert_null (strstr (cell->text, "\n\n"));
    }
}

/* In the template's order, whether answered or not, before what the job says besides. */
static void
test_fields (void)
{
  g_autoptr (TmJob) job = load_sample ("pump-bearing-housing.tmjob");
  g_autoptr (TmTemplate) template = tm_test_template ();
  const TmReportForm form = { .template = template };
  g_autoptr (TmReportDocument) document = NULL;
  const TmReportBlock *facts;
  const TmReportCell *cell;

  answer (job, "Own", "x");
  answer (job, "Packed by", "RW");
  document = make_document (job, &form);
  facts = g_ptr_array_index (find_section (document, "part")->blocks, 0);
  cell = &g_array_index (facts->cells, TmReportCell, facts->cells->len - 3);
  g_assert_cmpstr (cell[0].label, ==, "Heat number");
  g_assert_cmpstr (cell[0].text, ==, "–");
  g_assert_cmpstr (cell[1].label, ==, "Packed by");
  g_assert_cmpstr (cell[1].text, ==, "RW");
  g_assert_cmpstr (cell[2].label, ==, "Own");
}

static const char *
get_paragraph (const TmReportSection *section, guint at)
{
  const TmReportBlock *block;

  g_assert_nonnull (section);
  g_assert_cmpuint (at, <, section->blocks->len);
  block = g_ptr_array_index (section->blocks, at);
  g_assert_cmpint (block->kind, ==, TM_BLOCK_PARAGRAPH);
  return block->text;
}

static guint
find_place (const TmReportDocument *document, const char *name)
{
  guint at = 0;

  g_assert_true (g_ptr_array_find (document->sections, find_section (document, name), &at));
  return at;
}

static void
test_statements (void)
{
  static const char english[] = "Every part of this lot was made and measured in our shop.";
  static const char german[] = "Jedes Teil dieses Loses wurde bei uns gefertigt und gemessen.";
  static const struct {
    const char *language, *second;
    const char *first_text, *second_text;
  } cases[] = { { "en", NULL, english, NULL },
                { "de", NULL, german, NULL },
                { "de_AT", "en", german, english },
                { "en", "de", english, german } };
  g_autoptr (TmJob) job = load_sample ("pump-bearing-housing.tmjob");
  g_autoptr (TmTemplate) template = tm_test_template ();

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const TmReportForm form
          = { .language = cases[i].language, .second_language = cases[i].second, .template = template };
      g_autoptr (TmReportDocument) document = make_document (job, &form);
      const TmReportSection *first = find_section (document, "statements");
      const TmReportSection *last = find_section (document, "statements-last");

      g_assert_cmpstr (get_paragraph (first, 0), ==, "Records are kept for ten years.");
      g_assert_cmpstr (get_paragraph (first, 1), ==, "Ask for them by order number.");
      g_assert_cmpuint (first->blocks->len, ==, 2);
      g_assert_cmpstr (get_paragraph (last, 0), ==, cases[i].first_text);
      g_assert_cmpuint (last->blocks->len, ==, cases[i].second_text != NULL ? 2 : 1);
      if (cases[i].second_text != NULL)
        g_assert_cmpstr (get_paragraph (last, 1), ==, cases[i].second_text);
      g_assert_cmpuint (find_place (document, "statements"), <, find_place (document, "characteristics"));
      g_assert_cmpuint (find_place (document, "statements-last") + 1, ==,
                        find_place (document, "signatures"));
    }
}

/* Where the report says no language it is the user's, whatever the locale says of the storing of letters. */
static void
test_own_language (void)
{
  static const struct {
    const char *locale, *language, *text;
  } cases[] = { { "pt_BR.UTF-8", "pt_BR", "Feito aqui." },
                { "pt_BR", "pt_BR", "Feito aqui." },
                { "pt_PT.UTF-8", "pt_PT", "Made here." },
                { "C.UTF-8", "", "Made here." },
                { "C", "", "Made here." } };
  g_autoptr (TmTemplate) template = tm_template_new ();
  TmTemplateStatement *statement = tm_template_add_statement (template, TM_STATEMENT_AFTER_COVER);

  tm_template_statement_add_text (statement, "", "Made here.");
  tm_template_statement_add_text (statement, "pt_BR", "Feito aqui.");
  g_unsetenv ("LANGUAGE");
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const TmReportForm form = { .template = template };
      g_autofree char *text = NULL;
      const char *codes[2];

      g_setenv ("LC_ALL", cases[i].locale, TRUE);
      g_assert_cmpuint (tm_report_template_languages (&form, codes), ==, 1);
      g_assert_cmpstr (codes[0], ==, cases[i].language);
      text = tm_report_statement (statement, &form);
      g_assert_cmpstr (text, ==, cases[i].text);
    }
  g_setenv ("LC_ALL", "C", TRUE);
}

/* -------- Pixels -------- */

static gboolean
is_near (guint32 pixel, guint32 colour)
{
  for (guint shift = 0; shift < 24; shift += 8)
    if (ABS ((int)(pixel >> shift & 0xff) - (int)(colour >> shift & 0xff)) > MIDDLING)
      return FALSE;
  return TRUE;
}

/* How many pixels of the page have the colour, between two heights in points. */
static guint
count_colour (TmPages *pages, guint page, guint32 colour, int from, int to)
{
  double width, height;
  cairo_surface_t *surface;
  cairo_t *cr;
  guint n = 0;

  tm_pages_size (pages, &width, &height);
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)width, (int)height);
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  tm_pages_draw (pages, page, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  for (int y = from; y < MIN (to, (int)height); y++)
    {
      const guint32 *row = (const guint32 *)(gpointer)(cairo_image_surface_get_data (surface)
                                                       + y * cairo_image_surface_get_stride (surface));

      for (int x = 0; x < (int)width; x++)
        n += is_near (row[x], colour);
    }
  cairo_surface_destroy (surface);
  return n;
}

/* The logo's blue plate, the strong line and the heads on the first page; the small logo on later ones. */
static void
test_look (void)
{
  g_autoptr (TmJob) job = load_sample ("pump-bearing-housing.tmjob");
  g_autoptr (TmTemplate) template = tm_test_template ();

  for (guint i = 0; i < 4; i++)
    {
      const TmReportForm form = { .paper = i / 2 == 0 ? TM_PAPER_A4 : TM_PAPER_LETTER,
                                  .landscape = i % 2 == 1,
                                  .template = template };
      const TmReportForm plain = { .paper = form.paper, .landscape = form.landscape };
      g_autoptr (TmReportDocument) document = make_document (job, &form);
      g_autoptr (TmReportDocument) bare = make_document (job, &plain);
      g_autoptr (TmPages) pages = tm_pages_new (document, &form);
      g_autoptr (TmPages) bare_pages = tm_pages_new (bare, &plain);

      g_assert_cmpuint (count_colour (pages, 0, ACCENT, 42, 110), >, 2000);
      g_assert_cmpuint (count_colour (pages, 0, ACCENT, 110, 800), >, 400);
      /* Page 1 is the drawing, which may lie on its side. */
      g_assert_cmpuint (count_colour (pages, 2, ACCENT, 20, 45), >, 100);
      for (guint page = 0; page < 3; page++)
        g_assert_cmpuint (count_colour (bare_pages, page, ACCENT, 0, 800), ==, 0);
    }
}

/* The heads of tables stand on the shop's ground, in white or black as it can be read, and nothing else does.
 */
static void
test_ground (void)
{
  static const struct {
    guint32 ground, text;
  } cases[] = { { 0x2a4d2a, 0xffffff }, { 0xffd24d, 0x000000 } };
  g_autoptr (TmJob) job = load_sample ("pump-bearing-housing.tmjob");

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmTemplate) template = tm_template_new ();
      const TmReportForm form = { .template = template };
      const TmReportForm plain = { 0 };
      g_autoptr (TmReportDocument) document = NULL;
      g_autoptr (TmReportDocument) bare = make_document (job, &plain);
      g_autoptr (TmPages) pages = NULL;
      g_autoptr (TmPages) bare_pages = tm_pages_new (bare, &plain);
      guint n = 0, n_bare = 0;

      template->has_ground = TRUE;
      template->ground = cases[i].ground;
      document = make_document (job, &form);
      g_assert_cmphex (document->shop.text_on_ground, ==, cases[i].text);
      pages = tm_pages_new (document, &form);
      g_assert_cmpuint (tm_pages_count (pages), ==, tm_pages_count (bare_pages));
      /* Page 1 is the drawing, page 2 begins the characteristics. */
      for (guint page = 0; page < 3; page++)
        {
          n += count_colour (pages, page, cases[i].ground, 0, 1000);
          n_bare += count_colour (bare_pages, page, cases[i].ground, 0, 1000);
        }
      /* The head of the characteristics alone is over 500 by 20 points. */
      g_assert_cmpuint (n, >, n_bare + 8000);
      g_assert_cmpuint (n_bare, ==, 0);
    }
}

/* A colour too pale for letters is on lines alone: heads stay black. */
static void
test_pale (void)
{
  g_autoptr (TmJob) job = load_sample ("pump-bearing-housing.tmjob");
  g_autoptr (TmTemplate) template = tm_template_new ();
  const TmReportForm form = { .template = template };
  g_autoptr (TmReportDocument) document = NULL;
  g_autoptr (TmPages) pages = NULL;
  guint dark, pale;

  tm_template_set_text (&template->name, "Shop");
  template->has_accent = TRUE;
  template->accent = 0xa01e28;
  document = make_document (job, &form);
  pages = tm_pages_new (document, &form);
  /* From the title on, above the first table. */
  dark = count_colour (pages, 0, 0xa01e28, 90, 200);
  g_assert_cmpuint (dark, >, 100);
  g_clear_pointer (&pages, tm_pages_free);
  g_clear_pointer (&document, tm_report_document_free);
  template->accent = 0xffe000;
  document = make_document (job, &form);
  pages = tm_pages_new (document, &form);
  pale = count_colour (pages, 0, 0xffe000, 90, 200);
  g_assert_cmpuint (pale, ==, 0);
  g_assert_cmpuint (count_colour (pages, 0, 0xffe000, 0, 90), >, 100);
}

/* Long names, long addresses, a logo of any shape: nothing leaves the page, and the letterhead takes no more
 * than it needs. */
static void
test_hard (void)
{
  static const char *const shapes[] = { "6000\" height=\"500", "300\" height=\"3000", "1\" height=\"1" };
  g_autoptr (TmJob) job = load_sample ("pump-bearing-housing.tmjob");
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-template-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "report.pdf", NULL);
  g_autofree char *word = g_strnfill (TM_TEMPLATE_MAX_NAME, 'W');
  g_autoptr (GString) address = g_string_new ("0");

  if (!has_pdf_tools ())
    return;
  for (guint i = 1; i < TM_TEMPLATE_MAX_LINES; i++)
    g_string_append_printf (address, "\n%u a line of an address that is longer than any line should be", i);
  for (gsize i = 0; i <= G_N_ELEMENTS (shapes); i++)
    {
      g_autoptr (TmTemplate) template = tm_test_template ();
      g_autoptr (TmReportContent) content = tm_report_content_new (job);
      const TmReportForm form = { .paper = i % 2 == 0 ? TM_PAPER_A4 : TM_PAPER_LETTER,
                                  .landscape = i > 1,
                                  .language = "en",
                                  .second_language = "de",
                                  .template = template };
      g_autoptr (GError) error = NULL;
      g_autoptr (GBytes) logo = NULL;

      if (i < G_N_ELEMENTS (shapes))
        {
          g_autofree char *svg
              = g_strdup_printf ("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%s\"/>", shapes[i]);

          logo = g_bytes_new (svg, strlen (svg));
        }
      tm_template_set_logo (template, logo, "image/svg+xml");
      tm_template_set_text (&template->name, word);
      tm_template_set_text (&template->address, address->str);
      tm_report_content_set_template (content, template);
      g_assert_true (tm_report_package_write (content, &form, MADE, path, NULL, NULL, NULL, &error));
      g_assert_no_error (error);
      assert_inside (path, 20);
    }
  g_unlink (path);
  g_rmdir (folder);
}

/* A logo that cannot be drawn is named before a report is made; a report made all the same goes without. */
static void
test_broken_logo (void)
{
  g_autoptr (TmJob) job = load_sample ("pump-bearing-housing.tmjob");
  g_autoptr (TmTemplate) template = tm_test_template ();
  g_autoptr (GBytes) broken = g_bytes_new_static ("\x89PNG\r\n\x1a\nxx", 10);
  const TmReportForm form = { .template = template };
  g_autoptr (TmReportDocument) document = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (tm_report_template_check (NULL, &error));
  g_assert_true (tm_report_template_check (template, &error));
  g_assert_no_error (error);
  tm_template_set_logo (template, broken, "image/png");
  g_assert_false (tm_report_template_check (template, &error));
  g_assert_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_FAILED);
  g_assert_null (strchr (error->message, '\n'));
  document = make_document (job, &form);
  g_assert_null (document->shop.logo);
  g_assert_cmpstr (document->shop.name, ==, template->name);
}

/* A head that promises 2 GiB of pixels, and an SVG that names a file: neither is opened. */
static void
test_hostile_logo (void)
{
  static const char png[] = "\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\x80\0\0\0\x40\0\x08\x06\0\0\0\x1b\x2c\x3d\x4e";
  static const char svg[] = "<!DOCTYPE svg [<!ENTITY x SYSTEM \"file:///etc/passwd\">]>"
                            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"9999999\" height=\"9999999\">"
                            "<text>&x;</text></svg>";
  const struct {
    const char *media;
    const char *bytes;
    gsize length;
  } cases[] = { { "image/png", png, sizeof png - 1 }, { "image/svg+xml", svg, sizeof svg - 1 } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmTemplate) template = tm_test_template ();
      g_autoptr (GBytes) logo = g_bytes_new_static (cases[i].bytes, cases[i].length);
      g_autoptr (GError) error = NULL;

      tm_template_set_logo (template, logo, cases[i].media);
      g_assert_false (tm_report_template_check (template, &error));
      g_test_message ("%s", error->message);
      g_assert_null (strchr (error->message, '\n'));
    }
}

/* The same template, the same bytes; a template that says nothing, those of none. */
static void
test_same_bytes (void)
{
  g_autoptr (TmJob) job = load_sample ("pivot-arm-inch.tmjob");
  g_autoptr (TmTemplate) template = tm_test_template ();
  g_autoptr (TmTemplate) blank = tm_template_new ();
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-template-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "report.pdf", NULL);
  const TmTemplate *templates[] = { template, template, blank, NULL };
  char *digests[G_N_ELEMENTS (templates)];

  for (gsize i = 0; i < G_N_ELEMENTS (templates); i++)
    {
      g_autoptr (TmReportContent) content = tm_report_content_new (job);
      const TmReportForm form = { .template = templates[i] };
      g_autofree char *bytes = NULL;
      gsize length = 0;

      tm_report_content_set_template (content, templates[i]);
      g_assert_true (tm_report_package_write (content, &form, MADE, path, NULL, NULL, NULL, NULL));
      g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
      digests[i] = g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *)bytes, length);
    }
  g_assert_cmpstr (digests[0], ==, digests[1]);
  g_assert_cmpstr (digests[2], ==, digests[3]);
  g_assert_cmpstr (digests[0], !=, digests[2]);
  for (gsize i = 0; i < G_N_ELEMENTS (templates); i++)
    g_free (digests[i]);
  g_unlink (path);
  g_rmdir (folder);
}

/* -------- The workbook -------- */

/* Whether column @n, from 1, of the sheet is hidden. */
static gboolean
is_hidden (const char *sheet, guint n)
{
  g_autofree char *start = g_strdup_printf ("<col min=\"%u\" max=\"%u\"", n, n);
  const char *at = strstr (sheet, start);
  const char *end = at != NULL ? strchr (at, '>') : NULL;
  const char *hidden = at != NULL ? strstr (at, " hidden=\"1\"") : NULL;

  g_assert_nonnull (at);
  return hidden != NULL && hidden < end;
}

static void
write_workbook (const TmJob *job, const TmTemplate *template, const char *path)
{
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  const TmReportForm form = { .language = "en", .second_language = "de", .template = template };
  g_autoptr (GError) error = NULL;
  gboolean written;

  tm_report_content_set_template (content, template);
  written = tm_workbook_write (content, path, &form, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (written);
}

/* The logo, the shop and its statements stand on the sheets; what is left out is hidden and still there for
 * the formulas, and the columns that a report needs are shown whatever the template says. */
static void
test_workbook (void)
{
  static const char *const hidden[]
      = { "Sheet, zone", "Class", "Nominal",         "Deviation",  "Uncertainty",
          "Side",        "Gauge", "Calibration due", "What counts" };
  g_autoptr (TmJob) job = load_sample ("pump-bearing-housing.tmjob");
  g_autoptr (TmTemplate) template = tm_test_template ();
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-template-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "report.xlsx", NULL);
  g_autofree char *before = NULL, *after = NULL, *strings = NULL;
  guint n_before, n_hidden = 0;

  write_workbook (job, NULL, path);
  n_before = zip_count (path, "xl/media/image");
  before = zip_sheet (path, "Characteristics");
  template->hidden = (1u << TM_N_TEMPLATE_COLUMNS) - 1;
  write_workbook (job, template, path);
  g_assert_cmpuint (zip_count (path, "xl/media/image"), ==, n_before + 1);
  after = zip_sheet (path, "Characteristics");
  for (guint column = 1; column <= 22; column++)
    {
      g_autofree char *cell = g_strdup_printf ("%c4", 'A' + (int)column - 1);
      g_autofree char *head = cell_string (path, after, cell);
      gboolean left_out = FALSE;

      for (gsize i = 0; i < G_N_ELEMENTS (hidden); i++)
        left_out |= g_str_has_prefix (head, hidden[i]);
      /* A column that no line has anything for is hidden without a template too. */
      g_assert_cmpint (is_hidden (after, column), ==, left_out || is_hidden (before, column));
      n_hidden += left_out;
    }
  g_assert_cmpuint (n_hidden, ==, G_N_ELEMENTS (hidden));
  strings = zip_read (path, "xl/sharedStrings.xml");
  g_assert_nonnull (strstr (strings, "Example Precision (invented)"));
  g_assert_nonnull (strstr (strings, "1 Mill Lane"));
  g_assert_nonnull (strstr (strings, "Records are kept for ten years."));
  g_assert_nonnull (strstr (strings, "Jedes Teil dieses Loses"));
  g_assert_nonnull (strstr (strings, "Heat number"));
  g_unlink (path);
  g_rmdir (folder);
}

/* The heads' ground and the letters on it; without one the workbook is the one of before. */
static void
test_workbook_ground (void)
{
  static const struct {
    guint32 ground;
    const char *fill, *letters;
  } cases[] = { { 0x2a4d2a, "<fgColor rgb=\"FF2A4D2A\"/>", "<color rgb=\"FFFFFFFF\"/>" },
                { 0xffd24d, "<fgColor rgb=\"FFFFD24D\"/>", "<color rgb=\"FF000000\"/>" },
                { 0x000000, "<fgColor rgb=\"FF000000\"/>", "<color rgb=\"FFFFFFFF\"/>" } };
  g_autoptr (TmJob) job = load_sample ("pump-bearing-housing.tmjob");
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-template-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "report.xlsx", NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmTemplate) template = tm_template_new ();
      g_autofree char *before = NULL, *after = NULL;

      write_workbook (job, template, path);
      before = zip_read (path, "xl/styles.xml");
      template->has_ground = TRUE;
      template->ground = cases[i].ground;
      write_workbook (job, template, path);
      after = zip_read (path, "xl/styles.xml");
      g_assert_null (strstr (before, cases[i].fill));
      g_assert_null (strstr (before, cases[i].letters));
      g_assert_nonnull (strstr (after, cases[i].fill));
      g_assert_nonnull (strstr (after, cases[i].letters));
    }
  g_unlink (path);
  g_rmdir (folder);
}

/* The highest row of a sheet, points. */
static double
find_highest (const char *sheet)
{
  double most = 0.0;

  for (const char *at = strstr (sheet, " ht=\""); at != NULL; at = strstr (at + 1, " ht=\""))
    most = MAX (most, g_ascii_strtod (at + strlen (" ht=\""), NULL));
  return most;
}

/* A row can be 409 points high (the limits that spreadsheet programs state): the longest statement takes
 * several, in letters of either width, with blanks or without, and none of it is lost. */
static void
test_long_statement (void)
{
  static const struct {
    const char *word, *after;
  } cases[] = { { "word", " " }, { "letters", "" }, { "長い", "" }, { "line", "\n" } };
  g_autoptr (TmJob) job = load_sample ("pump-bearing-housing.tmjob");
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-template-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "report.xlsx", NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmTemplate) template = tm_template_new ();
      TmTemplateStatement *statement = tm_template_add_statement (template, TM_STATEMENT_BEFORE_SIGNATURES);
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (GString) found = NULL;
      g_autofree char *sheet = NULL, *strings = NULL;
      guint n = 0;

      while (g_utf8_strlen (text->str, -1) < TM_TEMPLATE_MAX_STATEMENT - 12)
        g_string_append_printf (text, "%s%u%s", cases[i].word, n++, cases[i].after);
      g_string_append (text, ".");
      tm_template_statement_add_text (statement, "", text->str);
      g_assert_cmpint (tm_template_check (template, NULL), ==, TM_TEMPLATE_OK);
      write_workbook (job, template, path);
      sheet = zip_sheet (path, "Signatures");
      g_assert_cmpfloat (find_highest (sheet), >, 200.0);
      g_assert_cmpfloat (find_highest (sheet), <=, 409.0);
      strings = zip_read (path, "xl/sharedStrings.xml");
      found = g_string_new (strings);
      /* Without blanks, two words may be parted between three rows. */
      g_assert_cmpuint (g_string_replace (found, cases[i].word, "", 0), >=, n - 2);
    }
  g_unlink (path);
  g_rmdir (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/report/template/columns", test_columns);
  g_test_add_func ("/report/template/columns-stacked", test_columns_stacked);
  g_test_add_func ("/report/template/fields", test_fields);
  g_test_add_func ("/report/template/statements", test_statements);
  g_test_add_func ("/report/template/own-language", test_own_language);
  g_test_add_func ("/report/template/long-statement", test_long_statement);
  g_test_add_func ("/report/template/look", test_look);
  g_test_add_func ("/report/template/pale", test_pale);
  g_test_add_func ("/report/template/hard", test_hard);
  g_test_add_func ("/report/template/broken-logo", test_broken_logo);
  g_test_add_func ("/report/template/hostile-logo", test_hostile_logo);
  g_test_add_func ("/report/template/same-bytes", test_same_bytes);
  g_test_add_func ("/report/template/workbook", test_workbook);
  g_test_add_func ("/report/template/workbook-ground", test_workbook_ground);
  g_test_add_func ("/report/template/ground", test_ground);
  return g_test_run ();
}
