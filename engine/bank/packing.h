#pragma once
// How cells stand side by side, and the room that takes. Equations: docs/method/bank_from_cells.md.
#include "engine/cell/format.h"

namespace voltwright::bank {

enum class Packing { kSquare, kHexagonal };

/// Share of a plane that equal circles cover, far from any edge [1]: pi / 4 in squares, pi / (2 sqrt 3) in
/// hexagons, times (d / (d + gap))^2. Diameter in mm, > 0; gap between neighbours in mm, >= 0.
double covered_share(Packing packing, double diameter_mm, double gap_mm);

/// A box, mm.
struct Room {
  double length_mm = 0.0;
  double width_mm = 0.0;
  double height_mm = 0.0;
};

double litres(const Room& room);

/// The room grown by `border_mm` on each of its six sides.
Room grown(const Room& room, double border_mm);

/// Volume of the cell itself [L].
double cell_litres(const cell::CellFormat& format);

/// One layer of upright cells in rows; the last row may have free places.
struct Arrangement {
  int rows = 1;
  int columns = 1;  // cells along the length of a row
  Room block;       // around all cells, with the gaps between them
};

/// The layer of `count` cells that takes the least floor, and of equals the one nearest to a square.
/// Cylinders stand in squares or hexagons; flat cells stand face to face along the length, each with its gap.
/// @param count    >= 1
/// @param packing  for cylinders
/// @param gap_mm   between neighbours (cylinders) or beside each large face pair (flat cells), >= 0
Arrangement arrange(const cell::CellFormat& format, int count, Packing packing, double gap_mm);

}  // namespace voltwright::bank
