# Sourced by test: runs steps, counts them, and says at the end how many passed.
# Expects vw_root, vw_log_dir and the functions of build.sh.

vw_passed=0
vw_failed=0
vw_failures=""

vw_pass() {
  vw_passed=$((vw_passed + 1))
  echo "pass  $1"
}

vw_fail() {
  vw_failed=$((vw_failed + 1))
  vw_failures="$vw_failures
  $1"
  echo "FAIL  $1"
}

# vw_step NAME COMMAND...: one check; its output is kept in build/check.log and shown if it fails. Notes are shown.
vw_step() {
  vw_name=$1
  shift
  if "$@" >"$vw_log_dir/check.log" 2>&1; then
    vw_pass "$vw_name"
    grep '^note: ' "$vw_log_dir/check.log" | sed 's/^/      /' || true
    return 0
  fi
  vw_fail "$vw_name"
  head -n 60 "$vw_log_dir/check.log" | sed 's/^/      /'
  return 1
}

# vw_ctest PRESET [ctest options]: runs the tests of build/PRESET and adds their numbers.
vw_ctest() {
  vw_preset=$1
  shift
  vw_junit=$vw_log_dir/$vw_preset-tests.xml
  vw_log=$vw_log_dir/$vw_preset-tests.log
  rm -f "$vw_junit"
  vw_status=0
  ctest --test-dir "$vw_root/build/$vw_preset" --parallel "$(vw_jobs)" --timeout 300 --output-on-failure \
    --no-tests=ignore --output-junit "$vw_junit" "$@" >"$vw_log" 2>&1 || vw_status=$?
  # The one <testsuite> element carries the sums; its attributes can be spread over lines.
  vw_suite=$(tr '\n\t' '  ' <"$vw_junit" 2>/dev/null | sed -n 's/.*<testsuite \([^>]*\)>.*/ \1/p') || true
  vw_total=$(vw_attribute tests)
  vw_bad=$(vw_attribute failures)
  vw_skipped=$(($(vw_attribute skipped) + $(vw_attribute disabled)))
  vw_good=$((vw_total - vw_bad - vw_skipped))
  vw_passed=$((vw_passed + vw_good))
  vw_failed=$((vw_failed + vw_bad))
  echo "tests ($vw_preset): $vw_good passed, $vw_bad failed, $vw_skipped skipped"
  if [ "$vw_bad" -gt 0 ]; then
    vw_names=$(sed -n '/^The following tests FAILED:/,/^$/p' "$vw_log" | sed -n 's/^\t* *[0-9]* - /  /p')
    vw_failures="$vw_failures
$vw_names"
    echo "From build/$vw_preset-tests.log:"
    grep -n -B 2 -A 12 -E 'Failure$|runtime error:|ERROR: .*Sanitizer|\*\*\*' "$vw_log" | cut -c 1-200 | head -n 120 || true
  elif [ $vw_status -ne 0 ]; then
    vw_fail "ctest itself ran ($vw_preset)"
    tail -n 20 "$vw_log"
  fi
}

# A number among the attributes of vw_suite; 0 if it is not there.
vw_attribute() {
  vw_number=$(printf '%s\n' "$vw_suite" | sed -n "s/.* $1=\"\\([0-9]*\\)\".*/\\1/p")
  echo "${vw_number:-0}"
}

# Prints the summary and ends the script.
vw_finish() {
  if [ -n "$vw_failures" ]; then
    echo
    echo "failed:$vw_failures"
  fi
  echo
  echo "$vw_passed passed, $vw_failed failed"
  [ $vw_failed -eq 0 ] || exit 1
  exit 0
}
