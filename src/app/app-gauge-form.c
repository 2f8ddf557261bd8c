/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauge-form.h"

#include <glib/gi18n-lib.h>

#include "app-edit.h"
#include "app-form-read.h"
#include "app-form.h"
#include "app-gauge-words.h"
#include "core-blocks.h"
#include "core-gauge-kind.h"
#include "core-pins.h"

static const char *const signs[] = { "", "plus", "minus" };

/* -------- Class -------- */

/* In the choice "not stated" stands before the classes. */
static guint
find_class (const char *pin_class)
{
  const char *name;

  for (guint i = 0; (name = tm_pin_class_nth (i)) != NULL; i++)
    if (g_str_equal (name, pin_class))
      return i + 1;
  return 0;
}

static const char *
get_class (guint chosen)
{
  return chosen > 0 ? tm_pin_class_nth (chosen - 1) : "";
}

static AdwComboRow *
add_class_choice (AdwPreferencesGroup *group)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  const char *name;

  g_ptr_array_add (words, _ ("not stated"));
  for (guint i = 0; (name = tm_pin_class_nth (i)) != NULL; i++)
    g_ptr_array_add (words, (gpointer)name);
  g_ptr_array_add (words, NULL);
  return tm_form_choice (group, _ ("Class"), (const char *const *)words->pdata);
}

/* -------- Kind -------- */

/* The kind that is chosen, or that the person's own word names; NULL: none that the program knows. */
static const TmGaugeKind *
find_kind (TmGaugeForm *form)
{
  guint n;
  const TmGaugeKind *kinds = tm_gauge_kinds (&n);
  guint chosen = tm_form_chosen (form->kind);
  g_autofree char *word = tm_form_text (form->word);

  return chosen < n ? &kinds[chosen] : tm_gauge_kind_find (word);
}

static TmUnit
find_unit (TmGaugeForm *form)
{
  return tm_form_chosen (form->unit) == 1 ? TM_UNIT_IN : TM_UNIT_MM;
}

static gboolean
is_chosen (const TmGaugeKind *kind, const char *word)
{
  return kind != NULL && g_str_equal (kind->word, word);
}

/* A plug or a ring is one size; a set of pins has two ends and a step between. */
static gboolean
has_one_size (const TmGaugeKind *kind)
{
  return kind != NULL && kind->classed && !is_chosen (kind, "pin set");
}

/* A row that this kind does not ask for is still seen while it says something. */
static void
show_row (AdwEntryRow *row, gboolean wanted)
{
  g_autofree char *text = tm_form_text (row);

  gtk_widget_set_visible (GTK_WIDGET (row), wanted || *text != '\0');
}

static void
show_rows (TmGaugeForm *form)
{
  const TmGaugeKind *kind = find_kind (form);
  gboolean classed = kind != NULL && kind->classed;
  guint n;

  tm_gauge_kinds (&n);
  gtk_widget_set_visible (GTK_WIDGET (form->word), tm_form_chosen (form->kind) == n);
  show_row (form->pin_step, is_chosen (kind, "pin set"));
  show_row (form->blocks, is_chosen (kind, "gauge blocks"));
  show_row (form->feel, kind == NULL || kind->transfer);
  show_row (form->resolution, kind == NULL || (!kind->transfer && !classed));
  gtk_widget_set_visible (form->pins, classed || gtk_widget_get_visible (GTK_WIDGET (form->pin_step))
                                          || tm_form_chosen (form->pin_class) > 0);
  gtk_widget_set_visible (GTK_WIDGET (form->range_to), !has_one_size (kind));
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (form->range_from),
                                 has_one_size (kind) ? _ ("Size, as marked") : _ ("Range from"));
}

/* -------- Starting figures -------- */

/* Puts @text into a row that is empty or still holds what was put in before. */
static gboolean
put_figure (AdwEntryRow *row, char **put, const char *text)
{
  g_autofree char *now = tm_form_text (row);

  if (*now != '\0' && g_strcmp0 (now, *put) != 0)
    return FALSE;
  g_free (*put);
  *put = g_strdup (text);
  tm_form_fill_text (row, text);
  return *text != '\0';
}

static TmQuantity
read_range_to (TmGaugeForm *form)
{
  g_autofree char *text = tm_form_text (form->range_to);
  TmQuantity to = TM_QUANTITY_NONE;

  if (tm_quantity_read (text, find_unit (form), &to) != TM_READ_OK)
    return TM_QUANTITY_NONE;
  return to;
}

static void
say_source (TmGaugeForm *form, const TmGaugeDefaults *found, gboolean put)
{
  g_autofree char *line = NULL;

  if (put)
    line = g_strdup_printf (_ ("Starting figure: %s. Write your own over it."),
                            tm_words_gauge_source (found->source));
  else if (*found->source == '\0')
    line = g_strdup (
        _ ("No published figure is known for this kind: take it from the gauge or its certificate."));
  gtk_label_set_text (form->says, line != NULL ? line : "");
}

/* What is published for the kind, in the unit and for the range as they now stand. */
static void
put_defaults (TmGaugeForm *form)
{
  const TmGaugeKind *kind = find_kind (form);
  TmUnit unit = find_unit (form);
  TmQuantity to = read_range_to (form);
  TmGaugeDefaults found = { TM_QUANTITY_NONE, TM_QUANTITY_NONE, TM_QUANTITY_NONE, "", FALSE };
  g_autofree char *error_limit = NULL, *feel = NULL;
  gboolean put_error, put_feel;

  if (kind != NULL)
    found = tm_gauge_kind_defaults (kind, unit, &to);
  error_limit = tm_quantity_format_in (&found.error_limit, unit);
  feel = tm_quantity_format_in (&found.feel, unit);
  put_error = put_figure (form->error_limit, &form->put_error_limit, error_limit);
  put_feel = put_figure (form->feel, &form->put_feel, feel);
  put_figure (form->source, &form->put_source, put_error || put_feel ? found.source : "");
  say_source (form, &found, put_error || put_feel);
}

static void
kind_changed_cb (TmGaugeForm *form)
{
  show_rows (form);
  put_defaults (form);
}

/* A figure of the person's own no longer comes from the table that stands as its source. */
static void
figure_changed_cb (TmGaugeForm *form)
{
  g_autofree char *error_limit = tm_form_text (form->error_limit);
  g_autofree char *feel = tm_form_text (form->feel);
  g_autofree char *source = tm_form_text (form->source);

  if (form->put_source == NULL || *form->put_source == '\0' || g_strcmp0 (source, form->put_source) != 0)
    return;
  if (g_strcmp0 (error_limit, form->put_error_limit) != 0 || g_strcmp0 (feel, form->put_feel) != 0)
    {
      tm_form_set_text (form->source, "");
      gtk_label_set_text (form->says, "");
    }
}

/* -------- Building -------- */

static AdwComboRow *
build_kind (AdwPreferencesGroup *group)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  guint n;
  const TmGaugeKind *kinds = tm_gauge_kinds (&n);

  for (guint i = 0; i < n; i++)
    g_ptr_array_add (words, (gpointer)g_dpgettext2 (GETTEXT_PACKAGE, "gauge", kinds[i].word));
  g_ptr_array_add (words, (gpointer)_ ("another, in your own words"));
  g_ptr_array_add (words, NULL);
  return tm_form_choice (group, _ ("Kind"), (const char *const *)words->pdata);
}

static void
build_figures (TmGaugeForm *form, GtkBox *into)
{
  AdwPreferencesGroup *group = tm_form_group (into, _ ("What it says of a size"), NULL);

  form->range_from = tm_form_entry (group, _ ("Range from"));
  form->range_to = tm_form_entry (group, _ ("Range to"));
  form->resolution = tm_form_entry (group, _ ("Resolution: the smallest step it shows"));
  form->error_limit = tm_form_entry (group, _ ("Limit of error, ±"));
  form->feel = tm_form_entry (group, _ ("Transfer feel, ± for 95 of 100"));
  form->source = tm_form_entry (group, _ ("Where these figures come from"));
  form->blocks = tm_form_entry (group, _ ("Sizes of the set, such as 1.0005; 1.01-1.49 by 0.01; 25"));
  form->says = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_wrap (form->says, TRUE);
  gtk_label_set_xalign (form->says, 0);
  gtk_widget_add_css_class (GTK_WIDGET (form->says), "dim-label");
  gtk_box_append (into, GTK_WIDGET (form->says));
}

static void
build_pins (TmGaugeForm *form, GtkBox *into)
{
  const char *sign_words[] = { _ ("not stated"), _ ("plus"), _ ("minus"), NULL };
  AdwPreferencesGroup *group = tm_form_group (into, _ ("Made to"), NULL);

  form->pins = GTK_WIDGET (group);
  form->pin_class = add_class_choice (group);
  form->pin_sign = tm_form_choice (group, _ ("Plus or minus"), sign_words);
  form->pin_step = tm_form_entry (group, _ ("Step from pin to pin"));
}

static void
build_record (TmGaugeForm *form, GtkBox *into)
{
  AdwPreferencesGroup *record
      = tm_form_group (into, _ ("Calibration"), _ ("Dates are year-month-day: 2026-05-04."));
  AdwPreferencesGroup *keeping = tm_form_group (into, _ ("Keeping"), NULL);

  form->calibrated = tm_form_entry (record, _ ("Calibrated on"));
  form->due = tm_form_entry (record, _ ("Due on"));
  form->certificate = tm_form_entry (record, _ ("Certificate"));
  form->serial = tm_form_entry (keeping, _ ("Serial number"));
  form->owner = tm_form_entry (keeping, _ ("Owner"));
  form->place = tm_form_entry (keeping, _ ("Place where it is kept"));
  form->expansion = tm_form_entry (keeping, _ ("Expansion, millionths per °C; empty: steel"));
}

void
tm_gauge_form_build (TmGaugeForm *form, GtkBox *into)
{
  const char *units[] = { _ ("millimetre"), _ ("inch"), NULL };
  AdwPreferencesGroup *what = tm_form_group (into, _ ("Gauge"), NULL);

  form->tag = tm_form_entry (what, _ ("Tag"));
  form->kind = build_kind (what);
  form->word = tm_form_entry (what, _ ("Kind, in your own words"));
  form->unit = tm_form_choice (what, _ ("Unit"), units);
  build_figures (form, into);
  build_pins (form, into);
  build_record (form, into);
  g_signal_connect_swapped (form->kind, "notify::selected", G_CALLBACK (kind_changed_cb), form);
  g_signal_connect_swapped (form->unit, "notify::selected", G_CALLBACK (kind_changed_cb), form);
  g_signal_connect_swapped (form->word, "changed", G_CALLBACK (kind_changed_cb), form);
  g_signal_connect_swapped (form->range_to, "changed", G_CALLBACK (put_defaults), form);
  g_signal_connect_swapped (form->error_limit, "changed", G_CALLBACK (figure_changed_cb), form);
  g_signal_connect_swapped (form->feel, "changed", G_CALLBACK (figure_changed_cb), form);
}

void
tm_gauge_form_clear (TmGaugeForm *form)
{
  g_clear_pointer (&form->put_error_limit, g_free);
  g_clear_pointer (&form->put_feel, g_free);
  g_clear_pointer (&form->put_source, g_free);
}

/* Enter in a row saves, as in any form. */
void
tm_gauge_form_connect (TmGaugeForm *form, TmFormDialog *dialog)
{
  AdwEntryRow *const rows[]
      = { form->tag,    form->word,   form->range_from, form->range_to,   form->resolution, form->error_limit,
          form->feel,   form->source, form->pin_step,   form->calibrated, form->due,        form->certificate,
          form->serial, form->owner,  form->place,      form->expansion,  form->blocks };

  tm_form_dialog_enter_saves (dialog, rows, G_N_ELEMENTS (rows));
}

/* -------- Filling -------- */

static guint
find_word (const char *const *words, guint n, const char *word)
{
  for (guint i = 0; i < n; i++)
    if (g_str_equal (words[i], word))
      return i;
  return 0;
}

/* Only a kind's own word is chosen from the list; a word that says more stays as it was written. */
static void
fill_kind (TmGaugeForm *form, const char *word)
{
  guint n, at;
  const TmGaugeKind *kinds = tm_gauge_kinds (&n);

  for (at = 0; at < n && g_ascii_strcasecmp (kinds[at].word, word) != 0;)
    at++;
  tm_form_fill_text (form->word, at == n ? word : "");
  adw_combo_row_set_selected (form->kind, at == n && *word == '\0' ? 0 : at);
}

static void
fill_texts (TmGaugeForm *form, const TmGauge *gauge, gboolean copy)
{
  tm_form_fill_text (form->tag, copy ? "" : gauge->tag);
  tm_form_fill_text (form->calibrated, copy ? "" : gauge->calibrated);
  tm_form_fill_text (form->due, copy ? "" : gauge->due);
  tm_form_fill_text (form->certificate, copy ? "" : gauge->certificate);
  tm_form_fill_text (form->serial, copy ? "" : gauge->serial);
  tm_form_fill_text (form->owner, gauge->owner);
  tm_form_fill_text (form->place, gauge->place);
  tm_form_fill_text (form->source, gauge->source);
  tm_form_fill_text (form->blocks, gauge->blocks);
  adw_combo_row_set_selected (form->pin_class, find_class (gauge->pin_class));
  adw_combo_row_set_selected (form->pin_sign, find_word (signs, G_N_ELEMENTS (signs), gauge->pin_sign));
}

static void
fill_quantities (TmGaugeForm *form, const TmGauge *gauge)
{
  tm_form_fill_quantity (form->range_from, &gauge->range_from, gauge->unit);
  tm_form_fill_quantity (form->range_to, &gauge->range_to, gauge->unit);
  tm_form_fill_quantity (form->resolution, &gauge->resolution, gauge->unit);
  tm_form_fill_quantity (form->error_limit, &gauge->error_limit, gauge->unit);
  tm_form_fill_quantity (form->feel, &gauge->feel, gauge->unit);
  tm_form_fill_quantity (form->pin_step, &gauge->pin_step, gauge->unit);
  tm_form_fill_quantity (form->expansion, &gauge->expansion, TM_UNIT_HARDNESS);
}

void
tm_gauge_form_fill (TmGaugeForm *form, const TmGauge *gauge, TmUnit unit, gboolean copy)
{
  TmGauge *blank = tm_gauge_new ();
  const TmGauge *shown = gauge != NULL ? gauge : blank;

  blank->unit = unit;
  tm_gauge_form_clear (form);
  fill_kind (form, shown->kind);
  adw_combo_row_set_selected (form->unit, shown->unit == TM_UNIT_IN ? 1 : 0);
  fill_texts (form, shown, copy);
  fill_quantities (form, shown);
  tm_gauge_form_clear (form);
  gtk_label_set_text (form->says, "");
  show_rows (form);
  /* Figures that a gauge already has are its own; a new one starts with what is published. */
  if (gauge == NULL)
    put_defaults (form);
  tm_gauge_free (blank);
}

/* -------- Reading -------- */

static void
read_kind (TmGaugeForm *form, TmJob *job, TmGauge *gauge)
{
  guint n;
  const TmGaugeKind *kinds = tm_gauge_kinds (&n);
  guint chosen = tm_form_chosen (form->kind);
  g_autofree char *word = tm_form_text (form->word);

  gauge->kind = tm_job_intern (job, chosen < n ? kinds[chosen].word : word);
}

static void
read_texts (TmGaugeForm *form, TmJob *job, TmGauge *gauge)
{
  const struct {
    AdwEntryRow *row;
    const char **text;
  } texts[] = { { form->certificate, &gauge->certificate },
                { form->serial, &gauge->serial },
                { form->owner, &gauge->owner },
                { form->place, &gauge->place },
                { form->source, &gauge->source },
                { form->blocks, &gauge->blocks } };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *text = tm_form_text (texts[i].row);

      *texts[i].text = tm_job_intern (job, text);
    }
}

static gboolean
read_quantities (TmGaugeForm *form, TmGauge *gauge, char **problem)
{
  TmUnit unit = gauge->unit;

  if (!(tm_form_read_quantity (form->range_from, unit, &gauge->range_from, problem)
        && (has_one_size (find_kind (form))
            || tm_form_read_quantity (form->range_to, unit, &gauge->range_to, problem))
        && tm_form_read_quantity (form->resolution, unit, &gauge->resolution, problem)
        && tm_form_read_quantity (form->error_limit, unit, &gauge->error_limit, problem)
        && tm_form_read_quantity (form->feel, unit, &gauge->feel, problem)
        && tm_form_read_quantity (form->pin_step, unit, &gauge->pin_step, problem)
        && tm_form_read_quantity (form->expansion, TM_UNIT_HARDNESS, &gauge->expansion, problem)))
    return FALSE;
  if (has_one_size (find_kind (form)))
    gauge->range_to = gauge->range_from;
  return TRUE;
}

static void
read_class (TmGaugeForm *form, TmGauge *gauge)
{
  gboolean classed = gtk_widget_get_visible (form->pins);

  gauge->pin_class = classed ? get_class (tm_form_chosen (form->pin_class)) : "";
  gauge->pin_sign = classed ? signs[tm_form_chosen (form->pin_sign)] : "";
}

/* The text of a set is kept as it was written; what is no list of sizes is refused. */
static gboolean
check_blocks (TmGaugeForm *form, const TmGauge *gauge, char **problem)
{
  g_autoptr (GArray) sizes = NULL;
  TmBlocksStatus status;
  gsize where;

  tm_form_mark_wrong (form->blocks, FALSE);
  if (*gauge->blocks == '\0')
    return TRUE;
  status = tm_blocks_read (gauge->blocks, gauge->unit, &sizes, &where);
  if (status == TM_BLOCKS_OK)
    return TRUE;
  return tm_form_refuse (
      form->blocks, problem,
      g_strdup_printf ("“%s”: %s", gauge->blocks + where,
                       g_dpgettext2 (GETTEXT_PACKAGE, "blocks status", tm_blocks_status_word (status))));
}

static AdwEntryRow *
find_row (TmGaugeForm *form, TmGaugeFault fault)
{
  switch (fault)
    {
    case TM_GAUGE_ZERO_RESOLUTION:
      return form->resolution;
    case TM_GAUGE_RANGE_BACKWARDS:
    case TM_GAUGE_PIN_RANGE:
      return form->range_to;
    case TM_GAUGE_DUE_BEFORE:
    case TM_GAUGE_DATE:
      return form->due;
    case TM_GAUGE_PIN_STEP:
      return form->pin_step;
    case TM_GAUGE_PIN_CLASS:
    case TM_GAUGE_CLASS_SIZE:
      return form->range_from;
    case TM_GAUGE_FINE:
    case TM_GAUGE_NEGATIVE:
    case TM_GAUGE_PIN_OUT_OF_RANGE:
    case TM_GAUGE_COVERAGE:
    case TM_GAUGE_UNIT:
    case TM_GAUGE_STANDARD:
    case TM_N_GAUGE_FAULTS:
    default:
      return form->error_limit;
    }
}

static gboolean
is_right (TmGaugeForm *form, const TmGauge *gauge, char **problem)
{
  TmGaugeFault fault = tm_gauge_fault (gauge);
  const char *line = g_dgettext (GETTEXT_PACKAGE, tm_gauge_fault_text (fault));

  return fault == TM_GAUGE_FINE || tm_form_refuse (find_row (form, fault), problem, g_strdup (line));
}

TmGauge *
tm_gauge_form_read (TmGaugeForm *form, TmJob *job, const TmGauge *gauge, char **problem)
{
  TmGauge *read = gauge != NULL ? tm_edit_copy_gauge (gauge) : tm_gauge_new ();

  *problem = NULL;
  read->unit = find_unit (form);
  read_kind (form, job, read);
  read_texts (form, job, read);
  read_class (form, read);
  if (tm_form_read_name (form->tag, job, &read->tag, problem) && read_quantities (form, read, problem)
      && tm_form_read_date (form->calibrated, job, &read->calibrated, problem)
      && tm_form_read_date (form->due, job, &read->due, problem) && check_blocks (form, read, problem)
      && is_right (form, read, problem))
    return read;
  tm_gauge_free (read);
  return NULL;
}
