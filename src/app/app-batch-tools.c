/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-tools.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-button.h"
#include "app-chart-dialog.h"
#include "app-event-dialog.h"
#include "app-events-dialog.h"
#include "app-hold-dialog.h"
#include "app-sample-dialog.h"

struct _TmBatchTools {
  GtkBox parent_instance;

  TmDocument *document;
  char *balloon;
  const TmBatch *batch; /* borrowed */
  TmSpread spread;
  gboolean has_spread;

  /* Of an advised offset; NULL: none. */
  char *amount;
  char *next; /* piece */

  GtkWidget *record, *events, *charts, *hold_back, *how_many;
};

G_DEFINE_FINAL_TYPE (TmBatchTools, tm_batch_tools, GTK_TYPE_BOX)

static TmFeature *
find_feature (TmBatchTools *self)
{
  if (self->document == NULL || self->balloon == NULL)
    return NULL;
  return tm_job_find_feature (tm_document_job (self->document), self->balloon);
}

/* The offset moves every feature that the tool cuts. */
static void
record_cb (TmBatchTools *self)
{
  const TmFeature *feature = find_feature (self);
  const TmJob *job;
  TmEvent *proposal;

  if (feature == NULL || self->amount == NULL)
    return;
  job = tm_document_job (self->document);
  proposal = tm_event_new ();
  proposal->kind = "offset";
  proposal->amount = self->amount;
  proposal->before_piece = self->next;
  if (tm_job_find_tool (job, feature->tool) != NULL)
    proposal->tool = feature->tool;
  if (*proposal->tool == '\0' || feature->unit != job->unit)
    proposal->feature = feature->balloon;
  tm_event_dialog_present_new (GTK_WIDGET (self), self->document, proposal);
  tm_event_free (proposal);
}

static void
events_cb (TmBatchTools *self)
{
  if (self->document != NULL)
    tm_events_dialog_present (GTK_WIDGET (self), self->document);
}

static void
charts_cb (TmBatchTools *self)
{
  const TmFeature *feature = find_feature (self);

  if (feature != NULL)
    tm_chart_dialog_present (GTK_WIDGET (self), self->document, feature);
}

static void
hold_cb (TmBatchTools *self)
{
  g_autoptr (TmHoldList) list = NULL;

  if (self->document == NULL)
    return;
  list = tm_hold_list_new (tm_document_job (self->document), find_feature (self), self->batch);
  tm_hold_dialog_present (GTK_WIDGET (self), self->document, list);
}

static void
how_many_cb (TmBatchTools *self)
{
  const TmFeature *feature = find_feature (self);

  if (feature != NULL)
    tm_sample_dialog_present (GTK_WIDGET (self), self->document, feature,
                              self->has_spread ? &self->spread : NULL);
}

static void
drop (TmBatchTools *self)
{
  g_clear_object (&self->document);
  g_clear_pointer (&self->balloon, g_free);
  self->batch = NULL;
  g_clear_pointer (&self->amount, g_free);
  g_clear_pointer (&self->next, g_free);
  self->has_spread = FALSE;
}

static void
tm_batch_tools_dispose (GObject *object)
{
  drop (TM_BATCH_TOOLS (object));
  G_OBJECT_CLASS (tm_batch_tools_parent_class)->dispose (object);
}

static void
tm_batch_tools_class_init (TmBatchToolsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_batch_tools_dispose;
}

static GtkWidget *
add_button (TmBatchTools *self, GtkGrid *grid, const char *label, int column, int row, GCallback clicked)
{
  GtkWidget *button = tm_button_new (label);

  gtk_widget_set_hexpand (button, TRUE);
  gtk_grid_attach (grid, button, column, row, 1, 1);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  return button;
}

static void
tm_batch_tools_init (TmBatchTools *self)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_box_set_spacing (GTK_BOX (self), 6);
  self->record = tm_button_new (_ ("_Record this offset…"));
  gtk_widget_set_visible (self->record, FALSE);
  g_signal_connect_swapped (self->record, "clicked", G_CALLBACK (record_cb), self);
  gtk_box_append (GTK_BOX (self), self->record);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 6);
  self->events = add_button (self, GTK_GRID (grid), _ ("_Events…"), 0, 0, G_CALLBACK (events_cb));
  self->charts = add_button (self, GTK_GRID (grid), _ ("_Charts…"), 1, 0, G_CALLBACK (charts_cb));
  self->hold_back = add_button (self, GTK_GRID (grid), _ ("Hold _back…"), 2, 0, G_CALLBACK (hold_cb));
  self->how_many = add_button (self, GTK_GRID (grid), _ ("How _many…"), 3, 0, G_CALLBACK (how_many_cb));
  gtk_box_append (GTK_BOX (self), grid);
}

GtkWidget *
tm_batch_tools_new (void)
{
  return g_object_new (TM_TYPE_BATCH_TOOLS, NULL);
}

/* The serial of the piece after the last that was measured; "" after the last of all. */
static char *
find_next (const TmSeries *series)
{
  for (guint i = series->n_points; i > 0; i--)
    if (isfinite (series->points[i - 1].mean))
      return g_strdup (i < series->n_points ? series->points[i].piece->serial : "");
  return g_strdup ("");
}

static void
take_offset (TmBatchTools *self, const TmFeature *feature, const TmBatch *batch)
{
  const TmOffsetAdvice *offset = &batch->offset;
  g_autofree char *amount = NULL;

  if (offset->status != TM_OFFSET_ADVISED || !isfinite (offset->size_change) || offset->steps == 0)
    return;
  amount = tm_count_format_exact (offset->steps * batch->options.step, feature->unit,
                                  MAX (feature->lower.decimals, feature->upper.decimals));
  self->amount = *amount == '-' ? g_steal_pointer (&amount) : g_strconcat ("+", amount, NULL);
  self->next = find_next (&batch->series);
}

static void
show (TmBatchTools *self, const TmFeature *feature)
{
  g_autofree char *label = NULL;

  gtk_widget_set_visible (self->record, self->amount != NULL);
  if (self->amount != NULL)
    {
      /* A minus as wide as the plus. */
      label = g_strdup_printf (_ ("_Record the offset %s%s %s…"), *self->amount == '-' ? "−" : "+",
                               self->amount + 1, tm_unit_symbol (feature->unit));
      tm_button_set_label (self->record, label);
    }
  gtk_widget_set_sensitive (self->events, self->document != NULL);
  gtk_widget_set_sensitive (self->charts, feature != NULL);
  gtk_widget_set_sensitive (self->hold_back, self->document != NULL);
  gtk_widget_set_sensitive (self->how_many, feature != NULL);
}

void
tm_batch_tools_set (TmBatchTools *self, TmDocument *document, const TmFeature *feature, const TmBatch *batch,
                    const TmSpread *spread)
{
  g_return_if_fail (TM_IS_BATCH_TOOLS (self));
  g_return_if_fail (document == NULL || TM_IS_DOCUMENT (document));

  if (document != NULL)
    g_object_ref (document);
  drop (self);
  self->document = document;
  self->batch = batch;
  if (document != NULL && feature != NULL)
    self->balloon = g_strdup (feature->balloon);
  self->has_spread = spread != NULL;
  if (spread != NULL)
    self->spread = *spread;
  if (self->balloon != NULL && batch != NULL)
    take_offset (self, feature, batch);
  show (self, self->balloon != NULL ? feature : NULL);
}
