/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-study-outcome.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-edit-study.h"
#include "app-study-picture.h"
#include "app-study-words.h"
#include "app-toast.h"
#include "plot-study.h"

#define N_PARTS   6
#define N_COLUMNS 4

struct _TmStudyOutcome {
  GtkBox parent_instance;

  TmDocument *document; /* borrowed */
  const TmStudy *study; /* borrowed */
  TmStudyResult result;
  TmStudyPlot *plot;
  TmBudgetUndo undo;

  GtkLabel *headline;
  GtkLabel *words;
  GtkLabel *budget;
  GtkLabel *problem;
  GtkWidget *put;
  GtkWidget *undo_button;
  GtkLabel *cells[N_PARTS][N_COLUMNS];
  GtkLabel *about;
  TmStudyPicture *parts;
  TmStudyPicture *pieces;
};

G_DEFINE_FINAL_TYPE (TmStudyOutcome, tm_study_outcome, GTK_TYPE_BOX)

static void
draw_parts_cb (gconstpointer plot, cairo_t *cr, double width, double height, const TmTheme *theme)
{
  tm_study_plot_draw_parts (plot, cr, width, height, theme);
}

static void
draw_pieces_cb (gconstpointer plot, cairo_t *cr, double width, double height, const TmTheme *theme)
{
  tm_study_plot_draw_pieces (plot, cr, width, height, theme);
}

static void
show_pictures (TmStudyOutcome *self)
{
  g_autofree char *parts = NULL, *pieces = NULL;

  tm_study_picture_set (self->parts, NULL, NULL, "");
  tm_study_picture_set (self->pieces, NULL, NULL, "");
  g_clear_pointer (&self->plot, tm_study_plot_free);
  if (self->study == NULL)
    return;
  self->plot = tm_study_plot_new (tm_document_job (self->document), self->study, &self->result);
  parts = tm_study_plot_describe_parts (self->plot);
  pieces = tm_study_plot_describe_pieces (self->plot);
  tm_study_picture_set (self->parts, self->plot, draw_parts_cb, parts);
  tm_study_picture_set (self->pieces, self->plot, draw_pieces_cb, pieces);
}

static void
show_row (TmStudyOutcome *self, guint row, const TmStudyPart *part, double by_range)
{
  const TmUnit unit = self->study->unit;
  g_autofree char *sd = isnan (part->sd) ? g_strdup (_ ("not known")) : tm_study_number (part->sd, unit);
  g_autofree char *low = tm_study_number (part->low, unit);
  g_autofree char *high = tm_study_number (part->high, unit);
  g_autofree char *interval = isnan (part->sd) ? g_strdup ("") : g_strdup_printf (_ ("%s to %s"), low, high);
  g_autofree char *range = tm_study_number (by_range, unit);

  gtk_label_set_text (self->cells[row][1], sd);
  gtk_label_set_text (self->cells[row][2], interval);
  gtk_label_set_text (self->cells[row][3], range);
}

static void
show_numbers (TmStudyOutcome *self)
{
  const TmStudyResult *r = &self->result;
  g_autofree char *about = NULL;

  show_row (self, 0, &r->ev, r->range.ev);
  show_row (self, 1, &r->av, r->range.av);
  show_row (self, 2, &r->interaction, NAN);
  show_row (self, 3, &r->grr, r->range.grr);
  show_row (self, 4, &r->pv, r->range.pv);
  show_row (self, 5, &r->tv, r->range.tv);
  about = g_strdup_printf (_ ("Standard deviations (%s), from an analysis of variance, with 95 %% "
                              "intervals; by ranges beside it. "
                              "The repeatability has %.0f degrees of freedom. The gauge makes %.1f %% of the "
                              "spread of this study."),
                           tm_unit_symbol (self->study->unit), r->ev_dof, r->percent_study);
  gtk_label_set_text (self->about, about);
}

static gboolean
is_analysed (TmStudyOutcome *self)
{
  return self->result.status == TM_STUDY_OK || self->result.status == TM_STUDY_ONE_PERSON;
}

static void
show_budget (TmStudyOutcome *self)
{
  TmJob *job = tm_document_job (self->document);
  g_autofree char *text = tm_words_study_budget (job, self->study, &self->result);
  TmStudyBudget budget;
  const gboolean can_put = tm_study_budget (job, self->study, &self->result, &budget) == TM_STUDY_BUDGET_OK;

  g_clear_pointer (&budget.people, tm_budget_line_free);
  gtk_label_set_text (self->budget, text);
  gtk_widget_set_sensitive (self->put, can_put && !tm_study_is_in_method (job, self->study));
  gtk_widget_set_visible (self->undo_button, self->undo.method != NULL);
}

static void
refresh (TmStudyOutcome *self)
{
  const TmJob *job = tm_document_job (self->document);
  g_autofree char *headline = NULL, *words = NULL;

  tm_study_result (job, self->study, &self->result);
  headline = tm_words_study_headline (job, self->study, &self->result);
  words = tm_words_study_result (job, self->study, &self->result);
  gtk_label_set_text (self->headline, headline);
  gtk_label_set_text (self->words, words);
  if (is_analysed (self))
    show_numbers (self);
  else
    gtk_label_set_text (self->about, "");
  show_pictures (self);
  show_budget (self);
}

void
tm_study_outcome_put (TmStudyOutcome *self)
{
  g_autoptr (GError) error = NULL;

  g_return_if_fail (TM_IS_STUDY_OUTCOME (self));

  if (self->study == NULL || !gtk_widget_get_sensitive (self->put))
    return;
  if (!tm_edit_put_study_into_method (self->document, self->study, &self->result, &self->undo, &error))
    {
      tm_dialog_problem_set (self->problem, error->message);
      return;
    }
  tm_dialog_problem_set (self->problem, NULL);
  show_budget (self);
  gtk_widget_grab_focus (self->undo_button);
}

void
tm_study_outcome_undo (TmStudyOutcome *self)
{
  g_autoptr (GError) error = NULL;

  g_return_if_fail (TM_IS_STUDY_OUTCOME (self));

  if (self->study == NULL || self->undo.method == NULL)
    return;
  if (!tm_edit_undo_study_in_method (self->document, &self->undo, &error) && error != NULL)
    {
      tm_dialog_problem_set (self->problem, error->message);
      return;
    }
  tm_budget_undo_clear (&self->undo);
  show_budget (self);
  gtk_widget_grab_focus (self->put);
}

static gboolean
key_cb (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state,
        TmStudyOutcome *self)
{
  if ((keyval != GDK_KEY_z && keyval != GDK_KEY_Z) || (state & GDK_CONTROL_MASK) == 0
      || self->undo.method == NULL)
    return GDK_EVENT_PROPAGATE;
  tm_study_outcome_undo (self);
  return GDK_EVENT_STOP;
}

static void
tm_study_outcome_finalize (GObject *object)
{
  TmStudyOutcome *self = TM_STUDY_OUTCOME (object);

  g_clear_pointer (&self->plot, tm_study_plot_free);
  tm_budget_undo_clear (&self->undo);
  G_OBJECT_CLASS (tm_study_outcome_parent_class)->finalize (object);
}

static void
tm_study_outcome_class_init (TmStudyOutcomeClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_study_outcome_finalize;
}

static GtkLabel *
add_label (GtkBox *box, const char *css_class)
{
  GtkWidget *label
      = g_object_new (GTK_TYPE_LABEL, "xalign", 0.0f, "wrap", TRUE, "wrap-mode", PANGO_WRAP_WORD_CHAR, NULL);

  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (box, label);
  return GTK_LABEL (label);
}

static GtkLabel *
add_cell (GtkGrid *grid, int column, int row, const char *text, gboolean heading)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0.0f : 1.0f);
  gtk_widget_add_css_class (label, heading ? "dim-label" : "numeric");
  gtk_grid_attach (grid, label, column, row, 1, 1);
  return GTK_LABEL (label);
}

static void
build_numbers (TmStudyOutcome *self, GtkBox *into)
{
  const char *labels[N_PARTS] = { _ ("repeatability"), _ ("people"), _ ("people with pieces"),
                                  _ ("gauge, in all"), _ ("pieces"), _ ("total") };
  const char *headings[N_COLUMNS]
      = { _ ("Part"), _ ("Standard deviation"), _ ("95 % interval"), _ ("By ranges") };
  GtkGrid *grid = GTK_GRID (gtk_grid_new ());

  gtk_grid_set_column_spacing (grid, 24);
  gtk_grid_set_row_spacing (grid, 4);
  tm_name_widget (GTK_WIDGET (grid), _ ("Parts of the spread"));
  for (int i = 0; i < N_COLUMNS; i++)
    add_cell (grid, i, 0, headings[i], TRUE);
  for (int row = 0; row < N_PARTS; row++)
    for (int i = 0; i < N_COLUMNS; i++)
      self->cells[row][i] = add_cell (grid, i, row + 1, i == 0 ? labels[row] : "", FALSE);
  gtk_widget_set_halign (GTK_WIDGET (grid), GTK_ALIGN_START);
  gtk_box_append (into, GTK_WIDGET (grid));
  self->about = add_label (into, "dim-label");
}

static void
build_pictures (TmStudyOutcome *self, GtkBox *into)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->parts = TM_STUDY_PICTURE (tm_study_picture_new ());
  self->pieces = TM_STUDY_PICTURE (tm_study_picture_new ());
  gtk_box_set_homogeneous (GTK_BOX (box), TRUE);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->parts));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->pieces));
  gtk_box_append (into, box);
}

static void
build_budget (TmStudyOutcome *self, GtkBox *into)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->put = tm_button_new (_ ("_Put into the method"));
  self->undo_button = tm_button_new (_ ("_Undo"));
  gtk_widget_add_css_class (self->put, "suggested-action");
  g_signal_connect_swapped (self->put, "clicked", G_CALLBACK (tm_study_outcome_put), self);
  g_signal_connect_swapped (self->undo_button, "clicked", G_CALLBACK (tm_study_outcome_undo), self);
  gtk_widget_set_visible (self->undo_button, FALSE);
  gtk_widget_set_valign (self->put, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (self->undo_button, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (box), self->put);
  gtk_box_append (GTK_BOX (box), self->undo_button);
  gtk_box_append (into, box);
  self->budget = add_label (GTK_BOX (box), "numeric");
  gtk_widget_set_hexpand (GTK_WIDGET (self->budget), TRUE);
  self->problem = tm_dialog_problem_new ();
  gtk_box_append (into, GTK_WIDGET (self->problem));
}

static void
tm_study_outcome_init (TmStudyOutcome *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkBox *box = GTK_BOX (self);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (box, 12);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-work");
  self->headline = add_label (box, "title-2");
  self->words = add_label (box, "tm-lines");
  build_budget (self, box);
  build_pictures (self, box);
  build_numbers (self, box);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

GtkWidget *
tm_study_outcome_new (void)
{
  return g_object_new (TM_TYPE_STUDY_OUTCOME, NULL);
}

void
tm_study_outcome_set (TmStudyOutcome *self, TmDocument *document, const TmStudy *study)
{
  g_return_if_fail (TM_IS_STUDY_OUTCOME (self));

  if (self->document != document || self->study != study)
    {
      tm_budget_undo_clear (&self->undo);
      tm_dialog_problem_set (self->problem, NULL);
    }
  self->document = document;
  self->study = study;
  if (study != NULL)
    refresh (self);
  else
    show_pictures (self);
}

void
tm_study_outcome_focus (TmStudyOutcome *self)
{
  g_return_if_fail (TM_IS_STUDY_OUTCOME (self));

  if (gtk_widget_get_sensitive (self->put))
    gtk_widget_grab_focus (self->put);
  else
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}

const char *
tm_study_outcome_headline (TmStudyOutcome *self)
{
  return gtk_label_get_text (self->headline);
}

const char *
tm_study_outcome_words (TmStudyOutcome *self)
{
  return gtk_label_get_text (self->words);
}

const char *
tm_study_outcome_budget (TmStudyOutcome *self)
{
  return gtk_label_get_text (self->budget);
}
