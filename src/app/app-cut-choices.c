/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-cut-choices.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-tip.h"
#include "bench-cut.h"

struct _TmCutChoices {
  GtkBox parent_instance;

  GtkWidget *tools; /* GtkDropDown */
  GPtrArray *names; /* char *: tools by position; "" = none is chosen */
  GtkWidget *edit;
  GtkWidget *add;
  GtkWidget *aims;    /* GtkDropDown */
  GPtrArray *serials; /* char *: mates by position; "" = the drawing */
  gboolean filling;
  gboolean tool_chosen; /* a tool, not an aim, is to be told of */
  guint tell_id;
};

enum { SIGNAL_TOOL_CHOSEN, SIGNAL_MATE_CHOSEN, SIGNAL_EDIT_TOOL, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmCutChoices, tm_cut_choices, GTK_TYPE_BOX)

static const char *
find_selected (GtkWidget *drop_down, const GPtrArray *names)
{
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (drop_down));
  return chosen < names->len ? g_ptr_array_index (names, chosen) : "";
}

/* What is chosen is told when the list has closed: who hears of it fills the lists anew, and an open one
 * would stay open over other rows. */
static gboolean
tell_cb (gpointer data)
{
  TmCutChoices *self = data;
  g_autofree char *tool = g_strdup (find_selected (self->tools, self->names));
  g_autofree char *serial = g_strdup (find_selected (self->aims, self->serials));
  gboolean of_tool = self->tool_chosen;
  self->tell_id = 0;
  if (of_tool && *tool != '\0')
    g_signal_emit (self, signals[SIGNAL_TOOL_CHOSEN], 0, tool);
  else if (!of_tool)
    g_signal_emit (self, signals[SIGNAL_MATE_CHOSEN], 0, serial);
  return G_SOURCE_REMOVE;
}

static void
selected_cb (GtkDropDown *drop_down, GParamSpec *pspec, TmCutChoices *self)
{
  if (self->filling)
    return;
  self->tool_chosen = GTK_WIDGET (drop_down) == self->tools;
  if (self->tell_id == 0)
    self->tell_id = g_idle_add (tell_cb, self);
}

static void
edit_cb (GtkButton *button, TmCutChoices *self)
{
  g_autofree char *name = g_strdup (find_selected (self->tools, self->names));
  g_signal_emit (self, signals[SIGNAL_EDIT_TOOL], 0, name);
}

static void
add_cb (GtkButton *button, TmCutChoices *self)
{
  g_signal_emit (self, signals[SIGNAL_EDIT_TOOL], 0, "");
}

static void
tm_cut_choices_finalize (GObject *object)
{
  TmCutChoices *self = TM_CUT_CHOICES (object);
  g_clear_handle_id (&self->tell_id, g_source_remove);
  g_clear_pointer (&self->names, g_ptr_array_unref);
  g_clear_pointer (&self->serials, g_ptr_array_unref);
  G_OBJECT_CLASS (tm_cut_choices_parent_class)->finalize (object);
}

static void
tm_cut_choices_class_init (TmCutChoicesClass *klass)
{
  static const char *const names[N_SIGNALS] = { "tool-chosen", "mate-chosen", "edit-tool" };
  G_OBJECT_CLASS (klass)->finalize = tm_cut_choices_finalize;
  for (guint i = 0; i < N_SIGNALS; i++)
    signals[i] = g_signal_new (names[i], G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer chars)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (label), GPOINTER_TO_INT (chars));
  tm_tip_own_text (label);
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  GtkStringObject *text = gtk_list_item_get_item (item);
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), gtk_string_object_get_string (text));
}

/* A long name is cut in the button, later in the list. */
static GtkWidget *
build_drop_down (const char *name, const char *tip)
{
  GtkWidget *drop_down = gtk_drop_down_new (NULL, NULL);
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();
      g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), GINT_TO_POINTER (i == 0 ? 1 : 60));
      g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
      if (i == 0)
        gtk_drop_down_set_factory (GTK_DROP_DOWN (drop_down), factory);
      else
        gtk_drop_down_set_list_factory (GTK_DROP_DOWN (drop_down), factory);
    }
  gtk_widget_set_hexpand (drop_down, TRUE);
  gtk_widget_add_css_class (drop_down, "tm-methods");
  gtk_widget_set_tooltip_text (drop_down, tip);
  tm_access_name_drop_down (GTK_DROP_DOWN (drop_down), name);
  return drop_down;
}

static GtkWidget *
add_button (TmCutChoices *self, const char *label, const char *tip, GCallback clicked)
{
  GtkWidget *button = tm_button_new (label);
  gtk_widget_set_tooltip_text (button, tip);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect (button, "clicked", clicked, self);
  gtk_box_append (GTK_BOX (self), button);
  return button;
}

static void
tm_cut_choices_init (TmCutChoices *self)
{
  self->names = g_ptr_array_new_with_free_func (g_free);
  self->serials = g_ptr_array_new_with_free_func (g_free);
  gtk_box_set_spacing (GTK_BOX (self), 8);
  self->tools = build_drop_down (_ ("Cutting tool"), _ ("The tool that cuts this feature, with its dial"));
  gtk_box_append (GTK_BOX (self), self->tools);
  self->edit = add_button (self, _ ("E_dit tool…"), _ ("Its dial, backlash and usual spring passes"),
                           G_CALLBACK (edit_cb));
  self->add = add_button (self, _ ("_Add a tool…"), _ ("Add a tool with its dial"), G_CALLBACK (add_cb));
  self->aims = build_drop_down (_ ("Aim at"), _ ("The drawing's limits, or the fit with a measured mate"));
  gtk_box_append (GTK_BOX (self), self->aims);
  g_signal_connect (self->tools, "notify::selected", G_CALLBACK (selected_cb), self);
  g_signal_connect (self->aims, "notify::selected", G_CALLBACK (selected_cb), self);
}

GtkWidget *
tm_cut_choices_new (void)
{
  return g_object_new (TM_TYPE_CUT_CHOICES, NULL);
}

static void
add_choice (GtkStringList *list, GPtrArray *names, const char *name, const char *shown)
{
  gtk_string_list_append (list, shown);
  g_ptr_array_add (names, g_strdup (name));
}

static void
show_choices (GtkWidget *drop_down, GtkStringList *list, const GPtrArray *names, const char *chosen)
{
  guint position;
  if (!g_ptr_array_find_with_equal_func ((GPtrArray *)names, chosen, g_str_equal, &position))
    position = 0;
  gtk_drop_down_set_model (GTK_DROP_DOWN (drop_down), G_LIST_MODEL (list));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down), position);
}

static void
list_tools (TmCutChoices *self, TmDocument *document)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  const TmJob *job = tm_document_job (document);
  const TmTool *tool = tm_bench_tool (tm_document_bench (document));
  g_ptr_array_set_size (self->names, 0);
  if (tool == NULL)
    add_choice (list, self->names, "", _ ("Choose the tool"));
  for (guint i = 0; i < job->tools->len; i++)
    {
      const TmTool *each = g_ptr_array_index (job->tools, i);
      add_choice (list, self->names, each->name, each->name);
    }
  show_choices (self->tools, list, self->names, tool != NULL ? tool->name : "");
  gtk_widget_set_visible (self->tools, job->tools->len > 0);
  gtk_widget_set_visible (self->edit, tool != NULL);
  gtk_widget_set_visible (self->add, tool == NULL);
}

static char *
describe_mate (const TmMateSize *mate)
{
  g_autofree char *smallest = tm_quantity_format (&mate->smallest);
  g_autofree char *largest = tm_quantity_format (&mate->largest);
  g_autofree char *size = mate->largest.given && mate->largest.count != mate->smallest.count
                              ? g_strdup_printf ("%s … %s", smallest, largest)
                              : g_strdup (smallest);
  if (*mate->piece != '\0')
    return g_strdup_printf (_ ("The fit with %s, %s, for piece %s"), mate->serial, size, mate->piece);
  return g_strdup_printf (_ ("The fit with %s, %s"), mate->serial, size);
}

static void
list_mates (TmCutChoices *self, TmDocument *document)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  const TmJob *job = tm_document_job (document);
  const TmBench *bench = tm_document_bench (document);
  const TmFeature *feature = tm_bench_spot (bench)->feature;
  const TmMateSize *chosen = tm_bench_cut_mate (bench);
  gboolean wanted
      = feature->mate.given && (feature->mate.wanted_least.given || feature->mate.wanted_most.given);
  g_ptr_array_set_size (self->serials, 0);
  add_choice (list, self->serials, "", _ ("Aim at the drawing"));
  for (guint i = 0; wanted && i < job->mate_sizes->len; i++)
    {
      const TmMateSize *mate = g_ptr_array_index (job->mate_sizes, i);
      g_autofree char *shown = describe_mate (mate);
      if (g_str_equal (mate->feature, feature->balloon))
        add_choice (list, self->serials, mate->serial, shown);
    }
  show_choices (self->aims, list, self->serials, chosen != NULL ? chosen->serial : "");
  gtk_widget_set_visible (self->aims, self->serials->len > 1);
}

void
tm_cut_choices_show (TmCutChoices *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_CUT_CHOICES (self));

  self->filling = TRUE;
  list_tools (self, document);
  list_mates (self, document);
  self->filling = FALSE;
}
