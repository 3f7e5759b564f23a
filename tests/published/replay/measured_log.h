#pragma once
// Measured logs of cells, where their files are at hand, and the engine driven through them.
#include <optional>
#include <string>
#include <vector>

#include "tests/published/replay/record_cell.h"

namespace voltwright::published {

/// One row: state at `time_s` after the row before.
struct LogRow {
  double time_s = 0.0;
  int cycle = 0;
  int step = 0;            // number in the tester's program
  double current_A = 0.0;  // discharge positive
  double voltage_V = 0.0;
};

/// Rows of a file of the pouch cell's data, or nothing if it is not there. Looked for in the directory that
/// the environment variable VOLTWRIGHT_CELL_DATA names, else beside the source tree. Columns: excluded, time,
/// cycle, three loops, step, step time, current (discharge negative), voltage; a heading may be missing.
std::optional<std::vector<LogRow>> read_log(const std::string& name);

/// What the engine gives where the log has a row.
struct ReplayedRow {
  double voltage_V = 0.0;  // mean over the last second (or less) before the row
  double charge = 1.0;
  double temperature_C = 25.0;
  double drawn_Wh = 0.0;
};

/// Drives the cell with the current of each row since the row before, in steps of at most a second.
/// @param first_s  time at which the first row's current began
std::vector<ReplayedRow> replay(const RecordCell& cell, bank::State<double> state,
                                const std::vector<LogRow>& rows, double first_s, double surroundings_C);

}  // namespace voltwright::published
