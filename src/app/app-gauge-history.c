/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauge-history.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-edit.h"
#include "app-feature-words.h"
#include "app-form.h"
#include "app-gauge-section.h"
#include "app-gauge-words.h"
#include "app-toast.h"
#include "app-words.h"
#include "core-gauge-kind.h"

/* Checks shown; the budget only asks for the last. */
#define SHOWN_CHECKS 6

struct _TmGaugeHistory {
  GtkBox parent_instance;

  TmDocument *document;
  char *tag;
  TmGaugeSection calibrations;
  TmGaugeSection checks;
  TmGaugeSection pins;
  GtkWidget *checks_box;
  GtkWidget *pins_box;
};

G_DEFINE_FINAL_TYPE (TmGaugeHistory, tm_gauge_history, GTK_TYPE_BOX)

static TmJob *
get_job (TmGaugeHistory *self)
{
  return tm_document_job (self->document);
}

static TmGauge *
get_gauge (TmGaugeHistory *self)
{
  return self->document != NULL ? tm_job_find_gauge (get_job (self), self->tag) : NULL;
}

static void
say_error (TmGaugeHistory *self, gboolean done, const GError *error)
{
  if (!done)
    tm_window_show_error (GTK_WIDGET (self), error->message);
  else
    tm_window_clear_error (GTK_WIDGET (self));
}

static void
append_part (GString *text, const char *part)
{
  if (*part != '\0')
    g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", part);
}

/* -------- Calibrations -------- */

/* "±0.001 mm (k 2)" */
static char *
describe_uncertainty (const TmCalibration *calibration)
{
  g_autofree char *uncertainty = tm_words_limit (&calibration->uncertainty);
  g_autofree char *k
      = calibration->coverage.given ? tm_quantity_format (&calibration->coverage) : g_strdup ("2");

  return calibration->uncertainty.given ? g_strdup_printf (_ ("%s (k %s)"), uncertainty, k) : g_strdup ("");
}

/* "due 1 Mar 2027, certificate EX-1, Example lab, ±0.001 mm (k 2), shows +0.0005 mm" */
static char *
describe_calibration (const TmCalibration *calibration)
{
  GString *text = g_string_new (NULL);
  g_autofree char *date = tm_words_date (calibration->due);
  g_autofree char *due = *calibration->due != '\0' ? g_strdup_printf (_ ("due %s"), date) : g_strdup ("");
  g_autofree char *uncertainty = describe_uncertainty (calibration);

  append_part (text, due);
  append_part (text, calibration->certificate);
  append_part (text, calibration->by);
  append_part (text, uncertainty);
  if (calibration->error.given)
    {
      g_autofree char *error = tm_words_signed (calibration->error.count, &calibration->error);
      g_autofree char *shows = g_strdup_printf (_ ("shows %s"), error);

      append_part (text, shows);
    }
  append_part (text, calibration->note);
  return g_string_free (text, FALSE);
}

static void
remove_calibration_cb (GtkButton *button, TmGaugeHistory *self)
{
  TmCalibration *row = g_object_get_data (G_OBJECT (button), "row");
  g_autoptr (GError) error = NULL;

  say_error (self, tm_edit_remove_calibration (self->document, row, &error), error);
}

static int
compare_dates (gconstpointer a, gconstpointer b)
{
  const TmCalibration *one = *(const TmCalibration *const *)a;
  const TmCalibration *other = *(const TmCalibration *const *)b;

  return strcmp (other->date, one->date);
}

static void
add_calibration_row (TmGaugeHistory *self, TmCalibration *calibration)
{
  gboolean bad = g_str_equal (calibration->outcome, "bad");
  g_autofree char *date = tm_words_date (calibration->date);
  g_autofree char *title = g_strdup_printf (bad ? _ ("▲ %s: found bad") : _ ("%s: good"), date);
  g_autofree char *about = describe_calibration (calibration);
  g_autofree char *remove = g_strdup_printf (_ ("Remove the calibration of %s"), date);

  tm_gauge_section_add_row (&self->calibrations, title, about, remove, calibration,
                            G_CALLBACK (remove_calibration_cb), self);
}

static void
show_calibrations (TmGaugeHistory *self)
{
  const TmJob *job = get_job (self);
  g_autoptr (GPtrArray) own = g_ptr_array_new ();

  tm_gauge_section_drop_rows (&self->calibrations);
  for (guint i = 0; i < job->calibrations->len; i++)
    {
      TmCalibration *each = g_ptr_array_index (job->calibrations, i);

      if (g_str_equal (each->gauge, self->tag))
        g_ptr_array_add (own, each);
    }
  g_ptr_array_sort (own, compare_dates);
  for (guint i = 0; i < own->len; i++)
    add_calibration_row (self, g_ptr_array_index (own, i));
  if (own->len == 0)
    tm_gauge_section_say_none (&self->calibrations,
                               _ ("None is entered; the dates on the gauge itself count."));
}

/* -------- Checks on the standard -------- */

/* What it has moved, held against what the shop lets it move. */
static char *
describe_drift (const TmJob *job, const TmGauge *gauge, const TmCheck *check)
{
  gint64 drift = tm_check_drift (job, check);
  gint64 allowed = tm_gauge_drift_limit (job, gauge);
  g_autofree char *moved = tm_words_signed (drift, &check->reading);
  g_autofree char *digits = NULL;
  g_autofree char *limit = NULL;

  if (allowed < 0)
    return g_strdup_printf (_ ("drift %s"), moved);
  digits = tm_count_format_exact (allowed, (TmUnit)gauge->error_limit.unit, gauge->error_limit.decimals);
  limit = g_strdup_printf ("±%s %s", digits, tm_unit_symbol ((TmUnit)gauge->error_limit.unit));
  if (ABS (drift) <= allowed)
    return g_strdup_printf (_ ("drift %s, within %s"), moved, limit);
  return g_strdup_printf (_ ("drift %s, beyond %s: set it, then check it again"), moved, limit);
}

static gboolean
read_field (AdwEntryRow *row, const TmGauge *gauge, TmQuantity *out, char **problem)
{
  g_autofree char *text = tm_form_text (row);
  const char *title = adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row));
  TmUnit unit = gauge->resolution.given ? (TmUnit)gauge->resolution.unit : gauge->unit;
  TmReadStatus status = tm_quantity_read (text, unit, out);

  if (status == TM_READ_OK)
    return TRUE;
  if (status != TM_READ_EMPTY)
    *problem = g_strdup_printf ("%s: “%s”: %s", title, text,
                                g_dgettext (GETTEXT_PACKAGE, tm_read_status_text (status)));
  return FALSE;
}

/* FALSE with a line in @problem where what is typed is no number, with none while something is missing. */
static gboolean
read_check (TmGaugeHistory *self, const TmGauge *gauge, TmCheck *check, char **problem)
{
  TmGaugeFault fault;

  if (!read_field (self->checks.first, gauge, &check->standard, problem)
      || !read_field (self->checks.second, gauge, &check->reading, problem))
    return FALSE;
  fault = tm_check_fault (gauge, check);
  if (fault != TM_GAUGE_FINE)
    *problem = g_strdup (g_dgettext (GETTEXT_PACKAGE, tm_gauge_fault_text (fault)));
  return fault == TM_GAUGE_FINE;
}

static void
check_changed_cb (TmGaugeHistory *self)
{
  const TmGauge *gauge = get_gauge (self);
  TmCheck check = { .gauge = self->tag };
  g_autofree char *problem = NULL;
  g_autofree char *drift = NULL;

  if (gauge != NULL && read_check (self, gauge, &check, &problem))
    drift = describe_drift (get_job (self), gauge, &check);
  gtk_label_set_text (self->checks.says, drift != NULL ? drift : problem != NULL ? problem : "");
}

/* What is there already is not asked again: the standard stays for the next check. */
static void
keep_check (TmGaugeHistory *self, TmCheck *check)
{
  g_autofree char *text = describe_drift (get_job (self), get_gauge (self), check);
  g_autofree char *toast = g_strdup_printf (_ ("Checked %s: %s"), self->tag, text);
  g_autoptr (GError) error = NULL;
  gboolean kept = tm_edit_add_check (self->document, check, &error);

  say_error (self, kept, error);
  if (!kept)
    return;
  tm_form_set_text (self->checks.second, "");
  tm_window_toast (GTK_WIDGET (self), toast);
}

static void
add_check_cb (TmGaugeHistory *self)
{
  const TmGauge *gauge = get_gauge (self);
  TmCheck *check = tm_check_new ();
  g_autofree char *problem = NULL;
  g_autofree char *now = tm_now_utc ();

  if (gauge == NULL || !read_check (self, gauge, check, &problem))
    {
      tm_check_free (check);
      gtk_label_set_text (self->checks.says,
                          problem != NULL ? problem
                                          : _ ("Type the standard’s size and what the gauge shows on it."));
      return;
    }
  check->gauge = gauge->tag;
  check->by = tm_job_intern (get_job (self), tm_bench_by (tm_document_bench (self->document)));
  check->at = tm_job_intern (get_job (self), now);
  keep_check (self, check);
}

static void
remove_check_cb (GtkButton *button, TmGaugeHistory *self)
{
  TmCheck *row = g_object_get_data (G_OBJECT (button), "row");
  g_autoptr (GError) error = NULL;

  say_error (self, tm_edit_remove_check (self->document, row, &error), error);
}

static void
add_check_row (TmGaugeHistory *self, const TmGauge *gauge, TmCheck *check)
{
  g_autofree char *time = tm_words_time (check->at);
  g_autofree char *standard = tm_words_quantity (&check->standard);
  g_autofree char *reading = tm_words_quantity (&check->reading);
  g_autofree char *drift = describe_drift (get_job (self), gauge, check);
  g_autofree char *title = g_strdup_printf (_ ("%s: %s on %s"), time, reading, standard);
  g_autofree char *about
      = *check->by != '\0' ? g_strdup_printf ("%s, %s", drift, check->by) : g_strdup (drift);
  g_autofree char *remove = g_strdup_printf (_ ("Remove the check of %s"), time);

  tm_gauge_section_add_row (&self->checks, title, about, remove, check, G_CALLBACK (remove_check_cb), self);
}

/* What has no reading of its own, and what is a size itself, is not checked on a standard. */
static gboolean
can_be_checked (const TmGauge *gauge)
{
  const TmGaugeKind *kind = tm_gauge_kind_find (gauge->kind);

  return kind == NULL || (!kind->transfer && !kind->classed);
}

static void
show_checks (TmGaugeHistory *self, const TmGauge *gauge)
{
  const TmJob *job = get_job (self);
  guint n = 0;

  tm_gauge_section_drop_rows (&self->checks);
  for (guint i = job->checks->len; i > 0 && n < SHOWN_CHECKS; i--)
    {
      TmCheck *each = g_ptr_array_index (job->checks, i - 1);

      if (!g_str_equal (each->gauge, self->tag))
        continue;
      add_check_row (self, gauge, each);
      n++;
    }
  gtk_widget_set_visible (self->checks_box, n > 0 || can_be_checked (gauge));
}

/* The standard that was used last. */
static void
propose_standard (TmGaugeHistory *self)
{
  const TmCheckState state = tm_gauge_check_state (get_job (self), get_gauge (self), NULL);
  g_autofree char *text = state.last != NULL
                              ? tm_quantity_format_in (&state.last->standard, get_gauge (self)->unit)
                              : g_strdup ("");

  tm_form_set_text (self->checks.first, text);
  tm_form_set_text (self->checks.second, "");
}

/* -------- Measured pins -------- */

static gboolean
read_pin (TmGaugeHistory *self, const TmGauge *gauge, TmPinSize *pin, char **problem)
{
  TmGaugeFault fault;

  if (!read_field (self->pins.first, gauge, &pin->size, problem)
      || !read_field (self->pins.second, gauge, &pin->measured, problem))
    return FALSE;
  fault = tm_pin_size_fault (gauge, pin);
  if (fault != TM_GAUGE_FINE)
    *problem = g_strdup (g_dgettext (GETTEXT_PACKAGE, tm_gauge_fault_text (fault)));
  return fault == TM_GAUGE_FINE;
}

static void
pin_changed_cb (TmGaugeHistory *self)
{
  const TmGauge *gauge = get_gauge (self);
  TmPinSize pin = { .gauge = self->tag };
  g_autofree char *problem = NULL;
  g_autofree char *line = NULL;

  if (gauge != NULL && read_pin (self, gauge, &pin, &problem))
    line = tm_words_signed (tm_pin_size_error (&pin), &pin.measured);
  gtk_label_set_text (self->pins.says, line != NULL ? line : problem != NULL ? problem : "");
}

static void
add_pin_cb (TmGaugeHistory *self)
{
  const TmGauge *gauge = get_gauge (self);
  TmPinSize *pin = tm_pin_size_new ();
  g_autofree char *problem = NULL;
  g_autoptr (GError) error = NULL;
  gboolean kept;

  if (gauge == NULL || !read_pin (self, gauge, pin, &problem))
    {
      tm_pin_size_free (pin);
      gtk_label_set_text (self->pins.says, problem != NULL
                                               ? problem
                                               : _ ("Type the size marked on the pin and what it measures."));
      return;
    }
  pin->gauge = gauge->tag;
  kept = tm_edit_add_pin_size (self->document, pin, &error);
  say_error (self, kept, error);
  if (!kept)
    return;
  tm_form_set_text (self->pins.first, "");
  tm_form_set_text (self->pins.second, "");
  gtk_widget_grab_focus (GTK_WIDGET (self->pins.first));
}

static void
remove_pin_cb (GtkButton *button, TmGaugeHistory *self)
{
  TmPinSize *row = g_object_get_data (G_OBJECT (button), "row");
  g_autoptr (GError) error = NULL;

  say_error (self, tm_edit_remove_pin_size (self->document, row, &error), error);
}

static void
add_pin_row (TmGaugeHistory *self, TmPinSize *pin)
{
  g_autofree char *size = tm_words_quantity (&pin->size);
  g_autofree char *measured = tm_words_quantity (&pin->measured);
  g_autofree char *off = tm_words_signed (tm_pin_size_error (pin), &pin->measured);
  g_autofree char *title = g_strdup_printf (_ ("Pin %s"), size);
  g_autofree char *about = g_strdup_printf (_ ("measures %s, %s"), measured, off);
  g_autofree char *remove = g_strdup_printf (_ ("Remove the measured size of pin %s"), size);

  tm_gauge_section_add_row (&self->pins, title, about, remove, pin, G_CALLBACK (remove_pin_cb), self);
}

static void
show_pins (TmGaugeHistory *self, const TmGauge *gauge)
{
  const TmJob *job = get_job (self);
  const TmGaugeKind *kind = tm_gauge_kind_find (gauge->kind);
  guint n = 0;

  tm_gauge_section_drop_rows (&self->pins);
  for (guint i = 0; i < job->pin_sizes->len; i++)
    {
      TmPinSize *each = g_ptr_array_index (job->pin_sizes, i);

      if (!g_str_equal (each->gauge, self->tag))
        continue;
      add_pin_row (self, each);
      n++;
    }
  gtk_widget_set_visible (self->pins_box, n > 0 || (kind != NULL && kind->pins) || gauge->pin_step.given);
}

/* -------- The widget -------- */

void
tm_gauge_history_show (TmGaugeHistory *self, TmDocument *document, const char *tag)
{
  gboolean other;
  const TmGauge *gauge;

  g_return_if_fail (TM_IS_GAUGE_HISTORY (self));

  other = g_strcmp0 (tag, self->tag) != 0 || document != self->document;
  g_set_object (&self->document, document);
  if (other)
    {
      g_free (self->tag);
      self->tag = g_strdup (tag);
    }
  gauge = get_gauge (self);
  gtk_widget_set_visible (GTK_WIDGET (self), gauge != NULL);
  if (gauge == NULL)
    return;
  if (other)
    {
      propose_standard (self);
      tm_form_set_text (self->pins.first, "");
      tm_form_set_text (self->pins.second, "");
    }
  show_calibrations (self);
  show_checks (self, gauge);
  show_pins (self, gauge);
}

static void
tm_gauge_history_dispose (GObject *object)
{
  TmGaugeHistory *self = TM_GAUGE_HISTORY (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->tag, g_free);
  g_clear_pointer (&self->calibrations.rows, g_ptr_array_unref);
  g_clear_pointer (&self->checks.rows, g_ptr_array_unref);
  g_clear_pointer (&self->pins.rows, g_ptr_array_unref);
  G_OBJECT_CLASS (tm_gauge_history_parent_class)->dispose (object);
}

static void
tm_gauge_history_class_init (TmGaugeHistoryClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_gauge_history_dispose;
}

static GtkBox *
add_box (TmGaugeHistory *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_box_append (GTK_BOX (self), box);
  return GTK_BOX (box);
}

static void
build_calibrations (TmGaugeHistory *self)
{
  GtkWidget *add = tm_button_new (_ ("Add a _calibration…"));

  tm_gauge_section_build (&self->calibrations, add_box (self), _ ("Calibrations"), NULL);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (add), "register.calibrate");
  gtk_widget_set_tooltip_text (add, _ ("Enter a calibration of this gauge (Ctrl+K)"));
  gtk_widget_set_valign (add, GTK_ALIGN_CENTER);
  adw_preferences_group_set_header_suffix (self->calibrations.group, add);
}

static void
tm_gauge_history_init (TmGaugeHistory *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 18);
  self->checks_box = GTK_WIDGET (add_box (self));
  tm_gauge_section_build (&self->checks, GTK_BOX (self->checks_box), _ ("Checked on the standard"), NULL);
  tm_gauge_section_add_fields (&self->checks, _ ("Standard’s size"), _ ("The gauge shows, then Enter"),
                               G_CALLBACK (check_changed_cb), G_CALLBACK (add_check_cb), self);
  build_calibrations (self);
  self->pins_box = GTK_WIDGET (add_box (self));
  tm_gauge_section_build (&self->pins, GTK_BOX (self->pins_box), _ ("Measured pins"),
                          _ ("A pin’s own size, where it was measured, stands in place of its class."));
  tm_gauge_section_add_fields (&self->pins, _ ("Size, as marked"), _ ("It measures, then Enter"),
                               G_CALLBACK (pin_changed_cb), G_CALLBACK (add_pin_cb), self);
}

GtkWidget *
tm_gauge_history_new (void)
{
  return g_object_new (TM_TYPE_GAUGE_HISTORY, NULL);
}

void
tm_gauge_history_focus_check (TmGaugeHistory *self)
{
  g_autofree char *standard = NULL;

  g_return_if_fail (TM_IS_GAUGE_HISTORY (self));

  standard = tm_form_text (self->checks.first);
  if (gtk_widget_get_visible (self->checks_box))
    gtk_widget_grab_focus (GTK_WIDGET (*standard != '\0' ? self->checks.second : self->checks.first));
}

static void
type_fields (TmGaugeSection *section, const char *first, const char *second)
{
  tm_form_set_text (section->first, first);
  tm_form_set_text (section->second, second);
  g_signal_emit_by_name (section->second, "entry-activated");
}

void
tm_gauge_history_enter_check (TmGaugeHistory *self, const char *standard, const char *reading)
{
  g_return_if_fail (TM_IS_GAUGE_HISTORY (self));

  type_fields (&self->checks, standard, reading);
}

void
tm_gauge_history_enter_pin (TmGaugeHistory *self, const char *size, const char *measured)
{
  g_return_if_fail (TM_IS_GAUGE_HISTORY (self));

  type_fields (&self->pins, size, measured);
}

const char *
tm_gauge_history_check_says (TmGaugeHistory *self)
{
  g_return_val_if_fail (TM_IS_GAUGE_HISTORY (self), "");

  return gtk_label_get_text (self->checks.says);
}

const char *
tm_gauge_history_pin_says (TmGaugeHistory *self)
{
  g_return_val_if_fail (TM_IS_GAUGE_HISTORY (self), "");

  return gtk_label_get_text (self->pins.says);
}
