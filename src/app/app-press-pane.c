/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-press-pane.h"

#include <glib/gi18n-lib.h>

#include "app-edit-press.h"
#include "app-figure-entry.h"
#include "app-material-choice.h"
#include "app-panel-line.h"
#include "app-press-table.h"
#include "app-press-words.h"
#include "app-toast.h"
#include "core-form.h"

struct _TmPressPane {
  GtkBox parent_instance;

  TmDocument *document;
  gboolean bore; /* the feature is the hub */

  TmFigureEntry *entries[TM_N_PRESS_FIGURES];
  TmMaterialChoice *hub;
  TmMaterialChoice *shaft;

  GtkLabel *says;
  GtkLabel *basis;
  TmPressTable *table;
  GtkLabel *cautions; /* of this press */
  GtkLabel *notes;
};

G_DEFINE_FINAL_TYPE (TmPressPane, tm_press_pane, GTK_TYPE_BOX)

static TmFeature *
get_feature (TmPressPane *self)
{
  return self->document != NULL ? tm_bench_spot (tm_document_bench (self->document))->feature : NULL;
}

/* -------- Facts -------- */

static TmPressFigure
which_entry (TmPressPane *self, const TmFigureEntry *entry)
{
  for (guint i = 0; i < TM_N_PRESS_FIGURES; i++)
    if (self->entries[i] == entry)
      return (TmPressFigure)i;
  g_assert_not_reached ();
}

/* What is refused stays typed, is marked, and nothing is kept. */
static void
entry_left_cb (TmFigureEntry *entry, TmPressPane *self)
{
  TmFeature *feature = get_feature (self);
  const TmPressFigure which = which_entry (self, entry);
  g_autofree char *text = tm_figure_entry_text (entry);
  g_autofree char *problem = NULL;
  g_autoptr (GError) error = NULL;
  TmPress press;

  if (feature == NULL)
    return;
  press = feature->press;
  if (!tm_press_figure_read (tm_document_job (self->document), feature, which, text,
                             tm_press_quantity (&press, which), &problem))
    {
      tm_figure_entry_set_problem (entry, problem);
      return;
    }
  tm_figure_entry_set_problem (entry, NULL);
  if (!tm_edit_put_press (self->document, feature, &press, &error))
    tm_figure_entry_set_problem (entry, error->message);
}

static void
material_chosen_cb (TmMaterialChoice *choice, const char *name, TmPressPane *self)
{
  TmFeature *feature = get_feature (self);
  const char *material;
  g_autoptr (GError) error = NULL;
  TmPress press;

  if (feature == NULL)
    return;
  press = feature->press;
  material = tm_job_intern (tm_document_job (self->document), name);
  if (choice == self->hub)
    press.hub_material = material;
  else
    press.shaft_material = material;
  if (!tm_edit_put_press (self->document, feature, &press, &error))
    tm_window_show_error (GTK_WIDGET (self), error->message);
}

static void
fill_entries (TmPressPane *self, const TmJob *job, TmFeature *feature)
{
  for (guint i = 0; i < TM_N_PRESS_FIGURES; i++)
    {
      const TmUnit unit = tm_press_unit (job, feature, (TmPressFigure)i);
      g_autofree char *text
          = tm_quantity_format_in (tm_press_quantity (&feature->press, (TmPressFigure)i), unit);

      tm_figure_entry_set_unit (self->entries[i], tm_unit_symbol (unit));
      tm_figure_entry_fill (self->entries[i], text);
    }
}

/* The feature's own side is made of what the job is, where nothing else is said. */
static void
fill_materials (TmPressPane *self, const TmJob *job, const TmFeature *feature)
{
  g_autofree char *own = *job->material != '\0' ? g_strdup_printf (_ ("as the job: %s"), job->material)
                                                : g_strdup (_ ("not stated"));

  tm_material_choice_show (self->hub, job, self->bore ? own : _ ("not stated"), feature->press.hub_material);
  tm_material_choice_show (self->shaft, job, self->bore ? _ ("not stated") : own,
                           feature->press.shaft_material);
}

/* -------- What it comes to -------- */

/* The entry that a status is about is marked, so that the mend is found at once; -1: none. */
static int
find_wrong (TmPressStatus status)
{
  switch (status)
    {
    case TM_PRESS_HUB_TOO_THIN:
      return TM_PRESS_HUB_OUTSIDE;
    case TM_PRESS_SHAFT_BORE:
      return TM_PRESS_SHAFT_INSIDE;
    case TM_PRESS_BAD_LENGTH:
      return TM_PRESS_LENGTH;
    case TM_PRESS_BAD_FRICTION:
      return TM_PRESS_FRICTION_LEAST;
    case TM_PRESS_BAD_ROUGHNESS:
      return TM_PRESS_HUB_ROUGHNESS;
    case TM_PRESS_BAD_GAP:
      return TM_PRESS_GAP;
    case TM_PRESS_OK:
    case TM_PRESS_NO_INTERFERENCE:
    case TM_PRESS_BAD_DIAMETER:
    case TM_PRESS_BAD_INTERFERENCE:
    case TM_PRESS_TOO_MUCH:
    case TM_PRESS_HUB_MODULUS:
    case TM_PRESS_SHAFT_MODULUS:
    case TM_PRESS_HUB_POISSON:
    case TM_PRESS_SHAFT_POISSON:
    case TM_PRESS_BAD_YIELD:
    case TM_PRESS_BAD_EXPANSION:
    case TM_PRESS_BAD_TEMPERATURE:
    case TM_N_PRESS_STATUSES:
    default:
      return -1;
    }
}

/* What is only not stated yet is not wrong. */
static gboolean
is_empty (const TmPressPane *self, guint which)
{
  g_autofree char *text = tm_figure_entry_text (self->entries[which]);

  return *text == '\0';
}

static void
mark_wrong (TmPressPane *self, TmPressStatus status)
{
  const int wrong = find_wrong (status);

  for (int i = 0; i < TM_N_PRESS_FIGURES; i++)
    tm_figure_entry_mark (self->entries[i], (i == wrong && !is_empty (self, (guint)i))
                                                || *tm_figure_entry_problem (self->entries[i]) != '\0');
}

/* The material of one side as it was found; FALSE: none is known. */
static gboolean
find_material (const TmJob *job, const TmFeature *feature, gboolean hub, gboolean own, TmElastic *out)
{
  const char *name = hub ? feature->press.hub_material : feature->press.shaft_material;

  if (*name == '\0' && own)
    name = job->material;
  return *name != '\0' && tm_elastic_find (job, name, out);
}

static void
show_notes (TmPressPane *self, const TmPressInput *input, const TmPressAnswer *answer, TmUnit unit)
{
  const TmJob *job = tm_document_job (self->document);
  const TmFeature *feature = get_feature (self);
  TmElastic hub, shaft;
  const gboolean has_hub = find_material (job, feature, TRUE, self->bore, &hub);
  const gboolean has_shaft = find_material (job, feature, FALSE, !self->bore, &shaft);
  g_auto (GStrv) notes
      = tm_words_press_notes (input, answer, has_hub ? &hub : NULL, has_shaft ? &shaft : NULL, unit);

  g_auto (GStrv) cautions = tm_words_press_cautions (answer, tm_press_has_plastic (job, feature), FALSE);

  tm_panel_line_take (self->cautions, g_strjoinv ("\n", cautions));
  tm_panel_line_take (self->notes, g_strjoinv ("\n", notes));
}

/* What is to be mended is a sentence, not a figure to be read from afar. */
static void
show_as_problem (GtkLabel *line, gboolean problem)
{
  if (problem)
    gtk_widget_add_css_class (GTK_WIDGET (line), "tm-problem");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (line), "tm-problem");
}

static void
show_answer (TmPressPane *self, const TmFitState *state)
{
  const TmUnit unit = tm_press_unit (tm_document_job (self->document), state->feature, TM_PRESS_LENGTH);
  const gboolean measured = tm_fit_state_is_measured (state);
  TmPressInput input;
  TmPressAnswer answer;
  g_autoptr (GPtrArray) rows = NULL;

  tm_fit_state_press (self->document, state, &input);
  tm_press (&input, &answer);
  rows = tm_words_press_rows (&input, &answer, unit);
  tm_panel_line_take (self->says, tm_words_press_says (&answer, unit));
  show_as_problem (self->says, answer.status != TM_PRESS_OK);
  tm_panel_line_take (self->basis,
                      measured ? g_strdup_printf (_ ("As measured: piece %s with mate %s"),
                                                  state->piece->serial, state->mate->serial)
                               : g_strdup (_ ("By limits: measure the piece, and add a measured mate, to see "
                                              "what these two come to")));
  tm_press_table_show (self->table, rows, measured ? _ ("as measured") : _ ("middle"));
  mark_wrong (self, answer.status);
  show_notes (self, &input, &answer, unit);
}

/* Without a fit, or a cylinder, there is nothing to press: what to do first. */
static void
show_nothing (TmPressPane *self, const TmFeature *feature)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new ();
  const gboolean round = tm_feature_is_diameter (feature);

  tm_panel_line_take (self->says,
                      g_strdup (round ? _ ("No interference is known yet") : _ ("Not a round fit")));
  show_as_problem (self->says, FALSE);
  tm_panel_line_take (self->basis,
                      g_strdup (round ? _ ("Give the mate’s limits, or measure this piece and add a "
                                           "measured mate, under Fit.")
                                      : _ ("A press is worked out for a bore or a shaft; this feature has no "
                                           "diameter to press on.")));
  tm_press_table_show (self->table, rows, "");
  tm_panel_line_take (self->cautions, g_strdup (""));
  tm_panel_line_take (self->notes, g_strdup (""));
  mark_wrong (self, TM_PRESS_OK);
}

void
tm_press_pane_show (TmPressPane *self, TmDocument *document, const TmFitState *state)
{
  g_return_if_fail (TM_IS_PRESS_PANE (self));
  g_return_if_fail (document != NULL && state->feature != NULL);

  g_set_object (&self->document, document);
  self->bore = state->bore;
  fill_entries (self, tm_document_job (document), state->feature);
  fill_materials (self, tm_document_job (document), state->feature);
  if (tm_feature_is_diameter (state->feature) && tm_fit_state_best (state) != NULL)
    show_answer (self, state);
  else
    show_nothing (self, state->feature);
}

void
tm_press_pane_reset (TmPressPane *self)
{
  g_return_if_fail (TM_IS_PRESS_PANE (self));

  for (guint i = 0; i < TM_N_PRESS_FIGURES; i++)
    tm_figure_entry_reset (self->entries[i], "");
}

void
tm_press_pane_enter (TmPressPane *self)
{
  g_return_if_fail (TM_IS_PRESS_PANE (self));

  tm_figure_entry_focus (self->entries[TM_PRESS_LENGTH]);
}

/* -------- Building -------- */

static void
add_entry (TmPressPane *self, GtkWidget *box, TmPressFigure which)
{
  GtkWidget *entry = tm_figure_entry_new (tm_press_figure_title (which), NULL);

  self->entries[which] = TM_FIGURE_ENTRY (entry);
  g_signal_connect (entry, "left", G_CALLBACK (entry_left_cb), self);
  gtk_box_append (GTK_BOX (box), entry);
}

static TmMaterialChoice *
add_material (TmPressPane *self, GtkWidget *box, const char *title)
{
  GtkWidget *choice = tm_material_choice_new (title);

  g_signal_connect (choice, "chosen", G_CALLBACK (material_chosen_cb), self);
  gtk_box_append (GTK_BOX (box), choice);
  return TM_MATERIAL_CHOICE (choice);
}

static GtkWidget *
build_side (TmPressPane *self)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *scroller = gtk_scrolled_window_new ();

  add_entry (self, side, TM_PRESS_LENGTH);
  add_entry (self, side, TM_PRESS_HUB_OUTSIDE);
  add_entry (self, side, TM_PRESS_SHAFT_INSIDE);
  tm_figure_entry_set_placeholder (self->entries[TM_PRESS_SHAFT_INSIDE], _ ("solid"));
  self->hub = add_material (self, side, _ ("Hub material"));
  self->shaft = add_material (self, side, _ ("Shaft material"));
  for (guint i = TM_PRESS_FRICTION_LEAST; i < TM_N_PRESS_FIGURES; i++)
    add_entry (self, side, (TmPressFigure)i);
  tm_figure_entry_set_placeholder (self->entries[TM_PRESS_HUB_ROUGHNESS], _ ("none lost"));
  tm_figure_entry_set_placeholder (self->entries[TM_PRESS_SHAFT_ROUGHNESS], _ ("none lost"));
  gtk_widget_add_css_class (side, "tm-fit-side");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), side);
  /* The column keeps its width: what it comes to takes what is left. */
  gtk_widget_set_hexpand (scroller, FALSE);
  return scroller;
}

/* What holds for every press. */
static char *
join_always (void)
{
  const TmPressAnswer any = { 0 };
  g_auto (GStrv) cautions = tm_words_press_cautions (&any, FALSE, TRUE);

  return g_strjoinv (" ", cautions);
}

static GtkWidget *
build_main (TmPressPane *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->says = tm_panel_line_add (box, "tm-fit-says");
  self->basis = tm_panel_line_add (box, "tm-where");
  self->table = TM_PRESS_TABLE (tm_press_table_new ());
  gtk_box_append (GTK_BOX (content), GTK_WIDGET (self->table));
  self->cautions = tm_panel_line_add (content, "tm-press-caution");
  self->notes = tm_panel_line_add (content, "tm-lines");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), content);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (box), scroller);
  /* Never scrolled out of sight. */
  tm_panel_line_take (tm_panel_line_add (box, "tm-caution"), join_always ());
  gtk_widget_set_hexpand (box, TRUE);
  gtk_widget_add_css_class (box, "tm-fit-main");
  return box;
}

static void
tm_press_pane_dispose (GObject *object)
{
  TmPressPane *self = TM_PRESS_PANE (object);

  g_clear_object (&self->document);
  G_OBJECT_CLASS (tm_press_pane_parent_class)->dispose (object);
}

static void
tm_press_pane_class_init (TmPressPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_press_pane_dispose;
}

static void
tm_press_pane_init (TmPressPane *self)
{
  gtk_box_append (GTK_BOX (self), build_side (self));
  gtk_box_append (GTK_BOX (self), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (self), build_main (self));
}

GtkWidget *
tm_press_pane_new (void)
{
  return g_object_new (TM_TYPE_PRESS_PANE, NULL);
}
