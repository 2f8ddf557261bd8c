/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-csv.h"
#include "exchange-table.h"
#include "support-job-text.h"
#include "support-varied-job.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

static TmJob *
make_job (void)
{
  g_autoptr (GError) error = NULL;
  const char *text = TM_TEST_JOB_MM "}";
  TmJob *job = tm_job_from_bytes (text, strlen (text), "part.tmjob", NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  job->general_tolerance = tm_job_intern (job, "ISO 2768-m");
  return job;
}

static TmTablePreview *
preview (const char *text, TmJob *job)
{
  g_autoptr (GError) error = NULL;
  TmTablePreview *out = tm_table_preview (text, strlen (text), "list.csv", job, &error);

  g_assert_no_error (error);
  g_assert_nonnull (out);
  return out;
}

static const TmTableRow *
row_at (const TmTablePreview *from, guint index)
{
  g_assert_cmpuint (index, <, from->rows->len);
  return g_ptr_array_index (from->rows, index);
}

static void
assert_feature (const TmTableRow *row, const char *balloon, TmKind kind, const char *requirement,
                const char *lower, const char *upper)
{
  g_autofree char *found_lower = NULL;
  g_autofree char *found_upper = NULL;

  g_assert_cmpstr (row->problem, ==, NULL);
  g_assert_nonnull (row->feature);
  found_lower = tm_quantity_format (&row->feature->lower);
  found_upper = tm_quantity_format (&row->feature->upper);
  g_assert_cmpstr (row->feature->balloon, ==, balloon);
  g_assert_cmpint (row->feature->kind, ==, kind);
  g_assert_cmpstr (row->feature->requirement, ==, requirement);
  g_assert_cmpstr (found_lower, ==, lower);
  g_assert_cmpstr (found_upper, ==, upper);
}

/* The same list in each shape that shops send gives the same features. */
static void
test_shapes (void)
{
  static const char *const texts[] = {
    "Balloon,Requirement,Name\n1,Ø25 H7,Seat\n2,4X Ø6.5 ±0.1,Holes\n",
    "\xef\xbb\xbf"
    "No.;Callout;Description\r\n1;Ø25 H7;Seat\r\n2;\"4X Ø6.5 ±0.1\";Holes\r\n",
    "number\trequirement\tname\n1\tØ25 H7\tSeat\n2\t4X Ø6.5 ±0.1\tHoles",
    "1,Ø25 H7,Seat\n\n2,4X Ø6.5 ±0.1,Holes\n",
    "sep=;\nDescription;Spec;Char No\nSeat;Ø25 H7;1\nHoles;4X Ø6.5 ±0.1;2\n",
    " Balloon , REQUIREMENT , Feature_Name \n 1 , Ø25 H7 , Seat \n 2 , 4X Ø6.5 ±0.1 , Holes \n",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (TmJob) job = make_job ();
      g_autoptr (TmTablePreview) found = preview (texts[i], job);

      g_test_message ("shape %zu", i);
      g_assert_cmpuint (found->rows->len, ==, 2);
      g_assert_cmpuint (found->n_addable, ==, 2);
      assert_feature (row_at (found, 0), "1", TM_KIND_BORE, "Ø25 H7", "25.000", "25.021");
      assert_feature (row_at (found, 1), "2", TM_KIND_DIAMETER, "4X Ø6.5 ±0.1", "6.4", "6.6");
      g_assert_cmpstr (row_at (found, 1)->feature->name, ==, "Holes");
      g_assert_cmpuint (row_at (found, 1)->feature->places, ==, 4);
      g_assert_cmpuint (job->features->len, ==, 0);
    }
}

/* A spreadsheet's "Unicode text" is UTF-16 with a mark. */
static void
test_utf16 (void)
{
  static const char utf8[] = "\xef\xbb\xbf"
                             "1\tØ25 H7\tSeat\n";
  glong units;
  g_autofree gunichar2 *utf16 = g_utf8_to_utf16 (utf8, -1, NULL, &units, NULL);
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (GError) error = NULL;
  g_autoptr (TmTablePreview) found
      = tm_table_preview ((const char *)utf16, (gsize)units * 2, "list.txt", job, &error);

  g_assert_no_error (error);
  assert_feature (row_at (found, 0), "1", TM_KIND_BORE, "Ø25 H7", "25.000", "25.021");
}

static void
test_columns (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmTablePreview) found
      = preview ("No;Lower limit;Upper limit;Nominal;Unit;Type;Sheet;Zone;Class;Qty;Colour;No\n"
                 "5;\"0,745\";0,755;0,75;in;Bore;2;C4;Critical;3;red;9\n",
                 job);
  const TmTableRow *row = row_at (found, 0);

  assert_feature (row, "5", TM_KIND_BORE, "", "0.745", "0.755");
  g_assert_cmpint (row->feature->unit, ==, TM_UNIT_IN);
  g_assert_cmpint (row->feature->nominal.count, ==, G_GINT64_CONSTANT (19050000000));
  g_assert_cmpstr (row->feature->sheet, ==, "2");
  g_assert_cmpstr (row->feature->zone, ==, "C4");
  g_assert_cmpstr (row->feature->designator, ==, "critical");
  g_assert_cmpuint (row->feature->places, ==, 3);
  g_assert_cmpuint (row->line, ==, 2);
  g_assert_cmpuint (found->unused->len, ==, 2);
  g_assert_cmpstr (g_ptr_array_index (found->unused, 0), ==, "Colour");
}

/* One column of callouts is numbered on from what the job has. */
static void
test_numbering (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmTablePreview) first = preview ("7,12 ±0.1,a\n,13 ±0.1,b\n9,14 ±0.1,c\n", job);
  g_autoptr (TmTablePreview) second = NULL;

  g_assert_cmpstr (row_at (first, 1)->feature->balloon, ==, "10");
  g_assert_cmpuint (tm_table_apply (first, job), ==, 3);
  second = preview ("Ra 1.6\n40\n", job);
  assert_feature (row_at (second, 0), "11", TM_KIND_ROUGHNESS, "Ra 1.6", "", "1.6");
  assert_feature (row_at (second, 1), "12", TM_KIND_LENGTH, "40", "39.7", "40.3");
}

/* Quoted cells: separators, doubled quotation marks and line breaks; and the inch mark that is none. */
static void
test_quotes (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmTablePreview) found = preview ("No,Requirement,Name\n"
                                              "1,\"Ø25,000/25,021\",\"Seat, \"\"A\"\" side\nsecond line\"\n"
                                              "2,see 3/4\" note,x\n",
                                              job);

  assert_feature (row_at (found, 0), "1", TM_KIND_DIAMETER, "Ø25,000/25,021", "25.000", "25.021");
  g_assert_cmpstr (row_at (found, 0)->feature->name, ==, "Seat, \"A\" side\nsecond line");
  g_assert_cmpuint (row_at (found, 1)->line, ==, 4);
  g_assert_cmpstr (row_at (found, 1)->feature->requirement, ==, "see 3/4\" note");
  g_assert_cmpint (row_at (found, 1)->feature->kind, ==, TM_KIND_NOTE);
  g_assert_cmpint (row_at (found, 1)->read, !=, TM_CALLOUT_OK);
}

/* Rows that cannot be added say why; the others are added all together. */
static void
test_problems (void)
{
  static const char text[] = "No,Requirement,Lower,Upper,Places,Class\n"
                             "1,Ø25 H7,,,,\n"
                             "1,Ø30 H7,,,,\n"
                             "3,,,,,key\n"
                             "4,Ø25 H7,25.001,,,\n"
                             "5,,10.1,9.9,,\n"
                             "6,12 ±0.1,,,two,\n"
                             "7,12 ±0.1,,,,major\n"
                             "8,,ten,11,,\n"
                             "9,12 ±0.1,,,,\n";
  static const char *const problems[]
      = { NULL,   "another number", "requirement nor limits", "correct one of them",
          "swap", "like 4",         "critical, key",          "lower: “ten”",
          NULL };
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmTablePreview) found = preview (text, job);

  g_assert_cmpuint (found->rows->len, ==, G_N_ELEMENTS (problems));
  for (guint i = 0; i < G_N_ELEMENTS (problems); i++)
    {
      const char *problem = row_at (found, i)->problem;

      g_test_message ("%u: %s", i, problem != NULL ? problem : "");
      g_assert_true ((problem == NULL) == (problems[i] == NULL));
      if (problem != NULL)
        {
          g_assert_nonnull (strstr (problem, problems[i]));
          g_assert_null (strchr (problem, '\n'));
        }
    }
  g_assert_cmpuint (found->n_addable, ==, 2);
  g_assert_cmpuint (tm_table_apply (found, job), ==, 2);
  g_assert_cmpuint (job->features->len, ==, 2);
  g_assert_nonnull (tm_job_find_feature (job, "9"));
  g_assert_cmpuint (tm_table_apply (found, job), ==, 0);
  g_assert_cmpuint (job->features->len, ==, 2);
}

/* When the job has changed since the preview, nothing is added. */
static void
test_all_or_none (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmTablePreview) found = preview ("1,12 ±0.1,a\n2,13 ±0.1,b\n", job);
  TmFeature *other = tm_feature_new ();

  other->balloon = tm_job_intern (job, "2");
  g_assert_cmpint (tm_job_add_feature (job, other), ==, TM_ADD_OK);
  g_assert_cmpuint (tm_table_apply (found, job), ==, 0);
  g_assert_cmpuint (job->features->len, ==, 1);
}

static const struct {
  const char *text;
  TmExchangeError code;
  const char *place;
  const char *mend;
} wrong[] = {
  { "", TM_EXCHANGE_ERROR_MISSING, "list.csv: ", "each row" },
  { "\n \n", TM_EXCHANGE_ERROR_MISSING, "list.csv: ", "each row" },
  { "No,Requirement\n1,25 \xb1"
    "0.1\n",
    TM_EXCHANGE_ERROR_NOT_TEXT, "list.csv: line 2: ", "CSV UTF-8" },
  { "No,Requirement\n1,25 mm\n2,\xd8"
    "25\n",
    TM_EXCHANGE_ERROR_NOT_TEXT, "list.csv: line 3: ", "CSV UTF-8" },
  { "\nNo,Zone\n1,C4\n", TM_EXCHANGE_ERROR_NO_COLUMN, "list.csv: line 2: ", "“requirement”" },
  { "Nummer,Anforderung\n1,25\n", TM_EXCHANGE_ERROR_NO_COLUMN, "list.csv: line 1: ", "name the columns" },
  { "No,Requirement\n1,\"25\n2,26\n", TM_EXCHANGE_ERROR_BAD_VALUE,
    "list.csv: line 2: ", "add the second one" },
};

static void
test_wrong (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr (TmJob) job = make_job ();
      g_autoptr (GError) error = NULL;

      g_assert_null (tm_table_preview (wrong[i].text, strlen (wrong[i].text), "list.csv", job, &error));
      g_assert_nonnull (error);
      g_test_message ("%s", error->message);
      g_assert_error (error, TM_EXCHANGE_ERROR, (gint)wrong[i].code);
      g_assert_true (g_str_has_prefix (error->message, wrong[i].place));
      g_assert_nonnull (strstr (error->message, wrong[i].mend));
      g_assert_null (strchr (error->message, '\n'));
    }
}

/* The report: texts that would be formulas are kept texts, numbers are numbers, a result beyond a
 * limit is out. */
static void
test_report (void)
{
  static const char text[]
      = TM_TEST_JOB_MM ", \"features\": [{\"balloon\": \"1\", \"kind\": \"bore\", \"name\": \"=1+1\", "
                       "\"requirement\": \"Ø25 H7\"}, "
                       "{\"balloon\": \"2\", \"kind\": \"attribute\", \"name\": \"+x, \\\"y\\\"\"}, "
                       "{\"balloon\": \"3\", \"kind\": \"length\", \"requirement\": \"12 ±0.1\", \"check\": "
                       "\"first\"}]" TM_TEST_PIECES
                       ", \"readings\": [{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25.022\"}, "
                       "{\"piece\": \"001\", \"feature\": \"2\", \"value\": \"pass\"}, "
                       "{\"piece\": \"001\", \"feature\": \"3\", \"value\": \"11.95\"}], "
                       "\"nonconformances\": [{\"piece\": \"001\", \"feature\": \"1\", \"number\": \"-7\"}]}";
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) job = tm_job_from_bytes (text, strlen (text), "part.tmjob", NULL, NULL, NULL, &error);
  g_autoptr (GString) report = NULL;
  g_auto (GStrv) lines = NULL;

  g_assert_no_error (error);
  report = tm_table_report (job);
  g_assert_true (g_str_has_prefix (report->str, "\xef\xbb\xbfRow,Piece,Feature,Name,"));
  g_assert_true (g_str_has_suffix (report->str, "\r\n"));
  lines = g_strsplit (report->str, "\r\n", -1);
  /* Headings; three results for the first piece, each with its reading; two for the second (which need not
   * show the third feature); the nonconformance; and the end. */
  g_assert_cmpuint (g_strv_length (lines), ==, 11);
  g_assert_true (g_str_has_prefix (
      lines[1], "result,001,1,\"'=1+1\",,,,1,Ø25 H7,mm,25,25.000,25.021,25.022,25.022,25.022,0.022,"
                "out,metal gone,,,,,-7,readings,no method,,,"));
  g_assert_true (g_str_has_prefix (lines[2], "reading,001,1,\"'=1+1\",,,,1,Ø25 H7,mm,25,25.000,25.021,,"));
  g_assert_nonnull (strstr (lines[2], ",1,,25.022,mm,"));
  g_assert_true (
      g_str_has_prefix (lines[3], "result,001,2,\"'+x, \"\"y\"\"\",,,,1,,,,,,pass,,,,in,,,,,,,,,,,"));
  g_assert_true (g_str_has_prefix (lines[5],
                                   "result,001,3,,,,,1,12 ±0.1,mm,12,11.9,12.1,11.95,11.95,11.95,-0.05,in,"
                                   ",,,,,,readings,no method,,,"));
  g_assert_nonnull (strstr (lines[7], ",not measured,"));
  g_assert_true (g_str_has_prefix (lines[9], "nonconformance,001,1,"));
}

static void
append_row (GString *out, const char *kind, const char *id, const TmQuantity *value)
{
  g_autofree char *text = tm_quantity_format (value);

  g_string_append_printf (out, "%s\t%s\t%s\t%s\n", kind, id, text,
                          value->given ? tm_unit_word ((TmUnit)value->unit) : "");
}

/* The rows that another reader of CSV must find, place by place. */
static char *
list_record (const TmJob *job)
{
  GString *out = g_string_new (NULL);

  for (guint p = 0; p < job->pieces->len; p++)
    for (guint f = 0; f < job->features->len; f++)
      {
        const TmFeature *feature = g_ptr_array_index (job->features, f);
        const TmPiece *piece = g_ptr_array_index (job->pieces, p);

        for (guint place = 1; place <= feature->places; place++)
          {
            const GPtrArray *readings = tm_job_readings_at (job, piece, feature, place);
            const GPtrArray *trials = tm_job_pin_trials_at (job, piece, feature, place);
            const GPtrArray *cuts = tm_job_cuts_at (job, piece, feature, place);

            for (guint i = 0; readings != NULL && i < readings->len; i++)
              append_row (out, "reading", ((TmReading *)readings->pdata[i])->row.id,
                          &((TmReading *)readings->pdata[i])->value);
            for (guint i = 0; trials != NULL && i < trials->len; i++)
              append_row (out, "pin trial", ((TmPinTrial *)trials->pdata[i])->row.id,
                          &((TmPinTrial *)trials->pdata[i])->size);
            for (guint i = 0; cuts != NULL && i < cuts->len; i++)
              append_row (out, "cut", ((TmCutRow *)cuts->pdata[i])->row.id,
                          &((TmCutRow *)cuts->pdata[i])->dialled);
          }
      }
  return g_string_free (out, FALSE);
}

static void
read_back (const TmJob *job)
{
  g_autoptr (GString) report = tm_table_report (job);
  g_autofree char *expected = list_record (job);
  g_autofree char *path = NULL;
  g_autofree char *out = NULL;
  g_autofree char *said = NULL;
  g_autoptr (GError) error = NULL;
  const char *arguments[] = { "python3", g_getenv ("TM_TABLE_READER"), NULL, NULL };
  int fd = g_file_open_tmp ("table-XXXXXX.csv", &path, &error);
  int status;

  g_assert_no_error (error);
  close (fd);
  g_assert_true (g_file_set_contents (path, report->str, (gssize)report->len, &error));
  arguments[2] = path;
  g_spawn_sync (NULL, (char **)arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &out, &said, &status,
                &error);
  g_unlink (path);
  g_assert_no_error (error);
  g_assert_cmpstr (said, ==, "");
  g_assert_cmpint (status, ==, 0);
  g_assert_cmpstr (out, ==, expected);
}

/* Another program's reader finds every row of the record, each value with its digits, and no formula,
 * whatever the names are. */
static void
test_report_read_back (void)
{
  for (guint32 seed = 0; seed < 12; seed++)
    {
      g_autoptr (TmJob) job = tm_test_varied_job (seed);

      read_back (job);
    }
}

/* What begins a formula is kept from being one, and a number is left alone. */
static void
test_report_formulas (void)
{
  static const struct {
    const char *text;
    const char *cell;
  } rows[] = {
    { "=1+1", "\"'=1+1\"" },
    { "+cmd|' /C calc'!A0", "\"'+cmd|' /C calc'!A0\"" },
    { "-2+3", "\"'-2+3\"" },
    { "@SUM(A1)", "\"'@SUM(A1)\"" },
    { "\t=1", "\"'\t=1\"" },
    { "\r=1", "\"'\r=1\"" },
    { "\n=1", "\"'\n=1\"" },
    { "＝1", "\"'＝1\"" },
    { "-0.012", "-0.012" },
    { "+3", "+3" },
    { "-.5", "-.5" },
    { "-", "\"'-\"" },
    { "-1.2.3", "\"'-1.2.3\"" },
    { "-1e3", "\"'-1e3\"" },
    { "a,b", "\"a,b\"" },
    { "a \"b\"", "\"a \"\"b\"\"\"" },
    { "1=1", "1=1" },
    { "", "" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GString) out = g_string_new ("first");
      g_autofree char *expected = g_strdup_printf ("first,%s", rows[i].cell);

      tm_csv_put_text (out, rows[i].text);
      g_assert_cmpstr (out->str, ==, expected);
    }
}

/* What a verdict rests on stands in its line: the pins that proved the band, the reason why an overdue
 * gauge was used, and the correction to 20 °C: 25.010 mm with 23.6e-6 and 11.5e-6 / °C at 25 °C each is
 * 25.010 · (11.5 - 23.6)e-6 · 5 = -0.0015 larger. */
static void
test_report_basis (void)
{
  static const char text[]
      = "{\"format\": \"tenthmark-job\", \"version\": 1, \"job\": {\"part_number\": \"P\", \"unit\": \"mm\", "
        "\"expansion\": \"23.6\"}, \"gauges\": [{\"tag\": \"M\", \"resolution\": \"0.001\", \"error_limit\": "
        "\"0.001\", \"expansion\": \"11.5\"}], \"features\": [{\"balloon\": \"1\", \"kind\": \"bore\", "
        "\"requirement\": \"Ø25 H7\", \"places\": 2, \"method\": \"M\"}], \"pieces\": [{\"serial\": "
        "\"001\"}], "
        "\"readings\": [{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25.010\", \"part_temp\": "
        "\"25\", "
        "\"gauge_temp\": \"25\", \"overdue_reason\": \"=no other\"}], \"pin_trials\": [{\"piece\": \"001\", "
        "\"feature\": \"1\", \"place\": 2, \"size\": \"25.002\", \"class\": \"X\", \"sign\": \"plus\", "
        "\"went\": true}, {\"piece\": \"001\", \"feature\": \"1\", \"place\": 2, \"size\": \"25.018\", "
        "\"class\": \"X\", \"sign\": \"minus\", \"went\": false}]}";
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) job = tm_job_from_bytes (text, strlen (text), "p.tmjob", NULL, NULL, NULL, &error);
  g_autoptr (GString) report = NULL;
  g_auto (GStrv) lines = NULL;

  g_assert_no_error (error);
  report = tm_table_report (job);
  lines = g_strsplit (report->str, "\r\n", -1);
  /* Headings, a result with its reading, a result with its two trials, and the end. */
  g_assert_cmpuint (g_strv_length (lines), ==, 7);
  g_assert_nonnull (strstr (lines[1], ",readings,"));
  g_assert_nonnull (strstr (lines[1], ",-0.0015,\"'=no other\""));
  g_assert_nonnull (strstr (lines[2], ",25.010,mm,"));
  g_assert_nonnull (strstr (lines[3], ",in,"));
  g_assert_nonnull (strstr (lines[3], ",pins,,,"));
  g_assert_nonnull (strstr (lines[4], ",25.002,mm,went,"));
  g_assert_nonnull (strstr (lines[5], ",25.018,mm,did not go,"));
}

/* The result that counts, and what it was before its rework. */
static void
test_rework (void)
{
  g_autoptr (GError) error = NULL;
  const char *text = TM_TEST_JOB_MM
      ", \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\", \"comment\": \"=1\"}], "
      "\"pieces\": [{\"serial\": \"001\"}], \"readings\": ["
      "{\"id\": \"1\", \"piece\": \"001\", \"feature\": \"1\", \"value\": \"24.990\"}, "
      "{\"id\": \"2\", \"piece\": \"001\", \"feature\": \"1\", \"value\": \"25.010\"}], "
      "\"nonconformances\": [{\"piece\": \"001\", \"feature\": \"1\", \"number\": \"NC-14\", "
      "\"disposition\": \"rework\", \"rework_at\": \"2026-05-04T10:00:00Z\", "
      "\"rework_after\": \"1\"}]}";
  g_autoptr (TmJob) job = tm_job_from_bytes (text, strlen (text), "part.tmjob", NULL, NULL, NULL, &error);
  g_autoptr (GString) report = NULL;
  g_auto (GStrv) lines = NULL;

  g_assert_no_error (error);
  report = tm_table_report (job);
  lines = g_strsplit (report->str, "\r\n", -1);
  g_assert_nonnull (strstr (lines[0], ",First result,First verdict,Reworked at (UTC),"));
  g_assert_nonnull (strstr (lines[1], ",25.010,25.010,25.010,"));
  g_assert_nonnull (strstr (lines[1], ",NC-14,"));
  g_assert_nonnull (strstr (lines[1], ",24.990,out,2026-05-04T10:00:00Z,,\"'=1\","));
  g_assert_nonnull (strstr (lines[2], ",24.990,mm,"));
  g_assert_nonnull (strstr (lines[2], ",before a rework,"));
  g_assert_nonnull (strstr (lines[3], ",yes,"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/table/shapes", test_shapes);
  g_test_add_func ("/exchange/table/utf16", test_utf16);
  g_test_add_func ("/exchange/table/columns", test_columns);
  g_test_add_func ("/exchange/table/numbering", test_numbering);
  g_test_add_func ("/exchange/table/quotes", test_quotes);
  g_test_add_func ("/exchange/table/problems", test_problems);
  g_test_add_func ("/exchange/table/all-or-none", test_all_or_none);
  g_test_add_func ("/exchange/table/wrong", test_wrong);
  g_test_add_func ("/exchange/table/rework", test_rework);
  g_test_add_func ("/exchange/table/report", test_report);
  g_test_add_func ("/exchange/table/report-basis", test_report_basis);
  g_test_add_func ("/exchange/table/report-formulas", test_report_formulas);
  g_test_add_func ("/exchange/table/report-read-back", test_report_read_back);
  return g_test_run ();
}
