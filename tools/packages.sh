# Sourced by run, test and bench: the Debian packages that each needs, and how they get there.
# Expects vw_root (the checkout) and vw_log_dir (an existing folder) to be set.

vw_packages_program="g++ cmake ninja-build ccache mold nlohmann-json3-dev libtomlplusplus-dev libcli11-dev
libfmt-dev libhowardhinnant-date-dev libpugixml-dev tzdata libtimezonemap-data librsvg2-2"
vw_packages_tests="git libgtest-dev librapidcheck-dev clang-format-16 clang-tidy-16 cppcheck python3-jsonschema
chromium poppler-utils fonts-dejavu-core binutils libsundials-dev liberfa-dev"
vw_packages_bench="libbenchmark-dev"

# Prints those of the given packages that are not installed, on one line; nothing if all are there.
vw_missing_packages() {
  vw_installed=$(dpkg-query -W -f '${db:Status-Abbrev} ${Package}\n' "$@" 2>/dev/null |
    awk 'substr($1, 2, 1) == "i" { print $2 }') || true
  for vw_package in "$@"; do
    case "
$vw_installed
" in
      *"
$vw_package
"*) ;;
      *) printf '%s ' "$vw_package" ;;
    esac
  done
}

# Installs what is missing among the given packages. Returns non-zero with an explanation if it cannot.
vw_install_packages() {
  if ! command -v dpkg-query >/dev/null 2>&1; then
    echo "This is not a Debian system: the packages below, or their like, must be there already." >&2
    echo "  $*" >&2
    return 0
  fi
  vw_missing=$(vw_missing_packages "$@")
  [ -n "$vw_missing" ] || return 0
  vw_apt="apt-get -o DPkg::Lock::Timeout=300"
  vw_install="$vw_apt install -y --no-install-recommends $vw_missing"
  if [ "$(id -u)" -eq 0 ]; then
    vw_as=""
  elif command -v sudo >/dev/null 2>&1; then
    vw_as="sudo"
  else
    echo "Some packages are missing and neither root nor sudo is at hand. Please run as root:" >&2
    echo "  apt-get update && apt-get install --no-install-recommends $vw_missing" >&2
    return 1
  fi
  echo "installing $(echo "$vw_missing" | wc -w) packages (log: build/apt.log)"
  # The word lists are split on purpose.
  # shellcheck disable=SC2086
  if $vw_as $vw_apt update >"$vw_log_dir/apt.log" 2>&1 &&
    $vw_as env DEBIAN_FRONTEND=noninteractive $vw_install >>"$vw_log_dir/apt.log" 2>&1; then
    return 0
  fi
  echo "Installing packages failed. The end of build/apt.log:" >&2
  tail -n 15 "$vw_log_dir/apt.log" >&2
  echo "To do it by hand, as root: apt-get update && apt-get install --no-install-recommends $vw_missing" >&2
  return 1
}
