/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-verdict-panel.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-reading-words.h"
#include "app-tip.h"

/* A small heading and the lines under it; hidden when there is nothing to say. */
typedef struct {
  GtkWidget *box;
  GtkLabel *lines;
} TmSection;

struct _TmVerdictPanel {
  GtkBox parent_instance;

  GtkLabel *verdict;
  GtkLabel *where;
  GtkLabel *size;
  GtkLabel *chance;
  TmSection form;
  TmSection gauge;
  TmSection todo;
  TmSection nonconformance;
  GtkLabel *caution;
  GtkWidget *methods; /* GtkDropDown */
  GPtrArray *names;   /* char *: method names by position */
  gboolean filling;
};

enum { SIGNAL_METHOD_CHOSEN, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmVerdictPanel, tm_verdict_panel, GTK_TYPE_BOX)

static void
method_selected_cb (GtkDropDown *drop_down, GParamSpec *pspec, TmVerdictPanel *self)
{
  guint chosen = gtk_drop_down_get_selected (drop_down);
  if (!self->filling && chosen < self->names->len)
    g_signal_emit (self, signals[SIGNAL_METHOD_CHOSEN], 0, g_ptr_array_index (self->names, chosen));
}

static void
tm_verdict_panel_finalize (GObject *object)
{
  TmVerdictPanel *self = TM_VERDICT_PANEL (object);
  g_clear_pointer (&self->names, g_ptr_array_unref);
  G_OBJECT_CLASS (tm_verdict_panel_parent_class)->finalize (object);
}

static void
tm_verdict_panel_class_init (TmVerdictPanelClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_verdict_panel_finalize;
  signals[SIGNAL_METHOD_CHOSEN] = g_signal_new ("method-chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST,
                                                0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static GtkLabel *
add_label (GtkWidget *box, const char *css_class)
{
  GtkLabel *label = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (label, 0);
  gtk_label_set_wrap (label, TRUE);
  gtk_label_set_wrap_mode (label, PANGO_WRAP_WORD_CHAR);
  /* Lines fill the column's width and never ask for more. */
  gtk_label_set_max_width_chars (label, 1);
  gtk_widget_add_css_class (GTK_WIDGET (label), css_class);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (label));
  return label;
}

static TmSection
add_section (GtkWidget *box, const char *heading, GtkWidget *first)
{
  TmSection section = { .box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2) };
  gtk_widget_add_css_class (section.box, "tm-section");
  gtk_label_set_text (add_label (section.box, "dim-label"), heading);
  if (first != NULL)
    gtk_box_append (GTK_BOX (section.box), first);
  section.lines = add_label (section.box, "tm-lines");
  gtk_box_append (GTK_BOX (box), section.box);
  return section;
}

static void
setup_method_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer chars)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (label), GPOINTER_TO_INT (chars));
  tm_tip_own_text (label);
  gtk_list_item_set_child (item, label);
}

static void
bind_method_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer chars)
{
  GtkStringObject *text = gtk_list_item_get_item (item);
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), gtk_string_object_get_string (text));
}

static GtkListItemFactory *
make_factory (int chars)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_signal_connect (factory, "setup", G_CALLBACK (setup_method_cb), GINT_TO_POINTER (chars));
  g_signal_connect (factory, "bind", G_CALLBACK (bind_method_cb), NULL);
  return factory;
}

/* A long name is cut in the button, which must not widen the column, later in the list. */
static GtkWidget *
build_methods (void)
{
  GtkWidget *methods = gtk_drop_down_new (NULL, NULL);
  g_autoptr (GtkListItemFactory) button = make_factory (1);
  g_autoptr (GtkListItemFactory) list = make_factory (60);
  gtk_drop_down_set_factory (GTK_DROP_DOWN (methods), button);
  gtk_drop_down_set_list_factory (GTK_DROP_DOWN (methods), list);
  gtk_widget_add_css_class (methods, "tm-methods");
  gtk_widget_set_tooltip_text (methods, _ ("The gauge or method that reads this feature"));
  tm_access_name_drop_down (GTK_DROP_DOWN (methods), _ ("Gauge"));
  return methods;
}

static GtkWidget *
build_words (TmVerdictPanel *self)
{
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *rule = gtk_separator_new (GTK_ORIENTATION_HORIZONTAL);
  self->verdict = add_label (words, "tm-verdict");
  self->where = add_label (words, "tm-where");
  gtk_box_append (GTK_BOX (words), rule);
  gtk_widget_add_css_class (rule, "tm-rule");
  self->size = add_label (words, "tm-size");
  self->chance = add_label (words, "tm-chance");
  self->form = add_section (words, _ ("Form"), NULL);
  self->methods = build_methods ();
  self->gauge = add_section (words, _ ("Gauge"), self->methods);
  self->nonconformance = add_section (words, _ ("Nonconformance"), NULL);
  g_signal_connect (self->methods, "notify::selected", G_CALLBACK (method_selected_cb), self);
  return words;
}

static GtkWidget *
add_button (GtkWidget *box, const char *label, const char *action, const char *tooltip)
{
  GtkWidget *button = tm_button_new (label);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_set_tooltip_text (button, tooltip);
  gtk_widget_set_focus_on_click (button, FALSE);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static GtkWidget *
build_buttons (TmVerdictPanel *self)
{
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  /* Never scrolled out of sight: it is what the hand does next. */
  self->todo = add_section (buttons, _ ("What to do"), NULL);
  GtkWidget *pair = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *record
      = add_button (buttons, _ ("_Record  ⏎"), "bench.record", _ ("Record the reading (Enter)"));
  gtk_widget_add_css_class (record, "suggested-action");
  gtk_widget_add_css_class (record, "tm-record");
  gtk_accessible_update_property (GTK_ACCESSIBLE (record), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Record"), -1);
  gtk_box_append (GTK_BOX (buttons), pair);
  add_button (pair, _ ("R_eadings…"), "bench.readings", _ ("See, correct or withdraw readings (Ctrl+L)"));
  GtkWidget *nonconformance = add_button (pair, _ ("N_onconformance…"), "bench.nonconformance",
                                          _ ("Write down a nonconformance (Ctrl+Shift+K)"));
  gtk_widget_set_hexpand (nonconformance, TRUE);
  self->caution = add_label (buttons, "tm-caution");
  return buttons;
}

static void
tm_verdict_panel_init (TmVerdictPanel *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  self->names = g_ptr_array_new_with_free_func (g_free);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-verdict-panel");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), build_words (self));
  gtk_widget_set_vexpand (scroller, TRUE);
  /* The column keeps its width: the picture takes what is left. */
  gtk_widget_set_hexpand (GTK_WIDGET (self), FALSE);
  gtk_box_append (GTK_BOX (self), scroller);
  gtk_box_append (GTK_BOX (self), build_buttons (self));
}

GtkWidget *
tm_verdict_panel_new (void)
{
  return g_object_new (TM_TYPE_VERDICT_PANEL, NULL);
}

static void
add_method (TmVerdictPanel *self, GtkStringList *list, const char *name, const char *shown)
{
  gtk_string_list_append (list, shown);
  g_ptr_array_add (self->names, g_strdup (name));
}

static gboolean
is_listed (TmVerdictPanel *self, const char *name)
{
  return g_ptr_array_find_with_equal_func (self->names, name, g_str_equal, NULL);
}

/* First what the feature says, then every method, then every gauge that no method is named after. */
static void
add_methods (TmVerdictPanel *self, GtkStringList *list, const TmJob *job, const TmFeature *feature)
{
  add_method (self, list, "", *feature->method != '\0' ? feature->method : _ ("choose a gauge"));
  for (guint i = 0; i < job->methods->len; i++)
    {
      const TmMethod *method = g_ptr_array_index (job->methods, i);
      if (!g_str_equal (method->name, feature->method))
        add_method (self, list, method->name, method->name);
    }
  for (guint i = 0; i < job->gauges->len; i++)
    {
      const TmGauge *gauge = g_ptr_array_index (job->gauges, i);
      g_autofree char *shown = g_strdup_printf ("%s %s", gauge->kind, gauge->tag);
      if (!is_listed (self, gauge->tag) && !g_str_equal (gauge->tag, feature->method))
        add_method (self, list, gauge->tag, shown);
    }
}

void
tm_verdict_panel_list_methods (TmVerdictPanel *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_VERDICT_PANEL (self));

  const TmBench *bench = tm_document_bench (document);
  const TmFeature *feature = tm_bench_spot (bench)->feature;
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  guint chosen = 0;
  self->filling = TRUE;
  g_ptr_array_set_size (self->names, 0);
  if (feature != NULL)
    add_methods (self, list, tm_document_job (document), feature);
  if (!g_ptr_array_find_with_equal_func (self->names, tm_bench_method (bench), g_str_equal, &chosen))
    chosen = 0;
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->methods), G_LIST_MODEL (list));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->methods), chosen);
  gtk_widget_set_visible (self->methods, self->names->len > 1);
  self->filling = FALSE;
}

/* Only what has changed is set, so that only that is laid out again. */
static void
take_text (GtkLabel *label, char *text)
{
  if (!g_str_equal (gtk_label_get_text (label), text))
    gtk_label_set_text (label, text);
  gtk_widget_set_visible (GTK_WIDGET (label), *text != '\0');
  g_free (text);
}

static void
take_lines (TmSection *section, char *text)
{
  gtk_widget_set_visible (section->box, *text != '\0');
  take_text (section->lines, text);
}

static char *
describe_gauge (TmDocument *document, const TmFeature *feature)
{
  const char *method = tm_bench_method (tm_document_bench (document));
  g_autofree char *now = tm_now_utc ();
  now[strlen ("YYYY-MM-DD")] = '\0';
  return tm_words_gauge (tm_document_job (document), feature, *method != '\0' ? method : feature->method,
                         now);
}

static char *
describe_nonconformance (TmDocument *document, const TmJudgement *judgement)
{
  const TmNonconformance *row
      = tm_job_nonconformance_of (tm_document_job (document), judgement->piece, judgement->feature);
  if (row == NULL)
    return g_strdup ("");
  if (*row->disposition == '\0')
    return g_strdup_printf (_ ("%s, not decided"), row->number);
  return g_strdup_printf ("%s, %s", row->number,
                          g_dpgettext2 (GETTEXT_PACKAGE, "disposition", row->disposition));
}

static void
show_nowhere (TmVerdictPanel *self)
{
  take_text (self->verdict, g_strdup (_ ("Nothing to measure yet")));
  take_text (self->where, g_strdup (""));
  take_text (self->size, g_strdup (""));
  take_text (self->chance, g_strdup (""));
  take_lines (&self->form, g_strdup (""));
  take_lines (&self->gauge, g_strdup (""));
  take_lines (&self->nonconformance, g_strdup (""));
}

void
tm_verdict_panel_show (TmVerdictPanel *self, TmDocument *document, const TmJudgement *judgement)
{
  g_return_if_fail (TM_IS_VERDICT_PANEL (self));

  TmAdvice advice = tm_bench_advice (tm_document_bench (document));
  if (judgement == NULL)
    show_nowhere (self);
  else
    {
      take_text (self->verdict, tm_words_verdict (judgement));
      take_text (self->where, tm_words_where (judgement));
      take_text (self->size, tm_words_size (judgement));
      take_text (self->chance, tm_words_chance (judgement));
      take_lines (&self->form, tm_words_form (judgement));
      take_lines (&self->gauge, describe_gauge (document, judgement->feature));
      take_lines (&self->nonconformance, describe_nonconformance (document, judgement));
      gtk_widget_set_visible (self->gauge.box,
                              self->names->len > 1 || *gtk_label_get_text (self->gauge.lines) != '\0');
    }
  take_lines (&self->todo, tm_words_advice (&advice, judgement));
  take_text (self->caution, tm_words_caution (&advice));
}

const char *
tm_verdict_panel_title (TmVerdictPanel *self)
{
  g_return_val_if_fail (TM_IS_VERDICT_PANEL (self), NULL);

  return gtk_label_get_text (self->verdict);
}
