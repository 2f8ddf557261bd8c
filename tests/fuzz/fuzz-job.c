/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Any bytes as a job file: a whole job or one line that says why not; and a job that was read is
 * written, read again, and written to the same bytes.
 */

#include "exchange-job.h"
#include "fuzz-driver.h"

#include <string.h>

#define START "{\"format\":\"tenthmark-job\",\"version\":1,\"job\":{\"part_number\":\"P\",\"unit\":\"mm\"}"

const char *const fuzz_seeds[] = {
  START "}",
  "{\"format\":\"tenthmark-job\",\"version\":1,\"job\":{\"id\":\"j\",\"part_number\":\"P\",\"unit\":\"in\","
  "\"standard\":\"ASME\","
  "\"decision\":\"simple\",\"simple_ratio\":\"4\",\"general_tolerance\":\".X .1, .XX "
  ".01\",\"first_article\":{\"kind\":"
  "\"partial\",\"reason\":\"r\"},\"x\":{\"y\":[1,\"]\"]}}}",
  START ",\"gauges\":[{\"tag\":\"g\",\"unit\":\"mm\",\"resolution\":\"0.001\",\"error_limit\":\"2 "
        "um\",\"due\":\"2028-02-29\"}],"
        "\"methods\":[{\"name\":\"m\",\"gauges\":[\"g\",\"g\"],\"repeatability\":\"0.003\",\"repeatability_"
        "dof\":\"30\"}]}",
  START ",\"features\":[{\"balloon\":\"1\",\"requirement\":\"\xc3\x98"
        "25 H7\"},{\"balloon\":\"2\",\"requirement\":\"4X \xc3\x98"
        "6.5 \xc2\xb1"
        "0.1\",\"places\":4},{\"balloon\":\"3\",\"kind\":\"attribute\"}],\"pieces\":[{\"serial\":\"1\"}],"
        "\"readings\":["
        "{\"piece\":\"1\",\"feature\":\"1\",\"value\":\"25.01\"}]}",
  START ",\"features\":[{\"balloon\":\"1\",\"kind\":\"bore\",\"unit\":\"mm\",\"nominal\":\"25\",\"lower\":"
        "\"25.000\",\"upper\":"
        "\"25.021\",\"cut\":\"grows\",\"stations\":[\"mouth/12\",\"12.5/3\"],\"check\":\"every "
        "5\",\"group_size\":5,"
        "\"mate\":{\"kind\":\"shaft\",\"lower\":\"24.9\",\"upper\":\"24.95\",\"x\":0}}]}",
  START
  ",\"features\":[{\"balloon\":\"1\",\"lower\":\"1\"}],\"pieces\":[{\"serial\":\"1\"}],\"readings\":[{\"id\":"
  "\"7\",\"piece\":"
  "\"1\",\"feature\":\"1\",\"value\":\"1\",\"at\":\"2026-05-04T09:12:33Z\"},{\"piece\":\"1\",\"feature\":"
  "\"1\",\"value\":"
  "\".05 in\",\"replaces\":\"7\",\"reason\":\"r\",\"withdrawn\":{\"reason\":\"\\u00e9\\ud83d\\ude00\"}}]}",
  START ",\"features\":[{\"balloon\":\"1\",\"lower\":\"1\"}],\"pieces\":[{\"serial\":\"1\"}],\"pin_trials\":["
        "{\"piece\":\"1\","
        "\"feature\":\"1\",\"size\":\"1\",\"class\":\"Z\",\"sign\":\"plus\",\"went\":true}],\"cuts\":[{"
        "\"piece\":\"1\",\"feature\":"
        "\"1\",\"dialled\":\"0.1\",\"passes\":2}]}",
  "{\"pieces\":[{\"serial\":\"1\",\"q\":null}],\"job\":{\"unit\":\"mm\",\"part_number\":\"P\"},\"z\":[[[[]]]]"
  ",\"version\":1,"
  "\"format\":\"tenthmark-job\"}",
  START ",\"events\":[{\"before_piece\":\"2\",\"kind\":\"tool\",\"amount\":\"-0.01\"}],\"nonconformances\":[{"
        "\"number\":\"n\"}],"
        "\"signatures\":[{\"by\":\"a\",\"at\":\"2026-05-04T09:12:33Z\"}]}",
  START
  ",\"gauges\":[{\"tag\":\"P\",\"unit\":\"in\",\"range_from\":\"0.251\",\"range_to\":\"0.5\",\"pin_step\":"
  "\"0.001\",\"pin_class\":\"ZZ\",\"pin_sign\":\"minus\",\"serial\":\"s\",\"owner\":\"o\",\"place\":\"p\","
  "\"feel\":\"0.0005\",\"expansion\":\"11.5\",\"source\":\"assumed\"}],\"calibrations\":[{\"gauge\":\"P\","
  "\"date\":\"2026-03-01\",\"due\":\"2027-03-01\",\"by\":\"lab\",\"uncertainty\":\"0.0001\",\"coverage\":"
  "\"2\",\"error\":\"-0.0001\",\"outcome\":\"bad\",\"note\":\"n\"}],\"checks\":[{\"gauge\":\"P\","
  "\"standard\":\".5\",\"reading\":\".5001\",\"by\":\"A\",\"at\":\"2026-05-04T09:12:33Z\"}],\"pin_sizes\":[{"
  "\"gauge\":\"P\",\"size\":\"0.3\",\"measured\":\"0.30001\"}]}",
  START ",\"gauges\":[{\"tag\":\"g\"}],\"methods\":[{\"name\":\"m\",\"gauges\":[\"g\"],\"repeatability\":\"0."
        "001\",\"repeatability_source\":\"study "
        "s\"}],\"budget_lines\":[{\"method\":\"m\",\"kind\":\"feel\",\"name\":\"x\",\"value\":\"0.01\","
        "\"distribution\":\"u-shaped\",\"divisor\":\"1.5\",\"dof\":\"12.5\",\"source\":\"y\"}],\"studies\":[{"
        "\"name\":\"s\",\"method\":\"m\",\"unit\":\"mm\",\"pieces\":[\"1\",\"2\"],\"people\":[\"A\",\"B\"],"
        "\"repeats\":\"3\",\"seed\":\"7\",\"band\":\"0.02\",\"at\":\"2026-05-04T09:12:33Z\",\"note\":\"n\"}],"
        "\"study_readings\":[{\"study\":\"s\",\"piece\":\"1\",\"person\":\"A\",\"trial\":\"3\",\"value\":\"1."
        "5\",\"typed\":\"1,5\"}]}",
  START
  ",\"features\":[{\"balloon\":\"1\",\"lower\":\"1\",\"places\":2,\"counts\":\"combined\",\"form_unseen\":"
  "\"0.002\"}],\"pieces\":[{\"serial\":\"1\"}],\"pin_trials\":[{\"piece\":\"1\",\"feature\":\"1\",\"place\":"
  "2,\"size\":\"1\",\"measured\":\"1.0001\",\"gauge\":\"P\",\"overdue_reason\":\"r\",\"went\":false}],"
  "\"readings\":[{\"piece\":\"1\",\"feature\":\"1\",\"value\":\"1\",\"overdue_reason\":\"no other\"}]}",
  "{\"format\":\"tenthmark-job\",\"version\":1,\"job\":{\"part_number\":\"P\",\"unit\":\"mm\",\"part_temp_"
  "limit\":\"2\","
  "\"gauge_temp_limit\":\"2\",\"thermometer\":\"0.5\",\"expansion\":\"23.6\",\"entry_clearance\":\"0.001\","
  "\"drift_rule\":"
  "\"ask\",\"drift_limit\":\"0.5\",\"check_hours\":\"8\"}}",
  START
  ",\"gauges\":[{\"tag\":\"g\",\"blocks\":\"1.001-1.009 by "
  "0.001\"}],\"tools\":[{\"name\":\"t\",\"unit\":\"in\",\"reads\":\"radius\",\"graduation\":\"0.001\","
  "\"least_cut\":\"0.0005\",\"backlash\":\"0.01\",\"spring_passes\":2,\"note\":\"n\"}],\"materials\":[{"
  "\"name\":\"m\",\"modulus\":\"105\",\"poisson\":\"0.34\",\"yield\":\"150\",\"expansion\":\"18\",\"cold\":"
  "\"16.5\",\"plastic\":true,\"source\":\"s\"}]}",
  START
  ",\"features\":[{\"balloon\":\"1\",\"kind\":\"bore\",\"lower\":\"25\",\"upper\":\"25.021\",\"tool\":\"t\","
  "\"mate\":{\"wanted_least\":\"-0.03\",\"wanted_most\":\"-0.01\",\"q\":1},\"press\":{\"length\":\"20\","
  "\"hub_"
  "outside\":\"50\",\"shaft_inside\":\"10\",\"hub_material\":\"m\",\"friction_least\":\"0.08\",\"friction_"
  "most\":\"0.15\",\"hub_roughness\":\"3.2\",\"gap\":\"0.02\",\"q\":2}}],\"pieces\":[{\"serial\":\"1\"}],"
  "\"mates\":[{\"feature\":\"1\",\"serial\":\"B\",\"smallest\":\"25.02\",\"largest\":\"25.03\","
  "\"uncertainty\":\"0.002\",\"piece\":\"1\",\"place\":1}],\"readings\":[{\"id\":\"1\",\"piece\":\"1\","
  "\"feature\":\"1\",\"value\":\"24.9\"}],\"cuts\":[{\"piece\":\"1\",\"feature\":\"1\",\"dialled\":\"0.1\","
  "\"reads\":\"radius\",\"place\":1,\"tool\":\"t\",\"after\":\"1\",\"note\":\"n\"}]}",
  "{\"format\":\"tenthmark-job\",\"version\":1,\"job\":{\"part_number\":\"P\",\"unit\":\"mm\",\"cut_risk\":"
  "\"0."
  "001\",\"cut_aim\":\"proven\"}}",
  NULL,
};

static void
check_error (const GError *error)
{
  g_assert_nonnull (error);
  g_assert_true (error->domain == TM_EXCHANGE_ERROR);
  g_assert_true (g_str_has_prefix (error->message, "f: "));
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  g_assert_null (strpbrk (error->message, "\n\r\t"));
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (GError) error = NULL;
  g_auto (TmJobNotes) notes = { 0 };
  g_autoptr (TmJob) job = tm_job_from_bytes ((const char *)data, size, "f", &notes, NULL, NULL, &error);
  g_autoptr (TmJob) again = NULL;
  g_autoptr (GString) first = NULL;
  g_autoptr (GString) second = NULL;

  if (job == NULL)
    {
      check_error (error);
      return 0;
    }
  g_assert_no_error (error);
  first = tm_job_to_string (job);
  again = tm_job_from_bytes (first->str, first->len, "f", NULL, NULL, NULL, &error);
  if (again == NULL)
    g_error ("%s\n%s", error->message, first->str);
  second = tm_job_to_string (again);
  g_assert_cmpstr (first->str, ==, second->str);
  return 0;
}
