/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-feature-form.h"

#include <glib/gi18n-lib.h>

#include "app-form.h"
#include "app-words.h"
#include "core-callout.h"

/* Orders of the choices. */
enum { SIDE_AS_KIND, SIDE_GROWS, SIDE_SHRINKS };
enum { CHECK_EACH, CHECK_FIRST, CHECK_EVERY };
enum { DESIGNATOR_NONE, DESIGNATOR_KEY, DESIGNATOR_CRITICAL };
enum { MATE_NONE, MATE_SHAFT, MATE_BORE };
#define KIND_AS_READ 0 /* the kinds follow, in their own order */

static AdwComboRow *
add_kind_choice (AdwPreferencesGroup *group)
{
  const char *words[TM_N_KINDS + 2] = { _ ("as the callout says") };

  for (guint i = 0; i < TM_N_KINDS; i++)
    words[i + 1] = tm_words_kind (i);
  return tm_form_choice (group, _ ("Kind"), words);
}

static void
build_requirement (TmFeatureForm *form, GtkBox *into)
{
  const char *sides[] = { _ ("as the kind says"), _ ("inside: cutting makes it larger"),
                          _ ("outside: cutting makes it smaller"), NULL };
  AdwPreferencesGroup *group = tm_form_group (into, _ ("Requirement"), NULL);

  form->balloon = tm_form_entry (group, _ ("Balloon number"));
  form->callout = tm_form_entry (group, _ ("Callout, as the drawing has it"));
  form->reads = ADW_ACTION_ROW (adw_action_row_new ());
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (form->reads), _ ("Reads as"));
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (form->reads), FALSE);
  adw_action_row_set_subtitle_lines (form->reads, 3);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (form->reads), FALSE);
  adw_preferences_group_add (group, GTK_WIDGET (form->reads));
  form->nominal = tm_form_entry (group, _ ("Nominal"));
  form->lower = tm_form_entry (group, _ ("Lower limit"));
  form->upper = tm_form_entry (group, _ ("Upper limit"));
  form->name = tm_form_entry (group, _ ("Name"));
  form->kind = add_kind_choice (group);
  form->side = tm_form_choice (group, _ ("Way of the metal"), sides);
}

static void
build_measuring (TmFeatureForm *form, GtkBox *into)
{
  const char *checks[] = { _ ("each piece"), _ ("first article only"), _ ("every so many pieces"), NULL };
  const char *none[] = { _ ("none"), NULL };
  AdwPreferencesGroup *group = tm_form_group (into, _ ("Measuring"),
                                              _ ("Stations are depth/hour, in measuring order: mouth/12, "
                                                 "mouth/3, bottom/12, bottom/3. A depth is mouth, "
                                                 "middle, bottom or a length."));

  form->method = tm_form_choice (group, _ ("Method or gauge"), none);
  form->stations = tm_form_entry (group, _ ("Stations"));
  form->places = tm_form_entry (group, _ ("Places on the piece"));
  form->size_feature = tm_form_entry (group, _ ("Balloon number of the size that gives the bonus"));
  form->check = tm_form_choice (group, _ ("Measured on"), checks);
  form->every = tm_form_entry (group, _ ("Every how many pieces"));
}

static void
build_cutting (TmFeatureForm *form, GtkBox *into)
{
  const char *none[] = { _ ("none"), NULL };
  AdwPreferencesGroup *group
      = tm_form_group (into, _ ("Cutting"), _ ("Tools are kept on the Gauges page, under Cutting tools."));

  form->tool = tm_form_choice (group, _ ("Tool that cuts it"), none);
}

static void
build_drawing (TmFeatureForm *form, GtkBox *into)
{
  const char *designators[] = { _ ("none"), _ ("key"), _ ("critical"), NULL };
  AdwPreferencesGroup *group = tm_form_group (into, _ ("On the drawing"), NULL);

  form->designator = tm_form_choice (group, _ ("Designator"), designators);
  form->sheet = tm_form_entry (group, _ ("Sheet"));
  form->zone = tm_form_entry (group, _ ("Zone"));
}

static void
build_mate (TmFeatureForm *form, GtkBox *into)
{
  const char *mates[] = { _ ("none"), _ ("shaft"), _ ("bore"), NULL };
  AdwPreferencesGroup *group = tm_form_group (into, _ ("Mate"),
                                              _ ("The part that goes into or onto this feature, with its own "
                                                 "limits. A wanted clearance below zero is "
                                                 "an interference; left empty, that end is open."));

  form->mate = tm_form_choice (group, _ ("Mate"), mates);
  form->mate_lower = tm_form_entry (group, _ ("Lower limit of the mate"));
  form->mate_upper = tm_form_entry (group, _ ("Upper limit of the mate"));
  form->wanted_least = tm_form_entry (group, _ ("Wanted clearance, least"));
  form->wanted_most = tm_form_entry (group, _ ("Wanted clearance, most"));
}

static void
build_report (TmFeatureForm *form, GtkBox *into)
{
  const char *affected[] = { _ ("no: its baseline report speaks"), _ ("yes: measured again"), NULL };
  AdwPreferencesGroup *group = tm_form_group (into, _ ("In the report"), NULL);

  form->affected = tm_form_choice (group, _ ("Affected"), affected);
  form->tooling = tm_form_entry (group, _ ("Qualified tooling that checks it"));
  form->comment = tm_form_entry (group, _ ("Comment"));
}

void
tm_feature_form_build (TmFeatureForm *form, GtkBox *into)
{
  build_requirement (form, into);
  build_measuring (form, into);
  build_cutting (form, into);
  build_drawing (form, into);
  build_report (form, into);
  build_mate (form, into);
}

/* Shows @words, after "none", in @row, with @chosen selected: one that the job file names and that is defined
 * nowhere is kept. */
static void
fill_choice (AdwComboRow *row, GPtrArray *words, const char *chosen)
{
  guint at = 0;

  g_ptr_array_insert (words, 0, (gpointer)_ ("none"));
  for (guint i = 1; i < words->len; i++)
    if (g_str_equal (g_ptr_array_index (words, i), chosen))
      at = i;
  if (at == 0 && *chosen != '\0')
    {
      at = words->len;
      g_ptr_array_add (words, (gpointer)chosen);
    }
  g_ptr_array_add (words, NULL);
  tm_form_set_words (row, (const char *const *)words->pdata, at);
}

/* All methods, then all gauges. */
static void
fill_methods (TmFeatureForm *form, const TmJob *job, const TmFeature *feature)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  for (guint i = 0; i < job->methods->len; i++)
    g_ptr_array_add (words, (gpointer)((TmMethod *)g_ptr_array_index (job->methods, i))->name);
  for (guint i = 0; i < job->gauges->len; i++)
    g_ptr_array_add (words, (gpointer)((TmGauge *)g_ptr_array_index (job->gauges, i))->tag);
  fill_choice (form->method, words, feature->method);
}

static void
fill_tools (TmFeatureForm *form, const TmJob *job, const TmFeature *feature)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  for (guint i = 0; i < job->tools->len; i++)
    g_ptr_array_add (words, (gpointer)((TmTool *)g_ptr_array_index (job->tools, i))->name);
  fill_choice (form->tool, words, feature->tool);
}

static void
fill_quantity (AdwEntryRow *row, const TmQuantity *quantity, TmUnit unit)
{
  g_autofree char *text = tm_quantity_format_in (quantity, unit);

  tm_form_set_text (row, text);
}

static char *
join_stations (const TmFeature *feature)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < feature->stations->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? ", " : "",
                            (char *)g_ptr_array_index (feature->stations, i));
  return g_string_free (text, FALSE);
}

static void
fill_check (TmFeatureForm *form, const TmFeature *feature)
{
  guint chosen = CHECK_EACH;

  if (g_str_equal (feature->check, "first"))
    chosen = CHECK_FIRST;
  if (g_str_has_prefix (feature->check, "every "))
    chosen = CHECK_EVERY;
  adw_combo_row_set_selected (form->check, chosen);
  tm_form_set_text (form->every, chosen == CHECK_EVERY ? feature->check + strlen ("every ") : "");
}

static void
fill_measuring (TmFeatureForm *form, const TmJob *job, const TmFeature *feature)
{
  g_autofree char *stations = join_stations (feature);
  g_autofree char *places = g_strdup_printf ("%u", feature->places);

  fill_methods (form, job, feature);
  fill_tools (form, job, feature);
  tm_form_set_text (form->stations, stations);
  tm_form_set_text (form->places, places);
  tm_form_set_text (form->size_feature, feature->size_feature);
  fill_check (form, feature);
}

static void
fill_mate (TmFeatureForm *form, const TmFeature *feature)
{
  guint chosen = MATE_NONE;

  if (feature->mate.given)
    chosen = feature->mate.kind == TM_KIND_BORE ? MATE_BORE : MATE_SHAFT;
  adw_combo_row_set_selected (form->mate, chosen);
  fill_quantity (form->mate_lower, &feature->mate.lower, feature->unit);
  fill_quantity (form->mate_upper, &feature->mate.upper, feature->unit);
  fill_quantity (form->wanted_least, &feature->mate.wanted_least, feature->unit);
  fill_quantity (form->wanted_most, &feature->mate.wanted_most, feature->unit);
}

/* A full first article measures every feature. */
static void
fill_report (TmFeatureForm *form, const TmJob *job, const TmFeature *feature)
{
  adw_combo_row_set_selected (form->affected, feature->affected ? 1 : 0);
  gtk_widget_set_visible (GTK_WIDGET (form->affected), job->first_article != TM_FIRST_ARTICLE_FULL);
  tm_form_set_text (form->tooling, feature->tooling);
  tm_form_set_text (form->comment, feature->comment);
}

/* The kind the callout alone gives. */
static TmKind
kind_as_read (const TmJob *job, const TmFeature *feature)
{
  TmCallout callout = tm_callout_read (feature->requirement, job->unit, job->general_tolerance);

  return callout.kind;
}

void
tm_feature_form_fill (TmFeatureForm *form, const TmJob *job, const TmFeature *feature)
{
  gboolean as_read = *feature->requirement != '\0' && kind_as_read (job, feature) == feature->kind;
  guint side = feature->cut == TM_CUT_GROWS     ? SIDE_GROWS
               : feature->cut == TM_CUT_SHRINKS ? SIDE_SHRINKS
                                                : SIDE_AS_KIND;
  guint designator = g_str_equal (feature->designator, "critical") ? DESIGNATOR_CRITICAL
                     : g_str_equal (feature->designator, "key")    ? DESIGNATOR_KEY
                                                                   : DESIGNATOR_NONE;

  tm_form_set_text (form->balloon, feature->balloon);
  tm_form_set_text (form->callout, feature->requirement);
  tm_form_set_text (form->name, feature->name);
  adw_combo_row_set_selected (form->kind, as_read ? KIND_AS_READ : (guint)feature->kind + 1);
  adw_combo_row_set_selected (form->side, side);
  fill_quantity (form->nominal, &feature->nominal, feature->unit);
  fill_quantity (form->lower, &feature->lower, feature->unit);
  fill_quantity (form->upper, &feature->upper, feature->unit);
  fill_measuring (form, job, feature);
  adw_combo_row_set_selected (form->designator, designator);
  tm_form_set_text (form->sheet, feature->sheet);
  tm_form_set_text (form->zone, feature->zone);
  fill_report (form, job, feature);
  fill_mate (form, feature);
  tm_feature_form_follow (form, job, feature);
}

/* "4X" in another callout says how many places there are. */
static void
follow_places (TmFeatureForm *form, const TmFeature *feature, const char *text, const TmCallout *callout)
{
  if (callout->status == TM_CALLOUT_OK && !g_str_equal (text, feature->requirement))
    {
      g_autofree char *places = g_strdup_printf ("%u", callout->places);

      tm_form_set_text (form->places, places);
    }
}

void
tm_feature_form_follow (TmFeatureForm *form, const TmJob *job, const TmFeature *feature)
{
  g_autofree char *text = tm_form_text (form->callout);
  TmCallout callout = tm_callout_read (text, job->unit, job->general_tolerance);
  g_autofree char *words = tm_words_reads_as (&callout);
  gboolean by_hand = callout.status != TM_CALLOUT_OK;
  gboolean mated = tm_form_chosen (form->mate) != MATE_NONE;

  follow_places (form, feature, text, &callout);
  adw_action_row_set_subtitle (form->reads, words);
  gtk_widget_set_visible (GTK_WIDGET (form->reads), *words != '\0');
  gtk_widget_set_visible (GTK_WIDGET (form->nominal), by_hand);
  gtk_widget_set_visible (GTK_WIDGET (form->lower), by_hand);
  gtk_widget_set_visible (GTK_WIDGET (form->upper), by_hand);
  gtk_widget_set_visible (GTK_WIDGET (form->size_feature),
                          callout.modifier != TM_MODIFIER_NONE || *feature->size_feature != '\0');
  gtk_widget_set_visible (GTK_WIDGET (form->every), tm_form_chosen (form->check) == CHECK_EVERY);
  gtk_widget_set_visible (GTK_WIDGET (form->mate_lower), mated);
  gtk_widget_set_visible (GTK_WIDGET (form->mate_upper), mated);
  gtk_widget_set_visible (GTK_WIDGET (form->wanted_least), mated);
  gtk_widget_set_visible (GTK_WIDGET (form->wanted_most), mated);
}
