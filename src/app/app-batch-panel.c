/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-panel.h"

#include <glib/gi18n-lib.h>

#include "app-batch-words.h"
#include "app-dialog.h"
#include "app-panel-line.h"

/* What is worked out sooner is not announced. */
#define BUSY_AFTER_MS 400

struct _TmBatchPanel {
  GtkBox parent_instance;

  GtkLabel *headline;
  GtkLabel *since;
  GtkWidget *rule;
  GtkLabel *forecast;
  GtkLabel *range;
  GtkLabel *headings[TM_N_BATCH_SAYS];
  GtkLabel *lines[TM_N_BATCH_SAYS];
  GtkLabel *tool_heading;
  GtkLabel *tool;
  GtkLabel *busy;
  guint busy_id;
};

G_DEFINE_FINAL_TYPE (TmBatchPanel, tm_batch_panel, GTK_TYPE_BOX)

static void
tm_batch_panel_dispose (GObject *object)
{
  TmBatchPanel *self = TM_BATCH_PANEL (object);

  g_clear_handle_id (&self->busy_id, g_source_remove);
  G_OBJECT_CLASS (tm_batch_panel_parent_class)->dispose (object);
}

static void
tm_batch_panel_class_init (TmBatchPanelClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_batch_panel_dispose;
}

static GtkWidget *
build_words (TmBatchPanel *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->headline = tm_panel_line_add (box, "tm-verdict");
  self->since = tm_panel_line_add (box, "tm-where");
  self->rule = gtk_separator_new (GTK_ORIENTATION_HORIZONTAL);
  gtk_widget_add_css_class (self->rule, "tm-rule");
  gtk_box_append (GTK_BOX (box), self->rule);
  self->forecast = tm_panel_line_add (box, "tm-batch-forecast");
  self->range = tm_panel_line_add (box, "tm-lines");
  for (guint i = 0; i < TM_N_BATCH_SAYS; i++)
    {
      /* What is to be done first, then what the figures are. */
      if (i == TM_BATCH_SAYS_CAPABILITY)
        {
          self->tool_heading = tm_panel_line_add (box, "tm-batch-heading");
          self->tool = tm_panel_line_add (box, "tm-lines");
        }
      self->headings[i] = tm_panel_line_add (box, "tm-batch-heading");
      self->lines[i] = tm_panel_line_add (box, "tm-lines");
    }
  return box;
}

/* One line however narrow the panel is: words that wrap here would make its height hang on a width that it
 * leaves to others, which GTK takes for a fault. */
static GtkWidget *
build_busy (TmBatchPanel *self)
{
  self->busy = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->busy, 0);
  gtk_label_set_ellipsize (self->busy, PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (GTK_WIDGET (self->busy), "dim-label");
  tm_panel_line_take (self->busy, g_strdup (""));
  return GTK_WIDGET (self->busy);
}

static void
tm_batch_panel_init (TmBatchPanel *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-batch-panel");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), build_words (self));
  gtk_widget_set_vexpand (scroller, TRUE);
  tm_name_widget (scroller, _ ("What the batch says"));
  gtk_box_append (GTK_BOX (self), scroller);
  gtk_box_append (GTK_BOX (self), build_busy (self));
  tm_batch_panel_show (self, NULL);
}

GtkWidget *
tm_batch_panel_new (void)
{
  return g_object_new (TM_TYPE_BATCH_PANEL, NULL);
}

static void
put_section (GtkLabel *heading, GtkLabel *line, const char *title, char *text)
{
  tm_panel_line_take (heading, g_strdup (*text != '\0' ? title : ""));
  tm_panel_line_take (line, text);
}

static char *
list_same_tool (const TmBatchAnswer *answer)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; answer != NULL && i < answer->same_tool->len; i++)
    {
      const TmBatch *other = &g_array_index (answer->same_tool, TmBatch, i);

      if (tm_batch_state (other) != TM_BATCH_NOT_MEASURED)
        g_ptr_array_add (lines, tm_words_batch_same_tool (other));
    }
  if (answer != NULL && lines->len > 0)
    {
      char *together = tm_words_tool_drift (&answer->together);

      if (*together != '\0')
        g_ptr_array_add (lines, together);
      else
        g_free (together);
    }
  g_ptr_array_add (lines, NULL);
  return g_strjoinv ("\n", (char **)lines->pdata);
}

void
tm_batch_panel_show (TmBatchPanel *self, const TmBatchAnswer *answer)
{
  const TmBatch *batch;

  g_return_if_fail (TM_IS_BATCH_PANEL (self));

  batch = answer != NULL ? &answer->batch : NULL;
  tm_panel_line_take (self->headline, batch != NULL ? tm_words_batch_headline (batch) : g_strdup (""));
  tm_panel_line_take (self->since, batch != NULL ? tm_words_batch_since (batch) : g_strdup (""));
  tm_panel_line_take (self->forecast, batch != NULL ? tm_words_batch_forecast (batch) : g_strdup (""));
  tm_panel_line_take (self->range, batch != NULL ? tm_words_batch_forecast_range (batch) : g_strdup (""));
  gtk_widget_set_visible (self->rule, batch != NULL && tm_batch_state (batch) != TM_BATCH_NOT_MEASURED);
  for (guint i = 0; i < TM_N_BATCH_SAYS; i++)
    put_section (self->headings[i], self->lines[i], tm_words_batch_heading ((TmBatchSays)i),
                 batch != NULL ? tm_words_batch_says (batch, (TmBatchSays)i) : g_strdup (""));
  put_section (self->tool_heading, self->tool, _ ("Cut by the same tool"), list_same_tool (answer));
}

static gboolean
say_busy_cb (gpointer data)
{
  TmBatchPanel *self = data;

  self->busy_id = 0;
  tm_panel_line_take (self->busy, g_strdup (_ ("Working it out…")));
  return G_SOURCE_REMOVE;
}

void
tm_batch_panel_set_busy (TmBatchPanel *self, gboolean busy)
{
  g_return_if_fail (TM_IS_BATCH_PANEL (self));

  if (!busy)
    {
      g_clear_handle_id (&self->busy_id, g_source_remove);
      tm_panel_line_take (self->busy, g_strdup (""));
    }
  else if (self->busy_id == 0)
    self->busy_id = g_timeout_add (BUSY_AFTER_MS, say_busy_cb, self);
}
