/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-qif-parse.h"

#include <glib/gi18n-lib.h>
#include <libxml/parser.h>
#include <libxml/parserInternals.h>

#define NAMESPACE       "http://qifstandards.org/xsd/qif3"
#define NAMESPACE_START "http://qifstandards.org/xsd/qif"
#define CHUNK           (64 * 1024)
#define MAX_NAME        128 /* bytes of an element's name; the schema's longest has 68 */

static const char *const list_paths[TM_QIF_N_LISTS] = {
  [TM_QIF_LIST_PRIMARY_UNITS] = "/QIFDocument/FileUnits/PrimaryUnits",
  [TM_QIF_LIST_OTHER_UNITS] = "/QIFDocument/FileUnits/OtherUnits",
  [TM_QIF_LIST_OWN_UNITS] = "/QIFDocument/FileUnits/UserDefinedUnits",
  [TM_QIF_LIST_DATUMS] = "/QIFDocument/DatumDefinitions",
  [TM_QIF_LIST_FRAMES] = "/QIFDocument/DatumReferenceFrames",
  [TM_QIF_LIST_THREADS] = "/QIFDocument/ThreadSpecifications",
  [TM_QIF_LIST_TOLERANCES] = "/QIFDocument/Characteristics/DefaultToleranceDefinitions",
  [TM_QIF_LIST_DEFINITIONS] = "/QIFDocument/Characteristics/CharacteristicDefinitions",
  [TM_QIF_LIST_NOMINALS] = "/QIFDocument/Characteristics/CharacteristicNominals",
  [TM_QIF_LIST_ITEMS] = "/QIFDocument/Characteristics/CharacteristicItems",
};

/* What is kept of a record, by its path inside it. */
static const char *const kept[] = {
  "Attributes/AttributeStr",
  "CharacteristicDefinitionId",
  "CharacteristicDesignator/Criticality/LevelEnum",
  "CharacteristicDesignator/Designator",
  "CharacteristicNominalId",
  "DatumLabel",
  "DatumReferenceFrameId",
  "Datums/Datum",
  "Datums/Datum/CompoundDatum/Datum/SimpleDatum/DatumDefinitionId",
  "Datums/Datum/CompoundDatum/Datum/SimpleDatum/MaterialModifier",
  "Datums/Datum/SimpleDatum/DatumDefinitionId",
  "Datums/Datum/SimpleDatum/MaterialModifier",
  "DefinedAsLimit",
  "Description",
  "LimitsAndFitsSpecification/FormVariance",
  "LimitsAndFitsSpecification/Grade",
  "LocationOnDrawing/DrawingZone",
  "LocationOnDrawing/SheetNumber",
  "MaterialCondition",
  "MaxValue",
  "MinValue",
  "Name",
  "NonTolerance",
  "OuterDisposition",
  "RoughnessAverage",
  "SizeCharacteristicDefinitionId",
  "TargetValue",
  "TextThreadSpecification/TextSpecification",
  "ThreadSpecificationId",
  "Tolerance/DefinedAsLimit",
  "Tolerance/DefinitionId",
  "Tolerance/MaxValue",
  "Tolerance/MinValue",
  "ToleranceValue",
  "UnequallyDisposedZone",
  "UnitConversion/Factor",
  "UnitConversion/Offset",
  "UnitName",
  "WhatIsMeasured",
  "WhatToMeasure",
  "ZoneShape/DiametricalZone",
};

typedef struct {
  TmQifFile *file;
  const char *place;
  xmlParserCtxtPtr parser;
  GError *error; /* the first refusal */

  GString *path;  /* of the open element */
  GArray *starts; /* gsize: where each open element begins in it */
  GString *text;  /* of the open element, cut */
  char *unit;     /* of the open element */
  char *value;
  gint places;
  gboolean abroad;

  TmQifList list;      /* that the open record belongs to */
  TmQifRecord *record; /* NULL: none is open */
  guint n_fields;      /* of all records */
  gsize record_path;   /* where the paths inside it begin */
} Parse;

/* Records. */

static void
clear_field (gpointer data)
{
  TmQifField *field = data;

  g_free (field->text);
  g_free (field->unit);
}

static void
free_record (gpointer data)
{
  TmQifRecord *record = data;

  g_free (record->type);
  g_free (record->id);
  g_array_unref (record->fields);
  g_free (record);
}

static TmQifFile *
make_file (void)
{
  TmQifFile *file = g_new0 (TmQifFile, 1);

  for (guint i = 0; i < TM_QIF_N_LISTS; i++)
    file->lists[i] = g_ptr_array_new_with_free_func (free_record);
  file->by_id = g_hash_table_new (g_str_hash, g_str_equal);
  return file;
}

void
tm_qif_file_free (TmQifFile *file)
{
  g_hash_table_unref (file->by_id);
  for (guint i = 0; i < TM_QIF_N_LISTS; i++)
    g_ptr_array_unref (file->lists[i]);
  g_free (file->version);
  g_free (file);
}

const TmQifField *
tm_qif_field (const TmQifRecord *record, const char *path)
{
  for (guint i = 0; record != NULL && i < record->fields->len; i++)
    {
      const TmQifField *field = &g_array_index (record->fields, TmQifField, i);

      if (g_str_equal (field->path, path))
        return field;
    }
  return NULL;
}

const char *
tm_qif_field_text (const TmQifRecord *record, const char *path)
{
  const TmQifField *field = tm_qif_field (record, path);

  return field != NULL ? field->text : "";
}

const char *
tm_qif_note (const TmQifRecord *record, const char *name)
{
  for (guint i = 0; record != NULL && i < record->fields->len; i++)
    {
      const TmQifField *field = &g_array_index (record->fields, TmQifField, i);

      if (g_str_equal (field->path, "Attributes/AttributeStr") && g_strcmp0 (field->unit, name) == 0)
        return field->text;
    }
  return "";
}

const TmQifRecord *
tm_qif_follow (const TmQifFile *file, const TmQifRecord *record, const char *path)
{
  const TmQifField *field = tm_qif_field (record, path);

  if (field == NULL || field->abroad)
    return NULL;
  return g_hash_table_lookup (file->by_id, field->text);
}

/* Refusals. */

static void
refuse (Parse *parse, TmExchangeError code, const char *text)
{
  g_autofree char *where = g_strdup_printf (_ ("line %d"), xmlSAX2GetLineNumber (parse->parser));

  if (parse->error == NULL)
    tm_exchange_fail (&parse->error, code, parse->place, where, "%s", text);
  xmlStopParser (parse->parser);
}

static void
doctype_cb (void *data, const xmlChar *name, const xmlChar *external, const xmlChar *system)
{
  refuse (data, TM_EXCHANGE_ERROR_NOT_QIF,
          _ ("a document type stands in the file, which QIF has none of; take the <!DOCTYPE …> out, or "
             "export the "
             "file again"));
}

static void
error_cb (void *data, xmlErrorPtr fault)
{
  Parse *parse = data;
  g_autofree char *reason = g_strchomp (g_strdup (fault->message != NULL ? fault->message : ""));
  g_autofree char *text = NULL;

  if (fault->level < XML_ERR_ERROR || parse->error != NULL)
    return;
  text = g_strdup_printf (
      _ ("not XML as it should be, or not whole (%s); export it again from the program that wrote it"),
      reason);
  refuse (parse, TM_EXCHANGE_ERROR_NOT_XML, text);
}

/* The root. */

static void
check_root (Parse *parse, const char *name, const char *space)
{
  g_autofree char *quoted = NULL;
  g_autofree char *text = NULL;

  if (g_str_equal (name, "QIFDocument") && g_strcmp0 (space, NAMESPACE) == 0)
    return;
  if (space != NULL && g_str_has_prefix (space, NAMESPACE_START))
    {
      quoted = tm_exchange_quote (space);
      text = g_strdup_printf (_ ("a QIF of another version (%s), which is not read; export it as QIF 3.0"),
                              quoted);
      refuse (parse, TM_EXCHANGE_ERROR_NEWER, text);
      return;
    }
  quoted = tm_exchange_quote (name);
  text = g_strdup_printf (
      _ ("no QIF file: it begins with %s, not with QIFDocument of QIF 3.0; choose another"), quoted);
  refuse (parse, TM_EXCHANGE_ERROR_NOT_QIF, text);
}

/* Attributes come as five pointers each: name, prefix, namespace, value, end of value. */
static char *
find_attribute (int n, const xmlChar **attributes, const char *name)
{
  for (int i = 0; i < n; i++)
    {
      const char *value = (const char *)attributes[5 * i + 3];
      gsize length = (gsize)((const char *)attributes[5 * i + 4] - value);

      if (g_str_equal (attributes[5 * i], name))
        return g_strstrip (g_utf8_make_valid (value, (gssize)MIN (length, TM_QIF_MAX_TEXT)));
    }
  return NULL;
}

static char *
find_unit (int n, const xmlChar **attributes)
{
  static const char *const names[] = { "linearUnit", "angularUnit", "unitName", "name" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      char *unit = find_attribute (n, attributes, names[i]);

      if (unit != NULL)
        return unit;
    }
  return NULL;
}

static gint
find_places (int n, const xmlChar **attributes)
{
  g_autofree char *text = find_attribute (n, attributes, "decimalPlaces");
  guint64 places;

  if (text == NULL || !g_ascii_string_to_unsigned (text, 10, 0, TM_QIF_MAX_TEXT, &places, NULL))
    return -1;
  return (gint)places;
}

/* Elements. */

static void
begin_record (Parse *parse, TmQifList list, const char *name, int n, const xmlChar **attributes)
{
  TmQifRecord *record = g_new0 (TmQifRecord, 1);
  char *id = find_attribute (n, attributes, "id");

  record->type = g_strndup (name, MAX_NAME);
  record->id = id != NULL ? id : g_strdup ("");
  record->line = (guint)MAX (xmlSAX2GetLineNumber (parse->parser), 1);
  record->fields = g_array_new (FALSE, FALSE, sizeof (TmQifField));
  g_array_set_clear_func (record->fields, clear_field);
  g_ptr_array_add (parse->file->lists[list], record);
  if (*record->id != '\0')
    g_hash_table_insert (parse->file->by_id, record->id, record);
  parse->record = record;
  parse->list = list;
  parse->record_path = parse->path->len + 1;
  if (parse->file->lists[list]->len > TM_QIF_MAX_RECORDS)
    refuse (parse, TM_EXCHANGE_ERROR_TOO_LARGE,
            _ ("more characteristics than are read (50000); split the file"));
}

/* The list that an element opened now, under @path, is a record of; TM_QIF_N_LISTS: none. */
static TmQifList
find_list (const char *path)
{
  TmQifList list = 0;

  while (list < TM_QIF_N_LISTS && !g_str_equal (list_paths[list], path))
    list++;
  return list;
}

static void
enter (Parse *parse, const char *name, gboolean foreign)
{
  gsize start = parse->path->len;

  g_array_append_val (parse->starts, start);
  g_string_append_c (parse->path, '/');
  if (foreign)
    g_string_append_c (parse->path, '?');
  g_string_append_len (parse->path, name, (gssize)MIN (strlen (name), MAX_NAME));
}

/* A thread has its id not on itself but on what specifies it. */
static void
take_inner_id (Parse *parse, int n, const xmlChar **attributes)
{
  TmQifRecord *record = parse->record;
  char *id;

  if (parse->list != TM_QIF_LIST_THREADS || *record->id != '\0')
    return;
  id = find_attribute (n, attributes, "id");
  if (id == NULL)
    return;
  g_free (record->id);
  record->id = id;
  g_hash_table_insert (parse->file->by_id, record->id, record);
}

/* What is kept of an element inside a record until it ends. */
static void
take_attributes (Parse *parse, int n, const xmlChar **attributes)
{
  g_autofree char *abroad = find_attribute (n, attributes, "xId");

  take_inner_id (parse, n, attributes);
  parse->unit = find_unit (n, attributes);
  parse->value = find_attribute (n, attributes, "value");
  parse->places = find_places (n, attributes);
  parse->abroad = abroad != NULL;
}

static void
begin_element (Parse *parse, const char *name, gboolean foreign, int n, const xmlChar **attributes)
{
  TmQifList list = parse->record == NULL ? find_list (parse->path->str) : TM_QIF_N_LISTS;

  enter (parse, name, foreign);
  if (g_str_equal (parse->path->str, "/QIFDocument/FileUnits"))
    parse->file->has_units = TRUE;
  g_string_truncate (parse->text, 0);
  g_clear_pointer (&parse->unit, g_free);
  g_clear_pointer (&parse->value, g_free);
  if (list != TM_QIF_N_LISTS)
    begin_record (parse, list, name, n, attributes);
  if (parse->record != NULL && parse->error == NULL)
    take_attributes (parse, n, attributes);
}

/* The attributes lie in the parser's own input, which is gone once it has been stopped. */
static void
start_cb (void *data, const xmlChar *name, const xmlChar *prefix, const xmlChar *space, int n_spaces,
          const xmlChar **spaces, int n, int n_default, const xmlChar **attributes)
{
  Parse *parse = data;

  if (parse->starts->len == 0 && parse->file->version == NULL)
    {
      parse->file->version = find_attribute (n, attributes, "versionQIF");
      check_root (parse, (const char *)name, (const char *)space);
    }
  else if (parse->starts->len >= TM_QIF_MAX_DEPTH)
    refuse (parse, TM_EXCHANGE_ERROR_TOO_DEEP,
            _ ("elements lie more than 64 deep, which no QIF file needs; export it again"));
  if (parse->error == NULL)
    begin_element (parse, (const char *)name, g_strcmp0 ((const char *)space, NAMESPACE) != 0, n, attributes);
}

static void
text_cb (void *data, const xmlChar *text, int length)
{
  Parse *parse = data;
  gsize room = TM_QIF_MAX_TEXT - parse->text->len;

  if (parse->record != NULL)
    g_string_append_len (parse->text, (const char *)text, (gssize)MIN (room, (gsize)length));
}

/* The text of the open element: a character that was cut at the end is dropped. */
static char *
take_text (Parse *parse)
{
  const char *end;
  char *text;

  if (parse->value != NULL)
    return g_steal_pointer (&parse->value);
  g_utf8_validate (parse->text->str, (gssize)parse->text->len, &end);
  text = g_strndup (parse->text->str, (gsize)(end - parse->text->str));
  return g_strstrip (text);
}

static void
keep_field (Parse *parse, const char *path)
{
  TmQifField field = { .path = path, .places = parse->places, .abroad = parse->abroad };

  if (++parse->n_fields > TM_QIF_MAX_FIELDS)
    {
      refuse (parse, TM_EXCHANGE_ERROR_TOO_LARGE,
              _ ("more about its characteristics than is read; split the file"));
      return;
    }
  field.text = take_text (parse);
  field.unit = g_steal_pointer (&parse->unit);
  g_array_append_val (parse->record->fields, field);
}

static void
end_element (Parse *parse)
{
  const char *inside = parse->path->len > parse->record_path ? parse->path->str + parse->record_path : "";

  for (gsize i = 0; i < G_N_ELEMENTS (kept); i++)
    if (g_str_equal (kept[i], inside))
      keep_field (parse, kept[i]);
}

static void
end_cb (void *data, const xmlChar *name, const xmlChar *prefix, const xmlChar *space)
{
  Parse *parse = data;
  gsize start;

  if (parse->starts->len == 0)
    return;
  if (parse->record != NULL)
    end_element (parse);
  start = g_array_index (parse->starts, gsize, parse->starts->len - 1);
  g_array_set_size (parse->starts, parse->starts->len - 1);
  if (parse->record != NULL && parse->path->len + 1 == parse->record_path)
    parse->record = NULL;
  g_string_truncate (parse->path, start);
  g_string_truncate (parse->text, 0);
  parse->places = -1;
  parse->abroad = FALSE;
  g_clear_pointer (&parse->unit, g_free);
  g_clear_pointer (&parse->value, g_free);
}

/* The whole. */

static void
feed (Parse *parse, const char *data, gsize length)
{
  xmlSAXHandler handler = {
    .initialized = XML_SAX2_MAGIC,
    .startElementNs = start_cb,
    .endElementNs = end_cb,
    .characters = text_cb,
    .ignorableWhitespace = text_cb,
    .cdataBlock = text_cb,
    .internalSubset = doctype_cb,
    .serror = error_cb,
  };

  parse->parser = xmlCreatePushParserCtxt (&handler, parse, NULL, 0, NULL);
  if (parse->parser == NULL)
    g_error ("out of memory");
  xmlCtxtUseOptions (parse->parser, XML_PARSE_NONET | XML_PARSE_NOCDATA);
  for (gsize at = 0; at < length && parse->error == NULL; at += CHUNK)
    xmlParseChunk (parse->parser, data + at, (int)MIN (length - at, CHUNK), FALSE);
  if (parse->error == NULL)
    xmlParseChunk (parse->parser, data, 0, TRUE);
  if (parse->error == NULL && !parse->parser->wellFormed)
    refuse (parse, TM_EXCHANGE_ERROR_NOT_XML,
            _ ("not XML as it should be, or not whole; export it again from the program that wrote it"));
  xmlFreeParserCtxt (parse->parser);
}

TmQifFile *
tm_qif_parse (const char *data, gsize length, const char *place, GError **error)
{
  Parse parse = { .place = place, .places = -1 };

  if (length > TM_EXCHANGE_MAX_BYTES)
    {
      tm_exchange_fail (error, TM_EXCHANGE_ERROR_TOO_LARGE, place, NULL,
                        _ ("larger than a QIF file may be (96 MiB); export fewer characteristics"));
      return NULL;
    }
  parse.file = make_file ();
  parse.path = g_string_new (NULL);
  parse.text = g_string_new (NULL);
  parse.starts = g_array_new (FALSE, FALSE, sizeof (gsize));
  feed (&parse, data, length);
  g_string_free (parse.path, TRUE);
  g_string_free (parse.text, TRUE);
  g_array_unref (parse.starts);
  g_free (parse.unit);
  g_free (parse.value);
  if (parse.error == NULL)
    return parse.file;
  tm_qif_file_free (parse.file);
  g_propagate_error (error, parse.error);
  return NULL;
}
