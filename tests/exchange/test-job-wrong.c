/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Wrong job files: each is refused whole, in one line that names the file, the place and the mend.
 */

#include "exchange-job.h"
#include "support-job-text.h"
#include "wrong-support.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

static const Wrong documents[] = {
  { "", NO_JSON, "", "open one" },
  { " \n ", NO_JSON, "", "open one" },
  { "{\"format\": \"tenthmark-job\",\n \"version\": 1,\n \"job\": {\"part_nu", NO_JSON, "line 3",
    "fetch it again" },
  { TM_TEST_JOB_MM, NO_JSON, "line 1", "fetch it again" },
  { TM_TEST_JOB_MM ",\n\"x\": 12", NO_JSON, "line 2", "fetch it again" },
  { TM_TEST_JOB_MM "}\n}", NO_JSON, "line 2", "take it out" },
  { TM_TEST_JOB_MM "} // done", NO_JSON, "line 1", "take it out" },
  { "{\"format\": \"tenthmark-job\",\n \"version\": 1,,}", NO_JSON, "line 2", "comma" },
  { "{\"format\": \"tenthmark-job\", \"version\": 1, \"job\": {\"part_number\": \"a\tb\"}}", NO_JSON,
    "line 1", "quotation" },
  { "{\"format\": \"tenthmark-job\", \"version\": 1,\n \"job\": {\"part_number\": \"\xb1\"}}", NO_JSON,
    "line 2", "UTF-8" },
  { "{\"format\": \"tenthmark-job\", \"version\": 1,\n \"job\": {\"part_number\": \"\xc0\x80\"}}", NO_JSON,
    "line 2", "UTF-8" },
  { "\xef\xbb\xbf" TM_TEST_JOB_MM "}", NO_JSON, "", "without one" },
  { "PK\x03\x04", NO_JSON, "line 1", "JSON" },
  { "[1, 2]", NO_JOB, "", "open a file" },
  { "12", NO_JOB, "", "open a file" },
  { "{}", NO_JOB, "", "open a file" },
  { "{\"job\": 5}", NO_JOB, "", "open a file" },
  { "{\"format\": \"other\", \"version\": 1}", NO_JOB, "format", "open a file" },
  { "{\"format\": \"tenthmark-job\", \"version\": 2, \"job\": []}", TM_EXCHANGE_ERROR_NEWER, "version",
    "update" },
  { "{\"job\": [], \"version\": 2, \"format\": \"tenthmark-job\"}", TM_EXCHANGE_ERROR_NEWER, "version",
    "update" },
  { "{\"format\": \"tenthmark-job\", \"version\": 0}", BAD, "version", "write 1" },
  { "{\"format\": \"tenthmark-job\", \"version\": \"1\"}", BAD, "version", "without quotation marks" },
  { "{\"format\": \"tenthmark-job\", \"version\": 1.0}", BAD, "version", "whole number" },
  { "{\"format\": \"tenthmark-job\", \"version\": -1}", BAD, "version", "whole number" },
  { "{\"format\": \"tenthmark-job\", \"job\": {\"part_number\": \"P\", \"unit\": \"mm\"}}", MISSING,
    "version", "add it" },
  { "{\"format\": \"tenthmark-job\", \"version\": 1}", MISSING, "job", "add it" },
  { "{\"format\": \"tenthmark-job\", \"version\": 1, \"version\": 1}", BAD, "version", "keep one" },
  { TM_TEST_JOB_MM ", \"pieces\": [], \"pieces\": []}", BAD, "pieces", "keep one" },
  { TM_TEST_JOB_MM ", \"pieces\": {}}", BAD, "pieces", "[{" },
  { TM_TEST_JOB_MM ", \"pieces\": \"001\"}", BAD, "pieces", "[{" },
  { TM_TEST_JOB_MM ", \"pieces\": [\"001\"]}", BAD, "pieces[0]", "{" },
  { TM_TEST_JOB_MM ", \"pieces\": [[]]}", BAD, "pieces[0]", "{" },
  { TM_TEST_JOB_MM ", \"pieces\": null}", BAD, "pieces", "leave out" },
};

static const Wrong rows[] = {
  { "\"job\": {\"unit\": \"mm\"}", MISSING, "job.part_number", "write" },
  { "\"job\": {\"part_number\": \"P\"}", MISSING, "job.unit", "mm or in" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"cm\"}", BAD, "job.unit", "mm, in" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"um\"}", BAD, "job.unit", "mm, in" },
  { "\"job\": {\"part_number\": 12, \"unit\": \"mm\"}", BAD, "job.part_number", "quotation marks" },
  { "\"job\": {\"part_number\": null, \"unit\": \"mm\"}", BAD, "job.part_number", "leave out" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"unit\": \"in\"}", BAD, "job.unit", "keep one" },
  { "\"job\": {\"part_number\": \"P\\u0000\", \"unit\": \"mm\"}", BAD, "job.part_number", "take it out" },
  { "\"job\": {\"part_number\": \"P\\ud800\", \"unit\": \"mm\"}", BAD, "job.part_number",
    "write the character" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"standard\": \"DIN\"}", BAD, "job.standard",
    "ISO, ASME" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"decision\": \"x\"}", BAD, "job.decision",
    "guarded, simple" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"simple_ratio\": \"0\"}", BAD, "job.simple_ratio",
    "like 4" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"simple_ratio\": 4}", BAD, "job.simple_ratio",
    "quotation marks" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"first_article\": \"full\"}", BAD,
    "job.first_article", "{" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"first_article\": {\"kind\": \"half\"}}", BAD,
    "job.first_article.kind", "full, partial" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"part_temp_limit\": \"-1\"}", BAD,
    "job.part_temp_limit", "without the sign" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"gauge_temp_limit\": \"-1\"}", BAD,
    "job.gauge_temp_limit", "without the sign" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"thermometer\": \"-0.5\"}", BAD, "job.thermometer",
    "without the sign" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"expansion\": \"x\"}", BAD, "job.expansion",
    "25.012" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"entry_clearance\": \"-0.001\"}", BAD,
    "job.entry_clearance", "without the sign" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"drift_rule\": \"shrug\"}", BAD, "job.drift_rule",
    "ask" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"drift_limit\": \"0\"}", BAD, "job.drift_limit",
    "like 0.5" },
  { "\"job\": {\"part_number\": \"P\", \"unit\": \"mm\", \"check_hours\": \"0\"}", BAD, "job.check_hours",
    "like 8" },
  { "\"people\": [{\"name\": \"x\"}]", MISSING, "people[0].initials", "give it" },
  { "\"people\": [{\"initials\": \"A\"}, {\"initials\": \"A\"}]", BAD, "people[1].initials",
    "choose another" },
  { "\"gauges\": [{\"tag\": \"\"}]", MISSING, "gauges[0].tag", "give it" },
  { "\"gauges\": [{\"tag\": \"a\", \"unit\": \"um\"}]", BAD, "gauges[0].unit", "mm, in" },
  { "\"gauges\": [{\"tag\": \"a\", \"resolution\": \"x\"}]", BAD, "gauges[0].resolution", "25.012" },
  { "\"gauges\": [{\"tag\": \"a\", \"error_limit\": \"-0.001\"}]", BAD, "gauges[0].error_limit",
    "without the sign" },
  { "\"gauges\": [{\"tag\": \"a\", \"due\": \"2027-02-29\"}]", BAD, "gauges[0].due", "2026-05-04" },
  { "\"gauges\": [{\"tag\": \"a\", \"due\": \"29.2.2028\"}]", BAD, "gauges[0].due", "2026-05-04" },
  { "\"gauges\": [{\"tag\": \"a\"}, {\"tag\": \"a\"}]", BAD, "gauges[1].tag", "choose another" },
  { "\"methods\": [{\"name\": \"m\", \"gauges\": [\"no\"]}]", BAD, "methods[0].gauges", "no such gauge" },
  { "\"methods\": [{\"name\": \"m\"}]", BAD, "methods[0].gauges", "tags" },
  { "\"methods\": [{\"name\": \"m\", \"gauges\": \"a\"}]", BAD, "methods[0].gauges", "[\"a\"" },
  { "\"methods\": [{\"name\": \"m\", \"gauges\": [1]}]", BAD, "methods[0].gauges[0]", "quotation marks" },
  { "\"pieces\": [{\"serial\": \"1\", \"first_article\": \"yes\"}]", BAD, "pieces[0].first_article",
    "true or false" },
  { "\"pieces\": [{\"serial\": \"1\"}, {\"serial\": \"1\"}]", BAD, "pieces[1].serial", "choose another" },
  { "\"events\": [{\"kind\": \"flood\"}]", BAD, "events[0].kind", "tool, offset, lot, other" },
  { "\"events\": [{\"kind\": \"offset\", \"amount\": \"much\"}]", BAD, "events[0].amount", "25.012" },
  { "\"events\": [{\"kind\": \"tool\", \"at\": \"noon\"}]", BAD, "events[0].at", "2026-05-04T" },
  { "\"events\": [{\"kind\": \"tool\", \"tool\": 3}]", BAD, "events[0].tool", "quotation marks" },
  { "\"pieces\": [{\"serial\": \"1\", \"disposition\": \"eat\"}]", BAD, "pieces[0].disposition",
    "hold, measure, release, scrap" },
  { "\"tools\": [{\"name\": \"b\", \"unit\": \"mm\", \"offset_step\": \"-0.001\"}]", BAD,
    "tools[0].offset_step", "above zero" },
  { "\"tools\": [{\"name\": \"b\", \"unit\": \"mm\", \"offset_step\": \"0\"}]", BAD, "tools[0].offset_step",
    "above zero" },
  { "\"signatures\": [{\"digest\": \"abc\"}]", BAD, "signatures[0].digest", "64 digits" },
  { "\"signatures\": [{\"pages\": \"abc\"}]", BAD, "signatures[0].pages", "64 digits" },
  { "\"supplies\": [{\"kind\": \"paint\"}]", BAD, "supplies[0].kind", "material, process, test" },
  { "\"supplies\": [{\"kind\": \"test\", \"approval\": \"maybe\"}]", BAD, "supplies[0].approval",
    "yes, no, not asked" },
  { "\"sub_parts\": [{\"number\": 7}]", BAD, "sub_parts[0].number", "quotation marks" },
  { "\"drawings\": [{\"media\": \"image/png\", \"content\": \"AAAA\"}]", MISSING, "drawings[0].name",
    "give it" },
  { "\"drawings\": [{\"name\": \"a\", \"media\": \"text/html\", \"content\": \"AAAA\"}]", BAD,
    "drawings[0].media", "image/png, image/jpeg" },
  { "\"drawings\": [{\"name\": \"a\", \"media\": \"image/png\"}]", MISSING, "drawings[0].content", "base64" },
  { "\"drawings\": [{\"name\": \"a\", \"media\": \"image/png\", \"content\": \"A AA=\"}]", BAD,
    "drawings[0].content", "base64" },
  { "\"drawings\": [{\"name\": \"a\", \"media\": \"image/png\", \"content\": \"AAAA\", \"digest\": "
    "\"0123456789012345678901234567890123456789012345678901234567890123\"}]",
    BAD, "drawings[0].digest", "altered" },
  { "\"drawings\": [{\"name\": \"a\", \"media\": \"image/png\", \"page\": 0, \"content\": \"AAAA\"}]", BAD,
    "drawings[0].page", "1" },
  { "\"balloons\": [{\"drawing\": \"a\", \"feature\": \"9\", \"x\": \"0\", \"y\": \"0\"}]", BAD,
    "balloons[0].feature", "add the feature" },
  { "\"balloons\": [{\"drawing\": \"a\", \"feature\": \"9\", \"x\": \"1.1\", \"y\": \"0\"}]", BAD,
    "balloons[0].x", "outside the page" },
  { "\"balloons\": [{\"drawing\": \"a\", \"feature\": \"9\", \"x\": \"1\"}]", MISSING, "balloons[0].y",
    "from 0 to 1" },
  { "\"balloons\": [{\"drawing\": \"a\", \"feature\": \"9\", \"x\": \"1\", \"y\": \"0\", \"to_y\": "
    "\"0\"}]",
    MISSING, "balloons[0].to_x", "the other one" },
  { "\"nonconformances\": [{\"rework_at\": \"soon\"}]", BAD, "nonconformances[0].rework_at", "2026-05-04T" },
  { "\"nonconformances\": [{\"rework_after\": \"3\"}]", BAD, "nonconformances[0].rework_after", "rework_at" },
};

static const Wrong features[] = {
  { "{\"kind\": \"bore\", \"requirement\": \"Ø25 H7\"}", MISSING, "features[0].balloon", "give it" },
  { "{\"balloon\": \"1\", \"kind\": \"hole\"}", BAD, "features[0].kind", "bore, shaft" },
  { "{\"balloon\": \"1\"}", MISSING, "features[0]", "requirement nor limits" },
  { "{\"balloon\": \"1\", \"name\": \"Seat\"}", MISSING, "features[0]", "requirement nor limits" },
  { "{\"balloon\": \"1\", \"kind\": \"bore\"}", MISSING, "features[0]", "requirement nor limits" },
  { "{\"balloon\": \"1\", \"kind\": \"bore\", \"upper\": \"25,0x\"}", BAD, "features[0].upper", "use mm" },
  { "{\"balloon\": \"1\", \"kind\": \"bore\", \"upper\": 25.1}", BAD, "features[0].upper", "decimals too" },
  { "{\"balloon\": \"1\", \"kind\": \"bore\", \"upper\": \"1e3\"}", BAD, "features[0].upper", "unit" },
  { "{\"balloon\": \"1\", \"kind\": \"bore\", \"upper\": \"0.0000000000001\"}", BAD, "features[0].upper",
    "fewer digits" },
  { "{\"balloon\": \"1\", \"lower\": \"2\", \"upper\": \"1\"}", BAD, "features[0].lower", "swap" },
  { "{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\", \"lower\": \"25.001\"}", DIFFERS, "features[0].lower",
    "gives 25.000 to 25.021, the file gives 25.001" },
  { "{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\", \"upper\": \"25.020\"}", DIFFERS, "features[0].upper",
    "correct one" },
  { "{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\", \"nominal\": \"26\"}", DIFFERS, "features[0].nominal",
    "the file gives 26" },
  { "{\"balloon\": \"1\", \"requirement\": \"12 max\", \"lower\": \"1\"}", DIFFERS, "features[0].lower",
    "no lower limit" },
  { "{\"balloon\": \"1\", \"kind\": \"hardness\", \"requirement\": \"Ø25 H7\"}", DIFFERS, "features[0].kind",
    "reads as bore" },
  { "{\"balloon\": \"1\", \"kind\": \"shaft\", \"requirement\": \"Ø25 H7\"}", DIFFERS, "features[0].kind",
    "reads as bore" },
  { "{\"balloon\": \"1\", \"kind\": \"angle\", \"unit\": \"mm\", \"lower\": \"1\"}", BAD, "features[0].unit",
    "deg" },
  { "{\"balloon\": \"1\", \"requirement\": \"90° ±0.5°\", \"unit\": \"mm\"}", BAD, "features[0].unit",
    "deg" },
  { "{\"balloon\": \"1\", \"unit\": \"thou\", \"lower\": \"1\"}", BAD, "features[0].unit", "mm, in" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"places\": 0}", BAD, "features[0].places",
    "1 to 1000" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"places\": \"2\"}", BAD, "features[0].places",
    "without quotation" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"places\": 99999999999}", BAD, "features[0].places",
    "like 4" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"class\": \"major\"}", BAD, "features[0].class",
    "critical, key" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"chart_rules\": \"beyond-3s 3-of-2\"}", BAD,
    "features[0].chart_rules", "“3-of-2” is no run rule; write some of beyond-3s, 2-of-3-beyond-2s" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"chart_baseline\": -1}", BAD,
    "features[0].chart_baseline", "from 0" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"check\": \"every 0\"}", BAD, "features[0].check",
    "every 5" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"cut\": \"up\"}", BAD, "features[0].cut",
    "grows, shrinks" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"envelope\": 1}", BAD, "features[0].envelope",
    "true or false" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"stations\": [\"mouth/13\"]}", BAD,
    "features[0].stations", "mouth/12" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"stations\": [\"mouth\", \"mouth\"]}", BAD,
    "features[0].stations", "keep one" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"mate\": {\"lower\": \"2\", \"upper\": \"1\"}}", BAD,
    "features[0].mate.lower", "swap" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"mate\": {\"kind\": 1}}", BAD, "features[0].mate.kind",
    "quotation" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"counts\": \"mean\"}", BAD, "features[0].counts",
    "combined" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"form_unseen\": \"-0.01\"}", BAD,
    "features[0].form_unseen", "without the sign" },
  { "{\"balloon\": \"1\", \"kind\": \"angle\", \"requirement\": \"90° ±1°\", \"form_unseen\": \"0.01\"}", BAD,
    "features[0].form_unseen", "take it out" },
  { "{\"balloon\": \"1\", \"requirement\": \"5 ±1\", \"mate\": []}", BAD, "features[0].mate", "{" },
  { "{\"balloon\": \"1\", \"requirement\": \"a\"}, {\"balloon\": \"1\", \"requirement\": \"b\"}", BAD,
    "features[1].balloon", "choose another" },
};

static const Wrong readings[] = {
  { "{\"feature\": \"1\", \"value\": \"25.01\"}", MISSING, "readings[0].piece", "name the piece" },
  { "{\"piece\": \"001\", \"value\": \"25.01\"}", MISSING, "readings[0].feature", "balloon" },
  { "{\"piece\": \"003\", \"feature\": \"1\", \"value\": \"25.01\"}", BAD, "readings[0].piece", "“003”" },
  { "{\"piece\": \"001\", \"feature\": \"9\", \"value\": \"25.01\"}", BAD, "readings[0].feature", "“9”" },
  { "{\"piece\": \"001\", \"feature\": \"1\"}", MISSING, "readings[0].value", "write what was read" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25.0.1\"}", BAD, "readings[0].value",
    "thousands" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": 25.01}", BAD, "readings[0].value", "decimals too" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": [\"25.01\"]}", BAD, "readings[0].value",
    "decimals too" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25 deg\"}", BAD, "readings[0].value", "unit" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"pass\"}", BAD, "readings[0].value", "25.012" },
  { "{\"piece\": \"001\", \"feature\": \"3\", \"value\": \"25\"}", BAD, "readings[0].value", "pass or fail" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\", \"place\": 2}", BAD, "readings[0].place",
    "1 place" },
  { "{\"piece\": \"001\", \"feature\": \"2\", \"value\": \"0.1\", \"place\": 0}", BAD, "readings[0].place",
    "4 places" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\", \"station\": \"top\"}", BAD,
    "readings[0].station", "mouth/12" },
  { "{\"piece\": \"001\", \"feature\": \"2\", \"dx\": \"0.1\"}", MISSING, "readings[0].dy", "both" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"dx\": \"0.1\", \"dy\": \"0\"}", BAD, "readings[0].dx",
    "position" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\", \"at\": \"2026-05-04 09:12\"}", BAD,
    "readings[0].at", "UTC" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\", \"at\": \"2026-05-04T24:00:00Z\"}", BAD,
    "readings[0].at", "UTC" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\", \"part_temp\": \"hot\"}", BAD,
    "readings[0].part_temp", "25.012" },
  { "{\"id\": \"1\", \"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\"}, "
    "{\"id\": \"1\", \"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\"}",
    BAD, "readings[1].id", "choose another" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\", \"replaces\": \"5\", \"reason\": \"r\"}",
    BAD, "readings[0].replaces", "not there" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\"}, "
    "{\"piece\": \"002\", \"feature\": \"1\", \"value\": \"25\", \"replaces\": \"1\", \"reason\": \"r\"}",
    BAD, "readings[1].replaces", "another piece" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\"}, "
    "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\", \"replaces\": \"1\"}",
    BAD, "readings[1].reason", "reason" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\", \"withdrawn\": {\"reason\": \"r\"}}, "
    "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\", \"replaces\": \"1\", \"reason\": \"r\"}",
    BAD, "readings[1].replaces", "withdrawn already" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\", \"withdrawn\": {}}", MISSING,
    "readings[0].withdrawn.reason", "write it" },
  { "{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25\", \"withdrawn\": {\"reason\": \"r\", \"at\": "
    "\"now\"}}",
    BAD, "readings[0].withdrawn.at", "UTC" },
};

static const Wrong trials[] = {
  { "\"pin_trials\": [{\"piece\": \"001\", \"feature\": \"1\", \"went\": true}]", MISSING,
    "pin_trials[0].size", "size" },
  { "\"pin_trials\": [{\"piece\": \"001\", \"feature\": \"1\", \"size\": \"25\"}]", MISSING,
    "pin_trials[0].went", "true" },
  { "\"pin_trials\": [{\"piece\": \"001\", \"feature\": \"1\", \"size\": \"25\", \"went\": true, \"class\": "
    "\"A\"}]",
    BAD, "pin_trials[0].class", "XXX" },
  { "\"pin_trials\": [{\"piece\": \"001\", \"feature\": \"3\", \"size\": \"25\", \"went\": true}]", BAD,
    "pin_trials[0].size", "no size" },
  { "\"pin_trials\": [{\"piece\": \"001\", \"feature\": \"1\", \"place\": 2, \"size\": \"25\", \"went\": "
    "true}]",
    BAD, "pin_trials[0].place", "1 place" },
  { "\"pin_trials\": [{\"piece\": \"001\", \"feature\": \"1\", \"size\": \"25\", \"went\": true, "
    "\"measured\": \"x\"}]",
    BAD, "pin_trials[0].measured", "25.012" },
  { "\"cuts\": [{\"piece\": \"001\", \"feature\": \"1\"}]", MISSING, "cuts[0].dialled", "size" },
  { "\"cuts\": [{\"piece\": \"001\", \"feature\": \"1\", \"dialled\": \"1\", \"passes\": 5000}]", BAD,
    "cuts[0].passes", "0 to 1000" },
};

static void
test_documents (void)
{
  check_all ("", documents, G_N_ELEMENTS (documents), "");
}

static void
test_rows (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const char *before = g_str_has_prefix (rows[i].text, "\"job\"")
                               ? "{\"format\": \"tenthmark-job\", \"version\": 1, "
                               : TM_TEST_JOB_MM ", ";

      check_all (before, &rows[i], 1, "}");
    }
}

static void
test_features (void)
{
  check_all (TM_TEST_JOB_MM ", \"features\": [", features, G_N_ELEMENTS (features), "]}");
}

static void
test_readings (void)
{
  check_all (TM_TEST_JOB_MM TM_TEST_FEATURES TM_TEST_PIECES ", \"readings\": [", readings,
             G_N_ELEMENTS (readings), "]}");
}

static void
test_trials (void)
{
  check_all (TM_TEST_JOB_MM TM_TEST_FEATURES TM_TEST_PIECES ", ", trials, G_N_ELEMENTS (trials), "}");
}

/* A document nested @depth deep in an unknown member is refused beyond 32, and kept up to it. */
static void
test_depth (void)
{
  for (gsize depth = 30; depth <= 34; depth++)
    {
      g_autofree char *open = g_strnfill (depth - 1, '[');
      g_autofree char *close = g_strnfill (depth - 1, ']');
      g_autofree char *text = g_strconcat (TM_TEST_JOB_MM ", \"x\": ", open, close, "}", NULL);
      g_autoptr (GError) error = NULL;
      g_autoptr (TmJob) job = tm_job_from_bytes (text, strlen (text), "part.tmjob", NULL, NULL, NULL, &error);

      if (depth <= 32)
        g_assert_no_error (error);
      else
        g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_TOO_DEEP);
      g_assert_true ((job != NULL) == (depth <= 32));
    }
}

/* A million brackets must neither recurse nor take long. */
static void
test_very_deep (void)
{
  g_autofree char *open = g_strnfill (1000000, '[');
  g_autofree char *text = g_strconcat (TM_TEST_JOB_MM ", \"readings\": ", open, NULL);
  g_autoptr (GError) error = NULL;

  g_assert_null (tm_job_from_bytes (text, strlen (text), "part.tmjob", NULL, NULL, NULL, &error));
  g_assert_nonnull (error);
}

/* Every prefix of a job file is refused: nothing cut short is taken for whole. */
static void
test_cut_short (void)
{
  static const char text[]
      = TM_TEST_READINGS ("{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25.010\"}");

  for (gsize length = 0; length < strlen (text); length++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (tm_job_from_bytes (text, length, "part.tmjob", NULL, NULL, NULL, &error));
      g_assert_nonnull (error);
      g_assert_cmpint (error->domain, ==, TM_EXCHANGE_ERROR);
    }
}

static void
test_files (void)
{
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-XXXXXX", NULL);
  g_autofree char *missing = g_build_filename (folder, "none.tmjob", NULL);
  g_autofree char *large = g_build_filename (folder, "large.tmjob", NULL);
  g_autoptr (GError) error = NULL;
  FILE *file = g_fopen (large, "w");

  g_assert_null (tm_job_from_file (missing, NULL, NULL, NULL, &error));
  g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_IO);
  g_assert_nonnull (strstr (error->message, missing));
  g_assert_nonnull (strstr (error->message, "check the name"));
  g_clear_error (&error);
  g_assert_null (tm_job_from_file (folder, NULL, NULL, NULL, &error));
  g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_IO);
  g_clear_error (&error);
  /* A 100 MB file, with a hole in it, so that it takes no room. */
  g_assert_nonnull (file);
  g_assert_cmpint (ftruncate (fileno (file), 100 * 1000 * 1000 + 1024 * 1024), ==, 0);
  fclose (file);
  g_assert_null (tm_job_from_file (large, NULL, NULL, NULL, &error));
  g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_TOO_LARGE);
  g_assert_nonnull (strstr (error->message, large));
  g_assert_nonnull (strstr (error->message, "96 MiB"));
  g_unlink (large);
  g_rmdir (folder);
}

/* Bytes are looked at eight at a time: a wrong one is found wherever it stands. */
static void
test_wrong_byte_anywhere (void)
{
  static const char text[] = TM_TEST_JOB_MM ",\n\"note\": \"\xc2\xb1 0.1\"}";
  static const char wrong[] = { '\0', '\xb1', '\xff' };

  for (gsize at = 0; at < sizeof text - 1; at++)
    for (gsize i = 0; i < sizeof wrong; i++)
      {
        g_autofree char *bytes = g_memdup2 (text, sizeof text);
        g_autoptr (GError) error = NULL;

        /* after the first byte of a character this one is right */
        if (wrong[i] == '\xb1' && at > 0 && text[at - 1] == '\xc2')
          continue;
        bytes[at] = wrong[i];
        g_assert_null (tm_job_from_bytes (bytes, sizeof text - 1, "part.tmjob", NULL, NULL, NULL, &error));
        g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_NOT_JSON);
        g_assert_nonnull (strstr (error->message, "UTF-8"));
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/job-wrong/documents", test_documents);
  g_test_add_func ("/exchange/job-wrong/rows", test_rows);
  g_test_add_func ("/exchange/job-wrong/features", test_features);
  g_test_add_func ("/exchange/job-wrong/readings", test_readings);
  g_test_add_func ("/exchange/job-wrong/trials", test_trials);
  g_test_add_func ("/exchange/job-wrong/depth", test_depth);
  g_test_add_func ("/exchange/job-wrong/very-deep", test_very_deep);
  g_test_add_func ("/exchange/job-wrong/cut-short", test_cut_short);
  g_test_add_func ("/exchange/job-wrong/files", test_files);
  g_test_add_func ("/exchange/job-wrong/byte-anywhere", test_wrong_byte_anywhere);
  return g_test_run ();
}
