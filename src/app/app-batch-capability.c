/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-capability.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-batch-words.h"
#include "app-dialog.h"
#include "app-list-row.h"
#include "app-view-parts.h"
#include "report-batch-words.h"

/* Of the two columns before the words. */
#define NAME_CHARS   5
#define FIGURE_CHARS 19

struct _TmBatchCapability {
  GtkBox parent_instance;

  GtkListBox *list;
  GtkLabel *about;
};

G_DEFINE_FINAL_TYPE (TmBatchCapability, tm_batch_capability, GTK_TYPE_BOX)

/* What each compares, in the order of TmBatchIndex (ISO 22514-2, -3). */
static const char *const compared[TM_N_BATCH_INDEXES] = {
  [TM_BATCH_CP] = N_ ("the band against the scatter from piece to piece"),
  [TM_BATCH_CPK] = N_ ("the nearer limit against the scatter from piece to piece"),
  [TM_BATCH_PP] = N_ ("the band against all that the pieces spread"),
  [TM_BATCH_PPK] = N_ ("the nearer limit against all that the pieces spread"),
  [TM_BATCH_CPM] = N_ ("the band against how far the pieces lie from the target"),
  [TM_BATCH_CM] = N_ ("the machine alone: the band against pieces made one after another"),
  [TM_BATCH_CMK] = N_ ("the machine alone: the nearer limit against pieces made one after another"),
};

static void
add_cell (GtkWidget *row, const char *text, const char *css_class, int width)
{
  GtkLabel *label = tm_view_label_new (css_class, TRUE);

  gtk_label_set_text (label, text);
  gtk_label_set_width_chars (label, width);
  gtk_widget_set_hexpand (GTK_WIDGET (label), width < 0);
  gtk_widget_set_valign (GTK_WIDGET (label), GTK_ALIGN_BASELINE);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (label));
}

/* @said: the name as it is spoken. */
static void
add_row (TmBatchCapability *self, const char *name, const char *said, const char *about, const TmIndex *index)
{
  g_autofree char *figure = tm_words_batch_index (index);
  const gboolean given = *figure != '\0';
  g_autofree char *sentence = g_strdup_printf ("%s: %s, %s", said, given ? figure : _ ("not given"), about);
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *cells = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  add_cell (cells, name, "heading", NAME_CHARS);
  add_cell (cells, given ? figure : "–", "numeric", FIGURE_CHARS);
  add_cell (cells, about, "dim-label", -1);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), cells);
  tm_name_widget (row, sentence);
  gtk_list_box_append (self->list, row);
}

static void
add_index (TmBatchCapability *self, const TmBatch *batch, TmBatchIndex which)
{
  const TmIndex *index = tm_batch_index (&batch->capability, which);
  const char *what = g_dgettext (GETTEXT_PACKAGE, compared[which]);
  g_autofree char *reason = tm_batch_index_reason (batch, which);
  g_autofree char *under = *reason != '\0' ? g_strdup_printf ("%s · %s", what, reason) : g_strdup (what);

  add_row (self, tm_batch_index_name (which), tm_batch_index_name (which), under, index);
}

/* Under Ppk, the same with each stretch's level and drift taken out: what the process could hold.  Left out
 * where there was nothing to take out.  Cpk stands on the scatter alone as it is. */
static void
add_apart (TmBatchCapability *self, const TmBatch *batch)
{
  const TmCapability *apart = &batch->capability_apart;
  g_autofree char *together = tm_words_batch_index (&batch->capability.ppk);
  g_autofree char *alone = tm_words_batch_index (&apart->ppk);

  if (apart->status != TM_CAPABLE_OK || *alone == '\0' || g_str_equal (alone, together))
    return;
  add_row (self, "", _ ("Ppk of the scatter alone"),
           _ ("the same of the scatter alone, without the drift and the steps between stretches"),
           &apart->ppk);
}

void
tm_batch_capability_show (TmBatchCapability *self, const TmBatch *batch)
{
  const guint n = batch != NULL ? (guint)batch->capability.n : 0;
  g_autofree char *about = NULL;

  g_return_if_fail (TM_IS_BATCH_CAPABILITY (self));

  tm_list_clear (self->list);
  if (batch != NULL)
    about = tm_words_batch_says (batch, TM_BATCH_SAYS_CAPABILITY);
  if (batch != NULL && batch->capability.status == TM_CAPABLE_OK)
    {
      for (guint i = 0; i < TM_N_BATCH_INDEXES; i++)
        {
          add_index (self, batch, (TmBatchIndex)i);
          if (i == TM_BATCH_PPK)
            add_apart (self, batch);
        }
      g_clear_pointer (&about, g_free);
      about = g_strdup_printf (ngettext ("from %u piece; in brackets the interval that is 95 %% sure",
                                         "from %u pieces; in brackets the interval that is 95 %% sure", n),
                               n);
    }
  gtk_label_set_text (self->about, about != NULL ? about : "");
  gtk_widget_set_visible (GTK_WIDGET (self->list), gtk_list_box_get_row_at_index (self->list, 0) != NULL);
}

GtkListBox *
tm_batch_capability_list (TmBatchCapability *self)
{
  g_return_val_if_fail (TM_IS_BATCH_CAPABILITY (self), NULL);

  return self->list;
}

static void
tm_batch_capability_class_init (TmBatchCapabilityClass *klass)
{
}

static void
tm_batch_capability_init (TmBatchCapability *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-batch-capability");
  self->about = tm_view_label_new ("dim-label", TRUE);
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "tm-choices");
  tm_list_tab_leaves (self->list);
  tm_name_widget (GTK_WIDGET (self->list), _ ("Capability"));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->about));
  gtk_box_append (GTK_BOX (self), tm_view_scroller_new (GTK_WIDGET (self->list)));
}

GtkWidget *
tm_batch_capability_new (void)
{
  return g_object_new (TM_TYPE_BATCH_CAPABILITY, NULL);
}
