#include "cli/terminal.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <cstdio>

#include "app/json.h"
#include "files/text_file.h"

namespace voltwright::cli {

void show(const std::string& text) { (void)std::fwrite(text.data(), 1, text.size(), stdout); }

void show_problems(const base::Problems& problems, bool json) {
  if (json) {
    show(app::to_json(problems));
    return;
  }
  for (const base::Problem& problem : problems) {
    const std::string line = base::to_text(problem) + "\n";
    (void)std::fwrite(line.data(), 1, line.size(), stderr);
  }
}

bool deliver(const std::string& path, const std::string& text, const std::string& what) {
  if (path == "-") {
    show(text);
    return true;
  }
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
