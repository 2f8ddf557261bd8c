/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * QIF files as feature lists: the public samples of the standard, our own export read back, every way in
 * which a file may state limits, and files that mean harm.
 */

#include "exchange-qif.h"
#include "support-qif.h"
#include "support-varied-job.h"

#include <string.h>
#include <sys/resource.h>

static TmJob *
make_job (TmUnit unit)
{
  TmJob *job = tm_job_new ();

  job->part_number = tm_job_intern (job, "P");
  job->unit = unit;
  return job;
}

static TmTablePreview *
read_text (const char *text, TmJob *job)
{
  g_autoptr (GError) error = NULL;
  TmTablePreview *preview = tm_qif_read_features (text, strlen (text), "list.qif", job, &error);

  g_assert_no_error (error);
  return preview;
}

static const TmTableRow *
row_at (const TmTablePreview *preview, guint index)
{
  g_assert_cmpuint (index, <, preview->rows->len);
  return g_ptr_array_index (preview->rows, index);
}

/* Samples. */

static const char *const samples[] = {
  "samples/All-in-one.QIF", "samples/QIF_Results_Sample.QIF", "samples/planWithWorkInstructions.QIF",
  "samples/simplePlan.QIF", "samples/testPython30.qif",       "example-export.qif",
};

/* One line of the independent reading: designator, lower, upper. */
static void
compare_row (const TmTableRow *row, const char *line)
{
  g_auto (GStrv) cells = g_strsplit (line, "\t", -1);
  const TmFeature *feature = row->feature;
  g_autofree char *lower = NULL;
  g_autofree char *upper = NULL;

  g_test_message ("%s", line);
  g_assert_cmpuint (g_strv_length (cells), ==, 4);
  g_assert_cmpstr (row->problem, ==, NULL);
  g_assert_nonnull (feature);
  g_assert_cmpstr (feature->balloon, ==, cells[1]);
  lower = feature->lower.given ? g_strdup_printf ("%" G_GINT64_FORMAT, feature->lower.count) : g_strdup ("-");
  upper = feature->upper.given ? g_strdup_printf ("%" G_GINT64_FORMAT, feature->upper.count) : g_strdup ("-");
  g_assert_cmpstr (lower, ==, cells[2]);
  g_assert_cmpstr (upper, ==, cells[3]);
  /* Without limits nothing is made up: a note that says why, or something to look at. */
  g_assert_true (feature->lower.given || feature->upper.given || feature->kind == TM_KIND_ATTRIBUTE
                 || (feature->kind == TM_KIND_NOTE && row->remark != NULL));
}

static void
compare_sample (const char *name)
{
  g_autofree char *path = tm_test_qif (name);
  g_autofree char *script = NULL;
  g_autofree char *bytes = NULL;
  g_autofree char *out = NULL;
  g_auto (GStrv) lines = NULL;
  g_autoptr (TmJob) job = make_job (TM_UNIT_MM);
  g_autoptr (TmTablePreview) preview = NULL;
  g_autoptr (GError) error = NULL;
  const char *arguments[] = { "python3", NULL, NULL, NULL };
  gsize length;
  int status;

  if (path == NULL)
    return;
  arguments[1] = g_getenv ("TM_QIF_READER");
  arguments[2] = path;
  if (!g_spawn_sync (NULL, (char **)arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &out, NULL, &status,
                     &error))
    {
      g_test_skip_printf ("no python3: %s", error->message);
      return;
    }
  g_assert_cmpint (status, ==, 0);
  g_assert_true (g_file_get_contents (path, &bytes, &length, &error));
  preview = tm_qif_read_features (bytes, length, name, job, &error);
  g_assert_no_error (error);
  lines = g_strsplit (g_strchomp (out), "\n", -1);
  g_assert_cmpuint (preview->rows->len, ==, g_strv_length (lines));
  for (guint i = 0; lines[i] != NULL; i++)
    compare_row (row_at (preview, i), lines[i]);
}

static void
test_samples (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (samples); i++)
    compare_sample (samples[i]);
}

/* Our own export. */

static void
assert_same_quantity (const TmQuantity *a, const TmQuantity *b)
{
  g_assert_cmpint (a->given, ==, b->given);
  g_assert_cmpint (a->count, ==, b->count);
}

/* Everything that QIF has a place for comes back. */
static void
assert_same_feature (const TmFeature *before, const TmFeature *after)
{
  g_test_message ("%s: %s", before->balloon, before->requirement);
  g_assert_cmpstr (after->balloon, ==, before->balloon);
  g_assert_cmpint (after->kind, ==, before->kind);
  g_assert_cmpint (after->unit, ==, before->unit);
  g_assert_cmpstr (after->requirement, ==, before->requirement);
  g_assert_cmpstr (after->name, ==, before->name);
  g_assert_cmpstr (after->designator, ==, before->designator);
  g_assert_cmpstr (after->sheet, ==, before->sheet);
  g_assert_cmpstr (after->zone, ==, before->zone);
  g_assert_cmpuint (after->places, ==, before->places);
  g_assert_cmpstr (after->datums, ==, before->datums);
  g_assert_cmpint (after->modifier, ==, before->modifier);
  g_assert_cmpint (after->zone_diameter, ==, before->zone_diameter);
  g_assert_cmpstr (after->size_feature, ==, before->size_feature);
  assert_same_quantity (&after->nominal, &before->nominal);
  assert_same_quantity (&after->lower, &before->lower);
  assert_same_quantity (&after->upper, &before->upper);
  g_assert_cmpuint (after->lower.decimals, ==, before->lower.decimals);
  g_assert_cmpuint (after->upper.decimals, ==, before->upper.decimals);
}

static TmTablePreview *
read_again (const TmJob *job, TmJob *into)
{
  const TmQifFacts facts = { .created = "2026-06-01T12:00:00Z" };
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) bytes = tm_qif_write_string (job, &facts, &error);
  TmTablePreview *preview;

  g_assert_no_error (error);
  into->general_tolerance = tm_job_intern (into, job->general_tolerance);
  preview = tm_qif_read_features (bytes->str, bytes->len, "again.qif", into, &error);
  g_assert_no_error (error);
  return preview;
}

static void
test_sample_jobs_again (void)
{
  g_autoptr (GDir) dir = g_dir_open (g_getenv ("TM_SAMPLE_JOBS"), 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (g_getenv ("TM_SAMPLE_JOBS"), name, NULL);
      g_autoptr (TmJob) job = NULL;
      g_autoptr (TmJob) into = NULL;
      g_autoptr (TmTablePreview) preview = NULL;

      if (!g_str_has_suffix (name, ".tmjob"))
        continue;
      job = tm_job_from_file (path, NULL, NULL, NULL, NULL);
      into = make_job (job->unit);
      preview = read_again (job, into);
      g_assert_cmpuint (tm_table_apply (preview, into), ==, job->features->len);
      for (guint i = 0; i < job->features->len; i++)
        assert_same_feature (g_ptr_array_index (job->features, i), g_ptr_array_index (into->features, i));
    }
}

/* Odd jobs: each feature comes back with its limits, or as a note that says why. */
static void
test_varied_jobs_again (void)
{
  for (guint32 seed = 0; seed < 60; seed++)
    {
      g_autoptr (TmJob) job = tm_test_varied_job (seed);
      g_autoptr (TmJob) into = make_job (job->unit);
      g_autoptr (TmTablePreview) preview = read_again (job, into);

      g_assert_cmpuint (preview->rows->len, ==, job->features->len);
      for (guint i = 0; i < preview->rows->len; i++)
        {
          const TmFeature *before = g_ptr_array_index (job->features, i);
          const TmTableRow *row = row_at (preview, i);

          g_test_message ("%u/%s: %s %s", seed, before->balloon, tm_kind_word (before->kind),
                          row->problem != NULL ? row->problem : "");
          g_assert_cmpstr (row->problem, ==, NULL);
          g_assert_cmpstr (row->feature->balloon, ==, before->balloon);
          if (row->feature->kind == TM_KIND_NOTE && before->kind != TM_KIND_NOTE)
            g_assert_nonnull (row->remark);
          if (tm_kind_is_attribute (row->feature->kind))
            continue;
          assert_same_quantity (&row->feature->lower, &before->lower);
          assert_same_quantity (&row->feature->upper, &before->upper);
        }
    }
}

/* Ways to say it. */

#define ROOT "<QIFDocument xmlns='http://qifstandards.org/xsd/qif3' versionQIF='3.0.0' idMax='9'>"
#define END  "</QIFDocument>"
#define INCH                                                                                        \
  "<LinearUnit><UnitName>inch</UnitName><UnitConversion><Factor>0.0254</Factor></UnitConversion></" \
  "LinearUnit>"
#define MM \
  "<LinearUnit><UnitName>mm</UnitName><UnitConversion><Factor>0.001</Factor></UnitConversion></LinearUnit>"
#define DEGREE                                                                                 \
  "<AngularUnit><UnitName>degree</UnitName><UnitConversion><Factor>0.017453292519943</Factor>" \
  "</UnitConversion></AngularUnit>"
#define OTHER(factor)                                                                   \
  "<OtherUnits n='1'><LinearUnit><UnitName>u</UnitName><UnitConversion><Factor>" factor \
  "</Factor></UnitConversion></LinearUnit></OtherUnits>"
#define UNITS(unit) "<FileUnits><PrimaryUnits>" DEGREE unit "</PrimaryUnits></FileUnits>"
#define BOTH(unit, factor) \
  "<FileUnits><PrimaryUnits>" DEGREE unit "</PrimaryUnits>" OTHER (factor) "</FileUnits>"

/* One characteristic of @type, with what its definition and nominal hold. */
#define ONE(type, definition, nominal)                                                                      \
  "<Characteristics><CharacteristicDefinitions n='1'><" type "CharacteristicDefinition id='1'>" definition  \
  "</" type "CharacteristicDefinition></CharacteristicDefinitions><CharacteristicNominals n='1'><" type     \
  "CharacteristicNominal id='2'><CharacteristicDefinitionId>1</CharacteristicDefinitionId>" nominal         \
  "</" type "CharacteristicNominal></CharacteristicNominals><CharacteristicItems n='1'><" type              \
  "CharacteristicItem "                                                                                     \
  "id='3'><CharacteristicDesignator><Designator>7</Designator></CharacteristicDesignator>"                  \
  "<CharacteristicNominalId>2</CharacteristicNominalId></" type "CharacteristicItem></CharacteristicItems>" \
  "</Characteristics>"
#define LIMITS(max, min, as)      "<Tolerance>" max min "<DefinedAsLimit>" as "</DefinedAsLimit></Tolerance>"
#define MAX_(attributes, value)   "<MaxValue " attributes ">" value "</MaxValue>"
#define MIN_(attributes, value)   "<MinValue " attributes ">" value "</MinValue>"
#define TARGET(attributes, value) "<TargetValue " attributes ">" value "</TargetValue>"
#define FIT(form, grade)                                                                               \
  "<LimitsAndFitsSpecification zoneVariance='HOLE'><FormVariance>" form "</FormVariance><Grade>" grade \
  "</Grade></LimitsAndFitsSpecification>"
#define OWN(name, measured)                                                           \
  "<FileUnits><PrimaryUnits>" MM                                                      \
  "</PrimaryUnits><UserDefinedUnits n='1'><UserDefinedUnit><WhatIsMeasured>" measured \
  "</WhatIsMeasured><UnitName>" name "</UnitName></UserDefinedUnit></UserDefinedUnits></FileUnits>"

static const struct {
  const char *text;
  const char *found; /* kind, unit, nominal, lower, upper; for a note a part of the remark */
} ways[] = {
  { ROOT UNITS (MM) ONE ("Diameter", LIMITS (MAX_ ("", "25.021"), MIN_ ("", "25.000"), "true"), "") END,
    "diameter mm - 25.000 25.021" },
  { ROOT UNITS (INCH) ONE ("Length", LIMITS (MAX_ ("", ".005"), MIN_ ("", "-.005"), "0"), TARGET ("", "1.25"))
        END,
    "length in 1.25 1.245 1.255" },
  { ROOT UNITS (MM)
        ONE ("Length", LIMITS (MAX_ ("", "+0.1"), "", "false"), TARGET ("decimalPlaces='3'", "12")) END,
    "length mm 12.000 - 12.100" },
  { ROOT UNITS (MM) ONE ("Depth", LIMITS ("", MIN_ ("", " 3 "), "1"), "") END, "depth mm - 3 -" },
  /* A shaft with interference: its nominal lies beside its limits. */
  { ROOT UNITS (MM)
        ONE ("Diameter", LIMITS (MAX_ ("", "25.035"), MIN_ ("", "25.022"), "true"), TARGET ("", "25")) END,
    "diameter mm 25 25.022 25.035" },
  { ROOT UNITS (MM)
        ONE ("Diameter", LIMITS (MAX_ ("", "-.007"), MIN_ ("", "-.020"), "false"), TARGET ("", "25")) END,
    "diameter mm 25 24.980 24.993" },
  /* ISO 286-2: 25 H7 is 0 to +21 µm, 25 p6 is +22 to +35 µm. */
  { ROOT UNITS (MM) ONE ("Diameter", FIT ("H", "7"), TARGET ("", "25")) END, "diameter mm 25 25.000 25.021" },
  { ROOT UNITS (MM) ONE ("Diameter", FIT ("p", "6"), TARGET ("", "25.0")) END,
    "diameter mm 25.0 25.022 25.035" },
  /* The noise of a program's doubles goes where it is below half a picometre. */
  { ROOT UNITS (MM) ONE ("Width", LIMITS (MAX_ ("", "0.25000000000000006"), MIN_ ("", "-0.25"), "false"),
                         TARGET ("", "25.399999999999999")) END,
    "length mm 25.4 25.15 25.65" },
  { ROOT UNITS (MM) ONE ("Width", LIMITS (MAX_ ("", "1.0000000005"), MIN_ ("", "0.9999999995"), "true"), "")
        END,
    "length mm - 1 1" },
  /* Units of their own: a micrometre, a foot, ten inches, a microinch; half in one and half in the other. */
  { ROOT BOTH (MM, "0.000001") ONE ("Width", LIMITS (MAX_ ("linearUnit='u'", "12500"), "", "true"), "") END,
    "length mm - - 12.500" },
  { ROOT BOTH (INCH, "0.3048") ONE ("Width", LIMITS (MAX_ ("linearUnit='u'", "1.5"), "", "true"), "") END,
    "length mm - - 457.2" },
  { ROOT BOTH (INCH, "0.254") ONE ("Width", LIMITS (MAX_ ("linearUnit='u'", "1.5"), "", "true"), "") END,
    "length mm - - 381" },
  { ROOT BOTH (MM, "0.0000000254") ONE ("Width", LIMITS (MAX_ ("linearUnit='u'", "750000"), "", "true"), "")
        END,
    "length in - - 0.750000" },
  { ROOT BOTH (MM, "0.0254") ONE ("Width", LIMITS (MAX_ ("linearUnit='u'", "1"), MIN_ ("", "25"), "true"), "")
        END,
    "length mm - 25 25.4" },
  { ROOT BOTH (MM, "0.0254") ONE ("Width", LIMITS (MAX_ ("", "0.1"), MIN_ ("", "-0.1"), "false"),
                                  TARGET ("linearUnit='u'", "1")) END,
    "length mm 25.4 25.3 25.5" },
  { ROOT "<FileUnits><PrimaryUnits><LinearUnit><UnitName>meter</UnitName></LinearUnit></PrimaryUnits></"
         "FileUnits>" ONE ("Width", LIMITS (MAX_ ("", "0.0125"), "", "true"), "") END,
    "length mm - - 12.5" },
  { ROOT UNITS (MM "<PMILinearUnit><UnitName>inch</UnitName><UnitConversion><Factor>0.02540</Factor>"
                   "</UnitConversion></PMILinearUnit>")
        ONE ("Width", LIMITS (MAX_ ("", "1.50"), "", "true"), "") END,
    "length in - - 1.50" },
  { ROOT ONE ("Width", LIMITS (MAX_ ("", "1.50"), "", "true"), "") END, "length mm - - 1.50" },
  { ROOT UNITS (MM) ONE ("Angle", LIMITS (MAX_ ("", "0.5"), MIN_ ("", "-0.5"), "false"), TARGET ("", "90"))
        END,
    "angle deg 90 89.5 90.5" },
  { ROOT UNITS (MM) ONE ("SurfaceTexture", "<RoughnessAverage>0.0016</RoughnessAverage>", "") END,
    "roughness um - - 1.6" },
  { ROOT BOTH (INCH, "0.0000000254")
        ONE ("SurfaceTexture", "<RoughnessAverage linearUnit='u'>63</RoughnessAverage>", "") END,
    "roughness uin - - 63" },
  { ROOT OWN ("HRC", "Rockwell hardness")
        ONE ("UserDefinedUnit", "",
             TARGET ("unitName='HRC'", "60") MAX_ ("unitName='HRC'", "62")
                 MIN_ ("unitName='HRC'", "58") "<DefinedAsLimit>true</DefinedAsLimit>") END,
    "hardness points 60 58 62" },
  { ROOT UNITS (MM) ONE ("Flatness", "<ToleranceValue>0.050</ToleranceValue>", "") END, "form mm - - 0.050" },
  { ROOT UNITS (MM) ONE ("UserDefinedAttribute", "<WhatToMeasure>no burrs</WhatToMeasure>", "") END,
    "attribute - - - -" },
  /* What cannot be judged keeps its text. */
  { ROOT OWN ("mol", "amount of substance")
        ONE ("UserDefinedUnit", "",
             TARGET ("unitName='mol'", "60")
                 MAX_ ("unitName='mol'", "62") "<DefinedAsLimit>true</DefinedAsLimit>") END,
    "unit “mol”" },
  { ROOT UNITS (INCH) ONE ("Diameter", FIT ("H", "7"), TARGET ("", "1")) END, "nominal in millimetres" },
  { ROOT UNITS (MM) ONE ("Diameter", FIT ("Q", "7"), TARGET ("", "25")) END, "ISO 286" },
  { ROOT UNITS (MM) ONE ("WeldFillet", "", "") END, "not judged here: WeldFillet" },
  { ROOT UNITS (MM) ONE ("Width", "<NonTolerance>SET</NonTolerance>", TARGET ("", "2")) END, "no limits" },
  { ROOT UNITS (MM) ONE ("Width", LIMITS (MAX_ ("", "1"), MIN_ ("", "2"), "true"), "") END,
    "above the upper" },
  { ROOT UNITS (MM) ONE ("Width", LIMITS (MAX_ ("", "4.2"), MIN_ ("", "3.8"), "false"), TARGET ("", "2.0"))
        END,
    "far outside of its limits" },
  { ROOT UNITS (MM) ONE ("Width", LIMITS (MAX_ ("", "4.2"), MIN_ ("", "3.8"), "false"), "") END,
    "no nominal to add" },
  { ROOT UNITS (MM) ONE ("Width", LIMITS (MAX_ ("linearUnit='cubit'", "4.2"), "", "true"), "") END,
    "unit “cubit”" },
  { ROOT UNITS (MM) ONE ("Width", LIMITS (MAX_ ("", "1e3"), "", "true"), "") END, "“1e3” is no number" },
  { ROOT UNITS (MM) ONE ("Width", LIMITS (MAX_ ("", "12,5"), "", "true"), "") END, "“12,5” is no number" },
  { ROOT UNITS (MM) ONE ("Width", LIMITS (MAX_ ("", "99999999999999"), "", "true"), "") END, "is no number" },
  { ROOT UNITS (MM) ONE (
        "PointProfile", "<ToleranceValue>1.5</ToleranceValue><OuterDisposition>1</OuterDisposition>", "") END,
    "unequally" },
  { ROOT "<FileUnits><PrimaryUnits>" MM
         "</PrimaryUnits></FileUnits>" ONE ("Angle", LIMITS (MAX_ ("", "1.6"), "", "true"), "") END,
    "cannot be converted" },
  { ROOT "<FileUnits><PrimaryUnits><LinearUnit><UnitName>mm</UnitName></LinearUnit></PrimaryUnits></"
         "FileUnits>" ONE ("Width", LIMITS (MAX_ ("", "12"), "", "true"), "") END,
    "cannot be converted" },
};

static void
append (GString *out, const TmQuantity *quantity)
{
  g_autofree char *text = tm_quantity_format (quantity);

  g_string_append_printf (out, " %s", *text != '\0' ? text : "-");
}

static void
test_ways (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_UNIT_MM);
      g_autoptr (TmTablePreview) preview = read_text (ways[i].text, job);
      g_autoptr (GString) found = g_string_new (NULL);
      const TmTableRow *row = row_at (preview, 0);
      const TmFeature *feature = row->feature;

      g_test_message ("%zu: %s %s", i, ways[i].found, row->problem != NULL ? row->problem : "");
      g_assert_nonnull (feature);
      g_assert_cmpstr (feature->balloon, ==, "7");
      if (row->remark != NULL)
        {
          g_test_message ("%s | %s", row->remark, feature->requirement);
          g_assert_cmpint (feature->kind, ==, TM_KIND_NOTE);
          g_assert_nonnull (strstr (row->remark, ways[i].found));
          g_assert_cmpint (row->read, ==, TM_CALLOUT_NOT_READ);
          continue;
        }
      g_string_printf (found, "%s %s", tm_kind_word (feature->kind),
                       *tm_unit_word (feature->unit) != '\0' ? tm_unit_word (feature->unit) : "-");
      append (found, &feature->nominal);
      append (found, &feature->lower);
      append (found, &feature->upper);
      g_assert_cmpstr (found->str, ==, ways[i].found);
    }
}

/* A note keeps what the file says, number for number. */
static void
test_note (void)
{
  g_autoptr (TmJob) job = make_job (TM_UNIT_MM);
  g_autoptr (TmTablePreview) preview = read_text (
      ROOT UNITS (MM) ONE ("ConicalTaper",
                           "<Description>Taper &#x2332; of the\n seat</Description><Name>Seat</Name>"
                           "<ToleranceValue linearUnit='x'>0.0100</ToleranceValue>",
                           "<TargetValue>0.1234567890123456789</TargetValue>") END,
      job);
  const TmFeature *feature = row_at (preview, 0)->feature;

  g_assert_cmpstr (
      feature->requirement, ==,
      "Taper ⌲ of the seat (ConicalTaper: TargetValue 0.1234567890123456789, ToleranceValue 0.0100 x)");
  g_assert_cmpstr (feature->name, ==, "Seat");
}

/* Places, shared tolerances, and a file without items. */

#define NOMINALS                                                                                            \
  "<DefaultToleranceDefinitions n='1'><LinearTolerance "                                                    \
  "id='9'><MaxValue>0.2</MaxValue><MinValue>-0.1</MinValue>"                                                \
  "</LinearTolerance></DefaultToleranceDefinitions>"                                                        \
  "<CharacteristicNominals n='1'><WidthCharacteristicNominal id='2'><CharacteristicDefinitionId>1"          \
  "</CharacteristicDefinitionId><Name>Slot</Name><TargetValue>6</TargetValue></WidthCharacteristicNominal>" \
  "</CharacteristicNominals>"
#define SHARED                                                                                          \
  "<CharacteristicDefinitions n='1'><WidthCharacteristicDefinition id=' 1 '><Tolerance><DefinitionId>9" \
  "</DefinitionId><DefinedAsLimit>false</DefinedAsLimit></Tolerance></WidthCharacteristicDefinition>"   \
  "</CharacteristicDefinitions>"
#define ITEM(designator, nominal)                                                                   \
  "<WidthCharacteristicItem id='3" designator "'><CharacteristicDesignator><Designator>" designator \
  "</Designator></CharacteristicDesignator>" nominal "</WidthCharacteristicItem>"
#define OF "<CharacteristicNominalId>2</CharacteristicNominalId>"

static void
test_places (void)
{
  g_autoptr (TmJob) job = make_job (TM_UNIT_MM);
  g_autoptr (TmTablePreview) preview = read_text (
      ROOT UNITS (MM) "<Characteristics>" SHARED NOMINALS "<CharacteristicItems n='8'>" ITEM ("4.1", OF)
          ITEM ("4.2", OF) ITEM ("4.3", OF) ITEM ("5.1", OF) ITEM ("5.3", OF) ITEM ("5.3", OF)
              ITEM ("8", "<CharacteristicNominalId xId='2'>77</CharacteristicNominalId>")
                  ITEM ("", OF) "</CharacteristicItems></Characteristics>" END,
      job);

  g_assert_cmpuint (preview->rows->len, ==, 6);
  g_assert_cmpstr (row_at (preview, 0)->feature->balloon, ==, "4");
  g_assert_cmpuint (row_at (preview, 0)->feature->places, ==, 3);
  g_assert_cmpint (row_at (preview, 0)->feature->lower.count, ==, G_GINT64_CONSTANT (5900000000));
  g_assert_cmpint (row_at (preview, 0)->feature->upper.count, ==, G_GINT64_CONSTANT (6200000000));
  g_assert_cmpstr (row_at (preview, 1)->feature->balloon, ==, "5.1");
  g_assert_cmpuint (row_at (preview, 1)->feature->places, ==, 1);
  /* The same number twice is shown and not merged; another file's nominal is not guessed at. */
  g_assert_nonnull (strstr (row_at (preview, 3)->problem, "5.3"));
  g_assert_nonnull (strstr (row_at (preview, 4)->problem, "“8”"));
  /* No designator: a number that nothing else has. */
  g_assert_cmpstr (row_at (preview, 5)->feature->balloon, ==, "9");
  g_assert_cmpuint (tm_table_apply (preview, job), ==, 4);
}

static void
test_without_items (void)
{
  g_autoptr (TmJob) job = make_job (TM_UNIT_MM);
  g_autoptr (TmTablePreview) preview
      = read_text (ROOT "<Characteristics>" SHARED NOMINALS "</Characteristics>" END, job);

  g_assert_cmpuint (preview->rows->len, ==, 1);
  g_assert_cmpstr (row_at (preview, 0)->feature->balloon, ==, "Slot");
  g_assert_nonnull (strstr (preview->remark, "no units"));
}

static void
test_version (void)
{
  static const char text[]
      = "\xef\xbb\xbf<?xml version='1.0'?>\n<q:QIFDocument xmlns:q='http://qifstandards.org/xsd/qif3' "
        "versionQIF='3.0.1'><q:Characteristics><q:CharacteristicNominals><q:WidthCharacteristicNominal>"
        "</q:WidthCharacteristicNominal><WidthCharacteristicNominal/></q:CharacteristicNominals>"
        "</q:Characteristics></q:QIFDocument>";
  g_autoptr (TmJob) job = make_job (TM_UNIT_MM);
  g_autoptr (TmTablePreview) preview = read_text (text, job);

  g_assert_nonnull (strstr (preview->remark, "3.0.1"));
  g_assert_true (tm_qif_is_likely (text, strlen (text)));
  g_assert_true (tm_qif_is_likely (" \n<", 3));
  g_assert_false (tm_qif_is_likely ("No,<b>", 6));
  g_assert_false (tm_qif_is_likely ("", 0));
}

/* Harm. */

static const struct {
  const char *text;
  TmExchangeError code;
  const char *says;
} wrong[] = {
  { "", TM_EXCHANGE_ERROR_NOT_XML, "" },
  { "Balloon,Requirement\n1,25 H7\n", TM_EXCHANGE_ERROR_NOT_XML, "line 1" },
  { ROOT, TM_EXCHANGE_ERROR_NOT_XML, "not whole" },
  { ROOT "<Characteristics></Product>" END, TM_EXCHANGE_ERROR_NOT_XML, "line 1" },
  { ROOT "&#1;" END, TM_EXCHANGE_ERROR_NOT_XML, "" },
  { ROOT "\xff\xfe" END, TM_EXCHANGE_ERROR_NOT_XML, "" },
  { ROOT "&undeclared;" END, TM_EXCHANGE_ERROR_NOT_XML, "" },
  { ROOT END, TM_EXCHANGE_ERROR_MISSING, "no characteristics" },
  { "<html/>", TM_EXCHANGE_ERROR_NOT_QIF, "“html”" },
  { "<QIFDocument versionQIF='3.0.0'/>", TM_EXCHANGE_ERROR_NOT_QIF, "QIF 3.0" },
  { "<QIFDocument xmlns='http://qifstandards.org/xsd/qif2' versionQIF='2.1.0'/>", TM_EXCHANGE_ERROR_NEWER,
    "qif2" },
  { "<!DOCTYPE QIFDocument [<!ENTITY a 'aaaaaaaaaa'><!ENTITY b '&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;'>"
    "<!ENTITY c '&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;'><!ENTITY d '&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;'>]>" ROOT
    "&d;" END,
    TM_EXCHANGE_ERROR_NOT_QIF, "document type" },
  { "<!DOCTYPE QIFDocument [<!ENTITY a SYSTEM 'file:///etc/passwd'>]>" ROOT "&a;" END,
    TM_EXCHANGE_ERROR_NOT_QIF, "document type" },
  { "<!DOCTYPE QIFDocument SYSTEM 'http://example.invalid/x.dtd'>" ROOT END, TM_EXCHANGE_ERROR_NOT_QIF,
    "document type" },
  { "<!DOCTYPE QIFDocument [<!ENTITY % a SYSTEM 'file:///dev/zero'> %a;]>" ROOT END,
    TM_EXCHANGE_ERROR_NOT_QIF, "document type" },
};

static void
assert_refused (const char *data, gsize length, TmExchangeError code, const char *says)
{
  g_autoptr (TmJob) job = make_job (TM_UNIT_MM);
  g_autoptr (GError) error = NULL;
  TmTablePreview *preview = tm_qif_read_features (data, length, "list.qif", job, &error);

  g_assert_null (preview);
  g_test_message ("%s", error->message);
  g_assert_error (error, TM_EXCHANGE_ERROR, (gint)code);
  g_assert_true (g_str_has_prefix (error->message, "list.qif: "));
  g_assert_null (strpbrk (error->message, "\n\r\t"));
  g_assert_nonnull (strstr (error->message, says));
  g_assert_cmpuint (strlen (error->message), <, 400);
  g_assert_cmpuint (job->features->len, ==, 0);
}

static void
test_wrong (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    assert_refused (wrong[i].text, strlen (wrong[i].text), wrong[i].code, wrong[i].says);
}

/* Cut off anywhere, a file is refused. */
static void
test_truncated (void)
{
  static const char text[]
      = ROOT UNITS (MM) ONE ("Diameter", LIMITS (MAX_ ("", "25.021"), MIN_ ("", "25.000"), "true"), "") END;

  for (gsize length = 0; length < sizeof text - 1; length++)
    {
      g_autoptr (TmJob) job = make_job (TM_UNIT_MM);
      g_autoptr (GError) error = NULL;

      g_assert_null (tm_qif_read_features (text, length, "list.qif", job, &error));
      g_assert_true (g_error_matches (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_NOT_XML)
                     || g_error_matches (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_NOT_QIF));
    }
}

static glong
get_peak (void)
{
  struct rusage usage;

  getrusage (RUSAGE_SELF, &usage);
  return usage.ru_maxrss; /* KiB */
}

static void
repeat (GString *out, const char *text, guint n)
{
  for (guint i = 0; i < n; i++)
    g_string_append (out, text);
}

/* Size is bounded, whatever of a file is large. */
static void
test_large (void)
{
  glong before = get_peak ();
  g_autoptr (GString) deep = g_string_new (ROOT);
  g_autoptr (GString) text = g_string_new (ROOT "<Characteristics><CharacteristicItems><XItem><Description>");
  g_autoptr (GString) many = g_string_new (ROOT "<Characteristics><CharacteristicItems>");
  g_autoptr (GString) fields = g_string_new (ROOT "<Characteristics><CharacteristicItems><XItem>");
  g_autofree char *huge = g_strnfill ((gsize)TM_EXCHANGE_MAX_BYTES + 1, ' ');
  g_autoptr (TmJob) job = make_job (TM_UNIT_MM);
  g_autoptr (TmTablePreview) preview = NULL;
  g_autoptr (GError) error = NULL;

  repeat (deep, "<a>", 10000);
  assert_refused (deep->str, deep->len, TM_EXCHANGE_ERROR_TOO_DEEP, "64 deep");
  assert_refused (huge, (gsize)TM_EXCHANGE_MAX_BYTES + 1, TM_EXCHANGE_ERROR_TOO_LARGE, "96 MiB");
  repeat (many, "<X/>", 60000);
  assert_refused (many->str, many->len, TM_EXCHANGE_ERROR_TOO_LARGE, "50000");
  repeat (fields, "<Name/>", 1100000);
  assert_refused (fields->str, fields->len, TM_EXCHANGE_ERROR_TOO_LARGE, "split");
  repeat (text, "ten bytes ", 2000000);
  g_string_append (text, "</Description></XItem></CharacteristicItems></Characteristics>" END);
  preview = tm_qif_read_features (text->str, text->len, "list.qif", job, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (preview->rows->len, ==, 1);
  /* The inputs themselves are 150 MiB; what is kept of them must not come near that again. */
  g_assert_cmpint (get_peak () - before, <, 450 * 1024);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/qif/read/samples", test_samples);
  g_test_add_func ("/qif/read/sample-jobs-again", test_sample_jobs_again);
  g_test_add_func ("/qif/read/varied-jobs-again", test_varied_jobs_again);
  g_test_add_func ("/qif/read/ways", test_ways);
  g_test_add_func ("/qif/read/note", test_note);
  g_test_add_func ("/qif/read/places", test_places);
  g_test_add_func ("/qif/read/without-items", test_without_items);
  g_test_add_func ("/qif/read/version", test_version);
  g_test_add_func ("/qif/read/wrong", test_wrong);
  g_test_add_func ("/qif/read/truncated", test_truncated);
  g_test_add_func ("/qif/read/large", test_large);
  return g_test_run ();
}
