# Sourced by the checks: which files belong to the tree.

# vw_tree_files ROOT: every file of the tree below ROOT, relative to it, one a line. In a checkout these are the
# tracked files and the new ones that .gitignore does not exclude; elsewhere all but build results.
vw_tree_files() {
  if [ -e "$1/.git" ] && vw_listed=$(git -C "$1" ls-files -co --exclude-standard 2>/dev/null) &&
    [ -n "$vw_listed" ]; then
    # A tracked file can have been deleted in the working tree.
    printf '%s\n' "$vw_listed" | while IFS= read -r vw_file; do
      [ ! -e "$1/$vw_file" ] || printf '%s\n' "$vw_file"
    done
  else
    (cd "$1" && find . \( -path ./.git -o -path ./build -o -path ./out -o -path ./.tools -o -name node_modules \) \
      -prune -o -type f -print | sed 's|^\./||')
  fi
}
