/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-pages-pdf: pages as a PDF file.
 */

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#include "report-pages-private.h"
#include "report-pdf-language.h"
#include "report-target.h"

#define KEPT_BACK 65536 /* bytes that are gathered before the sink gets them */

/* -------- The sink -------- */

typedef struct {
  TmPdfSink sink;
  gpointer data;
  GByteArray *waiting;
  GError *error;
} Drain;

/* Hands on the first @n bytes that wait. */
static gboolean
drain_bytes (Drain *drain, gsize n)
{
  if (drain->error == NULL && n > 0)
    (void)drain->sink (drain->waiting->data, n, drain->data, &drain->error);
  if (n > 0)
    g_byte_array_remove_range (drain->waiting, 0, (guint)n);
  return drain->error == NULL;
}

static cairo_status_t
write_cb (void *closure, const unsigned char *bytes, unsigned int length)
{
  Drain *drain = closure;

  if (drain->error != NULL)
    return CAIRO_STATUS_WRITE_ERROR;
  g_byte_array_append (drain->waiting, bytes, length);
  /* The end is kept back: the language goes into it. */
  if (drain->waiting->len >= KEPT_BACK
      && !drain_bytes (drain, tm_pdf_before_catalog (drain->waiting->data, drain->waiting->len)))
    return CAIRO_STATUS_WRITE_ERROR;
  return CAIRO_STATUS_SUCCESS;
}

/* -------- What the file says of itself -------- */

static void
set_fact (cairo_surface_t *surface, cairo_pdf_metadata_t fact, const char *value)
{
  g_autofree char *valid = NULL;

  if (value == NULL || *value == '\0')
    return;
  valid = g_utf8_make_valid (value, -1);
  cairo_pdf_surface_set_metadata (surface, fact, valid);
}

static void
set_facts (cairo_surface_t *surface, const TmPages *pages, const TmPdfFacts *facts)
{
  const TmReportDocument *document = pages->document;
  g_autofree char *creator = g_strdup_printf ("Tenthmark %s", TM_VERSION);
  g_autofree char *title = *document->head_left != '\0'
                               ? g_strdup_printf ("%s, %s", document->title, document->head_left)
                               : g_strdup (document->title);

  set_fact (surface, CAIRO_PDF_METADATA_TITLE, title);
  set_fact (surface, CAIRO_PDF_METADATA_AUTHOR, facts->author);
  set_fact (surface, CAIRO_PDF_METADATA_SUBJECT, facts->subject);
  set_fact (surface, CAIRO_PDF_METADATA_KEYWORDS, facts->keywords);
  set_fact (surface, CAIRO_PDF_METADATA_CREATOR, creator);
  set_fact (surface, CAIRO_PDF_METADATA_CREATE_DATE, facts->made);
  set_fact (surface, CAIRO_PDF_METADATA_MOD_DATE, facts->made);
}

static void
add_outline (cairo_surface_t *surface, const TmPages *pages)
{
  for (guint i = 0; i < pages->document->sections->len; i++)
    {
      const TmReportSection *section = g_ptr_array_index (pages->document->sections, i);
      g_autofree char *place = g_strdup_printf ("dest='%s'", section->name);

      cairo_pdf_surface_add_outline (surface, CAIRO_PDF_OUTLINE_ROOT, section->title, place, 0);
    }
}

/* -------- Writing -------- */

static gboolean
fail (cairo_status_t status, Drain *drain, GError **error)
{
  if (drain->error != NULL)
    g_propagate_error (error, g_steal_pointer (&drain->error));
  else
    g_set_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_FAILED, _ ("the pages could not be drawn: %s"),
                 cairo_status_to_string (status));
  return FALSE;
}

static void
set_page_size (const TmPages *pages, cairo_surface_t *surface, guint page)
{
  double width, height;

  tm_pages_upright_size (pages, page, &width, &height);
  cairo_pdf_surface_set_size (surface, width, height);
}

static gboolean
draw_all (TmPages *pages, cairo_surface_t *surface, TmReportProgress progress, gpointer data, Drain *drain,
          GError **error)
{
  cairo_t *cr = cairo_create (surface);
  const guint n = pages->pages->len;
  gboolean done = TRUE;

  for (guint i = 0; i < n && done; i++)
    {
      if (progress != NULL && !progress ((double)i / n, data))
        {
          g_set_error_literal (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANCELLED,
                               _ ("The report was cancelled; nothing was written"));
          done = FALSE;
          break;
        }
      set_page_size (pages, surface, i);
      tm_pages_draw_page (pages, i, cr, TRUE);
      cairo_show_page (cr);
      if (cairo_status (cr) != CAIRO_STATUS_SUCCESS)
        done = fail (cairo_status (cr), drain, error);
    }
  cairo_destroy (cr);
  return done;
}

static gboolean
write_surface (TmPages *pages, const TmPdfFacts *facts, Drain *drain, TmReportProgress progress,
               gpointer data, GError **error)
{
  cairo_surface_t *surface
      = cairo_pdf_surface_create_for_stream (write_cb, drain, pages->width, pages->height);
  gboolean done;

  set_facts (surface, pages, facts);
  add_outline (surface, pages);
  done = draw_all (pages, surface, progress, data, drain, error);
  cairo_surface_finish (surface);
  if (done && cairo_surface_status (surface) != CAIRO_STATUS_SUCCESS)
    done = fail (cairo_surface_status (surface), drain, error);
  cairo_surface_destroy (surface);
  if (facts->language != NULL)
    tm_pdf_set_language (drain->waiting, facts->language);
  if (done && !drain_bytes (drain, drain->waiting->len))
    done = fail (CAIRO_STATUS_WRITE_ERROR, drain, error);
  return done;
}

gboolean
tm_pages_write_pdf_to (TmPages *pages, const TmPdfFacts *facts, TmPdfSink sink, gpointer sink_data,
                       TmReportProgress progress, gpointer data, GError **error)
{
  g_autoptr (GByteArray) waiting = g_byte_array_new ();
  Drain drain = { .sink = sink, .data = sink_data, .waiting = waiting };
  gboolean done;

  g_return_val_if_fail (pages != NULL && facts != NULL && facts->made != NULL && sink != NULL, FALSE);
  done = write_surface (pages, facts, &drain, progress, data, error);
  g_clear_error (&drain.error);
  return done;
}

static gboolean
target_sink (const void *bytes, gsize length, gpointer data, GError **error)
{
  return tm_target_write (data, bytes, length, error);
}

gboolean
tm_pages_write_pdf (TmPages *pages, const TmPdfFacts *facts, const char *path, TmReportProgress progress,
                    gpointer data, GError **error)
{
  TmTarget target = TM_TARGET_INIT;
  gboolean done;

  g_return_val_if_fail (path != NULL, FALSE);
  done = tm_target_open (&target, path, error)
         && tm_pages_write_pdf_to (pages, facts, target_sink, &target, progress, data, error)
         && tm_target_take_place (&target, error);
  tm_target_close (&target, done);
  if (done && progress != NULL)
    (void)progress (1.0, data);
  return done;
}
