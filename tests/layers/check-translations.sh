#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# check-translations.sh SOURCE-ROOT: every file with text for people is in po/POTFILES, every line of
# po/POTFILES is a file, and every text reaches the translators whole.  Prints TAP.

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

# xgettext knows the macros of <inttypes.h>; a text that is glued with another one ends at its "%", and
# is then looked for in vain.
cut_off () {
  printf '%s\n' "$1" | grep '\.c$' | xargs xgettext --from-code=UTF-8 -o - -k_ -kN_ -kC_:1c,2 -kNC_:1c,2 \
    -kngettext:1,2 -kg_dngettext:2,3 2>/dev/null | grep -E '^[^#]*(^|[^%])%"$'
}
say 3 "every text is read whole" "$(cut_off "$listed")"

planted=$(mktemp -d)
trap 'rm -rf "$planted"' EXIT
printf 'const char *bad (void) { return g_strdup_printf (_("row %%" G_GINT64_FORMAT " is gone"), row); }\n' >"$planted/bad.c"
found=$(cut_off "$planted/bad.c")
[ -n "$found" ] && found= || found="a planted text that is cut off was not seen"
say 4 "a planted text that is cut off is seen" "$found"
echo "1..4"
exit $bad
