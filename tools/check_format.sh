#!/bin/sh
# check_format.sh [ROOT]: every C++ file is formatted by clang-format-16 and the .clang-format of the tree.
# To mend: clang-format-16 -i FILE
set -eu
tools=$(cd "$(dirname "$0")" && pwd)
root=${1:-$tools/..}
. "$tools/tree.sh"
vw_tree_files "$root" | grep -E '\.(h|cpp|inc)$' | (cd "$root" && xargs -r -n 40 -P "$(nproc)" clang-format-16 --dry-run -Werror) 2>&1
