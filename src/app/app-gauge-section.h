/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-gauge-section: a titled list beside the register, whose rows are made anew when the job changes, with
 * the two fields that some of them have to add one by Enter.
 */

#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

typedef struct {
  AdwPreferencesGroup *group;
  AdwPreferencesGroup *list; /* of the rows: the same, or where there are fields the one below them */
  GPtrArray *rows;           /* AdwActionRow, owned by the group */
  AdwEntryRow *first, *second;
  GtkLabel *says; /* what the two fields are read as, or what is wrong with them */
} TmGaugeSection;

void tm_gauge_section_build (TmGaugeSection *section, GtkBox *into, const char *title,
                             const char *description);

/* The two fields, and the line under them.  Enter in the first goes to the second; Enter there calls
 * @add_cb, a change of either @changed_cb, both with @data. */
void tm_gauge_section_add_fields (TmGaugeSection *section, const char *first, const char *second,
                                  GCallback changed_cb, GCallback add_cb, gpointer data);

/* A row with @title and @about.  @remove_cb (or NULL) is called with the button, whose "row" is @row, and
 * @data; @remove_name is what the button is read out as. */
void tm_gauge_section_add_row (TmGaugeSection *section, const char *title, const char *about,
                               const char *remove_name, gpointer row, GCallback remove_cb, gpointer data);

/* A line where there is no row. */
void tm_gauge_section_say_none (TmGaugeSection *section, const char *text);

void tm_gauge_section_drop_rows (TmGaugeSection *section);

G_END_DECLS
