/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-table-build.h"

#include <glib/gi18n-lib.h>

#define MAX_NUMBER 999999999

/* The preview. */

static void
free_table_row (gpointer data)
{
  TmTableRow *row = data;

  g_clear_pointer (&row->feature, tm_feature_free);
  g_free (row->problem);
  g_free (row->remark);
  g_free (row);
}

TmTablePreview *
tm_table_preview_new (void)
{
  TmTablePreview *preview = g_new0 (TmTablePreview, 1);

  preview->rows = g_ptr_array_new_with_free_func (free_table_row);
  preview->unused = g_ptr_array_new_with_free_func (g_free);
  return preview;
}

void
tm_table_preview_add (TmTablePreview *preview, TmTableRow *row)
{
  g_ptr_array_add (preview->rows, row);
  preview->n_addable += row->problem == NULL;
}

void
tm_table_preview_free (TmTablePreview *preview)
{
  g_ptr_array_unref (preview->rows);
  g_ptr_array_unref (preview->unused);
  g_free (preview->remark);
  g_free (preview);
}

/* Members of a row. */

static void
set_text (TmJsonRow *row, guint member, const char *text)
{
  row->slots[member].given = TRUE;
  row->slots[member].at = row->texts->len;
  g_string_append (row->texts, text);
  g_string_append_c (row->texts, '\0');
}

/* Sets a count; FALSE when the text holds none. */
static gboolean
set_whole (TmJsonRow *row, guint member, const char *text)
{
  guint64 whole;

  if (!g_ascii_string_to_unsigned (text, 10, 0, MAX_NUMBER, &whole, NULL))
    return FALSE;
  row->slots[member].given = TRUE;
  row->slots[member].whole = (guint)whole;
  return TRUE;
}

void
tm_table_builder_start (TmTableBuilder *builder)
{
  memset (builder->row.slots, 0, sizeof builder->row.slots);
  g_string_truncate (builder->row.texts, 0);
}

char *
tm_table_builder_set (TmTableBuilder *builder, guint member, const char *text)
{
  TmJsonRow *row = &builder->row;
  g_autofree char *lower = g_ascii_strdown (text, -1);
  g_autofree char *quoted = NULL;

  if (*text == '\0')
    return NULL;
  if (row->shape[member].type != TM_JSON_WHOLE)
    {
      gboolean is_word = member == FEATURE_KIND || member == FEATURE_CLASS || member == FEATURE_CHECK;

      set_text (row, member, is_word ? lower : text);
      return NULL;
    }
  if (set_whole (row, member, text))
    return NULL;
  quoted = tm_exchange_quote (text);
  return g_strdup_printf (_ ("places: %s is no whole number; write it like 4"), quoted);
}

/* Balloons. */

void
tm_table_builder_note (TmTableBuilder *builder, const char *balloon)
{
  guint64 number;

  if (g_ascii_string_to_unsigned (balloon, 10, 0, MAX_NUMBER - 1, &number, NULL))
    builder->next_number = MAX (builder->next_number, (guint)number + 1);
}

static void
number_row (TmTableBuilder *builder)
{
  g_autofree char *number = NULL;

  if (*tm_json_text (&builder->row, FEATURE_BALLOON) != '\0')
    return;
  number = g_strdup_printf ("%u", builder->next_number);
  set_text (&builder->row, FEATURE_BALLOON, number);
}

/* Why @feature cannot join the job, or NULL. */
static char *
check_balloon (const TmTableBuilder *builder, const TmFeature *feature)
{
  if (tm_job_find_feature (builder->job, feature->balloon) != NULL)
    return g_strdup_printf (_ ("balloon %s is in the job already; give it another number"), feature->balloon);
  if (g_hash_table_contains (builder->taken, feature->balloon))
    return g_strdup_printf (_ ("balloon %s stands in a row before; give it another number"),
                            feature->balloon);
  return NULL;
}

/* Features. */

static gboolean
is_empty (const TmJsonRow *row)
{
  return *tm_json_text (row, FEATURE_REQUIREMENT) == '\0' && *tm_json_text (row, FEATURE_LOWER) == '\0'
         && *tm_json_text (row, FEATURE_UPPER) == '\0';
}

void
tm_table_builder_finish (TmTableBuilder *builder, TmTableRow *out)
{
  g_autoptr (GError) error = NULL;
  TmFeature *feature;

  if (is_empty (&builder->row))
    {
      out->problem = g_strdup (_ ("has neither a requirement nor limits; give it one of them"));
      return;
    }
  number_row (builder);
  feature = tm_read_feature (builder->job, &builder->row, &out->read, &error);
  if (feature == NULL)
    {
      /* The path in the row is ".lower": the preview names the line itself. */
      out->problem = g_strdup (error->message + (*error->message == '.' ? 1 : 0));
      return;
    }
  if (feature->kind != TM_KIND_NOTE)
    out->read = TM_CALLOUT_OK;
  out->feature = feature;
  out->problem = check_balloon (builder, feature);
  g_hash_table_add (builder->taken, (gpointer)feature->balloon);
  tm_table_builder_note (builder, feature->balloon);
}

void
tm_table_builder_init (TmTableBuilder *builder, TmJob *job)
{
  *builder = (TmTableBuilder) { .job = job, .next_number = 1 };
  builder->row.source = builder->row.section = "";
  builder->row.shape = tm_job_sections[IN_FEATURES].inside;
  builder->row.texts = g_string_new (NULL);
  builder->row.extra = g_string_new (NULL);
  for (guint i = 0; i < TM_JSON_MAX_OBJECTS; i++)
    builder->row.inner_extra[i] = g_string_new (NULL);
  builder->row.lists = g_array_new (FALSE, FALSE, sizeof (gsize));
  builder->taken = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < job->features->len; i++)
    tm_table_builder_note (builder, ((TmFeature *)g_ptr_array_index (job->features, i))->balloon);
}

void
tm_table_builder_clear (TmTableBuilder *builder)
{
  g_string_free (builder->row.texts, TRUE);
  g_string_free (builder->row.extra, TRUE);
  for (guint i = 0; i < TM_JSON_MAX_OBJECTS; i++)
    g_string_free (builder->row.inner_extra[i], TRUE);
  g_array_unref (builder->row.lists);
  g_hash_table_unref (builder->taken);
}
