/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-evidence.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-evidence-words.h"
#include "app-feature-words.h"
#include "app-panel-line.h"
#include "app-pin-words.h"

struct _TmEvidence {
  GtkBox parent_instance;

  GtkWidget *methods; /* box of heading, parts, together */
  GtkLabel *methods_heading;
  GtkLabel *parts;
  GtkLabel *together;
  GtkWidget *pins; /* box of heading, lines */
  GtkLabel *proves;
  GtkWidget *counts; /* GtkDropDown: assigned, combined */
  gboolean filling;
};

enum { SIGNAL_COUNTS_CHOSEN, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmEvidence, tm_evidence, GTK_TYPE_BOX)

static void
counts_selected_cb (GtkDropDown *counts, GParamSpec *pspec, TmEvidence *self)
{
  if (!self->filling)
    g_signal_emit (self, signals[SIGNAL_COUNTS_CHOSEN], 0, gtk_drop_down_get_selected (counts) == 1);
}

static void
tm_evidence_class_init (TmEvidenceClass *klass)
{
  signals[SIGNAL_COUNTS_CHOSEN] = g_signal_new ("counts-chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST,
                                                0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
}

static GtkWidget *
add_section (TmEvidence *self, const char *heading, GtkLabel **label)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkLabel *title = tm_panel_line_add (box, "dim-label");
  gtk_label_set_text (title, heading);
  gtk_widget_add_css_class (box, "tm-section");
  gtk_box_append (GTK_BOX (self), box);
  if (label != NULL)
    *label = title;
  return box;
}

static GtkWidget *
build_counts (TmEvidence *self)
{
  const char *const words[] = { _ ("The assigned method counts"), _ ("All together count"), NULL };
  GtkWidget *counts = gtk_drop_down_new_from_strings (words);
  tm_access_name_drop_down (GTK_DROP_DOWN (counts), _ ("Which value counts"));
  gtk_widget_set_tooltip_text (counts, _ ("Which value is judged and reported for this feature"));
  gtk_widget_add_css_class (counts, "tm-methods");
  gtk_widget_add_css_class (counts, "tm-counts");
  g_signal_connect (counts, "notify::selected", G_CALLBACK (counts_selected_cb), self);
  return counts;
}

static void
tm_evidence_init (TmEvidence *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  self->methods = add_section (self, "", &self->methods_heading);
  self->parts = tm_panel_line_add (self->methods, "tm-parts");
  self->together = tm_panel_line_add (self->methods, "tm-together");
  self->pins = add_section (self, _ ("Pins"), NULL);
  self->proves = tm_panel_line_add (self->pins, "tm-lines");
  self->counts = build_counts (self);
  gtk_box_append (GTK_BOX (self), self->counts);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

GtkWidget *
tm_evidence_new (void)
{
  return g_object_new (TM_TYPE_EVIDENCE, NULL);
}

/* The station that decides; else, with pins alone, none. */
static const char *
find_station (const TmJudgement *judgement)
{
  if (judgement->deciding < judgement->sizes.n_stations)
    return judgement->sizes.stations[judgement->deciding].station;
  return "";
}

/* One method alone is worth a line when it is not the one named under the gauge. */
static gboolean
is_worth_saying (const TmCombined *combined, const char *in_force)
{
  return combined->n_parts > 1
         || (combined->n_parts == 1 && !g_str_equal (combined->parts[0].method_name, in_force));
}

static char *
describe_heading (const TmCombined *combined, const char *station)
{
  if (combined->n_parts == 1)
    return *station != '\0' ? g_strdup_printf (_ ("Read by, %s"), station) : g_strdup (_ ("Read by"));
  return *station != '\0' ? g_strdup_printf (_ ("By several methods, %s"), station)
                          : g_strdup (_ ("By several methods"));
}

static gboolean
show_methods (TmEvidence *self, const TmJob *job, const char *in_force, const TmJudgement *judgement)
{
  g_auto (TmCombined) combined = { NULL };
  g_autofree char *station = tm_words_station (find_station (judgement), judgement->feature->unit);
  tm_combine (job, judgement->piece, judgement->feature, judgement->place, find_station (judgement),
              &combined);
  gboolean worth = is_worth_saying (&combined, in_force);
  gtk_widget_set_visible (self->methods, worth);
  if (!worth)
    return FALSE;
  tm_panel_line_take (self->methods_heading, describe_heading (&combined, station));
  tm_panel_line_take (self->parts, tm_words_methods (&combined, judgement->feature));
  tm_panel_line_take (self->together, tm_words_together (&combined, judgement->feature));
  return combined.n_parts > 1;
}

static gboolean
show_pins (TmEvidence *self, const TmJob *job, const TmJudgement *judgement)
{
  g_auto (TmPinEvidence) alone = { NULL };
  g_auto (TmPinEvidence) with_readings = { NULL };
  gboolean any = tm_pin_evidence (job, judgement->piece, judgement->feature, judgement->place, FALSE, &alone);
  gtk_widget_set_visible (self->pins, any);
  if (!any)
    return FALSE;
  tm_pin_evidence (job, judgement->piece, judgement->feature, judgement->place, TRUE, &with_readings);
  tm_panel_line_take (self->proves,
                      tm_words_pins_prove (&alone, judgement->sizes.n_stations > 0 ? &with_readings : NULL,
                                           judgement->feature));
  return TRUE;
}

void
tm_evidence_show (TmEvidence *self, TmDocument *document, const TmJudgement *judgement)
{
  g_return_if_fail (TM_IS_EVIDENCE (self));

  if (judgement == NULL || tm_kind_is_attribute (judgement->feature->kind))
    {
      gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
      return;
    }
  const TmJob *job = tm_document_job (document);
  const char *chosen = tm_bench_method (tm_document_bench (document));
  gboolean several
      = show_methods (self, job, *chosen != '\0' ? chosen : judgement->feature->method, judgement);
  gboolean pins = show_pins (self, job, judgement);
  gtk_widget_set_visible (GTK_WIDGET (self), pins || gtk_widget_get_visible (self->methods));
  self->filling = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->counts),
                              judgement->feature->counts == TM_COUNTS_COMBINED ? 1 : 0);
  gtk_widget_set_visible (self->counts, several || (pins && judgement->sizes.n_stations > 0));
  self->filling = FALSE;
}
