/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-add: a customer's drawing out of a file, or from the clipboard, into the job.  The file is read
 * and tried on a thread; of a PDF with several pages it is asked which.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* Runs on the main loop once a drawing is in the job; @name: of the first one that was added. */
typedef void (*TmDrawingAdded) (GtkWidget *parent, const char *name);

/* What goes wrong is said in a line of the window that @parent is in, which lives until then. */
void tm_drawing_add_choose (GtkWidget *parent, TmDocument *document, TmDrawingAdded added);
void tm_drawing_add_file (GtkWidget *parent, TmDocument *document, const char *path, TmDrawingAdded added);
/* Another revision of the sheet that @drawing, by name, is: its balloons stay.  A PDF needs a page of the
 * same number. */
void tm_drawing_add_replacement (GtkWidget *parent, TmDocument *document, const char *drawing,
                                 TmDrawingAdded added);
void tm_drawing_replace_file (GtkWidget *parent, TmDocument *document, const char *drawing, const char *path,
                              TmDrawingAdded added);
void tm_drawing_add_bytes (GtkWidget *parent, TmDocument *document, const char *name, GBytes *bytes,
                           TmDrawingAdded added);
/* The files, or the picture, on the clipboard. */
void tm_drawing_add_clipboard (GtkWidget *parent, TmDocument *document, TmDrawingAdded added);

/* Files, or a picture, that are dropped on @widget are added; of several files one after the other.  @get:
 * its document, or NULL. */
void tm_drawing_add_drop_target (GtkWidget *widget, TmDocument *(*get) (GtkWidget *widget),
                                 TmDrawingAdded added);

G_END_DECLS
