# SPDX-License-Identifier: GPL-3.0-or-later
#
# need.sh: installs what is missing.  Sourced by src/run.sh and tests/run.sh.

# missing_packages KIND…: the packages of src/packages.txt of these kinds that are not installed.
missing_packages () {
  for kind in "$@"; do
    sed -n "s/^$kind //p" "$root/src/packages.txt"
  done | while read -r package; do
    state=$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null) || state=
    [ "$state" = installed ] || printf '%s ' "$package"
  done
}

# need_packages KIND…: installs them, or says in one line how and exits 2.
need_packages () {
  missing=$(missing_packages "$@")
  [ -n "$missing" ] || return 0
  as_root=
  if [ "$(id -u)" != 0 ]; then
    if command -v sudo >/dev/null 2>&1 && { sudo -n true 2>/dev/null || [ -t 0 ]; }; then
      as_root=sudo
    else
      echo "Some Debian packages are missing. As root, run: apt-get update && apt-get install -y --no-install-recommends $missing" >&2
      exit 2
    fi
  fi
  echo "Installing: $missing"
  $as_root apt-get update -q
  # The names are words of our own list: they are meant to be split.
  # shellcheck disable=SC2086
  $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends $missing
}

# build_in FOLDER TARGETS OPTION…: configures FOLDER if need be and builds the targets ("" = all).
build_in () {
  folder=$1
  targets=$2
  shift 2
  if [ -f "$folder/build.ninja" ]; then
    meson configure "$folder" "$@" >/dev/null
  else
    meson setup "$folder" "$root" "$@"
  fi
  # shellcheck disable=SC2086
  ninja -C "$folder" $targets
}
