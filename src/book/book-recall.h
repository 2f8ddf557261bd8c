/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-recall: who was measured with a gauge since a day; private to this folder.
 *
 * A method may have been given another gauge since, and a feature another method: what a reading was
 * taken with is what they said at its time.
 */

#pragma once

#include "book-part.h"

G_BEGIN_DECLS

/* One version of what a name stood for. */
typedef struct {
  char *since; /* "" of the first one of a job that came whole */
  char *name;  /* of a feature: its method then; of a method: NULL */
  gint64 seq;
  gboolean uses; /* of a method: the gauge */
} TmRecallVersion;

/* A job and one of its names. */
typedef struct {
  gint64 job;
  char *name;
} TmRecallName;

typedef struct {
  TmBook *book;
  const char *tag;
  char *after;          /* the last moment of the day it was known good; "" = always */
  GHashTable *methods;  /* TmRecallName -> TmRecallVersion array, of those that ever used the gauge */
  GHashTable *features; /* TmRecallName -> TmRecallVersion array, of those that ever had such a method */
  GHashTable *jobs;     /* gint64 -> set of tm_part_spot() texts */
} TmRecallQuery;

void tm_recall_query_init (TmRecallQuery *query, TmBook *book, const char *tag, const char *good_until);
void tm_recall_query_clear (TmRecallQuery *query);

/* Fills @methods, @features and @jobs. */
gboolean tm_recall_find (TmRecallQuery *query, GError **error);

/* The versions of @name in @table, oldest first; NULL when it is not there. */
const GArray *tm_recall_versions (GHashTable *table, gint64 job, const char *name);

/* The one that held at @at.  Without a time: one that used the gauge when there is any, since nobody can
 * say that it was another. */
const TmRecallVersion *tm_recall_in_force (const GArray *versions, const char *at);

G_END_DECLS
