/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-json: streams one JSON document of sections, each a value, an object or a list of row
 * objects, and hands over each object when it is complete.
 *
 * Nothing here knows what a job is: the shapes come from the caller.  Members that no shape names
 * are kept byte for byte.  Memory beyond the input is that of one row; nothing recurses.
 */

#pragma once

#include "exchange-error.h"

G_BEGIN_DECLS

#define TM_JSON_MAX_DEPTH   32
#define TM_JSON_MAX_MEMBERS 32
#define TM_JSON_MAX_OBJECTS 2
#define TM_JSON_MAX_LIST    4096

typedef enum {
  TM_JSON_TEXT,
  TM_JSON_WHOLE, /* a number without sign, point or exponent */
  TM_JSON_TRUTH,
  TM_JSON_LIST,   /* a list of texts */
  TM_JSON_OBJECT, /* an object of its own shape; at most MAX_OBJECTS per shape, and none inside that */
  TM_JSON_ROWS,   /* a list of objects; only for a section */
} TmJsonType;

typedef struct _TmJsonMember TmJsonMember;
struct _TmJsonMember {
  const char *key;
  TmJsonType type;
  const TmJsonMember *inside; /* of OBJECT and ROWS: ends with a NULL key */
};

typedef struct {
  gsize at;    /* of a text, in the row's texts; of a list, its first in the row's lists */
  guint whole; /* of a list, its length */
  gboolean truth;
  gboolean given;
} TmJsonSlot;

/* One complete object. */
typedef struct {
  const char *source; /* the file's name, for errors */
  const char *section;
  const TmJsonMember *shape;
  gboolean in_list; /* FALSE: the section itself is this object */
  guint index;      /* in the list, from 0 */
  TmJsonSlot slots[TM_JSON_MAX_MEMBERS];
  TmJsonSlot inner[TM_JSON_MAX_OBJECTS][TM_JSON_MAX_MEMBERS]; /* of its OBJECT members, in their order */
  GString *texts;
  GArray *lists; /* gsize: the texts of its LIST members, one after the other */
  GString *extra;
  GString *inner_extra[TM_JSON_MAX_OBJECTS];
} TmJsonRow;

/* What the caller gets.  Each returns FALSE, with @error set, to stop. */
typedef struct {
  /* Sections in the order in which they must be handed over; ends with a NULL key.  The first
   * @n_required of them must be there, and before they are, no other is handed over. */
  const TmJsonMember *sections;
  guint n_required;
  /* A value section comes as a row whose slot 0 is the value. */
  gboolean (*take) (const TmJsonRow *row, guint section, gpointer data, GError **error);
  /* A required section that is missing. */
  void (*missing) (const char *source, guint section, GError **error);
  /* The sections stand in another order than the one above: what was taken is void, and everything
   * is handed over again in order. */
  void (*restart) (gpointer data);
  /* Something unknown was kept; @path names it. */
  void (*unknown) (const char *path, gpointer data);
  TmExchangeProgress progress; /* may be NULL */
  gpointer progress_data;
  gpointer data;
  const char *stranger; /* what is said of JSON that is no object; NULL: that it is no job */
} TmJsonReader;

/* Reads the whole document.  @extra gets the unknown members of the document itself. */
gboolean tm_json_read (const TmJsonReader *reader, const char *data, gsize length, const char *source,
                       GString *extra, GError **error);

/* The text of a member, "" when it was not given. */
const char *tm_json_text (const TmJsonRow *row, guint member);
const char *tm_json_inner_text (const TmJsonRow *row, guint object, guint member);
/* Of a LIST member, also one that was not given. */
guint tm_json_list_length (const TmJsonRow *row, guint member);
const char *tm_json_list_text (const TmJsonRow *row, guint member, guint index);

/* "readings[17].value"; @member < 0: the row itself. */
char *tm_json_path (const TmJsonRow *row, int member) G_GNUC_WARN_UNUSED_RESULT;
/* "readings[17].withdrawn.reason". */
char *tm_json_inner_path (const TmJsonRow *row, guint object, guint member) G_GNUC_WARN_UNUSED_RESULT;

/* Which of the OBJECT members of @shape @object is, from 0. */
guint tm_json_object_index (const TmJsonMember *shape, guint object);
/* The unknown members that were kept of an OBJECT member. */
const char *tm_json_inner_extra (const TmJsonRow *row, guint object);

G_END_DECLS
