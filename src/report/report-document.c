/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-document.h"

#include <string.h>

#define TEXT_BLOCK 4096

/* -------- The whole -------- */

static void
free_block_cb (gpointer data)
{
  TmReportBlock *block = data;

  if (block->picture.free != NULL)
    block->picture.free (block->picture.data);
  if (block->cells != NULL)
    g_array_unref (block->cells);
  g_free (block->columns);
  g_free (block);
}

static void
free_section_cb (gpointer data)
{
  TmReportSection *section = data;

  g_ptr_array_unref (section->blocks);
  g_free (section);
}

TmReportDocument *
tm_report_document_new (const char *title)
{
  TmReportDocument *document = g_new0 (TmReportDocument, 1);

  document->texts = g_string_chunk_new (TEXT_BLOCK);
  document->sections = g_ptr_array_new_with_free_func (free_section_cb);
  document->title = tm_report_text (document, title);
  document->subtitle = document->head_left = document->head_right = document->foot = document->shop.name
      = document->shop.address = tm_report_text (document, "");
  return document;
}

void
tm_report_document_free (TmReportDocument *document)
{
  if (document == NULL)
    return;
  g_ptr_array_unref (document->sections);
  g_clear_pointer (&document->shop.logo, tm_drawing_page_unref);
  g_string_chunk_free (document->texts);
  g_free (document);
}

const char *
tm_report_text (TmReportDocument *document, const char *text)
{
  g_autofree char *valid = NULL;

  if (text == NULL)
    return g_string_chunk_insert_const (document->texts, "");
  if (g_utf8_validate (text, -1, NULL))
    return g_string_chunk_insert_const (document->texts, text);
  valid = g_utf8_make_valid (text, -1);
  return g_string_chunk_insert_const (document->texts, valid);
}

/* -------- Sections and blocks -------- */

static TmReportSection *
last_section (TmReportDocument *document)
{
  g_assert (document->sections->len > 0);
  return g_ptr_array_index (document->sections, document->sections->len - 1);
}

static TmReportBlock *
last_block (TmReportDocument *document)
{
  const TmReportSection *section = last_section (document);

  g_assert (section->blocks->len > 0);
  return g_ptr_array_index (section->blocks, section->blocks->len - 1);
}

static TmReportBlock *
add_block (TmReportDocument *document, TmBlockKind kind)
{
  TmReportBlock *block = g_new0 (TmReportBlock, 1);

  block->kind = kind;
  g_ptr_array_add (last_section (document)->blocks, block);
  return block;
}

void
tm_report_add_section (TmReportDocument *document, const char *title, const char *name, gboolean starts_page)
{
  TmReportSection *section = g_new0 (TmReportSection, 1);

  section->title = tm_report_text (document, title);
  section->name = tm_report_text (document, name);
  section->starts_page = starts_page;
  section->blocks = g_ptr_array_new_with_free_func (free_block_cb);
  g_ptr_array_add (document->sections, section);
}

void
tm_report_add_heading (TmReportDocument *document, const char *text)
{
  add_block (document, TM_BLOCK_HEADING)->text = tm_report_text (document, text);
}

void
tm_report_add_paragraphs (TmReportDocument *document, const char *text, const char *beside, gboolean dim)
{
  TmReportBlock *block;

  if (text == NULL || *text == '\0')
    return;
  block = add_block (document, TM_BLOCK_PARAGRAPH);
  block->text = tm_report_text (document, text);
  if (beside != NULL && *beside != '\0' && !g_str_equal (text, beside))
    block->beside = tm_report_text (document, beside);
  block->dim = dim;
}

void
tm_report_add_paragraph (TmReportDocument *document, const char *text, gboolean dim)
{
  tm_report_add_paragraphs (document, text, NULL, dim);
}

static TmReportBlock *
add_cells_block (TmReportDocument *document, TmBlockKind kind, guint n_columns)
{
  TmReportBlock *block = add_block (document, kind);

  g_assert (n_columns > 0 && n_columns <= TM_DOCUMENT_COLUMNS);
  block->n_columns = n_columns;
  block->cells = g_array_new (FALSE, FALSE, sizeof (TmReportCell));
  return block;
}

static void
add_cell (TmReportDocument *document, const TmReportCell *cell)
{
  g_array_append_val (last_block (document)->cells, *cell);
}

/* -------- Facts and signatures -------- */

void
tm_report_begin_facts (TmReportDocument *document, guint n_columns)
{
  add_cells_block (document, TM_BLOCK_FACTS, n_columns);
}

void
tm_report_add_fact (TmReportDocument *document, const char *label, const char *value)
{
  const TmReportCell cell
      = { .label = tm_report_text (document, label), .text = tm_report_text (document, value) };

  g_assert (last_block (document)->kind == TM_BLOCK_FACTS);
  add_cell (document, &cell);
}

void
tm_report_begin_signatures (TmReportDocument *document, guint n_columns)
{
  add_cells_block (document, TM_BLOCK_SIGNATURES, n_columns);
}

void
tm_report_add_signature (TmReportDocument *document, const char *label, const char *text)
{
  const TmReportCell cell = { .label = tm_report_text (document, label),
                              .text = tm_report_text (document, text),
                              .by_hand = text == NULL || *text == '\0' };

  g_assert (last_block (document)->kind == TM_BLOCK_SIGNATURES);
  add_cell (document, &cell);
}

/* -------- Tables -------- */

void
tm_report_begin_table (TmReportDocument *document, const TmReportColumn *columns, guint n)
{
  TmReportBlock *block = add_cells_block (document, TM_BLOCK_TABLE, n);

  block->columns = g_memdup2 (columns, n * sizeof *columns);
  for (guint i = 0; i < n; i++)
    block->columns[i].title = tm_report_text (document, columns[i].title);
}

void
tm_report_add_cell_as (TmReportDocument *document, TmCellRole role, const char *text)
{
  const TmReportCell cell = { .text = tm_report_text (document, text), .role = (guint8)role };

  g_assert (last_block (document)->kind == TM_BLOCK_TABLE);
  add_cell (document, &cell);
}

void
tm_report_add_cell (TmReportDocument *document, const char *text)
{
  const TmReportBlock *block = last_block (document);

  tm_report_add_cell_as (document, block->columns[block->cells->len % block->n_columns].role, text);
}

void
tm_report_add_verdict (TmReportDocument *document, TmVerdict verdict, guint point, const char *text)
{
  const TmReportCell cell = { .text = tm_report_text (document, text),
                              .role = TM_CELL_VERDICT,
                              .verdict = (guint8)verdict,
                              .point = (guint8)point };

  g_assert (last_block (document)->kind == TM_BLOCK_TABLE);
  add_cell (document, &cell);
}

void
tm_report_link_cell (TmReportDocument *document, const char *name)
{
  const TmReportBlock *block = last_block (document);

  g_assert (block->cells != NULL && block->cells->len > 0);
  g_array_index (block->cells, TmReportCell, block->cells->len - 1).link = tm_report_text (document, name);
}

/* -------- Pictures -------- */

void
tm_report_add_picture (TmReportDocument *document, const TmReportPicture *picture, const char *caption,
                       const char *name)
{
  TmReportBlock *block = add_block (document, TM_BLOCK_PICTURE);

  block->picture = *picture;
  block->text = tm_report_text (document, caption);
  block->name = name != NULL ? tm_report_text (document, name) : NULL;
}

/* -------- Reading -------- */

guint
tm_report_block_rows (const TmReportBlock *block)
{
  return block->cells != NULL ? (block->cells->len + block->n_columns - 1) / block->n_columns : 1;
}

const TmReportCell *
tm_report_block_cell (const TmReportBlock *block, guint row, guint column)
{
  const guint at = row * block->n_columns + column;

  if (block->cells == NULL || column >= block->n_columns || at >= block->cells->len)
    return NULL;
  return &g_array_index (block->cells, TmReportCell, at);
}
