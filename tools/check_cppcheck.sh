#!/bin/sh
# check_cppcheck.sh [ROOT]: cppcheck over the program's own code and the tools. Rules that are silenced are listed, with the
# reason, in tools/cppcheck.suppressions.
set -eu
tools=$(cd "$(dirname "$0")" && pwd)
root=${1:-$tools/..}
cd "$root"
set --
for folder in engine files store app cli server tools; do
  [ ! -d "$folder" ] || set -- "$@" "$folder"
done
[ $# -gt 0 ] || exit 0
suppressions=$(mktemp)
trap 'rm -f "$suppressions"' EXIT
grep -v -E '^ *(#|$)' "$tools/cppcheck.suppressions" >"$suppressions" || true
cppcheck --quiet --language=c++ --std=c++20 --enable=warning,performance,portability --inline-suppr \
  --suppressions-list="$suppressions" --error-exitcode=1 -j "$(nproc)" -I . "$@" 2>&1
