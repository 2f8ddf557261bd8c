/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-field: how a struct of the model becomes a row of the book and the text of its journal fact,
 * and a row becomes a struct again.
 *
 * Everything goes through cells, one per column: struct -> cells -> row and payload when writing,
 * row -> cells -> struct when loading, row -> cells -> payload when verifying.  So a row that gives
 * its payload gives back its struct, and the two can only differ if one of them was altered.
 *
 * A payload is the text "column=value\n" for each column that is not empty, in the column order,
 * with "\" and line ends in a value written "\\" and "\n".
 */

#pragma once

#include <sqlite3.h>

#include "core-model.h"
#include "core-template.h"

G_BEGIN_DECLS

/* In the order in which a job is written and read: what a row refers to comes before it. */
typedef enum {
  TM_BOOK_JOB,
  TM_BOOK_FACTS,
  TM_BOOK_PERSON,
  TM_BOOK_GAUGE,
  TM_BOOK_CALIBRATION,
  TM_BOOK_CHECK,
  TM_BOOK_PIN_SIZE,
  TM_BOOK_METHOD,
  TM_BOOK_BUDGET_LINE,
  TM_BOOK_TOOL,
  TM_BOOK_MATERIAL,
  TM_BOOK_FEATURE,
  TM_BOOK_PIECE,
  TM_BOOK_MATE,
  TM_BOOK_SUPPLY,
  TM_BOOK_SUB_PART,
  TM_BOOK_REPORT_FIELD,
  TM_BOOK_DRAWING,
  TM_BOOK_BALLOON,
  TM_BOOK_EVENT,
  TM_BOOK_NONCONFORMANCE,
  TM_BOOK_STUDY,
  TM_BOOK_STUDY_READING,
  TM_BOOK_SIGNATURE,
  TM_BOOK_READING,
  TM_BOOK_PIN_TRIAL,
  TM_BOOK_CUT,
  TM_BOOK_WITHDRAWAL,
  TM_BOOK_CONTENT,
  /* Of the whole shop: their job is 0. */
  TM_BOOK_SHOP_CONTENT,
  TM_BOOK_TEMPLATE,
  TM_BOOK_TEMPLATE_FIELD,
  TM_BOOK_TEMPLATE_TEXT,
  TM_N_BOOK_KINDS
} TmBookKind;

#define TM_BOOK_FIRST_LIST TM_BOOK_PERSON
#define TM_BOOK_LAST_LIST  TM_BOOK_SIGNATURE

typedef enum {
  TM_FIELD_TEXT,
  TM_FIELD_QUANTITY, /* two columns: the count, and its form "unit.decimals" */
  TM_FIELD_WORD,     /* an enumeration, held as the book's own word for it */
  TM_FIELD_UINT,
  TM_FIELD_BOOL,
  TM_FIELD_WIDE,  /* gint64 */
  TM_FIELD_PLACE, /* a guint from 1, of which 1 is held as nothing */
  TM_FIELD_COUNT, /* a guint of which 0 is held as nothing */
  TM_FIELD_LIST,  /* texts, a line each */
  TM_FIELD_PIECE,
  TM_FIELD_FEATURE,
} TmFieldType;

typedef struct {
  const char *column;
  const char *form_column; /* of a quantity, else NULL */
  TmFieldType type;
  gsize offset;
  const char *const *words; /* of a word; ends with NULL */
  gsize guard;              /* offset of a gboolean: the field means nothing while it is FALSE; 0: none */
} TmField;

/* What a row of a definition carries besides its content. */
typedef struct {
  const char *key; /* what stays the same from version to version */
  gint64 rank;     /* place in the list */
  gboolean removed;
  const char *by;
  const char *at;
} TmVersion;

/* A withdrawal as the book holds it. */
typedef struct {
  const char *target; /* "reading", "pin_trial", "cut" */
  const char *id;
  TmWithdrawal note;
} TmBookWithdrawal;

/* A file that a job or the shop keeps.  Its bytes stand beside the cells: the journal has their digest. */
typedef struct {
  const char *digest; /* SHA-256, hex */
  gint64 length;
  GBytes *bytes; /* borrowed */
} TmBookContent;

/* A version of the shop's template; its fields and statements are rows of their own, written with it. */
typedef struct {
  const char *by, *at;
  const char *name, *address;
  const char *accent; /* "#1a5f7a", or "" */
  const char *hidden; /* words of the columns left out, a line each */
  const char *logo;   /* digest of a file that the shop keeps, or "" */
  const char *logo_media;
  const char *ground; /* as accent */
} TmBookTemplate;

typedef struct {
  gint64 template; /* row of its template */
  const char *name;
  gboolean required;
} TmBookTemplateField;

/* One language of a statement. */
typedef struct {
  gint64 template;
  guint statement; /* from 1, in the order printed */
  TmStatementPlace place;
  const char *language, *text;
} TmBookTemplateText;

typedef struct {
  const char *table;  /* also its word in the journal */
  const char *naming; /* template with one %s: what a person calls the row */
  const char *name_column;
  gboolean versioned;
  const TmField *fields;
  guint n_fields;
  gsize list; /* offset of its GPtrArray in TmJob; 0: none */
} TmKindInfo;

#define TM_MAX_CELLS 96
#define TM_MAX_LISTS 2

typedef struct {
  const char *text; /* NULL: a number, or nothing */
  gint64 number;
  int length;
  gboolean filled; /* FALSE: an SQL NULL */
} TmCell;

typedef struct {
  TmCell cell[TM_MAX_CELLS];
  guint n;
  GString *lists[TM_MAX_LISTS]; /* hold the texts of list cells */
  guint n_lists;
} TmCells;

/* What turns rows into structs of one job, remembering the row before: most texts repeat. */
typedef struct {
  TmJob *job;
  const char *last[TM_MAX_CELLS];
  TmPiece *piece;
  TmFeature *feature;
} TmReader;

/* The book's word for each TmUnit, which never changes; ends with NULL. */
extern const char *const tm_book_unit_words[];

const TmKindInfo *tm_kind_info (TmBookKind kind);
/* Whether bytes stand beside the cells of a row. */
gboolean tm_kind_has_bytes (TmBookKind kind);
/* "reading 12", translated. */
char *tm_kind_name (TmBookKind kind, const char *name) G_GNUC_WARN_UNUSED_RESULT;
const TmField *tm_version_fields (guint *n);

/* "INSERT INTO …" with seq, job, then the cells; "SELECT seq, job, …" without its end. */
char *tm_kind_insert_sql (TmBookKind kind) G_GNUC_WARN_UNUSED_RESULT;
char *tm_kind_select_sql (TmBookKind kind) G_GNUC_WARN_UNUSED_RESULT;

void tm_cells_init (TmCells *cells);
void tm_cells_clear (TmCells *cells);

/* Texts in the cells are borrowed from @row and @version. */
void tm_cells_from_struct (TmCells *cells, TmBookKind kind, const TmVersion *version, gconstpointer row);

/* From a row of tm_kind_select_sql(); texts are borrowed from the statement. */
void tm_cells_from_row (TmCells *cells, sqlite3_stmt *statement);

/* From column 3 of the statement on. */
void tm_cells_bind (const TmCells *cells, sqlite3_stmt *statement);

/* Appends the payload of @kind. */
void tm_cells_payload (const TmCells *cells, TmBookKind kind, GString *out);

/* As tm_cells_payload() without the version: equal exactly when the contents are. */
void tm_cells_content (const TmCells *cells, TmBookKind kind, GString *out);

/* Fills @row, and @version when it is not NULL (its texts stay borrowed from the cells).
 * Returns: NULL, or the column whose content means nothing. */
const char *tm_cells_to_struct (const TmCells *cells, TmBookKind kind, TmReader *reader, TmVersion *version,
                                gpointer row);

G_END_DECLS
