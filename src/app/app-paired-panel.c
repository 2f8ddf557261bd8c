/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-paired-panel.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-feature-words.h"
#include "app-form.h"
#include "app-study-picture.h"
#include "app-study-words.h"
#include "core-study.h"
#include "plot-paired.h"

struct _TmPairedPanel {
  GtkBox parent_instance;

  TmDocument *document; /* borrowed */
  GPtrArray *features;  /* const char *: balloons, as in the choice */
  GPtrArray *methods;   /* const char *, likewise */
  TmPairedPlot *plot;
  gboolean filling;

  AdwComboRow *feature;
  AdwComboRow *first;
  AdwComboRow *second;
  GtkLabel *words;
  TmStudyPicture *picture;
};

G_DEFINE_FINAL_TYPE (TmPairedPanel, tm_paired_panel, GTK_TYPE_BOX)

static void
draw_cb (gconstpointer plot, cairo_t *cr, double width, double height, const TmTheme *theme)
{
  tm_paired_plot_draw (plot, cr, width, height, theme);
}

static TmFeature *
get_feature (TmPairedPanel *self)
{
  const guint chosen = tm_form_chosen (self->feature);

  if (chosen >= self->features->len)
    return NULL;
  return tm_job_find_feature (tm_document_job (self->document), g_ptr_array_index (self->features, chosen));
}

/* By its words: the list of methods may be another by now. */
static const char *
get_method (AdwComboRow *row)
{
  GObject *item = adw_combo_row_get_selected_item (row);

  return GTK_IS_STRING_OBJECT (item) ? gtk_string_object_get_string (GTK_STRING_OBJECT (item)) : "";
}

static void
show (TmPairedPanel *self, const char *words, TmPairedPlot *plot)
{
  g_autofree char *of_picture = plot != NULL ? tm_paired_plot_describe (plot) : g_strdup ("");

  gtk_label_set_text (self->words, words);
  tm_study_picture_set (self->picture, plot, draw_cb, of_picture);
  gtk_widget_set_visible (GTK_WIDGET (self->picture), plot != NULL);
  g_clear_pointer (&self->plot, tm_paired_plot_free);
  self->plot = plot;
}

static void
compare (TmPairedPanel *self, const TmFeature *feature, const char *first, const char *second)
{
  g_autofree double *a = NULL, *b = NULL;
  g_autofree char *words = NULL;
  const guint n = tm_paired_values (tm_document_job (self->document), feature, first, second, &a, &b);
  TmPaired paired;

  if (!tm_paired (a, b, n, &paired))
    {
      words = g_strdup_printf (
          ngettext ("Both methods have read %u piece and station of this feature; two or more "
                    "are needed. Take the same pieces with both.",
                    "Both methods have read %u pieces and stations of this feature; two or "
                    "more are needed. Take the same pieces with both.",
                    n),
          n);
      show (self, words, NULL);
      return;
    }
  words = tm_words_paired (&paired, first, second, feature->unit);
  show (self, words, tm_paired_plot_new (a, b, n, &paired, feature->unit));
}

static void
refresh (TmPairedPanel *self)
{
  const TmFeature *feature = get_feature (self);
  const char *first = get_method (self->first), *second = get_method (self->second);

  if (feature == NULL)
    show (
        self,
        _ ("There is no feature with readings yet. Read some pieces of one feature with two methods, at the "
           "same stations, and they are compared here."),
        NULL);
  else if (self->methods->len < 2)
    show (self,
          _ ("This feature has been read by one method only. Read the same pieces with another one, and the "
             "two are compared here."),
          NULL);
  else if (g_str_equal (first, second))
    show (self, _ ("Choose two different methods."), NULL);
  else
    compare (self, feature, first, second);
}

static const char *
find_method (const TmReading *reading)
{
  return *reading->method != '\0' ? reading->method : reading->row.feature->method;
}

/* The methods that have read @feature, in the order of their first reading. */
static void
collect_methods (TmPairedPanel *self, const TmFeature *feature)
{
  const TmJob *job = tm_document_job (self->document);

  g_ptr_array_set_size (self->methods, 0);
  for (guint i = 0; i < job->readings->len && feature != NULL; i++)
    {
      const TmReading *reading = g_ptr_array_index (job->readings, i);
      const char *method = find_method (reading);

      if (reading->row.feature == feature && tm_row_counts (&reading->row) && *method != '\0'
          && !g_ptr_array_find_with_equal_func (self->methods, method, g_str_equal, NULL))
        g_ptr_array_add (self->methods, (gpointer)method);
    }
}

static guint
find_text (const GPtrArray *texts, const char *text, guint fallback)
{
  guint at;

  return g_ptr_array_find_with_equal_func ((GPtrArray *)texts, text, g_str_equal, &at) ? at : fallback;
}

static void
fill_methods (TmPairedPanel *self)
{
  g_autofree char *first = g_strdup (get_method (self->first));
  g_autofree char *second = g_strdup (get_method (self->second));
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  guint at_first, at_second;

  collect_methods (self, get_feature (self));
  for (guint i = 0; i < self->methods->len; i++)
    g_ptr_array_add (words, g_ptr_array_index (self->methods, i));
  if (words->len == 0)
    g_ptr_array_add (words, (gpointer)_ ("none"));
  g_ptr_array_add (words, NULL);
  at_first = find_text (self->methods, first, 0);
  at_second = find_text (self->methods, second, 0);
  if (at_second == at_first && self->methods->len > 1)
    at_second = at_first == 0 ? 1 : 0;
  tm_form_set_words (self->first, (const char *const *)words->pdata, at_first);
  tm_form_set_words (self->second, (const char *const *)words->pdata, at_second);
}

static gboolean
has_readings (const TmJob *job, const TmFeature *feature)
{
  for (guint i = 0; i < job->readings->len; i++)
    if (((const TmReading *)g_ptr_array_index (job->readings, i))->row.feature == feature)
      return TRUE;
  return FALSE;
}

static guint
count_methods (TmPairedPanel *self, const TmFeature *feature)
{
  collect_methods (self, feature);
  return self->methods->len;
}

static void
fill_features (TmPairedPanel *self)
{
  const TmJob *job = tm_document_job (self->document);
  const TmFeature *chosen = get_feature (self);
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  gboolean several = FALSE; /* one that two methods have read is found */
  guint at = 0;

  g_ptr_array_set_size (self->features, 0);
  for (guint i = 0; i < job->features->len; i++)
    {
      TmFeature *feature = g_ptr_array_index (job->features, i);

      if (tm_kind_is_attribute (feature->kind) || !has_readings (job, feature))
        continue;
      if (feature == chosen || (chosen == NULL && !several && count_methods (self, feature) > 1))
        {
          at = self->features->len;
          several = TRUE;
        }
      g_ptr_array_add (self->features, (gpointer)feature->balloon);
      g_ptr_array_add (words, tm_words_feature (feature));
    }
  if (words->len == 0)
    g_ptr_array_add (words, g_strdup (_ ("none")));
  g_ptr_array_add (words, NULL);
  tm_form_set_words (self->feature, (const char *const *)words->pdata, at);
}

static void
feature_cb (TmPairedPanel *self)
{
  if (self->filling || self->document == NULL)
    return;
  self->filling = TRUE;
  fill_methods (self);
  self->filling = FALSE;
  refresh (self);
}

static void
method_cb (TmPairedPanel *self)
{
  if (!self->filling && self->document != NULL)
    refresh (self);
}

static void
tm_paired_panel_finalize (GObject *object)
{
  TmPairedPanel *self = TM_PAIRED_PANEL (object);

  g_clear_pointer (&self->plot, tm_paired_plot_free);
  g_ptr_array_unref (self->features);
  g_ptr_array_unref (self->methods);
  G_OBJECT_CLASS (tm_paired_panel_parent_class)->finalize (object);
}

static void
tm_paired_panel_class_init (TmPairedPanelClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_paired_panel_finalize;
}

static void
tm_paired_panel_init (TmPairedPanel *self)
{
  const char *none[] = { _ ("none"), NULL };
  AdwPreferencesGroup *group;

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-work");
  self->features = g_ptr_array_new ();
  self->methods = g_ptr_array_new ();
  group = tm_form_group (GTK_BOX (self), _ ("Method against method"),
                         _ ("The readings that two methods took of the same pieces at the same stations."));
  self->feature = tm_form_choice (group, _ ("Feature"), none);
  self->first = tm_form_choice (group, _ ("Method"), none);
  self->second = tm_form_choice (group, _ ("Against"), none);
  adw_combo_row_set_use_subtitle (self->feature, TRUE);
  adw_combo_row_set_use_subtitle (self->first, TRUE);
  adw_combo_row_set_use_subtitle (self->second, TRUE);
  self->words = g_object_new (GTK_TYPE_LABEL, "xalign", 0.0f, "wrap", TRUE, "selectable", FALSE, NULL);
  gtk_widget_add_css_class (GTK_WIDGET (self->words), "tm-lines");
  self->picture = TM_STUDY_PICTURE (tm_study_picture_new ());
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->words));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->picture));
  g_signal_connect_swapped (self->feature, "notify::selected", G_CALLBACK (feature_cb), self);
  g_signal_connect_swapped (self->first, "notify::selected", G_CALLBACK (method_cb), self);
  g_signal_connect_swapped (self->second, "notify::selected", G_CALLBACK (method_cb), self);
}

GtkWidget *
tm_paired_panel_new (void)
{
  return g_object_new (TM_TYPE_PAIRED_PANEL, NULL);
}

void
tm_paired_panel_set_document (TmPairedPanel *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_PAIRED_PANEL (self));

  if (self->document != document)
    {
      g_ptr_array_set_size (self->features, 0);
      g_ptr_array_set_size (self->methods, 0);
    }
  self->document = document;
  if (document == NULL)
    return;
  self->filling = TRUE;
  fill_features (self);
  fill_methods (self);
  self->filling = FALSE;
  refresh (self);
}

void
tm_paired_panel_focus (TmPairedPanel *self)
{
  g_return_if_fail (TM_IS_PAIRED_PANEL (self));

  gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}

const char *
tm_paired_panel_words (TmPairedPanel *self)
{
  return gtk_label_get_text (self->words);
}
