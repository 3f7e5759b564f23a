#include <fmt/format.h>

#include "files/number_table.h"
#include "files/weather/pvgis.h"

namespace voltwright::files {

namespace {

class PvgisCsv {
 public:
  PvgisCsv(std::string_view text, const std::string& name) : lines_(text), problems_(name) {}

  base::Result<WeatherSeries> read(const WeatherOptions& options) {
    if (!read_head()) return problems_.take();
    while (lines_.next()) {
      const std::string_view line = trimmed(lines_.text());
      if (line.empty()) continue;
      // After the rows come lines that explain the columns.
      if (line.front() < '0' || line.front() > '9') break;
      read_row();
    }
    while (lines_.next()) {
      const std::string_view line = trimmed(lines_.text());
      if (line.empty() || line.front() < '0' || line.front() > '9') continue;
      problem(1, {.what = "A row of weather stands after the end of the rows.",
                  .field = "",
                  .given = std::string(line),
                  .limit = "",
                  .remedy = "Are two files joined here? Keep one of them."});
    }
    file_.last_line = lines_.number();
    if (!problems_.empty()) return problems_.take();
    return series_of(file_, problems_, options);
  }

 private:
  void problem(int column, const ProblemWords& words) { problems_.add(lines_.number(), column, words); }

  /// A header line "Latitude (decimal degrees): 45.000", with a tab or blanks before the value.
  void read_fact(std::string_view line) {
    const std::size_t colon = line.find(':');
    if (colon == std::string_view::npos) return;
    const std::string key = lower_case(trimmed(line.substr(0, colon)));
    std::string_view text = trimmed(line.substr(colon + 1));
    if (const std::size_t unit = text.find(" deg"); unit != std::string_view::npos) {
      text = text.substr(0, unit);
    }
    const auto value = to_number(text);
    const auto take = [&](std::string_view start, std::optional<double>& fact, double lowest,
                          double highest) {
      if (key.substr(0, start.size()) != start) return;
      if (value && *value >= lowest && *value <= highest) {
        fact = value;
        return;
      }
      // "Slope: 2-axis tracking" is no mistake of the file; it is refused later.
      if (!value && (start == "slope" || start == "azimuth")) return;
      problem(place_in(lines_.text(), text.data() == nullptr ? line : text),
              {.what = "The header needs a number here.",
               .field = std::string(start),
               .given = std::string(text),
               .limit = fmt::format("{:g} to {:g}", lowest, highest),
               .remedy = "Mend the header line."});
    };
    take("latitude", file_.latitude_deg, -90.0, 90.0);
    take("longitude", file_.longitude_deg, -180.0, 180.0);
    take("elevation", file_.elevation_m, -500.0, 9000.0);
    take("irradiance time offset", file_.radiation_offset_h, -2.0, 2.0);
    take("slope", file_.slope_deg, 0.0, 90.0);
    take("azimuth", file_.azimuth_deg, -180.0, 180.0);
  }

  bool read_head() {
    constexpr int kMostHeaderLines = 60;
    while (lines_.number() < kMostHeaderLines && lines_.next()) {
      const std::string_view line = trimmed(lines_.text());
      if (line.substr(0, 4) == "time") return read_titles();
      read_fact(line);
    }
    problem(1, {.what = "There is no line of column titles.",
                .field = "",
                .given = "",
                .limit = "time(UTC),T2m,RH,G(h),... or time,G(i),...",
                .remedy = "Is the file complete?"});
    return false;
  }

  bool read_titles() {
    titles_ = split_at(lines_.text(), ',');
    file_.typical = trimmed(titles_.front()) == "time(UTC)";
    for (std::size_t i = 0; i < titles_.size(); ++i) {
      for (std::size_t c = 0; c < kPvgisColumns; ++c) {
        if (trimmed(titles_[i]) != kPvgisNames.at(c)) continue;
        index_.at(c) = i;
        file_.has.at(c) = true;
      }
    }
    if (titles_.size() > 1) return problems_.empty();
    problem(1, {.what = "The line of column titles is not split by commas.",
                .field = "",
                .given = std::string(lines_.text()),
                .limit = "time(UTC),T2m,RH,G(h),...",
                .remedy = "Fetch the file as it is, without a spreadsheet in between."});
    return false;
  }

  void read_row() {
    const auto fields = split_at(lines_.text(), ',');
    if (fields.size() != titles_.size()) {
      problem(static_cast<int>(lines_.text().size()) + 1,
              {.what = fields.size() < titles_.size() ? "The row is cut short."
                                                      : "The row has more fields than there are titles.",
               .field = "",
               .given = fmt::format("{} fields", fields.size()),
               .limit = fmt::format("{} fields", titles_.size()),
               .remedy = "Fetch the file again; decimal commas are not read here."});
      return;
    }
    PvgisRow row;
    row.line = lines_.number();
    row.time = fields.front();
    for (std::size_t c = 0; c < kPvgisColumns; ++c) {
      if (!file_.has.at(c)) continue;
      const std::string_view field = fields[index_.at(c)];
      row.value.at(c) = problems_.value(field, rule_for(static_cast<PvgisColumn>(c)), row.line,
                                        place_in(lines_.text(), field));
    }
    file_.rows.push_back(row);
  }

  Lines lines_;
  WeatherProblems problems_;
  PvgisFile file_;
  std::vector<std::string_view> titles_;
  std::array<std::size_t, kPvgisColumns> index_{};
};

}  // namespace

base::Result<WeatherSeries> read_pvgis_csv(std::string_view text, const std::string& name,
                                           const WeatherOptions& options) {
  return PvgisCsv(text, name).read(options);
}

}  // namespace voltwright::files
