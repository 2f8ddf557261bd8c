/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-settings.h"

#include <gio/gio.h>

#define SCHEMA "org.tenthmark.Tenthmark"

typedef struct {
  const char *key;
  const char *value; /* as GVariant text */
} Default;

/* Mirrors the schema; used when it is not installed. */
static const Default defaults[] = {
  { "style", "'system'" },      { "initials", "''" },
  { "order", "'piece-first'" }, { "gauges-view", "'register'" },
  { "picture", "'band'" },      { "maximized", "false" },
  { "width", "1280" },          { "height", "720" },
  { "report-paper", "''" },     { "report-landscape", "false" },
  { "report-decimal", "''" },   { "report-dates", "''" },
};

/* The settings, or NULL when the schema is missing. */
static GSettings *
open_settings (void)
{
  static gsize once;
  static GSettings *settings;

  if (g_once_init_enter (&once))
    {
      GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
      g_autoptr (GSettingsSchema) schema = NULL;

      if (source != NULL)
        schema = g_settings_schema_source_lookup (source, SCHEMA, TRUE);
      if (schema != NULL)
        settings = g_settings_new_full (schema, NULL, NULL);
      g_once_init_leave (&once, 1);
    }
  return settings;
}

/* What was set during this start, for when there is no schema: key -> GVariant. */
static GHashTable *
held_values (void)
{
  static GHashTable *held;

  if (held == NULL)
    {
      held = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, (GDestroyNotify)g_variant_unref);
      for (gsize i = 0; i < G_N_ELEMENTS (defaults); i++)
        g_hash_table_insert (held, (gpointer)defaults[i].key,
                             g_variant_parse (NULL, defaults[i].value, NULL, NULL, NULL));
    }
  return held;
}

static GVariant *
get_value (const char *key)
{
  GSettings *settings = open_settings ();
  GVariant *value;

  if (settings != NULL)
    return g_settings_get_value (settings, key);
  value = g_hash_table_lookup (held_values (), key);
  g_assert (value != NULL);
  return g_variant_ref (value);
}

static void
set_value (const char *key, GVariant *value)
{
  GSettings *settings = open_settings ();

  if (settings != NULL)
    g_settings_set_value (settings, key, value);
  else
    g_hash_table_insert (held_values (), (gpointer)g_intern_string (key), g_variant_ref_sink (value));
}

char *
tm_settings_get_text (const char *key)
{
  g_autoptr (GVariant) value = get_value (key);

  return g_variant_dup_string (value, NULL);
}

void
tm_settings_set_text (const char *key, const char *text)
{
  set_value (key, g_variant_new_string (text));
}

gboolean
tm_settings_get_flag (const char *key)
{
  g_autoptr (GVariant) value = get_value (key);

  return g_variant_get_boolean (value);
}

void
tm_settings_set_flag (const char *key, gboolean flag)
{
  set_value (key, g_variant_new_boolean (flag));
}

int
tm_settings_get_number (const char *key)
{
  g_autoptr (GVariant) value = get_value (key);

  return g_variant_get_int32 (value);
}

void
tm_settings_set_number (const char *key, int number)
{
  set_value (key, g_variant_new_int32 (number));
}
