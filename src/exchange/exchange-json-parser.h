/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-json-parser: one pass over a document of sections; private to exchange-json.
 */

#pragma once

#include "exchange-json.h"

#include <yajl/yajl_parse.h>

G_BEGIN_DECLS

/* Where in the document the parser stands.  The nesting of what is known is fixed (document, rows,
 * row, inner object or list); what is unknown is skipped by counting depth. */
typedef enum { AT_START, AT_DOCUMENT, AT_ROWS, AT_ROW, AT_INNER, AT_LIST, AT_END } TmJsonLevel;

typedef enum { FOUND_TEXT, FOUND_NUMBER, FOUND_TRUTH, FOUND_NULL, FOUND_LIST, FOUND_OBJECT } TmJsonFound;

/* One member of the document, when they are put in order. */
typedef struct {
  guint section; /* the number of sections: unknown */
  gsize from, to;
} TmJsonRange;

typedef struct {
  const TmJsonReader *reader;
  const char *data;
  gsize length;
  yajl_handle yajl;
  GString *extra;
  GArray *ranges; /* TmJsonRange: only looking for the members of the document; NULL: reading */
  gboolean sorted;
  gboolean out_of_order;
  gboolean at_end; /* of the data: offsets mean nothing any more */

  TmJsonLevel level;
  guint depth;
  guint section;
  guint member;       /* whose value comes next, in the row */
  guint inner_object; /* which of the row's objects the parser is in */
  guint inner_member;
  guint seen; /* one bit per section */

  gboolean skipping;
  guint skip_depth;
  gsize skip_from;

  TmJsonRow row;
  gsize next_progress;
  GError *error;
} TmJsonParser;

void tm_json_parser_init (TmJsonParser *parser, const TmJsonReader *reader, const char *source,
                          const char *data, gsize length);
void tm_json_parser_clear (TmJsonParser *parser);

/* Runs the parser over its data.  On FALSE with no error the sections are out of order. */
gboolean tm_json_parser_run (TmJsonParser *parser, GError **error);

/* How far the parser has read: just after the last token. */
gsize tm_json_consumed (const TmJsonParser *parser);

/* --- exchange-json-skip.c */

/* The offset of the opening quotation mark of the string whose closing one was just read. */
gsize tm_json_string_start (const TmJsonParser *parser);

/* From the member whose key was just read: it is passed over up to tm_json_end_skip(), which keeps
 * its bytes, or notes where they lie.  Returns 1: go on. */
int tm_json_begin_skip (TmJsonParser *parser);
void tm_json_end_skip (TmJsonParser *parser);

/* Says that the unknown member @key is kept, and begins to skip it. */
int tm_json_keep_unknown (TmJsonParser *parser, const char *key, gsize length);

/* --- exchange-json-fail.c */

/* The type that the value to come must have. */
TmJsonType tm_json_expect_type (const TmJsonParser *parser);

/* Each notes the error in the parser, at the value to come, and returns 0: stop. */
int tm_json_fail_at (TmJsonParser *parser, TmExchangeError code, const char *text);
int tm_json_fail_type (TmJsonParser *parser, TmJsonFound found, TmJsonType wanted);

/* What is no JSON, or was cut short. */
void tm_json_fail_syntax (const TmJsonParser *parser, gboolean cut_short, GError **error);

/* The line, from 1, in which @offset lies. */
guint tm_json_line_at (const char *data, gsize offset);

G_END_DECLS
