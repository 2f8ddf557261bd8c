/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-stack-panel.h"

#include <glib/gi18n-lib.h>

#include "app-form.h"
#include "core-blocks.h"

/* The set that is chosen. */
typedef struct {
  const char *name;
  TmUnit unit;
  const char *text;
  const char *source; /* translated, or "" */
} Set;

static gboolean
find_set (const TmStackPanel *panel, Set *set)
{
  guint chosen = tm_form_chosen (panel->set);
  TmBlockSet usual;

  if (chosen < panel->tags->len)
    {
      const TmGauge *gauge = tm_job_find_gauge (panel->job, g_ptr_array_index (panel->tags, chosen));

      if (gauge == NULL)
        return FALSE;
      *set = (Set) { gauge->tag, gauge->unit, gauge->blocks, "" };
      return TRUE;
    }
  if (!tm_block_set (chosen - panel->tags->len, &usual))
    return FALSE;
  *set = (Set) { usual.code, usual.unit, usual.text, g_dgettext (GETTEXT_PACKAGE, usual.source) };
  return TRUE;
}

static char *
format_size (gint64 size, TmUnit unit)
{
  return tm_count_format_exact (size, unit, unit == TM_UNIT_IN ? 4 : 0);
}

/* "1.005 + 1.34 + 6 + 50", with the wear blocks at its ends. */
static char *
join_stack (const GArray *stack, const TmQuantity *wear, TmUnit unit)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  if (wear->given)
    g_ptr_array_add (parts, format_size (wear->count, unit));
  for (guint i = 0; i < stack->len; i++)
    g_ptr_array_add (parts, format_size (g_array_index (stack, gint64, i), unit));
  if (wear->given)
    g_ptr_array_add (parts, format_size (wear->count, unit));
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (" + ", (char **)parts->pdata);
}

static void
show_stack (TmStackPanel *panel, const Set *set, const GArray *stack, const TmQuantity *wear)
{
  g_autofree char *joined = join_stack (stack, wear, set->unit);
  g_autofree char *large = g_strdup_printf ("%s %s", joined, tm_unit_symbol (set->unit));
  g_autofree char *blocks
      = g_strdup_printf (ngettext ("%u block of %s", "%u blocks of %s", stack->len), stack->len, set->name);
  g_autofree char *under
      = wear->given ? g_strdup_printf (_ ("%s, with a wear block at either end"), blocks) : g_strdup (blocks);

  tm_live_answer_set (&panel->answer, large, under);
}

/* What the set holds, while no size is asked for. */
static void
show_set (TmStackPanel *panel, const Set *set, const GArray *sizes)
{
  g_autofree char *least = format_size (g_array_index (sizes, gint64, 0), set->unit);
  g_autofree char *most = format_size (g_array_index (sizes, gint64, sizes->len - 1), set->unit);
  g_autofree char *holds = g_strdup_printf (
      ngettext ("%s holds %u size, %s to %s %s.", "%s holds %u sizes, %s to %s %s.", sizes->len), set->name,
      sizes->len, least, most, tm_unit_symbol (set->unit));
  g_autofree char *under
      = *set->source != '\0'
            ? g_strdup_printf (_ ("Type the size to be made. %s Its composition: %s."), holds, set->source)
            : g_strdup_printf (_ ("Type the size to be made. %s"), holds);

  tm_live_answer_set (&panel->answer, NULL, under);
}

static gboolean
read_lengths (TmStackPanel *panel, TmUnit unit, TmQuantity *size, TmQuantity *wear, char **problem)
{
  gboolean read = tm_live_read (panel->size, unit, size, problem);

  if (!tm_live_read (panel->wear, unit, wear, problem) || !read)
    return FALSE;
  if ((size->given && size->count <= 0) || (wear->given && wear->count <= 0))
    *problem = g_strdup (_ ("A block is larger than zero; so is what blocks make."));
  return *problem == NULL;
}

static void
answer_cb (TmStackPanel *panel)
{
  g_autoptr (GArray) sizes = NULL;
  g_autoptr (GArray) stack = NULL;
  g_autofree char *problem = NULL;
  TmBlocksStatus status;
  TmQuantity size, wear;
  Set set;

  if (panel->job == NULL || !find_set (panel, &set))
    return;
  status = tm_blocks_read (set.text, set.unit, &sizes, NULL);
  if (status == TM_BLOCKS_OK && !read_lengths (panel, set.unit, &size, &wear, &problem))
    {
      tm_live_answer_set (&panel->answer, NULL, problem);
      return;
    }
  if (status == TM_BLOCKS_OK && !size.given)
    {
      show_set (panel, &set, sizes);
      return;
    }
  if (status == TM_BLOCKS_OK)
    status = tm_blocks_stack (sizes, size.count, wear.count, &stack);
  if (status == TM_BLOCKS_OK)
    {
      show_stack (panel, &set, stack, &wear);
      return;
    }
  problem = g_strdup_printf ("%s: %s.", set.name,
                             g_dpgettext2 (GETTEXT_PACKAGE, "blocks status", tm_blocks_status_word (status)));
  tm_live_answer_set (&panel->answer, NULL, problem);
}

static GtkStringList *
list_sets (TmStackPanel *panel)
{
  GtkStringList *words = gtk_string_list_new (NULL);
  TmBlockSet set;

  g_ptr_array_set_size (panel->tags, 0);
  for (guint i = 0; i < panel->job->gauges->len; i++)
    {
      const TmGauge *gauge = g_ptr_array_index (panel->job->gauges, i);

      if (*gauge->blocks == '\0')
        continue;
      g_ptr_array_add (panel->tags, g_strdup (gauge->tag));
      gtk_string_list_append (words, gauge->tag);
    }
  for (guint i = 0; tm_block_set (i, &set); i++)
    gtk_string_list_append (words, g_dpgettext2 (GETTEXT_PACKAGE, "block set", set.name));
  return words;
}

void
tm_stack_panel_show (TmStackPanel *panel, const TmJob *job)
{
  g_autoptr (GtkStringList) words = NULL;
  guint n_tags = panel->tags->len;
  guint chosen = tm_form_chosen (panel->set);

  panel->job = job;
  if (job == NULL)
    return;
  words = list_sets (panel);
  adw_combo_row_set_model (panel->set, G_LIST_MODEL (words));
  /* A usual set that was chosen stays so when the register grows. */
  if (chosen != GTK_INVALID_LIST_POSITION && n_tags > 0 && chosen >= n_tags)
    adw_combo_row_set_selected (panel->set, chosen - n_tags + panel->tags->len);
  else
    adw_combo_row_set_selected (panel->set, chosen < panel->tags->len ? chosen : 0);
  answer_cb (panel);
}

void
tm_stack_panel_build (TmStackPanel *panel, GtkBox *into)
{
  const char *none[] = { NULL };
  AdwPreferencesGroup *group;

  tm_form_group (into, _ ("Gauge-block stack"),
                 _ ("The fewest blocks that make a size exactly; among those the larger ones."));
  tm_live_answer_build (&panel->answer, into, _ ("Stack"));
  group = tm_form_group (into, NULL, NULL);
  panel->tags = g_ptr_array_new_with_free_func (g_free);
  panel->set = tm_form_choice (group, _ ("Set"), none);
  panel->size = tm_form_entry (group, _ ("Size"));
  panel->wear = tm_form_entry (group, _ ("Wear block at either end; empty: none"));
  g_signal_connect_swapped (panel->set, "notify::selected", G_CALLBACK (answer_cb), panel);
  g_signal_connect_swapped (panel->size, "changed", G_CALLBACK (answer_cb), panel);
  g_signal_connect_swapped (panel->wear, "changed", G_CALLBACK (answer_cb), panel);
}

void
tm_stack_panel_clear (TmStackPanel *panel)
{
  g_clear_pointer (&panel->tags, g_ptr_array_unref);
}
