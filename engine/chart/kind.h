#pragma once
// What is known of a chemistry, with years and sources, for the chart. The simulation uses none of it.
#include <optional>
#include <string>
#include <vector>

#include "engine/chart/quantity.h"
#include "engine/units/ranged.h"

namespace voltwright::chart {

enum class Origin { kSource, kDerived, kAssumption };

/// A figure of one year. `value` is in the unit of its quantity.
struct Fact {
  Quantity quantity = Quantity::kEnergyPerMass;
  Level level = Level::kCell;
  int year = 0;
  units::Ranged value;
  double depth = 0.0;              // of cycles: share of the capacity drawn each time
  double temperature_C = 0.0;      // of cycles and life on the shelf
  double end_of_life_share = 0.0;  // of cycles: capacity left at the end
  std::string conditions;          // of prices: whose money, how many offers
  Origin origin = Origin::kSource;
  std::string from;          // the source, derivation or assumption in words
  bool from_memory = false;  // the text says so
};

/// True if the figure is to be shown as one that was not read in a source.
inline bool is_soft(const Fact& fact) { return fact.origin == Origin::kAssumption || fact.from_memory; }

/// How a cell fails when it fails, as the sources word it: not at all by fire, mildly, in between, violently.
enum class Runaway { kNone, kLow, kMedium, kHigh, kNotKnown };

struct Safety {
  int year = 0;
  Runaway runaway = Runaway::kNotKnown;
  bool plates_metal = false;  // metallic lithium or sodium forms on the anode if charged too cold or too fast
  std::string stated;         // what stands where an onset temperature is missing; may be empty
  std::string note;           // the honesty note
  std::string gas;            // what it gives off
  std::string failure;        // what a failure looks like
  Origin origin = Origin::kSource;
  std::string from;
};

struct Kind {
  std::string id;
  std::string name;        // "Lithium iron phosphate"
  std::string short_name;  // "LFP"
  std::string plain_name;  // "iron-phosphate"
  bool block = false;      // sold as a block of cells, never as a cell: lead-acid
  bool simulated = true;
  std::vector<Fact> facts;
  Safety safety;
};

/// The figure that was known in `year`: of this quantity and level the latest at or before it. Of several in
/// one year the one at the greatest depth, and of those the one with the least typical value. None: null.
/// Nothing is drawn between two years.
const Fact* as_of(const Kind& kind, Quantity quantity, Level level, int year);

/// as_of for the cell; for a kind sold as a block, or without a figure of the cell, for the battery.
const Fact* as_of_cell_or_block(const Kind& kind, Quantity quantity, int year);

}  // namespace voltwright::chart
