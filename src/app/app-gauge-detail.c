/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauge-detail.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-gauge-words.h"
#include "app-words.h"
#include "core-gauge-kind.h"
#include "core-recall.h"

/* Pixels. */
#define DETAIL_WIDTH 396

struct _TmGaugeDetail {
  GtkBox parent_instance;

  GtkLabel *tag;
  GtkLabel *kind;
  GtkLabel *state;
  GtkGrid *facts;
  guint n_facts;
  TmGaugeHistory *history;
};

G_DEFINE_FINAL_TYPE (TmGaugeDetail, tm_gauge_detail, GTK_TYPE_BOX)

static GtkWidget *
new_line (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_yalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_selectable (GTK_LABEL (label), FALSE);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

/* One line of what the gauge says; nothing where it says nothing. */
static void
add_fact (TmGaugeDetail *self, const char *title, const char *text)
{
  GtkWidget *value;

  if (*text == '\0')
    return;
  value = new_line (text, "numeric");
  gtk_widget_set_hexpand (value, TRUE);
  gtk_grid_attach (self->facts, new_line (title, "dim-label"), 0, (int)self->n_facts, 1, 1);
  gtk_grid_attach (self->facts, value, 1, (int)self->n_facts, 1, 1);
  self->n_facts++;
}

static void
drop_facts (TmGaugeDetail *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->facts))) != NULL)
    gtk_grid_remove (self->facts, child);
  self->n_facts = 0;
}

/* "Telescoping gauge and micrometer, Micrometer alone" */
static char *
list_methods (const TmJob *job, const char *tag)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < job->methods->len; i++)
    {
      const TmMethod *method = g_ptr_array_index (job->methods, i);

      if (tm_method_uses_gauge (job, method->name, tag))
        g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", method->name);
    }
  return g_string_free (text, FALSE);
}

/* "two points at once: cannot see an odd number of lobes" */
static const char *
describe_contact (const TmGaugeKind *kind)
{
  if (kind == NULL)
    return "";
  switch (kind->contact)
    {
    case TM_CONTACT_TWO_POINT:
      return _ ("at two points: it does not see an odd number of lobes");
    case TM_CONTACT_THREE_POINT:
      return _ ("at three points: it does not see an oval");
    case TM_CONTACT_FULL_FORM:
      return _ ("all around: it finds the mating size");
    case TM_CONTACT_OTHER:
    default:
      return "";
    }
}

static void
show_figures (TmGaugeDetail *self, const TmGauge *gauge)
{
  g_autofree char *range = tm_words_gauge_range (gauge);
  g_autofree char *made_to = tm_words_gauge_class (gauge);
  g_autofree char *resolution = tm_words_quantity (&gauge->resolution);
  g_autofree char *error_limit = tm_words_limit (&gauge->error_limit);
  g_autofree char *feel = tm_words_limit (&gauge->feel);
  g_autofree char *expansion = tm_quantity_format (&gauge->expansion);
  g_autofree char *per
      = gauge->expansion.given ? g_strdup_printf (_ ("%s millionths per °C"), expansion) : g_strdup ("");

  add_fact (self, _ ("Range"), range);
  add_fact (self, _ ("Made to"), made_to);
  add_fact (self, _ ("Reads"), resolution);
  add_fact (self, _ ("Limit of error"), error_limit);
  add_fact (self, _ ("Transfer feel"), feel);
  add_fact (self, _ ("Figures from"), tm_words_gauge_source (gauge->source));
  add_fact (self, _ ("Touches"), describe_contact (tm_gauge_kind_find (gauge->kind)));
  add_fact (self, _ ("Expansion"), per);
}

static void
show_facts (TmGaugeDetail *self, const TmJob *job, const TmGauge *gauge)
{
  g_autofree char *methods = list_methods (job, gauge->tag);

  drop_facts (self);
  show_figures (self, gauge);
  add_fact (self, _ ("Certificate"), gauge->certificate);
  add_fact (self, _ ("Serial number"), gauge->serial);
  add_fact (self, _ ("Owner"), gauge->owner);
  add_fact (self, _ ("Place"), gauge->place);
  add_fact (self, _ ("Methods"), methods);
}

static void
show_head (TmGaugeDetail *self, const TmJob *job, const TmGauge *gauge)
{
  g_autofree char *today = tm_today ();
  g_autofree char *state = tm_words_gauge_state (job, gauge, today);
  TmDue due = tm_gauge_due (job, gauge, today);
  g_autofree char *marked = g_strconcat (tm_words_due_mark (due), state, NULL);

  gtk_label_set_text (self->tag, gauge->tag);
  gtk_label_set_text (self->kind, tm_words_gauge_kind (gauge->kind));
  gtk_label_set_text (self->state, marked);
  if (due == TM_DUE_OVERDUE || due == TM_DUE_SOON)
    gtk_widget_add_css_class (GTK_WIDGET (self->state), "tm-overdue");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->state), "tm-overdue");
}

void
tm_gauge_detail_show (TmGaugeDetail *self, TmDocument *document, const char *tag)
{
  const TmJob *job;
  const TmGauge *gauge;

  g_return_if_fail (TM_IS_GAUGE_DETAIL (self));

  job = document != NULL ? tm_document_job (document) : NULL;
  gauge = job != NULL ? tm_job_find_gauge (job, tag) : NULL;
  gtk_widget_set_visible (GTK_WIDGET (self), gauge != NULL);
  tm_gauge_history_show (self->history, document, gauge != NULL ? tag : "");
  if (gauge == NULL)
    return;
  show_head (self, job, gauge);
  show_facts (self, job, gauge);
}

TmGaugeHistory *
tm_gauge_detail_history (TmGaugeDetail *self)
{
  g_return_val_if_fail (TM_IS_GAUGE_DETAIL (self), NULL);

  return self->history;
}

static void
tm_gauge_detail_class_init (TmGaugeDetailClass *klass)
{
}

static GtkWidget *
new_action_button (const char *label, const char *tip, const char *action)
{
  GtkWidget *button = tm_button_new (label);

  gtk_widget_set_tooltip_text (button, tip);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  return button;
}

static GtkWidget *
build_buttons (void)
{
  static const struct {
    const char *label, *tip, *action;
    int row;
  } buttons[] = {
    { N_ ("C_hange…"), N_ ("Change what the register says of it (Return)"), "register.change", 0 },
    { N_ ("_Duplicate…"), N_ ("Add another gauge with the same figures"), "register.duplicate", 0 },
    { N_ ("_Remove"), N_ ("Take it out of this job (Delete)"), "register.remove", 0 },
    { N_ ("Update _other jobs"),
      N_ ("Make this gauge so in every other job of the book that has it; signed reports stay as they are"),
      "register.spread", 1 },
    { N_ ("Reca_ll…"), N_ ("What this gauge has measured since it was last known good"), "register.recall",
      1 },
  };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *rows[]
      = { gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6) };

  for (guint i = 0; i < G_N_ELEMENTS (buttons); i++)
    gtk_box_append (GTK_BOX (rows[buttons[i].row]),
                    new_action_button (g_dgettext (GETTEXT_PACKAGE, buttons[i].label),
                                       g_dgettext (GETTEXT_PACKAGE, buttons[i].tip), buttons[i].action));
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    gtk_box_append (GTK_BOX (box), rows[i]);
  return box;
}

static GtkWidget *
build_head (TmGaugeDetail *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  self->tag = GTK_LABEL (new_line (NULL, "title-2"));
  self->kind = GTK_LABEL (new_line (NULL, "dim-label"));
  self->state = GTK_LABEL (new_line (NULL, NULL));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->tag));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->kind));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->state));
  return box;
}

static void
tm_gauge_detail_init (TmGaugeDetail *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 14);

  self->facts = GTK_GRID (gtk_grid_new ());
  gtk_grid_set_column_spacing (self->facts, 12);
  gtk_grid_set_row_spacing (self->facts, 4);
  self->history = TM_GAUGE_HISTORY (tm_gauge_history_new ());
  gtk_widget_add_css_class (box, "tm-side-content");
  gtk_box_append (GTK_BOX (box), build_head (self));
  gtk_box_append (GTK_BOX (box), build_buttons ());
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->facts));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->history));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_widget_set_size_request (scroller, DETAIL_WIDTH, -1);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-side");
  /* The list takes what is left, however much a line in here would like. */
  gtk_widget_set_hexpand (GTK_WIDGET (self), FALSE);
  gtk_widget_set_hexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (self), scroller);
}

GtkWidget *
tm_gauge_detail_new (void)
{
  return g_object_new (TM_TYPE_GAUGE_DETAIL, NULL);
}
