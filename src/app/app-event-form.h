/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-event-form: the fields of one event.
 */

#pragma once

#include <adwaita.h>

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  AdwComboRow *kind;
  AdwEntryRow *before, *amount;
  AdwComboRow *feature, *tool;
  AdwEntryRow *note, *by, *at;
  const TmJob *job;
  char *foreign_kind; /* of a file, none of ours; NULL: none */
} TmEventForm;

void tm_event_form_build (TmEventForm *form, GtkBox *into, const TmJob *job);
void tm_event_form_fill (TmEventForm *form, const TmEvent *event);
void tm_event_form_clear (TmEventForm *form);

/* A new event on the ground of @event (NULL: none); NULL with one line in @problem. */
TmEvent *tm_event_form_read (TmEventForm *form, TmJob *job, const TmEvent *event,
                             char **problem) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
