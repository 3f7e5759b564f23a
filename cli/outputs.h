#pragma once
// The files that a command with tables, pages and pictures writes.
#include <functional>
#include <string>
#include <vector>

#include "engine/base/result.h"

namespace CLI {
class App;
}

namespace voltwright::cli {

/// Where each goes: a path, "-" for standard output, empty for nowhere.
struct Outputs {
  bool json = false;
  std::string csv, html, svg, png;
};

/// Adds --html, --svg and --png.
void add_page_and_slide(CLI::App& command, Outputs& outputs);

/// How many want standard output, JSON and all.
int on_stdout(const Outputs& outputs);

/// Says that only one thing can go to standard output, if more want it.
bool too_many_on_stdout(int wanting);

/// What makes the texts; called only for those that are asked for.
struct Makers {
  std::function<std::string()> csv, html;
  std::function<base::Result<std::string>()> svg;
};

/// Makes all that is asked for and writes it. Without a slide nothing is written; where only the library for
/// PNG is missing, everything else is. The exit code.
int write_outputs(const Outputs& outputs, const Makers& makers);

}  // namespace voltwright::cli
