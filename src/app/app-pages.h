/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-pages: the pages of a job, in the order the window shows them.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

typedef struct {
  const char *name;  /* of the stack child and of the action's target */
  const char *title; /* to be translated */
  GtkWidget *(*create) (void);
  void (*set_document) (GtkWidget *page, TmDocument *document);
  void (*enter) (GtkWidget *page); /* puts the focus where the next thing is typed, or NULL */
} TmPageKind;

const TmPageKind *tm_pages (guint *n_pages);

/* Defines set_page () and enter_page () for a row of TmPageKind, of the functions of the widget itself. */
#define TM_DEFINE_PAGE(page, PAGE)                                 \
  static void set_##page (GtkWidget *widget, TmDocument *document) \
  {                                                                \
    tm_##page##_set_document (TM_##PAGE (widget), document);       \
  }                                                                \
  static void enter_##page (GtkWidget *widget)                     \
  {                                                                \
    tm_##page##_enter (TM_##PAGE (widget));                        \
  }

G_END_DECLS
