#include "engine/bank/packing.h"

#include <cmath>
#include <limits>
#include <numbers>

namespace voltwright::bank {

namespace {

constexpr double kLitresPerCubicMillimetre = 1e-6;
constexpr double kRowPitch = std::numbers::sqrt3 / 2.0;  // rows of hexagons, in cell pitches

Room block_of(const cell::CellFormat& format, int rows, int columns, Packing packing, double gap_mm) {
  const cell::CellSize& size = format.size;
  Room room;
  room.height_mm = size.height_mm;
  if (format.form != cell::FormFactor::kCylindrical) {
    room.length_mm = columns * (size.thickness_mm + gap_mm);
    room.width_mm = rows * size.width_mm;
    return room;
  }
  const double pitch_mm = size.diameter_mm + gap_mm;
  room.length_mm = (columns - 1) * pitch_mm + size.diameter_mm;
  if (packing == Packing::kSquare) {
    room.width_mm = (rows - 1) * pitch_mm + size.diameter_mm;
    return room;
  }
  // Every other row stands half a pitch aside.
  if (rows > 1) room.length_mm += 0.5 * pitch_mm;
  room.width_mm = (rows - 1) * kRowPitch * pitch_mm + size.diameter_mm;
  return room;
}

}  // namespace

double covered_share(Packing packing, double diameter_mm, double gap_mm) {
  const double touching =
      packing == Packing::kSquare ? std::numbers::pi / 4.0 : std::numbers::pi / (2.0 * std::numbers::sqrt3);
  const double filled = diameter_mm / (diameter_mm + gap_mm);
  return touching * filled * filled;
}

double litres(const Room& room) {
  return room.length_mm * room.width_mm * room.height_mm * kLitresPerCubicMillimetre;
}

Room grown(const Room& room, double border_mm) {
  return {room.length_mm + 2.0 * border_mm, room.width_mm + 2.0 * border_mm,
          room.height_mm + 2.0 * border_mm};
}

double cell_litres(const cell::CellFormat& format) {
  const cell::CellSize& size = format.size;
  const double floor_mm2 = format.form == cell::FormFactor::kCylindrical
                               ? std::numbers::pi / 4.0 * size.diameter_mm * size.diameter_mm
                               : size.thickness_mm * size.width_mm;
  return floor_mm2 * size.height_mm * kLitresPerCubicMillimetre;
}

Arrangement arrange(const cell::CellFormat& format, int count, Packing packing, double gap_mm) {
  // A margin for walls makes the squarer of two equal floors the smaller one.
  constexpr double kMargin_mm = 10.0;
  Arrangement best;
  double least_mm2 = std::numeric_limits<double>::infinity();
  for (int rows = 1; rows <= count; ++rows) {
    const int columns = (count + rows - 1) / rows;
    if ((rows - 1) * columns >= count) continue;  // a row would stay empty
    const Room block = block_of(format, rows, columns, packing, gap_mm);
    const double floor_mm2 = (block.length_mm + kMargin_mm) * (block.width_mm + kMargin_mm);
    if (floor_mm2 >= least_mm2) continue;
    least_mm2 = floor_mm2;
    best = {rows, columns, block};
  }
  return best;
}

}  // namespace voltwright::bank
