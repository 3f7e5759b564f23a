#!/bin/sh
# Holds every catalogue record against its JSON Schema. Needs the python3-jsonschema package.
# Usage: tools/check_schemas.sh [root of the tree]
set -eu
root=${1:-.}
if [ -x /usr/bin/jsonschema ]; then
  check() { PYTHONWARNINGS=ignore /usr/bin/jsonschema "$@"; }
elif python3 -c 'import jsonschema' 2>/dev/null; then
  check() { python3 -W ignore -m jsonschema "$@"; }
else
  echo "check_schemas: jsonschema is not installed. Install python3-jsonschema." >&2
  exit 2
fi

failed=0
total=0
for pair in chemistries:chemistry cells:cell batteries:battery appliances:appliance \
  published_curves:published_curves uses:use tree:tree costs:cost ageing:ageing ageing_lead:ageing_lead; do
  folder=$root/catalogue/${pair%%:*}
  schema=$root/catalogue/schema/${pair##*:}.schema.json
  set --
  for file in "$folder"/*.json; do
    [ -e "$file" ] || continue
    set -- "$@" -i "$file"
    total=$((total + 1))
  done
  if [ $# -eq 0 ]; then
    echo "check_schemas: no record in $folder" >&2
    failed=1
  else
    check --error-format '{error.instance!r:.80}: {error.message:.300}
' "$@" "$schema" || failed=1
  fi
done
[ "$failed" -eq 0 ] && echo "$total records keep their schemas"
exit "$failed"
