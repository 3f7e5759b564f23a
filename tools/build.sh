# Sourced by run, test and bench: configure and build one preset quietly.
# Expects vw_root (the checkout) and vw_log_dir (an existing folder) to be set.

# Number of processors to use.
vw_jobs() { nproc 2>/dev/null || echo 2; }

# vw_build PRESET [TARGET...]: configures build/PRESET and builds it (or the targets only).
# The logs are build/PRESET-configure.log and build/PRESET-build.log; on failure the telling part is shown.
vw_build() {
  vw_preset=$1
  shift
  vw_log=$vw_log_dir/$vw_preset-configure.log
  if ! (cd "$vw_root" && cmake --preset "$vw_preset") >"$vw_log" 2>&1; then
    echo "Configuring '$vw_preset' failed. The end of build/$vw_preset-configure.log:" >&2
    tail -n 25 "$vw_log" >&2
    return 1
  fi
  vw_log=$vw_log_dir/$vw_preset-build.log
  if [ $# -gt 0 ]; then
    set -- --target "$@"
  fi
  if ! cmake --build "$vw_root/build/$vw_preset" --parallel "$(vw_jobs)" "$@" >"$vw_log" 2>&1; then
    echo "Building '$vw_preset' failed. From build/$vw_preset-build.log:" >&2
    grep -n -E -A 6 'error|FAILED' "$vw_log" | grep -v -E ' -o [^ ]+\.o -c ' | head -n 60 >&2 || true
    tail -n 3 "$vw_log" >&2
    return 1
  fi
}
