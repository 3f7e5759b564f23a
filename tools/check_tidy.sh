#!/bin/sh
# check_tidy.sh BUILD_DIR [ROOT]: clang-tidy-16 over the .cpp files of the program itself, several at once; the tools
# are left to cppcheck.
set -eu
[ $# -ge 1 ] || { echo "usage: check_tidy.sh BUILD_DIR [ROOT]" >&2; exit 2; }
build=$(cd "$1" && pwd)
tools=$(cd "$(dirname "$0")" && pwd)
root=$(cd "${2:-$tools/..}" && pwd)
. "$tools/tree.sh"
[ -f "$build/compile_commands.json" ] || { echo "$build/compile_commands.json: missing; build first"; exit 1; }
log=$(mktemp)
trap 'rm -f "$log"' EXIT
status=0
# A file that no target builds has no compile command; the build, not this check, speaks about it.
vw_tree_files "$root" | grep -E '^(engine|files|store|app|cli|server)/.*\.cpp$' | while IFS= read -r file; do
  if grep -qF "\"$root/$file\"" "$build/compile_commands.json"; then printf '%s\n' "$file"; fi
done | (cd "$root" && xargs -r -n 1 -P "$(nproc)" clang-tidy-16 --quiet -p "$build") >"$log" 2>&1 || status=1
grep -v -E '^[0-9]+ warnings? (and [0-9]+ errors? )?(generated|treated)|^Suppressed |^Use -header-filter|^$' "$log" || true
exit $status
