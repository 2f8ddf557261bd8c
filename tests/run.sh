#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Installs what is missing, builds, and runs every test: once as built, once under the address and
# undefined-behaviour sanitizers.  --quick leaves the sanitizers out.  Ends with "N passed, N failed".

set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/src/need.sh"

sanitize=yes
[ "${1:-}" != --quick ] || sanitize=no

need_packages build test

passed=0
failed=0

# note_result STATUS NAME: counts a check that is not a meson test.
note_result () {
  if [ "$1" = 0 ]; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    echo "FAILED: $2"
  fi
}

# run_suite FOLDER OPTION…: runs the tests of a build folder and adds up their single cases.
run_suite () {
  folder=$1
  shift
  status=0
  meson test -C "$folder" --no-rebuild --print-errorlogs "$@" || status=$?
  counts=$(python3 "$root/tests/support/count-results.py" "$folder/meson-logs/testlog.junit.xml")
  passed=$((passed + ${counts% *}))
  failed=$((failed + ${counts#* }))
  if [ "$status" != 0 ] && [ "${counts#* }" = 0 ]; then
    note_result 1 "meson test in $folder"
  fi
}

check_format () {
  cd "$root" || return 1
  find src tests -name '*.[ch]' -print0 | xargs -0 clang-format --dry-run -Werror
}

build_in "$root/build/test" "" -Dwerror=true
run_suite "$root/build/test"

status=0
(check_format) || status=$?
note_result "$status" "clang-format"

if [ "$sanitize" = yes ]; then
  build_in "$root/build/sanitized" "" -Dwerror=true -Db_sanitize=address,undefined -Db_lundef=false
  export ASAN_OPTIONS="detect_leaks=1:abort_on_error=0:detect_stack_use_after_return=1"
  export LSAN_OPTIONS="suppressions=$root/tests/support/leaks.supp:print_suppressions=0"
  export UBSAN_OPTIONS="print_stacktrace=1:halt_on_error=1"
  run_suite "$root/build/sanitized" --timeout-multiplier 4
fi

echo "$passed passed, $failed failed"
[ "$failed" = 0 ]
