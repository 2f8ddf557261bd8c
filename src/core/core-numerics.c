/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-numerics.h"

#include <gsl/gsl_errno.h>

void
tm_numerics_init (void)
{
  gsl_set_error_handler_off ();
}
