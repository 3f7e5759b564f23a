#include "cli/outputs.h"

#include <CLI/CLI.hpp>
#include <cstdio>
#include <utility>

#include "app/slide_png.h"
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
  std::string svg;
  if (!outputs.svg.empty() || !outputs.png.empty()) {
    auto made = makers.svg();
    if (!made) {
      show_problems(made.problems(), outputs.json);
      return kBadInput;
    }
    svg = std::move(made).value();
  }
  bool written = true;
  if (!outputs.csv.empty()) written &= deliver(outputs.csv, makers.csv(), "Table");
  if (!outputs.html.empty()) written &= deliver(outputs.html, makers.html(), "Page");
  if (!outputs.svg.empty()) written &= deliver(outputs.svg, svg, "Picture");
  if (!outputs.png.empty()) {
    const auto png = app::slide_png(svg);
    if (png) {
      written &= deliver(outputs.png, png.value(), "Picture");
    } else {
      show_problems(png.problems(), false);
      written = false;
    }
  }
  return written ? kAnswered : kNotWritten;
}

}  // namespace voltwright::cli
