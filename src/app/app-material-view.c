/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-material-view.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-list-row.h"
#include "app-material-dialog.h"
#include "app-material-table.h"
#include "app-material-words.h"
#include "app-side-list.h"
#include "app-view-parts.h"

/* What a row is of is the first letter of its key, the name the rest: the shop may call one as the tables do.
 */
#define OF_SHOP   's'
#define OF_TABLES 't'

#define REVEAL_FRAMES 4

struct _TmMaterialView {
  GtkBox parent_instance;

  TmSideList materials;
  GtkSearchEntry *search;
  guint reveal_frames; /* how often the row chosen is still brought into view */
  GtkLabel *title;
  GtkLabel *about;
  GtkWidget *change;
  TmMaterialTable *figures;
};

G_DEFINE_FINAL_TYPE (TmMaterialView, tm_material_view, GTK_TYPE_BOX)

static char *
make_key (const TmElastic *material)
{
  return g_strdup_printf ("%c%s", material->shop ? OF_SHOP : OF_TABLES, material->name);
}

static gboolean
is_of_shop (const char *key)
{
  return key != NULL && key[0] == OF_SHOP;
}

/* The material of @key; FALSE when it is there no more. */
static gboolean
find_material (TmMaterialView *self, const char *key, TmElastic *out)
{
  const TmJob *job = self->materials.document != NULL ? tm_document_job (self->materials.document) : NULL;

  if (job == NULL || key == NULL)
    return FALSE;
  if (is_of_shop (key))
    return tm_job_find_material (job, key + 1) != NULL && tm_elastic_find (job, key + 1, out);
  return tm_elastic_find (NULL, key + 1, out);
}

/* -------- The list -------- */

static void
add_heading (TmMaterialView *self, const char *text)
{
  gtk_list_box_append (self->materials.list, tm_list_row_heading_new (text));
}

static void
add_row (TmMaterialView *self, const TmElastic *material)
{
  g_autofree char *modulus = tm_words_modulus (material);
  g_autofree char *about = tm_words_material_about (tm_document_job (self->materials.document), material);
  g_autofree char *sentence = *modulus != '\0'
                                  ? g_strdup_printf ("%s: %s, %s", material->name, about, modulus)
                                  : g_strdup_printf ("%s: %s", material->name, about);
  g_autofree char *key = make_key (material);

  gtk_list_box_append (self->materials.list, tm_list_row_new (material->name, "", modulus, sentence, key));
}

static void
add_shop (TmMaterialView *self, const TmJob *job)
{
  TmElastic material;

  if (job->materials->len > 0)
    add_heading (self, _ ("The shop’s own"));
  for (guint i = 0; i < job->materials->len; i++)
    {
      const TmShopMaterial *own = g_ptr_array_index (job->materials, i);

      if (tm_elastic_find (job, own->name, &material))
        add_row (self, &material);
    }
}

/* Once the rows have their places; for some frames, because the list goes to its top once more when it is
 * first shown. */
static gboolean
reveal_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  TmMaterialView *self = TM_MATERIAL_VIEW (widget);
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->materials.list);
  graphene_rect_t bounds;

  if (row != NULL && gtk_widget_compute_bounds (GTK_WIDGET (row), GTK_WIDGET (self->materials.list), &bounds)
      && bounds.size.height > 0)
    gtk_adjustment_clamp_page (gtk_scrolled_window_get_vadjustment (self->materials.scroller),
                               bounds.origin.y, bounds.origin.y + bounds.size.height);
  return --self->reveal_frames > 0 ? G_SOURCE_CONTINUE : G_SOURCE_REMOVE;
}

static void
reveal_chosen (TmMaterialView *self)
{
  if (self->reveal_frames == 0)
    gtk_widget_add_tick_callback (GTK_WIDGET (self), reveal_cb, NULL, NULL);
  self->reveal_frames = REVEAL_FRAMES;
}

/* Metals stand before plastics in the tables. */
static void
add_tables (TmMaterialView *self)
{
  TmElastic material;
  gboolean plastics = FALSE;

  add_heading (self, _ ("Metals"));
  for (guint i = 0; tm_elastic_table (i, &material); i++)
    {
      if (material.plastic && !plastics)
        add_heading (self, _ ("Plastics"));
      plastics = material.plastic;
      add_row (self, &material);
    }
}

/* What is seen when nothing is found. */
static GtkWidget *
new_placeholder (void)
{
  GtkWidget *none = gtk_label_new (_ ("No material of that name. Add it with the shop’s own figures."));

  gtk_label_set_wrap (GTK_LABEL (none), TRUE);
  gtk_label_set_xalign (GTK_LABEL (none), 0);
  gtk_label_set_max_width_chars (GTK_LABEL (none), 1);
  gtk_widget_add_css_class (none, "dim-label");
  gtk_widget_add_css_class (none, "tm-view-head");
  return none;
}

static void
fill_list (TmMaterialView *self)
{
  gboolean focused = tm_side_list_begin (&self->materials);

  /* It went with the rows. */
  gtk_list_box_set_placeholder (self->materials.list, new_placeholder ());
  add_shop (self, tm_document_job (self->materials.document));
  add_tables (self);
  tm_side_list_end (&self->materials, focused);
  reveal_chosen (self);
}

static void
choose (TmMaterialView *self, const TmElastic *material)
{
  g_autofree char *key = make_key (material);

  tm_side_list_set_key (&self->materials, key);
}

/* The material chosen before, else that of the job, else the first. */
static void
choose_something (TmMaterialView *self)
{
  const TmJob *job = tm_document_job (self->materials.document);
  TmElastic material;

  if (find_material (self, self->materials.key, &material))
    return;
  if (!tm_elastic_find (job, job->material, &material))
    tm_elastic_table (0, &material);
  choose (self, &material);
}

/* -------- What is found -------- */

/* As it is written, or as the tables understand it: "POM" is acetal. */
static gboolean
is_meant (TmMaterialView *self, const char *key, const char *wanted)
{
  g_autofree char *name = g_utf8_casefold (key + 1, -1);
  g_autofree char *text = g_utf8_casefold (wanted, -1);
  TmElastic known;

  if (strstr (name, text) != NULL)
    return TRUE;
  return tm_elastic_find (NULL, wanted, &known) && g_str_equal (known.name, key + 1);
}

static gboolean
filter_cb (GtkListBoxRow *row, gpointer data)
{
  TmMaterialView *self = data;
  const char *key = tm_list_row_key (row);
  g_autofree char *wanted = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->search))));

  if (*wanted == '\0')
    return TRUE;
  return key != NULL && is_meant (self, key, wanted);
}

static GtkListBoxRow *
find_first_shown (TmMaterialView *self)
{
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->materials.list, i)) != NULL; i++)
    if (tm_list_row_key (row) != NULL && filter_cb (row, self))
      return row;
  return NULL;
}

static void
search_cb (TmMaterialView *self)
{
  gtk_list_box_invalidate_filter (self->materials.list);
}

/* Enter goes to what was found. */
static void
search_activate_cb (TmMaterialView *self)
{
  GtkListBoxRow *row = find_first_shown (self);

  if (row == NULL)
    return;
  gtk_list_box_select_row (self->materials.list, row);
  gtk_widget_grab_focus (GTK_WIDGET (row));
}

static void
stop_search_cb (TmMaterialView *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self->search), "");
  tm_material_view_enter (self);
}

/* -------- The figures -------- */

static void
show_figures (TmMaterialView *self)
{
  TmElastic material, table;
  g_autofree char *about = NULL;
  gboolean known;

  if (!find_material (self, self->materials.key, &material))
    return;
  known = tm_elastic_find (NULL, material.name, &table);
  about = tm_words_material_about (tm_document_job (self->materials.document), &material);
  gtk_label_set_text (self->title, material.name);
  gtk_label_set_text (self->about, about);
  tm_button_set_label (self->change, material.shop ? _ ("_Change…") : _ ("_Make it your own…"));
  tm_material_table_show (self->figures, &material, known ? &table : NULL);
}

static void
show (GtkWidget *view)
{
  show_figures (TM_MATERIAL_VIEW (view));
}

static void
refresh (GtkWidget *view)
{
  TmMaterialView *self = TM_MATERIAL_VIEW (view);

  choose_something (self);
  fill_list (self);
  show_figures (self);
}

void
tm_material_view_choose (TmMaterialView *self, const char *name)
{
  const TmJob *job;
  TmElastic material;

  g_return_if_fail (TM_IS_MATERIAL_VIEW (self));

  job = self->materials.document != NULL ? tm_document_job (self->materials.document) : NULL;
  if (job == NULL || !tm_elastic_find (job, name, &material))
    return;
  gtk_editable_set_text (GTK_EDITABLE (self->search), "");
  choose (self, &material);
  refresh (GTK_WIDGET (self));
}

/* -------- Actions -------- */

static void
saved_cb (GtkWidget *view, const char *name)
{
  tm_material_view_choose (TM_MATERIAL_VIEW (view), name);
}

static void
add_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmMaterialView *self = TM_MATERIAL_VIEW (widget);

  if (self->materials.document != NULL)
    tm_material_dialog_present (widget, self->materials.document, NULL, NULL, saved_cb);
}

static void
change (TmMaterialView *self)
{
  if (self->materials.document == NULL || self->materials.key == NULL)
    return;
  if (is_of_shop (self->materials.key))
    tm_material_dialog_present (GTK_WIDGET (self), self->materials.document, self->materials.key + 1, NULL,
                                saved_cb);
  else
    tm_material_dialog_present (GTK_WIDGET (self), self->materials.document, NULL, self->materials.key + 1,
                                saved_cb);
}

static void
change_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  change (TM_MATERIAL_VIEW (widget));
}

static void
find_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_widget_grab_focus (GTK_WIDGET (TM_MATERIAL_VIEW (widget)->search));
}

void
tm_material_view_set_document (TmMaterialView *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_MATERIAL_VIEW (self));

  tm_side_list_set_document (&self->materials, document);
}

void
tm_material_view_enter (TmMaterialView *self)
{
  g_return_if_fail (TM_IS_MATERIAL_VIEW (self));

  tm_side_list_enter (&self->materials);
  reveal_chosen (self);
}

GtkListBox *
tm_material_view_materials (TmMaterialView *self)
{
  g_return_val_if_fail (TM_IS_MATERIAL_VIEW (self), NULL);

  return self->materials.list;
}

GtkListBox *
tm_material_view_figures (TmMaterialView *self)
{
  g_return_val_if_fail (TM_IS_MATERIAL_VIEW (self), NULL);

  return tm_material_table_list (self->figures);
}

/* -------- Building -------- */

static void
build_search (TmMaterialView *self)
{
  self->search = GTK_SEARCH_ENTRY (gtk_search_entry_new ());
  gtk_widget_set_hexpand (GTK_WIDGET (self->search), TRUE);
  g_object_set (self->search, "placeholder-text", _ ("Find a material"), NULL);
  tm_name_entry (GTK_EDITABLE (self->search), _ ("Find a material"));
  tm_name_widget (GTK_WIDGET (self->search), _ ("Find a material"));
  g_signal_connect_swapped (self->search, "search-changed", G_CALLBACK (search_cb), self);
  g_signal_connect_swapped (self->search, "activate", G_CALLBACK (search_activate_cb), self);
  g_signal_connect_swapped (self->search, "stop-search", G_CALLBACK (stop_search_cb), self);
}

static GtkWidget *
build_left (TmMaterialView *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  build_search (self);
  gtk_widget_add_css_class (head, "tm-view-head");
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->search));
  gtk_box_append (GTK_BOX (head), tm_view_button_new (_ ("_Add…"), "material.add",
                                                      _ ("A material with the shop’s own figures (Ctrl+I)")));
  tm_side_list_init (&self->materials, GTK_WIDGET (self), _ ("Materials"), refresh, show);
  tm_side_list_activates (&self->materials, G_CALLBACK (change));
  gtk_list_box_set_filter_func (self->materials.list, filter_cb, self, NULL);
  return tm_side_list_put (&self->materials, head, NULL);
}

static GtkWidget *
build_head (TmMaterialView *self)
{
  GtkWidget *head = tm_view_head_new (&self->title, &self->about);

  self->change = tm_view_button_new (_ ("_Change…"), "material.change",
                                     _ ("An entry of the shop’s own, beside the tables"));
  gtk_box_append (GTK_BOX (head), self->change);
  return head;
}

static GtkWidget *
build_right (TmMaterialView *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->figures = TM_MATERIAL_TABLE (tm_material_table_new ());
  gtk_widget_set_hexpand (box, TRUE);
  gtk_box_append (GTK_BOX (box), build_head (self));
  gtk_box_append (GTK_BOX (box), tm_view_scroller_new (GTK_WIDGET (self->figures)));
  return box;
}

static void
tm_material_view_dispose (GObject *object)
{
  TmMaterialView *self = TM_MATERIAL_VIEW (object);

  tm_side_list_clear (&self->materials);
  G_OBJECT_CLASS (tm_material_view_parent_class)->dispose (object);
}

static void
tm_material_view_class_init (TmMaterialViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_material_view_dispose;
  gtk_widget_class_install_action (widget_class, "material.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "material.change", NULL, change_action);
  gtk_widget_class_install_action (widget_class, "material.find", NULL, find_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_i, GDK_CONTROL_MASK, "material.add", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_f, GDK_CONTROL_MASK, "material.find", NULL);
}

static void
tm_material_view_init (TmMaterialView *self)
{
  gtk_box_append (GTK_BOX (self), build_left (self));
  gtk_box_append (GTK_BOX (self), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (self), build_right (self));
}

GtkWidget *
tm_material_view_new (void)
{
  return g_object_new (TM_TYPE_MATERIAL_VIEW, NULL);
}
