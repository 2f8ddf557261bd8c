/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Any bytes as a QIF file: a preview or one line that says why not; what the preview says can be added is
 * added, and the job is written and read again, as a job and as QIF.
 */

#include "exchange-qif.h"
#include "fuzz-driver.h"

#include <string.h>

#define HEAD                                                                                             \
  "<?xml version=\"1.0\"?><QIFDocument xmlns=\"http://qifstandards.org/xsd/qif3\" versionQIF=\"3.0.0\" " \
  "idMax=\"9\"><FileUnits><PrimaryUnits><LinearUnit><UnitName>inch</UnitName><UnitConversion>"           \
  "<Factor>0.0254</Factor></UnitConversion></LinearUnit></PrimaryUnits><OtherUnits n=\"1\"><LinearUnit>" \
  "<UnitName>u</UnitName><UnitConversion><Factor>0.000001</Factor></UnitConversion></LinearUnit></"      \
  "OtherUnits>"                                                                                          \
  "</FileUnits>"

const char *const fuzz_seeds[] = {
  HEAD
  "<Characteristics><CharacteristicDefinitions n=\"1\"><DiameterCharacteristicDefinition id=\"1\"><Tolerance>"
  "<MaxValue decimalPlaces=\"4\" "
  "linearUnit=\"u\">12.5</MaxValue><MinValue>-.005</MinValue><DefinedAsLimit>false"
  "</DefinedAsLimit></Tolerance></DiameterCharacteristicDefinition></CharacteristicDefinitions>"
  "<CharacteristicNominals n=\"1\"><DiameterCharacteristicNominal id=\"2\"><CharacteristicDefinitionId>1"
  "</CharacteristicDefinitionId><TargetValue>0.75</TargetValue></DiameterCharacteristicNominal>"
  "</CharacteristicNominals><CharacteristicItems n=\"2\"><DiameterCharacteristicItem "
  "id=\"3\"><Description>4X "
  "\xc3\x98.75 \xc2\xb1.005</Description><CharacteristicDesignator><Designator>5.1</Designator><Criticality>"
  "<LevelEnum>KEY</LevelEnum></Criticality></CharacteristicDesignator><CharacteristicNominalId>2"
  "</CharacteristicNominalId></DiameterCharacteristicItem><DiameterCharacteristicItem id=\"4\">"
  "<CharacteristicDesignator><Designator>5.2</Designator></"
  "CharacteristicDesignator><CharacteristicNominalId>2"
  "</CharacteristicNominalId></DiameterCharacteristicItem></CharacteristicItems></Characteristics></"
  "QIFDocument>",
  HEAD
  "<DatumDefinitions n=\"1\"><DatumDefinition id=\"6\"><DatumLabel>A</DatumLabel></DatumDefinition>"
  "</DatumDefinitions><DatumReferenceFrames n=\"1\"><DatumReferenceFrame id=\"5\"><Datums n=\"1\"><Datum>"
  "<SimpleDatum><DatumDefinitionId>6</DatumDefinitionId><MaterialModifier>MAXIMUM</MaterialModifier>"
  "</SimpleDatum></Datum></Datums></DatumReferenceFrame></DatumReferenceFrames><Characteristics>"
  "<CharacteristicDefinitions><PositionCharacteristicDefinition id=\"1\"><ToleranceValue>0.2</ToleranceValue>"
  "<DatumReferenceFrameId>5</DatumReferenceFrameId><MaterialCondition>LEAST</MaterialCondition>"
  "<SizeCharacteristicDefinitionId>1</SizeCharacteristicDefinitionId><ZoneShape><DiametricalZone/></"
  "ZoneShape>"
  "</PositionCharacteristicDefinition><WeldFilletCharacteristicDefinition "
  "id=\"7\"/></CharacteristicDefinitions>"
  "<CharacteristicNominals><PositionCharacteristicNominal id=\"2\"><CharacteristicDefinitionId>1"
  "</CharacteristicDefinitionId></PositionCharacteristicNominal><WeldFilletCharacteristicNominal>"
  "<CharacteristicDefinitionId>7</CharacteristicDefinitionId></WeldFilletCharacteristicNominal>"
  "</CharacteristicNominals></Characteristics></QIFDocument>",
  /* Values, line by line. */
  "25.021\n3\n25.000\ntrue\n0.2\nu\n25.01\n\xc3\x98"
  "25 H7\n7",
  ".005\n0\n-.005\n0\n0\n\n1.250\n1.250 \xc2\xb1.005\nA 1",
  "<!DOCTYPE q [<!ENTITY a \"b\"><!ENTITY % c SYSTEM \"d\">]><q>&a;</q>",
  "<QIFDocument xmlns=\"http://qifstandards.org/xsd/qif2\"><![CDATA[x]]><?p i?><!-- c --></QIFDocument>",
  NULL,
};

static void
write_qif (const TmJob *job)
{
  const TmQifFacts facts = { .created = "2026-06-01T12:00:00Z" };
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) out = tm_qif_write_string (job, &facts, &error);

  /* Balloons that differ only in blanks cannot be told apart in QIF. */
  g_assert_true (out != NULL || g_error_matches (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_DISAGREES));
}

static void
read_bytes (const char *data, gsize size)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) job = tm_job_new ();
  g_autoptr (TmJob) again = NULL;
  g_autoptr (TmTablePreview) preview = NULL;
  g_autoptr (GString) text = NULL;

  job->id = job->part_number = tm_job_intern (job, "P");
  preview = tm_qif_read_features (data, size, "f", job, &error);
  if (preview == NULL)
    {
      g_assert_nonnull (error);
      g_assert_true (g_str_has_prefix (error->message, "f: "));
      g_assert_null (strpbrk (error->message, "\n\r\t"));
      return;
    }
  g_assert_no_error (error);
  g_assert_cmpuint (tm_table_apply (preview, job), ==, preview->n_addable);
  write_qif (job);
  text = tm_job_to_string (job);
  again = tm_job_from_bytes (text->str, text->len, "f", NULL, NULL, NULL, &error);
  if (again == NULL)
    g_error ("%s\n%s", error->message, text->str);
  g_assert_cmpuint (again->features->len, ==, preview->n_addable);
}

/* Most edits of a file leave no XML.  Here the bytes are what stands in it: each line takes the place of a
 * value. */
static void
read_values (const char *data, gsize size)
{
  static const char form[] = HEAD
      "<Characteristics><CharacteristicDefinitions><%sCharacteristicDefinition "
      "id=\"1\"><Tolerance><MaxValue>%s"
      "</MaxValue><MinValue decimalPlaces=\"%s\">%s</MinValue><DefinedAsLimit>%s</DefinedAsLimit></Tolerance>"
      "<ToleranceValue>%s</ToleranceValue></%sCharacteristicDefinition></CharacteristicDefinitions>"
      "<CharacteristicNominals><%sCharacteristicNominal id=\"2\"><CharacteristicDefinitionId>1"
      "</CharacteristicDefinitionId><TargetValue linearUnit=\"%s\">%s</TargetValue></%sCharacteristicNominal>"
      "</CharacteristicNominals><CharacteristicItems><XItem><Description>%s</Description>"
      "<CharacteristicDesignator><Designator>%s</Designator></CharacteristicDesignator>"
      "<CharacteristicNominalId>2</CharacteristicNominalId></XItem></CharacteristicItems></Characteristics>"
      "</QIFDocument>";
  static const char *const types[]
      = { "Diameter", "Length", "Position", "Angle", "SurfaceTexture", "UserDefinedAttribute",
          "Thread",   "Weld" };
  g_autofree char *text = g_strndup (data, size);
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_autofree char *escaped = g_markup_escape_text (valid, -1);
  g_auto (GStrv) lines = g_strsplit (escaped, "\n", -1);
  guint n = g_strv_length (lines);
  const char *values[9];
  const char *type = types[size % G_N_ELEMENTS (types)];
  g_autofree char *whole = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (values); i++)
    values[i] = i < n ? lines[i] : i == 3 ? "true" : "1";
  whole = g_strdup_printf (form, type, values[0], values[1], values[2], values[3], values[4], type, type,
                           values[5], values[6], type, values[7], values[8]);
  read_bytes (whole, strlen (whole));
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  read_bytes ((const char *)data, size);
  read_values ((const char *)data, size);
  return 0;
}
