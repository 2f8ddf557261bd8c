/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The model as the canonical bytes of a job file: members in the order of
 * exchange-job-members.c, one row a line, what is empty or the default left out.
 */

#include "exchange-job-write.h"

#include "exchange-job-read.h"

/* One object that is being written. */
typedef struct {
  GString *out;
  const TmJsonMember *shape;
  const char *separator; /* between two members */
  gboolean started;
} Object;

static void
append_escaped (GString *out, guchar byte)
{
  switch (byte)
    {
    case '"':
      g_string_append (out, "\\\"");
      break;
    case '\\':
      g_string_append (out, "\\\\");
      break;
    case '\n':
      g_string_append (out, "\\n");
      break;
    case '\r':
      g_string_append (out, "\\r");
      break;
    case '\t':
      g_string_append (out, "\\t");
      break;
    default:
      g_string_append_printf (out, "\\u%04x", (guint)byte);
    }
}

static void
append_string (GString *out, const char *text)
{
  g_string_append_c (out, '"');
  while (*text != '\0')
    {
      const char *plain = text;

      while ((guchar)*text >= 0x20 && *text != '"' && *text != '\\')
        text++;
      g_string_append_len (out, plain, text - plain);
      if (*text != '\0')
        append_escaped (out, (guchar)*text++);
    }
  g_string_append_c (out, '"');
}

/* A text of the model; one that somehow is no UTF-8 must not spoil the whole file. */
static void
append_text (GString *out, const char *text)
{
  g_autofree char *valid = NULL;

  if (!g_utf8_validate (text, -1, NULL))
    text = valid = g_utf8_make_valid (text, -1);
  append_string (out, text);
}

static void
put_separator (Object *object)
{
  if (object->started)
    g_string_append (object->out, object->separator);
  object->started = TRUE;
}

static void
put_key (Object *object, guint member)
{
  put_separator (object);
  g_string_append_c (object->out, '"');
  g_string_append (object->out, object->shape[member].key);
  g_string_append (object->out, "\": ");
}

static void
put_always (Object *object, guint member, const char *text)
{
  put_key (object, member);
  append_text (object->out, text);
}

static void
put_text (Object *object, guint member, const char *text)
{
  if (*text != '\0')
    put_always (object, member, text);
}

static void
put_whole (Object *object, guint member, guint value)
{
  put_key (object, member);
  g_string_append_printf (object->out, "%u", value);
}

static void
put_truth (Object *object, guint member, gboolean value)
{
  put_key (object, member);
  g_string_append (object->out, value ? "true" : "false");
}

static void
put_extra (Object *object, const char *extra)
{
  if (*extra == '\0')
    return;
  put_separator (object);
  g_string_append (object->out, extra);
}

/* Whether @quantity has a decimal text in its own unit that gives its count again. */
static gboolean
is_exact (const TmQuantity *quantity, TmQuantity *again, char **text)
{
  g_autofree char *written
      = tm_count_format_exact (quantity->count, (TmUnit)quantity->unit, quantity->decimals);

  *again = TM_QUANTITY_NONE;
  if (tm_quantity_read (written, (TmUnit)quantity->unit, again) != TM_READ_OK
      || again->count != quantity->count)
    return FALSE;
  *text = g_steal_pointer (&written);
  return TRUE;
}

/* A length that its unit cannot express in decimals (the micrometres of a tolerance table, in an
 * inch feature) is written in millimetres, which express every picometre.  Other dimensions round
 * to what their unit can express: 9 counts of an angle, 3e-5 of an arc second. */
static char *
format_otherwise (const TmQuantity *quantity, TmUnit unit)
{
  TmQuantity other = *quantity;

  if (tm_unit_dimension ((TmUnit)quantity->unit) == TM_DIMENSION_LENGTH)
    other.unit = TM_UNIT_MM;
  else
    other.count = quantity->count / 9 * 9;
  other.decimals = 0;
  if (other.unit == unit)
    return tm_count_format_exact (other.count, (TmUnit)other.unit, 0);
  {
    g_autofree char *number = tm_count_format_exact (other.count, (TmUnit)other.unit, 0);

    return g_strconcat (number, " ", tm_unit_word ((TmUnit)other.unit), NULL);
  }
}

static void
put_quantity (Object *object, guint member, const TmQuantity *quantity, TmUnit unit)
{
  g_autofree char *text = NULL;
  TmQuantity again;

  if (!quantity->given)
    return;
  put_key (object, member);
  if (!is_exact (quantity, &again, &text))
    text = format_otherwise (quantity, unit);
  else if (quantity->unit != unit)
    {
      append_string (object->out, text);
      g_string_truncate (object->out, object->out->len - 1);
      g_string_append_printf (object->out, " %s\"", tm_unit_word ((TmUnit)quantity->unit));
      return;
    }
  append_string (object->out, text);
}

static Object
open_inner (Object *object, guint member)
{
  put_key (object, member);
  g_string_append_c (object->out, '{');
  return (Object) { object->out, object->shape[member].inside, ", ", FALSE };
}

static void
close_inner (Object *inner, const char *extra)
{
  put_extra (inner, extra);
  g_string_append_c (inner->out, '}');
}

static void
put_list (Object *object, guint member, const GPtrArray *texts)
{
  if (texts->len == 0)
    return;
  put_key (object, member);
  g_string_append_c (object->out, '[');
  for (guint i = 0; i < texts->len; i++)
    {
      g_string_append (object->out, i > 0 ? ", " : "");
      append_text (object->out, g_ptr_array_index (texts, i));
    }
  g_string_append_c (object->out, ']');
}

/* The sections. */

static void
write_first_article (Object *object, const TmJob *job)
{
  Object inner;

  if (job->first_article == TM_FIRST_ARTICLE_FULL && *job->first_article_reason == '\0'
      && *job->first_article_baseline == '\0' && *job->first_article_extra == '\0')
    return;
  inner = open_inner (object, JOB_FIRST_ARTICLE);
  put_text (&inner, FIRST_ARTICLE_KIND, tm_first_article_word (job->first_article));
  put_text (&inner, FIRST_ARTICLE_REASON, job->first_article_reason);
  put_text (&inner, FIRST_ARTICLE_BASELINE, job->first_article_baseline);
  close_inner (&inner, job->first_article_extra);
}

static void
write_job (GString *out, const TmJob *job)
{
  Object object = { out, tm_job_sections[IN_JOB].inside, ",\n  ", FALSE };

  g_string_append_printf (out, ",\n \"%s\": {\n  ", tm_job_sections[IN_JOB].key);
  put_text (&object, JOB_ID, job->id);
  put_always (&object, JOB_PART_NUMBER, job->part_number);
  put_text (&object, JOB_PART_NAME, job->part_name);
  put_text (&object, JOB_REVISION, job->revision);
  put_text (&object, JOB_DRAWING, job->drawing);
  put_text (&object, JOB_CUSTOMER, job->customer);
  put_text (&object, JOB_ORDER, job->order);
  put_text (&object, JOB_UNIT, tm_unit_word (job->unit));
  put_text (&object, JOB_MATERIAL, job->material);
  put_text (&object, JOB_STANDARD, tm_standard_word (job->standard));
  put_text (&object, JOB_DECISION, tm_decision_word (job->decision));
  put_quantity (&object, JOB_SIMPLE_RATIO, &job->simple_ratio, TM_UNIT_HARDNESS);
  put_text (&object, JOB_GENERAL_TOLERANCE, job->general_tolerance);
  write_first_article (&object, job);
  put_extra (&object, job->job_extra);
  g_string_append (out, "\n }");
}

static void
write_person (Object *object, const TmJob *job, gconstpointer data)
{
  const TmPerson *person = data;

  put_text (object, PERSON_INITIALS, person->initials);
  put_text (object, PERSON_NAME, person->name);
  put_extra (object, person->extra);
}

static void
write_gauge (Object *object, const TmJob *job, gconstpointer data)
{
  const TmGauge *gauge = data;

  put_text (object, GAUGE_TAG, gauge->tag);
  put_text (object, GAUGE_KIND, gauge->kind);
  put_text (object, GAUGE_UNIT, tm_unit_word (gauge->unit));
  put_quantity (object, GAUGE_RESOLUTION, &gauge->resolution, gauge->unit);
  put_quantity (object, GAUGE_ERROR_LIMIT, &gauge->error_limit, gauge->unit);
  put_text (object, GAUGE_CALIBRATED, gauge->calibrated);
  put_text (object, GAUGE_DUE, gauge->due);
  put_text (object, GAUGE_CERTIFICATE, gauge->certificate);
  put_extra (object, gauge->extra);
}

static void
write_method (Object *object, const TmJob *job, gconstpointer data)
{
  const TmMethod *method = data;
  const TmGauge *gauge
      = method->gauges->len > 0 ? tm_job_find_gauge (job, g_ptr_array_index (method->gauges, 0)) : NULL;

  put_text (object, METHOD_NAME, method->name);
  put_list (object, METHOD_GAUGES, method->gauges);
  put_quantity (object, METHOD_REPEATABILITY, &method->repeatability,
                gauge != NULL ? gauge->unit : job->unit);
  put_quantity (object, METHOD_REPEATABILITY_DOF, &method->repeatability_dof, TM_UNIT_COUNT);
  put_extra (object, method->extra);
}

static void
write_mate (Object *object, const TmFeature *feature)
{
  const TmMate *mate = &feature->mate;
  Object inner;

  if (!mate->given)
    return;
  inner = open_inner (object, FEATURE_MATE);
  put_text (&inner, MATE_KIND, tm_kind_word (mate->kind));
  put_quantity (&inner, MATE_LOWER, &mate->lower, feature->unit);
  put_quantity (&inner, MATE_UPPER, &mate->upper, feature->unit);
  close_inner (&inner, mate->extra);
}

/* A limit that no decimal text expresses is left to the requirement that gave it. */
static void
put_limit (Object *object, guint member, const TmQuantity *limit, const TmFeature *feature)
{
  g_autofree char *text = NULL;
  TmQuantity again;

  if (limit->given && *feature->requirement != '\0'
      && tm_unit_dimension ((TmUnit)limit->unit) != TM_DIMENSION_LENGTH && !is_exact (limit, &again, &text))
    return;
  put_quantity (object, member, limit, feature->unit);
}

static void
write_requirement (Object *object, const TmFeature *feature)
{
  put_text (object, FEATURE_BALLOON, feature->balloon);
  put_text (object, FEATURE_KIND, tm_kind_word (feature->kind));
  put_text (object, FEATURE_NAME, feature->name);
  put_text (object, FEATURE_REQUIREMENT, feature->requirement);
  put_text (object, FEATURE_UNIT, tm_unit_word (feature->unit));
  put_limit (object, FEATURE_NOMINAL, &feature->nominal, feature);
  put_limit (object, FEATURE_LOWER, &feature->lower, feature);
  put_limit (object, FEATURE_UPPER, &feature->upper, feature);
  put_text (object, FEATURE_CUT, tm_cut_word (feature->cut));
}

static void
write_feature (Object *object, const TmJob *job, gconstpointer data)
{
  const TmFeature *feature = data;
  TmCallout callout = { .status = TM_CALLOUT_EMPTY };
  gboolean reads;

  if (*feature->requirement != '\0')
    callout = tm_callout_read (feature->requirement, tm_callout_unit (job, feature->unit),
                               job->general_tolerance);
  reads = callout.status == TM_CALLOUT_OK;
  write_requirement (object, feature);
  /* The defaults too are said where the requirement says otherwise: it would be taken. */
  if (feature->envelope || (reads && callout.envelope))
    put_truth (object, FEATURE_ENVELOPE, feature->envelope);
  put_text (object, FEATURE_CLASS, feature->designator);
  if (feature->places != 1 || (reads && callout.places > 1))
    put_whole (object, FEATURE_PLACES, feature->places);
  put_list (object, FEATURE_STATIONS, feature->stations);
  put_text (object, FEATURE_SIZE_FEATURE, feature->size_feature);
  put_text (object, FEATURE_METHOD, feature->method);
  put_text (object, FEATURE_CHECK, feature->check);
  if (feature->group_size > 0)
    put_whole (object, FEATURE_GROUP_SIZE, feature->group_size);
  put_text (object, FEATURE_SHEET, feature->sheet);
  put_text (object, FEATURE_ZONE, feature->zone);
  write_mate (object, feature);
  put_extra (object, feature->extra);
}

static void
write_piece (Object *object, const TmJob *job, gconstpointer data)
{
  const TmPiece *piece = data;

  put_text (object, PIECE_SERIAL, piece->serial);
  if (piece->first_article)
    put_truth (object, PIECE_FIRST_ARTICLE, TRUE);
  put_extra (object, piece->extra);
}

static void
write_entry_start (Object *object, const TmEntryRow *row)
{
  put_text (object, ROW_ID, row->id);
  put_text (object, ROW_PIECE, row->piece->serial);
  put_text (object, ROW_FEATURE, row->feature->balloon);
}

static void
write_entry_end (Object *object, const TmEntryRow *row, const TmRowMembers *members)
{
  put_text (object, members->replaces, row->replaces);
  put_text (object, members->reason, row->reason);
  if (row->withdrawn != NULL)
    {
      Object inner = open_inner (object, members->withdrawn);

      put_text (&inner, WITHDRAWN_BY, row->withdrawn->by);
      put_text (&inner, WITHDRAWN_AT, row->withdrawn->at);
      put_text (&inner, WITHDRAWN_REASON, row->withdrawn->reason);
      close_inner (&inner, row->withdrawn->extra);
    }
  put_extra (object, row->extra);
}

static void
write_reading (Object *object, const TmJob *job, gconstpointer data)
{
  const TmReading *reading = data;
  TmUnit unit = reading->row.feature->unit;

  write_entry_start (object, &reading->row);
  if (reading->place != 1)
    put_whole (object, READING_PLACE, reading->place);
  put_text (object, READING_STATION, reading->station);
  if (reading->outcome != TM_OUTCOME_NONE)
    put_text (object, READING_VALUE, tm_outcome_word (reading->outcome));
  else
    put_quantity (object, READING_VALUE, &reading->value, unit);
  put_text (object, READING_TYPED, reading->typed);
  put_quantity (object, READING_DX, &reading->dx, unit);
  put_quantity (object, READING_DY, &reading->dy, unit);
  put_text (object, READING_METHOD, reading->method);
  put_text (object, READING_BY, reading->row.by);
  put_text (object, READING_AT, reading->row.at);
  put_quantity (object, READING_PART_TEMP, &reading->part_temp, TM_UNIT_CELSIUS);
  put_quantity (object, READING_GAUGE_TEMP, &reading->gauge_temp, TM_UNIT_CELSIUS);
  write_entry_end (object, &reading->row, &tm_reading_row_members);
}

static void
write_trial (Object *object, const TmJob *job, gconstpointer data)
{
  const TmPinTrial *trial = data;

  write_entry_start (object, &trial->row);
  put_quantity (object, TRIAL_SIZE, &trial->size, trial->row.feature->unit);
  put_text (object, TRIAL_CLASS, trial->pin_class);
  put_text (object, TRIAL_SIGN, tm_pin_sign_word (trial->sign));
  put_truth (object, TRIAL_WENT, trial->went);
  put_text (object, TRIAL_BY, trial->row.by);
  put_text (object, TRIAL_AT, trial->row.at);
  write_entry_end (object, &trial->row, &tm_trial_row_members);
}

static void
write_cut (Object *object, const TmJob *job, gconstpointer data)
{
  const TmCutRow *cut = data;

  write_entry_start (object, &cut->row);
  put_quantity (object, CUT_DIALLED, &cut->dialled, cut->row.feature->unit);
  if (cut->passes > 0)
    put_whole (object, CUT_PASSES, cut->passes);
  put_text (object, CUT_BY, cut->row.by);
  put_text (object, CUT_AT, cut->row.at);
  write_entry_end (object, &cut->row, &tm_cut_row_members);
}

static void
write_event (Object *object, const TmJob *job, gconstpointer data)
{
  const TmEvent *event = data;

  put_text (object, EVENT_BEFORE_PIECE, event->before_piece);
  put_text (object, EVENT_KIND, event->kind);
  put_text (object, EVENT_NOTE, event->note);
  put_text (object, EVENT_AMOUNT, event->amount);
  put_extra (object, event->extra);
}

static void
write_nonconformance (Object *object, const TmJob *job, gconstpointer data)
{
  const TmNonconformance *nonconformance = data;

  put_text (object, NONCONFORMANCE_PIECE, nonconformance->piece);
  put_text (object, NONCONFORMANCE_FEATURE, nonconformance->feature);
  put_text (object, NONCONFORMANCE_NUMBER, nonconformance->number);
  put_text (object, NONCONFORMANCE_NOTE, nonconformance->note);
  put_text (object, NONCONFORMANCE_DISPOSITION, nonconformance->disposition);
  put_extra (object, nonconformance->extra);
}

static void
write_signature (Object *object, const TmJob *job, gconstpointer data)
{
  const TmSignature *signature = data;

  put_text (object, SIGNATURE_BY, signature->by);
  put_text (object, SIGNATURE_ROLE, signature->role);
  put_text (object, SIGNATURE_AT, signature->at);
  put_text (object, SIGNATURE_DIGEST, signature->digest);
  put_extra (object, signature->extra);
}

typedef void (*WriteRow) (Object *object, const TmJob *job, gconstpointer row);

static void
write_rows (GString *out, const TmJob *job, guint section, const GPtrArray *rows, WriteRow write_row)
{
  if (rows->len == 0)
    return;
  g_string_append_printf (out, ",\n \"%s\": [", tm_job_sections[section].key);
  for (guint i = 0; i < rows->len; i++)
    {
      Object object = { out, tm_job_sections[section].inside, ", ", FALSE };

      g_string_append (out, i > 0 ? ",\n  {" : "\n  {");
      write_row (&object, job, g_ptr_array_index (rows, i));
      g_string_append_c (out, '}');
    }
  g_string_append (out, "\n ]");
}

/* A guess at the length of the text, so that it need not grow often. */
static gsize
guess_length (const TmJob *job)
{
  return 4096 + 256 * (gsize)(job->features->len + job->gauges->len)
         + 232 * (gsize)(job->readings->len + job->pin_trials->len + job->cuts->len)
         + 40 * (gsize)job->pieces->len;
}

static GString *
write_document (const TmJob *job, gboolean with_signatures)
{
  GString *out = g_string_sized_new (guess_length (job));

  g_string_append_printf (out, "{\n \"%s\": \"%s\",\n \"%s\": %d", tm_job_sections[IN_FORMAT].key,
                          TM_JOB_FORMAT, tm_job_sections[IN_VERSION].key, TM_JOB_VERSION);
  write_job (out, job);
  write_rows (out, job, IN_PEOPLE, job->people, write_person);
  write_rows (out, job, IN_GAUGES, job->gauges, write_gauge);
  write_rows (out, job, IN_METHODS, job->methods, write_method);
  write_rows (out, job, IN_FEATURES, job->features, write_feature);
  write_rows (out, job, IN_PIECES, job->pieces, write_piece);
  write_rows (out, job, IN_READINGS, job->readings, write_reading);
  write_rows (out, job, IN_PIN_TRIALS, job->pin_trials, write_trial);
  write_rows (out, job, IN_CUTS, job->cuts, write_cut);
  write_rows (out, job, IN_EVENTS, job->events, write_event);
  write_rows (out, job, IN_NONCONFORMANCES, job->nonconformances, write_nonconformance);
  if (with_signatures)
    write_rows (out, job, IN_SIGNATURES, job->signatures, write_signature);
  if (*job->extra != '\0')
    g_string_append_printf (out, ",\n %s", job->extra);
  g_string_append (out, "\n}\n");
  return out;
}

GString *
tm_job_to_string (const TmJob *job)
{
  g_return_val_if_fail (job != NULL, g_string_new (NULL));

  return write_document (job, TRUE);
}

GString *
tm_job_write_unsigned (const TmJob *job)
{
  g_return_val_if_fail (job != NULL, g_string_new (NULL));

  return write_document (job, FALSE);
}
