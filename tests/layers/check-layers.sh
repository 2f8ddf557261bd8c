#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# check-layers.sh SOURCE-ROOT BUILD-ROOT: holds the arrows of DEVELOPERS.md, "The layers".
# Prints TAP.  What the compiler cannot see: headers that lie in the default include path, "..", and
# symbols of a library that a layer must not touch.

source_root=$1
build_root=$2
n=0
bad=0

say () { # NAME DETAILS
  n=$((n + 1))
  if [ -z "$2" ]; then
    echo "ok $n - $1"
  else
    bad=1
    echo "not ok $n - $1"
    printf '%s\n' "$2" | sed 's/^/# /'
  fi
}

# The layers' own headers that each layer may include, as an extended regular expression of prefixes.
allowed_prefixes () {
  case $1 in
    core) echo 'core' ;;
    plot) echo 'plot|core' ;;
    book) echo 'book|core' ;;
    exchange) echo 'exchange|core' ;;
    report) echo 'report|plot|core' ;;
    bench) echo 'bench|core' ;;
    cli) echo 'cli|bench|report|exchange|book|core' ;;
    app) echo 'app|bench|report|exchange|book|plot|core' ;;
  esac
}

# The outside headers that each layer may include.
allowed_outside () {
  libc='(assert|ctype|errno|fcntl|float|inttypes|langinfo|limits|locale|math|signal|stdbool|stddef|stdint|stdio|stdlib|string|time|unistd|sys/[a-z]+|linux/magic)\.h'
  case $1 in
    core) echo '(glib\.h|glib/gi18n-lib\.h|gsl/.*|float\.h|math\.h|string\.h|stdint\.h|limits\.h)' ;;
    plot) echo "(glib\\.h|glib/.*|gio/.*|cairo.*|pango/.*|gdk-pixbuf/.*|librsvg/.*|poppler\\.h|pthread\\.h|$libc)" ;;
    book) echo "(glib\\.h|glib/.*|sqlite3\\.h|sodium\\.h|$libc)" ;;
    exchange) echo "(glib\\.h|glib/.*|yajl/.*|libxml/.*|sodium\\.h|$libc)" ;;
    report) echo "(glib\\.h|glib/.*|gio/.*|cairo.*|pango/.*|png\\.h|xlsxwriter\\.h|$libc)" ;;
    bench) echo '(glib\.h|glib/gi18n-lib\.h|string\.h|math\.h)' ;;
    cli) echo "(glib\\.h|glib/.*|yajl/.*|$libc)" ;;
    app) echo "(glib.*|gio/.*|gtk/.*|adwaita\\.h|cairo.*|$libc)" ;;
  esac
}

check_includes () { # LAYER FOLDER
  own="\"($(allowed_prefixes "$1"))-[a-z0-9-]+\\.h\""
  outside="<$(allowed_outside "$1")>"
  grep -HnE '^ *# *include' "$2"/*.[ch] 2>/dev/null | grep -vE "^[^:]*:[0-9]+: *# *include *($own|$outside)"
}

# Symbols that an archive must not ask for.
forbidden_symbols () {
  screen='gtk_|gdk_|gsk_|adw_'
  files='g_file_|g_mkstemp|g_rename|f?open|open64|fopen64|__open|read$|write$|__read_chk|fread|fwrite|rename$|unlink$'
  clock='g_get_real_time|g_get_monotonic_time|g_date_time_new_now|gettimeofday|clock_gettime|^time$'
  case $1 in
    core | bench) echo "^($screen|cairo_|pango_|sqlite3_|yajl_|lxw_|workbook_|xml|$files|$clock|rand$|srand|setlocale|localeconv)" ;;
    plot) echo "^(gtk_|gdk_([^p]|p[^i])|gsk_|adw_|sqlite3_|yajl_|workbook_|xml[A-Z]|$clock|rand$|setlocale)" ;;
    book) echo "^($screen|cairo_|yajl_|workbook_|xml[A-Z])" ;;
    exchange) echo "^($screen|cairo_|sqlite3_|workbook_)" ;;
    report) echo "^($screen|sqlite3_|yajl_|xml[A-Z])" ;;
  esac
}

check_symbols () { # LAYER ARCHIVE
  nm -u "$2" 2>/dev/null | sed -n 's/^ *U //p' | sort -u | grep -E "$(forbidden_symbols "$1")"
}

for layer in core plot book exchange report bench cli app; do
  say "$layer includes only what it may" "$(check_includes $layer "$source_root/src/$layer")"
done
for layer in core plot book exchange report bench; do
  archive="$build_root/src/$layer/libtenthmark-$layer.a"
  if [ -f "$archive" ]; then
    say "$layer asks for no symbol it may not" "$(check_symbols $layer "$archive")"
  else
    say "$layer asks for no symbol it may not" "no archive $archive"
  fi
done

# The check itself must see a planted violation, or it proves nothing.
planted=$(mktemp -d)
trap 'rm -rf "$planted"' EXIT
printf '#include <gtk/gtk.h>\n#include "../book/book-store.h"\n#include "book-store.h"\n' >"$planted/core-bad.c"
found=$(check_includes core "$planted" | wc -l)
[ "$found" = 3 ] && found= || found="only $found of 3 planted includes were seen"
say "planted includes are seen" "$found"
printf 'extern int sqlite3_open(void); extern long time(void*); int bad(void); int bad(void){return sqlite3_open()+(int)time(0);}\n' >"$planted/bad.c"
cc -c "$planted/bad.c" -o "$planted/bad.o" && ar rc "$planted/bad.a" "$planted/bad.o"
found=$(check_symbols core "$planted/bad.a" | wc -l)
[ "$found" = 2 ] && found= || found="only $found of 2 planted symbols were seen"
say "planted symbols are seen" "$found"

echo "1..$n"
exit $bad
