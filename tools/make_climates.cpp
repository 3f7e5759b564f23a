// Makes catalogue/climates/ from the averaged station reports, the sea atlas, the turbidity list and the
// clearness matrices: keeps what stands up to bounds and neighbours, and writes down what was left out.
// Usage: vw_make_climates STATIONS.csv SEA.csv TURBIDITY.csv MATRICES.csv OUTPUT_FOLDER
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <numeric>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include "engine/base/problem.h"
#include "files/daylight.h"
#include "files/great_circle.h"
#include "files/number_table.h"

namespace {

using voltwright::files::great_circle_km;
using voltwright::files::kDaysInMonth;
using voltwright::files::monthly_daylight;
using voltwright::files::NumberTable;
using voltwright::files::to_number;
using Months = std::array<std::optional<double>, 12>;

// Limits of the comparison. They are set wide enough that valleys, islands and coasts stay, and are an
// assumption of this program, not a published rule.
constexpr double kNeighbour_km = 200.0;
constexpr std::size_t kFewestNeighbours = 3;
constexpr double kLapse_K_m = 0.0065;
constexpr double kTemperatureOff_K = 4.0;  // year mean, plus the next for each metre of height between
constexpr double kTemperatureOffPerMetre = 0.002;
constexpr double kMonthOff_K = 9.0;      // any month
constexpr double kRangeOff_K = 6.0;      // year mean of the daily range
constexpr double kClearnessOff = 0.085;  // year mean of the clearness index
constexpr double kShortestDay_h = 1.0;   // months with less daylight need no sunshine record

struct Station {
  std::string wmo, name, country;
  voltwright::sky::Site site;
  Months temperature_C, range_K, sunshine_h;
  bool has_range = false;
  bool has_sunshine = false;
  bool sunshine_normal = false;
  bool dropped = false;
};

struct LeftOut {
  std::string wmo, name, part, reason;
};

std::string read_file(const char* path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

NumberTable table_of(const std::string& text, const char* path) {
  auto table = voltwright::files::read_table(text, path);
  if (!table.ok() || table.value().rows.empty()) {
    if (!table.ok()) {
      for (const auto& p : table.problems()) fmt::print(stderr, "{}\n", voltwright::base::to_text(p));
    }
    fmt::print(stderr, "{}: cannot be read as a table\n", path);
    std::exit(1);
  }
  return std::move(table).value();
}

double number_of(const NumberTable& table, const NumberTable::Row& row, std::string_view column) {
  const auto index = table.column(column);
  const auto value = index ? to_number(row.fields[*index]) : std::nullopt;
  if (!value) {
    fmt::print(stderr, "line {}: no number in column {}\n", row.line, column);
    std::exit(1);
  }
  return *value;
}

Months months_of(const NumberTable& table, const NumberTable::Row& row, std::string_view prefix) {
  Months months;
  for (std::size_t i = 0; i < 12; ++i) {
    const auto index = table.column(fmt::format("{}{:02}", prefix, i + 1));
    if (index) months[i] = to_number(row.fields[*index]);
  }
  return months;
}

bool complete(const Months& months) {
  return std::all_of(months.begin(), months.end(), [](const auto& m) { return m.has_value(); });
}

double mean(const Months& months) {
  double sum = 0.0;
  for (const auto& m : months) sum += m.value_or(0.0) / 12.0;
  return sum;
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t n = values.size();
  return n % 2 == 1 ? values[n / 2] : 0.5 * (values[n / 2 - 1] + values[n / 2]);
}

/// Clearness by Angstrom-Prescott (0.25, 0.50), year mean over the months with daylight.
double year_clearness(const Station& s) {
  const auto daylight = monthly_daylight(s.site.latitude_deg);
  double sum = 0.0;
  double count = 0.0;
  for (std::size_t m = 0; m < 12; ++m) {
    const double day_h = daylight.day_length_h[m];
    if (day_h < kShortestDay_h) continue;
    sum += 0.25 + 0.5 * s.sunshine_h[m].value_or(0.0) / kDaysInMonth[m] / day_h;
    count += 1.0;
  }
  return count > 0.0 ? sum / count : 0.0;
}

/// What is wrong with the sunshine on its own, or nothing.
std::string sunshine_fault(const Station& s) {
  const auto daylight = monthly_daylight(s.site.latitude_deg);
  for (std::size_t m = 0; m < 12; ++m) {
    if (daylight.day_length_h[m] < kShortestDay_h) continue;
    if (!s.sunshine_h[m]) return fmt::format("no sunshine hours in month {}", m + 1);
    const double share = *s.sunshine_h[m] / kDaysInMonth[m] / daylight.day_length_h[m];
    if (share < 0.0 || share > 1.0) {
      return fmt::format("sunshine is {:.0f} % of the day length in month {}", 100.0 * share, m + 1);
    }
    if (share < 0.02 && daylight.day_length_h[m] > 8.0) {
      return fmt::format("sunshine is only {:.1f} % of the day length in month {}", 100.0 * share, m + 1);
    }
  }
  return {};
}

/// What is wrong with the temperatures on their own, or nothing.
std::string temperature_fault(const Station& s) {
  if (!complete(s.temperature_C)) return "no mean temperature in at least one month";
  for (const auto& t : s.temperature_C) {
    if (*t < -75.0 || *t > 45.0) return fmt::format("monthly mean temperature of {:.1f} degC", *t);
  }
  const auto warmest = std::max_element(s.temperature_C.begin(), s.temperature_C.end());
  const auto coldest = std::min_element(s.temperature_C.begin(), s.temperature_C.end());
  const auto month = static_cast<int>(warmest - s.temperature_C.begin()) + 1;
  const double latitude = s.site.latitude_deg;
  const bool summer_north = month >= 5 && month <= 10;
  if (std::abs(latitude) > 30.0 && **warmest - **coldest > 4.0 && summer_north != (latitude > 0.0)) {
    return fmt::format("warmest in month {}, the winter of latitude {:.1f}", month, latitude);
  }
  return {};
}

std::string range_fault(const Station& s) {
  if (!complete(s.range_K)) return "no daily maximum and minimum in at least one month";
  for (const auto& r : s.range_K) {
    if (*r < 0.5 || *r > 28.0) return fmt::format("daily range of {:.1f} K in a month", *r);
  }
  return {};
}

std::vector<Station> read_stations(const NumberTable& table) {
  std::vector<Station> stations;
  const auto wmo = table.column("wmo");
  const auto name = table.column("name");
  const auto country = table.column("country");
  for (const auto& row : table.rows) {
    Station s;
    s.wmo = row.fields[*wmo];
    s.name = row.fields[*name];
    s.country = row.fields[*country];
    s.site = {number_of(table, row, "lat"), number_of(table, row, "lon"), number_of(table, row, "elev_m")};
    s.temperature_C = months_of(table, row, "T");
    const Months high = months_of(table, row, "Tx");
    const Months low = months_of(table, row, "Tn");
    for (std::size_t m = 0; m < 12; ++m) {
      if (high[m] && low[m]) s.range_K[m] = *high[m] - *low[m];
    }
    s.sunshine_h = months_of(table, row, "S");
    s.sunshine_normal = number_of(table, row, "src_S") == 2.0;
    stations.push_back(std::move(s));
  }
  return stations;
}

struct Neighbour {
  std::size_t index;
  double height_m;  // of this station above the neighbour
};

/// The station that differs most from the median of its neighbours, in shares of what is allowed.
struct Worst {
  std::size_t index = 0;
  double share = 1.0;
  std::string part, reason;
};

/// Stations within kNeighbour_km of each other, and which of them stands out most.
class Comparison {
 public:
  explicit Comparison(std::vector<Station>& stations) : stations_(stations), near_(stations.size()) {
    for (std::size_t a = 0; a < stations.size(); ++a) {
      clearness_.push_back(stations[a].has_sunshine ? year_clearness(stations[a]) : 0.0);
      for (std::size_t b = 0; b < stations.size(); ++b) {
        const auto& sa = stations[a].site;
        const auto& sb = stations[b].site;
        if (a == b || std::abs(sa.latitude_deg - sb.latitude_deg) > 2.0) continue;
        if (great_circle_km(sa, sb) <= kNeighbour_km) {
          near_[a].push_back({b, sa.elevation_m - sb.elevation_m});
        }
      }
    }
  }

  Worst worst() const {
    Worst worst;
    for (std::size_t i = 0; i < stations_.size(); ++i) {
      if (stations_[i].dropped) continue;
      compare_temperature(i, worst);
      if (stations_[i].has_range) compare_range(i, worst);
      if (stations_[i].has_sunshine) compare_clearness(i, worst);
    }
    return worst;
  }

 private:
  static void note(Worst& worst, std::size_t i, double off, double allowed, const char* part,
                   const std::string& reason) {
    if (std::abs(off) / allowed > worst.share) worst = {i, std::abs(off) / allowed, part, reason};
  }

  void compare_temperature(std::size_t i, Worst& worst) const {
    std::array<std::vector<double>, 13> off;
    std::vector<double> heights;
    for (const auto& n : near_[i]) {
      if (stations_[n.index].dropped || std::abs(n.height_m) > 1500.0) continue;
      heights.push_back(std::abs(n.height_m));
      for (std::size_t m = 0; m < 12; ++m) {
        off[m].push_back(*stations_[i].temperature_C[m] - *stations_[n.index].temperature_C[m] +
                         kLapse_K_m * n.height_m);
      }
      off[12].push_back(mean(stations_[i].temperature_C) - mean(stations_[n.index].temperature_C) +
                        kLapse_K_m * n.height_m);
    }
    if (heights.size() < kFewestNeighbours) return;
    const double more_K = kTemperatureOffPerMetre * median(heights);
    const double year = median(off[12]);
    note(worst, i, year, kTemperatureOff_K + more_K, "station",
         fmt::format("year mean {:+.1f} K from the median of {} neighbours at the same height", year,
                     heights.size()));
    for (std::size_t m = 0; m < 12; ++m) {
      const double month = median(off[m]);
      note(worst, i, month, kMonthOff_K + more_K, "station",
           fmt::format("month {} {:+.1f} K from the median of {} neighbours at the same height", m + 1, month,
                       heights.size()));
    }
  }

  void compare_range(std::size_t i, Worst& worst) const {
    std::vector<double> off;
    for (const auto& n : near_[i]) {
      const Station& other = stations_[n.index];
      if (other.dropped || !other.has_range || std::abs(n.height_m) > 700.0) continue;
      off.push_back(mean(stations_[i].range_K) - mean(other.range_K));
    }
    if (off.size() < kFewestNeighbours) return;
    const double year = median(off);
    note(worst, i, year, kRangeOff_K, "daily range",
         fmt::format("daily range {:+.1f} K from the median of {} neighbours", year, off.size()));
  }

  void compare_clearness(std::size_t i, Worst& worst) const {
    std::vector<double> off;
    for (const auto& n : near_[i]) {
      const Station& other = stations_[n.index];
      if (other.dropped || !other.has_sunshine || std::abs(n.height_m) > 700.0) continue;
      off.push_back(clearness_[i] - clearness_[n.index]);
    }
    if (off.size() < kFewestNeighbours) return;
    const double year = median(off);
    note(worst, i, year, kClearnessOff, "sunshine",
         fmt::format("clearness {:+.3f} from the median {:.3f} of {} neighbours", year, clearness_[i] - year,
                     off.size()));
  }

  std::vector<Station>& stations_;
  std::vector<std::vector<Neighbour>> near_;
  std::vector<double> clearness_;
};

/// Drops what fails on its own and then, one at a time from the worst, what fails beside its neighbours, so
/// that a bad station does not condemn the good ones around it.
std::vector<LeftOut> clean(std::vector<Station>& stations) {
  std::vector<LeftOut> left_out;
  const auto leave_out = [&](Station& s, const std::string& part, const std::string& reason) {
    left_out.push_back({s.wmo, s.name, part, reason});
    if (part == "sunshine") s.has_sunshine = false;
    if (part == "daily range") s.has_range = false;
    if (part == "station" || (!s.has_sunshine && !s.has_range)) s.dropped = true;
  };
  for (Station& s : stations) {
    const auto any = [](const Months& months) {
      return std::any_of(months.begin(), months.end(), [](const auto& m) { return m.has_value(); });
    };
    const std::string range = range_fault(s);
    const std::string sunshine = any(s.sunshine_h) ? sunshine_fault(s) : "no sunshine hours";
    s.has_range = range.empty();
    s.has_sunshine = sunshine.empty();
    const std::string temperature = temperature_fault(s);
    if (!temperature.empty()) {
      leave_out(s, "station", temperature);
    } else if (!s.has_range && !s.has_sunshine) {
      leave_out(s, "station", sunshine + "; " + range);
    } else {
      if (any(s.sunshine_h) && !s.has_sunshine) leave_out(s, "sunshine", sunshine);
      if (any(s.range_K) && !s.has_range) leave_out(s, "daily range", range);
    }
  }
  const Comparison comparison(stations);
  for (Worst w = comparison.worst(); w.share > 1.0; w = comparison.worst()) {
    leave_out(stations[w.index], w.part, w.reason);
  }
  std::stable_sort(left_out.begin(), left_out.end(),
                   [](const LeftOut& a, const LeftOut& b) { return a.wmo < b.wmo; });
  return left_out;
}

void append(std::string& line, const Months& months, const char* format, bool given = true) {
  for (const auto& m : months) {
    line += ',';
    if (given && m) line += fmt::format(fmt::runtime(format), *m);
  }
}

std::string month_columns(const char* prefix) {
  std::string text;
  for (int m = 1; m <= 12; ++m) text += fmt::format(",{}{:02}", prefix, m);
  return text;
}

std::string stations_csv(const std::vector<Station>& stations) {
  std::string text =
      "# Station normals, monthly means of 2003-2021 computed from WMO CLIMAT reports.\n"
      "# Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt (bib key: dwd_climat).\n"
      "# T mean air temperature degC; R daily maximum minus daily minimum K; S sunshine hours a month; "
      "normal 1 = sunshine is the normal that the station itself reports.\n"
      "# Made by vw_make_climates; what was dropped and why stands in left_out.csv.\n"
      "wmo,name,country,lat,lon,elev_m" +
      month_columns("T") + month_columns("R") + month_columns("S") + ",normal\n";
  for (const Station& s : stations) {
    if (s.dropped) continue;
    std::string line = fmt::format("{},\"{}\",\"{}\",{:.2f},{:.2f},{:.0f}", s.wmo, s.name, s.country,
                                   s.site.latitude_deg, s.site.longitude_deg, s.site.elevation_m);
    append(line, s.temperature_C, "{:.1f}");
    append(line, s.range_K, "{:.1f}", s.has_range);
    append(line, s.sunshine_h, "{:.0f}", s.has_sunshine);
    text += line + (s.sunshine_normal && s.has_sunshine ? ",1\n" : ",0\n");
  }
  return text;
}

std::string sea_csv(const NumberTable& table) {
  std::string text =
      "# Monthly sea climate on a grid of 4 degrees latitude by 5 degrees longitude (cell centres): "
      "heat-budget "
      "atlas of Esbensen and Kushnir 1981, text in the public domain (bib key: esbensen1981).\n"
      "# FSR net (absorbed) solar W/m2; AT air temperature degC; SPD wind speed m/s.\n"
      "lat,lon" +
      month_columns("FSR") + month_columns("AT") + month_columns("SPD") + "\n";
  for (const auto& row : table.rows) {
    const Months solar = months_of(table, row, "FSR");
    const Months air = months_of(table, row, "AT");
    const Months wind = months_of(table, row, "SPD");
    if (!complete(solar) || !complete(air) || !complete(wind)) continue;
    std::string line =
        fmt::format("{:.0f},{:.0f}", number_of(table, row, "lat"), number_of(table, row, "lon"));
    append(line, solar, "{:.0f}");
    append(line, air, "{:.1f}");
    append(line, wind, "{:.1f}");
    text += line + "\n";
  }
  return text;
}

std::string turbidity_csv(const NumberTable& table) {
  constexpr std::array<const char*, 12> kNames = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                  "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  std::string text =
      "# Linke turbidity (air mass 2), long-term monthly values at radiation stations, from the worldwide "
      "database of Remund et al. 2003 (bib key: remund2003; root mean square error 0.73).\n"
      "# An empty month is polar night: the database fills it with a number that means nothing.\n"
      "station,lat,lon,elev_m" +
      month_columns("TL") + "\n";
  for (const auto& row : table.rows) {
    std::string line = fmt::format("{},{:.3f},{:.3f},{:.0f}", row.fields[0], number_of(table, row, "lat"),
                                   number_of(table, row, "lon"), number_of(table, row, "elev_m"));
    for (const char* name : kNames) {
      const double value = number_of(table, row, name);
      line += value > 1.15 ? fmt::format(",{:.1f}", value) : ",";
    }
    text += line + "\n";
  }
  return text;
}

std::string left_out_csv(const std::vector<LeftOut>& left_out) {
  std::string text =
      "# What vw_make_climates left out of the station normals, and why. part: station = the whole row, "
      "else only those columns.\n"
      "wmo,name,part,reason\n";
  for (const auto& l : left_out)
    text += fmt::format("{},\"{}\",{},\"{}\"\n", l.wmo, l.name, l.part, l.reason);
  return text;
}

void check_matrices(const NumberTable& table) {
  for (const auto& row : table.rows) {
    double sum = 0.0;
    for (int p = 0; p < 10; ++p) sum += number_of(table, row, fmt::format("p{}", p));
    if (std::abs(sum - 1.0) > 0.0031) {
      fmt::print(stderr, "matrices, line {}: the row sums to {:.3f}, not 1\n", row.line, sum);
      std::exit(1);
    }
  }
}

void write(const std::string& folder, const char* name, const std::string& text) {
  std::ofstream out(folder + "/" + name, std::ios::binary);
  out << text;
  if (!out.flush()) {
    fmt::print(stderr, "{}/{}: cannot be written\n", folder, name);
    std::exit(1);
  }
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 6) {
    fmt::print(stderr, "usage: {} STATIONS.csv SEA.csv TURBIDITY.csv MATRICES.csv OUTPUT_FOLDER\n",
               arguments[0]);
    return 2;
  }
  const std::array<std::string, 4> texts = {read_file(arguments[1]), read_file(arguments[2]),
                                            read_file(arguments[3]), read_file(arguments[4])};
  std::vector<Station> stations = read_stations(table_of(texts[0], arguments[1]));
  const std::vector<LeftOut> left_out = clean(stations);
  check_matrices(table_of(texts[3], arguments[4]));
  const std::string folder = arguments[5];
  write(folder, "stations.csv", stations_csv(stations));
  write(folder, "sea_cells.csv", sea_csv(table_of(texts[1], arguments[2])));
  write(folder, "turbidity.csv", turbidity_csv(table_of(texts[2], arguments[3])));
  write(folder, "clearness_matrices.csv", texts[3]);
  write(folder, "left_out.csv", left_out_csv(left_out));
  fmt::print("{} stations read, {} remarks in left_out.csv\n", stations.size(), left_out.size());
  return 0;
}
