/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-gaps.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-column.h"
#include "app-growing-list.h"
#include "app-pointer-list.h"

struct _TmReportGaps {
  GtkBox parent_instance;

  GtkLabel *title;
  GtkStack *stack; /* "unknown", "none", "list" */
  TmPointerList *list;
};

enum { SIGNAL_ACTIVATED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmReportGaps, tm_report_gaps, GTK_TYPE_BOX)

static char *
describe (const GPtrArray *gaps)
{
  if (gaps == NULL)
    return g_strdup (_ ("Looking for what is missing"));
  if (gaps->len == 0)
    return g_strdup (_ ("Nothing is missing"));
  return g_strdup_printf (ngettext ("%u thing is missing", "%u things are missing", gaps->len), gaps->len);
}

static void
activated_cb (GtkListView *view, guint position, TmReportGaps *self)
{
  g_autoptr (TmPointerItem) item = g_list_model_get_item (G_LIST_MODEL (self->list), position);

  if (item != NULL)
    g_signal_emit (self, signals[SIGNAL_ACTIVATED], 0, tm_pointer_item_get (item));
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, gpointer data)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *label = gtk_label_new (NULL);
  GtkWidget *icon = gtk_image_new_from_icon_name ("go-next-symbolic");

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (icon, "dim-label");
  /* Hundreds of them: none is asked how narrow it could be. */
  gtk_box_append (GTK_BOX (box), tm_column_new_filling (label));
  g_object_set_data (G_OBJECT (box), "label", label);
  gtk_box_append (GTK_BOX (box), icon);
  gtk_widget_add_css_class (box, "tm-gap");
  tm_access_hide_decoration (box);
  gtk_list_item_set_child (list_item, box);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, gpointer data)
{
  GtkWidget *box = gtk_list_item_get_child (list_item);
  TmPointerItem *item = gtk_list_item_get_item (list_item);
  g_autofree char *text = tm_gap_describe (tm_pointer_item_get (item));

  gtk_label_set_text (GTK_LABEL (g_object_get_data (G_OBJECT (box), "label")), text);
  tm_access_name_row (box, text);
}

static GtkWidget *
build_list (TmReportGaps *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  TmGrowingList *rows = tm_growing_list_new (g_object_ref (G_LIST_MODEL (self->list)));
  GtkNoSelection *selection = gtk_no_selection_new (G_LIST_MODEL (rows));
  GtkWidget *view = gtk_list_view_new (GTK_SELECTION_MODEL (selection), factory);
  GtkWidget *scroller = gtk_scrolled_window_new ();

  tm_growing_list_follow (rows, view);
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  gtk_list_view_set_single_click_activate (GTK_LIST_VIEW (view), TRUE);
  g_signal_connect (view, "activate", G_CALLBACK (activated_cb), self);
  gtk_widget_add_css_class (view, "navigation-sidebar");
  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("What is missing"),
                                  -1);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), view);
  gtk_widget_set_vexpand (scroller, TRUE);
  return scroller;
}

static GtkWidget *
build_none (void)
{
  GtkWidget *none = gtk_label_new (_ ("Every fact, characteristic, gauge and proof that the report needs is "
                                      "there. It can go out."));

  gtk_label_set_wrap (GTK_LABEL (none), TRUE);
  gtk_label_set_xalign (GTK_LABEL (none), 0);
  gtk_widget_set_valign (none, GTK_ALIGN_START);
  gtk_widget_add_css_class (none, "tm-nothing-missing");
  return none;
}

static void
tm_report_gaps_finalize (GObject *object)
{
  g_clear_object (&TM_REPORT_GAPS (object)->list);
  G_OBJECT_CLASS (tm_report_gaps_parent_class)->finalize (object);
}

static void
tm_report_gaps_class_init (TmReportGapsClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_report_gaps_finalize;
  signals[SIGNAL_ACTIVATED] = g_signal_new ("activated", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                            NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
}

static void
tm_report_gaps_init (TmReportGaps *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  self->list = tm_pointer_list_new ();
  self->title = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->title, 0);
  gtk_label_set_ellipsize (self->title, PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (GTK_WIDGET (self->title), "tm-missing-title");
  self->stack = GTK_STACK (gtk_stack_new ());
  gtk_stack_add_named (self->stack, gtk_label_new (NULL), "unknown");
  gtk_stack_add_named (self->stack, build_none (), "none");
  gtk_stack_add_named (self->stack, build_list (self), "list");
  gtk_widget_set_vexpand (GTK_WIDGET (self->stack), TRUE);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->title));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->stack));
  tm_report_gaps_set (self, NULL);
}

GtkWidget *
tm_report_gaps_new (void)
{
  return g_object_new (TM_TYPE_REPORT_GAPS, NULL);
}

void
tm_report_gaps_set (TmReportGaps *self, GPtrArray *gaps)
{
  g_autofree char *title = describe (gaps);

  g_return_if_fail (TM_IS_REPORT_GAPS (self));

  gtk_label_set_text (self->title, title);
  tm_access_show_page (self->stack, gaps == NULL ? "unknown" : gaps->len > 0 ? "list" : "none");
  tm_pointer_list_set_array (self->list, gaps);
}

GtkLabel *
tm_report_gaps_title (TmReportGaps *self)
{
  g_return_val_if_fail (TM_IS_REPORT_GAPS (self), NULL);

  return self->title;
}

guint
tm_report_gaps_count (TmReportGaps *self)
{
  g_return_val_if_fail (TM_IS_REPORT_GAPS (self), 0);

  return g_list_model_get_n_items (G_LIST_MODEL (self->list));
}

void
tm_report_gaps_activate (TmReportGaps *self, guint position)
{
  g_return_if_fail (TM_IS_REPORT_GAPS (self));

  activated_cb (NULL, position, self);
}
