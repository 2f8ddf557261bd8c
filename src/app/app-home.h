/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-home: the list of jobs in the book; in an empty book, a first job in three steps and the
 * sample jobs.
 */

#pragma once

#include <adwaita.h>

#include "book-store.h"

G_BEGIN_DECLS

#define TM_TYPE_HOME (tm_home_get_type ())
G_DECLARE_FINAL_TYPE (TmHome, tm_home, TM, HOME, AdwBin)

/* @book borrowed, NULL when it cannot be opened: then @problem says why. */
void tm_home_set_book (TmHome *self, TmBook *book, const char *problem);

/* Puts the focus where the next thing is done: the list, or the first step of the first job. */
void tm_home_enter (TmHome *self);

/* Lists the book again. */
void tm_home_refresh (TmHome *self);

G_END_DECLS
