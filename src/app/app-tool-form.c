/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-tool-form.h"

#include <glib/gi18n-lib.h>

#include "app-edit-tool.h"
#include "app-form-read.h"
#include "app-form.h"

void
tm_tool_form_build (TmToolForm *form, GtkBox *into)
{
  const char *units[] = { _ ("millimetres"), _ ("inches"), NULL };
  const char *reads[] = { _ ("the size itself"), _ ("half of it: the radius"), NULL };
  AdwPreferencesGroup *what
      = tm_form_group (into, _ ("Tool"),
                       _ ("The same name in another job of the book is the same tool: how it has cut there "
                          "counts here too."));
  AdwPreferencesGroup *dial = tm_form_group (
      into, _ ("Dial"),
      _ ("Without its graduation no number can be given to dial. The rest may be left out."));
  AdwPreferencesGroup *hand = tm_form_group (into, _ ("Habits"), NULL);

  form->name = tm_form_entry (what, _ ("Name"));
  form->unit = tm_form_choice (dial, _ ("Dial is marked in"), units);
  form->reads = tm_form_choice (dial, _ ("Dial reads"), reads);
  form->graduation = tm_form_entry (dial, _ ("Graduation: one mark of the dial"));
  form->least_cut = tm_form_entry (dial, _ ("Least cut, on the dial: less only rubs"));
  form->backlash = tm_form_entry (dial, _ ("Backlash of the screw, on the dial"));
  form->spring_passes = tm_form_entry (hand, _ ("Usual spring passes"));
  form->note = tm_form_entry (hand, _ ("Note"));
}

void
tm_tool_form_fill (TmToolForm *form, const TmTool *tool, TmUnit unit)
{
  TmTool *blank = tm_tool_new ();
  const TmTool *shown = tool != NULL ? tool : blank;

  blank->unit = unit == TM_UNIT_IN ? TM_UNIT_IN : TM_UNIT_MM;
  tm_form_fill_text (form->name, shown->name);
  adw_combo_row_set_selected (form->unit, shown->unit == TM_UNIT_IN ? 1 : 0);
  adw_combo_row_set_selected (form->reads, shown->reads == TM_READS_RADIUS ? 1 : 0);
  tm_form_fill_quantity (form->graduation, &shown->graduation, shown->unit);
  tm_form_fill_quantity (form->least_cut, &shown->least_cut, shown->unit);
  tm_form_fill_quantity (form->backlash, &shown->backlash, shown->unit);
  tm_form_fill_quantity (form->spring_passes, &shown->spring_passes, TM_UNIT_COUNT);
  tm_form_fill_text (form->note, shown->note);
  tm_tool_free (blank);
}

/* What reads as a length and is none that a dial has is refused at its own row. */
static gboolean
read_dial (TmToolForm *form, TmTool *tool, char **problem)
{
  if (!(tm_form_read_quantity (form->graduation, tool->unit, &tool->graduation, problem)
        && tm_form_read_quantity (form->least_cut, tool->unit, &tool->least_cut, problem)
        && tm_form_read_quantity (form->backlash, tool->unit, &tool->backlash, problem)
        && tm_form_read_quantity (form->spring_passes, TM_UNIT_COUNT, &tool->spring_passes, problem)))
    return FALSE;
  if (tm_edit_tool_problem (tool) == NULL)
    return TRUE;
  return tm_form_refuse (tool->graduation.given && tool->graduation.count <= 0 ? form->graduation
                                                                               : form->spring_passes,
                         problem, g_strdup (tm_edit_tool_problem (tool)));
}

TmTool *
tm_tool_form_read (TmToolForm *form, TmJob *job, const TmTool *tool, char **problem)
{
  TmTool *read = tool != NULL ? tm_edit_copy_tool (tool) : tm_tool_new ();
  g_autofree char *note = tm_form_text (form->note);

  *problem = NULL;
  read->unit = tm_form_chosen (form->unit) == 1 ? TM_UNIT_IN : TM_UNIT_MM;
  read->reads = tm_form_chosen (form->reads) == 1 ? TM_READS_RADIUS : TM_READS_DIAMETER;
  read->note = tm_job_intern (job, note);
  if (tm_form_read_name (form->name, job, &read->name, problem) && read_dial (form, read, problem))
    return read;
  tm_tool_free (read);
  return NULL;
}
