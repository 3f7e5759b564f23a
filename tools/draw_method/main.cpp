// vw_draw_method [root]: writes docs/method/curves.md and the pictures under docs/pictures/method/ from the
// catalogue packed into the program. Run by hand, or through the target draw_method.
#include <filesystem>
#include <fstream>
#include <iostream>

#include "tools/draw_method/page.h"

namespace {

namespace fs = std::filesystem;
using namespace voltwright;  // NOLINT(google-build-using-namespace): a program of one file

bool write(const fs::path& path, const std::string& text) {
  fs::create_directories(path.parent_path());
  std::ofstream out(path, std::ios::binary | std::ios::trunc);
  out << text;
  out.close();
  return static_cast<bool>(out);
}

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
      if (write(root / file.path, file.text)) continue;
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
