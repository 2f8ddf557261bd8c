/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Jobs as QIF.  The official schema says what is valid (QIF 3.0, ANSI/DMSC; read where it is installed, see
 * support-qif.h); what a file says is read back by an XML reader that knows nothing of the writer.
 */

#include "core-judge.h"
#include "exchange-qif.h"
#include "support-job-text.h"
#include "support-qif.h"
#include "support-varied-job.h"

#include <glib/gstdio.h>
#include <string.h>

#define N_GENERATED 200

static const TmQifFacts facts = { "2026-06-01T12:00:00Z", "Invented shop", "FA-1" };

static TmJob *
load_sample (const char *name)
{
  g_autofree char *path = g_build_filename (g_getenv ("TM_SAMPLE_JOBS"), name, NULL);
  g_autoptr (GError) error = NULL;
  TmJob *job = tm_job_from_file (path, NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  return job;
}

static TmJob *
read_job (const char *text)
{
  g_autoptr (GError) error = NULL;
  TmJob *job = tm_job_from_bytes (text, strlen (text), "part.tmjob", NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  return job;
}

static GString *
write_job (const TmJob *job)
{
  g_autoptr (GError) error = NULL;
  GString *out = tm_qif_write_string (job, &facts, &error);

  g_assert_no_error (error);
  g_assert_nonnull (out);
  return out;
}

/* Validity. */

/* One run for all: the schema takes longer to read than the files. */
static void
validate (const char *schema, const char *folder, guint n)
{
  g_autofree char *command = g_strdup_printf ("xmllint --nonet --noout --schema '%s' '%s'/*.qif 2>'%s/said'",
                                              schema, folder, folder);
  const char *const arguments[] = { "sh", "-c", command, NULL };
  g_autofree char *said = NULL;
  g_autofree char *path = g_build_filename (folder, "said", NULL);
  g_auto (GStrv) lines = NULL;
  g_autoptr (GError) error = NULL;
  guint n_valid = 0;
  int status;

  g_spawn_sync (NULL, (char **)arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL, &status, &error);
  g_assert_no_error (error);
  g_file_get_contents (path, &said, NULL, &error);
  g_assert_no_error (error);
  lines = g_strsplit (said, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      if (g_str_has_suffix (lines[i], " validates"))
        n_valid++;
      else if (*lines[i] != '\0')
        g_test_message ("%s", lines[i]);
    }
  g_assert_cmpint (status, ==, 0);
  g_assert_cmpuint (n_valid, ==, n);
}

static char *
make_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("qif-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}

static void
remove_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_assert_cmpint (g_unlink (path), ==, 0);
    }
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

static void
keep (const TmJob *job, const char *folder, const char *name)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_strdup_printf ("%s/%s.qif", folder, name);

  g_assert_true (tm_qif_write_file (job, &facts, path, NULL, NULL, &error));
  g_assert_no_error (error);
}

static void
test_samples_validate (void)
{
  g_autofree char *schema = tm_test_qif (TM_QIF_SCHEMA);
  g_autoptr (GDir) dir = g_dir_open (g_getenv ("TM_SAMPLE_JOBS"), 0, NULL);
  g_autofree char *folder = NULL;
  const char *name;
  guint n = 0;

  if (schema == NULL)
    return;
  folder = make_folder ();
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autoptr (TmJob) job = NULL;

      if (!g_str_has_suffix (name, ".tmjob"))
        continue;
      job = load_sample (name);
      keep (job, folder, name);
      n++;
    }
  g_assert_cmpuint (n, >=, 6);
  validate (schema, folder, n);
  remove_folder (folder);
}

static void
test_generated_validate (void)
{
  g_autofree char *schema = tm_test_qif (TM_QIF_SCHEMA);
  g_autofree char *folder = NULL;

  if (schema == NULL)
    return;
  folder = make_folder ();
  for (guint i = 0; i < N_GENERATED; i++)
    {
      g_autoptr (TmJob) job = tm_test_varied_job (i);
      g_autofree char *name = g_strdup_printf ("%u", i);

      keep (job, folder, name);
    }
  validate (schema, folder, N_GENERATED);
  remove_folder (folder);
}

/* Content. */

static const char job_text[]
    = "{\"format\": \"tenthmark-job\", \"version\": 1,"
      " \"job\": {\"id\": \"0b6d6a34-5f0e-4c6b-9c1e-2a1d8f0a7c01\", \"part_number\": \"P-1 & co\","
      "  \"part_name\": \"Housing <left>\", \"revision\": \"C\", \"drawing\": \"D-10\", \"customer\": "
      "\"Invented\","
      "  \"order\": \"PO-7\", \"unit\": \"mm\", \"material\": \"steel\", \"first_article\": {\"kind\": "
      "\"partial\","
      "  \"reason\": \"new bore\", \"baseline\": \"P-0\"}},"
      " \"people\": [{\"initials\": \"RT\", \"name\": \"R. Test\"}],"
      " \"gauges\": [{\"tag\": \"MIC-1\", \"kind\": \"outside micrometer\", \"unit\": \"mm\", "
      "\"resolution\": \"0.001\","
      "  \"error_limit\": \"0.004\", \"calibrated\": \"2026-03-01\", \"due\": \"2027-03-01\", "
      "\"certificate\": \"C-9\"}],"
      " \"methods\": [{\"name\": \"mic\", \"gauges\": [\"MIC-1\"], \"repeatability\": \"0.001\"}],"
      " \"features\": [{\"balloon\": \"1\", \"kind\": \"shaft\", \"requirement\": \"Ø20.00 ±0.05\", "
      "\"method\": \"mic\","
      "   \"class\": \"key\", \"sheet\": \"2\", \"zone\": \"B4\"},"
      "  {\"balloon\": \"2\", \"requirement\": \"2X Ø6.50 ±0.10\"},"
      "  {\"balloon\": \"3\", \"kind\": \"length\", \"unit\": \"in\", \"lower\": \"0.7450\", \"nominal\": "
      "\"0.75\"},"
      "  {\"balloon\": \"4\", \"kind\": \"note\", \"requirement\": \"break edges\"}],"
      " \"pieces\": [{\"serial\": \"001\", \"first_article\": true}, {\"serial\": \"002\"}],"
      " \"readings\": ["
      "  {\"piece\": \"001\", \"feature\": \"1\", \"value\": \"20.010\", \"by\": \"RT\", \"at\": "
      "\"2026-05-04T09:12:33Z\"},"
      "  {\"piece\": \"001\", \"feature\": \"2\", \"place\": 1, \"value\": \"6.500\"},"
      "  {\"piece\": \"001\", \"feature\": \"2\", \"place\": 2, \"value\": \"6.700\"},"
      "  {\"piece\": \"001\", \"feature\": \"3\", \"value\": \"0.74500\"},"
      "  {\"piece\": \"001\", \"feature\": \"4\", \"value\": \"pass\"},"
      "  {\"piece\": \"002\", \"feature\": \"1\", \"value\": \"20.049\"}],"
      " \"nonconformances\": [{\"piece\": \"001\", \"feature\": \"2\", \"number\": \"NCR-5\", \"note\": "
      "\"oversize\","
      "  \"disposition\": \"use as is\"}],"
      " \"signatures\": [{\"by\": \"RT\", \"at\": \"2026-05-05T10:00:00Z\"}]}";

static char *
evaluate (const char *path, const char *expression)
{
  const char *const arguments[] = { "xmllint", "--nonet", "--xpath", expression, path, NULL };
  g_autoptr (GError) error = NULL;
  char *out = NULL;
  int status;

  g_spawn_sync (NULL, (char **)arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &out, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_cmpint (status, ==, 0);
  return g_strchomp (out);
}

/* What each expression gives for the job above. */
static const struct {
  const char *expression;
  const char *value;
} content[] = {
  { "string(/*/@versionQIF)", "3.0.0" },
  { "count(//@id[. > /*/@idMax])", "0" },
  { "string(//*[local-name()='TimeCreated'])", "2026-06-01T12:00:00Z" },
  { "string(//*[local-name()='ModelNumber'])", "P-1 & co" },
  { "string(//*[local-name()='Part']/@label)", "Housing <left>" },
  { "string(//*[local-name()='PrintedDrawing']/*[local-name()='DrawingNumber'])", "D-10" },
  { "string(//*[local-name()='PrintedDrawing']/*[local-name()='Version'])", "C" },
  { "string(//*[local-name()='PreInspectionTraceability']/*[local-name()='PurchaseOrderNumber'])", "PO-7" },
  { "string(//*[local-name()='PreInspectionTraceability']/*[local-name()='InspectionMode'])", "FAI_Partial" },
  { "string(//*[local-name()='PreInspectionTraceability']//*[local-name()='BaselineProductNumber'])", "P-0" },
  { "string(//*[local-name()='SignOffs']/*/*[local-name()='Name'])", "R. Test" },
  { "string(//*[local-name()='Micrometer']//*[local-name()='ExpirationDate'])", "2027-03-01T00:00:00Z" },
  { "string(//*[local-name()='PrimaryUnits']/*[local-name()='LinearUnit']/*[local-name()='UnitName'])",
    "mm" },
  /* Limits and their places as the drawing has them. */
  { "string(//*[local-name()='DiameterCharacteristicDefinition'][1]//*[local-name()='MaxValue'])", "20.05" },
  { "string(//*[local-name()='DiameterCharacteristicDefinition'][1]//*[local-name()='MinValue'])", "19.95" },
  { "string(//*[local-name()='DiameterCharacteristicNominal'][1]//*[local-name()='TargetValue'])", "20.00" },
  { "string(//*[local-name()='LengthCharacteristicDefinition']//*[local-name()='MinValue'])", "0.7450" },
  { "string(//*[local-name()='LengthCharacteristicDefinition']//*[local-name()='MinValue']/@linearUnit)",
    "inch" },
  { "string(//*[local-name()='LengthCharacteristicDefinition']//*[local-name()='MinValue']/@decimalPlaces)",
    "4" },
  { "count(//*[local-name()='LengthCharacteristicDefinition']//*[local-name()='MaxValue'])", "0" },
  { "count(//*[local-name()='CharacteristicItems']/*)", "5" },
  { "string(//*[local-name()='CharacteristicItems']/*[3]//*[local-name()='Designator'])", "2.2" },
  { "string(//*[local-name()='CharacteristicItems']/*[1]//*[local-name()='DrawingZone'])", "B4" },
  { "string(//*[local-name()='CharacteristicItems']/*[1]//*[local-name()='LevelEnum'])", "KEY" },
  /* Results: the first reading of the shaft was taken with a micrometer of ±0.004 mm and repeats to 0.001 mm:
   * its standard uncertainty is known, as the judgement has it. */
  { "string(//*[local-name()='MeasurementResults'][1]//*[local-name()='DiameterCharacteristicMeasurement'][1]"
    "/*[local-name()='Value'])",
    "20.010" },
  { "count(//*[local-name()='MeasurementResults'][1]//*[local-name()='DiameterCharacteristicMeasurement'][1]"
    "/*[local-name()='Value'][@combinedUncertainty > 0.0025 and @combinedUncertainty < 0.01 and @meanError = "
    "0])",
    "1" },
  { "string(//*[local-name()='MeasurementResults'][1]//*[local-name()='LengthCharacteristicMeasurement']"
    "/*[local-name()='Value'])",
    "0.74500" },
  { "string(//*[local-name()='MeasurementResults'][1]//*[local-name()='CharacteristicMeasurements']/*[3]"
    "//*[local-name()='CharacteristicStatusEnum'])",
    "FAIL" },
  { "string(//*[local-name()='MeasurementResults'][1]//*[local-name()='CharacteristicMeasurements']/*[3]"
    "//*[local-name()='NonConformanceDesignator'])",
    "NCR-5" },
  { "string(//*[local-name()='NotedEvent']/*[local-name()='Description'])", "NCR-5: oversize: use as is" },
  { "string(//*[local-name()='UserDefinedAttributeCharacteristicMeasurement'][1]/*[local-name()='Value'])",
    "ACCEPT" },
  { "string(//*[local-name()='ActualComponent'][1]//*[local-name()='InspectionStatusEnum'])", "FAIL" },
  /* The second piece: too close to call is neither pass nor fail, and what was not read is not analyzed. */
  { "string(//*[local-name()='MeasurementResults'][2]//*[local-name()='CharacteristicMeasurements']/*[1]"
    "//*[local-name()='CharacteristicStatusEnum'])",
    "INDETERMINATE" },
  { "count(//*[local-name()='MeasurementResults'][2]"
    "//*[local-name()='CharacteristicStatusEnum'][. = 'NOT_ANALYZED'])",
    "4" },
  { "string(//*[local-name()='ActualComponent'][2]//*[local-name()='InspectionStatusEnum'])", "UNKNOWN" },
  { "string(//*[local-name()='StatsEvalStatusEnum'])", "FAIL" },
};

static void
test_content (void)
{
  g_autoptr (TmJob) job = read_job (job_text);
  g_autofree char *folder = make_folder ();
  g_autofree char *path = g_build_filename (folder, "part.qif", NULL);

  keep (job, folder, "part");
  for (gsize i = 0; i < G_N_ELEMENTS (content); i++)
    {
      g_autofree char *value = evaluate (path, content[i].expression);

      g_test_message ("%s", content[i].expression);
      g_assert_cmpstr (value, ==, content[i].value);
    }
  remove_folder (folder);
}

/* A hole of 6.700 in 6.6 to 6.8 lies 0.100 from its maximum material: so much is added to the zone (ASME
 * Y14.5, ISO 2692), and 0.25 passes under a stated 0.2. */
static void
test_bonus (void)
{
  g_autoptr (TmJob) job = read_job (
      "{\"format\": \"tenthmark-job\", \"version\": 1, \"job\": {\"part_number\": \"P\", \"unit\": \"mm\"},"
      " \"features\": [{\"balloon\": \"1\", \"kind\": \"bore\", \"requirement\": \"Ø6.6 +0.2 -0\"},"
      " {\"balloon\": \"2\", \"requirement\": \"⌖ Ø0.2 Ⓜ A\", \"size_feature\": \"1\"}],"
      " \"pieces\": [{\"serial\": \"001\"}],"
      " \"readings\": [{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"6.700\"},"
      " {\"piece\": \"001\", \"feature\": \"2\", \"value\": \"0.25\"}]}");
  g_autoptr (GString) out = write_job (job);
  const char *position = strstr (out->str, "<PositionCharacteristicMeasurement");

  g_assert_nonnull (position);
  g_assert_nonnull (strstr (position, "<CharacteristicStatusEnum>PASS</CharacteristicStatusEnum>"));
  g_assert_nonnull (strstr (position, ">0.25</Value>"));
  g_assert_nonnull (strstr (position, ">0.1</Bonus>"));
}

/* What the schema does not find: each count is that of its children, each id stands once, each reference
 * leads to an id. */
static void
test_sound (void)
{
  static const char *const empty[] = {
    "//*[@n][not(local-name()='DefinitionExternal')][@n != count(*)]",
    "//*[@id][@id = following::*/@id]",
    "//*[contains(local-name(), 'Id') and not(contains(local-name(), 'Ids')) and not(contains(local-name(), "
    "'EmployeeId')) and not(contains(local-name(), 'QPId')) and not(. = //@id)]",
    "//*[local-name()='MaxValue'][../*[local-name()='MinValue'] > .][../*[local-name()='DefinedAsLimit']]",
  };
  g_autoptr (TmJob) job = tm_test_varied_job (7);
  g_autofree char *folder = make_folder ();
  g_autofree char *path = g_build_filename (folder, "part.qif", NULL);

  keep (job, folder, "part");
  for (gsize i = 0; i < G_N_ELEMENTS (empty); i++)
    {
      g_autofree char *expression = g_strdup_printf ("count(%s)", empty[i]);
      g_autofree char *found = evaluate (path, expression);

      g_test_message ("%s", expression);
      g_assert_cmpstr (found, ==, "0");
    }
  remove_folder (folder);
}

/* The same record and time give the same bytes; another time another document id, and the same
 * characteristics. */
static void
test_repeats (void)
{
  g_autoptr (TmJob) job = load_sample ("pump-bearing-housing.tmjob");
  g_autoptr (GString) first = write_job (job);
  g_autoptr (GString) again = write_job (job);
  const TmQifFacts later = { "2026-06-02T12:00:00Z", "Invented shop", "FA-1" };
  g_autoptr (GString) other = tm_qif_write_string (job, &later, NULL);
  const char *uuid = strstr (first->str, "<UUID>");
  g_autofree char *same = g_strndup (uuid, 50);
  g_autofree char *id = g_strndup (strstr (first->str, "<QPId>"), 50);

  g_assert_cmpstr (first->str, ==, again->str);
  g_assert_nonnull (strstr (other->str, same));
  g_assert_null (strstr (other->str, id));
}

/* Control characters have no place in XML: they are shown, and nothing else of the text is lost. */
static void
test_texts (void)
{
  g_autoptr (TmJob) job = read_job (job_text);
  g_autoptr (GString) out = NULL;

  job->part_name = tm_job_intern (job, "a\x01\x1f\tb <&> \xef\xbf\xbe \xd7\x90");
  out = write_job (job);
  g_assert_nonnull (
      strstr (out->str, "<Name>a\xe2\x90\x81\xe2\x90\x9f\tb &lt;&amp;&gt; \xef\xbf\xbd \xd7\x90</Name>"));
}

/* "2" with two places and a feature "2.1": the places are written another way; what cannot be told apart is
 * refused. */
static void
test_designators (void)
{
  g_autoptr (TmJob) job = read_job (job_text);
  g_autoptr (GString) out = NULL;
  g_autoptr (GError) error = NULL;
  TmFeature *feature = tm_feature_new ();
  TmFeature *blank = tm_feature_new ();

  feature->balloon = tm_job_intern (job, "2.1");
  feature->kind = blank->kind = TM_KIND_NOTE;
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
  out = write_job (job);
  g_assert_nonnull (strstr (out->str, "<Designator>2/1</Designator>"));
  g_assert_nonnull (strstr (out->str, "<Designator>2.1</Designator>"));
  g_string_free (g_steal_pointer (&out), TRUE);
  blank->balloon = tm_job_intern (job, " 1 ");
  g_assert_cmpint (tm_job_add_feature (job, blank), ==, TM_ADD_OK);
  out = tm_qif_write_string (job, &facts, &error);
  g_assert_null (out);
  g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_DISAGREES);
  g_assert_null (strchr (error->message, '\n'));
}

static gboolean
stop_cb (double fraction, gpointer data)
{
  return fraction < 0.5;
}

/* A stop, or a place that cannot be written to, leaves what was there. */
static void
test_whole (void)
{
  g_autoptr (TmJob) job = load_sample ("piston-rings.tmjob");
  g_autofree char *folder = make_folder ();
  g_autofree char *path = g_build_filename (folder, "part.qif", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "none", "part.qif", NULL);
  g_autofree char *kept = NULL;
  g_autoptr (GError) error = NULL;

  g_file_set_contents (path, "before", -1, &error);
  g_assert_no_error (error);
  g_assert_false (tm_qif_write_file (job, &facts, path, stop_cb, NULL, &error));
  g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_CANCELLED);
  g_clear_error (&error);
  g_file_get_contents (path, &kept, NULL, NULL);
  g_assert_cmpstr (kept, ==, "before");
  g_assert_false (tm_qif_write_file (job, &facts, nowhere, NULL, NULL, &error));
  g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_IO);
  g_assert_nonnull (strstr (error->message, "none"));
  remove_folder (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/qif/write/samples-validate", test_samples_validate);
  g_test_add_func ("/qif/write/generated-validate", test_generated_validate);
  g_test_add_func ("/qif/write/content", test_content);
  g_test_add_func ("/qif/write/bonus", test_bonus);
  g_test_add_func ("/qif/write/sound", test_sound);
  g_test_add_func ("/qif/write/repeats", test_repeats);
  g_test_add_func ("/qif/write/texts", test_texts);
  g_test_add_func ("/qif/write/designators", test_designators);
  g_test_add_func ("/qif/write/whole", test_whole);
  return g_test_run ();
}
