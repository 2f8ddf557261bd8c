/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-json: writing one JSON document on standard output.
 */

#pragma once

#include <glib.h>
#include <yajl/yajl_gen.h>

#include "core-quantity.h"

G_BEGIN_DECLS

yajl_gen tm_print_begin (void) G_GNUC_WARN_UNUSED_RESULT;

/* Prints what there is of the document, so that a long one is not held whole. */
void tm_print_flush (yajl_gen gen);

/* Prints the rest of the document and a line end, and frees @gen. */
void tm_print_end (yajl_gen gen);

/* Members of the open object. A NULL text, a NAN or an infinite number gives null; bytes that are
 * not UTF-8 are replaced. */
void tm_print_text (yajl_gen gen, const char *key, const char *value);
void tm_print_number (yajl_gen gen, const char *key, double value);
void tm_print_integer (yajl_gen gen, const char *key, gint64 value);
void tm_print_flag (yajl_gen gen, const char *key, gboolean value);
void tm_print_null (yajl_gen gen, const char *key);
void tm_print_key (yajl_gen gen, const char *key);
/* A text in the open array. */
void tm_print_item (yajl_gen gen, const char *text);
/* The member "unit": null where there is no number at all. */
void tm_print_unit (yajl_gen gen, TmUnit unit);
/* @value with as few digits as give it back; @length at least G_ASCII_DTOSTR_BUF_SIZE. */
void tm_number_format (double value, char *text, int length);
/* The quantity as a decimal string in @unit, null when not given. */
void tm_print_quantity (yajl_gen gen, const char *key, const TmQuantity *value, TmUnit unit);
/* A length known only as a double count (an uncertainty, a taper), to the nearest count; NAN: null. */
void tm_print_counts (yajl_gen gen, const char *key, double counts, TmUnit unit);

G_END_DECLS
