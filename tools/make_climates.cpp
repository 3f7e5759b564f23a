// Makes catalogue/climates/ from the averaged station reports, the sea atlas, the turbidity list and the
// clearness matrices: keeps what stands up to bounds and neighbours, and writes down what was left out.
// Usage: vw_make_climates STATIONS.csv SEA.csv TURBIDITY.csv MATRICES.csv OUTPUT_FOLDER
#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "engine/base/problem.h"
#include "engine/units/month_names.h"
#include "files/number_table.h"
#include "tools/station_check.h"

namespace {

using voltwright::files::NumberTable;
using voltwright::files::to_number;
using voltwright::tools::complete;
using voltwright::tools::LeftOut;
using voltwright::tools::Months;
using voltwright::tools::Station;

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

std::vector<Station> read_stations(const NumberTable& table) {
  std::vector<Station> stations;
  const auto text_of = [&](const NumberTable::Row& row, std::string_view column) {
    const auto index = table.column(column);
    return std::string(index ? row.fields[*index] : std::string_view());
  };
  for (const auto& row : table.rows) {
    Station s;
    s.wmo = text_of(row, "wmo");
    s.name = text_of(row, "name");
    s.country = text_of(row, "country");
    s.site = {number_of(table, row, "lat"), number_of(table, row, "lon"), number_of(table, row, "elev_m")};
    s.temperature_C = months_of(table, row, "T");
    const Months high = months_of(table, row, "Tx");
    const Months low = months_of(table, row, "Tn");
    for (std::size_t m = 0; m < 12; ++m) {
      if (high[m] && low[m]) s.range_K[m] = high[m].value_or(0.0) - low[m].value_or(0.0);
    }
    s.sunshine_h = months_of(table, row, "S");
    s.sunshine_normal = number_of(table, row, "src_S") == 2.0;
    stations.push_back(std::move(s));
  }
  return stations;
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
    text += line;
    text += s.sunshine_normal && s.has_sunshine ? ",1\n" : ",0\n";
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
    text += line;
    text += '\n';
  }
  return text;
}

std::string turbidity_csv(const NumberTable& table) {
  std::string text =
      "# Linke turbidity (air mass 2), long-term monthly values at radiation stations, from the worldwide "
      "database of Remund et al. 2003 (bib key: remund2003; root mean square error 0.73).\n"
      "# An empty month is polar night: the database fills it with a number that means nothing.\n"
      "station,lat,lon,elev_m" +
      month_columns("TL") + "\n";
  for (const auto& row : table.rows) {
    std::string line = fmt::format("{},{:.3f},{:.3f},{:.0f}", row.fields[0], number_of(table, row, "lat"),
                                   number_of(table, row, "lon"), number_of(table, row, "elev_m"));
    for (const char* name : voltwright::units::kShortMonthNames) {
      const double value = number_of(table, row, name);
      line += value > 1.15 ? fmt::format(",{:.1f}", value) : ",";
    }
    text += line;
    text += '\n';
  }
  return text;
}

std::string left_out_csv(const std::vector<LeftOut>& left_out) {
  std::string text =
      "# What vw_make_climates left out of the station normals or kept in spite of a doubt, and why. part: "
      "station "
      "= the whole row, else only those columns.\n"
      "wmo,name,action,part,reason\n";
  for (const auto& l : left_out)
    text += fmt::format("{},\"{}\",{},{},\"{}\"\n", l.wmo, l.name, l.kept ? "kept" : "left out", l.part,
                        l.reason);
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
  const std::vector<LeftOut> left_out = voltwright::tools::clean(stations);
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
