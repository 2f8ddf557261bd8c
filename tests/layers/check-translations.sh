#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# check-translations.sh SOURCE-ROOT: every file with text for people is in po/POTFILES, and every
# line of po/POTFILES is a file.  Prints TAP.

cd "$1" || exit 1
bad=0

say () { # NUMBER NAME DETAILS
  if [ -z "$3" ]; then
    echo "ok $1 - $2"
  else
    bad=1
    echo "not ok $1 - $2"
    printf '%s\n' "$3" | sed 's/^/# /'
  fi
}

listed=$(grep -v '^#' po/POTFILES)
with_text=$( {
  grep -rlE '(^|[^A-Za-z_])(_|N_|C_|NC_|ngettext|g_dngettext) ?\("' src --include='*.c'
  grep -rl 'translatable="yes"' ui --include='*.ui'
} | sort -u)
say 1 "every file with text is listed" "$(printf '%s\n' "$with_text" | grep -vxF "$listed")"
say 2 "every listed file is there" "$(printf '%s\n' "$listed" | while read -r f; do [ -z "$f" ] || [ -f "$f" ] || echo "$f"; done)"
echo "1..2"
exit $bad
