/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The list of a recall as a table for a spreadsheet.
 */

#include "exchange-csv.h"
#include "exchange-job.h"
#include "exchange-recall.h"

#include <string.h>

static const char job_text[]
    = "{\"format\": \"tenthmark-job\", \"version\": 1, \"job\": {\"id\": \"j\", \"part_number\": \"=P,1\", "
      "\"revision\": \"B\", \"unit\": \"mm\"}, \"gauges\": [{\"tag\": \"M\", \"resolution\": \"0.001\", "
      "\"error_limit\": \"0.001\"}, {\"tag\": \"PS\", \"kind\": \"pin set\"}], \"methods\": [{\"name\": "
      "\"micrometer\", \"gauges\": [\"M\"]}], \"features\": [{\"balloon\": \"1\", \"kind\": \"bore\", "
      "\"name\": \"Seat\", \"requirement\": \"Ø25 H7\", \"places\": 2, \"method\": \"micrometer\"}, "
      "{\"balloon\": \"2\", \"requirement\": \"pos dia 0.2 A B\"}], \"pieces\": [{\"serial\": \"001\"}], "
      "\"readings\": [{\"id\": \"1\", \"piece\": \"001\", \"feature\": \"1\", \"place\": 2, \"station\": "
      "\"mouth/12\", \"value\": \"25.0190\", \"by\": \"RT\", \"at\": \"2026-05-04T09:12:33Z\"}, "
      "{\"id\": \"2\", \"piece\": \"001\", \"feature\": \"1\", \"value\": \"25.010\", \"at\": "
      "\"2026-03-01T23:59:59Z\"}, {\"id\": \"3\", \"piece\": \"001\", \"feature\": \"2\", \"dx\": \"0.05\", "
      "\"dy\": \"-0.02\", \"method\": \"M\"}], \"pin_trials\": [{\"id\": \"1\", \"piece\": \"001\", "
      "\"feature\": \"1\", \"size\": \"25.000\", \"class\": \"X\", \"sign\": \"plus\", \"went\": true, "
      "\"gauge\": \"PS\", \"at\": \"2026-05-05T10:00:00Z\"}]}";

static TmJob *
read_job (void)
{
  g_autoptr (GError) error = NULL;
  TmJob *job = tm_job_from_bytes (job_text, strlen (job_text), "part.tmjob", NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  return job;
}

/* The cells of the table of a recall. */
static GPtrArray *
make_table (const TmJob *job, const char *tag, const TmQuantity *found, GString *text)
{
  g_autoptr (GArray) rows = tm_recall (job, tag, "2026-03-01", found);
  g_autoptr (GError) error = NULL;
  GPtrArray *table;

  tm_recall_table_begin (text);
  tm_recall_table_add (text, job, rows);
  table = tm_csv_read (text->str, text->len, "recall.csv", &error);
  g_assert_no_error (error);
  return table;
}

static const char *
get_cell (const GPtrArray *table, guint row, const char *heading)
{
  const TmCsvRow *head = g_ptr_array_index (table, 0);
  const TmCsvRow *line = g_ptr_array_index (table, row);

  g_assert_cmpuint (line->cells->len, ==, head->cells->len);
  for (guint i = 0; i < head->cells->len; i++)
    {
      if (g_str_equal (g_ptr_array_index (head->cells, i), heading))
        return g_ptr_array_index (line->cells, i);
    }
  g_error ("no column %s", heading);
}

static void
test_readings (void)
{
  g_autoptr (TmJob) job = read_job ();
  g_autoptr (GString) text = g_string_new (NULL);
  TmQuantity found = TM_QUANTITY_NONE;
  g_autoptr (GPtrArray) table = NULL;

  g_assert_cmpint (tm_quantity_read ("-0.005", TM_UNIT_MM, &found), ==, TM_READ_OK);
  table = make_table (job, "M", &found, text);
  g_assert_cmpuint (table->len, ==, 3);
  g_assert_cmpstr (get_cell (table, 1, "Job"), ==, "j");
  g_assert_true (strstr (text->str, "'=P") != NULL || strstr (text->str, "\"=P") == NULL);
  g_assert_cmpstr (get_cell (table, 1, "Revision"), ==, "B");
  g_assert_cmpstr (get_cell (table, 1, "Piece"), ==, "001");
  g_assert_cmpstr (get_cell (table, 1, "Feature"), ==, "1");
  g_assert_cmpstr (get_cell (table, 1, "Name"), ==, "Seat");
  g_assert_cmpstr (get_cell (table, 1, "Place"), ==, "2");
  g_assert_cmpstr (get_cell (table, 1, "Station"), ==, "mouth/12");
  g_assert_cmpstr (get_cell (table, 1, "Taken as"), ==, "reading");
  g_assert_cmpstr (get_cell (table, 1, "Number"), ==, "1");
  g_assert_cmpstr (get_cell (table, 1, "Value"), ==, "25.0190");
  g_assert_cmpstr (get_cell (table, 1, "When"), ==, "2026-05-04T09:12:33Z");
  g_assert_cmpstr (get_cell (table, 1, "By"), ==, "RT");
  g_assert_cmpstr (get_cell (table, 1, "Method"), ==, "micrometer");
  /* 25.019 read 0.005 too small: it is 25.024, beyond 25.021 */
  g_assert_cmpstr (get_cell (table, 1, "Verdict before"), ==, "in");
  g_assert_cmpstr (get_cell (table, 1, "Verdict after"), ==, "out");
  g_assert_cmpstr (get_cell (table, 1, "Side after"), ==, "metal gone");
  g_assert_cmpstr (get_cell (table, 1, "Changes"), ==, "yes");
  /* a row without a time is taken in */
  g_assert_cmpstr (get_cell (table, 2, "Value"), ==, "0.05 / -0.02");
  g_assert_cmpstr (get_cell (table, 2, "When"), ==, "");
  g_assert_cmpstr (get_cell (table, 2, "Changes"), ==, "no");
}

static void
test_trials (void)
{
  g_autoptr (TmJob) job = read_job ();
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GPtrArray) table = make_table (job, "PS", NULL, text);

  g_assert_cmpuint (table->len, ==, 2);
  g_assert_cmpstr (get_cell (table, 1, "Taken as"), ==, "pin trial");
  g_assert_cmpstr (get_cell (table, 1, "Value"), ==, "25.000 X plus: went");
  g_assert_cmpstr (get_cell (table, 1, "Method"), ==, "PS");
  g_assert_cmpstr (get_cell (table, 1, "Changes"), ==, "no");
}

static void
test_nothing (void)
{
  g_autoptr (TmJob) job = read_job ();
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GPtrArray) table = make_table (job, "nobody", NULL, text);

  g_assert_cmpuint (table->len, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/recall-table/readings", test_readings);
  g_test_add_func ("/exchange/recall-table/trials", test_trials);
  g_test_add_func ("/exchange/recall-table/nothing", test_nothing);
  return g_test_run ();
}
