#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Installs what is missing, builds, and opens the sample job in a demo book of its own.  With no
# display it writes the sample's first-article report instead and says where.

set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/src/need.sh"

need_packages build
build_in "$root/build/run" "src/app/tenthmark src/cli/tenthmark-cli ui/gschemas.compiled" --buildtype=debugoptimized

demo="$root/build/demo"
sample="$root/sample-jobs/pump-bearing-housing.tmjob"
mkdir -p "$demo"

if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  export GSETTINGS_SCHEMA_DIR="$root/build/run/ui" TM_SAMPLE_JOBS="$root/sample-jobs"
  exec "$root/build/run/src/app/tenthmark" --book "$demo/demo.tmbook" "$sample"
fi

"$root/build/run/src/cli/tenthmark-cli" report "$sample" --out "$demo/first-article.xlsx"
echo "No display, so the window was not opened. The sample's first-article report is in $demo/first-article.xlsx"
