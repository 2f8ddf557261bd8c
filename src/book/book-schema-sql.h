/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-schema-sql: what the tables of a book have in common, as SQL.
 *
 * The released steps are spelt with these, and a book's schema is held to its text: they never change.  A
 * table of another kind gets words of its own.
 */

#pragma once

/* In a trigger before an insert a number that SQLite is to choose is still -1: see the seal.
 *
 * A table whose rows are there for good.  The third trigger stops INSERT OR REPLACE, which deletes
 * without telling a delete trigger. */
#define GROWS(table_, same_)                                                                        \
  "CREATE TRIGGER " table_ "_stays BEFORE UPDATE ON " table_                                        \
  " BEGIN SELECT raise (ABORT, 'the book only grows: no row of " table_ " can be changed'); END;\n" \
  "CREATE TRIGGER " table_ "_remains BEFORE DELETE ON " table_                                      \
  " BEGIN SELECT raise (ABORT, 'the book only grows: no row of " table_ " can be deleted'); END;\n" \
  "CREATE TRIGGER " table_ "_follows BEFORE INSERT ON " table_ " WHEN " same_                       \
  " BEGIN SELECT raise (FAIL, 'the book only grows: that row of " table_ " is already there'); END;\n"

#define BY_SEQ(table_) "new.seq <= (SELECT max (seq) FROM " table_ ")"
#define BY_SEQ_AND_ID(table_) \
  BY_SEQ (table_) " OR EXISTS (SELECT 1 FROM " table_ " WHERE job = new.job AND id = new.id)"

#define START                                                                                             \
  "seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL " \
  "REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED"
#define VERSIONED                                                                                          \
  START ", key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), " \
        "changed_by TEXT NOT NULL, changed_at TEXT NOT NULL"

/* A definition: each row is a version; the newest row of a key holds.  Each of its @columns_ begins with a
 * comma. */
#define DEFINITION_OF(table_, columns_)                                                         \
  "CREATE TABLE " table_ " (" VERSIONED columns_ ") STRICT;\n"                                  \
  "CREATE INDEX " table_ "_key ON " table_ " (job, key);\n"                                     \
  "CREATE VIEW current_" table_ " AS SELECT * FROM " table_ " AS v WHERE removed = 0 AND seq =" \
  " (SELECT max (seq) FROM " table_                                                             \
  " AS w WHERE w.job = v.job AND w.key = v.key);\n" GROWS (table_, BY_SEQ (table_))

/* A row of the record: its own @columns_, who and when, then those that joined later. */
#define RECORD_OF(table_, columns_, later_)                                                         \
  "CREATE TABLE " table_ " (" START                                                                 \
  ", id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL" columns_                         \
  ", taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL," \
  " extra TEXT NOT NULL" later_ ", UNIQUE (job, id)) STRICT;\n"                                     \
  "CREATE INDEX " table_ "_job ON " table_ " (job);\n"                                              \
  "CREATE UNIQUE INDEX " table_ "_correction ON " table_                                            \
  " (job, replaces) WHERE replaces <> '';\n" GROWS (table_, BY_SEQ_AND_ID (table_))

/* The tables that no step has touched since the first. */
#define JOURNAL                                                                                         \
  "CREATE TABLE journal (seq INTEGER PRIMARY KEY CHECK (seq > 0), job INTEGER NOT NULL, kind TEXT NOT " \
  "NULL, payload TEXT NOT NULL, prev BLOB NOT NULL CHECK (length (prev) = 32)) STRICT;\n" GROWS (       \
      "journal", BY_SEQ ("journal"))

#define SEAL                                                                                         \
  "CREATE TABLE seal (n INTEGER PRIMARY KEY AUTOINCREMENT, seq INTEGER NOT NULL REFERENCES journal " \
  "(seq), hash BLOB NOT NULL CHECK (length (hash) = 32)) STRICT;\n" GROWS (                          \
      "seal", "new.n > 0 AND new.n <= (SELECT max (n) FROM seal)")

#define JOB                                                                                            \
  "CREATE TABLE job (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, " \
  "job INTEGER NOT NULL CHECK (job = seq), id TEXT NOT NULL UNIQUE) STRICT;\n" GROWS (                 \
      "job", BY_SEQ ("job") " OR EXISTS (SELECT 1 FROM job WHERE id = new.id)")

/* The bytes of files, each once in a job. */
#define CONTENT                                                                                     \
  "CREATE TABLE content (" START                                                                    \
  ", digest TEXT NOT NULL, length INTEGER NOT NULL, bytes BLOB NOT NULL, UNIQUE (job, digest)) "    \
  "STRICT;\n" GROWS ("content", BY_SEQ ("content") " OR EXISTS (SELECT 1 FROM content WHERE job = " \
                                                   "new.job AND digest = new.digest)")

#define WITHDRAWAL                                                                                   \
  "CREATE TABLE withdrawal (" START                                                                  \
  ", target TEXT NOT NULL, id TEXT NOT NULL, done_by TEXT NOT NULL, done_at TEXT NOT NULL,"          \
  " reason TEXT NOT NULL, extra TEXT NOT NULL, UNIQUE (job, target, id)) STRICT;\n" GROWS (          \
      "withdrawal", BY_SEQ ("withdrawal") " OR EXISTS (SELECT 1 FROM withdrawal WHERE job = new.job" \
                                          " AND target = new.target AND id = new.id)")

/* What belongs to the whole shop: its job is 0.  Each of its @columns_ begins with a comma. */
#define SHOP_OF(table_, columns_, same_)                                                            \
  "CREATE TABLE " table_ " (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY " \
  "DEFERRED, job INTEGER NOT NULL CHECK (job = 0)" columns_                                         \
  ") STRICT;\n" GROWS (table_, BY_SEQ (table_) same_)

/* The bytes of the shop's own files, each once. */
#define SHOP_CONTENT                                                                                      \
  SHOP_OF ("shop_content", ", digest TEXT NOT NULL UNIQUE, length INTEGER NOT NULL, bytes BLOB NOT NULL", \
           " OR EXISTS (SELECT 1 FROM shop_content WHERE digest = new.digest)")

/* Belongs to a version of the template. */
#define OF_TEMPLATE ", template INTEGER NOT NULL REFERENCES template (seq) DEFERRABLE INITIALLY DEFERRED"

/* The shop's report template: each row is a version, the newest holds; the rows of its fields and statements
 * are written with it.  With @later_, the columns that joined it since. */
#define TEMPLATE_OF(later_)                                                                                \
  SHOP_OF (                                                                                                \
      "template",                                                                                          \
      ", changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, address TEXT NOT NULL"    \
      ", accent TEXT NOT NULL, hidden TEXT NOT NULL, logo TEXT NOT NULL, logo_media TEXT NOT NULL" later_, \
      "")                                                                                                  \
  SHOP_OF ("template_field",                                                                               \
           OF_TEMPLATE ", name TEXT NOT NULL, required INTEGER NOT NULL CHECK (required IN (0, 1))", "")   \
  "CREATE INDEX template_field_of ON template_field (template);\n" SHOP_OF (                               \
      "template_text",                                                                                     \
      OF_TEMPLATE ", statement INTEGER NOT NULL, place TEXT NOT NULL, language TEXT NOT NULL"              \
                  ", text TEXT NOT NULL",                                                                  \
      "") "CREATE INDEX template_text_of ON template_text (template);\n"
