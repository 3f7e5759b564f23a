// The handbook's pages of misconceptions as the program writes them now.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "tools/write_myths/page.h"

namespace voltwright::published {
namespace {

namespace fs = std::filesystem;

std::string text_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return std::move(text).str();
}

TEST(MythPages, AreAsWrittenNow) {
  const auto catalogue = files::read_catalogue();
  ASSERT_TRUE(catalogue);
  const auto list = app::myths(catalogue.value());
  ASSERT_TRUE(list);
  const fs::path root = VW_SOURCE_DIR;
  std::set<std::string> written;
  for (const tools::WrittenPage& page : tools::write_myths(list.value())) {
    written.insert(fs::path(page.path).filename().string());
    EXPECT_EQ(text_of(root / page.path), page.text)
        << page.path << "\nRun: cmake --build --preset release --target write_myths";
  }
  EXPECT_EQ(written.size(), 31U);
  for (const auto& entry : fs::directory_iterator(root / "docs/handbook/myths")) {
    EXPECT_TRUE(written.contains(entry.path().filename().string()))
        << entry.path().filename() << " is written by nothing; remove it";
  }
}

}  // namespace
}  // namespace voltwright::published
