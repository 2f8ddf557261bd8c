/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-json.h"

const char *
tm_json_text (const TmJsonRow *row, guint member)
{
  return row->slots[member].given ? row->texts->str + row->slots[member].at : "";
}

const char *
tm_json_inner_text (const TmJsonRow *row, guint object, guint member)
{
  const TmJsonSlot *slot = &row->inner[tm_json_object_index (row->shape, object)][member];

  return slot->given ? row->texts->str + slot->at : "";
}

const char *
tm_json_inner_extra (const TmJsonRow *row, guint object)
{
  return row->inner_extra[tm_json_object_index (row->shape, object)]->str;
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

guint
tm_json_object_index (const TmJsonMember *shape, guint object)
{
  guint n = 0;

  for (guint i = 0; i < object; i++)
    n += shape[i].type == TM_JSON_OBJECT;
  return n;
}

char *
tm_json_inner_path (const TmJsonRow *row, guint object, guint member)
{
  g_autofree char *path = tm_json_path (row, (int)object);

  return g_strconcat (path, ".", row->shape[object].inside[member].key, NULL);
}
