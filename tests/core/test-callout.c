/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sizes and their tolerances as drawings write them, and what must stay a note.
 *
 * Sources: the forms are those of ISO 129-1, ISO 286-1, ISO 1101, ISO 14405-1, ISO 2768-1 and
 * ASME Y14.5 (common practice where two ways of writing are in use); ISO 286 limits were compared
 * with published tables in test-iso286.
 */

#include "callout-support.h"

static const Row class_rows[] = {
  { "Ø25 H7", "bore mm 25 [25.000 25.021] grows" },
  { "25 H7", "bore mm 25 [25.000 25.021] grows" },
  { "25H7", "bore mm 25 [25.000 25.021] grows" },
  { "⌀25H7", "bore mm 25 [25.000 25.021] grows" },
  { "ø 25 H7", "bore mm 25 [25.000 25.021] grows" },
  { "dia 25 H7", "bore mm 25 [25.000 25.021] grows" },
  { "DIA. 25 H7", "bore mm 25 [25.000 25.021] grows" },
  { "Ø25.00 H7", "bore mm 25.00 [25.000 25.021] grows" },
  { "25,0 H7", "bore mm 25.0 [25.000 25.021] grows" },
  { "25 mm H7", "bore mm 25 [25.000 25.021] grows" },
  { "25 H7 mm", "bore mm 25 [25.000 25.021] grows" },
  { "Ø25 h6", "shaft mm 25 [24.987 25.000] shrinks" },
  { "Ø25 g6", "shaft mm 25 [24.980 24.993] shrinks" },
  { "25 p6", "shaft mm 25 [25.022 25.035] shrinks" },
  { "Ø25 JS7", "bore mm 25 [24.9895 25.0105] grows" },
  { "25 js13", "shaft mm 25 [24.835 25.165] shrinks" },
  { "8 N9", "bore mm 8 [7.964 8.000] grows" },
  { "Ø25 X7", "bore mm 25 [24.923 24.944] grows" },
  { "25 x6", "shaft mm 25 [25.064 25.077] shrinks" },
  { "Ø100 ZC8", "bore mm 100 [99.361 99.415] grows" },
  { "ID 25 H7", "bore mm 25 [25.000 25.021] grows" },
  { "bore Ø25 H7", "bore mm 25 [25.000 25.021] grows" },
  { "OD 25 h6", "shaft mm 25 [24.987 25.000] shrinks" },
  { "OD 25 H7", "note: not read" }, /* a shaft with the class of a hole */
  { "ID 25 h6", "note: not read" },
  { "2X Ø6 H7", "bore mm 6 [6.000 6.012] x2 grows" },
  { "Ø25 H7 Ⓔ", "bore mm 25 [25.000 25.021] envelope grows" },
  { "Ø25 H7 E", "bore mm 25 [25.000 25.021] envelope grows" },
  { "Ø25 H7 (E)", "bore mm 25 [25.000 25.021] envelope grows" },
  { "25 h6Ⓔ", "shaft mm 25 [24.987 25.000] envelope shrinks" },
  { "Ø25 H7 THRU", "bore mm 25 [25.000 25.021] grows" },
  { "Ø25 H7 (+0.021/0)", "bore mm 25 [25.000 25.021] grows" },
  { "Ø25 H7 +0.021/0", "bore mm 25 [25.000 25.021] grows" },
  { "Ø25 H7 (+21/0 µm)", "bore mm 25 [25.000 25.021] grows" },
  { "Ø25 H7 (25.021/25.000)", "bore mm 25 [25.000 25.021] grows" },
  { "Ø25 H7 (25.000-25.021)", "bore mm 25 [25.000 25.021] grows" },
  { "Ø600 H7", "bore mm 600 [600.000 600.070] grows" },
  { "Ø25 H7 (+0.025/0)", "note: not read" }, /* not what the class gives */
  { "Ø25 H7 (25.000/25.025)", "note: not read" },
  { "Ø25 H7 (+0.021/0", "note: not read" },
  { "Ø25 K9", "note: class unknown" },
  { "Ø25 j8", "note: class unknown" },
  { "20 t6", "note: class unknown" },
  { "1 A9", "note: class unknown" },
  { "25 Q7", "note: class unknown" },
  { "25 H19", "note: class unknown" },
  { "25 Hh7", "note: class unknown" },
  { "4000 H7", "note: class unknown" },
  { "Ø5 C1", "note: class unknown" }, /* a hole and its chamfer */
  { "1 in H7", "note: unit wrong" },
  { "25 H 7", "note: not read" },
  { "Ø20 R3", "note: class unknown" }, /* a hole and its radius */
  { "Ø20 R7", "bore mm 20 [19.959 19.980] grows" },
  { "25 H7/p6", "note: not read" }, /* a fit of two parts is no requirement of one */
  { "25 H7 H8", "note: not read" },
  { "R25 H7", "note: not read" },
  { "25 H7 deep", "note: not read" },
  { "H7", "note: not read" },
};

static const Row tolerance_rows[] = {
  { "25.000/25.021", "length mm - [25.000 25.021]" },
  { "25.021/25.000", "length mm - [25.000 25.021]" },
  { "Ø25.000 / 25.021", "diameter mm - [25.000 25.021]" },
  { "25/25.1", "length mm - [25.0 25.1]" },
  { "24/26", "length mm - [24 26]" },
  { "0.1/0.5", "length mm - [0.1 0.5]" },
  { "25.000-25.021", "length mm - [25.000 25.021]" },
  { "25.000–25.021", "length mm - [25.000 25.021]" },
  { "25 - 26", "length mm - [25 26]" },
  { "25.000/25.021 mm", "length mm - [25.000 25.021]" },
  { "25 ±0.1", "length mm 25 [24.9 25.1]" },
  { "25±0.1", "length mm 25 [24.9 25.1]" },
  { "25 +/-0.1", "length mm 25 [24.9 25.1]" },
  { "25 +/- 0.1", "length mm 25 [24.9 25.1]" },
  { "25 + / - 0.1", "length mm 25 [24.9 25.1]" },
  { "25 +-0.1", "length mm 25 [24.9 25.1]" },
  { "25,5 ±0,1", "length mm 25.5 [25.4 25.6]" },
  { "25.000 ±0.1", "length mm 25.000 [24.900 25.100]" },
  { "25 mm ±0.1 mm", "length mm 25 [24.9 25.1]" },
  { "25 ±5 µm", "length mm 25 [24.995 25.005]" },
  { "25 +5/-10 um", "length mm 25 [24.990 25.005]" },
  { "25 +5 µm/-10 µm", "length mm 25 [24.990 25.005]" },
  { "25 ±.005 in", "length in 25 [24.995 25.005]" },
  { "1.25\" ±.005\"", "length in 1.25 [1.245 1.255]" },
  { "1.250 in ±5 thou", "length in 1.250 [1.245 1.255]" },
  { "25 +0.1/-0.2", "length mm 25 [24.8 25.1]" },
  { "25 +0.1 -0.2", "length mm 25 [24.8 25.1]" },
  { "25 -0.2 +0.1", "length mm 25 [24.8 25.1]" },
  { "25 −0.2/+0.1", "length mm 25 [24.8 25.1]" },
  { "25 +0.1/0", "length mm 25 [25.0 25.1]" },
  { "25 +0.1 0", "length mm 25 [25.0 25.1]" },
  { "25 0/-0.1", "length mm 25 [24.9 25.0]" },
  { "25 0 -0.1", "length mm 25 [24.9 25.0]" },
  { "25 +0.035/+0.022", "length mm 25 [25.022 25.035]" },
  { "25 -0.020 -0.041", "length mm 25 [24.959 24.980]" },
  { "25 +0.1", "length mm 25 [25.0 25.1]" },
  { "25 -0.1", "length mm 25 [24.9 25.0]" },
  { "25 - 0.1", "length mm 25 [24.9 25.0]" },
  { "25 +0.1-0.2", "length mm 25 [24.8 25.1]" },
  { "25+0.1-0.2", "length mm 25 [24.8 25.1]" },
  { "25 (±0.1)", "length mm 25 [24.9 25.1]" },
  { "25 (+0.1/-0.2)", "length mm 25 [24.8 25.1]" },
  { "25 (-0.1)", "length mm 25 [24.9 25.0]" },
  { "25 (-0.1/-0.3) Ⓔ", "length mm 25 [24.7 24.9] envelope" },
  { "24.9 to 25.1", "length mm - [24.9 25.1]" },
  { "0.2 +0.3/-0", "length mm 0.2 [0.2 0.5]" },
  { "0 ±0.1", "length mm 0 [-0.1 0.1]" }, /* a step */
  { "12 max", "length mm - [- 12]" },
  { "12 MAX.", "length mm - [- 12]" },
  { "max 12", "length mm - [- 12]" },
  { "≤ 12", "length mm - [- 12]" },
  { "<= 12", "length mm - [- 12]" },
  { "≥12.5", "length mm - [12.5 -]" },
  { "Ø12 min", "diameter mm - [12 -]" },
  { "12 min.", "length mm - [12 -]" },
  { "10 min 12 max", "length mm - [10 12]" },
  { "12 max / 10 min", "length mm - [10 12]" },
  { "R3 min", "length mm - [3 -]" },
  { "R0.5 max", "length mm - [- 0.5]" },
  { "MAX R 0,4", "length mm - [- 0.4]" },
  { "SR10 ±0.1", "length mm 10 [9.9 10.1]" },
  { "SØ10 ±0.1", "diameter mm 10 [9.9 10.1]" },
  { "OD 30 -0.01/-0.03", "shaft mm 30 [29.97 29.99] shrinks" },
  { "30 OD ±0.1", "shaft mm 30 [29.9 30.1] shrinks" },
  { "OD Ø30 ±0.1", "shaft mm 30 [29.9 30.1] shrinks" },
  { "shaft 30 ±0.1", "shaft mm 30 [29.9 30.1] shrinks" },
  { "ID 25.000/25.021", "bore mm - [25.000 25.021] grows" },
  { "2X hole 6.5 ±0.1", "bore mm 6.5 [6.4 6.6] x2 grows" },
  { "OD 30 ID ±0.1", "note: not read" },
  { "OD R5 ±0.1", "note: not read" },
  { "25 ±0.1 dia", "diameter mm 25 [24.9 25.1]" },
  { "25 DIA ±0.1", "diameter mm 25 [24.9 25.1]" },
  { "↧ 12 ±0.1", "depth mm 12 [11.9 12.1]" },
  { "12 ±0.1 deep", "depth mm 12 [11.9 12.1]" },
  { "depth 12 +0.2/0", "depth mm 12 [12.0 12.2]" },
  { "12 deep ±0.1", "depth mm 12 [11.9 12.1]" },
  { "1 ±0.1 x 45°", "length mm 1 [0.9 1.1]" },
  { "1x45° ±0.1", "length mm 1 [0.9 1.1]" },
  { "45° × 1 ±0.1", "length mm 1 [0.9 1.1]" },
  { "C1 ±0.1", "length mm 1 [0.9 1.1]" },
  { "Ø25 ±0.1 Ⓔ", "diameter mm 25 [24.9 25.1] envelope" },
  { "2.5 ±0.1 TYP", "length mm 2.5 [2.4 2.6]" },
  { "4X Ø6.5 ±0.1", "diameter mm 6.5 [6.4 6.6] x4" },
  { "4x Ø6.5 ±0.1", "diameter mm 6.5 [6.4 6.6] x4" },
  { "4× Ø6.5 ±0.1", "diameter mm 6.5 [6.4 6.6] x4" },
  { "4 X Ø6.5 ±0.1", "diameter mm 6.5 [6.4 6.6] x4" },
  { "4xØ6.5±0.1", "diameter mm 6.5 [6.4 6.6] x4" },
  { "4X 6.5 ±0.1", "length mm 6.5 [6.4 6.6] x4" },
  { "(4X) Ø6.5 ±0.1", "diameter mm 6.5 [6.4 6.6] x4" },
  { "Ø6.5 ±0.1 4X", "diameter mm 6.5 [6.4 6.6] x4" },
  { "Ø6.5 ±0.1 (4X)", "diameter mm 6.5 [6.4 6.6] x4" },
  { "Ø6.5 ±0.1 4 PLACES", "diameter mm 6.5 [6.4 6.6] x4" },
  { "6 holes Ø6.5 ±0.1 THRU ALL", "diameter mm 6.5 [6.4 6.6] x6" },
  { "R3 max 4X", "length mm - [- 3] x4" },
};

static const Row angle_rows[] = {
  { "90° ±0.5°", "angle deg 90 [89.5 90.5]" },
  { "90° ±0.5", "angle deg 90 [89.5 90.5]" },
  { "90 ±0.5°", "angle deg 90 [89.5 90.5]" },
  { "90 deg +/- 0.5 deg", "angle deg 90 [89.5 90.5]" },
  { "90º ±0.5º", "angle deg 90 [89.5 90.5]" },
  { "45° ±30'", "angle deg 45 [44.5 45.5]" },
  { "45° +30'/-0", "angle deg 45 [45.0 45.5]" },
  { "45°30' ±15'", "angle deg 45.5 [45.25 45.75]" },
  { "1°30'36\" ±36\"", "angle deg 1.51 [1.50 1.52]" },
  { "45° ±20'", "angle deg 45 [44.666667 45.333333]" }, /* thirds: inward */
  { "45°20' max", "angle deg - [- 45.333333]" },
  { "45°20' min", "angle deg - [45.333334 -]" },
  { "2X 45° ±1°", "angle deg 45 [44 46] x2" },
  { "89.5°/90.5°", "angle deg - [89.5 90.5]" },
  { "89.5-90.5°", "angle deg - [89.5 90.5]" },
  { "30° max", "angle deg - [- 30]" },
  { "400° ±1°", "note: not read" },
  { "45° ±1 mm", "note: unit wrong" },
  { "Ø45° ±1°", "note: not read" },
  { "45° ±1° Ⓔ", "note: not read" },
  { "5' ±0.1", "note: not read" }, /* minutes or feet */
};

static const Row inch_rows[] = {
  { "1.250 ±.005", "length in 1.250 [1.245 1.255]" },
  { ".875 +.001 -.000", "length in 0.875 [0.875 0.876]" },
  { "Ø.7500/.7505", "diameter in - [0.7500 0.7505]" },
  { "Ø.7505/.7500", "diameter in - [0.7500 0.7505]" },
  { ".250-.255", "length in - [0.250 0.255]" },
  { ".875 -.001", "length in 0.875 [0.874 0.875]" },
  { "1.250 ±5 tenths", "length in 1.250 [1.2495 1.2505]" },
  { "3/8 ±1/64", "length in 0.375 [0.359375 0.390625]" },
  { "1 3/16 +.005/-0", "length in 1.1875 [1.1875 1.1925]" },
  { "1-3/16 ±.01", "length in 1.1875 [1.1775 1.1975]" },
  { "3/8\" ±.010", "length in 0.375 [0.365 0.385]" },
  { "1/2 max", "length in - [- 0.5]" },
  { "R 1/8 ±1/64", "length in 0.125 [0.109375 0.140625]" },
  { "4X Ø.266 +.005/-.001 THRU", "diameter in 0.266 [0.265 0.271] x4" },
  { "Ra 32", "roughness uin - [- 32]" },
  { "63 µin Ra", "roughness uin - [- 63]" },
  { "Ra 0.8 µm", "roughness um - [- 0.8]" },
  { "25 mm ±0.1", "length mm 25 [24.9 25.1]" },
  { "25 mm H7", "bore mm 25 [25.000 25.021] grows" },
  { "25 H7 mm", "bore mm 25 [25.000 25.021] grows" },
  { "Ø1.0000 H7", "note: unit wrong" },
  { "1.000 ±0.1 mm", "length mm 1.000 [0.900 1.100]" },
  { "1.000 in ±0.1 mm", "note: unit wrong" },
  { "1.000 ±5 µm in", "note: not read" },
  { "9/8 ±.01", "note: not read" },
  { "3/7", "note: not read" },
  { "1/4-20 UNC-2B", "thread" },
  { "1/4-20", "thread" },
  { "#10-32 UNF-2B", "thread" },
  { "#4-40", "thread" },
  { "1/2-13 2B", "thread" },
  { "1/4-3/8", "note: not read" },
  { "10-32 UNF", "thread" },
  { ".250-28 UNF-2A", "thread" },
  { "4X #10-32 UNF-2B THRU", "thread x4" },
  { "1 1/2-6 ACME 2G", "thread" },
  { "1/8-27 NPT", "thread" },
  { "1/4 NPTF", "thread" },
  { "position dia .014 mmc A B C", "position in - [- 0.014] dia mmc A B C" },
};

/* No wrong limits: what could mean something else, or holds more than was understood, is a note. */
static const Row note_rows[] = {
  { "", "note: empty" },
  { " \t\n", "note: empty" },
  { "Deburr all edges", "note: not read" },
  { "40", "note: no general" },
  { "Ø40", "note: no general" },
  { "R3", "note: no general" },
  { "C1", "note: no general" },
  { "12 deep", "note: no general" },
  { "(25)", "note: not read" },
  { "(25 ±0.1)", "note: not read" },
  { "25 (+0.1/-0.2", "note: not read" },
  { "25 (0.1)", "note: not read" },
  { "1 to 3", "note: not read" },
  { "25 to", "note: not read" },
  { "25 REF", "note: not read" },
  { "[25]", "note: not read" },
  { "25 BASIC", "note: not read" },
  { "+0.1/-0.2", "note: not read" },
  { "±0.1", "note: not read" },
  { "25 ±", "note: not read" },
  { "25 ±-0.1", "note: not read" },
  { "25 ±0", "note: crossed" },
  { "25 ±0.1 ±0.2", "note: not read" },
  { "25 ±0.1/0.2", "note: not read" },
  { "25.0/25.0", "note: crossed" },
  { "12 min 10 max", "note: crossed" },
  { "12 max 10 max", "note: not read" },
  { "25.000/25.021/25.030", "note: not read" },
  { "20-26", "note: not read" },
  { "20 - 26", "note: not read" },
  { "25.021 -25.000", "note: not read" },
  { "25.000 -25.021", "note: not read" },
  { "10 - 4", "note: not read" },
  { "25- 26", "note: not read" },
  { "25 -", "note: not read" },
  { "-25", "note: not read" },
  { "-25 ±0.1", "note: not read" },
  { "0.5 ±1", "note: not read" },
  { "Ø0 ±0.1", "note: not read" },
  { "0 max", "note: not read" },
  { "3/8", "note: not read" },
  { "1/4-20", "note: not read" },
  { "1/20", "note: not read" },
  { "4x6", "note: not read" },
  { "4x6 ±0.1", "note: not read" },
  { "4 x 6 ±0.1", "note: not read" },
  { "4 X6.5 ±0.1", "note: not read" },
  { "4x6.5 ±0.1", "note: not read" },
  { "15 x 30", "note: not read" },
  { "2 x 30°", "note: not read" },
  { "2x45°", "note: no general" }, /* a chamfer */
  { "1x 45°", "note: no general" },
  { "4X", "note: not read" },
  { "0X Ø6.5 ±0.1", "note: not read" },
  { "99999X Ø6.5 ±0.1", "note: not read" },
  { "4X 4X Ø6.5 ±0.1", "note: not read" },
  { "4X Ø6.5 ±0.1 2X", "note: not read" },
  { "Ø6.5 ±0.1 ↧ 12", "note: not read" },
  { "Ø6.5 ±0.1 deep", "note: not read" },
  { "ØR5 ±0.1", "note: not read" },
  { "R5 ±0.1 Ⓔ", "note: not read" },
  { "25.4 ±0.1 (1.000 ±.004)", "note: not read" },
  { "25 ±0.1 after plating", "note: not read" },
  { "25 ±0.1;", "note: not read" },
  { "25 ±0.1 *", "note: not read" },
  { "25 mm ±.005 in", "note: unit wrong" },
  { "25 mm ±0.1°", "note: unit wrong" },
  { "25 parsec ±0.1", "note: not read" },
  { "25 ±0.1 C", "note: not read" },
  { "1.2.3 ±0.1", "note: not read" },
  { "1,234.5 ±0.1", "note: not read" },
  { "1 234 ±0.1", "note: not read" },
  { "1e3 ±0.1", "note: not read" },
  { "0x19 ±0.1", "note: not read" },
  { "nan ±0.1", "note: not read" },
  { "inf max", "note: not read" },
  { "25.0000000001 ±0.1", "note: too fine" },
  { "25 ±0.0000000001", "note: too fine" },
  { "25 ±0.00000000000000000000000001", "note: not read" },
  { "99999999999999999999 ±1", "note: not read" },
  { "3999999999 ±3999999999", "note: not read" },
  { "25 Н7", "note: not read" },     /* a Cyrillic letter */
  { "２５ ±0.1", "note: not read" }, /* full-width digits */
  { "25 \xff ±0.1", "note: not read" },
  { "\xe2\x8c", "note: not read" },
  { "25 ±0.1 \xe2\x93", "note: not read" },
  { "%s%s%s%n", "note: not read" },
  { "=1+1", "note: not read" },
  { "………………", "note: not read" },
  { "((((((((((((((((", "note: not read" },
  { "1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1 1",
    "note: not read" },
};

static void
test_metric (void)
{
  check_rows (class_rows, G_N_ELEMENTS (class_rows), TM_UNIT_MM, NULL);
  check_rows (tolerance_rows, G_N_ELEMENTS (tolerance_rows), TM_UNIT_MM, NULL);
  check_rows (angle_rows, G_N_ELEMENTS (angle_rows), TM_UNIT_MM, "");
}

/* What is printed of a limit is the limit: it comes back from its own text. */
static void
test_limits_read_back (void)
{
  static const char *const texts[]
      = { "45° ±20'", "45°20' ±10'", "1°0'1\" ±0.1\"", "Ø25 JS7", "25 ±5 µm", "60° +7'/-13'" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      TmCallout callout = tm_callout_read (texts[i], TM_UNIT_MM, NULL);
      const TmQuantity *values[] = { &callout.nominal, &callout.lower, &callout.upper };

      g_assert_cmpint (callout.status, ==, TM_CALLOUT_OK);
      for (gsize k = 0; k < G_N_ELEMENTS (values); k++)
        {
          g_autofree char *text = tm_quantity_format (values[k]);
          TmQuantity back = TM_QUANTITY_NONE;

          g_assert_cmpint (tm_quantity_read (text, callout.unit, &back), ==, TM_READ_OK);
          g_assert_cmpint (back.count, ==, values[k]->count);
        }
    }
}

static void
test_inch (void)
{
  check_rows (inch_rows, G_N_ELEMENTS (inch_rows), TM_UNIT_IN, NULL);
  check_rows (angle_rows, G_N_ELEMENTS (angle_rows), TM_UNIT_IN, NULL);
}

static void
test_notes (void)
{
  check_rows (note_rows, G_N_ELEMENTS (note_rows), TM_UNIT_MM, NULL);
}

/* Every letter of every spelling of a class comes through as a class, or as an unknown one. */
static void
test_every_class (void)
{
  static const char *const letters[]
      = { "A", "B", "C", "CD", "D", "E", "EF", "F", "FG", "G", "H", "JS", "J",  "K",
          "M", "N", "P", "R",  "S", "T", "U",  "V", "X",  "Y", "Z", "ZA", "ZB", "ZC" };

  for (gsize i = 0; i < G_N_ELEMENTS (letters); i++)
    for (int lower = 0; lower < 2; lower++)
      {
        g_autofree char *name = lower ? g_ascii_strdown (letters[i], -1) : g_strdup (letters[i]);
        g_autofree char *text = g_strdup_printf ("Ø30 %s7", name);
        TmCallout callout = tm_callout_read (text, TM_UNIT_MM, NULL);

        g_test_message ("%s", text);
        g_assert_cmpint (callout.status, ==, TM_CALLOUT_OK);
        g_assert_cmpint (callout.kind, ==, lower ? TM_KIND_SHAFT : TM_KIND_BORE);
        g_assert_cmpint (callout.cut, ==, lower ? TM_CUT_SHRINKS : TM_CUT_GROWS);
        g_assert_cmpint (callout.upper.count - callout.lower.count, ==, 21000000); /* IT7, 18 to 30 */
      }
}

static void
test_long_text (void)
{
  g_autofree char *text = g_strnfill (100000, '9');
  g_autofree char *spaces = g_strnfill (100000, ' ');
  g_autofree char *padded = g_strconcat ("25", spaces, "±0.1", NULL);

  g_assert_cmpint (tm_callout_read (text, TM_UNIT_MM, NULL).status, ==, TM_CALLOUT_NOT_READ);
  g_assert_cmpint (tm_callout_read (padded, TM_UNIT_MM, NULL).status, ==, TM_CALLOUT_NOT_READ);
  g_assert_cmpint (tm_callout_read ("25", TM_UNIT_MM, text).status, ==, TM_CALLOUT_GENERAL_UNKNOWN);
  g_assert_cmpint (tm_callout_read (NULL, TM_UNIT_MM, NULL).status, ==, TM_CALLOUT_EMPTY);
}

static void
test_status_texts (void)
{
  for (guint i = 0; i < TM_N_CALLOUT_STATUSES; i++)
    {
      g_assert_nonnull (tm_callout_status_text (i));
      g_assert_cmpint (tm_callout_status_text (i)[0] == '\0', ==, i == TM_CALLOUT_OK);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/callout/metric", test_metric);
  g_test_add_func ("/callout/limits-read-back", test_limits_read_back);
  g_test_add_func ("/callout/inch", test_inch);
  g_test_add_func ("/callout/notes", test_notes);
  g_test_add_func ("/callout/every-class", test_every_class);
  g_test_add_func ("/callout/long-text", test_long_text);
  g_test_add_func ("/callout/status-texts", test_status_texts);
  return g_test_run ();
}
