/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-template-members: the keys of a template file; private to this folder.
 */

#pragma once

#include "exchange-json.h"

G_BEGIN_DECLS

#define TM_TEMPLATE_FORMAT  "tenthmark-template"
#define TM_TEMPLATE_VERSION 1

enum { IN_TEMPLATE_FORMAT, IN_TEMPLATE_VERSION, IN_TEMPLATE, IN_TEMPLATE_FIELDS, IN_TEMPLATE_STATEMENTS };
enum { TEMPLATE_NAME, TEMPLATE_ADDRESS, TEMPLATE_ACCENT, TEMPLATE_GROUND, TEMPLATE_HIDDEN, TEMPLATE_LOGO };
enum { LOGO_MEDIA, LOGO_DIGEST, LOGO_CONTENT };
enum { FIELD_NAME, FIELD_REQUIRED };
/* A row without a place is the statement above it in another language. */
enum { STATEMENT_PLACE, STATEMENT_LANGUAGE, STATEMENT_TEXT };

/* Ends with a NULL key, as each shape in it. */
extern const TmJsonMember tm_template_sections[];

G_END_DECLS
