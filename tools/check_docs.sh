#!/bin/sh
# check_docs.sh [ROOT]: every relative link in a Markdown file leads somewhere; every page under docs/method/
# names a test that exists, and no test that does not; every page under docs/formats/ begins with its title and,
# where the code has a format number for it (files/NAME.h or store/NAME.h: kNameFormat = N), with "format N".
set -eu
tools=$(cd "$(dirname "$0")" && pwd)
root=${1:-$tools/..}
. "$tools/tree.sh"
list=$(mktemp)
out=$(mktemp)
trap 'rm -f "$list" "$out"' EXIT
vw_tree_files "$root" | grep -E '\.md$' >"$list" || true
cd "$root"

# Links outside code and comments: FILE LINE TARGET.
links() {
  awk '
    FNR == 1 { fenced = 0; comment = 0 }
    /^ *(```|~~~)/ { fenced = !fenced; next }
    fenced { next }
    {
      text = $0
      gsub(/`[^`]*`/, "", text)
      gsub(/<!--.*-->/, "", text)
      if (text ~ /<!--/) comment = 1
      if (comment) { if (text ~ /-->/) comment = 0; next }
      while (match(text, /\]\([^)]*\)/)) {
        target = substr(text, RSTART + 2, RLENGTH - 3)
        text = substr(text, RSTART + RLENGTH)
        sub(/[ \t]+".*"$/, "", target)
        if (target !~ /^([a-z]+:|#)/) { sub(/#.*/, "", target); print FILENAME "\t" FNR "\t" target }
      }
    }' "$@"
}
while IFS= read -r page; do
  links "$page"
done <"$list" | while IFS="$(printf '\t')" read -r page line target; do
  case "$target" in
    /*) path=.$target ;;
    *) path=$(dirname "$page")/$target ;;
  esac
  [ -e "$path" ] || echo "$page:$line: the link to '$target' leads nowhere" >>"$out"
done

grep -E '^docs/method/[^/]*\.md$' "$list" | grep -v '/README\.md$' | while IFS= read -r page; do
  named=0
  for path in $(grep -oE 'tests/[A-Za-z0-9_./-]+' "$page" | sed 's/[.]$//' | sort -u); do
    if [ -e "$path" ]; then named=1; else echo "$page: names $path, which does not exist" >>"$out"; fi
  done
  if [ $named -eq 0 ] && [ -d tests ]; then
    for case in $(grep -oE '[A-Z][A-Za-z0-9]+\.[A-Z][A-Za-z0-9_]+' "$page" | sort -u); do
      if grep -rqE "(TEST|TEST_F|TEST_P|RC_GTEST_PROP)\(${case%%.*}, *${case#*.}[,)]" tests; then named=1; fi
    done
  fi
  [ $named -eq 1 ] || echo "$page: names no test under tests/ that checks it" >>"$out"
done

grep -E '^docs/formats/[^/]*\.md$' "$list" | grep -v '/README\.md$' | while IFS= read -r page; do
  head -n 1 "$page" | grep -q '^# [^ ]' || echo "$page:1: does not begin with its title ('# ...')" >>"$out"
  name=$(basename "$page" .md)
  for header in "files/$name.h" "store/$name.h"; do
    [ -f "$header" ] || continue
    number=$(sed -n 's/.*constexpr int k[A-Za-z]*Format = \([0-9][0-9]*\).*/\1/p' "$header" | head -n 1)
    [ -n "$number" ] || continue
    head -n 5 "$page" | grep -qiE "format (version |number )?$number([^0-9]|\$)" ||
      echo "$page:1: the first five lines do not say 'format $number' as $header does" >>"$out"
  done
done

cat "$out"
[ ! -s "$out" ]
