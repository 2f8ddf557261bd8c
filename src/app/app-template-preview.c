/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-template-preview.h"

#include <glib/gi18n-lib.h>

#include "app-dialog.h"
#include "app-report-form.h"
#include "report-package.h"

/* Wait this long after the last change. */
#define SETTLE_MS 120
/* The pages of more characteristics take too long to make while somebody types. */
#define MOST_LINES  100
#define LEAST_WIDTH 300 /* pixels */

struct _TmTemplatePreview {
  GtkWidget parent_instance;

  TmJob *example;
  TmDocument *document; /* or NULL */
  TmTemplate *template;
  TmReportContent *content; /* what the pages were made of */
  TmReportDocument *report;
  TmPages *pages;
  guint settle_id;
};

G_DEFINE_FINAL_TYPE (TmTemplatePreview, tm_template_preview, GTK_TYPE_WIDGET)

static void
add_feature (TmJob *job, const char *balloon, const char *requirement, const char *name)
{
  TmFeature *feature = tm_feature_new ();

  feature->balloon = balloon;
  feature->requirement = requirement;
  feature->name = tm_job_intern (job, name);
  feature->places = 1;
  if (tm_job_add_feature (job, feature) != TM_ADD_OK)
    tm_feature_free (feature);
}

static TmJob *
make_example (void)
{
  TmJob *job = tm_job_new ();
  TmPiece *piece = tm_piece_new ();

  job->id = "example";
  job->part_number = "EX-1";
  job->part_name = tm_job_intern (job, _ ("Example part (invented)"));
  job->revision = "A";
  job->drawing = "EX-1";
  job->customer = tm_job_intern (job, _ ("Example customer"));
  job->order = "EX-100";
  job->report_identifier = "EX-FA-1";
  job->unit = TM_UNIT_MM;
  piece->serial = "001";
  piece->first_article = TRUE;
  if (tm_job_add_piece (job, piece) != TM_ADD_OK)
    tm_piece_free (piece);
  add_feature (job, "1", "Ø25 H7", _ ("Bore"));
  add_feature (job, "2", "62 ±0.1", _ ("Height"));
  return job;
}

static const TmJob *
get_job (TmTemplatePreview *self)
{
  const TmJob *job = self->document != NULL ? tm_document_job (self->document) : NULL;

  return job != NULL && job->features->len > 0 && (guint64)job->features->len * job->pieces->len <= MOST_LINES
             ? job
             : self->example;
}

static void
drop_pages (TmTemplatePreview *self)
{
  g_clear_pointer (&self->pages, tm_pages_free);
  g_clear_pointer (&self->report, tm_report_document_free);
  g_clear_pointer (&self->content, tm_report_content_free);
}

/* What stands on the page, for who does not see it. */
static void
describe (TmTemplatePreview *self)
{
  g_autofree char *text = tm_pages_text (self->pages, 0);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

/* What an example lacks is nobody's business. */
static void
make_pages (TmTemplatePreview *self)
{
  const TmJob *job = get_job (self);
  g_auto (TmJobForm) form = { 0 };

  drop_pages (self);
  tm_job_form_fill (&form, job);
  form.form.template = self->template;
  self->content = tm_report_content_new (job);
  tm_report_content_set_template (self->content, self->template);
  if (job == self->example)
    g_ptr_array_set_size (self->content->gaps, 0);
  self->report = tm_report_package_new (self->content, &form.form, NULL, NULL);
  self->pages = tm_pages_new (self->report, &form.form);
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static gboolean
settled_cb (gpointer data)
{
  TmTemplatePreview *self = data;

  self->settle_id = 0;
  make_pages (self);
  return G_SOURCE_REMOVE;
}

static void
tm_template_preview_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TmTemplatePreview *self = TM_TEMPLATE_PREVIEW (widget);
  const int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  double page_width, page_height, scale;
  cairo_t *cr;

  if (self->pages == NULL || width <= 0 || height <= 0)
    return;
  tm_pages_size (self->pages, &page_width, &page_height);
  scale = MIN (width / page_width, height / page_height);
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  cairo_translate (cr, (width - scale * page_width) / 2, 0);
  cairo_scale (cr, scale, scale);
  cairo_rectangle (cr, 0, 0, page_width, page_height);
  cairo_clip (cr);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  tm_pages_draw (self->pages, 0, cr);
  cairo_destroy (cr);
}

static void
tm_template_preview_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                             int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = LEAST_WIDTH;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 430 : 600;
}

static void
tm_template_preview_dispose (GObject *object)
{
  TmTemplatePreview *self = TM_TEMPLATE_PREVIEW (object);

  g_clear_handle_id (&self->settle_id, g_source_remove);
  drop_pages (self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->template, tm_template_free);
  g_clear_pointer (&self->example, tm_job_free);
  G_OBJECT_CLASS (tm_template_preview_parent_class)->dispose (object);
}

static void
tm_template_preview_class_init (TmTemplatePreviewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_template_preview_dispose;
  widget_class->snapshot = tm_template_preview_snapshot;
  widget_class->measure = tm_template_preview_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
tm_template_preview_init (TmTemplatePreview *self)
{
  self->example = make_example ();
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  tm_name_widget (GTK_WIDGET (self), _ ("The first page of a report by this template"));
}

GtkWidget *
tm_template_preview_new (TmDocument *document)
{
  TmTemplatePreview *self = g_object_new (TM_TYPE_TEMPLATE_PREVIEW, NULL);

  if (document != NULL)
    self->document = g_object_ref (document);
  return GTK_WIDGET (self);
}

void
tm_template_preview_show (TmTemplatePreview *self, const TmTemplate *template)
{
  g_return_if_fail (TM_IS_TEMPLATE_PREVIEW (self));

  tm_template_free (self->template);
  self->template = tm_template_copy (template);
  g_clear_handle_id (&self->settle_id, g_source_remove);
  self->settle_id = g_timeout_add (SETTLE_MS, settled_cb, self);
}
