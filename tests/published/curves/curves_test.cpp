// Whole discharges of the engine against every published point in catalogue/published_curves/, and the page
// and pictures of docs/ as the program draws them. Sources and the reasons of the tolerances stand beside the
// points in those files.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "tools/draw_method/page.h"

namespace voltwright::published {
namespace {

namespace fs = std::filesystem;

const std::vector<tools::HeldKind>& kinds() {
  static const auto kKinds = tools::hold_catalogue().value();
  return kKinds;
}

std::string text_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return std::move(text).str();
}

/// The first line in which two texts differ, with its number.
std::string first_difference(const std::string& have, const std::string& want) {
  std::istringstream a(have);
  std::istringstream b(want);
  std::string line_a;
  std::string line_b;
  for (int number = 1;; ++number) {
    const bool more_a = static_cast<bool>(std::getline(a, line_a));
    const bool more_b = static_cast<bool>(std::getline(b, line_b));
    if (!more_a && !more_b) return "no line";
    if (more_a == more_b && line_a == line_b) continue;
    return "line " + std::to_string(number) + "\n  is:   " + (more_a ? line_a : "(end)") +
           "\n  draws: " + (more_b ? line_b : "(end)");
  }
}

// Each point carries its own source and tolerance.
TEST(PublishedCurves, EveryPointIsMet) {
  std::size_t points = 0;
  for (const tools::HeldKind& held : kinds()) {
    for (std::size_t i = 0; i < held.sets.size(); ++i) {
      for (const tools::Residual& row : held.rows[i]) {
        ++points;
        EXPECT_TRUE(row.within()) << held.kind.record->id << ", " << held.sets[i].title << ", "
                                  << row.condition << ": published " << row.published << ' ' << row.unit
                                  << ", computed " << row.computed << ", allowed " << row.tolerance;
      }
    }
  }
  EXPECT_GT(points, 100U);
}

TEST(PublishedCurves, PageAndPicturesAreAsDrawnNow) {
  const fs::path root = VW_SOURCE_DIR;
  std::set<std::string> drawn;
  for (const tools::DrawnFile& file : tools::draw_method(kinds())) {
    drawn.insert(fs::path(file.path).filename().string());
    const std::string have = text_of(root / file.path);
    EXPECT_TRUE(have == file.text) << file.path << " differs in " << first_difference(have, file.text)
                                   << "\nRun: cmake --build --preset release --target draw_method";
  }
  for (const auto& entry : fs::directory_iterator(root / "docs/pictures/method")) {
    EXPECT_TRUE(drawn.contains(entry.path().filename().string()))
        << entry.path().filename() << " is drawn by nothing; remove it";
  }
}

// What a cell gives is at most its whole content; a slower discharge gives more of it, and stands at a higher
// voltage when as much has been drawn.
TEST(PublishedCurves, SlowerGivesMore) {
  for (const tools::HeldKind& held : kinds()) {
    const cell::Chemistry& record = *held.kind.record;
    constexpr double kDrawn_Ah = 20.0;
    double before_Ah = 0.0;
    double before_V = 0.0;
    for (const double current_A : {50.0, 20.0, 10.0, 5.0}) {
      const tools::Discharge run = tools::discharge(held.kind, {100.0, current_A, record.limits.min_V, 25.0});
      EXPECT_LE(run.total_Ah, 100.0 * record.availability.full_over_rated + 0.5) << record.id;
      EXPECT_GE(run.total_Ah, before_Ah - 0.05) << record.id << " at " << current_A;
      EXPECT_GT(run.at_charge(kDrawn_Ah), before_V) << record.id << " at " << current_A;
      before_Ah = run.total_Ah;
      before_V = run.at_charge(kDrawn_Ah);
    }
  }
}

TEST(PublishedCurves, BadRecordIsReported) {
  const auto problems_of = [](const char* text) {
    const files::EmbeddedFile file{"published_curves/x-curves.json", text};
    const auto read = tools::read_published(std::span(&file, 1));
    std::string all;
    if (read) return all;
    for (const auto& problem : read.problems()) all += base::to_text(problem) + '\n';
    return all;
  };
  constexpr const char* kGood =
      R"({"chemistry": "x", "sets": [{"title": "t", "specimen": {"capacity_Ah": 1, "temperature_C": 25,
      "end_V": 2}, "series": [{"title": "s", "fitted": false, "delivered_Ah_by_A": [[1, 1]],
      "tolerance": {"relative_tolerance": 0.1}}]}]})";
  EXPECT_EQ(problems_of(kGood), "");
  const auto with = [&](const std::string& from, const std::string& to) {
    std::string text = kGood;
    text.replace(text.find(from), from.size(), to);
    return problems_of(text.c_str());
  };
  EXPECT_NE(with("[[1, 1]]", "[[1]]").find("list of points"), std::string::npos);
  EXPECT_NE(with("relative_tolerance", "tolerance_V").find("relative_tolerance"), std::string::npos);
  EXPECT_NE(with("delivered_Ah_by_A", "drawn").find("no points"), std::string::npos);
  EXPECT_NE(with("\"end_V\": 2", "\"end_V\": 0").find("end_V"), std::string::npos);
}

}  // namespace
}  // namespace voltwright::published
