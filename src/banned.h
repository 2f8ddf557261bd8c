/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Calls that are easily wrong, made impossible at compile time.  Included before every source
 * file; the system headers that declare these come first so that only our own uses are caught.
 */

#pragma once

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#pragma GCC poison strcpy strcat sprintf vsprintf atof strtod atoi localtime gets
