/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-pair-pane.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-edit-mate.h"
#include "app-fit-pairs.h"
#include "app-fit-words.h"
#include "app-list-row.h"
#include "app-panel-line.h"
#include "app-toast.h"

struct _TmPairPane {
  GtkBox parent_instance;

  TmDocument *document;
  GtkLabel *says;
  GtkLabel *left_out;
  GtkWidget *use;
  GtkListBox *list;
};

G_DEFINE_FINAL_TYPE (TmPairPane, tm_pair_pane, GTK_TYPE_BOX)

/* -------- Rows -------- */

static gboolean
is_meant (const TmFitPlace *row)
{
  const TmMateSize *mate = row->mate;

  return g_str_equal (mate->piece, row->piece->serial) && tm_fit_mate_place (mate) == row->place;
}

static char *
name_place (const TmFeature *feature, const TmFitPlace *row)
{
  return feature->places > 1 ? g_strdup_printf (_ ("Piece %s, place %u"), row->piece->serial, row->place)
                             : g_strdup_printf (_ ("Piece %s"), row->piece->serial);
}

static GtkWidget *
new_pair (const TmFeature *feature, const TmFitPlace *row, const TmFitWant *want)
{
  g_autofree char *title = name_place (feature, row);
  g_autofree char *range = NULL, *under = NULL, *end = NULL, *sentence = NULL;
  GtkWidget *list_row;

  if (row->mate == NULL)
    {
      sentence = g_strdup_printf (_ ("%s: no mate is left for it"), title);
      return tm_list_row_new (title, _ ("no mate is left for it"), "", sentence, "");
    }
  range = tm_words_fit_range (&row->check, feature->unit);
  under = is_meant (row) ? g_strdup_printf (_ ("mate %s, meant for it: %s"), row->mate->serial, range)
                         : g_strdup_printf (_ ("mate %s: %s"), row->mate->serial, range);
  end = tm_words_fit_inside (&row->check, want);
  sentence = *end != '\0' ? g_strdup_printf (_ ("%s: %s, %s"), title, under, end)
                          : g_strdup_printf (_ ("%s: %s"), title, under);
  list_row = tm_list_row_new (title, under, end, sentence, "");
  if (!tm_fit_is_within (&row->check, want))
    gtk_widget_add_css_class (list_row, "tm-cannot");
  return list_row;
}

static GtkWidget *
new_left_over (const TmMateSize *mate)
{
  g_autofree char *title = g_strdup_printf (_ ("Mate %s"), mate->serial);
  g_autofree char *sentence = g_strdup_printf (_ ("%s: no piece is left for it"), title);

  return tm_list_row_new (title, _ ("no piece is left for it"), "", sentence, "");
}

static void
add_rows (TmPairPane *self, const TmFitPairs *pairs, const TmFeature *feature)
{
  const TmFitWant want = tm_fit_wanted (feature);

  for (guint i = 0; i < pairs->places->len; i++)
    gtk_list_box_append (self->list,
                         new_pair (feature, &g_array_index (pairs->places, TmFitPlace, i), &want));
  for (guint i = 0; i < pairs->mates_over->len; i++)
    gtk_list_box_append (self->list, new_left_over (g_ptr_array_index (pairs->mates_over, i)));
}

/* -------- What it says -------- */

/* The next thing to do where there is nothing to pair. */
static char *
describe_nothing (const TmFitPairs *pairs)
{
  g_autofree char *why = NULL;

  if (pairs->status == TM_FIT_NOT_MEASURED && pairs->places->len == 0)
    return g_strdup (_ ("No piece of this feature has a size whose uncertainty is known. Measure some, with "
                        "a gauge or method, and they are paired here."));
  if (pairs->status == TM_FIT_NOT_MEASURED)
    return g_strdup (_ ("No mate with its uncertainty yet. Add those that were measured (Ctrl+I), and they "
                        "are paired here."));
  why = tm_words_fit_status (pairs->status);
  if (pairs->culprit != NULL)
    return g_strdup_printf ("%s: %s", pairs->culprit, why);
  return g_steal_pointer (&why);
}

static char *
describe_left_out (const TmFitPairs *pairs)
{
  g_autofree char *places = NULL, *mates = NULL;

  if (pairs->n_places_out > 0)
    places = g_strdup_printf (ngettext ("%u place is left out: not measured, or its uncertainty not known.",
                                        "%u places are left out: not measured, or their uncertainty not "
                                        "known.",
                                        pairs->n_places_out),
                              pairs->n_places_out);
  if (pairs->n_mates_out > 0)
    mates = g_strdup_printf (ngettext ("%u mate is left out: its uncertainty is not known.",
                                       "%u mates are left out: their uncertainty is not known.",
                                       pairs->n_mates_out),
                             pairs->n_mates_out);
  if (places != NULL && mates != NULL)
    return g_strdup_printf ("%s %s", places, mates);
  return g_strdup (places != NULL ? places : mates != NULL ? mates : "");
}

void
tm_pair_pane_show (TmPairPane *self, TmDocument *document)
{
  g_auto (TmFitPairs) pairs = { 0 };
  const TmFeature *feature;
  gboolean focused;

  g_return_if_fail (TM_IS_PAIR_PANE (self));

  g_set_object (&self->document, document);
  focused = tm_list_clear (self->list);
  if (document == NULL)
    return;
  feature = tm_bench_spot (tm_document_bench (document))->feature;
  tm_fit_pairs_of (document, &pairs);
  if (pairs.status == TM_FIT_OK && feature != NULL)
    add_rows (self, &pairs, feature);
  tm_panel_line_take (self->says, pairs.status == TM_FIT_OK ? tm_words_pairing (&pairs.pairing)
                                                            : describe_nothing (&pairs));
  tm_panel_line_take (self->left_out, describe_left_out (&pairs));
  gtk_widget_set_visible (self->use, pairs.n_pairs > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->list), pairs.n_pairs > 0);
  if (focused)
    gtk_widget_child_focus (GTK_WIDGET (self->list), GTK_DIR_TAB_FORWARD);
}

/* -------- Keeping the choice -------- */

/* Whether the place that @mate was meant for now gets another. */
static gboolean
loses_place (const TmFitPairs *pairs, const TmMateSize *mate)
{
  for (guint i = 0; i < pairs->places->len; i++)
    {
      const TmFitPlace *row = &g_array_index (pairs->places, TmFitPlace, i);

      if (row->mate != NULL && row->mate != mate && g_str_equal (mate->piece, row->piece->serial)
          && tm_fit_mate_place (mate) == row->place)
        return TRUE;
    }
  return FALSE;
}

/* Those that were left out, and whose place now gets another: no two are meant for one place. */
static void
add_displaced (GArray *choice, const TmFitPairs *pairs, TmJob *job, const TmFeature *feature)
{
  for (guint i = 0; i < job->mate_sizes->len; i++)
    {
      TmMateSize *mate = g_ptr_array_index (job->mate_sizes, i);
      const TmMeantFor none = { mate, tm_job_intern (job, NULL), 1 };

      if (g_str_equal (mate->feature, feature->balloon) && !g_ptr_array_find (pairs->mates, mate, NULL)
          && loses_place (pairs, mate))
        g_array_append_val (choice, none);
    }
}

/* The mates that get a piece, and those that get none any more. */
static GArray *
make_choice (const TmFitPairs *pairs, TmJob *job, const TmFeature *feature)
{
  GArray *choice = g_array_new (FALSE, FALSE, sizeof (TmMeantFor));

  for (guint i = 0; i < pairs->places->len; i++)
    {
      const TmFitPlace *row = &g_array_index (pairs->places, TmFitPlace, i);
      const TmMeantFor meant = { row->mate, row->piece->serial, row->place };

      if (row->mate != NULL)
        g_array_append_val (choice, meant);
    }
  for (guint i = 0; i < pairs->mates_over->len; i++)
    {
      const TmMeantFor none = { g_ptr_array_index (pairs->mates_over, i), tm_job_intern (job, NULL), 1 };

      g_array_append_val (choice, none);
    }
  add_displaced (choice, pairs, job, feature);
  return choice;
}

void
tm_pair_pane_use (TmPairPane *self)
{
  g_auto (TmFitPairs) pairs = { 0 };
  g_autoptr (GArray) choice = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  g_return_if_fail (TM_IS_PAIR_PANE (self));

  if (self->document == NULL)
    return;
  tm_fit_pairs_of (self->document, &pairs);
  if (pairs.status != TM_FIT_OK || pairs.n_pairs == 0)
    return;
  choice = make_choice (&pairs, tm_document_job (self->document),
                        tm_bench_spot (tm_document_bench (self->document))->feature);
  text = g_strdup_printf (ngettext ("%u mate is now meant for its piece",
                                    "%u mates are now meant for their pieces", pairs.n_pairs),
                          pairs.n_pairs);
  if (tm_edit_mean_mates_for (self->document, (const TmMeantFor *)(gconstpointer)choice->data, choice->len,
                              &error))
    tm_window_toast (GTK_WIDGET (self), text);
  else
    tm_window_show_error (GTK_WIDGET (self), error->message);
}

void
tm_pair_pane_enter (TmPairPane *self)
{
  g_return_if_fail (TM_IS_PAIR_PANE (self));

  gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}

/* -------- The widget -------- */

static void
tm_pair_pane_dispose (GObject *object)
{
  TmPairPane *self = TM_PAIR_PANE (object);

  g_clear_object (&self->document);
  G_OBJECT_CLASS (tm_pair_pane_parent_class)->dispose (object);
}

static void
tm_pair_pane_class_init (TmPairPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_pair_pane_dispose;
}

static GtkWidget *
build_head (TmPairPane *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 16);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  self->says = tm_panel_line_add (words, "tm-fit-next");
  self->left_out = tm_panel_line_add (words, "dim-label");
  gtk_widget_set_hexpand (words, TRUE);
  self->use = tm_button_new (_ ("_Use this pairing"));
  gtk_widget_add_css_class (self->use, "suggested-action");
  gtk_widget_set_valign (self->use, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (self->use, _ ("Each mate is then meant for its piece (Ctrl+Enter)"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->use), "fit.use-pairing");
  gtk_box_append (GTK_BOX (head), words);
  gtk_box_append (GTK_BOX (head), self->use);
  gtk_widget_add_css_class (head, "tm-fit-main");
  return head;
}

static void
tm_pair_pane_init (TmPairPane *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "tm-choices");
  tm_list_tab_leaves (self->list);
  tm_name_widget (GTK_WIDGET (self->list), _ ("Pairs"));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (self->list));
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (self), build_head (self));
  gtk_box_append (GTK_BOX (self), scroller);
}

GtkWidget *
tm_pair_pane_new (void)
{
  return g_object_new (TM_TYPE_PAIR_PANE, NULL);
}
