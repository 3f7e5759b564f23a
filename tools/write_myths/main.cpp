// vw_write_myths [root]: writes docs/handbook/myths/ from the list of app/myths and the catalogue packed into
// the program. Run by hand, or through the target write_myths.
#include <filesystem>
#include <iostream>

#include "tools/write_myths/page.h"
#include "tools/written_file.h"

namespace {

namespace fs = std::filesystem;
using namespace voltwright;  // NOLINT(google-build-using-namespace): a program of one file

int report(const base::Problems& problems) {
  for (const auto& problem : problems) std::cerr << base::to_text(problem) << '\n';
  return 1;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    const fs::path root = argc > 1 ? argv[1] : ".";
    const auto catalogue = files::read_catalogue();
    if (!catalogue) return report(catalogue.problems());
    const auto list = app::myths(catalogue.value());
    if (!list) return report(list.problems());
    const auto pages = tools::write_myths(list.value());
    for (const tools::WrittenPage& page : pages) {
      if (tools::write_file(root / page.path, page.text)) continue;
      std::cerr << "vw_write_myths: " << page.path << " could not be written\n";
      return 1;
    }
    std::cout << pages.size() << " pages written\n";
    return 0;
  } catch (const std::exception& error) {
    std::cerr << "vw_write_myths: " << error.what() << '\n';
    return 1;
  }
}
