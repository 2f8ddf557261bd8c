/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-drawing-check: a drawing is tried once in a process of its own before it is opened in this one.
 *
 * A file made to do harm can keep the libraries that draw it busy for hours or have them ask for all memory
 * there is.  So the program starts itself again as a child that may have so much memory and so much time,
 * hands it the bytes, and has it open and draw the page.  What passed, or failed, is remembered by its
 * SHA-256 while the program runs.  A PNG needs none of this: its head bounds what it takes.
 */

#pragma once

#include "plot-drawing.h"

G_BEGIN_DECLS

/* The first argument that makes the program such a child. */
#define TM_DRAWING_CHECK_OPTION "--check-drawing"

/* Most seconds of the processor, of these to open a page of a PDF, most seconds by the clock, and most bytes
 * that the child may have. */
#define TM_DRAWING_CHECK_SECONDS 6u
#define TM_DRAWING_CHECK_OPENING 1u
#define TM_DRAWING_CHECK_ALARM   60u
#define TM_DRAWING_CHECK_BYTES   (1536u * 1024u * 1024u)

/* In main(), once it has a language and before all else: when the arguments ask for the check, makes it, sets
 * @status to what main() is to return, and gives TRUE.  Otherwise has this program make its checks from now
 * on, by starting itself. */
gboolean tm_drawing_check_main (int argc, char *argv[], int *status);

/* Has @program, a path, make the checks that this process asks for; NULL: none are made, as at first, which
 * is for tests. */
void tm_drawing_check_with (const char *program);

/* TRUE when @content may be opened here.  @page from 1, which is drawn; 0: only what tm_drawing_look() asks.
 */
gboolean tm_drawing_check (GBytes *content, guint page, GError **error);

G_END_DECLS
