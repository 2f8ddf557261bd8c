/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-chart.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-batch-capability.h"
#include "app-batch-picture.h"
#include "app-batch-words.h"
#include "app-dialog.h"
#include "app-feature-words.h"
#include "app-tip.h"

typedef struct {
  const char *name;
  const char *label;
  const char *tip;
  guint key;
} Page;

enum { PAGE_RUN, PAGE_HISTOGRAM, PAGE_PROBABILITY, PAGE_SMALL_SHIFTS, PAGE_CAPABILITY, N_PAGES };

static const Page pages[N_PAGES] = {
  [PAGE_RUN]
  = { "run", N_ ("By piece"), N_ ("Sizes in the order made, and their dispersion (Ctrl+1)"), GDK_KEY_1 },
  [PAGE_HISTOGRAM]
  = { "histogram", N_ ("Histogram"), N_ ("How often each size, and the band (Ctrl+2)"), GDK_KEY_2 },
  [PAGE_PROBABILITY]
  = { "probability", N_ ("Normality"), N_ ("Against the normal distribution (Ctrl+3)"), GDK_KEY_3 },
  [PAGE_SMALL_SHIFTS]
  = { "small-shifts", N_ ("Small shifts"),
      N_ ("Moving average (EWMA) and cumulative sums (CUSUM): sooner where a shift is small (Ctrl+4)"),
      GDK_KEY_4 },
  [PAGE_CAPABILITY] = { "capability", N_ ("Capability"),
                        N_ ("What the process can hold, figure by figure (Ctrl+5)"), GDK_KEY_5 },
};

struct _TmBatchChart {
  GtkBox parent_instance;

  const TmBatch *batch;    /* borrowed */
  const TmChartPlot *plot; /* borrowed */
  gboolean known;          /* the batch is worked out */
  GtkLabel *title;
  GtkLabel *about;
  GtkDropDown *places;
  GtkStack *stack; /* the pages, and "nothing" */
  guint page;
  GtkWidget *buttons[N_PAGES];
  GtkWidget *pictures[TM_N_BATCH_PICTURES];
  TmBatchCapability *capability;
  GtkLabel *nothing;
  GtkLabel *piece;
  gboolean filling;
};

enum { SIGNAL_PIECE, SIGNAL_PLACE, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmBatchChart, tm_batch_chart, GTK_TYPE_BOX)

/* -------- Which picture -------- */

static void
show_page (TmBatchChart *self, guint page)
{
  self->page = page;
  tm_access_show_page (self->stack, self->plot != NULL || !self->known ? pages[page].name : "nothing");
  self->filling = TRUE;
  for (guint i = 0; i < N_PAGES; i++)
    gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->buttons[i]), i == page);
  self->filling = FALSE;
  gtk_widget_set_visible (GTK_WIDGET (self->piece), page == PAGE_RUN);
  gtk_widget_set_visible (GTK_WIDGET (self->about), page == PAGE_RUN);
}

static void
toggled_cb (GtkToggleButton *button, TmBatchChart *self)
{
  if (self->filling || !gtk_toggle_button_get_active (button))
    return;
  for (guint i = 0; i < N_PAGES; i++)
    if (self->buttons[i] == GTK_WIDGET (button))
      show_page (self, i);
}

/* Keys that mean nothing here are left to others. */
static gboolean
key_cb (GtkWidget *widget, GVariant *page, gpointer data)
{
  guint chosen = g_variant_get_uint32 (page);

  if (!gtk_widget_get_mapped (widget) || chosen >= N_PAGES)
    return FALSE;
  show_page (TM_BATCH_CHART (widget), chosen);
  return TRUE;
}

static void
add_keys (TmBatchChart *self)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_set_scope (GTK_SHORTCUT_CONTROLLER (keys), GTK_SHORTCUT_SCOPE_GLOBAL);
  for (guint i = 0; i < N_PAGES; i++)
    gtk_shortcut_controller_add_shortcut (
        GTK_SHORTCUT_CONTROLLER (keys),
        gtk_shortcut_new_with_arguments (gtk_keyval_trigger_new (pages[i].key, GDK_CONTROL_MASK),
                                         gtk_callback_action_new (key_cb, NULL, NULL), "u", i));
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

/* -------- Places and pieces -------- */

static void
place_cb (TmBatchChart *self)
{
  guint chosen = gtk_drop_down_get_selected (self->places);

  if (!self->filling && chosen != GTK_INVALID_LIST_POSITION)
    g_signal_emit (self, signals[SIGNAL_PLACE], 0, chosen + 1);
}

static void
piece_cb (TmBatchPicture *picture, guint piece, TmBatchChart *self)
{
  g_signal_emit (self, signals[SIGNAL_PIECE], 0, piece);
}

static void
fill_places (TmBatchChart *self, const TmFeature *feature, guint place)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  guint n = feature != NULL ? feature->places : 0;

  for (guint i = 1; i <= n; i++)
    gtk_string_list_take (list, g_strdup_printf (_ ("place %u"), i));
  self->filling = TRUE;
  gtk_drop_down_set_model (self->places, G_LIST_MODEL (list));
  if (n > 0)
    gtk_drop_down_set_selected (self->places, CLAMP (place, 1, n) - 1);
  self->filling = FALSE;
  gtk_widget_set_visible (GTK_WIDGET (self->places), n > 1);
}

/* -------- The widget -------- */

static void
tm_batch_chart_class_init (TmBatchChartClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);

  signals[SIGNAL_PIECE]
      = g_signal_new ("piece", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[SIGNAL_PLACE]
      = g_signal_new ("place", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
}

static void
add_button (TmBatchChart *self, GtkWidget *box, guint page)
{
  const char *label = g_dgettext (GETTEXT_PACKAGE, pages[page].label);
  GtkWidget *button = gtk_toggle_button_new_with_label (label);

  if (page > 0)
    gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), GTK_TOGGLE_BUTTON (self->buttons[0]));
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_tooltip_text (button, g_dgettext (GETTEXT_PACKAGE, pages[page].tip));
  tm_name_widget (button, label);
  g_signal_connect (button, "toggled", G_CALLBACK (toggled_cb), self);
  gtk_box_append (GTK_BOX (box), button);
  self->buttons[page] = button;
}

static GtkWidget *
build_head (TmBatchChart *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *choices = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 2);

  self->title = GTK_LABEL (gtk_label_new (NULL));
  self->about = GTK_LABEL (gtk_label_new (NULL));
  self->places = GTK_DROP_DOWN (gtk_drop_down_new (NULL, NULL));
  gtk_label_set_ellipsize (self->title, PANGO_ELLIPSIZE_END);
  gtk_label_set_ellipsize (self->about, PANGO_ELLIPSIZE_END);
  gtk_label_set_xalign (self->title, 0);
  gtk_label_set_xalign (self->about, 0);
  gtk_widget_set_hexpand (GTK_WIDGET (self->about), TRUE);
  gtk_widget_set_halign (choices, GTK_ALIGN_END);
  gtk_widget_set_hexpand (choices, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->title), "tm-batch-title");
  gtk_widget_add_css_class (GTK_WIDGET (self->about), "dim-label");
  gtk_widget_add_css_class (head, "tm-batch-chart-head");
  tm_tip_own_text (GTK_WIDGET (self->title));
  tm_tip_own_text (GTK_WIDGET (self->about));
  gtk_widget_set_valign (GTK_WIDGET (self->places), GTK_ALIGN_CENTER);
  tm_access_name_drop_down (self->places, _ ("Place"));
  g_signal_connect_swapped (self->places, "notify::selected", G_CALLBACK (place_cb), self);
  for (guint i = 0; i < N_PAGES; i++)
    add_button (self, choices, i);
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->title));
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->about));
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->places));
  gtk_box_append (GTK_BOX (head), choices);
  return head;
}

static GtkWidget *
build_nothing (TmBatchChart *self)
{
  self->nothing = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_wrap (self->nothing, TRUE);
  gtk_label_set_justify (self->nothing, GTK_JUSTIFY_CENTER);
  gtk_widget_add_css_class (GTK_WIDGET (self->nothing), "dim-label");
  return GTK_WIDGET (self->nothing);
}

static void
build_pictures (TmBatchChart *self)
{
  GtkWidget *run = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->stack = GTK_STACK (gtk_stack_new ());
  for (guint i = 0; i < TM_N_BATCH_PICTURES; i++)
    self->pictures[i] = tm_batch_picture_new ((TmBatchPictureKind)i);
  g_signal_connect (self->pictures[TM_BATCH_RUN], "piece", G_CALLBACK (piece_cb), self);
  gtk_box_append (GTK_BOX (run), self->pictures[TM_BATCH_RUN]);
  gtk_box_append (GTK_BOX (run), self->pictures[TM_BATCH_DISPERSION]);
  gtk_stack_add_named (self->stack, run, pages[PAGE_RUN].name);
  gtk_stack_add_named (self->stack, self->pictures[TM_BATCH_HISTOGRAM], pages[PAGE_HISTOGRAM].name);
  gtk_stack_add_named (self->stack, self->pictures[TM_BATCH_PROBABILITY], pages[PAGE_PROBABILITY].name);
  gtk_stack_add_named (self->stack, self->pictures[TM_BATCH_SMALL_SHIFTS], pages[PAGE_SMALL_SHIFTS].name);
  self->capability = TM_BATCH_CAPABILITY (tm_batch_capability_new ());
  gtk_stack_add_named (self->stack, GTK_WIDGET (self->capability), pages[PAGE_CAPABILITY].name);
  gtk_stack_add_named (self->stack, build_nothing (self), "nothing");
  gtk_widget_set_vexpand (GTK_WIDGET (self->stack), TRUE);
}

static void
tm_batch_chart_init (TmBatchChart *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-batch-chart");
  gtk_box_append (GTK_BOX (self), build_head (self));
  build_pictures (self);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->stack));
  self->piece = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->piece, 0);
  gtk_label_set_ellipsize (self->piece, PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (GTK_WIDGET (self->piece), "tm-batch-piece");
  tm_tip_own_text (GTK_WIDGET (self->piece));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->piece));
  add_keys (self);
  show_page (self, PAGE_RUN);
}

GtkWidget *
tm_batch_chart_new (void)
{
  return g_object_new (TM_TYPE_BATCH_CHART, NULL);
}

static char *
describe_title (const TmFeature *feature)
{
  g_autofree char *requirement = tm_words_requirement (feature);

  if (*feature->name == '\0' || g_str_equal (feature->name, requirement))
    return g_steal_pointer (&requirement);
  return g_strdup_printf ("%s %s", requirement, feature->name);
}

void
tm_batch_chart_set_feature (TmBatchChart *self, const TmFeature *feature, guint place)
{
  g_autofree char *title = NULL;

  g_return_if_fail (TM_IS_BATCH_CHART (self));

  title = feature != NULL ? describe_title (feature) : g_strdup ("");
  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->about, feature != NULL && feature->stations->len > 1
                                       ? _ ("mean of stations; whisker to smallest and largest")
                                       : "");
  gtk_label_set_text (self->nothing, feature != NULL && tm_kind_is_attribute (feature->kind)
                                         ? _ ("Pass or fail has no sizes to draw; the grid shows each piece.")
                                         : _ ("No sizes yet: they show here in the order of the pieces."));
  fill_places (self, feature, place);
}

void
tm_batch_chart_set_batch (TmBatchChart *self, const TmBatch *batch, const TmChartPlot *plot,
                          const TmChartPlot *small_shifts)
{
  g_return_if_fail (TM_IS_BATCH_CHART (self));

  self->batch = batch;
  self->plot = plot;
  for (guint i = 0; i < TM_N_BATCH_PICTURES; i++)
    tm_batch_picture_set (TM_BATCH_PICTURE (self->pictures[i]), plot != NULL ? batch : NULL,
                          i == TM_BATCH_SMALL_SHIFTS ? small_shifts : plot);
  tm_batch_capability_show (self->capability, plot != NULL ? batch : NULL);
  self->known = batch != NULL;
  if (batch != NULL)
    show_page (self, self->page);
}

void
tm_batch_chart_set_piece (TmBatchChart *self, gint piece)
{
  g_autofree char *words = NULL;

  g_return_if_fail (TM_IS_BATCH_CHART (self));

  if (self->batch != NULL && piece >= 0 && (guint)piece < self->batch->series.n_points)
    words = tm_words_batch_piece (self->batch, (guint)piece);
  gtk_label_set_text (self->piece, words != NULL ? words : "");
  tm_batch_picture_set_focus (TM_BATCH_PICTURE (self->pictures[TM_BATCH_RUN]), piece);
}
