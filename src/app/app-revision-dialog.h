/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-revision-dialog: begins the job of a new revision from the one that is open: what is affected is
 * measured again, of the rest the baseline report speaks.
 */

#pragma once

#include "app-window.h"

G_BEGIN_DECLS

/* Over @window, which shows the new job once it is begun.  A window without a job does nothing: NULL. */
GtkWindow *tm_revision_dialog_present (TmWindow *window);

G_END_DECLS
