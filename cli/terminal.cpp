#include "cli/terminal.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <cstdio>

#include "app/json.h"
#include "files/text_file.h"

namespace voltwright::cli {

bool show(const std::string& text) {
  const bool arrived =
      std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
  if (!arrived) (void)std::fputs("voltwright: standard output could not be written.\n", stderr);
  return arrived;
}

bool both_on_stdout(bool json, const std::string& csv) {
  if (!json || csv != "-") return false;
  (void)std::fputs("voltwright: --json and --csv - both want standard output; give --csv a file.\n", stderr);
  return true;
}

void show_problems(const base::Problems& problems, bool json) {
  if (json) {
    (void)show(app::to_json(problems));
    return;
  }
  for (const base::Problem& problem : problems) {
    const std::string line = base::to_text(problem) + "\n";
    (void)std::fwrite(line.data(), 1, line.size(), stderr);
  }
}

bool deliver(const std::string& path, const std::string& text, const std::string& what) {
  if (path == "-") return show(text);
  const base::Problems problems = files::write_text(path, text);
  if (!problems.empty()) {
    show_problems(problems, false);
    return false;
  }
  const std::string line = what + ": " + path + "\n";
  (void)std::fwrite(line.data(), 1, line.size(), stderr);
  return true;
}

bool progress_wanted() { return isatty(STDERR_FILENO) == 1; }

void show_progress(const std::string& text) {
  (void)std::fprintf(stderr, "\r\x1b[K%s", text.c_str());
  (void)std::fflush(stderr);
}

std::size_t terminal_width() {
  winsize size{};
  if (isatty(STDOUT_FILENO) == 1 && ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col >= 60) {
    return size.ws_col;
  }
  return 110;
}

}  // namespace voltwright::cli
