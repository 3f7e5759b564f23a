#include "tests/published/replay/measured_log.h"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace voltwright::published {

namespace {

constexpr std::size_t kTime = 1;
constexpr std::size_t kCycle = 2;
constexpr std::size_t kStep = 6;
constexpr std::size_t kCurrent = 8;
constexpr std::size_t kVoltage = 9;

std::filesystem::path folder() {
  const char* named = std::getenv("VOLTWRIGHT_CELL_DATA");
  if (named != nullptr) return named;
  return std::filesystem::path(VW_SOURCE_DIR) / "../shared/data/cells";
}

std::vector<std::string> fields_of(const std::string& line) {
  std::vector<std::string> fields;
  std::istringstream in(line);
  for (std::string field; std::getline(in, field, ',');) fields.push_back(field);
  return fields;
}

}  // namespace

std::optional<std::vector<LogRow>> read_log(const std::string& name) {
  std::ifstream in(folder() / name);
  if (!in) return std::nullopt;
  std::vector<LogRow> rows;
  for (std::string line; std::getline(in, line);) {
    const std::vector<std::string> fields = fields_of(line);
    if (fields.size() <= kVoltage || fields.front() != "No") continue;
    rows.push_back({std::stod(fields[kTime]), std::stoi(fields[kCycle]), std::stoi(fields[kStep]),
                    -std::stod(fields[kCurrent]), std::stod(fields[kVoltage])});
  }
  return rows;
}

std::vector<ReplayedRow> replay(const RecordCell& cell, bank::State<double> state,
                                const std::vector<LogRow>& rows, double first_s, double surroundings_C) {
  const bank::Parameters<double> parameters = cell.parameters();
  std::vector<ReplayedRow> replayed;
  replayed.reserve(rows.size());
  double before_s = first_s;
  double drawn_Wh = 0.0;
  for (const LogRow& row : rows) {
    const double span_s = row.time_s - before_s;
    before_s = row.time_s;
    const int steps = std::max(1, static_cast<int>(std::ceil(span_s - 1e-6)));
    const auto p = bank::with_step(parameters, span_s / steps);
    double voltage_V = 0.0;
    for (int i = 0; i < steps; ++i) {
      const auto t = bank::terminal<double>(p, state);
      voltage_V = t.source_V - (row.current_A < 0.0 ? t.charge_ohm : t.discharge_ohm) * row.current_A;
      drawn_Wh += voltage_V * row.current_A * p.step_s / 3600.0;
      bank::advance<double>(p, t, state, row.current_A, surroundings_C, 0.0);
    }
    replayed.push_back({voltage_V, state.charge, state.temperature_C, drawn_Wh});
  }
  return replayed;
}

}  // namespace voltwright::published
