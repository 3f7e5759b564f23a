// Equivalents, claims and chemistries as pages and slides, from the request to the bytes.
#include <gtest/gtest.h>

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <stdexcept>

#include "app/chart.h"
#include "app/slide_png.h"
#include "app/swap.h"
#include "app/vet.h"
#include "engine/units/figure.h"
#include "tests/unit/files/report/markup_check.h"

namespace voltwright::app {
namespace {

constexpr const char* kThin = "\u202F";

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t n = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
  return n;
}

template <class T>
T value_of(base::Result<T> result) {
  if (!result) throw std::runtime_error(base::to_text(result.problems().front()));
  return std::move(result).value();
}

std::shared_ptr<const SwapResponse> swapped(const std::string& by = "") {
  SwapRequest request;
  request.battery.battery = "agm-12v-98ah";
  request.load.load = "60 W";
  request.by = by;
  return value_of(swap_battery(request));
}

/// A sheet as a file that goes away with the test.
class SheetFile {
 public:
  SheetFile(const std::string& name, const std::string& text)
      : path_(std::filesystem::temp_directory_path() / ("vw_pages_" + name)) {
    std::ofstream(path_, std::ios::binary) << text;
  }
  ~SheetFile() { std::filesystem::remove(path_); }
  SheetFile(const SheetFile&) = delete;
  SheetFile& operator=(const SheetFile&) = delete;
  std::string path() const { return path_.string(); }

 private:
  std::filesystem::path path_;
};

VetResponse vetted(const std::string& path, const std::string& only = "") {
  return value_of(vet({path, only}));
}

void expect_whole(const std::string& html) {
  EXPECT_EQ(files::unbalanced(html), "");
  EXPECT_TRUE(html.starts_with("<!doctype html>"));
  for (const char* part :
       {"<script", "http://", "https://", "<link", "@import", "url(", "src=", "onload", "=\"nan"})
    EXPECT_EQ(html.find(part), std::string::npos) << part;
  EXPECT_LT(html.size(), std::size_t{400000});
}

std::uint32_t big_endian(const std::string& bytes, std::size_t at) {
  std::uint32_t value = 0;
  for (std::size_t i = at; i < at + 4; ++i) value = value * 256 + static_cast<unsigned char>(bytes[i]);
  return value;
}

void expect_slide(const base::Result<std::string>& png) {
  ASSERT_TRUE(png) << base::to_text(png.problems().front());
  EXPECT_EQ(png.value().substr(0, 8), "\x89PNG\r\n\x1a\n");
  EXPECT_EQ(big_endian(png.value(), 16), 1920U);
  EXPECT_EQ(big_endian(png.value(), 20), 1080U);
  EXPECT_GT(png.value().size(), 20000U) << "an empty page would be smaller";
}

std::string shapes_of(const std::string& svg) {
  const std::string rest = svg.substr(svg.find("</style>") + 8);
  return rest.substr(0, rest.size() - 1);  // without the line's end
}

TEST(SwapPage, IsWholeAndSaysWhatTheAnswerSays) {
  const auto r = swapped();
  const std::string html = swap_html(*r);
  expect_whole(html);
  const std::string text = files::visible_text(html);
  ASSERT_GT(r->rows.size(), 3U);
  std::size_t before = html.find("<table class=\"fair\">");
  EXPECT_LT(html.find("<tr class=\"now\">", before), html.find("<tr><td>", before))
      << "the incumbent stands first";
  for (const SwapRow& row : r->rows) {
    EXPECT_NE(text.find(row.name), std::string::npos);
    EXPECT_NE(text.find(units::figure(row.compared.run.bank_Wh, "Wh")), std::string::npos) << row.name;
    EXPECT_NE(text.find(units::figure(row.compared.figures.mass_kg.typical, "kg")), std::string::npos);
    for (const advise::Change& change : row.changes) EXPECT_NE(text.find(change.text), std::string::npos);
  }
  for (const std::string& caution : r->cautions)
    EXPECT_NE(text.find(caution.substr(0, caution.find(". "))), std::string::npos);
  EXPECT_NE(text.find(r->catalogue.mark), std::string::npos);
  EXPECT_NE(text.find("[genericBatteries]"), std::string::npos) << "what the records name as their source";
}

TEST(SwapPage, EveryFigureOfTheFairTableHasItsUnit) {
  const std::string html = swap_html(*swapped());
  std::size_t cells = 0;
  for (std::size_t at = html.find("<td class=\"r\""); at != std::string::npos;
       at = html.find("<td class=\"r\"", at + 1)) {
    ++cells;
    const std::string cell = html.substr(at, html.find("</span>", at) - at);
    EXPECT_NE(cell.find(kThin), std::string::npos) << cell;
  }
  EXPECT_GE(cells, 7U * 4U);
}

TEST(SwapPage, ShowsThePictureOfTheSlide) {
  for (const char* by : {"", "room", "current", "life"}) {
    const auto r = swapped(by);
    const std::string svg = swap_svg(*r);
    EXPECT_EQ(files::unbalanced(svg), "");
    EXPECT_EQ(svg.find("=\"nan"), std::string::npos);
    EXPECT_NE(swap_html(*r).find(shapes_of(svg)), std::string::npos) << by;
  }
  expect_slide(slide_png(swap_svg(*swapped())));
}

TEST(SwapPage, SaysSoWhenNothingEqualsIt) {
  SwapRequest request;
  request.battery.battery = "agm-12v-98ah";
  request.by = "room";
  request.tray = "0.2 L";
  const auto r = value_of(swap_battery(request));
  ASSERT_TRUE(r->rows.empty());
  const std::string html = swap_html(*r);
  expect_whole(html);
  EXPECT_NE(files::visible_text(html).find("No battery of the catalogue equals it so."), std::string::npos);
  EXPECT_EQ(files::unbalanced(swap_svg(*r)), "");
}

const char* const kSheet =
    "format = 1\nname = '''\"><img src=x onerror=alert(1)> & <b>Leaflet</b>'''\nchemistry = \"lfp\"\n"
    "capacity = \"100 Ah\"\nvoltage = \"12.8 V\"\nenergy = \"2000 Wh\"\nmass = \"6 kg\"\ncycles = 4000\n"
    "charge_coldest = \"-20 degC\"\n";

TEST(VetPage, IsWholeAndHoldsEveryFinding) {
  const SheetFile file("hostile.toml", kSheet);
  const VetResponse r = vetted(file.path());
  const std::string html = vet_html(r);
  EXPECT_EQ(files::unbalanced(html), "");
  EXPECT_EQ(html.find("<img"), std::string::npos);
  EXPECT_EQ(html.find("<script"), std::string::npos);
  const std::string text = files::visible_text(html);
  EXPECT_NE(text.find(r.sheets.front().sheet.name), std::string::npos);
  EXPECT_NE(text.find("sold as iron-phosphate"), std::string::npos);
  for (const claims::Finding& f : r.sheets.front().findings)
    EXPECT_NE(text.find(f.working), std::string::npos) << f.id;
  EXPECT_NE(text.find(r.sheet_mark), std::string::npos);
  EXPECT_NE(text.find(r.catalogue_mark), std::string::npos);
  const std::string svg = value_of(vet_svg(r));
  EXPECT_EQ(files::unbalanced(svg), "");
  EXPECT_EQ(svg.find("<img"), std::string::npos);
  EXPECT_NE(svg.find(">contradiction</text>"), std::string::npos);
  expect_slide(slide_png(svg));
}

TEST(VetPage, ASlideShowsOneSheetOfSeveral) {
  const SheetFile file("two.csv",
                       "name,chemistry,capacity,voltage\nFirst,lfp,100 Ah,12.8 V\nSecond,agm,100 Ah,12 V\n");
  const VetResponse both = vetted(file.path());
  ASSERT_EQ(both.sheets.size(), 2U);
  expect_whole(vet_html(both));
  const auto refused = vet_svg(both);
  ASSERT_FALSE(refused);
  EXPECT_NE(base::to_text(refused.problems().front()).find("--only"), std::string::npos);
  EXPECT_TRUE(vet_svg(vetted(file.path(), "Second")));
  const auto unknown = vet({file.path(), "Secind"});
  ASSERT_FALSE(unknown);
  EXPECT_NE(base::to_text(unknown.problems().front()).find("\"Second\""), std::string::npos);
}

TEST(ChartPage, IsWholeWithPictureFiguresChangesAndTree) {
  ChartRequest request;
  request.since = 2016;
  request.use = "house-bank";
  const ChartResponse r = value_of(chart_chemistries(request));
  const std::string html = chart_html(r);
  expect_whole(html);
  EXPECT_NE(html.find(shapes_of(chart_svg(r))), std::string::npos) << "page and slide show the same picture";
  const std::string text = files::visible_text(html);
  for (const char* word : {"as of 2026", "What is another figure than as of 2016", "iron-phosphate",
                           "Caution 1.", "Battery kinds by descent", "life, weight 3"}) {
    EXPECT_NE(text.find(word), std::string::npos) << word;
  }
  for (const chart::Row& row : r.chart.rows) EXPECT_NE(text.find(row.kind->short_name), std::string::npos);
  EXPECT_EQ(text.find("bib:"), std::string::npos);
  EXPECT_EQ(text.find("degC"), std::string::npos);
}

TEST(ChartPage, EveryFigureHasUnitYearAndSource) {
  const std::string html = chart_html(value_of(chart_chemistries({})));
  std::size_t figures = 0;
  for (std::size_t at = html.find("<span class=\"nb"); at != std::string::npos;
       at = html.find("<span class=\"nb", at + 1)) {
    const std::string figure = html.substr(at, html.find("</span>", at) - at);
    EXPECT_TRUE(figure.find(kThin) != std::string::npos || figure.ends_with("C")) << figure;
    const std::string below = html.substr(at, html.find("</td>", at) - at);
    EXPECT_TRUE(below.find("#source") != std::string::npos || below.find("worked out") != std::string::npos ||
                below.find("<small>") == std::string::npos)
        << below;
    ++figures;
  }
  EXPECT_GT(figures, 100U);
  EXPECT_GT(count_of(html, "<li id=\"source"), 20U);
}

}  // namespace
}  // namespace voltwright::app
