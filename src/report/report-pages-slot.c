/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-pages-slot: the texts of one row with where they stand across, and how wide a table's columns are.
 */

#include "report-pages-private.h"

#define LONGEST_MEASURE 540.0 /* points: longer lines of running text are hard to read */
#define FACT_GAP        14.0
#define LANGUAGE_GAP    14.0
#define LONGEST_WORD    84.0 /* of a table's cell that is not broken */
#define TITLE_LINES     2    /* of a column's head, where there is room */

/* -------- Columns of a table -------- */

static TmTypeStyle
get_style (const TmReportCell *cell)
{
  return cell->role == TM_CELL_STRONG ? TM_TYPE_STRONG : TM_TYPE_CELL;
}

static double
get_indent (TmCellRole role)
{
  return role == TM_CELL_VERDICT ? TM_MARK_ROOM : 0.0;
}

typedef struct {
  double natural; /* for its longest text, as far as is wished */
  double least;
} Wish;

/* The widest text and the widest word of a column, both with what stands before them. */
static void
measure_cells (TmPages *pages, const TmReportBlock *block, guint column, double *text, double *word)
{
  const char *last = NULL;

  *text = *word = 0.0;
  for (guint row = 0; row < tm_report_block_rows (block); row++)
    {
      const TmReportCell *cell = tm_report_block_cell (block, row, column);
      double indent;

      if (cell == NULL || *cell->text == '\0' || cell->text == last)
        continue;
      indent = get_indent (cell->role);
      *text = MAX (*text, tm_type_width (pages->type, get_style (cell), cell->text) + indent);
      *word = MAX (*word, tm_type_word (pages->type, get_style (cell), cell->text) + indent);
      last = cell->text;
    }
}

/* A column's title and words of usual length are never broken, nor are numbers and verdicts; a longer word
 * makes way. */
static Wish
find_wish (TmPages *pages, const TmReportBlock *block, guint column)
{
  const TmReportColumn *own = &block->columns[column];
  const double title = tm_type_word (pages->type, TM_TYPE_HEAD, own->title) + 2 * TM_TABLE_GAP;
  double text, word;
  gboolean whole;
  Wish wish;

  measure_cells (pages, block, column, &text, &word);
  text += 2 * TM_TABLE_GAP;
  word += 2 * TM_TABLE_GAP;
  wish.natural = own->most > 0 ? MIN (text, own->most) : text;
  whole = own->role == TM_CELL_NUMBER || own->role == TM_CELL_VERDICT;
  wish.least = MAX (own->least, whole ? wish.natural : MIN (word, LONGEST_WORD));
  wish.least = MAX (wish.least, title);
  wish.natural = MAX (wish.natural, wish.least);
  return wish;
}

/* Takes from what each column has above its least; where that is not enough, all give way alike. */
static void
narrow (TmTableColumns *columns, const double *least, guint n, double room)
{
  double spare = 0.0, total = 0.0, take;

  for (guint i = 0; i < n; i++)
    {
      spare += MAX (0.0, columns->width[i] - least[i]);
      total += columns->width[i];
    }
  take = spare > 0 ? MIN (1.0, (total - room) / spare) : 0.0;
  for (guint i = 0; i < n; i++)
    columns->width[i] -= take * MAX (0.0, columns->width[i] - least[i]);
  total -= take * spare;
  for (guint i = 0; i < n && total > room; i++)
    columns->width[i] *= room / total;
}

/* The least width, in steps, in which a title takes two lines; it is seldom much above half. */
static double
find_title_width (TmPages *pages, const char *title)
{
  const double whole = tm_type_width (pages->type, TM_TYPE_HEAD, title);
  double width = 0.5 * whole;

  while (width < whole && tm_type_measure (pages->type, TM_TYPE_HEAD, title, width).lines > TITLE_LINES)
    width += 0.05 * whole;
  return whole > 0 ? MIN (width, whole) + 2 * TM_TABLE_GAP : 0.0;
}

static void
widen (TmTableColumns *columns, const TmReportBlock *block, double rest)
{
  double shares = 0.0;

  for (guint i = 0; i < block->n_columns; i++)
    shares += block->columns[i].share;
  for (guint i = 0; i < block->n_columns && shares > 0; i++)
    columns->width[i] += rest * block->columns[i].share / shares;
}

/* Titles of more lines than two are given room first. */
static double
widen_titles (TmPages *pages, TmTableColumns *columns, const TmReportBlock *block, double rest)
{
  double wished[TM_DOCUMENT_COLUMNS], total = 0.0, part;

  for (guint i = 0; i < block->n_columns; i++)
    {
      wished[i] = MAX (0.0, find_title_width (pages, block->columns[i].title) - columns->width[i]);
      total += wished[i];
    }
  part = total > 0 ? MIN (1.0, rest / total) : 0.0;
  for (guint i = 0; i < block->n_columns; i++)
    columns->width[i] += part * wished[i];
  return rest - part * total;
}

static TmTableColumns *
make_columns (TmPages *pages, const TmReportBlock *block)
{
  TmTableColumns *columns = g_new0 (TmTableColumns, 1);
  double least[TM_DOCUMENT_COLUMNS], total = 0.0;
  const double room = pages->right - pages->left;

  for (guint i = 0; i < block->n_columns; i++)
    {
      const Wish wish = find_wish (pages, block, i);

      columns->width[i] = wish.natural;
      least[i] = wish.least;
      total += columns->width[i];
    }
  if (total > room)
    narrow (columns, least, block->n_columns, room);
  else
    widen (columns, block, widen_titles (pages, columns, block, room - total));
  for (guint i = 0; i < block->n_columns; i++)
    {
      columns->x[i] = columns->total;
      columns->total += columns->width[i];
    }
  return columns;
}

const TmTableColumns *
tm_pages_columns (TmPages *pages, const TmReportBlock *block)
{
  TmTableColumns *columns = g_hash_table_lookup (pages->columns, block);

  if (columns == NULL)
    {
      columns = make_columns (pages, block);
      g_hash_table_insert (pages->columns, (gpointer)block, columns);
    }
  return columns;
}

/* -------- Slots -------- */

static TmTypeSetting
get_setting (TmCellRole role)
{
  return role == TM_CELL_NUMBER ? TM_SET_END : role == TM_CELL_CENTRE ? TM_SET_CENTRE : TM_SET_START;
}

static TmSlot
make_table_slot (TmPages *pages, const TmReportBlock *block, guint row, guint column, gboolean head)
{
  const TmTableColumns *columns = tm_pages_columns (pages, block);
  const TmReportCell *cell = head ? NULL : tm_report_block_cell (block, row, column);
  const TmCellRole role = cell != NULL ? cell->role : block->columns[column].role;
  const double indent = head ? 0.0 : get_indent (role);
  TmSlot slot = { .cell = cell, .label = "", .text = head ? block->columns[column].title : "" };

  slot.style = head || cell == NULL ? TM_TYPE_HEAD : get_style (cell);
  if (cell != NULL)
    slot.text = cell->text;
  slot.setting = get_setting (role);
  slot.x = columns->x[column] + TM_TABLE_GAP + indent;
  slot.width = columns->width[column] - 2 * TM_TABLE_GAP - indent;
  return slot;
}

static TmSlot
make_fact_slot (TmPages *pages, const TmReportBlock *block, guint row, guint column)
{
  const TmReportCell *cell = tm_report_block_cell (block, row, column);
  const double width = (pages->right - pages->left + FACT_GAP) / block->n_columns;
  TmSlot slot = { .cell = cell, .label = "", .text = "", .style = TM_TYPE_FACT };

  if (cell != NULL)
    {
      slot.label = cell->label;
      slot.text = cell->text;
    }
  slot.x = width * column;
  slot.width = width - FACT_GAP;
  return slot;
}

/* One text, or one in each language beside each other. */
static guint
make_line_slots (TmPages *pages, const TmReportBlock *block, TmSlot *slots)
{
  const double room = pages->right - pages->left;
  const double half = (room - LANGUAGE_GAP) / 2.0;
  const TmTypeStyle body = block->dim ? TM_TYPE_NOTE : TM_TYPE_BODY;

  slots[0] = (TmSlot) { .label = "", .text = block->text, .style = TM_TYPE_HEADING, .width = room };
  if (block->kind != TM_BLOCK_PARAGRAPH)
    return 1;
  slots[0].style = body;
  slots[0].width = MIN (room, LONGEST_MEASURE);
  if (block->beside == NULL)
    return 1;
  slots[0].width = half;
  slots[1] = slots[0];
  slots[1].text = block->beside;
  slots[1].x = half + LANGUAGE_GAP;
  return 2;
}

guint
tm_pages_slots (TmPages *pages, const TmReportBlock *block, guint row, gboolean head, TmSlot *slots)
{
  if (block->cells == NULL)
    return make_line_slots (pages, block, slots);
  for (guint i = 0; i < block->n_columns; i++)
    slots[i] = block->kind == TM_BLOCK_TABLE ? make_table_slot (pages, block, row, i, head)
                                             : make_fact_slot (pages, block, row, i);
  return block->n_columns;
}

/* -------- Heights -------- */

static void
set_room (const TmReportBlock *block, gboolean head, TmRowExtent *extent)
{
  extent->above = extent->below = 0.0;
  if (block->kind == TM_BLOCK_TABLE)
    extent->above = extent->below = head ? 3.0 : 2.2;
  else if (block->kind == TM_BLOCK_FACTS)
    extent->above = 2.0, extent->below = 4.0;
  else if (block->kind == TM_BLOCK_SIGNATURES)
    extent->above = 2.0, extent->below = 4.0 + TM_INK_ROOM;
}

TmRowExtent
tm_pages_row_extent (TmPages *pages, const TmReportBlock *block, guint row, gboolean head)
{
  TmSlot slots[TM_DOCUMENT_COLUMNS];
  const guint n = tm_pages_slots (pages, block, row, head, slots);
  TmRowExtent extent = { 0 };
  const double line = tm_type_line (pages->type, slots[0].style);
  double text_height = 0.0;
  guint text_lines = 0;

  extent.highest = line;
  for (guint i = 0; i < n; i++)
    {
      const TmTypeExtent label = tm_type_measure (pages->type, TM_TYPE_LABEL, slots[i].label, slots[i].width);
      const TmTypeExtent text = tm_type_measure (pages->type, slots[i].style, slots[i].text, slots[i].width);

      extent.labels = MAX (extent.labels, label.lines);
      extent.labels_height = MAX (extent.labels_height, label.height);
      text_lines = MAX (text_lines, text.lines);
      text_height = MAX (text_height, text.height);
      extent.highest = MAX (extent.highest, MAX (label.highest, text.highest));
    }
  extent.lines = MAX (1u, extent.labels + text_lines);
  set_room (block, head, &extent);
  extent.height = MAX (line, extent.labels_height + text_height) + extent.above + extent.below;
  return extent;
}
