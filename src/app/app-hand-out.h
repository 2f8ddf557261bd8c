/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-hand-out: a signed report's file as the book keeps it, byte for byte: to a file, or shown in the
 * program that the desktop has for it, from where it is printed.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

typedef enum { TM_HAND_OUT_PAGES, TM_HAND_OUT_WORKBOOK } TmHandOut;

/* SHA-256 of the file, "" where the signature names none; borrowed. */
const char *tm_hand_out_digest (const TmSignature *signature, TmHandOut what);

/* "FA-7 signed 2026-05-04.pdf" */
char *tm_hand_out_name (const TmJob *job, const TmSignature *signature,
                        TmHandOut what) G_GNUC_WARN_UNUSED_RESULT;

/* Writes the file to @path, the old one or the whole new one. */
gboolean tm_hand_out_write (TmDocument *document, const char *digest, const char *path, GError **error);

/* Asks where, then writes; says what was done in a toast of @any_child's window, and what failed in @problem.
 */
void tm_hand_out_save (GtkWidget *any_child, TmDocument *document, const TmSignature *signature,
                       TmHandOut what, GtkLabel *problem);

/* Shows a copy of the file in the desktop's program for it; says in @problem, maybe later, what failed: a
 * line with the path and what to do where there is no such program. */
void tm_hand_out_open (TmDocument *document, const TmSignature *signature, TmHandOut what, GtkLabel *problem);

G_END_DECLS
