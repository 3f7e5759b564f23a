#!/bin/sh
# check_names.sh [ROOT]: names that say nothing, files that have grown too long, paths of one person's machine
# and unfinished marks. A source file over 600 lines fails; one over 300 is listed as a note.
set -eu
tools=$(cd "$(dirname "$0")" && pwd)
root=${1:-$tools/..}
. "$tools/tree.sh"
list=$(mktemp)
trap 'rm -f "$list"' EXIT
vw_tree_files "$root" >"$list"
cd "$root"
bad=0

# Words that tell a reader nothing about what is inside. A root script is called test, so no folder may be.
vague=$(awk '{
  n = split($0, part, "/")
  for (i = 1; i <= n; i++) {
    if (i < n && part[i] == "test") print $0 ": a folder must not be called test (the script has that name): use tests"
    m = split(tolower(part[i]), word, /[_.-]/)
    for (j = 1; j <= m; j++)
      if (word[j] ~ /^(utils?|utilities|utility|commons?|helpers?|misc|miscellaneous|managers?)$/)
        print $0 ": the name says nothing about the content (\"" word[j] "\")"
  }
}' "$list")
if [ -n "$vague" ]; then
  printf '%s\n' "$vague"
  bad=1
fi

sources=$(grep -E '(\.(h|cpp|inc|sh|cmake|py|ts|svelte|css)|CMakeLists\.txt|^(run|test|bench))$' "$list" || true)
if [ -n "$sources" ]; then
  printf '%s\n' "$sources" | xargs wc -l | awk '$2 != "total" && $1 > 300 {
    if ($1 > 600) { print $2 ": " $1 " lines; 600 is the limit: split it by purpose"; bad = 1 }
    else print "note: " $2 ": " $1 " lines; 300 is the aim"
  }
  END { exit bad }' || bad=1
fi

# Bracketed first letters keep this file from finding itself.
search() { # search REGEX REASON
  found=$(xargs -r grep -nIE -e "$1" -- <"$list" /dev/null 2>/dev/null | cut -c 1-160) || true
  if [ -n "$found" ]; then
    printf '%s\n' "$found" | sed "s|\$|   <- $2|"
    bad=1
  fi
}
search '(^|[^A-Za-z0-9_.])[/](work|home|root|Users)/[A-Za-z]' "a path of one machine"
search '(^|[^A-Za-z])([T]ODO|[F]IXME|[X]XX|[H]ACK)([^A-Za-z]|$)' "unfinished work is not committed"
search '^(<<<<<<<|>>>>>>>) ' "a merge conflict"
search '(class|struct) [A-Za-z]*([U]til|[U]tils|[H]elper|[M]anager)([^A-Za-z]|$)' "the name says nothing"

# Reserved for the compiler. Cheaper here than as a check of clang-tidy, where it takes a fifth of the time.
reserved=$(grep -E '^(engine|files|store|app|cli|server|tools|tests)/.*[.](cpp|h)$' "$list" |
  xargs -r grep -nE '(^|[^A-Za-z0-9_"])(_[A-Z]|[A-Za-z0-9]*__)[A-Za-z0-9_]' -- /dev/null) || true
if [ -n "$reserved" ]; then
  printf '%s\n' "$reserved" | sed "s|\$|   <- a name reserved for the compiler|"
  bad=1
fi
exit $bad
