/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-scrolled: what all widgets share that draw themselves and scroll inside a GtkScrolledWindow: a widget
 * derives from it, says how much there is to see, and draws what is in sight.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TM_TYPE_SCROLLED (tm_scrolled_get_type ())
G_DECLARE_DERIVABLE_TYPE (TmScrolled, tm_scrolled, TM, SCROLLED, GtkWidget)

struct _TmScrolledClass {
  GtkWidgetClass parent_class;

  /* Another part is in sight; draws it.  Whoever overrides it chains up. */
  void (*moved) (TmScrolled *self);
};

/* What scrolls it; borrowed. */
GtkAdjustment *tm_scrolled_adjustment (TmScrolled *self, GtkOrientation orientation);

/* Pixels that have gone out of sight at the beginning. */
double tm_scrolled_value (TmScrolled *self, GtkOrientation orientation);

/* To be called from size_allocate, and when the widget shows something else: of @whole pixels @room are in
 * sight, from @value on as far as there are so many; an arrow scrolls by @step, a page by @page. */
void tm_scrolled_configure (TmScrolled *self, GtkOrientation orientation, double value, double whole,
                            double room, double step, double page);

G_END_DECLS
