#include "cli/outputs.h"

#include <CLI/CLI.hpp>
#include <cstdio>

#include "cli/commands.h"
#include "cli/terminal.h"

namespace voltwright::cli {

void add_page_and_slide(CLI::App& command, Outputs& outputs) {
  command.add_option(
      "--html", outputs.html,
      "Write a self-contained page to hand over, for screen and paper (- for standard output)");
  command.add_option("--svg", outputs.svg, "Write a picture for a slide, 16 to 9");
  command.add_option("--png", outputs.png, "Write the same picture as PNG, 1920 by 1080 (needs librsvg)");
}

int on_stdout(const Outputs& o) {
  return static_cast<int>(o.json) + static_cast<int>(o.csv == "-") + static_cast<int>(o.html == "-") +
         static_cast<int>(o.svg == "-") + static_cast<int>(o.png == "-");
}

bool too_many_on_stdout(int wanting) {
  if (wanting <= 1) return false;
  (void)std::fputs("voltwright: only one of these can go to standard output; give the others a file.\n",
                   stderr);
  return true;
}

int write_outputs(const Outputs& outputs, const Makers& makers) {
  struct Made {
    const std::string* path;
    const char* what;
    std::string text;
  };
  std::vector<Made> all;
  if (!outputs.csv.empty()) all.push_back({&outputs.csv, "Table", makers.csv()});
  if (!outputs.html.empty()) all.push_back({&outputs.html, "Page", makers.html()});
  const auto picture = [&](const std::string& path, const std::function<base::Result<std::string>()>& make) {
    if (path.empty()) return true;
    auto made = make();
    if (made) {
      all.push_back({&path, "Picture", std::move(made).value()});
      return true;
    }
    show_problems(made.problems(), outputs.json);
    return false;
  };
  if (!picture(outputs.svg, makers.svg)) return kBadInput;
  if (!picture(outputs.png, makers.png)) return kNotWritten;
  bool written = true;
  for (const Made& one : all) written &= deliver(*one.path, one.text, one.what);
  return written ? kAnswered : kNotWritten;
}

}  // namespace voltwright::cli
