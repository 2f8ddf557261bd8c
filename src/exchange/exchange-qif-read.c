/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Characteristics of a QIF file as rows of a feature list.
 */

#include <glib/gi18n-lib.h>

#include "exchange-qif-take.h"
#include "exchange-qif.h"
#include "exchange-table-build.h"

#define SEPARATORS "./-_" /* between a balloon and the number of a place */

typedef struct {
  const TmQifFile *file;
  TmJob *job;
  TmTableBuilder rows;
  TmTablePreview *preview;
  GHashTable *balloons; /* TmQifRecord of a definition -> char *, of the first feature that has it */
} Reader;

/* What one row is made of. */
typedef struct {
  TmQifLayers layers;
  char *balloon;
  guint places;
  const TmQifKind *kind;
  TmQifLimits limits;
  char *trouble;    /* why it is a note */
  char *wording;    /* what the file says in words; "" */
  const char *used; /* a text that stands in the requirement and need not be said again */
} Draft;

static void
clear_draft (Draft *draft)
{
  g_free (draft->balloon);
  g_free (draft->trouble);
  g_free (draft->wording);
  tm_qif_limits_clear (&draft->limits);
}

/* Balloons. */

/* A token of XML Schema: no blanks around, single ones inside. */
static char *
collapse (const char *text)
{
  g_auto (GStrv) words = g_strsplit_set (text, " \t\r\n", -1);
  GString *out = g_string_new (NULL);

  for (guint i = 0; words[i] != NULL; i++)
    if (*words[i] != '\0')
      g_string_append_printf (out, "%s%s", out->len > 0 ? " " : "", words[i]);
  return g_string_free (out, FALSE);
}

static char *
find_designator (const TmQifRecord *record)
{
  const char *text = tm_qif_field_text (record, "CharacteristicDesignator/Designator");

  return collapse (*text != '\0' ? text : tm_qif_field_text (record, "Name"));
}

/* The length of X in "X.2", where the number is @place; 0 when it is not so. */
static gsize
find_stem (const char *designator, guint place)
{
  g_autofree char *number = g_strdup_printf ("%u", place);
  gsize length = strlen (designator);
  gsize tail = strlen (number) + 1;

  if (length <= tail || strchr (SEPARATORS, designator[length - tail]) == NULL
      || !g_str_equal (designator + length - tail + 1, number))
    return 0;
  return length - tail;
}

/* How many items from @index on are places of one feature: at least 1. */
static guint
count_places (const GPtrArray *items, guint index)
{
  const TmQifRecord *first = g_ptr_array_index (items, index);
  const char *nominal = tm_qif_field_text (first, "CharacteristicNominalId");
  g_autofree char *designator = find_designator (first);
  gsize stem = find_stem (designator, 1);
  guint n = 1;

  while (stem > 0 && index + n < items->len)
    {
      const TmQifRecord *next = g_ptr_array_index (items, index + n);
      g_autofree char *other = find_designator (next);

      if (!g_str_equal (tm_qif_field_text (next, "CharacteristicNominalId"), nominal)
          || find_stem (other, n + 1) != stem || strncmp (other, designator, stem + 1) != 0)
        break;
      n++;
    }
  return n;
}

/* Words. */

static const char *
find_wording (const TmQifLayers *layers)
{
  const char *const texts[] = {
    tm_qif_field_text (layers->item, "Description"),
    tm_qif_note (layers->item, "Comment"),
    tm_qif_field_text (layers->definition, "WhatToMeasure"),
    tm_qif_field_text (layers->definition, "Description"),
    tm_qif_field_text (layers->nominal, "Description"),
  };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    if (*texts[i] != '\0')
      return texts[i];
  return "";
}

/* What the feature is called: a name that is not its number, else the wording, unless the requirement has it.
 */
static const char *
find_name (const Draft *draft)
{
  const char *const texts[] = {
    tm_qif_field_text (draft->layers.definition, "Name"),
    tm_qif_field_text (draft->layers.nominal, "Name"),
    draft->wording,
    tm_qif_field_text (draft->layers.item, "Name"),
  };
  g_autofree char *first
      = find_designator (draft->layers.item != NULL ? draft->layers.item : draft->layers.nominal);

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    if (*texts[i] != '\0' && !g_str_equal (texts[i], first) && !g_str_equal (texts[i], draft->balloon)
        && g_strcmp0 (texts[i], draft->used) != 0)
      return texts[i];
  return "";
}

static void
append_number (GString *out, const TmQifRecord *record, const char *path)
{
  const TmQifField *field = tm_qif_field (record, path);
  const char *name = strrchr (path, '/') != NULL ? strrchr (path, '/') + 1 : path;

  if (field == NULL || *field->text == '\0')
    return;
  g_string_append_printf (out, "%s%s %s%s%s", out->len > 0 ? ", " : "", name, field->text,
                          field->unit != NULL ? " " : "", field->unit != NULL ? field->unit : "");
}

/* The numbers of a characteristic that is kept as a note, called as the file calls them. */
static char *
list_numbers (const TmQifLayers *layers)
{
  static const char *const of_definition[] = {
    "Tolerance/MaxValue",
    "Tolerance/MinValue",
    "Tolerance/DefinedAsLimit",
    "ToleranceValue",
    "OuterDisposition",
    "UnequallyDisposedZone",
    "RoughnessAverage",
    "NonTolerance",
    "LimitsAndFitsSpecification/FormVariance",
    "LimitsAndFitsSpecification/Grade",
  };
  static const char *const of_nominal[] = { "TargetValue", "MaxValue", "MinValue" };
  GString *out = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (of_nominal); i++)
    append_number (out, layers->nominal, of_nominal[i]);
  for (gsize i = 0; i < G_N_ELEMENTS (of_definition); i++)
    append_number (out, layers->definition, of_definition[i]);
  return g_string_free (out, FALSE);
}

/* "Distance between the holes (DistanceBetween: TargetValue 81.2, NonTolerance MEASURED)". */
static char *
describe_note (const Draft *draft)
{
  g_autofree char *type = tm_qif_kind_name (draft->layers.nominal->type);
  g_autofree char *numbers = list_numbers (&draft->layers);
  const char *colon = *numbers != '\0' ? ": " : "";

  if (*draft->wording == '\0')
    return g_strdup_printf ("%s%s%s", type, colon, numbers);
  return g_strdup_printf ("%s (%s%s%s)", draft->wording, type, colon, numbers);
}

/* Requirements. */

static gboolean
is_same (const char *text, TmUnit unit, const TmQuantity *quantity)
{
  TmQuantity read = TM_QUANTITY_NONE;

  if (*text == '\0')
    return !quantity->given;
  return quantity->given && tm_quantity_read (text, unit, &read) == TM_READ_OK
         && read.count == quantity->count;
}

/* Whether @text, read as a callout of the drawing, says what the file's numbers say. */
static gboolean
says_the_same (const Reader *reader, const Draft *draft, const char *text)
{
  const TmQifLimits *limits = &draft->limits;
  TmCallout callout
      = tm_callout_read (text, tm_callout_unit (reader->job, limits->unit), reader->job->general_tolerance);

  return callout.status == TM_CALLOUT_OK && tm_kinds_agree (draft->kind->kind, callout.kind)
         && callout.unit == limits->unit && is_same (limits->lower, limits->unit, &callout.lower)
         && is_same (limits->upper, limits->unit, &callout.upper)
         && (!callout.nominal.given || is_same (limits->nominal, limits->unit, &callout.nominal));
}

static void
append_modifier (GString *out, const char *condition)
{
  if (g_str_has_prefix (condition, "MAXIMUM"))
    g_string_append (out, "Ⓜ");
  else if (g_str_has_prefix (condition, "LEAST"))
    g_string_append (out, "Ⓛ");
}

/* The datums of @frame: " A B-CⓂ". */
static void
append_datums (const Reader *reader, const TmQifRecord *frame, GString *out)
{
  g_autoptr (GString) datum = g_string_new (NULL);
  const char *condition = "";

  for (guint i = 0; frame != NULL && i < frame->fields->len; i++)
    {
      const TmQifField *field = &g_array_index (frame->fields, TmQifField, i);

      if (g_str_has_suffix (field->path, "/DatumDefinitionId"))
        g_string_append_printf (
            datum, "%s%s", datum->len > 0 ? "-" : "",
            tm_qif_field_text (g_hash_table_lookup (reader->file->by_id, field->text), "DatumLabel"));
      else if (g_str_has_suffix (field->path, "/MaterialModifier"))
        condition = field->text;
      else if (g_str_equal (field->path, "Datums/Datum"))
        {
          g_string_append_printf (out, " %s", datum->str);
          append_modifier (out, condition);
          g_string_truncate (datum, 0);
          condition = "";
        }
    }
}

/* A tolerance frame in the form that a requirement has: "position Ø0.2 Ⓜ A B". */
static char *
make_frame (const Reader *reader, const Draft *draft)
{
  const TmQifRecord *definition = draft->layers.definition;
  GString *out = g_string_new (draft->kind->words);
  const char *condition = tm_qif_field_text (definition, "MaterialCondition");

  g_string_append_printf (out, " %s%s",
                          tm_qif_field (definition, "ZoneShape/DiametricalZone") != NULL ? "Ø" : "",
                          draft->limits.upper);
  if (g_str_has_prefix (condition, "MAXIMUM") || g_str_has_prefix (condition, "LEAST"))
    {
      g_string_append_c (out, ' ');
      append_modifier (out, condition);
    }
  append_datums (reader, tm_qif_follow (reader->file, definition, "DatumReferenceFrameId"), out);
  return g_string_free (out, FALSE);
}

/* The requirement of a feature that is measured: the wording where it is a callout that says the same, else a
 * frame made of what the file says, else none: then the limits stand alone. */
static char *
find_requirement (const Reader *reader, Draft *draft)
{
  g_autofree char *frame = NULL;

  if (says_the_same (reader, draft, draft->wording))
    {
      draft->used = draft->wording;
      return g_strdup (draft->wording);
    }
  if (draft->kind->words == NULL)
    return g_strdup ("");
  frame = make_frame (reader, draft);
  return says_the_same (reader, draft, frame) ? g_steal_pointer (&frame) : g_strdup ("");
}

/* Rows. */

/* The words of TmKind that the program's own files keep where QIF has one type for several. */
static TmKind
find_kind (const Draft *draft)
{
  TmKind kind = draft->kind->kind;
  TmKind own;

  if (tm_kind_from_word (tm_qif_note (draft->layers.item, "Kind"), &own)
      && tm_kind_is_attribute (own) == tm_kind_is_attribute (kind) && tm_kinds_agree (own, kind))
    return own;
  return kind;
}

/* Sets one member; keeps the first reason why a row cannot be taken. */
static void
set (Reader *reader, TmTableRow *row, guint member, const char *text)
{
  g_autofree char *problem = tm_table_builder_set (&reader->rows, member, text);

  if (row->problem == NULL)
    row->problem = g_steal_pointer (&problem);
}

static void
set_place (Reader *reader, const Draft *draft, TmTableRow *row)
{
  const TmQifRecord *item = draft->layers.item;
  const char *level = tm_qif_field_text (item, "CharacteristicDesignator/Criticality/LevelEnum");
  g_autofree char *places = g_strdup_printf ("%u", draft->places);

  set (reader, row, FEATURE_BALLOON, draft->balloon);
  set (reader, row, FEATURE_SHEET, tm_qif_field_text (item, "LocationOnDrawing/SheetNumber"));
  set (reader, row, FEATURE_ZONE, tm_qif_field_text (item, "LocationOnDrawing/DrawingZone"));
  set (reader, row, FEATURE_PLACES, places);
  if (g_str_equal (level, "KEY") || g_str_equal (level, "CRITICAL"))
    set (reader, row, FEATURE_CLASS, level);
  if (g_str_equal (tm_qif_note (item, "Check"), "first"))
    set (reader, row, FEATURE_CHECK, "first");
}

static void
set_note (Reader *reader, Draft *draft, TmTableRow *row)
{
  g_autofree char *text = describe_note (draft);

  set (reader, row, FEATURE_KIND, tm_kind_word (TM_KIND_NOTE));
  set (reader, row, FEATURE_REQUIREMENT, text);
  draft->used = draft->wording;
}

/* A thread in the words of its specification; an attribute in those that say what to look at. */
static void
set_checked (Reader *reader, Draft *draft, TmTableRow *row)
{
  const TmQifRecord *thread = tm_qif_follow (reader->file, draft->layers.definition, "ThreadSpecificationId");
  const char *text = tm_qif_field_text (thread, "TextThreadSpecification/TextSpecification");
  g_autofree char *name = tm_qif_kind_name (draft->layers.nominal->type);

  if (*text == '\0')
    text = *draft->wording != '\0' ? draft->wording : tm_qif_field_text (draft->layers.definition, "Name");
  set (reader, row, FEATURE_KIND, tm_kind_word (find_kind (draft)));
  set (reader, row, FEATURE_REQUIREMENT, *text != '\0' ? text : name);
  draft->used = g_str_equal (text, draft->wording) ? draft->wording : NULL;
}

/* The feature whose size gives the bonus of a zone. */
static void
set_size (Reader *reader, const Draft *draft, TmTableRow *row)
{
  const TmQifRecord *size
      = tm_qif_follow (reader->file, draft->layers.definition, "SizeCharacteristicDefinitionId");
  const char *balloon = size != NULL ? g_hash_table_lookup (reader->balloons, size) : NULL;

  if (balloon != NULL)
    set (reader, row, FEATURE_SIZE_FEATURE, balloon);
}

static void
set_measured (Reader *reader, Draft *draft, TmTableRow *row)
{
  g_autofree char *requirement = find_requirement (reader, draft);

  set (reader, row, FEATURE_KIND, tm_kind_word (find_kind (draft)));
  set (reader, row, FEATURE_REQUIREMENT, requirement);
  set (reader, row, FEATURE_UNIT, tm_unit_word (draft->limits.unit));
  set (reader, row, FEATURE_NOMINAL, draft->limits.nominal);
  set (reader, row, FEATURE_LOWER, draft->limits.lower);
  set (reader, row, FEATURE_UPPER, draft->limits.upper);
  set_size (reader, draft, row);
}

/* Why it can only be a note, or NULL. */
static char *
find_trouble (Reader *reader, Draft *draft)
{
  g_autofree char *name = tm_qif_kind_name (draft->layers.nominal->type);

  if (draft->layers.definition == NULL)
    return g_strdup (_ ("what it asks for is not in this file"));
  if (draft->kind == NULL)
    return g_strdup_printf (_ ("a kind of characteristic that is not judged here: %s"), name);
  if (draft->kind->takes == TM_QIF_TAKES_NOTHING)
    return NULL;
  return tm_qif_take_limits (reader->file, &draft->layers, draft->kind, reader->job->unit, &draft->limits);
}

static void
fill_row (Reader *reader, Draft *draft, TmTableRow *row)
{
  draft->kind = tm_qif_kind_find (draft->layers.nominal->type, tm_qif_note (draft->layers.item, "Kind"));
  draft->wording = collapse (find_wording (&draft->layers));
  draft->trouble = find_trouble (reader, draft);
  tm_table_builder_start (&reader->rows);
  set_place (reader, draft, row);
  if (draft->trouble != NULL)
    set_note (reader, draft, row);
  else if (draft->kind->takes == TM_QIF_TAKES_NOTHING)
    set_checked (reader, draft, row);
  else
    set_measured (reader, draft, row);
  set (reader, row, FEATURE_NAME, find_name (draft));
  if (row->problem == NULL)
    tm_table_builder_finish (&reader->rows, row);
  if (draft->trouble != NULL)
    row->read = TM_CALLOUT_NOT_READ;
  row->remark = g_steal_pointer (&draft->trouble);
}

static char *
find_balloon (const TmQifRecord *record, guint places)
{
  char *balloon = find_designator (record);

  if (places > 1)
    balloon[find_stem (balloon, 1)] = '\0';
  return balloon;
}

static void
add_row (Reader *reader, const TmQifRecord *named, const TmQifRecord *nominal, guint places)
{
  Draft draft = { .layers = { named != nominal ? named : NULL, nominal, NULL }, .places = places };
  TmTableRow *row = g_new0 (TmTableRow, 1);

  row->line = named->line;
  draft.balloon = find_balloon (named, places);
  if (nominal == NULL)
    {
      g_autofree char *quoted = tm_exchange_quote (draft.balloon);

      row->problem
          = g_strdup_printf (_ ("the nominal of %s is not in this file; open the one that has it"), quoted);
    }
  else
    {
      draft.layers.definition = tm_qif_follow (reader->file, nominal, "CharacteristicDefinitionId");
      fill_row (reader, &draft, row);
    }
  tm_table_preview_add (reader->preview, row);
  clear_draft (&draft);
}

/* A number that a later row states is not given to an earlier row that has none; and a position may name a
 * size that stands behind it. */
static void
note_balloon (Reader *reader, const TmQifRecord *named, const TmQifRecord *nominal, guint places)
{
  const TmQifRecord *definition = tm_qif_follow (reader->file, nominal, "CharacteristicDefinitionId");
  g_autofree char *balloon = find_balloon (named, places);

  tm_table_builder_note (&reader->rows, balloon);
  if (definition != NULL && *balloon != '\0' && !g_hash_table_contains (reader->balloons, definition))
    g_hash_table_insert (reader->balloons, (gpointer)definition, g_steal_pointer (&balloon));
}

/* Goes through all characteristics in the order of the file. */
static void
for_each (Reader *reader,
          void (*act) (Reader *reader, const TmQifRecord *named, const TmQifRecord *nominal, guint places))
{
  const GPtrArray *items = reader->file->lists[TM_QIF_LIST_ITEMS];
  const GPtrArray *nominals = reader->file->lists[TM_QIF_LIST_NOMINALS];
  guint places = 1;

  for (guint i = 0; i < items->len; i += places)
    {
      const TmQifRecord *item = g_ptr_array_index (items, i);

      places = count_places (items, i);
      act (reader, item, tm_qif_follow (reader->file, item, "CharacteristicNominalId"), places);
    }
  for (guint i = 0; items->len == 0 && i < nominals->len; i++)
    act (reader, g_ptr_array_index (nominals, i), g_ptr_array_index (nominals, i), 1);
}

/* What was assumed of the whole file. */
static char *
remark_on (const TmQifFile *file, const TmJob *job)
{
  g_autofree char *version = tm_exchange_quote (file->version != NULL ? file->version : "");
  GString *out = g_string_new (NULL);

  if (!file->has_units)
    g_string_append_printf (out,
                            _ ("the file states no units: its lengths are taken as %s, the unit of the job"),
                            tm_unit_symbol (job->unit));
  if (g_strcmp0 (file->version, "3.0.0") != 0)
    {
      g_string_append (out, out->len > 0 ? "; " : "");
      g_string_append_printf (out, _ ("the file says that it is of version %s: it was read as 3.0.0"),
                              version);
    }
  return g_string_free (out, out->len == 0);
}

gboolean
tm_qif_is_likely (const char *data, gsize length)
{
  gsize at = 0;

  if (length >= 3 && memcmp (data, "\xef\xbb\xbf", 3) == 0)
    at = 3;
  while (at < length && strchr (" \t\r\n", data[at]) != NULL && data[at] != '\0')
    at++;
  if (at < length && data[at] == '<')
    return TRUE;
  /* UTF-16, either way round. */
  return length >= 4 && (memcmp (data, "\xff\xfe<\0", 4) == 0 || memcmp (data, "\xfe\xff\0<", 4) == 0);
}

TmTablePreview *
tm_qif_read_features (const char *data, gsize length, const char *place, TmJob *job, GError **error)
{
  g_autoptr (TmQifFile) file = tm_qif_parse (data, length, place, error);
  Reader reader = { .file = file, .job = job };

  if (file == NULL)
    return NULL;
  if (file->lists[TM_QIF_LIST_ITEMS]->len == 0 && file->lists[TM_QIF_LIST_NOMINALS]->len == 0)
    {
      tm_exchange_fail (error, TM_EXCHANGE_ERROR_MISSING, place, NULL,
                        _ ("the file holds no characteristics; export it with its characteristic items"));
      return NULL;
    }
  reader.preview = tm_table_preview_new ();
  reader.preview->remark = remark_on (file, job);
  reader.balloons = g_hash_table_new_full (NULL, NULL, NULL, g_free);
  tm_table_builder_init (&reader.rows, job);
  for_each (&reader, note_balloon);
  for_each (&reader, add_row);
  tm_table_builder_clear (&reader.rows);
  g_hash_table_unref (reader.balloons);
  return reader.preview;
}
