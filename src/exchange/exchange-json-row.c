/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-json.h"

const char *
tm_json_text (const TmJsonRow *row, guint member)
{
  return row->slots[member].given ? row->texts->str + row->slots[member].at : "";
}

const char *
tm_json_inner_text (const TmJsonRow *row, guint member)
{
  return row->inner[member].given ? row->texts->str + row->inner[member].at : "";
}

const char *
tm_json_list_text (const TmJsonRow *row, guint member, guint index)
{
  return row->texts->str + g_array_index (row->lists, gsize, row->slots[member].at + index);
}

guint
tm_json_list_length (const TmJsonRow *row, guint member)
{
  return row->slots[member].given ? row->slots[member].whole : 0;
}

char *
tm_json_path (const TmJsonRow *row, int member)
{
  g_autoptr (GString) path = g_string_new (row->section);

  if (row->in_list)
    g_string_append_printf (path, "[%u]", row->index);
  if (member >= 0)
    g_string_append_printf (path, ".%s", row->shape[member].key);
  return g_string_free (g_steal_pointer (&path), FALSE);
}

static guint
find_object_member (const TmJsonMember *shape)
{
  guint i = 0;

  while (shape[i].type != TM_JSON_OBJECT)
    i++;
  return i;
}

char *
tm_json_inner_path (const TmJsonRow *row, guint member)
{
  guint object = find_object_member (row->shape);
  g_autofree char *path = tm_json_path (row, (int)object);

  return g_strconcat (path, ".", row->shape[object].inside[member].key, NULL);
}
