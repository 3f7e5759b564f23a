#!/bin/sh
# check_format.sh [ROOT]: every C++ file is formatted by clang-format-16 and the .clang-format of the tree.
# To mend: clang-format-16 -i FILE
set -eu
tools=$(cd "$(dirname "$0")" && pwd)
root=${1:-$tools/..}
. "$tools/tree.sh"
# The first place in each file is enough; clang-format's exit status is behind the pipe, so any line is a failure.
unformatted=$(vw_tree_files "$root" | grep -E '\.(h|cpp|inc)$' |
  (cd "$root" && xargs -r -n 40 -P "$(nproc)" clang-format-16 --dry-run -Werror 2>&1) |
  awk -F: '/: error: / { if (!seen[$1]++) print $1 ":" $2 ": not formatted as clang-format-16 would" ; next }
    /^(clang-format|error|xargs)/ || /No such file/ { print }') || true
[ -z "$unformatted" ] || { printf '%s\n' "$unformatted"; exit 1; }
