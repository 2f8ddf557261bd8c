/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-field: changes to the facts of a report with the answers to the shop's own fields.
 */

#pragma once

#include "app-edit.h"

G_BEGIN_DECLS

/* As tm_edit_facts(), where @change may also change the job's report fields, add some and take some out. */
gboolean tm_edit_report_facts (TmDocument *document, TmFactsChange change, gpointer data, GError **error);

G_END_DECLS
