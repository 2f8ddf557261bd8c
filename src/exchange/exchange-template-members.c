/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-template-members.h"

static const TmJsonMember logo_shape[] = {
  [LOGO_MEDIA] = { "media", TM_JSON_TEXT },
  [LOGO_DIGEST] = { "digest", TM_JSON_TEXT },
  [LOGO_CONTENT] = { "content", TM_JSON_TEXT },
  { NULL },
};

static const TmJsonMember template_shape[] = {
  [TEMPLATE_NAME] = { "name", TM_JSON_TEXT },
  [TEMPLATE_ADDRESS] = { "address", TM_JSON_TEXT },
  [TEMPLATE_ACCENT] = { "accent", TM_JSON_TEXT },
  [TEMPLATE_GROUND] = { "ground", TM_JSON_TEXT },
  [TEMPLATE_HIDDEN] = { "hidden", TM_JSON_LIST },
  [TEMPLATE_LOGO] = { "logo", TM_JSON_OBJECT, logo_shape },
  { NULL },
};

static const TmJsonMember field_shape[] = {
  [FIELD_NAME] = { "name", TM_JSON_TEXT },
  [FIELD_REQUIRED] = { "required", TM_JSON_TRUTH },
  { NULL },
};

static const TmJsonMember statement_shape[] = {
  [STATEMENT_PLACE] = { "place", TM_JSON_TEXT },
  [STATEMENT_LANGUAGE] = { "language", TM_JSON_TEXT },
  [STATEMENT_TEXT] = { "text", TM_JSON_TEXT },
  { NULL },
};

const TmJsonMember tm_template_sections[] = {
  [IN_TEMPLATE_FORMAT] = { "format", TM_JSON_TEXT },
  [IN_TEMPLATE_VERSION] = { "version", TM_JSON_WHOLE },
  [IN_TEMPLATE] = { "template", TM_JSON_OBJECT, template_shape },
  [IN_TEMPLATE_FIELDS] = { "fields", TM_JSON_ROWS, field_shape },
  [IN_TEMPLATE_STATEMENTS] = { "statements", TM_JSON_ROWS, statement_shape },
  { NULL },
};
