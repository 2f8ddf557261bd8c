/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-feature-read: what the rows of the feature form mean: a feature, or the one thing that is
 * wrong.
 */

#include <glib/gi18n-lib.h>

#include "app-edit.h"
#include "app-feature-form.h"
#include "app-form.h"
#include "app-words.h"
#include "core-callout.h"
#include "core-station.h"

/* Reads @row into @out; an empty row is an absent quantity. */
static gboolean
read_quantity (AdwEntryRow *row, TmUnit unit, TmQuantity *out, char **problem)
{
  g_autofree char *text = tm_form_text (row);
  TmReadStatus status = tm_quantity_read (text, unit, out);

  tm_form_mark_wrong (row, FALSE);
  if (status == TM_READ_EMPTY)
    *out = TM_QUANTITY_NONE;
  if (status == TM_READ_OK || status == TM_READ_EMPTY)
    return TRUE;
  return tm_form_refuse (row, problem,
                         g_strdup_printf ("%s: “%s”: %s",
                                          adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row)), text,
                                          g_dgettext (GETTEXT_PACKAGE, tm_read_status_text (status))));
}

static gboolean
read_count (AdwEntryRow *row, guint *out, char **problem)
{
  g_autofree char *text = tm_form_text (row);
  guint64 number = 1;

  tm_form_mark_wrong (row, FALSE);
  if (*text != '\0' && !g_ascii_string_to_unsigned (text, 10, 1, 1000, &number, NULL))
    return tm_form_refuse (row, problem,
                           g_strdup_printf (_ ("%s: “%s” is not a whole number from 1 to 1000."),
                                            adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row)), text));
  *out = (guint)number;
  return TRUE;
}

/* A callout with limits may be made more particular, never another dimension. */
static gboolean
choose_kind (TmFeatureForm *form, const TmJob *job, TmFeature *feature, TmCalloutStatus status,
             char **problem)
{
  guint chosen = tm_form_chosen (form->kind);
  TmKind kind = chosen == 0 || chosen > TM_N_KINDS ? feature->kind : (TmKind)(chosen - 1);

  if (status == TM_CALLOUT_OK && !tm_kinds_agree (kind, feature->kind))
    return tm_form_refuse (form->callout, problem,
                           g_strdup_printf (_ ("“%s” reads as %s and cannot be %s; choose another kind."),
                                            feature->requirement, tm_words_kind (feature->kind),
                                            tm_words_kind (kind)));
  feature->kind = kind;
  return TRUE;
}

/* Limits typed by hand, for a feature whose callout gives none. */
static gboolean
read_limits (TmFeatureForm *form, const TmJob *job, TmFeature *feature, char **problem)
{
  TmUnit unit = tm_kind_unit (feature->kind, job->unit);

  feature->unit = unit;
  if (tm_kind_is_attribute (feature->kind))
    {
      feature->nominal = feature->lower = feature->upper = TM_QUANTITY_NONE;
      return TRUE;
    }
  if (!read_quantity (form->nominal, unit, &feature->nominal, problem)
      || !read_quantity (form->lower, unit, &feature->lower, problem)
      || !read_quantity (form->upper, unit, &feature->upper, problem))
    return FALSE;
  if (feature->lower.given && feature->upper.given && feature->lower.count > feature->upper.count)
    return tm_form_refuse (form->lower, problem, g_strdup (_ ("The lower limit lies above the upper one.")));
  if (*feature->requirement == '\0' && !feature->lower.given && !feature->upper.given)
    return tm_form_refuse (form->callout, problem,
                           g_strdup (_ ("A feature needs its requirement, or a limit below it.")));
  return TRUE;
}

/* A callout that was not touched keeps the limits and the unit it came with. */
static TmCalloutStatus
read_callout (TmJob *job, TmFeature *feature, const char *text)
{
  TmCallout callout;

  if (!g_str_equal (feature->requirement, text))
    {
      feature->requirement = tm_job_intern (job, text);
      feature->cut = TM_CUT_UNKNOWN;
      return tm_callout_apply (job, feature);
    }
  callout = tm_callout_read (text, tm_callout_unit (job, feature->unit), job->general_tolerance);
  if (callout.status == TM_CALLOUT_OK)
    {
      feature->kind = callout.kind;
      feature->cut = callout.cut;
    }
  return callout.status;
}

static gboolean
read_requirement (TmFeatureForm *form, TmJob *job, TmFeature *feature, char **problem)
{
  g_autofree char *balloon = tm_form_text (form->balloon);
  g_autofree char *callout = tm_form_text (form->callout);
  g_autofree char *name = tm_form_text (form->name);
  guint side = tm_form_chosen (form->side);
  TmCalloutStatus status;

  tm_form_mark_wrong (form->balloon, FALSE);
  tm_form_mark_wrong (form->callout, FALSE);
  if (*balloon == '\0')
    return tm_form_refuse (form->balloon, problem, g_strdup (_ ("A feature needs its balloon number.")));
  feature->balloon = tm_job_intern (job, balloon);
  feature->name = tm_job_intern (job, name);
  status = read_callout (job, feature, callout);
  if (!choose_kind (form, job, feature, status, problem))
    return FALSE;
  if (side != 0)
    feature->cut = side == 1 ? TM_CUT_GROWS : TM_CUT_SHRINKS;
  return status == TM_CALLOUT_OK || read_limits (form, job, feature, problem);
}

static gboolean
read_stations (TmFeatureForm *form, TmJob *job, TmFeature *feature, char **problem)
{
  g_autofree char *text = tm_form_text (form->stations);
  g_auto (GStrv) parts = g_strsplit_set (text, ",; ", -1);

  tm_form_mark_wrong (form->stations, FALSE);
  g_ptr_array_set_size (feature->stations, 0);
  for (guint i = 0; parts[i] != NULL; i++)
    {
      TmStation station;

      if (*parts[i] == '\0')
        continue;
      if (!tm_station_read (parts[i], feature->unit, &station))
        return tm_form_refuse (
            form->stations, problem,
            g_strdup_printf (_ ("“%s” is no station; write depth/hour, for example mouth/12."), parts[i]));
      if (g_ptr_array_find_with_equal_func (feature->stations, parts[i], g_str_equal, NULL))
        return tm_form_refuse (form->stations, problem,
                               g_strdup_printf (_ ("Station “%s” stands twice."), parts[i]));
      g_ptr_array_add (feature->stations, (gpointer)tm_job_intern (job, parts[i]));
    }
  return TRUE;
}

/* The name chosen in @row, "" for none. */
static const char *
chosen_name (AdwComboRow *row, TmJob *job)
{
  GObject *item = adw_combo_row_get_selected_item (row);

  if (tm_form_chosen (row) == 0 || !GTK_IS_STRING_OBJECT (item))
    return tm_job_intern (job, NULL);
  return tm_job_intern (job, gtk_string_object_get_string (GTK_STRING_OBJECT (item)));
}

static gboolean
read_check (TmFeatureForm *form, TmJob *job, TmFeature *feature, char **problem)
{
  g_autofree char *every = NULL;
  guint n;

  if (tm_form_chosen (form->check) != 2)
    {
      const char *plan = tm_form_chosen (form->check) == 1      ? "first"
                         : g_str_equal (feature->check, "each") ? "each"
                                                                : "";

      feature->check = tm_job_intern (job, plan);
      return TRUE;
    }
  if (!read_count (form->every, &n, problem))
    return FALSE;
  every = g_strdup_printf ("every %u", n);
  feature->check = tm_job_intern (job, every);
  return TRUE;
}

static gboolean
read_measuring (TmFeatureForm *form, TmJob *job, TmFeature *feature, char **problem)
{
  g_autofree char *size = tm_form_text (form->size_feature);

  tm_form_mark_wrong (form->size_feature, FALSE);
  if (!read_stations (form, job, feature, problem) || !read_count (form->places, &feature->places, problem)
      || !read_check (form, job, feature, problem))
    return FALSE;
  if (*size != '\0' && tm_job_find_feature (job, size) == NULL)
    return tm_form_refuse (form->size_feature, problem,
                           g_strdup_printf (_ ("There is no feature %s to take the size from."), size));
  feature->size_feature = tm_job_intern (job, size);
  feature->method = chosen_name (form->method, job);
  feature->tool = chosen_name (form->tool, job);
  return TRUE;
}

static void
read_drawing (TmFeatureForm *form, TmJob *job, TmFeature *feature)
{
  static const char *const designators[] = { "", "key", "critical" };
  g_autofree char *sheet = tm_form_text (form->sheet);
  g_autofree char *zone = tm_form_text (form->zone);

  feature->designator = tm_job_intern (job, designators[MIN (tm_form_chosen (form->designator), 2)]);
  feature->sheet = tm_job_intern (job, sheet);
  feature->zone = tm_job_intern (job, zone);
}

static void
read_report (TmFeatureForm *form, TmJob *job, TmFeature *feature)
{
  g_autofree char *tooling = tm_form_text (form->tooling);
  g_autofree char *comment = tm_form_text (form->comment);

  feature->affected = tm_form_chosen (form->affected) == 1;
  feature->tooling = tm_job_intern (job, tooling);
  feature->comment = tm_job_intern (job, comment);
}

/* Where no mate is given the rows are hidden, and what was wanted of a measured one stays. */
static gboolean
read_wanted (TmFeatureForm *form, TmUnit unit, TmMate *mate, char **problem)
{
  if (!mate->given)
    return TRUE;
  if (!read_quantity (form->wanted_least, unit, &mate->wanted_least, problem)
      || !read_quantity (form->wanted_most, unit, &mate->wanted_most, problem))
    return FALSE;
  if (mate->wanted_least.given && mate->wanted_most.given
      && mate->wanted_least.count > mate->wanted_most.count)
    return tm_form_refuse (form->wanted_least, problem,
                           g_strdup (_ ("The least wanted clearance lies above the most; swap the two.")));
  return TRUE;
}

static gboolean
read_mate (TmFeatureForm *form, TmFeature *feature, char **problem)
{
  guint chosen = tm_form_chosen (form->mate);
  TmMate mate = feature->mate;

  mate.given = chosen != 0;
  mate.kind = chosen == 2 ? TM_KIND_BORE : TM_KIND_SHAFT;
  tm_form_mark_wrong (form->mate_lower, FALSE);
  if (mate.given && feature->unit == TM_UNIT_NONE)
    return tm_form_refuse (form->mate_lower, problem,
                           g_strdup (_ ("Only a feature with a size has a mate.")));
  if (mate.given
      && (!read_quantity (form->mate_lower, feature->unit, &mate.lower, problem)
          || !read_quantity (form->mate_upper, feature->unit, &mate.upper, problem)))
    return FALSE;
  if (mate.given && (!mate.lower.given || !mate.upper.given))
    return tm_form_refuse (form->mate_lower, problem, g_strdup (_ ("A mate needs both of its limits.")));
  if (mate.given && mate.lower.count > mate.upper.count)
    return tm_form_refuse (form->mate_lower, problem,
                           g_strdup (_ ("The lower limit of the mate lies above its upper one.")));
  if (!read_wanted (form, feature->unit, &mate, problem))
    return FALSE;
  if (!mate.given)
    mate.lower = mate.upper = TM_QUANTITY_NONE;
  feature->mate = mate;
  return TRUE;
}

TmFeature *
tm_feature_form_read (TmFeatureForm *form, TmJob *job, const TmFeature *feature, char **problem)
{
  TmFeature *read = tm_edit_copy_feature (feature);

  *problem = NULL;
  if (read_requirement (form, job, read, problem) && read_measuring (form, job, read, problem)
      && read_mate (form, read, problem))
    {
      read_drawing (form, job, read);
      read_report (form, job, read);
      return read;
    }
  tm_feature_free (read);
  return NULL;
}
