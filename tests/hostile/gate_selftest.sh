#!/bin/sh
# gate_selftest.sh ROOT: a check that cannot fail proves nothing. For every check of tools/ this plants one fault
# in a small tree and expects the check to refuse it and to name it, and to accept the same tree without it.
set -eu
root=$(cd "$1" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failures=0

# fresh: an innocent tree in $tree.
fresh() {
  tree=$work/tree
  rm -rf "$tree"
  mkdir -p "$tree/engine/sky" "$tree/engine/bank" "$tree/engine/units" "$tree/tests/unit" "$tree/docs/method" \
    "$tree/docs/formats" "$tree/files"
  cp "$root/.clang-format" "$root/.clang-tidy" "$tree/"
  printf '#pragma once\n#include "engine/units/length.h"\n' >"$tree/engine/sky/sun.h"
  printf '#pragma once\n' >"$tree/engine/units/length.h"
  printf 'int twice(int x) { return 2 * x; }\n' >"$tree/engine/units/length.cpp"
  printf 'inline constexpr int kPlanFormat = 3;\n' >"$tree/files/plan.h"
  printf '# Plan\n\nThis is format 3.\n' >"$tree/docs/formats/plan.md"
  printf '# Sun\n\nChecked by tests/unit/sun_test.cpp. See [plan](../formats/plan.md).\n' >"$tree/docs/method/sun.md"
  printf 'TEST(Sun, Rises) {}\n' >"$tree/tests/unit/sun_test.cpp"
}

# accepts CHECK [ARGUMENT...]
accepts() {
  check=$1
  shift
  if ! sh "$root/tools/$check" "$@" >"$work/out" 2>&1; then
    echo "$check refuses an innocent tree:"
    cat "$work/out"
    failures=$((failures + 1))
  fi
}

# refuses WHAT SAID CHECK [ARGUMENT...]: must fail and print SAID.
refuses() {
  what=$1
  said=$2
  check=$3
  shift 3
  if sh "$root/tools/$check" "$@" >"$work/out" 2>&1; then
    echo "$check lets pass: $what"
    failures=$((failures + 1))
  elif ! grep -qF -e "$said" "$work/out"; then
    echo "$check refuses '$what' without saying '$said':"
    cat "$work/out"
    failures=$((failures + 1))
  fi
}

layers() {
  fresh
  accepts check_layers.sh "$tree"
  printf '#pragma once\n#include "engine/bank/bank.h"\n' >"$tree/engine/sky/sun.h"
  refuses "sky includes bank" "engine/sky/sun.h:2:" check_layers.sh "$tree"
  fresh
  printf '#include "files/plan.h"\n' >"$tree/engine/bank/bank.h"
  refuses "engine includes files" "engine/bank/bank.h:1:" check_layers.sh "$tree"
  fresh
  printf '#include "tests/unit/sun_test.cpp"\n' >"$tree/files/plan.h"
  refuses "files includes tests" "files/plan.h:1:" check_layers.sh "$tree"
  fresh
  printf '#include "length.h"\n' >"$tree/engine/units/area.h"
  refuses "an include not from the root" "not written from the root" check_layers.sh "$tree"
  fresh
  printf '#include <cmath>\n#include "engine/units/length.h"\n' >"$tree/engine/units/length.cpp"
  refuses "a source file whose own header is not first" "engine/units/length.cpp:1:" check_layers.sh "$tree"
  fresh
  mkdir -p "$tree/engine/wiring"
  printf '#include "engine/bank/bank.h"\n' >"$tree/engine/wiring/cable.h"
  printf '#include "engine/wiring/cable.h"\n' >"$tree/engine/bank/bank.h"
  refuses "two modules that include each other" "include each other" check_layers.sh "$tree"
  fresh
  mkdir -p "$tree/engine/novel"
  printf '#pragma once\n' >"$tree/engine/novel/novel.h"
  refuses "a module without a place in the table" "not in the table" check_layers.sh "$tree"
}

names() {
  fresh
  accepts check_names.sh "$tree"
  printf '\n' >"$tree/engine/sky/sun_utils.h"
  refuses "a vague file name" "sun_utils.h" check_names.sh "$tree"
  fresh
  mkdir "$tree/engine/common"
  printf '\n' >"$tree/engine/common/a.h"
  refuses "a vague folder name" "engine/common/a.h" check_names.sh "$tree"
  fresh
  mkdir "$tree/test"
  printf '\n' >"$tree/test/a.cpp"
  refuses "a folder called test" "use tests" check_names.sh "$tree"
  fresh
  yes '// line' | head -n 601 >"$tree/engine/sky/long.cpp"
  refuses "a file of 601 lines" "601 lines" check_names.sh "$tree"
  fresh
  printf '// see /%s/someone/notes\n' home >"$tree/engine/sky/sun.h"
  refuses "a path of one machine" "a path of one machine" check_names.sh "$tree"
  fresh
  printf '// TO%s: later\n' DO >"$tree/engine/sky/sun.h"
  refuses "an unfinished mark" "unfinished work" check_names.sh "$tree"
  fresh
  printf 'class Sun%s {};\n' Manager >"$tree/engine/sky/sun.h"
  refuses "a vague type name" "says nothing" check_names.sh "$tree"
}

docs() {
  fresh
  accepts check_docs.sh "$tree"
  printf '[gone](nowhere.md)\n' >"$tree/docs/index.md"
  refuses "a dead link" "docs/index.md:1:" check_docs.sh "$tree"
  fresh
  printf '# Sun\n' >"$tree/docs/method/sun.md"
  refuses "a method page without a test" "names no test" check_docs.sh "$tree"
  fresh
  printf '# Sun\n\nChecked by tests/unit/moon_test.cpp and Sun.Rises.\n' >"$tree/docs/method/sun.md"
  refuses "a test that does not exist" "moon_test.cpp" check_docs.sh "$tree"
  fresh
  printf 'The plan file\n\nformat 3\n' >"$tree/docs/formats/plan.md"
  refuses "a format page without title" "title" check_docs.sh "$tree"
  fresh
  printf '# Plan\n\nThis is format 2.\n' >"$tree/docs/formats/plan.md"
  refuses "another format number than the code" "format 3" check_docs.sh "$tree"
}

format() {
  fresh
  accepts check_format.sh "$tree"
  printf 'int   twice( int x ){return 2*x;}\n' >"$tree/engine/units/length.cpp"
  refuses "unformatted code" "length.cpp:1" check_format.sh "$tree"
}

cppcheck() {
  fresh
  accepts check_cppcheck.sh "$tree"
  printf 'int last() {\n  int a[2] = {1, 2};\n  return a[2];\n}\n' >"$tree/engine/units/length.cpp"
  refuses "a read past the end" "length.cpp:3" check_cppcheck.sh "$tree"
}

# compile SOURCE: the tree's length.cpp becomes an archive and a compile command.
compile() {
  printf '%s\n' "$1" >"$tree/engine/units/length.cpp"
  mkdir -p "$tree/build/engine"
  "${CXX:-g++}" -std=c++20 -O2 -c "$tree/engine/units/length.cpp" -o "$tree/build/engine/length.o"
  rm -f "$tree/build/engine/libunits.a"
  ar qc "$tree/build/engine/libunits.a" "$tree/build/engine/length.o"
  printf '[{"directory": "%s", "file": "%s", "command": "c++ -std=c++20 -Werror -Wduplicated-cond -c %s"}]\n' "$tree" \
    "$tree/engine/units/length.cpp" "$tree/engine/units/length.cpp" >"$tree/build/compile_commands.json"
}

symbols() {
  fresh
  refuses "a build without archives" "build first" check_symbols.sh "$tree/build"
  compile '#include <string>
std::string twice(int x) { return std::to_string(2 * x); }'
  accepts check_symbols.sh "$tree/build"
  refuse_use "basic_ifstream" fstream 'std::ifstream f("a"); return f.good();'
  refuse_use "std::cout" iostream 'std::cout << 1; return 0;'
  refuse_use "printf" cstdio 'return std::printf("%d", rand_in);'
  refuse_use "fopen" cstdio 'return std::fopen("a", "r") != nullptr;'
  refuse_use "getenv" cstdlib 'return std::getenv("HOME") != nullptr;'
  refuse_use "exit" cstdlib 'std::exit(1);'
  refuse_use "abort" cstdlib 'std::abort();'
  refuse_use "system_clock" chrono 'return std::chrono::system_clock::now().time_since_epoch().count() > 0;'
  refuse_use "steady_clock" chrono 'return std::chrono::steady_clock::now().time_since_epoch().count() > 0;'
  refuse_use "time" ctime 'return std::time(nullptr) > 0;'
  refuse_use "rand" cstdlib 'return std::rand();'
  refuse_use "std::random_device" random 'return static_cast<int>(std::random_device{}());'
  refuse_use "std::locale::global" locale 'std::locale::global(std::locale()); return 0;'
  refuse_use "filesystem" filesystem 'return std::filesystem::exists("a");'
}

# refuse_use SYMBOL HEADER BODY
refuse_use() {
  compile "#include <$2>
int twice(int rand_in) { (void)rand_in; $3 }"
  refuses "use of $1" "$1" check_symbols.sh "$tree/build"
}

tidy() {
  fresh
  compile 'int twice(int x) { return 2 * x; }'
  accepts check_tidy.sh "$tree/build" "$tree"
  compile 'int* none() { return 0; }'
  refuses "0 as a null pointer" "modernize-use-nullptr" check_tidy.sh "$tree/build" "$tree"
}

case "${2:-all}" in
  all) for part in layers names docs format cppcheck symbols tidy; do $part; done ;;
  *) "$2" ;;
esac
[ $failures -eq 0 ]
