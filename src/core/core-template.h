/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-template: how the shop's own reports look, for all of its jobs: who it is, two colours, which columns
 * the characteristics show, what is asked of every job beside the usual facts, and what the shop states.
 *
 * A template changes how a report looks and what it asks for, never what was found: it takes no part in a
 * job's digest.  Plain data; every text is owned by the template and never NULL.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define TM_TEMPLATE_MAX_LOGO       (2u * 1048576u) /* bytes */
#define TM_TEMPLATE_MAX_NAME       200u            /* letters, of the shop's name and of a field's */
#define TM_TEMPLATE_MAX_ADDRESS    1000u           /* letters */
#define TM_TEMPLATE_MAX_LINES      12u             /* of the address */
#define TM_TEMPLATE_MAX_FIELDS     40u
#define TM_TEMPLATE_MAX_STATEMENTS 20u
#define TM_TEMPLATE_MAX_STATEMENT  4000u /* letters of one text */
#define TM_TEMPLATE_MAX_TEXTS      10u   /* languages of one statement */

/* The columns of the characteristics that a template may leave out.  Those that say which requirement it is,
 * what came out and what was decided about it are always there: a report without them is sent back. */
typedef enum {
  TM_TEMPLATE_WHERE,     /* sheet and zone on the drawing */
  TM_TEMPLATE_CLASS,     /* critical, key */
  TM_TEMPLATE_NOMINAL,   /* this and what is marked so: only the workbook has it */
  TM_TEMPLATE_DEVIATION, /* workbook */
  TM_TEMPLATE_UNCERTAINTY,
  TM_TEMPLATE_SIDE,   /* workbook: metal left or gone */
  TM_TEMPLATE_GAUGE,  /* but for qualified tooling, which stays */
  TM_TEMPLATE_DUE,    /* workbook: until when the gauge was calibrated */
  TM_TEMPLATE_COUNTS, /* workbook: readings, pins or both */
  TM_N_TEMPLATE_COLUMNS
} TmTemplateColumn;

/* The word of a column in template files: "where", "class"…; and what a person calls it, marked for
 * translation. */
const char *tm_template_column_word (TmTemplateColumn column);
const char *tm_template_column_title (TmTemplateColumn column);
/* TM_N_TEMPLATE_COLUMNS: no such column. */
TmTemplateColumn tm_template_column_find (const char *word);
/* TRUE for the word of a column that no template can leave out: "balloon", "requirement"… */
gboolean tm_template_column_is_fixed (const char *word);

typedef enum {
  TM_STATEMENT_AFTER_COVER,
  TM_STATEMENT_BEFORE_SIGNATURES,
  TM_N_STATEMENT_PLACES
} TmStatementPlace;

/* "after cover", "before signatures": in template files. */
const char *tm_statement_place_word (TmStatementPlace place);
/* TM_N_STATEMENT_PLACES: no such place. */
TmStatementPlace tm_statement_place_find (const char *word);

/* What each job is asked for; it is answered by the job's report field of that name. */
typedef struct {
  char *name;
  gboolean required; /* a report without it is not complete */
} TmTemplateField;

typedef struct {
  char *language; /* "de", "pt_BR"…; "": any */
  char *text;
} TmStatementText;

/* One paragraph (or several, a line each) in one or more languages. */
typedef struct {
  TmStatementPlace place;
  GPtrArray *texts; /* TmStatementText */
} TmTemplateStatement;

typedef struct {
  char *name;    /* of the shop */
  char *address; /* lines */
  gboolean has_accent;
  guint32 accent; /* of rules and headings: 0xRRGGBB, sRGB; when has_accent */
  gboolean has_ground;
  guint32 ground;        /* under the heads of tables; when has_ground */
  GBytes *logo;          /* the file as it was given; NULL: none */
  char *logo_media;      /* "image/png", "image/jpeg", "image/svg+xml"; "" without a logo */
  char *logo_digest;     /* SHA-256, hex; "" without a logo */
  guint hidden;          /* bits 1 << TmTemplateColumn */
  GPtrArray *fields;     /* TmTemplateField, in the order in which they are asked and printed */
  GPtrArray *statements; /* TmTemplateStatement, in the order in which they are printed */
} TmTemplate;

/* One that says nothing. */
TmTemplate *tm_template_new (void) G_GNUC_WARN_UNUSED_RESULT;
void tm_template_free (TmTemplate *template);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmTemplate, tm_template_free)
/* One of its own, for a thread; the logo's bytes are shared.  NULL gives NULL. */
TmTemplate *tm_template_copy (const TmTemplate *template) G_GNUC_WARN_UNUSED_RESULT;
gboolean tm_template_equal (const TmTemplate *a, const TmTemplate *b);
/* TRUE when it changes nothing of a report; NULL does not either. */
gboolean tm_template_is_empty (const TmTemplate *template);

/* Frees what @slot holds and puts a copy of @text in its place; NULL counts as "". */
void tm_template_set_text (char **slot, const char *text);
/* Takes the logo with its digest; NULL takes it away. */
void tm_template_set_logo (TmTemplate *template, GBytes *logo, const char *media);
TmTemplateField *tm_template_add_field (TmTemplate *template, const char *name, gboolean required);
TmTemplateStatement *tm_template_add_statement (TmTemplate *template, TmStatementPlace place);
void tm_template_statement_add_text (TmTemplateStatement *statement, const char *language, const char *text);

/* FALSE where the template leaves the column out; NULL shows all. */
gboolean tm_template_shows (const TmTemplate *template, TmTemplateColumn column);
/* NULL: no such field. */
const TmTemplateField *tm_template_find_field (const TmTemplate *template, const char *name);
/* The statement's text in @language ("de_AT" falls back to "de"), else that for any language, else its first;
 * NULL for a statement without a text.  Borrowed. */
const char *tm_statement_text (const TmTemplateStatement *statement, const char *language);

/* -------- Colour -------- */

/* "#1a5f7a", and nothing else. */
gboolean tm_colour_read (const char *text, guint32 *colour);
char *tm_colour_format (guint32 colour) G_GNUC_WARN_UNUSED_RESULT;
/* The contrast of two sRGB colours, 1 to 21 (WCAG 2.1, "contrast ratio" and "relative luminance"). */
double tm_colour_contrast (guint32 a, guint32 b);
/* Black or white, whichever can be read better on @ground; their contrast is never under 4.58. */
guint32 tm_colour_text_on (guint32 ground);
/* What type below 14 points in bold needs to be read, as the heads of sections are (WCAG 2.1, success
 * criterion 1.4.3). */
#define TM_COLOUR_READABLE 4.5
/* Whether heads in the accent can be read on white paper; where not it only colours lines. */
gboolean tm_template_accent_reads (const TmTemplate *template);

/* -------- Checking -------- */

typedef enum {
  TM_TEMPLATE_OK,
  TM_TEMPLATE_NAME_LONG,
  TM_TEMPLATE_NAME_LINES, /* more than one line */
  TM_TEMPLATE_ADDRESS_LONG,
  TM_TEMPLATE_LOGO_LARGE,
  TM_TEMPLATE_LOGO_MEDIA,   /* no kind of picture that can be drawn */
  TM_TEMPLATE_LOGO_CHANGED, /* the bytes do not give the digest */
  TM_TEMPLATE_FIELD_UNNAMED,
  TM_TEMPLATE_FIELD_LONG,
  TM_TEMPLATE_FIELD_TWICE,
  TM_TEMPLATE_FIELDS_MANY,
  TM_TEMPLATE_STATEMENT_EMPTY, /* no text, or an empty one */
  TM_TEMPLATE_STATEMENT_LONG,
  TM_TEMPLATE_STATEMENT_LANGUAGE, /* no language code */
  TM_TEMPLATE_STATEMENT_TWICE,    /* two texts for one language */
  TM_TEMPLATE_STATEMENTS_MANY,
  TM_N_TEMPLATE_STATUSES
} TmTemplateStatus;

/* The first thing that is wrong; @row gets which field or statement, from 0; may be NULL. */
TmTemplateStatus tm_template_check (const TmTemplate *template, guint *row);
/* What is wrong and what mends it, marked for translation. */
const char *tm_template_status_text (TmTemplateStatus status);

/* "de", "pt_BR", "sr@latin": the form of a language code. */
gboolean tm_language_code_is_formed (const char *code);

G_END_DECLS
