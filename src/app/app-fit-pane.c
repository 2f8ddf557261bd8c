/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-fit-pane.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-edit-mate.h"
#include "app-figure-entry.h"
#include "app-fit-mates.h"
#include "app-fit-words.h"
#include "app-panel-line.h"
#include "app-study-picture.h"
#include "app-words.h"
#include "plot-fit.h"

#define PLAIN_TEMPERATURE 20.0 /* °C, ISO 1 */

typedef struct {
  GtkWidget *box;
  GtkLabel *title;
  GtkLabel *lines;
} Section;

struct _TmFitPane {
  GtkBox parent_instance;

  TmDocument *document;
  char *serial;
  double part_temp, mate_temp;

  TmFigureEntry *least, *most;
  TmFigureEntry *part, *mate;
  TmFitMates *mates;

  GtkLabel *says;
  GtkLabel *whose;
  GtkLabel *next; /* what to do where something is missing */
  GtkWidget *give;
  Section measured, limits, warm;
  TmStudyPicture *picture;
  TmFitPicture shown;
};

enum { SIGNAL_CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmFitPane, tm_fit_pane, GTK_TYPE_BOX)

static void
draw_cb (gconstpointer plot, cairo_t *cr, double width, double height, const TmTheme *theme)
{
  tm_fit_plot_draw (plot, cr, width, height, theme);
}

static TmFeature *
get_feature (TmFitPane *self)
{
  return self->document != NULL ? tm_bench_spot (tm_document_bench (self->document))->feature : NULL;
}

/* -------- The wanted clearance -------- */

static gboolean
read_clearance (TmFigureEntry *entry, const TmFeature *feature, TmQuantity *out)
{
  g_autofree char *text = tm_figure_entry_text (entry);
  const TmReadStatus status = tm_quantity_read (text, feature->unit, out);
  g_autofree char *problem = NULL;

  if (status == TM_READ_EMPTY)
    *out = TM_QUANTITY_NONE;
  else if (status != TM_READ_OK)
    problem
        = g_strdup_printf (_ ("“%s”: %s"), text, g_dgettext (GETTEXT_PACKAGE, tm_read_status_text (status)));
  tm_figure_entry_set_problem (entry, problem);
  return problem == NULL;
}

/* Both or neither: what is wrong with one is said under the one just left. */
static void
wanted_left_cb (TmFigureEntry *entry, TmFitPane *self)
{
  TmFeature *feature = get_feature (self);
  TmQuantity least, most;
  g_autoptr (GError) error = NULL;
  gboolean fine;

  if (feature == NULL)
    return;
  fine = read_clearance (self->least, feature, &least);
  fine = read_clearance (self->most, feature, &most) && fine;
  if (fine && !tm_edit_wanted_clearance (self->document, feature, least, most, &error))
    tm_figure_entry_set_problem (entry, error->message);
}

static void
fill_wanted (TmFitPane *self, const TmFeature *feature)
{
  const TmMate *mate = &feature->mate;
  g_autofree char *least = tm_quantity_format_in (&mate->wanted_least, feature->unit);
  g_autofree char *most = tm_quantity_format_in (&mate->wanted_most, feature->unit);

  tm_figure_entry_set_unit (self->least, tm_unit_symbol (feature->unit));
  tm_figure_entry_set_unit (self->most, tm_unit_symbol (feature->unit));
  tm_figure_entry_fill (self->least, least);
  tm_figure_entry_fill (self->most, most);
}

/* -------- Temperatures -------- */

static gboolean
read_temperature (TmFigureEntry *entry, double *out)
{
  g_autofree char *text = tm_figure_entry_text (entry);
  g_autofree char *problem = NULL;
  TmQuantity read = TM_QUANTITY_NONE;
  const TmReadStatus status = tm_quantity_read (text, TM_UNIT_CELSIUS, &read);
  double celsius = PLAIN_TEMPERATURE;

  if (status == TM_READ_OK)
    celsius = tm_count_to_double (read.count, TM_UNIT_CELSIUS);
  if ((status != TM_READ_OK && status != TM_READ_EMPTY) || celsius < TM_FIT_TEMPERATURE_LEAST
      || celsius > TM_FIT_TEMPERATURE_MOST)
    problem = g_strdup_printf (_ ("“%s” cannot be right; write °C from %g to %g, such as 60."), text,
                               TM_FIT_TEMPERATURE_LEAST, TM_FIT_TEMPERATURE_MOST);
  tm_figure_entry_set_problem (entry, problem);
  if (problem == NULL)
    {
      *out = celsius;
      tm_figure_entry_fill (entry, text);
    }
  return problem == NULL;
}

static void
temperature_left_cb (TmFigureEntry *entry, TmFitPane *self)
{
  if (read_temperature (entry, entry == self->part ? &self->part_temp : &self->mate_temp))
    g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

void
tm_fit_pane_choose (TmFitPane *self, const char *serial)
{
  g_autofree char *chosen = g_strdup (serial);

  g_return_if_fail (TM_IS_FIT_PANE (self));

  if (g_strcmp0 (chosen, self->serial) == 0)
    return;
  g_free (self->serial);
  self->serial = g_steal_pointer (&chosen);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
mate_chosen_cb (TmFitMates *mates, const char *serial, TmFitPane *self)
{
  tm_fit_pane_choose (self, serial);
}

/* -------- What it comes to -------- */

static void
show_section (Section *section, const char *title, char *lines)
{
  gtk_label_set_text (section->title, title);
  gtk_widget_set_visible (section->box, *lines != '\0');
  tm_panel_line_take (section->lines, lines);
}

/* A status is said of something in the middle of a line; here it is one. */
static char *
say_status (TmFitStatus status)
{
  g_autofree char *word = tm_words_fit_status (status);

  return tm_words_start_upper (word);
}

static char *
describe_check (TmFitStatus status, const TmFitCheck *check, const TmFitState *state)
{
  g_autofree char *range = NULL, *chances = NULL, *nature = NULL;
  GString *text;

  if (status != TM_FIT_OK && status != TM_FIT_NO_METHOD)
    return say_status (status);
  range = tm_words_fit_range (check, state->feature->unit);
  chances = tm_words_fit_chances (check, &state->want);
  nature = tm_words_fit_nature (check);
  text = g_string_new (range);
  if (*chances != '\0')
    g_string_append_printf (text, "\n%s", chances);
  if (*nature != '\0')
    g_string_append_printf (text, "\n%s", nature);
  if (status == TM_FIT_NO_METHOD)
    {
      g_autofree char *why = say_status (status);

      g_string_append_printf (text, "\n%s", why);
    }
  return g_string_free (text, FALSE);
}

static void
show_warm (TmFitPane *self, const TmFitState *state)
{
  g_autofree char *title = g_strdup_printf (_ ("With this piece at %g °C and the mate at %g °C"),
                                            self->part_temp, self->mate_temp);

  if (!state->warm_asked || tm_fit_state_best (state) == NULL)
    show_section (&self->warm, title, g_strdup (""));
  else
    show_section (&self->warm, title, describe_check (state->warm_status, &state->warm, state));
}

/* "shaft 51.987 … 52.000 mm"; "" where none is given. */
static char *
describe_mate (const TmFeature *feature)
{
  g_autofree char *lower = tm_quantity_format (&feature->mate.lower);
  g_autofree char *upper = tm_words_quantity (&feature->mate.upper);

  if (!feature->mate.given || !feature->mate.lower.given || !feature->mate.upper.given)
    return g_strdup ("");
  return g_strdup_printf (_ ("%s %s … %s"), tm_words_kind (feature->mate.kind), lower, upper);
}

static void
show_sections (TmFitPane *self, const TmFitState *state)
{
  g_autofree char *measured = state->mate != NULL
                                  ? g_strdup_printf (_ ("As measured, with mate %s"), state->mate->serial)
                                  : g_strdup (_ ("As measured"));
  g_autofree char *limits = describe_mate (state->feature);
  g_autofree char *by_limits
      = *limits != '\0' ? g_strdup_printf (_ ("By limits, with a %s"), limits) : g_strdup (_ ("By limits"));

  /* What is only missing is said once, above. */
  show_section (&self->measured, measured,
                state->measured_status != TM_FIT_NOT_MEASURED
                    ? describe_check (state->measured_status, &state->measured, state)
                    : g_strdup (""));
  show_section (&self->limits, by_limits,
                state->feature->mate.given ? describe_check (state->limits_status, &state->limits, state)
                                           : g_strdup (""));
  show_warm (self, state);
}

/* The next thing to do, where the fit is not known as measured yet. */
static const char *
find_next (const TmFitState *state)
{
  if (state->side != TM_FIT_OK)
    return _ ("Say on the Job page whether this feature is inside or outside.");
  if (!state->feature->mate.given && state->mate == NULL)
    return _ ("Give its kind and limits, or add one that was measured (Ctrl+I).");
  if (!tm_fit_state_is_measured (state) && state->mate == NULL)
    return _ ("Add a mate that was measured (Ctrl+I) to see how it fits this piece.");
  if (!tm_fit_state_is_measured (state))
    return _ ("Measure this piece first: Escape goes back to measuring.");
  if (!state->want.has_least && !state->want.has_most)
    return _ ("Type the wanted clearance on the left to see the chances.");
  return "";
}

/* Where nothing can be said of the fit: what is missing, shortly. */
static char *
say_missing (const TmFitState *state)
{
  if (state->side != TM_FIT_OK)
    return g_strdup (_ ("Bore or shaft?"));
  if (!state->feature->mate.given && state->mate == NULL)
    return g_strdup (_ ("No mate yet"));
  if (state->measured_status == TM_FIT_NOT_MEASURED)
    return g_strdup (_ ("Not measured yet"));
  return say_status (state->measured_status);
}

static char *
describe_fit (const TmFitState *state)
{
  const TmFitCheck *best = tm_fit_state_best (state);

  if (best == NULL)
    return say_missing (state);
  return tm_words_fit_says (best == &state->limits ? state->limits_status : state->measured_status, best,
                            &state->want);
}

static char *
describe_whose (const TmFitState *state)
{
  if (state->feature->places > 1)
    return g_strdup_printf (_ ("Piece %s, place %u"), state->piece->serial, state->place);
  return g_strdup_printf (_ ("Piece %s"), state->piece->serial);
}

static void
show_picture (TmFitPane *self, const TmFitState *state)
{
  g_autofree char *words = NULL;

  self->shown = (TmFitPicture) { .unit = state->feature->unit, .want = state->want };
  self->shown.has_limits = state->limits_status == TM_FIT_OK;
  self->shown.limits = state->limits;
  self->shown.has_measured = tm_fit_state_is_measured (state);
  self->shown.measured = state->measured;
  self->shown.has_warm = state->warm_asked && tm_fit_state_best (state) != NULL
                         && (state->warm_status == TM_FIT_OK || state->warm_status == TM_FIT_NO_METHOD);
  self->shown.warm = state->warm;
  if (self->shown.has_limits || self->shown.has_measured)
    words = tm_fit_plot_describe (&self->shown);
  tm_study_picture_set (self->picture, words != NULL ? &self->shown : NULL, draw_cb,
                        words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->picture), words != NULL);
}

void
tm_fit_pane_show (TmFitPane *self, TmDocument *document, const TmFitState *state)
{
  g_return_if_fail (TM_IS_FIT_PANE (self));
  g_return_if_fail (document != NULL && state->feature != NULL);

  g_set_object (&self->document, document);
  fill_wanted (self, state->feature);
  tm_fit_mates_show (self->mates, document, state->mate != NULL ? state->mate->serial : NULL);
  tm_panel_line_take (self->says, describe_fit (state));
  tm_panel_line_take (self->whose, describe_whose (state));
  tm_panel_line_take (self->next, g_strdup (find_next (state)));
  gtk_widget_set_visible (self->give, !state->feature->mate.given);
  show_sections (self, state);
  show_picture (self, state);
}

void
tm_fit_pane_reset (TmFitPane *self)
{
  g_return_if_fail (TM_IS_FIT_PANE (self));

  g_clear_pointer (&self->serial, g_free);
  self->part_temp = self->mate_temp = PLAIN_TEMPERATURE;
  tm_figure_entry_reset (self->least, "");
  tm_figure_entry_reset (self->most, "");
  tm_figure_entry_reset (self->part, "");
  tm_figure_entry_reset (self->mate, "");
}

void
tm_fit_pane_forget_mate (TmFitPane *self)
{
  g_return_if_fail (TM_IS_FIT_PANE (self));

  g_clear_pointer (&self->serial, g_free);
}

const char *
tm_fit_pane_serial (TmFitPane *self)
{
  g_return_val_if_fail (TM_IS_FIT_PANE (self), NULL);

  return self->serial;
}

double
tm_fit_pane_part_temperature (TmFitPane *self)
{
  g_return_val_if_fail (TM_IS_FIT_PANE (self), PLAIN_TEMPERATURE);

  return self->part_temp;
}

double
tm_fit_pane_mate_temperature (TmFitPane *self)
{
  g_return_val_if_fail (TM_IS_FIT_PANE (self), PLAIN_TEMPERATURE);

  return self->mate_temp;
}

void
tm_fit_pane_add_mate (TmFitPane *self)
{
  g_return_if_fail (TM_IS_FIT_PANE (self));

  tm_fit_mates_add (self->mates);
}

void
tm_fit_pane_enter (TmFitPane *self)
{
  g_return_if_fail (TM_IS_FIT_PANE (self));

  tm_figure_entry_focus (self->least);
}

/* -------- Building -------- */

static GtkWidget *
add_heading (GtkWidget *box, const char *text)
{
  GtkLabel *heading = tm_panel_line_add (box, "dim-label");

  gtk_label_set_text (heading, text);
  return GTK_WIDGET (heading);
}

static TmFigureEntry *
add_entry (GtkWidget *box, const char *title, const char *spoken, GCallback left, TmFitPane *self)
{
  GtkWidget *entry = tm_figure_entry_new (title, spoken);

  g_signal_connect (entry, "left", left, self);
  gtk_box_append (GTK_BOX (box), entry);
  return TM_FIGURE_ENTRY (entry);
}

static GtkWidget *
build_side (TmFitPane *self)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  add_heading (side, _ ("Wanted clearance: below zero is interference, empty is open"));
  self->least
      = add_entry (side, _ ("Least"), _ ("Wanted clearance, least"), G_CALLBACK (wanted_left_cb), self);
  self->most = add_entry (side, _ ("Most"), _ ("Wanted clearance, most"), G_CALLBACK (wanted_left_cb), self);
  gtk_widget_add_css_class (add_heading (side, _ ("Temperatures in use")), "tm-fit-heading");
  self->part = add_entry (side, _ ("This piece"), _ ("Temperature of this piece"),
                          G_CALLBACK (temperature_left_cb), self);
  self->mate = add_entry (side, _ ("The mate"), _ ("Temperature of the mate"),
                          G_CALLBACK (temperature_left_cb), self);
  tm_figure_entry_set_unit (self->part, "°C");
  tm_figure_entry_set_unit (self->mate, "°C");
  tm_figure_entry_set_placeholder (self->part, "20");
  tm_figure_entry_set_placeholder (self->mate, "20");
  self->mates = TM_FIT_MATES (tm_fit_mates_new ());
  gtk_widget_set_vexpand (GTK_WIDGET (self->mates), TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->mates), "tm-fit-heading");
  g_signal_connect (self->mates, "chosen", G_CALLBACK (mate_chosen_cb), self);
  gtk_box_append (GTK_BOX (side), GTK_WIDGET (self->mates));
  gtk_widget_add_css_class (side, "tm-fit-side");
  /* The column keeps its width: what it comes to takes what is left. */
  gtk_widget_set_hexpand (side, FALSE);
  return side;
}

static Section
add_section (GtkWidget *box)
{
  Section section = { .box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2) };

  gtk_widget_add_css_class (section.box, "tm-section");
  section.title = tm_panel_line_add (section.box, "dim-label");
  section.lines = tm_panel_line_add (section.box, "tm-lines");
  gtk_box_append (GTK_BOX (box), section.box);
  return section;
}

static GtkWidget *
build_words (TmFitPane *self)
{
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->says = tm_panel_line_add (words, "tm-fit-says");
  self->whose = tm_panel_line_add (words, "tm-where");
  self->next = tm_panel_line_add (words, "tm-fit-next");
  self->give = tm_button_new (_ ("_Give the mate’s limits…"));
  gtk_widget_set_halign (self->give, GTK_ALIGN_START);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->give), "fit.give-mate");
  gtk_box_append (GTK_BOX (words), self->give);
  self->measured = add_section (words);
  self->limits = add_section (words);
  self->warm = add_section (words);
  return words;
}

static GtkWidget *
build_main (TmFitPane *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_box_append (GTK_BOX (box), build_words (self));
  self->picture = TM_STUDY_PICTURE (tm_study_picture_new ());
  gtk_widget_set_vexpand (GTK_WIDGET (self->picture), TRUE);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->picture));
  gtk_widget_add_css_class (box, "tm-fit-main");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_widget_set_hexpand (scroller, TRUE);
  return scroller;
}

static void
tm_fit_pane_dispose (GObject *object)
{
  TmFitPane *self = TM_FIT_PANE (object);

  g_clear_object (&self->document);
  G_OBJECT_CLASS (tm_fit_pane_parent_class)->dispose (object);
}

static void
tm_fit_pane_finalize (GObject *object)
{
  TmFitPane *self = TM_FIT_PANE (object);

  g_clear_pointer (&self->serial, g_free);
  G_OBJECT_CLASS (tm_fit_pane_parent_class)->finalize (object);
}

static void
tm_fit_pane_class_init (TmFitPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_fit_pane_dispose;
  G_OBJECT_CLASS (klass)->finalize = tm_fit_pane_finalize;
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                          NULL, NULL, G_TYPE_NONE, 0);
}

static void
tm_fit_pane_init (TmFitPane *self)
{
  self->part_temp = self->mate_temp = PLAIN_TEMPERATURE;
  gtk_box_append (GTK_BOX (self), build_side (self));
  gtk_box_append (GTK_BOX (self), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (self), build_main (self));
}

GtkWidget *
tm_fit_pane_new (void)
{
  return g_object_new (TM_TYPE_FIT_PANE, NULL);
}
