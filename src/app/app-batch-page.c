/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-page.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-batch-page-private.h"
#include "app-batch-tools.h"
#include "app-batch-words.h"
#include "app-button.h"
#include "app-dialog.h"

/* A hand that walks down the features asks for the last one only. */
#define ASK_AFTER_MS 60

/* Of the height of the page the grid takes no more than this; nor fewer rows than that. */
#define GRID_SHARE 0.38
#define LEAST_ROWS 5

G_DEFINE_FINAL_TYPE (TmBatchPage, tm_batch_page, GTK_TYPE_BOX)

static void ask (TmBatchPage *self);

/* -------- What is chosen -------- */

static const TmJob *
get_job (TmBatchPage *self)
{
  return tm_document_job (self->document);
}

static TmFeature *
find_feature (TmBatchPage *self)
{
  return self->document != NULL ? tm_job_find_feature (get_job (self), self->balloon) : NULL;
}

static void
keep_choice (TmBatchPage *self, const TmPiece *piece, const TmFeature *feature)
{
  g_free (self->serial);
  g_free (self->balloon);
  self->serial = g_strdup (piece != NULL ? piece->serial : "");
  self->balloon = g_strdup (feature != NULL ? feature->balloon : "");
}

/* Index in the answer's series, which has the pieces in the order made. */
static gint
find_point (TmBatchPage *self)
{
  const TmSeries *series = self->answer != NULL ? &self->answer->batch.series : NULL;

  for (guint i = 0; series != NULL && i < series->n_points; i++)
    if (g_str_equal (series->points[i].piece->serial, self->serial))
      return (gint)i;
  return -1;
}

/* -------- The answer -------- */

static void
stop_asking (TmBatchPage *self)
{
  g_clear_handle_id (&self->ask_id, g_source_remove);
  if (self->working != NULL)
    g_cancellable_cancel (self->working);
  g_clear_object (&self->working);
}

static void
show_tools (TmBatchPage *self)
{
  tm_batch_tools_set (TM_BATCH_TOOLS (self->tools), self->document, find_feature (self),
                      self->answer != NULL ? &self->answer->batch : NULL,
                      self->answer != NULL ? &self->answer->spread : NULL);
}

/* Takes @answer; NULL: nothing is known. */
static void
show_answer (TmBatchPage *self, TmBatchAnswer *answer)
{
  TmBatchAnswer *old = self->answer;

  self->answer = answer;
  tm_batch_chart_set_batch (self->chart, answer != NULL ? &answer->batch : NULL,
                            answer != NULL ? answer->plot : NULL,
                            answer != NULL ? answer->small_shifts : NULL);
  tm_batch_chart_set_piece (self->chart, find_point (self));
  tm_batch_panel_show (self->panel, answer);
  show_tools (self);
  g_clear_pointer (&old, tm_batch_answer_free);
}

static void
answered_cb (TmBatchAnswer *answer, gpointer data)
{
  TmBatchPage *self = data;

  g_clear_object (&self->working);
  tm_batch_panel_set_busy (self->panel, FALSE);
  show_answer (self, answer);
}

static gboolean
ask_cb (gpointer data)
{
  TmBatchPage *self = data;
  const TmFeature *feature = find_feature (self);

  self->ask_id = 0;
  if (feature == NULL)
    return G_SOURCE_REMOVE;
  self->working = g_cancellable_new ();
  tm_batch_work (self->document, feature, self->place, FALSE, self->working, answered_cb, self);
  return G_SOURCE_REMOVE;
}

/* Works the chosen feature out anew; what is shown stays until that is known. */
static void
ask (TmBatchPage *self)
{
  stop_asking (self);
  if (find_feature (self) == NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  tm_batch_panel_set_busy (self->panel, TRUE);
  self->ask_id = g_timeout_add (ASK_AFTER_MS, ask_cb, self);
}

/* -------- The grid -------- */

static void
chosen_cb (TmBatchPage *self)
{
  TmFeature *feature = tm_batch_grid_feature (self->grid);
  gboolean other = feature == NULL || !g_str_equal (feature->balloon, self->balloon);

  keep_choice (self, tm_batch_grid_piece (self->grid), feature);
  if (other)
    {
      self->place = 1;
      tm_batch_chart_set_feature (self->chart, feature, self->place);
      show_answer (self, NULL);
      ask (self);
    }
  else
    tm_batch_chart_set_piece (self->chart, find_point (self));
}

/* The first station that has no reading that counts, else the first. */
static const char *
find_station (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  const GPtrArray *readings = tm_job_readings_at (job, piece, feature, place);

  for (guint i = 0; i < feature->stations->len; i++)
    {
      const char *station = g_ptr_array_index (feature->stations, i);
      gboolean read = FALSE;

      for (guint j = 0; readings != NULL && j < readings->len && !read; j++)
        {
          const TmReading *reading = g_ptr_array_index (readings, j);
          read = tm_row_counts (&reading->row) && g_str_equal (reading->station, station);
        }
      if (!read)
        return station;
    }
  return feature->stations->len > 0 ? g_ptr_array_index (feature->stations, 0) : "";
}

static void
jump_cb (TmBatchPage *self)
{
  TmPiece *piece = tm_batch_grid_piece (self->grid);
  TmFeature *feature = tm_batch_grid_feature (self->grid);
  guint place;

  if (piece == NULL || feature == NULL || self->document == NULL)
    return;
  place = self->place > 1
              ? self->place
              : tm_batch_cells_place (self->cells, (guint)tm_batch_cells_column_of (self->cells, piece),
                                      (guint)tm_batch_cells_row_of (self->cells, feature));
  tm_document_go (self->document, piece, feature, place,
                  find_station (get_job (self), piece, feature, place));
  gtk_widget_activate_action (GTK_WIDGET (self), "win.page", "s", "bench");
}

static void
piece_cb (TmBatchPage *self, guint point)
{
  const TmPiece *piece;

  if (self->answer == NULL || point >= self->answer->batch.series.n_points)
    return;
  piece = tm_job_find_piece (get_job (self), self->answer->batch.series.points[point].piece->serial);
  if (piece == NULL)
    return;
  tm_batch_grid_go (self->grid, piece, find_feature (self));
  keep_choice (self, piece, find_feature (self));
  tm_batch_chart_set_piece (self->chart, (gint)point);
}

static void
place_cb (TmBatchPage *self, guint place)
{
  self->place = place;
  ask (self);
}

/* -------- The page as a whole -------- */

static gboolean
fit_cb (gpointer data)
{
  TmBatchPage *self = data;
  int most = (int)(gtk_widget_get_height (GTK_WIDGET (self)) * GRID_SHARE);
  guint n = LEAST_ROWS;

  self->fit_id = 0;
  while (tm_batch_grid_height_of (self->grid, n + 1) <= most)
    n++;
  n = MIN (n, tm_batch_cells_n_rows (self->cells));
  gtk_widget_set_size_request (self->scroller, -1, tm_batch_grid_height_of (self->grid, n));
  return G_SOURCE_REMOVE;
}

/* The height of the grid follows that of the window, but not while it is being laid out. */
static void
fit_later (TmBatchPage *self)
{
  if (self->fit_id == 0)
    self->fit_id = g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, fit_cb, self, NULL);
}

static void
show_empty (TmBatchPage *self, const char *title, const char *about)
{
  adw_status_page_set_title (ADW_STATUS_PAGE (self->empty), title);
  adw_status_page_set_description (ADW_STATUS_PAGE (self->empty), about);
  tm_access_show_page (self->stack, "empty");
}

static void
show_state (TmBatchPage *self)
{
  const TmJob *job = get_job (self);

  if (job->features->len == 0)
    show_empty (self, _ ("No features yet"), _ ("Type what the drawing asks for on the Job page first."));
  else if (job->pieces->len == 0)
    show_empty (self, _ ("No pieces yet"),
                _ ("Add the pieces of the batch on the Job page; each shows here as it is measured."));
  else
    tm_access_show_page (self->stack, "batch");
}

static void
cells_changed_cb (TmBatchPage *self)
{
  double progress = tm_batch_cells_progress (self->cells);
  const guint n = tm_batch_cells_n_columns (self->cells);
  /* Only what is judged is known to be measured. */
  g_autofree char *count
      = progress < 1 ? g_strdup_printf (ngettext ("%u piece, being judged", "%u pieces, being judged", n), n)
                     : tm_words_batch_count (tm_batch_cells_n_measured (self->cells), n);

  gtk_label_set_text (self->count, count);
  gtk_progress_bar_set_fraction (self->progress, progress);
  gtk_widget_set_visible (GTK_WIDGET (self->progress), progress < 1);
  fit_later (self);
}

static const TmPiece *
find_newest_piece (const TmJob *job)
{
  if (job->readings->len > 0)
    return ((const TmReading *)g_ptr_array_index (job->readings, job->readings->len - 1))->row.piece;
  return job->pieces->len > 0 ? g_ptr_array_index (job->pieces, 0) : NULL;
}

/* All anew: the cells, and the focus where it was, else where the bench is. */
static void
fill (TmBatchPage *self)
{
  const TmJob *job = get_job (self);
  const TmPiece *piece = tm_job_find_piece (job, self->serial);
  const TmFeature *feature = tm_job_find_feature (job, self->balloon);

  self->stale = FALSE;
  if (piece == NULL)
    piece = find_newest_piece (job);
  if (feature == NULL)
    feature = tm_bench_spot (tm_document_bench (self->document))->feature;
  if (feature == NULL && job->features->len > 0)
    feature = g_ptr_array_index (job->features, 0);
  tm_batch_cells_set_job (self->cells, job);
  tm_batch_grid_go (self->grid, piece, feature);
  keep_choice (self, piece, feature);
  self->place = feature != NULL ? CLAMP (self->place, 1, feature->places) : 1;
  tm_batch_chart_set_feature (self->chart, feature, self->place);
  show_state (self);
  ask (self);
}

static void
definitions_changed_cb (TmBatchPage *self)
{
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    {
      fill (self);
      return;
    }
  /* The cells hold addresses of rows that may be gone. */
  tm_batch_cells_set_job (self->cells, NULL);
  self->stale = TRUE;
}

static void
recorded_cb (TmDocument *document, const TmEntryRow *row, TmBatchPage *self)
{
  if (self->stale)
    return;
  tm_batch_cells_judge (self->cells, row->piece, row->feature);
  ask (self);
}

static void
sort_cb (GtkToggleButton *button, TmBatchPage *self)
{
  if (self->filling || !gtk_toggle_button_get_active (button))
    return;
  tm_batch_cells_set_sort (self->cells, GTK_WIDGET (button) == self->sorts[TM_BATCH_BY_WORST]
                                            ? TM_BATCH_BY_WORST
                                            : TM_BATCH_AS_MADE);
  tm_batch_grid_go (self->grid, tm_batch_grid_piece (self->grid), tm_batch_grid_feature (self->grid));
}

static void
sort_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmBatchPage *self = TM_BATCH_PAGE (widget);
  TmBatchSort other
      = tm_batch_cells_sort (self->cells) == TM_BATCH_AS_MADE ? TM_BATCH_BY_WORST : TM_BATCH_AS_MADE;

  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->sorts[other]), TRUE);
}

/* -------- The widget -------- */

static void
tm_batch_page_map (GtkWidget *widget)
{
  TmBatchPage *self = TM_BATCH_PAGE (widget);

  GTK_WIDGET_CLASS (tm_batch_page_parent_class)->map (widget);
  self->surface = g_object_ref (gtk_native_get_surface (gtk_widget_get_native (widget)));
  g_signal_connect_swapped (self->surface, "layout", G_CALLBACK (fit_later), self);
  if (self->document == NULL)
    return;
  if (self->stale)
    fill (self);
  else
    ask (self);
}

static void
tm_batch_page_unmap (GtkWidget *widget)
{
  TmBatchPage *self = TM_BATCH_PAGE (widget);

  stop_asking (self);
  g_signal_handlers_disconnect_by_data (self->surface, self);
  g_clear_object (&self->surface);
  GTK_WIDGET_CLASS (tm_batch_page_parent_class)->unmap (widget);
}

static void
tm_batch_page_dispose (GObject *object)
{
  TmBatchPage *self = TM_BATCH_PAGE (object);

  tm_batch_page_set_document (self, NULL);
  g_clear_handle_id (&self->fit_id, g_source_remove);
  if (self->cells != NULL)
    g_signal_handlers_disconnect_by_data (self->cells, self);
  G_OBJECT_CLASS (tm_batch_page_parent_class)->dispose (object);
}

static void
tm_batch_page_finalize (GObject *object)
{
  TmBatchPage *self = TM_BATCH_PAGE (object);

  g_clear_object (&self->cells);
  g_free (self->serial);
  g_free (self->balloon);
  G_OBJECT_CLASS (tm_batch_page_parent_class)->finalize (object);
}

static void
tm_batch_page_class_init (TmBatchPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = tm_batch_page_dispose;
  object_class->finalize = tm_batch_page_finalize;
  widget_class->map = tm_batch_page_map;
  widget_class->unmap = tm_batch_page_unmap;
  gtk_widget_class_install_action (widget_class, "batch.sort", NULL, sort_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_o, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "batch.sort", NULL);
}

static GtkWidget *
build_sorts (TmBatchPage *self)
{
  static const char *const labels[] = {
    [TM_BATCH_AS_MADE] = N_ ("As made"),
    [TM_BATCH_BY_WORST] = N_ ("Worst first"),
  };
  static const char *const tips[] = {
    [TM_BATCH_AS_MADE] = N_ ("Pieces in the order made, features as on the drawing (Ctrl+Shift+O)"),
    [TM_BATCH_BY_WORST] = N_ ("Pieces and features by their worst cell (Ctrl+Shift+O)"),
  };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 2);

  self->filling = TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
    {
      GtkWidget *button = gtk_toggle_button_new_with_label (g_dgettext (GETTEXT_PACKAGE, labels[i]));

      if (i > 0)
        gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), GTK_TOGGLE_BUTTON (self->sorts[0]));
      gtk_widget_add_css_class (button, "flat");
      gtk_widget_set_tooltip_text (button, g_dgettext (GETTEXT_PACKAGE, tips[i]));
      tm_name_widget (button, g_dgettext (GETTEXT_PACKAGE, labels[i]));
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), i == TM_BATCH_AS_MADE);
      g_signal_connect (button, "toggled", G_CALLBACK (sort_cb), self);
      gtk_box_append (GTK_BOX (box), button);
      self->sorts[i] = button;
    }
  self->filling = FALSE;
  return box;
}

static GtkWidget *
build_head (TmBatchPage *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->count = GTK_LABEL (gtk_label_new (NULL));
  self->progress = GTK_PROGRESS_BAR (gtk_progress_bar_new ());
  gtk_widget_set_valign (GTK_WIDGET (self->progress), GTK_ALIGN_CENTER);
  gtk_widget_set_visible (GTK_WIDGET (self->progress), FALSE);
  tm_name_widget (GTK_WIDGET (self->progress), _ ("Judging the pieces"));
  gtk_label_set_xalign (self->count, 0);
  gtk_widget_set_hexpand (GTK_WIDGET (self->count), TRUE);
  gtk_widget_add_css_class (head, "tm-batch-head");
  gtk_widget_add_css_class (GTK_WIDGET (self->count), "numeric");
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->count));
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->progress));
  self->tools = tm_batch_tools_new ();
  gtk_widget_set_valign (self->tools, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (head), self->tools);
  gtk_box_append (GTK_BOX (head), build_sorts (self));
  return head;
}

static GtkWidget *
build_grid (TmBatchPage *self)
{
  self->grid = TM_BATCH_GRID (tm_batch_grid_new (self->cells));
  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), GTK_WIDGET (self->grid));
  g_signal_connect_swapped (self->grid, "chosen", G_CALLBACK (chosen_cb), self);
  g_signal_connect_swapped (self->grid, "jump", G_CALLBACK (jump_cb), self);
  return self->scroller;
}

static GtkWidget *
build_lower (TmBatchPage *self)
{
  GtkWidget *lower = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);

  self->chart = TM_BATCH_CHART (tm_batch_chart_new ());
  self->panel = TM_BATCH_PANEL (tm_batch_panel_new ());
  gtk_widget_set_hexpand (GTK_WIDGET (self->chart), TRUE);
  g_signal_connect_swapped (self->chart, "piece", G_CALLBACK (piece_cb), self);
  g_signal_connect_swapped (self->chart, "place", G_CALLBACK (place_cb), self);
  gtk_box_append (GTK_BOX (lower), GTK_WIDGET (self->chart));
  gtk_box_append (GTK_BOX (lower), GTK_WIDGET (self->panel));
  gtk_widget_set_vexpand (lower, TRUE);
  gtk_widget_add_css_class (lower, "tm-batch-lower");
  return lower;
}

static GtkWidget *
build_empty (TmBatchPage *self)
{
  GtkWidget *button = tm_button_new (_ ("Go to the _Job page"));

  self->empty = adw_status_page_new ();
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", "job");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.page");
  gtk_widget_add_css_class (button, "suggested-action");
  gtk_widget_add_css_class (button, "tm-wide");
  gtk_widget_set_halign (button, GTK_ALIGN_CENTER);
  adw_status_page_set_child (ADW_STATUS_PAGE (self->empty), button);
  return self->empty;
}

static void
tm_batch_page_init (TmBatchPage *self)
{
  GtkWidget *batch = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->cells = tm_batch_cells_new ();
  self->place = 1;
  keep_choice (self, NULL, NULL);
  self->stack = GTK_STACK (gtk_stack_new ());
  gtk_box_append (GTK_BOX (batch), build_head (self));
  gtk_box_append (GTK_BOX (batch), build_grid (self));
  gtk_box_append (GTK_BOX (batch), build_lower (self));
  gtk_widget_add_css_class (batch, "tm-batch");
  gtk_stack_add_named (self->stack, build_empty (self), "empty");
  gtk_stack_add_named (self->stack, batch, "batch");
  gtk_widget_set_hexpand (GTK_WIDGET (self->stack), TRUE);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->stack));
  g_signal_connect_swapped (self->cells, "changed", G_CALLBACK (cells_changed_cb), self);
}

GtkWidget *
tm_batch_page_new (void)
{
  return g_object_new (TM_TYPE_BATCH_PAGE, NULL);
}

static void
drop_document (TmBatchPage *self)
{
  stop_asking (self);
  show_answer (self, NULL);
  tm_batch_panel_set_busy (self->panel, FALSE);
  tm_batch_cells_set_job (self->cells, NULL);
  g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  keep_choice (self, NULL, NULL);
  self->place = 1;
}

void
tm_batch_page_set_document (TmBatchPage *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_BATCH_PAGE (self));

  if (self->document == document)
    return;
  if (self->document != NULL)
    drop_document (self);
  if (document == NULL)
    return;
  self->document = g_object_ref (document);
  g_signal_connect (document, "recorded", G_CALLBACK (recorded_cb), self);
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
  self->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    fill (self);
}

void
tm_batch_page_enter (TmBatchPage *self)
{
  g_return_if_fail (TM_IS_BATCH_PAGE (self));

  if (tm_batch_grid_piece (self->grid) != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (self->grid));
  else
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}
