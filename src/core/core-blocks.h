/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-blocks: gauge-block stacks from a set: the fewest blocks that make a size exactly.
 */

#pragma once

#include "core-quantity.h"

G_BEGIN_DECLS

typedef enum {
  TM_BLOCKS_OK,
  TM_BLOCKS_EMPTY,    /* no size in the text */
  TM_BLOCKS_NOT_READ, /* a part of the text is neither a size nor a series */
  TM_BLOCKS_BAD_STEP, /* a series that does not come out, or runs backwards */
  TM_BLOCKS_TOO_MANY, /* more than TM_BLOCKS_MOST */
  TM_BLOCKS_NO_STACK, /* the set cannot make the size with TM_STACK_MOST blocks */
  TM_N_BLOCKS_STATUSES
} TmBlocksStatus;

#define TM_BLOCKS_MOST 400
#define TM_STACK_MOST  8

/* The sizes of a set: "1.0005; 1.001-1.009 by 0.001; 25-100 by 25"; counts, rising, each once.  @where (may
 * be NULL) gets the offset of the part that is bad. */
TmBlocksStatus tm_blocks_read (const char *text, TmUnit unit, GArray **sizes, gsize *where);

/* Sets of usual composition, by the number of pieces (ISO 3650 names no composition: common practice); FALSE
 * beyond the last. */
typedef struct {
  const char *name; /* "112 pieces, metric"…; marked for translation */
  TmUnit unit;
  const char *text; /* as tm_blocks_read() takes it */
  const char *source;
} TmBlockSet;
gboolean tm_block_set (guint i, TmBlockSet *out);

/* The fewest blocks of @sizes (gint64, each used once) that make @size; among stacks of one length the one
 * that uses the larger blocks.  @wear (may be 0) is the size of a pair of wear blocks that go at the ends.
 * @stack gets them, smallest first, the wear blocks not among them.  @tries (may be NULL): a bound on the
 * search. */
TmBlocksStatus tm_blocks_stack (const GArray *sizes, gint64 size, gint64 wear, GArray **stack);

const char *
tm_blocks_status_word (TmBlocksStatus status); /* marked for translation, context "blocks status" */

G_END_DECLS
