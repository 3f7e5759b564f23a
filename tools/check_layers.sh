#!/bin/sh
# check_layers.sh [ROOT]: refuses an #include that goes against the direction of ARCHITECTURE.md, and a circle
# of modules. The table below is that direction: a module may include itself and what its line lists.
# tests, benchmarks and tools may include anything, and nothing may include them. A source file includes its own
# header first.
set -eu
tools=$(cd "$(dirname "$0")" && pwd)
root=${1:-$tools/..}
. "$tools/tree.sh"

table='
engine/base:
engine/units:   engine/base
engine/cell:    engine/base engine/units
engine/chart:   engine/base engine/units
engine/sky:     engine/base engine/units
engine/demand:  engine/base engine/units
engine/ageing:  engine/base engine/units engine/wiring engine/cell
engine/cost:    engine/base engine/units
engine/bank:    engine/base engine/units engine/wiring engine/cell
engine/supply:  engine/base engine/units engine/wiring engine/sky
engine/journey: engine/base engine/units engine/wiring engine/sky
engine/season:  engine/base engine/units engine/wiring engine/cell engine/sky engine/demand engine/ageing engine/bank engine/supply engine/journey
engine/wiring:  engine/base engine/units engine/cell engine/sky engine/demand engine/ageing engine/bank engine/supply engine/journey engine/season
engine/advise:  engine/base engine/units engine/wiring engine/cell engine/sky engine/demand engine/cost engine/ageing engine/bank engine/supply engine/journey engine/season
engine/claims:  engine/base engine/units engine/cell engine/sky engine/demand engine/ageing engine/bank engine/supply engine/journey engine/season
engine/testlog: engine/base engine/units engine/cell engine/sky engine/demand engine/ageing engine/bank engine/supply engine/journey engine/season
files:  engine
store:  engine
app:    engine files store
cli:    engine files app
server: engine files app
'

vw_tree_files "$root" | grep -E '^(engine|files|store|app|cli|server)/.*\.(h|cpp|inc)$' |
  (cd "$root" && VW_TABLE=$table xargs -r awk '
    # engine/sky/sun.h -> engine/sky; files/plan.h -> files; anything else is no module of ours.
    function module_of(path,   part, n) {
      n = split(path, part, "/")
      if (n < 2) return ""
      if (part[1] == "engine") return n > 2 ? "engine/" part[2] : "engine"
      return part[1]
    }
    BEGIN {
      rows = split(ENVIRON["VW_TABLE"], row, "\n")
      for (i = 1; i <= rows; i++) {
        if (split(row[i], half, ":") < 2) continue
        gsub(/^ +| +$/, "", half[1]); gsub(/^ +| +$/, "", half[2]); gsub(/ +/, " ", half[2])
        allowed[half[1]] = half[2]; known[half[1]] = 1
      }
      ours["engine"]; ours["files"]; ours["store"]; ours["app"]; ours["cli"]; ours["server"]
      ours["tests"]; ours["benchmarks"]; ours["tools"]; ours["web"]
    }
    FNR == 1 {
      first_is_awaited = FILENAME ~ /\.cpp$/
      from = module_of(FILENAME)
      if (!(from in known)) {
        print FILENAME ": the module " from " is not in the table of tools/check_layers.sh"
        bad = 1
      }
    }
    # The build compiles a header alone only if no source file of its name shows that it stands by itself.
    first_is_awaited && /^[ \t]*#[ \t]*include/ {
      first_is_awaited = 0
      own = FILENAME; sub(/\.cpp$/, ".h", own)
      if (index($0, "\"" own "\"") == 0 && (getline line <own) >= 0) {
        print FILENAME ":" FNR ": the first include is not its own header \"" own "\""
        bad = 1
      }
      close(own)
    }
    /^[ \t]*#[ \t]*include[ \t]*"/ {
      path = $0; sub(/^[^"]*"/, "", path); sub(/".*/, "", path)
      split(path, first, "/")
      if (!(first[1] in ours)) {
        print FILENAME ":" FNR ": include \"" path "\" is not written from the root (\"" from "/...\")"
        bad = 1; next
      }
      to = module_of(path)
      if (to == from) next
      edge[from, to] = FILENAME ":" FNR; seen[from]; seen[to]
      n = split(allowed[from], may, " ")
      fine = 0
      for (i = 1; i <= n; i++) if (to == may[i] || index(to, may[i] "/") == 1) fine = 1
      if (!fine) {
        print FILENAME ":" FNR ": " from " may not include \"" path "\"; it may include " \
          (allowed[from] == "" ? "nothing but itself" : allowed[from])
        bad = 1
      }
    }
    END {
      # Closure of the include relation between modules; a module that reaches itself is in a circle.
      for (k in edge) { split(k, e, SUBSEP); reach[e[1], e[2]] = 1 }
      for (k in seen) for (i in seen) for (j in seen)
        if (((i, k) in reach) && ((k, j) in reach)) reach[i, j] = 1
      for (k in edge) {
        split(k, e, SUBSEP)
        if ((e[2], e[1]) in reach) {
          print edge[k] ": " e[1] " and " e[2] " include each other, directly or through others"
          bad = 1
        }
      }
      exit bad
    }')
