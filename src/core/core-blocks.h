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
  TM_BLOCKS_NOT_READ, /* a part of the text is neither a size above zero nor a series */
  TM_BLOCKS_BAD_STEP, /* a series that does not come out, or runs backwards */
  TM_BLOCKS_TOO_MANY, /* more than TM_BLOCKS_MOST */
  TM_BLOCKS_NO_STACK, /* the set cannot make the size with TM_STACK_MOST blocks */
  TM_BLOCKS_WEAR,     /* the two wear blocks alone are more than the size */
  TM_BLOCKS_GAVE_UP,  /* neither found nor ruled out within TM_STACK_TRIES: sizes on no common step */
  TM_N_BLOCKS_STATUSES
} TmBlocksStatus;

#define TM_BLOCKS_MOST 400
#define TM_STACK_MOST  8

/* Bound on the search, in blocks tried: sets of usual composition need under a hundredth of it for any size
 * that they can make (measured; our own choice). */
#define TM_STACK_TRIES 4000000

/* The sizes of a set: "1.0005; 1.001-1.009 by 0.001; 25-100 by 25"; counts (gint64), rising, each once.
 * Numbers are in @unit unless they name their own.  @where (may be NULL) gets the offset in bytes of the part
 * that is bad.  @sizes is set to NULL where the status is not OK. */
TmBlocksStatus tm_blocks_read (const char *text, TmUnit unit, GArray **sizes, gsize *where);

/* Sets of usual composition, by the number of pieces (ISO 3650 names no composition: common practice); FALSE
 * beyond the last. */
typedef struct {
  const char *code; /* "M112", "IN81": metric or inch and how many */
  const char *name; /* "112 pieces, metric"…; marked for translation, context "block set" */
  TmUnit unit;
  guint pieces;
  const char *text;   /* as tm_blocks_read() takes it */
  const char *source; /* marked for translation */
} TmBlockSet;
gboolean tm_block_set (guint i, TmBlockSet *out);
/* By its code, in any letter case. */
gboolean tm_block_set_find (const char *code, TmBlockSet *out);

/* The fewest blocks of @sizes (gint64, rising, each used once) that make @size exactly; among stacks of one
 * length the one whose largest block is the largest, then the next.  @wear (may be 0) is the size of each of
 * the two wear blocks that go at the ends.  @stack gets them, smallest first, the wear blocks not among
 * them; NULL where the status is not OK. */
TmBlocksStatus tm_blocks_stack (const GArray *sizes, gint64 size, gint64 wear, GArray **stack);

/* One line for people, marked for translation, context "blocks status". */
const char *tm_blocks_status_word (TmBlocksStatus status);

G_END_DECLS
