/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-method-choice.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-gauge-words.h"
#include "app-tip.h"

struct _TmMethodChoice {
  GtkBox parent_instance;

  GtkWidget *methods; /* GtkDropDown */
  GPtrArray *names;   /* char *: method names by position */
  GPtrArray *shown;   /* char *: what the list has for them */
  gboolean filling;
};

enum { SIGNAL_CHOSEN, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmMethodChoice, tm_method_choice, GTK_TYPE_BOX)

static void
method_selected_cb (GtkDropDown *drop_down, GParamSpec *pspec, TmMethodChoice *self)
{
  guint chosen = gtk_drop_down_get_selected (drop_down);
  if (!self->filling && chosen < self->names->len)
    g_signal_emit (self, signals[SIGNAL_CHOSEN], 0, g_ptr_array_index (self->names, chosen));
}

static void
tm_method_choice_finalize (GObject *object)
{
  TmMethodChoice *self = TM_METHOD_CHOICE (object);
  g_clear_pointer (&self->names, g_ptr_array_unref);
  g_clear_pointer (&self->shown, g_ptr_array_unref);
  G_OBJECT_CLASS (tm_method_choice_parent_class)->finalize (object);
}

static void
tm_method_choice_class_init (TmMethodChoiceClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_method_choice_finalize;
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                         NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
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

static void
tm_method_choice_init (TmMethodChoice *self)
{
  self->names = g_ptr_array_new_with_free_func (g_free);
  self->shown = g_ptr_array_new_with_free_func (g_free);
  self->methods = build_methods ();
  gtk_widget_set_hexpand (self->methods, TRUE);
  g_signal_connect (self->methods, "notify::selected", G_CALLBACK (method_selected_cb), self);
  gtk_box_append (GTK_BOX (self), self->methods);
}

GtkWidget *
tm_method_choice_new (void)
{
  return g_object_new (TM_TYPE_METHOD_CHOICE, NULL);
}

static void
add_method (TmMethodChoice *self, GPtrArray *list, const char *name, const char *shown)
{
  g_ptr_array_add (list, g_strdup (shown));
  g_ptr_array_add (self->names, g_strdup (name));
}

static gboolean
is_listed (TmMethodChoice *self, const char *name)
{
  return g_ptr_array_find_with_equal_func (self->names, name, g_str_equal, NULL);
}

/* First what the feature says, then every method, then every gauge that no method is named after. */
static void
add_methods (TmMethodChoice *self, GPtrArray *list, const TmJob *job, const TmFeature *feature)
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
      g_autofree char *shown = *gauge->kind != '\0'
                                   ? g_strdup_printf ("%s, %s", gauge->tag, tm_words_gauge_kind (gauge->kind))
                                   : g_strdup (gauge->tag);
      if (!is_listed (self, gauge->tag) && !g_str_equal (gauge->tag, feature->method))
        add_method (self, list, gauge->tag, shown);
    }
}

static gboolean
texts_equal (const GPtrArray *a, const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (!g_str_equal (g_ptr_array_index (a, i), g_ptr_array_index (b, i)))
      return FALSE;
  return TRUE;
}

/* A drop-down makes its rows anew for each list, the same one too: that is felt at every feature. */
static void
show_list (TmMethodChoice *self, GPtrArray *list)
{
  g_autoptr (GtkStringList) strings = NULL;
  if (gtk_drop_down_get_model (GTK_DROP_DOWN (self->methods)) != NULL && texts_equal (list, self->shown))
    return;
  strings = gtk_string_list_new (NULL);
  for (guint i = 0; i < list->len; i++)
    gtk_string_list_append (strings, g_ptr_array_index (list, i));
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->methods), G_LIST_MODEL (strings));
  g_ptr_array_unref (self->shown);
  self->shown = g_ptr_array_ref (list);
}

gboolean
tm_method_choice_list (TmMethodChoice *self, TmDocument *document)
{
  g_return_val_if_fail (TM_IS_METHOD_CHOICE (self), FALSE);

  const TmBench *bench = tm_document_bench (document);
  const TmFeature *feature = tm_bench_spot (bench)->feature;
  g_autoptr (GPtrArray) list = g_ptr_array_new_with_free_func (g_free);
  guint chosen = 0;
  self->filling = TRUE;
  g_ptr_array_set_size (self->names, 0);
  if (feature != NULL)
    add_methods (self, list, tm_document_job (document), feature);
  if (!g_ptr_array_find_with_equal_func (self->names, tm_bench_method (bench), g_str_equal, &chosen))
    chosen = 0;
  show_list (self, list);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->methods), chosen);
  gtk_widget_set_visible (GTK_WIDGET (self), self->names->len > 1);
  self->filling = FALSE;
  return self->names->len > 1;
}
