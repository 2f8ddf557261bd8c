/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * support-template: an invented shop's template that uses every member.
 */

#pragma once

#include "core-template.h"

/* Logo 3:1 (SVG), name, address, a dark accent, two columns left out, a required and a free field, a
 * statement at each place, one of them in English and German. */
TmTemplate *tm_test_template (void) G_GNUC_WARN_UNUSED_RESULT;
