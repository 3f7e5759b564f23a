// vw_draw_method [root]: writes docs/method/curves.md and the pictures under docs/pictures/method/ from the
// catalogue packed into the program. Run by hand, or through the target draw_method.
#include <filesystem>
#include <iostream>

#include "tools/draw_method/page.h"
#include "tools/written_file.h"

namespace {

namespace fs = std::filesystem;
using namespace voltwright;  // NOLINT(google-build-using-namespace): a program of one file

}  // namespace

int main(int argc, char** argv) {
  try {
    const fs::path root = argc > 1 ? argv[1] : ".";
    const auto kinds = tools::hold_catalogue();
    if (!kinds) {
      for (const auto& problem : kinds.problems()) std::cerr << base::to_text(problem) << '\n';
      return 1;
    }
    const auto files = tools::draw_method(kinds.value());
    for (const tools::DrawnFile& file : files) {
      if (tools::write_file(root / file.path, file.text)) continue;
      std::cerr << "vw_draw_method: " << file.path << " could not be written\n";
      return 1;
    }
    std::cout << files.size() << " files written\n";
    return 0;
  } catch (const std::exception& error) {
    std::cerr << "vw_draw_method: " << error.what() << '\n';
    return 1;
  }
}
