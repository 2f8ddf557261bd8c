/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-mate-form.h"

#include <glib/gi18n-lib.h>

#include "app-edit-mate.h"
#include "app-form-read.h"
#include "app-form.h"
#include "app-words.h"

void
tm_mate_form_build (TmMateForm *form, GtkBox *into, const TmFeature *feature)
{
  AdwPreferencesGroup *group = tm_form_group (
      into, _ ("Measured"),
      _ ("Over all its stations, at 20 °C. Where only one size was taken the largest stays empty."));
  AdwPreferencesGroup *piece;

  form->feature = feature;
  form->serial = tm_form_entry (group, _ ("Serial or mark"));
  form->smallest = tm_form_entry (group, _ ("Smallest size"));
  form->largest = tm_form_entry (group, _ ("Largest size"));
  form->uncertainty = tm_form_entry (group, _ ("Expanded uncertainty, ± (k = 2)"));
  piece = tm_form_group (into, _ ("Meant for"), NULL);
  form->piece = tm_form_choice (piece, _ ("Piece"), (const char *const[]) { NULL });
  form->place = tm_form_entry (piece, _ ("Place on the piece"));
  form->note = tm_form_entry (piece, _ ("Note"));
  gtk_widget_set_visible (GTK_WIDGET (form->place), feature->places > 1);
}

/* A piece that a file named and that is not in the job stands last. */
static void
fill_piece (TmMateForm *form, const TmJob *job, const char *serial)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  guint chosen = 0;

  g_ptr_array_add (words, (gpointer)_ ("none"));
  for (guint i = 0; i < job->pieces->len; i++)
    {
      const TmPiece *piece = g_ptr_array_index (job->pieces, i);

      if (g_str_equal (piece->serial, serial))
        chosen = words->len;
      g_ptr_array_add (words, (gpointer)piece->serial);
    }
  if (chosen == 0 && *serial != '\0')
    {
      chosen = words->len;
      g_ptr_array_add (words, (gpointer)serial);
    }
  g_ptr_array_add (words, NULL);
  tm_form_set_words (form->piece, (const char *const *)words->pdata, chosen);
}

void
tm_mate_form_fill (TmMateForm *form, const TmJob *job, const TmMateSize *mate)
{
  TmMateSize *blank = tm_mate_size_new ();
  const TmMateSize *shown = mate != NULL ? mate : blank;
  const TmUnit unit = form->feature->unit;

  tm_form_fill_text (form->serial, shown->serial);
  tm_form_fill_quantity (form->smallest, &shown->smallest, unit);
  tm_form_fill_quantity (form->largest, &shown->largest, unit);
  tm_form_fill_quantity (form->uncertainty, &shown->uncertainty, unit);
  fill_piece (form, job, shown->piece);
  tm_form_fill_quantity (form->place, &shown->place, TM_UNIT_COUNT);
  tm_form_fill_text (form->note, shown->note);
  tm_mate_size_free (blank);
}

static gboolean
read_sizes (TmMateForm *form, TmMateSize *mate, char **problem)
{
  const TmUnit unit = form->feature->unit;

  if (!tm_form_read_quantity (form->smallest, unit, &mate->smallest, problem)
      || !tm_form_read_quantity (form->largest, unit, &mate->largest, problem)
      || !tm_form_read_quantity (form->uncertainty, unit, &mate->uncertainty, problem))
    return FALSE;
  if (!mate->smallest.given || mate->smallest.count == 0)
    return tm_form_refuse (form->smallest, problem,
                           g_strdup (_ ("Smallest size: a measured mate needs one, above zero.")));
  if (mate->largest.given && mate->largest.count < mate->smallest.count)
    return tm_form_refuse (form->largest, problem,
                           g_strdup (_ ("Largest size: it lies below the smallest; swap the two.")));
  if (mate->uncertainty.given && mate->uncertainty.count >= mate->smallest.count)
    return tm_form_refuse (
        form->uncertainty, problem,
        g_strdup (_ ("Expanded uncertainty: it is as large as the size; write it like 0.002.")));
  return TRUE;
}

static gboolean
read_place (TmMateForm *form, TmMateSize *mate, char **problem)
{
  if (!tm_form_read_quantity (form->place, TM_UNIT_COUNT, &mate->place, problem))
    return FALSE;
  if (mate->place.given && (mate->place.count < 1 || mate->place.count > form->feature->places))
    return tm_form_refuse (form->place, problem,
                           g_strdup_printf (_ ("Place on the piece: write a whole number from 1 to %u."),
                                            form->feature->places));
  if (*mate->piece == '\0' || (mate->place.given && mate->place.count == 1))
    mate->place = TM_QUANTITY_NONE;
  return TRUE;
}

static const char *
chosen_piece (TmMateForm *form, TmJob *job)
{
  GObject *item = adw_combo_row_get_selected_item (form->piece);

  if (tm_form_chosen (form->piece) == 0 || !GTK_IS_STRING_OBJECT (item))
    return tm_job_intern (job, NULL);
  return tm_job_intern (job, gtk_string_object_get_string (GTK_STRING_OBJECT (item)));
}

TmMateSize *
tm_mate_form_read (TmMateForm *form, TmJob *job, const TmMateSize *mate, char **problem)
{
  TmMateSize *read = mate != NULL ? tm_edit_copy_mate_size (mate) : tm_mate_size_new ();
  g_autofree char *note = tm_form_text (form->note);

  *problem = NULL;
  read->feature = form->feature->balloon;
  read->note = tm_job_intern (job, note);
  read->piece = chosen_piece (form, job);
  if (tm_form_read_name (form->serial, job, &read->serial, problem) && read_sizes (form, read, problem)
      && read_place (form, read, problem))
    return read;
  tm_mate_size_free (read);
  return NULL;
}
