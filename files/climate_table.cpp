// Reads the climate tables packed into the program.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "files/climate.h"
#include "files/climate_records.h"
#include "files/embedded.h"
#include "files/number_table.h"
#include "files/text_problem.h"

namespace voltwright::files {

namespace {

/// A table with the problems met in it, so that all of them come out at once.
class Reader {
 public:
  explicit Reader(std::string name) : name_(std::move(name)) {
    for (const EmbeddedFile& file : embedded_catalogue()) {
      if (file.name != name_) continue;
      auto table = read_table(file.bytes, name_);
      if (table.ok()) {
        table_ = std::move(table).value();
      } else {
        problems_ = table.problems();
      }
      return;
    }
    problems_.push_back(text_problem(name_, 0, 0,
                                     {.what = "The table is missing from the program.",
                                      .field = "",
                                      .given = "",
                                      .limit = "",
                                      .remedy = "Build the program from a complete source tree."}));
  }

  const std::vector<NumberTable::Row>& rows() const { return table_.rows; }

  std::string_view text(const NumberTable::Row& row, std::string_view column) {
    const auto index = table_.column(column);
    if (index) return row.fields[*index];
    problem(row, column, "");
    return {};
  }

  double number(const NumberTable::Row& row, std::string_view column) {
    const std::string_view field = text(row, column);
    const auto value = to_number(field);
    if (!value) problem(row, column, field);
    return value.value_or(0.0);
  }

  /// Twelve values that must all be there.
  Months months(const NumberTable::Row& row, std::string_view prefix) {
    Months result{};
    const auto sparse = sparse_months(row, prefix);
    for (std::size_t m = 0; m < 12; ++m) {
      if (!sparse[m]) problem(row, month_column(prefix, m), "");
      result[m] = sparse[m].value_or(0.0);
    }
    return result;
  }

  std::array<std::optional<double>, 12> sparse_months(const NumberTable::Row& row, std::string_view prefix) {
    std::array<std::optional<double>, 12> result;
    for (std::size_t m = 0; m < 12; ++m) {
      const std::string column = month_column(prefix, m);
      if (!text(row, column).empty()) result[m] = number(row, column);
    }
    return result;
  }

  void pass_on(base::Problems& all) const { all.insert(all.end(), problems_.begin(), problems_.end()); }

 private:
  static std::string month_column(std::string_view prefix, std::size_t month) {
    return fmt::format("{}{:02}", prefix, month + 1);
  }

  void problem(const NumberTable::Row& row, std::string_view column, std::string_view given) {
    problems_.push_back(text_problem(name_, row.line, 1,
                                     {.what = "The column holds no number.",
                                      .field = std::string(column),
                                      .given = std::string(given),
                                      .limit = "a number",
                                      .remedy = "Make the table again with vw_make_climates."}));
  }

  std::string name_;
  NumberTable table_;
  base::Problems problems_;
};

/// Nothing if no month has a value; months of polar night without one count as 0.
std::optional<Months> all_or_none(const std::array<std::optional<double>, 12>& sparse) {
  Months months{};
  bool any = false;
  for (std::size_t m = 0; m < 12; ++m) {
    any = any || sparse[m].has_value();
    months[m] = sparse[m].value_or(0.0);
  }
  return any ? std::optional<Months>(months) : std::nullopt;
}

sky::Site site_of(Reader& reader, const NumberTable::Row& row, bool height) {
  return {reader.number(row, "lat"), reader.number(row, "lon"), height ? reader.number(row, "elev_m") : 0.0};
}

sky::ClearnessMatrices matrices_of(Reader& reader) {
  sky::ClearnessMatrices result;
  result.matrices.resize(10);
  for (const auto& row : reader.rows()) {
    const auto k = static_cast<std::size_t>(std::clamp(reader.number(row, "k"), 0.0, 9.0));
    const auto today = static_cast<std::size_t>(std::clamp(reader.number(row, "row"), 0.0, 9.0));
    auto& matrix = result.matrices[k];
    matrix.k_min = reader.number(row, "kmin");
    matrix.k_max = reader.number(row, "kmax");
    double sum = 0.0;
    for (std::size_t p = 0; p < 10; ++p) {
      matrix.row[today][p] = reader.number(row, fmt::format("p{}", p));
      sum += matrix.row[today][p];
    }
    // The printed rows are rounded to three digits, so they sum to 1 only within 0.003.
    for (double& p : matrix.row[today]) p = sum > 0.0 ? p / sum : 0.1;
  }
  return result;
}

}  // namespace

Months fill_months(const std::array<std::optional<double>, 12>& months, double otherwise) {
  Months filled{};
  for (std::size_t m = 0; m < 12; ++m) {
    std::size_t before = 0;
    std::size_t after = 0;
    while (before < 12 && !months[(m + 12 - before) % 12]) ++before;
    while (after < 12 && !months[(m + after) % 12]) ++after;
    const double earlier = months[(m + 12 - before) % 12].value_or(otherwise);
    const double later = months[(m + after) % 12].value_or(otherwise);
    const double share =
        before == 0 ? 0.0 : static_cast<double>(before) / static_cast<double>(before + after);
    filled[m] = earlier + (later - earlier) * share;
  }
  return filled;
}

ClimateTable::ClimateTable() = default;
ClimateTable::~ClimateTable() = default;
ClimateTable::ClimateTable(ClimateTable&&) noexcept = default;
ClimateTable& ClimateTable::operator=(ClimateTable&&) noexcept = default;

base::Result<ClimateTable> ClimateTable::built_in() {
  ClimateTable table;
  Reader stations("climates/stations.csv");
  Reader sea("climates/sea_cells.csv");
  Reader enclosed("climates/enclosed_seas.csv");
  Reader turbidity("climates/turbidity.csv");
  Reader groups("climates/turbidity_groups.csv");
  Reader matrices("climates/clearness_matrices.csv");
  for (const auto& row : stations.rows()) {
    table.stations_.push_back({.wmo = stations.text(row, "wmo"),
                               .name = stations.text(row, "name"),
                               .site = site_of(stations, row, true),
                               .temperature_C = stations.months(row, "T"),
                               .daily_range_K = all_or_none(stations.sparse_months(row, "R")),
                               .sunshine_h = all_or_none(stations.sparse_months(row, "S"))});
  }
  for (const auto& row : sea.rows()) {
    table.sea_.push_back({.site = site_of(sea, row, false),
                          .net_solar_W_m2 = sea.months(row, "FSR"),
                          .temperature_C = sea.months(row, "AT"),
                          .wind_m_s = sea.months(row, "SPD")});
  }
  for (const auto& row : enclosed.rows()) {
    table.enclosed_.push_back({.name = enclosed.text(row, "sea"),
                               .south_deg = enclosed.number(row, "south"),
                               .north_deg = enclosed.number(row, "north"),
                               .west_deg = enclosed.number(row, "west"),
                               .east_deg = enclosed.number(row, "east"),
                               .surface_m = enclosed.number(row, "surface_m")});
  }
  for (const auto& row : turbidity.rows()) {
    table.turbidity_.push_back({.name = turbidity.text(row, "station"),
                                .site = site_of(turbidity, row, true),
                                .linke = fill_months(turbidity.sparse_months(row, "TL"), 3.5)});
  }
  for (const auto& row : groups.rows()) {
    table.groups_.push_back({.name = groups.text(row, "group"),
                             .at_sea = groups.text(row, "where") == "sea",
                             .south_deg = groups.number(row, "south"),
                             .north_deg = groups.number(row, "north"),
                             .west_deg = groups.number(row, "west"),
                             .east_deg = groups.number(row, "east"),
                             .lowest_m = groups.number(row, "lowest_m"),
                             .linke = groups.months(row, "TL")});
  }
  table.matrices_ = matrices_of(matrices);
  base::Problems problems;
  for (const Reader* reader : {&stations, &sea, &enclosed, &turbidity, &groups, &matrices})
    reader->pass_on(problems);
  if (!problems.empty()) return problems;
  return table;
}

}  // namespace voltwright::files
